import assert from 'node:assert/strict';
import { test } from 'node:test';
import { edges, faceView, nameOf, sheetView, sizeOf } from './cut.js';
import { sawn, tape } from './running.js';
import { flat, INCH } from './samples.js';
import { cutOf } from './samples-buy.js';
import { heightOf, thicknessOf } from './stack.js';

/** @type {import('./cut.js').Options} */
const phone = { units: 'us', width: 358 };

test('a tape and a saw read to the sixteenth, and carry over', () => {
  assert.equal(tape(0.75 * INCH, 'us'), '3/4″');
  assert.equal(tape(56 * INCH, 'us'), '4′ 8″');
  assert.equal(tape(151.8125 * INCH, 'us'), '12′ 7 13/16″');
  assert.equal(tape(11.99 * INCH, 'us'), '1′');
  assert.equal(tape(1.2192, 'si'), '1219');
  assert.equal(sawn(49.75 * INCH, 'us'), '49 3/4');
  assert.equal(sawn(1.5, 'si'), '1500');
});

test('a piece has the number of its sheet, what an offcut gives a letter', () => {
  const cut = cutOf();
  assert.deepEqual(
    (cut.pieces ?? []).map((p) => nameOf(cut, p)),
    ['1', '2', '2a'],
  );
  assert.equal(nameOf(cut, { ...(cut.pieces ?? [])[0], part: 27 }), '1aa');
  assert.equal(sizeOf({ x: 0, y: 0, w: 49.75 * INCH, h: 48 * INCH }, 'us'), '49 3/4 × 48');
});

test('two boards with a gap between them are one reading', () => {
  const cut = cutOf();
  const at = edges(
    (cut.pieces ?? []).map((p) => p.on),
    'x',
    96 * INCH,
  );
  assert.deepEqual(
    at.map((m) => Math.round((m / INCH) * 4) / 4),
    [48.25, 84.5],
  );
});

test('all pieces of a layer are drawn on it, those of the chosen sheet marked, on the face and on the sheet', () => {
  const cut = cutOf();
  const hung = /** @type {any} */ (cut.hung?.[0]);
  const face = flat(faceView(cut, hung, { width: 96 * INCH, height: 90 * INCH, name: 'wall C' }, true, { ...phone, sheet: 1 }));
  assert.equal(face.split('class="y-piece ').length - 1, 3);
  assert.equal(face.split('class="y-piece chosen').length - 1, 2);
  assert.doesNotMatch(face, /NaN|undefined/);
  const sheet = flat(sheetView(cut, 1, phone));
  assert.equal(sheet.split('class="y-piece chosen').length - 1, 2);
  assert.match(sheet, /aria-label="Sheet 2: 2, 90 × 36; 2a, 90 × 11 1\/2"/);
  assert.doesNotMatch(sheet, /NaN|undefined/);
  assert.equal(flat(sheetView(cut, 9, phone)), '');
});

test('a stack is as high as its boards are thick', () => {
  assert.equal(thicknessOf('5/8 in'), 0.625 * INCH);
  assert.equal(thicknessOf('1 1/4 in'), 1.25 * INCH);
  assert.ok(Math.abs(thicknessOf('12.5 mm') - 0.0125) < 1e-12);
  assert.equal(thicknessOf('15 mm'), 0.015);
  const one = heightOf([{ count: 10, thickness: 0.5 * INCH, wood: false }]);
  assert.ok(Math.abs(one - 16) < 1e-9, 'ten boards of half an inch are five inches, 3.2 px each');
});
