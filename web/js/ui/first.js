// The first minute: a wall with true numbers, one lit field, and four doors.

import { html, nothing } from 'lit-html';
import { sectionView } from '../draw/section.js';
import { boardName, sheetName } from '../format.js';
import { fillWords, frameWords, leafWords } from '../words.js';
import { faultOf, faultText, field } from './field.js';
import { makeRoom } from './house.js';
import { weightSpec } from './shelf.js';
import { rich } from './text.js';
import { verdict } from './verdict.js';

/** @typedef {import('./app.d.ts').App} App */

/** @param {App} app */
export function first(app) {
  const { report } = app;
  const layer = report?.leaves[report.leaf]?.layers[0];
  if (!report || !layer) return nothing;
  const spec = weightSpec(app, layer, true);
  // Said where there is room for it.
  const typical = layer.weight?.origin === 'typed' ? '' : ', typical';
  const touched = app.history.steps.length > 1;
  return html`<div class="welcome">
    ${touched ? verdict(app, 'layers') : nothing}
    <div class="drawing-place">
      ${sectionView(report, { units: app.units, width: app.width, mode: 'first', plan: app.plan, selected: layer.id })}
    </div>
    <p class="soft caption">${rich(caption(app))}</p>
    <div class="lit-field">
      ${faultOf(app, spec) ? faultText(app, spec) : html`<label class="question" for="f-${spec.key}">What does your tag say?</label>`}
      <div class="fields">
        ${field(app, spec)}
        <p class="soft">${rich(boardName(layer, app.units, 'brief') + (app.units === 'si' ? typical : ''))}<br />${rich(sheetName(layer.sheet) + (app.units === 'us' ? typical : ''))}</p>
      </div>
    </div>
    <nav class="doors" aria-label="Where to begin">
      ${door('Swap a board', 'mine is out of stock', () => app.go('swap'))}
      ${door('Check one wall', 'boards, clips, bass', () => app.go('layers'))}
      ${door('Plan a room', 'yours: sizes, six faces', () => makeRoom(app))}
      ${door('See a room', 'an example, six faces', () => app.newPlan('demo', 'layers'))}
    </nav>
    <p class="soft foot">Predictions, not measurements. ${app.offline ? 'Works with no signal. ' : ''}Nothing leaves this ${app.wide ? 'computer' : 'phone'}.</p>
  </div>`;
}

/**
 * The wall in one line: "Two layers of 5/8 type X on clips, 2×4 studs, wool."
 * @param {App} app
 */
function caption(app) {
  const { report } = app;
  const leaf = report?.leaves[report.leaf];
  const gap = report?.gaps[0];
  if (!report || !leaf || !gap) return '';
  const count = leaf.layers.length;
  const same = leaf.layers.every((y) => y.board === leaf.layers[0].board);
  const boards = same
    ? `${['No', 'One layer', 'Two layers', 'Three layers'][count] ?? `${count} layers`} of ${boardName(leaf.layers[0], app.units, 'brief')}`
    : leafWords(report.leaf, report.leaves.length);
  const held = gap.near.kind === 'clip' ? ' on clips' : gap.near.kind === 'channel' ? ' on channel' : '';
  return `${boards}${held}, ${[frameWords(gap, app.units), fillWords(gap.fillName)].filter(Boolean).join(', ')}.`;
}

/**
 * @param {string} name
 * @param {string} words
 * @param {() => void} act
 */
function door(name, words, act) {
  return html`<button type="button" class="door" @click=${act}>
    <b>${name}</b><span class="soft">${words}</span><svg viewBox="0 0 12 18" width="12" height="18" aria-hidden="true"><path d="M2 1.5 10 9l-8 7.5" /></svg>
  </button>`;
}
