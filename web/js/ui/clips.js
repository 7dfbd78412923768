// Where every clip goes and what it carries: the face, its key, what hangs on it
// at a place, the rules of the grid, every row in figures, and the sum of one clip.

import { html, nothing } from 'lit-html';
import { clipsView, figureOf, keyOf, usualMarks } from '../draw/clips.js';
import { tape } from '../draw/running.js';
import * as edit from '../edit.js';
import { addClip, dropClips, dropHung, lengthText, nextHung, putHung } from '../edit-buy.js';
import { joined, NBSP, number, percent, shown, text, typed } from '../format.js';
import { STATES, stateWords } from '../words.js';
import { layoutFault, loadVerdict, mendWords, noneWords, SEATS } from '../words-buy.js';
import { chips, fieldRow } from './field.js';
import { heldSpec, quantity } from './gap.js';
import { holder } from './mend.js';
import { bang, mark, rich, tap } from './text.js';
import { holding } from './worked.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').Hung} Hung
 * @typedef {import('../types-buy.d.ts').LayoutReport} LayoutReport
 */

/** What is chosen on the face; of one surface. */
const view = {
  of: '',
  /** id of what hangs that a tap moves */
  chosen: '',
  /** tapped, but nothing is said of its weight yet: not in the plan. @type {Hung | undefined} */
  pending: undefined,
  clip: -1,
};

/** @param {App} app */
function here(app) {
  const of = `${app.planId} ${app.surface.id}`;
  if (view.of !== of) Object.assign(view, { of, chosen: '', pending: undefined, clip: -1 });
  return view;
}

/**
 * The verdict of Load where the clips are laid out, with its mend.
 * @param {App} app
 */
export function loadSaid(app) {
  const report = app.report?.layout;
  const said = loadVerdict(report, app.ctx);
  if (!report || !said) return undefined;
  const mend = mendWords(report, app.ctx);
  return { ...said, text: [said.text, mend?.before].filter(Boolean).join(' '), mend: mend && { tap: mend.tap, act: () => doMend(app, report, mend.does) } };
}

/**
 * @param {App} app
 * @param {LayoutReport} report
 * @param {'clip' | 'grid'} what
 */
function doMend(app, report, what) {
  const gap = holder(app);
  if (what === 'clip' && report.mend) app.edit(addClip(app.plan, app.surface.id, report.mend));
  else if (gap && report.widest?.rows && report.widest.along) {
    const grid = { rows: lengthText(report.widest.rows.v, app.units), along: lengthText(report.widest.along.v, app.units) };
    app.edit(edit.setHeld(app.plan, app.buildUp.id, gap.id, gap.side, grid, 'the widest grid that holds'));
  }
}

/**
 * @param {App} app
 * @param {LayoutReport} report
 * @param {number} width
 */
export function clipsPart(app, report, width) {
  const state = here(app);
  const fault = layoutFault(report.fault, app.ctx);
  const lay = report.layout;
  const list = hungList(app);
  return html`<div class="drawing-place">
      ${clipsView(report, {
        units: app.units,
        width,
        mode: app.wide ? 'desk' : 'phone',
        tall: app.wide ? 460 : 560,
        hung: places(report, list),
        chosen: state.pending?.id ?? state.chosen,
        clip: state.clip,
        onFace: (x, y) => placeAt(app, x, y),
        onClip: (clip) => {
          state.clip = state.clip === clip ? -1 : clip;
          app.render();
        },
      })}
    </div>
    <p class="soft under-drawing">${rich(caption(app, report))}</p>
    ${fault ? html`<p class="caution grave">${bang()}<span><b>${fault.head}</b> ${rich(fault.text)}</span></p>` : nothing}
    ${state.clip >= 0 && lay?.spots?.[state.clip] ? html`<p class="chosen-clip" role="status">${rich(clipWords(app, report, state.clip))}</p>` : nothing}
    ${lay ? key(app, report) : nothing} ${hungPart(app, list)}`;
}

/** "joists 16 in, channel rows 24 in". @param {App} app @param {LayoutReport} report */
function caption(app, { face, rules, layout }) {
  const at = (/** @type {number} */ m) => joined(shown('length', m, app.ctx));
  const members = face.frame.spacing > 0 ? `${face.ceiling ? 'joists' : 'studs'} ${at(face.frame.spacing)}, ` : '';
  const usual = keyOf(usualMarks(layout));
  const differ = (layout?.rows ?? []).some((r) => keyOf(r.marks) !== usual);
  return `${members}rows ${at(rules.rows)}${differ ? '; rows differ, see the table' : ''}`;
}

/**
 * What hangs, as the plan has it, and what was only tapped.
 * @param {App} app
 */
function hungList(app) {
  const { pending } = here(app);
  const kept = app.surface.hung ?? [];
  return pending && !kept.some((h) => h.id === pending.id) ? [...kept, pending] : kept;
}

/**
 * @param {LayoutReport} report
 * @param {Hung[]} list
 */
function places(report, list) {
  const known = new Map((report.hung ?? []).map((h) => [h.id, h]));
  return list.map((h) => known.get(h.id) ?? { id: h.id, x: metres(h.x), y: metres(h.y) });
}

const SIZES = /** @type {Record<string, number>} */ ({ in: 0.0254, ft: 0.3048, mm: 1e-3, cm: 1e-2, m: 1 });

/** A length that was only tapped; the core reads the others. @param {string} quantity */
function metres(quantity) {
  const [figure, unit] = quantity.split(' ');
  return Number(figure) * (SIZES[unit] ?? 0);
}

/**
 * A tap on the face moves what is chosen, or begins something new there.
 * @param {App} app
 * @param {number} x m
 * @param {number} y m
 */
function placeAt(app, x, y) {
  const state = here(app);
  const at = { x: lengthText(x, app.units, app.units === 'us' ? 1 : 10), y: lengthText(y, app.units, app.units === 'us' ? 1 : 10) };
  const kept = (app.surface.hung ?? []).find((h) => h.id === state.chosen);
  state.clip = -1;
  if (kept) app.edit(putHung(app.plan, app.surface.id, { ...kept, ...at }, `${kept.name || 'what hangs'} moved`));
  else {
    state.pending = { id: state.pending?.id ?? nextHung(app.plan), mass: '', ...at };
    app.render();
  }
}

/**
 * @param {App} app
 * @param {Hung[]} list
 */
function hungPart(app, list) {
  const state = here(app);
  const face = app.report?.layout?.face;
  const add = () => {
    state.chosen = '';
    placeAt(app, (face?.width ?? 2) / 2, (face?.height ?? 2) / 2);
  };
  return html`<h2 class="head part"><span>Hung on it</span>${state.pending || list.length >= 40 ? nothing : tap('+ hang something', add)}</h2>
    ${list.length ? nothing : html`<p class="soft">A lamp, an air box: tap the face where it hangs.</p>`}
    <ul class="hung">
      ${list.map((h, i) => {
        const open = h.id === (state.pending?.id ?? state.chosen);
        const name = h.name || 'load';
        return html`<li class=${open ? 'open' : ''}>
          <button type="button" class="hung-row" aria-expanded=${open} @click=${() => choose(app, h.id)}>
            <span class="no">${i + 1}</span><span>${name}</span><span class="figure">${h.mass ? rich(joined(typed(h.mass))) : 'weight?'}</span>
          </button>
          ${
            open
              ? html`<div class="form">
                  <p class="soft">Tap the face to move it.</p>
                  ${hungField(app, h, 'mass', 'It weighs', h.mass === '')} ${hungField(app, h, 'x', 'From the left')}
                  ${hungField(app, h, 'y', face?.ceiling ? 'From the first wall' : 'From the floor')}
                  <div class="frow">
                    <label for="w-${h.id}">Called</label>
                    <input id="w-${h.id}" class="words" type="text" maxlength="60" autocomplete="off" .value=${h.name ?? ''}
                      @change=${(/** @type {Event} */ e) => saveHung(app, { ...h, name: /** @type {HTMLInputElement} */ (e.target).value.trim() }, 'called otherwise')} />
                  </div>
                  <p class="taps">${tap('done', () => choose(app, h.id))} ${tap(h.id === state.pending?.id ? 'leave it' : 'take it down', () => takeDown(app, h.id, name))}</p>
                </div>`
              : nothing
          }
        </li>`;
      })}
    </ul>`;
}

/** @param {App} app @param {string} id */
function choose(app, id) {
  const state = here(app);
  if (state.pending) state.pending = undefined;
  else state.chosen = state.chosen === id ? '' : id;
  app.render();
}

/** @param {App} app @param {string} id @param {string} name */
function takeDown(app, id, name) {
  const state = here(app);
  state.chosen = '';
  const was = state.pending?.id === id;
  state.pending = undefined;
  if (was) app.render();
  else app.edit(dropHung(app.plan, app.surface.id, id, name));
}

/**
 * What was only tapped comes into the plan with its weight.
 * @param {App} app
 * @param {Hung} hung
 * @param {string} label
 */
function saveHung(app, hung, label) {
  const state = here(app);
  if (state.pending?.id === hung.id && !hung.mass) {
    state.pending = hung;
    app.render();
    return undefined;
  }
  return app.edit(putHung(app.plan, app.surface.id, hung, label));
}

/**
 * @param {App} app
 * @param {Hung} h
 * @param {'mass' | 'x' | 'y'} name
 * @param {string} label
 * @param {boolean} [lit]
 */
function hungField(app, h, name, label, lit = false) {
  const state = here(app);
  const spec = quantity(
    app,
    `hung.${h.id}.${name}`,
    label.toLowerCase(),
    h[name] ?? '',
    name === 'mass' ? 'mass' : 'length',
    name === 'mass' ? ['lb', 'kg'] : ['in', 'mm'],
    undefined,
    {
      set: (q) => {
        const next = { ...h, [name]: q };
        if (state.pending?.id === h.id) {
          if (!next.mass) {
            state.pending = next;
            return undefined;
          }
          state.pending = undefined;
          state.chosen = h.id;
        }
        return putHung(app.plan, app.surface.id, next, `${h.name || 'what hangs'}: ${q ? joined(typed(q)) : `${label.toLowerCase()} not said`}`);
      },
      mine: (fault) => fault.item === h.id && fault.field === name,
    },
  );
  return fieldRow(app, { ...spec, lit }, label);
}

/** One clip in words. @param {App} app @param {LayoutReport} report @param {number} i */
function clipWords(app, { layout, face }, i) {
  const s = layout?.spots?.[i];
  if (!s) return '';
  const m = (/** @type {number} */ v) => joined(shown('mass', v, app.ctx));
  const seat = SEATS[s.seat] ? `, ${SEATS[s.seat]}` : '';
  const how = s.state === 'unrated' ? m(s.load) : `${percent(s.of)}${NBSP}%, ${STATES[s.state]}`;
  return `Row ${s.row + 1}, ${tape(s.x, app.units)} across, ${tape(s.y, app.units)} ${face.ceiling ? 'in' : 'up'}${seat}: ${m(s.share)} by its area, ${m(s.beam)} by the channel: ${how}.`;
}

/** The four states with their counts. @param {App} app @param {LayoutReport} report */
function key(app, report) {
  const lay = report.layout;
  if (!lay) return nothing;
  const rating = holding(app)?.rating ?? null;
  const spots = lay.spots ?? [];
  const m = (/** @type {number} */ v) => joined(shown('mass', v, app.ctx));
  const rows = /** @type {const} */ (['over', 'close', 'holds', 'under', 'unrated']).filter((s) => (lay.rating > 0 ? s !== 'unrated' : s === 'unrated'));
  const none = noneWords(report.widest?.none, app.ctx);
  const wide = report.widest;
  const gap = holder(app);
  return html`<ul class="states counted" aria-label="Clips by their load">
      ${rows.map(
        (state) => html`<li class="${state} ${lay.count[state] ? 'here' : ''}">
          ${state === 'unrated' ? html`<span class="ring" aria-hidden="true"></span>` : mark(state)}<b>${number(lay.count[state])}</b
          ><span class="word">${STATES[state]}</span><span class="soft">${rich(state === 'unrated' ? 'type the rating, and they are judged' : stateWords(state, rating, app.ctx))}</span>
        </li>`,
      )}
    </ul>
    ${
      spots.length
        ? html`<p class="summary">${rich(`Worst ${m(spots[lay.worst].load)}, mean ${m(lay.mean)}, least ${m(spots[lay.least].load)}; all ${number(spots.length)} carry ${m(lay.weight)}.`)}</p>`
        : nothing
    }
    ${none ? html`<p class="summary">${rich(none)}</p>` : nothing}
    ${
      wide?.rows && wide.along && wide.share && lay.count.over === 0 && gap && wide.clips < spots.length
        ? html`<p class="summary">
            ${rich(`Widest that still holds: rows ${text(wide.rows, app.ctx)}, clips ${text(wide.along, app.ctx)}, ${number(wide.clips)} clips, ${text(wide.share, app.ctx)} at worst.`)}
            ${tap('Set it', () => doMend(app, report, 'grid'), 'Set it, the widest grid that holds')}
          </p>`
        : nothing
    }`;
}

/**
 * The rules of the grid, to be changed.
 * @param {App} app
 * @param {LayoutReport} report
 */
export function rulesPart(app, report) {
  const at = holder(app);
  const gap = app.buildUp.gaps?.find((g) => g.id === at?.id);
  if (!at || !gap) return nothing;
  const held = gap[at.side];
  const { rules, face } = report;
  const known = holding(app);
  const typical = (/** @type {number} */ v) => /** @type {import('../types.d.ts').Value} */ ({ v, kind: 'length', origin: 'typical' });
  const set = (/** @type {Partial<import('../types.d.ts').Held>} */ patch, /** @type {string} */ label) =>
    app.edit(edit.setHeld(app.plan, app.buildUp.id, gap.id, at.side, patch, label));
  const spacing = face.frame.spacing;
  const member = face.ceiling ? 'joist' : 'stud';
  const most = spacing > 0 ? Math.min(4, Math.max(rules.every, Math.floor(1.23 / spacing))) : 0;
  const added = app.surface.clips?.length ?? 0;
  return html`<h2 class="head part">Rules of the grid</h2>
    <div class="form">
      ${fieldRow(app, heldSpec(app, gap, at.side, 'rows', known?.rows), 'Rows', 'apart at most')}
      ${
        most > 1
          ? chips(
              `A clip on every ${member} or fewer`,
              Array.from({ length: most }, (_, i) => ({
                value: String(i + 1),
                words: i === 0 ? `every ${member}` : `${['2nd', '3rd', '4th'][i - 1]} ${member}`,
              })),
              String(rules.every),
              (value) => set({ along: lengthText(Number(value) * spacing, app.units) }, `a clip on ${value === '1' ? 'every' : `every ${value}.`} ${member}`),
            )
          : nothing
      }
      ${fieldRow(app, heldSpec(app, gap, at.side, 'along', known?.along), 'Clips', 'along a row at most')}
      ${fieldRow(app, heldSpec(app, gap, at.side, 'first', typical(rules.first)), 'First and last row', 'from the edge at most')}
      ${fieldRow(app, heldSpec(app, gap, at.side, 'ends', typical(rules.end)), 'First clip', 'from the end of a channel')}
      ${chips(
        'Whether the clips of every other row are moved',
        [
          { value: '', words: 'in line' },
          { value: 'staggered', words: 'staggered' },
        ],
        held.stagger ? 'staggered' : '',
        (value) => set({ stagger: value !== '' }, value ? 'clips staggered' : 'clips in line'),
      )}
      ${added ? html`<p>${rich(`${number(added)} put in by hand.`)} ${tap('Take them out', () => app.edit(dropClips(app.plan, app.surface.id)), 'Take them out, the clips put in by hand')}</p>` : nothing}
    </div>`;
}

/**
 * Every row in running dimensions, every clip with its figure.
 * @param {App} app
 * @param {LayoutReport} report
 */
export function rowsTable(app, { layout, face }) {
  const rows = layout?.rows ?? [];
  if (!rows.length) return nothing;
  return html`<table class="sum every-row">
    <caption class="soft">From the ${face.ceiling ? 'first corner' : 'left corner and the floor'}, in ${app.units === 'us' ? 'feet and inches' : 'mm'}; ${layout?.rating ? '% of the rating' : 'load'}</caption>
    <thead>
      <tr><th scope="col">row</th><th scope="col">at</th><th scope="col">clips at</th></tr>
    </thead>
    <tbody>
      ${rows.map(
        (r, i) => html`<tr>
          <th scope="row">${i + 1}</th>
          <td>${rich(tape(r.at, app.units))}</td>
          <td>
            ${r.clips.map((c, k) => {
              const s = layout?.spots?.[c];
              return s
                ? html`<span class="at-clip">${rich(tape(r.marks[k], app.units))} ${mark(s.state)}<span class="state ${s.state}">${figureOf(s, app.units)}</span><span class="hid"> ${STATES[s.state]}</span></span> `
                : nothing;
            })}
          </td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}

/**
 * How the load of the chosen clip, or of the worst, was worked out: both ways.
 * @param {App} app
 * @param {LayoutReport} report
 */
export function bothWays(app, { layout }) {
  const spots = layout?.spots ?? [];
  if (!layout || !spots.length) return nothing;
  const i = view.clip >= 0 && view.clip < spots.length ? view.clip : layout.worst;
  const s = spots[i];
  const m = (/** @type {number} */ v) => joined(shown('mass', v, app.ctx));
  const rows = [
    ['area', 'halfway to the next clips and rows, to the edges, openings left out', joined(shown('area', s.area, app.ctx))],
    ['by its area', 'that area × what hangs on it, with its channel and what hangs near', m(s.share)],
    ['by the channel', 'a beam over all clips of the row: inner ones carry more than their share', m(s.beam)],
    ['the larger', '', m(s.load)],
  ];
  return html`<table class="sum two-ways">
    <caption class="soft">${i === layout.worst ? 'The worst clip' : 'The chosen clip'}, row ${s.row + 1}</caption>
    <tbody>
      ${rows.map(([name, how, value]) => html`<tr><th scope="row">${name}</th><td class="soft">${how}</td><td class="figure">${rich(value)}</td></tr>`)}
      ${layout.rating > 0 ? html`<tr class="result"><th scope="row">of its rating</th><td class="soft">${rich(m(layout.rating))}</td><td class="figure"><b>${percent(s.of)}${NBSP}%</b></td></tr>` : nothing}
      <tr><th scope="row">all clips</th><td class="soft">by either way they carry all that hangs</td><td class="figure">${rich(m(layout.weight))}</td></tr>
    </tbody>
  </table>`;
}
