// Every edit is plan → {label, plan}: a new plan that shares what did not
// change, and what was done in a few words for undo. Nothing is checked here;
// the core judges the plan, and ids stay the same across edits.

/**
 * @typedef {import('./types.d.ts').Plan} Plan
 * @typedef {import('./types.d.ts').BuildUp} BuildUp
 * @typedef {import('./types.d.ts').Leaf} Leaf
 * @typedef {import('./types.d.ts').Layer} Layer
 * @typedef {import('./types.d.ts').Gap} Gap
 * @typedef {import('./types.d.ts').Held} Held
 * @typedef {import('./types.d.ts').Shelf} Shelf
 * @typedef {import('./types.d.ts').Surface} Surface
 * @typedef {import('./types.d.ts').Candidate} Candidate
 * @typedef {{label: string, plan: Plan}} Edit
 */

export const MOST_LEAVES = 4;

/** @param {Plan} plan @param {string} id */
export function buildUpOf(plan, id) {
  return plan.buildUps.find((b) => b.id === id) ?? plan.buildUps[0];
}

/**
 * Where a layer is; leaf −1 if it is nowhere.
 * @param {BuildUp} buildUp
 * @param {string} id
 */
export function placeOf(buildUp, id) {
  for (const [leaf, { layers }] of buildUp.leaves.entries()) {
    const index = layers.findIndex((y) => y.id === id);
    if (index >= 0) return { leaf, index };
  }
  return { leaf: -1, index: -1 };
}

/**
 * Ids that are free in a whole plan: "y7", "y8" …
 * @param {Plan} plan
 * @param {string} prefix
 * @param {number} [count]
 */
export function freeIds(plan, prefix, count = 1) {
  let last = 0;
  for (const [, n] of JSON.stringify(plan).matchAll(new RegExp(`"id":"${prefix}(\\d+)"`, 'g'))) last = Math.max(last, Number(n));
  return Array.from({ length: count }, (_, i) => `${prefix}${last + i + 1}`);
}

/**
 * @param {Plan} plan
 * @param {string} id
 * @param {(buildUp: BuildUp) => BuildUp} change
 * @returns {Plan}
 */
function inBuildUp(plan, id, change) {
  return { ...plan, buildUps: plan.buildUps.map((b) => (b.id === id ? change(b) : b)) };
}

/**
 * @param {Plan} plan
 * @param {string} id
 * @param {number} leaf
 * @param {(layers: Layer[]) => Layer[]} change
 */
function inLeaf(plan, id, leaf, change) {
  return inBuildUp(plan, id, (b) => ({ ...b, leaves: b.leaves.map((l, i) => (i === leaf ? { ...l, layers: change(l.layers) } : l)) }));
}

/**
 * Takes keys with nothing in them out, as the plan's text has none of them.
 * @template {object} T
 * @param {T} row
 * @returns {T}
 */
function tidy(row) {
  return /** @type {T} */ (Object.fromEntries(Object.entries(row).filter(([, v]) => v !== '' && v !== undefined && v !== false && v !== null)));
}

/**
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {string} layer
 * @param {string} board
 * @param {string} name of the new board
 * @returns {Edit}
 */
export function changeBoard(plan, buildUp, layer, board, name) {
  const { leaf, index } = placeOf(buildUpOf(plan, buildUp), layer);
  return {
    label: `layer ${index + 1}: ${name}`,
    plan: inLeaf(plan, buildUp, leaf, (layers) => layers.map((y) => (y.id === layer ? tidy({ ...y, board, there: undefined }) : y))),
  };
}

/**
 * Adds a board to a leaf, on the side where it would be hung: away from the frame.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {number} leaf
 * @param {string} board
 * @param {string} name
 * @returns {Edit}
 */
export function addLayer(plan, buildUp, leaf, board, name) {
  const [id] = freeIds(plan, 'l');
  const layer = { id, board };
  return {
    label: `${name} added`,
    plan: inLeaf(plan, buildUp, leaf, (layers) => (leaf === 0 ? [layer, ...layers] : [...layers, layer])),
  };
}

/**
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {string} layer
 * @param {string} name
 * @param {boolean} [there] it was in the house already
 * @returns {Edit}
 */
export function removeLayer(plan, buildUp, layer, name, there = false) {
  const { leaf } = placeOf(buildUpOf(plan, buildUp), layer);
  return {
    label: there ? `${name} taken off` : `${name} removed`,
    plan: inLeaf(plan, buildUp, leaf, (layers) => layers.filter((y) => y.id !== layer)),
  };
}

/**
 * Moves a layer within its leaf to another place.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {string} layer
 * @param {number} to its index afterwards
 * @param {string} name
 * @returns {Edit | undefined} nothing where it cannot go
 */
export function moveLayer(plan, buildUp, layer, to, name) {
  const { leaf, index } = placeOf(buildUpOf(plan, buildUp), layer);
  const layers = leaf < 0 ? [] : buildUpOf(plan, buildUp).leaves[leaf].layers;
  if (leaf < 0 || to < 0 || to >= layers.length || to === index) return undefined;
  const order = layers.filter((y) => y.id !== layer);
  order.splice(to, 0, layers[index]);
  return { label: `${name} moved`, plan: inLeaf(plan, buildUp, leaf, () => order) };
}

/**
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {string} layer
 * @param {Partial<Layer>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setLayer(plan, buildUp, layer, patch, label) {
  const { leaf } = placeOf(buildUpOf(plan, buildUp), layer);
  return { label, plan: inLeaf(plan, buildUp, leaf, (layers) => layers.map((y) => (y.id === layer ? tidy({ ...y, ...patch }) : y))) };
}

/**
 * Puts other layers into a leaf, as when a candidate is hung. Layers that were there already stay behind them.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {number} leaf
 * @param {Layer[]} layers
 * @param {string} name
 * @returns {Edit}
 */
export function hangLayers(plan, buildUp, leaf, layers, name) {
  const ids = freeIds(plan, 'l', layers.length);
  return {
    label: `hung: ${name}`,
    plan: inLeaf(plan, buildUp, leaf, () => layers.map((y, i) => tidy({ ...y, id: ids[i] }))),
  };
}

/**
 * What the shelf says of a board.
 * @param {Plan} plan
 * @param {string} board
 * @returns {Shelf}
 */
export function shelfOf(plan, board) {
  return plan.shelf?.find((s) => s.board === board) ?? { board };
}

/**
 * Writes on the shelf what the tag says; an empty field is no longer said.
 * @param {Plan} plan
 * @param {string} board
 * @param {Partial<Shelf>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setShelf(plan, board, patch, label) {
  const row = tidy({ ...shelfOf(plan, board), ...patch, board });
  const rest = (plan.shelf ?? []).filter((s) => s.board !== board);
  const at = (plan.shelf ?? []).findIndex((s) => s.board === board);
  const shelf = [...rest];
  if (Object.keys(row).length > 1) shelf.splice(at < 0 ? shelf.length : at, 0, row);
  return { label, plan: { ...plan, shelf } };
}

/**
 * Forgets everything that was said of a board: back to typical.
 * @param {Plan} plan
 * @param {string} board
 * @param {string} name
 * @returns {Edit}
 */
export function clearShelf(plan, board, name) {
  return { label: `${name} back to typical`, plan: { ...plan, shelf: (plan.shelf ?? []).filter((s) => s.board !== board) } };
}

/**
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {string} gap
 * @param {Partial<Gap>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setGap(plan, buildUp, gap, patch, label) {
  return {
    label,
    plan: inBuildUp(plan, buildUp, (b) => ({ ...b, gaps: b.gaps?.map((g) => (g.id === gap ? { ...tidy({ ...g, ...patch }), near: g.near, far: g.far } : g)) })),
  };
}

/**
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {string} gap
 * @param {'near' | 'far'} side
 * @param {Partial<Held>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setHeld(plan, buildUp, gap, side, patch, label) {
  // A rating that is typed is no longer the example's.
  const typed = patch.rating === undefined ? patch : { ...patch, example: false };
  return {
    label,
    plan: inBuildUp(plan, buildUp, (b) => ({
      ...b,
      gaps: b.gaps?.map((g) => (g.id === gap ? { ...g, [side]: tidy({ ...g[side], ...typed }) } : g)),
    })),
  };
}

/**
 * Puts the screws of every side at the usual spacing: the closest of them counts.
 * @param {Plan} plan
 * @param {string} buildUp
 * @returns {Edit}
 */
export function usualScrews(plan, buildUp) {
  const usual = (/** @type {import('./types.d.ts').Held} */ held) => tidy({ ...held, screws: undefined });
  return {
    label: 'screws at the usual spacing',
    plan: inBuildUp(plan, buildUp, (b) => ({ ...b, gaps: b.gaps?.map((g) => ({ ...g, near: usual(g.near), far: usual(g.far) })) })),
  };
}

/**
 * Adds a leaf of one board beyond the last one, with a gap before it.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {string} board
 * @returns {Edit | undefined} nothing where there are four
 */
export function addLeaf(plan, buildUp, board) {
  const b = buildUpOf(plan, buildUp);
  if (b.leaves.length >= MOST_LEAVES) return undefined;
  const [layer] = freeIds(plan, 'l');
  const [gap] = freeIds(plan, 'g');
  const like = b.gaps?.at(-1);
  /** @type {Gap} */
  const added = {
    id: gap,
    frame: like?.frame ?? 'none',
    near: { fixing: 'screwed' },
    far: { fixing: 'screwed' },
    ...(like?.fill ? { fill: like.fill } : {}),
    ...(like?.fillDepth ? { fillDepth: like.fillDepth } : {}),
  };
  return {
    label: 'another leaf',
    plan: inBuildUp(plan, buildUp, () => ({ ...b, leaves: [...b.leaves, { layers: [{ id: layer, board }] }], gaps: [...(b.gaps ?? []), added] })),
  };
}

/**
 * Takes a leaf out, and the gap towards the room; of the first leaf the gap behind it.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {number} leaf
 * @returns {Edit | undefined} nothing where it is the only one
 */
export function removeLeaf(plan, buildUp, leaf) {
  const b = buildUpOf(plan, buildUp);
  if (b.leaves.length < 2) return undefined;
  const gap = Math.max(0, leaf - 1);
  const compared = b.compare.leaf > leaf || b.compare.leaf === b.leaves.length - 1 ? Math.max(0, b.compare.leaf - 1) : b.compare.leaf;
  return {
    label: 'a leaf removed',
    plan: inBuildUp(plan, buildUp, () => ({
      ...b,
      leaves: b.leaves.filter((_, i) => i !== leaf),
      gaps: b.gaps?.filter((_, i) => i !== gap),
      // What was compared with belongs to the leaf that was compared.
      compare: leaf === b.compare.leaf ? { leaf: compared } : { ...b.compare, leaf: compared },
    })),
  };
}

/**
 * Chooses the leaf whose boards are compared. Another leaf has another reference and other candidates.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {number} leaf
 * @returns {Edit}
 */
export function compareLeaf(plan, buildUp, leaf) {
  return { label: 'another side compared', plan: inBuildUp(plan, buildUp, (b) => ({ ...b, compare: b.compare.leaf === leaf ? b.compare : { leaf } })) };
}

/**
 * Makes these layers what the others are compared with; none: the region's usual.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {Layer[]} layers
 * @returns {Edit}
 */
export function setReference(plan, buildUp, layers) {
  return {
    label: 'another reference',
    plan: inBuildUp(plan, buildUp, (b) => ({
      ...b,
      compare: tidy({ ...b.compare, reference: layers.length ? layers.map((y, i) => ({ ...y, id: `r${i + 1}` })) : undefined }),
    })),
  };
}

/**
 * Adds a candidate to the table; now are the rows it shows, as a table that nobody changed is not in the plan.
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {Candidate[]} now
 * @param {Layer[]} layers
 * @param {string} name
 * @returns {Edit}
 */
export function addCandidate(plan, buildUp, now, layers, name) {
  const [id] = freeIds({ ...plan, buildUps: [...plan.buildUps, { id: '', leaves: [], compare: { leaf: 0, rows: now } }] }, 'c');
  const row = { id, layers: layers.map((y, i) => ({ ...y, id: `${id}.${i + 1}` })) };
  return { label: `${name} to compare`, plan: inBuildUp(plan, buildUp, (b) => ({ ...b, compare: { ...b.compare, rows: [...now, row] } })) };
}

/**
 * @param {Plan} plan
 * @param {string} buildUp
 * @param {Candidate[]} now
 * @param {string} id
 * @param {string} name
 * @returns {Edit}
 */
export function removeCandidate(plan, buildUp, now, id, name) {
  return {
    label: `${name} no longer compared`,
    plan: inBuildUp(plan, buildUp, (b) => ({ ...b, compare: { ...b.compare, rows: now.filter((c) => c.id !== id) } })),
  };
}

/**
 * @param {Plan} plan
 * @param {string} surface
 * @param {Partial<Surface>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setSurface(plan, surface, patch, label) {
  return { label, plan: { ...plan, surfaces: plan.surfaces.map((s) => (s.id === surface ? tidy({ ...s, ...patch }) : s)) } };
}

/**
 * What belongs to the whole plan: name, units, region, prices, waste.
 * @param {Plan} plan
 * @param {Partial<Plan>} patch
 * @param {string} label
 * @returns {Edit}
 */
export function setPlan(plan, patch, label) {
  return { label, plan: { ...plan, ...patch } };
}
