// A layout, a list and a cut made up for the tests, with invented figures.

import { INCH, value } from './samples.js';

/**
 * @typedef {import('../types-buy.d.ts').LayoutReport} LayoutReport
 * @typedef {import('../types-buy.d.ts').Spot} Spot
 * @typedef {import('../types-buy.d.ts').ListReport} ListReport
 * @typedef {import('../types-buy.d.ts').Item} Item
 * @typedef {import('../types-buy.d.ts').Cut} Cut
 */

const POUND = 0.45359237;

/** @param {number} of @returns {Spot['state']} */
function stateOf(of) {
  return of > 1 ? 'over' : of >= 0.9 ? 'close' : of >= 0.4 ? 'holds' : 'under';
}

/**
 * Rows and clips on a grid; shares by row and clip.
 * @param {object} [more]
 * @param {boolean} [more.ceiling]
 * @param {number[][]} [more.shares] of the rating
 * @param {number} [more.rating] kg; 0: none typed
 * @param {boolean} [more.alongX]
 * @returns {LayoutReport}
 */
export function layoutReport({
  ceiling = false,
  shares = [
    [0.44, 0.95, 0.86, 0.3],
    [0.5, 1.16, 0.9, 0.42],
  ],
  rating = 42 * POUND,
  alongX = true,
} = {}) {
  const width = 160 * INCH;
  const height = 96 * INCH;
  const marks = shares[0].map((_, k) => (8 + 48 * k) * INCH);
  /** @type {Spot[]} */
  const spots = [];
  const rows = shares.map((row, r) => {
    const at = (12 + 30 * r) * INCH;
    const clips = row.map((of, k) => {
      const x = alongX ? marks[k] : at;
      const y = alongX ? at : marks[k];
      const load = of * 42 * POUND;
      spots.push({
        ...{ x, y, row: r, seat: 'member', area: 0.7, share: load * 0.9, beam: load, load },
        of: rating ? of : 0,
        state: rating ? stateOf(of) : 'unrated',
        pieces: [{ x: Math.max(0, x - 0.5), y: Math.max(0, y - 0.3), width: 0.9, height: 0.6 }],
      });
      return spots.length - 1;
    });
    return {
      at,
      from: 0.00635,
      to: (alongX ? width : height) - 0.00635,
      added: false,
      clips,
      marks: marks.slice(0, row.length),
      sag: 0,
      sagOf: 0,
      momentOf: 0,
    };
  });
  const count = { over: 0, close: 0, holds: 0, under: 0, unrated: 0 };
  for (const s of spots) count[s.state]++;
  const order = spots.map((s, i) => ({ load: s.load, i })).sort((a, b) => a.load - b.load);
  return {
    layout: {
      ...{ alongX, rows, spots, boarded: 9.9, channel: 8, weight: 120, rating, per: 2, notes: [] },
      ...{ worst: order.at(-1)?.i ?? -1, least: order[0]?.i ?? -1, mean: 12, count },
    },
    face: { width, height, ceiling, openings: [], frame: { spacing: 16 * INCH, first: 16 * INCH, alongX: false, ends: false, jambs: false } },
    rules: {
      rows: 24 * INCH,
      every: 3,
      along: 48 * INCH,
      first: 3 * INCH,
      last: 6 * INCH,
      end: 8 * INCH,
      short: 0.00635,
      atOpenings: 0.15,
      staggered: false,
      even: false,
    },
    hung: [],
    fasten: [],
  };
}

/** @param {Partial<Item>} more @returns {Item} */
export function item(more) {
  return {
    ...{ code: 'sealant', of: '', size: 0, amount: 10, unit: '', waste: 0, pack: 1, buy: 1, owned: 0, price: 8.5, priced: true, cost: 8.5, mass: 0 },
    ...{ rule: '', args: null, origin: 'derived' },
    ...more,
  };
}

/** @returns {ListReport} */
export function listReport() {
  const lines = [
    {
      key: 'sheets/g',
      item: item({ code: 'sheets', of: 'g', buy: 7, price: 14.98, cost: 104.86, mass: 7 * 41 * POUND, rule: 'by-cut', args: { bound: 7, rule: 8 } }),
    },
    { key: 'screws/413', item: item({ code: 'screws', size: 1.625 * INCH, pack: 1000, buy: 2, price: 11.5, cost: 23 }) },
    { key: 'sealant/95', item: item({ buy: 15, cost: 127.5, size: 0.375 * INCH }) },
    { key: 'clips', item: item({ code: 'clips', buy: 40, price: 0, priced: false, cost: 0 }) },
  ];
  return {
    ...{ try: 0, items: lines, totals: [], notes: null, mass: value(7 * 41 * POUND, 'mass'), sheets: 7, trips: null, cargo: null, lifts: [], way: [] },
    bill: { goods: 255.36, contingency: 0, beforeTax: 255.36, tax: 17.88, total: 273.24, stillToGet: 255.36, unpriced: 1 },
    ...{
      forgot: [],
      steps: [],
      faces: [],
      names: { g: { short: 'Gypsum light', row: 'Gypsum % light', brief: '% light', nominal: '1/2 in', kind: 'gypsum', sheet: '4x8 ft' } },
    },
  };
}

/** A wall of 100 × 90 in from two sheets of 96 × 48. @returns {Cut} */
export function cutOf() {
  const rect = (/** @type {number[]} */ [x, y, w, h]) => ({ x: x * INCH, y: y * INCH, w: w * INCH, h: h * INCH });
  const piece = (/** @type {number[]} */ on, /** @type {number[]} */ at, /** @type {number} */ sheet, /** @type {number} */ part) => ({
    ...{ face: 'w', layer: 0, board: 'g', on: rect(on), at: rect(at), holes: null, sheet, part, turned: true },
  });
  return {
    try: 3,
    pieces: [
      piece([0, 0, 48, 90], [0, 0, 90, 48], 0, 0),
      piece([48.25, 0, 36, 90], [0, 0, 90, 36], 1, 0),
      piece([84.5, 0, 11.5, 90], [0, 36.125, 90, 11.5], 1, 1),
    ],
    sheets: [
      { ...{ board: 'g', no: 1, owned: false, width: 48 * INCH, length: 96 * INCH, pieces: [0], left: [rect([90.125, 0, 5.875, 48])], cuts: 1 } },
      { ...{ board: 'g', no: 2, owned: true, width: 48 * INCH, length: 96 * INCH, pieces: [1, 2], left: null, cuts: 2 } },
    ],
    hung: [
      {
        ...{ face: 'w', layer: 0, board: 'g', order: 0, area: rect([0, 0, 96, 90]), upright: true, pieces: [0, 1, 2], joints: 2, ends: 0, jointRun: 4.6 },
        ...{ stagger: 0, pastLeft: true, pastRight: false, pastFoot: false, pastHead: false },
      },
    ],
    totals: [],
    notes: null,
  };
}
