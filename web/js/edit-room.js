// Edits of the room around the build-ups: its size, its openings, what lies
// beyond, what plays. As in edit.js each is plan → {label, plan}.

import { buildUpOf, freeIds, setSurface } from './edit.js';
import { NBSP } from './format.js';

/**
 * @typedef {import('./types.d.ts').Plan} Plan
 * @typedef {import('./types.d.ts').Surface} Surface
 * @typedef {import('./types.d.ts').Opening} Opening
 * @typedef {import('./types.d.ts').Space} Space
 * @typedef {import('./types.d.ts').Room} Room
 * @typedef {import('./types.d.ts').Measured} Measured
 * @typedef {import('./types.d.ts').Playing} Playing
 * @typedef {import('./types.d.ts').Buying} Buying
 * @typedef {import('./edit.js').Edit} Edit
 */

/**
 * Takes out what says nothing.
 * @template {object} T
 * @param {T} row
 * @returns {T}
 */
function tidy(row) {
  const said = (/** @type {unknown} */ v) => v !== '' && v !== undefined && v !== false && v !== null && !(Array.isArray(v) && v.every((x) => x === ''));
  return /** @type {T} */ (Object.fromEntries(Object.entries(row).filter(([, v]) => said(v))));
}

/**
 * A plan with a part of it set, or without it where nothing is left.
 * @param {Plan} plan
 * @param {'room' | 'spaces' | 'measured' | 'also' | 'buying'} key
 * @param {any} value
 * @returns {Plan}
 */
function withPart(plan, key, value) {
  const { [key]: _, ...rest } = plan;
  return Object.keys(value).length ? { ...rest, [key]: value } : rest;
}

/**
 * The side of the room on which a wall stands, 1 to 4; 0 for what is no wall or not known.
 * @param {Plan} plan
 * @param {Surface} surface
 */
export function sideOf(plan, surface) {
  if (surface.kind !== 'wall') return 0;
  if (surface.side) return surface.side;
  const nth = plan.surfaces.filter((s) => s.kind === 'wall').findIndex((s) => s.id === surface.id) + 1;
  return nth <= 4 ? nth : 0;
}

/**
 * The surface's size that a size of the room decides, where it is not one of several on its side.
 * @param {Plan} plan
 * @param {Surface} surface
 * @param {'length' | 'width' | 'height'} name
 * @returns {'width' | 'height' | undefined}
 */
function follows(plan, surface, name) {
  if (surface.kind !== 'wall') return name === 'length' ? 'width' : name === 'width' ? 'height' : undefined;
  if (name === 'height') return 'height';
  const side = sideOf(plan, surface);
  const split = plan.surfaces.filter((s) => s.kind === 'wall' && sideOf(plan, s) === side).length > 1;
  return !split && side > 0 && (side % 2 === 1) === (name === 'length') ? 'width' : undefined;
}

/**
 * A size of the room; the faces that had their own size take the new one.
 * @param {Plan} plan
 * @param {'length' | 'width' | 'height'} name
 * @param {string} quantity
 * @returns {Edit}
 */
export function setSize(plan, name, quantity) {
  const surfaces = plan.surfaces.map((s) => {
    const own = follows(plan, s, name);
    return own && s[own] && quantity ? { ...s, [own]: quantity } : s;
  });
  return { label: `room ${name}: ${quantity || 'not said'}`, plan: withPart({ ...plan, surfaces }, 'room', tidy({ ...plan.room, [name]: quantity })) };
}

/**
 * @param {Plan} plan
 * @param {Partial<Room>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setRoom(plan, patch, label) {
  return { label, plan: withPart(plan, 'room', tidy({ ...plan.room, ...patch })) };
}

/**
 * @param {Plan} plan
 * @param {Partial<Buying>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setBuying(plan, patch, label) {
  return { label, plan: withPart(plan, 'buying', tidy({ ...plan.buying, ...patch })) };
}

// ---- openings ----

/**
 * @param {Plan} plan
 * @param {string} surface
 * @param {(list: Opening[]) => Opening[]} change
 * @param {string} label
 * @returns {Edit}
 */
function inOpenings(plan, surface, change, label) {
  const here = plan.surfaces.find((s) => s.id === surface);
  const openings = change(here?.openings ?? []);
  return setSurface(plan, surface, { openings: openings.length ? openings : undefined }, label);
}

/**
 * Adds an opening; its id is the last one's of the surface afterwards.
 * @param {Plan} plan
 * @param {string} surface
 * @param {Omit<Opening, 'id'>} opening
 * @param {string} name
 * @returns {Edit}
 */
export function addOpening(plan, surface, opening, name) {
  const [id] = freeIds(plan, 'o');
  return inOpenings(plan, surface, (list) => [...list, { id, ...opening }], `${name} added`);
}

/**
 * @param {Plan} plan
 * @param {string} surface
 * @param {string} id
 * @param {Partial<Opening>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setOpening(plan, surface, id, patch, label) {
  return inOpenings(plan, surface, (list) => list.map((o) => (o.id === id ? tidy({ ...o, ...patch }) : o)), label);
}

/**
 * Another kind keeps its place and size, not what only the old kind has.
 * @param {Plan} plan
 * @param {string} surface
 * @param {string} id
 * @param {string} kind
 * @param {boolean} alike of the same group
 * @param {string} name
 * @returns {Edit}
 */
export function setKind(plan, surface, id, kind, alike, name) {
  const more = alike ? {} : { width: '', height: '', crack: '', run: '', seal: '' };
  const keep = (/** @type {Opening} */ o) => tidy({ ...o, ...more, kind, seal: '', rating: '', octaves: undefined });
  return inOpenings(plan, surface, (list) => list.map((o) => (o.id === id ? keep(o) : o)), `it is a ${name}`);
}

/**
 * @param {Plan} plan
 * @param {string} surface
 * @param {string} id
 * @param {string} name
 * @returns {Edit}
 */
export function removeOpening(plan, surface, id, name) {
  return inOpenings(plan, surface, (list) => list.filter((o) => o.id !== id), `${name} removed`);
}

/**
 * One of the seven octaves of a row, 63 to 4000 Hz.
 * @param {string[] | undefined} row
 * @param {number} i
 * @param {string} value
 */
export function octaveSet(row, i, value) {
  return Array.from({ length: 7 }, (_, k) => (k === i ? value : (row?.[k] ?? '')));
}

// ---- surfaces ----

const LETTERS = 'ABCDEFGHJKLMNOPQRSTUVWXYZ';

/** @param {Plan} plan */
function freeLetter(plan) {
  const taken = plan.surfaces.map((s) => / (\w)$/.exec(s.name)?.[1]);
  return [...LETTERS].find((letter) => !taken.includes(letter)) ?? String(plan.surfaces.length + 1);
}

/**
 * Adds a surface of the build-up of another, named by the next free letter.
 * @param {Plan} plan
 * @param {'wall' | 'ceiling' | 'floor'} kind
 * @returns {{edit: Edit, id: string}}
 */
export function addSurface(plan, kind) {
  const [id] = freeIds(plan, 's');
  const like = plan.surfaces.find((s) => s.kind === kind) ?? plan.surfaces[0];
  const name = `${kind} ${freeLetter(plan)}`;
  return { id, edit: { label: `${name} added`, plan: { ...plan, surfaces: [...plan.surfaces, { id, name, kind, buildUp: like.buildUp }] } } };
}

/**
 * Splits a wall in two on its side of the room: the second half follows it and has what the first had.
 * Until a width is typed they share the side between them.
 * @param {Plan} plan
 * @param {string} surface
 * @returns {{edit: Edit, id: string} | undefined}
 */
export function splitWall(plan, surface) {
  const at = plan.surfaces.findIndex((s) => s.id === surface);
  const here = plan.surfaces[at];
  if (here?.kind !== 'wall') return undefined;
  const [id] = freeIds(plan, 's');
  const name = `wall ${freeLetter(plan)}`;
  // The order of the walls says where each stands, so all of them are told theirs before one comes between.
  const placed = plan.surfaces.map((s) => (s.kind === 'wall' && sideOf(plan, s) ? { ...s, side: sideOf(plan, s) } : s));
  const { width, area, openings, hung, ...half } = placed[at];
  const room =
    !plan.room?.length && width && sideOf(plan, here) % 2 === 1 ? { length: width } : !plan.room?.width && width && sideOf(plan, here) ? { width } : {};
  const first = tidy({ ...half, openings, hung });
  const surfaces = [...placed.slice(0, at), first, { ...half, id, name }, ...placed.slice(at + 1)];
  return { id, edit: { label: `${here.name} split`, plan: withPart({ ...plan, surfaces }, 'room', tidy({ ...plan.room, ...room })) } };
}

/**
 * @param {Plan} plan
 * @param {string} surface
 * @returns {Edit | undefined} nothing where it is the only one
 */
export function removeSurface(plan, surface) {
  if (plan.surfaces.length < 2) return undefined;
  const here = plan.surfaces.find((s) => s.id === surface);
  const placed = plan.surfaces.map((s) => (s.kind === 'wall' && sideOf(plan, s) ? { ...s, side: sideOf(plan, s) } : s));
  return { label: `${here?.name ?? 'surface'} removed`, plan: { ...plan, surfaces: placed.filter((s) => s.id !== surface) } };
}

/**
 * Build-ups with what each is called: its name, or the surfaces that have it.
 * @param {Plan} plan
 */
export function buildUps(plan) {
  return plan.buildUps.map((b) => {
    const users = plan.surfaces.filter((s) => buildUpOf(plan, s.buildUp).id === b.id).map((s) => s.name);
    return { id: b.id, words: b.name || (users.length ? `as ${users.join(', ')}` : 'not used') };
  });
}

// ---- beyond ----

/** @param {Plan} plan @param {string} name @returns {Space} */
export function spaceOf(plan, name) {
  return plan.spaces?.find((s) => s.name === name) ?? { name };
}

/**
 * @param {Plan} plan
 * @param {string} name
 * @param {Partial<Space>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setSpace(plan, name, patch, label) {
  const row = tidy({ ...spaceOf(plan, name), ...patch, name });
  const list = plan.spaces ?? [];
  const at = list.findIndex((s) => s.name === name);
  const spaces = at < 0 ? [...list, row] : list.map((s, i) => (i === at ? row : s));
  return {
    label,
    plan: withPart(
      plan,
      'spaces',
      spaces.filter((s) => Object.keys(s).length > 1),
    ),
  };
}

/**
 * Calls a space something else, wherever it is named.
 * @param {Plan} plan
 * @param {string} was
 * @param {string} name
 * @returns {Edit | undefined}
 */
export function renameSpace(plan, was, name) {
  if (!name || name === was) return undefined;
  const renamed = {
    ...plan,
    surfaces: plan.surfaces.map((s) => (s.beyond === was ? { ...s, beyond: name } : s)),
    ...(plan.spaces ? { spaces: plan.spaces.filter((s) => s.name !== name).map((s) => (s.name === was ? { ...s, name } : s)) } : {}),
    ...(plan.measured ? { measured: plan.measured.map((m) => (m.beyond === was ? { ...m, beyond: name } : m)) } : {}),
  };
  return { label: `${was} is called ${name}`, plan: renamed };
}

/**
 * Who is in a space: said at every surface before it.
 * @param {Plan} plan
 * @param {string} name of the space
 * @param {string} listener
 * @param {string} words
 * @returns {Edit}
 */
export function setListenerOf(plan, name, listener, words) {
  const surfaces = plan.surfaces.map((s) => (s.beyond === name ? tidy({ ...s, listener }) : s));
  return { label: `${name}: ${words}`, plan: { ...plan, surfaces } };
}

// ---- what plays ----

/** All that plays in the room. @param {Plan} plan @returns {Playing[]} */
export function playing(plan) {
  return [...(plan.source ? [tidy({ source: plan.source, level: plan.level })] : []), ...(plan.also ?? [])];
}

/**
 * @param {Plan} plan
 * @param {Playing[]} list
 * @param {string} label
 * @returns {Edit}
 */
export function setPlaying(plan, list, label) {
  const { source: _, level: __, ...rest } = plan;
  const [first, ...also] = list.map(tidy);
  return { label, plan: withPart({ ...rest, ...(first ?? {}) }, 'also', also) };
}

/**
 * The list with a source in it, or without it where it was there.
 * @param {Playing[]} list
 * @param {string} source
 */
export function toggled(list, source) {
  return list.some((p) => p.source === source) ? list.filter((p) => p.source !== source) : [...list, { source }];
}

/** Level as it is said in a label. @param {string} level */
export function atLevel(level) {
  return level ? `at ${level}${NBSP}dBA` : 'at its usual level';
}

// ---- measured ----

/**
 * @param {Plan} plan
 * @param {string} beyond
 * @param {boolean} after
 * @returns {Measured}
 */
export function measuredOf(plan, beyond, after) {
  return plan.measured?.find((m) => m.beyond === beyond && (m.after ?? false) === after) ?? tidy({ beyond, after });
}

/**
 * @param {Plan} plan
 * @param {string} beyond
 * @param {boolean} after
 * @param {Partial<Measured>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setMeasured(plan, beyond, after, patch, label) {
  const row = tidy({ ...measuredOf(plan, beyond, after), ...patch, beyond, after });
  const list = plan.measured ?? [];
  const at = list.findIndex((m) => m.beyond === beyond && (m.after ?? false) === after);
  const all = at < 0 ? [...list, row] : list.map((m, i) => (i === at ? row : m));
  const empty = (/** @type {Measured} */ m) => Object.keys(m).every((key) => key === 'beyond' || key === 'after');
  return {
    label,
    plan: withPart(
      plan,
      'measured',
      all.filter((m) => !empty(m)),
    ),
  };
}
