import assert from 'node:assert/strict';
import test from 'node:test';
import * as edit from './edit.js';

/** @returns {import('./types.d.ts').Plan} */
function wall() {
  return {
    format: 1,
    table: 1,
    name: 'Garage room',
    region: 'US',
    units: 'us',
    surfaces: [{ id: 's1', name: 'wall B', kind: 'wall', buildUp: 'b1' }],
    buildUps: [
      {
        id: 'b1',
        leaves: [
          {
            layers: [
              { id: 'l1', board: 'light' },
              { id: 'l2', board: 'ply', join: 'glue' },
              { id: 'l3', board: 'light' },
            ],
          },
          { layers: [{ id: 'l4', board: 'regular', there: true }] },
        ],
        gaps: [{ id: 'g1', frame: 'wood', near: { fixing: 'clip', rows: '24 in', along: '48 in' }, far: { fixing: 'screwed' } }],
        compare: { leaf: 0 },
      },
    ],
  };
}

/** @param {import('./types.d.ts').Plan} plan @param {number} [leaf] */
const boards = (plan, leaf = 0) => plan.buildUps[0].leaves[leaf].layers.map((y) => y.board);

test('an edit leaves the plan it came from as it was', () => {
  const plan = Object.freeze(wall());
  const before = JSON.stringify(plan);
  edit.changeBoard(plan, 'b1', 'l2', 'osb', 'OSB');
  edit.addLayer(plan, 'b1', 0, 'osb', 'OSB');
  edit.setShelf(plan, 'ply', { weight: '58 lb' }, 'weight');
  edit.removeLeaf(plan, 'b1', 0);
  edit.setHeld(plan, 'b1', 'g1', 'near', { rows: '16 in' }, 'rows');
  assert.equal(JSON.stringify(plan), before);
});

test('a board is changed, added, moved and removed, and ids stay', () => {
  const plan = wall();
  const changed = edit.changeBoard(plan, 'b1', 'l2', 'osb', 'OSB 3/4').plan;
  assert.deepEqual(boards(changed), ['light', 'osb', 'light']);
  assert.equal(changed.buildUps[0].leaves[0].layers[1].id, 'l2');
  assert.equal(changed.buildUps[0].leaves[0].layers[1].join, 'glue');

  // A new board faces the room on the room side, and the other side on the far one.
  assert.deepEqual(boards(edit.addLayer(plan, 'b1', 0, 'x', 'X').plan), ['x', 'light', 'ply', 'light']);
  assert.deepEqual(boards(edit.addLayer(plan, 'b1', 1, 'x', 'X').plan, 1), ['regular', 'x']);
  assert.equal(edit.addLayer(plan, 'b1', 0, 'x', 'X').plan.buildUps[0].leaves[0].layers[0].id, 'l5');

  assert.deepEqual(boards(edit.moveLayer(plan, 'b1', 'l2', 0, 'ply')?.plan ?? plan), ['ply', 'light', 'light']);
  assert.equal(edit.moveLayer(plan, 'b1', 'l1', -1, 'light'), undefined);
  assert.equal(edit.moveLayer(plan, 'b1', 'l3', 3, 'light'), undefined);
  assert.equal(edit.moveLayer(plan, 'b1', 'nowhere', 0, 'light'), undefined);

  const off = edit.removeLayer(plan, 'b1', 'l4', 'Gypsum 1/2', true);
  assert.equal(off.label, 'Gypsum 1/2 taken off');
  assert.deepEqual(boards(off.plan, 1), []);
});

test('the shelf keeps what was said and forgets what was cleared', () => {
  let { plan } = edit.setShelf(wall(), 'ply', { weight: '58 lb' }, 'weight');
  ({ plan } = edit.setShelf(plan, 'light', { price: '14.98 $' }, 'price'));
  ({ plan } = edit.setShelf(plan, 'ply', { stock: '0' }, 'stock'));
  assert.deepEqual(plan.shelf, [
    { board: 'ply', weight: '58 lb', stock: '0' },
    { board: 'light', price: '14.98 $' },
  ]);
  ({ plan } = edit.setShelf(plan, 'light', { price: '' }, 'price'));
  assert.deepEqual(plan.shelf, [{ board: 'ply', weight: '58 lb', stock: '0' }]);
  assert.deepEqual(edit.clearShelf(plan, 'ply', 'Plywood').plan.shelf, []);
});

test('leaves come and go with their gaps', () => {
  const three = edit.addLeaf(wall(), 'b1', 'regular')?.plan ?? wall();
  assert.equal(three.buildUps[0].leaves.length, 3);
  assert.equal(three.buildUps[0].gaps?.length, 2);
  assert.equal(three.buildUps[0].gaps?.[1].id, 'g2');
  const four = edit.addLeaf(three, 'b1', 'regular')?.plan ?? three;
  assert.equal(edit.addLeaf(four, 'b1', 'regular'), undefined);

  const middle = edit.removeLeaf(three, 'b1', 1)?.plan ?? three;
  assert.deepEqual(
    middle.buildUps[0].gaps?.map((g) => g.id),
    ['g2'],
  );
  const one = edit.removeLeaf(wall(), 'b1', 0)?.plan ?? wall();
  assert.deepEqual([one.buildUps[0].leaves.length, one.buildUps[0].gaps?.length, one.buildUps[0].compare.leaf], [1, 0, 0]);
  assert.equal(edit.removeLeaf(one, 'b1', 0), undefined);
});

test('the compared leaf follows its leaf', () => {
  const three = edit.addLeaf(wall(), 'b1', 'regular')?.plan ?? wall();
  const far = edit.compareLeaf(three, 'b1', 2).plan;
  assert.equal(far.buildUps[0].compare.leaf, 2);
  assert.equal(edit.removeLeaf(far, 'b1', 0)?.plan.buildUps[0].compare.leaf, 1);
  assert.equal(edit.removeLeaf(far, 'b1', 2)?.plan.buildUps[0].compare.leaf, 1);
  const ref = edit.setReference(three, 'b1', [{ id: 'z', board: 'x' }]).plan;
  assert.deepEqual(ref.buildUps[0].compare.reference, [{ id: 'r1', board: 'x' }]);
  assert.equal(edit.setReference(ref, 'b1', []).plan.buildUps[0].compare.reference, undefined);
});

test('gaps keep both sides and lose what is cleared', () => {
  const gap = (/** @type {import('./types.d.ts').Plan} */ p) => p.buildUps[0].gaps?.[0];
  let { plan } = edit.setGap(wall(), 'b1', 'g1', { spacing: '24 in', fill: 'wool' }, 'spacing');
  ({ plan } = edit.setGap(plan, 'b1', 'g1', { fill: '' }, 'fill'));
  assert.deepEqual(gap(plan), {
    id: 'g1',
    frame: 'wood',
    spacing: '24 in',
    near: { fixing: 'clip', rows: '24 in', along: '48 in' },
    far: { fixing: 'screwed' },
  });
  ({ plan } = edit.setHeld(plan, 'b1', 'g1', 'near', { rating: '42 lb', rows: '' }, 'rating'));
  assert.deepEqual(gap(plan)?.near, { fixing: 'clip', along: '48 in', rating: '42 lb' });
  const before = plan;
  for (const side of /** @type {const} */ (['near', 'far'])) ({ plan } = edit.setHeld(plan, 'b1', 'g1', side, { screws: '6 in' }, 'screws'));
  assert.equal(gap(plan)?.far.screws, '6 in');
  assert.deepEqual(edit.usualScrews(plan, 'b1').plan, before);
});

test('candidates are written down once the table is changed', () => {
  const now = [{ id: 'c1', layers: [{ id: 'c1.1', board: 'x' }] }];
  const { plan } = edit.addCandidate(wall(), 'b1', now, [{ id: 'l1', board: 'light' }], 'light');
  assert.deepEqual(plan.buildUps[0].compare.rows, [...now, { id: 'c2', layers: [{ id: 'c2.1', board: 'light' }] }]);
  const fewer = edit.removeCandidate(plan, 'b1', plan.buildUps[0].compare.rows ?? [], 'c1', 'x').plan;
  assert.deepEqual(
    fewer.buildUps[0].compare.rows?.map((c) => c.id),
    ['c2'],
  );
  const hung = edit.hangLayers(plan, 'b1', 0, [{ id: 'c1.1', board: 'x' }], 'x').plan;
  assert.deepEqual(hung.buildUps[0].leaves[0].layers, [{ id: 'l5', board: 'x' }]);
});

test('the plan and its surfaces', () => {
  assert.equal(edit.setPlan(wall(), { name: 'Shed' }, 'name').plan.name, 'Shed');
  const s = edit.setSurface(wall(), 's1', { area: '107 ft2' }, 'area').plan.surfaces[0];
  assert.equal(s.area, '107 ft2');
  assert.equal('area' in edit.setSurface(wall(), 's1', { area: '' }, 'area').plan.surfaces[0], false);
});
