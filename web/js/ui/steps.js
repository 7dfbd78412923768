// The order of work as a checklist: nothing after a hold is begun before it is done.

import { html, nothing } from 'lit-html';
import { stepSaid } from '../words-buy.js';
import { rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-buy.d.ts').ListReport} ListReport
 * @typedef {import('../types-buy.d.ts').Step} Step
 */

/** What a step's tick is kept by. @param {Step} step */
export function stepKey({ code, face, layer }) {
  return `step/${[code, face, layer >= 0 ? layer : ''].filter((x) => x !== '').join('/')}`;
}

/** @param {App} app @param {ListReport} list */
export function stepsPart(app, list) {
  const steps = list.steps ?? [];
  if (!steps.length) return nothing;
  const done = steps.filter((s) => app.ticks.get(stepKey(s))).length;
  const hold = steps.find((s) => s.hold && !app.ticks.get(stepKey(s)));
  return html`<h2 class="head part"><span>Order of work <span class="soft">${done} of ${steps.length} done</span></span></h2>
    ${hold ? html`<p>Next hold: <b>${stepSaid(hold, list.faces, app.ctx).head}</b>.</p>` : nothing}
    <ol class="ticks steps">
      ${steps.map((step) => {
        const key = stepKey(step);
        const said = stepSaid(step, list.faces, app.ctx);
        const on = Boolean(app.ticks.get(key));
        return html`<li class="${on ? 'got' : ''} ${step.hold ? 'hold' : ''}">
          <label class="tick"
            ><input type="checkbox" .checked=${on} @change=${(/** @type {Event} */ e) => app.tick(key, /** @type {HTMLInputElement} */ (e.target).checked ? 1 : undefined)} /><span class="what"
              ><span class="name">${step.hold ? html`<b class="stop">Hold.</b> ` : nothing}${rich(said.head)}</span>${said.text ? html`<span class="soft">${rich(said.text)}</span>` : nothing}</span
            ></label
          >
        </li>`;
      })}
    </ol>
    <p class="soft">Wiring by a licensed electrician, gas by a licensed fitter. Fire-rated walls, ceilings below a dwelling, escape and alarms: your building department decides, before they are closed.</p>`;
}
