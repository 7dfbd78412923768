// The verdict: one or two sentences that answer the section's question.

import { html, nothing } from 'lit-html';
import { verdictWords } from '../words.js';
import { loadSaid } from './clips.js';
import { buySaid } from './list.js';
import { act } from './mend.js';
import { rich, tap } from './text.js';

/** @typedef {import('./app.d.ts').App} App */

/**
 * @param {App} app
 * @param {import('./app.d.ts').Section} section
 */
export function verdict(app, section) {
  const lastGood = app.faults.length > 0 || [...app.drafts.values()].some((d) => d.fault);
  const own = lastGood ? undefined : section === 'load' ? loadSaid(app) : section === 'buy' ? buySaid(app) : undefined;
  if (own) {
    return html`<p class="verdict" aria-live="polite" aria-atomic="true" data-section=${section}>
      <b>${own.answer}</b> ${rich(own.text)}${own.mend ? html` ${tap(own.mend.tap, own.mend.act)}` : nothing}
    </p>`;
  }
  const words = app.report ? verdictWords(app.report.verdicts[section], app.ctx, lastGood, section) : undefined;
  return html`<p class="verdict" aria-live="polite" aria-atomic="true" data-section=${section}>
    ${
      words
        ? html`<b>${words.answer}</b> ${rich(words.text)}${
            words.mend ? html` ${tap(words.mend.tap, () => act(app, words.mend?.edit ?? '', words.mend?.sentence))}` : nothing
          }`
        : nothing
    }
  </p>`;
}
