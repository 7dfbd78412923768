// What is heard beyond, octave by octave: each level as a bar of its likely
// range over the background, against the target. layOut() is plain geometry,
// levelsView() the picture, levelsTable() the same in numbers.

import { html, nothing, svg } from 'lit-html';
import { decibels, hertz, NBSP, UNKNOWN } from '../format.js';
import { n, slanted } from './hatch.js';
import { textWidth } from './measure.js';

/**
 * @typedef {import('../types-room.d.ts').Heard} Heard
 * @typedef {import('../types-room.d.ts').OctaveHeard} OctaveHeard
 * @typedef {{width: number, mode: 'phone' | 'desk' | 'print', where: string}} Options where: "in the bedroom"
 *
 * @typedef {object} Bar
 * @property {OctaveHeard} octave
 * @property {number} x0
 * @property {number} x1
 * @property {number} centre
 * @property {number} low y of the range's lower edge
 * @property {number} high
 * @property {number} mean
 * @property {number} target
 * @property {number} background
 * @property {string} figure
 * @property {number} figureY baseline
 * @property {boolean} inside the figure stands in the bar
 * @property {string} over "+24", empty where it holds
 * @property {number} overY
 * @property {number} hatchTop
 * @property {number} hatchBottom
 */

const TEXT = 16;
const LEFT = 30;
const HEIGHT = { phone: 212, desk: 250, print: 170 };
const TOP = 14;
const FOOT = 30;

/** The octaves that are judged, 63 to 4000 Hz. @param {Heard} heard */
export function judged(heard) {
  return heard.octave.filter((o) => !o.beyond);
}

/**
 * @param {Heard} heard
 * @param {Options} options
 */
export function layOut(heard, { width, mode }) {
  const octaves = judged(heard);
  const size = mode === 'print' ? 13.3 : TEXT;
  const top = TOP;
  const bottom = top + HEIGHT[mode];
  const left = LEFT;
  const right = width;
  const listens = heard.target > 0;
  const peak = Math.max(...octaves.flatMap((o) => [o.high, o.level, listens ? o.target : 0, o.background]), 0);
  const most = peak > 100 ? 120 : peak > 57 ? 100 : 60;
  const y = (/** @type {number} */ db) => bottom - ((bottom - top) * Math.max(0, Math.min(most, db))) / most;
  const step = (right - left) / Math.max(1, octaves.length);
  const pad = Math.max(3, step * 0.11);
  const bars = octaves.map((o, i) => {
    const x0 = left + i * step + pad;
    const x1 = left + (i + 1) * step - pad;
    const none = o.high < 0.5 && o.level < 0.5;
    const figure = none ? '' : o.range ? `${decibels(Math.max(0, o.low))}–${decibels(o.high)}` : decibels(o.level);
    const low = y(o.low);
    const high = y(o.high);
    const target = y(o.target);
    const mean = y(o.level);
    const over = listens && o.state === 'over' ? `+${decibels(Math.max(o.over, 0.5))}` : '';
    const may = listens && o.state === 'mayOver';
    const inside = !o.range && !over && high < mean - size * 0.9;
    // Brick hatch from the target up to the level: to the range's top where only a range holds.
    const hatchTop = over ? (o.range ? low : Math.min(low, y(o.level))) : high;
    const ends = over && o.range && o.low < o.target ? high : hatchTop;
    return {
      octave: o,
      x0,
      x1,
      centre: (x0 + x1) / 2,
      low,
      high,
      mean,
      target,
      background: y(o.background),
      figure,
      figureY: inside
        ? Math.abs(target - mean + 5 + size * 0.4) < size * 0.75 && low - mean > size * 1.15
          ? mean + size * 0.95
          : mean - 5
        : Math.max(top + size * 0.4, high - 6),
      inside,
      over,
      overY: Math.min(bottom - 4, (target + (over ? y(o.level) : high)) / 2 + size * 0.36),
      hatchTop: over ? (o.range ? Math.min(ends, y(o.level)) : high) : may ? high : target,
      hatchBottom: target,
    };
  });
  const at = heard.schroeder;
  // On the axis of octaves: each is one step wide.
  const schroeder = at > 0 ? left + (Math.log2(at / 63) + 0.5) * step : 0;
  return {
    bars,
    left,
    right,
    top,
    bottom,
    most,
    y,
    step,
    size,
    schroeder: schroeder > left + 4 && schroeder < right - 4 ? schroeder : 0,
    listens,
    width,
    height: bottom + FOOT,
  };
}

/**
 * @param {Heard} heard
 * @param {Options} options
 */
export function levelsView(heard, options) {
  const drawn = layOut(heard, options);
  const { bars, left, right, bottom, most, y, size, width, height, listens } = drawn;
  const rules = [];
  for (let db = 20; db <= most; db += 20) rules.push(db);
  const stairs = (/** @type {'target' | 'background'} */ key) =>
    bars.map((b, i) => `${i ? 'V' : `M${n(left)} `}${n(b[key])}H${n(left + (i + 1) * drawn.step)}`).join('');
  const ground = bars.length ? `${stairs('background')}V${n(bottom)}H${n(left)}Z` : '';
  return svg`<svg class="drawing levels" role="img" aria-label=${describe(heard, options)} width=${n(width)} height=${n(height)} viewBox="0 0 ${n(width)} ${n(height)}" font-size=${size}>
    <path class="d-tint" d=${ground} />
    <path class="c-rule" d=${rules.map((db) => `M${n(left)} ${n(y(db))}H${n(right)}`).join('')} />
    ${rules.map((db) => svg`<text class="d-text d-soft" x=${n(left - 6)} y=${n(y(db) + size * 0.35)} text-anchor="end">${db === most ? 'dB' : db}</text>`)}
    <path class="h-background" d=${bars.length ? stairs('background') : ''} />
    ${bars.map((b) => barView(b))}
    ${listens ? targetView(drawn) : nothing}
    ${bars.map((b) => svg`${b.over ? svg`<text class="c-lack d-haloed" x=${n(b.centre)} y=${n(b.overY)} text-anchor="middle">${b.over}</text>` : nothing}`)}
    ${drawn.schroeder ? svg`<path class="h-schroeder" d=${broken(drawn)} />` : nothing}
    ${bars.map((b) => svg`<text class="d-text h-figure d-haloed" x=${n(b.centre)} y=${n(b.figureY)} text-anchor="middle" font-size=${b.figure.length > 4 && textWidth(b.figure, size, 700) > drawn.step + 6 ? 14 : size}>${b.figure}</text>`)}
    ${names(drawn)}
    <path class="c-axis" d="M${n(left)} ${n(bottom)}H${n(right)}" />
    <path class="c-tick" d=${bars.map((b) => `M${n(b.centre)} ${n(bottom)}v6`).join('')} />
    ${bars.map((b) => svg`<text class="d-text" x=${n(b.centre)} y=${n(bottom + size * 1.45)} text-anchor="middle">${b.octave.hz < 1000 ? Math.round(b.octave.hz) : `${Math.round(b.octave.hz / 1000)}k`}</text>`)}
  </svg>`;
}

/** The line of the Schroeder frequency breaks for the bar it falls on. @param {ReturnType<typeof layOut>} drawn */
function broken({ bars, schroeder: x, top, bottom, size }) {
  const on = bars.find((b) => b.figure && b.x0 - 3 < x && x < b.x1 + 3);
  if (!on) return `M${n(x)} ${n(top - 6)}V${n(bottom)}`;
  const from = on.figureY - size - 2;
  const to = Math.max(on.low, on.hatchBottom, on.figureY) + 4;
  return `${from > top ? `M${n(x)} ${n(top - 6)}V${n(from)}` : ''}${to < bottom ? `M${n(x)} ${n(to)}V${n(bottom)}` : ''}`;
}

/** @param {Bar} b */
function barView(b) {
  const { octave: o, x0, x1, low, high, mean } = b;
  if (!b.figure) return nothing;
  const wide = n(x1 - x0);
  const hatched = b.hatchBottom - b.hatchTop;
  return svg`${
    o.range
      ? svg`<rect class="h-range" x=${n(x0)} y=${n(high)} width=${wide} height=${n(Math.max(1, low - high))} />`
      : svg`<rect class="d-wash" x=${n(x0)} y=${n(high)} width=${wide} height=${n(Math.max(1, low - high))} /><path class="c-edge" d="M${n(x0)} ${n(high)}h${wide}M${n(x0)} ${n(low)}h${wide}" />`
  }
  ${(o.state === 'over' || o.state === 'mayOver') && hatched > 1 ? svg`<path class="c-short" transform="translate(${n(x0)} ${n(b.hatchTop)})" d=${slanted(x1 - x0, hatched, [0], 6)} />` : nothing}
  ${o.range ? nothing : svg`<path class="c-curve" d="M${n(x0)} ${n(mean)}h${wide}" />`}`;
}

/** @param {ReturnType<typeof layOut>} drawn */
function targetView({ bars, left, step }) {
  const level = bars.map((b, i) => `M${n(left + i * step)} ${n(b.target)}h${n(step)}`).join('');
  const risers = bars.slice(1).map((b, i) => `M${n(left + (i + 1) * step)} ${n(bars[i].target)}V${n(b.target)}`);
  return svg`<path class="c-riser" d=${risers.join('')} /><path class="c-needed" d=${level} />`;
}

/**
 * "target" and "background", where they stand clear of bars.
 * @param {ReturnType<typeof layOut>} drawn
 */
function names({ bars, left, bottom, size, listens, right }) {
  const words = [];
  if (bars.length && bottom - bars[0].background > size * 1.4) words.push({ x: left + 6, y: bottom - 7, text: 'background', css: 'd-text d-soft' });
  if (listens) {
    // Under the first step where the hatch leaves room, else over the last bar that has none above it.
    const first = bars[0];
    const wide = textWidth('target', size);
    const clear = bars.findLast((b) => b.inside || !b.figure);
    if (clear)
      words.push({ x: Math.min(clear.centre - wide / 2, right - wide), y: Math.min(clear.target, clear.high) - 8, text: 'target', css: 'd-text d-haloed' });
    else if (first) words.push({ x: left + 4, y: first.target + size + 2, text: 'target', css: 'd-text d-haloed' });
  }
  return words.map((w) => svg`<text class=${w.css} x=${n(w.x)} y=${n(w.y)}>${w.text}</text>`);
}

/**
 * @param {OctaveHeard} o
 */
function levelText(o) {
  return o.range ? `${decibels(Math.max(0, o.low))} to ${decibels(o.high)}` : decibels(o.level);
}

/**
 * What the picture shows, in words.
 * @param {Heard} heard
 * @param {Options} options
 */
export function describe(heard, { where }) {
  const all = judged(heard).map((o) => {
    const how = !heard.target ? '' : o.state === 'over' ? `, ${decibels(o.over)} over` : o.state === 'mayOver' ? ', may be over' : ', holds';
    return `${hertz(o.hz)} ${levelText(o)}${NBSP}dB${how}`;
  });
  return `Level ${where} by octave: ${all.join('; ')}. The same numbers stand in the table below.`;
}

/**
 * The numbers of the chart, and of the octaves beside it that are never judged.
 * @param {Heard} heard
 */
export function levelsTable(heard) {
  return html`<details class="numbers">
    <summary>The same as a table</summary>
    ${levelRows(heard)}
  </details>`;
}

/** @param {Heard} heard */
export function levelRows(heard) {
  const listens = heard.target > 0;
  return html`<table>
    <caption>Octaves, dB</caption>
    <thead>
      <tr>
        <th class="band" scope="col">band</th><th scope="col">level</th><th scope="col">peak</th><th scope="col">background</th>
        ${listens ? html`<th scope="col">target</th><th scope="col">over</th>` : nothing}
      </tr>
    </thead>
    <tbody>
      ${heard.octave.map(
        (o) => html`<tr class=${o.beyond ? 'guess' : ''}>
          <th class="band" scope="row">${hertz(o.hz)}${o.beyond ? html`<span class="hid"> a guess</span>` : nothing}</th>
          <td><b class="own">${o.level < -20 ? UNKNOWN : o.range ? `${decibels(o.low)}–${decibels(o.high)}` : decibels(o.level)}</b>${o.range || o.level < -20 ? nothing : html` <span class="soft">±${decibels((o.high - o.low) / 2)}</span>`}</td>
          <td>${o.level < -20 ? UNKNOWN : decibels(o.peak)}</td>
          <td>${o.beyond ? UNKNOWN : decibels(o.background)}</td>
          ${listens ? html`<td>${o.beyond ? UNKNOWN : decibels(o.target)}</td><td class="own">${o.beyond ? UNKNOWN : o.state === 'over' ? `+${decibels(Math.max(o.over, 0.5))}` : o.state === 'mayOver' ? 'may be' : 'holds'}</td>` : nothing}
        </tr>`,
      )}
    </tbody>
  </table>`;
}
