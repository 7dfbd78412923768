import assert from 'node:assert/strict';
import { test } from 'node:test';
import { length, words } from './fraction.js';
import { grid, hatch } from './hatch.js';
import { spread } from './place.js';
import { board, flat, gap, held, leaf, report, value } from './samples.js';
import { describe, layout, sectionView } from './section.js';

const INCH = 0.0254;
const modes = /** @type {const} */ (['phone', 'desk', 'print', 'first']);

/** @type {[string, import('../types.d.ts').Report][]} */
const walls = [
  ['two leaves', report()],
  ['one leaf', report({ leaves: [leaf(board('a', 15.9))], gaps: [] })],
  ['no leaf', report({ leaves: [], gaps: [] })],
  ['a leaf without a board', report({ leaves: [leaf(), leaf(board('f', 12.7))] })],
  [
    'four leaves',
    report({
      leaves: ['a', 'b', 'c', 'd'].map((id) => leaf(board(id, 12.7))),
      gaps: [gap(), gap({ id: 'h', frameKind: 'none', fill: '' }), gap({ id: 'i', frameKind: 'double' })],
    }),
  ],
  [
    'four leaves of masonry',
    report({ leaves: ['a', 'b', 'c', 'd'].map((id) => leaf(board(id, 300, 'block'))), gaps: [gap(), gap({ id: 'h' }), gap({ id: 'i' })] }),
  ],
  [
    'twelve thin layers',
    report({ leaves: [leaf(...Array.from({ length: 12 }, (_, i) => board(`t${i}`, 6.35, i % 2 ? 'gypsum' : 'plywood'))), leaf(board('f', 12.7))] }),
  ],
  ['two hundred layers', report({ leaves: [leaf(...Array.from({ length: 200 }, (_, i) => board(`t${i}`, 12.7))), leaf(board('f', 12.7))] })],
  ['a deep gap', report({ gaps: [gap({ depth: value(0.9), frameKind: 'double', fillDepth: value(0.4) })] })],
  ['a gap of nothing', report({ gaps: [gap({ depth: value(0), frameDepth: null, fillDepth: null })] })],
  [
    'what is not a number',
    report({
      leaves: [leaf(board('a', Number.NaN, 'gypsum', { density: Number.NaN, screw: value(Number.POSITIVE_INFINITY) })), leaf(board('f', -5))],
      gaps: [gap({ depth: value(Number.NaN), frameWidth: value(Number.NaN), near: held('clip', Number.NaN) })],
    }),
  ],
  [
    'nothing known',
    report({
      leaves: [leaf(board('a', 1, 'gypsum', { thickness: null })), leaf(board('f', 1, 'glass', { thickness: null }))],
      gaps: [gap({ depth: null, frameDepth: null, frameWidth: null, fillDepth: null })],
    }),
  ],
];
for (const kind of [
  'gypsum',
  'plywood',
  'osb',
  'mdf',
  'particleboard',
  'hardboard',
  'fibreboard',
  'cement',
  'magnesium',
  'limp',
  'lead',
  'steel',
  'glass',
  'laminated',
  'plaster',
  'block',
  'brick',
  'concrete',
  'aerated',
  'topping',
  'what comes later',
])
  walls.push([
    kind,
    report({
      leaves: [leaf(board('a', 3, kind), board('b', 18, kind, { join: 'film' }), board('c', 90, kind, { there: true, join: 'glue' })), leaf(board('f', 12.7))],
    }),
  ]);
for (const frameKind of ['none', 'wood', 'staggered', 'double', 'steel', 'joist', 'steel joist', 'strapping', 'z-bar', 'standing', 'bare'])
  for (const kind of ['screwed', 'channel', 'clip', 'untied'])
    walls.push([`${frameKind}, ${kind}`, report({ leaf: 1, gaps: [gap({ frameKind, near: held(kind, 0.5), far: held(kind, 1.625) })] })]);

test('every number in a section is one, whatever the build-up', () => {
  for (const [name, wall] of walls) {
    for (const mode of modes) {
      for (const width of [0, 240, 328, 500, Number.NaN]) {
        const drawn = flat(sectionView(wall, { units: 'us', width, mode, selected: 'a', onSelect: () => {} }));
        assert.doesNotMatch(drawn, /NaN|Infinity|undefined|e-\d/, `${name}, ${mode}, ${width} px`);
        assert.doesNotMatch(drawn, /(width|height)="?-/, `${name}, ${mode}, ${width} px`);
      }
    }
  }
});

test('the section is to scale and stays inside its place', () => {
  for (const [name, wall] of walls.filter(([name]) => name !== 'no leaf')) {
    for (const mode of /** @type {const} */ (['phone', 'desk', 'first'])) {
      const plan = layout(wall, { units: 'us', width: 358, mode });
      assert.ok(plan.left > 0 && plan.right < 358, `${name}: ${plan.left} to ${plan.right}`);
      for (const { layer, width } of plan.leaves.flatMap((l) => l.boards)) {
        const v = layer.thickness?.v ?? 0;
        if (v > 0 && v < 1) assert.ok(Math.abs(width - v * plan.scale) < 1e-9, `${name}: ${layer.id}`);
      }
    }
  }
});

test('a common wall stands as large as the place allows, a thick one at 18 px to the inch with its gap cut', () => {
  const wall = layout(report(), { units: 'us', width: 358, mode: 'phone' });
  assert.ok(Math.abs(wall.scale * INCH - 42.2) < 0.4, `${wall.scale * INCH}`);
  assert.equal(wall.shortened, false);
  const deep = layout(report({ gaps: [gap({ depth: value(0.9), frameKind: 'double' })] }), { units: 'us', width: 358, mode: 'phone' });
  assert.ok(Math.abs(deep.scale * INCH - 18) < 1e-9);
  assert.equal(deep.shortened, true);
  assert.match(flat(sectionView(report({ gaps: [gap({ depth: value(0.9) })] }), { units: 'us', width: 358, mode: 'phone' })), /Gap drawn shortened/);
  assert.ok(
    deep.dims[0].some((part) => Math.abs(part.metres - 0.9) < 1e-9),
    'the dimension line tells the true depth',
  );
});

test('paper is at true 1 : 2, or at the next scale that fits', () => {
  const half = layout(report(), { units: 'us', width: 420, mode: 'print' });
  assert.equal(half.ratio, 2);
  assert.ok(Math.abs(half.scale * INCH - 48) < 1e-9);
  const deep = layout(report({ gaps: [gap({ depth: value(0.5) })] }), { units: 'us', width: 420, mode: 'print' });
  assert.ok(deep.ratio > 2 && Math.abs(deep.scale * INCH * deep.ratio - 96) < 1e-9);
});

test('numbers never touch, and thin boards get leaders', () => {
  for (const [name, wall] of walls) {
    const { labels } = layout(wall, { units: 'us', width: 358, mode: 'phone' });
    for (let i = 1; i < labels.length; i++) assert.ok(labels[i].at - labels[i - 1].at > 8, `${name}: ${labels[i - 1].text} ${labels[i].text}`);
  }
  const twelve = layout(walls.find(([name]) => name === 'twelve thin layers')?.[1] ?? report(), { units: 'us', width: 358, mode: 'phone' });
  assert.equal(twelve.labels.filter((label) => label.leader).length, 12);
});

test('the longest screw is drawn as long as it is', () => {
  const plan = layout(report(), { units: 'us', width: 358, mode: 'phone' });
  assert.ok(plan.screw);
  assert.ok(Math.abs((plan.screw.tip - plan.screw.x) / plan.scale - 2 * INCH) < 1e-9);
  assert.ok(plan.screw.tip < plan.gaps[0].studs[0].x, 'stops short of the stud');
});

test('a hatch is the same every time, and a board that grows keeps its dots', () => {
  const cut = { kind: 'gypsum', density: 640, seed: 'layer 7', width: 21.2, height: 154 };
  const once = JSON.stringify(hatch(cut));
  for (let i = 0; i < 300; i++) hatch({ ...cut, seed: `other ${i}` }); // past what is kept
  assert.equal(JSON.stringify(hatch(cut)), once);
  assert.notEqual(JSON.stringify(hatch({ ...cut, seed: 'layer 8' })), once);
  const dots = (/** @type {number} */ height) => new Set(hatch({ ...cut, height }).flatMap((stroke) => (stroke.css === 'h-dot' ? stroke.d.split('M') : [])));
  const short = dots(100);
  const tall = dots(154);
  const kept = [...short].filter((dot) => tall.has(dot)).length;
  assert.ok(kept > 0.9 * short.size, `${kept} of ${short.size}`);
});

test('a heavier gypsum board has more dots', () => {
  for (const small of [true, false]) assert.ok(grid(500, small) > grid(670, small));
  const count = (/** @type {number} */ density) =>
    hatch({ kind: 'gypsum', density, seed: 'a', width: 17.5, height: 62, small: true })
      .map((s) => s.d.split('M').length)
      .reduce((a, b) => a + b, 0);
  assert.ok(count(673) > 1.6 * count(500));
});

test('lengths stand as fractions or bare millimetres', () => {
  assert.equal(length(1.625 * INCH, 'us').text, '1 5/8');
  assert.equal(length(-0.375 * INCH, 'us').text, '−3/8');
  assert.equal(length(0.1841, 'us', { unit: true }).text, '7 1/4\u00a0in');
  assert.equal(length(0.0159, 'us').text, '5/8');
  assert.equal(length(0.0125, 'si').text, '12.5');
  assert.equal(length(0.04, 'si').text, '40');
  assert.equal(length(0.1364, 'si').text, '136');
  assert.equal(length(undefined, 'us').text, '–');
  const drawn = flat(words('2 × 5/8 type X, ply 1 1/2').spans);
  assert.match(drawn, />5<.*>⁄<.*>8<.* type X, ply .*>1<.*>1<.*>⁄<.*>2</);
  // Each raised and dropped digit comes back to the line.
  const ups = [...drawn.matchAll(/dy=(-?[\d.]+)/g)].reduce((sum, m) => sum + Number(m[1]), 0);
  assert.ok(Math.abs(ups - 16 * 0.07) < 0.02, `${ups}`);
});

test('words beside each other keep their order and their distance', () => {
  const centres = spread(
    [10, 12, 14, 90].map((at) => ({ at, width: 12 })),
    0,
    100,
    4,
  );
  assert.ok(centres);
  for (let i = 1; i < centres.length; i++) assert.ok(centres[i] - centres[i - 1] >= 16 - 1e-9);
  assert.equal(centres[3], 90);
  assert.ok(centres[0] >= 6);
  assert.equal(
    spread(
      [
        { at: 0, width: 60 },
        { at: 1, width: 60 },
      ],
      0,
      100,
      4,
    ),
    undefined,
  );
});

test('a section says what it shows', () => {
  const words = describe(report(), { units: 'us', width: 358, mode: 'phone' });
  assert.match(words, /Plywood 5\/8\u00a0in/);
  assert.match(words, /Gap 5 1\/8\u00a0in: 2×4 studs, wool 3 1\/2 in, clip\./);
  assert.match(words, /there already/);
  assert.match(words, /Longest screw 2\u00a0in\./);
});
