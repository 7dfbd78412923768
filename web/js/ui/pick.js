// Choosing a board: by part of its name, by a thickness, or both.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { boardName, joined, shown, valueShown } from '../format.js';
import { counted } from '../words.js';
import { panel } from './panel.js';
import { rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').BoardReport} BoardReport
 */

/** Boards that are listed at once; the search finds the others. */
const MOST = 40;

/** @param {App} app */
export function pick(app) {
  if (app.panel?.kind !== 'pick') return nothing;
  const { layer, leaf, title, chosen } = app.panel;
  const place = layer ? edit.placeOf(app.buildUp, layer) : undefined;
  const head = title ?? (place ? `Change layer ${place.index + 1} for` : 'Add a board');
  /** @type {{query: string, boards?: BoardReport[]}} */
  const data = app.panelData ?? { query: '' };
  const choose = (/** @type {BoardReport} */ board) => {
    const name = boardName(board, app.units);
    app.ctx.names[board.id] = name;
    app.close();
    if (chosen) chosen(board.id, name);
    else if (layer) app.edit(edit.changeBoard(app.plan, app.buildUp.id, layer, board.id, name));
    else {
      const made = edit.addLayer(app.plan, app.buildUp.id, leaf, board.id, name);
      app.edit(made);
      const layers = made.plan.buildUps.find((b) => b.id === app.buildUp.id)?.leaves[leaf]?.layers ?? [];
      app.select((leaf === 0 ? layers[0] : layers.at(-1))?.id ?? '');
    }
  };
  return panel(
    app,
    head,
    html`<input
        class="search"
        type="search"
        aria-label="Find a board by part of its name or its thickness"
        placeholder=${app.units === 'us' ? '5/8, ply, type X …' : '15, ply, acoustic …'}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        maxlength="60"
        .value=${data.query}
        @input=${(/** @type {InputEvent} */ e) => find(app, /** @type {HTMLInputElement} */ (e.target).value)}
      />
      <p class="hid" role="status">${data.boards ? counted(data.boards.length, 'board') : ''}</p>
      <ul class="found">
        ${(data.boards ?? []).slice(0, MOST).map((board) => boardRow(app, board, () => choose(board)))}
      </ul>
      ${data.boards?.length === 0 ? html`<p class="soft">${rich('No board is called so here. Try a part of the name, or a thickness.')}</p>` : nothing}
      ${(data.boards?.length ?? 0) > MOST ? html`<p class="soft">${`and ${(data.boards?.length ?? 0) - MOST} more: type a part of the name`}</p>` : nothing}`,
  );
}

/**
 * @param {App} app
 * @param {BoardReport} board
 * @param {() => void} choose
 */
function boardRow(app, board, choose) {
  const shelf = app.plan.shelf?.find((s) => s.board === board.id);
  const weight = board.weight
    ? joined(valueShown({ v: board.weight, kind: 'mass', origin: 'typical' }, app.ctx))
    : joined(shown('surfaceMass', board.mass, app.ctx));
  const words = [board.fireRated ? 'fire-rated' : '', board.origin === 'from memory' ? 'from memory' : ''].filter(Boolean).join(', ');
  return html`<li>
    <button type="button" class="board" @click=${choose}>
      <span class="name">${rich(boardName(board, app.units))}${words ? html` <span class="soft">${words}</span>` : nothing}</span>
      <span class="weight">${shelf?.weight ? html`<b>on the shelf</b>` : html`<span class="soft">${rich(weight)}</span>`}</span>
    </button>
  </li>`;
}

/**
 * @param {App} app
 * @param {string} query
 */
export async function find(app, query) {
  app.panelData = { ...app.panelData, query };
  const reply = await app.ask('boards', { query, region: app.region, plan: app.plan }, 'boards');
  if (reply.ok && app.panel?.kind === 'pick') {
    app.panelData = { ...app.panelData, boards: reply.boards ?? [] };
    app.render();
  }
}
