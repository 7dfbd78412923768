// Where every clip goes: the face to scale with rows of channel and what lies
// behind, openings left out, each clip marked by shape and figure, and running
// dimensions from one corner.

import { nothing, svg } from 'lit-html';
import { number, percent, shown, span } from '../format.js';
import { n } from './hatch.js';
import { textWidth } from './measure.js';
import { running, tape } from './running.js';

/**
 * @typedef {import('../types-buy.d.ts').LayoutReport} LayoutReport
 * @typedef {import('../types-buy.d.ts').Layout} Layout
 * @typedef {import('../types-buy.d.ts').Spot} Spot
 * @typedef {import('../types-buy.d.ts').Face} Face
 * @typedef {object} Options
 * @property {import('../types.d.ts').Units} units
 * @property {number} width of the place the drawing stands in, px
 * @property {'phone' | 'desk' | 'print'} [mode]
 * @property {number} [tall] the most it may be high, px
 * @property {{id: string, x: number, y: number}[]} [hung] what hangs at a place, in the order of its numbers
 * @property {string} [chosen] id of one of them
 * @property {number} [clip] the chosen clip
 * @property {(x: number, y: number) => void} [onFace]
 * @property {(clip: number) => void} [onClip]
 * @typedef {{x: number, y: number, width: number, height: number}} Place
 */

/** Marks first that nobody may miss. */
const FIRST = ['over', 'close', 'under', 'unrated', 'holds'];
const MOST_MEMBERS = 400;

/**
 * From metres to the drawing. A wall stands on its foot, a ceiling is seen with
 * its first corner above.
 * @param {LayoutReport} report
 * @param {Options} options
 */
export function layout(report, options) {
  const { face } = report;
  const lay = report.layout;
  const text = options.mode === 'print' ? 11.5 : 16;
  const rows = lay?.rows ?? [];
  const across = [...new Set(rows.map((r) => r.at))].sort((a, b) => a - b);
  const along = usualMarks(lay);
  const [xs, ys] = lay && !lay.alongX ? [across, along] : [along, across];
  const said = ys.map((y) => textWidth(tape(y, options.units), text));
  const left = Math.ceil(Math.max(24, ...said)) + 25;
  const right = 3;
  const width = Number.isFinite(options.width) ? Math.max(220, options.width) : 358;
  const w = sane(face.width);
  const h = sane(face.height);
  const scale = Math.min((width - left - right) / w, (options.tall ?? 620) / h);
  const dims = text * 1.3 + 22;
  const top = face.ceiling ? dims : 6;
  return {
    text,
    width,
    scale,
    left,
    top,
    xs,
    ys,
    height: top + h * scale + (face.ceiling ? 4 : dims),
    w: w * scale,
    h: h * scale,
    x: (/** @type {number} */ m) => left + m * scale,
    y: (/** @type {number} */ m) => (face.ceiling ? top + m * scale : top + (h - m) * scale),
  };
}

/** The marks that most rows have. @param {Layout | null | undefined} lay */
export function usualMarks(lay) {
  /** @type {Map<string, {count: number, marks: number[]}>} */
  const kinds = new Map();
  for (const { marks } of lay?.rows ?? []) {
    const key = keyOf(marks);
    const kind = kinds.get(key);
    if (kind) kind.count++;
    else kinds.set(key, { count: 1, marks });
  }
  return [...kinds.values()].reduce(
    (most, kind) => (kind.count > most.count || (kind.count === most.count && kind.marks.length > most.marks.length) ? kind : most),
    {
      count: 0,
      marks: /** @type {number[]} */ ([]),
    },
  ).marks;
}

/** @param {number[]} marks to the millimetre */
export function keyOf(marks) {
  return marks.map((m) => Math.round(m * 1000)).join();
}

/**
 * What stands beside a clip: its share of the rating, or its load where it has none.
 * @param {Spot} spot
 * @param {import('../types.d.ts').Units} units
 */
export function figureOf(spot, units) {
  return spot.state === 'unrated' ? shown('mass', spot.load, { units, currency: '' }).figure.replace(/\.\d$/, '') : percent(spot.of);
}

/**
 * @param {LayoutReport} report
 * @param {Options} options
 */
export function clipsView(report, options) {
  const { face } = report;
  const lay = report.layout;
  const plan = layout(report, options);
  const { text } = plan;
  const spots = lay?.spots ?? [];
  const small = options.mode === 'print' ? 0.78 : 1;
  const box = (/** @type {Place} */ r) => ({
    x: plan.x(r.x),
    y: face.ceiling ? plan.y(r.y) : plan.y(r.y + r.height),
    width: r.width * plan.scale,
    height: r.height * plan.scale,
  });
  const edge = { x: plan.left, y: plan.top, width: plan.w, height: plan.h };
  const openings = (face.openings ?? []).map(box);
  const hung = (options.hung ?? []).map((g) => ({ ...g, px: plan.x(g.x), py: plan.y(g.y) }));
  const labels = labelled(spots, plan, options, small, [...hung.map(({ px, py }) => ({ x: px - 12, y: py - 12, width: 24, height: 24 })), ...openings]);
  const mend = report.mend;
  const foot = face.ceiling ? plan.top - 18 : plan.top + plan.h + 18;
  return svg`<svg class="drawing clips ${options.onFace ? 'placed' : ''}" role="img" aria-label=${describe(report, options.units)} width=${n(plan.width)} height=${n(plan.height)} viewBox="0 0 ${n(plan.width)} ${n(plan.height)}" font-size=${text}>
    <rect class="d-paper" x=${n(edge.x)} y=${n(edge.y)} width=${n(edge.width)} height=${n(edge.height)} />
    ${spots.map((s) => {
      const parts = (s.pieces ?? []).map(box);
      if (s.state === 'unrated') return '';
      return svg`${parts.map((r) => svg`<rect class="y-part ${s.state}" x=${n(r.x)} y=${n(r.y)} width=${n(r.width)} height=${n(r.height)} />`)}${s.state === 'under' ? svg`<path class="y-dots" d=${parts.map(dots).join('')} />` : nothing}`;
    })}
    <path class="y-member" d=${members(face)
      .map((m) => (face.frame.alongX ? `M${n(edge.x)} ${n(plan.y(m))}h${n(edge.width)}` : `M${n(plan.x(m))} ${n(edge.y)}v${n(edge.height)}`))
      .join('')} />
    <path class="y-channel" d=${(lay?.rows ?? []).map((r) => channel(r, lay?.alongX !== false, plan, small)).join('')} />
    ${openings.map((r) => svg`<rect class="y-opening" x=${n(r.x)} y=${n(r.y)} width=${n(r.width)} height=${n(r.height)} /><path class="y-cross" d="M${n(r.x)} ${n(r.y)}l${n(r.width)} ${n(r.height)}M${n(r.x + r.width)} ${n(r.y)}l${n(-r.width)} ${n(r.height)}" />`)}
    <rect class="y-face" x=${n(edge.x)} y=${n(edge.y)} width=${n(edge.width)} height=${n(edge.height)} />
    ${running({ readings: plan.xs.map((m) => ({ at: plan.x(m), text: tape(m, options.units) })), upright: false, line: foot, origin: plan.left, end: plan.left + plan.w, edge: face.ceiling ? plan.top : plan.top + plan.h, size: text })}
    ${running({ readings: plan.ys.map((m) => ({ at: plan.y(m), text: tape(m, options.units) })), upright: true, line: plan.left - 13, origin: plan.y(0), end: plan.y(sane(face.height)), edge: plan.left, size: text })}
    ${options.onFace ? svg`<rect class="d-hit" x=${n(edge.x)} y=${n(edge.y)} width=${n(edge.width)} height=${n(edge.height)} @click=${(/** @type {MouseEvent} */ e) => tapped(e, plan, face, options)} />` : nothing}
    ${hung.map(
      (g, i) =>
        svg`<rect class="y-hung ${g.id === options.chosen ? 'chosen' : ''}" x=${n(g.px - 11 * small)} y=${n(g.py - 11 * small)} width=${n(22 * small)} height=${n(22 * small)} /><text class="d-text d-bold" x=${n(g.px)} y=${n(g.py + text * 0.35)} text-anchor="middle">${i + 1}</text>`,
    )}
    ${mend ? svg`<circle class="y-mend" cx=${n(plan.x(mend.x))} cy=${n(plan.y(mend.y))} r="9" /><path class="y-plus" d="M${n(plan.x(mend.x) - 4)} ${n(plan.y(mend.y))}h8m-4 -4v8" />` : nothing}
    ${spots.map((s, i) => markAt(s, plan.x(s.x), plan.y(s.y), small, i === options.clip))}
    ${labels.map((l) => svg`<text class="y-figure ${l.state}" x=${n(l.x)} y=${n(l.y)}>${l.text}</text>`)}
    ${options.onClip ? spots.map((s, i) => svg`<circle class="d-hit" cx=${n(plan.x(s.x))} cy=${n(plan.y(s.y))} r="16" @click=${() => options.onClip?.(i)} />`) : nothing}
  </svg>`;
}

/**
 * A tap on the face in metres, to the inch or centimetre that a finger can mean.
 * @param {MouseEvent} e
 * @param {ReturnType<typeof layout>} plan
 * @param {Face} face
 * @param {Options} options
 */
function tapped(e, plan, face, options) {
  const svgBox = /** @type {SVGElement} */ (e.target).ownerSVGElement?.getBoundingClientRect();
  if (!svgBox) return;
  const by = plan.width / svgBox.width;
  const x = ((e.clientX - svgBox.left) * by - plan.left) / plan.scale;
  const down = ((e.clientY - svgBox.top) * by - plan.top) / plan.scale;
  options.onFace?.(x, face.ceiling ? down : face.height - down);
}

/** Where studs or joists stand, by the frame's own rule. @param {Face} face */
export function members({ frame, width, height }) {
  const all = frame.alongX ? height : width;
  const out = [];
  if (!(frame.spacing > 0)) return [];
  for (let at = frame.first; at < all && out.length < MOST_MEMBERS; at += frame.spacing) if (at > 0) out.push(at);
  return out;
}

/**
 * @param {import('../types-buy.d.ts').ChannelRow} row
 * @param {boolean} alongX
 * @param {ReturnType<typeof layout>} plan
 * @param {number} small
 */
function channel(row, alongX, plan, small) {
  const d = 2.2 * small;
  if (alongX) {
    const [a, b, y] = [plan.x(row.from), plan.x(row.to), plan.y(row.at)];
    return `M${n(a)} ${n(y - d)}H${n(b)}M${n(a)} ${n(y + d)}H${n(b)}`;
  }
  const [a, b, x] = [plan.y(row.from), plan.y(row.to), plan.x(row.at)];
  return `M${n(x - d)} ${n(a)}V${n(b)}M${n(x + d)} ${n(a)}V${n(b)}`;
}

/** Rows of dots, drawn as dashed lines. @param {Place} r */
function dots(r) {
  let d = '';
  for (let y = r.y + 4; y < r.y + r.height - 1 && d.length < 4000; y += 6) d += `M${n(r.x + 4)} ${n(y)}h${n(Math.max(0, r.width - 8))}`;
  return d;
}

/**
 * ▲ over, ■ close, ● holds, ▽ under, a ring where there is no rating.
 * @param {Spot} spot
 * @param {number} x
 * @param {number} y
 * @param {number} k
 * @param {boolean} chosen
 */
function markAt({ state }, x, y, k, chosen) {
  const ring = chosen ? svg`<circle class="y-chosen" cx=${n(x)} cy=${n(y)} r=${n(12 * k)} />` : nothing;
  switch (state) {
    case 'over':
      return svg`<path class="y-mark over" d="M${n(x)} ${n(y - 9 * k)}l${n(9 * k)} ${n(16 * k)}h${n(-18 * k)}z" />${ring}`;
    case 'close':
      return svg`<rect class="y-mark close" x=${n(x - 6 * k)} y=${n(y - 6 * k)} width=${n(12 * k)} height=${n(12 * k)} />${ring}`;
    case 'under':
      return svg`<path class="y-mark under" d="M${n(x - 8 * k)} ${n(y - 6.5 * k)}h${n(16 * k)}l${n(-8 * k)} ${n(14 * k)}z" />${ring}`;
    case 'holds':
      return svg`<circle class="y-mark holds" cx=${n(x)} cy=${n(y)} r=${n(5.6 * k)} />${ring}`;
  }
  return svg`<circle class="y-mark unrated" cx=${n(x)} cy=${n(y)} r=${n(5 * k)} />${ring}`;
}

/**
 * Figures and words beside the marks, where they touch nothing; what finds no
 * place is told in the table only.
 * @param {Spot[]} spots
 * @param {ReturnType<typeof layout>} plan
 * @param {Options} options
 * @param {number} k
 * @param {Place[]} taken
 */
export function labelled(spots, plan, options, k, taken) {
  const { text } = plan;
  const marks = spots.map((s) => ({ x: plan.x(s.x) - 8 * k, y: plan.y(s.y) - 8 * k, width: 16 * k, height: 16 * k }));
  const full = [...taken];
  /** @type {{x: number, y: number, text: string, state: string}[]} */
  const out = [];
  const free = (/** @type {Place} */ r, /** @type {number} */ own) =>
    r.x >= plan.left + 1 &&
    r.x + r.width <= plan.left + plan.w - 1 &&
    r.y >= plan.top - text * 0.2 &&
    r.y + r.height <= plan.top + plan.h + text * 0.2 &&
    !full.some((o) => meet(o, r)) &&
    !marks.some((o, i) => i !== own && meet(o, r));
  const order = spots.map((_, i) => i).sort((a, b) => FIRST.indexOf(spots[a].state) - FIRST.indexOf(spots[b].state) || spots[b].load - spots[a].load);
  const put = (/** @type {number} */ i, /** @type {string} */ said, /** @type {boolean} */ above) => {
    const bold = spots[i].state === 'over' || spots[i].state === 'close';
    const width = textWidth(said, text, bold ? 700 : 400);
    const x = plan.x(spots[i].x);
    const y = plan.y(spots[i].y);
    const right = x + 9 * k;
    const left = x - 9 * k - width;
    const low = y + 3 * k;
    const high = y - 3 * k - text;
    const places = above
      ? [
          [right, high],
          [left, high],
          [right, low],
          [left, low],
        ]
      : [
          [right, low],
          [left, low],
          [right, high],
          [left, high],
        ];
    for (const [px, py] of places) {
      const r = { x: px - 2, y: py, width: width + 4, height: text };
      if (!free(r, i)) continue;
      full.push(r);
      out.push({ x: px, y: py + text * 0.82, text: said, state: spots[i].state });
      return true;
    }
    return false;
  };
  for (const i of order) {
    const { state } = spots[i];
    const said = figureOf(spots[i], options.units);
    if (state === 'under' && put(i, `${said} under`, false)) continue;
    if (put(i, said, false) && state === 'over') put(i, 'over', true);
  }
  return out;
}

/** @param {Place} a @param {Place} b */
function meet(a, b) {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/**
 * @param {LayoutReport} report
 * @param {import('../types.d.ts').Units} units
 */
export function describe({ face, layout: lay }, units) {
  const size = `${span(face.width, units)} by ${span(face.height, units)}`;
  if (!lay?.spots) return `The face, ${size}; no clips.`;
  const c = lay.count;
  const states = [
    [c.over, 'over'],
    [c.close, 'close'],
    [c.holds, 'hold'],
    [c.under, 'under'],
    [c.unrated, 'without a rating'],
  ].filter(([count]) => count);
  return `The face, ${size}, with ${number(lay.rows?.length ?? 0)} rows of channel and ${number(lay.spots.length)} clips: ${states.map(([count, word]) => `${number(Number(count))} ${word}`).join(', ')}. Every row and clip is in the table below.`;
}

/** @param {number} metres */
function sane(metres) {
  return Number.isFinite(metres) && metres > 0 ? Math.min(60, metres) : 1;
}
