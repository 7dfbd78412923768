// Text as it is set: fractions, the shapes of load, and words to tap.

import { html, nothing } from 'lit-html';
import { fractionParts } from '../format.js';

/**
 * Text with its fractions set as fractions.
 * @param {string} text
 */
export function rich(text) {
  return fractionParts(text).map((part) => {
    if (typeof part === 'string') return part;
    const { whole, over, under } = part;
    return html`<span class="frac" role="img" aria-label="${whole ? `${whole} ` : ''}${over}/${under}"
      >${whole ? html`<span class="whole">${whole}</span>` : nothing}<span class="num">${over}</span>⁄<span class="den">${under}</span></span
    >`;
  });
}

/**
 * The shape of a load: ▲ over, ■ close, ● holds, ▽ under. The word stands beside it.
 * @param {string} state
 */
export function mark(state) {
  return html`<span class="mark ${state}" aria-hidden="true"></span>`;
}

/**
 * Words that can be tapped.
 * @param {string} words
 * @param {(event: Event) => void} act
 * @param {string} [label] where the words alone do not say enough
 * @param {boolean} [waits] it does nothing now, and keeps the focus
 */
export function tap(words, act, label, waits) {
  return html`<button class="tap" type="button" aria-label=${label ?? nothing} aria-disabled=${waits || nothing} @click=${act}>${rich(words)}</button>`;
}

/**
 * A bold first phrase and a sentence, some of it to tap.
 * @param {import('../words.js').Message} message
 * @param {(value: string) => void} [act] none where there is no field to mend
 */
export function message({ head, pieces }, act) {
  return html`<b>${rich(head)}</b> ${pieces.map((piece) => (typeof piece === 'string' ? rich(piece) : act ? tap(piece.tap, () => act(piece.value)) : rich(piece.tap)))}`;
}

/** An exclamation mark that is drawn, as no face has one of this weight. */
export function bang() {
  return html`<svg class="bang" viewBox="0 0 8 24" width="8" height="24" aria-hidden="true"><path d="M2 1h4l-.8 12.6H2.8z" /><path d="M2 16h4v4H2z" /></svg>`;
}
