// The room unfolded, its list, and what can be said of each surface and of the
// room as a whole.

import { html, nothing } from 'lit-html';
import { unfoldedView } from '../draw/unfolded.js';
import * as edit from '../edit.js';
import * as room from '../edit-room.js';
import { decibels, hertz, inSentence, NBSP, percent } from '../format.js';
import { breakWords, capital, FLANKS, faceWords, letterOf, list, oneOf, shapeWords, weakWords } from '../words-room.js';
import { chips, choice, fieldRow } from './field.js';
import { bare, furnishing, quantity, said, showOpening, unfold, view } from './house.js';
import { words as wordsField } from './place.js';
import { bang, rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-room.d.ts').House} House
 * @typedef {import('../types-room.d.ts').FaceReport} FaceReport
 * @typedef {import('../types.d.ts').Surface} Surface
 */

/**
 * @param {App} app
 * @param {House} house
 * @param {number} width
 */
export function roomView(app, house, width) {
  const weak = weakWords(house);
  const selected = (house.faces ?? []).findIndex((f) => f.id === app.surface.id);
  const shares = house.told.surfaces ?? [];
  const order = (house.faces ?? []).map((face, i) => ({ face, i, share: shares[i]?.share ?? 0 })).sort((a, b) => b.share - a.share || a.i - b.i);
  const go = (/** @type {number} */ i) => {
    const id = house.faces?.[i]?.id;
    if (id && id !== app.surface.id) app.goSurface(id);
  };
  return html`
    ${weak && shares.some((s) => s.share > 0) ? html`<p class="weak"><b>${rich(weak.answer)}</b> ${rich(weak.text)}</p>` : nothing}
    ${
      house.told.shape.known
        ? html`<div class="drawing-place">${unfoldedView(house, { width, units: app.units, selected, most: app.wide ? 430 : 330, onSelect: go })}</div>`
        : html`<p class="soft aside">With its length, width and height the room is drawn here, and what is left inside is told.</p>`
    }
    ${view.open === 'sizes' ? roomForm(app, house) : nothing}
    <ul class="faces-list" aria-label="Surfaces by their share of what gets out">
      ${order.map(({ face, i, share }) => faceRow(app, house, face, i, share, go))}
    </ul>
    ${breaks(house)} ${together(app, house)} ${view.open === 'sizes' ? nothing : roomForm(app, house)}`;
}

/**
 * @param {App} app
 * @param {House} house
 * @param {FaceReport} face
 * @param {number} i
 * @param {number} share
 * @param {(i: number) => void} go
 */
function faceRow(app, house, face, i, share, go) {
  const here = face.id === app.surface.id;
  const name = face.kind === 'wall' ? (here && face.beyond ? `Wall to ${face.beyond}` : 'Wall') : capital(face.kind);
  return html`<li>
    <button type="button" class="face-row ${here ? 'here' : ''}" aria-current=${here ? 'true' : 'false'} @click=${() => go(i)}>
      <b class="letter">${letterOf(face)}</b><span class="what">${name}</span><span class="soft">${(here && parts(house, i)) || (here && face.kind === 'wall' ? '' : face.beyond) || (face.beyond || face.kind === 'floor' ? '' : 'beyond it?')}</span><b class="share">${percent(share)}${NBSP}%</b>
    </button>
    ${here ? surfaceForm(app, face) : nothing}
  </li>`;
}

/** "door 38, wall 3": what of a surface's share goes which way, per cent of all. @param {House} house @param {number} i */
function parts(house, i) {
  const face = house.faces?.[i];
  /** @type {Map<string, number>} */
  const sums = new Map();
  for (const p of house.told.paths ?? []) {
    if (p.surface !== i) continue;
    const opening = p.opening >= 0 ? face?.openings?.[p.opening] : undefined;
    const name = opening ? oneOf(opening.group, opening.kind) : p.way === 'flank' ? 'shared' : (face?.kind ?? '');
    sums.set(name, (sums.get(name) ?? 0) + p.share);
  }
  if (sums.size < 2) return '';
  const top = [...sums]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 2)
    .filter(([, share]) => share >= 0.005);
  return top.map(([name, share]) => `${name} ${percent(share)}`).join(', ');
}

/**
 * What can be done with the selected surface.
 * @param {App} app
 * @param {FaceReport} face
 */
function surfaceForm(app, face) {
  const { surface, plan } = app;
  const n = surface.openings?.length ?? 0;
  const open = view.open === 'surface';
  return html`<div class="of-face">
    <p class="taps">
      ${tap('Layers', () => {
        view.openings = false;
        app.go('layers');
      })}
      ${tap(n ? `Openings (${n})` : 'Openings', () => showOpening(app, surface.id, surface.openings?.[0]?.id ?? ''))}
      ${unfold(app, 'surface', 'Change', surface.name)}
      ${face.rating && face.holed ? html`<span class="soft">${app.report?.ratingIs ?? ''} ${decibels(face.rating.v)}${Math.round(face.holed.v) < Math.round(face.rating.v) ? `, ${decibels(face.holed.v)} with its holes` : ''}</span>` : nothing}
    </p>
    ${open ? html`<div class="form">${changeForm(app, surface)}</div>` : nothing}
  </div>`;

  /** @param {App} app @param {Surface} s */
  function changeForm(app, s) {
    const flank = s.flank ?? '';
    const known = app.catalog?.flanks?.find((f) => f.id === flank);
    const mine = (/** @type {string} */ field) => (/** @type {import('../types.d.ts').Fault} */ f) =>
      f.surface === s.id && f.field === field && !f.item && !f.layer && !f.gap;
    return html`${choice(
      'Build-up',
      room.buildUps(plan).map((b) => ({ value: b.id, words: b.words })),
      s.buildUp,
      (buildUp) => app.edit(edit.setSurface(plan, s.id, { buildUp }, `${s.name}: another build-up`)),
    )}
      ${wordsField(app, 'Beyond it', `beyond.${s.id}`, s.beyond ?? '', (beyond) => edit.setSurface(plan, s.id, { beyond }, `${s.name}: beyond ${beyond || 'not said'}`))}
      ${fieldRow(app, sizeSpec(app, s, 'width', mine('width')), s.kind === 'wall' ? 'Its own length' : 'Its own length', 'else the room’s')}
      <p class="label">What it shares with the house</p>
      ${chips(
        `What ${s.name} shares with the house`,
        [{ value: '', words: 'not said' }, ...Object.entries(FLANKS).map(([value, [words]]) => ({ value, words }))],
        flank,
        (value) => app.edit(edit.setSurface(plan, s.id, { flank: value }, `${s.name}: ${FLANKS[value]?.[0] ?? 'not said what is shared'}`)),
      )}
      ${
        known
          ? html`<p class="soft aside">${rich(`Rooms built so reach ${decibels(known.low)} to ${decibels(known.high)}, whatever the wall is: common practice, not computed. Below 125${NBSP}Hz it is known to ±8${NBSP}dB at best, and never used to call a design good enough.`)}</p>`
          : nothing
      }
      ${fieldRow(
        app,
        bare({
          key: `flank.${s.id}`,
          label: `${s.name}, what the structure lets a wall reach`,
          value: s.flankLoss,
          typical: known ? decibels(known.rating) : '',
          words: app.report?.ratingIs ?? 'STC',
          set: (q) => edit.setSurface(plan, s.id, { flankLoss: q }, `${s.name}: structure ${q || 'by what it shares'}`),
          mine: mine('flankLoss'),
        }),
        'or measured there',
      )}
      <p class="taps">
        ${s.kind === 'wall' ? tap('Split this wall', () => added(app, room.splitWall(plan, s.id))) : nothing}
        ${plan.surfaces.length > 1 ? tap(`Remove ${s.name}`, () => app.edit(room.removeSurface(plan, s.id))) : nothing}
      </p>`;
  }
}

/**
 * A new surface is at once the one on screen.
 * @param {App} app
 * @param {{edit: import('../edit.js').Edit, id: string} | undefined} made
 */
function added(app, made) {
  if (!made) return;
  app.edit(made.edit);
  app.goSurface(made.id);
}

/**
 * @param {App} app
 * @param {Surface} s
 * @param {'width'} name
 * @param {(f: import('../types.d.ts').Fault) => boolean} mine
 */
function sizeSpec(app, s, name, mine) {
  return quantity(app, {
    key: `surface.${s.id}.${name}`,
    what: 'length',
    label: `${s.name}, length`,
    value: s[name],
    set: (q) => edit.setSurface(app.plan, s.id, { [name]: q }, `${s.name}: length ${said(q)}`),
    mine,
  });
}

/** Where the strategy breaks. @param {House} house */
function breaks(house) {
  const all = (house.told.surfaces ?? []).flatMap((s, i) => (s.breaks ?? []).map((code) => ({ code, face: house.faces?.[i] })));
  if (all.length === 0) return nothing;
  return html`<ul class="cautions" aria-label="Where the strategy breaks">
    ${all.map(({ code, face }) => {
      const [head, words] = face ? breakWords(code, face) : ['', ''];
      return html`<li class="caution">${bang()}<span><b>${head}</b> ${words}</span></li>`;
    })}
  </ul>`;
}

/** Faces whose boards dip at one frequency. @param {App} app @param {House} house */
function together(app, house) {
  const all = (house.told.together ?? []).filter((t) => (t.faces?.length ?? 0) > 1).sort((a, b) => b.share - a.share);
  const counts = all.filter((t) => t.share >= 0.01).slice(0, 3);
  if (all.length === 0) return nothing;
  const at = (/** @type {typeof all[number]} */ t) => {
    const faces = (t.faces ?? []).map((i) => house.faces?.[i]).filter((f) => f !== undefined);
    return {
      first: faces[0],
      words: `${capital(list(faces.map((f) => faceWords(f))))} dip together at ${hertz(t.hz)} (${list([...new Set(t.boards ?? [])].map(inSentence))})`,
    };
  };
  return html`<h2 class="head part">Same boards everywhere</h2>
    ${counts.map((t) => {
      const { first, words } = at(t);
      return html`<p class="say">${rich(`${words}: ${percent(t.share)}${NBSP}% of what gets out in that octave goes by their boards.`)} ${first ? tap('What would part them', () => partThem(app, first.id)) : nothing}</p>`;
    })}
    ${counts.length ? nothing : html`<p class="soft aside">${rich(`${at(all[0]).words}, but as long as other ways let through more it counts for nothing.`)}</p>`}`;
}

/** Sound says which other thickness fills the dip, and does it. @param {App} app @param {string} id */
function partThem(app, id) {
  if (id !== app.surface.id) app.goSurface(id);
  app.go('sound');
}

/**
 * @param {App} app
 * @param {House} house
 */
function roomForm(app, house) {
  const { plan } = app;
  const { shape } = house.told;
  // A size that went on to the faces may be refused at theirs.
  const mine = (/** @type {'length' | 'width' | 'height'} */ name) => (/** @type {import('../types.d.ts').Fault} */ f) =>
    !f.item && (f.surface ? ['width', 'height'].includes(f.field) && f.typed === plan.room?.[name] : f.field === name && f.words.startsWith('the room'));
  const row = (/** @type {'length' | 'width' | 'height'} */ name, /** @type {string} */ words, /** @type {number} */ now) =>
    fieldRow(
      app,
      quantity(app, {
        key: `room.${name}`,
        what: 'length',
        label: `Room, ${name}`,
        value: plan.room?.[name],
        now,
        us: name === 'height' ? ['ft', 'in'] : ['in', 'ft'],
        set: (q) => room.setSize(plan, name, q),
        mine: mine(name),
      }),
      words,
    );
  return html`<h2 class="head part">The room</h2>
    ${shape.known ? html`<p class="say">${shapeWords(shape, app.ctx).map((s) => html`${rich(s)} `)}</p>` : nothing}
    ${row('length', 'Length, frame to frame', shape.length)} ${row('width', 'Width', shape.width)} ${row('height', 'Height', shape.height)}
    ${furnishing('How the room is furnished', plan.room?.soft ?? '', (soft) => app.edit(room.setRoom(plan, { soft }, `room ${soft || 'furnished'}`)))}
    <p class="taps">
      ${/** @type {const} */ (['wall', 'ceiling', 'floor']).map((kind) => tap(`+ ${kind}`, () => added(app, room.addSurface(plan, kind))))}
    </p>`;
}
