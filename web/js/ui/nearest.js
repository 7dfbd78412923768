// The closest published test: what it was of, what was measured, what Twoleaf
// says for that very construction, and in what yours differs from it.

import { html, nothing } from 'lit-html';
import { curveView } from '../draw/curve.js';
import { decibels, inches, joined, millimetres, NBSP, shown, TIMES, UNKNOWN } from '../format.js';
import { leafWords } from '../words.js';
import { rich } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').NearestReport} NearestReport
 * @typedef {import('../types.d.ts').NearestLayer} NearestLayer
 * @typedef {import('../types.d.ts').NearestGap} NearestGap
 * @typedef {import('../types.d.ts').NearestDifference} NearestDifference
 * @typedef {import('../types.d.ts').SoundReport} SoundReport
 * @typedef {import('../types.d.ts').Units} Units
 * @typedef {import('../words.js').Ctx} Ctx
 */

/** From here on the test has room for its whole words, px. */
const ROOMY = 344;
/** Differences that are said; the rest are counted. */
const MOST = 4;

/** The unfolded one, by its id. */
let unfolded = '';

/** Where it was published. @type {Record<string, string>} */
const PUBLISHED = {
  NBC2020: 'National Building Code of Canada 2020',
  HARRIS1995: 'Harris, Handbook of Acoustical Measurements and Noise Control, 1995',
  ROSSING2014: 'Rossing, Springer Handbook of Acoustics, 2014',
  ASHRAE2019: 'ASHRAE Handbook, HVAC Applications, 2019',
  BIES2017: 'Bies, Hansen and Howard, Engineering Noise Control, 2017',
  LONG2006: 'Long, Architectural Acoustics, 2006',
  IR761: 'National Research Council Canada, IR-761, 1998',
  IR586: 'National Research Council Canada, IR-586',
};

/**
 * "National Building Code of Canada 2020, Table 9.10.3.1.-A, W5c".
 * @param {Pick<NearestReport, 'source' | 'table' | 'id'>} nearest
 */
export function publishedWords({ source, table, id }) {
  const row = id.slice(id.indexOf('-') + 1);
  // Only the code numbers its walls and floors; other rows are known by their table.
  return [PUBLISHED[source] ?? source, table, source === 'NBC2020' ? `${/^F/.test(row) ? 'floor' : 'wall'} ${row}` : ''].filter(Boolean).join(', ');
}

/**
 * A length of the test, as a builder calls it.
 * @param {number} metres
 * @param {Units} units
 */
function size(metres, units) {
  return units === 'us' ? inches(metres / 0.0254, 8) : millimetres(metres);
}

/** Spacings by the trade's name, mm. */
const PITCH = /** @type {Record<number, string>} */ ({ 300: '12', 305: '12', 400: '16', 406: '16', 600: '24', 610: '24' });

/**
 * @param {number} metres
 * @param {Units} units
 */
function pitch(metres, units) {
  return (units === 'us' && PITCH[Math.round(metres * 1000)]) || size(metres, units);
}

/**
 * @param {number} metres
 * @param {Units} units
 */
function long(metres, units) {
  return `${size(metres, units)}${NBSP}${units === 'us' ? 'in' : 'mm'}`;
}

const BOARDS = /** @type {Record<string, string>} */ ({
  block: 'block',
  glass: 'glass',
  laminated: 'laminated glass',
  osb: 'OSB',
  mdf: 'MDF',
  topping: 'topping',
});

/**
 * @param {NearestLayer} layer
 * @param {Units} units
 */
function boardWords({ short, kind, thickness }, units) {
  const t = units === 'us' ? inches(thickness / 0.0254) : millimetres(thickness);
  if (kind === 'gypsum') return /typeX/i.test(short) ? `${t} type X` : `${t} gypsum`;
  if (kind === 'plywood' && /osb/i.test(short)) return `${t} plywood or OSB`;
  return `${t} ${BOARDS[kind] ?? kind}`;
}

/**
 * The boards of a leaf, equal neighbours counted: "2 × 5/8 type X".
 * @param {NearestLayer[]} layers
 * @param {Units} units
 */
function leafOf(layers, units) {
  /** @type {[string, number][]} */
  const groups = [];
  for (const layer of layers) {
    const name = boardWords(layer, units);
    const last = groups.at(-1);
    if (last?.[0] === name) last[1]++;
    else groups.push([name, 1]);
  }
  return groups.map(([name, count]) => (count > 1 ? `${count} ${TIMES} ${name}` : name)).join(', ');
}

const FRAMES = /** @type {Record<string, string>} */ ({
  wood: 'studs',
  staggered: 'staggered studs',
  double: 'two rows of studs',
  steel: 'steel studs',
  standing: 'studs clear of it',
  joist: 'joists',
  'steel joist': 'steel joists',
  strapping: 'strapping',
  'z-bar': 'Z-bars',
  bare: 'no frame',
  none: 'no frame',
  '': 'no frame',
});

/** Dressed depths by the trade's name, mm. */
const TRADE = /** @type {Record<number, string>} */ ({ 64: '2×3', 89: '2×4', 140: '2×6', 184: '2×8', 235: '2×10', 286: '2×12' });

/**
 * "2×4 studs at 24 in", "steel studs 2 1/2 in deep at 16 in".
 * @param {NearestGap} gap
 * @param {Units} units
 */
export function frameOf({ frame, frameDepth, sheet, spacing }, units) {
  const name = sheet > 0 && frame === 'double' ? 'two rows of steel studs' : (FRAMES[frame] ?? frame);
  const trade = sheet > 0 || units !== 'us' ? undefined : TRADE[Math.round(frameDepth * 1000)];
  const timber = ['wood', 'staggered', 'double', 'joist'].includes(frame) && !(sheet > 0);
  const named =
    timber && trade
      ? name.replace(/(studs|joists)$/, `${trade} $1`)
      : frameDepth > 0 && FRAMES[frame] !== 'no frame'
        ? `${name} ${long(frameDepth, units)} deep`
        : name;
  return spacing > 0 && FRAMES[frame] !== 'no frame' ? `${named} at ${pitch(spacing, units)}${NBSP}${units === 'us' ? 'in' : 'mm'}` : named;
}

/**
 * A whole construction in one sentence, from the side that its source names first.
 * @param {NearestReport['ours']} ours
 * @param {Units} units
 */
export function construction({ leaves, gaps }, units) {
  const all = leaves ?? [];
  const parts = all.flatMap((layers, i) => {
    const said = [leafOf(layers, units)];
    const gap = gaps?.[i];
    const before = gaps?.[i - 1];
    if (before && i === all.length - 1) said[0] = `${said[0]}${before.far === 'channel' ? ' on channel' : ''} on the other side`;
    else if (before?.far === 'channel') said[0] += ' on channel';
    if (gap?.near === 'channel') said[0] += ' on channel';
    if (gap) {
      const frame = frameOf(gap, units);
      if (frame !== 'no frame') said.push(frame);
      said.push(
        gap.fillDepth > 0 ? `fibre ${long(gap.fillDepth, units)}` : frame === 'no frame' && gap.depth > 0 ? `gap of ${long(gap.depth, units)}, empty` : 'empty',
      );
    }
    return said;
  });
  const text = parts.join(', ');
  return text ? `${text.charAt(0).toUpperCase()}${text.slice(1)}.` : '';
}

const FIXED = /** @type {Record<string, string>} */ ({
  screwed: 'screwed on',
  channel: 'on channel',
  clip: 'on clips',
  untied: 'not tied to the frame',
  '': 'with no frame',
});

/** @param {string} words "gypsum+plywood" */
function kindsOf(words = '') {
  return words
    .split('+')
    .filter(Boolean)
    .map((kind) => BOARDS[kind] ?? kind)
    .join(' and ');
}

/**
 * One difference in plain words, yours first.
 * @param {NearestDifference} d
 * @param {Ctx} ctx
 * @param {number} leaves of yours
 * @returns {string}
 */
export function differenceWords(d, ctx, leaves) {
  const { units } = ctx;
  const where = d.leaf >= 0 && leaves > 1 ? `${leafWords(d.leaf, leaves).toLowerCase()} ` : '';
  const mass = (/** @type {number} */ v) => joined(shown('surfaceMass', v, ctx));
  const percent = (/** @type {number} */ v) => `${Math.round(v * 100)}${NBSP}%`;
  switch (d.what) {
    case 'leaves':
      return `${d.yours} leaves, not ${d.test}`;
    case 'facing':
      return 'a wall, not a floor, or the other way';
    case 'leafMass':
      return `${where}${mass(d.yours)}, not ${shown('surfaceMass', d.test, ctx).figure}`;
    case 'layers':
      return `${where}${d.yours === 1 ? 'one layer' : `${d.yours} layers`}, not ${d.test}`;
    case 'boards':
      return `${where}${kindsOf(d.yoursWord)}, not ${kindsOf(d.testWord)}`;
    case 'joints':
      return d.yours > d.test ? `${where}with damping film` : `${where}without damping film`;
    case 'frame':
      return `${frameWord(d.yoursWord)}, not ${frameWord(d.testWord)}`;
    case 'sheet':
      return `steel of ${millimetres(d.yours)}${NBSP}mm, not ${millimetres(d.test)}`;
    case 'spacing':
      return `${pitch(d.yours, units)}${NBSP}${units === 'us' ? 'in' : 'mm'} between frames, not ${pitch(d.test, units)}`;
    case 'depth':
      return `gap ${long(d.yours, units)}, not ${size(d.test, units)}`;
    case 'filled':
      return d.yours < 0.01 ? 'empty, not filled' : d.test < 0.01 ? 'filled, not empty' : `filled to ${percent(d.yours)}, not ${percent(d.test)}`;
    case 'fixing':
      return `${FIXED[d.yoursWord ?? ''] ?? d.yoursWord}, not ${FIXED[d.testWord ?? ''] ?? d.testWord}`;
    case 'perArea': {
      const per = units === 'us' ? 0.3048 ** 2 * 100 : 1;
      return `${(d.yours * per).toPrecision(2)} fixings ${units === 'us' ? 'in 100 ft²' : 'per m²'}, not ${(d.test * per).toPrecision(2)}`;
    }
    case 'shorted':
      return d.yours > 0 ? 'screws that reach the frame' : 'no screws that reach the frame';
    case 'screws':
      return `screws ${pitch(d.yours, units)}${NBSP}${units === 'us' ? 'in' : 'mm'} apart, closer than usual`;
    case 'masonry':
      return `${where}boards against masonry`;
    case 'glazing':
      return `${where}a pane against boards`;
    case 'thickness':
      return `${where}${long(d.yours, units)} thick, not ${size(d.test, units)}`;
  }
  return d.what;
}

/** @param {string | undefined} kind */
function frameWord(kind = '') {
  return kind === 'double steel' ? 'two rows of steel studs' : kind === 'wood' ? 'wood studs' : (FRAMES[kind] ?? kind);
}

/**
 * @param {NearestReport} nearest
 * @param {Ctx} ctx
 * @param {number} leaves of yours
 */
export function differencesWords(nearest, ctx, leaves) {
  const all = nearest.differences.map((d) => differenceWords(d, ctx, leaves));
  if (all.length === 0) return 'Yours is the same in all that counts.';
  const more = all.length - MOST;
  return `Yours: ${all.slice(0, MOST).join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
}

/**
 * @param {App} app
 * @param {NearestReport} nearest
 * @param {number} width of the place a curve stands in, px
 */
export function nearestView(app, nearest, width) {
  const { ours } = nearest;
  const open = unfolded === nearest.id;
  const leaves = app.report?.leaves.length ?? 2;
  const of = html`<p>${rich(construction(ours, app.units))}</p>`;
  return html`<section class="nearest" aria-label="Nearest published test">
    <h2 class="head part">Nearest published test</h2>
    ${app.wide ? nothing : of}
    <dl class="tests">
      <div>
        <dt>${app.wide || width < ROOMY ? 'Measured' : 'Measured in the laboratory'}</dt>
        <dd><b>STC ${nearest.stc || UNKNOWN}</b></dd>
        <dd>bass <b>${nearest.bass === undefined ? UNKNOWN : decibels(nearest.bass)}</b>${nearest.bass === undefined ? html`<span class="hid">, not printed</span>` : nothing}</dd>
      </div>
      <div>
        <dt>Twoleaf, that ${app.wide ? '' : 'very '}${ours.gaps.some((gap) => /joist/.test(gap.frame)) ? 'floor' : 'wall'}</dt>
        <dd><b>STC ${ours.stc}</b></dd>
        <dd>bass <b>${decibels(ours.bass)}</b></dd>
      </div>
    </dl>
    ${app.wide ? of : nothing}
    <p class="soft">${rich(differencesWords(nearest, app.ctx, leaves))}</p>
    <p class="soft">
      ${publishedWords(nearest)}.
      <button
        type="button"
        class="tap"
        aria-expanded=${open}
        @click=${() => {
          unfolded = open ? '' : nearest.id;
          app.render();
        }}
      >
        Its build-up and curve
      </button>
    </p>
    ${open ? more(app, nearest, width) : nothing}
  </section>`;
}

/**
 * Its layers one by one, what its source leaves out, and the curves.
 * @param {App} app
 * @param {NearestReport} nearest
 * @param {number} width
 */
function more(app, nearest, width) {
  const { ours, measured } = nearest;
  const leaves = ours.leaves ?? [];
  const mass = (/** @type {number} */ v) => joined(shown('surfaceMass', v, app.ctx));
  return html`<ul class="lines parts">
      ${leaves.map(
        (layers, i) => html`${layers.map(
          (layer) => html`<li><span>${rich(boardWords(layer, app.units))}</span><span class="soft">${mass(layer.mass)}</span></li>`,
        )}
        ${ours.gaps[i] ? html`<li><span>${rich(gapOf(ours.gaps[i], app.units))}</span><span class="soft">gap ${rich(long(ours.gaps[i].depth, app.units))}</span></li>` : nothing}`,
      )}
    </ul>
    ${nearest.assumed?.length ? html`<p class="soft">${rich(`Not stated there, and assumed: ${nearest.assumed.join('; ')}.`)}</p>` : nothing}
    ${app.report?.sound ? html`<div class="drawing-place">${curveView(asSound(app.report.sound, nearest), curveOptions(app, nearest, width))}</div>` : nothing}
    <p class="soft">
      Full line: that construction by Twoleaf. Dashed: yours.
      ${measured?.length ? `Rings: measured, ${nearest.octaves ? 'by octaves' : 'by thirds of an octave'}.` : 'Of the test only the rating was printed, no curve.'}
    </p>`;
}

/**
 * @param {NearestGap} gap
 * @param {Units} units
 */
function gapOf(gap, units) {
  const channel = [gap.near, gap.far].includes('channel')
    ? `channel${gap.rows > 0 ? ` ${pitch(gap.rows, units)}${NBSP}${units === 'us' ? 'in' : 'mm'}` : ''}`
    : '';
  return [frameOf(gap, units), channel, gap.fillDepth > 0 ? `fibre ${long(gap.fillDepth, units)}` : 'empty'].filter(Boolean).join(', ');
}

/** @type {WeakMap<NearestReport, {of: SoundReport, made: SoundReport}>} */
const made = new WeakMap();

/**
 * The test's computed curve in the form a chart takes, yours as what it is compared with.
 * @param {SoundReport} sound
 * @param {NearestReport} nearest
 * @returns {SoundReport}
 */
export function asSound(sound, nearest) {
  const known = made.get(nearest);
  if (known?.of === sound) return known.made;
  /** @type {SoundReport} */
  const curve = {
    ...sound,
    tl: nearest.ours.tl,
    low: [],
    high: [],
    ref: sound.tl,
    octaves: [],
    resonances: null,
    dips: null,
    decides: -1,
    need: null,
  };
  made.set(nearest, { of: sound, made: curve });
  return curve;
}

/**
 * @param {App} app
 * @param {NearestReport} nearest
 * @param {number} width
 * @returns {import('../draw/curve.js').Options}
 */
function curveOptions(app, nearest, width) {
  return {
    width,
    mode: app.wide ? 'desk' : 'phone',
    ratingIs: 'STC',
    alone: true,
    label: `What Twoleaf says for ${publishedWords(nearest)}, by thirds of an octave from 63${NBSP}Hz: ${nearest.ours.tl.slice(3).map(decibels).join(', ')}${NBSP}dB.`,
    measured: (nearest.measured ?? []).map(({ hz, loss }) => ({ hz, db: loss })),
  };
}
