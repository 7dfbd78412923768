// One surface a sheet of paper: title, strip, verdict, section at scale with
// its layers, curve and octave table, what to buy, cautions, and the link.

import { html, nothing } from 'lit-html';
import { curveView, neededWords, shortWords } from '../draw/curve.js';
import { layout, sectionView } from '../draw/section.js';
import { boardName, decibels, leafName, money, NBSP, sheetName, text, UNKNOWN, valueShown } from '../format.js';
import { cautionWords, counted, gapWords, LISTENS, leafWords, PLAYS, verdictWords } from '../words.js';
import { cutsOpen } from './cuts.js';
import { orderWords } from './joists.js';
import { noteView } from './note.js';
import { clipsPaper, cutsPaper, listPaper } from './paper.js';
import { sizeWords } from './place.js';
import { roomSheet } from './print-room.js';
import { address, qrView } from './send.js';
import { stripCells } from './strip.js';
import { mark, rich } from './text.js';

/** @typedef {import('./app.d.ts').App} App */
/** @typedef {import('../types.d.ts').Report} Report */

/** Width of what is printed: A4 less a binder's margin, px of CSS. */
const WIDTH = 660;
/** Of that what the section takes, and as many cautions as the sheet has room for. */
const SECTION = 416;
const MOST = 3;
/** Nobody types a longer link from paper; the code holds it. */
const TYPED = 180;

/** @param {App} app */
export function printed(app) {
  const reports = app.printed?.reports ?? (app.report ? [app.report] : []);
  const list = app.report?.list;
  if (app.printed?.what === 'list') return cutsOpen() ? cutsPaper(app) : list ? listPaper(app, list, reports) : nothing;
  const { house, note } = app.printed ?? {};
  const whole = house && !note ? roomSheet(app, house) : nothing;
  // In Heard the room alone; with every surface it comes last.
  if (app.printed?.what === 'room') return whole;
  return [
    ...reports.map((report) =>
      app.printed?.note ? noteView(app, report) : [sheet(app, report), app.printed?.what === 'clips' ? clipsPaper(app, report) : nothing],
    ),
    whole,
  ];
}

/**
 * @param {App} app
 * @param {Report} report
 */
function sheet(app, report) {
  const ctx = { ...app.ctx, report };
  const words = verdictWords(report.verdicts.layers, ctx);
  const { plan } = app;
  const surface = plan.surfaces.find((s) => s.id === report.surface) ?? app.surface;
  const drawn = { units: app.units, width: SECTION, mode: /** @type {const} */ ('print'), plan };
  const size = [sizeWords(app, surface), report.area && surface.width ? text(report.area, ctx) : ''].filter(Boolean).join(', ');
  const n = plan.surfaces.findIndex((s) => s.id === surface.id) + 1;
  return html`<article class="paper">
    <header>
      <h1>${plan.name}${surface.name ? `, ${surface.name}` : ''}${surface.beyond ? html` <i>to the ${surface.beyond}</i>` : nothing}</h1>
      <p class="soft">${plan.surfaces.length > 1 ? `sheet ${n} of ${plan.surfaces.length}` : nothing}</p>
    </header>
    <p class="soft under">
      ${size ? `${size}. ` : nothing}Printed ${new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })}.
      ${report.isReference ? nothing : html`Reference: ${rich(leafName(report.refLayers, app.units))}, everything else the same.`}
    </p>
    <section class="strip">
      ${stripCells(report, app.units).map(
        (c) => html`<div class="cell ${c.key}">
          <span class="first">${c.before ? `${c.before} ` : nothing}<b class="figure">${rich(c.figure)}</b> ${c.unit}</span>
          <span class="second">${c.state ? html`${mark(c.state)}<b class="state ${c.state}">${c.word}</b>` : nothing}${rich(c.second)}</span>
        </div>`,
      )}
    </section>
    <p class="verdict">${words ? html`<b>${words.answer} ${rich(words.text)}</b>` : nothing} ${laboratory(report)}</p>
    <div class="two detail">
      <figure>
        ${sectionView(report, drawn)}
        <figcaption class="soft">Plan section, drawn at 1${NBSP}:${NBSP}${layout(report, drawn).ratio}</figcaption>
      </figure>
      <div>
        <h2>Build-up, from the room</h2>
        ${layerTable(app, report)}
        <p class="soft note">${orderWords(report)}</p>
      </div>
    </div>
    ${
      report.sound
        ? html`<section class="stops">
          <h2>How much it stops <span class="soft">${report.ratingIs === 'Rw' ? 'sound reduction index' : 'transmission loss'}, dB; the band is the likely range</span></h2>
          ${curveView(report.sound, { width: WIDTH, mode: 'print', ratingIs: report.ratingIs, isReference: report.isReference })} ${octaves(report)}
        </section>`
        : nothing
    }
    <div class="two last">
      <div>
        <h2>Buy for this ${surface.kind}</h2>
        ${shopping(app, report, surface.kind)}
      </div>
      <div>
        <h2>Before you close it</h2>
        ${(report.cautions ?? []).slice(0, MOST).map((c) => {
          const said = cautionWords(c, ctx);
          return html`<p class="caution"><b>! ${rich(said.head)}</b> ${rich(said.text)}</p>`;
        })}
        ${(report.cautions?.length ?? 0) > MOST ? html`<p class="caution soft">and ${(report.cautions?.length ?? 0) - MOST} more on the screen.</p>` : nothing}
      </div>
    </div>
    <footer>
      ${app.printed?.qr ? qrView(app.printed.qr, 90) : nothing}
      <p class="soft">
        ${
          app.printed?.link
            ? html`Scan to open this plan, offline too once the page has been visited.<br />${
                address(app.printed.link).length > TYPED ? nothing : html`<span class="link">${address(app.printed.link)}</span><br />`
              }`
            : nothing
        }Predicted, not measured. Typical values of table ${plan.table}; underlined was typed. Not for structural or fire approval.
      </p>
    </footer>
  </article>`;
}

/** @param {Report} report */
function laboratory(report) {
  const { rating, built } = report.yours;
  if (!rating || !built) return '';
  const by = rating.low !== undefined && rating.high !== undefined ? ` ±${decibels((rating.high - rating.low) / 2)}` : '';
  return `Laboratory ${report.ratingIs}${NBSP}${decibels(rating.v)}${by}; a built room is likely to reach ${decibels(built.v)}.`;
}

/**
 * @param {App} app
 * @param {Report} report
 */
function layerTable(app, report) {
  const [mass, length] = app.units === 'us' ? ['lb', 'in'] : ['kg', 'mm'];
  const { leaves, gaps, leaf: edited } = report;
  return html`<table>
      <thead>
        <tr><th scope="col">layer</th><th scope="col">${mass}</th><th scope="col">screw, ${length}</th></tr>
      </thead>
      <tbody>
        ${leaves.map((leaf, i) => {
          const gap = gaps[i] ? gapWords(gaps[i], app.ctx) : undefined;
          const held = gaps[i]?.near.rating && gaps[i].near.kind === 'clip' ? `, rated ${text(gaps[i].near.rating, app.ctx)}` : '';
          return html`${
            i === edited || !leaf.there
              ? leaf.layers.map(
                  (y, k) => html`<tr>
                  <td>${i === edited ? `${k + 1} ` : nothing}${rich(boardName(y, app.units))}${y.there ? ', there already' : nothing}</td>
                  <td>
                    ${
                      y.weight
                        ? y.weight.origin === 'typed'
                          ? html`<b class="typed">${valueShown(y.weight, app.ctx).figure}</b>`
                          : valueShown(y.weight, app.ctx).figure
                        : UNKNOWN
                    }
                  </td>
                  <td>${y.screw && !y.there ? rich(valueShown(y.screw, app.ctx).figure) : nothing}</td>
                </tr>`,
                )
              : html`<tr><td colspan="3">${leafWords(i, leaves.length)}: ${rich(leaf.layers.map((y) => boardName(y, app.units)).join(', '))}, there already</td></tr>`
          }
          ${gap ? html`<tr><td colspan="3">Gap: ${rich(gap.held)}${held}</td></tr><tr><td colspan="3">${rich(gap.frame)}</td></tr>` : nothing}`;
        })}
      </tbody>
    </table>`;
}

/** @param {Report} report */
function octaves(report) {
  const list = report.sound?.octaves ?? [];
  const need = report.sound?.need;
  return html`<table class="octaves">
    <thead>
      <tr><th scope="row">octave, Hz</th>${list.map((o) => html`<th scope="col">${o.hz >= 1000 ? `${Math.round(o.hz / 1000)}${NBSP}k` : Math.round(o.hz)}</th>`)}</tr>
    </thead>
    <tbody>
      <tr><th scope="row">yours</th>${list.map((o) => html`<td>${decibels(o.tl)}${NBSP}±${decibels(o.spread)}</td>`)}</tr>
      ${
        need
          ? html`<tr><th scope="row">needed: ${PLAYS[need.source] ?? need.source} to ${LISTENS[need.listener] ?? need.listener}</th>${need.octaves.map((o) => html`<td>${neededWords(o.need)}</td>`)}</tr>
              <tr><th scope="row">short by</th>${need.octaves.map((o) => html`<td><b>${shortWords(o)}</b></td>`)}</tr>`
          : nothing
      }
      ${report.isReference ? nothing : html`<tr><th scope="row">reference</th>${list.map((o) => html`<td>${decibels(o.ref)}</td>`)}</tr>`}
    </tbody>
  </table>`;
}

/**
 * @param {App} app
 * @param {Report} report
 * @param {string} kind of surface
 */
function shopping(app, report, kind) {
  const { lines, cost, mass, screws } = report.buy;
  if (!lines?.length) return html`<p class="soft">Without the size of the ${kind} there is no list.</p>`;
  return html`<table class="shopping">
    <tbody>
      ${lines.map(
        (l) => html`<tr>
          <td><span class="box"></span>${rich(boardName({ ...l, thickness: null }, app.units))}, ${rich(sheetName(l.sheet).replace(/ ft$/, ''))}</td>
          <td>${counted(l.buy, 'sheet')}</td>
          <td>${l.cost ? money(l.cost.v, app.ctx.currency) : UNKNOWN}</td>
        </tr>`,
      )}
      ${
        screws?.length
          ? html`<tr><td colspan="3"><span class="box"></span>Screws ${rich(screws.map((s) => valueShown(s, app.ctx).figure).join(', '))} ${app.units === 'us' ? 'in' : 'mm'}</td></tr>`
          : nothing
      }
      <tr class="grand"><td>before tax</td><td>${text(mass, app.ctx)}</td><td>${cost ? money(cost.v, app.ctx.currency) : UNKNOWN}</td></tr>
    </tbody>
  </table>`;
}
