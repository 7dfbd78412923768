// Codes into sentences: verdicts, cautions, faults, and the short names of
// frames and fills. Every sentence is plain text; what may be tapped comes as a
// piece of its own.

import {
  boardName,
  decibels,
  differenceOf,
  hertz,
  inches,
  inSentence,
  joined,
  leafName,
  money,
  NBSP,
  number,
  percent,
  shown,
  TIMES,
  text,
  typed,
  UNKNOWN,
  valueShown,
} from './format.js';

/**
 * @typedef {import('./types.d.ts').Report} Report
 * @typedef {import('./types.d.ts').Sentence} Sentence
 * @typedef {import('./types.d.ts').Verdict} Verdict
 * @typedef {import('./types.d.ts').Caution} Caution
 * @typedef {import('./types.d.ts').Fault} Fault
 * @typedef {import('./types.d.ts').GapReport} GapReport
 * @typedef {import('./types.d.ts').HeldReport} HeldReport
 * @typedef {import('./types.d.ts').Value} Value
 * @typedef {import('./types.d.ts').Units} Units
 * @typedef {{units: Units, currency: string, report?: Report, names?: Record<string, string>}} Ctx names: of boards by id
 * @typedef {{tap: string, value: string}} Tap words to tap, and what they stand for
 * @typedef {string | Tap} Piece
 * @typedef {{head: string, pieces: Piece[]}} Message a bold first phrase, then one sentence
 */

const ANSWERS = /** @type {Record<string, string>} */ ({ yes: 'Yes', notYet: 'Not yet', no: 'No' });

/** The states of what carries, as they are said. */
export const STATES = /** @type {Record<string, string>} */ ({
  over: 'over',
  close: 'close',
  holds: 'holds',
  under: 'under',
  unrated: 'no rating',
  none: 'no clips',
});

export const REGIONS = /** @type {Record<string, string>} */ ({
  US: 'United States',
  CA: 'Canada',
  UK: 'United Kingdom',
  EU: 'Europe',
  AU: 'Australia',
});

/** The unit of money of a region. @param {string} region */
export function currencyOf(region) {
  return region === 'UK' ? '£' : region === 'EU' ? '€' : '$';
}

/** @param {string} s */
function capital(s) {
  return s.charAt(0).toUpperCase() + s.slice(1);
}

/**
 * "1 sheet", "12 sheets".
 * @param {number} n
 * @param {string} one
 * @param {string} [many]
 */
export function counted(n, one, many = `${one}s`) {
  return `${number(n)} ${n === 1 ? one : many}`;
}

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** @param {number} n */
function inWords(n) {
  return SMALL[n] ?? number(n);
}

/**
 * @param {Record<string, string> | undefined} table
 * @param {string | undefined} id
 * @param {Ctx} ctx
 */
function nameOf(table, id, ctx) {
  const key = table?.[id ?? 'board'] ?? '';
  if (ctx.names?.[key]) return ctx.names[key];
  for (const leaf of ctx.report?.leaves ?? []) for (const layer of leaf.layers) if (layer.board === key) return boardName(layer, ctx.units);
  for (const layer of ctx.report?.refLayers ?? []) if (layer.board === key) return boardName(layer, ctx.units);
  return key;
}

/**
 * A row of side by side by its id.
 * @param {string} id
 * @param {Ctx} ctx
 */
function rowName(id, ctx) {
  const row = ctx.report?.rows?.find((r) => r.id === id);
  return row ? leafName(row.layers, ctx.units) : '';
}

/**
 * @param {string} kind
 * @param {number | undefined} v
 * @param {Ctx} ctx
 */
function figure(kind, v, ctx) {
  return v === undefined || !Number.isFinite(v) ? UNKNOWN : joined(shown(kind, v, ctx));
}

/**
 * One reason of a verdict in words that can stand in a list; empty if there is nothing to say.
 * @param {Sentence} part
 * @param {Ctx} ctx
 * @param {string} [section]
 * @returns {string}
 */
function reason({ code, args = {}, text: texts = {} }, ctx, section = '') {
  const by = args.by ?? 0;
  switch (code) {
    case 'isReference':
      return args.value === undefined ? '' : figure('surfaceMass', args.value, ctx);
    case 'bass.is':
      return `bass ${decibels(args.value ?? 0)}${NBSP}dB`;
    case 'rating.is':
      return `${ctx.report?.ratingIs ?? 'rating'} ${decibels(args.value ?? 0)}`;
    case 'cost.is':
      return money(args.value ?? 0, ctx.currency, true);
    case 'mass.same':
      return 'same weight';
    case 'mass.more':
    case 'mass.less': {
      const more = code === 'mass.more';
      // Less than the last digit that is shown is the same weight to a builder; over is over.
      const said =
        args.value === undefined
          ? figure('surfaceMass', by, ctx)
          : differenceOf({ v: args.value, kind: 'surfaceMass', origin: 'computed', diff: more ? by : -by }, ctx);
      return said === 'same' ? 'same weight' : `${said.replace(/^[+\u2212]/, '')} ${more ? 'heavier' : 'lighter'}`;
    }
    case 'clip.share':
    case 'clip.over':
      // Load has room for the weights behind the share.
      if (section === 'load' && args.load !== undefined && args.rating !== undefined) {
        const said = `${figure('mass', args.load, ctx)} on a clip rated ${figure('mass', args.rating, ctx)}`;
        return `${said}: ${percent(args.share ?? 0)}${NBSP}%, ${STATES[ctx.report?.yours.load ?? '']}`;
      }
      if (code === 'clip.over') return `clips over at ${percent(args.share ?? 0)}${NBSP}%`;
      return `clips at ${percent(args.share ?? 0)}${NBSP}%`;
    case 'clip.unrated':
      return section === 'load' && args.load !== undefined ? `${figure('mass', args.load, ctx)} on a clip that has no rating yet` : 'clips not rated yet';
    case 'clip.none':
      return section === 'load' ? 'nothing hangs on clips' : '';
    case 'bass.same':
      return 'same bass';
    case 'bass.more':
      return `bass ${decibels(Math.abs(by))}${NBSP}dB more`;
    case 'bass.less':
      return `bass ${decibels(Math.abs(by))}${NBSP}dB less`;
    case 'rating.same':
      return `same ${ctx.report?.ratingIs ?? 'rating'}`;
    case 'rating.more':
      return `${ctx.report?.ratingIs ?? 'rating'} ${decibels(Math.abs(by))} more`;
    case 'rating.less':
      return `${ctx.report?.ratingIs ?? 'rating'} ${decibels(Math.abs(by))} less`;
    case 'cost.same':
      return 'same cost';
    case 'cost.more':
      return `${money(Math.abs(by), ctx.currency, true)}${perArea(args, ctx)} more`;
    case 'cost.less':
      return `${money(Math.abs(by), ctx.currency, true)}${perArea(args, ctx)} less`;
    case 'cost.unknown':
      return args.missing ? `${counted(args.missing, 'price')} missing` : 'a price is missing';
    case 'sheets':
      return counted(args.n ?? 0, 'sheet');
    case 'sheets.noArea':
      return 'its size would tell the sheets';
    case 'screw':
      return `screws to ${figure('length', args.length, ctx)}`;
    case 'screw.none':
      return 'no screw fits';
    case 'decides':
      return `${hertz(args.hz ?? 0)} decides ${ctx.report?.ratingIs ?? 'the rating'}`;
    case 'load.holdsRows':
      return `rows up to ${figure('length', args.rows, ctx)} apart hold`;
    case 'pick.closest':
      return `closest without going over: ${rowName(texts.id, ctx)}`;
    case 'pick.cheapest':
      return `cheapest at the same bass: ${rowName(texts.id, ctx)}`;
    case 'pick.best':
      return `most bass that holds: ${rowName(texts.id, ctx)}`;
    case 'pick.none':
      return 'none of these holds';
    case 'buy.total':
      return [
        args.mass === undefined ? '' : figure('mass', args.mass, ctx),
        counted(args.sheets ?? 0, 'sheet'),
        args.cost === undefined ? '' : money(args.cost, ctx.currency),
      ]
        .filter(Boolean)
        .join(', ');
    case 'buy.lift':
      return (args.people ?? 1) > 1 ? `${inWords(args.people)} people for ${inSentence(nameOf(texts, undefined, ctx)) || 'the heaviest sheet'}` : '';
    case 'buy.noPrice':
      return `${reason({ code: 'buy.total', args }, ctx)}, a price is missing`;
    case 'need.met':
      return `enough in every octave: by this way alone, ${partOf(texts.source)} stays under ${decibels(ctx.report?.sound?.need?.allowed ?? 0)}${NBSP}dBA ${whereWords(texts.beyond)}`;
    case 'need.short':
      return `${by < 1 ? 'less than 1' : decibels(by)}${NBSP}dB short at ${hertz(args.hz ?? 0)}: ${partOf(texts.source, args.hz)} would be ${isFelt(args) ? 'felt' : 'heard'} ${whereWords(texts.beyond)}`;
    case 'need.floor':
      return 'through the air alone';
    case 'buy.lacking':
      return args.n ? `${counted(args.n, 'sheet')} of ${inSentence(nameOf(texts, undefined, ctx))} more than there are here` : '';
  }
  return '';
}

/**
 * @param {Record<string, number>} args
 * @param {Ctx} ctx
 */
function perArea(args, ctx) {
  return args.perArea ? ` ${ctx.units === 'us' ? 'per ft²' : 'per m²'}` : '';
}

/** Where a new sentence begins within a verdict: what it weighs and does, then what it takes. */
const NEW_SENTENCE = ['cost.', 'decides', 'load.', 'pick.', 'buy.', 'need.floor'];

/**
 * @param {Verdict | undefined} verdict
 * @param {Ctx} ctx
 * @param {boolean} [lastGood] a field is in error: these are the figures before it
 * @param {string} [section] whose verdict it is
 * @returns {{answer: string, text: string, mend?: {tap: string, edit: string, sentence: Sentence}} | undefined}
 */
export function verdictWords(verdict, ctx, lastGood = false, section = '') {
  if (!verdict) return undefined;
  /** @type {string[][]} */
  const sentences = [];
  let group = '';
  for (const part of verdict.parts ?? []) {
    const words = reason(part, ctx, section);
    if (!words) continue;
    const opens = NEW_SENTENCE.find((start) => part.code.startsWith(start)) ?? '';
    if (sentences.length === 0 || (opens && opens !== group) || opens === 'pick.' || opens === 'buy.') sentences.push([words]);
    else sentences.at(-1)?.push(words);
    group = opens || group;
  }
  const answer = ANSWERS[verdict.answer] ?? capital(verdict.answer);
  let words = sentences.map((list) => `${capital(list.join(', '))}.`).join(' ');
  if (lastGood && words) words = words.charAt(0).toLowerCase() + words.slice(1);
  const mend = verdict.mend ? mendWords(verdict.mend, ctx) : undefined;
  if (mend?.before) words = `${words} ${mend.before}`.trim();
  return {
    answer: lastGood ? `${answer},` : `${answer}.`,
    text: lastGood ? `by the last good figures: ${words}` : words,
    ...(mend && verdict.mend ? { mend: { tap: mend.tap, edit: verdict.mend.edit ?? verdict.mend.code, sentence: verdict.mend } } : {}),
  };
}

/**
 * What would mend it: a sentence, and the words that do it.
 * @param {Sentence} mend
 * @param {Ctx} ctx
 */
function mendWords({ code, args = {}, text: texts = {} }, ctx) {
  const rows = args.rows === undefined ? '' : figure('length', args.rows, ctx);
  switch (code) {
    case 'rows':
    case 'mend.rows':
      return {
        before: args.share === undefined ? `Rows ${rows} apart would hold.` : `Rows ${rows} apart bring it to ${percent(args.share)}${NBSP}%.`,
        tap: 'Set them',
      };
    case 'rating':
    case 'mend.rating':
      return { before: '', tap: 'Type the rating' };
    case 'price':
    case 'mend.price':
      return { before: '', tap: 'Type the price' };
    case 'area':
    case 'mend.area':
      return { before: '', tap: 'Type the size' };
    case 'hang':
    case 'mend.hang':
      return { before: texts.id ? `${rowName(texts.id, ctx)} would hold.` : '', tap: 'Hang it' };
  }
  return undefined;
}

/**
 * The verdict as plain words, to be sent.
 * @param {Verdict | undefined} verdict
 * @param {Ctx} ctx
 */
export function verdictText(verdict, ctx) {
  const words = verdictWords(verdict, ctx);
  return words ? `${words.answer} ${words.text}` : '';
}

/**
 * @param {Caution} caution
 * @param {Ctx} ctx
 * @returns {{head: string, text: string, grave: boolean}}
 */
export function cautionWords(caution, ctx) {
  const said = say(caution, ctx);
  if (!said) return { head: capital(caution.code.replaceAll('-', ' ')), text: '', grave: false };
  const [head, sentence, grave = false] = said;
  return { head, text: sentence, grave };
}

/**
 * @param {Caution} caution
 * @param {Ctx} ctx
 * @returns {[head: string, sentence: string, grave?: boolean] | undefined}
 */
function say({ code, args: a = {}, text: t }, ctx) {
  const board = inSentence(nameOf(t, undefined, ctx));
  const of = (/** @type {string} */ kind, /** @type {number | undefined} */ v) => figure(kind, v, ctx);
  const share = `${percent(a.share ?? 0)}${NBSP}%`;
  const gain = a.gain === undefined ? '' : `${decibels(Math.abs(a.gain))}${NBSP}dB`;
  switch (code) {
    case 'over-rating':
      return ['The clips are over.', `Each carries ${of('mass', a.load)}, and is rated ${of('mass', a.rating)}: ${share}.`, true];
    case 'close-to-rating':
      return ['The clips are close.', `${of('mass', a.load)} of ${of('mass', a.rating)}: hang nothing from these boards.`];
    case 'under-load':
      return ['The clips carry too little.', `At ${share} of ${of('mass', a.rating)} the rubber is too stiff to isolate; fewer clips would do more.`];
    case 'no-rating':
      return ['No clip rating yet.', `Each clip carries ${of('mass', a.load)}; type what the maker’s sheet allows.`];
    case 'rating-invented':
      return ['The clip rating is an example.', `${of('mass', a.rating)} is invented: type the one from the maker’s sheet.`];
    case 'channel-boards':
      return [
        'Too heavy for resilient channel.',
        `These boards are ${of('surfaceMass', a.mass)}; the channel is meant for ${of('surfaceMass', a.limit)}.`,
        true,
      ];
    case 'ceiling-dead-load':
      return [
        'Ask an engineer.',
        `This hangs ${of('surfaceMass', a.added)} on the joists; more than ${of('surfaceMass', a.limit)} on joists that are there already wants an engineer’s word.`,
      ];
    case 'truss-chord':
      return ['Ask an engineer.', 'The bottom chord of a truss was likely sized for a plain ceiling, not for this.'];
    case 'masonry-on-floor':
      return ['Ask an engineer.', `A wall of ${of('surfaceMass', a.mass)} stands on the floor; a suspended one may not carry it.`];
    case 'poured-floor':
      return ['Ask an engineer.', `The topping adds ${of('surfaceMass', a.mass)} to the floor.`];
    case 'lifting':
      return [
        `${capital(inWords(a.people ?? 2))} people lift this.`,
        `A sheet of ${board} is ${of('mass', a.mass)}${(a.people ?? 2) > 2 ? ': use a panel lift' : ''}.`,
      ];
    case 'over-mass':
      return ['Heavier than the reference.', `${of('surfaceMass', a.mass)} against ${of('surfaceMass', a.limit)}.`, true];
    case 'short-stock':
      return ['Too few here.', `${counted(a.need ?? 0, 'sheet')} of ${board} are needed; there are ${number(a.stock ?? 0)}.`, true];
    case 'no-screw':
      return [
        'No stock screw fits.',
        a.longest === undefined
          ? `None that holds ${board} stays clear of the frame.`
          : `What holds ${board} is longer than ${of('length', a.longest)}, and would reach the frame.`,
        true,
      ];
    case 'fire-board-out':
      return ['Takes fire-rated board out.', `${board ? capital(board) : 'The fire-rated board'} is replaced: ask your building department.`];
    case 'garage-fire':
      return [
        'A garage is a fire separation.',
        `${t?.beyond ? `Between it and the ${t.beyond}, boards` : 'Its boards'}, joints and openings are rated: ask your building department before closing it.`,
      ];
    case 'wood-at-face':
      return ['Wood faces the room.', `${capital(board)} burns: most codes want gypsum over it.`];
    case 'wood-between':
      return ['Wood lies between boards.', `With ${board} in it the wall is not the one that was fire-tested: ask your building department.`];
    case 'escape':
      return ['Keep the way out.', 'Two doors in a row both open from inside without a key, and an alarm must be heard in here.'];
    case 'air':
      return ['A tight room needs air.', 'Plan a silenced duct in and one out before the walls are closed.'];
    case 'wiring':
      return ['Wiring is for a licensed electrician.', 'Boxes are sealed and never back to back.'];
    case 'old-house':
      return ['An old house may hold asbestos and lead.', 'Have plaster and paint tested before taking anything off.'];
    case 'dust':
      return ['Mind the dust.', `Cutting ${board || 'these boards'} wants a vacuum at the blade and a mask.`];
    case 'moisture':
      return ['An outside wall can sweat.', 'Ask where its vapour barrier goes before filling the gap.'];
    case 'triple-leaf':
      return [
        'A leaf stands inside the gap.',
        gain ? `The same boards as two leaves would bring ${gain} in the bass.` : `${inWords(a.leaves ?? 3)} leaves stop less bass than two in the same depth.`,
      ];
    case 'channel-sandwiched':
      return ['Channel lies between boards.', gain ? `Taking the boards behind it off would bring ${gain}.` : 'It then works as if there were none.'];
    case 'channel-shorted':
      return [
        'Screws reach the frame.',
        `${a.shorts ? `${number(a.shorts * 100)}${NBSP}% of the crossings are tied` : 'Some crossings are tied'}${gain ? `; freeing them would bring ${gain}` : ''}.`,
      ];
    case 'close-screws':
      return ['Screws are close.', `${of('length', a.screws)} apart they tie the boards to the studs${gain ? `; the usual spacing would bring ${gain}` : ''}.`];
    case 'empty-gap':
      return ['The gap is empty.', gain ? `Filling its ${of('length', a.depth)} would bring ${gain}.` : `Nothing lies in its ${of('length', a.depth)}.`];
    case 'open-pores':
      return ['Open pores leak.', gain ? `Sealing one face of the block would bring ${gain}.` : 'Seal one face of the block.'];
    case 'tag-unlikely':
      return [
        'Is that the tag of this board?',
        `${capital(board)} is usually ${of('surfaceMass', a.low)} to ${of('surfaceMass', a.high)}; this one is ${of('surfaceMass', a.mass)}.`,
      ];
    case 'same-boards':
      return [
        'Both sides dip together.',
        `The same boards dip at ${hertz(a.frequency ?? 0)}${gain ? `; another thickness on one side would fill it by ${gain}` : ''}.`,
      ];
    case 'flanking':
      return ['More than a built wall shows.', `Above ${number(a.limit ?? 0)} what goes round it decides: floor, ceiling, door.`];
    case 'below-50hz':
      return ['Below 50 Hz it is a guess.', `No test goes there; ±${decibels(a.spread ?? 8)}${NBSP}dB at best.`];
    case 'no-family':
      return [
        'No published test of this kind among our evidence.',
        `±${decibels(a.spread ?? 0)}${NBSP}dB${t?.widest ? `; what widens it most is ${widestWords(t.widest)}` : ''}.`,
      ];
    case 'assumed-sound':
      return ['Assumed.', `How ${board} sounds is taken from ${inSentence(nameOf(t, 'like', ctx)) || 'boards like it'}.`];
    case 'assumed-mass':
      return ['From memory.', `The typical weight of ${board} has no source; type the tag’s.`];
    case 'value-changed':
      return [
        'A typical value has changed.',
        `${capital(board)} was ${of('surfaceMass', a.was)} when this plan was made; it is ${of('surfaceMass', a.now)} now.`,
      ];
    case 'invented-cost':
      return ['Prices are examples.', 'They are invented until you type yours.'];
  }
  return undefined;
}

const FIELDS = /** @type {Record<string, string>} */ ({
  mass: 'weight',
  weight: 'weight',
  less: 'weight without the sheet',
  of: 'number of sheets',
  length: 'length',
  thickness: 'thickness',
  depth: 'depth',
  spacing: 'spacing',
  fillDepth: 'depth',
  rows: 'distance',
  along: 'distance',
  screws: 'distance',
  rating: 'rating',
  extra: 'load',
  money: 'price',
  price: 'price',
  count: 'number',
  stock: 'number',
  owned: 'number',
  sheet: 'size',
  area: 'area',
  width: 'width',
  height: 'height',
  percent: 'percentage',
  waste: 'waste',
  surfaceMass: 'weight per area',
  level: 'level',
});

/** A quantity text in words: figure and unit. @param {string} q */
function said(q) {
  return /^[\d.]+(x[\d.]+)?( \S+)?$/.test(q) ? joined(typed(q)) : q.replace(/ (?=\S+$)/, NBSP);
}

/**
 * What is wrong with a field, what would be allowed, and repaired values to tap.
 * @param {Fault} fault
 * @param {string} [field] what the field is called, where the fault only knows its kind
 * @returns {Message}
 */
export function faultWords(fault, field) {
  const name = FIELDS[fault.field] ?? field ?? fault.field;
  const { low, high } = fault;
  const range =
    low && high ? `Allowed: ${bare(said(low), said(high))} to ${said(high)}.` : high ? `At most ${said(high)}.` : low ? `At least ${said(low)}.` : '';
  /** @type {Piece[]} */
  const mends = (fault.mend ?? []).flatMap((value, i, all) => {
    const tap = { tap: readable(value, fault.typed), value };
    return i === 0 ? [tap] : [i === all.length - 1 ? ' or ' : ', ', tap];
  });
  const perhaps = mends.length ? ['Did you mean ', ...mends, '?'] : [];
  const rest = (/** @type {string} */ sentence) => (perhaps.length ? [sentence ? `${sentence} ` : '', ...perhaps] : [sentence]);
  switch (fault.code) {
    case 'ambiguous':
      return { head: 'Two readings.', pieces: rest('') };
    case 'zero':
      if (fault.field === 'volume') return { head: 'How large the room is was not said.', pieces: ['Type its length, width and height.'] };
      return { head: `${capital(name)} is 0.`, pieces: rest(range) };
    case 'negative':
      return { head: `${capital(name)} is less than nothing.`, pieces: rest(range) };
    case 'small':
    case 'large':
      return { head: `${fault.typed ? said(fault.typed) : capital(name)}?`, pieces: rest(range) };
    case 'unit':
      return { head: `“${fault.typed}” is no ${name}.`, pieces: rest(range) };
    case 'empty':
    case 'missing':
      return { head: `${capital(name)} is missing.`, pieces: rest(range) };
    case 'notNumber':
      return { head: `“${fault.typed}” is ${/^\d+[.,]\d+$/.test(fault.typed ?? '') ? 'no whole number' : 'not a number'}.`, pieces: rest(range) };
  }
  const [place, ...what] = fault.words.split(': ');
  return what.length ? { head: `${capital(place)}:`, pieces: [`${what.join(': ')}.`] } : { head: capital(`${fault.words}.`), pieces: rest(range) };
}

/** The lower limit without the unit that the upper one has. @param {string} low @param {string} high */
function bare(low, high) {
  const unit = high.split(NBSP)[1];
  return unit && low.endsWith(NBSP + unit) ? low.slice(0, -unit.length - 1) : low;
}

/** A repaired value; its unit only where it is not the one that was typed. @param {string} value @param {string} [was] */
function readable(value, was = '') {
  const { figure: f, unit } = typed(value);
  return was.endsWith(` ${unit}`) || !/\s/.test(was.trim()) ? f : joined({ figure: f, unit });
}

/**
 * What is said of a link or file that could not be opened.
 * @param {Fault} fault
 * @param {'link' | 'file'} what
 * @returns {Message}
 */
export function broughtWords(fault, what) {
  const kept = 'This is the plan that was open; nothing is lost.';
  const tail = fault.typed ? `“…${fault.typed.replace(/^…/, '')}”` : '';
  switch (fault.code) {
    case 'cut':
      return { head: `That ${what} is cut short:`, pieces: [`it ends${tail ? ` at ${tail}` : ''} without its check letters. ${kept}`] };
    case 'altered':
      return { head: `That ${what} was altered:`, pieces: [`its check letters do not fit what stands before them. ${kept}`] };
    case 'newer':
      return { head: 'Made by a newer version:', pieces: [`this page cannot read that ${what} yet; reload it where there is a signal. ${kept}`] };
  }
  return { head: `That ${what} cannot be read:`, pieces: [`${fault.words || (tail ? `it goes wrong at ${tail}` : 'it is no plan')}. ${kept}`] };
}

const LEFT_OUT = /** @type {Record<string, string>} */ ({
  notes: 'notes',
  history: 'the steps before',
  ticks: 'ticks',
  names: 'names of build-ups',
});

/** @param {string} code */
export function leftOutWords(code) {
  return LEFT_OUT[code] ?? code;
}

/**
 * A frame in a few words: "2×4 studs", "studs 45 × 95", "two rows of 2×4 studs".
 * @param {{frameKind: string, frameName: string}} gap
 * @param {Units} units
 */
export function frameWords({ frameKind, frameName }, units) {
  if (frameKind === 'none') return 'no frame';
  const trade = /\((\d+)x(\d+)\)/.exec(frameName) ?? (units === 'us' ? inTrade(frameName) : null);
  const sizes = /(\d+) x (\d+)/.exec(frameName);
  const size = units === 'us' && trade ? `${trade[1]}${TIMES}${trade[2]} ` : '';
  const after = !size && sizes ? ` ${sizes[1]} ${TIMES} ${sizes[2]}` : '';
  switch (frameKind) {
    case 'wood':
      return `${size}studs${after}`;
    case 'staggered':
      return `staggered ${size}studs${after}`;
    case 'double':
      return /steel/i.test(frameName) ? `two rows of steel studs` : `two rows of ${size}studs${after}`;
    case 'joist':
      return /I-joist/i.test(frameName) ? 'I-joists' : `${size}joists${after}`;
    case 'bare':
      return 'on the masonry';
  }
  const depth = /(\d+) mm/.exec(frameName);
  return (
    frameName.charAt(0).toLowerCase() +
    (depth
      ? frameName.slice(1, depth.index).trim() + (units === 'us' ? ` ${inches(Number(depth[1]) / 25.4, 8)}${NBSP}in` : ` ${depth[1]}${NBSP}mm`)
      : frameName.slice(1))
  );
}

/** The trade's names of dressed sizes, mm. */
const DRESSED = /** @type {Record<string, [string, string, string]>} */ ({
  '38 x 64': ['', '2', '3'],
  '38 x 89': ['', '2', '4'],
  '38 x 140': ['', '2', '6'],
  '38 x 184': ['', '2', '8'],
  '38 x 235': ['', '2', '10'],
  '38 x 286': ['', '2', '12'],
});

/** @param {string} name */
function inTrade(name) {
  const found = /\d+ x \d+/.exec(name);
  return found ? (DRESSED[found[0]] ?? null) : null;
}

/** @param {string} name */
export function fillWords(name) {
  for (const word of ['wool', 'cellulose', 'polyester']) if (name.toLowerCase().includes(word)) return word;
  return name ? 'batt' : '';
}

/**
 * How a leaf is held: "clips 24 × 48 in", "channel 24 in", "screwed".
 * @param {HeldReport} held
 * @param {Ctx} ctx
 */
export function heldWords(held, ctx) {
  if (held.kind === 'clip' && held.rows && held.along) {
    const rows = valueShown(held.rows, ctx);
    const along = valueShown(held.along, ctx);
    return rows.unit === along.unit ? `clips ${rows.figure} ${TIMES} ${joined(along)}` : `clips ${joined(rows)} ${TIMES} ${joined(along)}`;
  }
  if (held.kind === 'channel') return held.rows ? `channel ${text(held.rows, ctx)}` : 'channel';
  return held.kind === 'untied' ? 'not tied' : 'screwed';
}

/**
 * The two lines of a gap's row.
 * @param {GapReport} gap
 * @param {Ctx} ctx
 */
export function gapWords(gap, ctx) {
  const soft = ['clip', 'channel'];
  const held = soft.includes(gap.near.kind) ? gap.near : soft.includes(gap.far.kind) ? gap.far : gap.near.kind === 'untied' ? gap.near : gap.far;
  const screws = [gap.near, gap.far].flatMap((h) => (h.screws?.origin === 'typed' ? [text(h.screws, ctx)] : []));
  const both = soft.includes(gap.near.kind) && soft.includes(gap.far.kind) ? ', both sides' : '';
  const fill = fillWords(gap.fillName);
  return {
    held: gap.frameKind === 'none' ? 'no frame' : heldWords(held, ctx) + both + (screws.length ? `, screws ${[...new Set(screws)].join(' and ')}` : ''),
    frame: [gap.frameKind === 'none' ? '' : frameWords(gap, ctx.units), fill ? `${fill}${gap.fillDepth ? ` ${text(gap.fillDepth, ctx)}` : ''}` : 'empty']
      .filter(Boolean)
      .join(', '),
  };
}

/**
 * The name of a leaf by its place.
 * @param {number} leaf
 * @param {number} count
 */
export function leafWords(leaf, count) {
  if (leaf === 0) return 'Room side';
  if (leaf === count - 1) return 'Far side';
  return count === 3 ? 'Middle leaf' : leaf === 1 ? 'Second leaf' : 'Third leaf';
}

/** @param {string} join */
export function joinWords(join) {
  return join === 'glue' ? 'glued' : join === 'film' ? 'damping film' : 'screwed';
}

/**
 * Why a screw is as long as it is, or why there is none.
 * @param {string} why
 * @param {Units} units
 */
export function screwWords(why, units) {
  const us = units === 'us';
  switch (why) {
    case 'wood':
      return `boards and ${us ? '5/8' : '16'}${NBSP}${us ? 'in' : 'mm'} into wood`;
    case 'steel':
    case 'channel':
      return `boards and ${us ? '3/8' : '10'}${NBSP}${us ? 'in' : 'mm'} past steel`;
    case 'masonry':
      return 'fixed to masonry';
    case 'noFrame':
      return 'nothing to screw to';
    case 'tooLong':
      return 'longer than any sold';
    case 'touches':
      return 'would reach the frame';
  }
  return '';
}

/**
 * A load's words beside its figure.
 * @param {string} state
 * @param {Value | null} rating
 * @param {Ctx} ctx
 */
export function stateWords(state, rating, ctx) {
  const limit = rating ? text(rating, ctx) : '';
  switch (state) {
    case 'over':
      return limit ? `above the ${limit} rating` : 'above the rating';
    case 'close':
      return `90 to 100${NBSP}%`;
    case 'holds':
      return `40 to 90${NBSP}%`;
    case 'under':
      return `below 40${NBSP}%: too stiff to isolate`;
    case 'unrated':
      return 'no rating typed';
  }
  return 'nothing hangs on clips';
}

/** What plays. */
export const PLAYS = /** @type {Record<string, string>} */ ({
  band: 'band',
  drums: 'drums',
  drumsLight: 'light drums',
  bass: 'bass guitar',
  guitar: 'guitar',
  singing: 'singing',
  piano: 'piano',
  monitors: 'monitors',
  speech: 'talking',
});

/** Who is beyond. */
export const LISTENS = /** @type {Record<string, string>} */ ({
  sleeper: 'sleeper',
  living: 'people awake',
  studio: 'a recording',
});

/**
 * What of a source lies in an octave, or all of it.
 * @param {string | undefined} source
 * @param {number} [hz]
 */
function partOf(source = '', hz = 1000) {
  const drums = source === 'drums' || source === 'drumsLight';
  if ((drums || source === 'band') && hz < 90) return 'the kick drum';
  if (drums) return hz < 180 ? 'kick drum and toms' : 'the drums';
  if (source === 'band') return hz < 180 ? 'bass and drums' : 'the band';
  if (source === 'bass') return 'the bass';
  if (source === 'monitors') return hz < 180 ? 'the bass of the monitors' : 'what the monitors play';
  if (source === 'speech') return 'talking';
  return `the ${PLAYS[source] ?? 'sound'}`;
}

/**
 * From about 80 dB at 63 Hz on a sound is felt as well as heard (common practice);
 * what a listener is left with there is under 60.
 * @param {Record<string, number>} args
 */
function isFelt({ by = 0, hz = 0 }) {
  return hz < 90 && by >= 25;
}

/** @param {string | undefined} beyond */
function whereWords(beyond = '') {
  const place = beyond.trim().replace(/^the /i, '');
  return place ? `in the ${place}` : 'beyond';
}

/** What is left out of account where a source also drives the floor. @param {string} source */
export function floorWords(source) {
  return `Through the air; ${['band', 'drums', 'drumsLight'].includes(source) ? 'the pedal through the floor' : 'what shakes the floor itself'} is not counted.`;
}

const FAMILIES = /** @type {Record<string, string>} */ ({
  'single panel': 'single panels',
  'window single': 'single panes',
  'window double': 'windows of two panes',
  'wall block bare': 'bare block walls',
  'wall block lined': 'lined block walls',
  'wall brick': 'brick walls',
  'floor concrete': 'concrete floors',
  'wall wood single': 'walls of wood studs',
  'wall wood single RC': 'walls of wood studs with resilient channel',
  'wall wood staggered': 'walls of staggered studs',
  'wall wood staggered RC': 'walls of staggered studs with resilient channel',
  'wall wood double': 'walls of two rows of wood studs',
  'wall steel single': 'walls of light steel studs',
  'wall steel double': 'walls of two rows of steel studs',
  'wall steel loadbearing': 'walls of load-bearing steel studs',
  'wall steel loadbearing RC': 'walls of load-bearing steel studs with resilient channel',
  'floor wood joist direct': 'joist ceilings without channel',
  'floor wood joist furring': 'joist ceilings on wood furring',
  'floor wood joist RC': 'joist ceilings on resilient channel',
  'floor steel joist RC': 'steel joist ceilings on resilient channel',
  'floor steel joist triple-leaf': 'steel joist ceilings of three leaves',
});

/** A family of tests in words. @param {string} family */
export function familyWords(family) {
  return FAMILIES[family] ?? family;
}

const WIDEST = /** @type {Record<string, string>} */ ({
  clip: 'how stiff the clips are',
  film: 'how stiff the damping film is',
  board: 'how stiff the boards are',
  fill: 'how hard air moves through the fill',
});

/** The input that widens the spread most. @param {string} input */
export function widestWords(input) {
  return WIDEST[input] ?? input;
}

/**
 * One step of the ladder in a few words.
 * @param {import('./types.d.ts').StepReport[]} steps
 * @param {number} i
 * @param {Ctx} ctx
 */
export function stepWords(steps, i, ctx) {
  const step = steps[i];
  const board = step.board ? briefOf(step, ctx) : '';
  const edited = ctx.report?.leaf ?? 0;
  const last = (ctx.report?.leaves.length ?? 2) - 1;
  const side = step.leaf === edited ? '' : step.leaf === 0 ? `, room${NBSP}side` : step.leaf === last ? `, far${NBSP}side` : '';
  switch (step.rung) {
    case 'bare':
      return 'One board a side';
    case 'fill':
      return `+ ${fillWords(step.fill ?? '') || 'fill'}${step.depth ? ` ${text(step.depth, ctx)}` : ''}`;
    case 'fixing':
      return step.fixing === 'clip' ? '+ clips' : step.fixing === 'channel' ? '+ channel' : step.fixing === 'untied' ? 'not tied to it' : 'screwed on';
    case 'frame':
      return /two rows/i.test(step.frame ?? '') ? 'two stud rows' : /stagger/i.test(step.frame ?? '') ? 'staggered studs' : inSentence(step.frame ?? '');
    case 'board':
      return `+ ${nth(steps, i)}${board}${side}`;
    case 'leaf':
      return '+ a leaf in the gap';
    case 'more':
    case 'far':
      return `+ ${nth(steps, i)}${board}${side}`;
    case 'twoRows':
      return 'two stud rows instead';
    case 'clips':
      return '+ clips';
  }
  return step.rung;
}

/**
 * "second " where the same board was hung on that leaf before.
 * @param {import('./types.d.ts').StepReport[]} steps
 * @param {number} i
 */
function nth(steps, i) {
  const before = steps.slice(0, i).filter((other) => other.where !== 'open' && other.board === steps[i].board && other.leaf === steps[i].leaf).length;
  return before > 0 ? `${ORDER[before] ?? 'another'} ` : '';
}

const ORDER = ['', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/**
 * A step's board, as the report has it if it stands there.
 * @param {import('./types.d.ts').StepReport} step
 * @param {Ctx} ctx
 */
function briefOf({ board, short = '', nominal = '' }, ctx) {
  const layers = [...(ctx.report?.leaves.flatMap((leaf) => leaf.layers) ?? []), ...(ctx.report?.refLayers ?? [])];
  const layer = layers.find((y) => y.board === board) ?? { short, nominal };
  const name = inSentence(boardName(layer, ctx.units, /gypsum/i.test(short) ? 'brief' : 'row'));
  return name.replace('type X', `type${NBSP}X`);
}
