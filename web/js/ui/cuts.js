// How the boards are cut: tried in stretches, so that it shows how far it is and
// can be stopped; the best of all tries is the same every time, whoever stopped
// in between. Then layer by layer over its face, and sheet by sheet.

import { html, nothing } from 'lit-html';
import { faceView, nameOf, sheetView, sizeOf } from '../draw/cut.js';
import { sawn } from '../draw/running.js';
import * as edit from '../edit.js';
import { inSentence, joined, NBSP, number, shown, span } from '../format.js';
import { counted } from '../words.js';
import { capital, inWordsTh, nameOfBoard, pastWords, savedWords, takeoffNote } from '../words-buy.js';
import { bang, rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-buy.d.ts').CutReport} CutReport
 * @typedef {import('../types-buy.d.ts').HungLayer} HungLayer
 * @typedef {import('../types.d.ts').Plan} Plan
 */

/** Tries that are asked for at once: few enough to stop between them. */
const STRETCH = 8;

const state = {
  /** @type {Plan | undefined} the plan that was cut */ plan: undefined,
  /** @type {CutReport | undefined} */ cut: undefined,
  /** tries made, and of how many */ at: 0,
  of: 0,
  running: false,
  stopped: false,
  /** whether the cuts are on screen, and not the list */ open: false,
  hung: 0,
  sheet: -1,
  /** other lengths: being asked for, or what they come to @type {'' | 'asked' | NonNullable<CutReport['other']>} */ other: '',
};

/** Another plan: nothing is known of its cuts. @param {App} app */
function fresh(app) {
  if (state.plan === app.plan) return;
  // What was on screen stays until the first tries of the new plan are in.
  Object.assign(state, { plan: app.plan, at: 0, of: 0, running: false, stopped: false, other: '' });
}

export function cutsOpen() {
  return state.open;
}

/** @param {App} app @param {boolean} open */
export function showCuts(app, open) {
  state.open = open;
  if (open) {
    const here = (state.cut?.cut.hung ?? []).findIndex((h) => faceOf(h.face)?.surface === app.surface.id);
    if (here >= 0) choose(here);
  }
  scrollTo(0, 0);
  app.render();
}

/** The surface that the cuts on screen are of; empty where the list is. */
export function cutsName() {
  return state.open ? (faceOf(state.cut?.cut.hung?.[state.hung]?.face ?? '')?.name ?? '') : '';
}

/** The list again, as when Buy is left. */
export function closeCuts() {
  state.open = false;
}

/** The best try so far of the plan on screen, for the list to go by. @param {App} app */
export function bestTry(app) {
  return state.plan === app.plan && state.cut ? state.cut.cut.try : 0;
}

/**
 * Begins or goes on with the tries of the plan on screen.
 * @param {App} app
 * @param {() => void} [better] the best try is known, or a better one
 */
export async function tryCuts(app, better) {
  fresh(app);
  if (state.running || state.stopped || (state.of > 0 && state.at >= state.of)) return;
  state.running = true;
  const { plan } = app;
  let best = state.at > 0 && state.cut ? state.cut.cut.try : -1;
  const first = bestTry(app);
  while (state.running && state.plan === plan && app.plan === plan && (state.of === 0 || state.at < state.of)) {
    const from = state.at;
    const reply = await app.ask('cut', { plan, from, to: from + STRETCH, best }, 'cut');
    if (state.plan !== plan || app.plan !== plan) return;
    if (!reply.ok) {
      state.running = false;
      state.stopped = true;
      break;
    }
    if (!state.running) break; // stopped meanwhile: this stretch is asked for again
    state.cut = reply.cut;
    best = reply.cut.cut.try;
    state.of = reply.cut.tries;
    state.at = Math.min(from + STRETCH, state.of);
    keepChosen();
    app.render();
  }
  if (state.plan !== plan) return;
  state.running = false;
  app.render();
  if (bestTry(app) !== first) better?.();
}

function keepChosen() {
  const hung = state.cut?.cut.hung ?? [];
  if (state.hung >= hung.length) state.hung = 0;
  choose(state.hung, state.sheet);
}

/** @param {number} hung @param {number} [sheet] */
function choose(hung, sheet = -1) {
  const cut = state.cut?.cut;
  state.hung = hung;
  const of = sheetsOf(cut?.hung?.[hung]);
  state.sheet = of.includes(sheet) ? sheet : (of[0] ?? -1);
}

/** Sheets that a layer takes pieces of. @param {HungLayer | undefined} hung */
function sheetsOf(hung) {
  const cut = state.cut?.cut;
  return [...new Set((hung?.pieces ?? []).map((i) => cut?.pieces?.[i]?.sheet ?? -1))].filter((s) => s >= 0).sort((a, b) => a - b);
}

/** @param {string} id */
function faceOf(id) {
  return state.cut?.faces?.find((f) => f.id === id);
}

/** How far it is, and the way to stop it. @param {App} app @param {() => void} [better] */
export function progress(app, better) {
  if (state.plan !== app.plan || state.of === 0) return nothing;
  const tried = state.at >= state.of;
  // Done is done when the list goes by the best of them.
  const done = tried && (state.open || app.report?.list?.try === bestTry(app));
  return html`<div class="progress" role="status">
    ${done ? nothing : html`<div class="bar-of" .style=${`--done:${Math.round((100 * state.at) / state.of)}%`}></div>`}
    <p class="soft">
      ${done ? `all ${number(state.of)} layouts tried` : `${number(state.at)} of ${number(state.of)} layouts tried`}
      ${
        tried
          ? nothing
          : state.stopped
            ? tap('go on', () => {
                state.stopped = false;
                tryCuts(app, better);
              })
            : tap('stop', () => {
                state.running = false;
                state.stopped = true;
                app.render();
              })
      }
    </p>
  </div>`;
}

/** The verdict while the cuts are on screen. @param {App} app */
export function cutsSaid(app) {
  const report = state.cut;
  const hung = report?.cut.hung?.[state.hung];
  if (!state.open || !report || !hung) return undefined;
  const face = faceOf(hung.face);
  const n = sheetsOf(hung).length;
  const off = (report.cut.notes ?? []).find((x) => x.code === 'off-framing' && x.face === hung.face && x.layer === hung.layer);
  const framing = off ? 'not every joint on framing' : hung.joints ? `every joint on framing` : 'no joint';
  const stagger = hung.stagger > 0 ? `, ${joined(shown('length', hung.stagger, app.ctx))} from those of the layer before` : '';
  return {
    answer: 'Yes.',
    text: `${capital(face?.name ?? '')}, ${inWordsTh(hung.layer)} layer: pieces of ${counted(n, 'sheet')}, ${framing}${stagger}.`,
    mend: undefined,
  };
}

/**
 * @param {App} app
 * @param {number} width
 * @param {() => void} better
 */
export function cutsPart(app, width, better) {
  const report = state.cut;
  const cut = report?.cut;
  const all = cut?.hung ?? [];
  if (!report || !cut || !all.length) {
    return html`${progress(app, better)}<p class="soft">${state.running ? '…' : 'Nothing is cut: no new board hangs on a surface whose size is known.'}</p>`;
  }
  const hung = all[Math.min(state.hung, all.length - 1)];
  const face = faceOf(hung.face);
  const surface = app.plan.surfaces.find((s) => s.id === face?.surface);
  const faces = [...new Set(all.map((h) => h.face))];
  const layers = all.map((h, i) => ({ h, i })).filter(({ h }) => h.face === hung.face);
  const mode = app.wide ? 'desk' : 'phone';
  const name = inSentence(nameOfBoard(report.names?.[hung.board], hung.board, app.ctx));
  return html`${progress(app, better)}
    <div class="cut-of">
      <label class="frow choice"><span>Surface</span><select @change=${(/** @type {Event} */ e) => {
        choose(all.findIndex((h) => h.face === /** @type {HTMLSelectElement} */ (e.target).value));
        app.render();
      }}>
        ${faces.map((id) => html`<option value=${id} ?selected=${id === hung.face}>${leafOf(app, id)}</option>`)}
      </select></label>
      <div class="chips" role="group" aria-label="Layer">
        ${layers.map(
          ({ h, i }) =>
            html`<button type="button" class="chip" aria-pressed=${h === hung} @click=${() => {
              choose(i);
              app.render();
            }}>${`layer ${numberOf(app, face, h.layer)}${h.layer === 0 && layers.length > 1 ? ', hung first' : ''}`}</button>`,
        )}
      </div>
    </div>
    ${
      face
        ? html`<div class="drawing-place">
            ${faceView(cut, hung, { ...face, openings: null }, surface?.kind === 'wall', {
              units: app.units,
              width,
              mode,
              tall: app.wide ? 420 : 480,
              sheet: state.sheet,
              onSheet: (sheet) => {
                choose(state.hung, sheet);
                app.render();
              },
              lines: face.lines ?? [],
              upright: face.upright,
            })}
          </div>`
        : nothing
    }
    <p class="soft">${rich(orderOf(app, hung, all.length))}</p>
    ${sheetPart(app, width, name)} ${pieceList(app, hung)} ${notesOf(app)} ${comparison(app)} ${otherPart(app)}`;
}

/**
 * The number that a layer has under Layers, from the room; the core counts from the frame.
 * @param {App} app
 * @param {import('../types-buy.d.ts').CutFace | undefined} face
 * @param {number} hung from 0
 */
function numberOf(app, face, hung) {
  const surface = app.plan.surfaces.find((s) => s.id === face?.surface);
  const layers = surface ? (edit.buildUpOf(app.plan, surface.buildUp).leaves[face?.leaf ?? 0]?.layers ?? []) : [];
  const fresh = layers.flatMap((y, i) => (y.there ? [] : [i + 1]));
  if (face?.leaf === 0) fresh.reverse();
  return fresh[hung] ?? hung + 1;
}

/** "wall A" or "wall A, far side". @param {App} app @param {string} id */
function leafOf(app, id) {
  const f = faceOf(id);
  return f ? `${f.name || app.surface.kind}${f.leaf > 0 ? ', far side' : ''}` : id;
}

/** When it hangs, and where it runs past its neighbour. @param {App} app @param {HungLayer} h @param {number} of */
function orderOf(app, h, of) {
  const at = (/** @type {number} */ v) => (v > 1.4 ? span(v, app.units) : joined(shown('length', v, app.ctx)));
  const past = pastWords({ left: h.pastLeft, right: h.pastRight, foot: h.pastFoot, head: h.pastHead });
  return `${h.order + 1} of ${of} to hang; boarded ${at(h.area.w)} by ${at(h.area.h)}; ${past}.`;
}

/** One sheet of this layer with < and >. @param {App} app @param {number} width @param {string} name */
function sheetPart(app, width, name) {
  const cut = state.cut?.cut;
  const sheet = cut?.sheets?.[state.sheet];
  if (!cut || !sheet) return nothing;
  const same = (cut.sheets ?? []).map((s, i) => ({ s, i })).filter(({ s }) => s.board === sheet.board);
  const at = same.findIndex(({ i }) => i === state.sheet);
  const step = (/** @type {number} */ by) => {
    const next = same[(at + by + same.length) % same.length].i;
    // Another layer's sheet: go to where its largest piece hangs.
    const piece = cut.pieces?.[cut.sheets?.[next]?.pieces?.[0] ?? -1];
    const hung = (cut.hung ?? []).findIndex((h) => piece && h.face === piece.face && h.layer === piece.layer);
    choose(sheetsOf(cut.hung?.[state.hung]).includes(next) || hung < 0 ? state.hung : hung, next);
    app.render();
  };
  const left = (sheet.left ?? []).filter((b) => b.w > 0.1 && b.h > 0.1).map((b) => sizeOf(b, app.units));
  return html`<h2 class="head part sheet-of">
      <span>Sheet ${sheet.no} of ${same.length} <span class="soft">${rich(name)}${sheet.owned ? ', yours' : ''}</span></span>
      <span class="arrows"
        ><button type="button" class="arrow" aria-label="The sheet before" @click=${() => step(-1)}><svg viewBox="0 0 12 20" width="12" height="20" aria-hidden="true"><path d="M10 2L2 10l8 8" /></svg></button
        ><button type="button" class="arrow" aria-label="The next sheet" @click=${() => step(1)}><svg viewBox="0 0 12 20" width="12" height="20" aria-hidden="true"><path d="M2 2l8 8-8 8" /></svg></button
      ></span>
    </h2>
    <div class="drawing-place">${sheetView(cut, state.sheet, { units: app.units, width, mode: app.wide ? 'desk' : 'phone', tall: 300 })}</div>
    <p class="soft">${rich(`${sheet.cuts ? `${capital(counted(sheet.cuts, 'cut'))}. ` : ''}${left.length ? `Left: ${left.join(', ')}.` : 'Nothing usable is left.'}`)}</p>`;
}

/** Every piece of the layer in figures. @param {App} app @param {HungLayer} hung */
function pieceList(app, hung) {
  const cut = state.cut?.cut;
  if (!cut) return nothing;
  const from = (/** @type {number} */ v) => sawn(v, app.units);
  return html`<details class="fold"><summary>Every piece of this layer, ${app.units === 'us' ? 'in' : 'mm'}</summary>
    <table class="sum">
      <caption class="hid">Pieces</caption>
      <thead><tr><th scope="col">piece</th><th scope="col">size</th><th scope="col">hangs at</th></tr></thead>
      <tbody>
        ${(hung.pieces ?? []).map((i) => {
          const p = cut.pieces?.[i];
          return p
            ? html`<tr><th scope="row">${nameOf(cut, p)}</th><td>${rich(sizeOf(p.at, app.units))}${(p.holes ?? []).length ? html` <span class="soft">${counted((p.holes ?? []).length, 'cut-out')}</span>` : nothing}</td><td>${rich(`${from(p.on.x)}, ${from(p.on.y)}`)}</td></tr>`
            : nothing;
        })}
      </tbody>
    </table></details>`;
}

/** @param {App} app */
function notesOf(app) {
  const report = state.cut;
  const list = report?.cut.notes ?? [];
  return list.length
    ? html`<ul class="notes">${list.map((n) => {
        const s = takeoffNote(n, report?.names, report?.faces, app.ctx);
        return html`<li class="caution ${s.grave ? 'grave' : ''}">${bang()}<span><b>${rich(s.head)}</b> ${rich(s.text)}</span></li>`;
      })}</ul>`
    : nothing;
}

/** Beside the rule of area and waste. @param {App} app */
function comparison(app) {
  const report = state.cut;
  const totals = report?.cut.totals ?? [];
  return html`<h2 class="head part">Beside the rule of area</h2>
    <table class="sum byarea">
      <caption class="hid">Sheets as cut, by area, by area and waste</caption>
      <thead><tr><th scope="col">board</th><th scope="col">as cut</th><th scope="col">area</th><th scope="col">+ waste</th></tr></thead>
      <tbody>
        ${totals.map((t) => html`<tr><th scope="row">${rich(nameOfBoard(report?.names?.[t.board], t.board, app.ctx))}</th><td><b>${number(t.sheets)}</b></td><td>${number(t.bound)}</td><td>${number(t.area)}</td></tr>`)}
      </tbody>
    </table>
    <p class="soft">No layout needs fewer than the area; the usual rule adds 15${NBSP}% for waste to each layer of each surface.</p>`;
}

/** Other lengths as sold. @param {App} app */
function otherPart(app) {
  const other = state.other;
  if (other === '') return html`<p class="taps">${tap('Compare other lengths', () => askOther(app))}</p>`;
  if (other === 'asked') return html`<p class="soft">…</p>`;
  const rows = Object.entries(other).flatMap(([board, list]) => {
    const [as, ...rest] = list ?? [];
    return as ? rest.map((o) => ({ board, as, o })) : [];
  });
  return html`<h2 class="head part">Other lengths</h2>
    ${
      rows.length
        ? html`<ul class="others">
            ${rows.map(({ board, as, o }) => {
              const name = inSentence(nameOfBoard(state.cut?.names?.[board], board, app.ctx));
              const long =
                app.units === 'us'
                  ? `${number(o.length / 0.3048, Number.isInteger(Math.round((o.length / 0.3048) * 100) / 100) ? 0 : 1)}${NBSP}ft`
                  : joined(shown('length', o.length, app.ctx));
              const saved = savedWords(as, o);
              return html`<li><span><b>${rich(`${long} ${name}`)}</b> ${rich(saved === 'same' ? 'change nothing' : saved)}: ${counted(o.buy, 'sheet')}, ${joined(shown('mass', o.each, app.ctx))} each.</span>
                ${tap('Try them', () => tryLength(app, board, o.length, long), `Try them: ${long} sheets of ${name}`)}</li>`;
            })}
          </ul>`
        : html`<p class="soft">These boards are sold in one length here.</p>`
    }`;
}

/** @param {App} app */
async function askOther(app) {
  const { plan } = app;
  state.other = 'asked';
  app.render();
  const best = bestTry(app);
  const reply = await app.ask('cut', { plan, from: best, to: best + 1, best: -1, other: true }, 'cut other');
  if (state.plan !== plan) return;
  state.other = reply.ok ? (reply.cut.other ?? {}) : '';
  app.render();
}

/**
 * The board is bought in that length from now on.
 * @param {App} app
 * @param {string} board
 * @param {number} length
 * @param {string} words
 */
function tryLength(app, board, length, words) {
  const sheet = state.cut?.names?.[board]?.sheet ?? '';
  const [digits, unit] = (edit.shelfOf(app.plan, board).sheet || sheet).split(' ');
  const width = digits.split('x')[0];
  const size = { ft: 0.3048, in: 0.0254, mm: 1e-3, cm: 1e-2, m: 1 }[unit] ?? 1;
  app.edit(edit.setShelf(app.plan, board, { sheet: `${width}x${Number((length / size).toFixed(3))} ${unit}` }, `sheets of ${words}`));
}

/** For paper: every layer of every face, as long as the plan on screen was cut. @param {App} app */
export function cutForPaper(app) {
  return state.plan === app.plan ? state.cut : undefined;
}
