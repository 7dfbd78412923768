// What did you measure? Levels read in the room and beyond, set against what
// was predicted.

import { html, nothing } from 'lit-html';
import * as room from '../edit-room.js';
import { decibels, hertz, number } from '../format.js';
import { fitWords } from '../words-room.js';
import { chips, faultOf, faultText, field, fieldRow } from './field.js';
import { bare, unfold, view } from './house.js';
import { rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-room.d.ts').House} House
 * @typedef {import('../types-room.d.ts').Heard} Heard
 */

const OCTAVES = [63, 125, 250, 500, 1000, 2000, 4000];

/**
 * @param {App} app
 * @param {House} house
 * @param {Heard | undefined} one
 */
export function measuredView(app, house, one) {
  const name = one ? (house.spaces?.[one.space] ?? '') : '';
  if (!name) return nothing;
  const { plan } = app;
  const fits = (house.told.measured ?? []).filter((f) => house.spaces?.[f.space] === name);
  const open = view.open === 'measured';
  const now = room.measuredOf(plan, name, view.after);
  const mine = (/** @type {string} */ key) => (/** @type {import('../types.d.ts').Fault} */ f) =>
    f.item === name && f.field === key && f.words.startsWith('measured');
  const set = (/** @type {string} */ key, /** @type {any} */ value) => room.setMeasured(plan, name, view.after, { [key]: value }, `measured in the ${name}`);
  const level = (/** @type {'inA' | 'inC' | 'outA' | 'outC'} */ key, /** @type {string} */ words, /** @type {string} */ unit) =>
    fieldRow(
      app,
      bare({
        key: `measured.${name}.${view.after}.${key}`,
        label: `${words}, ${unit}`,
        value: now[key],
        words: unit,
        set: (q) => set(key, q),
        mine: mine(key),
      }),
      words,
    );
  return html`<p class="taps part-taps">${unfold(app, 'measured', 'What did you measure?')}</p>
    ${fits.map((fit) => {
      const words = fitWords(fit, house);
      return html`<p class="say fit"><b>${fit.after ? 'After: ' : 'Before: '}${rich(words.answer)}</b> ${rich(words.text)}</p>
        ${open ? gotTable(fit) : nothing}`;
    })}
    ${
      open
        ? html`<div class="form">
            ${chips(
              'Before or after',
              [
                { value: '', words: 'before building' },
                { value: 'after', words: 'after' },
              ],
              view.after ? 'after' : '',
              (value) => {
                view.after = value === 'after';
                app.render();
              },
            )}
            ${chips(
              'In one number or in octaves',
              [
                { value: '', words: 'one number' },
                { value: 'octaves', words: 'octaves' },
              ],
              view.octaves ? 'octaves' : '',
              (value) => {
                view.octaves = value === 'octaves';
                app.render();
              },
            )}
            ${
              view.octaves
                ? octaveFields(app, name, now, set, mine)
                : html`${level('inA', 'In the room', 'dBA')} ${level('outA', `In the ${name}`, 'dBA')} ${level('inC', 'In the room', 'dBC')} ${level('outC', `In the ${name}`, 'dBC')}`
            }
            <p class="soft aside">A phone on its slow setting will do: the same spot for half a minute, everything else quiet. What it reads is taken to ±3${'\u00a0'}dB.</p>
          </div>`
        : nothing
    }`;
}

/**
 * @param {App} app
 * @param {string} name
 * @param {import('../types.d.ts').Measured} now
 * @param {(key: string, value: any) => import('../edit.js').Edit} set
 * @param {(key: string) => (f: import('../types.d.ts').Fault) => boolean} mine
 */
function octaveFields(app, name, now, set, mine) {
  const spec = (/** @type {'in' | 'out'} */ key, /** @type {number} */ i) =>
    bare({
      key: `measured.${name}.${view.after}.${key}.${i}`,
      label: `${key === 'in' ? 'In the room' : `In the ${name}`}, ${hertz(OCTAVES[i])}, dB`,
      value: now[key]?.[i],
      words: '',
      set: (q) => set(key, room.octaveSet(now[key], i, q)),
      mine: (f) => mine(key)(f) && f.typed === now[key]?.[i],
    });
  return html`<div class="octave-fields">
    <span></span><span class="soft">in the room</span><span class="soft">${name}</span>
    ${OCTAVES.map((hz, i) => {
      const [a, b] = [spec('in', i), spec('out', i)];
      const bad = [a, b].find((s) => faultOf(app, s));
      return html`<span>${hertz(hz)}</span>${field(app, a)}${field(app, b)}${bad ? html`<div class="wide">${faultText(app, bad)}</div>` : nothing}`;
    })}
  </div>`;
}

/** @param {import('../types-room.d.ts').Fit} fit */
function gotTable(fit) {
  return html`<table class="got">
    <thead><tr><th scope="col">difference, dB</th><th scope="col">measured</th><th scope="col">predicted</th></tr></thead>
    <tbody>
      ${(fit.got ?? []).map((g) => html`<tr><th scope="row">${g.what === 'octave' ? hertz(g.hz) : `dB${g.what}`}</th><td><b>${number(g.measured, 1)}</b></td><td>${decibels(g.predicted)}</td></tr>`)}
    </tbody>
  </table>`;
}
