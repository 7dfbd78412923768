// Handing the plan over: as a link, in words, as a file, as a square code.

import { html, nothing, svg } from 'lit-html';
import { leftOutWords, verdictText } from '../words.js';
import { panel } from './panel.js';
import { tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {{link?: string, leftOut?: string[], qr?: string[], fault?: string, copied?: string}} Data
 */

/** The address that opens a plan anywhere. @param {string} link */
export function address(link) {
  return `${location.href.split('#')[0]}#${link}`;
}

/**
 * The verdict as a message: what it is, the answer, and the link.
 * @param {App} app
 * @param {string} [link]
 */
export function inWords(app, link) {
  const head = [app.plan.name, app.surface.name].filter(Boolean).join(', ');
  const words = verdictText(app.report?.verdicts.layers, app.ctx);
  return `${head}: ${words}${link ? `\n${address(link)}` : ''}`.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ');
}

/** @param {App} app */
export function send(app) {
  /** @type {Data} */
  const data = app.panelData ?? {};
  const { link } = data;
  return panel(
    app,
    'Send',
    html`<h3 class="head">A link</h3>
      ${
        link
          ? html`<p class="soft">It opens this plan anywhere, and holds the plan itself: nothing is sent to a server.</p>
            <input class="words link" readonly aria-label="Link to this plan" .value=${address(link)} @focus=${(/** @type {Event} */ e) => /** @type {HTMLInputElement} */ (e.target).select()} />
            <p class="taps">
              ${tap(data.copied === 'link' ? 'copied' : 'Copy', () => copy(app, 'link', address(link)), 'Copy the link')}
              ${canShare() ? tap('Share …', () => share(app, link)) : nothing}
            </p>
            ${data.leftOut?.length ? html`<p class="soft">Left out: ${data.leftOut.map(leftOutWords).join(', ')}.</p>` : nothing}`
          : html`<p class=${data.fault ? 'fault' : 'soft'} role="status">${data.fault ?? '…'}</p>`
      }
      <h3 class="head part">In words</h3>
      <p class="quote">${inWords(app)}</p>
      <p class="taps">${tap(data.copied === 'words' ? 'copied' : 'Copy', () => copy(app, 'words', inWords(app, link)), 'Copy the words')}</p>
      <h3 class="head part">A file</h3>
      <p class="soft">Everything in this plan, notes included; the steps before stay here.</p>
      <p class="taps">${tap('Save as a file', () => app.saveFile())}</p>
      ${data.qr ? html`<h3 class="head part">A square code</h3>${qrView(data.qr)}<p class="soft">Another phone’s camera opens the plan.</p>` : nothing}
      <p class="hid" role="status">${data.copied ? 'Copied' : ''}</p>`,
  );
}

/**
 * A square code as one path, with its quiet zone.
 * @param {string[]} rows
 * @param {number} [size] px
 */
export function qrView(rows, size = 224) {
  const n = rows.length;
  let d = '';
  rows.forEach((row, y) => {
    for (const run of row.matchAll(/1+/g)) d += `M${run.index} ${y}h${run[0].length}v1h-${run[0].length}z`;
  });
  return html`<svg class="qr" viewBox="-4 -4 ${n + 8} ${n + 8}" width=${size} height=${size} role="img" aria-label="Square code of the link">
    ${svg`<rect class="quiet" x="-4" y="-4" width=${n + 8} height=${n + 8} /><path d=${d} />`}
  </svg>`;
}

function canShare() {
  return typeof navigator.share === 'function';
}

/**
 * @param {App} app
 * @param {string} link
 */
async function share(app, link) {
  try {
    await navigator.share({ title: app.plan.name, text: inWords(app), url: address(link) });
  } catch {
    // The user changed their mind.
  }
}

/**
 * @param {App} app
 * @param {string} what
 * @param {string} text
 */
async function copy(app, what, text) {
  if (await app.copy(text)) app.panelData = { ...app.panelData, copied: what };
  app.render();
}

/** Fetches what the sheet shows. @param {App} app */
export async function prepareSend(app) {
  const data = await linkOf(app);
  if (app.panel?.kind === 'send') {
    app.panelData = data;
    app.render();
  }
}

/**
 * @param {App} app
 * @returns {Promise<Data>}
 */
export async function linkOf(app) {
  const encoded = await app.ask('encode', { plan: app.plan }, 'encode');
  if (!encoded.ok) {
    const fault = encoded.faults?.[0];
    return { fault: fault?.code === 'tooLong' ? 'This plan is too long for a link. A file holds it.' : (fault?.words ?? encoded.panic ?? '') };
  }
  const code = await app.ask('qr', { text: address(encoded.link) }, 'qr');
  return { link: encoded.link, leftOut: [...(encoded.leftOut ?? []), ...(app.ticks.size ? ['ticks'] : [])], qr: code.ok ? (code.qr ?? code.rows) : undefined };
}
