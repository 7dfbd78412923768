// How materials look when they are cut: stipple, plies, strands, dust, loops.
// Every mark hangs on the layer's id and its own place in the board, so a
// board that grows or moves keeps its marks and nothing crawls.

/**
 * Lines of one weight and colour: an SVG path and the class that paints it.
 * @typedef {{d: string, css: string}} Stroke
 */

/**
 * @typedef {object} Cut
 * @property {string} kind kind of board, as in the report
 * @property {number} density kg/m³
 * @property {string} seed the layer's id
 * @property {number} width px
 * @property {number} height px
 * @property {boolean} [small] the small figures of a table
 */

/** Below this width only joints and dots are drawn, px. */
const PLAIN = 10;
const KEPT = 240;

/** @type {Map<string, Stroke[]>} */
const drawn = new Map();

/**
 * Returns the strokes that fill a board, drawn from its upper left corner.
 * @param {Cut} cut
 * @returns {Stroke[]}
 */
export function hatch(cut) {
  const width = round(sane(cut.width));
  const height = round(sane(cut.height));
  const key = [cut.kind, Math.round(sane(cut.density) / 10), cut.seed, width, height, cut.small ? 1 : 0].join('|');
  const known = drawn.get(key);
  if (known) return known;
  const strokes = width < 1 || height < 1 ? [] : recipe({ ...cut, width, height, density: sane(cut.density) });
  if (drawn.size >= KEPT) drawn.delete(/** @type {string} */ (drawn.keys().next().value));
  drawn.set(key, strokes);
  return strokes;
}

/**
 * Whether the cut face is filled solid instead of hatched: metal and loaded vinyl.
 * @param {string} kind
 */
export function solid(kind) {
  return kind === 'steel' || kind === 'lead' || kind === 'limp';
}

/**
 * Whether the kind is built, not hung; its hatch is drawn in the colour of lines.
 * @param {string} kind
 */
export function masonry(kind) {
  return ['block', 'brick', 'concrete', 'aerated', 'topping'].includes(kind);
}

/** @param {Cut} cut */
function recipe(cut) {
  const thin = cut.width < PLAIN;
  switch (cut.kind) {
    case 'plywood':
      return plies(cut);
    case 'osb':
      return thin ? dust(cut, 5, 0.8) : strands(cut);
    case 'mdf':
    case 'particleboard':
      return dust(cut, 5, 0.7);
    case 'hardboard':
      return dust(cut, 3, 0.7);
    case 'fibreboard':
      return dust(cut, 12, 0.9);
    case 'brick':
      return courses(cut);
    case 'concrete':
    case 'block':
    case 'topping':
      return thin ? stipple(cut, 6) : aggregate(cut, 9, 900);
    case 'aerated':
      return stipple(cut, 6.5);
    case 'cement':
      return thin ? stipple(cut, 3) : aggregate(cut, 3.2, 1400);
    case 'plaster':
    case 'magnesium':
      return stipple(cut, 3.2);
    case 'glass':
    case 'laminated':
      return glints(cut);
    case 'steel':
    case 'lead':
    case 'limp':
      return [];
    default:
      return gypsum(cut);
  }
}

/** @param {Cut} cut */
function gypsum(cut) {
  const pitch = grid(cut.density, cut.small === true);
  return cut.small || cut.width < PLAIN ? stipple(cut, pitch) : aggregate(cut, pitch, 620);
}

/**
 * The pitch of gypsum's dots, px: density reads as weight. A small figure has
 * fewer dots to say it with, so it says it louder.
 * @param {number} density kg/m³
 * @param {boolean} small
 */
export function grid(density, small) {
  const [light, heavy, wide, close] = small ? [510, 670, 5.2, 3.5] : [500, 850, 5.2, 3.5];
  const share = clamp((density - light) / (heavy - light), 0, 1);
  return wide + (close - wide) * share;
}

/**
 * Dots with triangles between them, none on another.
 * @param {Cut} cut
 * @param {number} pitch px
 * @param {number} area px² to a triangle
 */
function aggregate(cut, pitch, area) {
  const places = scatter(cut, area);
  const d = places.map((p) => triangle(p.x, p.y, 2.5, p.turn)).join('');
  return [...stipple(cut, pitch, places), ...strokes([d, 'h-line'])];
}

/**
 * Jittered dots: four cells in five hold one, one in seven is larger.
 * @param {Cut} cut
 * @param {number} pitch px
 * @param {{x: number, y: number}[]} [spared] places to leave free
 * @returns {Stroke[]}
 */
function stipple(cut, pitch, spared = []) {
  const { width, height } = cut;
  const seed = hash(`${cut.seed}/dots`);
  // The row of cells is spread over the width, so that no bare strip is left beside the joint.
  const inset = Math.min(1.9, width / 4);
  const columns = Math.max(1, Math.round((width - 2 * inset) / pitch));
  const step = (width - 2 * inset) / columns;
  let fine = '';
  let bold = '';
  for (let row = 0; row * pitch < height; row++) {
    for (let column = 0; column < columns; column++) {
      if (chance(seed, row, column, 0) > 0.8) continue;
      const big = chance(seed, row, column, 1) < 1 / 7 && width > 6;
      const edge = big ? 1.7 : 1.1;
      const x = clamp(inset + (column + chance(seed, row, column, 2)) * step, edge, width - edge);
      const y = (row + chance(seed, row, column, 3)) * pitch;
      if (y < edge || y > height - edge) continue;
      if (spared.some((p) => Math.abs(p.x - x) < 3.6 && Math.abs(p.y - y) < 3.6)) continue;
      if (big) bold += dot(x, y);
      else fine += dot(x, y);
    }
  }
  return strokes([fine, 'h-dot'], [bold, 'h-dot h-bold']);
}

/**
 * Places for small open triangles, one to an area.
 * @param {Cut} cut
 * @param {number} area px²
 */
function scatter(cut, area) {
  const { width, height } = cut;
  const seed = hash(`${cut.seed}/triangles`);
  const columns = Math.max(1, Math.round(width / Math.sqrt(area)));
  const step = width / columns;
  const pitch = area / step;
  const places = [];
  for (let row = 0; row * pitch < height; row++) {
    for (let column = 0; column < columns; column++) {
      const x = clamp((column + chance(seed, row, column, 0)) * step, 5, width - 5);
      const y = (row + 0.1 + 0.8 * chance(seed, row, column, 1)) * pitch;
      const turn = (chance(seed, row, column, 2) - 0.5) * 0.24;
      if (y > 6 && y < height - 5) places.push({ x, y, turn });
    }
  }
  return places;
}

/**
 * @param {number} x
 * @param {number} y
 * @param {number} size
 * @param {number} turn
 */
function triangle(x, y, size, turn) {
  const corners = [-90, 30, 150].map((degrees) => {
    const angle = (degrees * Math.PI) / 180 + turn;
    return `${n(x + size * Math.cos(angle))} ${n(y + size * Math.sin(angle))}`;
  });
  return `M${corners[0]}L${corners[1]}L${corners[2]}Z`;
}

/**
 * Face plies with long broken grain, core plies in end grain; their number is
 * always odd.
 * @param {Cut} cut
 */
function plies(cut) {
  const { width, height } = cut;
  const seed = hash(`${cut.seed}/plies`);
  if (width < PLAIN) return strokes([grain(seed, 0, width / 2, height), 'h-line']);
  const count = width < 13 ? 3 : width < 16.5 ? 5 : 7;
  const ply = width / count;
  let joints = '';
  let long = '';
  let ticks = '';
  for (let i = 0; i < count; i++) {
    const left = i * ply;
    if (i > 0) joints += `M${n(left)} 0V${n(height)}`;
    if (i % 2 === 0) {
      const lines = clamp(Math.floor(ply / 2), 1, 3);
      for (let k = 0; k < lines; k++) long += grain(seed, 10 * i + k, left + ((k + 1) * ply) / (lines + 1), height);
    } else {
      ticks += endGrain(seed, i, left, ply, height);
    }
  }
  return strokes([joints, 'h-ply'], [long, 'h-line'], [ticks, 'h-line']);
}

/**
 * @param {number} seed
 * @param {number} row
 * @param {number} x
 * @param {number} height
 */
function grain(seed, row, x, height) {
  let d = '';
  let y = -20 * chance(seed, row, 0, 7);
  for (let k = 0; y < height; k++) {
    const length = 12 + 26 * chance(seed, row, k, 8);
    const from = Math.max(0, y);
    const to = Math.min(height, y + length);
    if (to - from > 2) d += `M${n(x)} ${n(from)}V${n(to)}`;
    y += length + 2.5 + 7 * chance(seed, row, k, 9);
  }
  return d;
}

/**
 * @param {number} seed
 * @param {number} row
 * @param {number} left
 * @param {number} ply
 * @param {number} height
 */
function endGrain(seed, row, left, ply, height) {
  let d = '';
  let y = 1.5 + 2 * chance(seed, row, 0, 4);
  for (let k = 0; y < height - 1; k++) {
    const slant = (chance(seed, row, k, 5) - 0.5) * 1.1;
    d += `M${n(left + 0.5)} ${n(y - slant / 2)}L${n(left + ply - 0.5)} ${n(y + slant / 2)}`;
    y += 3.4 + 0.9 * chance(seed, row, k, 6);
  }
  return d;
}

/**
 * Strands of OSB: along the face within 32°, no two alike.
 * @param {Cut} cut
 */
function strands(cut) {
  const { width, height } = cut;
  const seed = hash(`${cut.seed}/strands`);
  const columns = Math.max(1, Math.round((width - 2) / 4.4));
  const step = (width - 2) / columns;
  const pitch = 5.2;
  let d = '';
  for (let row = 0; row * pitch < height; row++) {
    for (let column = 0; column < columns; column++) {
      if (chance(seed, row, column, 0) > 0.88) continue;
      const length = 2 + 3.5 * chance(seed, row, column, 1);
      const angle = ((chance(seed, row, column, 2) - 0.5) * 64 * Math.PI) / 180;
      const dx = (length / 2) * Math.sin(angle);
      const dy = (length / 2) * Math.cos(angle);
      const x = clamp(1 + (column + chance(seed, row, column, 3)) * step, 1.4 + Math.abs(dx), width - 1.4 - Math.abs(dx));
      const y = clamp((row + chance(seed, row, column, 4)) * pitch, dy + 0.5, height - dy - 0.5);
      d += `M${n(x - dx)} ${n(y - dy)}L${n(x + dx)} ${n(y + dy)}`;
    }
  }
  return strokes([d, 'h-strand']);
}

/**
 * Fine dust, one dot to an area.
 * @param {Cut} cut
 * @param {number} area px²
 * @param {number} size dot, px
 */
function dust(cut, area, size) {
  const { width, height } = cut;
  const seed = hash(`${cut.seed}/dust`);
  const pitch = Math.sqrt(area);
  const columns = Math.max(1, Math.round((width - 2) / pitch));
  const step = (width - 2) / columns;
  let d = '';
  for (let row = 0; row * pitch < height; row++) {
    for (let column = 0; column < columns; column++) {
      const x = clamp(1 + (column + chance(seed, row, column, 0)) * step, 1, width - 1);
      const y = (row + chance(seed, row, column, 1)) * pitch;
      if (y > 0.6 && y < height - 0.6) d += dot(x, y);
    }
  }
  return strokes([d, size > 0.75 ? 'h-dot h-coarse' : 'h-dot h-dust']);
}

/**
 * Brick: pairs of lines at 45°.
 * @param {Cut} cut
 */
function courses(cut) {
  return strokes([slanted(cut.width, cut.height, [0, 3], 11), 'h-line']);
}

/**
 * Glass: short glints, far apart.
 * @param {Cut} cut
 */
function glints(cut) {
  const { width, height } = cut;
  const seed = hash(`${cut.seed}/glints`);
  const reach = Math.min(8, Math.max(1.5, width - 2));
  let d = '';
  for (let row = 0; row * 26 < height; row++) {
    const y = row * 26 + 4 + 10 * chance(seed, row, 0, 0);
    for (let k = 0; k < 3; k++) {
      const top = y + 3.5 * k;
      const x = clamp((width - reach) / 2, 0.8, width);
      if (top + reach < height - 1) d += `M${n(x)} ${n(top + reach)}L${n(Math.min(width - 0.8, x + reach))} ${n(top)}`;
    }
  }
  if (cut.kind === 'laminated') d += `M${n(width / 2)} 0V${n(height)}`;
  return strokes([d, 'h-line']);
}

/**
 * Parallel lines at 45° within a rectangle, in repeating offsets.
 * @param {number} width
 * @param {number} height
 * @param {number[]} offsets
 * @param {number} pitch
 */
export function slanted(width, height, offsets, pitch) {
  let d = '';
  for (let start = 0; start < width + height; start += pitch) {
    for (const offset of offsets) {
      const c = start + offset; // x + y = c
      const x0 = Math.max(0, c - height);
      const x1 = Math.min(width, c);
      if (x1 - x0 > 0.5) d += `M${n(x0)} ${n(c - x0)}L${n(x1)} ${n(c - x1)}`;
    }
  }
  return d;
}

/** Half a loop of a batt, px. */
const LOOP = 8.4;

/**
 * A batt: loops across its depth, from `from` towards `to` (either way), the
 * first bulb at the far end. To be clipped to its rectangle.
 * @param {number} left
 * @param {number} right
 * @param {number} from y of the frame the loops start at
 * @param {number} to
 * @returns {string}
 */
export function batt(left, right, from, to) {
  const depth = right - left;
  if (!(depth > 3) || !Number.isFinite(from) || !Number.isFinite(to)) return '';
  const way = to >= from ? 1 : -1;
  const r = Math.min(0.8 * LOOP, depth / 3);
  const half = r / 0.8;
  const flat = depth - 2 * r;
  let d = '';
  let right_ = true;
  for (let y = from + 0.5 * half * way; (y - to) * way < 2 * half; y += half * way) {
    const x = right_ ? right - r : left + r;
    if (d === '') d = `M${n(x)} ${n(y - r * way)}`;
    // The bulb, then the long side to where the next one begins.
    const sweep = right_ === way > 0 ? 1 : 0;
    d += `A${n(r)} ${n(r)} 0 0 ${sweep} ${n(x)} ${n(y + r * way)}`;
    const nx = right_ ? left + r : right - r;
    const ny = y + (half - r) * way;
    const bend = 0.45 * flat * (right_ ? -1 : 1);
    d += `C${n(x + bend)} ${n(y + r * way)} ${n(nx - bend)} ${n(ny)} ${n(nx)} ${n(ny)}`;
    right_ = !right_;
  }
  return d;
}

/**
 * @param {...[string, string]} pairs
 * @returns {Stroke[]}
 */
function strokes(...pairs) {
  return pairs.filter(([d]) => d !== '').map(([d, css]) => ({ d, css }));
}

/**
 * @param {number} x
 * @param {number} y
 */
function dot(x, y) {
  return `M${n(x)} ${n(y)}h.01`;
}

/** FNV-1a. @param {string} text */
export function hash(text) {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h >>> 0;
}

/**
 * A number in [0, 1) that belongs to one place of one board.
 * @param {number} seed
 * @param {number} row
 * @param {number} column
 * @param {number} what
 */
function chance(seed, row, column, what) {
  let h = seed ^ Math.imul(row + 1, 0x9e3779b1) ^ Math.imul(column + 1, 0x85ebca6b) ^ Math.imul(what + 1, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32;
}

/**
 * @param {number} x
 * @param {number} low
 * @param {number} high
 */
function clamp(x, low, high) {
  return high < low ? (low + high) / 2 : Math.min(high, Math.max(low, x));
}

/** @param {number} x */
function sane(x) {
  return Number.isFinite(x) ? Math.max(0, Math.min(4000, x)) : 0;
}

/** @param {number} x */
function round(x) {
  return Math.round(x * 10) / 10;
}

/** A coordinate as short as a tenth of a pixel allows. @param {number} x */
export function n(x) {
  return String(round(x));
}
