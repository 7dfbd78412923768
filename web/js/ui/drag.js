// The grip of a row: drag it with a finger, or move it by arrow keys.

import { html } from 'lit-html';
import * as edit from '../edit.js';

/** @typedef {import('./app.d.ts').App} App */

/**
 * @param {App} app
 * @param {string} id of the layer
 * @param {string} name
 * @param {number} index
 * @param {number} count
 */
export function grip(app, id, name, index, count) {
  const move = (/** @type {number} */ to) => app.edit(edit.moveLayer(app.plan, app.buildUp.id, id, to, name));
  return html`<button
    type="button"
    class="grip"
    aria-label="Move ${name}: drag, or arrow keys"
    ?disabled=${count < 2}
    @keydown=${(/** @type {KeyboardEvent} */ e) => {
      const by = e.key === 'ArrowUp' ? -1 : e.key === 'ArrowDown' ? 1 : 0;
      if (!by) return;
      e.preventDefault();
      move(index + by);
    }}
    @pointerdown=${(/** @type {PointerEvent} */ e) => begin(e, index, move)}
  >
    <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true"><path d="M0 1h14M0 7h14M0 13h14" /></svg>
  </button>`;
}

/**
 * The row follows the finger, the others make room, and on release the layer is where it was put.
 * @param {PointerEvent} down
 * @param {number} index
 * @param {(to: number) => void} done
 */
function begin(down, index, done) {
  const handle = /** @type {HTMLElement} */ (down.currentTarget);
  const row = /** @type {HTMLElement | null} */ (handle.closest('.row'));
  const list = row?.parentElement;
  if (!row || !list || down.button !== 0) return;
  const rows = /** @type {HTMLElement[]} */ ([...list.children].filter((r) => r instanceof HTMLElement && r.classList.contains('row')));
  const boxes = rows.map((r) => r.getBoundingClientRect());
  const own = boxes[index];
  let to = index;
  let moved = false;
  handle.setPointerCapture(down.pointerId);

  const follow = (/** @type {PointerEvent} */ e) => {
    const by = e.clientY - down.clientY;
    if (!moved && Math.abs(by) < 5) return;
    moved = true;
    e.preventDefault();
    const middle = own.top + own.height / 2 + by;
    to = boxes.filter((box, i) => i !== index && box.top + box.height / 2 < middle).length;
    row.classList.add('dragged');
    row.style.transform = `translateY(${by}px)`;
    rows.forEach((r, i) => {
      if (i === index) return;
      const shift = i > index && i <= to ? -own.height : i < index && i >= to ? own.height : 0;
      r.style.transform = shift ? `translateY(${shift}px)` : '';
    });
  };
  const end = (/** @type {PointerEvent} */ e) => {
    handle.removeEventListener('pointermove', follow);
    handle.removeEventListener('pointerup', end);
    handle.removeEventListener('pointercancel', end);
    row.classList.remove('dragged');
    for (const r of rows) r.style.transform = '';
    if (moved && e.type === 'pointerup' && to !== index) done(to);
  };
  handle.addEventListener('pointermove', follow);
  handle.addEventListener('pointerup', end);
  handle.addEventListener('pointercancel', end);
}
