// How much the wall stops: the curve with its likely range, the ratings, how
// far they may be off and why, and in plain words what would change them.

import { html, nothing, svg } from 'lit-html';
import { curveTable, curveView } from '../draw/curve.js';
import { ladderView, nextSteps } from '../draw/ladder.js';
import * as edit from '../edit.js';
import { boardName, decibels, hertz, joined, leafName, MINUS, NBSP, shown } from '../format.js';
import { counted, familyWords, widestWords } from '../words.js';
import { nearestView } from './nearest.js';
import { floorLine, needChoice, needLine } from './need.js';
import { noteTaps } from './note.js';
import { rich, tap } from './text.js';
import { verdict } from './verdict.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types.d.ts').Report} Report
 * @typedef {import('../types.d.ts').SoundReport} SoundReport
 * @typedef {import('../types.d.ts').Sentence} Sentence
 * @typedef {{words: string, offer?: {tap: string, edit: () => import('../edit.js').Edit | undefined}}} Said
 */

/** From here on the reasons have room for their second clause, px. */
const ROOMY = 344;

/**
 * @param {App} app
 * @param {number} [width] of the place the curve stands in, px
 */
export function sound(app, width = app.width) {
  const { report } = app;
  if (!report) return nothing;
  const s = report.sound;
  return html`<section class="sound" aria-label="Sound">
    ${app.wide ? [verdict(app, 'sound'), needChoice(app)] : nothing}
    ${s ? [curve(app, report, s, width), app.wide ? floorLine(app) : needLine(app), further(app, width), sentences(app, s), ratings(report, s), curveTable(s, report), noteTaps(app)] : nothing}
  </section>`;
}

/** What the scale of the ladder takes, px. */
const SPAN = { phone: 76, desk: 228 };

/**
 * What is worked out once typing rests: the ladder and the nearest test. Until
 * the new ones come, the last of this surface stand.
 * @param {App} app
 * @param {number} width
 */
function further(app, width) {
  const known = app.further?.surface === app.surface.id ? app.further : undefined;
  const single = (app.report?.leaves.length ?? 0) < 2;
  const steps = known?.ladder ?? [];
  const ratingIs = app.report?.ratingIs ?? 'STC';
  const open = app.wide ? nextSteps(steps, app.ctx, rich) : nothing;
  const nearest = known?.nearest ? nearestView(app, known.nearest, app.wide && open !== nothing ? (width - 32) / 2 : width) : nothing;
  const ladder =
    single && !steps.length
      ? nothing
      : html`<h2 class="head part">What each step brings</h2>
          ${steps.length ? ladderView(steps, { span: app.wide ? SPAN.desk : SPAN.phone, ratingIs }, app.ctx, rich) : html`<p class="soft coming">…</p>`}`;
  if (!app.wide) return [ladder, nearest];
  return [
    nearest === nothing && open === nothing
      ? nothing
      : html`<div class=${open === nothing ? '' : 'beside'}>
          ${nearest}
          ${open === nothing ? nothing : html`<section aria-label="Next step"><h2 class="head part">Next step</h2>${open}</section>`}
        </div>`,
    ladder,
  ];
}

/**
 * @param {App} app
 * @param {Report} report
 * @param {SoundReport} s
 * @param {number} width
 */
function curve(app, report, s, width) {
  const { ratingIs, isReference } = report;
  const guess = app.wide ? '' : width < ROOMY ? 'Dotted below 50 Hz: a guess.' : 'Dotted below 50 Hz: beyond the tests, a guess.';
  return html`<div class="drawing-place">${curveView(s, { width, mode: app.wide ? 'desk' : 'phone', ratingIs, isReference })}</div>
    <ul class="legend ${app.wide ? 'wide' : ''}">
      <li>${swatch()}<span>yours, likely range</span></li>
      ${isReference ? nothing : html`<li>${dash()}<span>${rich(leafName(report.refLayers, app.units))}</span></li>`}
      ${app.wide ? html`<li>${dots()}<span>below 50${NBSP}Hz, beyond the tests</span></li>` : nothing}
    </ul>
    ${guess ? html`<p class="beyond soft">${guess.replace('50 Hz', `50${NBSP}Hz`)}</p>` : nothing}`;
}

function swatch() {
  return html`<svg class="drawing key" width="27" height="16" aria-hidden="true">
    ${svg`<rect class="d-wash c-edge" x="0.5" y="0.5" width="26" height="15" /><path class="c-curve" d="M0.5 8h26" />`}
  </svg>`;
}

function dash() {
  return html`<svg class="drawing key" width="29" height="16" aria-hidden="true">${svg`<path class="c-reference" d="M0 8h29" />`}</svg>`;
}

function dots() {
  return html`<svg class="drawing key" width="29" height="16" aria-hidden="true">${svg`<path class="c-dotted c-yours" d="M0 8h29" />`}</svg>`;
}

/**
 * The single numbers, the region's own first, each with how far it may be off.
 * @param {Report} report
 * @param {SoundReport} s
 */
function ratings(report, s) {
  const { built } = report.yours;
  const isRw = report.ratingIs === 'Rw';
  const stc = row('STC', s.stc, `±${decibels(s.spread.rating)}`);
  const rw = row('Rw (C; Ctr)', s.rw, `(${signed(s.c)}; ${signed(s.ctr)}) ±${decibels(s.spread.rating)}`);
  const wide = row('C and Ctr from 50 Hz up', `${signed(s.c50)}; ${signed(s.ctr50)}`, '', 'C and Ctr for 50 to 5000 hertz');
  return html`<h2 class="head part">In one number</h2>
    <dl class="figures">
      ${row('bass, 50 to 125 Hz', report.yours.bass ? decibels(report.yours.bass.v) : '–', `dB ±${decibels(s.spread.bass)}`)}
      ${isRw ? [rw, wide] : stc}
      ${built ? row('in a built room, likely', decibels(built.v), report.ratingIs) : nothing}
      ${isRw ? stc : [rw, wide]}
      ${row('OITC, for outside walls', s.oitc, `±${decibels(s.spread.rating)}`)}
    </dl>
    <p class="why soft">${rich(reason(s))}</p>`;
}

/**
 * @param {string} name
 * @param {number | string} figure
 * @param {string} after
 * @param {string} [label]
 */
function row(name, figure, after, label) {
  return html`<div><dt aria-label=${label ?? nothing}>${name.replace(/ Hz/, `${NBSP}Hz`)}</dt><dd><b>${figure}</b>${after ? html` ${after}` : nothing}</dd></div>`;
}

/** @param {number} v */
function signed(v) {
  return v < 0 ? `${MINUS}${-v}` : v > 0 ? `+${v}` : '0';
}

/**
 * Why the figures may be off by so much.
 * @param {SoundReport} s
 */
export function reason({ spread }) {
  const by = `±${decibels(spread.rating)}${NBSP}dB`;
  const family = familyWords(spread.family);
  const widest = spread.widest ? ` What widens it most is ${widestWords(spread.widest)}.` : '';
  if (spread.near) {
    const nearest = !family
      ? ''
      : spread.tests
        ? ` The nearest ${spread.tests === 1 ? 'is' : 'are'} ${counted(spread.tests, 'test')} of ${family}${spread.widest ? ' and their like' : ''}.`
        : ` The nearest are ${family}.`;
    return `${by}: no published test of this kind among our evidence.${nearest}${widest}`;
  }
  if (!spread.tests) return `${by}: what laboratories differ by among themselves, and what we do not know of the boards.${widest}`;
  // With too few of its own, those that are tied in the same way count too.
  return `${by}: that is how far off it was for ${counted(spread.tests, 'published test')} of ${family}${spread.widest ? ' and their like' : ''}.${widest}`;
}

/**
 * What is worth saying, with what can be done about it.
 * @param {App} app
 * @param {SoundReport} s
 */
function sentences(app, s) {
  const all = (s.sentences ?? []).map((sentence) => said(app, sentence)).filter((x) => x !== undefined);
  if (all.length === 0) return nothing;
  return html`<h2 class="head part">What would change it</h2>
    ${all.map(({ words, offer }) => html`<p class="say">${rich(words)}${offer ? html` ${tap(offer.tap, () => app.edit(offer.edit()))}` : nothing}</p>`)}`;
}

/**
 * "8 dB in the bass and 13 in STC"; empty where it brings nothing.
 * @param {number} bass
 * @param {number} rating
 * @param {string} ratingIs
 */
function gains(bass, rating, ratingIs) {
  const b = Math.round(bass);
  const r = Math.round(rating);
  const parts = [b > 0 ? `${b}${NBSP}dB in the bass` : '', r > 0 ? `${r} in ${ratingIs}` : ''].filter(Boolean);
  return parts.join(' and ');
}

/**
 * One sentence of the report in plain words.
 * @param {App} app
 * @param {Sentence} sentence
 * @returns {Said | undefined}
 */
export function said(app, { code, args = {}, text = {} }) {
  const { plan, buildUp } = app;
  const { bass = 0, rating = 0, leaf = 0, gap = 0 } = args;
  const brings = gains(bass, rating, app.report?.ratingIs ?? 'STC');
  switch (code) {
    case 'sameBoards':
      return dipsTogether(app, args, text);
    case 'thirdLeaf':
      return {
        words: brings
          ? `A leaf inside the gap makes two thin gaps of one deep one. Without it, in the same depth: ${brings} more.`
          : 'A leaf inside the gap makes two thin gaps of one deep one; here taking it out would bring nothing.',
        offer: brings ? { tap: 'Take it out', edit: () => edit.removeLeaf(plan, buildUp.id, leaf) } : undefined,
      };
    case 'channelBetween':
      return {
        words: `Channel between two layers of board hardly works: the gap behind it is too thin.${brings ? ` Without the boards behind it: ${brings} more.` : ''}`,
        offer: brings ? { tap: 'Take them off', edit: () => edit.removeLeaf(plan, buildUp.id, leaf) } : undefined,
      };
    case 'emptyGap': {
      const fill = app.catalog?.fills.find((f) => f.id === 'fibre') ?? app.catalog?.fills[0];
      const id = text.gap || buildUp.gaps?.[gap]?.id;
      if (!brings) return { words: 'The gap is empty; here filling it would bring nothing.' };
      return {
        words: `The gap is empty. A batt in it would bring ${brings}.`,
        offer: fill && id ? { tap: 'Fill it', edit: () => edit.setGap(plan, buildUp.id, id, { fill: fill.id }, 'gap filled') } : undefined,
      };
    }
    case 'closeScrews': {
      const apart = joined(shown('length', args.screws ?? 0, app.ctx));
      return {
        words: brings
          ? `Screws ${apart} apart tie the boards to the studs. At the usual spacing: ${brings} more.`
          : `Screws ${apart} apart tie the boards to the studs; here the usual spacing would bring nothing.`,
        offer: brings ? { tap: 'Space them as usual', edit: () => edit.usualScrews(plan, buildUp.id) } : undefined,
      };
    }
    case 'shorted': {
      const here = buildUp.gaps?.[gap];
      const side = here?.far.shorts ? 'far' : 'near';
      return {
        words: brings
          ? `Screws that reach the frame tie the leaf to it. Shorter ones would bring ${brings}.`
          : 'Screws reach the frame; here shorter ones would bring nothing.',
        offer:
          brings && here
            ? { tap: 'Shorten them', edit: () => edit.setHeld(plan, buildUp.id, here.id, side, { shorts: undefined }, 'screws clear of the frame') }
            : undefined,
      };
    }
  }
  return undefined;
}

/**
 * Two leaves that dip at one frequency, and another board that would part them.
 * @param {App} app
 * @param {Record<string, number>} args
 * @param {Record<string, string>} text
 * @returns {Said}
 */
function dipsTogether(app, args, text) {
  const { hz = 0, at = 0, leaf = 0 } = args;
  const where = `Boards on both sides of the gap dip together at ${hertz(hz)}`;
  const gain = Math.round(at);
  const name = text.short ? boardName({ short: text.short, nominal: text.nominal ?? '', row: text.row, thickness: args.thickness }, app.units) : '';
  if (gain < 1 || !name) return { words: `${where}.` };
  const inSentence = /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
  const ids = dipping(app, leaf, hz);
  const bass = Math.round(args.bass ?? 0);
  const price = bass < 0 ? `, and cost ${-bass}${NBSP}dB of bass` : '';
  return {
    words: `${where}: ${inSentence} on one side would fill the dip by ${gain}${NBSP}dB${price}.`,
    offer:
      text.board && ids.length
        ? {
            tap: 'Change it',
            edit: () => {
              let { plan } = app;
              for (const id of ids) plan = edit.changeBoard(plan, app.buildUp.id, id, text.board, name).plan;
              return { label: `${name} against the dip`, plan };
            },
          }
        : undefined,
  };
}

/**
 * The new layers of a leaf that dip at a frequency, by id.
 * @param {App} app
 * @param {number} leaf
 * @param {number} hz
 */
function dipping(app, leaf, hz) {
  const dip = (app.report?.sound?.dips ?? []).find((d) => d.leaf === leaf && Math.abs(d.hz / hz - 1) < 0.005);
  const layers = app.buildUp.leaves[leaf]?.layers ?? [];
  return (dip?.layers ?? [])
    .map((k) => layers[k])
    .filter((layer) => layer && !layer.there)
    .map((layer) => layer.id);
}
