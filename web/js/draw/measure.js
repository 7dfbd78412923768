// How wide a word will be. In a browser the page's own font is measured;
// elsewhere a face of average width stands in.

/** Widths in em of an open sans of average width; anything else counts as 0.6. */
const EM = widths({
  0.27: "ijlI.,:;'!|′ ",
  0.31: '()[]ft/⁄ ',
  0.41: 'r-″',
  0.51: 'csz–±xvyk',
  0.57: '0123456789+−×=$€£',
  0.61: 'abdeghnopquJFELSTYZ',
  0.74: 'ABCDGHKNOPQRUVX%w',
  0.92: 'mMW@',
});

/** @param {Record<string, string>} table */
function widths(table) {
  /** @type {Map<string, number>} */
  const map = new Map();
  for (const [em, letters] of Object.entries(table)) for (const letter of letters) map.set(letter, Number(em));
  return map;
}

/** @type {CanvasRenderingContext2D | null | undefined} */
let canvas;
let family = '';
/** @type {Map<string, number>} */
const known = new Map();

/**
 * Width of a text in the page's sans, px.
 * @param {string} text
 * @param {number} [size] px
 * @param {number} [weight]
 * @returns {number}
 */
export function textWidth(text, size = 16, weight = 400) {
  const key = `${weight}|${text}`;
  let em = known.get(key);
  if (em === undefined) {
    em = measured(text, weight) ?? estimated(text) * (weight > 500 ? 1.06 : 1);
    if (known.size > 600) known.clear();
    known.set(key, em);
  }
  return em * size;
}

/** @param {string} text */
function estimated(text) {
  let em = 0;
  for (const letter of text) em += EM.get(letter) ?? 0.6;
  return em;
}

/**
 * @param {string} text
 * @param {number} weight
 */
function measured(text, weight) {
  if (typeof document === 'undefined') return undefined;
  if (canvas === undefined) {
    canvas = document.createElement('canvas').getContext('2d');
    family = getComputedStyle(document.body).fontFamily || 'sans-serif';
  }
  if (!canvas) return undefined;
  canvas.font = `${weight} 100px ${family}`;
  return canvas.measureText(text).width / 100;
}
