// Running dimensions from one corner, as a tape hooked over it shows them:
// never chained. The way from metres to the drawing belongs here too.

import { svg } from 'lit-html';
import { inches, millimetres, THIN } from '../format.js';
import { words } from './fraction.js';
import { n } from './hatch.js';

/** @typedef {import('../types.d.ts').Units} Units */

const INCH = 0.0254;

/**
 * A length as a tape has it: "4′ 8 1/2″", or bare millimetres.
 * @param {number} metres
 * @param {Units} units
 */
export function tape(metres, units) {
  if (units === 'si') return millimetres(metres);
  const sixteenths = Math.round(metres / INCH / (1 / 16));
  const feet = Math.floor(Math.abs(sixteenths) / 192);
  const rest = inches((sixteenths - Math.sign(sixteenths) * feet * 192) / 16);
  return feet === 0 ? `${rest}″` : rest === '0' ? `${feet}′` : `${feet}′ ${rest}″`;
}

/**
 * A length in the saw's unit: inches to the sixteenth, or millimetres.
 * @param {number} metres
 * @param {Units} units
 */
export function sawn(metres, units) {
  return units === 'si' ? millimetres(metres) : inches(metres / INCH).replaceAll(THIN, '');
}

/**
 * One axis of running dimensions. Every reading has its arrow; its words give
 * way where they would touch the reading before.
 * @param {object} axis
 * @param {{at: number, text: string}[]} axis.readings at: px along the axis
 * @param {boolean} axis.upright
 * @param {number} axis.line where the axis stands, px across it
 * @param {number} axis.origin px along
 * @param {number} axis.end px along
 * @param {number} axis.edge of the face, px across: the readings reach to it
 * @param {number} axis.size of the words, px
 */
export function running({ readings, upright, line, origin, end, edge, size }) {
  const way = end > origin ? 1 : -1;
  const point = (/** @type {number} */ along, /** @type {number} */ across) => (upright ? `${n(across)} ${n(along)}` : `${n(along)} ${n(across)}`);
  const arrow = (/** @type {number} */ at) => `M${point(at - 6 * way, line - 4)}L${point(at, line)}L${point(at - 6 * way, line + 4)}`;
  let last = Number.NEGATIVE_INFINITY * way;
  const said = readings.map(({ at, text }) => {
    const drawn = words(text, size);
    const half = upright ? size * 0.62 : drawn.width / 2 + 3;
    // The last words stay over the face.
    const middle = upright ? at : Math.min(at, Math.max(origin, end) + 8 - drawn.width / 2);
    if (way * (middle - last) < half) return { at, drawn: undefined };
    last = middle + way * half;
    return { at: middle, drawn };
  });
  return svg`<path class="d-dim" d="M${point(origin, line)}L${point(end, line)}${readings.map(({ at }) => `M${point(at, Math.min(line - 5, edge))}L${point(at, edge)}`).join('')}" />
    <path class="y-arrow" d=${readings.map(({ at }) => arrow(at)).join('')} />
    <circle class="y-origin" cx=${n(upright ? line : origin)} cy=${n(upright ? origin : line)} r="4.5" />
    ${said.map(({ at, drawn }) =>
      drawn
        ? upright
          ? svg`<text class="d-text" x=${n(line - 10)} y=${n(at + size * 0.35)} text-anchor="end">${drawn.spans}</text>`
          : svg`<text class="d-text" x=${n(at)} y=${n(edge > line ? line - 10 : line + size + 6)} text-anchor="middle">${drawn.spans}</text>`
        : '',
    )}`;
}
