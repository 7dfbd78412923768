// The verdict: one or two sentences that answer the section's question.

import { html, nothing } from 'lit-html';
import { verdictWords } from '../words.js';
import { act } from './mend.js';
import { rich, tap } from './text.js';

/** @typedef {import('./app.d.ts').App} App */

/**
 * @param {App} app
 * @param {import('./app.d.ts').Section} section
 */
export function verdict(app, section) {
  const lastGood = app.faults.length > 0 || [...app.drafts.values()].some((d) => d.fault);
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
