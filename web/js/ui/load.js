// Whether what it hangs from holds it: every clip on its face, what each of them
// carries, the channel, the joists, and the screws.

import { html, nothing } from 'lit-html';
import { clipView } from '../draw/clip.js';
import { text } from '../format.js';
import { bothWays, clipsPart, rowsTable, rulesPart } from './clips.js';
import { fieldRow } from './field.js';
import { ratingSpec } from './gap.js';
import { channelPart, joistsPart, notes, screwsPart, springPart } from './joists.js';
import { cautions } from './layers.js';
import { holder } from './mend.js';
import { rich, tap } from './text.js';
import { verdict } from './verdict.js';
import { holding } from './worked.js';

/** @typedef {import('./app.d.ts').App} App */

const ABOUT = ['rating-invented', 'channel-boards', 'truss-chord', 'masonry-on-floor', 'poured-floor'];
/** Said of one clip where the clips are not laid out. */
const OF_ONE = ['over-rating', 'close-to-rating', 'under-load', 'no-rating', 'ceiling-dead-load'];

/**
 * @param {App} app
 * @param {number} [width]
 */
export function load(app, width = app.width) {
  const { report } = app;
  if (!report) return nothing;
  const { layout } = report;
  const laid = layout?.layout ?? layout?.fault;
  const held = holding(app);
  return html`<section class="load" aria-label="Load">
    ${app.wide ? verdict(app, 'load') : nothing}
    ${
      layout && laid
        ? html`${clipsPart(app, layout, width)} ${rating(app)} ${notes(app, layout.layout?.notes)}
          ${cautions(app, (code) => ABOUT.includes(code) || (!layout.joists && code === 'ceiling-dead-load'))} ${rulesPart(app, layout)}
          <details class="fold" open><summary>Every row and clip</summary>${rowsTable(app, layout)}</details>
          <details class="fold"><summary>How this was worked out</summary>${bothWays(app, layout)}
            <h3 class="head">One inner clip</h3>${sum(app)}</details>
          ${channelPart(app, layout)} ${joistsPart(app, layout)} ${springPart(app, layout)} ${screwsPart(app, layout)}`
        : held && report.load
          ? html`<div class="drawing-place">
                ${clipView({ units: app.units, width, rows: held.rows?.v, along: held.along?.v, mode: app.wide ? 'desk' : 'phone', state: report.load.state })}
              </div>
              <p class="soft under-drawing">${report.area ? 'one inner clip' : html`one inner clip; the size of the ${app.surface.kind} lays them all out. ${tap('Type its size', () => app.open({ kind: 'needs' }))}`}</p>
              ${sum(app)} ${rating(app)} ${cautions(app, (code) => ABOUT.includes(code) || OF_ONE.includes(code))}
              ${layout ? joistsPart(app, layout) : nothing} ${screwsPart(app, layout)}`
          : html`<p class="soft">${onChannel(app) ? 'No clips hold this leaf: the channel itself is screwed to every stud or joist, and nothing here has a rating.' : 'No clips hold this leaf: it stands on its frame, and nothing here can be over its rating.'}</p>
              ${cautions(app, (code) => ABOUT.includes(code) || code === 'ceiling-dead-load')} ${layout ? joistsPart(app, layout) : nothing}
              ${screwsPart(app, layout)}`
    }
  </section>`;
}

/** Whether the leaf hangs on resilient channel alone. @param {App} app */
function onChannel(app) {
  const at = holder(app);
  return app.report?.gaps.find((g) => g.id === at?.id)?.[at?.side ?? 'near'].kind === 'channel';
}

/** @param {App} app */
function sum(app) {
  const l = app.report?.load;
  const held = holding(app);
  if (!l) return nothing;
  const rows = /** @type {[string, string, import('../types.d.ts').Value | null | undefined][]} */ ([
    ['area', held?.rows && held.along ? `${text(held.rows, app.ctx)} × ${text(held.along, app.ctx)}` : '', l.area],
    ['boards', '', l.boards],
    ['channel', '', l.channel],
    ['fill on it', '', l.fill],
    ['hung on it', '', l.extra],
    ['own area', '', l.own],
    ['on the clip', 'channel runs through', l.onClip],
  ]);
  return html`<table class="sum">
    <caption class="hid">
      What one clip carries
    </caption>
    <tbody>
      ${rows.map(([name, how, value]) =>
        value
          ? html`<tr><th scope="row">${name}</th><td class="soft">${rich(how)}</td><td class="figure">${rich(text({ ...value, origin: 'computed' }, app.ctx))}</td></tr>`
          : nothing,
      )}
      ${
        l.share
          ? html`<tr class="result"><th scope="row">of its rating</th><td class="soft">${rich(text(l.rating, app.ctx))}</td><td class="figure"><b>${text(l.share, app.ctx)}</b></td></tr>`
          : nothing
      }
    </tbody>
  </table>`;
}

/** @param {App} app */
function rating(app) {
  const at = holder(app);
  const gap = app.buildUp.gaps?.find((g) => g.id === at?.id);
  const kind = app.report?.gaps.find((g) => g.id === at?.id)?.[at?.side ?? 'near'].kind;
  if (!at || !gap || kind !== 'clip') return nothing;
  return fieldRow(
    app,
    ratingSpec(app, gap, at.side, holding(app)?.rating),
    'A clip is rated',
    app.surface.kind === 'ceiling' ? 'pulled, by the maker’s sheet' : 'across, by the maker’s sheet',
  );
}
