// A field for a quantity: square, the number right-aligned, the unit a button
// at its right. It reads what people write; the core says what it means.

import { html, nothing } from 'lit-html';
import { ifDefined } from 'lit-html/directives/if-defined.js';
import { live } from 'lit-html/directives/live.js';
import { retyped } from '../format.js';
import { faultWords } from '../words.js';
import { message, rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').FieldSpec} FieldSpec
 */

/** @type {Record<string, string>} */
const UNIT_WORDS = { ft2: 'ft²', m2: 'm²', 'kg/m2': 'kg/m²', '': '' };

/** @param {string} unit */
export function unitWords(unit) {
  return UNIT_WORDS[unit] ?? unit;
}

/**
 * What is wrong with a field, if anything is.
 * @param {App} app
 * @param {FieldSpec} spec
 */
export function faultOf(app, spec) {
  return (
    app.drafts.get(spec.key)?.fault ??
    app.faults.find((f) => spec.mine(f)) ??
    [app.report?.layout?.faults, app.report?.list?.faults, app.house?.faults].flatMap((list) => list ?? []).find((f) => spec.mine(f))
  );
}

/**
 * @param {App} app
 * @param {FieldSpec} spec
 */
export function field(app, spec) {
  const draft = app.drafts.get(spec.key);
  const bad = faultOf(app, spec) !== undefined;
  const words = spec.unitWords ?? unitWords(spec.unit);
  const several = (spec.units?.length ?? 0) > 1;
  const id = `f-${spec.key}`;
  return html`<span class="field ${bad ? 'bad' : ''} ${spec.value ? 'typed' : ''} ${spec.lit ? 'lit' : ''} ${words ? '' : 'plain'}">
    <input
      id=${id}
      type="text"
      inputmode=${spec.what === 'length' || spec.what === 'sheet' ? (app.units === 'us' ? 'text' : 'decimal') : 'decimal'}
      enterkeyhint="done"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      maxlength="80"
      aria-label=${spec.label}
      aria-invalid=${bad}
      aria-describedby=${ifDefined(bad ? `${id}-fault` : undefined)}
      placeholder=${spec.typical ?? ''}
      .value=${live(draft?.text ?? retyped(spec.value))}
      @pointerdown=${arrive}
      @click=${chooseAll}
      @input=${(/** @type {InputEvent} */ e) => app.input(spec, /** @type {HTMLInputElement} */ (e.target).value)}
      @change=${() => app.leave(spec)}
      @keydown=${(/** @type {KeyboardEvent} */ e) => {
        if (e.key === 'Enter') /** @type {HTMLInputElement} */ (e.target).blur();
      }}
    />${
      words
        ? several
          ? html`<button class="unit" type="button" aria-label="${spec.label}: in ${words}, change" @click=${() => app.cycleUnit(spec)}>${words}</button>`
          : html`<span class="unit">${words}</span>`
        : nothing
    }
  </span>`;
}

/** Whether the tap that is under way is the one that brings the focus. */
let arriving = false;

/** @param {Event} e */
function arrive(e) {
  arriving = document.activeElement !== e.target;
}

/** A new number takes the place of the old one: the tap that brings the focus chooses all of it. @param {Event} e */
function chooseAll(e) {
  const input = /** @type {HTMLInputElement} */ (e.target);
  if (arriving && input.selectionStart === input.selectionEnd) input.select();
  arriving = false;
}

/**
 * A field with its label at the left; what is wrong takes the label's place.
 * @param {App} app
 * @param {FieldSpec} spec
 * @param {string} label
 * @param {string} [note] a second line in soft
 */
export function fieldRow(app, spec, label, note) {
  const fault = faultOf(app, spec);
  return html`<div class="frow">
    ${fault ? faultText(app, spec) : html`<label for="f-${spec.key}">${rich(label)}${note ? html`<span class="soft"> ${rich(note)}</span>` : nothing}</label>`}
    ${field(app, spec)}
  </div>`;
}

/**
 * The fault in words, with its repaired values to tap.
 * @param {App} app
 * @param {FieldSpec} spec
 */
export function faultText(app, spec) {
  const fault = faultOf(app, spec);
  if (!fault) return nothing;
  return html`<p class="fault" id="f-${spec.key}-fault" role="status">${message(faultWords(fault, spec.label), (value) => app.mend(spec, value))}</p>`;
}

/**
 * Joined chips of which one is chosen.
 * @template {string} T
 * @param {string} label
 * @param {{value: T, words: string}[]} choices
 * @param {T} chosen
 * @param {(value: T) => void} choose
 */
export function chips(label, choices, chosen, choose) {
  return html`<div class="chips" role="group" aria-label=${label}>
    ${choices.map(
      ({ value, words }) => html`<button type="button" class="chip" aria-pressed=${value === chosen} @click=${() => choose(value)}>${rich(words)}</button>`,
    )}
  </div>`;
}

/**
 * A list to choose from, with the browser's own menu.
 * @param {string} label
 * @param {{value: string, words: string}[]} choices
 * @param {string} chosen
 * @param {(value: string) => void} choose
 */
export function choice(label, choices, chosen, choose) {
  return html`<label class="frow choice"
    ><span>${label}</span
    ><select @change=${(/** @type {Event} */ e) => choose(/** @type {HTMLSelectElement} */ (e.target).value)}>
      ${choices.map(({ value, words }) => html`<option value=${value} ?selected=${value === chosen}>${words}</option>`)}
    </select></label
  >`;
}
