import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { typed } from './format.js';
import { broughtWords, cautionWords, faultWords, frameWords, gapWords, heldWords, leafWords, verdictText, verdictWords } from './words.js';

const SP = '\u00a0';
/** @type {import('./words.js').Ctx} */
const us = { units: 'us', currency: '$', names: { ply: 'Plywood 5/8', x: 'Gypsum 5/8 type X' } };
/** @type {import('./words.js').Ctx} */
const si = { units: 'si', currency: '€' };

/** @param {string} code @param {Record<string, number>} [args] @param {Record<string, string>} [text] */
const part = (code, args, text) => ({ code, args, text });

/** What may be tapped stands in brackets. @param {import('./words.js').Message} m */
const plain = (m) => `${m.head} ${m.pieces.map((p) => (typeof p === 'string' ? p : `[${p.tap}]`)).join('')}`.trim();

/** @param {Partial<import('./types.d.ts').Fault>} f @returns {import('./types.d.ts').Fault} */
const fault = (f) => ({ code: '', leaf: -1, field: 'mass', words: '', ...f });

test('the verdict of the yard case', () => {
  const verdict = {
    answer: 'yes',
    parts: [
      part('mass.same', { by: 0, value: 21.4 }),
      part('clip.share', { share: 0.948 }),
      part('bass.less', { by: 1 }),
      part('cost.more', { by: 142 }),
      part('sheets', { n: 12 }),
      part('screw', { length: 0.0508 }),
    ],
  };
  assert.equal(verdictText(verdict, us), `Yes. Same weight, clips at 95${SP}%, bass 1${SP}dB less. $142 more, 12 sheets, screws to 2${SP}in.`);
  const last = verdictWords(verdict, us, true);
  assert.equal(last?.answer, 'Yes,');
  assert.match(last?.text ?? '', /^by the last good figures: same weight/);
  assert.equal(verdictText(verdict, si), `Yes. Same weight, clips at 95${SP}%, bass 1${SP}dB less. €142 more, 12 sheets, screws to 51${SP}mm.`);
});

test('what is over says so, and how it would hold', () => {
  const words = verdictWords(
    {
      answer: 'no',
      parts: [part('mass.more', { by: 10.69, value: 32 }), part('clip.over', { share: 1.4 })],
      mend: { code: 'mend.rows', args: { rows: 0.4064, share: 0.94 }, edit: 'rows' },
    },
    us,
  );
  assert.equal(words?.answer, 'No.');
  assert.equal(words?.text, `2.19${SP}psf heavier, clips over at 140${SP}%. Rows 16${SP}in apart bring it to 94${SP}%.`);
  assert.deepEqual([words?.mend?.tap, words?.mend?.edit], ['Set them', 'rows']);
});

test('less than the last digit shown is the same weight, more is not', () => {
  assert.equal(verdictText({ answer: 'yes', parts: [part('mass.less', { by: 0.03, value: 21.35 })] }, us), `Yes. 0.01${SP}psf lighter.`);
  assert.equal(verdictText({ answer: 'yes', parts: [part('mass.less', { by: 0.01, value: 21.39 })] }, us), 'Yes. Same weight.');
  assert.equal(verdictText({ answer: 'yes', parts: [part('mass.more', { by: 0.03, value: 21.43 })] }, us), `Yes. 0.01${SP}psf heavier.`);
});

test('every section has its words', () => {
  /** @type {[string, ReturnType<typeof part>[], RegExp][]} */
  const cases = [
    ['load', [part('clip.unrated', { load: 18 })], /39\.7.lb on a clip that has no rating yet/],
    ['load', [part('clip.none')], /Nothing hangs on clips/],
    ['sound', [part('rating.less', { by: 2 }), part('bass.same', { by: 0 })], /Rating 2 less, same bass/],
    ['sound', [part('rating.is', { value: 58 }), part('bass.is', { value: 20 })], /Rating 58, bass 20.dB/],
    [
      'buy',
      [part('buy.total', { mass: 254, sheets: 12, cost: 362.84 }), part('buy.lift', { people: 2 }, { board: 'ply' })],
      /560.lb, 12 sheets, \$362\.84\. Two people for plywood 5\/8\./,
    ],
    ['buy', [part('buy.noPrice', { mass: 254, sheets: 1 })], /1 sheet, a price is missing/],
    ['buy', [part('buy.lacking', { n: 3 }, { board: 'ply' })], /3 sheets of plywood 5\/8 more than there are here/],
    ['swap', [part('pick.none')], /None of these holds/],
  ];
  for (const [section, parts, expected] of cases) assert.match(verdictWords({ answer: 'yes', parts }, us, false, section)?.text ?? '', expected);
});

test('every caution of the core is worded, with its numbers and nothing missing', () => {
  const source = readFileSync(new URL('../../core/caution/caution.go', import.meta.url), 'utf8');
  const codes = new Map([...source.matchAll(/^\t(\w+)\s+Code = "([^"]+)"/gm)].map((m) => [m[1], m[2]]));
  const rules = [...source.matchAll(/^\t\{(\w+), (?:Info|Care|Over), (nil|\[\]string\{([^}]*)\})\}/gm)];
  assert.ok(rules.length > 30, 'the list of the core was found');
  const texts = ['board', 'beyond', 'widest', 'like'];
  for (const [, name, , list] of rules) {
    const code = codes.get(name) ?? '';
    const names = (list ?? '').match(/\w+/g) ?? [];
    const args = Object.fromEntries(names.filter((n) => !texts.includes(n)).map((n) => [n, n === 'frequency' ? 2500 : n === 'people' ? 2 : 0.9]));
    const text = Object.fromEntries(names.filter((n) => texts.includes(n)).map((n) => [n, 'ply']));
    const words = cautionWords({ code, args, text }, us);
    assert.match(words.head, /^[A-Z].*[.?]$/, code);
    assert.match(words.text, /^[A-Z0-9±].*\.$/, code);
    assert.doesNotMatch(words.head + words.text, /undefined|NaN|–/, code);
  }
});

test('a caution names its board and its number', () => {
  assert.deepEqual(cautionWords({ code: 'fire-board-out', text: { board: 'x' } }, us), {
    head: 'Takes fire-rated board out.',
    text: 'Gypsum 5/8 type X is replaced: ask your building department.',
    grave: false,
  });
  const close = cautionWords({ code: 'close-to-rating', args: { load: 18.06, rating: 19.05, share: 0.95 } }, us);
  assert.equal(close.text, `39.8${SP}lb of 42${SP}lb: hang nothing from these boards.`);
  assert.equal(cautionWords({ code: 'over-rating', args: { load: 22, rating: 19, share: 1.16 } }, us).grave, true);
});

test('faults say what is wrong, what is allowed, and what may have been meant', () => {
  const large = fault({ code: 'large', field: 'weight', typed: '580 lb', low: '5 lb', high: '250 lb', mend: ['58 lb'] });
  assert.equal(plain(faultWords(large)), `580${SP}lb? Allowed: 5 to 250${SP}lb. Did you mean [58]?`);
  const two = fault({ code: 'ambiguous', typed: '1,200', mend: ['1200 lb', '1.2 lb'] });
  assert.equal(plain(faultWords(two)), 'Two readings. Did you mean [1\u202f200] or [1.2]?');
  const zero = fault({ code: 'zero', field: 'thickness', typed: '0', low: '1/8 in', high: '4 in' });
  assert.equal(plain(faultWords(zero)), `Thickness is 0. Allowed: 1/8 to 4${SP}in.`);
  const words = fault({ code: 'notNumber', typed: '<b>x</b>' });
  assert.equal(plain(faultWords(words)), '“<b>x</b>” is not a number.');
  const other = fault({ code: 'tooMany', field: 'layers', words: 'wall B, leaf 1: 60 layers are too many; at most 24' });
  assert.equal(plain(faultWords(other)), 'Wall B, leaf 1: 60 layers are too many; at most 24.');
});

test('links that cannot be opened say which part', () => {
  const kept = 'This is the plan that was open; nothing is lost.';
  assert.equal(
    plain(broughtWords(fault({ code: 'cut', typed: 'k24.48' }), 'link')),
    `That link is cut short: it ends at “…k24.48” without its check letters. ${kept}`,
  );
  assert.match(plain(broughtWords(fault({ code: 'altered' }), 'link')), /^That link was altered:/);
  assert.match(plain(broughtWords(fault({ code: 'newer' }), 'file')), /^Made by a newer version:/);
  assert.match(plain(broughtWords(fault({ code: 'unreadable', words: 'it is no plan' }), 'file')), /^That file cannot be read: it is no plan\./);
});

test('frames, fills and fixings in a few words', () => {
  const frame = (/** @type {string} */ frameKind, /** @type {string} */ frameName) => ({ frameKind, frameName });
  assert.equal(frameWords(frame('wood', 'Wood studs 38 x 89 (2x4)'), 'us'), '2×4 studs');
  assert.equal(frameWords(frame('wood', 'Wood studs 38 x 89 (2x4)'), 'si'), 'studs 38 × 89');
  assert.equal(frameWords(frame('wood', 'Wood studs 45 x 95'), 'si'), 'studs 45 × 95');
  assert.equal(frameWords(frame('double', 'Two rows of studs 38 x 89'), 'us'), 'two rows of 2×4 studs');
  assert.equal(frameWords(frame('joist', 'Wood joists 38 x 184 (2x8)'), 'us'), '2×8 joists');
  assert.equal(frameWords(frame('steel', 'Steel studs 92 mm 0.5 mm'), 'si'), `steel studs 92${SP}mm`);
  assert.equal(frameWords(frame('steel', 'Steel studs 92 mm 0.5 mm'), 'us'), `steel studs 3 5/8${SP}in`);
  const value = (/** @type {number} */ v) => /** @type {import('./types.d.ts').Value} */ ({ v, kind: 'length', origin: 'typical' });
  const clips = {
    fixing: 'clip',
    kind: 'clip',
    name: '',
    standOff: value(0.04),
    rows: value(0.6096),
    along: value(1.2192),
    rating: null,
    extra: null,
    shorts: false,
    screws: null,
  };
  const screwed = { ...clips, fixing: 'screwed', kind: 'screwed', rows: null, along: null };
  assert.equal(heldWords(clips, us), `clips 24 × 48${SP}in`);
  const gap = {
    ...{ id: 'g', depth: value(0.13), frame: '', frameKind: 'wood', frameName: 'Wood studs 38 x 89 (2x4)', frameDepth: null, frameWidth: null, spacing: null },
    ...{ fill: 'w', fillName: 'Stone wool sound batt', fillDepth: value(0.0889), near: clips, far: screwed, there: false, fillThere: false },
  };
  assert.deepEqual(gapWords(gap, us), { held: `clips 24 × 48${SP}in`, frame: `2×4 studs, wool 3 1/2${SP}in` });
  assert.equal(gapWords({ ...gap, fillName: '', fillDepth: null }, us).frame, '2×4 studs, empty');
  // The usual spacing of screws goes without saying.
  const apart = (/** @type {'typed' | 'typical'} */ origin, /** @type {number} */ inches) => ({ ...screwed, screws: { ...value(inches * 0.0254), origin } });
  assert.equal(gapWords({ ...gap, near: apart('typical', 12), far: apart('typical', 12) }, us).held, 'screwed');
  assert.equal(gapWords({ ...gap, near: apart('typed', 6), far: apart('typed', 6) }, us).held, `screwed, screws 6${SP}in`);
  assert.equal(gapWords({ ...gap, near: apart('typed', 8), far: apart('typed', 6) }, us).held, `screwed, screws 8${SP}in and 6${SP}in`);
  assert.deepEqual(
    [0, 1, 2].map((i) => leafWords(i, 3)),
    ['Room side', 'Middle leaf', 'Far side'],
  );
});

test('a mended value is shown without the unit that was typed', () => {
  assert.deepEqual(typed('58 lb'), { figure: '58', unit: 'lb' });
  assert.equal(plain(faultWords(fault({ code: 'large', typed: '580 kg', mend: ['580 lb'] }))), `580${SP}kg? Did you mean [580${SP}lb]?`);
});
