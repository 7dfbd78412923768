import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ladderView, layout, nextSteps } from './ladder.js';
import { flat, ladder, report, value } from './samples.js';

/** @type {import('../words.js').Ctx} */
const ctx = { units: 'us', currency: '$', report: report() };
const plain = (/** @type {unknown} */ part) =>
  flat(part)
    .replaceAll('\u00a0', ' ')
    .replace(/<svg.*?aria-label=(.*?) width=.*?<\/svg>/gs, ' [$1] ')
    .replace(/<span class="spare soft">.*?<\/span>/gs, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

test('ten decibels are one rule, and a step down goes back', () => {
  const { low, high, rules, rungs } = layout(ladder(), 76);
  assert.deepEqual([low, high], [10, 30]);
  assert.deepEqual(rules, [0, 38, 76]);
  assert.deepEqual(
    rungs.map((rung) => rung.down),
    [false, false, true, false, false, false, false],
  );
  assert.equal(rungs[0].x, 19);
  assert.ok(rungs[4].radius > rungs[3].radius, 'where you are is larger');
});

test('what is not taken starts from where you are, each for itself', () => {
  const { rungs } = layout(ladder(), 76);
  assert.equal(rungs[5].from, rungs[4].x);
  assert.equal(rungs[6].from, rungs[4].x);
  assert.equal(rungs[5].on, rungs[4].x, 'its riser goes on from where you are');
  assert.equal(rungs[6].on, undefined);
  assert.equal(rungs[3].on, rungs[3].x);
});

test('the table reads as its picture does', () => {
  const text = plain(ladderView(ladder(), { span: 76, ratingIs: 'STC' }, ctx, (x) => x));
  assert.match(text, /bass dB STC cost One board a side \[15 dB\] 35 \+ wool 3 1\/2 in \[15 dB, the same as the step before\] 39 \$58/);
  assert.match(text, /\+ clips \[12 dB, 3 dB less than the step before\] 47 \$252 \+ plywood 5\/8 \[17 dB, 5 dB more than the step before\] 55 \$166/);
  assert.match(text, /\+ second 1\/2 light , where you are \[19 dB, 2 dB more than the step before\] 57 \$60/);
  assert.match(text, /two stud rows instead , not taken \[27 dB, 8 dB more than where you are\] 65 –/);
});

test('money per area has its area in the head', () => {
  const steps = ladder().map((step) => (step.cost ? { ...step, cost: value(10.7639104167097, 'moneyRate') } : step));
  const text = plain(ladderView(steps, { span: 76, ratingIs: 'Rw' }, ctx, (x) => x));
  assert.match(text, /bass dB Rw \/ft² /);
  assert.match(text, /39 \$1\.00 /);
});

test('the next steps are told by what they add', () => {
  assert.match(plain(nextSteps(ladder(), ctx, (x) => x)), /5\/8 type X, far side \+2 dB \$72 two stud rows instead \+8 dB –/);
  assert.equal(typeof nextSteps(ladder().slice(0, 5), ctx, (x) => x), 'symbol');
});

test('steps with holes draw no nonsense', () => {
  const bad = ladder().map((step, i) => (i % 2 ? { ...step, bass: null, rating: null, cost: null } : { ...step, bass: value(Number.NaN, 'decibel') }));
  for (const steps of [bad, [], ladder().slice(4, 5), ladder().slice(5)]) {
    assert.doesNotMatch(flat(ladderView(steps, { span: 76, ratingIs: 'STC' }, ctx, (x) => x)), /NaN|undefined|Infinity/);
  }
});
