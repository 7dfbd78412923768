// The small section at the head of a table row: one leaf, to scale, so that
// thickness and weight are seen before they are read.

import { nothing, svg } from 'lit-html';
import { hatch, masonry, n, solid } from './hatch.js';

/**
 * @typedef {import('../types.d.ts').LayerReport} LayerReport
 * @typedef {object} Options
 * @property {number} height px
 * @property {number} [most] widest it may be, px; a thicker leaf is drawn to a smaller scale
 */

/** 28 px to the inch. */
const SCALE = 28 / 0.0254;

/**
 * Geometry of a small section.
 * @param {LayerReport[]} layers
 * @param {Options} options
 */
export function layout(layers, options) {
  const depths = layers.map((layer) => (layer.thickness && Number.isFinite(layer.thickness.v) ? Math.min(4, Math.max(0, layer.thickness.v)) : 0));
  const total = depths.reduce((a, b) => a + b, 0);
  const most = (options.most ?? 58) - 2;
  const scale = Math.min(SCALE, total > 0 ? most / total : SCALE);
  let x = 1;
  const boards = layers.map((layer, i) => {
    const board = { layer, x, width: depths[i] * scale };
    x += board.width;
    return board;
  });
  return { boards, right: x, width: x + 1, scale };
}

/**
 * @param {LayerReport[]} layers from the room outwards
 * @param {Options} options
 */
export function thumbView(layers, options) {
  const { boards, right, width } = layout(layers, options);
  const { height } = options;
  /** @param {number} x */
  const line = (x) => `M${n(x)} 0V${n(height)}`;
  const joints = boards.slice(0, -1).map((board) => ({ x: board.x + board.width, film: board.layer.join === 'film' }));
  const plain = joints.filter((joint) => !joint.film);
  const films = joints.filter((joint) => joint.film);
  return svg`<svg class="drawing thumb" aria-hidden="true" width=${n(width)} height=${n(height)} viewBox="0 0 ${n(width)} ${n(height)}">
    ${boards.map(({ layer, x, width: wide }) => {
      const fill = solid(layer.kind) ? svg`<rect class="d-solid" x=${n(x)} y="0" width=${n(wide)} height=${n(height)} />` : nothing;
      const strokes = hatch({ kind: layer.kind, density: layer.density, seed: layer.id || layer.board, width: wide, height, small: true });
      const css = `hatch${masonry(layer.kind) ? ' stone' : layer.there ? ' there' : ''}`;
      return svg`${fill}<g class=${css} transform="translate(${n(x)} 0)">${strokes.map((stroke) => svg`<path class=${stroke.css} d=${stroke.d} />`)}</g>`;
    })}
    ${plain.length ? svg`<path class="d-joint" d=${plain.map((joint) => line(joint.x)).join('')} />` : nothing}
    ${films.length ? svg`<path class="d-film" d=${films.map((joint) => line(joint.x)).join('')} />` : nothing}
    ${boards.length ? svg`<path class="d-face" d=${line(1) + line(right)} />` : nothing}
  </svg>`;
}
