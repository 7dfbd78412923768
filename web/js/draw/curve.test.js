import assert from 'node:assert/strict';
import { test } from 'node:test';
import { chart, curveTable, curveView, describe } from './curve.js';
import { flat, HZ, need, sound } from './samples.js';

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

test('what is needed stands as steps one octave wide, with the shortfall between it and the curve only', () => {
  const curve = sound({ need: need() });
  for (const [width, mode] of /** @type {const} */ ([
    [358, 'phone'],
    [328, 'phone'],
    [711, 'desk'],
    [660, 'print'],
  ])) {
    const drawn = chart(curve, { ...phone, width, mode });
    assert.equal(drawn.steps.length, 7);
    drawn.steps.forEach((step, i) => {
      // An octave is 0.3 of a decade; the last one ends a hair outside the axis.
      assert.ok(Math.abs(step.x1 - step.x0 - (0.3 * (drawn.right - drawn.left)) / Math.log10(5700 / 28)) < 0.7, `${i}`);
      if (i) assert.ok(Math.abs(step.x0 - drawn.steps[i - 1].x1) < 0.01, 'one begins where the other ends');
      assert.equal(step.y, drawn.y([51, 63, 67, 72, 74, 73, 70][i]));
      for (const point of step.outline) assert.ok(point.y >= step.y && point.x > step.x0 && point.x < step.x1);
      for (const [, x, y] of step.hatch.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)) {
        assert.ok(Number(y) >= step.y - 0.1 && Number(y) <= curveAt(drawn.yours, Number(x)) + 0.6, `octave ${i}: ${x} ${y}`);
      }
      assert.ok(step.figure.y > 0, 'the figure is on the picture');
    });
    const words = flat(curveView(curve, { ...phone, width, mode }));
    assert.equal(words.match(/>short</g)?.length, 1);
    assert.equal(words.match(/>needed</g)?.length, 1);
    for (const mark of drawn.marks) assert.ok(mark.to.y > mark.at.y - 1, 'marks stay under the curve');
  }
  assert.match(describe(curve, phone), /Needed: 63\u00a0Hz 51\u00a0dB, short by 34; .*4\u00a0kHz 70\u00a0dB, short by 8\./);
});

/** @param {{x: number, y: number}[]} line @param {number} x */
function curveAt(line, x) {
  const found = line.findIndex((point) => point.x >= x);
  const i = found < 0 ? line.length - 1 : Math.max(1, found);
  const [a, b] = [line[i - 1], line[i]];
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}

test('where enough is stopped there is a step and no hatch, where nothing is played not even that', () => {
  const octaves = need().octaves.map((o, k) => ({ ...o, need: k === 0 ? 0 : o.got - 5, short: 0 }));
  const drawn = chart(sound({ need: need({ octaves, worst: -1 }) }), phone);
  assert.equal(drawn.steps.length, 6);
  assert.ok(drawn.steps.every((step) => step.hatch === '' && step.short === 0));
  const table = flat(curveTable(sound({ need: need({ octaves, worst: -1 }) }), {}));
  assert.match(table, /none/);
  assert.equal(table.match(/enough/g)?.length, 7);
});

test('a need of any size keeps every number a number', () => {
  for (const level of [-20, 0.2, 79.9, 95, 300, Number.NaN]) {
    const octaves = need().octaves.map((o) => ({ ...o, need: level, short: Math.max(0, level - o.got) }));
    for (const width of [0, 328, 711]) {
      const drawn = flat(curveView(sound({ need: need({ octaves }) }), { ...phone, width })).replace(/aria-label=.*?width=/s, '');
      assert.doesNotMatch(drawn, /NaN|Infinity|undefined|e-\d/, `${level} at ${width}`);
    }
  }
});

test('a mark close to the axis has its words aside', () => {
  const drawn = chart(sound({ tl: HZ.map((_, i) => (i < 4 ? 11 : 11 + 7 * (i - 3))), resonances: [63], decides: -1, dips: null, need: need() }), {
    ...phone,
    mode: 'print',
    width: 660,
  });
  assert.deepEqual(
    drawn.marks.map((mark) => mark.lines.join(' ')),
    ['resonance 63\u00a0Hz'],
  );
});

test('the word stands clear of the curve, whether there is enough or not', () => {
  for (const by of [0, -20, -32, -45]) {
    const octaves = need().octaves.map((o) => ({ ...o, need: Math.max(0, o.need + by), short: Math.max(0, o.need + by - o.got) }));
    for (const width of [328, 358, 711]) {
      const drawn = chart(sound({ need: need({ octaves, worst: -1 }) }), { ...phone, width });
      assert.ok(drawn.needed);
      for (const x of [drawn.needed.x, drawn.needed.x + 50]) {
        if (x < drawn.yours[0].x) continue;
        const y = curveAt(drawn.yours, Math.min(x, drawn.right - 8));
        assert.ok(y < drawn.needed.y - 12 || y > drawn.needed.y, `${by} dB at ${width}: ${y} through ${drawn.needed.y}`);
      }
    }
  }
});
