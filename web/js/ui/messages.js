// Messages have their places and never cover anything: about what was brought
// in, about keeping, about the program. At most one a place.

import { html, nothing } from 'lit-html';
import { faultWords } from '../words.js';
import { capital } from '../words-room.js';
import { bang, message, rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').Note} Note
 */

/** @param {Note} note */
function taps(note) {
  return note.taps.map(({ words, act }) => html` ${tap(words, act)}`);
}

/** Between title and strip, until closed. @param {App} app */
export function broughtNote(app) {
  const note = app.brought;
  if (!note) return nothing;
  return html`<p class="note ${note.grave ? 'grave' : ''}" role="status">
    <b>${rich(note.message.head)}</b> ${note.message.pieces.map((p) => (typeof p === 'string' ? rich(p) : nothing))}${taps(note)}
  </p>`;
}

/**
 * What stands in the way of any figure and has no field on screen: a plan from
 * elsewhere, a leaf without a board, a size typed in another section. What has a
 * field here is said there.
 * @param {App} app
 */
export function faultNotes(app) {
  const atField = (/** @type {import('../types.d.ts').Fault} */ f) =>
    app.report !== undefined &&
    (f.board || f.gap
      ? app.section !== 'sound' && app.section !== 'heard'
      : ['width', 'height', 'area'].includes(f.field)
        ? app.section === 'heard' || app.panel?.kind === 'needs'
        : f.field === 'waste' && app.section === 'buy');
  // A size of the room that went on to its faces is wrong once.
  const list = app.faults.filter((f, i, all) => !atField(f) && !(f.typed && all.findIndex((g) => g.typed === f.typed && g.code === f.code) < i));
  if (list.length === 0) return nothing;
  return html`<ul class="cautions faults" role="status">
    ${list.slice(0, MOST).map((f) => html`<li class="caution grave">${bang()}<span>${message(placed(f))}</span></li>`)}
    ${list.length > MOST ? html`<li class="soft">and ${list.length - MOST} more</li>` : nothing}
    <li>${app.history.at > 0 ? tap('Undo', () => app.undo()) : tap('Other plans', () => app.open({ kind: 'plans' }))}</li>
  </ul>`;
}

/** What is wrong, and where: no field stands beside it. @param {import('../types.d.ts').Fault} f */
function placed(f) {
  const words = faultWords(f);
  const at = f.words.split(':')[0];
  return words.head.toLowerCase().startsWith(at.toLowerCase()) || at === f.words ? words : { ...words, head: `${capital(at)}, ${f.field}: ${words.head}` };
}

/** As many faults as fit a glance. */
const MOST = 4;

/** After the list: the plan is on screen but not stored. @param {App} app */
export function keepingNote(app) {
  if (app.kept) return nothing;
  return html`<div class="caution grave keeping" role="status">
    ${bang()}<span
      ><b>${app.why === 'full' ? `This ${app.wide ? 'computer' : 'phone'} is out of room:` : 'This browser keeps nothing:'}</b> your edits are on screen but not stored.
      ${tap('Save as a file', () => app.saveFile())} ${tap('Send a link', () => app.open({ kind: 'send' }))} ${tap('Old plans', () => app.open({ kind: 'plans' }))}</span
    >
  </div>`;
}

/** One soft line over the section bar. @param {App} app */
export function programNote(app) {
  const note = app.program;
  return html`<div class="program" role="status">
    ${note ? html`<p><span class=${note.grave ? 'fault' : ''}>${rich(note.message.head)}</span>${note.message.pieces.map((p) => (typeof p === 'string' ? rich(p) : nothing))}${taps(note)}</p>` : nothing}
  </div>`;
}
