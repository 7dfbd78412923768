// What each step brings: a table of the steps with their bass drawn on one
// scale. Each row draws its own dot and the risers that lead to it and on, so
// that a row may be as high as its words need.

import { html, nothing, svg } from 'lit-html';
import { decibels, differenceOf, money, NBSP, shown, UNKNOWN } from '../format.js';
import { stepWords } from '../words.js';
import { n } from './hatch.js';

/**
 * @typedef {import('../types.d.ts').StepReport} StepReport
 * @typedef {import('../types.d.ts').Value} Value
 * @typedef {import('../words.js').Ctx} Ctx
 * @typedef {object} Options
 * @property {number} span of the scale, px
 * @property {string} ratingIs "STC" or "Rw"
 */

/** The scale has a rule every so many dB, and at least two of them. */
const RULE = 10;
/** What a figure beside its dot takes, px. */
const FIGURE = 34;
const DOT = 6;
const HERE = 8;

/**
 * @typedef {object} Rung
 * @property {number} x of its dot, px from the scale's first rule
 * @property {number | undefined} from x of the step it is taken from
 * @property {number | undefined} on x of the riser to the next row
 * @property {number} radius
 * @property {boolean} down it stops less bass than the step it is taken from
 * @property {boolean} open not taken
 */

/**
 * Where every dot and riser stands. The steps that are not taken all start
 * from where you are, whatever stands between.
 * @param {StepReport[]} steps
 * @param {number} span px
 */
export function layout(steps, span) {
  const levels = steps.map((step) => step.bass?.v ?? Number.NaN).filter(Number.isFinite);
  const low = levels.length ? RULE * Math.floor(Math.min(...levels) / RULE) : 0;
  const high = Math.max(low + 2 * RULE, levels.length ? RULE * Math.ceil(Math.max(...levels) / RULE) : 0);
  /** @param {number} db */
  const x = (db) => (span * (db - low)) / (high - low);
  const rules = [];
  for (let db = low; db <= high; db += RULE) rules.push(x(db));
  const here = steps.findIndex((step) => step.where === 'here');
  const at = steps.map((step) => x(Number.isFinite(step.bass?.v) ? /** @type {Value} */ (step.bass).v : low));
  const rungs = steps.map((step, i) => {
    const open = step.where === 'open';
    const before = open ? here : i - 1;
    const next = steps[i + 1];
    /** @type {Rung} */
    const rung = {
      x: at[i],
      from: before >= 0 ? at[before] : undefined,
      on: next ? (open ? at[here] : at[i]) : undefined,
      radius: step.where === 'here' ? HERE : DOT,
      down: before >= 0 && decibels(step.bass?.v ?? 0) !== decibels(steps[before].bass?.v ?? 0) && at[i] < at[before],
      open,
    };
    return rung;
  });
  return { low, high, rules, rungs };
}

/**
 * @param {StepReport[]} steps
 * @param {Options} options
 * @param {Ctx} ctx
 * @param {(text: string) => unknown} rich sets fractions
 */
export function ladderView(steps, options, ctx, rich) {
  const { rules, rungs } = layout(steps, options.span);
  const perArea = steps.some((step) => step.cost?.kind === 'moneyRate');
  return html`<table class="ladder">
    <caption class="hid">What each step brings: bass, ${options.ratingIs} and cost of the step</caption>
    <thead>
      <tr>
        <th scope="col"><span class="hid">step</span></th>
        <th scope="col" class="bass">bass dB</th>
        <th scope="col">${options.ratingIs}</th>
        <th scope="col">${perArea ? html`${ctx.units === 'us' ? '/ft²' : '/m²'}` : 'cost'}</th>
      </tr>
    </thead>
    <tbody>
      ${steps.map((step, i) => {
        const name = stepWords(steps, i, ctx);
        return html`<tr class=${step.where}>
          <th scope="row" class=${rungs[i].down && rungs[i].x < FIGURE + 6 ? 'yields' : ''}>
            ${rich(name)}${step.where === 'here' ? html`<span class="hid">, where you are</span>` : step.where === 'open' ? html`<span class="hid">, not taken</span>` : nothing}
            <span class="spare soft">${[step.rating ? `${options.ratingIs}${NBSP}${decibels(step.rating.v)}` : '', costWords(step, i, ctx)].filter((said) => typeof said === 'string' && said).join(', ')}</span>
          </th>
          <td class="bass">${rungView(rungs[i], step, rules, ctx)}</td>
          <td>${step.rating ? decibels(step.rating.v) : UNKNOWN}</td>
          <td>${costWords(step, i, ctx)}</td>
        </tr>`;
      })}
    </tbody>
  </table>`;
}

/**
 * What a step costs; the first has no step before it.
 * @param {StepReport} step
 * @param {number} i
 * @param {Ctx} ctx
 */
export function costWords({ cost }, i, ctx) {
  if (!cost) return i === 0 ? nothing : UNKNOWN;
  if (cost.kind === 'moneyRate') return shown(cost.kind, cost.v, ctx).figure;
  return money(Math.round(cost.v), ctx.currency, true).replace(/\.00$/, '');
}

/**
 * @param {Rung} rung
 * @param {StepReport} step
 * @param {number[]} rules
 * @param {Ctx} ctx
 */
function rungView(rung, step, rules, ctx) {
  const { x, from, on, radius, down, open } = rung;
  // The lines of the row above and below meet over the rule between them.
  return svg`<svg class="drawing" role="img" aria-label=${describe(step, ctx)} width="100%" height="100%">
    ${rules.map((at) => svg`<line class="c-rule" x1=${n(at)} x2=${n(at)} y1="0" y2="100%" />`)}
    ${from === undefined ? nothing : svg`<line class="l-riser" x1=${n(from)} x2=${n(from)} y1="-2" y2="50%" /><line class="l-riser" x1=${n(from < x ? from - 1 : from + 1)} x2=${n(x)} y1="50%" y2="50%" />`}
    ${on === undefined ? nothing : svg`<line class="l-riser" x1=${n(on)} x2=${n(on)} y1="50%" y2="100%" />`}
    <circle class=${open ? 'l-open' : 'l-dot'} cx=${n(x)} cy="50%" r=${open ? radius - 1 : radius} />
    <text class="l-figure d-haloed" x=${n(down ? x - radius - 4 : x + radius + 5)} y="50%" dy="0.35em" text-anchor=${down ? 'end' : 'start'}>${step.bass ? decibels(step.bass.v) : UNKNOWN}</text>
  </svg>`;
}

/**
 * @param {StepReport} step
 * @param {Ctx} ctx
 */
function describe({ bass, where }, ctx) {
  if (!bass) return 'not known';
  const by = bass.diff === undefined ? '' : differenceOf(bass, ctx);
  const than = where === 'open' ? 'than where you are' : 'than the step before';
  const words =
    by === ''
      ? ''
      : by === 'same'
        ? `, the same as ${where === 'open' ? 'where you are' : 'the step before'}`
        : `, ${by.slice(1)} ${bass.diff && bass.diff < 0 ? 'less' : 'more'} ${than}`;
  return `${decibels(bass.v)}${NBSP}dB${words}`;
}

/**
 * The steps that are not taken, by what they add to where you are.
 * @param {StepReport[]} steps
 * @param {Ctx} ctx
 * @param {(text: string) => unknown} rich
 */
export function nextSteps(steps, ctx, rich) {
  return steps.some((step) => step.where === 'open')
    ? html`<ul class="next">
        ${steps.map((step, i) =>
          step.where === 'open'
            ? html`<li>
                <span>${rich(stepWords(steps, i, ctx))}</span><b>${step.bass?.diff === undefined ? UNKNOWN : differenceOf(step.bass, ctx)}</b><span>${costWords(step, i, ctx)}</span>
              </li>`
            : nothing,
        )}
      </ul>`
    : nothing;
}
