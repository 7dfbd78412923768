import assert from 'node:assert/strict';
import { test } from 'node:test';
import { change, heard, house } from './draw/house-samples.js';
import { value } from './draw/samples.js';
import { order, ranked } from './ui/ways.js';
import * as say from './words-room.js';

/** @type {any} */
const plan = { source: 'drums', surfaces: [{ id: 's1' }, { id: 's2' }, { id: 's3', flank: 'joists' }, { id: 's4' }], buildUps: [] };
const ctx = /** @type {import('./words.js').Ctx} */ ({ units: 'us', currency: '$', names: {} });

/** @param {any} words */
const plain = (words) => `${words.answer} ${words.text}`.replace(/[\u00a0\u202f]/g, ' ');

/** @param {Partial<import('./types-room.d.ts').Heard>} one */
function told(one) {
  const h = house();
  h.told.out = [heard(one)];
  say.tellPlan(h, plan);
  return h;
}

test('the verdict answers: who, what, by how much, where', () => {
  assert.equal(plain(say.outWords(told({}))), 'No. The kick drum is felt in the bedroom, 33 dB over at 63 Hz.');
  assert.equal(plain(say.outWords(told({ felt: false, worst: 4 }))), 'No. The drums are heard in the bedroom, 27 dB over at 500 Hz.');
  assert.equal(plain(say.outWords(told({ state: 'notHeard' }))), 'Yes. Through the air nothing is heard in the bedroom.');
  assert.equal(plain(say.outWords(told({ state: 'within', floorDriven: false }))), 'Yes. It is heard in the bedroom, within the target.');
  assert.match(plain(say.outWords(told({ state: 'mayOver' }))), /^Not yet\. Through the air the mean holds/);
});

test('of several the sentence says which is heard and which is not', () => {
  const each = [
    { source: 'drums', a: 60, state: /** @type {const} */ ('over'), word: /** @type {const} */ ('heard'), felt: true },
    { source: 'speech', a: 10, state: /** @type {const} */ ('notHeard'), word: /** @type {const} */ ('notHeard'), felt: false },
  ];
  const h = house();
  h.told.out = [heard({ each })];
  say.tellPlan(h, { ...plan, also: [{ source: 'speech' }] });
  assert.equal(plain(say.outWords(h)), 'No. The kick drum is felt in the bedroom, 33 dB over at 63 Hz. The drums are heard, talk is not.');
});

test('without a listener, a space or a source it asks', () => {
  assert.match(plain(say.outWords(told({ state: 'noTarget', target: 0 }))), /^Not yet\. Say what is beyond/);
  const h = house();
  h.told.out = [];
  assert.match(plain(say.outWords(h)), /^Not yet\. Say what lies beyond/);
  const silent = house();
  say.tellPlan(silent, { ...plan, source: undefined });
  assert.equal(plain(say.outWords(silent)), 'Not yet. Say what plays.');
});

test('a drum kit is never simply not heard', () => {
  const h = told({ state: 'notHeard', word: 'notHeard', felt: false });
  assert.equal(say.likeWords(h, /** @type {any} */ (h.told.out)[0]), 'not by air');
  assert.match(say.heardNotes(h, /** @type {any} */ (h.told.out)[0], false).join(' '), /the pedal through the floor is not counted/);
});

test('what it leans on and what was not said is told', () => {
  const h = told({ leansOnFlank: true, flankUnknown: true, assumed: true });
  const notes = say.heardNotes(h, /** @type {any} */ (h.told.out)[0], false).join(' ');
  assert.match(notes, /leans on flanking/);
  assert.match(notes, /do not say what they share/);
  assert.match(notes, /was not said/);
});

test('ways are named by what they are', () => {
  const h = told({});
  assert.deepEqual(
    (h.told.paths ?? []).map((p) => say.wayWords(h, p)),
    ['Wall to bedroom', 'Door leaf', 'Crack under door', 'Box × 2', 'Wall to hall', 'Ceiling', 'Joists shared', 'Floor'],
  );
  const weak = say.weakWords(h);
  assert.equal(weak?.answer, 'The crack under the door is the weak path.');
  assert.match(plain(weak), /40 % of what gets out goes that way, in wall A\.$/);
});

test('ways rank by their share; small ones that bring nothing share a sentence', () => {
  const { rows, small } = ranked(told({}), -1);
  assert.deepEqual(
    rows.map((w) => w.share),
    [0.4, 0.2, 0.149, 0.1, 0.1],
  );
  assert.equal(small.length, 3);
  const there = ranked(told({}), 1);
  assert.deepEqual(
    there.rows.map((w) => w.path.surface),
    [1],
    'to one space only its own ways',
  );
});

test('changes: what brings something first, what brings nothing last and why', () => {
  const h = told({});
  const rows = [
    change('pad', { why: 'small', args: { share: 0.03 } }),
    change('seal', { gain: 1, perCost: 2 }),
    change('secondDoor', { id: 'two', gain: 2, perCost: 0.5 }),
    change('board', { id: 'b', why: 'masked', by: h.told.paths?.[1], args: { times: 13 } }),
  ];
  assert.deepEqual(
    order({ budget: null, worst: 'bedroom', rows, tried: 0, exact: true }).map((r) => r.code),
    ['secondDoor', 'seal', 'pad', 'board'],
  );
  const why = (/** @type {any} */ c) => say.whyWords(c, h, 'bedroom').replace(/\u00a0/g, ' ');
  assert.equal(why(rows[0]), 'its share is 3 %: under 0.2 dB');
  assert.equal(why(rows[3]), 'the door lets through 13 times more');
  assert.equal(why(change('pad', { why: 'elsewhere' })), 'it lies on no way to the bedroom');
  assert.equal(why(change('board', { why: 'over', gain: 0.6, clip: value(1.22, 'share') })), '0.6 dB, but the clips would carry 122 %');
});

test('changes are said in the trade’s words, with their faces', () => {
  const h = told({});
  const words = (/** @type {string} */ code, /** @type {any} */ more) => say.changeWords(change(code, more), ctx, h);
  assert.equal(words('seal', {}), 'Seal the door all round, wall A');
  assert.equal(words('seal', { kind: 'windowUnit' }), 'Seal the window all round, wall A');
  assert.equal(words('fill', { faces: ['A', 'B'] }), 'Fill the gap, walls A, B');
  assert.equal(
    words('board', { faces: ['C'], text: { board: 'x', short: 'Gypsum type X', row: 'Gypsum % type X', nominal: '5/8 in' } }),
    '+ gypsum 5/8 type X, ceiling C',
  );
  for (const code of ['solidDoor', 'pad', 'caulk', 'box', 'boxed', 'pane', 'clips', 'frame', 'takeOff', 'cut', 'secondDoor']) {
    assert.doesNotMatch(words(code, {}), new RegExp(`^${code}`), `${code} has words`);
  }
});

test('air in sentences: sealed, too little, enough', () => {
  const { air } = house().told;
  const use = { people: 3, minutes: 90 };
  assert.equal(
    plain(say.airWords(air, ctx, use)),
    'No. Sealed, 3 people breathe 4 950 ppm of carbon dioxide after 90 minutes, stale after 20. Bring in 95 cfm.',
  );
  assert.match(plain(say.airWords({ ...air, sealed: false, given: 0.02 }, ctx, use)), /^Not yet\. 42 cfm of fresh air is too little/);
  assert.match(plain(say.airWords({ ...air, sealed: false, given: 0.05, tooLittle: false, end: 1200 }, ctx, use)), /^Yes\./);
  assert.match(plain(say.airWords(air, ctx, { people: 0, minutes: 0 })), /^Not yet\. Say how many people/);
  assert.equal(say.flow(0.045, { ...ctx, units: 'si' }).replace('\u00a0', ' '), '45 L/s');
});

test('a measurement beside its prediction', () => {
  const h = told({});
  const fit = {
    space: 0,
    after: true,
    octaves: false,
    got: [{ what: 'A', hz: 0, measured: 30, predicted: 40 }],
    residual: 10,
    rms: 10,
    path: 2,
    raised: 12,
    rmsAfter: 1,
    prior: 6,
    reading: 3,
    spread: 4,
    shift: 10,
    unlikely: true,
  };
  assert.equal(
    plain(say.fitWords(fit, h)),
    'It stops 10.0 dB less than predicted. What fits best: the crack under the door in wall A lets through 12 dB more than it should. ±4 dB from here on, ±6 before.',
  );
  assert.match(plain(say.fitWords({ ...fit, path: -1 }, h)), /no single way explains it/);
  assert.match(plain(say.fitWords({ ...fit, residual: 0.2, path: -1, unlikely: false }, h)), /^It stops what was predicted\./);
});

test('every kind of opening, seal and group has words', () => {
  for (const [group] of say.GROUPS) assert.ok(say.oneOf(group));
  for (const kind of [
    'doorHollow',
    'doorSolid',
    'doorHeavy',
    'doorSteel',
    'doorFoam',
    'doorFilled',
    'doorAcoustic',
    'doorTwoHollow',
    'doorTwo',
    'hatch',
    'windowSingle',
    'windowLaminated',
    'windowUnit',
    'windowTwo',
    'windowWide',
    'duct',
    'vent',
    'box',
    'boxBack',
    'boxSurface',
    'light',
    'pipe',
    'crackEdge',
    'crack',
    'hole',
  ]) {
    assert.doesNotMatch(say.kindName(kind), /[A-Z]/, kind);
    assert.ok(say.kindChip(kind));
  }
  for (const seal of ['none', 'sides', 'all', 'allSoft', 'shut', 'putty', 'bare', 'lined', 'box', 'boxes', 'boxed'])
    assert.doesNotMatch(say.sealWords(seal, 'door'), /[A-Z]/);
});

test('the finished room against codes and stands', () => {
  const { shape } = house().told;
  const said = say
    .shapeWords(shape, ctx)
    .join(' ')
    .replace(/\u00a0/g, ' ');
  assert.match(
    said,
    /^Finished inside: 12 ft 6 in × 9 ft 2 in, 7 ft 7 in high\. It costs 14\.6 ft² of floor\. The ceiling clears what codes ask by 7 in, a tall cymbal stand by 4 in\./,
  );
  assert.match(say.shapeWords({ ...shape, heightLeft: -0.1 }, ctx).join(' '), /under what codes ask/);
  assert.match(say.shapeWords({ ...shape, standLeft: -0.05 }, ctx).join(' '), /a tall cymbal stand wants/);
});
