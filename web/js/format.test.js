import assert from 'node:assert/strict';
import test from 'node:test';
import {
  boardName,
  decibels,
  difference,
  differenceOf,
  fractionParts,
  hertz,
  inches,
  leafName,
  millimetres,
  money,
  number,
  percent,
  retyped,
  sheetName,
  shown,
  span,
  spread,
  typed,
  valueShown,
} from './format.js';

const us = /** @type {const} */ ({ units: 'us', currency: '$' });
const si = /** @type {const} */ ({ units: 'si', currency: '€' });

test('thousands are parted by a narrow space, never a comma, and minus is a minus', () => {
  assert.equal(number(31000), '31\u202f000');
  assert.equal(number(2951.574, 2), '2\u202f951.57');
  assert.equal(number(-4), '\u22124');
  assert.equal(number(-0.2), '0');
  assert.equal(number(999), '999');
  assert.equal(number(Number.NaN), '–');
});

test('inches are read to the sixteenth and reduced', () => {
  assert.equal(inches(1.625), '1 5/8');
  assert.equal(inches(0.875), '7/8');
  assert.equal(inches(24), '24');
  assert.equal(inches(7.2501), '7 1/4');
  assert.equal(inches(0.99), '1');
  assert.equal(inches(0.01), '0');
  assert.equal(inches(-0.375), '\u22123/8');
});

test('millimetres are not grouped and keep a tenth only where a board is thin', () => {
  assert.equal(millimetres(1.2), '1200');
  assert.equal(millimetres(0.0125), '12.5');
  assert.equal(millimetres(0.01588), '15.9');
  assert.equal(millimetres(0.189), '189');
  assert.equal(millimetres(0.04), '40');
  assert.equal(millimetres(0.01), '10');
});

test('every kind has its unit in both systems', () => {
  // 1 psf is 4.8824 kg/m²; 39 lb over 32 ft² is 1.21875 psf.
  assert.deepEqual(shown('surfaceMass', 21.39, us), { figure: '4.38', unit: 'psf' });
  assert.deepEqual(shown('surfaceMass', 21.39, si), { figure: '21.4', unit: 'kg/m²' });
  assert.deepEqual(shown('mass', 58 * 0.45359237, us), { figure: '58', unit: 'lb' });
  assert.deepEqual(shown('mass', 39.84 * 0.45359237, us), { figure: '39.8', unit: 'lb' });
  assert.deepEqual(shown('mass', 2889 * 0.45359237, us), { figure: '2\u202f889', unit: 'lb' });
  assert.deepEqual(shown('moneyRate', 2.23 / 0.09290304, us), { figure: '$2.23', unit: 'per ft²' });
  assert.deepEqual(shown('moneyRate', 18.2, si), { figure: '€18.20', unit: 'per m²' });
  assert.deepEqual(shown('area', 0.7432, us), { figure: '8.00', unit: 'ft²' });
  assert.deepEqual(shown('share', 0.9476, us), { figure: '95', unit: '%' });
  assert.deepEqual(shown('frequency', 58.3, us), { figure: '58', unit: 'Hz' });
  assert.deepEqual(shown('length', 0.18415, us), { figure: '7 1/4', unit: 'in' });
});

test('what is over its limit never reads as the limit', () => {
  assert.equal(percent(1.004), '100.4');
  assert.equal(percent(1.0005), '100');
  assert.equal(percent(1.16), '116');
});

test('differences have a sign, and nothing is "same"', () => {
  assert.equal(difference('moneyRate', 1.11 / 0.09290304, us), '+$1.11');
  assert.equal(difference('moneyRate', 1.11 / 0.09290304, us, true), '+1.11');
  assert.equal(difference('decibel', -1.2, us), '\u22121\u00a0dB');
  assert.equal(difference('decibel', -0.4, us), 'same');
  assert.equal(difference('decibel', 0.5, us), '+1\u00a0dB');
  assert.equal(difference('length', 0.0095, us), '+3/8\u00a0in');
  assert.equal(difference('length', 0.01, si), '+10\u00a0mm');
  assert.equal(difference('surfaceMass', 0.001, us), 'same');
  assert.equal(difference('surfaceMass', -4.45, us, true), '\u22120.91');
});

test('a difference is between the figures as they are shown', () => {
  const value = (/** @type {string} */ kind, /** @type {number} */ v, /** @type {number} */ diff, same = false) =>
    /** @type {import('./types.d.ts').Value} */ ({ v, kind, diff, same, origin: 'computed' });
  // 7 7/32 in is shown as 7 1/4 and 6 7/8 as itself: 3/8 apart, though really 11/32.
  assert.equal(differenceOf(value('length', 7.219 * 0.0254, 0.344 * 0.0254), us), '+3/8\u00a0in');
  assert.equal(differenceOf(value('decibel', 16.4, 0.8), us), 'same');
  assert.equal(differenceOf(value('decibel', 16.5, 0.2), us), '+1\u00a0dB');
  assert.equal(differenceOf(value('surfaceMass', 21.365, -0.03), us), 'same');
  // Over is over, however little.
  assert.equal(differenceOf(value('surfaceMass', 21.4, 0.03), us), '+0.01\u00a0psf');
  assert.equal(differenceOf(value('surfaceMass', 21.4, 0.01, true), us), 'same');
  assert.equal(differenceOf(value('moneyRate', 24, 11.95), us), '+$1.11');
});

test('typed quantities are shown as they were typed', () => {
  assert.deepEqual(typed('58 lb'), { figure: '58', unit: 'lb' });
  assert.deepEqual(typed('0.625 in'), { figure: '5/8', unit: 'in' });
  assert.deepEqual(typed('41.5 $'), { figure: '$41.50', unit: '' });
  assert.deepEqual(typed('4x8 ft'), { figure: '4 × 8', unit: 'ft' });
  assert.deepEqual(typed('1200x2400 mm'), { figure: '1200 × 2400', unit: 'mm' });
  assert.deepEqual(typed('12'), { figure: '12', unit: '' });
  assert.deepEqual(typed('21.4 kg/m2'), { figure: '21.4', unit: 'kg/m²' });
  assert.deepEqual(valueShown({ v: 58 * 0.45359237, kind: 'mass', origin: 'typed', as: '58 lb' }, si), { figure: '58', unit: 'lb' });
  assert.equal(sheetName('4x8 ft'), '4 × 8\u00a0ft');
  assert.equal(retyped('1.25 in'), '1 1/4');
  assert.equal(retyped('41.5 $'), '41.50');
  assert.equal(retyped('58 lb'), '58');
});

test('what a figure was worked out from is not the figure', () => {
  const value = (/** @type {string} */ as, /** @type {number} */ v, kind = 'mass') => valueShown({ v, kind, origin: 'typed', as }, us);
  assert.deepEqual(value('58 lb', 58 * 0.45359237), { figure: '58', unit: 'lb' });
  assert.deepEqual(value('1200 lb', 60 * 0.45359237), { figure: '60', unit: 'lb' });
  assert.deepEqual(value('2.19 psf', 70 * 0.45359237), { figure: '70', unit: 'lb' });
  assert.deepEqual(value('4x8 ft', 2.9729, 'area'), { figure: '32.0', unit: 'ft²' });
  assert.deepEqual(value('10 %', 0.1, 'share'), { figure: '10', unit: '%' });
});

test('fractions are found, and only fractions', () => {
  assert.deepEqual(fractionParts('2 x 5/8 type X'), ['2 x ', { whole: '', over: '5', under: '8' }, ' type X']);
  assert.deepEqual(fractionParts('7 1/4 in'), [{ whole: '7', over: '1', under: '4' }, ' in']);
  assert.deepEqual(fractionParts('kg/m² 1/3 2024/8'), ['kg/m² 1/3 2024/8']);
  assert.deepEqual(fractionParts(''), ['']);
});

test('small words', () => {
  assert.equal(hertz(2500), '2.5\u00a0kHz');
  assert.equal(hertz(31.5), '31.5\u00a0Hz');
  assert.equal(hertz(1000), '1\u00a0kHz');
  assert.equal(decibels(-0.5), '\u22121');
  assert.equal(money(142.4, '$', true), '$142');
  assert.equal(money(-8, '€'), '\u2212€8.00');
  assert.equal(span(4.064, 'us'), '13\u00a0ft 4\u00a0in');
  assert.equal(span(4.064, 'si'), '4.06\u00a0m');
  assert.equal(spread({ v: 19, kind: 'decibel', low: 13, high: 25, origin: 'computed' }), '±6');
});

test('boards carry their thickness where the trade says it', () => {
  const light = { board: 'a', short: 'Gypsum light', row: 'Gypsum % light', brief: '% light', nominal: '1/2 in', thickness: 0.0127 };
  const ply = { board: 'b', short: 'Plywood', row: 'Plywood %', brief: 'ply %', nominal: '5/8 in', thickness: 0.0159 };
  const eu = { board: 'c', short: 'Plywood', row: 'Plywood %', brief: 'ply %', nominal: '15 mm', thickness: 0.015 };
  assert.equal(boardName(light, 'us'), 'Gypsum 1/2 light');
  assert.equal(boardName(light, 'si'), 'Gypsum 12.7 light');
  assert.equal(boardName(eu, 'si'), 'Plywood 15');
  assert.equal(boardName(eu, 'us'), 'Plywood 15\u00a0mm');
  assert.equal(boardName({ short: 'Gypsum type X', nominal: '5/8 in' }, 'us'), 'Gypsum 5/8 type X');
  assert.equal(leafName([light, ply, light], 'us'), '1/2 light, ply 5/8, 1/2 light');
  assert.equal(leafName([{ ...light, join: 'film' }, light], 'us'), '2 × 1/2 light, damping film');
  assert.equal(leafName([ply], 'us'), 'Ply 5/8');
});
