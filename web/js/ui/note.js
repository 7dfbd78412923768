// The calculation note, for whoever must be convinced: what went in, how it was
// worked out, every band, the ratings, the nearest test, and what it is not
// good for. As a printed page, and as a table any program reads.

import { html, nothing } from 'lit-html';
import { bandName, curveView, neededWords, shortWords } from '../draw/curve.js';
import { boardName, decibels, leafName, MINUS, NBSP, text, UNKNOWN } from '../format.js';
import { cautionWords, floorWords, frameWords, heldWords, joinWords, LISTENS, leafWords, PLAYS, REGIONS } from '../words.js';
import { construction, differencesWords, publishedWords } from './nearest.js';
import { sizeWords } from './place.js';
import { reason } from './sound.js';
import { rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').Report} Report
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {import('../words.js').Ctx} Ctx
 * @typedef {object} Input
 * @property {string} item what it is of: "room side, layer 1"
 * @property {string} words what it is: "Gypsum 5/8 type X"
 * @property {[string, Value | null | undefined][]} values
 */

/** Width of what is printed, px of CSS, as in print.js; the chart stands beside the bands. */
const CHART = 400;

/** What is in a note is sure of itself only within these. */
const LIMITS = [
  'Predicted, not measured. Low and high are one standard deviation either way.',
  'From 50 to 80 Hz it may be off by 6 dB or more; 31.5 and 40 Hz are extrapolated, 8 dB at best: no test among the evidence goes there.',
  'It is what a laboratory would find: sound that goes round through floor, ceiling, doors and ducts is not in it.',
  'It holds for sealed joints, fixings as typed, and screws clear of the frame behind clips or channel.',
  'Not for structural or fire approval. Local codes, an engineer and the maker’s data sheet come first.',
];

const METHOD = [
  'Every board is a plate with its own mass, bending stiffness, loss and coincidence (Cremer 1942; data after Hopkins 2007 and as calibrated), gypsum board a core between two paper faces; boards screwed together add up, boards with a damping film share it (Ross, Ungar and Kerwin 1959).',
  'In each third of an octave the leaves, the air and fill between them (Allard and Champoux 1992) and the frame and fixings, as springs and masses that also send out waves of their own (after Davy 1991, Sharp 1978 and Vigran 2008), are solved together for every direction of a diffuse field, with the radiation of a face of finite size (Sewell 1970).',
  'Constants that do not follow from the boards are fitted to published walls and floors, most of them of the National Building Code of Canada 2020, within physical bounds.',
  'Low and high come from what the method leaves over against published tests with each series left out of the fit, never less than laboratories differ by among themselves (ISO 12999-1:2020); where a kind has not been tested, what the unconfirmed inputs would change is added.',
  'Ratings: STC by ASTM E413, Rw, C and Ctr by ISO 717-1, OITC by ASTM E1332. Bass is the energy mean from 50 to 125 Hz.',
];

const NEEDED =
  'Needed is the level in the room less the level allowed beyond, by octave, with the area of the face taken equal to the absorption of the room beyond (ISO 12354-1); the allowed level has the shape of a noise criterion curve, its A-weighted sum after WHO 1999. Spectra of sources are estimates, 5 dB either way (common practice).';

/**
 * What went in: layers, gaps and fixings from the room outwards.
 * @param {Report} report
 * @param {Ctx} ctx
 * @returns {Input[]}
 */
export function inputs(report, ctx) {
  const { leaves, gaps } = report;
  return leaves.flatMap((leaf, i) => {
    const side = leafWords(i, leaves.length).toLowerCase();
    /** @type {Input[]} */
    const rows = leaf.layers.map((layer, k) => ({
      item: `${side}, layer ${k + 1}`,
      words: [boardName(layer, ctx.units), layer.there ? 'there already' : '', layer.join && k < leaf.layers.length - 1 ? joinWords(layer.join) : '']
        .filter(Boolean)
        .join(', '),
      values: [
        ['thickness', layer.thickness],
        ['mass', layer.mass],
      ],
    }));
    const gap = gaps[i];
    if (!gap) return rows;
    const name = gaps.length > 1 ? `gap ${i + 1}` : 'gap';
    rows.push({
      item: name,
      words: frameWords(gap, ctx.units),
      values: [
        ['depth', gap.depth],
        ['spacing', gap.spacing],
      ],
    });
    rows.push({ item: `${name}, fill`, words: gap.fillName || 'empty', values: gap.fillName ? [['depth', gap.fillDepth]] : [] });
    for (const [which, held] of /** @type {const} */ ([
      [leafWords(i, leaves.length), gap.near],
      [leafWords(i + 1, leaves.length), gap.far],
    ])) {
      rows.push({
        item: `${which.toLowerCase()}, fixing`,
        words: `${held.kind === 'clip' ? 'rubber clip and channel' : held.kind === 'channel' ? 'resilient channel' : heldWords(held, ctx)}${held.shorts ? ', some screws reach the frame' : ''}`,
        values: [
          ...(held.kind === 'clip' || held.kind === 'channel' ? /** @type {[string, Value | null][]} */ ([['rows', held.rows]]) : []),
          ...(held.kind === 'clip' ? /** @type {[string, Value | null][]} */ ([['along', held.along]]) : []),
          [held.screws?.origin === 'typical' ? 'screws at least apart' : 'screws apart', held.screws],
        ],
      });
    }
    return rows;
  });
}

/**
 * The single numbers: name, value, and how far it may be off.
 * @param {Report} report
 * @returns {[string, number | undefined, number | undefined][]}
 */
export function ratingRows({ sound: s, yours }) {
  if (!s) return [];
  const { rating, bass } = s.spread;
  return [
    ['bass, 50 to 125 Hz', yours.bass?.v, bass],
    ['STC', s.stc, rating],
    ['Rw', s.rw, rating],
    ['C', s.c, undefined],
    ['Ctr', s.ctr, undefined],
    ['C 50-5000', s.c50, undefined],
    ['Ctr 50-5000', s.ctr50, undefined],
    ['OITC', s.oitc, rating],
    ['likely in a built room', yours.built?.v, undefined],
  ];
}

const SI = /** @type {Record<string, string>} */ ({ length: 'm', surfaceMass: 'kg/m2', mass: 'kg', area: 'm2', decibel: 'dB', share: '1' });

export const COLUMNS = ['part', 'item', 'hz', 'value', 'low', 'high', 'reference', 'unit', 'origin'];

/**
 * The note as rows of one table. Figures are SI and as the core gave them.
 * @param {Report} report
 * @param {Pick<App, 'plan' | 'surface'>} of
 * @param {Ctx} ctx
 * @returns {Record<string, string | number | undefined>[]}
 */
export function noteRows(report, { plan, surface }, ctx) {
  const s = report.sound;
  const quantity = report.ratingIs === 'Rw' ? 'sound reduction index' : 'transmission loss';
  /** @type {Record<string, string | number | undefined>[]} */
  const rows = [
    { part: 'plan', item: plan.name },
    {
      part: 'surface',
      item: [surface.name, surface.kind, surface.beyond ? `to ${surface.beyond}` : ''].filter(Boolean).join(', '),
      value: report.area?.v,
      unit: report.area ? 'm2' : undefined,
    },
    { part: 'region', item: REGIONS[plan.region] ?? plan.region },
  ];
  for (const { item, words, values } of inputs(report, ctx)) {
    if (values.length === 0) rows.push({ part: 'input', item: `${item}: ${words}` });
    for (const [what, value] of values) {
      if (value) rows.push({ part: 'input', item: `${item}: ${words}, ${what}`, value: value.v, unit: SI[value.kind], origin: value.origin });
    }
  }
  rows.push({ part: 'reference', item: `${leafName(report.refLayers, ctx.units)}, everything else the same` });
  for (const words of METHOD) rows.push({ part: 'method', item: words });
  if (s) {
    s.hz.forEach((hz, i) => {
      rows.push({
        part: 'band',
        item: quantity,
        hz,
        value: s.tl[i],
        low: s.low[i],
        high: s.high[i],
        reference: s.ref[i],
        unit: 'dB',
        origin: hz < 50 ? 'extrapolated' : 'computed',
      });
    });
    for (const o of s.octaves)
      rows.push({
        part: 'octave',
        item: quantity,
        hz: o.hz,
        value: o.tl,
        low: o.tl - o.spread,
        high: o.tl + o.spread,
        reference: o.ref,
        unit: 'dB',
        origin: 'computed',
      });
    if (s.need) {
      rows.push({ part: 'need', item: `what plays: ${PLAYS[s.need.source] ?? s.need.source}`, value: s.need.level, unit: 'dBA' });
      rows.push({ part: 'need', item: `who is beyond: ${LISTENS[s.need.listener] ?? s.need.listener}`, value: s.need.allowed, unit: 'dBA' });
      for (const o of s.need.octaves) {
        rows.push({ part: 'need', item: 'needed', hz: o.hz, value: o.need, unit: 'dB', origin: 'computed' });
        rows.push({ part: 'need', item: 'short by', hz: o.hz, value: o.short, unit: 'dB', origin: 'computed' });
      }
      rows.push({ part: 'method', item: NEEDED });
      if (s.need.floor) rows.push({ part: 'limit', item: floorWords(s.need.source) });
    }
    for (const [name, v, spread] of ratingRows(report)) {
      rows.push({
        part: 'rating',
        item: name,
        value: v,
        low: spread === undefined || v === undefined ? undefined : v - spread,
        high: spread === undefined || v === undefined ? undefined : v + spread,
        unit: 'dB',
        origin: 'computed',
      });
    }
    rows.push({ part: 'spread', item: reason(s) });
  }
  const { nearest } = report;
  if (nearest) {
    const { ours } = nearest;
    rows.push({ part: 'nearest test', item: construction(ours, ctx.units), origin: publishedWords(nearest) });
    rows.push({ part: 'nearest test', item: 'STC measured', value: nearest.stc, unit: 'dB', origin: publishedWords(nearest) });
    rows.push({ part: 'nearest test', item: 'STC by this method', value: ours.stc, unit: 'dB', origin: 'computed' });
    rows.push({ part: 'nearest test', item: 'bass by this method', value: ours.bass, unit: 'dB', origin: 'computed' });
    for (const { hz, loss } of nearest.measured ?? [])
      rows.push({
        part: 'nearest test',
        item: `measured, ${nearest.octaves ? 'octave' : 'third of an octave'}`,
        hz,
        value: loss,
        unit: 'dB',
        origin: publishedWords(nearest),
      });
    rows.push({ part: 'nearest test', item: differencesWords(nearest, ctx, report.leaves.length) });
  }
  for (const words of LIMITS) rows.push({ part: 'limit', item: words });
  for (const caution of report.cautions ?? []) {
    const said = cautionWords(caution, ctx);
    rows.push({ part: 'caution', item: `${said.head} ${said.text}`.trim() });
  }
  return rows;
}

/**
 * Rows as comma-separated values: a header row, dots as decimal marks, lines
 * ended as RFC 4180 has them.
 * @param {Record<string, string | number | undefined>[]} rows
 */
export function csv(rows) {
  const lines = [COLUMNS, ...rows.map((row) => COLUMNS.map((name) => cell(row[name])))];
  return `${lines.map((line) => line.join(',')).join('\r\n')}\r\n`;
}

/** @param {string | number | undefined} value */
function cell(value) {
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  if (!value) return '';
  // No-break spaces are for paper; a table that a spreadsheet opens must not begin a formula.
  const plain = value.replace(/[\u00a0\u202f]/g, ' ').replaceAll(MINUS, '-');
  const safe = /^[=+\-@\t\r]/.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * A report of the plan on screen with all that a note takes.
 * @param {App} app
 * @returns {Promise<Report | undefined>}
 */
async function whole(app) {
  const reply = await app.ask('assess', { plan: app.plan, want: { surface: app.surface.id, sound: true, nearest: true } }, 'note');
  if (reply.ok) return reply.report;
  app.tell({ message: { head: 'No note yet.', pieces: ['A field is in error; mend it first.'] }, taps: [] });
  return undefined;
}

/** @param {App} app */
export async function printNote(app) {
  const report = await whole(app);
  if (!report) return;
  app.close();
  const before = app.printed;
  app.printed = { reports: [report], note: true };
  // The paper is drawn as the browser asks for it.
  window.print();
  app.printed = before;
}

/** @param {App} app */
export async function saveNote(app) {
  const report = await whole(app);
  if (!report) return;
  const blob = new Blob([csv(noteRows(report, app, { ...app.ctx, report }))], { type: 'text/csv;charset=utf-8' });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = `${`${app.plan.name} ${app.surface.name}`.replace(/[^\p{L}\p{N} _-]+/gu, '').trim() || 'note'}.csv`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** The two ways to hand it over. @param {App} app */
export function noteTaps(app) {
  return html`<section class="note-of" aria-label="Calculation note">
    <h2 class="head part">Calculation note</h2>
    <p class="soft">For whoever must be convinced: what went in, the method and its sources, every band, the nearest test, the limits.</p>
    <p class="taps">${tap('Print the note', () => printNote(app))} ${tap('Save it as CSV', () => saveNote(app))}</p>
  </section>`;
}

/**
 * The note on paper.
 * @param {App} app
 * @param {Report} report
 */
export function noteView(app, report) {
  const ctx = { ...app.ctx, report };
  const { plan } = app;
  const surface = plan.surfaces.find((x) => x.id === report.surface) ?? app.surface;
  const s = report.sound;
  const { nearest } = report;
  const size = [sizeWords(app, surface), report.area && surface.width ? text(report.area, ctx) : ''].filter(Boolean).join(', ');
  return html`<article class="paper calculation">
    <header>
      <h1>Calculation note <i>${plan.name}${surface.name ? `, ${surface.name}` : nothing}${surface.beyond ? ` to the ${surface.beyond}` : nothing}</i></h1>
    </header>
    <p class="soft under">
      ${size ? `${size}. ` : nothing}${REGIONS[plan.region]}. Printed ${new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })} by Twoleaf.
      ${app.about}
    </p>
    <section>
      <h2>What went in, from the room</h2>
      ${inputTable(report, ctx)}
    </section>
    ${
      s
        ? html`<section class="bands">
            <div>
              <h2>${report.ratingIs === 'Rw' ? 'Sound reduction index' : 'Transmission loss'}, dB</h2>
              <table>
                <thead>
                  <tr><th scope="col">band</th><th scope="col">yours</th><th scope="col">low</th><th scope="col">high</th>${report.isReference ? nothing : html`<th scope="col">reference</th>`}</tr>
                </thead>
                <tbody>
                  ${s.hz.map(
                    (hz, i) => html`<tr class=${hz < 50 ? 'guess' : ''}>
                      <th scope="row">${bandName(hz)}</th><td><b>${s.tl[i].toFixed(1)}</b></td><td>${s.low[i].toFixed(1)}</td><td>${s.high[i].toFixed(1)}</td>
                      ${report.isReference ? nothing : html`<td>${s.ref[i].toFixed(1)}</td>`}
                    </tr>`,
                  )}
                </tbody>
              </table>
            </div>
            <div>
              ${curveView(s, { width: CHART, mode: 'print', ratingIs: report.ratingIs, isReference: report.isReference })}
              <h2>In one number</h2>
              <table>
                <tbody>
                  ${ratingRows(report).map(([name, v, spread]) => html`<tr><th scope="row">${name}</th><td>${v === undefined ? UNKNOWN : decibels(v)}${spread === undefined ? nothing : ` ±${decibels(spread)}`}</td></tr>`)}
                </tbody>
              </table>
              <p class="soft">${reason(s)}</p>
            </div>
          </section>
          ${s.need ? needTable(s.need) : nothing}`
        : nothing
    }
    ${
      nearest
        ? html`<section>
            <h2>Nearest published test</h2>
            <p>${rich(construction(nearest.ours, app.units))} ${publishedWords(nearest)}.</p>
            <p>
              Measured STC${NBSP}${nearest.stc || UNKNOWN}${nearest.bass === undefined ? nothing : `, bass ${decibels(nearest.bass)}${NBSP}dB`}; this method says STC${NBSP}${nearest.ours.stc}, bass
              ${decibels(nearest.ours.bass)}${NBSP}dB for that very construction. ${rich(differencesWords(nearest, ctx, report.leaves.length))}
              ${nearest.assumed?.length ? `Not stated there, and assumed: ${nearest.assumed.join('; ')}.` : nothing}
            </p>
          </section>`
        : nothing
    }
    <section>
      <h2>Method</h2>
      <p>${METHOD.join(' ')} ${s?.need ? NEEDED : nothing} ${s?.need?.floor ? floorWords(s.need.source) : nothing}</p>
    </section>
    <section>
      <h2>Limits and cautions</h2>
      <ul>
        ${LIMITS.map((words) => html`<li>${words}</li>`)}
        ${(report.cautions ?? []).map((caution) => {
          const said = cautionWords(caution, ctx);
          return html`<li><b>${rich(said.head)}</b> ${rich(said.text)}</li>`;
        })}
      </ul>
    </section>
  </article>`;
}

/**
 * @param {Report} report
 * @param {Ctx} ctx
 */
function inputTable(report, ctx) {
  return html`<table class="inputs">
    <tbody>
      ${inputs(report, ctx).map(
        ({ item, words, values }) => html`<tr>
          <th scope="row">${item}</th>
          <td>${rich(words)}</td>
          <td>${values.map(([what, value], i) => (value ? html`${i ? ', ' : nothing}${what} ${rich(text(value, ctx))}${value.origin === 'typed' ? ' typed' : nothing}` : nothing))}</td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}

/** @param {import('../types.d.ts').Need} need */
function needTable(need) {
  const plays = `${PLAYS[need.source] ?? need.source}, ${decibels(need.level)}${NBSP}dBA`;
  const listens = `${LISTENS[need.listener] ?? need.listener}, ${decibels(need.allowed)}${NBSP}dBA`;
  return html`<section>
    <h2>Needed: ${plays} to ${listens}</h2>
    <table class="octaves">
      <thead>
        <tr><th scope="row">octave, Hz</th>${need.octaves.map((o) => html`<th scope="col">${o.hz}</th>`)}</tr>
      </thead>
      <tbody>
        <tr><th scope="row">yours</th>${need.octaves.map((o) => html`<td>${decibels(o.got)}</td>`)}</tr>
        <tr><th scope="row">needed</th>${need.octaves.map((o) => html`<td>${neededWords(o.need)}</td>`)}</tr>
        <tr><th scope="row">short by</th>${need.octaves.map((o) => html`<td><b>${shortWords(o)}</b></td>`)}</tr>
      </tbody>
    </table>
  </section>`;
}
