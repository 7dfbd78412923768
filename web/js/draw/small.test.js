import assert from 'node:assert/strict';
import { test } from 'node:test';
import { layout as clipLayout, clipView, describe } from './clip.js';
import { board, flat, INCH, light, rows, typeX, value } from './samples.js';
import { layout, thumbView } from './thumb.js';

const options = { units: /** @type {const} */ ('us'), width: 358, rows: 24 * INCH, along: 48 * INCH };

test('what one clip carries is drawn to one scale in both directions', () => {
  for (const [down, across] of [
    [24, 48],
    [16, 24],
    [12, 16],
    [24, 96],
  ]) {
    const { area, xs, ys } = clipLayout({ ...options, rows: down * INCH, along: across * INCH });
    const drawn = area.width / area.height;
    assert.ok(Math.abs(drawn / (across / down) - 1) < 0.25, `${down} × ${across}: ${drawn}`);
    // The area reaches halfway to the next clips each way.
    assert.ok(Math.abs(area.x + area.width / 2 - xs[1]) < 1e-9 && Math.abs(area.y + area.height / 2 - ys[1]) < 1e-9);
    assert.ok(Math.abs(area.width - (xs[2] - xs[1])) < 1e-9 && Math.abs(area.height - (ys[2] - ys[1])) < 1e-9);
  }
});

test('the drawing stays in its place and every number in it is one', () => {
  for (const width of [0, 328, 358, 655, Number.NaN]) {
    for (const metres of [0, 1e-9, 0.3, 1.2, 50, Number.NaN, null, undefined]) {
      const odd = { ...options, width, rows: metres, along: metres };
      assert.doesNotMatch(flat(clipView(odd)), /NaN|Infinity|undefined|e-\d/, `${width} px, ${metres} m`);
      const plan = clipLayout(odd);
      assert.ok(plan.left >= 0 && plan.right <= plan.width, `${width} px, ${metres} m`);
      assert.ok(plan.area.x > 0 && plan.area.x + plan.area.width < plan.width);
    }
  }
  assert.match(describe(options).replaceAll('\u00a0', ' '), /24 in between rows by 48 in along the row/);
});

test('a small section is at 28 px to the inch, and smaller where it would not fit', () => {
  for (const row of rows()) {
    const { right } = layout(row.layers, { height: 62 });
    const thick = row.layers.reduce((sum, layer) => sum + (layer.thickness?.v ?? 0), 0);
    assert.ok(Math.abs(right - 1 - (thick / INCH) * 28) < 1e-9, row.id);
  }
  const twelve = Array.from({ length: 12 }, (_, i) => light(`t${i}`));
  assert.ok(layout(twelve, { height: 62, most: 54 }).width <= 54 + 1e-9);
});

test('every number in a small section is one', () => {
  const odd = [
    [],
    [board('a', Number.NaN)],
    [board('a', -3), typeX('b', { thickness: null })],
    [board('a', 9e9, 'block')],
    [typeX('a', { thickness: value(Number.POSITIVE_INFINITY) })],
  ];
  for (const layers of odd) assert.doesNotMatch(flat(thumbView(layers, { height: 62 })), /NaN|Infinity|undefined/);
});

test('damping film is drawn as a line of its own', () => {
  assert.match(flat(thumbView([typeX('a', { join: 'film' }), typeX('b')], { height: 62 })), /d-film/);
  assert.doesNotMatch(flat(thumbView([typeX('a'), typeX('b', { join: 'film' })], { height: 62 })), /d-film/);
});
