import assert from 'node:assert/strict';
import { test } from 'node:test';
import { flat, report, sound as soundReport } from '../draw/samples.js';
import { reason, said, sound } from './sound.js';

/** @param {any} [more] @returns {any} */
function appOf(more = {}) {
  const r = report({ sound: soundReport(more.sound), ...more.report });
  const layers = ['a', 'b', 'c'].map((id) => ({ id, board: id }));
  const buildUp = { id: 'b', leaves: [{ layers }, { layers: [{ id: 'f', board: 'half' }] }], gaps: [{ id: 'gap', near: {}, far: {} }], compare: { leaf: 0 } };
  return {
    report: r,
    plan: { name: 'A wall', region: 'US', surfaces: [], buildUps: [buildUp], source: 'band', level: '100' },
    surface: { id: 's', name: 'wall', kind: 'wall', listener: 'sleeper', beyond: 'bedroom' },
    further: more.further,
    buildUp,
    units: 'us',
    ctx: { units: 'us', currency: '$', report: r, names: {} },
    catalog: {
      sources: [{ id: 'band', level: 108.4, source: '' }],
      listeners: [{ id: 'sleeper', level: 30, source: '' }],
      frames: [],
      fixings: [],
      fills: [
        { id: 'glass', name: '' },
        { id: 'fibre', name: '' },
      ],
    },
    width: 358,
    wide: false,
    faults: [],
    drafts: new Map(),
    edit() {},
  };
}

/** @param {unknown} part */
const text = (part) =>
  flat(part)
    .replaceAll('\u00a0', ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

test('the region’s own number comes first, each with how far it may be off', () => {
  const us = text(sound(appOf()));
  assert.match(us, /STC 57 ±3 in a built room, likely 51 STC Rw \(C; Ctr\) 58 \(−4; −11\) ±3 C and Ctr from 50 Hz up −6; −17 OITC, for outside walls 44 ±3/);
  const eu = text(sound(appOf({ report: { ratingIs: 'Rw' } })));
  assert.ok(eu.indexOf('Rw (C; Ctr)') < eu.indexOf('STC 57'));
});

test('the spread says where it comes from', () => {
  const spread = { rating: 1.9, bass: 6, family: 'wall wood single RC', tests: 31, near: true, widest: 'clip' };
  assert.match(
    reason(soundReport({ spread })),
    /no published test of this kind among our evidence\. The nearest are 31 tests of walls of wood studs with resilient channel and their like\. What widens it most is how stiff the clips are\.$/,
  );
  const known = reason(soundReport({ spread: { ...spread, family: 'wall steel single', tests: 65, near: false, widest: '' } }));
  assert.match(known, /^±2\u00a0dB: that is how far off it was for 65 published tests of walls of light steel studs\.$/);
  assert.doesNotMatch(reason(soundReport({ spread: { ...spread, tests: 0 } })), / 0 /);
  assert.doesNotMatch(reason(soundReport({ spread: { ...spread, tests: 0, near: false } })), / 0 /);
});

test('an empty gap is offered a batt with what it brings', () => {
  const app = appOf();
  const line = said(app, { code: 'emptyGap', args: { bass: 3.2, rating: 5.6, gap: 0 }, text: { gap: 'gap' } });
  assert.equal(line?.words.replaceAll('\u00a0', ' '), 'The gap is empty. A batt in it would bring 3 dB in the bass and 6 in STC.');
  const made = line?.offer?.edit();
  assert.equal(made?.plan.buildUps[0].gaps?.[0].fill, 'fibre');
});

test('what brings nothing is said and not offered', () => {
  for (const code of ['emptyGap', 'thirdLeaf', 'shorted', 'closeScrews', 'channelBetween']) {
    const line = said(appOf(), { code, args: { bass: -0.2, rating: 0.3 } });
    assert.ok(line && !line.offer, code);
    assert.doesNotMatch(line.words, /would bring \./);
  }
});

test('the board that parts two dips is named with its gain and its price, and changes every layer that dips', () => {
  const app = appOf({ sound: { dips: [{ hz: 2500, leaf: 0, layers: [0, 2], short: 'Gypsum', kind: 'gypsum', both: true }] } });
  const line = said(app, {
    code: 'sameBoards',
    args: { hz: 2500, at: 4.2, bass: -1.4, leaf: 0, thickness: 0.0159 },
    text: { board: 'typeX', short: 'Gypsum type X', nominal: '5/8 in' },
  });
  assert.equal(
    line?.words.replaceAll('\u00a0', ' '),
    'Boards on both sides of the gap dip together at 2.5 kHz: gypsum 5/8 type X on one side would fill the dip by 4 dB, and cost 1 dB of bass.',
  );
  assert.deepEqual(
    line?.offer?.edit()?.plan.buildUps[0].leaves[0].layers.map((layer) => layer.board),
    ['typeX', 'b', 'typeX'],
  );
});

test('a sentence of a later core is left out, not shown as a code', () => {
  assert.equal(said(appOf(), { code: 'somethingNew' }), undefined);
});

test('without sound in the report there is only room for it', () => {
  assert.doesNotMatch(flat(sound(appOf({ report: { sound: undefined } }))), /undefined|NaN/);
});
