import assert from 'node:assert/strict';
import { test } from 'node:test';
import * as room from './edit-room.js';

/** @type {any} */
const plan = {
  name: 'Room',
  surfaces: [
    { id: 's1', name: 'wall A', kind: 'wall', width: '160 in', height: '8 ft', buildUp: 'b1', beyond: 'hall', openings: [{ id: 'o1', kind: 'doorSolid' }] },
    { id: 's2', name: 'wall B', kind: 'wall', width: '128 in', height: '8 ft', buildUp: 'b1', beyond: 'yard' },
    { id: 's3', name: 'wall C', kind: 'wall', width: '160 in', height: '8 ft', buildUp: 'b2', beyond: 'hall' },
    { id: 's4', name: 'ceiling D', kind: 'ceiling', width: '160 in', height: '128 in', buildUp: 'b2' },
  ],
  buildUps: [{ id: 'b1' }, { id: 'b2' }, { id: 'b3', name: 'two leaves' }],
};
const frozen = JSON.stringify(plan);
test.afterEach(() => assert.equal(JSON.stringify(plan), frozen, 'an edit leaves the plan it came from'));

/** @param {any} edit */
const after = (edit) => edit.plan;

test('a size of the room goes to the faces that it decides', () => {
  const long = after(room.setSize(plan, 'length', '200 in'));
  assert.equal(long.room.length, '200 in');
  assert.deepEqual(
    long.surfaces.map((/** @type {any} */ s) => s.width),
    ['200 in', '128 in', '200 in', '200 in'],
  );
  const high = after(room.setSize(plan, 'height', '9 ft'));
  assert.deepEqual(
    high.surfaces.map((/** @type {any} */ s) => s.height),
    ['9 ft', '9 ft', '9 ft', '128 in'],
  );
  assert.equal(after(room.setSize(long, 'length', '')).room, undefined, 'nothing said, nothing kept');
});

test('a wall is split on its side, the others stay where they stand', () => {
  const made = room.splitWall(plan, 's1');
  const split = after(made?.edit);
  assert.deepEqual(
    split.surfaces.map((/** @type {any} */ s) => [s.name, s.side, s.width]),
    [
      ['wall A', 1, undefined],
      ['wall E', 1, undefined],
      ['wall B', 2, '128 in'],
      ['wall C', 3, '160 in'],
      ['ceiling D', undefined, '160 in'],
    ],
  );
  assert.equal(split.room.length, '160 in', 'the side keeps its length');
  assert.equal(split.surfaces[0].openings.length, 1);
  assert.equal(split.surfaces[1].openings, undefined, 'the door is in one half only');
  const longer = after(room.setSize(split, 'length', '180 in'));
  assert.equal(longer.surfaces[0].width, undefined, 'halves share what their side has');
  assert.equal(room.splitWall(plan, 's4'), undefined);
});

test('surfaces come with a free letter and go without moving the others', () => {
  const more = room.addSurface(plan, 'floor');
  assert.deepEqual(after(more.edit).surfaces.at(-1), { id: 's5', name: 'floor E', kind: 'floor', buildUp: 'b1' });
  const less = after(room.removeSurface(plan, 's1'));
  assert.deepEqual(
    less.surfaces.map((/** @type {any} */ s) => s.side),
    [2, 3, undefined],
  );
  assert.equal(room.removeSurface({ ...plan, surfaces: [plan.surfaces[0]] }, 's1'), undefined);
});

test('openings are added, changed and taken out', () => {
  const two = after(room.addOpening(plan, 's1', { kind: 'crack', width: '100 in' }, 'crack'));
  assert.deepEqual(two.surfaces[0].openings[1], { id: 'o2', kind: 'crack', width: '100 in' });
  const sealed = after(room.setOpening(two, 's1', 'o1', { seal: 'all', crack: '' }, 'sealed'));
  assert.deepEqual(sealed.surfaces[0].openings[0], { id: 'o1', kind: 'doorSolid', seal: 'all' });
  const typed = after(room.setOpening(sealed, 's1', 'o1', { width: '30 in', rating: '35' }, ''));
  assert.deepEqual(after(room.setKind(typed, 's1', 'o1', 'doorTwo', true, 'two')).surfaces[0].openings[0], { id: 'o1', kind: 'doorTwo', width: '30 in' });
  assert.deepEqual(after(room.setKind(typed, 's1', 'o1', 'box', false, 'box')).surfaces[0].openings[0], { id: 'o1', kind: 'box' });
  const none = after(room.removeOpening(plan, 's1', 'o1', 'door'));
  assert.equal('openings' in none.surfaces[0], false);
});

test('octaves are typed one by one, and gone when all are empty', () => {
  const one = room.octaveSet(undefined, 2, '30');
  assert.deepEqual(one, ['', '', '30', '', '', '', '']);
  const set = after(room.setOpening(plan, 's1', 'o1', { octaves: one }, ''));
  assert.equal('octaves' in after(room.setOpening(set, 's1', 'o1', { octaves: room.octaveSet(one, 2, '') }, '')).surfaces[0].openings[0], false);
});

test('a space is told once, renamed wherever it is named, and forgotten when nothing is said', () => {
  const told = after(room.setSpace(plan, 'hall', { area: '60 ft2' }, ''));
  assert.deepEqual(told.spaces, [{ name: 'hall', area: '60 ft2' }]);
  const measured = after(room.setMeasured(told, 'hall', true, { inA: '100' }, ''));
  const renamed = after(room.renameSpace(measured, 'hall', 'landing'));
  assert.deepEqual(
    renamed.surfaces.map((/** @type {any} */ s) => s.beyond),
    ['landing', 'yard', 'landing', undefined],
  );
  assert.equal(renamed.spaces[0].name, 'landing');
  assert.equal(renamed.measured[0].beyond, 'landing');
  assert.equal(room.renameSpace(plan, 'hall', ''), undefined);
  assert.equal('spaces' in after(room.setSpace(told, 'hall', { area: '' }, '')), false);
  assert.deepEqual(
    after(room.setListenerOf(plan, 'hall', 'sleeper', '')).surfaces.map((/** @type {any} */ s) => s.listener),
    ['sleeper', undefined, 'sleeper', undefined],
  );
});

test('several things play, the first of them in the plan itself', () => {
  const one = after(room.setPlaying(plan, [{ source: 'drums', level: '100' }], ''));
  assert.deepEqual([one.source, one.level, one.also], ['drums', '100', undefined]);
  const two = after(room.setPlaying(one, room.toggled(room.playing(one), 'bass'), ''));
  assert.deepEqual(two.also, [{ source: 'bass' }]);
  const left = after(room.setPlaying(two, room.toggled(room.playing(two), 'drums'), ''));
  assert.deepEqual([left.source, left.level, left.also], ['bass', undefined, undefined]);
  const none = after(room.setPlaying(left, [], ''));
  assert.equal('source' in none, false);
});

test('readings before and after are kept apart', () => {
  const before = after(room.setMeasured(plan, 'hall', false, { inA: '95' }, ''));
  const both = after(room.setMeasured(before, 'hall', true, { inA: '96' }, ''));
  assert.deepEqual(both.measured, [
    { beyond: 'hall', inA: '95' },
    { beyond: 'hall', after: true, inA: '96' },
  ]);
  assert.equal('measured' in after(room.setMeasured(before, 'hall', false, { inA: '' }, '')), false);
});

test('build-ups are called by their name or by who has them', () => {
  assert.deepEqual(room.buildUps(plan), [
    { id: 'b1', words: 'as wall A, wall B' },
    { id: 'b2', words: 'as wall C, ceiling D' },
    { id: 'b3', words: 'two leaves' },
  ]);
});
