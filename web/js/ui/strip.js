// The answer strip: six figures, always the same six in the same places, each
// a button that says how it was worked out.

import { html, nothing } from 'lit-html';
import { decibels, differenceOf, fractionParts, MINUS, NBSP, shown, spread, UNKNOWN } from '../format.js';
import { currencyOf, STATES } from '../words.js';
import { showsOpenings } from './house.js';
import { mark, rich } from './text.js';

/**
 * @typedef {import('../types.d.ts').Report} Report
 * @typedef {import('../types.d.ts').Figures} Figures
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {import('../types.d.ts').Units} Units
 * @typedef {import('./app.d.ts').App} App
 */

/**
 * @typedef {object} Cell
 * @property {string} key
 * @property {string} before the word before the figure, where the unit does not say what it is
 * @property {string} figure
 * @property {string} whole the figure before its fraction
 * @property {string} over
 * @property {string} slash
 * @property {string} under
 * @property {string} unit
 * @property {string} after what follows the unit: the spread of a rating
 * @property {string} state over, close, holds, under, or empty
 * @property {string} word the state in words
 * @property {string} second the rest of the line below
 * @property {string} trace
 */

const NAMES = /** @type {Record<string, string>} */ ({
  mass: 'mass per area',
  cost: 'cost per area',
  clip: 'load on the worst clip',
  bass: 'bass',
  rating: 'rating',
  thickness: 'thickness',
});

/**
 * The six cells of a report, as texts. The build writes the first wall's into the page with it.
 * @param {Report} report
 * @param {Units} units
 * @returns {Cell[]}
 */
export function stripCells(report, units) {
  const ctx = { units, currency: report.currency || currencyOf('') };
  const y = report.yours;
  const alone = report.isReference;
  const side = report.leaf === 0 ? 'room side' : report.leaf === report.leaves.length - 1 ? 'far side' : 'middle leaf';
  const isRw = report.ratingIs === 'Rw';

  /** @param {Value | null} v @param {string} [more] @param {boolean} [bare] */
  const diff = (v, more = '', bare = false) => {
    if (!v || v.diff === undefined || alone) return '';
    const words = differenceOf(v, ctx, bare);
    return words === 'same' ? `same${more}` : words;
  };

  const clip = clipCell(y, ctx, alone, isRw);
  const price = y.cost?.origin === 'demo' ? 'example price' : y.cost ? 'boards' : 'no price yet';
  return [
    cell('mass', y.mass, ctx, { second: diff(y.mass, ' mass') || side }),
    cell('cost', y.cost, ctx, { second: diff(y.cost, ' cost') || price }),
    clip,
    cell('bass', y.bass, ctx, { before: 'bass', second: [y.bass ? spread(y.bass) : '', diff(y.bass)].filter(Boolean).join(`${NBSP} `) || UNKNOWN }),
    isRw
      ? cell('rating', y.rating, ctx, {
          before: report.ratingIs,
          unit: y.rating ? `(${signed(y.c)}; ${signed(y.ctr)})` : '',
          second: [y.rating ? spread(y.rating) : '', diff(y.rating, '', true), built(y)].filter(Boolean).join(`${NBSP} `),
        })
      : cell('rating', y.rating, ctx, {
          before: report.ratingIs,
          unit: y.rating ? spread(y.rating) : '',
          second: [diff(y.rating, '', true), built(y)].filter(Boolean).join(`${NBSP} `),
        }),
    cell('thickness', y.thickness, ctx, { second: diff(y.thickness) || 'thick' }),
  ];
}

/** @param {Figures} y */
function built(y) {
  return y.built ? `built${NBSP}${decibels(y.built.v)}` : '';
}

/** @param {number} n */
function signed(n) {
  return n < 0 ? `${MINUS}${-n}` : String(n);
}

/**
 * @param {Figures} y
 * @param {import('../format.js').Ctx} ctx
 * @param {boolean} alone
 * @param {boolean} short the region leaves the difference out
 */
function clipCell(y, ctx, alone, short) {
  const state = y.load === 'over' || y.load === 'close' || y.load === 'under' ? y.load : '';
  if (!y.clip) {
    // Without a rating the load itself is what there is to say.
    const value = y.load === 'none' ? null : y.clipLoad;
    return cell('clip', value, ctx, { before: 'clip', second: STATES[y.load] ?? 'no clips', trace: y.clipLoad?.trace });
  }
  const d = alone ? '' : differenceOf(y.clip, ctx, true);
  const word = STATES[y.load] ?? '';
  const more = d && !(short && d === 'same') ? `, ${d}` : '';
  return cell('clip', y.clip, ctx, { before: 'clip', state, word: state ? word : '', second: state ? more : `${word}${more}` });
}

/**
 * @param {string} key
 * @param {Value | null} value
 * @param {import('../format.js').Ctx} ctx
 * @param {Partial<Cell>} rest
 * @returns {Cell}
 */
function cell(key, value, ctx, rest) {
  const { figure, unit } = value ? shown(value.kind, value.v, ctx) : { figure: UNKNOWN, unit: '' };
  const fraction = fractionParts(figure).find((part) => typeof part !== 'string');
  const parts =
    typeof fraction === 'object'
      ? { whole: fraction.whole, over: fraction.over, slash: '\u2044', under: fraction.under }
      : { whole: figure, over: '', slash: '', under: '' };
  const made = {
    key,
    before: '',
    figure,
    ...parts,
    unit: key === 'rating' ? '' : unit,
    after: '',
    state: '',
    word: '',
    second: '',
    trace: value?.trace ?? '',
    ...rest,
  };
  return /** @type {Cell} */ (made);
}

/** What the one row keeps when the page is scrolled. */
const FOLDED = ['clip', 'bass', 'cost'];

/** @param {App} app */
export function strip(app) {
  const cells = app.report ? stripCells(app.report, app.units) : undefined;
  return html`<section class="strip ${app.report?.ratingIs === 'Rw' ? 'rw' : ''}" aria-label="Answers" aria-busy=${app.stale}>
    ${cells ? cells.map((c) => cellView(app, c)) : nothing}
  </section>`;
}

/** The table side by side has the figures itself: of the strip it keeps one row. @param {App} app */
export function standsShort(app) {
  return !app.wide && (app.section === 'swap' || showsOpenings(app)) && !app.panel && !app.first;
}

/** @param {App} app */
export function foldedStrip(app) {
  if (!app.report || app.wide) return nothing;
  const cells = stripCells(app.report, app.units);
  const standing = standsShort(app);
  return html`<section class="strip one ${standing ? 'standing' : ''}" aria-label="Answers, in short" ?hidden=${!standing && !app.folded}>
    ${FOLDED.map((key) => {
      const c = cells.find((x) => x.key === key);
      if (!c) return nothing;
      const short = { ...c, unit: c.unit.replace('per ', '/'), second: '', word: '' };
      if (key === 'bass') short.after = c.second.split(NBSP)[0];
      return cellView(app, short);
    })}
  </section>`;
}

/**
 * @param {App} app
 * @param {Cell} c
 */
function cellView(app, c) {
  const open = app.panel?.kind === 'work' && app.panel.key === c.key;
  return html`<button
    type="button"
    class="cell ${c.key} ${open ? 'open' : ''} ${app.changed.has(c.key) ? 'changed' : ''}"
    aria-expanded=${open}
    @click=${() => (open ? app.close() : app.open({ kind: 'work', trace: c.trace, key: c.key }))}
  >
    <span class="hid">${NAMES[c.key]}: </span><span class="first"
      >${c.before ? html`<span>${c.before} </span>` : nothing}<b class="figure">${rich(c.figure)}</b>${
        c.unit ? html`<span class="unit"> ${unitView(c.unit)}</span>` : nothing
      }${c.after ? html`<span> ${c.after}</span>` : nothing}</span
    > ${
      c.second || c.word
        ? html`<span class="second">${c.state ? html`${mark(c.state)}<b class="state ${c.state}">${c.word}</b>` : nothing}${
            c.second.startsWith(',') ? html`<span class="and">${c.second}</span>` : rich(c.second)
          }</span>`
        : nothing
    }<span class="hid">. How it was worked out</span>
  </button>`;
}

/** "per ft²" becomes "/ft²" where there is no room for it. @param {string} unit */
function unitView(unit) {
  const per = /^per (.*)$/.exec(unit);
  return per ? html`<span class="long">per </span><span class="short">/</span>${per[1]}` : unit;
}
