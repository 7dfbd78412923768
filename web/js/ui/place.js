// The surface: what it is called, how large it is, what lies beyond it, and the
// way to the other surfaces of the plan.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { joined, retyped, span, text, typed, unitIn } from '../format.js';
import { chips, fieldRow } from './field.js';
import { makeRoom, showRoom } from './house.js';
import { panel } from './panel.js';
import { rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').FieldSpec} FieldSpec
 * @typedef {import('../types.d.ts').Surface} Surface
 */

/** @param {App} app */
export function place(app) {
  const { surface, plan } = app;
  return panel(
    app,
    plan.surfaces.length > 1 ? 'Walls, ceiling, floor' : 'This wall',
    html`${
      plan.surfaces.length > 1
        ? html`<ul class="plain-list">
            ${plan.surfaces.map(
              (s) => html`<li>
                <button type="button" class="pick-row" aria-current=${s.id === surface.id} @click=${() => app.goSurface(s.id)}>
                  <span><b class="serif">${s.name}</b>${s.beyond ? html` <i class="soft">${s.beyond}</i>` : nothing}</span><span class="soft">${rich(sizeWords(app, s))}</span>
                </button>
              </li>`,
            )}
          </ul>
          <p class="taps">${tap('The whole room', () => showRoom(app))}</p>`
        : html`<p class="taps">${tap('Make it a room of six faces', () => makeRoom(app))}</p>`
    }
      <h3 class="head">${surface.name || 'This surface'}</h3>
      ${words(app, 'Called', 'name', surface.name, (name) => edit.setSurface(plan, surface.id, { name }, `called ${name}`))}
      ${words(app, 'Beyond it', 'beyond', surface.beyond ?? '', (beyond) => edit.setSurface(plan, surface.id, { beyond }, `beyond: ${beyond || 'not said'}`))}
      ${chips(
        'What it is',
        /** @type {const} */ (['wall', 'ceiling', 'floor']).map((value) => ({ value, words: value })),
        surface.kind,
        (kind) => app.edit(edit.setSurface(plan, surface.id, { kind }, `it is a ${kind}`)),
      )}
      ${fieldRow(app, spec(app, 'width', 'length', ['in', 'ft', 'mm', 'm']), surface.kind === 'wall' ? 'Length' : 'Length', 'as in 13′ 4″')}
      ${fieldRow(app, spec(app, 'height', 'length', ['ft', 'in', 'mm', 'm']), surface.kind === 'wall' ? 'Height' : 'Width')}
      ${fieldRow(app, spec(app, 'area', 'area', ['ft2', 'm2']), 'or its area', app.report?.area && !surface.area ? text(app.report.area, app.ctx) : '')}
      ${chips(
        'A garage beside or below',
        [
          { value: '', words: 'no garage' },
          { value: 'garage', words: 'a garage beside or below' },
        ],
        surface.garage ? 'garage' : '',
        (value) => app.edit(edit.setSurface(plan, surface.id, { garage: value === 'garage' }, value ? 'a garage beside or below' : 'no garage')),
      )}`,
  );
}

/**
 * @param {App} app
 * @param {'width' | 'height' | 'area'} name
 * @param {string} what
 * @param {string[]} all
 * @returns {FieldSpec}
 */
function spec(app, name, what, all) {
  const { surface } = app;
  const value = surface[name] ?? '';
  const customary = ['in', 'ft', 'ft2'];
  const units = [...all.filter((u) => customary.includes(u) === (app.units === 'us')), ...all.filter((u) => customary.includes(u) !== (app.units === 'us'))];
  const key = `surface.${surface.id}.${name}`;
  const unit = value ? unitIn(value) : (app.fieldUnits.get(key) ?? units[0]);
  const label = name === 'width' ? 'length' : name;
  const set = (/** @type {string} */ q) =>
    edit.setSurface(app.plan, surface.id, { [name]: q }, `${surface.name}: ${label} ${q ? joined(typed(q)) : 'not said'}`);
  return {
    key,
    what,
    label: `${surface.name}, ${label}`,
    value,
    unit,
    units,
    set,
    setUnit: (u) => {
      app.fieldUnits.set(key, u);
      if (value) app.edit(set(`${retyped(value)} ${u}`));
    },
    mine: (fault) => fault.surface === surface.id && fault.field === name && !fault.layer && !fault.gap && !fault.item,
  };
}

/**
 * A field of plain words.
 * @param {App} app
 * @param {string} label
 * @param {string} key
 * @param {string} value
 * @param {(value: string) => import('../edit.js').Edit} set
 */
export function words(app, label, key, value, set) {
  return html`<div class="frow">
    <label for="w-${key}">${label}</label>
    <input
      id="w-${key}"
      class="words"
      type="text"
      maxlength="120"
      autocomplete="off"
      .value=${value}
      @change=${(/** @type {Event} */ e) => app.edit(set(/** @type {HTMLInputElement} */ (e.target).value.trim()))}
    />
  </div>`;
}

/**
 * @param {App} app
 * @param {Surface} s
 */
export function sizeWords(app, s) {
  if (s.area) return joined(typed(s.area));
  if (!s.width || !s.height) return '';
  return [s.width, s.height].map((q) => side(q, app)).join(' × ');
}

/**
 * @param {string} quantity
 * @param {App} app
 */
function side(quantity, app) {
  const unit = unitIn(quantity);
  const n = Number(quantity.split(' ')[0]);
  // Feet and inches are said together, as a tape does.
  return unit === 'in' && n >= 24 ? span(n * 0.0254, app.units) : joined(typed(quantity));
}
