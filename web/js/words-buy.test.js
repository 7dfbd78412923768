import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { value } from './draw/samples.js';
import { item, layoutReport, listReport } from './draw/samples-buy.js';
import {
  amountWords,
  buyVerdict,
  fine,
  forgotWords,
  gradeWords,
  itemName,
  layoutFault,
  loadNote,
  loadVerdict,
  mendWords,
  pastWords,
  ruleWords,
  savedWords,
  sheetMass,
  stepSaid,
  takeoffNote,
} from './words-buy.js';

/** @type {import('./words.js').Ctx} */
const ctx = { units: 'us', currency: '$' };
const plain = (/** @type {string | undefined} */ text) => (text ?? '').replace(/[\u00a0\u202f]/g, ' ');
const core = new URL('../../core/', import.meta.url);

/** Codes that the core's sources name, by the start of their Go names. @param {string} folder @param {RegExp} names */
function codes(folder, names) {
  const text = readdirSync(new URL(folder, core))
    .filter((f) => f.endsWith('.go') && !f.endsWith('_test.go'))
    .map((f) => readFileSync(new URL(`${folder}/${f}`, core), 'utf8'))
    .join('\n');
  return [...text.matchAll(/^\t(\w+)\s+(?:caution\.)?Code\s+= "([a-z-]+)"/gm)].filter((m) => names.test(m[1])).map((m) => m[2]);
}
const NUMBERS = new Proxy({}, { get: (_, key) => (typeof key === 'string' ? 1 : undefined), has: () => true, ownKeys: () => [] });
const note = (/** @type {string} */ code) => ({ code, face: 'w', layer: 1, board: 'g', args: /** @type {any} */ (NUMBERS), hold: false });

test('no code of the takeoff is without its words', () => {
  const names = { g: { short: 'Gypsum', row: 'Gypsum %', brief: '%', nominal: '1/2 in', kind: 'gypsum', sheet: '4x8 ft' } };
  const steps = codes('takeoff', /^Step/);
  const forgot = codes('takeoff', /^Forgot/);
  const rules = codes('takeoff', /^Rule/);
  const items = codes('takeoff', /^Item/);
  const notes = codes('takeoff', /^(?!Step|Forgot|Rule|Item)/);
  assert.ok(
    steps.length > 15 && forgot.length > 10 && rules.length > 15 && items.length > 9 && notes.length > 20,
    [steps, forgot, rules, items, notes].map((l) => l.length).join(),
  );
  for (const code of steps.filter((c) => c !== 'paint')) assert.notEqual(stepSaid(note(code), [], ctx).head.toLowerCase(), code.replaceAll('-', ' '), code);
  for (const code of forgot) assert.doesNotMatch(forgotWords(note(code)), /forgot/, code);
  for (const code of rules) assert.ok(ruleWords(item({ rule: code, args: /** @type {any} */ (NUMBERS) }), ctx).length > 8, code);
  for (const code of items.filter((c) => c !== 'sheets')) {
    const name = itemName(item({ code, size: 0.0254 }), listReport(), ctx);
    assert.ok(/^[A-Z]/.test(name) && name.length > 4, name);
    assert.ok(amountWords(item({ code, buy: 2 }), ctx).length > 0, code);
  }
  for (const code of notes) {
    const said = takeoffNote(note(code), names, [], ctx);
    assert.ok(said.text.length > 8, `${code}: ${said.text}`);
    assert.doesNotMatch(said.head + said.text, /undefined|NaN/, code);
  }
});

test('no code of the load is without its words', () => {
  const all = codes('load', /./);
  assert.ok(all.length > 25, all.join());
  const faults = codes('load', /^Fault/);
  for (const code of all) {
    const elsewhere = ['none-holds', 'no-rating'].includes(code);
    const said = faults.includes(code)
      ? layoutFault({ code, args: /** @type {any} */ (NUMBERS) }, ctx)
      : loadNote({ code, args: /** @type {any} */ (NUMBERS) }, ctx);
    if (!elsewhere) assert.ok(said && said.text.length > 10, `${code}: ${said?.text}`);
    assert.doesNotMatch(`${said?.head}${said?.text}`, /NaN/, code);
  }
});

test('the verdict of the load goes by the clips', () => {
  const over = layoutReport();
  assert.equal(loadVerdict(over, ctx)?.answer, 'Not yet.');
  assert.match(plain(loadVerdict(over, ctx)?.text), /^One of 8 clips is over: the worst has 48.7 lb on a clip rated 42 lb, 116 %\.$/);
  over.hung = [{ id: 'h1', name: 'Air box', x: 56 * 0.0254, y: 42 * 0.0254, mass: value(12 * 0.45359237, 'mass') }];
  assert.match(plain(loadVerdict(over, ctx)?.text), /^With the 12 lb air box, one of 8 clips is over/);
  over.hung[0].x = 3.9;
  assert.match(plain(loadVerdict(over, ctx)?.text), /^One of 8/, 'what hangs elsewhere is not named');
  const holds = layoutReport({ shares: [[0.5, 0.7, 0.95, 0.3]] });
  assert.equal(loadVerdict(holds, ctx)?.answer, 'Yes.');
  assert.match(plain(loadVerdict(holds, ctx)?.text), /one close, one under\.$/);
  assert.match(plain(loadVerdict(layoutReport({ rating: 0 }), ctx)?.text), /no rating of a clip is known/);
  assert.equal(loadVerdict({ ...holds, layout: null }, ctx), undefined);
});

test('the mend is one clip where that is enough, else the grid that holds', () => {
  const report = layoutReport({ ceiling: true });
  report.mend = { x: 88 * 0.0254, y: 42 * 0.0254, share: value(0.95, 'share') };
  report.widest = { rows: value(0.4064), along: value(1.2192), share: value(0.8, 'share'), clips: 24 };
  assert.deepEqual(plain(mendWords(report, ctx)?.before), 'One more in row 2 at 7′ 4″ brings the worst to 95 %.');
  report.mend.share = value(1.02, 'share');
  assert.match(plain(mendWords(report, ctx)?.before), /^Rows 16 in and clips 48 in apart hold: 24 clips, the worst at 80 %\.$/);
  assert.equal(mendWords(layoutReport({ shares: [[0.5]] }), ctx), undefined, 'what holds needs none');
});

test('the verdict of the list tells load, trips, people and money; what does not go in is not yet', () => {
  const list = listReport();
  list.trips = [{ rows: [], mass: 1 }];
  assert.match(plain(buyVerdict(list, ctx, '1 000 lb').text), /^7 sheets, 287 lb: one trip at your 1 000 lb\. \$273\.24 so far, 1 price missing\.$/);
  list.bill.unpriced = 0;
  assert.match(plain(buyVerdict(list, ctx).text), /\$273\.24 with tax\.$/);
  if (list.items) list.items[0].lacking = 2;
  assert.equal(buyVerdict(list, ctx).answer, 'Not yet.');
  assert.match(plain(buyVerdict(list, ctx).text), /2 sheets of gypsum 1\/2 light more than there are here\. \$273\.24 with tax\.$/);
  list.way = [{ board: 'g', notes: [], cut: null }];
  assert.equal(buyVerdict(list, ctx).answer, 'Not yet.');
  assert.equal(buyVerdict({ ...list, items: [] }, ctx).answer, 'Nothing to buy yet.');
});

test('small lengths, sheets, edges, savings and grades as they are said', () => {
  assert.equal(plain(fine((9 / 64) * 0.0254, ctx)), '9/64 in');
  assert.equal(plain(fine(0.00046, ctx)), '0.018 in');
  assert.equal(plain(fine(0.00046, { ...ctx, units: 'si' })), '0.46 mm');
  assert.equal(plain(sheetMass(31.81, ctx)), '70 lb');
  assert.equal(pastWords({ left: true, right: true, foot: false, head: false }), 'runs past at left and right, stops short at foot and head');
  assert.equal(pastWords({ left: 0, right: 0 }), 'stops short at every edge');
  const as = { length: 2.4, sheets: 10, buy: 10, joints: 30, ends: 2, cuts: 20, each: 1, mass: 1 };
  assert.equal(savedWords(as, { ...as, buy: 6, joints: 8 }), 'save 4 sheets and 22 joints');
  assert.equal(savedWords(as, { ...as, buy: 8, cuts: 23 }), 'save 2 sheets, take 3 cuts more');
  assert.equal(savedWords(as, as), 'same');
  assert.equal(plain(gradeWords('spf-2')), 'Spruce-pine-fir No. 2');
  assert.equal(gradeWords('c24'), 'C24');
});
