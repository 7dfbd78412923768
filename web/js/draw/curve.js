// How much a build-up stops, band by band: the curve with its likely range,
// the reference behind it, and the few marks that explain its shape. chart()
// is plain geometry, curveView() the picture, curveTable() the same in numbers.

import { html, nothing, svg } from 'lit-html';
import { decibels, hertz, NBSP, UNKNOWN } from '../format.js';
import { n } from './hatch.js';
import { textWidth } from './measure.js';

/**
 * @typedef {import('../types.d.ts').SoundReport} SoundReport
 * @typedef {import('../types.d.ts').Need} Need
 * @typedef {object} Options
 * @property {number} width of the place the chart stands in, px
 * @property {'phone' | 'desk' | 'print'} mode
 * @property {string} ratingIs "STC" or "Rw"
 * @property {boolean} [isReference] yours is the reference: one curve
 * @property {string} [label] what it shows, where it is not yours
 * @property {boolean} [alone] without what is needed, as for another wall
 * @property {{hz: number, db: number}[]} [measured] rings at what a laboratory found
 */

const LOWEST = 28;
const HIGHEST = 5700;
/** Below this it is beyond the tests, and drawn so. */
const TESTED = 50;
const OCTAVES = [63, 125, 250, 500, 1000, 2000, 4000];
const RULES = 20;
/** So far a range may reach over the top rule, dB. */
const OVER = 8;
const RING = 4;
const MARKS = 4;

const USES = {
  phone: { text: 16, tallest: 300, share: 0.87, left: 30 },
  desk: { text: 16, tallest: 376, share: 0.58, left: 38 },
  print: { text: 13.3, tallest: 192, share: 0.5, left: 30 },
};

/**
 * @typedef {{x: number, y: number}} Point
 * @typedef {{at: Point, lines: string[], x: number, y: number, anchor: 'start' | 'middle' | 'end', to: Point, rank: number}} Mark x and y of the first line's baseline
 * @typedef {object} Chart
 * @property {number} width
 * @property {number} height
 * @property {number} left
 * @property {number} right
 * @property {number} top
 * @property {number} bottom
 * @property {number} most dB at the top rule
 * @property {(hz: number) => number} x
 * @property {(db: number) => number} y
 * @property {Point[]} yours
 * @property {Point[]} low
 * @property {Point[]} high
 * @property {Point[]} reference
 * @property {number} tested how many points at the start are beyond the tests
 * @property {Mark[]} marks
 * @property {Step[]} steps
 * @property {{x: number, y: number} | undefined} needed where the word stands, its start and baseline
 */

/**
 * One octave of what is needed: its step, and what is short of it.
 * @typedef {object} Step
 * @property {number} x0
 * @property {number} x1
 * @property {number} y
 * @property {Point[]} outline of the shortfall, empty where there is none
 * @property {string} hatch
 * @property {number} short dB
 * @property {Point} figure centre and baseline of its figure
 * @property {boolean} inside the figure stands on the hatch, not over the step
 * @property {boolean} said the word "short" stands under its figure
 */

/** What was worked out for a report; a page draws the same one many times. @type {WeakMap<SoundReport, Map<string, Chart>>} */
const worked = new WeakMap();

/**
 * @param {SoundReport} sound
 * @param {Options} options
 * @returns {Chart}
 */
export function chart(sound, options) {
  const of = worked.get(sound) ?? new Map();
  worked.set(sound, of);
  const key = JSON.stringify(options);
  const known = of.get(key) ?? layOut(sound, options);
  of.set(key, known);
  return known;
}

/**
 * @param {SoundReport} sound
 * @param {Options} options
 * @returns {Chart}
 */
function layOut(sound, options) {
  const use = USES[options.mode] ?? USES.phone;
  const width = Number.isFinite(options.width) ? Math.max(200, options.width) : 358;
  const needed = neededOctaves(sound, options);
  /** @param {(number[] | undefined)[]} of */
  const highest = (...of) =>
    Math.max(
      0,
      ...bands(sound)
        .flatMap((i) => of.map((levels) => levels?.[i]).filter(Number.isFinite))
        .map(Number),
    );
  const ranges = highest(sound.high);
  const peak = Math.max(
    highest(sound.tl, sound.ref),
    // A range may look out over the top rule, by so much.
    ranges - OVER,
    ...needed.map((octave) => octave.need),
    ...(options.measured ?? []).map((point) => point.db),
  );
  const most = Math.min(160, Math.max(80, Math.ceil(peak / RULES) * RULES));
  // A figure may stand on the highest step.
  const figure = needed.some((octave) => octave.short >= HALF && octave.need > most - 6);
  const tall = Math.min(use.tallest, use.share * width) * (most > 80 ? 1.1 : 1);
  const left = use.left;
  const right = width;
  const over = (tall * Math.min(OVER, Math.max(0, ranges - most))) / most;
  const top = Math.max(use.text * (figure ? 1.4 : 0.75), over + 2);
  const bottom = top + tall;
  const octaves = Math.log2(HIGHEST / LOWEST);
  /** @param {number} hz */
  const x = (hz) => left + ((right - left) * Math.log2(hz / LOWEST)) / octaves;
  /** @param {number} db */
  const y = (db) => bottom - (tall * Math.min(most + OVER, Math.max(0, db))) / most;

  /** @param {number[] | undefined} levels */
  const line = (levels) =>
    bands(sound).flatMap((i) => (Number.isFinite(levels?.[i]) ? [{ x: x(sound.hz[i]), y: y(/** @type {number[]} */ (levels)[i]) }] : []));
  const yours = line(sound.tl);
  const edge = x(TESTED) - 0.01;
  /** @type {Chart} */
  const drawn = {
    width,
    height: bottom + use.text * 1.85,
    left,
    right,
    top,
    bottom,
    most,
    x,
    y,
    yours,
    low: line(sound.low),
    high: line(sound.high),
    reference: options.isReference ? [] : line(sound.ref),
    tested: yours.filter((point) => point.x < edge).length,
    marks: [],
    steps: [],
    needed: undefined,
  };
  drawn.steps = stepsOf(drawn, needed, use.text);
  drawn.needed = wordPlace(drawn, use.text);
  drawn.marks = place(
    drawn,
    wanted(drawn, sound, options),
    use.text,
    drawn.steps.every((step) => step.short === 0),
  );
  return drawn;
}

/** Less than this reads as 0 dB. */
const HALF = 0.5;
/** Half an octave, of octaves of the base-ten system. */
const EDGE = 10 ** 0.15;
/** Distance of the lines of a hatch across them, px. */
const PITCH = 6;
/** A figure stands inside its hatch where that is at least this high over the figure's width, and not deeper in it than so, px. */
const INSIDE = 32;
const WORDED = 42;
const FIGURE = 28;
const DEEP = 140;

/**
 * The octaves in which anything is needed.
 * @param {SoundReport} sound
 * @param {Options} options
 */
function neededOctaves(sound, options) {
  const octaves = options.alone ? [] : (sound.need?.octaves ?? []);
  return octaves.filter((octave) => Number.isFinite(octave.need) && octave.need >= HALF && octave.hz * EDGE <= HIGHEST * 1.01);
}

/**
 * The steps; "short" is said once, at the largest shortfall that has room for the word.
 * @param {Chart} drawn
 * @param {Need['octaves']} needed
 * @param {number} size
 */
function stepsOf(drawn, needed, size) {
  const worded = needed.map((octave) => stepOf(drawn, octave, true, size));
  const most = worded.reduce((best, step, i) => (step.inside && step.short > (worded[best]?.short ?? 0) ? i : best), -1);
  return needed.map((octave, i) => (i === most ? worded[i] : stepOf(drawn, octave, false, size)));
}

/**
 * @param {Chart} drawn
 * @param {Need['octaves'][0]} octave
 * @param {boolean} said the word "short" stands under its figure
 * @param {number} size
 * @returns {Step}
 */
function stepOf(drawn, octave, said, size) {
  const hz = nearestThird(octave.hz);
  const x0 = drawn.x(hz / EDGE);
  const x1 = Math.min(drawn.right, drawn.x(hz * EDGE));
  const y = drawn.y(octave.need);
  const short = octave.short >= HALF && Number.isFinite(octave.got) ? octave.short : 0;
  const outline = short ? shortfall(drawn.yours, x0 + 1, x1 - 1, y) : [];
  const middle = (x0 + x1) / 2;
  // Free for words: from the step down to the likely range, as wide as a figure.
  const range = reach(drawn.high, middle - FIGURE / 2, middle + FIGURE / 2);
  const room = (range ? range.high : drawn.bottom) - y;
  const inside = room >= (said ? WORDED : INSIDE);
  const height = size * (said ? 2 : 1);
  return {
    x0,
    x1,
    y,
    outline,
    hatch: outline.length ? hatched(outline) : '',
    short,
    figure: { x: middle, y: inside ? y + Math.max(4, (Math.min(room, DEEP) - height) / 2) + size * 0.9 : y - size * 0.42 },
    inside,
    said,
  };
}

/** The exact mid-band frequency of a nominal octave. @param {number} hz */
function nearestThird(hz) {
  return 10 ** (Math.round(10 * Math.log10(hz)) / 10);
}

/**
 * The area between a step and the curve where the curve lies under it.
 * @param {Point[]} line
 * @param {number} x0
 * @param {number} x1
 * @param {number} top
 */
function shortfall(line, x0, x1, top) {
  const xs = [x0, ...line.map((point) => point.x).filter((x) => x > x0 && x < x1), x1].filter((x) => heightAt(line, x) !== undefined);
  if (xs.length < 2) return [];
  const low = xs.map((x) => ({ x, y: Math.max(top, /** @type {number} */ (heightAt(line, x))) }));
  return [{ x: xs[0], y: top }, ...low, { x: xs[xs.length - 1], y: top }];
}

/**
 * Lines at 45° within an outline.
 * @param {Point[]} outline
 */
function hatched(outline) {
  const step = PITCH * Math.SQRT2;
  const sums = outline.map((point) => point.x + point.y);
  let d = '';
  // Along a line of the hatch x + y is the same; multiples of the step, so that neighbours go on.
  for (let c = Math.ceil(Math.min(...sums) / step) * step; c < Math.max(...sums); c += step) {
    /** @type {number[]} */
    const cuts = [];
    outline.forEach((a, i) => {
      const b = outline[(i + 1) % outline.length];
      const [from, to] = [a.x + a.y - c, b.x + b.y - c];
      if (from < 0 !== to < 0) cuts.push(a.x + ((b.x - a.x) * from) / (from - to));
    });
    cuts.sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      if (cuts[i + 1] - cuts[i] > 0.5) d += `M${n(cuts[i])} ${n(c - cuts[i])}L${n(cuts[i + 1])} ${n(c - cuts[i + 1])}`;
    }
  }
  return d;
}

const NEEDED = 'needed';

/**
 * The word stands on the first step, over its figure if that stands there too;
 * where the curve runs through there, on or under a step that is clear of it.
 * @param {Chart} drawn
 * @param {number} size
 */
function wordPlace(drawn, size) {
  const { steps, left, right } = drawn;
  const width = textWidth(NEEDED, size);
  const places = steps.flatMap((step, i) => {
    const over = step.short && !step.inside ? size * 1.15 : 0;
    const x = i ? Math.min(right, step.x1) - width : Math.max(left + 2, step.x0 - size * 1.7);
    const ends = { x: Math.min(right - width, Math.max(left + 2, x)) };
    return [
      { ...ends, y: step.y - size * 0.45 - over, cost: i },
      { ...ends, y: step.y + size * 1.05, cost: i + 0.5 },
    ];
  });
  const [first, ...others] = places;
  if (!first) return undefined;
  const free = [first, ...others.sort((a, b) => b.cost - a.cost)].find(({ x, y }) => {
    const box = { x0: x, x1: x + width, y0: y - size * 0.8, y1: y + size * 0.2 };
    if (box.y0 < drawn.top || box.y1 > drawn.bottom) return false;
    const crossed = steps.some((step) => overlaps(box, { x0: step.x0, x1: step.x1, y0: step.y - 1, y1: step.y + 1 }));
    const high = reach(drawn.high, x - 2, x + width + 2);
    const low = reach(drawn.low, x - 2, x + width + 2);
    return !crossed && (!high || !low || box.y1 < high.high - 2 || box.y0 > low.low + 2);
  });
  const { x, y } = free ?? first;
  return { x, y };
}

/**
 * What the words of marks keep clear of, beside the curves: the steps where they lie under the curve.
 * @param {Chart} drawn
 * @param {number} size
 * @returns {Box[]}
 */
function taken(drawn, size) {
  const boxes = drawn.steps.map((step) => ({ x0: step.x0, x1: step.x1, y0: step.y - 2, y1: step.y + 2 }));
  const { needed } = drawn;
  if (needed) boxes.push({ x0: needed.x, x1: needed.x + textWidth(NEEDED, size), y0: needed.y - size * 0.8, y1: needed.y + 2 });
  return boxes;
}

/**
 * A band by its nominal frequency, none of its digits lost: "63 Hz", "3.15 kHz".
 * @param {number} hz
 */
export function bandName(hz) {
  return hz < 1000 ? `${hz}${NBSP}Hz` : `${hz / 1000}${NBSP}kHz`;
}

/** Bands that lie on the axis. @param {SoundReport} sound */
function bands(sound) {
  return sound.hz.map((_, i) => i).filter((i) => sound.hz[i] >= LOWEST && sound.hz[i] <= HIGHEST && Number.isFinite(sound.tl[i]));
}

/**
 * @typedef {{at: Point, text: string, rank: number}} Wish
 */

/**
 * What is worth marking, the most telling first, none on another.
 * @param {Chart} drawn
 * @param {SoundReport} sound
 * @param {Options} options
 * @returns {Wish[]}
 */
function wanted(drawn, sound, options) {
  /** @type {{hz: number, text: string}[]} */
  const all = [];
  const resonances = (sound.resonances ?? []).filter((hz) => hz >= LOWEST && hz <= HIGHEST).sort((a, b) => a - b);
  if (resonances.length) all.push({ hz: resonances[0], text: `resonance ${hertz(resonances[0])}` });
  const decides = sound.hz[sound.decides];
  if (decides !== undefined) all.push({ hz: decides, text: `${bandName(decides)} decides ${options.ratingIs}` });
  for (const dip of dips(sound)) all.push({ hz: bottomOf(sound, dip.hz), text: dip.text });
  if (resonances.length > 1) all.push({ hz: resonances[1], text: `resonance ${hertz(resonances[1])}` });

  /** @type {Wish[]} */
  const kept = [];
  for (const { hz, text } of all) {
    const at = onCurve(drawn, drawn.x(hz));
    if (!at || kept.length === MARKS || kept.some((mark) => Math.hypot(mark.at.x - at.x, mark.at.y - at.y) < 3 * RING + 2)) continue;
    kept.push({ at, text, rank: kept.length });
  }
  return kept;
}

/** Two dips nearer than half a third-octave band fall together. */
const TOGETHER = 2 ** (1 / 6);

/**
 * The band in which a dip is deepest: at its coincidence or a little above it,
 * where the curve turns; the coincidence itself where it does not turn.
 * @param {SoundReport} sound
 * @param {number} hz of the coincidence
 */
function bottomOf(sound, hz) {
  const turns = bands(sound).filter(
    (i) => sound.hz[i] > 0.85 * hz && sound.hz[i] < 1.35 * hz && sound.tl[i] < sound.tl[i - 1] && sound.tl[i] <= sound.tl[i + 1],
  );
  const lowest = turns.reduce((best, i) => (best < 0 || sound.tl[i] < sound.tl[best] ? i : best), -1);
  return lowest < 0 ? hz : sound.hz[lowest];
}

/**
 * The dips, those of boards in two leaves once and first.
 * @param {SoundReport} sound
 */
export function dips(sound) {
  const within = (sound.dips ?? []).filter((dip) => dip.hz >= TESTED && dip.hz <= HIGHEST);
  /** @type {{hz: number, text: string, both: boolean}[]} */
  const all = [];
  for (const dip of within) {
    const other = dip.both ? within.find((o) => o.leaf !== dip.leaf && o.hz / dip.hz < TOGETHER && dip.hz / o.hz < TOGETHER) : undefined;
    const hz = other ? Math.sqrt(dip.hz * other.hz) : dip.hz;
    const text = together(dip, other);
    const known = all.some((said) => said.text === text || (other && said.both && said.hz / hz < TOGETHER && hz / said.hz < TOGETHER));
    if (!known || (!other && all.every((said) => said.text !== text || Math.abs(said.hz / hz - 1) > 0.06))) all.push({ hz, text, both: dip.both });
  }
  return all.sort((a, b) => Number(b.both) - Number(a.both) || a.hz - b.hz);
}

/**
 * @param {{kind: string, short: string, both: boolean}} dip
 * @param {{kind: string, short: string} | undefined} other the one that dips with it in another leaf
 */
function together(dip, other) {
  const [one, many] = nouns(dip.kind, dip.short);
  if (!dip.both) return `${one} dips`;
  if (!other || other.kind === dip.kind) return `both ${many} dip`;
  return `${one} and ${nouns(other.kind, other.short)[0]} dip`;
}

/**
 * @param {string} kind
 * @param {string} short
 */
function nouns(kind, short) {
  switch (kind) {
    case 'gypsum':
      return ['gypsum', 'gypsum boards'];
    case 'plywood':
      return ['plywood', 'plywood boards'];
    case 'osb':
      return ['OSB', 'OSB boards'];
    case 'mdf':
      return ['MDF', 'MDF boards'];
    case 'glass':
    case 'laminated':
      return ['glass', 'panes'];
    case 'concrete':
    case 'block':
    case 'brick':
      return [kind, `${kind} walls`];
  }
  const word = short ? short.charAt(0).toLowerCase() + short.slice(1) : 'board';
  return [word, 'boards'];
}

/**
 * @param {Chart} drawn
 * @param {number} x
 * @returns {Point | undefined}
 */
function onCurve(drawn, x) {
  const y = heightAt(drawn.yours, x);
  return y === undefined ? undefined : { x, y };
}

/**
 * @param {Point[]} line
 * @param {number} x
 */
function heightAt(line, x) {
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (x >= a.x && x <= b.x) return b.x > a.x ? a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x) : a.y;
  }
  return undefined;
}

/**
 * Lowest and highest place of a line between two x, px.
 * @param {Point[]} line
 * @param {number} from
 * @param {number} to
 */
function reach(line, from, to) {
  const ys = line.filter((point) => point.x >= from && point.x <= to).map((point) => point.y);
  for (const x of [from, to]) {
    const y = heightAt(line, x);
    if (y !== undefined) ys.push(y);
  }
  return ys.length ? { low: Math.max(...ys), high: Math.min(...ys) } : undefined;
}

/**
 * @typedef {{x0: number, x1: number, y0: number, y1: number}} Box
 */

/** @typedef {{mark: Mark, box: Box, cost: number, id: number}} Candidate */

/** What words on a step of what is needed cost, likewise. */
const ON_LINE = 90;
/** What a mark without words costs, against a leader of so many px. */
const UNSAID = 600;

/**
 * Words for marks: under the curve where it leaves room, with the shortest
 * leaders together, touching nothing. A mark that finds no room is left to the
 * sentences.
 * @param {Chart} drawn
 * @param {Wish[]} wishes
 * @param {number} size
 * @param {boolean} above whether the space over the curve is free
 * @returns {Mark[]}
 */
function place(drawn, wishes, size, above) {
  const rings = wishes.map(({ at }) => ({ x0: at.x - RING - 2, x1: at.x + RING + 2, y0: at.y - RING - 2, y1: at.y + RING + 2 }));
  const lines = taken(drawn, size);
  const choices = wishes.map((wish, k) =>
    candidates(drawn, wish, size, above)
      .filter((candidate) => !rings.some((box, i) => i !== k && (touches(box, candidate.box) || crosses(box, wish.at, candidate.mark.to))))
      .map((candidate) => (lines.some((box) => overlaps(box, candidate.box)) ? { ...candidate, cost: candidate.cost + ON_LINE } : candidate))
      .sort((a, b) => a.cost - b.cost),
  );
  const least = choices.reduce((sum, list, k) => sum + (list.length ? list[0].cost : UNSAID / (k + 1)), 0);
  const agree = agreement(choices);
  /** @type {{cost: number, chosen: Candidate[]} | undefined} */
  let best;
  for (const order of orders(wishes.map((_, k) => k))) {
    /** @type {Candidate[]} */
    const chosen = [];
    let cost = 0;
    order.forEach((k, i) => {
      /** @param {number} of */
      const possible = (of) => choices[of].filter((candidate) => chosen.every((other) => agree(other, candidate)));
      const mine = possible(k);
      // The shortest leader that leaves the marks to come a place, else the shortest.
      const rest = order.slice(i + 1).map(possible);
      const found = mine.find((candidate) => rest.every((list) => !list.length || list.some((other) => agree(candidate, other)))) ?? mine[0];
      if (found) chosen.push(found);
      cost += found ? found.cost : UNSAID / (k + 1);
    });
    if (!best || cost < best.cost) best = { cost, chosen };
    if (best.cost <= least + 0.01) break;
  }
  return (best?.chosen ?? []).map((candidate) => candidate.mark).sort((a, b) => a.rank - b.rank);
}

/**
 * Whether two candidates can stand together; each pair is looked at once.
 * @param {Candidate[][]} choices
 */
function agreement(choices) {
  let count = 0;
  for (const list of choices) for (const candidate of list) candidate.id = count++;
  const known = new Uint8Array(count * count);
  /** @param {Candidate} a @param {Candidate} b @returns {boolean} */
  return (a, b) => {
    const at = a.id * count + b.id;
    if (known[at] === 0) known[at] = clash(a, b) ? 1 : 2;
    return known[at] === 2;
  };
}

/** @param {number[]} list @returns {number[][]} */
function orders(list) {
  return list.length < 2 ? [list] : list.flatMap((first) => orders(list.filter((other) => other !== first)).map((rest) => [first, ...rest]));
}

/** @param {Candidate} a @param {Candidate} b */
function clash(a, b) {
  return touches(a.box, b.box) || meet(a.mark, b.mark) || crosses(a.box, b.mark.at, b.mark.to) || crosses(b.box, a.mark.at, a.mark.to);
}

/** How far beyond the first free place words are tried too, px. */
const FURTHER = [0, 8, 16, 24, 32, 44, 58, 76];
/** Where under or over a mark its words may hang, as a share of their length, and how far their leader leans, px. */
const HANGS = [
  [0.5, 0],
  [0.6, 0],
  [0.4, 0],
  [0.1, 10],
  [0.9, 0],
  [0.75, 0],
  [0.25, 0],
];

/**
 * @param {Chart} drawn
 * @param {Wish} wish
 * @param {number} size
 * @param {boolean} above
 * @returns {Candidate[]}
 */
function candidates(drawn, wish, size, above) {
  const { at, rank } = wish;
  const line = size * 1.2;
  /** @type {Candidate[]} */
  const all = [];
  /**
   * Tries one way to hang the words further and further off.
   * @param {number} x0
   * @param {number} width
   * @param {number} way
   * @param {(off: number) => {y0: number, y1: number}} heights
   * @param {(box: Box, off: number) => Candidate} make
   */
  const tryOut = (x0, width, way, heights, make) => {
    const x1 = x0 + width;
    const limit = clear(drawn, x0, x1, way);
    if (limit === undefined) return;
    /** @type {number | undefined} */
    let first;
    for (let off = 14; off < 150; off += 4) {
      const { y0, y1 } = heights(off);
      if (y0 < drawn.top + 2 || y1 > drawn.bottom - 3 || (way > 0 ? y0 <= limit : y1 >= limit)) continue;
      first ??= off;
      const more = off - first;
      if (FURTHER.some((step) => more >= step && more < step + 4)) all.push(make({ x0, x1, y0, y1 }, off));
    }
  };
  for (const lines of wrapped(wish.text)) {
    const width = Math.max(...lines.map((text) => textWidth(text, size)));
    const height = lines.length * line;
    const wrap = (lines.length - 1) * 8;
    for (const way of above ? [1, -1] : [1]) {
      const extra = wrap + (way < 0 ? 70 : 0);
      // Beside: the leader runs to the middle of the words' near end.
      for (const side of [1, -1]) {
        const x0 = side > 0 ? at.x + 19 : at.x - 19 - width;
        tryOut(
          x0,
          width,
          way,
          (off) => ({ y0: at.y + way * off * 1.4 - height / 2, y1: at.y + way * off * 1.4 + height / 2 }),
          (box, off) => {
            const to = { x: at.x + side * 16, y: at.y + way * (off * 1.4 - 2) };
            return {
              mark: made(at, lines, box, side > 0 ? 'start' : 'end', to, size, rank),
              box,
              id: 0,
              cost: length(at, to) + 10 + extra + (side < 0 ? 6 : 0),
            };
          },
        );
      }
      // Under or over: the leader ends on the words.
      for (const [share, lean] of HANGS) {
        const x = at.x + lean;
        const x0 = x - share * width;
        tryOut(
          x0,
          width,
          way,
          (off) => {
            const y0 = way > 0 ? at.y + off + 4 : at.y - off - 4 - height;
            return { y0, y1: y0 + height };
          },
          (box) => {
            const to = { x, y: way > 0 ? box.y0 + 1 : box.y1 - 1 };
            const anchor = Math.abs(share - 0.5) < 0.2 ? 'middle' : share < 0.5 ? 'start' : 'end';
            return { mark: made(at, lines, box, anchor, to, size, rank), box, id: 0, cost: length(at, to) + extra + Math.abs(share - 0.5) * 14 };
          },
        );
      }
    }
  }
  return all.length ? all : aside(drawn, wish, size);
}

/**
 * Close to the axis there is no room under a mark: its words stand further
 * aside, where the curve leaves room for them.
 * @param {Chart} drawn
 * @param {Wish} wish
 * @param {number} size
 * @returns {Candidate[]}
 */
function aside(drawn, { at, text, rank }, size) {
  const width = textWidth(text, size);
  const height = size * 1.2;
  /** @type {Candidate[]} */
  const all = [];
  for (const side of [1, -1]) {
    for (const off of [34, 50, 66, 84]) {
      const x0 = side > 0 ? at.x + off : at.x - off - width;
      const limit = clear(drawn, x0, x0 + width, 1);
      if (limit === undefined) continue;
      const y0 = Math.max(limit + 1, at.y - height / 2);
      const y1 = y0 + height;
      if (y1 > drawn.bottom - 3) continue;
      const box = { x0, x1: x0 + width, y0, y1 };
      const to = { x: side > 0 ? x0 - 3 : x0 + width + 3, y: (y0 + y1) / 2 };
      all.push({ mark: made(at, [text], box, side > 0 ? 'start' : 'end', to, size, rank), box, id: 0, cost: length(at, to) + 10 });
    }
  }
  return all;
}

/** In one line, or in two of about the same length. @param {string} text */
function wrapped(text) {
  const words = text.split(' ');
  if (words.length < 3) return [[text]];
  let best = 1;
  for (let i = 1; i < words.length; i++) {
    if (uneven(words, i) <= uneven(words, best)) best = i;
  }
  return [[text], [words.slice(0, best).join(' '), words.slice(best).join(' ')]];
}

/** @param {string[]} words @param {number} at */
function uneven(words, at) {
  return Math.abs(words.slice(0, at).join(' ').length - words.slice(at).join(' ').length);
}

/**
 * @param {Point} at
 * @param {string[]} lines
 * @param {Box} box
 * @param {Mark['anchor']} anchor
 * @param {Point} to
 * @param {number} size
 * @param {number} rank
 * @returns {Mark}
 */
function made(at, lines, box, anchor, to, size, rank) {
  const x = anchor === 'start' ? box.x0 : anchor === 'end' ? box.x1 : (box.x0 + box.x1) / 2;
  return { at, lines, x, y: box.y0 + size * 0.94, anchor, to, rank };
}

/**
 * The y that words between two x keep clear of the likely range and both
 * curves beyond; undefined where they would leave the plot.
 * @param {Chart} drawn
 * @param {number} x0
 * @param {number} x1
 * @param {number} way 1 under the curve, −1 over it
 */
function clear(drawn, x0, x1, way) {
  if (x0 < drawn.left + 2 || x1 > drawn.right) return undefined;
  let limit = way > 0 ? drawn.top : drawn.bottom;
  for (const line of [way > 0 ? drawn.low : drawn.high, drawn.yours, drawn.reference]) {
    const ys = reach(line, x0 - 3, x1 + 3);
    if (ys) limit = way > 0 ? Math.max(limit, ys.low + 4) : Math.min(limit, ys.high - 4);
  }
  return limit;
}

/** @param {Box} a @param {Box} b */
function overlaps(a, b) {
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

/** @param {Box} a @param {Box} b */
function touches(a, b) {
  return a.x0 < b.x1 + 4 && b.x0 < a.x1 + 4 && a.y0 < b.y1 + 6 && b.y0 < a.y1 + 6;
}

/**
 * Whether a leader runs through a box (its part within the box's height is looked at).
 * @param {Box} box
 * @param {Point} from
 * @param {Point} to
 */
function crosses(box, from, to) {
  const [top, low] = from.y < to.y ? [from, to] : [to, from];
  const y0 = Math.max(top.y, box.y0);
  const y1 = Math.min(low.y, box.y1);
  if (y0 >= y1) return false;
  const slope = (low.x - top.x) / (low.y - top.y);
  const [a, b] = [top.x + slope * (y0 - top.y), top.x + slope * (y1 - top.y)];
  return Math.max(a, b) > box.x0 - 2 && Math.min(a, b) < box.x1 + 2;
}

/** Whether two leaders cross. @param {Mark} a @param {Mark} b */
function meet(a, b) {
  /** @param {Point} p @param {Point} q @param {Point} r */
  const side = (p, q, r) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a.at, a.to, b.at) * side(a.at, a.to, b.to) < 0 && side(b.at, b.to, a.at) * side(b.at, b.to, a.to) < 0;
}

/** @param {Point} a @param {Point} b */
function length(a, b) {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/**
 * The chart as SVG.
 * @param {SoundReport} sound
 * @param {Options} options
 */
export function curveView(sound, options) {
  const drawn = chart(sound, options);
  const use = USES[options.mode] ?? USES.phone;
  const { tested } = drawn;
  // The guess reaches up to the first tested band, so that nothing is torn.
  const guessed = tested + 1;
  return svg`<svg class="drawing curve ${options.mode}" role="img" aria-label=${options.label ?? describe(sound, options)} width=${n(drawn.width)} height=${n(drawn.height)} viewBox="0 0 ${n(drawn.width)} ${n(drawn.height)}" font-size=${use.text}>
    ${gridView(drawn, use.text)}
    <path class="c-short" d=${drawn.steps.map((step) => step.hatch).join('')} />
    <path class="c-guess" d=${band(drawn.low.slice(0, guessed), drawn.high.slice(0, guessed))} />
    <path class=${drawn.steps.length ? 'd-wash c-over' : 'd-wash'} d=${band(drawn.low.slice(tested), drawn.high.slice(tested))} />
    <path class="c-edge" d=${path(drawn.low.slice(tested)) + path(drawn.high.slice(tested))} />
    ${neededView(drawn)}
    <path class="c-dotted c-ref" d=${path(drawn.reference.slice(0, guessed))} />
    <path class="c-dotted c-yours" d=${path(drawn.yours.slice(0, guessed))} />
    <path class="c-reference" d=${path(drawn.reference.slice(tested))} />
    <path class="c-curve" d=${path(drawn.yours.slice(tested))} />
    ${(options.measured ?? []).map(({ hz, db }) => svg`<circle class="c-ring" cx=${n(drawn.x(nearestThird(hz)))} cy=${n(drawn.y(db))} r=${RING} />`)}
    ${shortView(drawn, use.text)}
    ${drawn.marks.map((mark) => markView(mark, use.text))}
  </svg>`;
}

/**
 * The steps of what is needed, over the likely range so that they can be read in it.
 * @param {Chart} drawn
 */
function neededView({ steps }) {
  if (steps.length === 0) return nothing;
  const level = steps.map((step) => `M${n(step.x0)} ${n(step.y)}H${n(step.x1)}`).join('');
  const risers = steps
    .slice(1)
    .map((step, i) => (step.x0 - steps[i].x1 < 1 ? `M${n(step.x0)} ${n(steps[i].y)}V${n(step.y)}` : ''))
    .join('');
  return svg`<path class="c-riser" d=${risers} /><path class="c-needed" d=${level} />`;
}

/**
 * The figures of the shortfall, and the words.
 * @param {Chart} drawn
 * @param {number} size
 */
function shortView({ steps, needed }, size) {
  if (!needed) return nothing;
  return svg`<text class="d-text d-haloed" x=${n(needed.x)} y=${n(needed.y)}>${NEEDED}</text>
    ${steps
      .filter((step) => step.short > 0)
      .map(
        (step) => svg`<text class="c-lack d-haloed" x=${n(step.figure.x)} y=${n(step.figure.y)} text-anchor="middle">${decibels(step.short)}</text>
        ${step.said && step.inside ? svg`<text class="c-word d-haloed" x=${n(step.figure.x)} y=${n(step.figure.y + size)} text-anchor="middle">short</text>` : nothing}`,
      )}`;
}

/**
 * Rules, ticks and their labels; "dB" stands at the top rule instead of its figure.
 * @param {Chart} drawn
 * @param {number} size
 */
function gridView(drawn, size) {
  const levels = [];
  for (let db = RULES; db <= drawn.most; db += RULES) levels.push(db);
  const rules = levels.map((db) => `M${n(drawn.left)} ${n(drawn.y(db))}H${n(drawn.right)}`).join('');
  const thirds = [];
  for (let k = 15; k <= 37; k++) thirds.push(10 ** (k / 10));
  const small = thirds.map((hz) => `M${n(drawn.x(hz))} ${n(drawn.bottom)}v3`).join('');
  const big = OCTAVES.map((hz) => `M${n(drawn.x(hz))} ${n(drawn.bottom)}v6`).join('');
  return svg`<path class="c-rule" d=${rules} />
    ${levels.map((db) => svg`<text class="d-text d-soft" x=${n(drawn.left - 6)} y=${n(drawn.y(db) + size * 0.35)} text-anchor="end">${db === drawn.most ? 'dB' : db}</text>`)}
    <path class="c-small" d=${small} /><path class="c-tick" d=${big} />
    <path class="c-axis" d="M${n(drawn.left)} ${n(drawn.bottom)}H${n(drawn.right)}" />
    ${OCTAVES.map((hz) => svg`<text class="d-text" x=${n(drawn.x(hz))} y=${n(drawn.bottom + size * 1.42)} text-anchor="middle">${hz < 1000 ? hz : `${hz / 1000}k`}</text>`)}`;
}

/**
 * @param {Mark} mark
 * @param {number} size
 */
function markView(mark, size) {
  const gone = RING / Math.max(RING, length(mark.at, mark.to));
  const x = mark.at.x + (mark.to.x - mark.at.x) * gone;
  const y = mark.at.y + (mark.to.y - mark.at.y) * gone;
  return svg`<path class="c-leader" d="M${n(x)} ${n(y)}L${n(mark.to.x)} ${n(mark.to.y)}" />
    <circle class="c-ring" cx=${n(mark.at.x)} cy=${n(mark.at.y)} r=${RING} />
    ${mark.lines.map((text, i) => svg`<text class="d-text d-haloed" x=${n(mark.x)} y=${n(mark.y + i * size * 1.2)} text-anchor=${mark.anchor}>${text}</text>`)}`;
}

/** @param {Point[]} line */
function path(line) {
  return line.length > 1 ? `M${line.map((point) => `${n(point.x)} ${n(point.y)}`).join('L')}` : '';
}

/** @param {Point[]} low @param {Point[]} high */
function band(low, high) {
  if (low.length < 2 || high.length < 2) return '';
  return `${path(high)}L${[...low]
    .reverse()
    .map((point) => `${n(point.x)} ${n(point.y)}`)
    .join('L')}Z`;
}

/** @param {string} ratingIs */
function quantity(ratingIs) {
  return ratingIs === 'Rw' ? 'Sound reduction index' : 'Transmission loss';
}

/**
 * What the picture shows, in words; the numbers stand in the table.
 * @param {SoundReport} sound
 * @param {Options} options
 */
export function describe(sound, options) {
  const octaves = sound.octaves.map((octave) => `${bandName(octave.hz)} ${decibels(octave.tl)}${NBSP}dB`).join(', ');
  const marks = [
    ...(sound.resonances ?? []).slice(0, 2).map((hz) => `resonance at ${hertz(hz)}`),
    ...(sound.hz[sound.decides] ? [`${bandName(sound.hz[sound.decides])} decides ${options.ratingIs}`] : []),
    ...dips(sound).map((dip) => `${dip.text} at ${hertz(dip.hz)}`),
  ];
  const need = neededOctaves(sound, options).map(
    (o) => `${bandName(o.hz)} ${decibels(o.need)}${NBSP}dB${o.short >= HALF ? `, short by ${decibels(o.short)}` : ', enough'}`,
  );
  return `${quantity(options.ratingIs)} by octave: ${octaves}.${need.length ? ` Needed: ${need.join('; ')}.` : ''}${marks.length ? ` ${marks.join('; ')}.` : ''} The same numbers stand in the table below.`;
}

/**
 * The numbers of the chart, for those who cannot see it: octaves first, then thirds.
 * @param {SoundReport} sound
 * @param {{ratingIs: string, isReference?: boolean}} options
 */
export function curveTable(sound, options) {
  const octaves = sound.octaves.map((o) => ({ hz: o.hz, tl: o.tl, low: o.tl - o.spread, high: o.tl + o.spread, ref: o.ref }));
  const thirds = bands(sound).map((i) => ({ hz: sound.hz[i], tl: sound.tl[i], low: sound.low[i], high: sound.high[i], ref: sound.ref[i] }));
  return html`<details class="numbers">
    <summary>The same as a table</summary>
    ${sound.need ? needTable(sound, options) : bandTable('Octaves', octaves, options)}
    ${bandTable('Thirds of an octave', thirds, options)}
  </details>`;
}

/**
 * The octaves with what is needed beside what is stopped.
 * @param {SoundReport} sound
 * @param {{isReference?: boolean}} options
 */
function needTable(sound, options) {
  const needed = new Map((sound.need?.octaves ?? []).map((o) => [o.hz, o]));
  return html`<table>
    <caption>Octaves, dB</caption>
    <thead>
      <tr>
        <th class="band" scope="col">band</th><th scope="col">yours</th><th scope="col">needed</th><th scope="col">short by</th>
        ${options.isReference ? nothing : html`<th scope="col">reference</th>`}
      </tr>
    </thead>
    <tbody>
      ${sound.octaves.map((o) => {
        const need = needed.get(o.hz);
        return html`<tr>
          <th class="band" scope="row">${bandName(o.hz)}</th>
          <td><b class="own">${decibels(o.tl)}</b> <span class="soft">±${decibels(o.spread)}</span></td>
          <td>${need ? neededWords(need.need) : UNKNOWN}</td>
          <td class="own">${need ? shortWords(need) : UNKNOWN}</td>
          ${options.isReference ? nothing : html`<td class="soft">${decibels(o.ref)}</td>`}
        </tr>`;
      })}
    </tbody>
  </table>`;
}

/** Where the source has nothing in an octave, nothing is needed. @param {number} need */
export function neededWords(need) {
  return need < HALF ? 'none' : decibels(need);
}

/** @param {{short: number}} octave */
export function shortWords({ short }) {
  return short < HALF ? 'enough' : decibels(short);
}

/**
 * @param {string} caption
 * @param {{hz: number, tl: number, low: number, high: number, ref: number}[]} rows
 * @param {{ratingIs: string, isReference?: boolean}} options
 */
function bandTable(caption, rows, options) {
  return html`<table>
    <caption>${caption}, dB</caption>
    <thead>
      <tr><th class="band" scope="col">band</th><th scope="col">yours</th><th scope="col">likely range</th>${options.isReference ? nothing : html`<th scope="col">reference</th>`}</tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) => html`<tr class=${row.hz < TESTED ? 'guess' : nothing}>
          <th class="band" scope="row">${bandName(row.hz)}</th>
          <td class=${row.hz < TESTED ? nothing : 'own'}>${decibels(row.tl)}</td>
          <td class="soft">${decibels(row.low)} to${NBSP}${decibels(row.high)}</td>
          ${options.isReference ? nothing : html`<td>${decibels(row.ref)}</td>`}
        </tr>`,
      )}
    </tbody>
  </table>`;
}
