import assert from 'node:assert/strict';
import { test } from 'node:test';
import { flat, need, report, sound } from '../draw/samples.js';
import { verdictText } from '../words.js';
import { listenerWords, needLine, setLevel, setListener, setSource, sourceWords } from './need.js';

/** @type {import('../types.d.ts').Plan} */
const plan = {
  format: 1,
  table: 1,
  name: 'A wall',
  region: 'US',
  units: 'us',
  surfaces: [
    { id: 's', name: 'wall', kind: 'wall', buildUp: 'b', beyond: 'bedroom', listener: 'sleeper' },
    { id: 't', name: 'wall', kind: 'wall', buildUp: 'b' },
  ],
  buildUps: [],
  source: 'band',
  level: '100',
};

/** @param {any} [more] @returns {any} */
const appOf = (more = {}) => ({
  plan,
  surface: plan.surfaces[0],
  catalog: {
    sources: [
      { id: 'band', level: 108.4, source: '' },
      { id: 'drums', level: 103.7, source: '' },
    ],
    listeners: [{ id: 'sleeper', level: 30, source: '' }],
  },
  ...more,
});

const plain = (/** @type {unknown} */ part) =>
  flat(part)
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

test('the sentence has the level that was typed, else its own', () => {
  assert.match(plain(needLine(appOf())), /Needed: band, 100 dBA to sleeper, 30 dBA/);
  assert.equal(sourceWords(appOf({ plan: { ...plan, level: undefined } })), 'band, 108\u00a0dBA');
  assert.equal(sourceWords(appOf({ plan: { ...plan, source: undefined } })), 'what plays?');
  assert.equal(listenerWords(appOf({ surface: plan.surfaces[1] })), 'who is beyond?');
  // Before the catalogue is here there are words without a level.
  assert.equal(listenerWords(appOf({ catalog: undefined })), 'sleeper');
});

test('another source comes at its own level', () => {
  const made = setSource(plan, 'drums');
  assert.equal(made.label, 'plays: drums');
  assert.deepEqual([made.plan.source, made.plan.level, 'level' in made.plan], ['drums', undefined, false]);
  assert.deepEqual([plan.source, plan.level], ['band', '100'], 'the plan before is as it was');
  const none = setSource(plan, '');
  assert.ok(!('source' in none.plan) && !('level' in none.plan));
});

test('level and listener are edits with labels', () => {
  assert.deepEqual([setLevel(plan, '95').plan.level, setLevel(plan, '95').label], ['95', 'it plays at 95\u00a0dBA']);
  assert.ok(!('level' in setLevel(plan, '').plan));
  const made = setListener(plan, 't', 'studio');
  assert.equal(made.label, 'beyond: a recording');
  assert.deepEqual(
    made.plan.surfaces.map((s) => s.listener),
    ['sleeper', 'studio'],
  );
  assert.ok(!('listener' in setListener(plan, 's', '').plan.surfaces[0]));
});

/** @param {string} code @param {Record<string, number>} args @param {Record<string, string>} text */
const said = (code, args, text, answer = 'notYet', floor = false) =>
  verdictText(
    { answer, parts: [{ code, args, text }, ...(floor ? [{ code: 'need.floor' }] : [])] },
    { units: 'us', currency: '$', report: report({ sound: sound({ need: need() }) }) },
  ).replaceAll('\u00a0', ' ');

test('the verdict says no more than the figures do', () => {
  const where = { source: 'band', listener: 'sleeper', beyond: 'bedroom' };
  assert.equal(said('need.short', { by: 34.3, hz: 63 }, where), 'Not yet. 34 dB short at 63 Hz: the kick drum would be felt in the bedroom.');
  assert.equal(said('need.short', { by: 12, hz: 63 }, where), 'Not yet. 12 dB short at 63 Hz: the kick drum would be heard in the bedroom.');
  assert.equal(said('need.short', { by: 40, hz: 125 }, where), 'Not yet. 40 dB short at 125 Hz: bass and drums would be heard in the bedroom.');
  assert.equal(
    said('need.short', { by: 0.4, hz: 500 }, { ...where, source: 'speech' }),
    'Not yet. less than 1 dB short at 500 Hz: talking would be heard in the bedroom.'.replace('less', 'Less'),
  );
  assert.equal(
    said('need.short', { by: 9, hz: 1000 }, { source: 'guitar', listener: 'living', beyond: '' }),
    'Not yet. 9 dB short at 1 kHz: the guitar would be heard beyond.',
  );
  assert.equal(said('need.met', {}, where, 'yes'), 'Yes. Enough in every octave: by this way alone, the band stays under 30 dBA in the bedroom.');
  assert.match(said('need.short', { by: 32, hz: 63 }, { ...where, source: 'drums' }, 'notYet', true), /in the bedroom\. Through the air alone\.$/);
});

test('what shakes the floor is said to be left out, where it is', () => {
  const parts = [{ code: 'need.short' }, { code: 'need.floor' }];
  const r = report({ sound: sound({ need: need({ source: 'drums' }) }), verdicts: { sound: { answer: 'notYet', parts } } });
  assert.match(plain(needLine(appOf({ report: r }))), /Through the air; the pedal through the floor is not counted\./);
  assert.doesNotMatch(plain(needLine(appOf({ report: { ...r, verdicts: {} } }))), /floor/);
});
