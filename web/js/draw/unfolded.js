// The room unfolded flat like an opened box: the floor in the middle, walls
// around it, the ceiling on top, each with its letter and its share of what
// gets out. layOut() is plain geometry, unfoldedView() the picture.

import { nothing, svg } from 'lit-html';
import { NBSP, percent, span } from '../format.js';
import { capital, letterOf } from '../words-room.js';
import { hatch, n } from './hatch.js';
import { textWidth } from './measure.js';

/**
 * @typedef {import('../types-room.d.ts').House} House
 * @typedef {object} Options
 * @property {number} width px
 * @property {number} [most] highest it may be, px
 * @property {'us' | 'si'} units
 * @property {number} selected index of the surface, −1 none
 * @property {(surface: number) => void} [onSelect]
 *
 * @typedef {object} Face
 * @property {number} surface
 * @property {number} x
 * @property {number} y
 * @property {number} width
 * @property {number} height
 * @property {string} letter
 * @property {string} kind
 * @property {number} share
 * @property {string[]} name lines that fit
 * @property {boolean} figure its share has room beside the letter
 * @property {number} bar full length of the bar, 0: none fits
 * @property {Hole[]} holes
 * @property {boolean} breaks
 * @typedef {{x: number, y: number, width: number, height: number, door: boolean, swing: string}} Hole
 */

const TEXT = 16;
const LETTER = 21;
const BAR = 54;
/** Room for the dimension under the drawing, px. */
const FOOT = 34;

/**
 * "13′ 4″" as it stands in a drawing.
 * @param {number} metres
 * @param {'us' | 'si'} units
 */
export function tape(metres, units) {
  return units === 'us' ? span(metres, 'us').replace(`${NBSP}ft`, '′').replace(`${NBSP}in`, '″') : String(Math.round(metres * 1000));
}

/**
 * @param {House} house
 * @param {Options} options
 */
export function layOut(house, options) {
  const { shape } = house.told;
  const most = options.most ?? 330;
  const scale = Math.min((options.width - 2) / Math.max(shape.unfoldedWidth, 1), most / Math.max(shape.unfoldedHeight, 1));
  const left = (options.width - shape.unfoldedWidth * scale) / 2;
  const shares = (house.told.surfaces ?? []).map((s) => s.share);
  const largest = Math.max(...shares, 1e-9);
  const faces = (shape.faces ?? []).map((at) => {
    const face = house.faces?.[at.surface];
    const box = { x: left + at.x * scale, y: 2 + at.y * scale, width: at.width * scale, height: at.height * scale };
    const name = face?.kind === 'wall' ? face.beyond : [face?.kind ?? '', face?.kind === 'floor' ? face?.beyond : ''].filter(Boolean).join(', ');
    const letter = face ? letterOf(face) : '';
    const share = shares[at.surface] ?? 0;
    const letterWide = textWidth(letter, LETTER, 600) + 16;
    return {
      ...box,
      surface: at.surface,
      letter,
      kind: face?.kind ?? 'wall',
      share,
      name: box.height >= 58 ? lines(name, box.width - 14, box.height >= 92 ? 2 : 1) : [],
      figure: box.width >= letterWide + textWidth(`${percent(share)}${NBSP}%`, TEXT) + 2 && box.height >= 26,
      bar: box.width >= 40 && box.height >= 44 ? Math.min(BAR, box.width - 16) : 0,
      holes: holesOf(house, at.surface, box, scale),
      breaks: (house.told.surfaces?.[at.surface]?.breaks?.length ?? 0) > 0,
    };
  });
  return { faces, scale, left, largest, width: options.width, height: 2 + shape.unfoldedHeight * scale + FOOT };
}

/**
 * A name in as many lines as there are, or none where a word does not fit.
 * @param {string} text
 * @param {number} width
 * @param {number} most
 */
function lines(text, width, most) {
  const fits = (/** @type {string} */ t) => textWidth(t, TEXT) * 0.95 <= width;
  if (!text || fits(text)) return text ? [text] : [];
  const words = text.split(' ');
  if (most > 1 && words.length > 1) {
    for (let cut = words.length - 1; cut > 0; cut--) {
      const two = [words.slice(0, cut).join(' '), words.slice(cut).join(' ')];
      if (two.every(fits)) return two;
    }
  }
  // The kind says enough where the rest has no room.
  const short = words[0].replace(/,$/, '');
  return fits(short) && text.includes(',') ? [short] : [];
}

/**
 * Doors and windows as they lie in the unfolded wall. Each wall's lower edge
 * is at the floor, its left end as seen from inside.
 * @param {House} house
 * @param {number} surface
 * @param {{x: number, y: number, width: number, height: number}} box
 * @param {number} scale
 * @returns {Hole[]}
 */
function holesOf(house, surface, box, scale) {
  const face = house.faces?.[surface];
  const at = house.told.shape.faces?.find((f) => f.surface === surface);
  if (face?.kind !== 'wall' || !at) return [];
  const { shape } = house.told;
  // By where it lies: above, right of, under or left of the floor.
  const side =
    at.y + at.height <= shape.width + shape.height + 1e-6
      ? 1
      : at.x >= shape.height + shape.length - 1e-6
        ? 2
        : at.y >= 2 * shape.width + shape.height - 1e-6
          ? 3
          : 4;
  const holes = [];
  for (const o of face.openings ?? []) {
    const w = (o.width?.v ?? 0) * scale;
    const h = (o.height?.v ?? 0) * scale;
    if (w < 5 || h < 5 || !['door', 'window'].includes(o.group)) continue;
    const along = o.x * scale;
    const up = o.y * scale;
    const door = o.group === 'door' && o.kind !== 'hatch';
    const place = [
      { x: box.x + along, y: box.y + box.height - up - h, width: w, height: h },
      { x: box.x + up, y: box.y + along, width: h, height: w },
      { x: box.x + box.width - along - w, y: box.y + up, width: w, height: h },
      { x: box.x + box.width - up - h, y: box.y + box.height - along - w, width: h, height: w },
    ][side - 1];
    const r = n(w);
    const swing = [
      `M${n(place.x)} ${n(box.y + box.height)}v${r}a${r} ${r} 0 0 0 ${r} -${r}`,
      `M${n(box.x)} ${n(place.y)}h-${r}a${r} ${r} 0 0 0 ${r} ${r}`,
      `M${n(place.x + w)} ${n(box.y)}v-${r}a${r} ${r} 0 0 0 -${r} ${r}`,
      `M${n(box.x + box.width)} ${n(place.y + w)}h${r}a${r} ${r} 0 0 0 -${r} -${r}`,
    ][side - 1];
    holes.push({ ...place, door, swing: door ? swing : '' });
  }
  return holes;
}

/**
 * @param {House} house
 * @param {Options} options
 */
export function unfoldedView(house, options) {
  const { shape } = house.told;
  const drawn = layOut(house, options);
  // What is selected is drawn last, so that its edge lies over its neighbours'.
  const order = [...drawn.faces].sort((a, b) => Number(a.surface === options.selected) - Number(b.surface === options.selected));
  return svg`<svg class="drawing unfolded" role="img" aria-label=${describe(house)} width=${n(drawn.width)} height=${n(drawn.height)} viewBox="0 0 ${n(drawn.width)} ${n(drawn.height)}" font-size=${TEXT}>
    ${order.map((face) => faceView(face, drawn.largest, options))}
    ${drawn.faces.flatMap((face) => face.holes.map((hole) => (hole.swing ? svg`<path class="r-swing" d=${hole.swing} />` : nothing)))}
    ${dimensions(shape, drawn, options.units)}
    ${words(drawn, options.width)}
  </svg>`;
}

/**
 * @param {Face} face
 * @param {number} largest
 * @param {Options} options
 */
function faceView(face, largest, options) {
  const here = face.surface === options.selected;
  const { x, y, width, height } = face;
  const figureAt = x + 8 + textWidth(face.letter, LETTER, 600) + 8;
  const lowest = y + height - 8 - (face.name.length - 1) * 19;
  return svg`<g class="r-face ${here ? 'here' : ''}">
    <rect class="r-ground" x=${n(x)} y=${n(y)} width=${n(width)} height=${n(height)} />
    ${here ? nothing : material(face)}
    <rect class="r-edge" x=${n(x)} y=${n(y)} width=${n(width)} height=${n(height)} />
    ${face.holes.map((h) => svg`<rect class="r-hole" x=${n(h.x)} y=${n(h.y)} width=${n(h.width)} height=${n(h.height)} />`)}
    <text class="r-letter" x=${n(x + 8)} y=${n(y + 22)} font-size=${LETTER}>${face.letter}</text>
    ${face.figure ? svg`<text class="r-share" x=${n(figureAt)} y=${n(y + 22)}>${percent(face.share)}${NBSP}%</text>` : nothing}
    ${
      face.bar
        ? svg`<rect class="r-track" x=${n(x + 8)} y=${n(y + 30)} width=${n(face.bar)} height="8" /><rect class="r-bar" x=${n(x + 8)} y=${n(y + 30)} width=${n((face.bar * face.share) / largest)} height="8" />`
        : nothing
    }
    ${face.name.map((line, i) => svg`<text class="d-name" x=${n(x + 8)} y=${n(lowest + i * 19)}>${line}</text>`)}
    ${face.breaks ? svg`<path class="r-break" d="M${n(x + width - 20)} ${n(y + 1.8)}h18.2v18.2z" /><text class="r-bang" x=${n(x + width - 7)} y=${n(y + 14)} text-anchor="middle" font-size="14">!</text>` : nothing}
    ${options.onSelect ? svg`<rect class="d-hit" x=${n(x)} y=${n(y)} width=${n(width)} height=${n(height)} @click=${() => options.onSelect?.(face.surface)} />` : nothing}
  </g>`;
}

/** Joists of a ceiling, stipple of a slab. @param {Face} face */
function material({ kind, x, y, width, height, surface }) {
  if (kind === 'ceiling') {
    let d = '';
    for (let at = 14; at < width; at += 14) d += `M${n(x + at)} ${n(y)}v${n(height)}`;
    return svg`<path class="r-joists" d=${d} />`;
  }
  if (kind !== 'floor') return nothing;
  return svg`<g class="hatch stone" transform="translate(${n(x)} ${n(y)})">${hatch({ kind: 'concrete', density: 2300, seed: `floor${surface}`, width, height }).map((s) => svg`<path class=${s.css} d=${s.d} />`)}</g>`;
}

/**
 * Three dimension lines: the depth beside the ceiling, the height beside the
 * near wall, the length under it.
 * @param {import('../types-room.d.ts').Shape} shape
 * @param {ReturnType<typeof layOut>} drawn
 * @param {'us' | 'si'} units
 */
function dimensions(shape, { left, scale }, units) {
  const x = left + shape.height * scale;
  const beside = x - 12;
  const bottom = 2 + shape.unfoldedHeight * scale;
  const end = (/** @type {number} */ px, /** @type {number} */ py) => `M${n(px - 4.5)} ${n(py + 4.5)}l9 -9`;
  const up = (/** @type {number} */ from, /** @type {number} */ to, /** @type {number} */ metres) => {
    const text = tape(metres, units);
    return svg`<path class="d-dim" d="M${n(beside)} ${n(from)}V${n(to)}" /><path class="d-tick" d=${end(beside, from) + end(beside, to)} />
      ${textWidth(text, TEXT) < beside - 8 ? svg`<text class="d-text" x=${n(beside - 8)} y=${n((from + to) / 2 + 6)} text-anchor="end">${text}</text>` : nothing}`;
  };
  const nearTop = 2 + (2 * shape.width + shape.height) * scale;
  const right = x + shape.length * scale;
  return svg`${up(2, 2 + shape.width * scale, shape.width)} ${up(nearTop, bottom, shape.height)}
    <path class="d-dim" d="M${n(x)} ${n(bottom + 12)}H${n(right)}" /><path class="d-tick" d=${end(x, bottom + 12) + end(right, bottom + 12)} />
    <text class="d-text" x=${n((x + right) / 2)} y=${n(bottom + 31)} text-anchor="middle">${tape(shape.length, units)}</text>`;
}

/**
 * What the figures are, in the free corner at the upper right.
 * @param {ReturnType<typeof layOut>} drawn
 * @param {number} width
 */
function words({ faces, left, scale }, width) {
  const right = Math.max(...faces.filter((f) => f.y < 4).map((f) => f.x + f.width), left + scale);
  if (width - right < textWidth('share of all', TEXT) + 16) return nothing;
  return svg`<text class="d-text d-soft" x=${n(right + 14)} y="18">share of all</text><text class="d-text d-soft" x=${n(right + 14)} y="40">that gets out</text>`;
}

/** @param {House} house */
export function describe(house) {
  const faces = (house.told.surfaces ?? []).map((s, i) => {
    const face = house.faces?.[i];
    return face ? `${face.name}${face.beyond ? ` to the ${face.beyond}` : ''} ${percent(s.share)}${NBSP}%` : '';
  });
  return capital(`the room unfolded, with each face's share of what gets out: ${faces.filter(Boolean).join(', ')}. The list below says the same.`);
}
