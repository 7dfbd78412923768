// What is heard on the other side, both ways: the level of each octave against
// its target and background, who hears what, and what is left out of account.

import { html, nothing } from 'lit-html';
import { levelsTable, levelsView } from '../draw/levels.js';
import * as room from '../edit-room.js';
import { decibels, NBSP } from '../format.js';
import { LISTENS } from '../words.js';
import {
  capital,
  criterion,
  heardNotes,
  heardWords,
  inWords,
  likeWords,
  list,
  NOISES,
  outWords,
  peakWords,
  schroederWords,
  soundName,
  stateShort,
  tellPlan,
} from '../words-room.js';
import { airVerdict, airView } from './air.js';
import { chips, fieldRow } from './field.js';
import { answer, bare, furnishing, houseFaults, makeRoom, ofPlan, quantity, SOFT, said, unfold, view } from './house.js';
import { measuredView } from './measured.js';
import { words as wordsField } from './place.js';
import { roomView } from './room.js';
import { rich, tap } from './text.js';
import { waysVerdict, waysView } from './ways.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-room.d.ts').House} House
 * @typedef {import('../types-room.d.ts').Heard} Heard
 * @typedef {import('../types.d.ts').Playing} Playing
 */

/** @type {{value: import('./house.js').Part, words: string}[]} */
const PARTS = [
  { value: 'room', words: 'room' },
  { value: 'who', words: 'who hears' },
  { value: 'ways', words: 'ways out' },
  { value: 'air', words: 'air' },
];

/**
 * @param {App} app
 * @param {number} width
 */
export function heard(app, width) {
  ofPlan(app);
  const { house } = app;
  const several = app.plan.surfaces.length > 1;
  if (!house) return html`<section class="heard" aria-label="Heard">${app.faults.length ? nothing : html`<p class="verdict soft">…</p>`}</section>`;
  tellPlan(house, app.plan);
  const parts = several ? PARTS : PARTS.slice(1);
  const part = parts.some((p) => p.value === view.part) ? view.part : 'who';
  return html`<section class="heard" aria-label="Heard">
    ${verdictOf(app, house, part)}
    <div class="stages">
      ${chips('Parts of Heard', parts, part, (value) => {
        view.part = value;
        app.render();
      })}
    </div>
    ${several ? nothing : html`<p class="taps">${tap('Make it a room of six faces', () => makeRoom(app))}</p>`}
    ${houseFaults(app, (f) => several || f.field !== 'volume')}
    ${part === 'room' ? roomView(app, house, width) : part === 'ways' ? waysView(app, house) : part === 'air' ? airView(app, house) : whoView(app, house, width)}
  </section>`;
}

/**
 * @param {App} app
 * @param {House} house
 * @param {import('./house.js').Part} part
 */
function verdictOf(app, house, part) {
  if (part === 'ways') return waysVerdict(app, house);
  if (part === 'air') return airVerdict(app, house);
  if (part === 'who' && view.inwards) return answer(inWords(house));
  const one = part === 'who' && view.space ? chosen(house) : undefined;
  return answer(one && one.state !== 'noTarget' ? heardWords(house, one) : outWords(house));
}

/** The space chosen, or the one that is worst off. @param {House} house */
export function chosen(house) {
  const all = house.told.out ?? [];
  const by = all.find((h) => house.spaces?.[h.space] === view.space);
  if (by) return by;
  return [...all].sort((a, b) => rank(b) - rank(a))[0];
}

/** Worst off first; where nobody listens last. @param {Heard} h */
function rank(h) {
  return h.state === 'noTarget' ? h.a - 1e3 : h.overA;
}

/**
 * @param {App} app
 * @param {House} house
 * @param {number} width
 */
function whoView(app, house, width) {
  const all = view.inwards ? (house.told.in ?? []) : (house.told.out ?? []);
  const inAll = house.told.inAll;
  const one = view.inwards ? (view.noise < 0 && inAll && all.length > 1 ? inAll : all[Math.max(0, Math.min(view.noise, all.length - 1))]) : chosen(house);
  return html`<div class="ways-switch">
      ${chips(
        'Which way',
        [
          { value: 'out', words: 'room into the house' },
          { value: 'in', words: 'house into the room' },
        ],
        view.inwards ? 'in' : 'out',
        (value) => {
          view.inwards = value === 'in';
          view.open = '';
          app.render();
        },
      )}
    </div>
    <p class="who">${view.inwards ? [unfold(app, 'noise', noiseWords(one), 'What the house does'), html` <span class="soft">to a take${one ? `, ${decibels(one.target)}${NBSP}dBA` : ''}</span>`] : outTaps(app, house, one)}</p>
    ${chooser(app, house, one)}
    ${one ? heardView(app, house, one, width) : html`<p class="soft aside">${view.inwards ? 'Choose what the house does, and where.' : 'Choose what plays and who is beyond.'}</p>`}
    ${all.length ? rows(app, house, all, one) : nothing}
    ${one ? heardNotes(house, one, view.inwards).map((note) => html`<p class="soft aside">${rich(note)}</p>`) : nothing}
    ${view.inwards ? nothing : [spaceForm(app, house, one), measuredView(app, house, one)]}`;
}

/** What the house does, in the words to tap. @param {Heard | undefined} one */
function noiseWords(one) {
  if (!one) return 'what does the house do?';
  return one.source ? capital(soundName(one.source)) : 'All of it together';
}

/**
 * @param {App} app
 * @param {House} house
 * @param {Heard | undefined} one
 */
function outTaps(app, house, one) {
  const playing = room.playing(app.plan).map((p) => soundName(p.source));
  const source = playing.length ? `${capital(list(playing))}, ${decibels(house.told.levelA)}${NBSP}dBA` : 'what plays?';
  const listener = one ? listenerAt(app, house, one) : '';
  const whom = listener ? `${LISTENS[listener] ?? listener}, ${decibels(one?.target ?? 0)}${NBSP}dBA` : 'who is beyond?';
  return [unfold(app, 'source', source, 'What plays'), html` <span class="soft">to</span> `, unfold(app, 'listener', whom, 'Who is beyond')];
}

/**
 * Who is in the space of a row.
 * @param {App} app
 * @param {House} house
 * @param {Heard} one
 */
function listenerAt(app, house, one) {
  const name = house.spaces?.[one.space];
  return app.plan.surfaces.find((s) => s.beyond === name && s.listener)?.listener ?? '';
}

/**
 * @param {App} app
 * @param {House} house
 * @param {Heard | undefined} one
 */
function chooser(app, house, one) {
  const { plan, catalog } = app;
  if (view.open === 'source' && !view.inwards) {
    const playing = room.playing(plan);
    return html`<div class="choose">
      ${several(
        'What plays, one or more',
        (catalog?.sources ?? []).map(({ id }) => id),
        playing,
        (next, label) => app.edit(room.setPlaying(plan, next, label)),
      )}
      ${playing.map((p, i) =>
        level(
          app,
          `plays.${p.source}`,
          p,
          (q) =>
            room.setPlaying(
              plan,
              playing.map((x, k) => (k === i ? { ...x, level: q } : x)),
              `${soundName(p.source)} ${room.atLevel(q)}`,
            ),
          (f) => f.field === 'level' && !f.item && f.typed === p.level,
        ),
      )}
    </div>`;
  }
  const name = one ? (house.spaces?.[one.space] ?? '') : '';
  if (view.open === 'listener' && !view.inwards && one) {
    const now = listenerAt(app, house, one);
    const choices = (catalog?.listeners ?? []).map(({ id, level: l }) => ({ value: id, words: `${LISTENS[id] ?? id}, ${decibels(l)}${NBSP}dBA` }));
    return html`<div class="choose">${chips(`Who is in the ${name}`, [...choices, { value: '', words: 'nobody' }], now, (id) => app.edit(room.setListenerOf(plan, name, id, LISTENS[id] ?? 'nobody')))}</div>`;
  }
  if (view.open === 'noise' && view.inwards) {
    const noises = (catalog?.noises ?? Object.keys(NOISES).map((id) => ({ id }))).map(({ id }) => id);
    return html`<div class="choose">
      ${(house.spaces ?? [])
        .filter((space) => !room.spaceOf(plan, space).outdoors)
        .map((space) => {
          const now = room.spaceOf(plan, space).noise ?? [];
          const set = (/** @type {Playing[]} */ next, /** @type {string} */ label) =>
            room.setSpace(plan, space, { noise: next.length ? next : undefined }, `${space}: ${label}`);
          return html`<h2 class="head">${space}</h2>
          ${several(`What the ${space} does`, noises, now, (next, label) => app.edit(set(next, label)))}
          ${now.map((p, i) =>
            level(
              app,
              `noise.${space}.${p.source}`,
              p,
              (q) =>
                set(
                  now.map((x, k) => (k === i ? { ...x, level: q } : x)),
                  `${soundName(p.source)} ${room.atLevel(q)}`,
                ),
              (f) => f.field === 'level' && f.item === space && f.typed === p.level,
            ),
          )}`;
        })}
    </div>`;
  }
  return nothing;
}

/**
 * Chips of which several may be chosen.
 * @param {string} label
 * @param {string[]} ids
 * @param {Playing[]} now
 * @param {(next: Playing[], label: string) => void} set
 */
function several(label, ids, now, set) {
  return html`<div class="chips" role="group" aria-label=${label}>
    ${ids.map((id) => {
      const on = now.some((p) => p.source === id);
      return html`<button type="button" class="chip" aria-pressed=${on} @click=${() => set(room.toggled(now, id), `${soundName(id)} ${on ? 'no longer' : 'plays'}`)}>${soundName(id)}</button>`;
    })}
  </div>`;
}

/**
 * @param {App} app
 * @param {string} key
 * @param {Playing} p
 * @param {(q: string) => import('../edit.js').Edit} set
 * @param {(f: import('../types.d.ts').Fault) => boolean} mine
 */
function level(app, key, p, set, mine) {
  const own = [...(app.catalog?.sources ?? []), ...(app.catalog?.noises ?? [])].find((s) => s.id === p.source)?.level;
  const name = soundName(p.source);
  return fieldRow(
    app,
    bare({ key: `level.${key}`, label: `${name}, its level`, value: p.level, typical: own === undefined ? '' : decibels(own), words: 'dBA', set, mine }),
    `Level of ${/^(talk|children)/.test(name) ? '' : 'the '}${name}`,
  );
}

/**
 * The chart of one listener, the single numbers under it.
 * @param {App} app
 * @param {House} house
 * @param {Heard} one
 * @param {number} width
 */
function heardView(app, house, one, width) {
  const name = house.spaces?.[one.space] ?? '';
  const where = view.inwards ? 'in the room' : `in the ${name}`;
  const ring = schroederWords(one);
  return html`<div class="drawing-place">${levelsView(one, { width, mode: app.wide ? 'desk' : 'phone', where })}</div>
    ${ring ? html`<p class="soft ring">${rich(ring)}</p>` : nothing}
    <p class="weighted">
      <span><b class="big">${decibels(one.a)}</b> dBA ±${decibels(one.spreadA)}</span>
      <span><b class="big">${decibels(one.c)}</b> dBC ±${decibels(one.spreadC)}</span>
      <span class="soft">background ${decibels(one.background)}</span>
    </p>
    <p class="soft criterion">${rich(criterion(one))}. ${rich(peakWords(one))}</p>
    ${levelsTable(one)}`;
}

/**
 * @param {App} app
 * @param {House} house
 * @param {Heard[]} all
 * @param {Heard | undefined} one
 */
function rows(app, house, all, one) {
  const inAll = view.inwards && all.length > 1 ? house.told.inAll : null;
  const choose = (/** @type {Heard} */ h, /** @type {number} */ i) => {
    if (view.inwards) view.noise = i;
    else view.space = house.spaces?.[h.space] ?? '';
    app.render();
  };
  const row = (/** @type {Heard} */ h, /** @type {number} */ i) => {
    const space = house.spaces?.[h.space] ?? '';
    const name = !view.inwards ? space : h.source ? `${soundName(h.source)}, ${house.noises?.[i] ?? space}` : 'all of it';
    const here = h === one;
    return html`<li>
      <button type="button" class="hears ${here ? 'here' : ''}" aria-current=${here ? 'true' : 'false'} @click=${() => choose(h, i)}>
        <span class="place">${name}</span><span class="level"><b>${decibels(h.a)}</b> dBA</span><span class="state ${h.state}">${stateShort(h)}</span><span class="like">${likeWords(house, h)}</span>
      </button>
    </li>`;
  };
  return html`<ul class="listeners" aria-label=${view.inwards ? 'What is heard in the room' : 'Who hears what'}>
    ${all
      .map((h, i) => ({ h, i }))
      .sort((a, b) => rank(b.h) - rank(a.h))
      .map(({ h, i }) => row(h, i))}
    ${inAll ? row(inAll, -1) : nothing}
  </ul>`;
}

/**
 * What is known of a space beyond.
 * @param {App} app
 * @param {House} house
 * @param {Heard | undefined} one
 */
function spaceForm(app, house, one) {
  const name = one ? (house.spaces?.[one.space] ?? '') : '';
  if (!name) return nothing;
  const { plan } = app;
  const space = room.spaceOf(plan, name);
  const mine = (/** @type {string} */ field) => (/** @type {import('../types.d.ts').Fault} */ f) => f.item === name && f.field === field && !f.surface;
  const set = (/** @type {string} */ key) => (/** @type {string} */ q) => room.setSpace(plan, name, { [key]: q }, `${name}: ${key} ${said(q)}`);
  const open = view.open === 'space';
  return html`<p class="taps part-taps">${unfold(app, 'space', `About the ${name}`)}</p>
    ${
      open
        ? html`<div class="form">
            ${wordsField(app, 'Called', `space.${name}`, name, (to) => /** @type {any} */ (room.renameSpace(plan, name, to)))}
            ${chips(
              'Indoors or outdoors',
              [
                { value: '', words: 'a room' },
                { value: 'out', words: 'outdoors' },
              ],
              space.outdoors ? 'out' : '',
              (value) => app.edit(room.setSpace(plan, name, { outdoors: value === 'out' }, `${name}: ${value ? 'outdoors' : 'a room'}`)),
            )}
            ${
              space.outdoors
                ? nothing
                : [
                    fieldRow(
                      app,
                      quantity(app, {
                        key: `space.${name}.area`,
                        what: 'area',
                        label: `${name}, floor area`,
                        value: space.area,
                        us: ['ft2'],
                        si: ['m2'],
                        set: set('area'),
                        mine: mine('area'),
                      }),
                      'Floor area',
                    ),
                    fieldRow(
                      app,
                      quantity(app, {
                        key: `space.${name}.height`,
                        what: 'length',
                        label: `${name}, height`,
                        value: space.height,
                        us: ['ft', 'in'],
                        set: set('height'),
                        mine: mine('height'),
                      }),
                      'Height',
                    ),
                    furnishing(`How the ${name} is furnished`, space.soft ?? '', (soft) =>
                      app.edit(room.setSpace(plan, name, { soft }, `${name}: ${SOFT[soft]}`)),
                    ),
                  ]
            }
            ${fieldRow(app, bare({ key: `space.${name}.background`, label: `${name}, background`, value: space.background, typical: one?.background ? decibels(one.background) : '', words: 'dBA', set: set('background'), mine: mine('background') }), 'Background there')}
          </div>`
        : nothing
    }`;
}
