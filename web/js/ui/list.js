// Everything to buy for the whole plan: a line an item, with a tick that stays,
// the rule it was counted by, its price; and what it comes to.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { setBuying, setCost } from '../edit-buy.js';
import { joined, money, number, typed } from '../format.js';
import { counted } from '../words.js';
import { amountWords, buyVerdict, capital, forgotWords, itemName, ruleWords } from '../words-buy.js';
import { cutsSaid } from './cuts.js';
import { fieldRow } from './field.js';
import { priceSpec } from './shelf.js';
import { rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').FieldSpec} FieldSpec
 * @typedef {import('../types-buy.d.ts').ListReport} ListReport
 * @typedef {import('../types-buy.d.ts').ItemReport} ItemReport
 */

/** The line that is open, by its key. */
let open = '';
/** Notes of what is often forgotten stand on the list by themselves. */
export const FORGOT = 'forgot/';

/** The verdict of Buy, of the list or of the cuts. @param {App} app */
export function buySaid(app) {
  const list = app.report?.list;
  const cuts = cutsSaid(app);
  if (cuts) return cuts;
  if (!list) return undefined;
  const { payload, roof } = app.plan.buying ?? {};
  const typedPayload = payload || roof;
  return {
    ...buyVerdict(list, app.ctx, typedPayload ? joined(typed(typedPayload)) : ''),
    mend: /** @type {{tap: string, act: () => void} | undefined} */ (undefined),
  };
}

/**
 * How much of an item has been got; more may be wanted since.
 * @param {App} app
 * @param {ItemReport} line
 */
export function gotOf(app, { key, item }) {
  const got = app.ticks.get(key);
  return got === undefined ? { got: false, more: 0 } : { got: true, more: Math.max(0, item.buy - got) };
}

/** What is owned is on no counter. @param {ListReport} list */
export function toBuy(list) {
  return (list.items ?? []).filter((l) => l.item.buy > 0);
}

/** @param {App} app @param {ListReport} list */
export function listPart(app, list) {
  const lines = list.items ?? [];
  const added = [...app.ticks.keys()].filter((k) => k.startsWith(FORGOT));
  return html`<ul class="ticks" aria-label="To buy">
      ${lines.map((line) => lineView(app, list, line))}
      ${added.map((key) => {
        const name = capital(forgotWords({ code: key.slice(FORGOT.length), face: '', layer: -1, board: '', args: null }));
        return tickLine(
          name,
          'often forgotten',
          app.ticks.get(key) === 1,
          (on) => app.tick(key, on ? 1 : 0),
          tap('take off', () => app.tick(key, undefined), `take off ${name}`),
        );
      })}
    </ul>
    ${totals(app, list)}`;
}

/**
 * @param {string} name
 * @param {string} second
 * @param {boolean} on
 * @param {(on: boolean) => void} set
 * @param {unknown} right
 */
function tickLine(name, second, on, set, right) {
  return html`<li class=${on ? 'got' : ''}>
    <label class="tick"
      ><input type="checkbox" .checked=${on} @change=${(/** @type {Event} */ e) => set(/** @type {HTMLInputElement} */ (e.target).checked)} /><span class="what"
        ><span class="name">${rich(name)}</span><span class="soft">${rich(second)}</span></span
      ></label
    >${right}
  </li>`;
}

/** @param {App} app @param {ListReport} list @param {ItemReport} line */
function lineView(app, list, line) {
  const { key, item } = line;
  const { got, more } = gotOf(app, line);
  const name = itemName(item, list, app.ctx);
  const opened = open === key;
  const nothingToBuy = item.buy === 0;
  const cost = nothingToBuy ? 'owned' : item.priced ? money(item.cost, app.ctx.currency) : 'price?';
  return html`<li class="${got && !more ? 'got' : ''} ${opened ? 'open' : ''}">
    <label class="tick"
      ><input type="checkbox" .checked=${got && !more} .indeterminate=${got && more > 0} ?disabled=${nothingToBuy}
        @change=${(/** @type {Event} */ e) => app.tick(key, /** @type {HTMLInputElement} */ (e.target).checked ? item.buy : undefined)} /><span class="what"
        ><span class="name">${rich(name)}</span><span class="soft">${rich(amountWords(item, app.ctx))}</span>${
          more ? html`<span class="lacking">${number(more)} more to get</span>` : nothing
        }${line.lacking ? html`<span class="lacking">${counted(line.lacking, 'sheet')} more than there are here</span>` : nothing}</span
      ></label
    ><button type="button" class="cost" aria-expanded=${opened} aria-label="${name}: ${cost}, how many and what one costs"
      @click=${() => {
        open = opened ? '' : key;
        app.render();
      }}>${line.origin === 'typed' ? html`<b class="typed">${cost}</b>` : cost}</button>
    ${opened ? about(app, list, line) : nothing}
  </li>`;
}

/** The rule, and the fields of one line. @param {App} app @param {ListReport} list @param {ItemReport} line */
function about(app, list, { key, item, origin }) {
  const rule = ruleWords(item, app.ctx);
  const board = list.names?.[item.of];
  /** @type {FieldSpec} */
  let price;
  if (item.code === 'sheets' && board) {
    const layer = /** @type {any} */ ({
      ...board,
      board: item.of,
      thickness: null,
      price: item.priced ? { v: item.price, kind: 'money', origin: origin ?? 'typical' } : null,
    });
    price = priceSpec(app, layer);
  } else price = costSpec(app, key, item);
  return html`<div class="form about">
    ${rule ? html`<p class="soft">${rich(`${capital(rule)}.`)}</p>` : nothing}
    ${fieldRow(app, price, item.code === 'sheets' ? 'A sheet costs' : 'One costs', origin === 'demo' ? 'an invented example' : '')}
    ${
      item.code === 'sheets' && board
        ? fieldRow(
            app,
            {
              key: `shelf.${item.of}.owned`,
              what: 'count',
              label: `${board.short}, sheets you own`,
              value: edit.shelfOf(app.plan, item.of).owned ?? '',
              unit: '',
              set: (q) => edit.setShelf(app.plan, item.of, { owned: q }, q ? `own ${q} of ${board.short}` : `own none of ${board.short}`),
              mine: (f) => f.board === item.of && f.field === 'owned',
            },
            'You own',
            'sheets, used first',
          )
        : nothing
    }
  </div>`;
}

/**
 * @param {App} app
 * @param {string} key
 * @param {import('../types-buy.d.ts').Item} item
 * @returns {FieldSpec}
 */
function costSpec(app, key, item) {
  const value = app.plan.buying?.costs?.find((c) => c.item === key)?.price ?? '';
  return {
    key: `cost.${key}`,
    what: 'money',
    label: `price of one: ${item.code}`,
    value,
    unit: app.ctx.currency,
    typical: !value && item.priced ? money(item.price, '') : '',
    set: (q) => setCost(app.plan, key, q, q ? `${item.code}: ${joined(typed(q))}` : `${item.code}: no price of yours`),
    mine: (f) => f.field === 'price' && !f.board && f.typed === value && value !== '',
  };
}

/** What it comes to, and what is still to get. @param {App} app @param {ListReport} list */
function totals(app, list) {
  const { bill } = list;
  const { currency } = app.ctx;
  const buying = app.plan.buying ?? {};
  const rows = /** @type {[string, number, string][]} */ ([]);
  if (bill.contingency > 0) rows.push(['Goods', bill.goods, ''], [`Reserve${share(buying.contingency)}`, bill.contingency, 'soft']);
  rows.push(['Before tax', bill.beforeTax, '']);
  if (bill.tax > 0) rows.push([`Tax${share(buying.tax)}`, bill.tax, 'soft'], ['In all', bill.total, '']);
  return html`<dl class="totals">
      ${rows.map(([name, v, css]) => html`<div class=${css}><dt>${name}</dt><dd>${money(v, currency)}</dd></div>`)}
      <div class="grand"><dt>Still to get, before tax</dt><dd class="still">${money(stillToGet(app, list), currency)}</dd></div>
    </dl>
    ${bill.unpriced ? html`<p class="soft">${capital(counted(bill.unpriced, 'price'))} ${bill.unpriced === 1 ? 'is' : 'are'} missing: not counted.</p>` : nothing}`;
}

/** @param {string | undefined} quantity */
function share(quantity) {
  return quantity ? ` ${joined(typed(quantity))}` : '';
}

/**
 * The prices of what is not ticked, of what is the part that came later.
 * @param {App} app
 * @param {ListReport} list
 */
export function stillToGet(app, list) {
  return (list.items ?? []).reduce((sum, line) => {
    const { got, more } = gotOf(app, line);
    return sum + (got ? more * line.item.price : line.item.cost);
  }, 0);
}

/** Waste, tax, reserve: what the list is made with. @param {App} app */
export function buyingForm(app) {
  const waste = app.report?.buy.waste;
  return html`<div class="form">
    ${fieldRow(app, percentSpec(app, 'tax', 'tax'), 'Tax')} ${fieldRow(app, percentSpec(app, 'contingency', 'reserve'), 'Reserve', 'for what nobody thought of')}
    ${fieldRow(
      app,
      {
        key: 'plan.waste',
        what: 'percent',
        label: 'waste in cutting',
        value: app.plan.waste ?? '',
        typical: waste && waste.origin !== 'typed' ? number(waste.v * 100) : '',
        unit: '%',
        set: (q) => edit.setPlan(app.plan, { waste: q || undefined }, q ? `waste ${q}` : 'usual waste'),
        mine: (fault) => fault.field === 'waste',
      },
      'Waste by area',
      'the rule that the cuts are compared with',
    )}
  </div>`;
}

/** @param {App} app @param {'tax' | 'contingency'} name @param {string} label @returns {FieldSpec} */
function percentSpec(app, name, label) {
  return {
    key: `buying.${name}`,
    what: 'percent',
    label,
    value: app.plan.buying?.[name] ?? '',
    unit: '%',
    set: (q) => setBuying(app.plan, { [name]: q }, `${label} ${q || 'not said'}`),
    mine: (f) => f.field === name && !f.surface,
  };
}

/** @param {App} app @param {ListReport} list */
export function forgotPart(app, list) {
  const notes = (list.forgot ?? []).filter((n) => !app.ticks.has(FORGOT + n.code));
  if (!notes.length) return nothing;
  return html`<p class="forgot"><span class="soft">Often forgotten:</span> ${notes.map(forgotWords).join(', ')}. ${tap('Add them', () => app.tickAll(notes.map((n) => [FORGOT + n.code, 0])))}</p>`;
}

// ---- as a table ----

const US = 0.45359237;

/**
 * The list as a table that any spreadsheet reads: quoted, decimal points, the
 * plan's units in the head, sums last.
 * @param {App} app
 * @param {ListReport} list
 */
export function listCsv(app, list) {
  const us = app.units === 'us';
  const unit = us ? 'lb' : 'kg';
  const { currency } = app.ctx;
  const rows = [['item', 'how many', 'to buy', 'own', `price (${currency})`, `cost (${currency})`, `weight (${unit})`, 'counted by', 'got']];
  for (const line of list.items ?? []) {
    const { item } = line;
    const { got, more } = gotOf(app, line);
    rows.push([
      itemName(item, list, app.ctx),
      amountWords(item, app.ctx),
      plain(item.buy),
      plain(item.owned),
      item.priced ? plain(item.price, 2) : '',
      item.priced ? plain(item.cost, 2) : '',
      item.mass > 0 ? plain(us ? item.mass / US : item.mass, 1) : '',
      ruleWords(item, app.ctx),
      got ? (more ? `${more} more to get` : 'yes') : '',
    ]);
  }
  for (const key of app.ticks.keys())
    if (key.startsWith(FORGOT))
      rows.push([
        capital(forgotWords({ code: key.slice(FORGOT.length), face: '', layer: -1, board: '', args: null })),
        '',
        '',
        '',
        '',
        '',
        '',
        'often forgotten',
        app.ticks.get(key) ? 'yes' : '',
      ]);
  const { bill } = list;
  const sum = (/** @type {string} */ name, /** @type {number} */ v) => rows.push([name, '', '', '', '', plain(v, 2), '', '', '']);
  rows.push([]);
  if (bill.contingency > 0) {
    sum('goods', bill.goods);
    sum('reserve', bill.contingency);
  }
  sum('before tax', bill.beforeTax);
  if (bill.tax > 0) {
    sum('tax', bill.tax);
    sum('in all', bill.total);
  }
  sum('still to get, before tax', stillToGet(app, list));
  // The mark at the start tells a spreadsheet that the letters are UTF-8.
  return `\ufeff${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

/** A number as a spreadsheet of any country takes it from a file with decimal points. @param {number} v @param {number} [decimals] */
function plain(v, decimals = 0) {
  return Number.isFinite(v) ? v.toFixed(decimals) : '';
}

/** @param {string} value */
function cell(value) {
  const text = value.replace(/[\u00a0\u202f]/g, ' ').replace(/\u2212/g, '-');
  // What a spreadsheet would take for a formula is text.
  const safe = /^[=+\-@\t\r]/.test(text) && !/^-?\d+(\.\d+)?$/.test(text) ? `'${text}` : text;
  return /^-?\d+(\.\d+)?$/.test(safe) || safe === '' ? safe : `"${safe.replaceAll('"', '""')}"`;
}

/** @param {App} app @param {ListReport} list */
export function saveCsv(app, list) {
  const blob = new Blob([listCsv(app, list)], { type: 'text/csv;charset=utf-8' });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = `${`${app.plan.name} list`.replace(/[^\p{L}\p{N} _-]+/gu, '').trim() || 'list'}.csv`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
