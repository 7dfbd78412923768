// What the people in the closed room breathe, and what warms it.

import { html, nothing } from 'lit-html';
import { setRoom } from '../edit-room.js';
import { decibels, hertz, number } from '../format.js';
import { airWords, ductWords, flow, heatWords, ppm } from '../words-room.js';
import { chips, fieldRow } from './field.js';
import { answer, bare, quantity, said } from './house.js';
import { bang, rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-room.d.ts').House} House
 */

/** @param {App} app @param {House} house */
export function airVerdict(app, house) {
  const now = app.plan.room ?? {};
  return answer(airWords(house.told.air, app.ctx, { people: Number(now.people || 0), minutes: Number(now.minutes || 60) }));
}

/**
 * @param {App} app
 * @param {House} house
 */
export function airView(app, house) {
  const { plan } = app;
  const { air } = house.told;
  const now = plan.room ?? {};
  const mine = (/** @type {string} */ field) => (/** @type {import('../types.d.ts').Fault} */ f) =>
    !f.surface && !f.item && f.field === field && f.words.startsWith('the room');
  const number_ = (
    /** @type {'people' | 'minutes' | 'watts'} */ name,
    /** @type {string} */ words,
    /** @type {string} */ unit,
    /** @type {string} */ typical,
  ) =>
    fieldRow(
      app,
      bare({
        key: `room.${name}`,
        label: words,
        value: now[name],
        typical,
        words: unit,
        set: (q) => setRoom(plan, { [name]: q }, `${name}: ${q || 'not said'}`),
        mine: mine(name),
      }),
      words,
    );
  return html`${number_('people', 'People in it', '', '0')} ${number_('minutes', 'At a time', 'min', '60')} ${number_('watts', 'Lamps and amplifiers', 'W', '0')}
    ${fieldRow(
      app,
      quantity(app, {
        key: 'room.air',
        what: 'flow',
        label: 'Fresh air brought in',
        value: now.air,
        typical: '',
        us: ['cfm'],
        si: ['L/s'],
        set: (q) => setRoom(plan, { air: q }, `fresh air ${said(q)}`),
        mine: mine('air'),
      }),
      'Fresh air brought in',
    )}
    ${chips(
      'What burns in it',
      [
        { value: '', words: 'nothing burns in it' },
        { value: 'fuel', words: 'a heater or boiler' },
      ],
      now.fuel ? 'fuel' : '',
      (value) => app.edit(setRoom(plan, { fuel: value === 'fuel' }, value ? 'something burns in it' : 'nothing burns in it')),
    )}
    ${figures(app, house)} ${warnings(air)}`;
}

/**
 * @param {App} app
 * @param {House} house
 */
function figures(app, house) {
  const { air } = house.told;
  if (!air.end && !air.heat) return nothing;
  const octaves = [63, 125, 250, 500, 1000, 2000, 4000];
  const row = (/** @type {string} */ name, /** @type {unknown} */ figure) => html`<div><dt>${name}</dt><dd>${figure}</dd></div>`;
  return html`<h2 class="head part">Air and heat</h2>
    <dl class="figures">
      ${air.end ? row('carbon dioxide, at the end', html`<b>${ppm(air.end)}</b>`) : nothing}
      ${air.steady ? row('where it settles', ppm(air.steady)) : nothing}
      ${air.want ? row('fresh air wanted', html`<b>${flow(air.want, app.ctx)}</b>`) : nothing}
    </dl>
    ${air.heat ? html`<p class="say">${rich(heatWords(air, app.ctx))}</p>` : nothing}
    ${
      air.want
        ? html`<p class="say">${rich(ductWords(air, app.ctx))} So that the duct lets through a tenth of what else gets out, on its way it must stop:</p>
            <table class="figures-row">
              <caption class="hid">Insertion loss that the duct needs, dB by octave</caption>
              <thead><tr><th scope="row" class="soft">Hz</th>${octaves.map((hz) => html`<th scope="col" aria-label=${hertz(hz)}>${hz < 1000 ? hz : `${hz / 1000}k`}</th>`)}</tr></thead>
              <tbody><tr><th scope="row" class="soft">dB</th>${octaves.map((_, i) => html`<td>${(air.ductLoss?.[i + 1] ?? 0) < 0.5 ? '0' : decibels(air.ductLoss[i + 1])}</td>`)}</tr></tbody>
            </table>`
        : nothing
    }
    <p class="soft aside">Common practice: ${number(air.limit)}${'\u00a0'}ppm as what people still call fresh. Size the ducts and the cooling with whoever installs them.</p>`;
}

/** @param {import('../types-room.d.ts').Air} air */
function warnings(air) {
  if (!air.sealed && !air.fuel) return nothing;
  return html`<ul class="cautions" aria-label="Cautions">
    ${air.fuel ? html`<li class="caution grave">${bang()}<span><b>Nothing may burn in a sealed room.</b> A heater or boiler that draws its air from here can kill: ask a licensed installer before closing it.</span></li>` : nothing}
    ${air.sealed ? html`<li class="caution">${bang()}<span><b>A tight room needs air.</b> Nobody said that any comes in: plan a silenced duct in and one out before the walls are closed.</span></li>` : nothing}
  </ul>`;
}
