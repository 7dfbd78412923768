import assert from 'node:assert/strict';
import { test } from 'node:test';
import { clipsView, describe, figureOf, labelled, layout, members, usualMarks } from './clips.js';
import { flat, INCH } from './samples.js';
import { layoutReport } from './samples-buy.js';

/** @type {import('./clips.js').Options} */
const phone = { units: 'us', width: 358 };
const marks = (/** @type {string} */ drawn, /** @type {string} */ state) => drawn.split(`class="y-mark ${state}"`).length - 1;

test('every clip is marked by the shape of its state, and as many as are counted', () => {
  const report = layoutReport();
  const drawn = flat(clipsView(report, phone));
  for (const state of /** @type {const} */ (['over', 'close', 'holds', 'under'])) assert.equal(marks(drawn, state), report.layout?.count[state], state);
  assert.match(drawn, /<path class="y-mark over"/);
  assert.match(drawn, /<rect class="y-mark close"/);
  assert.match(drawn, /<circle class="y-mark holds"/);
  assert.match(drawn, /<path class="y-mark under"/);
});

test('without a rating every clip is a ring with its load', () => {
  const report = layoutReport({ rating: 0 });
  const drawn = flat(clipsView(report, phone));
  assert.equal(marks(drawn, 'unrated'), report.layout?.spots?.length);
  assert.equal(figureOf(/** @type {any} */ (report.layout?.spots?.[1]), 'us'), '39');
});

test('a wall stands on its foot, a ceiling begins at its first corner', () => {
  const wall = layout(layoutReport(), phone);
  const ceiling = layout(layoutReport({ ceiling: true }), phone);
  assert.ok(wall.y(0) > wall.y(1));
  assert.ok(ceiling.y(0) < ceiling.y(1));
  for (const plan of [wall, ceiling]) assert.ok(Math.abs(Math.abs(plan.y(2.4384) - plan.y(0)) - plan.h) < 1e-9 && plan.x(4.064) <= phone.width);
});

test('words and figures touch neither each other nor another clip', () => {
  for (const width of [328, 358, 700]) {
    for (const mode of /** @type {const} */ (['phone', 'print'])) {
      const report = layoutReport({ shares: Array.from({ length: 3 }, () => [0.3, 0.95, 1.2, 0.5]) });
      const options = { ...phone, width, mode };
      const plan = layout(report, options);
      const spots = report.layout?.spots ?? [];
      const said = labelled(spots, plan, options, 1, []);
      assert.ok(said.length >= 6, `${width}: ${said.length}`);
      const box = said.map((l) => ({ x: l.x, y: l.y - plan.text * 0.82, w: l.text.length * plan.text * 0.5, h: plan.text }));
      box.forEach((a, i) => {
        for (const b of box.slice(i + 1))
          assert.ok(a.x >= b.x + b.w || b.x >= a.x + a.w || a.y >= b.y + b.h || b.y >= a.y + a.h, `${said[i].text} at ${width}`);
      });
    }
  }
  const plan = layout(layoutReport(), phone);
  const said = labelled(layoutReport().layout?.spots ?? [], plan, phone, 1, []).map((l) => l.text);
  assert.ok(said.includes('over') && said.includes('116'), said.join());
  assert.ok(said.includes('30 under'), said.join());
});

test('running dimensions are those of most rows, across and along as the rows run', () => {
  const report = layoutReport();
  const rows = report.layout?.rows ?? [];
  rows[0].marks = [0.3];
  rows[0].clips = [0];
  assert.deepEqual(usualMarks(report.layout), rows[1].marks);
  const upright = layout(layoutReport({ alongX: false }), phone);
  assert.equal(upright.xs.length, 2);
  assert.equal(upright.ys.length, 4);
});

test('studs stand where the frame says, and a face without a frame has none', () => {
  const { face } = layoutReport();
  assert.deepEqual(
    members(face).map((m) => Math.round(m / INCH)),
    [16, 32, 48, 64, 80, 96, 112, 128, 144],
  );
  assert.deepEqual(members({ ...face, frame: { ...face.frame, spacing: 0 } }), []);
});

test('it is read aloud in a sentence, and nothing drawn is not a number', () => {
  assert.match(
    describe(layoutReport(), 'us').replaceAll('\u00a0', ' '),
    /^The face, 13 ft 4 in by 8 ft, with 2 rows of channel and 8 clips: 1 over, 2 close, 4 hold, 1 under\./,
  );
  const odd = layoutReport();
  odd.face.width = Number.NaN;
  for (const spot of odd.layout?.spots ?? []) spot.pieces = null;
  assert.doesNotMatch(flat(clipsView(odd, { ...phone, width: Number.NaN })).replaceAll(/aria-label="[^"]*"/g, ''), /NaN|undefined/);
  assert.match(describe({ ...layoutReport(), layout: null }, 'si'), /no clips/);
});
