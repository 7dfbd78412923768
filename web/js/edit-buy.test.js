import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addClip, dropClips, dropHung, lengthText, nextHung, putHung, setBuying, setCost, setJoists } from './edit-buy.js';

/** @type {import('./types.d.ts').Plan} */
const plan = {
  ...{ format: 1, table: 1, name: 'A room', region: 'US', units: 'us', buildUps: [] },
  surfaces: [
    { id: 's', name: 'wall', kind: 'wall', buildUp: 'b', hung: [{ id: 'h2', x: '10 in', y: '20 in', mass: '12 lb' }] },
    { id: 't', name: 'ceiling', kind: 'ceiling', buildUp: 'b' },
  ],
};

test('lengths are written to what a finger or a saw can mean', () => {
  assert.equal(lengthText(0.3048, 'us'), '12 in');
  assert.equal(lengthText(0.31, 'us', 1), '12 in');
  assert.equal(lengthText(48.0625 * 0.0254, 'us'), '48.0625 in');
  assert.equal(lengthText(0.4064, 'si'), '406 mm');
  assert.equal(lengthText(0.4064, 'si', 10), '410 mm');
});

test('what hangs is put, changed and taken down, and the plan before stays as it was', () => {
  assert.equal(nextHung(plan), 'h3');
  const added = putHung(plan, 't', { id: 'h3', x: '5 in', y: '6 in', mass: '' }, 'hung').plan;
  assert.deepEqual(added.surfaces[1].hung, [{ id: 'h3', x: '5 in', y: '6 in', mass: '' }]);
  const moved = putHung(added, 's', { id: 'h2', x: '11 in', y: '20 in', mass: '12 lb', name: '' }, 'moved').plan;
  assert.deepEqual(moved.surfaces[0].hung, [{ id: 'h2', x: '11 in', y: '20 in', mass: '12 lb' }]);
  const down = dropHung(moved, 's', 'h2', 'lamp').plan;
  assert.equal('hung' in down.surfaces[0], false);
  assert.equal(plan.surfaces[0].hung?.[0].x, '10 in');
});

test('clips by hand, joists, buying and prices: an empty field leaves no trace', () => {
  const one = addClip(plan, 't', { x: 2.2352, y: 1.3716 }).plan;
  assert.deepEqual(one.surfaces[1].clips, [{ x: '88 in', y: '54 in' }]);
  assert.equal('clips' in dropClips(one, 't').plan.surfaces[1], false);
  const spans = setJoists(plan, 't', { span: '11 ft' }, 'span').plan;
  assert.deepEqual(spans.surfaces[1].joists, { span: '11 ft' });
  assert.equal('joists' in setJoists(spans, 't', { span: '' }, 'span').plan.surfaces[1], false);
  const taxed = setBuying(plan, { tax: '7 %', stair: true }, 'tax').plan;
  assert.deepEqual(taxed.buying, { tax: '7 %', stair: true });
  assert.equal('buying' in setBuying(taxed, { tax: '', stair: false }, 'none').plan, false);
  const priced = setCost(setCost(taxed, 'clips', '6 $', 'a').plan, 'tape', '5 $', 'b').plan;
  assert.deepEqual(priced.buying?.costs, [
    { item: 'clips', price: '6 $' },
    { item: 'tape', price: '5 $' },
  ]);
  assert.deepEqual(setCost(priced, 'clips', '7 $', 'c').plan.buying?.costs?.[0], { item: 'clips', price: '7 $' }, 'in its place');
  assert.equal(setCost(priced, 'clips', '', 'd').plan.buying?.costs?.length, 1);
});
