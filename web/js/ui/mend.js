// What a phrase in a sentence does when it is tapped.

import * as edit from '../edit.js';

/**
 * @param {import('./app.d.ts').App} app
 * @param {string} what
 * @param {import('../types.d.ts').Sentence} [sentence]
 */
export function act(app, what, sentence) {
  const gap = holder(app);
  switch (what) {
    case 'area':
      app.open({ kind: 'needs' });
      return;
    case 'rating':
      if (gap) {
        app.go('layers');
        app.select(gap.id);
      }
      return;
    case 'swap':
      app.go('swap');
      return;
    case 'rows': {
      const rows = sentence?.args?.rows;
      const id = sentence?.text?.gap ?? gap?.id;
      const side = sentence?.text?.side === 'far' ? 'far' : 'near';
      if (id && rows) app.edit(edit.setHeld(app.plan, app.buildUp.id, id, side, { rows: asTyped(rows, app.units) }, 'rows of clips closer'));
    }
  }
}

/**
 * The gap whose clips hold the leaf that is edited.
 * @param {import('./app.d.ts').App} app
 * @returns {{id: string, side: 'near' | 'far'} | undefined}
 */
export function holder(app) {
  const leaf = app.buildUp.compare.leaf;
  const after = app.buildUp.gaps?.[leaf];
  const before = app.buildUp.gaps?.[leaf - 1];
  if (after && (!before || after.near.fixing !== 'screwed')) return { id: after.id, side: 'near' };
  return before ? { id: before.id, side: 'far' } : undefined;
}

/**
 * A length the core proposed, as the plan writes it.
 * @param {number} metres
 * @param {'us' | 'si'} units
 */
function asTyped(metres, units) {
  return units === 'us' ? `${Number((metres / 0.0254).toFixed(3))} in` : `${Number((metres * 1000).toFixed(1))} mm`;
}
