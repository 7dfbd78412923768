// The history of one plan: a list of plans, each with what was done to reach
// it. Undo and redo only move the index; the plans themselves never change.

/**
 * @typedef {import('./types.d.ts').Plan} Plan
 * @typedef {{label: string, plan: Plan}} Step
 * @typedef {{steps: Step[], at: number, field: string}} History field is the one being typed in, else empty
 */

/** As many as the store keeps. */
const LIMIT = 100;

/**
 * @param {Plan} plan
 * @param {string} [label]
 * @returns {History}
 */
export function begin(plan, label = 'opened') {
  return { steps: [{ label, plan }], at: 0, field: '' };
}

/**
 * A history as the store gives it back.
 * @param {{plan: Plan, steps: Step[], at: number}} doc
 * @returns {History}
 */
export function resume({ plan, steps, at }) {
  return steps[at] ? { steps, at, field: '' } : begin(plan);
}

/** @param {History} h @returns {Plan} */
export function now(h) {
  return h.steps[h.at].plan;
}

/**
 * A new step; what was undone before is gone. Keystrokes in one field are one step.
 * @param {History} h
 * @param {Step} step
 * @param {string} [field] the field being typed in
 * @returns {History}
 */
export function commit(h, step, field = '') {
  const same = field !== '' && field === h.field && h.at === h.steps.length - 1 && h.at > 0;
  const kept = h.steps.slice(0, same ? h.at : h.at + 1);
  const steps = [...kept, { label: step.label, plan: step.plan }].slice(-LIMIT);
  return { steps, at: steps.length - 1, field };
}

/**
 * What is in the field now cannot be read: what its first keystrokes made is no step either.
 * @param {History} h
 * @param {string} field
 * @returns {History}
 */
export function dropField(h, field) {
  if (field === '' || h.field !== field || h.at === 0 || h.at !== h.steps.length - 1) return h;
  return { steps: h.steps.slice(0, -1), at: h.at - 1, field: '' };
}

/** The field was left: the next keystroke is a step of its own. @param {History} h @returns {History} */
export function leaveField(h) {
  return h.field ? { ...h, field: '' } : h;
}

/** @param {History} h @returns {History} */
export function undo(h) {
  return h.at > 0 ? { ...h, at: h.at - 1, field: '' } : h;
}

/** @param {History} h @returns {History} */
export function redo(h) {
  return h.at < h.steps.length - 1 ? { ...h, at: h.at + 1, field: '' } : h;
}

/** What undo would take back, in words; empty if there is nothing. @param {History} h */
export function undoLabel(h) {
  return h.at > 0 ? h.steps[h.at].label : '';
}

/** What redo would do again, in words; empty if there is nothing. @param {History} h */
export function redoLabel(h) {
  return h.steps[h.at + 1]?.label ?? '';
}
