// What the tag says of one board here: weight and price in the row itself, and
// under "more" the sheet's size, other ways to tell a weight, how many there
// are, how many are owned, and how it is joined.

import { html, nothing } from 'lit-html';
import * as edit from '../edit.js';
import { boardName, joined, retyped, sheetName, shown, text, typed, unitIn, valueShown } from '../format.js';
import { counted, joinWords } from '../words.js';
import { chips, fieldRow } from './field.js';
import { rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('./app.d.ts').FieldSpec} FieldSpec
 * @typedef {import('../types.d.ts').LayerReport} LayerReport
 * @typedef {import('../types.d.ts').Shelf} Shelf
 * @typedef {import('../types.d.ts').Per} Per
 */

const AREA_UNITS = ['psf', 'kg/m2'];

/** A pair of units, the plan's own first. @param {App} app @param {string} us @param {string} si */
function both(app, us, si) {
  return app.units === 'us' ? [us, si] : [si, us];
}

/**
 * A field of the shelf's row of a board.
 * @param {App} app
 * @param {LayerReport} layer
 * @param {keyof Shelf} name
 * @param {string} what
 * @param {string} label
 * @param {Partial<FieldSpec>} [rest]
 * @returns {FieldSpec}
 */
function spec(app, layer, name, what, label, rest = {}) {
  const shelf = edit.shelfOf(app.plan, layer.board);
  const board = boardName(layer, app.units);
  const value = /** @type {string} */ (shelf[name] ?? '');
  const key = `shelf.${layer.board}.${name}`;
  const unit = value ? unitIn(value) : (app.fieldUnits.get(key) ?? rest.units?.[0] ?? '');
  return {
    key,
    what,
    label: `${board}, ${label}`,
    value,
    unit,
    set: (quantity) =>
      edit.setShelf(app.plan, layer.board, { [name]: quantity }, quantity ? `${board}: ${joined(typed(quantity))}` : `${board}: ${label} typical`),
    mine: (fault) => fault.board === layer.board && (fault.field === name || (name === 'weight' && fault.field === 'mass')),
    ...rest,
  };
}

/**
 * The field of the tag's weight: a sheet's, or by area where its unit says so.
 * @param {App} app
 * @param {LayerReport} layer
 * @param {boolean} [lit]
 * @returns {FieldSpec}
 */
export function weightSpec(app, layer, lit = false) {
  const shelf = edit.shelfOf(app.plan, layer.board);
  const board = boardName(layer, app.units);
  const [own, other] = both(app, 'lb', 'kg');
  const [area, otherArea] = both(app, 'psf', 'kg/m2');
  const units = layer.weight ? [own, other, area, otherArea] : [area, otherArea];
  const s = spec(app, layer, 'weight', 'mass', 'weight', { units, lit });
  const perArea = AREA_UNITS.includes(s.unit);
  const typical = perArea ? layer.mass : layer.weight;
  return {
    ...s,
    what: perArea ? 'surfaceMass' : 'mass',
    label: `${board}, weight ${perArea ? 'per area' : 'of a sheet'} as the tag says`,
    typical: typical
      ? valueShown({ ...typical, origin: 'typical' }, { ...app.ctx, units: perArea ? (s.unit === 'psf' ? 'us' : 'si') : s.unit === 'lb' ? 'us' : 'si' }).figure
      : '',
    set: (quantity) =>
      edit.setShelf(
        app.plan,
        layer.board,
        { weight: quantity, per: quantity && AREA_UNITS.includes(unitIn(quantity)) ? 'area' : '', less: '', of: '' },
        quantity ? `${board}: ${joined(typed(quantity))}` : `${board}: typical weight`,
      ),
    setUnit: (unit) => {
      app.fieldUnits.set(s.key, unit);
      if (!shelf.weight) return;
      const quantity = `${retyped(shelf.weight)} ${unit}`;
      app.edit(
        edit.setShelf(app.plan, layer.board, { weight: quantity, per: AREA_UNITS.includes(unit) ? 'area' : '' }, `${board}: ${joined(typed(quantity))}`),
      );
    },
  };
}

/**
 * @param {App} app
 * @param {LayerReport} layer
 * @returns {FieldSpec}
 */
export function priceSpec(app, layer) {
  const shelf = edit.shelfOf(app.plan, layer.board);
  const board = boardName(layer, app.units);
  const currency = app.ctx.currency;
  const area = `${currency}${app.units === 'us' ? '/ft²' : '/m²'}`;
  const key = `shelf.${layer.board}.price`;
  const perArea = shelf.price ? shelf.priceArea === true : app.fieldUnits.get(key) === area;
  return spec(app, layer, 'price', 'money', `price ${perArea ? 'per area' : 'of a sheet'}`, {
    unit: currency,
    units: [currency, area],
    unitWords: perArea ? area : currency,
    typical: layer.price && !perArea && layer.price.origin !== 'typed' ? shown('money', layer.price.v, app.ctx).figure.replace(currency, '') : '',
    set: (quantity) =>
      edit.setShelf(
        app.plan,
        layer.board,
        { price: quantity, priceArea: perArea && quantity !== '' },
        quantity ? `${board}: ${joined(typed(quantity))}` : `${board}: no price`,
      ),
    setUnit: () => {
      app.fieldUnits.set(key, perArea ? currency : area);
      if (shelf.price) app.edit(edit.setShelf(app.plan, layer.board, { priceArea: !perArea }, `${board}: price ${perArea ? 'a sheet' : 'by area'}`));
    },
  });
}

/** Whether the weight is told in a way that needs two fields. @param {Shelf} shelf */
export function toldInTwo(shelf) {
  return shelf.per === 'pallet' || shelf.per === 'scale';
}

/**
 * The chips of sheet sizes, with a field for another.
 * @param {App} app
 * @param {LayerReport} layer
 */
export function sizes(app, layer) {
  const choices = layer.sheetChoices ?? [];
  if (!layer.sheet && choices.length === 0) return nothing;
  const shelf = edit.shelfOf(app.plan, layer.board);
  const board = boardName(layer, app.units);
  const key = `other.${layer.board}`;
  const known = choices.includes(layer.sheet);
  const other = app.fieldUnits.get(key) === 'other' || !known;
  const s = spec(app, layer, 'sheet', 'sheet', 'sheet size', { units: both(app, 'ft', 'mm') });
  const unit = unitIn(choices[0] ?? '');
  const words = (/** @type {string} */ sheet) => (unitIn(sheet) === unit ? typed(sheet).figure : sheetName(sheet));
  return html`<div class="sizes">
    ${chips(
      `Sheet size of ${board}`,
      [...choices.map((value) => ({ value, words: words(value) })), { value: 'other', words: known ? 'other' : sheetName(layer.sheet) }],
      other ? 'other' : layer.sheet,
      (value) => {
        app.fieldUnits.set(key, value === 'other' ? 'other' : '');
        if (value === 'other') app.render();
        else app.edit(edit.setShelf(app.plan, layer.board, { sheet: value === choices[0] && !shelf.sheet ? '' : value }, `${board}: ${sheetName(value)}`));
      },
    )}
    ${other ? fieldRow(app, s, 'Sheet size', 'as in 4 x 8') : nothing}
  </div>`;
}

/**
 * Everything else that can be said of a board here.
 * @param {App} app
 * @param {LayerReport} layer
 * @param {{last: boolean, index: number, count: number}} place in its leaf
 */
export function aboutBoard(app, layer, { last, index, count }) {
  const shelf = edit.shelfOf(app.plan, layer.board);
  const board = boardName(layer, app.units);
  const set = (/** @type {Partial<Shelf>} */ patch, /** @type {string} */ words) => app.edit(edit.setShelf(app.plan, layer.board, patch, `${board}: ${words}`));
  const per = /** @type {Per} */ (shelf.per ?? '');
  const stock = spec(app, layer, 'stock', 'count', 'how many there are here');
  const said = shelf.plenty ? 'plenty' : shelf.stock === '0' ? 'none' : '';
  const built = !layer.weight && (layer.sheetChoices ?? []).length === 0;
  return html`<div class="more-of">
    ${
      built
        ? nothing
        : html`${sizes(app, layer)}
          <p class="label">The weight is of</p>
          ${chips(
            'What the weight is of',
            [
              { value: /** @type {Per} */ (''), words: 'a sheet' },
              { value: /** @type {Per} */ ('area'), words: app.units === 'us' ? '1 ft²' : '1 m²' },
              { value: /** @type {Per} */ ('pallet'), words: 'a pallet' },
              { value: /** @type {Per} */ ('scale'), words: 'me + sheet' },
            ],
            per,
            (value) => {
              app.fieldUnits.delete(`shelf.${layer.board}.weight`);
              if (value === 'area') app.fieldUnits.set(`shelf.${layer.board}.weight`, both(app, 'psf', 'kg/m2')[0]);
              set({ per: value, weight: '', less: '', of: '' }, 'weight told another way');
            },
          )}
          ${
            per === 'pallet'
              ? html`${fieldRow(app, spec(app, layer, 'weight', 'mass', 'weight of the pallet', { units: both(app, 'lb', 'kg'), setUnit: unitSetter(app, layer, 'weight', shelf) }), 'All of the pallet')}
              ${fieldRow(app, spec(app, layer, 'of', 'count', 'sheets in the pallet'), 'Sheets in it')}`
              : per === 'scale'
                ? html`${fieldRow(app, spec(app, layer, 'weight', 'mass', 'scale with the sheet', { units: both(app, 'lb', 'kg'), setUnit: unitSetter(app, layer, 'weight', shelf) }), 'Scale with the sheet')}
                ${fieldRow(app, spec(app, layer, 'less', 'mass', 'scale without the sheet', { units: both(app, 'lb', 'kg'), setUnit: unitSetter(app, layer, 'less', shelf) }), 'Scale without it')}`
                : nothing
          }
          ${toldInTwo(shelf) && layer.weight ? html`<p class="soft">${rich(`A sheet is then ${text(layer.weight, app.ctx)}.`)}</p>` : nothing}
          ${fieldRow(
            app,
            {
              ...stock,
              value: said === 'none' ? '0' : stock.value,
              set: (q) => edit.setShelf(app.plan, layer.board, { stock: q, plenty: false }, `${board}: ${q || 'stock not said'}`),
            },
            'How many are here',
          )}
          ${chips(
            `Stock of ${board}`,
            [
              { value: 'none', words: 'none' },
              { value: 'plenty', words: 'plenty' },
            ],
            said,
            (value) =>
              value === said
                ? set({ stock: '', plenty: false }, 'stock not said')
                : set(value === 'none' ? { stock: '0', plenty: false } : { stock: '', plenty: true }, `${value} here`),
          )}
          ${fieldRow(app, spec(app, layer, 'owned', 'count', 'how many you own'), 'You own')}`
    }
    ${fieldRow(
      app,
      spec(app, layer, 'thickness', 'length', 'thickness', {
        units: both(app, 'in', 'mm'),
        typical: layer.thickness && layer.thickness.origin !== 'typed' ? shown('length', layer.thickness.v, app.ctx).figure : '',
        setUnit: unitSetter(app, layer, 'thickness', shelf),
      }),
      'Thickness',
    )}
    ${
      last || count < 2
        ? nothing
        : html`<p class="label">To the next board</p>
          ${chips(
            'How it is joined to the next board',
            /** @type {const} */ (['', 'glue', 'film']).map((value) => ({ value, words: joinWords(value) })),
            layer.join,
            (join) => app.edit(edit.setLayer(app.plan, app.buildUp.id, layer.id, { join }, `${board}: ${joinWords(join)}`)),
          )}`
    }
    <p class="label">In the house</p>
    ${chips(
      'Whether it is there already',
      [
        { value: 'new', words: 'to buy' },
        { value: 'there', words: 'there already' },
      ],
      layer.there ? 'there' : 'new',
      (value) =>
        app.edit(
          edit.setLayer(app.plan, app.buildUp.id, layer.id, { there: value === 'there' }, `${board}: ${value === 'there' ? 'there already' : 'to buy'}`),
        ),
    )}
    <p class="taps">
      ${Object.keys(shelf).length > 1 ? tap('put back to typical', () => putBack(app, layer)) : nothing}
      ${tap(layer.there ? 'take off' : 'remove', () => remove(app, layer), `${layer.there ? 'Take off' : 'Remove'} layer ${index + 1}, ${board}`)}
    </p>
    <p class="soft">${rich(known(app, layer))}</p>
  </div>`;
}

/**
 * @param {App} app
 * @param {LayerReport} layer
 */
export function remove(app, layer) {
  const board = boardName(layer, app.units);
  app.edit(edit.removeLayer(app.plan, app.buildUp.id, layer.id, board, layer.there));
  app.select('');
  app.tell({
    message: { head: `${board} ${layer.there ? 'taken off' : 'removed'}.`, pieces: [] },
    taps: [{ words: 'Undo', act: () => app.undo() }],
  });
}

/**
 * @param {App} app
 * @param {LayerReport} layer
 */
function putBack(app, layer) {
  for (const key of [...app.drafts.keys()]) if (key.startsWith(`shelf.${layer.board}.`)) app.drafts.delete(key);
  app.edit(edit.clearShelf(app.plan, layer.board, boardName(layer, app.units)));
}

/**
 * What is known of the board without a tag.
 * @param {App} app
 * @param {LayerReport} layer
 */
function known(app, layer) {
  const words = [];
  if (layer.weight && layer.weight.origin !== 'typed') {
    const low = layer.weight.low;
    const high = layer.weight.high;
    const range = low !== undefined && high !== undefined ? `, ${shown('mass', low, app.ctx).figure} to ${joined(shown('mass', high, app.ctx))} as sold` : '';
    words.push(`Typical: ${text(layer.weight, app.ctx)} a sheet${range}.`);
  }
  if (layer.price?.origin === 'demo') words.push('The price is an example, invented.');
  if (layer.need > 0) words.push(`This layer takes ${counted(layer.need, 'sheet')}.`);
  return words.join(' ');
}

/**
 * @param {App} app
 * @param {LayerReport} layer
 * @param {'weight' | 'less' | 'thickness'} name
 * @param {Shelf} shelf
 */
function unitSetter(app, layer, name, shelf) {
  return (/** @type {string} */ unit) => {
    app.fieldUnits.set(`shelf.${layer.board}.${name}`, unit);
    const now = shelf[name];
    const quantity = now ? `${retyped(now)} ${unit}` : '';
    if (quantity) app.edit(edit.setShelf(app.plan, layer.board, { [name]: quantity }, `${boardName(layer, app.units)}: ${joined(typed(quantity))}`));
  };
}
