// The sentences of clips, of the list and of the cuts: codes of the core into
// words. Every sentence is plain text; what may be tapped is said by itself.

import { tape } from './draw/running.js';
import { boardName, inches, inSentence, joined, MINUS, money, NBSP, number, percent, shown, span, TIMES, text } from './format.js';
import { counted } from './words.js';

/**
 * @typedef {import('./words.js').Ctx} Ctx
 * @typedef {import('./types-buy.d.ts').LayoutReport} LayoutReport
 * @typedef {import('./types-buy.d.ts').ListReport} ListReport
 * @typedef {import('./types-buy.d.ts').Item} Item
 * @typedef {import('./types-buy.d.ts').TakeoffNote} TakeoffNote
 * @typedef {import('./types-buy.d.ts').Step} Step
 * @typedef {import('./types-buy.d.ts').BoardName} BoardName
 * @typedef {import('./types-buy.d.ts').CutFace} CutFace
 * @typedef {{head: string, text: string, grave?: boolean}} Said
 * @typedef {{answer: string, text: string}} Answer
 */

/** @param {string} s */
export function capital(s) {
  return s.charAt(0).toUpperCase() + s.slice(1);
}

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** @param {number} n */
export function inWords(n) {
  return SMALL[n] ?? number(n);
}

/** @param {string} kind @param {number | undefined} v @param {Ctx} ctx */
function of(kind, v, ctx) {
  return v === undefined ? '–' : joined(shown(kind, v, ctx));
}

/** A length too small for a tape: 64ths for what a drill is sold in, else hundredths of an inch. @param {number | undefined} m @param {Ctx} ctx */
export function fine(m, ctx) {
  if (m === undefined || ctx.units !== 'us') return m === undefined ? '–' : `${Number((m * 1000).toFixed(2))}${NBSP}mm`;
  const inch = m / 0.0254;
  return Math.abs(inch * 64 - Math.round(inch * 64)) < 1e-3 && inch > 0.03 ? `${inches(inch, 64)}${NBSP}in` : `${number(inch, inch < 0.1 ? 3 : 2)}${NBSP}in`;
}

/** A length as a board or a screw is named: "5/8 in", "13 ft 4 in" above a board's width. @param {number} m @param {Ctx} ctx */
function long(m, ctx) {
  return m > 1.4 ? span(m, ctx.units) : of('length', m, ctx);
}

/** @param {number} v @param {Ctx} ctx */
function share(v, ctx) {
  return of('share', v, ctx);
}

/** What hangs on the clips, in words for a sentence. @param {import('./types-buy.d.ts').HungSpot} hung @param {Ctx} ctx */
export function hungName(hung, ctx) {
  return `${hung.mass ? `${text(hung.mass, ctx)} ` : ''}${hung.name ? inSentence(hung.name) : 'load'}`;
}

/**
 * The answer to "will it hold": from the states of the clips.
 * @param {LayoutReport | undefined} report
 * @param {Ctx} ctx
 * @returns {Answer | undefined}
 */
export function loadVerdict(report, ctx) {
  const lay = report?.layout;
  const spots = lay?.spots ?? [];
  if (!report || !lay || spots.length === 0) return undefined;
  const { over, close, under } = lay.count;
  const worst = spots[lay.worst];
  const near = nearest(report, worst);
  const sags = (lay.notes ?? []).some((n) => n.code === 'channel-sags' || n.code === 'channel-bends');
  if (!(lay.rating > 0)) {
    return { answer: 'Not yet.', text: `The worst clip carries ${of('mass', worst.load, ctx)}, and no rating of a clip is known.` };
  }
  const carries = `${of('mass', worst.load, ctx)} on a clip rated ${of('mass', lay.rating, ctx)}`;
  if (over > 0) {
    const who = near ? `With the ${hungName(near, ctx)}, ${clipsAre(over, spots.length)} over` : `${capital(clipsAre(over, spots.length))} over`;
    return { answer: 'Not yet.', text: `${who}: the worst has ${carries}, ${share(worst.of, ctx)}.` };
  }
  if (sags) return { answer: 'Not yet.', text: `The clips hold, ${share(worst.of, ctx)} at worst, but the channel bends too far between them.` };
  const asks = (report.joists?.cautions ?? []).find((c) => c.code === 'dead-passed' || c.code === 'joist-over');
  if (asks) {
    const by =
      asks.code === 'joist-over'
        ? 'the joist itself does not'
        : `the joists likely carry up to ${of('surfaceMass', Math.abs(asks.args?.left ?? 0), ctx)} too much`;
    return { answer: 'Not yet.', text: `The clips hold, ${share(worst.of, ctx)} at worst, but ${by}: ask an engineer.` };
  }
  const rest = [close ? `${inWords(close)} close` : '', under ? `${inWords(under)} under` : ''].filter(Boolean).join(', ');
  return { answer: 'Yes.', text: `${counted(spots.length, 'clip')}, the worst with ${carries}: ${share(worst.of, ctx)}${rest ? `; ${rest}` : ''}.` };
}

/** @param {number} n @param {number} all */
function clipsAre(n, all) {
  return `${inWords(n)} of ${number(all)} clips ${n === 1 ? 'is' : 'are'}`;
}

/**
 * What hangs within one distance of rows of the worst clip; a statement of place, not of cause.
 * @param {LayoutReport} report
 * @param {{x: number, y: number}} spot
 */
function nearest({ hung, rules }, spot) {
  const reach = Math.max(rules.rows, 0.4);
  return (hung ?? []).find((h) => Math.abs(h.x - spot.x) <= Math.max(reach, 1.25) && Math.abs(h.y - spot.y) <= reach);
}

/**
 * The sentence before what would mend it, and the words to tap.
 * @param {LayoutReport} report
 * @param {Ctx} ctx
 * @returns {{before: string, tap: string, does: 'clip' | 'grid'} | undefined}
 */
export function mendWords({ mend, widest, layout, face }, ctx) {
  const held = layout && layout.count.over === 0;
  if (!layout || held) return undefined;
  if (mend?.share && mend.share.v <= 1.001) {
    const row = (layout.rows ?? []).findIndex((r) => Math.abs(r.at - (layout.alongX ? mend.y : mend.x)) < 0.02);
    const at = layout.alongX ? mend.x : mend.y;
    return {
      before: `One more ${row >= 0 ? `in row ${row + 1} at ${tape(at, ctx.units)}` : `at ${tape(mend.x, ctx.units)}, ${tape(mend.y, ctx.units)} ${face.ceiling ? 'in' : 'up'}`} brings the worst to ${share(mend.share.v, ctx)}.`,
      tap: 'Add it',
      does: 'clip',
    };
  }
  if (widest?.rows && widest.along && widest.share) {
    return {
      before: `Rows ${text(widest.rows, ctx)} and clips ${text(widest.along, ctx)} apart hold: ${counted(widest.clips, 'clip')}, the worst at ${text(widest.share, ctx)}.`,
      tap: 'Set them',
      does: 'grid',
    };
  }
  return undefined;
}

/** Nothing tried holds: what comes closest. @param {import('./types.d.ts').Sentence | undefined} none @param {Ctx} ctx */
export function noneWords(none, ctx) {
  if (none?.code !== 'none-holds') return '';
  const a = none.args ?? {};
  const most = a.most ? ` Such a grid would hold boards of ${of('surfaceMass', a.most, ctx)}.` : '';
  return `No spacing that was tried holds; rows ${of('length', a.rows, ctx)} apart with ${counted(a.clips ?? 0, 'clip')} come closest, ${share(a.share ?? 0, ctx)} at worst.${most}`;
}

/**
 * Why there is no layout, with the nearest thing that works.
 * @param {import('./types.d.ts').Sentence | undefined} fault
 * @param {Ctx} ctx
 * @returns {Said | undefined}
 */
export function layoutFault(fault, ctx) {
  if (!fault) return undefined;
  const a = fault.args ?? {};
  switch (fault.code) {
    case 'face-size': {
      const small = Math.min(a.width ?? 0, a.height ?? 0) < (a.least ?? 0);
      const size = `${long(a.width ?? 0, ctx)} by ${long(a.height ?? 0, ctx)}`;
      return {
        head: small ? 'Too small for a grid of clips.' : 'Too large to lay out.',
        text: small
          ? `${size}; the least side is ${of('length', a.least, ctx)}. Screw so small a piece to its frame.`
          : `${size}; the longest side is ${long(a.most ?? 0, ctx)}.`,
        grave: true,
      };
    }
    case 'openings-fill':
      return { head: 'The openings leave no room.', text: 'Nothing is left beside them that is wide enough for channel.', grave: true };
    case 'rule-not-positive':
      return { head: 'A distance is 0.', text: 'Rows, clips and ends stand some way apart: empty the field for the usual one.', grave: true };
    case 'hung-off':
      return {
        head: 'Something hangs beside the boards.',
        text: `The nearest place on them is ${tape(a.x ?? 0, ctx.units)} across, ${tape(a.y ?? 0, ctx.units)} up.`,
        grave: true,
      };
    case 'mass-not-positive':
      return { head: 'A weight is missing.', text: 'Type what hangs there weighs.', grave: true };
  }
  return { head: capital(fault.code.replaceAll('-', ' ')), text: '', grave: true };
}

/** How far a ceiling's channel may run is told by these. */
const ABOVE = /** @type {Record<string, string>} */ ({
  floor: 'a floor above',
  attic: 'an attic, nothing stored',
  stored: 'an attic with storage',
  truss: 'roof trusses',
  slab: 'a concrete slab',
});

/** What may stand on the joists, to choose from. */
export const ABOVES = Object.entries(ABOVE).map(([value, words]) => ({ value, words }));

/** Species and grade of a joist: "dfl-2" is "Douglas fir-larch No. 2". @param {string} id */
export function gradeWords(id) {
  const [species, grade = ''] = id.split('-');
  const name = { dfl: 'Douglas fir-larch', hf: 'Hem-fir', spf: 'Spruce-pine-fir', sp: 'Southern pine' }[species];
  if (name) return `${name} ${grade === 'ss' ? 'select structural' : `No.${NBSP}${grade}`}`;
  return id.toUpperCase();
}

/** Grades sold in a region, the core's own ids. @param {string} region */
export function gradesOf(region) {
  if (region === 'AU') return ['mgp10', 'mgp12'];
  if (region === 'UK' || region === 'EU') return ['c16', 'c24'];
  return ['dfl', 'hf', 'spf', 'sp'].flatMap((s) => ['ss', '1', '2', '3'].map((g) => `${s}-${g}`));
}

/**
 * What the layout, the screws and the joists say beside the states of the clips.
 * @param {import('./types.d.ts').Caution} note
 * @param {Ctx} ctx
 * @returns {Said | undefined} nothing for what other words say
 */
export function loadNote({ code, args, text: t }, ctx) {
  const a = args ?? {};
  const layer = ctx.report?.leaves[ctx.report.leaf]?.layers[a.layer ?? -1];
  const board = layer ? inSentence(boardName(layer, ctx.units)) : t?.board ? inSentence(ctx.names?.[t.board] ?? t.board) : 'the panel';
  switch (code) {
    case 'needs-blocking':
      return {
        head: 'Blocking first.',
        text: `${capital(clipsStand(a.clips ?? 1))} where no member is: put a piece of wood in between before the clips go on.`,
      };
    case 'one-row':
      return { head: 'One row only.', text: `${of('length', a.height, ctx)} is too low for two: it stands in the middle.` };
    case 'one-clip':
      return {
        head: 'Short channel.',
        text: `${capital(inWords(a.pieces ?? 1))} ${a.pieces === 1 ? 'piece hangs' : 'pieces hang'} on a single clip and can turn about it.`,
      };
    case 'loose-strip':
      return {
        head: 'A strip without a row.',
        text: `${of('length', a.width, ctx)} by ${of('length', a.height, ctx)} of board is crossed by no channel: add blocking or a row.`,
      };
    case 'lifted-clip':
      return {
        head: 'A clip is pushed.',
        text: `By the channel as a beam one is pushed the other way by ${of('mass', Math.abs(a.load ?? 0), ctx)}: it stands close beside another, or something hangs beyond it.`,
      };
    case 'rated-other-way':
      return {
        head: 'Rated for the other direction.',
        text: `On a wall a clip is loaded across, on a ceiling it is pulled: type the rating for this one. ${of('mass', a.load, ctx)} is on it.`,
      };
    case 'channel-sags':
      return {
        head: 'The channel sags.',
        text: `${fine(a.sag, ctx)} between two clips, where ${of('length', a.limit, ctx)} is the limit (span / 240): clips closer together, or heavier channel.`,
        grave: true,
      };
    case 'channel-bends':
      return {
        head: 'The channel bends.',
        text: `${share(a.share ?? 0, ctx)} of the moment it may take: clips closer together, or heavier channel.`,
        grave: true,
      };
    case 'half-load':
      return {
        head: 'Some clips carry half or less.',
        text: `At ${share(a.share ?? 0, ctx)} of the mean they sit at ${number(a.frequency ?? 0, 0)}${NBSP}Hz: isolation begins higher there.`,
      };
    case 'coarse-thread':
      return { head: 'Coarse thread.', text: 'Into wood; fine thread pulls out of it.' };
    case 'fine-thread':
      return { head: 'Fine thread.', text: `Into the channel’s thin steel, ${fine(a.steel, ctx)}.` };
    case 'drill-point':
      return { head: 'Drill point.', text: `The steel is ${fine(a.steel, ctx)}: a needle point does not go through.` };
    case 'pilot-holes':
      return {
        head: 'Drill the wood first.',
        text: `${fine(a.diameter, ctx)} through ${board}, or the screw jacks it off the channel before it bites.`,
      };
    case 'panel-gap':
      return { head: 'Leave the panel its gap.', text: `${fine(a.gap, ctx)} at every edge of ${board}, sealed; it touches no other wall.` };
    case 'corner-backing':
      return {
        head: 'Backing in the corner.',
        text: `The stud must show ${of('length', a.need, ctx)}; it shows ${of('length', a.has, ctx)}. Add a stud or blocking before boarding.`,
      };
    case 'dead-passed':
      return {
        head: 'Ask an engineer.',
        text: `With what they likely carry already, the joists pass the ${of('surfaceMass', a.sized, ctx)} of dead load they were likely sized for by up to ${of('surfaceMass', Math.abs(a.left ?? 0), ctx)}.`,
        grave: true,
      };
    case 'joist-over':
      return { head: 'Ask an engineer.', text: `The joist itself comes to ${share(a.share ?? 0, ctx)} of what it may take.`, grave: true };
    case 'ceiling-dead-load':
      return {
        head: 'Ask an engineer.',
        text: `This hangs ${of('surfaceMass', a.added, ctx)} on joists that are there already; more than ${of('surfaceMass', a.limit, ctx)} wants an engineer’s word.`,
      };
    case 'truss-chord':
      return { head: 'Ask an engineer.', text: 'The bottom chord of a truss was likely sized for a plain ceiling, not for this.' };
    case 'joists-cut':
      return { head: 'Ask an engineer.', text: 'The joists are notched, drilled or mended.' };
    case 'joists-sag':
      return { head: 'Ask an engineer.', text: `The joists hang by ${fine(a.sag, ctx)} already.` };
    case 'long-span':
      return { head: 'Ask an engineer.', text: `New joists over ${long(a.span ?? 0, ctx)}: above ${long(a.limit ?? 0, ctx)} they want sizing.` };
    case 'wall-out':
      return { head: 'Ask an engineer.', text: 'A wall that may bear is taken out.' };
    case 'old-frame':
      return { head: 'Ask an engineer.', text: 'In a house of that age nothing was sized by today’s tables.' };
    case 'frame-on-floor':
      return {
        head: 'Ask an engineer.',
        text: `The inner frame stands on the floor with ${of('lineMass', a.line, ctx)} under the walls that carry its ceiling.`,
      };
  }
  return undefined;
}

/** @param {number} n */
function clipsStand(n) {
  return `${inWords(n)} ${n === 1 ? 'clip stands' : 'clips stand'}`;
}

/** Where a clip is screwed to. */
export const SEATS = /** @type {Record<string, string>} */ ({
  member: '',
  end: 'on the end stud',
  jamb: 'beside an opening',
  blocking: 'on blocking',
  masonry: '',
});

// ---- the list ----

/** @param {BoardName | undefined} name @param {string} id @param {Ctx} ctx */
export function nameOfBoard(name, id, ctx) {
  return name ? boardName({ ...name, thickness: null }, ctx.units) : (ctx.names?.[id] ?? id);
}

/**
 * What a line of the list is called at the counter.
 * @param {Item} item
 * @param {ListReport} list
 * @param {Ctx} ctx
 */
export function itemName(item, list, ctx) {
  const size = item.size > 0 ? long(item.size, ctx) : '';
  switch (item.code) {
    case 'sheets': {
      const name = list.names?.[item.of];
      const sheet = name?.sheet ? `, ${sheetWords(name.sheet)}` : '';
      return nameOfBoard(name, item.of, ctx) + sheet;
    }
    case 'screws':
      return `Screws ${size}`;
    case 'sealant':
      return 'Acoustic sealant';
    case 'damping':
      return 'Damping compound';
    case 'clips': {
      const rating = ctx.report?.load?.rating;
      return rating && rating.origin === 'typed' ? `Clips, rated ${text(rating, ctx)}` : 'Clips';
    }
    case 'channel':
      return `Channel ${size}`;
    case 'batts':
      return 'Batts for the gaps';
    case 'pads':
      return 'Putty pads';
    case 'tape':
      return 'Joint tape';
    case 'compound':
      return 'Joint compound';
    case 'backing':
      return `Backing studs ${size}`;
    case 'blocking':
      return 'Plywood blocking';
  }
  return capital(item.code.replaceAll('-', ' '));
}

/** "4 × 8 ft" without the unit where feet are meant, as a yard says it. @param {string} sheet */
function sheetWords(sheet) {
  const [digits, unit = ''] = sheet.split(' ');
  return `${digits.split('x').join(NBSP + TIMES + NBSP)}${unit === 'ft' ? '' : NBSP + unit}`;
}

/**
 * How many are bought, in what they are sold in.
 * @param {Item} item
 * @param {Ctx} ctx
 */
export function amountWords(item, ctx) {
  const { buy, pack } = item;
  const all = item.buy + item.owned;
  const owned = item.owned > 0 ? `own ${number(item.owned)} of ${number(all)}` : '';
  switch (item.code) {
    case 'sheets': {
      const each = item.mass > 0 && buy > 0 ? `${sheetMass(item.mass / buy, ctx)} each` : '';
      return [owned || counted(buy, 'sheet'), each].filter(Boolean).join(', ');
    }
    case 'screws':
      return `${counted(buy, 'box', 'boxes')} of ${number(pack)}`;
    case 'sealant':
      return `${counted(buy, 'tube')}, ${of('length', item.size, ctx)} bead`;
    case 'damping':
      return counted(buy, 'tube');
    case 'batts':
      return `${counted(buy, 'pack')} of ${of('area', pack, ctx).replace(/\.0+(?=\D)/, '')}`;
    case 'tape':
      return `${counted(buy, 'roll')} of ${ctx.units === 'us' ? `${number(Math.round(pack / 0.3048))}${NBSP}ft` : `${number(pack)}${NBSP}m`}`;
    case 'compound':
      return `${counted(buy, 'bucket')} of ${litres(pack, ctx)}`;
    case 'channel':
      return `${number(buy)}, laps counted`;
  }
  return owned || number(buy);
}

/** What a sheet weighs is not known to the tenth of a pound. @param {number} kg @param {Ctx} ctx */
export function sheetMass(kg, ctx) {
  const half = Math.round((kg / 0.45359237) * 2) / 2;
  return ctx.units === 'us' ? `${number(half, Number.isInteger(half) ? 0 : 1)}${NBSP}lb` : of('mass', kg, ctx);
}

/** @param {number} v m³ @param {Ctx} ctx */
function litres(v, ctx) {
  return ctx.units === 'us' ? `${number(v / 3.785411784e-3, 1)}${NBSP}gal` : `${number(v * 1000, v < 0.002 ? 2 : 0)}${NBSP}l`;
}

/** @param {number | undefined} m @param {Ctx} ctx */
function run(m, ctx) {
  return ctx.units === 'us' ? `${number(Math.ceil((m ?? 0) / 0.3048))}${NBSP}ft` : `${number(m ?? 0, 1)}${NBSP}m`;
}

/**
 * The rule by which a quantity was found, with its numbers.
 * @param {Item} item
 * @param {Ctx} ctx
 */
export function ruleWords(item, ctx) {
  const a = item.args ?? {};
  const waste = item.waste > 0 ? `, ${number(item.waste * 100)}${NBSP}% for waste` : '';
  const us = ctx.units === 'us';
  const at = (/** @type {number} */ inch, /** @type {number} */ mm) => (us ? `${number(inch)}${NBSP}in` : `${number(mm)}${NBSP}mm`);
  switch (item.rule) {
    case 'by-cut':
      return `by the cut layout; the area alone would be ${counted(a.bound ?? 0, 'sheet')}, by area and waste ${number(a.rule ?? 0)}`;
    case 'screws-us':
      return `every 16${NBSP}in on walls, 12 on ceilings${waste}`;
    case 'screws-base-us':
      return `every 24${NBSP}in where the next layer is screwed through${waste}`;
    case 'screws-uk':
      return `walls every 300${NBSP}mm, ceilings 230, board ends 150${waste}`;
    case 'screws-base-uk':
      return `an earlier layer at its perimeter only, every 300${NBSP}mm${waste}`;
    case 'screws-au':
      return `every 300${NBSP}mm up each stud${waste}`;
    case 'screws-eu':
      return `walls every 250${NBSP}mm, ceilings 170${waste}`;
    case 'screws-base-eu':
      return `three times as far apart as in the last layer${waste}`;
    case 'screws-channel':
      return `every ${at(12, 305)} on channel, each layer${waste}`;
    case 'screws-panel':
      return `wood panels: every ${at(6, 150)} at the edges, ${at(12, 300)} between${waste}`;
    case 'screws-typed':
      return `as close as you typed them in the last layer${waste}`;
    case 'bead':
      return `${run(a.edges, ctx)} of edges and ${run(a.holes, ctx)} round openings, ${counted(a.layers ?? 0, 'layer')}; a tube gives ${run(a.each, ctx)}${waste}`;
    case 'film':
      return `${of('area', a.area, ctx)} between two layers, ${us ? 'two tubes to a 4 × 8 sheet' : '0.58 l/m²'}`;
    case 'as-laid-out':
      return 'as laid out under Load';
    case 'rows-with-laps':
      return `${counted(a.rows ?? 0, 'row')}, ${run(a.run, ctx)}, laps of ${of('length', a.lap, ctx)} counted`;
    case 'pack':
      return `${of('area', a.area, ctx)} of gaps${waste}`;
    case 'one-a-box':
      return `one for each of ${counted(a.boxes ?? 0, 'box', 'boxes')}`;
    case 'face-joints':
      return `${run(a.joints, ctx)} of joints and ${run(a.corners, ctx)} of corners, the face layer only${waste}`;
    case 'face-area':
      return `${of('area', a.area, ctx)}, the face layer only${waste}`;
    case 'corner-backing':
      return `the stud must show ${of('length', a.needs, ctx)} in ${counted(a.corners ?? 0, 'corner')}, and shows ${of('length', a.shows, ctx)}`;
    case 'one-a-mount':
      return `one for each thing that will hang`;
  }
  return '';
}

const FORGOT = /** @type {Record<string, string>} */ ({
  'forgot-backer-rod': 'backer rod',
  'forgot-pads': 'putty pads',
  'forgot-extenders': 'box extenders',
  'forgot-pilot-bit': 'a pilot bit',
  'forgot-driver-bits': 'driver bits',
  'forgot-blades': 'blades',
  'forgot-jamb': 'a deeper door lining',
  'forgot-door-seal': 'a door seal',
  'forgot-window-reveal': 'window reveals',
  'forgot-corner-bead': 'corner bead',
  'forgot-paint': 'primer and paint',
  'forgot-panel-lift': 'a panel lift to rent',
  'forgot-mask': 'masks and goggles',
  'forgot-skip': 'a skip',
  'forgot-spacers': 'edge spacers',
  'forgot-cable-sleeves': 'cable sleeves',
  'forgot-electrician': 'an electrician',
  'forgot-delivery': 'the delivery',
});

/** @param {TakeoffNote} note */
export function forgotWords(note) {
  return FORGOT[note.code] ?? note.code.replaceAll('-', ' ');
}

/**
 * The answer of Buy: the whole load, how it gets home, what it costs.
 * @param {ListReport} list
 * @param {Ctx} ctx
 * @param {string} [payload] as typed, in words
 * @returns {Answer}
 */
export function buyVerdict(list, ctx, payload = '') {
  const { bill, trips, way, cargo, items } = list;
  if (!items?.length) return { answer: 'Nothing to buy yet.', text: 'Without a size there is nothing to count, and what is there already costs nothing.' };
  const blocked = way ?? [];
  const mass = list.mass ? text(list.mass, ctx) : '';
  const n = trips?.length ?? 0;
  const load = [
    mass ? `${capital(counted(list.sheets, 'sheet'))}, ${mass}` : capital(counted(list.sheets, 'sheet')),
    n ? `: ${inWords(n)} ${n === 1 ? 'trip' : 'trips'}${payload ? ` at your ${payload}` : ''}` : '',
  ].join('');
  const two = (list.lifts ?? []).filter((l) => l.wall.people > 1).map((l) => inSentence(list.names?.[l.board]?.short ?? ''));
  const people = two.length ? ` Two people for ${named([...new Set(two)].filter(Boolean))}.` : '';
  const cost = bill.unpriced
    ? ` ${money(bill.total, ctx.currency)} so far, ${counted(bill.unpriced, 'price')} missing.`
    : ` ${money(bill.total, ctx.currency)}${bill.tax > 0 ? ' with tax' : ''}${bill.contingency > 0 ? ' and reserve' : ''}.`;
  if (blocked.length) {
    const name = inSentence(nameOfBoard(list.names?.[blocked[0].board], blocked[0].board, ctx));
    return { answer: 'Not yet.', text: `The sheets of ${name} do not go through the way in.${cost}` };
  }
  if ((cargo ?? []).some((c) => c.code !== 'no-payload')) return { answer: 'Not yet.', text: `${load}. Not all of it goes on what brings it.${cost}` };
  const lacks = items
    .filter((l) => (l.lacking ?? 0) > 0)
    .map((l) => `${counted(l.lacking ?? 0, 'sheet')} of ${inSentence(nameOfBoard(list.names?.[l.item.of], l.item.of, ctx))}`);
  if (lacks.length) return { answer: 'Not yet.', text: `${load}. ${capital(named(lacks))} more than there are here.${cost}` };
  return { answer: 'Yes.', text: `${load}.${people}${cost}` };
}

/**
 * What is said of getting there and of the cuts.
 * @param {TakeoffNote} note
 * @param {Record<string, BoardName> | null | undefined} names
 * @param {CutFace[] | null | undefined} faces
 * @param {Ctx} ctx
 * @returns {Said}
 */
export function takeoffNote({ code, args, board, face, layer }, names, faces, ctx) {
  const a = args ?? {};
  const name = board ? inSentence(nameOfBoard(names?.[board], board, ctx)) : 'a sheet';
  const where = faces?.find((f) => f.id === face)?.name ?? '';
  const on = where ? `${where}${layer >= 0 ? `, ${inWordsTh(layer)} layer` : ''}: ` : '';
  const place = a.passage === 0 ? 'The door' : a.passage === 1 ? 'The turn' : 'The stair';
  const m = (/** @type {string} */ key) => of('length', a[key], ctx);
  switch (code) {
    case 'no-payload':
      return { head: 'How much goes at once?', text: 'Type the payload, by the handbook of what carries it, and the trips are drawn.' };
    case 'too-heavy':
      return { head: 'Too heavy.', text: `One of ${name} is ${of('mass', a.mass, ctx)}; ${of('mass', a.payload, ctx)} is allowed.`, grave: true };
    case 'sheet-too-long':
      return { head: 'Too long.', text: `${m('length')} does not lie on what carries it: ${m('most')} at most.`, grave: true };
    case 'sheet-too-wide':
      return { head: 'Too wide.', text: `${m('width')} does not lie flat: ${m('most')} at most.`, grave: true };
    case 'pile-too-high':
      return { head: 'Too thick.', text: `${capital(name)} is thicker than the pile may be.`, grave: true };
    case 'too-many-trips':
      return { head: 'More trips than can be counted.', text: 'Have it delivered.', grave: true };
    case 'route-height':
      return { head: `${place} is too low.`, text: `A sheet of ${name} stands ${m('width')} on edge; ${m('clear')} is clear.`, grave: true };
    case 'route-turn':
      return { head: `${place} is too tight.`, text: `${capital(name)} is ${m('length')} long; ${m('longest')} at most goes round.`, grave: true };
    case 'route-stair':
      return { head: 'The stair is too low.', text: `${m('width')} on edge under ${m('clear')} of headroom.`, grave: true };
    case 'route-closed':
      return { head: `${place} is too narrow.`, text: `${capital(name)} does not pass.`, grave: true };
    case 'no-sheet':
      return { head: 'Not cut from sheets.', text: `${on}${name} is sold by the roll or cut to order.` };
    case 'unknown-board':
    case 'unknown-face':
      return { head: 'Not laid out.', text: `${on}${name} has no size.` };
    case 'face-too-small':
      return { head: 'Nothing is left to board.', text: `${on}what hangs already takes all of it.`, grave: true };
    case 'face-too-large':
      return { head: 'Too large to lay out.', text: `${on}${long(a.width ?? 0, ctx)} by ${long(a.height ?? 0, ctx)}.`, grave: true };
    case 'face-covered':
      return { head: 'Nothing is left to board.', text: `${on}the openings take all of it.` };
    case 'bad-sheet':
      return { head: 'No such sheet.', text: `${on}the size of ${name} cannot be cut.`, grave: true };
    case 'opening-off':
      return { head: 'An opening lies outside.', text: `${on}${m('width')} by ${m('height')} does not lie within the face.`, grave: true };
    case 'twice-hung':
      return { head: 'Two layers in one place.', text: `${on}only one of them is cut.`, grave: true };
    case 'stagger-short':
      return { head: 'Joints lie close.', text: `${on}${m('distance')} from those of the layer before; ${m('wanted')} is wanted.` };
    case 'off-framing':
      return { head: 'Joints off the framing.', text: `${on}${counted(a.count ?? 0, 'joint')} ${a.count === 1 ? 'needs' : 'need'} blocking behind.` };
    case 'narrow-piece':
      return { head: 'A narrow strip.', text: `${on}${counted(a.count ?? 0, 'piece')} down to ${m('width')}.` };
    case 'close-courses':
      return { head: 'End joints lie close.', text: `${on}${counted(a.count ?? 0, 'pair')} nearer than ${m('wanted')}.` };
    case 'many-pieces':
      return { head: 'Too many pieces.', text: `${on}${number(a.count ?? 0)}; ${number(a.most ?? 0)} at most can be laid out.`, grave: true };
    case 'over-area-rule':
      return {
        head: 'More than the rule of area.',
        text: `${capital(name)} takes ${counted(a.sheets ?? 0, 'sheet')}; area and waste would say ${number(a.rule ?? 0)}. ${whyMore(a)}`,
      };
  }
  return { head: `${capital(code.replaceAll('-', ' '))}.`, text: on };
}

/** The one reason without which fewer would do; or it is the sizes themselves. @param {Record<string, number>} a */
function whyMore(a) {
  const WHY = /** @type {[string, string][]} */ ([
    ['free', 'joints that must lie on framing'],
    ['loose', 'joints staggered from layer to layer'],
    ['plain', 'the grain'],
  ]);
  if (a.all === undefined) return '';
  if (a.all >= (a.sheets ?? 0)) return 'The sizes of the faces are why: strips that are left are too narrow to be used again.';
  const best = WHY.filter(([key]) => a[key] < a.sheets).sort((x, y) => a[x[0]] - a[y[0]])[0];
  return best
    ? `Without ${best[1]} it would be about ${number(a[best[0]])}.`
    : `Without grain, staggered joints and joints on framing it would be about ${number(a.all)}.`;
}

/**
 * One step of the work.
 * @param {Step} step
 * @param {CutFace[] | null | undefined} faces
 * @param {Ctx} ctx
 * @returns {Said}
 */
export function stepSaid({ code, args, face, layer }, faces, ctx) {
  const a = args ?? {};
  const name = faces?.find((f) => f.id === face)?.name ?? '';
  const k = layer >= 0 ? inWordsTh(layer) : '';
  const m = (/** @type {string} */ key) => of('length', a[key], ctx);
  switch (code) {
    case 'services-in':
      return { head: 'Services in and tested', text: 'wires by a licensed electrician, pipes under pressure, ducts blown through, before anything closes' };
    case 'backing-in':
      return {
        head: 'Backing studs and blocking',
        text: a.needs ? `corner studs that show ${m('needs')}, blocking where something will hang` : 'in corners, and where something will hang',
      };
    case 'framing-seen':
      return { head: 'Inspection of framing and services', text: 'where your building department asks for it' };
    case 'batts-in':
      return { head: 'Fill the gaps', text: `${of('area', a.area, ctx)}; gloves, sleeves, mask` };
    case 'photograph':
      return { head: 'Photograph every face', text: 'with a tape in the picture: wires, pipes and studs are not seen again' };
    case 'clips-on':
      return { head: 'Clips and channel', text: `${counted(a.clips ?? 0, 'clip')} in ${counted(a.rows ?? 0, 'row')}, by the layout` };
    case 'clips-checked':
      return { head: 'No channel touches a stud', text: 'ends stand free, laps lie on no clip; push each row, it gives' };
    case 'pads-on':
      return { head: 'Putty pads', text: `on ${counted(a.boxes ?? 0, 'box', 'boxes')}` };
    case 'layer-start':
      return { head: `Mark out the ${k} layer`, text: `lines of framing on what hangs; spacers of ${m('gap')} at every edge, no board rests on the floor` };
    case 'boxes-out':
      return { head: 'Bring the boxes out', text: `${counted(a.boxes ?? 0, 'box', 'boxes')} to the new face, by an electrician` };
    case 'film-on':
      return { head: `Damping compound, ${name}`, text: 'on the backs; hung before it skins' };
    case 'hang':
      return { head: `Hang ${name}, ${k} layer`, text: [counted(a.pieces ?? 0, 'piece'), pastWords(a)].filter(Boolean).join('; ') };
    case 'seal':
      return { head: `Seal the ${k} layer`, text: `${run(a.run, ctx)} of edges and holes` };
    case 'seal-checked':
      return { head: 'Check the seal', text: 'by light and by hand, before the next layer hides it' };
    case 'door-in':
      return { head: a.doors === 1 ? 'The door' : 'The doors', text: 'opens from inside without a key' };
    case 'window-in':
      return { head: 'Windows and hatches', text: 'reveals sealed at both faces' };
    case 'tape':
      return { head: 'Tape and fill', text: 'the face layer only; sand with a vacuum and a mask' };
    case 'paint':
      return { head: 'Paint', text: of('area', a.area, ctx) };
    case 'leak-checked':
      return { head: 'Look and listen for leaks', text: 'dark room, bright light outside, then an ear along every edge' };
    case 'alarms-in':
      return { head: 'Alarm heard, way out clear', text: 'the smoke alarm is heard with the door shut and the band playing' };
    case 'final-seen':
      return { head: 'Final inspection', text: 'where your building department asks for it' };
  }
  return { head: capital(code.replaceAll('-', ' ')), text: name };
}

/** @param {number} i from 0 */
export function inWordsTh(i) {
  return ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'][i] ?? `${i + 1}th`;
}

/**
 * At which edges a layer runs past its neighbour.
 * @param {Record<string, boolean | number | undefined>} a by the edge's name
 */
export function pastWords(a) {
  const names = ['left', 'right', 'foot', 'head'].filter((key) => a[key] !== undefined);
  const past = names.filter((key) => a[key]);
  const stops = names.filter((key) => !a[key]);
  if (!past.length) return stops.length ? 'stops short at every edge' : '';
  if (!stops.length) return 'runs past at every edge';
  return `runs past at ${named(past)}, stops short at ${named(stops)}`;
}

/** @param {string[]} words */
export function named(words) {
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${words.at(-1)}` : (words[0] ?? '');
}

/**
 * What another length saves: "save 4 sheets and 22 joints".
 * @param {import('./types-buy.d.ts').Choice} as
 * @param {import('./types-buy.d.ts').Choice} other
 */
export function savedWords(as, other) {
  const gains = [];
  const losses = [];
  for (const [key, one] of /** @type {[('buy' | 'joints' | 'cuts'), string][]} */ ([
    ['buy', 'sheet'],
    ['joints', 'joint'],
    ['cuts', 'cut'],
  ])) {
    const d = as[key] - other[key];
    if (d > 0) gains.push(counted(d, one));
    if (d < 0) losses.push(counted(-d, one));
  }
  if (!gains.length && !losses.length) return 'same';
  return [gains.length ? `save ${named(gains)}` : '', losses.length ? `take ${named(losses)} more` : ''].filter(Boolean).join(', ');
}

export { MINUS, percent };
