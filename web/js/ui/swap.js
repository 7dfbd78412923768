// Side by side: what else could hang in place of the edited leaf, each row
// against the reference. A tapped row opens and can be hung, with a second tap
// to be sure.

import { html, nothing } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { thumbView } from '../draw/thumb.js';
import * as edit from '../edit.js';
import { boardName, decibels, differenceOf, leafName, percent, shown, spread, text, UNKNOWN, unitOf } from '../format.js';
import { cautionWords, STATES } from '../words.js';
import { bang, mark, rich, tap } from './text.js';
import { verdict } from './verdict.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').Report} Report
 * @typedef {import('../types.d.ts').RowReport} RowReport
 * @typedef {import('../types.d.ts').Figures} Figures
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {import('../types.d.ts').Layer} Layer
 * @typedef {import('../types.d.ts').Candidate} Candidate
 * @typedef {import('../edit.js').Edit} Edit
 * @typedef {'mass' | 'cost' | 'clip' | 'bass' | 'rating' | 'leafThick' | 'stack' | 'stackCost'} Key
 */

/** What the table is sorted by; the first five are its columns. Up: the smallest first. */
const SORTS = /** @type {{key: Key, words: (report: Report) => string, up: boolean}[]} */ ([
  { key: 'mass', words: () => 'weight', up: false },
  { key: 'cost', words: () => 'cost', up: true },
  { key: 'clip', words: () => 'clip load', up: true },
  { key: 'bass', words: () => 'bass', up: false },
  { key: 'rating', words: (report) => report.ratingIs, up: false },
  { key: 'leafThick', words: () => 'thickness', up: true },
  { key: 'stack', words: () => 'weight of a stack', up: true },
  { key: 'stackCost', words: () => 'cost of a stack', up: true },
]);

/** @type {{sort: Key, up: boolean, open: string, sure: string, adding: boolean, plan: string}} */
const view = { sort: 'bass', up: false, open: '', sure: '', adding: false, plan: '' };

/** Forgets what is open, as for another plan. */
export function resetSwap() {
  Object.assign(view, { sort: 'bass', up: false, open: '', sure: '', adding: false });
}

/** @param {App} app */
export function swap(app) {
  const { report } = app;
  if (!report) return nothing;
  if (view.plan !== app.planId) {
    resetSwap();
    view.plan = app.planId;
  }
  const rows = sorted(report.rows ?? [], view.sort, view.up);
  return html`<section class="swap" aria-label="Swap">
    ${app.wide ? verdict(app, 'swap') : nothing}
    <h2 class="head"><span>Side by side</span>${sorting(app, report)}</h2>
    <table class="side">
      <caption class="hid">Other boards in place of these, each against the reference. The figures are of the leaf being edited.</caption>
      <colgroup><col class="t" /><col class="m" /><col class="c" /><col class="l" /><col class="b" /><col class="r" /></colgroup>
      <thead>
        <tr>
          <td></td>
          ${heads(report, app).map((head) => headCell(app, head))}
        </tr>
      </thead>
      ${repeat(
        rows,
        (row) => row.id,
        (row) => rowView(app, report, row),
      )}
    </table>
    ${invented(rows)} ${picks(app, report)} ${adding(app, report)}
  </section>`;
}

/**
 * The reference on top, then what is there now, then the rest by one figure; what is not known last.
 * @param {RowReport[]} rows
 * @param {Key} key
 * @param {boolean} up
 */
export function sorted(rows, key, up) {
  /** @param {RowReport} row */
  const rank = (row) => (row.is === 'reference' ? 0 : row.is === 'yours' ? 1 : 2);
  return rows
    .map((row, i) => ({ row, i }))
    .sort((a, b) => {
      const byRank = rank(a.row) - rank(b.row);
      if (byRank !== 0) return byRank;
      const [x, y] = [a.row.figures[key]?.v, b.row.figures[key]?.v];
      if (x === undefined || y === undefined) return x === y ? a.i - b.i : x === undefined ? 1 : -1;
      return (up ? x - y : y - x) || a.i - b.i;
    })
    .map(({ row }) => row);
}

/**
 * @param {App} app
 * @param {Key} key
 */
function sortBy(app, key) {
  const known = SORTS.find((sort) => sort.key === key);
  if (!known) return;
  view.up = view.sort === key ? !view.up : known.up;
  view.sort = key;
  app.render();
}

/**
 * "by bass", and by what else there is.
 * @param {App} app
 * @param {Report} report
 */
function sorting(app, report) {
  return html`<label class="sorting"
    ><span class="hid">Sorted</span
    ><select
      @change=${(/** @type {Event} */ event) => {
        const { value } = /** @type {HTMLSelectElement} */ (event.target);
        view.sort = /** @type {Key} */ (value);
        view.up = SORTS.find((sort) => sort.key === value)?.up ?? false;
        app.render();
      }}
    >
      ${SORTS.map((sort) => html`<option value=${sort.key} ?selected=${view.sort === sort.key}>by ${sort.words(report)}</option>`)}
    </select></label
  >`;
}

/**
 * @param {Report} report
 * @param {App} app
 * @returns {{key: Key, words: string, label: string}[]}
 */
function heads(report, app) {
  const of = unitOf(app.units);
  return [
    { key: 'mass', words: of.surfaceMass, label: 'weight per area' },
    { key: 'cost', words: `${report.currency}/${of.area}`, label: 'cost per area' },
    { key: 'clip', words: 'clip %', label: 'load on the worst clip' },
    { key: 'bass', words: 'bass', label: 'bass, dB' },
    { key: 'rating', words: report.ratingIs, label: report.ratingIs },
  ];
}

/**
 * @param {App} app
 * @param {{key: Key, words: string, label: string}} head
 */
function headCell(app, { key, words, label }) {
  const by = view.sort === key;
  return html`<th scope="col" aria-sort=${by ? (view.up ? 'ascending' : 'descending') : nothing}>
    <button type="button" class=${by ? 'by' : ''} aria-label="${words}, ${label}: sort" @click=${() => sortBy(app, key)}>${words}</button>
  </th>`;
}

/**
 * @param {App} app
 * @param {Report} report
 * @param {RowReport} row
 */
function rowView(app, report, row) {
  const open = view.open === row.id;
  const name = leafName(row.layers, app.units);
  const isReference = row.is === 'reference';
  // An opened row says them in whole sentences.
  const said = open ? '' : remarks(app, row);
  const toggle = () => {
    view.open = open ? '' : row.id;
    view.sure = '';
    app.render();
  };
  const is = row.is === 'reference' && report.isReference ? 'reference, yours' : row.is;
  const also = is || (report.picks?.closest === row.id ? 'closest' : report.picks?.cheapest === row.id ? 'cheapest' : '');
  const own = row.is !== '';
  return html`<tbody class="${row.is} ${open ? 'open' : ''} ${row.overClip ? 'over' : ''}" data-row=${row.id}>
    <tr class="named" @click=${toggle}>
      <td class="small" rowspan=${isReference ? 2 : said ? 4 : 3}>${thumbView(row.layers, { height: isReference ? 44 : 62, most: app.width < 344 ? 54 : 60 })}</td>
      <th scope="rowgroup" colspan="5">
        <span class="line"
          ><button type="button" class="name ${own ? 'own' : ''}" aria-expanded=${open}>${rich(name)}${also ? html` <i>${also}</i>` : nothing}</button
          ><span class="thick">${rich(text(row.figures.leafThick, app.ctx))}</span></span
        >
      </th>
    </tr>
    <tr class="is" @click=${toggle}>${cells(app, row.figures)}</tr>
    ${isReference ? nothing : html`<tr class="against" @click=${toggle}>${differences(app, row)}</tr>`}
    ${said && !isReference ? html`<tr class="said" @click=${toggle}><td colspan="5">${bang()}<span>${said}</span></td></tr>` : nothing}
    ${open ? html`<tr class="more"><td colspan="6">${more(app, report, row, name)}</td></tr>` : nothing}
  </tbody>`;
}

/**
 * The five figures.
 * @param {App} app
 * @param {Figures} f
 */
function cells(app, f) {
  return html`<td><b>${figure(app, f.mass)}</b></td>
    <td><b class=${f.cost?.origin === 'demo' ? 'demo' : ''}>${figure(app, f.cost)}</b></td>
    <td>${clip(f)}</td>
    <td><b>${f.bass ? decibels(f.bass.v) : UNKNOWN}</b></td>
    <td><b>${f.rating ? decibels(f.rating.v) : UNKNOWN}</b></td>`;
}

/**
 * Without the unit, which the head has.
 * @param {App} app
 * @param {Value | null} value
 */
function figure(app, value) {
  return value ? shown(value.kind, value.v, app.ctx).figure.replace(app.ctx.currency, '') : UNKNOWN;
}

/** @param {Figures} f */
function clip(f) {
  if (!f.clip) return UNKNOWN;
  const marked = f.load === 'over' || f.load === 'close' || f.load === 'under';
  return marked ? html`<b class="state ${f.load}">${mark(f.load)}${percent(f.clip.v)}<span class="hid"> ${STATES[f.load]}</span></b>` : percent(f.clip.v);
}

/**
 * What differs from the reference, and how the clips stand in a word.
 * @param {App} app
 * @param {RowReport} row
 */
function differences(app, { figures: f }) {
  /** @param {Value | null} v */
  const by = (v) => (v ? differenceOf(v, app.ctx, true) : '');
  const state = f.load === 'none' || f.load === '' ? '' : STATES[f.load];
  const grave = f.load === 'over' || f.load === 'close';
  return html`<td>${by(f.mass)}</td>
    <td>${by(f.cost)}</td>
    <td>${grave ? html`<b class="state ${f.load}" aria-hidden="true">${state}</b>` : state}</td>
    <td>${by(f.bass)}</td>
    <td>${by(f.rating)}</td>`;
}

/** How cautions are said inside a row. */
const IN_A_ROW = /** @type {Record<string, string>} */ ({
  'fire-board-out': 'takes fire-rated board out',
  'wood-at-face': 'wood at the room face',
  'wood-between': 'wood between boards',
});

/**
 * What a row warns of, in words.
 * @param {App} app
 * @param {RowReport} row
 */
function remarks(app, row) {
  const all = [
    row.overMass ? 'heavier' : '',
    ...(row.cautions ?? []).map((caution) => IN_A_ROW[caution.code] ?? cautionWords(caution, app.ctx).head.replace(/\.$/, '').toLowerCase()),
  ].filter(Boolean);
  return [...new Set(all)].join(', ');
}

/**
 * An opened row: the stack, and what can be done with it.
 * @param {App} app
 * @param {Report} report
 * @param {RowReport} row
 * @param {string} name
 */
function more(app, report, row, name) {
  const { figures: f, layers } = row;
  const ctx = { ...app.ctx, names: { ...app.ctx.names, ...Object.fromEntries(layers.map((layer) => [layer.board, boardName(layer, app.units)])) } };
  const sheets = layers.filter((layer) => !layer.there);
  const cautions = row.cautions ?? [];
  return html`<div class="opened">
    <p class="taps">
      ${row.is === 'yours' || (row.is === 'reference' && report.isReference) ? nothing : hang(app, report, row, name)}
      ${row.is === 'reference' ? nothing : tap('as reference', () => done(app, edit.setReference(app.plan, app.buildUp.id, plain(layers))), `as reference: ${name}`)}
      ${row.is === '' ? tap('remove', () => done(app, removed(app, report, row.id, name)), `remove ${name} from the table`) : nothing}
    </p>
    <dl class="figures">
      ${pair(sheets.length > 1 ? 'a stack, one sheet of each' : 'a sheet', html`<b>${rich(text(f.stack, app.ctx))}</b>`)}
      ${pair('and its cost', html`<b>${text(f.stackCost, app.ctx)}</b>`)}
      ${pair('thickness', html`<b>${rich(text(f.leafThick, app.ctx))}</b>`)}
      ${pair('per area', html`<b>${text(f.mass, app.ctx)}</b>`, 'spare')}
      ${pair(report.ratingIs, html`<b>${f.rating ? decibels(f.rating.v) : UNKNOWN}</b>${f.rating ? ` ${spread(f.rating)}` : nothing}${f.built ? `, built ${decibels(f.built.v)}` : nothing}`)}
      ${f.load === 'none' ? nothing : pair('on one clip', html`<b>${text(f.clipLoad, app.ctx)}</b>${report.load?.rating ? html` of ${text(report.load.rating, app.ctx)}` : nothing}`)}
    </dl>
    ${
      cautions.length
        ? html`<ul class="cautions">
            ${cautions.map((caution) => {
              const words = cautionWords(caution, ctx);
              return html`<li class="caution">${bang()}<span><b>${rich(words.head)}</b> ${rich(words.text)}</span></li>`;
            })}
          </ul>`
        : nothing
    }
    ${row.is === '' ? boards(app, report, row) : nothing}
  </div>`;
}

/** @param {string} name @param {unknown} value @param {string} [css] */
function pair(name, value, css = '') {
  return html`<div class=${css}><dt>${name}</dt><dd>${value}</dd></div>`;
}

/**
 * The boards of a candidate, to change.
 * @param {App} app
 * @param {Report} report
 * @param {RowReport} row
 */
function boards(app, report, row) {
  /** @param {Layer[]} layers @param {string} label */
  const write = (layers, label) => app.edit(changed(app, report, row.id, layers, label));
  const now = plain(row.layers);
  return html`<ul class="boards">
    ${row.layers.map((layer, i) => {
      const name = boardName(layer, app.units);
      return html`<li>
        <span class="n">${i + 1}</span><span class="name">${rich(name)}</span>
        ${tap('change', () => choose(app, `Layer ${i + 1} of the row`, (board, other) => write(now.with(i, { ...now[i], board }), `row: ${other}`)), `Change ${name} for another board`)}
        ${now.length > 1 ? tap('out', () => write(now.toSpliced(i, 1), `row: without ${name}`), `Take ${name} out of the row`) : nothing}
      </li>`;
    })}
    <li>${tap('+ board', () => choose(app, 'Another board in the row', (board, name) => write([...now, { id: `${row.id}.${now.length + 1}`, board }], `row: ${name} added`)))}</li>
  </ul>`;
}

/**
 * First tap asks, second tap does it.
 * @param {App} app
 * @param {Report} report
 * @param {RowReport} row
 * @param {string} name
 */
function hang(app, report, row, name) {
  const sure = view.sure === row.id;
  const act = () => {
    if (!sure) {
      view.sure = row.id;
      app.render();
      return;
    }
    done(app, hung(app, report, row, name));
  };
  return html`<button type="button" class=${sure ? 'solid' : 'tap'} aria-label="${sure ? 'hang it?' : 'hang it:'} ${name}" @click=${act}>${sure ? 'hang it?' : 'hang it'}</button>`;
}

/**
 * @param {App} app
 * @param {Edit} made
 */
function done(app, made) {
  view.open = '';
  view.sure = '';
  app.edit(made);
}

/**
 * The row's boards in the leaf; what hung there stays in the table.
 * @param {App} app
 * @param {Report} report
 * @param {RowReport} row
 * @param {string} name
 * @returns {Edit}
 */
export function hung(app, report, row, name) {
  const { plan, buildUp } = app;
  const made = edit.hangLayers(plan, buildUp.id, report.leaf, plain(row.layers), name);
  const mine = report.rows?.find((other) => other.is === 'yours');
  const rows = candidates(app, report);
  if (!mine || rows.some((other) => sameBoards(other.layers, mine.layers))) return made;
  return { label: made.label, plan: edit.addCandidate(made.plan, buildUp.id, rows, plain(mine.layers), '').plan };
}

/** @param {{board: string, join?: string}[]} a @param {{board: string, join?: string}[]} b */
function sameBoards(a, b) {
  return a.length === b.length && a.every((layer, i) => layer.board === b[i].board && (layer.join ?? '') === (b[i].join ?? ''));
}

/**
 * Layers as the plan has them.
 * @param {{id: string, board: string, join?: string, there?: boolean}[]} layers
 * @returns {Layer[]}
 */
function plain(layers) {
  return layers.map(({ id, board, join, there }) => {
    /** @type {Layer} */
    const layer = { id, board };
    if (join) layer.join = /** @type {import('../types.d.ts').Join} */ (join);
    if (there) layer.there = true;
    return layer;
  });
}

/**
 * The candidates as the plan has them, or as the table shows them while nobody has changed it.
 * @param {App} app
 * @param {Report} report
 * @returns {Candidate[]}
 */
function candidates(app, report) {
  return app.buildUp.compare.rows ?? (report.rows ?? []).filter((row) => row.is === '').map((row) => ({ id: row.id, layers: plain(row.layers) }));
}

/**
 * @param {App} app
 * @param {Report} report
 * @param {string} id
 * @param {Layer[]} layers
 * @param {string} label
 * @returns {Edit}
 */
function changed(app, report, id, layers, label) {
  const rows = candidates(app, report).map((row) => (row.id === id ? { id, layers: layers.map((layer, i) => ({ ...layer, id: `${id}.${i + 1}` })) } : row));
  const { plan, buildUp } = app;
  return { label, plan: { ...plan, buildUps: plan.buildUps.map((b) => (b.id === buildUp.id ? { ...b, compare: { ...b.compare, rows } } : b)) } };
}

/**
 * @param {App} app
 * @param {Report} report
 * @param {string} id
 * @param {string} name
 */
function removed(app, report, id, name) {
  return edit.removeCandidate(app.plan, app.buildUp.id, candidates(app, report), id, name);
}

/**
 * @param {App} app
 * @param {string} title
 * @param {(board: string, name: string) => void} chosen
 */
function choose(app, title, chosen) {
  app.open({ kind: 'pick', leaf: app.buildUp.compare.leaf, title, chosen });
}

/**
 * Another row: yours again to change, or of boards to pick.
 * @param {App} app
 * @param {Report} report
 */
function adding(app, report) {
  const { plan, buildUp } = app;
  /** @param {Layer[]} layers @param {string} name */
  const add = (layers, name) => {
    const made = edit.addCandidate(plan, buildUp.id, candidates(app, report), layers, name);
    view.adding = false;
    view.open = made.plan.buildUps.find((b) => b.id === buildUp.id)?.compare.rows?.at(-1)?.id ?? '';
    app.edit(made);
  };
  if (!view.adding) {
    return html`<p class="taps">
      ${tap('+ row', () => {
        view.adding = true;
        app.render();
      })}
    </p>`;
  }
  const mine = plain(report.leaves[report.leaf]?.layers ?? []);
  const layer = (/** @type {string} */ board) => ({ id: '', board });
  return html`<p class="taps">
    <span>A row of</span>
    ${tap('boards to pick', () => choose(app, 'First board of the row', (board, name) => add([layer(board)], name)))}
    ${tap('yours and a board', () => choose(app, 'Yours, and', (board, name) => add([...mine, layer(board)], `yours and ${name}`)))}
    ${mine.map((was, i) =>
      tap(mine.length > 1 ? `yours, ${i + 1} changed` : 'yours, changed', () =>
        choose(app, `Yours, with layer ${i + 1} changed for`, (board, name) => add(mine.with(i, { ...was, board }), `yours with ${name}`)),
      ),
    )}
  </p>`;
}

/** @param {RowReport[]} rows */
function invented(rows) {
  return rows.some((row) => row.figures.cost?.origin === 'demo') ? html`<p class="soft">Prices are examples until you type yours.</p>` : nothing;
}

/**
 * The rows worth naming.
 * @param {App} app
 * @param {Report} report
 */
function picks(app, report) {
  const { picks: p, rows } = report;
  if (!p) return nothing;
  const lines = [
    ['Closest without going over:', p.closest],
    ['Cheapest at the same bass:', p.cheapest],
  ].flatMap(([words, id]) => {
    const row = rows?.find((other) => other.id === id);
    return row ? [{ words, row }] : [];
  });
  if (lines.length === 0) return nothing;
  return html`<div class="picks">
    ${lines.map(
      ({ words, row }) =>
        html`<p class="say"><b>${words}</b> ${row.is === 'yours' ? 'yours.' : tap(leafName(row.layers, app.units), () => show(app, row.id))}</p>`,
    )}
  </div>`;
}

/**
 * @param {App} app
 * @param {string} id
 */
function show(app, id) {
  view.open = id;
  view.sure = '';
  app.render();
  document.querySelector(`[data-row="${CSS.escape(id)}"]`)?.scrollIntoView({ block: 'center' });
}
