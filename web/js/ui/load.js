// Whether what it hangs from holds it, in its first form: one inner clip, the
// face that hangs on it, and the sum.

import { html, nothing } from 'lit-html';
import { clipView } from '../draw/clip.js';
import { number, text } from '../format.js';
import { STATES, stateWords } from '../words.js';
import { fieldRow } from './field.js';
import { ratingSpec } from './gap.js';
import { cautions } from './layers.js';
import { holder } from './mend.js';
import { mark, rich } from './text.js';
import { verdict } from './verdict.js';
import { holding } from './worked.js';

/** @typedef {import('./app.d.ts').App} App */

const ABOUT = [
  'over-rating',
  'close-to-rating',
  'under-load',
  'no-rating',
  'rating-invented',
  'channel-boards',
  'ceiling-dead-load',
  'truss-chord',
  'masonry-on-floor',
  'poured-floor',
];

/**
 * @param {App} app
 * @param {number} [width]
 */
export function load(app, width = app.width) {
  const { report } = app;
  if (!report) return nothing;
  const l = report.load;
  const held = holding(app);
  return html`<section class="load" aria-label="Load">
    ${app.wide ? verdict(app, 'load') : nothing}
    ${
      l && held
        ? html`<div class="drawing-place">
            ${clipView({ units: app.units, width, rows: held.rows?.v, along: held.along?.v, mode: app.wide ? 'desk' : 'phone', state: l.state })}
          </div>
          <p class="soft under-drawing">${rich(`one inner clip of ${number(l.count)}${report.area ? ` for ${text(report.area, app.ctx)}` : ''}`)}</p>
          ${sum(app)} ${states(app)} ${rating(app)}`
        : html`<p class="soft">${rich('No clips hold this leaf: it stands on its frame, and nothing here can be over its rating.')}</p>`
    }
    ${cautions(app, (code) => ABOUT.includes(code))}
  </section>`;
}

/** @param {App} app */
function sum(app) {
  const l = app.report?.load;
  const held = holding(app);
  if (!l) return nothing;
  const rows = /** @type {[string, string, import('../types.d.ts').Value | null | undefined][]} */ ([
    ['area', held?.rows && held.along ? `${text(held.rows, app.ctx)} × ${text(held.along, app.ctx)}` : '', l.area],
    ['boards', '', l.boards],
    ['channel', '', l.channel],
    ['fill on it', '', l.fill],
    ['hung on it', '', l.extra],
    ['own area', '', l.own],
    ['on the clip', 'channel runs through', l.onClip],
  ]);
  return html`<table class="sum">
    <caption class="hid">
      What one clip carries
    </caption>
    <tbody>
      ${rows.map(([name, how, value]) =>
        value
          ? html`<tr><th scope="row">${name}</th><td class="soft">${rich(how)}</td><td class="figure">${rich(text({ ...value, origin: 'computed' }, app.ctx))}</td></tr>`
          : nothing,
      )}
      ${
        l.share
          ? html`<tr class="result"><th scope="row">of its rating</th><td class="soft">${rich(text(l.rating, app.ctx))}</td><td class="figure"><b>${text(l.share, app.ctx)}</b></td></tr>`
          : nothing
      }
    </tbody>
  </table>`;
}

/** The four states, the one that holds here told from the others by weight and shape. @param {App} app */
function states(app) {
  const l = app.report?.load;
  if (!l?.share) return nothing;
  return html`<ul class="states">
    ${['over', 'close', 'holds', 'under'].map(
      (state) =>
        html`<li class="${state} ${state === l.state ? 'here' : ''}" aria-current=${state === l.state}>
          ${mark(state)}<span class="word">${STATES[state]}</span><span class="soft">${rich(stateWords(state, l.rating, app.ctx))}</span>
        </li>`,
    )}
  </ul>`;
}

/** @param {App} app */
function rating(app) {
  const at = holder(app);
  const gap = app.buildUp.gaps?.find((g) => g.id === at?.id);
  if (!at || !gap) return nothing;
  return fieldRow(app, ratingSpec(app, gap, at.side, holding(app)?.rating), 'A clip is rated');
}
