// Reports made up for the tests of drawings and tables: the yard case, with
// invented figures.

/**
 * @typedef {import('../types.d.ts').Report} Report
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {import('../types.d.ts').LayerReport} LayerReport
 * @typedef {import('../types.d.ts').LeafReport} LeafReport
 * @typedef {import('../types.d.ts').GapReport} GapReport
 * @typedef {import('../types.d.ts').HeldReport} HeldReport
 * @typedef {import('../types.d.ts').Figures} Figures
 * @typedef {import('../types.d.ts').RowReport} RowReport
 * @typedef {import('../types.d.ts').SoundReport} SoundReport
 */

export const INCH = 0.0254;
const POUND = 0.45359237;
const SQUARE_FOOT = 0.3048 ** 2;
const PSF = POUND / SQUARE_FOOT;

/**
 * @param {number} v
 * @param {string} [kind]
 * @param {Partial<Value>} [more]
 * @returns {Value}
 */
export function value(v, kind = 'length', more = {}) {
  return { v, kind, origin: 'computed', ...more };
}

/**
 * @param {string} id
 * @param {number} mm
 * @param {string} [kind]
 * @param {Partial<LayerReport>} [more]
 * @returns {LayerReport}
 */
export function board(id, mm, kind = 'gypsum', more = {}) {
  return {
    id,
    board: `board-${kind}-${mm}`,
    short: kind,
    nominal: `${mm} mm`,
    kind,
    density: 650,
    there: false,
    join: '',
    thickness: value(mm / 1000),
    mass: value(0.65 * mm, 'surfaceMass'),
    weight: value(20, 'mass'),
    price: value(14.98, 'money'),
    sheet: '4x8 ft',
    sheetChoices: null,
    stock: null,
    plenty: false,
    owned: null,
    need: 4,
    screw: null,
    screwMax: null,
    screwWhy: '',
    wood: false,
    fireRated: false,
    ...more,
  };
}

/** @param {string} id @param {Partial<LayerReport>} [more] */
export const light = (id, more) =>
  board(id, 12.7, 'gypsum', { board: 'light', short: 'Gypsum lightweight', row: 'Gypsum % light', brief: '% light', nominal: '1/2 in', density: 496, ...more });
/** @param {string} id @param {Partial<LayerReport>} [more] */
export const half = (id, more) =>
  board(id, 12.7, 'gypsum', { board: 'half', short: 'Gypsum', row: 'Gypsum %', brief: '% gypsum', nominal: '1/2 in', density: 614, ...more });
/** @param {string} id @param {Partial<LayerReport>} [more] */
export const typeX = (id, more) =>
  board(id, 15.9, 'gypsum', {
    board: 'typeX',
    short: 'Gypsum type X',
    row: 'Gypsum % type X',
    brief: '% type X',
    nominal: '5/8 in',
    density: 673,
    fireRated: true,
    ...more,
  });
/** @param {string} id @param {Partial<LayerReport>} [more] */
export const plywood = (id, more) =>
  board(id, 15.9, 'plywood', { board: 'ply', short: 'Plywood', row: 'Plywood %', brief: 'ply %', nominal: '5/8 in', density: 560, wood: true, ...more });
/** @param {string} id @param {Partial<LayerReport>} [more] */
export const osb = (id, more) =>
  board(id, 19.05, 'osb', { board: 'osb', short: 'OSB', row: 'OSB %', brief: 'OSB %', nominal: '3/4 in', density: 610, wood: true, ...more });
/** @param {string} id @param {Partial<LayerReport>} [more] */
export const mdf = (id, more) =>
  board(id, 19.05, 'mdf', { board: 'mdf', short: 'MDF', row: 'MDF %', brief: 'MDF %', nominal: '3/4 in', density: 750, wood: true, ...more });

/**
 * @param {...LayerReport} layers
 * @returns {LeafReport}
 */
export function leaf(...layers) {
  const thickness = layers.reduce((sum, layer) => sum + (layer.thickness?.v ?? 0), 0);
  return { layers, thickness: value(thickness), mass: value(21.4, 'surfaceMass'), there: layers.every((layer) => layer.there) };
}

/**
 * @param {string} kind
 * @param {number} [inches]
 * @returns {HeldReport}
 */
export function held(kind, inches = 0) {
  const clip = kind === 'clip';
  return {
    fixing: kind,
    kind,
    name: kind,
    standOff: value(inches * INCH),
    rows: clip ? value(24 * INCH) : null,
    along: clip ? value(48 * INCH) : null,
    rating: clip ? value(42 * POUND, 'mass', { origin: 'typed', as: '42 lb' }) : null,
    extra: null,
    shorts: false,
    screws: null,
  };
}

/**
 * @param {Partial<GapReport>} [more]
 * @returns {GapReport}
 */
export function gap(more = {}) {
  return {
    id: 'gap',
    depth: value(5.125 * INCH),
    frame: 'wood',
    frameKind: 'wood',
    frameName: '2×4 studs',
    frameDepth: value(3.5 * INCH),
    frameWidth: value(1.5 * INCH),
    spacing: value(16 * INCH),
    fill: 'wool',
    fillName: 'wool 3 1/2 in',
    fillDepth: value(3.5 * INCH),
    near: held('clip', 1.625),
    far: held('screwed'),
    there: true,
    fillThere: false,
    ...more,
  };
}

/**
 * @param {number[]} numbers psf, money per ft², clip %, bass, rating, thickness in inches
 * @param {Figures['load']} load
 * @param {number[]} [diff] of the first five
 * @returns {Figures}
 */
export function figures([mass, cost, clip, bass, rating, thick], load, diff) {
  const d = diff ?? [0, 0, 0, 0, 0];
  /** @param {number} i @param {number} [times] @returns {Partial<Value>} */
  const from = (i, times = 1) => (diff ? { diff: d[i] * times, same: d[i] === 0 } : {});
  return {
    mass: value(mass * PSF, 'surfaceMass', from(0, PSF)),
    cost: value(cost / SQUARE_FOOT, 'moneyRate', from(1, 1 / SQUARE_FOOT)),
    clip: value(clip / 100, 'share', from(2, 0.01)),
    clipLoad: value(0.42 * clip * POUND, 'mass'),
    bass: value(bass, 'decibel', { low: bass - 6, high: bass + 6, ...from(3) }),
    rating: value(rating, 'decibel', { low: rating - 3, high: rating + 3, ...from(4) }),
    built: value(rating - 6, 'decibel'),
    thickness: value((thick + 5.625) * INCH, 'length', diff ? { diff: (thick - 1.25) * INCH } : {}),
    leafThick: value(thick * INCH),
    stack: value(mass * 32 * POUND, 'mass'),
    stackCost: value(cost * 32, 'money'),
    load,
    c: -4,
    ctr: -11,
  };
}

/** @type {[string, RowReport['is'], LayerReport[], Figures][]} */
const table = [
  ['two-x', 'reference', [typeX('a1'), typeX('a2')], figures([4.38, 1.12, 95, 20, 58, 1.25], 'close')],
  ['sandwich', 'yours', [light('b1'), plywood('b2'), light('b3')], figures([4.38, 2.23, 95, 19, 57, 1.625], 'close', [0, 1.11, 0, -1, -1])],
  ['x-osb', '', [typeX('c1'), osb('c2')], figures([4.56, 1.42, 99, 20, 57, 1.375], 'close', [0.18, 0.3, 4, 0, -1])],
  ['three-light', '', [light('d1'), light('d2'), light('d3')], figures([3.84, 1.4, 84, 18, 56, 1.5], 'holds', [-0.54, 0.28, -11, -2, -2])],
  ['x-light', '', [typeX('e1'), light('e2')], figures([3.47, 1.03, 76, 17, 55, 1.125], 'holds', [-0.91, -0.09, -19, -3, -3])],
  ['x-film-x', '', [typeX('f1', { join: 'film' }), typeX('f2')], figures([4.42, 2.19, 96, 20, 61, 1.25], 'close', [0.04, 1.07, 1, 0, 3])],
  ['three-x', '', [typeX('h1'), typeX('h2'), typeX('h3')], figures([6.56, 1.69, 141, 23, 61, 1.875], 'over', [2.18, 0.57, 46, 3, 3])],
  ['x-mdf', '', [typeX('i1'), mdf('i2')], figures([5.19, 2.0, 112, 21, 58, 1.375], 'over', [0.81, 0.88, 17, 1, 0])],
  ['two-light', '', [light('j1'), light('j2')], figures([2.56, 0.94, 57, 15, 52, 1], 'holds', [-1.82, -0.18, -38, -5, -6])],
];

/** @returns {RowReport[]} */
export function rows() {
  return table.map(([id, is, layers, f]) => ({
    id,
    is,
    layers,
    figures: f,
    overMass: (f.mass?.v ?? 0) > 4.38 * PSF * 1.001,
    overClip: f.load === 'over',
    cautions:
      layers.some((layer) => layer.wood) && is !== 'reference'
        ? [{ code: layers.at(-1)?.wood ? 'fire-board-out' : 'wood-between', text: { board: 'Plywood' } }]
        : null,
  }));
}

/**
 * @param {Partial<Report>} [more]
 * @returns {Report}
 */
export function report(more = {}) {
  return {
    surface: 's',
    buildUp: 'b',
    leaf: 0,
    ratingIs: 'STC',
    currency: '$',
    area: value(107 * SQUARE_FOOT, 'area'),
    yours: table[1][3],
    reference: table[0][3],
    refLayers: table[0][2],
    isReference: false,
    leaves: [
      leaf(light('a', { screw: value(2 * INCH) }), plywood('b', { screw: value(1.625 * INCH) }), light('c', { screw: value(INCH) })),
      leaf(half('f', { there: true })),
    ],
    gaps: [gap()],
    load: {
      leaf: 0,
      area: value(8 * SQUARE_FOOT, 'area'),
      boards: value(4.38 * PSF, 'surfaceMass'),
      channel: value(0.15 * PSF, 'surfaceMass'),
      fill: null,
      extra: null,
      own: value(36.2 * POUND, 'mass'),
      onClip: value(39.8 * POUND, 'mass'),
      rating: value(42 * POUND, 'mass', { origin: 'typed', as: '42 lb' }),
      share: value(0.95, 'share'),
      state: 'close',
      holdsRows: value(25.25 * INCH),
      perArea: value(1.35, 'number'),
      count: 18,
      added: null,
    },
    buy: { lines: null, mass: null, cost: null, sheets: 12, waste: null, screws: null },
    picks: { closest: 'two-x', cheapest: 'x-osb', best: 'x-film-x' },
    verdicts: {},
    cautions: null,
    ...more,
  };
}

export const HZ = [31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000];
const TL = [20, 18.4, 17, 15, 20, 27, 33, 38.5, 44, 48, 52, 55, 58, 61, 63, 64.5, 65, 66, 65, 61, 59, 63, 66];
const HALF = [9, 8, 6, 6, 6, 5, 4.5, 4, 3.5, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3.2, 3.6, 4, 4, 4];
const REF = [20.2, 18.8, 17.5, 16, 21, 28, 34, 40, 45, 49, 53, 56, 59, 62, 64, 66, 67.5, 67, 63, 57, 60, 64, 67];

/**
 * @param {Partial<SoundReport>} [more]
 * @returns {SoundReport}
 */
export function sound(more = {}) {
  const tl = more.tl ?? TL;
  return {
    hz: HZ,
    tl,
    low: tl.map((r, i) => r - HALF[i]),
    high: tl.map((r, i) => r + HALF[i]),
    ref: REF,
    octaves: [63, 125, 250, 500, 1000, 2000, 4000].map((hz, k) => ({
      hz,
      tl: [17, 31, 47, 57, 64, 63, 62][k],
      spread: [6, 5, 4, 3, 3, 3, 4][k],
      ref: [18, 32, 48, 58, 66, 61, 63][k],
    })),
    stc: 57,
    rw: 58,
    c: -4,
    ctr: -11,
    c50: -6,
    ctr50: -17,
    oitc: 44,
    spread: { rating: 3, bass: 6, family: 'wood studs with channel', tests: 4, near: true },
    resonances: [58],
    dips: [
      { hz: 1250, leaf: 0, layers: [1], short: 'Plywood', kind: 'plywood', both: false },
      { hz: 3150, leaf: 0, layers: [0, 2], short: 'Gypsum', kind: 'gypsum', both: true },
    ],
    decides: 6,
    eightRule: false,
    sentences: null,
    ...more,
  };
}

/**
 * A band at 100 dBA before a sleeper, against the curve above.
 * @param {Partial<import('../types.d.ts').Need>} [more]
 * @returns {import('../types.d.ts').Need}
 */
export function need(more = {}) {
  const needed = [51, 63, 67, 72, 74, 73, 70];
  return {
    source: 'band',
    level: 100,
    listener: 'sleeper',
    allowed: 30,
    octaves: [63, 125, 250, 500, 1000, 2000, 4000].map((hz, k) => {
      const got = [17, 31, 47, 57, 64, 63, 62][k];
      return { hz, need: needed[k], got, short: Math.max(0, needed[k] - got) };
    }),
    worst: 0,
    floor: true,
    ...more,
  };
}

/**
 * The ladder of the yard case, a step down among its steps.
 * @returns {import('../types.d.ts').StepReport[]}
 */
export function ladder() {
  /** @type {[string, string, Partial<import('../types.d.ts').StepReport>, number, number, number | null][]} */
  const steps = [
    ['bare', 'taken', { board: 'light', short: 'Gypsum light', nominal: '1/2 in' }, 15, 35, null],
    ['fill', 'taken', { fill: 'Stone wool sound batt', depth: value(3.5 * INCH) }, 15, 39, 58],
    ['fixing', 'taken', { fixing: 'clip' }, 12, 47, 252],
    ['board', 'taken', { board: 'ply', short: 'Plywood', nominal: '5/8 in' }, 17, 55, 166],
    ['board', 'here', { board: 'light', short: 'Gypsum light', nominal: '1/2 in' }, 19, 57, 60],
    ['far', 'open', { leaf: 1, board: 'typeX', short: 'Gypsum type X', nominal: '5/8 in' }, 21, 60, 72],
    ['twoRows', 'open', { frame: 'Two rows of studs 38 x 89' }, 27, 65, null],
  ];
  let [bassWas, ratingWas] = [0, 0];
  return steps.map(([rung, where, more, bass, rating, cost], i) => {
    const diff = (/** @type {number} */ d) => (i > 0 ? { diff: d } : {});
    const step = {
      rung,
      where,
      leaf: 0,
      bass: value(bass, 'decibel', diff(bass - bassWas)),
      rating: value(rating, 'decibel', diff(rating - ratingWas)),
      mass: value(20 + i, 'surfaceMass'),
      cost: cost === null ? null : value(cost, 'money'),
      ...more,
    };
    if (where !== 'open') [bassWas, ratingWas] = [bass, rating];
    return step;
  });
}

/**
 * The text of a template with all its values, tags included.
 * @param {unknown} part
 * @returns {string}
 */
export function flat(part) {
  if (Array.isArray(part)) return part.map(flat).join('');
  if (typeof part === 'function') return '';
  if (part && typeof part === 'object' && 'strings' in part && 'values' in part) {
    const { strings, values } = /** @type {{strings: string[], values: unknown[]}} */ (part);
    return strings.map((text, i) => text + (i < values.length ? flat(values[i]) : '')).join('');
  }
  if (part && typeof part === 'object' && '_$litDirective$' in part) {
    // repeat: items, key, template
    const [items, , template] = /** @type {{values: [unknown[], unknown, (item: unknown, i: number) => unknown]}} */ (/** @type {unknown} */ (part)).values;
    return items.map((item, i) => flat(template(item, i))).join('');
  }
  return typeof part === 'symbol' || part === undefined || part === null ? '' : String(part);
}
