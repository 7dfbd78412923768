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
      if (gap && rows) app.edit(edit.setHeld(app.plan, app.buildUp.id, gap.id, gap.side, { rows: lengthText(rows, app.units) }, 'rows of clips'));
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
 * A length the core proposed, as the plan writes it. Rows go by whole inches or centimetres, never wider.
 * @param {number} metres
 * @param {'us' | 'si'} units
 */
function lengthText(metres, units) {
  return units === 'us' ? `${Math.floor(metres / 0.0254 + 1e-6)} in` : `${Math.floor(metres * 100 + 1e-6) * 10} mm`;
}
