import assert from 'node:assert/strict';
import { test } from 'node:test';
import { chart, curveTable, curveView, describe } from './curve.js';
import { flat, HZ, sound } from './samples.js';

const phone = { mode: /** @type {const} */ ('phone'), width: 358, ratingIs: 'STC' };

/** @type {[string, import('../types.d.ts').SoundReport][]} */
const curves = [
  ['usual', sound()],
  ['strong', sound({ tl: HZ.map((_, i) => 30 + 3.5 * i), resonances: [31, 90], decides: 4 })],
  ['absurd', sound({ tl: HZ.map((_, i) => 900 * i) })],
  ['weak', sound({ tl: HZ.map(() => 2), resonances: [110, 112, 5000, 20000, 3], decides: 19 })],
  ['nothing to mark', sound({ resonances: null, dips: null, decides: -1 })],
  ['not numbers', sound({ tl: HZ.map(() => Number.NaN), resonances: [Number.NaN], decides: 99 })],
  ['holes', sound({ tl: HZ.map((_, i) => (i === 7 ? Number.NaN : 20 + i)) })],
  ['no bands', sound({ hz: [], tl: [], low: [], high: [], ref: [], octaves: [] })],
  [
    'eight dips',
    sound({
      dips: [100, 200, 400, 800, 1600, 2500, 3150, 5000].map((hz, i) => ({
        hz,
        leaf: 0,
        layers: [i],
        short: 'Board of an uncommonly long name',
        kind: 'cement',
        both: i % 2 === 0,
      })),
    }),
  ],
];

test('every number in a chart is one', () => {
  for (const [name, curve] of curves) {
    for (const mode of /** @type {const} */ (['phone', 'desk', 'print'])) {
      for (const width of [0, 328, 655, Number.NaN]) {
        for (const isReference of [true, false]) {
          const drawn = flat(curveView(curve, { mode, width, ratingIs: 'STC', isReference }));
          assert.doesNotMatch(drawn.replace(/aria-label=.*?width=/s, ''), /NaN|Infinity|undefined|e-\d/, `${name}, ${mode}, ${width} px`);
        }
      }
    }
  }
});

test('0 to 80 dB, or as many twenties more as the curve takes', () => {
  assert.equal(chart(sound(), phone).most, 80);
  assert.equal(chart(sound({ tl: HZ.map(() => 82) }), phone).most, 100);
  // A likely range looks out over the top rule, whole.
  const over = chart(sound({ tl: HZ.map(() => 79) }), phone);
  assert.equal(over.most, 80);
  assert.ok(over.high.every((point) => point.y > 0 && point.y < over.y(82) + 0.01));
});

test('octaves stand as far apart as the axis from 28 Hz to 5.7 kHz makes them', () => {
  const drawn = chart(sound(), phone);
  assert.equal(drawn.x(28), drawn.left);
  assert.ok(Math.abs(drawn.x(5700) - drawn.right) < 1e-9);
  assert.ok(Math.abs(drawn.x(125) - drawn.x(62.5) - 42.77) < 0.05);
  assert.equal(drawn.y(0), drawn.bottom);
  assert.equal(drawn.tested, 2);
});

test('at most four marks, their words inside the plot, on no other words, ring or leader', () => {
  for (const [name, curve] of curves) {
    for (const width of [328, 358, 655]) {
      const drawn = chart(curve, { ...phone, width, mode: width > 400 ? 'desk' : 'phone' });
      assert.ok(drawn.marks.length <= 4, name);
      for (const mark of drawn.marks) {
        assert.ok(mark.y > drawn.top && mark.y < drawn.bottom, `${name}: ${mark.lines}`);
        for (const other of drawn.marks) {
          if (other === mark) continue;
          const apart = Math.hypot(mark.at.x - other.at.x, mark.at.y - other.at.y);
          assert.ok(apart >= 14, `${name}: rings of ${mark.lines} and ${other.lines}`);
          assert.ok(Math.abs(mark.y - other.y) > 16 || Math.abs(mark.x - other.x) > 16, `${name}: ${mark.lines} on ${other.lines}`);
        }
      }
    }
  }
});

test('the usual wall has its four marks, under the curve', () => {
  const drawn = chart(sound(), phone);
  assert.deepEqual(
    drawn.marks.map((mark) => mark.lines.join(' ').replaceAll('\u00a0', ' ')),
    ['resonance 58 Hz', '125 Hz decides STC', 'both gypsum boards dip', 'plywood dips'],
  );
  for (const mark of drawn.marks) assert.ok(mark.to.y > mark.at.y, mark.lines.join(' '));
});

test('of two marks in one place the first stays', () => {
  const drawn = chart(sound({ resonances: [63], decides: 3, dips: null }), phone);
  assert.deepEqual(
    drawn.marks.map((mark) => mark.lines.join(' ').replaceAll('\u00a0', ' ')),
    ['resonance 63 Hz'],
  );
});

test('the reference draws no second curve of itself', () => {
  assert.equal(chart(sound(), { ...phone, isReference: true }).reference.length, 0);
});

test('the numbers stand in a table too', () => {
  const table = flat(curveTable(sound(), { ratingIs: 'STC' }));
  assert.equal(table.match(/<tr/g)?.length, 2 + 7 + HZ.length);
  assert.match(table, /63\u00a0Hz/);
  assert.match(describe(sound(), phone), /resonance at 58\u00a0Hz; 125\u00a0Hz decides STC/);
  assert.match(describe(sound(), { ...phone, ratingIs: 'Rw' }), /^Sound reduction index/);
});
