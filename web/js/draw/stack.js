// The load of one trip: sheets stacked in true proportion, the rest a dashed box.

import { nothing, svg } from 'lit-html';
import { n } from './hatch.js';

/** px to the inch of height; the width is fixed. */
const HIGH = 3.2 / 0.0254;
const INCH = 0.0254;

/**
 * @typedef {{count: number, thickness: number, wood: boolean}} Pile one board of the load, the first lies lowest
 */

/**
 * How high the sheets are drawn, px.
 * @param {Pile[]} piles
 */
export function heightOf(piles) {
  return piles.reduce((sum, p) => sum + p.count * p.thickness * HIGH, 0);
}

/**
 * @param {Pile[]} piles
 * @param {boolean} rest something else lies on it
 * @param {{width: number, tall: number, label: string}} look tall: of the highest stack, so that all stand on one line
 */
export function stackView(piles, rest, { width, tall, label }) {
  const top = rest ? 34 : 2;
  const height = top + tall + 14;
  const w = width - 4;
  let y = height - 13;
  const bands = piles.map((p) => {
    const h = p.count * p.thickness * HIGH;
    y -= h;
    const step = p.thickness * HIGH;
    // Sheets thinner than the eye can part are drawn every second or third.
    const every = Math.max(1, Math.ceil(2.4 / step));
    let lines = '';
    for (let i = every; i < p.count; i += every) lines += `M2 ${n(y + i * step)}h${n(w)}`;
    return svg`<rect class="d-paper" x="2" y=${n(y)} width=${n(w)} height=${n(h)} />${p.wood ? svg`<path class="y-grain" d=${lines} />` : nothing}<path class="y-sheet" d=${lines} /><rect class="y-pile" x="2" y=${n(y)} width=${n(w)} height=${n(h)} />`;
  });
  const box = n(y - 31);
  return svg`<svg class="drawing stack" role="img" aria-label=${label} width=${n(width)} height=${n(height)} viewBox="0 0 ${n(width)} ${n(height)}">
    ${rest ? svg`<path class="y-rest" d="M8 ${n(y)}V${box}H${n(w * 0.62)}V${n(y)}M${n(w * 0.64)} ${n(y)}v-20H${n(w * 0.94)}v20" />` : nothing}
    ${bands}
    <path class="d-tint y-runner" d="M${n(w * 0.08)} ${n(height - 13)}h${n(w * 0.12)}v9h${n(-w * 0.12)}zM${n(w * 0.82)} ${n(height - 13)}h${n(w * 0.12)}v9h${n(-w * 0.12)}z" />
  </svg>`;
}

/**
 * A board's thickness by its name of trade: "5/8 in", "12.5 mm".
 * @param {string | undefined} nominal
 */
export function thicknessOf(nominal) {
  const m = /^(?:(\d+) )?(\d+)(?:\/(\d+)|(\.\d+))? (in|mm)$/.exec((nominal ?? '').trim());
  if (!m) return 0.0127;
  const [, whole, figure, under, decimals, unit] = m;
  const v = Number(whole ?? 0) + (under ? Number(figure) / Number(under) : Number(figure + (decimals ?? '')));
  return v * (unit === 'in' ? INCH : 1e-3);
}
