// Lengths as they stand in a drawing: a whole number, a hair gap, a numerator
// raised and a denominator dropped round a fraction slash; or bare millimetres.

import { nothing, svg } from 'lit-html';
import { textWidth } from './measure.js';

const INCH = 0.0254;
/** Numerator and denominator beside the whole number, and where they stand, em. */
const SMALL = 0.72;
const RAISED = 0.36;
const DROPPED = 0.07;
const HAIR = 0.1;

/**
 * @typedef {object} Drawn
 * @property {string} text what is read aloud: "1 5/8"
 * @property {number} width px at the size asked for
 * @property {unknown} spans tspans for inside a text element
 */

/**
 * A length in inches to the nearest sixteenth, as whole number and fraction.
 * @param {number} metres
 * @param {number} [parts] of an inch
 * @returns {{negative: boolean, whole: number, top: number, bottom: number}}
 */
export function inches(metres, parts = 16) {
  const count = Math.round((Math.abs(metres) / INCH) * parts + 1e-9);
  const whole = Math.floor(count / parts);
  let top = count - whole * parts;
  let bottom = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return { negative: metres < 0 && count > 0, whole, top, bottom: top ? bottom : 1 };
}

/**
 * Bare millimetres: one decimal below 100 where it is not a whole number.
 * @param {number} metres
 */
export function millimetres(metres) {
  const mm = metres * 1000;
  const value = Math.abs(mm) < 99.95 ? Math.round(mm * 10) / 10 : Math.round(mm);
  return String(value).replace('-', '−');
}

/**
 * @param {number | undefined | null} metres
 * @param {'us' | 'si'} units
 * @param {{size?: number, weight?: number, unit?: boolean}} [look] unit: write "in" or "mm" after it
 * @returns {Drawn}
 */
export function length(metres, units, look = {}) {
  const { size = 16, weight = 400 } = look;
  const known = metres !== undefined && metres !== null && Number.isFinite(metres);
  if (!known) return { text: '–', width: textWidth('–', size, weight), spans: '–' };
  if (units === 'si') {
    const text = millimetres(metres) + (look.unit ? ' mm' : '');
    return { text, width: textWidth(text, size, weight), spans: text };
  }
  return fraction(inches(metres), { size, weight, unit: look.unit ? ' in' : '' });
}

/**
 * @param {{negative: boolean, whole: number, top: number, bottom: number}} parts
 * @param {{size: number, weight: number, unit: string}} look
 * @returns {Drawn}
 */
function fraction(parts, look) {
  const { size, weight, unit } = look;
  const sign = parts.negative ? '−' : '';
  const whole = parts.whole || !parts.top ? `${sign}${parts.whole}` : sign;
  if (!parts.top) {
    const text = whole + unit;
    return { text, width: textWidth(text, size, weight), spans: text };
  }
  const top = String(parts.top);
  const bottom = String(parts.bottom);
  const small = size * SMALL;
  const gap = parts.whole ? HAIR * size : 0;
  const up = RAISED * size;
  const down = DROPPED * size;
  const spans = svg`${whole ? svg`<tspan>${whole}</tspan>` : nothing}<tspan dx=${px(gap)} dy=${px(-up)} font-size=${px(small)}>${top}</tspan><tspan dy=${px(up)} font-size=${px(size)}>⁄</tspan><tspan dy=${px(down)} font-size=${px(small)}>${bottom}</tspan>${unit ? svg`<tspan dy=${px(-down)} font-size=${px(size)}>${unit}</tspan>` : nothing}`;
  const width =
    (whole ? textWidth(whole, size, weight) + gap : 0) +
    textWidth(top, small, weight) +
    textWidth('⁄', size, weight) +
    textWidth(bottom, small, weight) +
    (unit ? textWidth(unit, size, weight) : 0);
  return { text: `${whole}${parts.whole ? ' ' : ''}${top}/${bottom}${unit}`, width, spans };
}

/** @param {number} x */
function px(x) {
  return String(Math.round(x * 100) / 100);
}
