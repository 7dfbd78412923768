// What to buy for the whole plan, how it gets there, and in which order it is
// hung; or how the boards are cut.

import { html, nothing } from 'lit-html';
import { cutsOpen, cutsPart, progress, showCuts, tryCuts } from './cuts.js';
import { cautions } from './layers.js';
import { buyingForm, forgotPart, listPart, saveCsv } from './list.js';
import { stepsPart } from './steps.js';
import { tap } from './text.js';
import { liftPart, noteLines, tripsPart, wayPart } from './trips.js';
import { verdict } from './verdict.js';

/** @typedef {import('./app.d.ts').App} App */

const ABOUT = ['short-stock', 'no-screw', 'dust', 'invented-cost'];

/**
 * @param {App} app
 * @param {number} [width]
 * @param {() => void} [better] asked for the list again, by a better cut
 */
export function buy(app, width = app.width, better = () => {}) {
  const { report } = app;
  if (!report) return nothing;
  const { list } = report;
  const cuts = cutsOpen();
  return html`<section class="buy" aria-label=${cuts ? 'Cuts' : 'Buy'}>
    ${app.wide || app.plan.surfaces.length > 1 ? verdict(app, 'buy') : nothing}
    ${
      cuts
        ? html`<p class="taps back">${tap('< the list', () => showCuts(app, false))}</p>
            ${cutsPart(app, width, better)}`
        : !list
          ? html`<p class="soft">…</p>`
          : !list.items?.length
            ? html`<p class="soft">How many sheets follows from how large it is. ${tap('Type its size', () => app.open({ kind: 'needs' }))}</p>`
            : html`<h2 class="head part first-head">
                  <span>At the counter <span class="soft">no signal needed</span></span>${tap(
                    'cuts',
                    () => {
                      showCuts(app, true);
                      tryCuts(app, better);
                    },
                    'cuts: how the boards are cut',
                  )}
                </h2>
                ${progress(app, better)} ${listPart(app, list)} ${forgotPart(app, list)}
                <p class="taps">${tap('Save as CSV', () => saveCsv(app, list))} ${tap('Print the list', () => app.print())}</p>
                ${tripsPart(app, list, width)} ${wayPart(app, list)} ${liftPart(app, list)} ${stepsPart(app, list)} ${noteLines(app, list.notes, list)}
                <h2 class="head part">What it is counted with</h2>
                ${buyingForm(app)} ${cautions(app, (code) => ABOUT.includes(code))}`
    }
  </section>`;
}
