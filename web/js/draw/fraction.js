// Lengths as they stand in a drawing: a whole number, a hair gap, a numerator
// raised and a denominator dropped round a fraction slash; or bare millimetres.
// The same sizes as in the page's text, for SVG.

import { nothing, svg } from 'lit-html';
import { fractionParts, inches, millimetres, NBSP, UNKNOWN } from '../format.js';
import { textWidth } from './measure.js';

const INCH = 0.0254;
/** Numerator and denominator beside the whole number, and where they stand, em. */
const SMALL = 0.72;
const RAISED = 0.36;
const DROPPED = 0.07;
const HAIR = 0.1;

/**
 * @typedef {object} Drawn
 * @property {string} text as it is read aloud: "1 5/8"
 * @property {number} width px at the size asked for
 * @property {unknown} spans for inside a text element
 */

/**
 * A length as a dimension line has it.
 * @param {number | undefined | null} metres
 * @param {'us' | 'si'} units
 * @param {{size?: number, weight?: number, unit?: boolean}} [look] unit: write "in" or "mm" after it
 * @returns {Drawn}
 */
export function length(metres, units, look = {}) {
  return words(lengthText(metres, units, look.unit), look.size, look.weight);
}

/**
 * @param {number | undefined | null} metres
 * @param {'us' | 'si'} units
 * @param {boolean} [unit]
 */
export function lengthText(metres, units, unit = false) {
  if (metres === undefined || metres === null || !Number.isFinite(metres)) return UNKNOWN;
  if (units === 'si') return millimetres(metres) + (unit ? `${NBSP}mm` : '');
  return inches(metres / INCH) + (unit ? `${NBSP}in` : '');
}

/**
 * Words with fractions in them.
 * @param {string} text "2 × 5/8 type X"
 * @param {number} [size] px
 * @param {number} [weight]
 * @returns {Drawn}
 */
export function words(text, size = 16, weight = 400) {
  const parts = fractionParts(text);
  const small = size * SMALL;
  let width = 0;
  // What follows a fraction starts again at full size on the line.
  let dropped = false;
  const spans = parts.map((part) => {
    const back = dropped ? px(-DROPPED * size) : nothing;
    if (typeof part === 'string') {
      width += textWidth(part, size, weight);
      dropped = false;
      return back === nothing ? part : svg`<tspan dy=${back} font-size=${px(size)}>${part}</tspan>`;
    }
    const { whole, over, under } = part;
    const gap = whole ? HAIR * size : 0;
    width +=
      (whole ? textWidth(whole, size, weight) + gap : 0) + textWidth(over, small, weight) + textWidth('⁄', size, weight) + textWidth(under, small, weight);
    const up = -RAISED * size - (dropped && !whole ? DROPPED * size : 0);
    dropped = true;
    return svg`${whole ? svg`<tspan dy=${back} font-size=${px(size)}>${whole}</tspan>` : nothing}<tspan dx=${px(gap)} dy=${px(up)} font-size=${px(small)}>${over}</tspan><tspan dy=${px(RAISED * size)} font-size=${px(size)}>⁄</tspan><tspan dy=${px(DROPPED * size)} font-size=${px(small)}>${under}</tspan>`;
  });
  return { text, width, spans: parts.length === 1 && typeof parts[0] === 'string' ? text : spans };
}

/** @param {number} x */
function px(x) {
  return String(Math.round(x * 100) / 100);
}
