// Edits of what hangs on the clips, of the joists, and of what the list is made
// with: plan → {label, plan}, as in edit.js.

import { freeIds, setSurface } from './edit.js';

/**
 * @typedef {import('./types.d.ts').Plan} Plan
 * @typedef {import('./types.d.ts').Hung} Hung
 * @typedef {import('./types.d.ts').Joists} Joists
 * @typedef {import('./types.d.ts').Buying} Buying
 * @typedef {import('./edit.js').Edit} Edit
 */

/**
 * A length that was tapped or proposed, as the plan writes it: to the sixteenth
 * of an inch or the millimetre.
 * @param {number} metres
 * @param {'us' | 'si'} units
 * @param {number} [step] in or mm, what a finger can mean
 */
export function lengthText(metres, units, step = units === 'us' ? 1 / 16 : 1) {
  const n = Math.round(metres / (units === 'us' ? 0.0254 : 1e-3) / step) * step;
  return `${Number(n.toFixed(4))} ${units === 'us' ? 'in' : 'mm'}`;
}

/** What is empty has no key. @template {object} T @param {T} row @returns {T | undefined} */
function tidy(row) {
  const kept = Object.entries(row).filter(([, v]) => v !== '' && v !== undefined && v !== false && !(Array.isArray(v) && v.length === 0));
  return kept.length ? /** @type {T} */ (Object.fromEntries(kept)) : undefined;
}

/** @param {Plan} plan @param {string} surface */
function surfaceOf(plan, surface) {
  return plan.surfaces.find((s) => s.id === surface);
}

/** An id for another thing hung. @param {Plan} plan */
export function nextHung(plan) {
  return freeIds(plan, 'h')[0];
}

/**
 * Hangs something, or says something else of what hangs.
 * @param {Plan} plan
 * @param {string} surface
 * @param {Hung} hung
 * @param {string} label
 * @returns {Edit}
 */
export function putHung(plan, surface, hung, label) {
  const row = /** @type {Hung} */ ({ x: '', y: '', mass: '', ...tidy(hung) });
  const list = surfaceOf(plan, surface)?.hung ?? [];
  const all = list.some((h) => h.id === hung.id) ? list.map((h) => (h.id === hung.id ? row : h)) : [...list, row];
  return setSurface(plan, surface, { hung: all }, label);
}

/**
 * @param {Plan} plan
 * @param {string} surface
 * @param {string} id
 * @param {string} name
 * @returns {Edit}
 */
export function dropHung(plan, surface, id, name) {
  const rest = (surfaceOf(plan, surface)?.hung ?? []).filter((h) => h.id !== id);
  return setSurface(plan, surface, { hung: rest.length ? rest : undefined }, `${name} taken down`);
}

/**
 * One clip more than the grid has.
 * @param {Plan} plan
 * @param {string} surface
 * @param {{x: number, y: number}} at m
 * @returns {Edit}
 */
export function addClip(plan, surface, { x, y }) {
  const { units } = plan;
  const clips = surfaceOf(plan, surface)?.clips ?? [];
  return setSurface(plan, surface, { clips: [...clips, { x: lengthText(x, units), y: lengthText(y, units) }] }, 'one clip more');
}

/** @param {Plan} plan @param {string} surface @returns {Edit} */
export function dropClips(plan, surface) {
  return setSurface(plan, surface, { clips: undefined }, 'clips of the grid alone');
}

/**
 * @param {Plan} plan
 * @param {string} surface
 * @param {Partial<Joists>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setJoists(plan, surface, patch, label) {
  return setSurface(plan, surface, { joists: tidy({ ...surfaceOf(plan, surface)?.joists, ...patch }) }, label);
}

/**
 * @param {Plan} plan
 * @param {Partial<Buying>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setBuying(plan, patch, label) {
  const buying = tidy({ ...plan.buying, ...patch });
  const { buying: _, ...rest } = plan;
  return { label, plan: buying ? { ...rest, buying } : rest };
}

/**
 * The price of one of an item of the list; an empty one is no longer said.
 * @param {Plan} plan
 * @param {string} item
 * @param {string} price
 * @param {string} label
 * @returns {Edit}
 */
export function setCost(plan, item, price, label) {
  const costs = plan.buying?.costs ?? [];
  const rest = costs.filter((c) => c.item !== item);
  const at = costs.findIndex((c) => c.item === item);
  if (price) rest.splice(at < 0 ? rest.length : at, 0, { item, price });
  return setBuying(plan, { costs: rest }, label);
}
