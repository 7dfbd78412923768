// What plays and who is beyond: one sentence with words to tap, and the
// choices behind them. Both are edits of the plan, as everything is.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { decibels, NBSP } from '../format.js';
import { floorWords, LISTENS, PLAYS } from '../words.js';
import { chips, fieldRow } from './field.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').FieldSpec} FieldSpec
 * @typedef {import('../types.d.ts').Plan} Plan
 * @typedef {import('../edit.js').Edit} Edit
 */

/** Which choice is unfolded. @type {'' | 'source' | 'listener'} */
let open = '';

/**
 * Another source plays at its own level until one is typed.
 * @param {Plan} plan
 * @param {string} source
 * @returns {Edit}
 */
export function setSource(plan, source) {
  const { source: _, level: __, ...rest } = plan;
  return { label: source ? `plays: ${PLAYS[source] ?? source}` : 'nothing plays', plan: source ? { ...rest, source } : rest };
}

/**
 * @param {Plan} plan
 * @param {string} level dBA as a bare number; empty: its own
 * @returns {Edit}
 */
export function setLevel(plan, level) {
  const { level: _, ...rest } = plan;
  return { label: level ? `it plays at ${level}${NBSP}dBA` : 'it plays at its usual level', plan: level ? { ...rest, level } : rest };
}

/**
 * @param {Plan} plan
 * @param {string} surface
 * @param {string} listener
 * @returns {Edit}
 */
export function setListener(plan, surface, listener) {
  return edit.setSurface(plan, surface, { listener }, listener ? `beyond: ${LISTENS[listener] ?? listener}` : 'nobody beyond');
}

/** @param {number | undefined} level */
function at(level) {
  return level === undefined || !Number.isFinite(level) ? '' : `, ${decibels(level)}${NBSP}dBA`;
}

/** What plays, in the words to tap. @param {App} app */
export function sourceWords(app) {
  const { source, level } = app.plan;
  if (!source) return 'what plays?';
  const typed = level ? Number(level) : undefined;
  return `${PLAYS[source] ?? source}${at(typed ?? app.catalog?.sources?.find((s) => s.id === source)?.level)}`;
}

/** Who is beyond, likewise. @param {App} app */
export function listenerWords(app) {
  const { listener } = app.surface;
  if (!listener) return 'who is beyond?';
  return `${LISTENS[listener] ?? listener}${at(app.catalog?.listeners?.find((l) => l.id === listener)?.level)}`;
}

/** The two phrases, with "to" between them. @param {App} app */
export function needTaps(app) {
  /** @param {'source' | 'listener'} which @param {string} words @param {string} label */
  const phrase = (which, words, label) =>
    html`<button
      type="button"
      class="tap"
      aria-expanded=${open === which}
      aria-label="${label}: ${words}"
      @click=${() => {
        open = open === which ? '' : which;
        app.render();
      }}
    >
      ${words}
    </button>`;
  return html`${phrase('source', sourceWords(app), 'What plays')} <span class="soft">to</span> ${phrase('listener', listenerWords(app), 'Who is beyond')}`;
}

/** The sentence under the curve. @param {App} app */
export function needLine(app) {
  return html`<p class="need"><span class="soft">Needed:</span> ${needTaps(app)}</p>
    ${floorLine(app)} ${needChoice(app)}`;
}

/** What the figures leave out, where the verdict says so too. @param {App} app */
export function floorLine({ report }) {
  const said = report?.verdicts.sound?.parts?.some((part) => part.code === 'need.floor');
  return said && report?.sound?.need ? html`<p class="soft leaves-out">${floorWords(report.sound.need.source)}</p>` : nothing;
}

/** The choice that is unfolded. @param {App} app */
export function needChoice(app) {
  const { plan, surface, catalog } = app;
  if (open === 'source') {
    const choices = (catalog?.sources ?? []).map(({ id }) => ({ value: id, words: PLAYS[id] ?? id }));
    return html`<div class="choose">
      ${chips('What plays', [...choices, { value: '', words: 'nothing' }], plan.source ?? '', (id) => app.edit(setSource(plan, id)))}
      ${plan.source ? fieldRow(app, levelSpec(app), 'Its level in the room') : nothing}
    </div>`;
  }
  if (open === 'listener') {
    const choices = (catalog?.listeners ?? []).map(({ id, level }) => ({ value: id, words: `${LISTENS[id] ?? id}${at(level)}` }));
    return html`<div class="choose">
      ${chips('Who is beyond', [...choices, { value: '', words: 'nobody' }], surface.listener ?? '', (id) => app.edit(setListener(plan, surface.id, id)))}
    </div>`;
  }
  return nothing;
}

/**
 * @param {App} app
 * @returns {FieldSpec}
 */
function levelSpec(app) {
  const own = app.catalog?.sources?.find((s) => s.id === app.plan.source)?.level;
  return {
    key: 'level',
    what: 'count',
    label: 'Its level in the room, dBA',
    value: app.plan.level ?? '',
    typical: own === undefined ? '' : decibels(own),
    unit: '',
    unitWords: 'dBA',
    set: (q) => setLevel(app.plan, q),
    mine: (fault) => fault.field === 'level',
  };
}
