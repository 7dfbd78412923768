// Codes of the whole room into sentences: who hears what, by which way, what
// the next money does. The other half of words.js.

import { playing } from './edit-room.js';
import { boardName, decibels, hertz, inSentence, money, NBSP, number, percent, shown, span, text, UNKNOWN } from './format.js';
import { LISTENS, PLAYS } from './words.js';

/**
 * @typedef {import('./types-room.d.ts').House} House
 * @typedef {import('./types-room.d.ts').Heard} Heard
 * @typedef {import('./types-room.d.ts').Path} Path
 * @typedef {import('./types-room.d.ts').Change} Change
 * @typedef {import('./types-room.d.ts').Fit} Fit
 * @typedef {import('./types-room.d.ts').Air} Air
 * @typedef {import('./types-room.d.ts').FaceReport} FaceReport
 * @typedef {import('./types-room.d.ts').OpeningReport} OpeningReport
 * @typedef {import('./words.js').Ctx} Ctx
 * @typedef {{answer: string, text: string}} Answer
 */

/** What a house does. */
export const NOISES = /** @type {Record<string, string>} */ ({ tv: 'television', kitchen: 'kitchen', talk: 'talk', children: 'children playing' });

/** What sounds, here or there. @param {string} id */
export function soundName(id) {
  return PLAYS[id] ?? NOISES[id] ?? id;
}

/** Kinds of opening: in full, and as a chip beside its like. */
const KINDS = /** @type {Record<string, [name: string, chip: string]>} */ ({
  doorHollow: ['hollow door', 'hollow'],
  doorSolid: ['solid door', 'solid'],
  doorHeavy: ['heavy solid door', 'heavy'],
  doorSteel: ['steel door', 'steel'],
  doorFoam: ['steel door, foam inside', 'steel, foam'],
  doorFilled: ['filled door', 'filled'],
  doorAcoustic: ['acoustic door', 'acoustic'],
  doorTwoHollow: ['two hollow doors, lobby', 'two hollow'],
  doorTwo: ['two doors, lobby', 'two, lobby'],
  hatch: ['hatch', 'hatch'],
  windowSingle: ['single pane', 'single pane'],
  windowLaminated: ['laminated pane', 'laminated'],
  windowUnit: ['sealed double pane', 'double pane'],
  windowTwo: ['two panes apart', 'two panes'],
  windowWide: ['two panes far apart', 'wide apart'],
  duct: ['duct', 'duct'],
  vent: ['vent, straight through', 'vent'],
  box: ['electrical box', 'one side'],
  boxBack: ['boxes back to back', 'back to back'],
  boxSurface: ['box on the surface', 'on the surface'],
  light: ['recessed light', 'recessed'],
  pipe: ['pipe', 'pipe'],
  crackEdge: ['crack along the edge', 'along the edge'],
  crack: ['crack', 'in the wall'],
  hole: ['hole', 'hole'],
});

/** @param {string} kind */
export function kindName(kind) {
  return KINDS[kind]?.[0] ?? kind;
}

/** @param {string} kind */
export function kindChip(kind) {
  return KINDS[kind]?.[1] ?? kind;
}

/** Groups in the order they are offered. */
export const GROUPS = /** @type {[id: string, name: string][]} */ ([
  ['door', 'Doors'],
  ['window', 'Windows'],
  ['duct', 'Ducts and vents'],
  ['box', 'Electrical boxes'],
  ['light', 'Lights'],
  ['pipe', 'Pipes'],
  ['crack', 'Cracks'],
  ['hole', 'Holes'],
]);

/** A thing of a group in one word. */
const ONE = /** @type {Record<string, string>} */ ({
  door: 'door',
  window: 'window',
  duct: 'duct',
  box: 'box',
  light: 'light',
  pipe: 'pipe',
  crack: 'crack',
  hole: 'hole',
});

/** @param {string} group @param {string} [kind] */
export function oneOf(group, kind) {
  return kind === 'hatch' || kind === 'vent' ? kind : (ONE[group] ?? group);
}

/**
 * How an opening is closed.
 * @param {string} seal
 * @param {string} group
 */
export function sealWords(seal, group) {
  switch (seal) {
    case 'none':
      return group === 'door' || group === 'window' ? 'no seal' : group === 'duct' ? 'open' : group === 'box' ? 'open back' : 'open';
    case 'sides':
      return 'sides, head';
    case 'all':
      return group === 'window' ? 'sealed' : 'and sill';
    case 'allSoft':
      return 'and lined lobby';
    case 'shut':
      return group === 'door' ? 'caulked shut' : group === 'box' ? 'airtight' : 'sealed';
    case 'putty':
      return 'putty pad';
    case 'bare':
      return 'bare';
    case 'lined':
      return 'lined';
    case 'box':
      return 'lined, baffle box';
    case 'boxes':
      return 'box at each leaf';
    case 'boxed':
      return 'boxed over';
  }
  return seal;
}

/** What a surface may share with the house. */
export const FLANKS = /** @type {Record<string, [chip: string, way: string]>} */ ({
  joists: ['joists running through', 'Joists shared'],
  plate: ['studs on one plate', 'Plate shared'],
  slab: ['one slab', 'Slab shared'],
  separate: ['a structure of its own', 'Structure'],
});

/** A face by its letter and kind: "wall A", "ceiling". @param {FaceReport | undefined} face */
export function faceWords(face) {
  if (!face) return '';
  return face.name || `${face.kind} ${face.letter}`;
}

/** @param {string} s */
export function capital(s) {
  return s.charAt(0).toUpperCase() + s.slice(1);
}

/** @param {string} place */
function inThe(place) {
  return place ? `in the ${place.replace(/^the /i, '')}` : 'beyond';
}

/**
 * The letters of a plan's surfaces: the one in its name, or by its place.
 * @param {FaceReport} face
 */
export function letterOf(face) {
  return / (\w)$/.exec(face.name)?.[1] ?? face.letter;
}

/**
 * One way in a few words: "Crack under door", "Wall to bedroom".
 * @param {House} house
 * @param {Path} path
 */
export function wayWords(house, path) {
  const face = house.faces?.[path.surface];
  const opening = path.opening >= 0 ? face?.openings?.[path.opening] : undefined;
  const thing = opening ? oneOf(opening.group, opening.kind) : '';
  switch (path.way) {
    case 'crack':
      return opening?.group === 'door' ? `Crack under ${thing}` : opening?.group === 'crack' ? capital(kindName(opening.kind)) : `Crack round ${thing}`;
    case 'hole':
      return opening?.group === 'hole' || !thing ? 'Hole' : opening?.kind === 'boxSurface' ? 'Box, cable hole' : capital(thing);
    case 'leaf':
      return opening?.group === 'door' ? `${capital(thing)} leaf` : `${capital(thing)}${opening && opening.count > 1 ? ` × ${opening.count}` : ''}`;
    case 'flank':
      return FLANKS[flankOf(house, path.surface)]?.[1] ?? 'Structure shared';
  }
  if (face?.kind === 'wall') return face.beyond ? `Wall to ${face.beyond}` : 'Wall';
  return capital(face?.kind ?? '');
}

/** What of the plan the sentences need beside the report. @type {WeakMap<House, {flanks: string[], sources: string[]}>} */
const plans = new WeakMap();

/** @param {House} house @param {import('./types.d.ts').Plan} plan */
export function tellPlan(house, plan) {
  plans.set(house, { flanks: plan.surfaces.map((s) => s.flank ?? ''), sources: playing(plan).map((p) => p.source) });
}

/** @param {House} house @param {number} surface */
function flankOf(house, surface) {
  return plans.get(house)?.flanks[surface] ?? '';
}

/** All that plays, in the order of the plan. @param {House} house @param {Heard} heard */
function sourcesOf(house, heard) {
  return heard.source ? [heard.source] : (plans.get(house)?.sources ?? (heard.each ?? []).map((e) => e.source));
}

/**
 * What of a source lies in an octave, or all of it.
 * @param {string} source
 * @param {number} hz
 */
function partOf(source, hz) {
  const drums = source === 'drums' || source === 'drumsLight';
  if ((drums || source === 'band') && hz < 90) return 'the kick drum';
  if (source === 'speech' || source === 'talk') return 'talk';
  if (source === 'children') return 'the children';
  return source === 'monitors' ? 'the music' : `the ${soundName(source)}`;
}

/** Plural words take "are". @param {string} what @param {string} verb */
function is(what, verb) {
  const plural = /(drums|children)$/.test(what) && !what.includes('kick');
  return `${what} ${plural ? 'are' : 'is'} ${verb}`;
}

/**
 * The source that is named: of several the one with a kick drum.
 * @param {House} house
 * @param {Heard} heard
 */
function lead(house, heard) {
  const all = sourcesOf(house, heard);
  return all.find((s) => KICK.includes(s)) ?? all[0] ?? '';
}

/** Whether anything that plays has a kick drum. @param {House} house */
export function hasKick(house) {
  return (plans.get(house)?.sources ?? []).some((s) => KICK.includes(s));
}

const KICK = ['band', 'drums', 'drumsLight'];

/**
 * Who hears what in the space that is worst off.
 * @param {House} house
 * @returns {Answer | undefined}
 */
export function outWords(house) {
  const listed = (house.told.out ?? []).filter((h) => h.state !== 'noTarget');
  if (!house.told.out?.length) return { answer: 'Not yet.', text: 'Say what lies beyond the walls, and who is there.' };
  if (listed.length === 0) return { answer: 'Not yet.', text: 'Say what is beyond each face, and who is there: a sleeper, people awake, a recording.' };
  if (!sourcesOf(house, listed[0]).length) return { answer: 'Not yet.', text: 'Say what plays.' };
  const worst = listed.reduce((a, b) => (overOf(b) > overOf(a) ? b : a));
  const words = heardWords(house, worst);
  // What is felt elsewhere is worth the second sentence.
  const felt = listed.filter((h) => h !== worst && h.state === 'over' && h.felt).sort((a, b) => overOf(b) - overOf(a));
  if (felt.length === 0 || (worst.felt && worst.octave[worst.worst]?.hz < 90)) return words;
  return { ...words, text: `${words.text} ${capital(is(partOf(lead(house, felt[0]), 63), 'felt'))} ${inThe(house.spaces?.[felt[0].space] ?? '')}.` };
}

/** How much a level is over, in the octave that is most. @param {Heard} heard */
export function overOf(heard) {
  const by = heard.worst >= 0 ? (heard.octave[heard.worst]?.over ?? heard.overA) : heard.overA;
  return Math.max(by, heard.overA);
}

/**
 * The sentence for one space.
 * @param {House} house
 * @param {Heard} heard
 * @returns {Answer}
 */
export function heardWords(house, heard) {
  const place = inThe(house.spaces?.[heard.space] ?? '');
  const worst = heard.octave[heard.worst];
  const source = lead(house, heard);
  const air = heard.floorDriven ? 'through the air ' : '';
  switch (heard.state) {
    case 'over': {
      const felt = heard.felt && worst && worst.hz < 90;
      const what = partOf(source, worst?.hz ?? 1000);
      const by = worst && worst.over > 0 ? `${decibels(worst.over)}${NBSP}dB over at ${hertz(worst.hz)}` : `${decibels(heard.overA)}${NBSP}dB over`;
      return { answer: 'No.', text: `${capital(is(what, felt ? 'felt' : 'heard'))} ${place}, ${by}.${eachWords(heard, what)}` };
    }
    case 'mayOver':
      return { answer: 'Not yet.', text: `${capital(`${air}the mean holds ${place}`.trim())}, but single low notes may stand over.` };
    case 'within':
      return { answer: 'Yes.', text: `${capital(`${air}it is heard ${place}`)}, within the target.` };
    case 'notHeard':
      return { answer: 'Yes.', text: `${capital(`${air}nothing is heard ${place}`)}.` };
  }
  return { answer: 'Not yet.', text: `Say who is ${place}.` };
}

/**
 * "The band is heard, talking is not."
 * @param {Heard} heard
 * @param {string} said what the sentence before named
 */
function eachWords(heard, said) {
  const each = heard.each ?? [];
  const audible = each.filter((e) => e.word !== 'notHeard').map((e) => partOf(e.source, 1000));
  const silent = each.filter((e) => e.word === 'notHeard').map((e) => partOf(e.source, 1000));
  const first = audible.filter((w) => w !== said);
  const heardPart = first.length ? `${list(first)} ${first.length > 1 || /drums$|children$/.test(first[0]) ? 'are' : 'is'} heard` : '';
  const silentPart = silent.length ? `${list(silent)} ${silent.length > 1 || /drums$|children$/.test(silent[0]) ? 'are' : 'is'} not` : '';
  if (!heardPart && !silentPart) return '';
  return ` ${capital([heardPart, heardPart ? silentPart : silentPart && `${silentPart} heard`].filter(Boolean).join(', '))}.`;
}

/** "a, b and c". @param {string[]} words */
export function list(words) {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/**
 * What of the house is heard in the room.
 * @param {House} house
 * @returns {Answer}
 */
export function inWords(house) {
  const all = house.told.in ?? [];
  if (all.length === 0) return { answer: 'Not yet.', text: 'Say what the house does: a television, a kitchen, talk, children.' };
  const name = (/** @type {Heard} */ h) => `${partOf(h.source, 1000)} ${inThe(house.spaces?.[h.space] ?? '')}`;
  const bad = all.filter((h) => h.state === 'over');
  const may = all.filter((h) => h.state === 'mayOver');
  const good = all.filter((h) => h.state !== 'over' && h.state !== 'mayOver');
  const parts = [];
  if (bad.length) {
    const worst = bad.reduce((a, b) => (overOf(b) > overOf(a) ? b : a));
    parts.push(
      `${capital(name(worst))} ${worst.word === 'words' ? 'is heard in a take, its words too' : 'is heard in a take'}, ${decibels(overOf(worst))}${NBSP}dB over${bad.length > 1 ? `; ${bad.length - 1} more over` : ''}.`,
    );
  }
  if (may.length) parts.push(`The bass of ${list(may.map(name))} may stand over.`);
  if (good.length && (bad.length || may.length)) parts.push(`${capital(list(good.map(name)))} ${good.length > 1 ? 'hold' : 'holds'}.`);
  if (!parts.length) parts.push(`${capital(list(good.map(name)))} ${good.length > 1 ? 'stay' : 'stays'} within what a take allows.`);
  return { answer: bad.length ? 'No.' : may.length ? 'Not yet.' : 'Yes.', text: parts.join(' ') };
}

/** The row's word for how a level stands. @param {Heard} heard */
export function stateShort(heard) {
  switch (heard.state) {
    case 'over': {
      // Beside a level in dBA stands what that is over; else the octave that is.
      if (heard.overA >= 0.5) return `+${decibels(heard.overA)} over`;
      const by = `+${decibels(Math.max(overOf(heard), 0.5))}`;
      return heard.worst < 0 ? `${by} over` : `${by} at ${hertz(heard.octave[heard.worst].hz)}`;
    }
    case 'mayOver':
      return 'may be over';
    case 'within':
    case 'notHeard':
      return 'holds';
  }
  return 'no target';
}

const WORDS = /** @type {Record<string, string>} */ ({
  notHeard: 'not heard',
  faint: 'faint',
  kickOnly: 'kick only',
  heard: 'heard',
  words: 'words',
  loud: 'loud music',
});

/** What it is like there: "felt, heard". @param {House} house @param {Heard} heard */
export function likeWords(house, heard) {
  const kick = KICK.includes(lead(house, heard));
  const word = heard.word === 'kickOnly' && !kick ? 'bass only' : heard.word === 'loud' && heard.source ? 'loud' : (WORDS[heard.word] ?? heard.word);
  // Of what also shakes the floor nothing is ever called unheard.
  if (heard.word === 'notHeard' && heard.floorDriven) return 'not by air';
  return heard.felt && heard.word !== 'notHeard' ? `felt, ${heard.word === 'loud' ? 'loud' : word}` : word;
}

/**
 * The weakest way, for the room.
 * @param {House} house
 * @returns {Answer | undefined}
 */
export function weakWords(house) {
  const paths = [...(house.told.paths ?? [])].sort((a, b) => b.share - a.share);
  const first = paths[0];
  if (!first) return undefined;
  const face = house.faces?.[first.surface];
  const what =
    first.opening >= 0 ? inSentence(wayWords(house, first)).replace('under door', 'under the door') : first.way === 'flank' ? 'structure' : faceWords(face);
  const where = first.opening >= 0 || first.way === 'flank' ? ` of ${faceWords(face)}` : '';
  const named = /^(wall|ceiling|floor) \w$/.test(what) ? what : `the ${what}`;
  return {
    answer: `${capital(named)} is the weak path.`,
    text: `${percent(first.share)}${NBSP}% of what gets out goes that way${where ? `,${where.replace(' of', ' in')}` : ''}.`,
  };
}

/** What breaks the strategy at a face. @param {string} code @param {FaceReport} face */
export function breakWords(code, face) {
  return code === 'loneWeak'
    ? [`${capital(faceWords(face))} is the lone weak face.`, 'For its size it lets through far more than all the others.']
    : [`${capital(faceWords(face))} is lighter than its neighbours.`, 'It weighs less than three quarters of what they do.'];
}

/** Below which single notes ring. @param {Heard} heard */
export function schroederWords(heard) {
  if (!heard.schroeder) return '';
  return `Below ${hertz(Math.round(heard.schroeder / 10) * 10)} single notes ring in the room: only a range holds.`;
}

/**
 * What is left out, or leaned on, one sentence each.
 * @param {House} house
 * @param {Heard} heard
 * @param {boolean} inwards
 * @returns {string[]}
 */
export function heardNotes(house, heard, inwards) {
  const out = [];
  const place = inThe(house.spaces?.[heard.space] ?? '');
  if (inwards) out.push('Through the air only: footsteps are not counted.');
  else if (heard.floorDriven)
    out.push(
      `Through the air only: ${KICK.includes(lead(house, heard)) ? 'the pedal through the floor' : 'what shakes the floor itself'} is not counted. A riser on soft pads helps there; no wall does.`,
    );
  if (heard.leansOnFlank) out.push('It leans on flanking: with what the structure carries at its worse edge it would not hold.');
  if (heard.flankUnknown) out.push('Some walls do not say what they share with the house: what goes by the structure is not counted there.');
  if (heard.assumed && !inwards) out.push(`How large it is ${place} was not said: a small furnished room is taken.`);
  return out;
}

/** @param {Heard} heard */
export function peakWords(heard) {
  const o = heard.octave[4];
  const by = o ? Math.round(o.peak - o.level) : 10;
  return `These are means, held against the target. Peaks stand ${by}${NBSP}dB over them, and are what is heard or not.`;
}

/**
 * One change in a few words.
 * @param {Change} change
 * @param {Ctx} ctx
 * @param {House} house
 * @param {boolean} [placed] with the faces it is on
 */
export function changeWords(change, ctx, house, placed = true) {
  const where = placed ? facesWords(change.faces ?? [], house) : '';
  const on = where ? `, ${where}` : '';
  const t = change.text ?? {};
  const board = ctx.names?.[t.board] ?? (t.short ? boardName({ short: t.short, nominal: t.nominal ?? '', row: t.row }, ctx.units) : 'board');
  switch (change.code) {
    case 'seal':
      return `Seal the ${change.kind === 'hatch' ? 'hatch' : /^window/.test(change.kind ?? '') ? 'window' : 'door'} all round${on}`;
    case 'secondDoor':
      return `Second door, lobby${on}`;
    case 'solidDoor':
      return `Heavier door${on}`;
    case 'pad':
      return `Putty pads on the boxes${on}`;
    case 'caulk':
      return change.kind === 'pipe' ? `Seal round the pipe${on}` : change.kind === 'hole' ? `Close the hole${on}` : `Caulk the cracks${on}`;
    case 'box':
      return `Baffle box on the duct${on}`;
    case 'boxed':
      return `Box over the lights${on}`;
    case 'pane':
      return `Second pane, wide apart${on}`;
    case 'fill':
      return `Fill the gap${on}`;
    case 'board':
      return `+ ${inSentence(board)}${on}`;
    case 'clips':
      return `Hang it on clips${on}`;
    case 'frame':
      return `Two stud rows${on}`;
    case 'takeOff':
      return `Take the old board off${on}`;
    case 'cut':
      return `Cut what it shares${on}`;
    case 'apart':
      return `${capital(inSentence(board))} in its place${on}`;
  }
  return change.code + on;
}

/**
 * "wall B", "walls C, D", "ceiling E".
 * @param {string[]} letters
 * @param {House} house
 */
function facesWords(letters, house) {
  const faces = letters.map((l) => house.faces?.find((f) => f.letter === l));
  const kinds = new Set(faces.map((f) => f?.kind ?? 'wall'));
  const names = faces.map((f, i) => (f ? letterOf(f) : letters[i]));
  if (letters.length === 0) return '';
  const kind = kinds.size === 1 ? [...kinds][0] : 'faces';
  return `${kind}${kinds.size === 1 && letters.length > 1 ? 's' : ''} ${names.join(', ')}`;
}

/** "C, D". @param {Change} change @param {House} house */
export function lettersOf(change, house) {
  return (change.faces ?? []).map((l) => letterOf(house.faces?.find((f) => f.letter === l) ?? /** @type {any} */ ({ name: '', letter: l }))).join(', ');
}

/** What a change does to what is there, for its open row. @param {Change} change @param {Ctx} ctx */
export function doesWords(change, ctx) {
  const parts = [];
  if (change.mass && change.mass.v > 0) parts.push(`${text(change.mass, ctx)} heavier`);
  if (change.thick && Math.abs(change.thick.v) > 1e-4) parts.push(`the room loses ${text(change.thick, ctx)}`);
  if (change.clip) parts.push(`clips at ${text(change.clip, ctx)}`);
  return parts.length ? `${capital(parts.join(', '))}.` : '';
}

/** @param {number} db */
export function gain(db) {
  return Math.abs(db) < 0.05 ? '0' : `${db < 0 ? '\u2212' : '+'}${number(Math.abs(db), 1)}`;
}

/**
 * Why a change brings nothing.
 * @param {Change} change
 * @param {House} house
 * @param {string} worst the space that is worst off
 * @returns {string}
 */
export function whyWords(change, house, worst) {
  const a = change.args ?? {};
  switch (change.why) {
    case 'small':
      return `its share is ${a.share === undefined ? 'small' : `${percent(a.share)}${NBSP}%: under 0.2${NBSP}dB`}`;
    case 'masked':
      return `${byWords(change.by, house)} lets through ${a.times >= 1.5 ? `${number(a.times)} times more` : 'as much'}`;
    case 'elsewhere':
      return `it lies on no way to the ${worst || 'worst space'}`;
    case 'worse':
      return 'it would let through more';
    case 'same':
      return 'it changes next to nothing on its way';
    case 'full':
      return 'the gap is full already';
    case 'done':
      return 'it is done already';
    case 'over':
      return `${change.gain >= 0.05 ? `${number(change.gain, 1)}${NBSP}dB, but ` : ''}the clips would carry ${change.clip ? `${percent(change.clip.v)}${NBSP}%` : 'too much'}`;
  }
  return change.why ?? '';
}

/** What masks a change. @param {Path | undefined} by @param {House} house */
function byWords(by, house) {
  const face = by && house.faces?.[by.surface];
  if (!face) return 'another way';
  const opening = face.openings?.[by.opening];
  if (opening) return by.way === 'crack' && opening.group === 'door' ? 'the crack under the door' : `the ${oneOf(opening.group, opening.kind)}`;
  return by.way === 'flank' ? 'the structure' : faceWords(face);
}

/** @param {number} kelvin @param {Ctx} ctx a difference of temperature */
function degrees(kelvin, ctx) {
  return ctx.units === 'us' ? `${number(kelvin * 1.8)}${NBSP}°F` : `${number(kelvin)}${NBSP}°C`;
}

/** A flow of air. @param {number} v m³/s @param {Ctx} ctx */
export function flow(v, ctx) {
  return ctx.units === 'us' ? `${number(v * 2118.88)}${NBSP}cfm` : `${number(v * 1000)}${NBSP}L/s`;
}

/** Power. @param {number} w @param {Ctx} ctx */
export function power(w, ctx) {
  return ctx.units === 'us' ? `${number(w)}${NBSP}W (${number(Math.round((w * 3.412) / 10) * 10)}${NBSP}Btu/h)` : `${number(w)}${NBSP}W`;
}

/** @param {number} minutes */
function duration(minutes) {
  const m = Math.round(minutes);
  return m < 120 ? `${m} minute${m === 1 ? '' : 's'}` : `${number(m / 60, 1)} hours`;
}

/** @param {number} ppm */
export function ppm(ppm) {
  return `${number(Math.round(ppm / 10) * 10)}${NBSP}ppm`;
}

/**
 * What the people breathe, in one sentence.
 * @param {Air} air
 * @param {Ctx} ctx
 * @param {{people: number, minutes: number}} use
 * @returns {Answer}
 */
export function airWords(air, ctx, use) {
  const people = `${number(use.people)} ${use.people === 1 ? 'person' : 'people'}`;
  if (!use.people || !air.end) return { answer: 'Not yet.', text: 'Say how many people play, and for how long.' };
  if (air.sealed || air.given === 0) {
    const stale = air.minutesTo > 0 && air.minutesTo < use.minutes ? `, stale after ${Math.round(air.minutesTo)}` : '';
    return {
      answer: 'No.',
      text: `Sealed, ${people} breathe ${ppm(air.end)} of carbon dioxide after ${duration(use.minutes)}${stale}. Bring in ${flow(air.want, ctx)}.`,
    };
  }
  if (air.tooLittle)
    return {
      answer: 'Not yet.',
      text: `${flow(air.given, ctx)} of fresh air is too little for ${people}: ${ppm(air.end)} after ${duration(use.minutes)}. ${flow(air.want, ctx)} holds it.`,
    };
  return { answer: 'Yes.', text: `${flow(air.given, ctx)} of fresh air is enough for ${people}: ${ppm(air.end)} after ${duration(use.minutes)}.` };
}

/** How warm it gets. @param {Air} air @param {Ctx} ctx */
export function heatWords(air, ctx) {
  if (!air.heat) return '';
  const now =
    air.given > 0
      ? `with this air ${degrees(air.rise, ctx)} warmer after an hour`
      : `${degrees(air.riseSealed, ctx)} warmer after an hour with nothing carried away`;
  return `${power(air.heat, ctx)} of people, lamps and amplifiers make it ${now}.${air.cooling > 0 ? ` Cooling wanted: ${power(air.cooling, ctx)}.` : ''}`;
}

/** The duct that the air wants. @param {Air} air @param {Ctx} ctx */
export function ductWords(air, ctx) {
  if (!air.want) return '';
  return `A quiet duct each way is ${joinedLength(air.ductRound, ctx)} round (${areaSmall(air.ductArea, ctx)}).`;
}

/** @param {number} m @param {Ctx} ctx */
function joinedLength(m, ctx) {
  return ctx.units === 'us' ? `${number(m / 0.0254, 1)}${NBSP}in` : `${number(m * 1000)}${NBSP}mm`;
}

/** @param {number} m2 @param {Ctx} ctx */
function areaSmall(m2, ctx) {
  return ctx.units === 'us' ? `${number(m2 / 0.0254 ** 2)}${NBSP}in²` : `${number(m2 * 1e4)}${NBSP}cm²`;
}

/**
 * A measurement beside its prediction.
 * @param {Fit} fit
 * @param {House} house
 * @returns {Answer}
 */
export function fitWords(fit, house) {
  const place = inThe(house.spaces?.[fit.space] ?? '');
  if (!fit.got?.length) return { answer: 'Not yet.', text: `Type what you read in the room and ${place}.` };
  const off = fit.residual;
  const more = off > 0 ? 'less' : 'more';
  const by = `${number(Math.abs(off), 1)}${NBSP}dB`;
  const head = Math.abs(off) < 0.5 ? 'It stops what was predicted.' : `It stops ${by} ${more} than predicted.`;
  const spreadOf = `±${decibels(fit.spread)}${NBSP}dB from here on, ±${decibels(fit.prior)} before.`;
  if (fit.unlikely && fit.path < 0)
    return { answer: head, text: `That is more than the spreads of both allow, and no single way explains it: read again. ${spreadOf}` };
  const path = house.told.paths?.[fit.path];
  if (!path) return { answer: head, text: `Within what both may be off by. ${spreadOf}` };
  const way = inSentence(wayWords(house, path)).replace('under door', 'under the door');
  return {
    answer: head,
    text: `What fits best: the ${way} in ${faceWords(house.faces?.[path.surface])} lets through ${number(fit.raised, 0)}${NBSP}dB more than it should. ${spreadOf}`,
  };
}

/** The room's sizes when all is up. @param {import('./types-room.d.ts').Shape} shape @param {Ctx} ctx */
export function shapeWords(shape, ctx) {
  const of = (/** @type {number} */ m) => span(m, ctx.units);
  const out = [`Finished inside: ${of(shape.insideLength)} × ${of(shape.insideWidth)}, ${of(shape.insideHeight)} high.`];
  if (shape.lostFloor > 0) {
    const { figure, unit } = shown('area', shape.lostFloor, ctx);
    out.push(`It costs ${figure}${NBSP}${unit} of floor.`);
  }
  const left = (/** @type {number} */ m) => `${ctx.units === 'us' ? `${number(Math.abs(m) / 0.0254)}${NBSP}in` : `${number(Math.abs(m) * 1000)}${NBSP}mm`}`;
  if (shape.heightLeft < 0) out.push(`The ceiling is ${left(shape.heightLeft)} under what codes ask of a habitable room.`);
  else
    out.push(
      `The ceiling clears what codes ask by ${left(shape.heightLeft)}`.concat(
        shape.standLeft < 0 ? `, but a tall cymbal stand wants ${left(shape.standLeft)} more.` : `, a tall cymbal stand by ${left(shape.standLeft)}.`,
      ),
    );
  return out;
}

/** Gap of a crack as it is said: "1/4 in", "6 mm". @param {number} m @param {Ctx} ctx */
export function gapSize(m, ctx) {
  if (ctx.units === 'si') return `${number(m * 1000, Number.isInteger(Math.round(m * 1e5) / 100) ? 0 : 1)}${NBSP}mm`;
  const { figure, unit } = shown('length', m, ctx);
  return figure + NBSP + unit;
}

/** A cost in decibels: "4 dB", "under 0.1 dB". @param {number} db */
export function costs(db) {
  if (db < 0.05) return `0${NBSP}dB`;
  return `${db < 0.95 ? number(db, 1) : decibels(db)}${NBSP}dB`;
}

/** @param {Heard} heard */
export function criterion(heard) {
  const nc = heard.ncOutside ? (heard.nc < 20 ? 'NC under 15' : 'NC over 65') : `NC${NBSP}${decibels(heard.nc)}`;
  const by = heard.octave[heard.ncBy];
  return `${nc}${by ? ` by ${hertz(by.hz)}` : ''}, NR${NBSP}${decibels(heard.nr)}`;
}

export { LISTENS, money, PLAYS, UNKNOWN };
