// The gap between two leaves: frame, depth, fill, and how each leaf is held.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { joined, retyped, shown, text, typed, unitIn } from '../format.js';
import { chips, choice, fieldRow } from './field.js';
import { rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').FieldSpec} FieldSpec
 * @typedef {import('../types.d.ts').Gap} Gap
 * @typedef {import('../types.d.ts').GapReport} GapReport
 * @typedef {import('../types.d.ts').HeldReport} HeldReport
 * @typedef {import('../types.d.ts').Value} Value
 */

const LABELS = /** @type {Record<string, string>} */ ({
  depth: 'depth of the gap',
  spacing: 'spacing',
  fillDepth: 'depth of the fill',
  rows: 'rows',
  along: 'along a row',
  rating: 'rating of a clip',
  extra: 'extra load',
  screws: 'distance between screws',
  first: 'first row from the edge',
  ends: 'first clip from the end',
});

/**
 * @param {App} app
 * @param {Gap} gap
 * @param {'depth' | 'spacing' | 'fillDepth'} name
 * @param {Value | null | undefined} typical
 * @returns {FieldSpec}
 */
function gapSpec(app, gap, name, typical) {
  return quantity(app, `gap.${gap.id}.${name}`, LABELS[name], gap[name] ?? '', 'length', ['in', 'mm'], typical, {
    set: (q) => edit.setGap(app.plan, app.buildUp.id, gap.id, { [name]: q }, `${LABELS[name]}: ${q ? joined(typed(q)) : 'usual'}`),
    mine: (fault) => fault.gap === gap.id && fault.field === name,
  });
}

/**
 * The field of a clip's rating, which Load asks for as well.
 * @param {App} app
 * @param {Gap} gap
 * @param {'near' | 'far'} side
 * @param {Value | null | undefined} known
 */
export function ratingSpec(app, gap, side, known) {
  return heldSpec(app, gap, side, 'rating', known);
}

/**
 * @param {App} app
 * @param {Gap} gap
 * @param {'near' | 'far'} side
 * @param {'rows' | 'along' | 'rating' | 'extra' | 'screws' | 'first' | 'ends'} name
 * @param {Value | null | undefined} typical
 * @returns {FieldSpec}
 */
export function heldSpec(app, gap, side, name, typical) {
  const [what, units] =
    name === 'rating'
      ? /** @type {const} */ (['mass', ['lb', 'kg']])
      : name === 'extra'
        ? /** @type {const} */ (['surfaceMass', ['psf', 'kg/m2']])
        : /** @type {const} */ (['length', ['in', 'mm']]);
  const value = name === 'rating' && gap[side].example ? '' : (gap[side][name] ?? '');
  return quantity(app, `gap.${gap.id}.${side}.${name}`, LABELS[name], value, what, [...units], typical, {
    set: (q) => edit.setHeld(app.plan, app.buildUp.id, gap.id, side, { [name]: q }, `${LABELS[name]}: ${q ? joined(typed(q)) : 'usual'}`),
    // A fault names the field; of two sides that have one it is shown at the side that was typed.
    mine: (fault) => fault.gap === gap.id && (fault.field === name || fault.field === `${side}.${name}`) && (gap[side][name] ?? '') !== '',
  });
}

/**
 * @param {App} app
 * @param {string} key
 * @param {string} label
 * @param {string} value
 * @param {string} what
 * @param {string[]} pair customary and metric
 * @param {Value | null | undefined} typical
 * @param {Pick<FieldSpec, 'set' | 'mine'>} rest
 * @returns {FieldSpec}
 */
export function quantity(app, key, label, value, what, pair, typical, rest) {
  const units = app.units === 'us' ? pair : [...pair].reverse();
  const unit = value ? unitIn(value) : (app.fieldUnits.get(key) ?? units[0]);
  const inUnits = unit === pair[0] ? 'us' : 'si';
  return {
    key,
    what,
    label,
    value,
    unit,
    units,
    typical: !value && typical && typical.v ? shown(typical.kind, typical.v, { ...app.ctx, units: inUnits }).figure : '',
    setUnit: (u) => {
      app.fieldUnits.set(key, u);
      if (value) app.edit(rest.set(`${retyped(value)} ${u}`));
    },
    ...rest,
  };
}

/**
 * @param {App} app
 * @param {Gap} gap
 * @param {GapReport | undefined} known
 */
export function gapForm(app, gap, known) {
  const { catalog } = app;
  if (!catalog) return html`<p class="soft">…</p>`;
  const set = (/** @type {Partial<Gap>} */ patch, /** @type {string} */ label) => app.edit(edit.setGap(app.plan, app.buildUp.id, gap.id, patch, label));
  const frame = catalog.frames.find((f) => f.id === gap.frame);
  const framed = frame && !['none', 'bare'].includes(frame.kind);
  const fill = catalog.fills.find((f) => f.id === gap.fill);
  const many = app.buildUp.leaves.length > 2;
  return html`<div class="form">
    ${choice(
      'Frame',
      catalog.frames.map((f) => ({ value: f.id, words: f.name })),
      gap.frame,
      (value) => set({ frame: value, spacing: '', depth: '' }, `frame: ${catalog.frames.find((f) => f.id === value)?.name ?? value}`),
    )}
    ${framed ? fieldRow(app, gapSpec(app, gap, 'spacing', known?.spacing), 'Spacing', 'centre to centre') : nothing}
    ${fieldRow(app, gapSpec(app, gap, 'depth', known?.depth), 'Depth', 'all of it')}
    ${chips(
      'Whether the frame is there already',
      [
        { value: 'new', words: 'new frame' },
        { value: 'there', words: 'there already' },
      ],
      gap.there ? 'there' : 'new',
      (value) => set({ there: value === 'there' }, value === 'there' ? 'frame there already' : 'new frame'),
    )}
    ${choice('Fill', [{ value: '', words: 'Nothing' }, ...catalog.fills.map((f) => ({ value: f.id, words: f.name }))], gap.fill ?? '', (value) =>
      set({ fill: value, fillDepth: '' }, value ? `fill: ${catalog.fills.find((f) => f.id === value)?.name ?? value}` : 'gap emptied'),
    )}
    ${
      gap.fill
        ? html`${
            fill && (fill.depths?.length ?? 0) > 0
              ? chips(
                  'Depth of the fill as sold',
                  (fill.depths ?? []).map((d) => depthChoice(app, d)),
                  gap.fillDepth ?? '',
                  (value) => set({ fillDepth: value }, `fill: ${joined(typed(value))}`),
                )
              : nothing
          }
        ${fieldRow(app, gapSpec(app, gap, 'fillDepth', known?.fillDepth), 'Fill depth')}
        ${chips(
          'Whether the fill is there already',
          [
            { value: 'new', words: 'new fill' },
            { value: 'there', words: 'there already' },
          ],
          gap.fillThere ? 'there' : 'new',
          (value) => set({ fillThere: value === 'there' }, value === 'there' ? 'fill there already' : 'new fill'),
        )}`
        : nothing
    }
    ${heldForm(app, gap, 'near', known?.near, many ? 'Leaf towards the room' : 'Room side is held by')}
    ${heldForm(app, gap, 'far', known?.far, many ? 'Leaf away from the room' : 'Far side is held by')}
  </div>`;
}

/**
 * @param {App} app
 * @param {number} depth m
 */
function depthChoice(app, depth) {
  const { figure, unit } = shown('length', depth, app.ctx);
  return { value: app.units === 'us' ? `${decimal(depth / 0.0254)} in` : `${decimal(depth * 1000)} mm`, words: unit === 'in' ? figure : figure };
}

/** @param {number} v to a thousandth, without what is not there */
function decimal(v) {
  return String(Math.round(v * 1000) / 1000);
}

/**
 * @param {App} app
 * @param {Gap} gap
 * @param {'near' | 'far'} side
 * @param {HeldReport | undefined} known
 * @param {string} title
 */
function heldForm(app, gap, side, known, title) {
  const held = gap[side];
  const fixings = app.catalog?.fixings ?? [];
  const kind = fixings.find((f) => f.id === held.fixing)?.kind;
  const set = (/** @type {Partial<import('../types.d.ts').Held>} */ patch, /** @type {string} */ label) =>
    app.edit(edit.setHeld(app.plan, app.buildUp.id, gap.id, side, patch, label));
  const soft = kind === 'clip' || kind === 'channel';
  return html`<div class="held">
    <p class="label">${title}</p>
    ${chips(
      title,
      fixings.map((f) => ({ value: f.id, words: FIXINGS[f.kind] ?? f.name })),
      held.fixing,
      (value) => set({ fixing: value, rows: '', along: '', shorts: false }, FIXINGS[fixings.find((f) => f.id === value)?.kind ?? ''] ?? value),
    )}
    ${
      soft
        ? html`${fieldRow(app, heldSpec(app, gap, side, 'rows', known?.rows), 'Rows', 'apart')}
        ${fieldRow(app, heldSpec(app, gap, side, 'along', known?.along), kind === 'clip' ? 'Clips' : 'Fixed', 'along a row')}
        ${kind === 'clip' ? fieldRow(app, heldSpec(app, gap, side, 'rating', known?.rating), 'Rated', 'a clip, by the maker’s sheet') : nothing}
        ${fieldRow(app, heldSpec(app, gap, side, 'extra', known?.extra), 'Hung on it', 'beside the boards')}
        ${chips(
          'Whether screws reach the frame',
          [
            { value: 'free', words: 'free' },
            { value: 'shorts', words: 'screws reach the frame' },
          ],
          held.shorts ? 'shorts' : 'free',
          (value) => set({ shorts: value === 'shorts' }, value === 'shorts' ? 'screws reach the frame' : 'no screw reaches the frame'),
        )}`
        : nothing
    }
    ${known?.screws || held.screws ? fieldRow(app, heldSpec(app, gap, side, 'screws', known?.screws), 'Screws', 'apart') : nothing}
    ${known?.standOff && known.standOff.v > 0 ? html`<p class="soft">${rich(`Stands off ${text(known.standOff, app.ctx)}.`)}</p>` : nothing}
  </div>`;
}

const FIXINGS = /** @type {Record<string, string>} */ ({ screwed: 'screws', channel: 'channel', clip: 'clips', untied: 'not tied' });
