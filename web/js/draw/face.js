// A surface as it is seen from the room, with its openings to scale: doors,
// windows, boxes, ducts, cracks, and running dimensions from one corner. Below
// it stands the curve of what a crack costs, behind its slider.

import { nothing, svg } from 'lit-html';
import { oneOf } from '../words-room.js';
import { hash, n } from './hatch.js';
import { textWidth } from './measure.js';
import { tape } from './unfolded.js';

/**
 * @typedef {import('../types-room.d.ts').FaceReport} FaceReport
 * @typedef {import('../types-room.d.ts').OpeningReport} OpeningReport
 * @typedef {import('../types-room.d.ts').CrackReport} CrackReport
 * @typedef {{width: number, units: 'us' | 'si', selected: string, onSelect?: (id: string) => void, most?: number}} Options
 */

const TEXT = 16;
const TOP = 36;

/** Openings of a size too small to be drawn as they are, px. */
const LEAST = 9;

/**
 * @param {FaceReport} face
 * @param {Options} options
 */
export function layOut(face, options) {
  const wide = face.width?.v ?? 0;
  const high = face.height?.v ?? 0;
  const known = wide > 0 && high > 0;
  const scale = known ? Math.min((options.width - 24) / wide, (options.most ?? 190) / high) : 0;
  const width = wide * scale;
  const height = high * scale;
  const left = (options.width - width) / 2;
  const holes = (face.openings ?? []).map((o) => {
    const crack = o.group === 'crack';
    const trueW = (o.width?.v ?? 0) * scale;
    // What is round has a width only.
    const trueH = (o.height?.v || o.width?.v || 0) * scale;
    const w = Math.max(crack ? 3 : LEAST, Math.min(trueW, width));
    const h = crack ? 4 : Math.max(LEAST, Math.min(trueH, height));
    const x = left + Math.min(Math.max(0, o.x * scale), Math.max(0, width - w));
    const y = TOP + height - h - Math.min(Math.max(0, o.y * scale), Math.max(0, height - h));
    return { o, x, y, width: w, height: h };
  });
  return { known, scale, width, height, left, top: TOP, holes, whole: TOP + height + 6 };
}

/**
 * @param {FaceReport} face
 * @param {Options} options
 */
export function faceView(face, options) {
  const drawn = layOut(face, options);
  if (!drawn.known) return nothing;
  const { left, top, width, height, holes } = drawn;
  const order = [...holes].sort((a, b) => Number(a.o.id === options.selected) - Number(b.o.id === options.selected));
  return svg`<svg class="drawing elevation" role="img" aria-label=${describe(face, options)} width=${n(options.width)} height=${n(drawn.whole)} viewBox="0 0 ${n(options.width)} ${n(drawn.whole)}" font-size=${TEXT}>
    ${running(drawn, options)}
    <g class="hatch stone" transform="translate(${n(left)} ${n(top)})"><path class="h-dot" d=${sparse(face.id, width, height)} /></g>
    <rect class="d-face" x=${n(left)} y=${n(top)} width=${n(width)} height=${n(height)} />
    ${order.map((hole) => holeView(hole, drawn, options))}
  </svg>`;
}

/**
 * A few dots, so that the face reads as board and what is in it as cut out.
 * @param {string} seed
 * @param {number} width
 * @param {number} height
 */
function sparse(seed, width, height) {
  const pitch = 20;
  let d = '';
  for (let y = 0; y + pitch < height; y += pitch) {
    for (let x = 0; x + pitch < width; x += pitch) {
      const h = hash(`${seed} ${x} ${y}`);
      if (h % 5) d += `M${n(x + 2 + (h % 16))} ${n(y + 2 + ((h >> 8) & 15))}h.01`;
    }
  }
  return d;
}

/**
 * Running dimensions to the left edge of what stands on the face, as many as have room.
 * @param {ReturnType<typeof layOut>} drawn
 * @param {Options} options
 */
function running({ left, top, width, scale, holes }, { units }) {
  if (holes.length === 0) return nothing;
  const y = top - 9;
  let free = -Infinity;
  const marks = holes
    .filter(({ o }) => o.group !== 'crack')
    .map(({ o, x }) => ({ x, text: tape(o.x, units) }))
    .filter(({ x }) => x > left + 1)
    .sort((a, b) => a.x - b.x)
    .filter(({ x, text }) => {
      const half = textWidth(text, TEXT) / 2;
      if (x - half < free || scale === 0) return false;
      free = x + half + 6;
      return true;
    });
  if (marks.length === 0) return nothing;
  return svg`<path class="d-dim" d="M${n(left + 4)} ${n(y)}H${n(Math.min(left + width, (marks.at(-1)?.x ?? left) + 16))}${marks.map(({ x }) => `M${n(x)} ${n(y - 7)}v14`).join('')}" />
    <circle class="r-origin" cx=${n(left)} cy=${n(y)} r="4" />
    <path class="r-arrow" d=${marks.map(({ x }) => `M${n(x - 7)} ${n(y - 4)}l7 4l-7 4`).join('')} />
    ${marks.map(({ x, text }) => svg`<text class="d-text" x=${n(x)} y=${n(y - 11)} text-anchor="middle">${text}</text>`)}`;
}

/**
 * @param {ReturnType<typeof layOut>['holes'][number]} hole
 * @param {ReturnType<typeof layOut>} drawn
 * @param {Options} options
 */
function holeView({ o, x, y, width, height }, drawn, options) {
  const here = o.id === options.selected;
  const name = oneOf(o.group, o.kind) + (o.count > 1 ? ` × ${o.count}` : '');
  const wide = textWidth(name, TEXT, here ? 700 : 400);
  const inside = wide < width - 8 && height > 30;
  const right = drawn.left + drawn.width;
  // Beside it, or over it where the wall ends.
  const beside = x + width + 6 + wide < right - 2;
  const below = !beside && y + height + 20 < drawn.top + drawn.height;
  const at = inside
    ? { x: x + width / 2, y: y + Math.min(height * 0.32, 44) + 6, anchor: 'middle' }
    : beside
      ? { x: x + width + 6, y: y + height / 2 + 6, anchor: 'start' }
      : { x: Math.min(Math.max(x + width / 2, drawn.left + wide / 2 + 2), right - wide / 2 - 2), y: below ? y + height + 17 : y - 6, anchor: 'middle' };
  const gap = o.crack && o.crack.v > 0;
  const words = o.group === 'crack' && !here && width > 30 ? { x: x + width / 2, y: y - 6, anchor: 'middle' } : at;
  return svg`<g class="r-opening ${here ? 'here' : ''}">
    ${shape(o, x, y, width, height)}
    ${gap ? svg`<rect class="r-gap" x=${n(x + 1.5)} y=${n(y + height - 3.5)} width=${n(width - 3)} height="3.5" />` : nothing}
    <text class="${here ? 'd-chosen' : 'd-text'} ${inside ? '' : 'd-haloed'}" x=${n(words.x)} y=${n(words.y)} text-anchor=${words.anchor}>${name}</text>
    ${options.onSelect ? svg`<rect class="d-hit" x=${n(x + width / 2 - Math.max(width, 44) / 2)} y=${n(y + height / 2 - Math.max(height, 44) / 2)} width=${n(Math.max(width, 44))} height=${n(Math.max(height, 44))} @click=${() => options.onSelect?.(o.id)} />` : nothing}
  </g>`;
}

/**
 * @param {OpeningReport} o
 * @param {number} x
 * @param {number} y
 * @param {number} width
 * @param {number} height
 */
function shape(o, x, y, width, height) {
  const rect = (/** @type {string} */ css) => svg`<rect class=${css} x=${n(x)} y=${n(y)} width=${n(width)} height=${n(height)} />`;
  switch (o.group) {
    case 'crack':
      return svg`<rect class="r-gap" x=${n(x)} y=${n(y)} width=${n(width)} height=${n(height)} />`;
    case 'door':
      return svg`${rect('r-hole')}${o.kind === 'hatch' || width < 18 ? nothing : svg`<circle class="r-knob" cx=${n(x + Math.min(8, width * 0.18))} cy=${n(y + height * 0.55)} r="2.6" />`}`;
    case 'window':
      return svg`${rect('r-hole')}<path class="r-thin" d="M${n(x + width / 2)} ${n(y)}v${n(height)}M${n(x)} ${n(y + height / 2)}h${n(width)}" />`;
    case 'duct':
    case 'light':
    case 'pipe':
    case 'hole': {
      const r = Math.min(width, height) / 2;
      const cx = x + width / 2;
      const cy = y + height / 2;
      const d = r * 0.7;
      const cross =
        o.group === 'duct'
          ? svg`<path class="r-thin" d="M${n(cx - d)} ${n(cy - d)}L${n(cx + d)} ${n(cy + d)}M${n(cx - d)} ${n(cy + d)}L${n(cx + d)} ${n(cy - d)}" />`
          : nothing;
      const baffle = o.seal === 'box' || o.seal === 'boxes';
      return svg`${baffle ? svg`<rect class="r-dashed" x=${n(cx - r - 6)} y=${n(cy - r - 5)} width=${n(r * 2 + 50)} height=${n(r * 2 + 10)} /><path class="r-thin" d="M${n(cx + r + 12)} ${n(cy - r - 5)}v${n(r + 10)}M${n(cx + r + 28)} ${n(cy + r + 5)}v-${n(r + 10)}" />` : nothing}<circle class="r-hole" cx=${n(cx)} cy=${n(cy)} r=${n(r)} />${cross}`;
    }
  }
  return svg`${rect('r-hole')}${width >= 8 ? svg`<path class="r-thin" d="M${n(x + width * 0.3)} ${n(y + height * 0.35)}h${n(width * 0.4)}M${n(x + width * 0.3)} ${n(y + height * 0.65)}h${n(width * 0.4)}" />` : nothing}`;
}

/**
 * @param {FaceReport} face
 * @param {Options} options
 */
export function describe(face, { units }) {
  const list = (face.openings ?? []).map((o) => `${o.count > 1 ? `${o.count} × ` : ''}${oneOf(o.group, o.kind)}, ${tape(o.x, units)} from the left`);
  return `${face.name} seen from the room: ${list.length ? list.join('; ') : 'nothing in it'}.`;
}

/**
 * What a gap costs, read off the curve between its points.
 * @param {CrackReport} crack
 * @param {number} gap m
 * @param {'wall' | 'room'} what
 */
export function costAt({ points }, gap, what) {
  const list = points ?? [];
  const after = list.findIndex((p) => p.width >= gap);
  if (list.length === 0) return 0;
  if (after < 0) return list[list.length - 1][what];
  if (after === 0) return list[0][what];
  const [a, b] = [list[after - 1], list[after]];
  return a[what] + ((b[what] - a[what]) * (gap - a.width)) / (b.width - a.width);
}

const CURVE = 62;

/**
 * The curve that stands behind the slider: cost against gap, filled up to the handle.
 * @param {CrackReport} crack
 * @param {{width: number, gap: number, most: number, pad: number}} options most: gap at full travel, m; pad: of the track's ends, px
 */
export function crackView(crack, { width, gap, most, pad }) {
  const list = (crack.points ?? []).filter((p) => p.width <= most + 1e-9);
  const top = Math.max(1, costAt(crack, most, 'wall'));
  const x = (/** @type {number} */ m) => pad + ((width - 2 * pad) * Math.min(m, most)) / most;
  const y = (/** @type {number} */ db) => CURVE - ((CURVE - 10) * db) / top;
  const at = costAt(crack, gap, 'wall');
  const points = [...list.map((p) => ({ x: x(p.width), y: y(p.wall), m: p.width })), { x: x(most), y: y(top), m: most }];
  const upTo = [...points.filter((p) => p.m < gap), { x: x(gap), y: y(at), m: gap }];
  const line = (/** @type {{x: number, y: number}[]} */ l) => `M${l.map((p) => `${n(p.x)} ${n(p.y)}`).join('L')}`;
  return svg`<svg class="drawing crack-curve" aria-hidden="true" width=${n(width)} height=${CURVE + 1} viewBox="0 0 ${n(width)} ${CURVE + 1}">
    <path class="d-wash" d="${line([{ x: x(0), y: CURVE }, ...upTo, { x: x(gap), y: CURVE }])}Z" />
    <path class="r-curve" d=${line(points)} />
    <path class="c-curve" d=${line(upTo.length > 1 ? upTo : [...upTo, ...upTo])} />
    <path class="r-curve" d="M${n(x(gap))} ${n(y(at))}V${CURVE}" />
  </svg>`;
}
