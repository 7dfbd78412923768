// A sheet over the section: from the strip's lower edge to the section bar. It
// dims nothing and traps nothing; strip and bar stay in reach.

import { html } from 'lit-html';
import { tap } from './text.js';

/**
 * @param {import('./app.d.ts').App} app
 * @param {string} title
 * @param {unknown} content
 */
export function panel(app, title, content) {
  return html`<div class="sheet" role="dialog" aria-label=${title} tabindex="-1">
    <div class="sheet-head"><h2>${title}</h2>${tap('close', () => app.close())}</div>
    <div class="sheet-body">${content}</div>
  </div>`;
}
