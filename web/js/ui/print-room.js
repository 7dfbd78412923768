// The sheet of the whole room: it unfolded, who hears what, the ways out.

import { html, nothing } from 'lit-html';
import { levelRows } from '../draw/levels.js';
import { unfoldedView } from '../draw/unfolded.js';
import { decibels, NBSP, percent } from '../format.js';
import {
  airWords,
  criterion,
  gain,
  heardNotes,
  letterOf,
  likeWords,
  outWords,
  shapeWords,
  soundName,
  stateShort,
  tellPlan,
  wayWords,
  weakWords,
} from '../words-room.js';
import { rich } from './text.js';
import { ranked } from './ways.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-room.d.ts').House} House
 */

/** Of the sheet's width what the drawing takes, px, and as many ways as fit beside it. */
const DRAWN = 280;
const WAYS = 8;

/**
 * @param {App} app
 * @param {House} house
 */
export function roomSheet(app, house) {
  tellPlan(house, app.plan);
  const words = outWords(house);
  const weak = weakWords(house);
  const { told } = house;
  const worst = [...(told.out ?? [])].filter((h) => h.target > 0).sort((a, b) => b.overA - a.overA)[0];
  const use = app.plan.room ?? {};
  return html`<article class="paper">
    <header>
      <h1>${app.plan.name} <i>whole room</i></h1>
    </header>
    <p class="verdict">${words ? html`<b>${words.answer} ${rich(words.text)}</b>` : nothing} ${weak && told.paths?.length ? `${weak.answer} ${weak.text}` : nothing}</p>
    <div class="two whole">
      <figure>${told.shape.known ? unfoldedView(house, { width: DRAWN, most: 300, units: app.units, selected: -1 }) : nothing}</figure>
      <div>
        <h2>Who hears what</h2>
        <table>
          <thead><tr><th scope="col">space</th><th scope="col">dBA</th><th scope="col">dBC</th><th scope="col">target</th><th scope="col"></th></tr></thead>
          <tbody>
            ${(told.out ?? []).map((h) => html`<tr><td>${house.spaces?.[h.space]}: ${likeWords(house, h)}</td><td>${decibels(h.a)}${NBSP}±${decibels(h.spreadA)}</td><td>${decibels(h.c)}${NBSP}±${decibels(h.spreadC)}</td><td>${h.target ? decibels(h.target) : '–'}</td><td><b>${stateShort(h)}</b></td></tr>`)}
            ${(told.in ?? []).map((h) => html`<tr><td>in here, ${soundName(h.source)}: ${likeWords(house, h)}</td><td>${decibels(h.a)}${NBSP}±${decibels(h.spreadA)}</td><td>${decibels(h.c)}${NBSP}±${decibels(h.spreadC)}</td><td>${decibels(h.target)}</td><td><b>${stateShort(h)}</b></td></tr>`)}
          </tbody>
        </table>
        <h2>Ways out</h2>
        <table>
          <thead><tr><th scope="col">way</th><th scope="col">share</th><th scope="col">perfect</th></tr></thead>
          <tbody>
            ${ranked(house, -1)
              .rows.slice(0, WAYS)
              .map(({ path, share, perfect }) => {
                const face = house.faces?.[path.surface];
                return html`<tr><td>${face ? `${letterOf(face)} ` : nothing}${rich(wayWords(house, path))}</td><td>${percent(share)}${NBSP}%</td><td>${gain(perfect)}${NBSP}dB</td></tr>`;
              })}
          </tbody>
        </table>
      </div>
    </div>
    ${
      worst
        ? html`<section class="stops">
            <h2>In the ${house.spaces?.[worst.space]} <span class="soft">${criterion(worst)}; means, peaks stand 10${NBSP}dB over them</span></h2>
            ${levelRows(worst)} ${heardNotes(house, worst, false).map((note) => html`<p class="note soft">${note}</p>`)}
          </section>`
        : nothing
    }
    <section class="stops">
      <h2>The room</h2>
      <p>${told.shape.known ? shapeWords(told.shape, app.ctx).join(' ') : 'Its size was not said.'}</p>
      ${use.people ? html`<p>${airWords(told.air, app.ctx, { people: Number(use.people), minutes: Number(use.minutes || 60) }).text}</p>` : nothing}
    </section>
    <footer><p class="soft">Predicted, not measured; through the air and by the structure where it was said. Not for structural or fire approval.</p></footer>
  </article>`;
}
