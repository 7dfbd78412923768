// Getting it there: what each trip carries, who can lift which sheet, whether it
// goes through the door, and how many may lie in one stack.

import { html, nothing } from 'lit-html';
import { heightOf, stackView, thicknessOf } from '../draw/stack.js';
import { setBuying } from '../edit-buy.js';
import { inSentence, joined, number, shown, text, typed } from '../format.js';
import { counted } from '../words.js';
import { capital, inWords, nameOfBoard, sheetMass, takeoffNote } from '../words-buy.js';
import { chips, fieldRow } from './field.js';
import { quantity } from './gap.js';
import { bang, rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-buy.d.ts').ListReport} ListReport
 * @typedef {import('../types-buy.d.ts').TakeoffNote} TakeoffNote
 */

const WOOD = ['plywood', 'osb', 'mdf', 'particleboard', 'hardboard', 'fibreboard'];
/** So many stacks are drawn; more are like the last. */
const DRAWN = 4;

/** @param {App} app @param {TakeoffNote[] | null | undefined} notes @param {ListReport} list */
export function noteLines(app, notes, list) {
  return (notes ?? []).length
    ? html`<ul class="notes">
        ${(notes ?? []).map((n) => {
          const s = takeoffNote(n, list.names, list.faces, app.ctx);
          return html`<li class="caution ${s.grave ? 'grave' : ''}">${bang()}<span><b>${rich(s.head)}</b> ${rich(s.text)}</span></li>`;
        })}
      </ul>`
    : nothing;
}

/** @param {App} app @param {ListReport} list @param {number} width */
export function tripsPart(app, list, width) {
  const trips = list.trips ?? [];
  const n = trips.length;
  return html`<h2 class="head part">
      <span>${n ? `${capital(inWords(n))} ${n === 1 ? 'trip' : 'trips'}` : 'Trips'} <span class="soft">${counted(list.sheets, 'sheet')}${list.mass && list.mass.v > 0 ? `, ${text(list.mass, app.ctx)}` : ''}</span></span>
    </h2>
    ${n ? stacks(app, list, width) : nothing} ${noteLines(app, list.cargo, list)}
    <div class="form">
      ${fieldRow(app, massSpec(app, 'payload', 'payload'), 'At most', 'a trip, by the handbook')}
      ${fieldRow(app, massSpec(app, 'roof', 'on the roof'), 'On the roof or bed', 'what it takes lying flat')}
    </div>`;
}

/** @param {App} app @param {ListReport} list @param {number} width */
function stacks(app, list, width) {
  const trips = list.trips ?? [];
  const shownTrips = trips.slice(0, DRAWN);
  const gap = 16;
  const each = Math.min(150, (width - gap * (shownTrips.length - 1)) / Math.max(2, shownTrips.length));
  const piles = shownTrips.map((t) =>
    (t.rows ?? []).map((r) => ({ count: r.count, thickness: thicknessOf(list.names?.[r.of]?.nominal), wood: WOOD.includes(list.names?.[r.of]?.kind ?? '') })),
  );
  const tall = Math.max(...piles.map(heightOf), 8);
  const last = trips.length - 1;
  return html`<div class="stacks">
    ${shownTrips.map((t, i) => {
      const rows = (t.rows ?? []).map((r) => `${number(r.count)} ${inSentence(list.names?.[r.of]?.short ?? r.of).replace(/^gypsum /, '')}`);
      const said =
        rows.length > 2
          ? `${counted(
              (t.rows ?? []).reduce((sum, r) => sum + r.count, 0),
              'sheet',
            )}`
          : rows.join(' + ');
      return html`<div .style=${`width:${Math.round(each)}px`}>
        ${stackView(piles[i], i === last, { width: Math.round(each), tall, label: `Trip ${i + 1}: ${rows.join(', ')}${i === last ? ', and the rest' : ''}` })}
        <p>${said}${i === last ? ', rest' : ''}</p>
        <p><b>${joined(shown('mass', t.mass, app.ctx))}</b></p>
      </div>`;
    })}
  </div>
  ${trips.length > DRAWN ? html`<p class="soft">and ${counted(trips.length - DRAWN, 'trip')} more like the last</p>` : nothing}`;
}

/** @param {App} app @param {'payload' | 'roof'} name @param {string} label */
function massSpec(app, name, label) {
  return quantity(app, `buying.${name}`, label, app.plan.buying?.[name] ?? '', 'mass', ['lb', 'kg'], undefined, {
    set: (q) => setBuying(app.plan, { [name]: q }, `${label}: ${q ? joined(typed(q)) : 'not said'}`),
    mine: (f) => f.field === name && !f.surface,
  });
}

/** @param {App} app @param {ListReport} list */
export function liftPart(app, list) {
  const lifts = list.lifts ?? [];
  if (!lifts.length) return nothing;
  const people = Number(app.plan.buying?.people || 0);
  return html`<h2 class="head part">Who lifts it</h2>
    <table class="sum lifts">
      <caption class="hid">Who can lift a sheet of each board, and how many may lie in one stack</caption>
      <thead><tr><th scope="col">a sheet</th><th scope="col">who</th><th scope="col" class="figure">stack</th></tr></thead>
      <tbody>
        ${lifts.map((l) => {
          const who = l.above ? l.over : l.wall;
          const few = people > 0 && people < who.people;
          const words = [
            `${inWords(who.people)} ${who.people === 1 ? 'person' : 'people'}`,
            who.panelLift ? (l.above ? 'a panel lift for the ceiling' : 'and a panel lift') : '',
            who.too ? 'too heavy even for a lift: a smaller sheet' : '',
          ]
            .filter(Boolean)
            .join(', ');
          return html`<tr>
            <th scope="row">${rich(nameOfBoard(list.names?.[l.board], l.board, app.ctx))}</th>
            <td>${sheetMass(l.mass?.v ?? 0, app.ctx)}: ${few ? html`<b class="state over">${words}; you are ${number(people)}</b>` : words}</td>
            <td class="figure">${number(l.stack)}</td>
          </tr>`;
        })}
      </tbody>
    </table>
    <p class="soft">Carried on edge, on one side, never flat. A stack of so many is as much as the floor of a living room is made for: near a bearing wall, across the joists. One person lifts 20${'\u00a0'}kg (44${'\u00a0'}lb); 23 is the most under ideal conditions.</p>
    <div class="form">
      ${fieldRow(
        app,
        {
          key: 'buying.people',
          what: 'count',
          label: 'people who lift',
          value: app.plan.buying?.people ?? '',
          unit: '',
          set: (q) => setBuying(app.plan, { people: q }, q ? `${q} lift` : 'people not said'),
          mine: (f) => f.field === 'people' && !f.surface && !f.item,
        },
        'People who lift',
      )}
    </div>`;
}

/** @param {App} app @param {ListReport} list */
export function wayPart(app, list) {
  const b = app.plan.buying ?? {};
  const way = list.way ?? [];
  const asked = Boolean(b.doorWidth || b.corridor || b.stair);
  const spec = (/** @type {'doorWidth' | 'doorHeight' | 'corridor' | 'beyond'} */ name, /** @type {string} */ label) =>
    quantity(app, `buying.${name}`, label, b[name] ?? '', 'length', ['in', 'mm'], undefined, {
      set: (q) => setBuying(app.plan, { [name]: q }, `${label}: ${q ? joined(typed(q)) : 'not said'}`),
      mine: (f) => f.field === name && !f.surface,
    });
  return html`<h2 class="head part">The way in</h2>
    ${
      way.length
        ? way.map((w) => {
            const size = w.fits?.width && w.fits.length ? `${text(w.fits.width, app.ctx)} by ${text(w.fits.length, app.ctx)} goes through` : '';
            const cut = w.cut ? `a piece of up to ${text(w.cut, app.ctx)}, cut before it is carried in` : '';
            return html`${noteLines(
              app,
              (w.notes ?? []).map((n) => ({ ...n, board: w.board })),
              list,
            )}
              <p>${rich(size || cut ? `${capital([size, cut].filter(Boolean).join('; or '))}.` : 'No size sold goes through: cut it outside.')}</p>`;
          })
        : html`<p class="soft">${asked ? 'Every sheet on the list goes through, on edge.' : 'Type the narrowest places, and the sheets are tried through them.'}</p>`
    }
    <div class="form">
      ${fieldRow(app, spec('doorWidth', 'door, clear width'), 'Door', 'clear width')} ${fieldRow(app, spec('doorHeight', 'door, clear height'), 'Its height', 'clear')}
      ${fieldRow(app, spec('corridor', 'corridor before the turn'), 'Corridor', 'clear width, before a turn')} ${fieldRow(app, spec('beyond', 'corridor after the turn'), 'After the turn', 'clear width')}
      ${chips(
        'Whether there is a stair',
        [
          { value: '', words: 'no stair' },
          { value: 'stair', words: 'down or up a stair' },
        ],
        b.stair ? 'stair' : '',
        (value) => app.edit(setBuying(app.plan, { stair: value !== '' }, value ? 'a stair on the way' : 'no stair on the way')),
      )}
    </div>`;
}
