// How a layer is cut: the face with its pieces and running dimensions, and one
// sheet with the pieces that come out of it and what is left. A piece has the
// number of its sheet, and a letter where it is an offcut's.

import { nothing, svg } from 'lit-html';
import { words } from './fraction.js';
import { n } from './hatch.js';
import { textWidth } from './measure.js';
import { running, sawn } from './running.js';

/**
 * @typedef {import('../types-buy.d.ts').Cut} Cut
 * @typedef {import('../types-buy.d.ts').Box} Box
 * @typedef {import('../types-buy.d.ts').Piece} Piece
 * @typedef {import('../types.d.ts').Units} Units
 * @typedef {object} Options
 * @property {Units} units
 * @property {number} width px
 * @property {'phone' | 'desk' | 'print'} [mode]
 * @property {number} [tall] the most it may be high, px
 * @property {number} [sheet] the chosen sheet, its index
 * @property {(sheet: number) => void} [onSheet]
 * @property {number[]} [lines] of framing, m
 * @property {boolean} [upright] they run along y
 */

/** A cut is drawn as a gap from so wide on, px. */
const KERF = 1;

/**
 * "2" for what is largest of sheet 2, "2a", "2b" for the rest.
 * @param {Cut} cut
 * @param {Piece} piece
 */
export function nameOf(cut, piece) {
  const no = cut.sheets?.[piece.sheet]?.no ?? piece.sheet + 1;
  return `${no}${piece.part > 0 ? letters(piece.part) : ''}`;
}

/** @param {number} part from 1: a, b … z, aa */
function letters(part) {
  const i = part - 1;
  return (i >= 26 ? String.fromCharCode(96 + Math.floor(i / 26)) : '') + String.fromCharCode(97 + (i % 26));
}

/**
 * "49 3/4 × 48": along the sheet first.
 * @param {Box} box
 * @param {Units} units
 */
export function sizeOf({ w, h }, units) {
  return `${sawn(w, units)} × ${sawn(h, units)}`;
}

/**
 * From metres to the drawing; a wall stands on its foot.
 * @param {{width: number, height: number}} face
 * @param {boolean} upward y counts from the foot
 * @param {Options} options
 * @param {string[]} said the words beside the upright axis
 */
function fit(face, upward, options, said) {
  const text = options.mode === 'print' ? 10.5 : 16;
  const left = Math.ceil(Math.max(20, ...said.map((s) => textWidth(s, text)))) + 25;
  const width = Number.isFinite(options.width) ? Math.max(200, options.width) : 358;
  const scale = Math.min((width - left - 3) / face.width, (options.tall ?? 560) / face.height);
  const dims = text * 1.3 + 22;
  const top = upward ? 6 : dims;
  return {
    text,
    width,
    left,
    top,
    scale,
    w: face.width * scale,
    h: face.height * scale,
    height: top + face.height * scale + (upward ? dims : 6),
    box: (/** @type {Box} */ b) => ({ x: left + b.x * scale, y: top + (upward ? face.height - b.y - b.h : b.y) * scale, w: b.w * scale, h: b.h * scale }),
    x: (/** @type {number} */ m) => left + m * scale,
    y: (/** @type {number} */ m) => top + (upward ? face.height - m : m) * scale,
  };
}

/**
 * The edges that a tape is read at, from the corner on.
 * @param {Box[]} boxes
 * @param {'x' | 'y'} axis
 * @param {number} end of the face
 */
export function edges(boxes, axis, end) {
  const side = axis === 'x' ? 'w' : 'h';
  const all = boxes.flatMap((b) => [b[axis], b[axis] + b[side]]).sort((a, b) => a - b);
  const out = [];
  // Between two boards there is a gap: one reading, at its far side.
  for (const at of all) {
    if (at < 0.02 || at > end - 0.02) continue;
    if (out.length && at - out[out.length - 1] < 0.012) out[out.length - 1] = at;
    else out.push(at);
  }
  return out;
}

/**
 * One layer of a face.
 * @param {Cut} cut
 * @param {import('../types-buy.d.ts').HungLayer} hung
 * @param {{width: number, height: number, name?: string, openings?: import('../types-buy.d.ts').Rect[] | null}} face
 * @param {boolean} upward
 * @param {Options} options
 */
export function faceView(cut, hung, face, upward, options) {
  const pieces = (hung.pieces ?? []).map((i) => /** @type {Piece} */ (cut.pieces?.[i])).filter(Boolean);
  const boxes = pieces.map((p) => p.on);
  const ys = edges(boxes, 'y', face.height);
  const plan = fit(
    face,
    upward,
    options,
    ys.map((y) => sawn(y, options.units)),
  );
  const foot = upward ? plan.top + plan.h + 18 : plan.top - 18;
  const origin = plan.y(0);
  return svg`<svg class="drawing cut" role="img" aria-label="${face.name ?? 'The face'}, layer hung ${hung.layer + 1}: ${pieces.length} pieces. Each is in the list below." width=${n(plan.width)} height=${n(plan.height)} viewBox="0 0 ${n(plan.width)} ${n(plan.height)}" font-size=${plan.text}>
    <rect class="y-behind" x=${n(plan.left)} y=${n(plan.top)} width=${n(plan.w)} height=${n(plan.h)} />
    ${pieces.map((p) => pieceRect(p, plan.box(p.on), (p.holes ?? []).map(plan.box), options))}
    <path class="y-framing" d=${(options.lines ?? []).map((m) => (options.upright ? pair(plan.x(m), plan.top, plan.h, true) : pair(plan.y(m), plan.left, plan.w, false))).join('')} />
    <rect class="y-face" x=${n(plan.left)} y=${n(plan.top)} width=${n(plan.w)} height=${n(plan.h)} />
    ${pieces.map((p) => pieceWords(cut, p, plan.box(p.on), plan.text, options, false))}
    ${running({ readings: edges(boxes, 'x', face.width).map((m) => ({ at: plan.x(m), text: sawn(m, options.units) })), upright: false, line: foot, origin: plan.left, end: plan.left + plan.w, edge: upward ? plan.top + plan.h : plan.top, size: plan.text })}
    ${running({ readings: ys.map((m) => ({ at: plan.y(m), text: sawn(m, options.units) })), upright: true, line: plan.left - 13, origin, end: plan.y(face.height), edge: plan.left, size: plan.text })}
    <text class="d-soft" x=${n(plan.left - 23)} y=${n(foot + (upward ? plan.text : -2))} text-anchor="end">${options.units === 'us' ? 'in' : 'mm'}</text>
  </svg>`;
}

/** A row of channel as two dashed lines. @param {number} at @param {number} from @param {number} long @param {boolean} upright */
function pair(at, from, long, upright) {
  return [-2.2, 2.2].map((d) => (upright ? `M${n(at + d)} ${n(from)}v${n(long)}` : `M${n(from)} ${n(at + d)}h${n(long)}`)).join('');
}

/**
 * One sheet, its length across.
 * @param {Cut} cut
 * @param {number} index
 * @param {Options} options
 */
export function sheetView(cut, index, options) {
  const sheet = cut.sheets?.[index];
  if (!sheet) return nothing;
  const pieces = (sheet.pieces ?? []).map((i) => /** @type {Piece} */ (cut.pieces?.[i])).filter(Boolean);
  const boxes = pieces.map((p) => p.at);
  const face = { width: sheet.length, height: sheet.width };
  const ys = edges([...boxes, ...(sheet.left ?? [])], 'y', face.height);
  const plan = fit(
    face,
    false,
    options,
    [...ys, face.height].map((y) => sawn(y, options.units)),
  );
  return svg`<svg class="drawing cut" role="img" aria-label="Sheet ${sheet.no}: ${pieces.map((p) => `${nameOf(cut, p)}, ${sizeOf(p.at, options.units)}`).join('; ')}" width=${n(plan.width)} height=${n(plan.height)} viewBox="0 0 ${n(plan.width)} ${n(plan.height)}" font-size=${plan.text}>
    <rect class="d-paper" x=${n(plan.left)} y=${n(plan.top)} width=${n(plan.w)} height=${n(plan.h)} />
    <path class="y-left" d=${slashes(plan.box({ x: 0, y: 0, w: face.width, h: face.height }))} />
    ${(sheet.left ?? []).map((b) => {
      const r = plan.box(b);
      return svg`<rect class="y-offcut" x=${n(r.x)} y=${n(r.y)} width=${n(r.w)} height=${n(r.h)} />${r.w > 44 && r.h > 24 ? svg`<text class="d-soft d-haloed" x=${n(r.x + r.w / 2)} y=${n(r.y + r.h / 2 + plan.text * 0.35)} text-anchor="middle">left</text>` : nothing}`;
    })}
    ${pieces.map((p) => pieceRect(p, plan.box(p.at), [], { ...options, sheet: index }))}
    ${pieces.map((p) => pieceWords(cut, p, plan.box(p.at), plan.text, { ...options, sheet: index, onSheet: undefined }, true))}
    <rect class="y-opening y-hollow" x=${n(plan.left)} y=${n(plan.top)} width=${n(plan.w)} height=${n(plan.h)} />
    ${running({ readings: [...edges([...boxes, ...(sheet.left ?? [])], 'x', face.width), face.width].map((m) => ({ at: plan.x(m), text: sawn(m, options.units) })), upright: false, line: plan.top - 18, origin: plan.left, end: plan.left + plan.w, edge: plan.top, size: plan.text })}
    ${running({ readings: [...ys, face.height].map((m) => ({ at: plan.y(m), text: sawn(m, options.units) })), upright: true, line: plan.left - 13, origin: plan.top, end: plan.top + plan.h, edge: plan.left, size: plan.text })}
  </svg>`;
}

/** @typedef {{x: number, y: number, w: number, h: number}} Drawn px */

/**
 * @param {Piece} piece
 * @param {Drawn} r
 * @param {Drawn[]} holes
 * @param {Options} options
 */
function pieceRect(piece, r, holes, options) {
  const gap = Math.min(KERF, r.w / 4, r.h / 4);
  return svg`<rect class="y-piece ${piece.sheet === options.sheet ? 'chosen' : ''}" x=${n(r.x + gap / 2)} y=${n(r.y + gap / 2)} width=${n(Math.max(0.5, r.w - gap))} height=${n(Math.max(0.5, r.h - gap))} />
    ${holes.map((o) => svg`<rect class="y-opening" x=${n(o.x)} y=${n(o.y)} width=${n(o.w)} height=${n(o.h)} />`)}`;
}

/**
 * Number and size, as far as they have room.
 * @param {Cut} cut
 * @param {Piece} piece
 * @param {Drawn} r
 * @param {number} text px
 * @param {Options} options
 * @param {boolean} whole both sizes, not the length alone
 */
function pieceWords(cut, piece, r, text, options, whole) {
  const css = `y-no ${piece.sheet === options.sheet ? 'chosen' : ''}`;
  const name = nameOf(cut, piece);
  const size = words(whole ? sizeOf(piece.at, options.units) : sawn(Math.max(piece.on.w, piece.on.h), options.units), text);
  const middle = { x: r.x + r.w / 2, y: r.y + r.h / 2 };
  const wide = textWidth(name, text * 1.15, 600);
  const two = r.h >= text * 2.4 && r.w >= size.width + 4;
  const one = !two && r.h >= text * 1.05 && r.w >= wide + size.width + 18;
  const bare = !two && !one && r.w >= wide + 2 && r.h >= text;
  const halo = piece.sheet === options.sheet ? 'd-text y-halo-wash' : 'd-text d-haloed';
  return svg`${two || bare ? svg`<text class="${css} d-haloed" x=${n(middle.x)} y=${n(middle.y + (two ? -text * 0.15 : text * 0.38))} text-anchor="middle" font-size=${n(text * 1.15)}>${name}</text>` : nothing}
    ${two ? svg`<text class=${halo} x=${n(middle.x)} y=${n(middle.y + text)} text-anchor="middle">${size.spans}</text>` : nothing}
    ${one ? svg`<text class="${css} d-haloed" x=${n(r.x + 6)} y=${n(middle.y + text * 0.38)} font-size=${n(text * 1.15)}>${name}</text><text class=${halo} x=${n(r.x + r.w - 6)} y=${n(middle.y + text * 0.35)} text-anchor="end">${size.spans}</text>` : nothing}
    ${options.onSheet ? svg`<rect class="d-hit" x=${n(r.x)} y=${n(r.y)} width=${n(r.w)} height=${n(r.h)} @click=${() => options.onSheet?.(piece.sheet)} />` : nothing}`;
}

/** Hatching at 45°, 6 px apart, cut at the box. @param {{x: number, y: number, w: number, h: number}} r */
function slashes({ x, y, w, h }) {
  let d = '';
  for (let c = 6; c < w + h && d.length < 20_000; c += 6 * Math.SQRT2) {
    const [x0, y0] = c <= h ? [0, c] : [c - h, h];
    const [x1, y1] = c <= w ? [c, 0] : [w, c - w];
    d += `M${n(x + x0)} ${n(y + y0)}L${n(x + x1)} ${n(y + y1)}`;
  }
  return d;
}
