import assert from 'node:assert/strict';
import test from 'node:test';
import { begin, commit, dropField, leaveField, now, redo, redoLabel, resume, undo, undoLabel } from './state.js';

/** @param {string} name @returns {import('./types.d.ts').Plan} */
const plan = (name) => ({ format: 1, table: 1, name, region: 'US', units: 'us', surfaces: [], buildUps: [] });

test('every edit is a labelled step that can be taken back and done again', () => {
  let h = begin(plan('a'));
  assert.equal(undoLabel(h), '');
  assert.equal(undo(h), h);
  h = commit(h, { label: 'b', plan: plan('b') });
  h = commit(h, { label: 'c', plan: plan('c') });
  assert.equal(undoLabel(h), 'c');
  h = undo(h);
  assert.deepEqual([now(h).name, undoLabel(h), redoLabel(h)], ['b', 'b', 'c']);
  h = redo(h);
  assert.deepEqual([now(h).name, redoLabel(h)], ['c', '']);
  assert.equal(redo(h), h);
});

test('an edit after an undo forgets what was undone', () => {
  let h = commit(commit(begin(plan('a')), { label: 'b', plan: plan('b') }), { label: 'c', plan: plan('c') });
  h = commit(undo(h), { label: 'd', plan: plan('d') });
  assert.deepEqual(
    h.steps.map((s) => s.plan.name),
    ['a', 'b', 'd'],
  );
});

test('keystrokes in one field are one step, until the field is left', () => {
  let h = begin(plan('a'));
  h = commit(h, { label: '7 lb', plan: plan('7') }, 'weight');
  h = commit(h, { label: '72 lb', plan: plan('72') }, 'weight');
  assert.deepEqual([h.steps.length, now(h).name, undoLabel(h)], [2, '72', '72 lb']);
  h = commit(leaveField(h), { label: '73 lb', plan: plan('73') }, 'weight');
  assert.equal(h.steps.length, 3);
  // Typing on after an undo is a new step, not a change of the one on screen.
  h = commit(undo(h), { label: '74 lb', plan: plan('74') }, 'weight');
  assert.deepEqual(
    h.steps.map((s) => s.plan.name),
    ['a', '72', '74'],
  );
});

test('what cannot be read takes its first keystrokes back', () => {
  let h = commit(begin(plan('a')), { label: '5 kg', plan: plan('5') }, 'weight');
  h = dropField(h, 'weight');
  assert.deepEqual([now(h).name, h.steps.length, undoLabel(h)], ['a', 1, '']);
  h = leaveField(commit(h, { label: '58 kg', plan: plan('58') }, 'weight'));
  assert.equal(dropField(h, 'weight'), h);
  assert.equal(dropField(h, ''), h);
});

test('the steps are bounded, and a stored history is resumed where it was', () => {
  let h = begin(plan('0'));
  for (let i = 1; i < 150; i++) h = commit(h, { label: String(i), plan: plan(String(i)) });
  assert.equal(h.steps.length, 100);
  assert.equal(now(h).name, '149');
  assert.equal(now(resume({ plan: plan('149'), steps: h.steps, at: 50 })).name, '100');
  // Where only the plan could be kept, it is the one step there is.
  assert.equal(now(resume({ plan: plan('x'), steps: [], at: 0 })).name, 'x');
});
