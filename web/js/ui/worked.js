// How a figure was worked out: the formula in words, the sum with the user's
// own numbers, and where each of them comes from.

import { html, nothing } from 'lit-html';
import { clipView } from '../draw/clip.js';
import { boardName, hertz, joined, NBSP, spread, text, valueShown } from '../format.js';
import { familyWords, leafWords } from '../words.js';
import { panel } from './panel.js';
import { rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {import('../types.d.ts').Working} Working
 */

const TITLES = /** @type {Record<string, string>} */ ({
  mass: 'How the mass was worked out',
  cost: 'How the cost was worked out',
  clip: 'How the clip load was worked out',
  bass: 'How the bass was worked out',
  rating: 'How the rating was worked out',
  thickness: 'How the thickness was worked out',
});

/** @param {App} app */
export function worked(app) {
  if (app.panel?.kind !== 'work') return nothing;
  const { key } = app.panel;
  const work = /** @type {Working | undefined} */ (app.report?.working?.trace === app.panel.trace ? app.report.working : undefined);
  return panel(
    app,
    TITLES[key] ?? 'How it was worked out',
    html`<p class="formula">${rich(formula(app, key, work))}</p>
      ${key === 'clip' ? drawing(app) : nothing}
      ${
        work
          ? html`<table class="sum">
              <caption class="hid">
                The sum
              </caption>
              <tbody>
                ${(work.rows ?? []).map((row) => sumRow(app, row, key))}
              </tbody>
            </table>
            ${work.sources?.length ? html`<h3 class="head">Where it comes from</h3>${sources(app, work)}` : nothing}`
          : html`<p class="soft">${absent(app, key)}</p>`
      }`,
  );
}

/**
 * @param {App} app
 * @param {string} key
 */
function absent(app, key) {
  const y = app.report?.yours;
  if (key === 'cost' && !y?.cost) return 'A price is missing: type what the tag says.';
  if (key === 'clip' && y?.load === 'none') return 'No clips hold this leaf.';
  return '…';
}

/**
 * The formula in one sentence.
 * @param {App} app
 * @param {string} key
 * @param {Working | undefined} work
 */
function formula(app, key, work) {
  const isRw = app.report?.ratingIs === 'Rw';
  switch (key) {
    case 'mass':
      return 'Mass per area is what one sheet of each board weighs, over the area of a sheet.';
    case 'cost':
      return 'Cost is what one sheet of each new board costs, over the area of a sheet.';
    case 'clip': {
      const factor = work?.rows?.find((r) => r.code === 'onClip')?.terms?.[1]?.v;
      return factor
        ? `Load is the area halfway to the next clips, times all that hangs on it, times ${factor.toFixed(2)}.`
        : 'Load on the worst clip is the larger of two: its own area with all that hangs on it, and what the channel as one long beam puts on it.';
    }
    case 'bass':
      return `Bass is the mean of what five bands let through, 50 to 125${NBSP}Hz.`;
    case 'rating':
      return isRw
        ? `Rw is as high as its reference curve goes with at most 32${NBSP}dB short in all.`
        : `STC is as high as its contour goes with at most 32${NBSP}dB short in all, 8 in any band.`;
    case 'thickness':
      return 'Thickness is every board and the gaps between.';
  }
  return '';
}

/** @param {App} app */
function drawing(app) {
  const load = app.report?.load;
  const held = holding(app);
  if (!load || !held) return nothing;
  return html`<div class="drawing-place">
    ${clipView({ units: app.units, width: app.wide ? 480 : app.width, rows: held.rows?.v, along: held.along?.v, mode: app.wide ? 'desk' : 'phone' })}
  </div>`;
}

/**
 * How the edited leaf is held, as the report has it.
 * @param {App} app
 */
export function holding(app) {
  const { report } = app;
  if (!report) return undefined;
  const after = report.gaps[report.leaf]?.near;
  const before = report.gaps[report.leaf - 1]?.far;
  return after?.kind === 'clip' ? after : before?.kind === 'clip' ? before : undefined;
}

/**
 * @param {App} app
 * @param {string} id
 */
function board(app, id) {
  for (const leaf of app.report?.leaves ?? []) for (const layer of leaf.layers) if (layer.board === id) return boardName(layer, app.units);
  return app.ctx.names[id] ?? id;
}

/**
 * What a row of the sum is called.
 * @param {App} app
 * @param {string} code
 */
function rowWords(app, code) {
  const [kind, rest = ''] = code.split(':');
  switch (kind) {
    case 'layer':
    case 'there':
    case 'unpriced':
      return board(app, rest);
    case 'film':
      return 'damping film';
    case 'mass':
      return leafWords(app.report?.leaf ?? 0, app.report?.leaves.length ?? 2).toLowerCase();
    case 'cost':
      return 'in all';
    case 'own':
      return 'own area';
    case 'byArea':
      return 'by its area';
    case 'byBeam':
      return 'by the beam';
    case 'onClip':
      return 'on the clip';
    case 'share':
      return 'of its rating';
    case 'extra':
      return 'hung on it';
    case 'band':
      return hertz(Number(rest));
    case 'bass':
      return 'bass';
    case 'contour.stc':
    case 'contour.rw':
      return 'contour at';
    case 'sum':
      return 'short in all';
    case 'worst':
      return `short at ${hertz(Number(rest))}`;
    case 'rating':
      return app.report?.ratingIs ?? 'rating';
    case 'screws':
      return 'close screws';
    case 'c':
      return 'C';
    case 'ctr':
      return 'Ctr';
    case 'built':
      return 'built, likely';
    case 'leaf':
      return leafWords(Number(rest), app.report?.leaves.length ?? 2).toLowerCase();
    case 'thickness':
      return 'in all';
  }
  return kind;
}

/** The row that is the strip's figure. @param {string} code @param {string} key */
function isResult(code, key) {
  return code === key || (key === 'clip' && (code === 'share' || code === 'onClip'));
}

/**
 * @param {App} app
 * @param {{code: string, form: string, terms: Value[] | null, result: Value}} row
 * @param {string} key
 */
function sumRow(app, row, key) {
  const rated = app.report?.yours.clip !== null;
  const last = isResult(row.code, key) && !(key === 'clip' && row.code === 'onClip' && rated);
  const kind = row.code.split(':')[0];
  const result =
    kind === 'there'
      ? 'there already'
      : kind === 'unpriced'
        ? 'no price'
        : kind === 'sum' || kind === 'worst'
          ? shortOf(app, row)
          : text({ ...row.result, origin: 'computed' }, app.ctx);
  const range = last && row.result.low !== undefined ? spread(row.result) : '';
  const limits = kind === 'sum' || kind === 'worst';
  // A rating has no unit.
  const rating = kind === 'rating' || kind === 'built';
  return html`<tr class=${last ? 'result' : ''}>
    <th scope="row">${rich(rowWords(app, row.code))}</th>
    <td>${limits || row.form === '' ? nothing : kind === 'built' ? `of ${row.terms?.[0] ? valueShown(row.terms[0], app.ctx).figure : ''} in the laboratory` : row.form === 'mean' ? 'mean of these' : terms(app, row.form, row.terms ?? [])}${limits && row.terms?.length ? `of ${text(row.terms.at(-1), app.ctx)} allowed` : nothing}</td>
    <td class="figure">${last ? html`<b>${rich(rating ? result.replace(/\u00a0dB$/, '') : result)}</b>${range ? html` <span class="soft">${range}</span>` : nothing}` : rich(rating ? result.replace(/\u00a0dB$/, '') : result)}</td>
  </tr>`;
}

/**
 * @param {App} app
 * @param {{result: Value}} row
 */
function shortOf(app, row) {
  return text(row.result, app.ctx);
}

/**
 * The terms in their order: typed ones underlined, typical ones soft, a shared unit once behind the bracket.
 * @param {App} app
 * @param {string} form
 * @param {Value[]} values
 */
function terms(app, form, values) {
  const shownOf = values.map((v) => valueShown(v, app.ctx));
  const bracket = /\(([^)]*)\)/.exec(form);
  const inside = bracket ? [...bracket[1].matchAll(/%(\d+)/g)].map((m) => Number(m[1])) : [];
  // Once a figure of the sum itself stands there, the units are known from the rows above.
  const further = inside.some((i) => values[i]?.origin === 'computed');
  const shared =
    inside.length > 1 && inside.every((i) => shownOf[i].unit === shownOf[inside[0]].unit && values[i].origin !== 'computed') ? shownOf[inside[0]].unit : '';
  let typical = false;
  const pieces = form.split(/(%\d+)/).map((piece) => {
    const m = /^%(\d+)$/.exec(piece);
    if (!m) return shared ? piece.replace(')', `)${NBSP}${shared}`) : piece;
    const i = Number(m[1]);
    const value = values[i];
    if (!value) return '';
    const { unit } = shownOf[i];
    // A sheet's area is exact: "32 ft²".
    const figure = value.kind === 'area' && value.origin !== 'computed' ? shownOf[i].figure.replace(/\.0+$/, '') : shownOf[i].figure;
    const bare = (inside.includes(i) && (shared || further)) || value.origin === 'computed' ? '' : unit;
    typical ||= value.origin === 'typical' && value.kind !== 'area' && value.kind !== 'number' && !further;
    return html`${value.origin === 'typed' ? html`<b class="typed">${rich(figure)}</b>` : rich(figure)}${bare ? NBSP + bare : nothing}`;
  });
  return html`<span class=${typical ? 'soft' : ''}>${pieces}${typical ? ', typical' : nothing}</span>`;
}

const SOURCES = /** @type {Record<string, string>} */ ({
  typed: 'typed by you',
  invented: 'invented example',
  computed: 'computed',
  derived: 'derived',
  'common practice': 'common practice',
  'from memory': 'from memory, not looked up',
  'drywall-trade': 'four trade weight tables',
  'drywall-light': 'a trade article and a table',
  'en520-trade': 'trade table of EN 520 boards',
  'au-boards': 'comparison of makers, 2021',
  'panel-apa': 'panel association’s figures',
  'panel-trade': 'woodworkers’ weight table',
  'panel-density': 'density × thickness',
  'fc-trade': 'supplier’s table',
  'brick-trade': 'trade table of wall weights',
  'limp-trade': 'sold by weight',
  density: 'density × thickness',
  memory: 'from memory, not looked up',
  'demo-prices': 'invented example',
  'isolator-calibrated': 'steel table; stiffness calibrated',
  SSMA2022: 'steel stud table, 2022',
  common: 'common practice',
  E413: 'ASTM E413',
  ISO717: 'ISO 717-1',
  NBC2020: 'National Building Code of Canada 2020, notes to Table 9.10.3.1.-A',
  ISO12999: 'tests among our evidence; ISO 12999-1',
});

/**
 * One row a number.
 * @param {App} app
 * @param {Working} work
 */
function sources(app, work) {
  return html`<table class="sources">
    <caption class="hid">
      Where it comes from
    </caption>
    <tbody>
      ${(work.sources ?? []).map((s) => {
        const [head, said] = sourceWords(app, s);
        return html`<tr><th scope="row">${head}</th><td>${rich(said)}</td></tr>`;
      })}
    </tbody>
  </table>`;
}

/**
 * @param {App} app
 * @param {{code: string, value?: Value | null, source: string}} s
 * @returns {[unknown, string]}
 */
function sourceWords(app, { code, value, source }) {
  const [kind, rest = ''] = code.split(':');
  const from = SOURCES[source] ?? source;
  const range = value && value.low !== undefined && value.high !== undefined ? `: ${rangeOf(app, value)}` : '';
  switch (kind) {
    case 'typed':
    case 'mass':
    case 'price':
      return [html`${rich(board(app, rest))}`, `${value && kind === 'price' ? `${text(value, app.ctx)}, ` : ''}${from}${range}`];
    case 'area':
      return ['area per clip', from];
    case 'continuous':
      return [`× ${value ? value.v.toFixed(2) : ''}`, 'three equal spans, inner clip'];
    case 'rating':
      return [
        value
          ? html`${source === 'typed' ? html`<b class="typed">${valueShown(value, app.ctx).figure}</b>` : valueShown(value, app.ctx).figure}${NBSP}${valueShown(value, app.ctx).unit}`
          : 'rating',
        from,
      ];
    case 'holdsRows':
      return ['holds up to', value ? `rows ${joined(valueShown(value, app.ctx))} apart` : ''];
    case 'sheet':
      return ['area of a sheet', 'whole sheets as sold'];
    case 'method':
      return ['method', 'layers by their impedance, bridges by their number'];
    case 'spread':
      return ['spread', `${value?.v ? `${value.v} tests of ` : ''}${familyWords(rest)}`];
    case 'spread.near':
      return ['spread', `no published test of this kind; nearest ${familyWords(rest)}`];
    case 'standard':
      return ['rule', from];
    case 'built':
      return ['built', `${from}: what rooms lose to their flanks`];
    case 'screws':
      return [`screws ${value ? text(value, app.ctx) : ''} apart`, `what they cost from 125${NBSP}Hz up, in the figures already: ${from}`];
    case 'sizes':
      return ['sizes', `dressed sizes, ${from}`];
  }
  return [kind, from + range];
}

/**
 * @param {App} app
 * @param {Value} value
 */
function rangeOf(app, value) {
  const low = valueShown({ ...value, v: value.low ?? value.v, origin: 'computed' }, app.ctx);
  const high = valueShown({ ...value, v: value.high ?? value.v, origin: 'computed' }, app.ctx);
  return `${low.figure} to ${joined(high)}`;
}
