// What is behind the clips: how far the channel runs, what the joists are asked
// to carry, the screws of every layer, and how soft the leaf hangs.

import { html, nothing } from 'lit-html';
import { setJoists } from '../edit-buy.js';
import { boardName, joined, NBSP, number, shown, text, typed } from '../format.js';
import { screwWords } from '../words.js';
import { ABOVES, fine, gradesOf, gradeWords, loadNote } from '../words-buy.js';
import { choice, fieldRow } from './field.js';
import { quantity } from './gap.js';
import { bang, rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-buy.d.ts').LayoutReport} LayoutReport
 * @typedef {import('../types.d.ts').Caution} Caution
 */

/** Said by the verdict, the key or the cautions of the surface. */
const ELSEWHERE = ['over-rating', 'close-to-rating', 'under-load', 'no-rating', 'rating-invented'];
/** How it is done, and no warning. */
const ADVICE = ['coarse-thread', 'fine-thread', 'drill-point', 'panel-gap', 'half-load'];
const SCREWS = ['coarse-thread', 'fine-thread', 'drill-point', 'pilot-holes', 'panel-gap', 'corner-backing'];

/**
 * What a layout has to say, in the look of cautions.
 * @param {App} app
 * @param {Caution[] | null | undefined} notes
 */
export function notes(app, notes) {
  const said = (notes ?? []).flatMap((n) => {
    const words = ELSEWHERE.includes(n.code) ? undefined : loadNote(n, app.ctx);
    return words ? [{ ...words, advice: ADVICE.includes(n.code) }] : [];
  });
  return said.length
    ? html`<ul class="notes">
        ${said.map(
          (s) =>
            html`<li class=${s.advice ? 'advice' : `caution ${s.grave ? 'grave' : ''}`}>${s.advice ? nothing : bang()}<span><b>${rich(s.head)}</b> ${rich(s.text)}</span></li>`,
        )}
      </ul>`
    : nothing;
}

/** @param {App} app @param {LayoutReport} report */
export function channelPart(app, report) {
  const lay = report.layout;
  if (!lay) return nothing;
  const worst = (lay.rows ?? []).reduce(
    (most, r) => (r.sagOf > (most?.sagOf ?? 0) ? r : most),
    /** @type {import('../types-buy.d.ts').ChannelRow | undefined} */ (undefined),
  );
  const rows = /** @type {[string, string, string][]} */ ([]);
  if (report.span) rows.push(['may run', 'between clips, several spans, span / 240', text(report.span, app.ctx)]);
  if (worst) rows.push(['sags', `${number(worst.sagOf * 100)}${NBSP}% of what it may`, fine(worst.sag, app.ctx)]);
  rows.push([
    'in all',
    `${number((lay.rows ?? []).length)} rows, without laps`,
    app.units === 'us' ? `${number(lay.channel / 0.3048)}${NBSP}ft` : `${number(lay.channel, 1)}${NBSP}m`,
  ]);
  return html`<h2 class="head part">Channel</h2>
    ${report.face.ceiling ? nothing : html`<p class="soft">On a wall the channel is loaded along its web: only a ceiling bends it.</p>`}
    ${sums(rows, 'The channel')}`;
}

/** @param {[string, string, string][]} rows @param {string} caption */
function sums(rows, caption) {
  return html`<table class="sum two-lines">
    <caption class="hid">${caption}</caption>
    <tbody>
      ${rows.map(([name, how, value]) => html`<tr><th scope="row">${name}<span class="soft">${rich(how)}</span></th><td class="figure">${rich(value)}</td></tr>`)}
    </tbody>
  </table>`;
}

/** @param {App} app @param {LayoutReport} report */
export function joistsPart(app, report) {
  const j = report.joists;
  if (report.line)
    return html`<p class="soft">${rich(`The new frame and all on it put ${text(report.line, app.ctx)} on the floor, boards, fill, studs and plates counted. On a floor that hangs free, ask an engineer.`)}</p>`;
  if (!j || app.surface.kind !== 'ceiling') return nothing;
  const short = (/** @type {number} */ v) =>
    shown('surfaceMass', v, app.ctx)
      .figure.replace(/(\.\d*?)0+$/, '$1')
      .replace(/\.$/, '');
  const m = (/** @type {number} */ v) => `${short(v)}${NBSP}${shown('surfaceMass', v, app.ctx).unit}`;
  const range = (/** @type {number} */ low, /** @type {number} */ high) => (Math.abs(high - low) < 0.01 ? m(low) : `${short(low)} to ${m(high)}`);
  const rows = /** @type {[string, string, string][]} */ ([
    ['hung new', 'as delivered, for clips and sound', m(j.added)],
    ['by code', 'the weights that codes take, for the structure', m(j.code)],
  ]);
  if (j.dead.known) {
    rows.push(
      ['sized for', 'dead load, likely', m(j.dead.sized.dead)],
      ['there already', app.surface.joists?.dead ? 'as you typed' : 'usually, joists counted', range(j.dead.thereLow, j.dead.thereHigh)],
      j.dead.leftHigh < 0
        ? ['too much', 'when all hangs', range(-j.dead.leftHigh, -j.dead.leftLow)]
        : ['left', 'when all hangs', range(j.dead.leftLow, j.dead.leftHigh)],
    );
  }
  rows.push(['on each joist', app.units === 'us' ? 'a foot of it, new' : 'a metre of it, new', joined(shown('lineMass', j.dead.onJoist, app.ctx))]);
  if (j.bend) {
    const of = (/** @type {number} */ v, /** @type {number} */ most) => `${number((v / most) * 100)}${NBSP}%`;
    rows.push(
      ['bending', 'of what the joist may take', of(j.bend.moment, j.bend.momentMost)],
      ['shear', 'of what it may take', of(j.bend.shear, j.bend.shearMost)],
      ['deflection', `${fine(j.bend.sag, app.ctx)} under live load`, of(j.bend.sag, j.bend.sagMost)],
      ['would span', 'with this load', app.units === 'us' ? `${number(j.bend.longest / 0.3048, 1)}${NBSP}ft` : `${number(j.bend.longest, 2)}${NBSP}m`],
    );
  }
  const joists = app.surface.joists ?? {};
  const id = app.surface.id;
  const set = (/** @type {Partial<import('../types.d.ts').Joists>} */ patch, /** @type {string} */ label) => app.edit(setJoists(app.plan, id, patch, label));
  const spec = (/** @type {'span' | 'dead'} */ name, /** @type {string} */ label) =>
    quantity(
      app,
      `joists.${id}.${name}`,
      label,
      joists[name] ?? '',
      name === 'span' ? 'length' : 'surfaceMass',
      name === 'span' ? ['ft', 'm'] : ['psf', 'kg/m2'],
      undefined,
      {
        set: (q) => setJoists(app.plan, id, { [name]: q }, `${label}: ${q ? joined(typed(q)) : 'not said'}`),
        mine: (fault) => fault.surface === id && fault.field === name,
      },
    );
  return html`<h2 class="head part">Joists</h2>
    ${sums(rows, 'What the joists carry')} ${notes(app, j.cautions)}
    <div class="form">
      ${choice('They carry', ABOVES, joists.above || 'floor', (value) => set({ above: value === 'floor' ? '' : value }, 'what the joists carry'))}
      ${fieldRow(app, spec('span', 'span of the joists'), 'They span', 'from support to support')}
      ${choice(
        'Their wood',
        [{ value: '', words: 'not known' }, ...gradesOf(app.region).map((g) => ({ value: g, words: gradeWords(g) }))],
        joists.grade ?? '',
        (value) => set({ grade: value }, value ? `joists: ${gradeWords(value)}` : 'joists not known'),
      )}
      ${fieldRow(app, spec('dead', 'dead load there already'), 'They carry already', 'dead load, instead of the usual')}
    </div>
    <p class="soft">A check by tables, not a design: local codes and an engineer decide what may be hung.</p>`;
}

/**
 * Screws of each new layer, the first to be fixed first.
 * @param {App} app
 * @param {LayoutReport | undefined} [report]
 */
export function screwsPart(app, report) {
  const leaf = app.report?.leaves[app.report.leaf];
  const numbered = leaf?.layers ?? [];
  const layers = numbered.filter((y) => !y.there);
  if (!layers.some((y) => y.screw)) return nothing;
  return html`<h2 class="head part">Screws</h2>
    <table class="sum screws">
      <caption class="hid">
        Screws of each layer
      </caption>
      <tbody>
        ${layers.map(
          (y) => html`<tr>
            <th scope="row">${numbered.indexOf(y) + 1} ${rich(boardName(y, app.units))}</th>
            <td class="figure">${y.screw ? rich(text(y.screw, app.ctx)) : 'none fits'}</td>
            <td class="soft">${y.screwMax ? rich(`at most ${text(y.screwMax, app.ctx)}`) : rich(screwWords(y.screwWhy, app.units))}${spacingOf(app, report, numbered.indexOf(y))}</td>
          </tr>`,
        )}
      </tbody>
    </table>
    <p class="soft">${rich(
      reasonWords(
        app,
        layers.some((y) => y.screwMax),
      ),
    )} ${orderWords(app.report)}</p>
    ${notes(
      app,
      (report?.fasten ?? []).filter((n) => SCREWS.includes(n.code)),
    )}`;
}

/** How far apart: between the edges, and along them. @param {App} app @param {LayoutReport | undefined} report @param {number} i */
function spacingOf(app, report, i) {
  const s = report?.spacing?.[i];
  if (!s || !(s.edge > 0)) return nothing;
  const at = (/** @type {number} */ v) => shown('length', v, app.ctx);
  const { figure, unit } = at(s.edge);
  const words =
    s.field === 0
      ? `${figure}${NBSP}${unit} at edges only`
      : s.field === s.edge
        ? `every ${figure}${NBSP}${unit}`
        : `${figure}${NBSP}${unit} at edges, ${at(s.field).figure} between`;
  return html`<span class="apart">${rich(words)}</span>`;
}

/** Why no shorter and no longer. @param {App} app @param {boolean} limited */
function reasonWords(app, limited) {
  const reach = app.units === 'us' ? '5/8 in into wood or 3/8 in past steel' : '16 mm into wood or 10 mm past steel';
  return `Shortest: all boards it passes and ${reach}, up to the next length sold.${limited ? ' Longest: its tip must not touch what is behind the channel.' : ''}`;
}

/**
 * In which order the layers are fixed, and what no screw may do.
 * @param {import('../types.d.ts').Report | undefined} report
 */
export function orderWords(report) {
  const leaf = report?.leaves[report.leaf];
  const order = report?.leaf === 0 ? 'Layer 1 faces the room: it is fixed last.' : 'The outermost layer is fixed last.';
  return leaf?.layers.some((y) => y.screwMax) ? `${order} No screw may reach a stud through clips or channel.` : order;
}

/** The leaf as a mass on its clips. @param {App} app @param {LayoutReport} report */
export function springPart(app, report) {
  const h = report.hanging;
  if (!h || !(h.frequency > 0)) return nothing;
  const hz = (/** @type {number} */ v) => `${number(v)}${NBSP}Hz`;
  return html`<h2 class="head part">How soft it hangs</h2>
    ${sums(
      [
        ['on its clips', `${number(h.low)} to ${hz(h.high)} by the clips’ stiffness`, hz(h.frequency)],
        ...(h.withAir > 0 ? /** @type {[string, string, string][]} */ ([['with the air', 'of the gap as a second spring', hz(h.withAir)]]) : []),
        ['half the load', 'the same clips, half the boards', hz(h.halfLoad)],
        ['gives', 'at rest', fine(h.deflection, app.ctx)],
      ],
      'The hung leaf on its clips',
    )}
    <p class="soft">Half the load on the same clips sits ${number((h.halfLoad / h.frequency - 1) * 100)}${NBSP}% higher: isolation begins later. Too many clips do the same.</p>
    ${notes(
      app,
      (report.fasten ?? []).filter((n) => n.code === 'half-load'),
    )}`;
}
