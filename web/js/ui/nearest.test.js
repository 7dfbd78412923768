import assert from 'node:assert/strict';
import { test } from 'node:test';
import { flat, HZ, report, sound } from '../draw/samples.js';
import { asSound, construction, differencesWords, differenceWords, nearestView, publishedWords } from './nearest.js';

const gypsum = { short: 'gypsum 12.7 typeX x2', kind: 'gypsum', thickness: 0.0127, mass: 9.3 };
/** Wall W5c of NBC2020: 1 and 2 boards of 12.7 mm type X, channel, 38 × 89 mm studs at 400 mm, fibre 89 mm, STC 49. @type {import('../types.d.ts').NearestReport} */
const w5c = {
  id: 'NBC-W5c',
  source: 'NBC2020',
  table: 'Table 9.10.3.1.-A',
  description: '',
  tier: 'A',
  stc: 49,
  ours: {
    stc: 48,
    bass: 17.1,
    tl: HZ.map((_, i) => 15 + 2 * i),
    leaves: [[gypsum], [gypsum, gypsum]],
    gaps: [{ frame: 'wood', frameDepth: 0.089, sheet: 0, spacing: 0.4, depth: 0.102, fillDepth: 0.089, near: 'channel', far: 'screwed', rows: 0 }],
  },
  differences: [
    { what: 'fixing', leaf: -1, gap: 0, yours: 0, test: 0, yoursWord: 'clip', testWord: 'channel' },
    { what: 'depth', leaf: -1, gap: 0, yours: 0.130175, test: 0.102 },
    { what: 'filled', leaf: -1, gap: 0, yours: 0.683, test: 0.8725 },
    { what: 'leafMass', leaf: 1, gap: -1, yours: 7.8, test: 9.3 },
    { what: 'leafMass', leaf: 0, gap: -1, yours: 21.4, test: 18.6 },
  ],
};
/** @type {import('../words.js').Ctx} */
const us = { units: 'us', currency: '$' };
const plain = (/** @type {string} */ text) => text.replaceAll('\u00a0', ' ');

test('the construction is told in the words of the place', () => {
  assert.equal(plain(construction(w5c.ours, 'us')), '1/2 type X on channel, 2×4 studs at 16 in, fibre 3 1/2 in, 2 × 1/2 type X on the other side.');
  assert.equal(plain(construction(w5c.ours, 'si')), '12.7 type X on channel, studs 89 mm deep at 400 mm, fibre 89 mm, 2 × 12.7 type X on the other side.');
  const slab = { ...w5c.ours, leaves: [[{ short: 'concrete 203 x1', kind: 'concrete', thickness: 0.203, mass: 470 }]], gaps: [] };
  assert.equal(plain(construction(slab, 'us')), '8 concrete.');
  assert.equal(construction({ ...w5c.ours, leaves: null, gaps: [] }, 'us'), '');
});

test('what differs is said gravest first, and not all of it', () => {
  assert.equal(
    plain(differencesWords(w5c, us, 2)),
    'Yours: on clips, not on channel; gap 5 1/8 in, not 4; filled to 68 %, not 87 %; far side 1.60 psf, not 1.90; and 1 more.',
  );
  assert.equal(differencesWords({ ...w5c, differences: [] }, us, 2), 'Yours is the same in all that counts.');
});

test('every kind of difference has words', () => {
  const kinds = ['leaves', 'facing', 'leafMass', 'layers', 'boards', 'joints', 'frame', 'sheet', 'spacing', 'depth', 'filled', 'fixing', 'perArea'];
  for (const what of [...kinds, 'shorted', 'screws', 'masonry', 'glazing', 'thickness']) {
    for (const [yours, test] of [
      [0.1, 0.2],
      [0, 1],
      [2, 1],
    ]) {
      const words = differenceWords({ what, leaf: 0, gap: 0, yours, test, yoursWord: 'wood', testWord: 'double' }, us, 2);
      assert.ok(words && words !== what, what);
      assert.doesNotMatch(words, /undefined|NaN/, what);
    }
  }
});

test('where it was published', () => {
  assert.equal(publishedWords(w5c), 'National Building Code of Canada 2020, Table 9.10.3.1.-A, wall W5c');
  assert.equal(publishedWords({ source: 'LONG2006', table: 'Fig. 10.11', id: 'LON-A' }), 'Long, Architectural Acoustics, 2006, Fig. 10.11');
});

test('the block has both figures, and no bass where none was printed', () => {
  /** @type {any} */
  const app = { units: 'us', ctx: { ...us, report: report() }, report: report({ sound: sound() }), wide: false };
  const text = plain(flat(nearestView(app, w5c, 358)).replace(/<[^>]*>/g, ' ')).replace(/\s+/g, ' ');
  assert.match(text, /Measured in the laboratory STC 49 bass – , not printed Twoleaf, that very wall STC 48 bass 17/);
  assert.match(plain(flat(nearestView(app, { ...w5c, bass: 20.6 }, 328)).replace(/<[^>]*>/g, ' ')).replace(/\s+/g, ' '), /Measured STC 49 bass 21 /);
});

test('its curve is the computed one, with yours behind it', () => {
  const yours = sound();
  const curve = asSound(yours, w5c);
  assert.deepEqual(curve.tl, w5c.ours.tl);
  assert.deepEqual(curve.ref, yours.tl);
  assert.equal(curve.low.length, 0);
  assert.equal(asSound(yours, w5c), curve, 'made once');
});
