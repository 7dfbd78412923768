// The list, the layouts and the cuts on paper: the list with its boxes to tick
// and the order of work, then every face with its clips; or every layer with its pieces.

import { html, nothing } from 'lit-html';
import { clipsView } from '../draw/clips.js';
import { faceView, sheetView } from '../draw/cut.js';
import { inSentence, joined, money, NBSP, number, shown, typed } from '../format.js';
import { STATES } from '../words.js';
import { amountWords, buyVerdict, capital, forgotWords, inWordsTh, itemName, loadVerdict, nameOfBoard, stepSaid, takeoffNote } from '../words-buy.js';
import { rowsTable } from './clips.js';
import { cutForPaper } from './cuts.js';
import { screwsPart } from './joists.js';
import { FORGOT, gotOf, stillToGet } from './list.js';
import { stepKey } from './steps.js';
import { mark, rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').Report} Report
 * @typedef {import('../types-buy.d.ts').ListReport} ListReport
 */

const WIDTH = 660;
const HALF = 320;
const THIRD = 210;

/** @param {App} app @param {string} what */
function head(app, what) {
  return html`<header>
    <h1>${app.plan.name}<i> ${what}</i></h1>
    <p class="soft">${new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })}</p>
  </header>`;
}

/** @param {string} words */
function foot(words) {
  return html`<footer><p class="soft">${words}</p></footer>`;
}

/**
 * The list and the order of work on one sheet, the faces on the next.
 * @param {App} app
 * @param {ListReport} list
 * @param {Report[]} reports with their layouts
 */
export function listPaper(app, list, reports) {
  const { currency } = app.ctx;
  const { bill } = list;
  const payload = app.plan.buying?.payload;
  const said = buyVerdict(list, app.ctx, payload ? joined(typed(payload)) : '');
  const box = (/** @type {boolean} */ on) => html`<span class="box ${on ? 'on' : ''}">${on ? '✓' : nothing}</span>`;
  const sum = (/** @type {string} */ name, /** @type {number} */ v, css = '') =>
    html`<tr class=${css}><td colspan="2">${name}</td><td>${money(v, currency)}</td></tr>`;
  const laid = reports.filter((r) => r.layout?.layout);
  const forgot = (list.forgot ?? []).filter((n) => !app.ticks.has(FORGOT + n.code));
  return html`<article class="paper list-paper">
      ${head(app, 'to buy')}
      <p class="verdict"><b>${said.answer}</b> ${rich(said.text)}</p>
      <table class="shopping">
        <tbody>
          ${(list.items ?? []).map((line) => {
            const { got, more } = gotOf(app, line);
            return html`<tr>
              <td>${box(got && !more)}${rich(itemName(line.item, list, app.ctx))}</td><td>${rich(amountWords(line.item, app.ctx))}${more ? `, ${number(more)} more` : nothing}</td
              ><td>${line.item.priced ? money(line.item.cost, currency) : ''}</td>
            </tr>`;
          })}
          ${[...app.ticks.entries()]
            .filter(([key]) => key.startsWith(FORGOT))
            .map(
              ([key, on]) =>
                html`<tr><td>${box(on === 1)}${capital(forgotWords({ code: key.slice(FORGOT.length), face: '', layer: -1, board: '', args: null }))}</td><td></td><td></td></tr>`,
            )}
          ${bill.contingency > 0 ? sum('goods', bill.goods) : nothing} ${bill.contingency > 0 ? sum('reserve', bill.contingency) : nothing}
          ${sum('before tax', bill.beforeTax, 'grand')} ${bill.tax > 0 ? [sum('tax', bill.tax), sum('in all', bill.total)] : nothing}
          ${app.ticks.size ? sum('still to get, before tax', stillToGet(app, list)) : nothing}
        </tbody>
      </table>
      ${forgot.length ? html`<p><span class="soft">Often forgotten:</span> ${forgot.map(forgotWords).join(', ')}.</p>` : nothing}
      <p>${[
        ...(list.trips ?? []).map(
          (t, i) =>
            `Trip ${i + 1}: ${(t.rows ?? []).map((r) => `${number(r.count)} ${inSentence(nameOfBoard(list.names?.[r.of], r.of, app.ctx))}`).join(', ')}, ${joined(shown('mass', t.mass, app.ctx))}.`,
        ),
      ].map((words) => html`${rich(words)} `)}</p>
      <h2>Order of work</h2>
      <ul class="order">
        ${(list.steps ?? []).map((s) => {
          const words = stepSaid(s, list.faces, app.ctx);
          return html`<li>${box(Boolean(app.ticks.get(stepKey(s))))}${s.hold ? html`<b>Hold.</b> ` : nothing}${rich(words.head)}</li>`;
        })}
      </ul>
      ${foot('Quantities by the cut layout and the layout of clips. Wiring and gas by licensed people; fire, structure and escape by your building department. Nothing after a hold is begun before it is done.')}
    </article>
    ${
      laid.length
        ? html`<article class="paper">
            ${head(app, 'clips')}
            <div class="faces">${laid.map((r) => facePaper(app, r, HALF))}</div>
            ${foot(`${key()} % of the rating beside each clip. Running dimensions from one corner.`)}
          </article>`
        : nothing
    }`;
}

function key() {
  return `Over ▲, close ■, holds ●, under ▽.`;
}

/** @param {App} app @param {Report} report @param {number} width */
function facePaper(app, report, width) {
  const layout = /** @type {import('../types-buy.d.ts').LayoutReport} */ (report.layout);
  const surface = app.plan.surfaces.find((s) => s.id === report.surface);
  const c = layout.layout?.count;
  return html`<figure>
    <h2>${surface?.name || surface?.kind} <span class="soft">${layout.layout?.spots?.length} clips</span></h2>
    ${clipsView(layout, { units: app.units, width, mode: 'print', tall: width * 0.8, hung: layout.hung ?? [] })}
    <figcaption class="soft">${
      c
        ? ['over', 'close', 'under']
            .map((s) => (c[/** @type {'over'} */ (s)] ? `${number(c[/** @type {'over'} */ (s)])} ${STATES[s]}` : ''))
            .filter(Boolean)
            .join(', ') || 'all hold'
        : nothing
    }</figcaption>
  </figure>`;
}

/**
 * One surface's clips: the face as wide as the paper, and every row in figures.
 * @param {App} app
 * @param {Report} report
 */
export function clipsPaper(app, report) {
  const layout = report.layout;
  if (!layout?.layout) return nothing;
  const ctx = { ...app.ctx, report };
  const surface = app.plan.surfaces.find((s) => s.id === report.surface);
  const said = loadVerdict(layout, ctx);
  const { count } = layout.layout;
  return html`<article class="paper">
    ${head(app, `${surface?.name ?? ''}, clips`)}
    <p class="verdict"><b>${said?.answer}</b> ${rich(said?.text ?? '')}</p>
    ${clipsView(layout, { units: app.units, width: WIDTH, mode: 'print', tall: 430, hung: layout.hung ?? [] })}
    <p class="keys">${['over', 'close', 'holds', 'under'].map((s) => html`<span>${mark(s)}<b>${number(count[/** @type {'over'} */ (s)])}</b> ${STATES[s]}</span> `)}</p>
    ${(layout.hung ?? []).length ? html`<p>${(layout.hung ?? []).map((h, i) => html`${i + 1} ${h.name || 'load'}, ${h.mass ? joined(shown('mass', h.mass.v, ctx)) : ''}. `)}</p>` : nothing}
    ${rowsTable(app, layout)} ${report.surface === app.report?.surface ? screwsPart(app) : nothing}
    ${foot('Shear on a wall, pull on a ceiling: against the rating typed for that direction, by the maker’s sheet. A check, not a design: an engineer decides what a structure may carry.')}
  </article>`;
}

/** Every layer with its pieces, then every sheet. @param {App} app */
export function cutsPaper(app) {
  const report = cutForPaper(app);
  const cut = report?.cut;
  if (!report || !cut?.hung?.length) return nothing;
  const faceOf = (/** @type {string} */ id) => report.faces?.find((f) => f.id === id);
  return html`<article class="paper">
      ${head(app, 'cuts')}
      <div class="faces">
        ${cut.hung.map((h) => {
          const face = faceOf(h.face);
          const upward = app.plan.surfaces.find((s) => s.id === face?.surface)?.kind === 'wall';
          return face
            ? html`<figure>
                <h2>${h.order + 1}. ${face.name}, ${inWordsTh(h.layer)} layer <span class="soft">${rich(inSentence(nameOfBoard(report.names?.[h.board], h.board, app.ctx)))}</span></h2>
                ${faceView(cut, h, { ...face, openings: null }, upward, { units: app.units, width: HALF, mode: 'print', tall: HALF * 0.72, lines: face.lines ?? [], upright: face.upright })}
              </figure>`
            : nothing;
        })}
      </div>
    </article>
    <article class="paper">
      ${head(app, 'sheets')}
      <div class="faces three">
        ${(cut.sheets ?? []).map(
          (s, i) => html`<figure>
            <h2>Sheet ${s.no} <span class="soft">${rich(inSentence(nameOfBoard(report.names?.[s.board], s.board, app.ctx)))}</span></h2>
            ${sheetView(cut, i, { units: app.units, width: THIRD, mode: 'print' })}
          </figure>`,
        )}
      </div>
      ${(cut.notes ?? []).map((n) => {
        const words = takeoffNote(n, report.names, report.faces, app.ctx);
        return html`<p><b>${words.head}</b> ${rich(words.text)}</p>`;
      })}
      ${foot(`${app.units === 'us' ? 'Inches' : 'Millimetres'}, running from one corner. Measure the room before cutting: walls are seldom square.${NBSP}`)}
    </article>`;
}
