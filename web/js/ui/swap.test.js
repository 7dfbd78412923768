import assert from 'node:assert/strict';
import { test } from 'node:test';
import { flat, report, rows } from '../draw/samples.js';
import { hung, resetSwap, sorted, swap } from './swap.js';

/** @param {any} [more] @returns {any} */
function appOf(more = {}) {
  const r = report({ rows: rows(), ...more.report });
  const buildUp = { id: 'b', leaves: [{ layers: [{ id: 'a', board: 'light' }] }], compare: { leaf: 0 }, ...more.buildUp };
  return {
    report: r,
    planId: 'p',
    plan: { surfaces: [{ id: 's', buildUp: 'b' }], buildUps: [buildUp] },
    buildUp,
    units: more.units ?? 'us',
    ctx: { units: more.units ?? 'us', currency: '$', report: r, names: {} },
    width: 358,
    wide: false,
    faults: [],
    drafts: new Map(),
    render() {},
    edit() {},
    open() {},
  };
}

/** @param {any} app */
const text = (app) =>
  flat(swap(app))
    .replaceAll('\u00a0', ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

test('the reference stays on top, then yours, then the rest by any column', () => {
  const all = rows();
  assert.deepEqual(
    sorted(all, 'bass', false).map((row) => row.id),
    ['two-x', 'sandwich', 'three-x', 'x-mdf', 'x-osb', 'x-film-x', 'three-light', 'x-light', 'two-light'],
  );
  assert.deepEqual(
    sorted(all, 'cost', true)
      .map((row) => row.id)
      .slice(2, 5),
    ['two-light', 'x-light', 'three-light'],
  );
  for (const key of /** @type {const} */ (['mass', 'cost', 'clip', 'bass', 'rating', 'leafThick', 'stack', 'stackCost'])) {
    const order = sorted(all, key, true);
    assert.deepEqual(
      order.slice(0, 2).map((row) => row.is),
      ['reference', 'yours'],
    );
    const figures = order.slice(2).map((row) => row.figures[key]?.v ?? 0);
    assert.deepEqual(
      figures,
      [...figures].sort((a, b) => a - b),
      key,
    );
  }
});

test('what is not known comes last both ways', () => {
  const all = rows();
  all[3].figures = { ...all[3].figures, cost: null };
  assert.equal(sorted(all, 'cost', true).at(-1)?.id, 'three-light');
  assert.equal(sorted(all, 'cost', false).at(-1)?.id, 'three-light');
});

test('a row has its five figures and their differences', () => {
  resetSwap();
  const words = text(appOf());
  assert.match(words, /2 × 5 ⁄ 8 type X reference 1 1 ⁄ 4 in 4\.38 1\.12 95 close 20 58/);
  assert.match(words, /4\.56 1\.42 99 close 20 57 \+0\.18 \+0\.30 close same −1 heavier, takes fire-rated board out/);
  assert.match(words, /141 over 23 61 \+2\.18 \+0\.57 over \+3 \+3 heavier/);
  assert.match(words, /3\.84 1\.40 84 18 56 −0\.54 \+0\.28 holds −2 −2/);
  assert.match(words, /Cheapest at the same bass:/);
});

test('levels differ by what their figures differ by', () => {
  resetSwap();
  const [reference, , third] = rows();
  const apart = {
    ...third,
    figures: { ...third.figures, bass: { ...third.figures.bass, v: 17.6, kind: 'decibel', origin: 'computed', diff: 0.3, same: false } },
  };
  assert.match(text(appOf({ report: { rows: [reference, apart] } })), /99 close 18 57 \+0\.18 \+0\.30 close \+1 −1/);
});

test('heads have the unit of the plan', () => {
  resetSwap();
  const words = text(appOf({ units: 'si', report: { currency: '€', ratingIs: 'Rw' } }));
  assert.match(words, /kg\/m² €\/m² clip % bass Rw/);
});

test('without prices and clips the cells are dashes, not noughts', () => {
  resetSwap();
  const all = rows().map((row) => ({ ...row, figures: { ...row.figures, cost: null, clip: null, clipLoad: null, load: /** @type {const} */ ('none') } }));
  const words = text(appOf({ report: { rows: all } }));
  assert.match(words, /4\.38 – – 20 58/);
  assert.doesNotMatch(words, /NaN|undefined|\$0/);
});

test('hanging a row keeps what hung there in the table', () => {
  const app = appOf();
  const row = app.report.rows.find((/** @type {any} */ r) => r.id === 'x-film-x');
  const made = hung(app, app.report, row, 'film');
  const [buildUp] = made.plan.buildUps;
  assert.deepEqual(
    buildUp.leaves[0].layers.map(({ board, join }) => ({ board, join })),
    [
      { board: 'typeX', join: 'film' },
      { board: 'typeX', join: undefined },
    ],
  );
  const kept = buildUp.compare.rows ?? [];
  assert.equal(kept.length, 8);
  assert.deepEqual(
    kept.at(-1)?.layers.map((layer) => layer.board),
    ['light', 'ply', 'light'],
  );
  const ids = [...buildUp.leaves[0].layers, ...kept.flatMap((c) => c.layers)].map((layer) => layer.id);
  assert.equal(new Set(ids).size, ids.length);
});
