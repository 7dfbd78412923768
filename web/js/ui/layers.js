// The build-up: the section drawn to scale, and under it the same thing as a
// list, one row a layer. The tapped row asks what the tag says.

import { html, nothing } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { sectionView } from '../draw/section.js';
import * as edit from '../edit.js';
import { boardName, inSentence, money, NBSP, number, sheetName, text, valueShown } from '../format.js';
import { cautionWords, gapWords, leafWords } from '../words.js';
import { grip } from './drag.js';
import { faultOf, faultText, field } from './field.js';
import { gapForm } from './gap.js';
import { openingsRow } from './openings.js';
import { aboutBoard, priceSpec, remove, sizes, toldInTwo, weightSpec } from './shelf.js';
import { bang, rich, tap } from './text.js';
import { verdict } from './verdict.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').LayerReport} LayerReport
 * @typedef {import('../types.d.ts').Layer} Layer
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {import('../types.d.ts').Report} Report
 */

/** @param {App} app */
export function layers(app) {
  const { report } = app;
  if (!report) return nothing;
  const { leaves, gaps } = app.buildUp;
  return html`<section class="layers" aria-label="Layers">
    ${app.wide ? verdict(app, 'layers') : nothing}
    <div class="drawing-place">
      ${sectionView(report, {
        units: app.units,
        width: app.width,
        mode: app.wide ? 'desk' : 'phone',
        plan: app.plan,
        selected: app.selected,
        onSelect: (id) => app.select(id === app.selected ? '' : id),
      })}
    </div>
    ${leaves.map((leaf, i) => [leafView(app, report, leaf.layers, i), i < (gaps?.length ?? 0) ? gapView(app, report, i) : nothing])}
    ${leaves.length < edit.MOST_LEAVES ? html`<p class="taps">${tap('+ another leaf', () => addLeaf(app))}</p>` : nothing}
    ${openingsRow(app)} ${cautions(app)}
  </section>`;
}

/** @param {App} app */
function addLeaf(app) {
  app.open({
    kind: 'pick',
    leaf: -1,
    title: 'Another leaf, of',
    chosen: (board) => {
      app.edit(edit.addLeaf(app.plan, app.buildUp.id, board));
      app.openLeaf = app.buildUp.leaves.length - 1;
      app.render();
    },
  });
}

/**
 * The row of a layer in the report; a layer that the last good report has not seen yet stands with its name only.
 * @param {Report} report
 * @param {Layer} layer
 * @param {App} app
 * @returns {LayerReport}
 */
function reported(report, layer, app) {
  for (const leaf of report.leaves) {
    const found = leaf.layers.find((y) => y.id === layer.id && y.board === layer.board);
    if (found) return { ...found, there: layer.there === true, join: layer.join ?? '' };
  }
  return /** @type {LayerReport} */ ({
    ...layer,
    short: app.ctx.names[layer.board] ?? layer.board,
    row: app.ctx.names[layer.board] ?? layer.board,
    nominal: '',
    kind: '',
    there: layer.there === true,
    join: layer.join ?? '',
  });
}

/**
 * A leaf: opened as rows, or one row that says what it is.
 * @param {App} app
 * @param {Report} report
 * @param {Layer[]} rows
 * @param {number} leaf
 */
function leafView(app, report, rows, leaf) {
  const count = app.buildUp.leaves.length;
  const edited = leaf === app.buildUp.compare.leaf;
  const opened = edited || app.openLeaf === leaf || rows.some((y) => y.id === app.selected) || rows.length === 0;
  const known = report.leaves[leaf];
  const all = rows.map((layer) => reported(report, layer, app));
  if (!opened) return leafRow(app, all, leaf, known?.thickness ?? null);
  const name = leafWords(leaf, count);
  return html`<div class="leaf" role="group" aria-label=${name}>
    <h2 class="head">
      <span>${name}${known?.mass ? html` <span class="soft">${text(known.mass, app.ctx)}</span>` : nothing}</span>
      <span class="taps">
        ${tap('+ board', () => app.open({ kind: 'pick', leaf }), `Add a board to the ${name.toLowerCase()}`)}
      </span>
    </h2>
    ${rows.length === 0 ? html`<p class="fault">A leaf needs a board.</p>` : nothing}
    <div class="rows" role="list">
      ${repeat(
        all,
        (y) => y.id,
        (y, i) => layerRow(app, y, i, all.length),
      )}
    </div>
    ${
      edited
        ? nothing
        : html`<p class="taps">
          ${tap('compare this side', () => app.edit(edit.compareLeaf(app.plan, app.buildUp.id, leaf)), `Compare the boards of the ${name.toLowerCase()}`)}
          ${tap('remove it', () => app.edit(edit.removeLeaf(app.plan, app.buildUp.id, leaf)), `Remove the ${name.toLowerCase()}`)}
        </p>`
    }
  </div>`;
}

/**
 * @param {App} app
 * @param {LayerReport[]} rows
 * @param {number} leaf
 * @param {Value | null} thickness
 */
function leafRow(app, rows, leaf, thickness) {
  const name = leafWords(leaf, app.buildUp.leaves.length);
  const boards = rows.map((y) => boardName(y, app.units));
  const said = [...new Set(boards)].map((b) => {
    const n = boards.filter((x) => x === b).length;
    return n > 1 ? `${n} × ${b}` : b;
  });
  const list = said.join(', ');
  const there = rows.every((y) => y.there);
  const weights = rows.map((y) => y.weight);
  const weight = rows.length === 1 && weights[0] ? `${text(weights[0], app.ctx)}${weights[0].origin === 'typical' ? ' typical' : ''}` : '';
  const second = [there ? 'there already' : rows.some((y) => y.there) ? 'partly there' : '', weight].filter(Boolean).join(', ');
  return html`<button
    type="button"
    class="pair"
    aria-expanded="false"
    @click=${() => {
      app.openLeaf = leaf;
      app.render();
    }}
  >
    <span class="what"><b class="serif">${name}</b> ${rich(inSentence(list))}<span class="soft">${rich(second)}</span></span>
    <span class="size">${rich(text(thickness, app.ctx))}</span>
  </button>`;
}

/**
 * @param {App} app
 * @param {Report} report
 * @param {number} i
 */
function gapView(app, report, i) {
  const gap = app.buildUp.gaps?.[i];
  const known = report.gaps.find((g) => g.id === gap?.id);
  if (!gap) return nothing;
  const words = known ? gapWords(known, app.ctx) : { held: '', frame: '' };
  const open = app.selected === gap.id;
  return html`<div class="gap ${open ? 'open' : ''}" data-id=${gap.id}>
    <button type="button" class="pair" aria-expanded=${open} @click=${() => app.select(open ? '' : gap.id)}>
      <span class="what"><b class="serif">Gap</b> ${rich(words.held)}<span class="soft">${rich(words.frame)}</span></span>
      <span class="size"
        >${(open ? undefined : wrong(app, `gap.${gap.id}.`, (fault) => fault.gap === gap.id)) ?? rich(known ? text(known.depth, app.ctx) : '')}</span
      >
    </button>
    ${open ? gapForm(app, gap, known) : nothing}
  </div>`;
}

/**
 * @param {App} app
 * @param {LayerReport} y
 * @param {number} i
 * @param {number} count
 */
function layerRow(app, y, i, count) {
  const name = boardName(y, app.units);
  const none = y.stock !== null && y.stock !== undefined && y.stock.v === 0 && !y.plenty && !y.there;
  if (app.selected === y.id) return openRow(app, y, i, count, name, none);
  return html`<div class="row ${y.there ? 'there' : ''}" role="listitem" data-id=${y.id}>
    ${y.there ? html`<span class="grip"></span>` : grip(app, y.id, name, i, count)}
    <button type="button" class="main" aria-expanded="false" @click=${() => app.select(y.id)}>
      <span class="n">${i + 1}</span>
      <span class="name"
        >${none ? html`<s>${rich(name)}</s> <b class="none">none here</b>` : rich(name)}${y.there ? html` <span class="soft">there already</span>` : nothing}</span
      >
      ${y.there || none ? nothing : (wrong(app, `shelf.${y.board}.`, (fault) => fault.board === y.board) ?? weightOf(app, y))}
    </button>
    ${
      y.there
        ? html`<span class="act">${tap('take off', () => remove(app, y), `Take off ${name}`)}</span>`
        : none
          ? html`<span class="act">${tap('swap', () => app.go('swap'), `Swap ${name}`)}</span>`
          : nothing
    }
  </div>`;
}

/**
 * What was typed in a closed row and could not be read or is not allowed.
 * @param {App} app
 * @param {string} prefix of the row's fields
 * @param {(fault: import('../types.d.ts').Fault) => boolean} mine
 */
function wrong(app, prefix, mine) {
  const draft = [...app.drafts].find(([key, d]) => d.fault && key.startsWith(prefix));
  const fault = draft?.[1].fault ?? app.faults.find(mine);
  return fault ? html`<b class="wrong">${draft?.[1].text ?? fault.typed ?? ''}?</b>` : undefined;
}

/**
 * Weight and price at the right of a row, or how many are owned and what the rest costs.
 * @param {App} app
 * @param {LayerReport} y
 */
function weightOf(app, y) {
  const line = app.report?.buy.lines?.find((l) => l.board === y.board);
  if (y.owned && y.owned.v > 0 && line && line.need > 0) {
    return html`<span class="owned"><b>own ${number(Math.min(line.owned, line.need))}</b> of ${number(line.need)}</span>
      <span class="price">${line.cost ? money(line.cost.v, app.ctx.currency) : '–'}</span>`;
  }
  const value = y.weight ?? y.mass;
  const price = y.price;
  return html`<span class="weight">${value ? weightView(app, value) : '–'}</span>
    <span class="price">${price ? (price.origin === 'typed' ? html`<b class="typed">${text(price, app.ctx)}</b>` : text(price, app.ctx)) : '–'}</span>`;
}

/**
 * @param {App} app
 * @param {Value} value
 */
function weightView(app, value) {
  const { figure, unit } = valueShown(value, app.ctx);
  return value.origin === 'typed'
    ? html`<b class="typed">${rich(figure)}</b>${NBSP}${unit}`
    : html`<span class="soft">${value.origin === 'typical' ? html`<span class="word">typical </span>` : nothing}${figure}${NBSP}${unit}</span>`;
}

/**
 * @param {App} app
 * @param {LayerReport} y
 * @param {number} i
 * @param {number} count
 * @param {string} name
 * @param {boolean} none
 */
function openRow(app, y, i, count, name, none) {
  const shelf = edit.shelfOf(app.plan, y.board);
  const weight = weightSpec(app, y, true);
  const price = priceSpec(app, y);
  const bad = faultOf(app, weight) ? weight : faultOf(app, price) ? price : undefined;
  const { leaf } = edit.placeOf(app.buildUp, y.id);
  const move = (/** @type {number} */ by) => app.edit(edit.moveLayer(app.plan, app.buildUp.id, y.id, i + by, name));
  const typical = y.weight && y.weight.origin === 'typical' ? `typical ${text(y.weight, app.ctx)}` : '';
  return html`<div class="row open ${y.there ? 'there' : ''} ${app.more ? 'more' : ''}" role="listitem" data-id=${y.id}>
    ${grip(app, y.id, name, i, count)}
    <span class="title">
      <button type="button" class="main" aria-expanded="true" @click=${() => app.select('')}>
        <span class="n">${i + 1}</span> <span class="name">${none ? html`<s>${rich(name)}</s> <b class="none">none here</b>` : rich(name)}</span>
      </button>
      ${tap('change', () => app.open({ kind: 'pick', leaf, layer: y.id }), `Change ${name} for another board`)}
      <button
        type="button"
        class="tap"
        aria-expanded=${app.more}
        aria-label="${app.more ? 'Less' : 'More'} about ${name}"
        @click=${() => {
          app.more = !app.more;
          app.render();
        }}
      >
        ${app.more ? 'less' : 'more'}
      </button>
    </span>
    <span class="typical-is soft">${typical}</span>
    <span class="arrows">
      <button type="button" class="arrow" aria-label="Move ${name} towards the room" ?disabled=${i === 0} @click=${() => move(-1)}>${arrow(-1)}</button>
      <button type="button" class="arrow" aria-label="Move ${name} away from the room" ?disabled=${i === count - 1} @click=${() => move(1)}>${arrow(1)}</button>
    </span>
    <div class="ask">${bad ? faultText(app, bad) : html`<label class="question" for="f-${weight.key}">What does your tag say?</label>`}</div>
    <div class="fields">
      ${
        toldInTwo(shelf)
          ? html`<button type="button" class="tap told" @click=${() => openMore(app)}>${rich(shelf.weight ? `${text(y.weight ? { ...y.weight, origin: 'computed' } : null, app.ctx)} by the ${shelf.per}` : `from the ${shelf.per}`)}</button>`
          : field(app, weight)
      }
      ${bad === weight ? nothing : field(app, price)}
    </div>
    <div class="chips-typing">${sizes(app, y)}</div>
    ${app.more ? aboutBoard(app, y, { last: i === count - 1, index: i, count }) : nothing}
    <div class="typing-foot">
      <span class="soft">${y.sheet ? rich(`for a sheet ${sheetName(y.sheet)}`) : nothing}</span>
      <button type="button" class="solid" @click=${() => next(app, y.id)}>${i < count - 1 ? 'Next layer' : 'Done'}</button>
    </div>
  </div>`;
}

/** @param {App} app */
function openMore(app) {
  app.more = true;
  app.render();
}

/**
 * From field to field with the keyboard up: the weight of the next layer, then the list again.
 * @param {App} app
 * @param {string} id
 */
function next(app, id) {
  const { leaf, index } = edit.placeOf(app.buildUp, id);
  const after = app.buildUp.leaves[leaf]?.layers[index + 1];
  if (!after) {
    /** @type {HTMLElement | null} */ (document.activeElement)?.blur();
    return;
  }
  app.select(after.id);
  // The keyboard stays only if the focus moves within the tap itself.
  app.render();
  document.getElementById(`f-shelf.${after.board}.weight`)?.focus();
}

/** @param {1 | -1} way */
function arrow(way) {
  return html`<svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true"><path d=${way < 0 ? 'M12 21V4M5 11l7-7.5 7 7.5' : 'M12 3v17M5 13l7 7.5 7-7.5'} /></svg>`;
}

/** What is said in its own section: load, sound, buy. */
const ELSEWHERE = [
  ...['over-rating', 'close-to-rating', 'under-load', 'no-rating', 'rating-invented', 'channel-boards', 'ceiling-dead-load', 'truss-chord', 'masonry-on-floor'],
  ...['poured-floor', 'triple-leaf', 'channel-sandwiched', 'channel-shorted', 'empty-gap', 'same-boards', 'open-pores', 'flanking', 'below-50hz', 'no-family'],
  ...['close-screws', 'assumed-sound', 'lifting', 'short-stock', 'dust', 'invented-cost'],
];
/** More than this are folded into a phrase to tap. */
const MOST = 4;

/**
 * Cautions, each once and where it matters.
 * @param {App} app
 * @param {(code: string) => boolean} [only]
 */
export function cautions(app, only = (code) => !ELSEWHERE.includes(code)) {
  const list = (app.report?.cautions ?? []).filter((c) => only(c.code));
  if (list.length === 0) return nothing;
  const key = `cautions.${app.section}`;
  const all = list.length <= MOST + 1 || app.fieldUnits.get(key) === 'all';
  return html`<ul class="cautions" aria-label="Cautions">
      ${(all ? list : list.slice(0, MOST)).map((c) => {
        const words = cautionWords(c, app.ctx);
        return html`<li class="caution ${words.grave ? 'grave' : ''}">${bang()}<span><b>${rich(words.head)}</b> ${rich(words.text)}</span></li>`;
      })}
    </ul>
    ${
      all
        ? nothing
        : html`<p class="further">${tap(`and ${list.length - MOST} more`, () => {
            app.fieldUnits.set(key, 'all');
            app.render();
          })}</p>`
    }`;
}
