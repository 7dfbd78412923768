// What one clip carries, drawn: the face with its rows of channel, and the
// part of it that lies halfway to the next clips.

import { svg } from 'lit-html';
import { length } from './fraction.js';
import { n } from './hatch.js';

/**
 * @typedef {object} Options
 * @property {'us' | 'si'} units
 * @property {number} width of the place the drawing stands in, px
 * @property {number | undefined | null} rows distance of the rows of channel, m
 * @property {number | undefined | null} along distance of the clips in a row, m
 * @property {'phone' | 'desk' | 'print'} [mode]
 * @property {string} [state] over, close, holds, under: what the area is tinted by
 */

/** Drawn rows stand this far apart, px, unless the clips would stand too close or too far. */
const ROW = 48;

/**
 * Geometry: three rows of three clips, to one scale in both directions.
 * @param {Options} options
 */
export function layout(options) {
  const text = options.mode === 'print' ? 13.3 : 16;
  const width = Number.isFinite(options.width) ? Math.max(200, options.width) : 358;
  const rows = sane(options.rows);
  const along = sane(options.along);
  // The rows' dimension stands beside the area and needs its place there.
  const rowWords = length(options.rows, options.units, { size: text, unit: true });
  const alongWords = length(options.along, options.units, { size: text, unit: true });
  const room = width - 2 * 16;
  const overhang = 48;
  const scale = Math.min(ROW / rows, (room - 2 * overhang) / (2 * along), 110 / along);
  const down = Math.max(14, rows * scale);
  const across = Math.max(20, along * scale);
  const top = 18;
  const middle = width / 2;
  return {
    width,
    text,
    rowWords,
    alongWords,
    xs: [middle - across, middle, middle + across],
    ys: [top, top + down, top + 2 * down],
    left: Math.max(8, middle - across - overhang),
    right: Math.min(width - 8, middle + across + overhang),
    area: { x: middle - across / 2, y: top + down / 2, width: across, height: down },
    height: top + 2 * down + 16 + text * 1.75,
  };
}

/** @param {Options} options */
export function clipView(options) {
  const plan = layout(options);
  const { area, xs, ys, text } = plan;
  const [, middle, last] = ys;
  const channel = ys.map((y) => `M${n(plan.left)} ${n(y - 2)}H${n(plan.right)}M${n(plan.left)} ${n(y + 2)}H${n(plan.right)}`).join('');
  const rings = ys.flatMap((y) => xs.map((x) => ({ x, y }))).filter((ring) => ring.x !== xs[1] || ring.y !== middle);
  const right = area.x + area.width;
  const low = area.y + area.height;
  // Beside the area, between two clips, unless the clips stand too close for it.
  const beside = Math.min(right + 15, xs[2] - 12);
  const under = last + 15.5;
  return svg`<svg class="drawing clip" role="img" aria-label=${describe(options)} width=${n(plan.width)} height=${n(plan.height)} viewBox="0 0 ${n(plan.width)} ${n(plan.height)}" font-size=${text}>
    <rect class=${`k-area ${options.state ?? ''}`} x=${n(area.x)} y=${n(area.y)} width=${n(area.width)} height=${n(area.height)} />
    <path class="k-channel" d=${channel} />
    <rect class="k-edge" x=${n(area.x)} y=${n(area.y)} width=${n(area.width)} height=${n(area.height)} />
    ${rings.map((ring) => svg`<circle class="k-ring" cx=${n(ring.x)} cy=${n(ring.y)} r="5.2" />`)}
    <circle class="k-dot" cx=${n(xs[1])} cy=${n(middle)} r="7" />
    <path class="d-dim" d="M${n(beside)} ${n(area.y)}V${n(low)}" />
    <path class="d-tick" d="M${n(beside - 4)} ${n(area.y + 4)}l8 -8M${n(beside - 4)} ${n(low + 4)}l8 -8" />
    <text class="d-text d-haloed" x=${n(beside + 7.5)} y=${n(area.y + text * 0.95)}>${plan.rowWords.spans}</text>
    <path class="d-dim" d="M${n(area.x - 5)} ${n(under)}H${n(right + 5)}M${n(area.x)} ${n(under - 6.5)}v11.5M${n(right)} ${n(under - 6.5)}v11.5" />
    <path class="d-tick" d="M${n(area.x - 4)} ${n(under + 4)}l8 -8M${n(right - 4)} ${n(under + 4)}l8 -8" />
    <text class="d-text" x=${n(xs[1])} y=${n(under + text * 1.15)} text-anchor="middle">${plan.alongWords.spans}</text>
  </svg>`;
}

/** @param {Options} options */
export function describe(options) {
  const rows = length(options.rows, options.units, { unit: true }).text;
  const along = length(options.along, options.units, { unit: true }).text;
  return `The area one clip carries: ${rows} between rows by ${along} along the row, halfway to the next clips each way.`;
}

/** @param {number | undefined | null} metres */
function sane(metres) {
  return metres !== undefined && metres !== null && Number.isFinite(metres) && metres > 0 ? Math.min(20, Math.max(0.05, metres)) : 0.6;
}
