// What to buy, in its first form: sheets by board, what they weigh and cost,
// and the screws of each layer.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { boardName, money, number, sheetName, text, UNKNOWN } from '../format.js';
import { counted, screwWords } from '../words.js';
import { fieldRow } from './field.js';
import { cautions } from './layers.js';
import { rich, tap } from './text.js';
import { verdict } from './verdict.js';

/** @typedef {import('./app.d.ts').App} App */

const ABOUT = ['lifting', 'short-stock', 'no-screw', 'dust', 'invented-cost'];

/** @param {App} app */
export function buy(app) {
  const { report } = app;
  if (!report) return nothing;
  const { lines, cost, mass, sheets } = report.buy;
  return html`<section class="buy" aria-label="Buy">
    ${app.wide ? verdict(app, 'buy') : nothing}
    ${
      report.area ? nothing : html`<p class="soft">How many sheets follows from how large it is. ${tap('Type its size', () => app.open({ kind: 'needs' }))}</p>`
    }
    ${
      lines?.length
        ? html`<h2 class="head">
            <span>For this ${app.surface.kind}${report.area ? html` <span class="soft">${rich(text(report.area, app.ctx))}</span>` : nothing}</span>
          </h2>
          <ul class="lines">
            ${lines.map(
              (l) => html`<li>
                <span
                  ><b>${rich(boardName({ ...l, thickness: null }, app.units))}, ${rich(sheetName(l.sheet))}</b
                  ><span class="soft"
                    >${rich(
                      [
                        l.owned > 0 ? `${counted(l.need, 'sheet')}, own ${number(l.owned)}, buy ${number(l.buy)}` : counted(l.buy, 'sheet'),
                        l.weight ? `${text(l.weight, app.ctx)} each` : '',
                      ]
                        .filter(Boolean)
                        .join(', '),
                    )}</span
                  >${l.lacking > 0 ? html`<span class="lacking">${counted(l.lacking, 'sheet')} more than there are here</span>` : nothing}</span
                ><span class="figure">${l.cost ? money(l.cost.v, app.ctx.currency) : UNKNOWN}</span>
              </li>`,
            )}
          </ul>
          <dl class="totals">
            <div><dt>All of it</dt><dd>${counted(sheets, 'sheet')}, ${text(mass, app.ctx)}</dd></div>
            <div class="grand"><dt>Before tax</dt><dd>${cost ? money(cost.v, app.ctx.currency) : 'a price is missing'}</dd></div>
          </dl>
          ${fieldRow(
            app,
            {
              key: 'plan.waste',
              what: 'percent',
              label: 'waste in cutting',
              value: app.plan.waste ?? '',
              typical: report.buy.waste && report.buy.waste.origin !== 'typed' ? number(report.buy.waste.v * 100) : '',
              unit: '%',
              set: (q) => edit.setPlan(app.plan, { waste: q || undefined }, q ? `waste ${q}` : 'usual waste'),
              mine: (fault) => fault.field === 'waste',
            },
            'Waste in cutting',
            'of the area',
          )}
          ${screws(app)}`
        : nothing
    }
    ${cautions(app, (code) => ABOUT.includes(code))}
  </section>`;
}

/** Screws of each new layer, the first to be fixed first. @param {App} app */
function screws(app) {
  const leaf = app.report?.leaves[app.report.leaf];
  const layers = (leaf?.layers ?? []).filter((y) => !y.there);
  if (!layers.some((y) => y.screw)) return nothing;
  const numbered = leaf?.layers ?? [];
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
            <td class="soft">${y.screwMax ? rich(`at most ${text(y.screwMax, app.ctx)}`) : rich(screwWords(y.screwWhy, app.units))}</td>
          </tr>`,
        )}
      </tbody>
    </table>
    <p class="soft">${orderWords(app.report)}</p>`;
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
