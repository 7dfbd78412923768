// The menu: undo and redo, the plans kept here, files, region, units, theme,
// print, and about the numbers.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { redoLabel, undoLabel } from '../state.js';
import { counted, REGIONS } from '../words.js';
import { chips, choice } from './field.js';
import { printNote } from './note.js';
import { panel } from './panel.js';
import { words } from './place.js';
import { rich, tap } from './text.js';

/** @typedef {import('./app.d.ts').App} App */

/** @param {App} app */
export function menu(app) {
  const undo = undoLabel(app.history);
  const redo = redoLabel(app.history);
  return panel(
    app,
    'Menu',
    html`<ul class="plain-list">
        ${item('Undo', undo, () => app.undo(), !undo)} ${item('Redo', redo, () => app.redo(), !redo)}
        ${item('Plans', `${app.plans.length} kept here`, () => app.open({ kind: 'plans' }))}
        ${item('Send', 'link, words, file, square code', () => app.open({ kind: 'send' }))}
        ${item('Print', `this ${app.surface.kind}, one sheet`, () => app.print())}
        ${app.plan.surfaces.length > 1 ? item('Print all', counted(app.plan.surfaces.length, 'sheet'), () => app.print(true)) : nothing}
        ${item('Calculation note', 'method, bands, sources, limits', () => printNote(app))}
        ${item('About the numbers', '', () => app.open({ kind: 'about' }))}
      </ul>
      <h3 class="head part">This plan</h3>
      ${words(app, 'Called', 'plan', app.plan.name, (name) => edit.setPlan(app.plan, { name: name || 'A wall' }, `called ${name}`))}
      ${choice(
        'Region',
        Object.entries(REGIONS).map(([value, name]) => ({ value, words: name })),
        app.plan.region,
        (value) => app.setRegion(/** @type {import('../types.d.ts').Region} */ (value)),
      )}
      <p class="label">Units</p>
      ${chips(
        'Units',
        /** @type {{value: import('../types.d.ts').Units, words: string}[]} */ ([
          { value: 'us', words: 'inches, pounds' },
          { value: 'si', words: 'mm, kg' },
        ]),
        app.plan.units,
        (units) => app.edit(edit.setPlan(app.plan, { units }, units === 'us' ? 'inches and pounds' : 'millimetres and kilograms')),
      )}
      <p class="label">Prices that you have not typed</p>
      ${chips(
        'Prices that you have not typed',
        [
          { value: 'demo', words: 'invented examples' },
          { value: '', words: 'none' },
        ],
        app.plan.prices ?? '',
        (prices) => app.edit(edit.setPlan(app.plan, { prices: /** @type {'' | 'demo'} */ (prices) }, prices ? 'example prices' : 'no example prices')),
      )}
      <h3 class="head part">This page</h3>
      <p class="label">Theme</p>
      ${chips(
        'Theme',
        [
          { value: '', words: 'as the system' },
          { value: 'light', words: 'light' },
          { value: 'dark', words: 'dark' },
        ],
        app.theme,
        (theme) => app.setTheme(theme),
      )}
      <p class="soft">${app.offline ? 'This page is kept here and works with no signal.' : 'With a signal once, this page is kept for places without one.'}</p>`,
  );
}

/**
 * @param {string} name
 * @param {string} second
 * @param {() => void} act
 * @param {boolean} [off]
 */
function item(name, second, act, off = false) {
  return html`<li>
    <button type="button" class="pick-row" ?disabled=${off} @click=${act}><b>${name}</b><span class="soft">${rich(second)}</span></button>
  </li>`;
}

/** @param {App} app */
export function plans(app) {
  return panel(
    app,
    'Plans',
    html`<ul class="plain-list plans">
        ${app.plans.map(
          (entry) => html`<li class=${entry.id === app.planId ? 'here' : ''}>
            <button type="button" class="pick-row" aria-current=${entry.id === app.planId} @click=${() => app.openPlan(entry.id)}>
              <b class="serif">${entry.name}</b><span class="soft">${entry.id === app.planId ? 'open' : day(entry.opened)}</span>
            </button>
            ${tap(app.panelData === entry.id ? 'remove it?' : 'remove', () => removing(app, entry.id), `Remove the plan ${entry.name}${app.panelData === entry.id ? ', sure' : ''}`)}
          </li>`,
        )}
      </ul>
      <p class="taps">
        ${tap('New wall', () => app.newPlan('first', 'layers'))} ${tap('Example room', () => app.newPlan('demo', 'layers'))} ${tap('Save as a file', () => app.saveFile())}
      </p>
      <div class="frow">
        <label for="open-file">Open a file</label>
        <input
          id="open-file"
          type="file"
          accept=".json,application/json"
          @change=${async (/** @type {Event} */ e) => {
            const input = /** @type {HTMLInputElement} */ (e.target);
            const file = input.files?.[0];
            if (file) await app.openText(await file.slice(0, 2_000_000).text(), file.name);
            input.value = '';
          }}
        />
      </div>
      <div class="frow">
        <label for="paste-link">Open a link</label>
        <input
          id="paste-link"
          class="words"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          placeholder="paste it here"
          @change=${async (/** @type {Event} */ e) => {
            const input = /** @type {HTMLInputElement} */ (e.target);
            if (input.value.trim() && (await app.openLink(input.value.trim()))) input.value = '';
          }}
        />
      </div>
      ${app.kept ? nothing : html`<p class="fault">${app.why === 'full' ? 'This browser is out of room: these plans are not stored.' : 'This browser keeps nothing: save what matters as a file.'}</p>`}`,
  );
}

/**
 * The first tap asks, the second does.
 * @param {App} app
 * @param {string} id
 */
function removing(app, id) {
  if (app.panelData === id) {
    app.panelData = undefined;
    app.removePlan(id);
    return;
  }
  app.panelData = id;
  app.render();
}

/** @param {number} time */
function day(time) {
  return new Date(time).toLocaleDateString(undefined, { day: 'numeric', month: 'short' });
}

/** @param {App} app */
export function about(app) {
  return panel(
    app,
    'About the numbers',
    html`<div class="prose">
      <p>
        <b>Predictions, not measurements.</b> Mass, cost and load are sums of what is typed and what is typical. What a wall stops is calculated from its boards, gap, frame and fixing, and held
        against published laboratory tests; the ± beside it is how far off that was.
      </p>
      <p><b>A built room stops less than a laboratory.</b> Sound goes round a wall through floor, ceiling and door. The word “built” stands before what a room is likely to reach.</p>
      <p><b>Bass</b> is the mean of what five bands let through, 50 to 125${'\u00a0'}Hz. Below 50${'\u00a0'}Hz no test goes; what is drawn there is a guess.</p>
      <p>
        <b>Where a figure comes from.</b> <b class="typed">58</b>${'\u00a0'}lb was typed by you. <span class="soft">51 lb typical</span> is from a table. Other figures are computed; tap one of the six
        at the top and it says how.
      </p>
      <p><b>Over</b> is more than a limit by more than a thousandth of it. Equal is not over.</p>
      <p>
        <b>Not for structural or fire approval.</b> Local codes, an engineer, a licensed electrician and the maker’s data sheet come first. Prices and clip ratings in the examples are invented.
      </p>
      <p><b>Nothing leaves this device.</b> Plans are kept in this browser; a link or a file holds what you pass on, and nothing else is sent.</p>
      ${app.about ? html`<p class="soft">${app.about}</p>` : nothing}
    </div>`,
  );
}
