// Reports made up for the tests of the drawings.

/** @typedef {import('./report.js').Report} Report */

const INCH = 0.0254;

/** @param {number} v */
export const value = (v) => ({ v, origin: 'computed' });

/**
 * @param {string} id
 * @param {number} mm
 * @param {string} [kind]
 * @param {object} [more]
 * @returns {import('./report.js').LayerReport}
 */
export function board(id, mm, kind = 'gypsum', more = {}) {
  return { id, board: id, short: kind, nominal: '', kind, density: 650, thickness: value(mm / 1000), ...more };
}

/** @param {...import('./report.js').LayerReport} layers */
export function leaf(...layers) {
  return { layers, thickness: value(layers.reduce((sum, layer) => sum + (layer.thickness?.v ?? 0), 0)) };
}

/**
 * @param {string} kind
 * @param {number} [inches]
 */
export function held(kind, inches = 0) {
  return { fixing: kind, kind, name: kind, standOff: value(inches * INCH) };
}

/**
 * @param {object} [more]
 * @returns {import('./report.js').GapReport}
 */
export function gap(more = {}) {
  return {
    id: 'gap',
    depth: value(5.125 * INCH),
    frame: 'wood',
    frameKind: 'wood',
    frameName: '2×4 studs',
    frameDepth: value(3.5 * INCH),
    frameWidth: value(1.5 * INCH),
    fill: 'wool',
    fillName: 'wool 3 1/2 in',
    fillDepth: value(3.5 * INCH),
    near: held('clip', 1.625),
    far: held('screwed'),
    ...more,
  };
}

/** @returns {import('./report.js').Figures} */
export function figures() {
  const none = null;
  return {
    mass: value(21.4),
    cost: value(24),
    clip: value(0.95),
    clipLoad: value(18),
    bass: value(19),
    rating: value(57),
    built: value(51),
    thickness: value(0.184),
    leafThick: value(0.0413),
    stack: value(63.5),
    stackCost: none,
    load: 'close',
    c: -4,
    ctr: -11,
  };
}

/**
 * @param {object} [more]
 * @returns {Report}
 */
export function report(more = {}) {
  return {
    surface: 's',
    leaf: 0,
    ratingIs: 'STC',
    currency: '$',
    yours: figures(),
    reference: figures(),
    refLayers: [board('r1', 15.9), board('r2', 15.9)],
    leaves: [
      leaf(board('a', 12.7, 'gypsum', { screw: value(2 * INCH) }), board('b', 15.9, 'plywood'), board('c', 12.7)),
      leaf(board('f', 12.7, 'gypsum', { there: true })),
    ],
    gaps: [gap()],
    verdicts: {},
    cautions: [],
    ...more,
  };
}

const HZ = [31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000];
const TL = [20, 18.4, 17, 15, 20, 27, 33, 38.5, 44, 48, 52, 55, 58, 61, 63, 64.5, 65, 66, 65, 61, 59, 63, 66];

/**
 * @param {object} [more]
 * @returns {import('./report.js').SoundReport}
 */
export function sound(more = {}) {
  return {
    hz: HZ,
    tl: TL,
    low: TL.map((r) => r - 4),
    high: TL.map((r) => r + 4),
    ref: TL.map((r) => r + 1),
    octaves: [63, 125, 250, 500, 1000, 2000, 4000].map((hz, k) => ({ hz, tl: 17 + 7 * k, spread: 4, ref: 18 + 7 * k })),
    stc: 57,
    rw: 58,
    c: -4,
    ctr: -11,
    c50: -6,
    ctr50: -17,
    oitc: 44,
    spread: { rating: 3, bass: 6, family: 'wood studs with channel', tests: 4, near: true },
    resonances: [58],
    dips: [
      { hz: 1250, leaf: 0, layers: [1], short: 'Plywood', kind: 'plywood', both: false },
      { hz: 3150, leaf: 0, layers: [0, 2], short: 'Gypsum', kind: 'gypsum', both: true },
    ],
    decides: 6,
    sentences: [],
    ...more,
  };
}

/**
 * The text of a template with all its values, tags included.
 * @param {unknown} part
 * @returns {string}
 */
export function flat(part) {
  if (Array.isArray(part)) return part.map(flat).join('');
  if (typeof part === 'function') return '';
  if (part && typeof part === 'object' && 'strings' in part && 'values' in part) {
    const { strings, values } = /** @type {{strings: string[], values: unknown[]}} */ (part);
    return strings.map((text, i) => text + (i < values.length ? flat(values[i]) : '')).join('');
  }
  return typeof part === 'symbol' || part === undefined || part === null ? '' : String(part);
}
