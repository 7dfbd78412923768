// What the parts of the whole room share: which part is on screen, fields of
// its quantities, what is wrong in it.

import { html, nothing } from 'lit-html';
import { joined, retyped, typed, unitIn } from '../format.js';
import { faultWords } from '../words.js';
import { kindName } from '../words-room.js';
import { chips } from './field.js';
import { bang, message, rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').FieldSpec} FieldSpec
 * @typedef {import('../types.d.ts').Fault} Fault
 * @typedef {import('../edit.js').Edit} Edit
 * @typedef {'room' | 'who' | 'ways' | 'air'} Part
 */

/** What is on screen and unfolded; it is no part of the plan. */
export const view = {
  plan: '',
  part: /** @type {Part} */ ('room'),
  inwards: false,
  /** name of the space chosen */
  space: '',
  /** of what comes in: the row chosen, −1 all together */
  noise: 0,
  /** ways to one space; empty: all that gets out */
  ways: '',
  change: '',
  /** what a change was adopted from; its rows wait for the next */
  adopted: /** @type {import('../types-room.d.ts').Money | undefined} */ (undefined),
  byMoney: false,
  /** the choice or form that is unfolded */
  open: '',
  /** Layers shows the surface's openings */
  openings: false,
  opening: '',
  adding: false,
  octaves: false,
  after: false,
};

/** Another plan begins anew. @param {App} app */
export function ofPlan(app) {
  if (view.plan === app.planId) return;
  Object.assign(view, {
    plan: app.planId,
    part: 'room',
    inwards: false,
    space: '',
    noise: 0,
    ways: '',
    change: '',
    adopted: undefined,
    open: '',
    openings: false,
    opening: '',
    adding: false,
  });
}

/**
 * What the core is asked for beside the surface.
 * @param {App} app
 */
export function wantRoom(app) {
  const openings = view.openings && app.section === 'layers';
  if (app.section !== 'heard' && !openings) return {};
  if (openings) chooseOpening(app);
  return { room: true, ...(openings && view.opening ? { opening: view.opening } : {}) };
}

/**
 * The house with its faults naming kinds of opening as people do.
 * @param {import('../types-room.d.ts').House | undefined} house
 */
export function readable(house) {
  for (const f of house?.faults ?? [])
    f.words = f.words.replace(/, ([a-z]+[A-Z]\w*|box|duct|vent|light|pipe|crack|hole|hatch):/, (_, kind) => `, ${kindName(kind)}:`);
  return house;
}

/** Whether Layers shows the openings instead. @param {App} app */
export function showsOpenings(app) {
  ofPlan(app);
  return view.openings && app.section === 'layers';
}

/** The chosen opening is one of the surface on screen. @param {App} app */
export function chooseOpening(app) {
  const list = app.surface.openings ?? [];
  if (!list.some((o) => o.id === view.opening)) view.opening = list[0]?.id ?? '';
}

/** @type {Record<string, number>} */
const METRES = { in: 0.0254, ft: 0.3048, mm: 0.001, m: 1 };

/**
 * A field for a quantity with units to go through; what it is now, m, stands where nothing is typed.
 * @param {App} app
 * @param {{key: string, what: string, label: string, value?: string, typical?: string, now?: number, us?: string[], si?: string[], set: (q: string) => Edit | undefined, mine: (f: Fault) => boolean}} of
 * @returns {FieldSpec}
 */
export function quantity(app, { key, what, label, value = '', typical, now = 0, us = ['in', 'ft'], si = ['mm', 'm'], set, mine }) {
  const units = app.units === 'us' ? [...us, ...si] : [...si, ...us];
  const unit = value ? unitIn(value) : (app.fieldUnits.get(key) ?? units[0]);
  return {
    key,
    what,
    label,
    value,
    typical: typical ?? (now ? String(+(now / METRES[unit]).toFixed(unit === 'm' || unit === 'ft' ? 2 : 0)) : ''),
    unit,
    units,
    set,
    setUnit: (u) => {
      app.fieldUnits.set(key, u);
      if (value) app.edit(set(`${retyped(value)} ${u}`));
    },
    mine,
  };
}

/**
 * A field for a bare number whose unit is only words.
 * @param {{key: string, label: string, value?: string, typical?: string, words: string, set: (q: string) => Edit | undefined, mine: (f: Fault) => boolean}} of
 * @returns {FieldSpec}
 */
export function bare({ key, label, value = '', typical, words, set, mine }) {
  return { key, what: 'count', label, value, typical, unit: '', unitWords: words, set, mine };
}

/** A quantity in a label of an edit. @param {string} q */
export function said(q) {
  return q ? joined(typed(q)) : 'not said';
}

/**
 * What is wrong around the build-ups, and where to mend it.
 * @param {App} app
 * @param {(fault: Fault) => boolean} [only]
 */
export function houseFaults(app, only = () => true) {
  const list = (app.house?.faults ?? []).filter(only);
  if (list.length === 0) return nothing;
  return html`<div role="status"><ul class="cautions faults room-faults">
    ${list.slice(0, 4).map((f) => {
      const opening = f.item && app.plan.surfaces.some((s) => s.id === f.surface && s.openings?.some((o) => o.id === f.item));
      return html`<li class="caution grave">${bang()}<span>${message(faultWords(f))} ${opening && !(view.openings && app.section === 'layers') ? tap('Show it', () => showOpening(app, f.surface ?? '', f.item ?? '')) : nothing}</span></li>`;
    })}
    ${list.length > 4 ? html`<li class="soft">and ${list.length - 4} more</li>` : nothing}
  </ul></div>`;
}

/**
 * The openings of a surface, one of them chosen.
 * @param {App} app
 * @param {string} surface
 * @param {string} [opening]
 */
export function showOpening(app, surface, opening = '') {
  Object.assign(view, { openings: true, opening, adding: false });
  if (app.surfaceId !== surface) app.goSurface(surface);
  app.go('layers');
}

/** The wall on screen becomes the first of six faces. @param {App} app */
export async function makeRoom(app) {
  await app.makeRoom();
  view.open = 'sizes';
  showRoom(app);
}

/** The room unfolded, with its sizes. @param {App} app */
export function showRoom(app) {
  view.part = 'room';
  app.go('heard');
}

/**
 * A phrase that unfolds a choice or form.
 * @param {App} app
 * @param {string} which
 * @param {string} words
 * @param {string} [label]
 */
export function unfold(app, which, words, label) {
  const open = view.open === which;
  return html`<button
    type="button"
    class="tap"
    aria-expanded=${open}
    aria-label=${label ? `${label}: ${words}` : nothing}
    @click=${() => {
      view.open = open ? '' : which;
      app.render();
    }}
  >
    ${rich(words)}
  </button>`;
}

/** The verdict of a part. @param {import('../words-room.js').Answer | undefined} words @param {unknown} [mend] */
export function answer(words, mend = nothing, busy = false) {
  return html`<p class="verdict" aria-live="polite" aria-atomic="true" aria-busy=${busy} data-section="heard">${words ? html`<b>${rich(words.answer)}</b> ${rich(words.text)} ${mend}` : nothing}</p>`;
}

/** How a room is furnished. */
export const SOFT = /** @type {Record<string, string>} */ ({ '': 'furnished', bare: 'bare', soft: 'carpets and curtains' });

/**
 * @param {string} label
 * @param {import('../types.d.ts').Soft} now
 * @param {(soft: import('../types.d.ts').Soft) => void} set
 */
export function furnishing(label, now, set) {
  return chips(
    label,
    /** @type {import('../types.d.ts').Soft[]} */ (['bare', '', 'soft']).map((value) => ({ value, words: value === 'soft' ? 'soft' : SOFT[value] })),
    now,
    set,
  );
}
