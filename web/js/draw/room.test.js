import assert from 'node:assert/strict';
import { test } from 'node:test';
import { costAt, crackView, layOut as faceOut, faceView } from './face.js';
import { heard, house } from './house-samples.js';
import { layOut as levelsOut, levelsTable, levelsView } from './levels.js';
import { flat, value } from './samples.js';
import { layOut, tape, unfoldedView } from './unfolded.js';

const sound = (/** @type {string} */ text) => assert.doesNotMatch(text, /NaN|undefined|Infinity|\[object/);

test('the unfolded room lies in its width, faces edge to edge, the largest share with the longest bar', () => {
  for (const width of [288, 328, 358, 640]) {
    const drawn = layOut(house(), { width, units: 'us', selected: 0 });
    for (const f of drawn.faces) {
      assert.ok(f.x >= 0 && f.x + f.width <= width + 0.01, `${f.letter} at ${width}`);
      assert.ok(f.y >= 0 && f.y + f.height <= drawn.height);
    }
    const [a, b, c, floor] = drawn.faces;
    assert.ok(Math.abs(c.y + c.height - a.y) < 1e-6, 'the ceiling ends where the far wall begins');
    assert.ok(Math.abs(a.y + a.height - floor.y) < 1e-6);
    assert.ok(Math.abs(floor.y + floor.height - b.y) < 1e-6);
    assert.equal(drawn.largest, 0.7);
    sound(flat(unfoldedView(house(), { width, units: 'us', selected: 0 })));
  }
});

test('a door stands on the floor, its swing lies on it', () => {
  const [a, , , floor] = layOut(house(), { width: 358, units: 'us', selected: -1 }).faces;
  assert.equal(a.holes.length, 1, 'a box is too small to be drawn');
  const [door] = a.holes;
  assert.ok(Math.abs(door.y + door.height - floor.y) < 1e-6);
  assert.ok(door.x > a.x + a.width / 2, '2.8 m from the left of 4 m');
  assert.match(door.swing, /^M/);
  // In the wall under the floor left and right are exchanged, as seen from inside.
  const other = house();
  const faces = other.faces ?? [];
  faces[1].openings = faces[0].openings;
  const [, b] = layOut(other, { width: 358, units: 'us', selected: -1 }).faces;
  assert.ok(b.holes[0].x < b.x + b.width / 2);
  assert.ok(Math.abs(b.holes[0].y - b.y) < 1e-6, 'its foot is at the floor');
});

test('what has no room is left out of a face, not drawn over it', () => {
  const small = house();
  const faces = small.told.shape.faces ?? [];
  faces[1].width = 0.3;
  const [, b] = layOut(small, { width: 358, units: 'us', selected: -1 }).faces;
  assert.equal(b.figure, false);
  assert.equal(b.bar, 0);
  assert.deepEqual(b.name, []);
});

test('feet and inches as on a tape, millimetres bare', () => {
  assert.equal(tape(4.064, 'us').replace(/\s/g, ' '), '13′ 4″');
  assert.equal(tape(4.064, 'si'), '4064');
});

test('levels: the octaves that are judged, in order, over their target by what the core says', () => {
  const drawn = levelsOut(heard(), { width: 358, mode: 'phone', where: 'in the bedroom' });
  assert.deepEqual(
    drawn.bars.map((b) => b.octave.hz),
    [63, 125, 250, 500, 1000, 2000, 4000],
  );
  assert.equal(drawn.most, 100);
  assert.deepEqual(
    drawn.bars.map((b) => b.over),
    ['+33', '+30', '+26', '+27', '+28', '+29', '+29'],
  );
  assert.deepEqual(
    drawn.bars.map((b) => b.figure),
    ['74–92', '60–78', '58', '52', '49', '47', '45'],
    'a range where only a range holds',
  );
  for (const [i, b] of drawn.bars.entries()) {
    assert.ok(b.high < b.mean && b.mean < b.low, 'high is up');
    assert.ok(i === 0 || b.x0 > drawn.bars[i - 1].x1);
    assert.ok(b.hatchTop <= b.hatchBottom);
  }
  assert.ok(drawn.schroeder > drawn.bars[1].x1 && drawn.schroeder < drawn.bars[3].x0, '245 Hz falls into the octave of 250');
});

test('levels that hold have no hatch, stand in their bars, and take the lower scale', () => {
  const quiet = heard({ levels: [20, 36, 24, 15, 9, 6, 5, 3, 0] });
  const drawn = levelsOut(quiet, { width: 328, mode: 'phone', where: 'in the bedroom' });
  assert.equal(drawn.most, 60);
  assert.ok(drawn.bars.every((b) => b.over === ''));
  assert.ok(drawn.bars.filter((b) => !b.octave.range).every((b) => b.inside || !b.figure));
});

test('a space outdoors has no line of single notes, one where nobody listens no target', () => {
  const drawn = levelsOut(heard({ schroeder: 0, target: 0 }), { width: 358, mode: 'phone', where: 'in the yard' });
  assert.equal(drawn.schroeder, 0);
  assert.equal(drawn.listens, false);
  assert.ok(drawn.bars.every((b) => b.over === ''));
});

test('levels as picture and as table, whatever comes', () => {
  const silent = heard({ levels: HZ9(-100), state: 'notHeard' });
  for (const one of [heard(), silent, heard({ octave: [] }), heard({ levels: HZ9(150) })]) {
    for (const mode of /** @type {const} */ (['phone', 'desk', 'print'])) sound(flat(levelsView(one, { width: 328, mode, where: 'in the bedroom' })));
    sound(flat(levelsTable(one)));
  }
  const table = flat(levelsTable(heard()));
  assert.match(table, /74–92/);
  assert.match(table, /\+33/);
});

/** @param {number} v */
function HZ9(v) {
  return Array.from({ length: 9 }, () => v);
}

test('the face of a wall keeps its openings inside, to scale', () => {
  const face = /** @type {import('../types-room.d.ts').FaceReport} */ (house().faces?.[0]);
  const drawn = faceOut(face, { width: 358, units: 'us', selected: 'o1' });
  for (const h of drawn.holes) {
    assert.ok(h.x >= drawn.left - 1e-6 && h.x + h.width <= drawn.left + drawn.width + 1e-6);
    assert.ok(h.y >= drawn.top - 1e-6 && h.y + h.height <= drawn.top + drawn.height + 1e-6);
  }
  assert.ok(Math.abs(drawn.holes[0].height / drawn.holes[0].width - 2.03 / 0.81) < 0.01);
  // Larger than the wall: it is told, not drawn beyond it.
  const wide = { ...face, openings: [{ .../** @type {any} */ (face.openings)[0], width: value(9), x: -3 }] };
  const [hole] = faceOut(wide, { width: 358, units: 'us', selected: '' }).holes;
  assert.ok(hole.width <= drawn.width);
  for (const one of [face, wide, { ...face, width: null, height: null }, { ...face, openings: null }])
    sound(flat(faceView(one, { width: 328, units: 'si', selected: 'o1' })));
});

test('what a crack costs is read off between its points', () => {
  const crack = { opening: 'o1', points: [0, 1, 2, 3].map((i) => ({ width: i / 1000, wall: i, bass: 0, room: i / 2 })) };
  assert.equal(costAt(crack, 0, 'wall'), 0);
  assert.ok(Math.abs(costAt(crack, 0.0015, 'wall') - 1.5) < 1e-9);
  assert.ok(Math.abs(costAt(crack, 0.0015, 'room') - 0.75) < 1e-9);
  assert.equal(costAt(crack, 9, 'wall'), 3, 'no further than it is known');
  assert.equal(costAt({ opening: '', points: null }, 1, 'wall'), 0);
  for (const gap of [0, 0.001, 0.003]) sound(flat(crackView(crack, { width: 358, gap, most: 0.003, pad: 24 })));
});
