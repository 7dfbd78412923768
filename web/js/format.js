// Figures as people read them: SI values into the plan's units, rounded to
// what they are worth, and differences. Nothing is computed here but the change
// of unit. Fractions are written "1 5/8" and drawn by fractionParts.

/**
 * @typedef {import('./types.d.ts').Value} Value
 * @typedef {import('./types.d.ts').Units} Units
 * @typedef {{units: Units, currency: string}} Ctx the plan's units and its money
 * @typedef {{figure: string, unit: string}} Shown "4.38", "psf"
 * @typedef {{whole: string, over: string, under: string}} Fraction
 */

/** Stands before every unit and inside what must not break. */
export const NBSP = '\u00a0';
/** Parts thousands; a comma has two readings. */
export const THIN = '\u202f';
export const MINUS = '\u2212';
export const TIMES = '\u00d7';
/** Stands for what is not known. */
export const UNKNOWN = '\u2013';

// International yard and pound agreement, 1959.
const INCH = 0.0254;
const FOOT = 12 * INCH;
const POUND = 0.45359237;
const SQUARE_FOOT = FOOT * FOOT;
const PSF = POUND / SQUARE_FOOT;

/** A saw's rule reads to this, in. */
const RULE = 16;

/**
 * The number with a fixed count of decimals, thousands parted, and a true minus.
 * @param {number} v
 * @param {number} [decimals]
 */
export function number(v, decimals = 0) {
  if (!Number.isFinite(v)) return UNKNOWN;
  const text = Math.abs(v).toFixed(decimals);
  const [whole, rest] = text.split('.');
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole;
  const sign = v < 0 && Number(text) !== 0 ? MINUS : '';
  return sign + grouped + (rest ? `.${rest}` : '');
}

/**
 * Three figures, but no more decimals than asked for.
 * @param {number} v
 * @param {number} most
 */
function three(v, most) {
  const size = Math.abs(v);
  if (size === 0) return { text: '0', decimals: 0 };
  const decimals = Math.min(most, Math.max(0, 2 - Math.floor(Math.log10(size) + 1e-9)));
  return { text: number(v, decimals), decimals };
}

/** What is a whole number needs no decimals. @param {number} v */
function whole(v) {
  return Math.abs(v - Math.round(v)) < 2e-3 ? number(v) : undefined;
}

/**
 * A length in inches to the sixteenth: "1 5/8", "7/8", "24".
 * @param {number} inches
 * @param {number} [parts] of an inch that are told apart
 */
export function inches(inches, parts = RULE) {
  const all = Math.round(Math.abs(inches) * parts);
  const whole = Math.floor(all / parts);
  let over = all - whole * parts;
  let under = parts;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  const sign = inches < 0 && all > 0 ? MINUS : '';
  if (over === 0) return sign + number(whole);
  return `${sign}${whole > 0 ? `${number(whole)} ` : ''}${over}/${under}`;
}

/**
 * Millimetres are not grouped: "1200". Below 20 mm a tenth counts: "12.5".
 * @param {number} metres
 */
export function millimetres(metres) {
  const mm = metres * 1000;
  const fine = Math.abs(mm) < 19.95;
  const text = fine ? String(Math.round(mm * 10) / 10) : String(Math.round(mm));
  return text.replace('-', MINUS);
}

/**
 * Feet and inches for what is longer than a board: "13 ft 4 in".
 * @param {number} metres
 * @param {Units} units
 */
export function span(metres, units) {
  if (units === 'si') return `${number(metres, 2)}${NBSP}m`;
  const all = Math.round(metres / INCH);
  const feet = Math.floor(all / 12);
  const rest = all - feet * 12;
  return [feet > 0 ? `${feet}${NBSP}ft` : '', rest > 0 || feet === 0 ? `${rest}${NBSP}in` : ''].filter(Boolean).join(' ');
}

/**
 * An amount of money: whole units from 100 on in sentences, else to the cent.
 * @param {number} v
 * @param {string} currency
 * @param {boolean} [round] whole units, for sentences
 */
export function money(v, currency, round = false) {
  const text = number(Math.abs(v), round && Math.abs(v) >= 20 ? 0 : 2);
  return (v < 0 && Number(Math.abs(v).toFixed(2)) !== 0 ? MINUS : '') + currency + text;
}

/**
 * A frequency as on an axis: "63 Hz", "2.5 kHz".
 * @param {number} hz
 */
export function hertz(hz) {
  if (hz >= 1000) return `${String(Math.round(hz / 100) / 10)}${NBSP}kHz`;
  return `${hz < 40 && !Number.isInteger(hz) ? String(Math.round(hz * 10) / 10) : String(Math.round(hz))}${NBSP}Hz`;
}

/** @param {number} v dB, halves away from zero */
export function decibels(v) {
  return number(Math.sign(v) * Math.round(Math.abs(v)) || 0);
}

/**
 * A share as per cent. What is over its limit never reads as the limit itself.
 * @param {number} v
 */
export function percent(v) {
  const text = number(v * 100);
  return text === '100' && v > 1.001 ? number(v * 100, 1) : text;
}

/** @param {Units} units the unit of each kind, as it stands behind a figure */
export const unitOf = (units) => ({
  length: units === 'us' ? 'in' : 'mm',
  area: units === 'us' ? 'ft²' : 'm²',
  mass: units === 'us' ? 'lb' : 'kg',
  surfaceMass: units === 'us' ? 'psf' : 'kg/m²',
  moneyRate: units === 'us' ? 'per ft²' : 'per m²',
  lineMass: units === 'us' ? 'lb/ft' : 'kg/m',
  density: units === 'us' ? 'lb/ft³' : 'kg/m³',
});

/**
 * One SI figure of a kind in the plan's units.
 * @param {string} kind as in the report
 * @param {number} v
 * @param {Ctx} ctx
 * @returns {Shown}
 */
export function shown(kind, v, { units, currency }) {
  const us = units === 'us';
  const of = unitOf(units);
  switch (kind) {
    case 'length':
      return { figure: us ? inches(v / INCH) : millimetres(v), unit: of.length };
    case 'area':
      return { figure: three(us ? v / SQUARE_FOOT : v, 2).text, unit: of.area };
    case 'mass':
      return { figure: whole(us ? v / POUND : v) ?? three(us ? v / POUND : v, 1).text, unit: of.mass };
    case 'surfaceMass':
      return { figure: three(us ? v / PSF : v, 2).text, unit: of.surfaceMass };
    case 'money':
      return { figure: money(v, currency), unit: '' };
    case 'moneyRate':
      return { figure: money(us ? v * SQUARE_FOOT : v, currency), unit: of.moneyRate };
    case 'share':
      return { figure: percent(v), unit: '%' };
    case 'decibel':
      return { figure: decibels(v), unit: 'dB' };
    case 'frequency': {
      const [figure, unit] = hertz(v).split(NBSP);
      return { figure, unit };
    }
    case 'lineMass':
      return { figure: three(us ? (v / POUND) * FOOT : v, 2).text, unit: of.lineMass };
    case 'density':
      return { figure: three(us ? (v / POUND) * FOOT ** 3 : v, 1).text, unit: of.density };
    case 'flow':
      return { figure: three(v, 0).text, unit: 'Pa·s/m²' };
    case 'stiffness':
      return { figure: three(v / 1000, 1).text, unit: 'kN/m' };
    case 'count':
      return { figure: number(Math.round(v)), unit: '' };
  }
  return { figure: three(v, 2).text, unit: '' };
}

/** Kinds and SI sizes of the units that a quantity may have. @type {Record<string, [kind: string, si: number]>} */
const SI = {
  ...{ mm: ['length', 1e-3], cm: ['length', 1e-2], m: ['length', 1], in: ['length', INCH], ft: ['length', FOOT] },
  ...{ g: ['mass', 1e-3], kg: ['mass', 1], oz: ['mass', POUND / 16], lb: ['mass', POUND] },
  ...{ m2: ['area', 1], ft2: ['area', SQUARE_FOOT], psf: ['surfaceMass', PSF], 'kg/m2': ['surfaceMass', 1] },
  ...{ '%': ['share', 0.01], $: ['money', 1], '£': ['money', 1], '€': ['money', 1], '': ['count', 1] },
};

/**
 * Whether what was typed is this very figure, and not what it was worked out from: a pallet's weight, a price by area.
 * @param {string} quantity
 * @param {Value} value
 */
function isThat(quantity, { kind, v }) {
  const [kindTyped, si] = SI[unitIn(quantity)] ?? ['', 1];
  const amount = Number(quantity.split(' ')[0]) * si;
  return kindTyped === kind && Math.abs(amount - v) <= 1e-6 * Math.abs(v) + 1e-12;
}

/**
 * A value of the report: as it was typed, or computed and in the plan's units.
 * @param {Value} value
 * @param {Ctx} ctx
 * @returns {Shown}
 */
export function valueShown(value, ctx) {
  if (value.origin === 'typed' && value.as && isThat(value.as, value)) return typed(value.as);
  // A typical sheet is not known to the tenth of a pound.
  if (value.origin === 'typical' && value.kind === 'mass' && ctx.units === 'us' && value.v > 5) {
    return { figure: number(value.v / POUND), unit: unitOf('us').mass };
  }
  return shown(value.kind, value.v, ctx);
}

/**
 * Figure and unit in one text; "–" for what is not known.
 * @param {Value | null | undefined} value
 * @param {Ctx} ctx
 */
export function text(value, ctx) {
  return value ? joined(valueShown(value, ctx)) : UNKNOWN;
}

/** @param {Shown} s */
export function joined({ figure, unit }) {
  return unit ? figure + NBSP + unit : figure;
}

const CURRENCIES = ['$', '£', '€'];
/** @type {Record<string, string>} */
const NICE = { m2: 'm²', ft2: 'ft²', 'kg/m2': 'kg/m²' };

/**
 * A quantity as the plan keeps it ("0.625 in", "4x8 ft", "41.5 $") as it is shown.
 * @param {string} quantity
 * @returns {Shown}
 */
export function typed(quantity) {
  const cut = quantity.indexOf(' ');
  const digits = cut < 0 ? quantity : quantity.slice(0, cut);
  const unit = cut < 0 ? '' : quantity.slice(cut + 1);
  if (CURRENCIES.includes(unit)) return { figure: money(Number(digits), unit), unit: '' };
  const figure = digits
    .split('x')
    .map((n) => inUnit(n, unit))
    .join(` ${TIMES} `);
  return { figure, unit: NICE[unit] ?? unit };
}

/**
 * One number of a quantity: a fraction where the inch has one, thousands parted but in millimetres.
 * @param {string} digits
 * @param {string} unit
 */
function inUnit(digits, unit) {
  const v = Number(digits);
  if (!Number.isFinite(v)) return digits;
  if (unit === 'in' && Number.isInteger(v * 64)) return inches(v, 64);
  if (unit === 'mm') return digits;
  return number(v, digits.split('.')[1]?.length ?? 0);
}

/**
 * The number of a quantity as somebody would type it again, without the unit: "58", "5/8", "4 x 8".
 * @param {string} quantity
 */
export function retyped(quantity) {
  const [digits, unit = ''] = quantity.split(' ');
  if (CURRENCIES.includes(unit)) return Number(digits) === Math.round(Number(digits)) ? digits : Number(digits).toFixed(2);
  return digits
    .split('x')
    .map((n) => (unit === 'in' && Number.isInteger(Number(n) * 64) ? inches(Number(n), 64).replace(THIN, '') : n))
    .join(' x ');
}

/** @param {string} quantity the unit as the plan writes it */
export function unitIn(quantity) {
  return quantity.slice(quantity.indexOf(' ') + 1 || quantity.length);
}

/**
 * A difference from the reference: sign always; "same" where it is nothing after rounding.
 * @param {string} kind
 * @param {number} d
 * @param {Ctx} ctx
 * @param {boolean} [bare] without the unit, for tables that have it in the head
 */
export function difference(kind, d, ctx, bare = false) {
  if (!Number.isFinite(d)) return '';
  const { figure, unit } = shown(kind, Math.abs(d), ctx);
  const plain = bare && (kind === 'money' || kind === 'moneyRate') ? figure.replace(ctx.currency, '') : figure;
  if (!/[1-9]/.test(plain)) return 'same';
  const sign = d < 0 ? MINUS : '+';
  if (bare || !unit || kind === 'moneyRate') return sign + plain;
  return sign + plain + NBSP + unit;
}

/**
 * What a value differs from the reference by, taken between the figures as they
 * are shown, so that nobody subtracts them and finds another one. What is over
 * by less than that still says so.
 * @param {Value} value
 * @param {Ctx} ctx
 * @param {boolean} [bare]
 */
export function differenceOf(value, ctx, bare = false) {
  if (value.diff === undefined) return '';
  if (value.same) return 'same';
  const { unit, steps } = rounding(value.kind, value.v, ctx);
  const count = (/** @type {number} */ v) => Math.sign(v) * Math.round(Number((Math.abs(v) / unit).toFixed(6)) * steps);
  const between = count(value.v) - count(value.v - value.diff);
  if (between !== 0) return difference(value.kind, (between / steps) * unit, ctx, bare);
  const limited = value.kind === 'surfaceMass' || value.kind === 'share';
  return limited && value.diff > 0 ? difference(value.kind, unit / steps, ctx, bare) : 'same';
}

/**
 * The unit a figure is shown in, SI, and how many steps of it are told apart.
 * @param {string} kind
 * @param {number} v
 * @param {Ctx} ctx
 */
function rounding(kind, v, { units }) {
  const us = units === 'us';
  switch (kind) {
    case 'length':
      return us ? { unit: INCH, steps: RULE } : { unit: 1e-3, steps: Math.abs(v) < 0.01995 ? 10 : 1 };
    case 'surfaceMass': {
      const unit = us ? PSF : 1;
      return { unit, steps: 10 ** three(v / unit, 2).decimals };
    }
    case 'mass': {
      const unit = us ? POUND : 1;
      return { unit, steps: 10 ** three(v / unit, 1).decimals };
    }
    case 'money':
      return { unit: 1, steps: 100 };
    case 'moneyRate':
      return { unit: us ? 1 / SQUARE_FOOT : 1, steps: 100 };
    case 'share':
      return { unit: 0.01, steps: 1 };
  }
  return { unit: 1, steps: 1 };
}

/**
 * A board's name inside a sentence: "plywood 5/8", but "OSB 3/4".
 * @param {string} name
 */
export function inSentence(name) {
  return /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}

/**
 * Half of a value's range, as "±6".
 * @param {Value} value
 */
export function spread(value) {
  if (value.low === undefined || value.high === undefined) return '';
  return `±${decibels((value.high - value.low) / 2)}`;
}

/**
 * Splits text into plain pieces and fractions, for the one helper of HTML and the one of SVG.
 * @param {string} text
 * @returns {(string | Fraction)[]}
 */
export function fractionParts(text) {
  /** @type {(string | Fraction)[]} */
  const parts = [];
  let last = 0;
  for (const m of text.matchAll(/(?<![\d/.])(?:(\d+)[ \u00a0])?(\d{1,2})\/(2|4|8|16|32|64)(?![\d/])/g)) {
    if (m.index > last) parts.push(text.slice(last, m.index));
    parts.push({ whole: m[1] ?? '', over: m[2], under: m[3] });
    last = m.index + m[0].length;
  }
  if (last < text.length || parts.length === 0) parts.push(text.slice(last));
  return parts;
}

/**
 * A board's name with its thickness where the trade says it: "Gypsum 1/2 light", "Plywood 15".
 * @param {{short: string, nominal: string, row?: string, brief?: string, thickness?: Value | number | null}} board
 * @param {Units} units
 * @param {'row' | 'brief'} [form]
 */
export function boardName(board, units, form = 'row') {
  const pattern = board[form] || fallback(board.short, form);
  return pattern.replace('%', thicknessName(board, units));
}

/**
 * @param {string} short
 * @param {'row' | 'brief'} form
 */
function fallback(short, form) {
  const [first, ...rest] = short.split(' ');
  if (form === 'brief' && /^gypsum$/i.test(first) && rest.length > 0) return `% ${rest.join(' ')}`;
  return [first, '%', ...rest].join(' ');
}

/**
 * @param {{nominal: string, thickness?: Value | number | null}} board
 * @param {Units} units
 */
function thicknessName({ nominal, thickness }, units) {
  if (thickness && typeof thickness === 'object' && thickness.origin === 'typed' && thickness.as) {
    const { figure, unit } = typed(thickness.as);
    return (unit === 'in') === (units === 'us') ? figure : `${figure}${NBSP}${unit}`;
  }
  const cut = nominal.lastIndexOf(' ');
  const figure = nominal.slice(0, cut);
  const unit = nominal.slice(cut + 1);
  if ((unit === 'in') === (units === 'us') || !['in', 'mm'].includes(unit)) return unit === 'in' || unit === 'mm' ? figure : nominal.replace(' ', NBSP);
  const metres = typeof thickness === 'number' ? thickness : thickness?.v;
  if (units === 'si' && metres !== undefined) return millimetres(metres);
  return `${figure}${NBSP}${unit}`;
}

/**
 * The boards of a leaf from the room outwards, equal neighbours counted: "2 × 5/8 type X".
 * @param {{board: string, short: string, nominal: string, row?: string, brief?: string, join?: string, thickness?: Value | number | null}[]} layers
 * @param {Units} units
 */
export function leafName(layers, units) {
  /** @type {{name: string, count: number, film: boolean}[]} */
  const groups = [];
  layers.forEach((layer, i) => {
    const name = boardName(layer, units, 'brief');
    const film = i < layers.length - 1 && layer.join === 'film';
    const last = groups.at(-1);
    if (last && last.name === name) {
      last.count++;
      last.film ||= film;
    } else groups.push({ name, count: 1, film });
  });
  const names = groups.map(({ name, count }) => (count > 1 ? `${count} ${TIMES} ${name}` : name));
  const words = names.join(', ') + (groups.some((g) => g.film) ? ', damping film' : '');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/**
 * A sheet's size: "4 × 8 ft", "1200 × 2400 mm"; a roll by its width.
 * @param {string} sheet
 */
export function sheetName(sheet) {
  return sheet ? joined(typed(sheet)) : '';
}
