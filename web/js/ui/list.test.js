import assert from 'node:assert/strict';
import { test } from 'node:test';
import { item, listReport } from '../draw/samples-buy.js';
import { FORGOT, gotOf, listCsv, stillToGet } from './list.js';

/** @param {[string, number][]} [ticks] @param {any} [more] @returns {any} */
const appOf = (ticks = [], more = {}) => ({ ticks: new Map(ticks), units: 'us', ctx: { units: 'us', currency: '$' }, plan: {}, ...more });

/** A line of a table into its fields. @param {string} line */
function fields(line) {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map((m) => (m[1] ?? m[2] ?? '').replaceAll('""', '"'));
}

test('what is ticked is got, and more of it is still to get when the list grows', () => {
  const list = listReport();
  const [sheets] = list.items ?? [];
  assert.deepEqual(gotOf(appOf(), sheets), { got: false, more: 0 });
  assert.deepEqual(gotOf(appOf([['sheets/g', 7]]), sheets), { got: true, more: 0 });
  assert.deepEqual(gotOf(appOf([['sheets/g', 5]]), sheets), { got: true, more: 2 });
  assert.equal(stillToGet(appOf(), list).toFixed(2), '255.36');
  assert.equal(stillToGet(appOf([['sheets/g', 7]]), list).toFixed(2), '150.50');
  assert.equal(stillToGet(appOf([['sheets/g', 5]]), list).toFixed(2), (150.5 + 2 * 14.98).toFixed(2));
});

test('the table is quoted, has decimal points, its units in the head, and its sums last', () => {
  const list = listReport();
  const text = listCsv(
    appOf([
      ['sealant/95', 15],
      [`${FORGOT}forgot-mask`, 0],
    ]),
    list,
  );
  assert.ok(text.startsWith('\ufeff'));
  const rows = text.slice(1).trim().split('\r\n').map(fields);
  assert.deepEqual(rows[0], ['item', 'how many', 'to buy', 'own', 'price ($)', 'cost ($)', 'weight (lb)', 'counted by', 'got']);
  assert.equal(rows[1][5], '104.86');
  assert.equal(rows[1][6], '287.0');
  assert.equal(rows[3][8], 'yes');
  assert.equal(rows[4][5], '', 'no price is no cost, and not 0');
  assert.equal(rows[5][0], 'Masks and goggles');
  const sums = Object.fromEntries(rows.slice(6).map((r) => [r[0], r[5]]));
  assert.deepEqual(sums, { '': sums[''], 'before tax': '255.36', tax: '17.88', 'in all': '273.24', 'still to get, before tax': '127.86' });
  assert.doesNotMatch(text.slice(1), /[\u00a0\u202f\u2212]/);
});

test('nothing in the table begins a formula, and a quote is doubled', () => {
  const list = listReport();
  list.items = [{ key: 'x', item: item({ code: 'sheets', of: 'x' }) }];
  list.names = { x: { short: '', row: '=HYPERLINK("x")', brief: '', nominal: '1/2 in', kind: '', sheet: '' } };
  const row = listCsv(appOf(), list).split('\r\n')[1];
  assert.ok(row.startsWith(`"'=HYPERLINK(""x"")"`), row);
});
