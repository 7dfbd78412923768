import assert from 'node:assert/strict';
import { test } from 'node:test';
import { flat, HZ, need, report, sound } from '../draw/samples.js';
import { COLUMNS, csv, inputs, noteRows, noteView } from './note.js';

/** @type {any} */
const plan = { name: 'Garage room', region: 'US', table: 1, surfaces: [], buildUps: [] };
/** @type {any} */
const surface = { id: 's', name: 'wall B', kind: 'wall', beyond: 'bedroom' };
// Figures with all their digits, as the core gives them.
const tl = HZ.map((_, i) => 15 + Math.sqrt(7 * i));
const whole = report({ sound: sound({ tl, need: need({ octaves: need().octaves.map((o) => ({ ...o, need: o.need + 1 / 3 })) }) }) });
/** @type {import('../words.js').Ctx} */
const ctx = { units: 'us', currency: '$', report: whole };

/** A reader of RFC 4180 that shares nothing with the writer. @param {string} text */
function parse(text) {
  /** @type {string[][]} */
  const rows = [[]];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) {
      if (c === '"' && text[i + 1] === '"') {
        cell += '"';
        i++;
      } else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"') quoted = true;
    else if (c === ',') {
      rows[rows.length - 1].push(cell);
      cell = '';
    } else if (c === '\r' && text[i + 1] === '\n') {
      rows[rows.length - 1].push(cell);
      cell = '';
      rows.push([]);
      i++;
    } else cell += c;
  }
  assert.equal(cell, '');
  assert.deepEqual(rows.pop(), []);
  const [head, ...body] = rows;
  return body.map((row) => {
    assert.equal(row.length, head.length, row.join('|'));
    return Object.fromEntries(head.map((name, i) => [name, row[i]]));
  });
}

const back = parse(csv(noteRows(whole, { plan, surface }, ctx)));
const of = (/** @type {string} */ part, item = '') => back.filter((row) => row.part === part && (!item || row.item === item));

test('the table parses back, and its numbers are the report’s to the last digit', () => {
  const { sound: s } = whole;
  assert.ok(s);
  assert.deepEqual(Object.keys(back[0]), COLUMNS);
  const bands = of('band', 'transmission loss');
  assert.deepEqual(
    bands.map((row) => [row.hz, row.value, row.low, row.high, row.reference].map(Number)),
    s.hz.map((hz, i) => [hz, s.tl[i], s.low[i], s.high[i], s.ref[i]]),
  );
  assert.deepEqual([bands[0].hz, bands.at(-1)?.hz, bands.length], ['31.5', '5000', 23]);
  assert.deepEqual(
    of('octave').map((row) => [row.hz, row.value].map(Number)),
    s.octaves.map((o) => [o.hz, o.tl]),
  );
  assert.deepEqual(
    of('need', 'needed').map((row) => Number(row.value)),
    s.need?.octaves.map((o) => o.need),
  );
  const rating = Object.fromEntries(of('rating').map((row) => [row.item, row]));
  assert.equal(Number(rating.STC.value), s.stc);
  assert.equal(Number(rating.STC.low), s.stc - s.spread.rating);
  assert.equal(Number(rating['C 50-5000'].value), s.c50);
  assert.equal(rating.C.low, '', 'what has no spread has none');
  assert.equal(Number(rating['bass, 50 to 125 Hz'].value), whole.yours.bass?.v);
});

test('dots and plain minus signs, whatever the place', () => {
  const text = csv(noteRows(whole, { plan, surface }, ctx));
  assert.doesNotMatch(text, /[\u00a0\u202f\u2212]/);
  assert.equal(of('rating', 'C')[0].value, '-4');
});

test('what went in is there in SI with where it comes from', () => {
  const layers = inputs(whole, ctx);
  assert.ok(layers.length > 4);
  const row = back.find((r) => r.part === 'input' && /layer 1: .*, mass$/.test(r.item));
  assert.equal(row?.unit, 'kg/m2');
  assert.equal(Number(row?.value), whole.leaves[0].layers[0].mass?.v);
  assert.ok(of('method').length >= 5 && of('limit').length >= 4);
});

test('a name with quotes, commas and an equals sign stays one cell and no formula', () => {
  const odd = { ...plan, name: '=SUM(1,2) "room"\nB' };
  const rows = parse(csv(noteRows(whole, { plan: odd, surface }, ctx)));
  assert.equal(rows[0].item, '\'=SUM(1,2) "room"\nB');
});

test('the page has the same figures, and no code instead of words', () => {
  /** @type {any} */
  const app = { plan: { ...plan, surfaces: [{ ...surface, id: whole.surface }] }, surface, units: 'us', ctx, about: '' };
  const text = flat(noteView(app, whole)).replace(/<[^>]*>/g, ' ');
  for (const v of tl) assert.ok(text.includes(v.toFixed(1)), v.toFixed(1));
  assert.doesNotMatch(text, /undefined|NaN|\[object/);
  assert.match(text, /Needed: band, 100\u00a0dBA to sleeper, 30\u00a0dBA/);
});

test('a report without sound makes a note without bands', () => {
  const bare = report({ sound: undefined });
  const rows = parse(csv(noteRows(bare, { plan, surface }, { ...ctx, report: bare })));
  assert.equal(rows.filter((row) => row.part === 'band').length, 0);
  assert.ok(rows.some((row) => row.part === 'input'));
});
