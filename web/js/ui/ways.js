// The ways out, each with its share of what gets through and what would be
// gained if it were perfect; under them what the next money does.

import { html, nothing } from 'lit-html';
import { setBuying } from '../edit-room.js';
import { inSentence, money, NBSP, number, percent } from '../format.js';
import { capital, changeWords, doesWords, faceWords, gain, hasKick, letterOf, lettersOf, wayWords, whyWords } from '../words-room.js';
import { chips, fieldRow } from './field.js';
import { answer, said, view } from './house.js';
import { mark, rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-room.d.ts').House} House
 * @typedef {import('../types-room.d.ts').Path} Path
 * @typedef {import('../types-room.d.ts').Change} Change
 * @typedef {import('../types-room.d.ts').Money} Money
 */

/** Under this share a way that brings nothing is only named in a sentence. */
const SMALL = 0.05;
/** dB that count as nothing. */
const NOTHING = 0.2;
/** Rows of each list before "and more". */
const MOST = 9;

/**
 * The ways in their order, and the small ones.
 * @param {House} house
 * @param {number} space −1: all that gets out
 */
export function ranked(house, space) {
  const all = (house.told.paths ?? [])
    .filter((p) => space < 0 || p.space === space)
    .map((path) => ({ path, share: space < 0 ? path.share : path.shareThere, perfect: space < 0 ? path.perfect : path.perfectThere }))
    .filter((w) => w.share > 0)
    .sort((a, b) => b.share - a.share);
  const small = all.filter((w, i) => i > 0 && ((w.share < SMALL && w.perfect < NOTHING) || i >= MOST));
  return { rows: all.filter((w) => !small.includes(w)), small };
}

/**
 * @param {App} app
 * @param {House} house
 */
export function waysView(app, house) {
  const spaces = house.spaces ?? [];
  const space = spaces.indexOf(view.ways);
  const money = app.money;
  return html`${
    spaces.length > 1
      ? chips('Where to', [{ value: '', words: 'all that gets out' }, ...spaces.map((s) => ({ value: s, words: s }))], space < 0 ? '' : view.ways, (value) => {
          view.ways = value;
          app.render();
        })
      : nothing
  }
    ${waysTable(house, space)} ${moneyView(app, house, money)}`;
}

/**
 * The rows on screen are of the plan as it was: they stand as they are, and do
 * nothing, until the next ones are there.
 * @param {App} app
 */
function waits(app) {
  return app.money !== undefined && (app.moneyOf !== app.plan || view.adopted === app.money);
}

/**
 * What to do first.
 * @param {App} app
 * @param {House} house
 */
export function waysVerdict(app, house) {
  const { money } = app;
  // What brings most for its money, if it brings half a decibel.
  const first =
    money && [...(money.rows ?? [])].filter((row) => !row.why && row.cost && Math.max(row.gain, row.all) >= 0.5).sort((a, b) => b.perCost - a.perCost)[0];
  if (!money) return html`<p class="verdict soft">…</p>`;
  if (!first)
    return answer(
      { answer: 'Nothing small is left.', text: 'No single change brings half a decibel: the structure decides, or the whole build-up does.' },
      nothing,
      waits(app),
    );
  const what = changeWords(first, app.ctx, house);
  const cost = first.cost ? `${moneyWords(app, first.cost.v)} for ` : '';
  return answer(
    {
      answer: `${what} first:`,
      text: `${cost}${number(Math.max(first.gain, first.all), 1)}${NBSP}dB${first.gain >= first.all ? ` less in the ${money.worst}` : ' less of all that gets out'}.`,
    },
    tap(first.code === 'seal' || first.code === 'caulk' ? 'Seal it' : 'Do it', () => adopt(app, [first], house), undefined, waits(app)),
    waits(app),
  );
}

/** @param {App} app @param {number} v */
function moneyWords(app, v) {
  return money(v, app.ctx.currency, true).replace(/\.00$/, '');
}

/**
 * @param {House} house
 * @param {number} space
 */
function waysTable(house, space) {
  const { rows, small } = ranked(house, space);
  if (rows.length === 0) return html`<p class="soft aside">Say what plays and what lies beyond: then the ways are ranked here.</p>`;
  const largest = rows[0].share;
  return html`<table class="ways">
      <caption class="hid">The ways out by their share, and what would be gained if one were perfect</caption>
      <thead>
        <tr><th scope="col" colspan="2" class="serif">Ways out</th><td></td><th scope="col">share</th><th scope="col">perfect</th></tr>
      </thead>
      <tbody>
        ${rows.map(({ path, share, perfect }, i) => {
          const face = house.faces?.[path.surface];
          return html`<tr class=${i === 0 ? 'first' : ''}>
            <td class="letter">${face ? letterOf(face) : ''}</td>
            <th scope="row">${rich(wayWords(house, path))}</th>
            <td class="part">${bar(share / largest)}</td>
            <td>${percent(share)}${NBSP}%</td>
            <td class="own">${gain(perfect)}${NBSP}dB</td>
          </tr>`;
        })}
      </tbody>
    </table>
    ${small.length ? html`<p class="soft aside small-ways">${rich(smallWords(house, small))}</p>` : nothing}`;
}

/**
 * "Wall A 3 %, floor 3 %: under 0.2 dB each."
 * @param {House} house
 * @param {{path: Path, share: number, perfect: number}[]} small
 */
function smallWords(house, small) {
  const name = (/** @type {{path: Path}} */ { path }) => {
    const face = house.faces?.[path.surface];
    return path.opening >= 0 || path.way === 'flank' ? `${inSentence(wayWords(house, path))}${face ? ` in ${letterOf(face)}` : ''}` : faceWords(face);
  };
  const most = Math.max(...small.map((w) => w.perfect));
  const shown = small.slice(0, 4);
  const rest = small.length - shown.length;
  return `${capital(shown.map((w) => `${name(w)} ${w.share < 0.005 ? `under 1${NBSP}%` : `${percent(w.share)}${NBSP}%`}`).join(', '))}${rest > 0 ? ` and ${rest} more` : ''}: ${most < NOTHING ? `under 0.2${NBSP}dB each` : `at most ${number(most, 1)}${NBSP}dB each`}.`;
}

/** A bar as long as its part of the largest. @param {number} part */
function bar(part) {
  return html`<svg class="drawing share-bar" width="62" height="10" viewBox="0 0 62 10" preserveAspectRatio="none" aria-hidden="true">
    <rect class="r-track" x="0.5" y="1" width="61" height="8" /><rect class="r-bar" x="0.5" y="1" width=${Math.round(61 * part * 10) / 10} height="8" />
  </svg>`;
}

/**
 * By what they bring, or by what they bring for a hundred; those that bring nothing last.
 * @param {Money} money
 */
export function order(money) {
  const rank = (/** @type {Change} */ c) =>
    (c.why ? -1e6 : 0) + (view.byMoney ? c.perCost || (c.cost?.v === 0 ? 1e5 + c.gain : -1e3 + c.gain) : Math.max(c.gain, 0) + c.all / 1e3);
  return [...(money.rows ?? [])].sort((a, b) => rank(b) - rank(a));
}

/**
 * @param {App} app
 * @param {House} house
 * @param {Money | undefined} money
 */
function moneyView(app, house, money) {
  if (!money) return html`<h2 class="head part">Next money</h2><p class="soft coming" role="status">…</p>`;
  if (view.adopted && view.adopted !== money) came();
  const rows = order(money);
  const all = view.open === 'all changes';
  const useful = rows.filter((r) => !r.why);
  const useless = rows.filter((r) => r.why);
  const shown = [...(all ? useful : useful.slice(0, MOST)), ...(all ? useless : useless.slice(0, 5))];
  const left = rows.length - shown.length;
  return html`<h2 class="head part"><span>Next money<span class="soft">dB gained</span></span></h2>
    ${chips(
      'Ranked by',
      [
        { value: '', words: 'by dB' },
        { value: 'money', words: `by dB for ${app.ctx.currency}100` },
      ],
      view.byMoney ? 'money' : '',
      (value) => {
        view.byMoney = value === 'money';
        app.render();
      },
    )}
    <div class="changes" role="table" aria-busy=${waits(app)} aria-label="What each change costs and brings">
      <div class="change heads" role="row"><span role="columnheader">${money.worst ? `worst off: ${money.worst}` : ''}</span><span role="columnheader">cost</span><span role="columnheader">all</span><span role="columnheader">${hasKick(house) ? 'kick' : 'bass'}</span></div>
      ${shown.map((row) => changeRow(app, house, money, row))}
    </div>
    ${
      left > 0
        ? html`<p class="taps">${tap(`and ${left} more`, () => {
            view.open = 'all changes';
            app.render();
          })}</p>`
        : nothing
    }
    ${budget(app, house, money)}`;
}

/** What was adopted is closed; the keyboard stays at its row, or goes to the first. */
function came() {
  view.adopted = undefined;
  view.change = '';
  const had = document.activeElement;
  const row = had?.closest('.change');
  queueMicrotask(() => {
    if (had?.isConnected) return;
    const name = (row?.isConnected ? row : document.querySelector('[data-change]'))?.querySelector('.name');
    /** @type {HTMLElement | null | undefined} */ (name)?.focus({ preventScroll: true });
  });
}

/**
 * Unfolds a row, or folds it.
 * @param {App} app
 * @param {string} id
 */
function toggle(app, id) {
  if (waits(app)) return;
  view.change = view.change === id ? '' : id;
  app.render();
}

/** A button of a row. @param {App} app @param {string} words @param {() => void} act */
function doIt(app, words, act) {
  return html`<button type="button" class="solid" aria-disabled=${waits(app)} @click=${act}>${words}</button>`;
}

/**
 * @param {App} app
 * @param {House} house
 * @param {Money} money
 * @param {Change} row
 */
function changeRow(app, house, money, row) {
  const open = view.change === row.id;
  const name = changeWords(row, app.ctx, house, false);
  const letters = lettersOf(row, house);
  const figures = row.why
    ? html`<span role="cell" class="none ${row.why === 'over' ? 'over' : ''}">${row.why === 'over' ? html`${mark('over')}over` : 'nothing'}</span>`
    : html`<span role="cell">${row.cost ? moneyWords(app, row.cost.v) : '–'}</span><span role="cell"><b>${gain(row.all)}</b></span><span role="cell"><b>${gain(row.bass)}</b></span>`;
  return html`<div class="change ${open ? 'open' : ''} ${row.why ? 'idle' : ''}" role="row" data-change=${row.id}>
    <span role="rowheader"><button type="button" class="name" aria-expanded=${open} aria-disabled=${waits(app)} @click=${() => toggle(app, row.id)}><b class="letter">${letters}</b><span>${rich(name)}</span></button></span>${figures}
    ${row.why ? html`<span role="cell" class="because soft">${rich(whyWords(row, house, money.worst))}</span>` : nothing}
    ${
      open
        ? html`<div role="cell" class="does">
            <p>
              ${rich(
                `Brings ${money.worst ? `the ${money.worst}` : 'the worst space'} ${gain(row.gain)}${NBSP}dB, ${gain(row.bass)} in the bass; of all that gets out ${gain(row.all)}. ${doesWords(row, app.ctx)}`,
              )}
              ${row.cost ? nothing : html`<span class="soft">A price is missing.</span>`}
            </p>
            ${doIt(app, 'Do it', () => adopt(app, [row], house))}
          </div>`
        : nothing
    }
  </div>`;
}

/**
 * The budget, and the best that can be had within it.
 * @param {App} app
 * @param {House} house
 * @param {Money} money
 */
function budget(app, house, money) {
  const { currency } = app.ctx;
  const value = app.plan.buying?.budget ?? '';
  const best = money.best;
  const chosen = (best?.ids ?? []).map((id) => money.rows?.find((row) => row.id === id)).filter((row) => row !== undefined);
  const open = view.change === 'best';
  return html`<h2 class="head part">Within a budget</h2>
    ${fieldRow(
      app,
      {
        key: 'buying.budget',
        what: 'money',
        label: 'Budget for the next changes',
        value,
        unit: currency,
        set: (q) => setBuying(app.plan, { budget: q }, `budget ${said(q)}`),
        mine: (f) => f.field === 'budget',
      },
      'I have',
    )}
    ${
      best && chosen.length
        ? html`<div class="change best ${open ? 'open' : ''}" aria-busy=${waits(app)}>
            <button
              type="button"
              class="name"
              aria-expanded=${open}
              aria-disabled=${waits(app)}
              @click=${() => toggle(app, 'best')}
            >
              <b>${capital(chosen.map((row) => inSentence(changeWords(row, app.ctx, house))).join('; '))}</b>
            </button>
            <p class="soft">${best.cost ? `${moneyWords(app, best.cost.v)}, ` : ''}${gain(best.gain)}${NBSP}dB in the ${money.worst}, ${gain(best.bass)} in the bass.</p>
            ${
              open
                ? html`<div class="does">
                    <p class="soft">${number(money.tried)} combinations looked at${money.exact ? ': none within the budget brings more' : ', not all'}.</p>
                    ${doIt(app, `Do ${chosen.length === 1 ? 'it' : `all ${chosen.length}`}`, () => adopt(app, chosen, house))}
                  </div>`
                : nothing
            }
          </div>`
        : value && !app.house?.faults?.some((f) => f.field === 'budget')
          ? html`<p class="soft aside">Nothing within it helps the ${money.worst || 'worst space'}.</p>`
          : html`<p class="soft aside">Type an amount: the changes that together bring the worst space most are found for it.</p>`
    }`;
}

/**
 * Makes changes in the plan, as one step.
 * @param {App} app
 * @param {Change[]} rows
 * @param {House} house
 */
async function adopt(app, rows, house) {
  if (waits(app)) return;
  view.adopted = app.money;
  app.render();
  const { plan } = app;
  const label = rows.map((row) => inSentence(changeWords(row, app.ctx, house))).join('; ');
  const reply = await app.ask('change', { plan, changes: rows.map((row) => row.id) }, 'change');
  if (app.plan !== plan) return;
  if (!reply.ok) {
    view.adopted = undefined;
    // The plan has moved on since the list was made: the next one is on its way.
    app.tell({ message: { head: `${capital(reply.faults?.[0]?.words ?? 'that change could not be made')}.`, pieces: [] }, taps: [] });
    return;
  }
  app.edit({ label: capital(label), plan: reply.plan });
  app.tell({
    message: { head: rows.length > 1 ? `${rows.length} changes made.` : `${capital(label)}.`, pieces: [] },
    taps: [{ words: 'Undo', act: () => app.undo() }],
  });
}
