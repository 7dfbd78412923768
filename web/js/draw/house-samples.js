// A whole room as the core would tell it, made by hand, for tests: two walls,
// a ceiling and a floor, a door in the first, two spaces beyond.

import { value } from './samples.js';

/**
 * @typedef {import('../types-room.d.ts').House} House
 * @typedef {import('../types-room.d.ts').Heard} Heard
 * @typedef {import('../types-room.d.ts').OctaveHeard} OctaveHeard
 * @typedef {import('../types-room.d.ts').Path} Path
 * @typedef {import('../types-room.d.ts').Change} Change
 */

const HZ = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000];

/**
 * @param {Partial<Heard> & {levels?: number[], targets?: number[]}} [more]
 * @returns {Heard}
 */
export function heard({ levels = [70, 83, 69, 58, 52, 49, 47, 45, 40], targets = [62, 50, 39, 32, 25, 21, 18, 16, 14], ...more } = {}) {
  const octave = HZ.map((hz, i) => {
    const over = levels[i] - targets[i];
    const range = hz < 200;
    const [low, high] = [levels[i] - (range ? 9 : 6), levels[i] + (range ? 9 : 6)];
    return /** @type {OctaveHeard} */ ({
      hz,
      level: levels[i],
      low,
      high,
      range,
      peak: levels[i] + 10,
      target: targets[i],
      background: targets[i] - 5,
      threshold: 0,
      over,
      need: 0,
      state: over > 0 ? 'over' : high > targets[i] ? 'mayOver' : 'within',
      beyond: i === 0 || i === 8,
    });
  });
  return {
    space: 0,
    source: '',
    octave,
    a: 60,
    c: 83,
    spreadA: 6,
    spreadC: 9,
    nc: 51,
    ncOutside: false,
    ncBy: 1,
    nr: 52,
    nrBy: 1,
    target: 30,
    background: 25,
    overA: 30,
    state: 'over',
    worst: 1,
    word: 'heard',
    felt: true,
    floorDriven: true,
    leansOnFlank: false,
    flankUnknown: false,
    schroeder: 245,
    absorption: 12,
    assumed: false,
    each: null,
    ...more,
  };
}

/**
 * @param {number} surface
 * @param {import('../types-room.d.ts').Way} way
 * @param {number} share
 * @param {Partial<Path>} [more]
 * @returns {Path}
 */
export function path(surface, way, share, more = {}) {
  const perfect = -10 * Math.log10(1 - share);
  return {
    surface,
    opening: -1,
    way,
    space: 0,
    area: 1,
    share,
    bass: share,
    shareThere: share,
    bassThere: share,
    perfect,
    perfectBass: perfect,
    perfectThere: perfect,
    perfectBassThere: perfect,
    ...more,
  };
}

/** @returns {House} */
export function house() {
  const face = (
    /** @type {string} */ id,
    /** @type {string} */ letter,
    /** @type {string} */ kind,
    /** @type {string} */ beyond,
    /** @type {number} */ w,
    /** @type {number} */ h,
  ) => ({
    id,
    letter,
    name: `${kind} ${letter}`,
    kind,
    beyond,
    width: value(w),
    height: value(h),
    area: value(w * h, 'area'),
    mass: value(40, 'surfaceMass'),
    rating: value(57, 'decibel'),
    holed: value(33, 'decibel'),
    built: value(50, 'decibel'),
    openings: /** @type {import('../types-room.d.ts').OpeningReport[]} */ ([]),
  });
  const [l, w, h] = [4, 3, 2.4];
  const a = face('s1', 'A', 'wall', 'bedroom', l, h);
  a.openings = [
    {
      id: 'o1',
      kind: 'doorSolid',
      group: 'door',
      seal: 'none',
      x: 2.8,
      y: 0,
      width: value(0.81),
      height: value(2.03),
      count: 1,
      placed: false,
      crack: value(0.006),
      run: null,
      costs: 4.2,
    },
    {
      id: 'o2',
      kind: 'box',
      group: 'box',
      seal: 'putty',
      x: 0.4,
      y: 0.3,
      width: value(0.1),
      height: value(0.1),
      count: 2,
      placed: false,
      crack: null,
      run: null,
      costs: 0,
    },
  ];
  const faces = [a, face('s2', 'B', 'wall', 'hall', l, h), face('s3', 'C', 'ceiling', 'attic', l, w), face('s4', 'D', 'floor', 'ground', l, w)];
  return {
    spaces: ['bedroom', 'hall'],
    noises: null,
    faces,
    told: {
      volume: l * w * h,
      level: HZ.map(() => 90),
      levelA: 100,
      surfaces: [
        { id: 's1', area: l * h, share: 0.7, bass: 0.3, breaks: ['loneWeak'] },
        { id: 's2', area: l * h, share: 0.1, bass: 0.3, breaks: null },
        { id: 's3', area: l * w, share: 0.17, bass: 0.4, breaks: null },
        { id: 's4', area: l * w, share: 0.03, bass: 0, breaks: null },
      ],
      paths: [
        path(0, 'boards', 0.1),
        path(0, 'leaf', 0.2, { opening: 0 }),
        path(0, 'crack', 0.4, { opening: 0 }),
        path(0, 'leaf', 0.001, { opening: 1 }),
        path(1, 'boards', 0.1, { space: 1 }),
        path(2, 'boards', 0.149, { space: -1 }),
        path(2, 'flank', 0.02, { space: -1 }),
        path(3, 'boards', 0.03, { space: -1 }),
      ],
      out: [heard(), heard({ space: 1, a: 40, overA: 5, felt: false, schroeder: 0, assumed: true, levels: [60, 56, 44, 36, 30, 25, 20, 17, 10] })],
      in: null,
      inAll: null,
      air: {
        start: 420,
        end: 4950,
        steady: 0,
        limit: 1400,
        minutesTo: 19.5,
        given: 0,
        want: 0.045,
        ductArea: 0.0346,
        ductRound: 0.21,
        ductLoss: HZ.map(() => 12),
        heat: 1050,
        riseSealed: 5.5,
        rise: 5.5,
        cooling: 1050,
        tooLittle: true,
        sealed: true,
        fuel: false,
      },
      together: [{ hz: 2500, faces: [0, 1], boards: ['Gypsum type X'], share: 0.4 }],
      shape: {
        known: true,
        length: l,
        width: w,
        height: h,
        insideLength: 3.8,
        insideWidth: 2.8,
        insideHeight: 2.3,
        lostFloor: 1.36,
        insideVolume: 24.5,
        heightLeft: 0.17,
        standLeft: 0.09,
        faces: [
          { surface: 0, x: h, y: w, width: l, height: h },
          { surface: 1, x: h, y: 2 * w + h, width: l, height: h },
          { surface: 2, x: h, y: 0, width: l, height: w },
          { surface: 3, x: h, y: w + h, width: l, height: w },
        ],
        unfoldedWidth: l + 2 * h,
        unfoldedHeight: 2 * w + 2 * h,
      },
      measured: null,
    },
  };
}

/**
 * @param {string} code
 * @param {Partial<Change>} [more]
 * @returns {Change}
 */
export function change(code, more = {}) {
  return { id: `${code} s1`, code, surface: 's1', faces: ['A'], kind: 'doorSolid', cost: value(48, 'money'), gain: 1, bass: 0.1, all: 1, perCost: 2, ...more };
}
