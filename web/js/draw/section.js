// The section through a build-up, drawn to scale like a builder's detail: room
// on the left, one stud whole, every material by its hatch. layout() is plain
// geometry, sectionView() is the picture.

import { nothing, svg } from 'lit-html';
import { length, lengthText } from './fraction.js';
import { batt, hatch, masonry, n, solid } from './hatch.js';
import { textWidth } from './measure.js';
import { spread } from './place.js';

/**
 * @typedef {import('../types.d.ts').Report} Report
 * @typedef {import('../types.d.ts').LayerReport} LayerReport
 * @typedef {import('../types.d.ts').GapReport} GapReport
 * @typedef {import('../types.d.ts').HeldReport} HeldReport
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {'phone' | 'desk' | 'print' | 'first'} Mode
 * @typedef {'us' | 'si'} Units
 */

/**
 * @typedef {object} Options
 * @property {Units} units
 * @property {number} width of the place the drawing stands in, px
 * @property {Mode} mode
 * @property {{surfaces: {id: string, kind?: string, beyond?: string}[]}} [plan] for the names of the spaces beside it
 * @property {string} [selected] id of a layer or a gap
 * @property {(id: string) => void} [onSelect]
 */

const INCH = 0.0254;
const PX_PER_INCH = 96; // of CSS, on paper

/** Sizes of each use, px: height of what is cut, room for words above, margin for names beside, and so on. */
const USES = {
  phone: { height: 154, above: 33, side: 26, most: 64, text: 16, dims: 1, named: true, screw: 0.16, stud: 0.546 },
  desk: { height: 210, above: 33, side: 36, most: 76, text: 16, dims: 2, named: true, screw: 0.16, stud: 0.57 },
  print: { height: 122, above: 27, side: 23, most: PX_PER_INCH, text: 13.3, dims: 2, named: true, screw: 0.16, stud: 0.62 },
  first: { height: 104, above: 9, side: 8, most: 46, text: 16, dims: 1, named: false, screw: 0.11, stud: 0.53 },
};
/** The scales a drawing on paper may have, 1 to these. */
const RATIOS = [2, 3, 4, 5, 6, 8, 10, 20];
/** Below this the deepest gap is cut by a break line instead of everything becoming smaller, px per metre. */
const LEAST = 18 / INCH;
/** Narrower boards get their number on a leader, px. */
const NARROW = 16;
/** Overhang of the lines that cut the wall off, px. */
const OVERHANG = 8;
/** Depth of a hat channel, and how far in its dashed inner flange lies. */
const CHANNEL = 0.875 * INCH;
const FLANGE = 0.32;
const STUD_WIDTH = 0.038;

/**
 * @typedef {object} Board
 * @property {LayerReport} layer
 * @property {number} x
 * @property {number} width
 */
/**
 * @typedef {object} Stud a member of the frame
 * @property {'wood' | 'steel' | 'i-joist' | 'z'} shape
 * @property {number} x
 * @property {number} width
 * @property {number} y
 * @property {number} height
 */
/**
 * @typedef {object} Holder what holds a leaf off its frame, drawn in the direction of way
 * @property {'clip' | 'channel' | 'hat'} shape
 * @property {number} x back of the leaf
 * @property {1 | -1} way
 * @property {number} stand px
 * @property {number} y centre
 * @property {number} bite px the screw goes into the frame
 */
/**
 * @typedef {object} Space a gap
 * @property {GapReport} gap
 * @property {number} x
 * @property {number} width
 * @property {{x: number, y: number, width: number, height: number, from: number, to: number}[]} batts
 * @property {boolean} soft the fill is in the house already
 * @property {Stud[]} studs
 * @property {Holder[]} holders
 * @property {number | undefined} broken x of the break line that shortens it
 * @property {number[]} splits x of what the dimension line splits it at
 * @property {number[]} depths the true length of each part, m
 */
/**
 * @typedef {{x: number, at: number, text: string, css: string, leader: boolean, id: string}} Label
 * @typedef {{from: number, to: number, metres: number}} Part
 */
/**
 * @typedef {object} Layout
 * @property {number} width
 * @property {number} height whole picture
 * @property {number} top y of the upper cut
 * @property {number} bottom y of the lower cut
 * @property {number} left
 * @property {number} right
 * @property {number} scale px per metre
 * @property {number} ratio on paper: 1 to this
 * @property {{boards: Board[], x: number, width: number, there: boolean}[]} leaves
 * @property {Space[]} gaps
 * @property {Label[]} labels
 * @property {Part[][]} dims
 * @property {{x: number, tip: number, y: number, way: 1 | -1, over: boolean} | undefined} screw
 * @property {number | undefined} zigzag x
 * @property {boolean} shortened
 */

/**
 * Geometry of the section; every number in it is finite whatever the report holds.
 * @param {Report} report
 * @param {Options} options
 * @returns {Layout}
 */
export function layout(report, options) {
  const use = USES[options.mode] ?? USES.phone;
  const width = Math.max(160, positive(options.width) || 358);
  const leaves = report.leaves ?? [];
  const gaps = (report.gaps ?? []).slice(0, Math.max(0, leaves.length - 1));
  const solidDepth = leaves.reduce((sum, leaf) => sum + leafDepth(leaf), 0);
  const gapDepths = gaps.map((gap) => metres(gap.depth));
  const total = solidDepth + sum(gapDepths);

  const room = width - 2 * use.side;
  const print = options.mode === 'print';
  const ratio = print ? (RATIOS.find((by) => (total * PX_PER_INCH) / INCH / by <= room) ?? 50) : 1;
  const scale0 = print ? PX_PER_INCH / INCH / ratio : Math.min(room / Math.max(total, 0.001), use.most / INCH);
  const shorten = !print && scale0 < LEAST ? cutGaps(gapDepths, total, room) : undefined;
  const scale = shorten ? LEAST : scale0;
  const taken = total * scale - sum(shorten ?? []) * scale;
  const left = (width - taken) / 2;

  const narrow = use.named && (leaves[report.leaf]?.layers ?? []).some((layer) => metres(layer.thickness) * scale < NARROW);
  const top = use.above + (narrow ? 14 : 0);
  const bottom = top + use.height;

  let x = left;
  /** @type {Layout['leaves']} */
  const drawnLeaves = [];
  /** @type {Space[]} */
  const drawnGaps = [];
  leaves.forEach((leaf, i) => {
    const from = x;
    const boards = (leaf.layers ?? []).map((layer) => {
      const board = { layer, x, width: metres(layer.thickness) * scale };
      x += board.width;
      return board;
    });
    drawnLeaves.push({ boards, x: from, width: x - from, there: boards.length > 0 && boards.every((b) => b.layer.there === true) });
    if (i >= gaps.length) return;
    const space = layGap(gaps[i], { x, scale, removed: shorten?.[i] ?? 0, top, bottom, stud: use.stud });
    drawnGaps.push(space);
    x += space.width;
  });

  /** @type {Layout} */
  const plan = {
    width,
    height: 0,
    top,
    bottom,
    left,
    right: x,
    scale,
    ratio,
    leaves: drawnLeaves,
    gaps: drawnGaps,
    labels: [],
    dims: [],
    screw: longestScrew(drawnLeaves, scale, top + use.screw * use.height),
    zigzag: zigzag(drawnGaps, drawnLeaves),
    shortened: shorten?.some((cut) => cut > 0) ?? false,
  };
  if (use.named) plan.labels = labels(plan, report, options, use.text);
  plan.dims = dimensions(plan, report, use.dims);
  const line = use.text * 1.2;
  plan.height = bottom + 16 + plan.dims.length * (use.dims === 2 ? 35 : 24) - (use.dims === 2 ? 10 : 0) + (plan.shortened ? line : 0);
  return plan;
}

/**
 * How much of each gap is left out so that the rest fits at the least scale, m;
 * undefined where that is not enough.
 * @param {number[]} depths
 * @param {number} total
 * @param {number} room px
 */
function cutGaps(depths, total, room) {
  let excess = total - room / LEAST;
  const kept = 4 * INCH;
  const cuts = depths.map(() => 0);
  for (const i of depths.map((_, k) => k).sort((a, b) => depths[b] - depths[a])) {
    cuts[i] = Math.min(excess, Math.max(0, depths[i] - kept));
    excess -= cuts[i];
  }
  return excess > 1e-6 ? undefined : cuts;
}

/**
 * @param {GapReport} gap
 * @param {{x: number, scale: number, removed: number, top: number, bottom: number, stud: number}} place
 * @returns {Space}
 */
function layGap(gap, place) {
  const { scale, removed, top, bottom } = place;
  const depth = metres(gap.depth);
  const near = Math.min(metres(gap.near?.standOff), depth);
  const far = Math.min(metres(gap.far?.standOff), depth - near);
  const zone = depth - near - far;
  // Where the break is taken out: the middle of the frame's part.
  const cutFrom = clamp(near + zone / 2 - removed / 2, 0, depth - removed);
  /** @param {number} u metres from the back of the near leaf */
  const X = (u) => place.x + (u <= cutFrom ? u : Math.max(cutFrom, u - removed)) * scale;

  const studs = frame(gap, near, zone, X, place);
  const single = studs.length === 1 ? studs[0] : undefined;

  const end = near + zone;
  const fill = gap.fill ? (gap.fillDepth ? metres(gap.fillDepth) : zone) : 0;
  const back = fill <= zone + 1e-6 ? end : depth;
  const front = Math.max(0, back - fill);
  const box = { x: X(front), width: X(back) - X(front) };
  const batts = [];
  if (box.width > 3) {
    if (single && box.x < single.x + single.width - 1 && box.x + box.width > single.x + 1) {
      batts.push({ ...box, y: top, height: Math.max(0, single.y - top), from: single.y, to: top });
      const under = single.y + single.height;
      batts.push({ ...box, y: under, height: Math.max(0, bottom - under), from: under, to: bottom });
    } else batts.push({ ...box, y: top, height: bottom - top, from: top - 5, to: bottom });
  }

  /** @type {Holder[]} */
  const holders = [];
  const ends = /** @type {const} */ ([
    [gap.near, 0, 1, near],
    [gap.far, depth, -1, far],
  ]);
  for (const [held, at, way, stand] of ends) {
    const shape = holderShape(held, stand);
    if (!shape) continue;
    const stud = way > 0 ? studs[0] : studs.at(-1);
    holders.push({
      shape,
      x: X(at),
      way,
      stand: stand * scale,
      y: stud ? stud.y + stud.height / 2 : top + place.stud * (bottom - top),
      bite: Math.min(1.25 * INCH * scale, stud ? stud.width * 0.8 : 1.25 * INCH * scale),
    });
  }

  const inner = [...(near > 1e-6 ? [near] : []), ...(far > 1e-6 ? [near + zone] : [])];
  const depths = [near, zone, far].filter((u, i) => u > 1e-6 || (i === 1 && near + far < 1e-6));
  return {
    gap,
    x: place.x,
    width: X(depth) - place.x,
    batts,
    soft: gap.fillThere === true,
    studs,
    holders,
    broken: removed > 0 ? X(cutFrom) : undefined,
    splits: zone > 1e-6 ? inner.map(X) : [],
    depths: zone > 1e-6 ? depths : [depth],
  };
}

/**
 * @param {HeldReport | undefined} held
 * @param {number} stand m
 * @returns {Holder['shape'] | undefined}
 */
function holderShape(held, stand) {
  if (!held || stand <= 1e-6) return undefined;
  if (held.kind === 'clip') return 'clip';
  if (held.kind === 'channel') return 'channel';
  return held.kind === 'screwed' ? 'hat' : undefined;
}

/**
 * The members of a frame that the section shows.
 * @param {GapReport} gap
 * @param {number} near m to the frame's part of the gap
 * @param {number} zone m of it
 * @param {(u: number) => number} X
 * @param {{top: number, bottom: number, scale: number, stud: number}} place
 * @returns {Stud[]}
 */
function frame(gap, near, zone, X, place) {
  const kind = gap.frameKind;
  if (!kind || kind === 'none' || kind === 'bare' || zone <= 1e-6) return [];
  const depth = Math.min(metres(gap.frameDepth) || zone, zone);
  const high = (metres(gap.frameWidth) || STUD_WIDTH) * place.scale;
  const tall = place.bottom - place.top;
  const height = Math.min(high, tall * 0.72);
  const shape = studShape(gap);
  /**
   * @param {number} from m
   * @param {number} at share of the height
   * @returns {Stud}
   */
  const stud = (from, at) => ({ shape, x: X(from), width: X(from + depth) - X(from), y: place.top + at * tall - height / 2, height });
  const first = near;
  const last = near + zone - depth;
  if (kind === 'double') return [stud(first, place.stud), stud(last, place.stud)];
  if (kind === 'staggered') return [stud(first, 0.28), stud(last, 0.74)];
  return [stud(gap.near?.kind === 'untied' ? last : first, place.stud)];
}

/**
 * @param {GapReport} gap
 * @returns {Stud['shape']}
 */
function studShape(gap) {
  if (gap.frameKind === 'z-bar') return 'z';
  if (gap.frameKind === 'steel' || gap.frameKind === 'steel joist') return 'steel';
  const words = `${gap.frame} ${gap.frameName}`.toLowerCase();
  if (gap.frameKind === 'standing' && !/wood|timber/.test(words)) return 'steel';
  return /\bi[- _]?joist/.test(words) ? 'i-joist' : 'wood';
}

/**
 * The longest screw of the leaf that is being hung, from the face of the board it holds.
 * @param {Layout['leaves']} leaves
 * @param {number} scale
 * @param {number} y
 * @returns {Layout['screw']}
 */
function longestScrew(leaves, scale, y) {
  // A leaf alone has nothing to be screwed to; one between two gaps does not say from which side.
  const outer = leaves.length > 1 ? [leaves[0], leaves[leaves.length - 1]] : [];
  /** @type {Layout['screw'] & {reach: number} | undefined} */
  let longest;
  outer.forEach((leaf, i) => {
    const way = i === 0 ? 1 : -1;
    for (const board of leaf.boards) {
      const reach = metres(board.layer.screw);
      if (board.layer.there || reach <= 0 || (longest && longest.reach >= reach)) continue;
      const x = way > 0 ? board.x : board.x + board.width;
      const most = metres(board.layer.screwMax);
      longest = { x, tip: x + way * reach * scale, y, way, over: most > 0 && reach > most * 1.001, reach };
    }
  });
  return longest;
}

/**
 * Where the lines that cut the wall off have their break.
 * @param {Space[]} gaps
 * @param {Layout['leaves']} leaves
 */
function zigzag(gaps, leaves) {
  const widest = gaps.reduce((/** @type {Space | undefined} */ best, gap) => (best && best.width >= gap.width ? best : gap), undefined);
  if (!widest || widest.width < 60) {
    const thick = leaves.find((leaf) => leaf.width >= 60);
    if (thick) return thick.x + thick.width * 0.6;
    if (!widest || widest.width < 24) return undefined;
  }
  const middle = widest.x + widest.width / 2;
  const stud = widest.studs[0];
  const wanted = stud ? stud.x + 0.4 * stud.width : middle + 25;
  // Clear of the word over the gap.
  const x = Math.abs(wanted - middle) < 24 ? middle + 24 : wanted;
  return clamp(x, widest.x + 10, widest.x + widest.width - 10);
}

/**
 * Numbers of the leaf being edited, and words for the rest.
 * @param {Layout} plan
 * @param {Report} report
 * @param {Options} options
 * @param {number} size
 * @returns {Label[]}
 */
function labels(plan, report, options, size) {
  /** @type {(Label & {width: number, weight: number, room: number})[]} */
  const all = [];
  /**
   * @param {{x: number, width: number}} over
   * @param {Omit<Label, 'x' | 'at'> & {weight: number}} label
   */
  const add = (over, label) => {
    const x = over.x + over.width / 2;
    all.push({ ...label, x, at: x, room: over.width, width: textWidth(label.text, size, options.selected === label.id ? 700 : 400) });
  };
  /** @param {boolean} chosen @param {string} [css] */
  const paint = (chosen, css = '') => `d-text ${chosen ? 'd-chosen' : css}`.trim();
  plan.leaves.forEach((leaf, i) => {
    if (i === report.leaf) {
      const narrow = leaf.boards.some((board) => board.width < NARROW);
      leaf.boards.forEach((board, k) => {
        const chosen = board.layer.id === options.selected;
        const outer = k === 0 || k === leaf.boards.length - 1;
        add(board, { text: String(k + 1), css: paint(chosen), id: board.layer.id, leader: narrow, weight: chosen ? 3 : outer ? 2 : 1 });
      });
    } else if (leaf.boards.length) {
      const chosen = leaf.boards.some((board) => board.layer.id === options.selected);
      const id = chosen ? (options.selected ?? '') : '';
      add(leaf, { text: leafName(i, plan.leaves.length), css: paint(chosen, 'd-soft'), id, leader: false, weight: 2 });
    }
    const gap = plan.gaps[i];
    if (gap && gap.width > 24) {
      const chosen = gap.gap.id === options.selected;
      add(gap, { text: 'gap', css: paint(chosen, 'd-soft'), id: gap.gap.id, leader: false, weight: chosen ? 3 : 0 });
    }
  });
  // Where they would touch, words for gaps go first, narrowest first, then every other inner number.
  for (let kept = all; kept.length; ) {
    const centres = spread(
      kept.map((label) => ({ at: label.x, width: label.width })),
      -6,
      plan.width + 6,
      size * 0.36,
    );
    const gaps = kept.filter((label) => label.weight === 0);
    const pushed = centres && gaps.length > 0 && kept.some((label, k) => !label.leader && Math.abs(centres[k] - label.x) > 6);
    if (centres && !pushed)
      return kept.map((label, k) => ({ x: label.x, at: centres[k], text: label.text, css: label.css, leader: label.leader, id: label.id }));
    kept = thinned(kept);
  }
  return [];
}

/**
 * @template {{weight: number, room: number}} T
 * @param {T[]} kept
 */
function thinned(kept) {
  const least = Math.min(...kept.map((label) => label.weight));
  const candidates = kept.filter((label) => label.weight === least);
  const narrowest = candidates.reduce((a, b) => (b.room < a.room ? b : a));
  const gone = new Set(least === 0 ? [narrowest] : candidates.length < 3 ? candidates : candidates.filter((_, k) => k % 2 === 1));
  return kept.filter((label) => !gone.has(label));
}

/**
 * @param {number} i
 * @param {number} count
 */
function leafName(i, count) {
  if (i === 0) return 'near';
  if (i === count - 1) return 'far';
  return count === 3 ? 'middle' : i === 1 ? 'second' : 'third';
}

/**
 * What the dimension lines measure.
 * @param {Layout} plan
 * @param {Report} report
 * @param {number} lines
 * @returns {Part[][]}
 */
function dimensions(plan, report, lines) {
  /** @type {Part[]} */
  const parts = [];
  plan.leaves.forEach((leaf, i) => {
    parts.push({ from: leaf.x, to: leaf.x + leaf.width, metres: leafDepth(report.leaves[i]) });
    const gap = plan.gaps[i];
    if (!gap) return;
    if (lines < 2 || gap.splits.length + 1 !== gap.depths.length) {
      parts.push({ from: gap.x, to: gap.x + gap.width, metres: metres(gap.gap.depth) });
      return;
    }
    const stops = [gap.x, ...gap.splits, gap.x + gap.width];
    gap.depths.forEach((depth, k) => {
      parts.push({ from: stops[k], to: stops[k + 1], metres: depth });
    });
  });
  const kept = parts.filter((part) => part.metres > 1e-6);
  const whole = { from: plan.left, to: plan.right, metres: sum(kept.map((part) => part.metres)) };
  return lines > 1 && kept.length > 1 ? [kept, [whole]] : [kept];
}

/**
 * The section as SVG.
 * @param {Report} report
 * @param {Options} options
 */
export function sectionView(report, options) {
  const plan = layout(report, options);
  const use = USES[options.mode] ?? USES.phone;
  const { top, bottom } = plan;
  const tall = bottom - top;
  const boards = plan.leaves.flatMap((leaf) => leaf.boards);
  const chosen = boards.find((board) => board.layer.id === options.selected);
  const chosenGap = plan.gaps.find((gap) => gap.gap.id === options.selected);
  return svg`<svg class="drawing section ${options.mode}" role="img" aria-label=${describe(report, options)} width=${n(plan.width)} height=${n(plan.height)} viewBox="0 0 ${n(plan.width)} ${n(plan.height)}" font-size=${use.text}>
    ${boards.map((board) => ground(board, top, tall))}
    ${chosen ? svg`<rect class="d-wash" x=${n(chosen.x)} y=${n(top)} width=${n(chosen.width)} height=${n(tall)} />` : nothing}
    ${boards.map((board) => face(board, top, tall))}
    ${plan.gaps.map((gap) => space(gap, top, tall))}
    ${plan.leaves.map((leaf) => edges(leaf, top, bottom))}
    <path class="d-cut" d=${cutLine(plan, top)} />
    <path class="d-cut" d=${cutLine(plan, bottom)} />
    ${plan.gaps.map((gap) => (gap.broken === undefined ? nothing : shortened(gap.broken, top, bottom)))}
    ${plan.screw ? screw(plan.screw) : nothing}
    ${chosen ? svg`<rect class="d-select" x=${n(chosen.x)} y=${n(top - 1)} width=${n(chosen.width)} height=${n(tall + 2)} />` : nothing}
    ${chosenGap ? svg`<path class="d-select" d=${gapEdge(plan, chosenGap, top) + gapEdge(plan, chosenGap, bottom)} />` : nothing}
    ${plan.labels.map((label) => labelView(label, top))}
    ${use.named ? names(plan, report, options) : nothing}
    ${plan.dims.map((parts, row) => dimensionLine(parts, bottom + (use.dims === 2 ? 15.5 + row * 34.5 : 14), plan, options, use, row > 0))}
    ${foot(plan)}
    ${options.onSelect ? hits(plan, options.onSelect) : nothing}
  </svg>`;
}

/**
 * @param {Board} board
 * @param {number} top
 * @param {number} tall
 */
function ground(board, top, tall) {
  const css = solid(board.layer.kind) ? 'd-solid' : board.layer.there ? 'd-tint' : '';
  return css ? svg`<rect class=${css} x=${n(board.x)} y=${n(top)} width=${n(board.width)} height=${n(tall)} />` : nothing;
}

/**
 * The hatch of one board.
 * @param {Board} board
 * @param {number} top
 * @param {number} tall
 */
function face(board, top, tall) {
  const { layer } = board;
  const strokes = hatch({ kind: layer.kind, density: layer.density, seed: layer.id || layer.board || '', width: board.width, height: tall });
  const css = `hatch${masonry(layer.kind) ? ' stone' : layer.there ? ' there' : ''}`;
  return svg`<g class=${css} data-layer=${layer.id} transform="translate(${n(board.x)} ${n(top)})">${strokes.map((stroke) => svg`<path class=${stroke.css} d=${stroke.d} />`)}</g>`;
}

/**
 * Frame, fill and what holds the leaves.
 * @param {Space} space_
 * @param {number} top
 * @param {number} tall
 */
function space(space_, top, tall) {
  return svg`
    ${space_.batts.map((b) => svg`<svg x=${n(b.x)} y=${n(b.y)} width=${n(b.width)} height=${n(b.height)}><path class="d-batt" d=${batt(0.6, b.width - 0.6, b.from - b.y, b.to - b.y)} /></svg>`)}
    ${space_.studs.map((s) => stud(s))}
    ${space_.holders.map((h) => holder(h, top, tall))}`;
}

/** @param {Stud} s */
function stud(s) {
  const right = s.x + s.width;
  const low = s.y + s.height;
  const box = (/** @type {string} */ css) => svg`<rect class=${css} x=${n(s.x)} y=${n(s.y)} width=${n(s.width)} height=${n(s.height)} />`;
  if (s.shape === 'steel') {
    const lip = Math.min(s.height * 0.28, 9);
    const d = `M${n(s.x + lip)} ${n(low)}H${n(s.x)}V${n(s.y)}H${n(right)}V${n(low)}H${n(right - lip)}`;
    return svg`${box('d-paper')}<path class="d-steel" d=${d} />`;
  }
  if (s.shape === 'z') {
    const d = `M${n(s.x)} ${n(low)}V${n(s.y + s.height / 2)}H${n(right)}V${n(s.y)}`;
    return svg`${box('d-paper')}<path class="d-steel" d=${d} />`;
  }
  if (s.shape === 'i-joist') {
    const flange = Math.min(s.width * 0.16, s.height);
    const web = Math.max(2, s.height * 0.22);
    const y = s.y + (s.height - web) / 2;
    return svg`${box('d-paper')}<rect class="d-wood" x=${n(s.x + flange)} y=${n(y)} width=${n(s.width - 2 * flange)} height=${n(web)} />
      ${[s.x, right - flange].map((x) => svg`<rect class="d-wood" x=${n(x)} y=${n(s.y)} width=${n(flange)} height=${n(s.height)} /><path class="d-cross" d="M${n(x)} ${n(s.y)}L${n(x + flange)} ${n(low)}M${n(x)} ${n(low)}L${n(x + flange)} ${n(s.y)}" />`)}`;
  }
  return svg`${box('d-wood')}<path class="d-cross" d="M${n(s.x)} ${n(s.y)}L${n(right)} ${n(low)}M${n(s.x)} ${n(low)}L${n(right)} ${n(s.y)}" />`;
}

/**
 * A channel, with its rubber clip where it has one: the channel runs on past
 * the picture, the clip sits on one stud.
 * @param {Holder} h
 * @param {number} top
 * @param {number} tall
 */
function holder(h, top, tall) {
  // Lengths of clip and screw are those of a common clip, from the scale of its stand-off of 1 5/8 in.
  const px = h.shape === 'clip' ? h.stand / 1.625 : h.stand / 0.5;
  const channel = h.shape === 'clip' ? Math.min((CHANNEL / INCH) * px, h.stand * 0.7) : h.stand;
  /** @param {number} u px from the leaf */
  const X = (u) => n(h.x + h.way * u);
  const flange = svg`<path class="d-flange" d="M${X(channel * (h.shape === 'channel' ? 0.5 : FLANGE))} ${n(top)}v${n(tall)}" />`;
  const back = svg`<path class="d-steel" d="M${X(channel)} ${n(top)}v${n(tall)}" />`;
  const { y } = h;
  if (h.shape === 'hat') return svg`${flange}${back}`;
  if (h.shape === 'channel') {
    // The head lies in the channel, as wide as it can be drawn.
    const head = Math.min(0.14 * px * 0.5 + 1, h.stand * 0.3);
    const half = Math.min(0.18 * px, 8);
    return svg`${flange}${back}
      <path class="d-fill" d="M${X(channel - head)} ${n(y - half)}H${X(channel - 0.8)}V${n(y + half)}H${X(channel - head)}Z" />
      <path class="d-shank" d="M${X(channel)} ${n(y)}H${X(h.stand + h.bite * 0.8)}" />`;
  }
  const plate = channel + (h.stand - channel) * 0.36;
  const wide = 0.568 * px;
  const slim = 0.41 * px;
  const block = `M${X(channel)} ${n(y - wide)}H${X(plate)}V${n(y - slim)}H${X(h.stand)}V${n(y + slim)}H${X(plate)}V${n(y + wide)}H${X(channel)}Z`;
  const headFrom = Math.max(0, channel - 0.3 * px);
  const headTo = Math.max(0.6, channel - 0.12 * px);
  const half = 0.18 * px;
  return svg`${flange}${back}
    <path class="d-rubber" d=${block} />
    <path class="d-fill" d="M${X(headFrom)} ${n(y - half)}H${X(headTo)}V${n(y + half)}H${X(headFrom)}Z" />
    <path class="d-shank" d="M${X(headTo)} ${n(y)}H${X(channel)}M${X(h.stand)} ${n(y)}H${X(h.stand + h.bite)}" />
    <path class="d-through" d="M${X(channel)} ${n(y)}H${X(h.stand)}" />`;
}

/**
 * Faces, joints and what is between two boards.
 * @param {Layout['leaves'][number]} leaf
 * @param {number} top
 * @param {number} bottom
 */
function edges(leaf, top, bottom) {
  if (!leaf.boards.length) return nothing;
  /** @param {number} x */
  const at = (x) => `M${n(x)} ${n(top)}V${n(bottom)}`;
  const inner = leaf.boards.slice(0, -1).map((board) => ({ x: board.x + board.width, join: board.layer.join ?? '' }));
  const joints = inner.filter((joint) => joint.join !== 'film').map((joint) => at(joint.x));
  const glue = inner.filter((joint) => joint.join === 'glue').map((joint) => at(joint.x));
  const films = inner.filter((joint) => joint.join === 'film').map((joint) => at(joint.x));
  return svg`
    ${joints.length ? svg`<path class="d-joint" d=${joints.join('')} />` : nothing}
    ${glue.length ? svg`<path class="d-glue" d=${glue.join('')} />` : nothing}
    ${films.length ? svg`<path class="d-film" d=${films.join('')} />` : nothing}
    <path class="d-face" d="${at(leaf.x)}${at(leaf.x + leaf.width)}" />`;
}

/**
 * @param {Layout} plan
 * @param {number} y
 */
function cutLine(plan, y) {
  const start = `M${n(plan.left - OVERHANG)} ${n(y)}`;
  const end = `H${n(plan.right + OVERHANG)}`;
  if (plan.zigzag === undefined) return start + end;
  const x = plan.zigzag;
  return `${start}H${n(x - 5.9)}L${n(x - 2)} ${n(y - 6.1)}L${n(x + 2)} ${n(y + 6.1)}L${n(x + 5.9)} ${n(y)}${end}`;
}

/**
 * The cut line over a chosen gap, but for its break.
 * @param {Layout} plan
 * @param {Space} gap
 * @param {number} y
 */
function gapEdge(plan, gap, y) {
  const right = gap.x + gap.width;
  const broken = plan.zigzag !== undefined && plan.zigzag > gap.x && plan.zigzag < right ? plan.zigzag : undefined;
  const start = `M${n(gap.x)} ${n(y)}`;
  return broken === undefined ? `${start}H${n(right)}` : `${start}H${n(broken - 6)}M${n(broken + 6)} ${n(y)}H${n(right)}`;
}

/**
 * Two break lines with nothing between: a piece of the gap is left out.
 * @param {number} x
 * @param {number} top
 * @param {number} bottom
 */
function shortened(x, top, bottom) {
  const middle = (top + bottom) / 2;
  /** @param {number} at */
  const line = (at) =>
    `${n(at)} ${n(top - 2)}V${n(middle - 8)}L${n(at - 5)} ${n(middle - 3)}L${n(at + 5)} ${n(middle + 3)}L${n(at)} ${n(middle + 8)}V${n(bottom + 2)}`;
  const strip = `M${line(x - 3)}H${n(x + 3)}V${n(middle + 8)}L${n(x + 8)} ${n(middle + 3)}L${n(x - 2)} ${n(middle - 3)}L${n(x + 3)} ${n(middle - 8)}V${n(top - 2)}Z`;
  return svg`<path class="d-paper" d=${strip} /><path class="d-cut" d="M${line(x - 3)}M${line(x + 3)}" />`;
}

/** @param {NonNullable<Layout['screw']>} s */
function screw(s) {
  const head = `M${n(s.x)} ${n(s.y - 3.8)}L${n(s.x + s.way * 3.8)} ${n(s.y)}L${n(s.x)} ${n(s.y + 3.8)}Z`;
  const shank = `M${n(s.x)} ${n(s.y)}H${n(s.tip)}`;
  return svg`<g class=${s.over ? 'd-screw over' : 'd-screw'}><path class="d-halo" d=${shank} /><path class="d-fill" d=${head} /><path class="d-shaft" d=${shank} /></g>`;
}

/**
 * @param {Label} label
 * @param {number} top
 */
function labelView(label, top) {
  const raised = label.leader ? 14 : 0;
  const leader = label.leader ? svg`<path class="d-dim" d="M${n(label.at)} ${n(top - 17)}L${n(label.x)} ${n(top - 2)}" />` : nothing;
  return svg`${leader}<text class=${label.css} x=${n(label.at)} y=${n(top - 8 - raised)} text-anchor="middle">${label.text}</text>`;
}

/**
 * Names of the spaces, upright at the sides.
 * @param {Layout} plan
 * @param {Report} report
 * @param {Options} options
 */
function names(plan, report, options) {
  const middle = (plan.top + plan.bottom) / 2;
  const tall = plan.bottom - plan.top;
  const size = options.mode === 'print' ? 13.3 : 16.5;
  const [here, there] = spaces(report, options.plan);
  /** @param {string} text */
  const fit = (text) => shorten(text, tall + 30, size);
  const left = plan.left - 17;
  const right = plan.right + 22;
  return svg`<text class="d-name" font-size=${size} x=${n(left)} y=${n(middle)} transform="rotate(-90 ${n(left)} ${n(middle)})" text-anchor="middle">${fit(here)}</text>
    <text class="d-name" font-size=${size} x=${n(right)} y=${n(middle)} transform="rotate(90 ${n(right)} ${n(middle)})" text-anchor="middle">${fit(there)}</text>`;
}

/**
 * @param {Report} report
 * @param {Options['plan']} plan
 */
function spaces(report, plan) {
  const surface = plan?.surfaces?.find((s) => s.id === report.surface);
  return ['room', surface?.beyond || 'other side'];
}

/**
 * @param {string} text
 * @param {number} room px
 * @param {number} size
 */
function shorten(text, room, size) {
  let kept = text;
  while (kept.length > 3 && textWidth(kept, size) > room) kept = `${kept.slice(0, kept.endsWith('…') ? -2 : -1).trimEnd()}…`;
  return kept;
}

/**
 * A dimension line with oblique ticks; a figure that does not fit between its
 * ticks moves outwards, never smaller.
 * @param {Part[]} parts
 * @param {number} y
 * @param {Layout} plan
 * @param {Options} options
 * @param {typeof USES['phone']} use
 * @param {boolean} whole
 */
function dimensionLine(parts, y, plan, options, use, whole) {
  if (!parts.length) return nothing;
  const stops = [parts[0].from, ...parts.map((part) => part.to)];
  const figures = parts.map((part) => length(part.metres, options.units, { size: use.text, unit: whole }));
  const words = parts.map((part, i) => ({ at: (part.from + part.to) / 2 + outwards(part, figures[i].width, i, parts.length), width: figures[i].width }));
  const ends = stops.map((x) => `M${n(x)} ${n(y - 6.5)}v11.5`).join('');
  const ticks = stops.map((x) => `M${n(x - 4)} ${n(y + 4)}l8 -8`).join('');
  const centres = spread(words, -8, plan.width + 8, use.text * 0.3);
  const base = y + use.text * 1.13;
  return svg`<path class="d-dim" d="M${n(stops[0] - 5)} ${n(y)}H${n(stops[stops.length - 1] + 5)}${ends}" />
    <path class="d-tick" d=${ticks} />
    ${figures.map((figure, i) => svg`<text class="d-text" x=${n(centres ? centres[i] : words[i].at)} y=${n(base + (centres ? 0 : (i % 2) * use.text * 1.1))} text-anchor="middle">${figure.spans}</text>`)}`;
}

/**
 * How far the figure of an outer part moves so that it clears the inner tick.
 * @param {Part} part
 * @param {number} width
 * @param {number} i
 * @param {number} count
 */
function outwards(part, width, i, count) {
  const excess = Math.max(0, (width + 3 - (part.to - part.from)) / 2);
  if (count < 2 || (i > 0 && i < count - 1)) return 0;
  return i === 0 ? -excess : excess;
}

/**
 * That a piece of the gap was left out.
 * @param {Layout} plan
 */
function foot(plan) {
  if (!plan.shortened) return nothing;
  return svg`<text class="d-text d-soft" x=${n((plan.left + plan.right) / 2)} y=${n(plan.height - 5)} text-anchor="middle">Gap drawn shortened.</text>`;
}

/**
 * Boards and gaps answer to a tap; the list below does so for the keyboard.
 * @param {Layout} plan
 * @param {(id: string) => void} select
 */
function hits(plan, select) {
  const top = plan.top - 24;
  const tall = plan.bottom - plan.top + 34;
  /** @param {string} id @param {number} x @param {number} width */
  const box = (id, x, width) => svg`<rect class="d-hit" x=${n(x)} y=${n(top)} width=${n(Math.max(0, width))} height=${n(tall)} @click=${() => select(id)} />`;
  return svg`${plan.gaps.map((gap) => box(gap.gap.id, gap.x, gap.width))}
    ${plan.leaves.flatMap((leaf) => leaf.boards.map((board) => box(board.layer.id, board.x, board.width)))}`;
}

/**
 * What the picture shows, in words.
 * @param {Report} report
 * @param {Options} options
 */
export function describe(report, options) {
  const { units } = options;
  /** @param {Value | null | undefined} value */
  const said = (value) => (value ? lengthText(value.v, units, true) : 'of unknown depth');
  const [here, there] = spaces(report, options.plan);
  const words = (report.leaves ?? []).flatMap((leaf, i) => {
    const boards = (leaf.layers ?? []).map((layer) => `${layer.short} ${said(layer.thickness)}${layer.there ? ', there already' : ''}${joinWord(layer.join)}`);
    const gap = report.gaps?.[i];
    const leafWords = `${i === report.leaf ? 'Leaf being edited' : 'Leaf'}: ${boards.join(', ') || 'no board yet'}.`;
    if (!gap || i === report.leaves.length - 1) return [leafWords];
    const held = [gap.near, gap.far].filter((h) => h && h.kind !== 'screwed' && h.kind !== 'untied' && h.name).map((h) => h.name);
    const parts = [gap.frameKind !== 'none' ? gap.frameName : '', gap.fill ? gap.fillName : 'no fill', ...held].filter(Boolean);
    return [leafWords, `Gap ${said(gap.depth)}: ${parts.join(', ')}.`];
  });
  const plan = longestScrewWords(report, said);
  return [`Section from ${here} to ${there}, to scale.`, ...words, plan].filter(Boolean).join(' ');
}

/** @param {string | undefined} join */
function joinWord(join) {
  return join === 'film' ? ' with damping film' : join === 'glue' ? ' glued' : '';
}

/**
 * @param {Report} report
 * @param {(value: Value) => string} said
 */
function longestScrewWords(report, said) {
  const screws = (report.leaves ?? []).flatMap((leaf) =>
    (leaf.layers ?? []).filter((layer) => !layer.there && layer.screw).map((layer) => /** @type {Value} */ (layer.screw)),
  );
  if (!screws.length) return '';
  const longest = screws.reduce((a, b) => (b.v > a.v ? b : a));
  return `Longest screw ${said(longest)}.`;
}

/** @param {{layers?: LayerReport[]} | undefined} leaf */
function leafDepth(leaf) {
  return sum((leaf?.layers ?? []).map((layer) => metres(layer.thickness)));
}

/** @param {number[]} list */
function sum(list) {
  return list.reduce((a, b) => a + b, 0);
}

/** A length that can be drawn. @param {Value | null | undefined} value */
function metres(value) {
  return Math.min(10, positive(value?.v));
}

/** @param {number | undefined} x */
function positive(x) {
  return x !== undefined && Number.isFinite(x) && x > 0 ? x : 0;
}

/**
 * @param {number} x
 * @param {number} low
 * @param {number} high
 */
function clamp(x, low, high) {
  return high < low ? (low + high) / 2 : Math.min(high, Math.max(low, x));
}
