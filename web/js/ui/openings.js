// The openings of one surface: the face drawn with them, the list with what
// each costs, and the form of the one that is chosen, down to the crack under
// a door with its live cost.

import { html, nothing } from 'lit-html';
import { costAt, crackView, faceView } from '../draw/face.js';
import * as room from '../edit-room.js';
import { joined, NBSP, text, typed } from '../format.js';
import { capital, costs, faceWords, GROUPS, gapSize, kindChip, kindName, oneOf, sealWords } from '../words-room.js';
import { chips, faultOf, faultText, field, fieldRow } from './field.js';
import { answer, bare, chooseOpening, houseFaults, ofPlan, quantity, said, showRoom, view } from './house.js';
import { rich, tap } from './text.js';

/**
 * @typedef {import('./app.d.ts').App} App
 * @typedef {import('../types-room.d.ts').House} House
 * @typedef {import('../types-room.d.ts').FaceReport} FaceReport
 * @typedef {import('../types-room.d.ts').OpeningReport} OpeningReport
 * @typedef {import('../types-room.d.ts').Kind} Kind
 * @typedef {import('../types.d.ts').Opening} Opening
 */

const INCH = 0.0254;

/** Usual sizes of what stands in a wall, as they are typed. @type {Record<string, {us: string[], si: string[]}>} */
const SIZES = {
  door: { us: ['28x80 in', '30x80 in', '32x80 in', '36x80 in'], si: ['710x2030 mm', '760x2030 mm', '810x2030 mm', '910x2030 mm'] },
  window: { us: ['24x36 in', '36x48 in', '48x48 in'], si: ['600x900 mm', '900x1200 mm', '1200x1200 mm'] },
  duct: { us: ['4 in', '6 in', '8 in', '10 in'], si: ['100 mm', '150 mm', '200 mm', '250 mm'] },
  light: { us: ['4 in', '6 in'], si: ['90 mm', '150 mm'] },
  pipe: { us: ['1 in', '2 in', '4 in'], si: ['22 mm', '50 mm', '110 mm'] },
  hole: { us: ['1/2 in', '1 in', '2 in'], si: ['12 mm', '25 mm', '50 mm'] },
};
/** Steps of the crack: a sixteenth of an inch or a millimetre. */
const STEP = { us: INCH / 16, si: 0.001 };
/** Of the track's ends from the slider's, px. */
const PAD = 24;

/** The row in Layers that leads here. @param {App} app */
export function openingsRow(app) {
  const list = app.surface.openings ?? [];
  const names = list.map((o) => oneOf(app.catalog?.kinds?.find((k) => k.id === o.kind)?.group ?? '', o.kind) || kindName(o.kind));
  const said = [...new Set(names)].map((n) => {
    const count = names.filter((x) => x === n).length;
    return count > 1 ? `${count} × ${n}` : n;
  });
  return html`<button
    type="button"
    class="pair openings-row"
    @click=${() => {
      ofPlan(app);
      Object.assign(view, { openings: true, opening: list[0]?.id ?? '', adding: list.length === 0 });
      app.go('layers');
    }}
  >
    <span class="what"><b class="serif">Openings</b> ${said.length ? said.join(', ') : 'none yet'}${said.length ? nothing : html`<span class="soft">doors, windows, boxes, ducts, cracks</span>`}</span>
    <span class="size">${wrongHere(app) ? html`<b class="wrong">wrong</b>` : nothing}</span>
  </button>`;
}

/** @param {App} app */
function wrongHere(app) {
  return app.house?.faults?.some((f) => f.surface === app.surface.id && app.surface.openings?.some((o) => o.id === f.item));
}

/**
 * @param {App} app
 * @param {number} width
 */
export function openings(app, width) {
  const { house, surface } = app;
  const face = house?.faces?.find((f) => f.id === surface.id);
  const list = surface.openings ?? [];
  chooseOpening(app);
  const here = (/** @type {string} */ id) => {
    view.opening = id;
    view.adding = false;
    app.go('layers');
  };
  return html`<section class="openings" aria-label="Openings">
    ${answer(holedWords(app, face), mend(app, face))}
    ${houseFaults(app, (f) => f.surface === surface.id && list.some((o) => o.id === f.item) && f.item !== view.opening)}
    ${face ? html`<div class="drawing-place">${faceView(face, { width, units: app.units, selected: view.opening, onSelect: here, most: app.wide ? 240 : 190 })}</div>` : nothing}
    ${face && !face.width ? html`<p class="soft aside">With its size the ${surface.kind} is drawn here.</p>` : nothing}
    <ul class="opening-list" aria-label="Openings of ${surface.name}">
      ${list.map((o) => {
        const known = face?.openings?.find((x) => x.id === o.id);
        return o.id === view.opening ? html`<li class="open">${form(app, o, known, face, width)}</li>` : html`<li>${closed(app, o, known, here)}</li>`;
      })}
    </ul>
    ${adder(app)}
    <p class="taps part-taps">
      ${tap('Back to the layers', () => {
        view.openings = false;
        app.go('layers');
      })}
      ${app.plan.surfaces.length > 1 ? tap('The whole room', () => showRoom(app)) : nothing}
    </p>
  </section>`;
}

/**
 * "STC 57 wall, 33 with its holes."
 * @param {App} app
 * @param {FaceReport | undefined} face
 */
function holedWords(app, face) {
  if (!face?.rating || !face.holed) return undefined;
  const ratingIs = app.report?.ratingIs ?? 'STC';
  const [whole, holed] = [Math.round(face.rating.v), Math.round(face.holed.v)];
  const kind = app.surface.kind;
  if (!face.openings?.length) return { answer: 'Whole.', text: `${ratingIs}${NBSP}${whole} ${kind}, and no hole was told: a door, a box, a crack?` };
  if (whole - holed < 1) return { answer: 'Yes.', text: `${ratingIs}${NBSP}${whole} ${kind}, and its holes cost it nothing.` };
  const worst = [...face.openings].sort((a, b) => b.costs - a.costs)[0];
  return {
    answer: whole - holed > 3 ? 'Not yet.' : 'Nearly.',
    text: `${ratingIs}${NBSP}${whole} ${kind}, ${holed} with its holes.${worst && worst.costs >= 0.5 ? ` For what plays, the ${oneOf(worst.group, worst.kind)} costs it ${costs(worst.costs)}.` : ''}`,
  };
}

/**
 * What would close the worst of them.
 * @param {App} app
 * @param {FaceReport | undefined} face
 */
function mend(app, face) {
  const worst = [...(face?.openings ?? [])].sort((a, b) => b.costs - a.costs)[0];
  const kind = app.catalog?.kinds?.find((k) => k.id === worst?.kind);
  if (!worst || worst.costs < 0.5 || !kind) return nothing;
  const seal = ['all', 'putty', 'boxed', 'box', 'shut'].find((s) => kind.seals.includes(s));
  const sealed = ['all', 'allSoft', 'shut', 'putty', 'box', 'boxes', 'boxed'].includes(worst.seal);
  if (!seal || sealed) return nothing;
  return tap('Seal it', () =>
    app.edit(room.setOpening(app.plan, app.surface.id, worst.id, { seal, crack: '' }, `${oneOf(worst.group, worst.kind)}: ${sealWords(seal, worst.group)}`)),
  );
}

/**
 * @param {App} app
 * @param {Opening} o
 * @param {OpeningReport | undefined} known
 * @param {(id: string) => void} here
 */
function closed(app, o, known, here) {
  const bad =
    [...app.drafts].some(([key, d]) => d.fault && key.startsWith(`opening.${o.id}.`)) ||
    app.house?.faults?.some((f) => f.item === o.id && f.surface === app.surface.id);
  const group = known?.group ?? '';
  return html`<button type="button" class="opening-row" aria-expanded="false" @click=${() => here(o.id)}>
    <b class="serif">${capital(oneOf(group || groupOf(app, o.kind), o.kind))}</b>
    <span class="what">${rich(`${known && known.count > 1 ? `${known.count}, ` : ''}${kindName(o.kind)}${known ? sizeText(app, known, o) : ''}`)}<span class="soft">${known ? sealWords(known.seal, known.group) : ''}</span></span>
    ${bad ? html`<b class="wrong">wrong</b>` : html`<b class="costs">${known ? costs(known.costs) : '–'}</b>`}
  </button>`;
}

/** @param {App} app @param {string} kind */
function groupOf(app, kind) {
  return app.catalog?.kinds?.find((k) => k.id === kind)?.group ?? '';
}

/** ", 32 × 80 in" @param {App} app @param {OpeningReport} known @param {Opening} o */
function sizeText(app, known, o) {
  if (!known.width || known.group === 'box' || known.width.v === 0) return '';
  const w = o.width ? joined(typed(o.width)) : usual(app, known.width.v);
  // What is round has one size.
  const round = !o.height && Math.abs((known.height?.v ?? 0) - known.width.v) < 1e-6;
  if (!known.height || known.height.v === 0 || round || known.group === 'crack') return `, ${w}`;
  const h = o.height ? joined(typed(o.height)) : usual(app, known.height.v);
  const unit = h.split(NBSP).pop();
  return `, ${w.endsWith(NBSP + unit) ? w.slice(0, w.lastIndexOf(NBSP)) : w} × ${h}`;
}

/** A usual size near a whole inch is that inch. @param {App} app @param {number} m */
function usual(app, m) {
  const whole = Math.round(m / INCH);
  return text({ v: app.units === 'us' && Math.abs(whole * INCH - m) < 0.03 * m ? whole * INCH : m, kind: 'length', origin: 'typical' }, app.ctx);
}

/**
 * The form of one opening.
 * @param {App} app
 * @param {Opening} o
 * @param {OpeningReport | undefined} known
 * @param {FaceReport | undefined} face
 * @param {number} width
 */
function form(app, o, known, face, width) {
  const { plan, surface } = app;
  const kind = app.catalog?.kinds?.find((k) => k.id === o.kind);
  const group = kind?.group ?? known?.group ?? '';
  const name = oneOf(group, o.kind);
  const set = (/** @type {Partial<Opening>} */ patch, /** @type {string} */ label) => room.setOpening(plan, surface.id, o.id, patch, `${name}: ${label}`);
  const mine = (/** @type {string} */ f) => (/** @type {import('../types.d.ts').Fault} */ fault) =>
    fault.surface === surface.id && fault.item === o.id && (fault.field === f || (f === 'width' && fault.field === 'area'));
  const alike = (app.catalog?.kinds ?? []).filter((k) => k.group === group);
  const seals = kind?.seals ?? [];
  const isTyped = Boolean(o.rating || o.octaves);
  const length = (
    /** @type {'width' | 'height' | 'x' | 'y' | 'run'} */ key,
    /** @type {string} */ words,
    /** @type {import('../types.d.ts').Value | null | undefined} */ now,
  ) =>
    fieldRow(
      app,
      quantity(app, {
        key: `opening.${o.id}.${key}`,
        what: 'length',
        label: `${capital(name)}, ${words.toLowerCase()}`,
        value: o[key],
        typical: !o[key] && now ? bareText(app, now) : '',
        us: key === 'run' ? ['ft', 'in'] : ['in', 'ft'],
        set: (q) => set({ [key]: q }, `${words.toLowerCase()} ${said(q)}`),
        mine: mine(key),
      }),
      words,
    );
  // What is wrong with all of it, and with no field of its own.
  const own = ['width', 'height', 'area', 'count', 'x', 'y', 'run', 'crack', 'rating', 'octaves'];
  const rest = (app.house?.faults ?? []).filter((f) => f.surface === surface.id && f.item === o.id && !own.includes(f.field));
  return html`<div class="opening-form">
    <p class="form-head">
      <span><b class="serif">${capital(name)}</b> <span class="soft">${rich((alike.length > 1 ? kindChip(o.kind) : kindName(o.kind)) + (known ? sizeText(app, known, o) : ''))}</span></span>
      <b class="costs">${known ? costs(known.costs) : nothing}</b>
    </p>
    ${rest.map((f) => html`<p class="fault"><b>${capital(f.words)}.</b></p>`)}
    ${
      alike.length > 1
        ? chips(
            `What kind of ${name}`,
            alike.map((k) => ({ value: k.id, words: kindChip(k.id) })),
            o.kind,
            (id) => app.edit(room.setKind(plan, surface.id, o.id, id, true, kindName(id))),
          )
        : nothing
    }
    ${
      seals.length > 1
        ? chips(
            'How it is closed',
            seals.map((s) => ({ value: s, words: sealWords(s, group) })),
            o.seal || seals[0],
            // Another seal has its own gap until one is set.
            (seal) => app.edit(set({ seal, crack: '' }, sealWords(seal, group))),
          )
        : nothing
    }
    ${group === 'door' && known?.crack ? crack(app, o, known, face, width) : nothing}
    ${sizeChips(app, o, group, set)}
    ${
      group === 'crack'
        ? [length('width', 'Length', known?.width), length('height', 'How wide it gapes', known?.height)]
        : group === 'box'
          ? nothing
          : group === 'door' || group === 'window'
            ? [length('width', 'Width', known?.width), length('height', 'Height', known?.height)]
            : length('width', group === 'duct' || group === 'pipe' || group === 'light' || group === 'hole' ? 'Diameter or width' : 'Width', known?.width)
    }
    ${group === 'duct' && o.kind === 'duct' ? length('run', 'Lined length', known?.run) : /^doorTwo/.test(o.kind) ? length('run', 'Depth of the lobby', known?.run) : nothing}
    ${
      group === 'pipe'
        ? fieldRow(
            app,
            quantity(app, {
              key: `opening.${o.id}.crack`,
              what: 'length',
              label: 'Gap round the pipe',
              value: o.crack,
              us: ['in'],
              set: (q) => set({ crack: q }, `gap ${said(q)}`),
              mine: mine('crack'),
            }),
            'Gap round it',
          )
        : nothing
    }
    ${fieldRow(app, bare({ key: `opening.${o.id}.count`, label: `How many of this ${name}`, value: o.count, typical: '1', words: '', set: (q) => set({ count: q }, `${q || 1} of them`), mine: mine('count') }), 'How many')}
    ${group === 'crack' ? nothing : [length('x', 'From the left end', at(known?.x)), length('y', 'Above the floor', at(known?.y))]}
    ${
      ['door', 'window', 'duct', 'light', 'hole'].includes(group)
        ? html`${fieldRow(
            app,
            bare({
              key: `opening.${o.id}.rating`,
              label: `${capital(name)}, rating`,
              value: o.rating,
              typical: '',
              words: app.report?.ratingIs ?? 'STC',
              set: (q) => set({ rating: q }, q ? `rated ${q}` : 'typical again'),
              mine: mine('rating'),
            }),
            isTyped ? 'Rating, as typed' : 'A rating from its sheet',
            isTyped ? '' : 'else typical',
          )}
            ${octaveForm(app, o, name, set, mine)}`
        : nothing
    }
    <p class="taps">${tap(`Remove this ${name}`, () => app.edit(room.removeOpening(plan, surface.id, o.id, name)))}</p>
  </div>`;
}

/** @param {number | undefined} v @returns {import('../types.d.ts').Value | undefined} */
function at(v) {
  return v === undefined ? undefined : { v, kind: 'length', origin: 'computed' };
}

/** A length as it would be typed. @param {App} app @param {import('../types.d.ts').Value} v */
function bareText(app, v) {
  return usual(app, v.v).split(NBSP)[0];
}

/**
 * Its loss in octaves, folded until asked for.
 * @param {App} app
 * @param {Opening} o
 * @param {string} name
 * @param {(patch: Partial<Opening>, label: string) => import('../edit.js').Edit} set
 * @param {(field: string) => (f: import('../types.d.ts').Fault) => boolean} mine
 */
function octaveForm(app, o, name, set, mine) {
  const key = `octaves.${o.id}`;
  const open = Boolean(o.octaves) || app.fieldUnits.get(key) === 'open';
  if (!open) {
    return html`<p class="taps">${tap('or in octaves', () => {
      app.fieldUnits.set(key, 'open');
      app.render();
    })}</p>`;
  }
  const specs = [63, 125, 250, 500, 1000, 2000, 4000].map((hz, i) => ({
    hz,
    spec: bare({
      key: `opening.${o.id}.octaves.${i}`,
      label: `${capital(name)} stops at ${hz}${NBSP}Hz, dB`,
      value: o.octaves?.[i],
      words: '',
      set: (q) => set({ octaves: room.octaveSet(o.octaves, i, q) }, 'octaves typed'),
      mine: (f) => mine('octaves')(f) && (f.typed === undefined || f.typed === '' || f.typed === o.octaves?.[i]),
    }),
  }));
  const bad = specs.find(({ spec }) => faultOf(app, spec));
  return html`<p class="label">It stops, dB</p>
    <div class="octaves-row">${specs.map(({ hz, spec }) => html`<span class="one"><span class="soft" aria-hidden="true">${hz < 1000 ? hz : `${hz / 1000}k`}</span>${field(app, spec)}</span>`)}</div>
    ${bad ? faultText(app, bad.spec) : nothing}`;
}

/**
 * Usual sizes first.
 * @param {App} app
 * @param {Opening} o
 * @param {string} group
 * @param {(patch: Partial<Opening>, label: string) => import('../edit.js').Edit} set
 */
function sizeChips(app, o, group, set) {
  const sizes = SIZES[o.kind === 'hatch' ? '' : group]?.[app.units];
  if (!sizes) return nothing;
  const now = o.width ? (o.height ? `${o.width.split(' ')[0]}x${o.height}` : o.width) : '';
  return chips(
    'Usual sizes',
    sizes
      .map((size) => ({ value: size, words: joined(typed(decimal(size))).replace(/(\d)[\u00a0 ](in|mm)$/, `$1${NBSP}$2`) }))
      .map((c) => ({ ...c, value: decimal(c.value) })),
    now,
    (size) => {
      const [digits, unit] = size.split(' ');
      const [w, h] = digits.split('x');
      app.edit(set({ width: `${w} ${unit}`, height: h ? `${h} ${unit}` : '' }, joined(typed(size))));
    },
  );
}

/** "1/2 in" as a plan writes it. @param {string} size */
function decimal(size) {
  return size.replace(/^(\d+)\/(\d+)/, (_, a, b) => String(Number(a) / Number(b)));
}

/**
 * The gap under a door: its cost as a curve, a slider under it.
 * @param {App} app
 * @param {Opening} o
 * @param {OpeningReport} known
 * @param {FaceReport | undefined} face
 * @param {number} width
 */
function crack(app, o, known, face, width) {
  const report = app.house?.crack?.opening === o.id ? app.house.crack : undefined;
  const step = STEP[app.units];
  const last = report?.points?.at(-1)?.width ?? 0.0127;
  const most = Math.floor(last / step + 1e-6) * step;
  const gap = o.crack ? metres(o.crack) : (known.crack?.v ?? 0);
  const at = Math.round(Math.min(gap, most) / step);
  const wall = report ? costAt(report, gap, 'wall') : undefined;
  const whole = report ? costAt(report, gap, 'room') : undefined;
  const words = wall === undefined ? '' : `costs ${faceWords(face)} ${costs(wall)}`;
  const marks = [0, 0.25, 0.5, 0.75, 1].map((part) => Math.round((most * part) / step) * step);
  const set = (/** @type {string} */ value) => {
    const metresNow = Number(value) * step;
    const q = app.units === 'us' ? `${Number((metresNow / INCH).toFixed(4))} in` : `${Number((metresNow * 1000).toFixed(1))} mm`;
    app.edit(room.setOpening(app.plan, app.surface.id, o.id, { crack: q }, `gap under the door ${joined(typed(q))}`), `opening.${o.id}.crack`);
  };
  return html`<div class="crack">
    <p class="crack-head"><label for="crack-${o.id}">Gap under it, <b>${rich(gapSize(gap, app.ctx))}</b></label><span class="soft">${whole === undefined ? '' : `whole room ${costs(whole)}`}</span></p>
    <p class="crack-words" aria-hidden="true"><b>${words}</b><span class="soft">${report ? costs(costAt(report, most, 'wall')) : ''}</span></p>
    <div class="crack-slide">
      ${report ? crackView(report, { width, gap: at * step, most, pad: PAD }) : html`<div class="crack-curve"></div>`}
      <input
        id="crack-${o.id}"
        type="range"
        min="0"
        max=${Math.round(most / step)}
        step="1"
        .value=${String(at)}
        aria-valuetext="${gapSize(gap, app.ctx).replace(NBSP, ' ')}, ${words}"
        @input=${(/** @type {Event} */ e) => set(/** @type {HTMLInputElement} */ (e.target).value)}
        @change=${() => app.leave(/** @type {any} */ ({ key: `opening.${o.id}.crack` }))}
      />
    </div>
    <p class="crack-ticks" aria-hidden="true">${marks.map((m, i) => html`<span class="t${i}">${rich(i === 4 ? gapSize(m, app.ctx) : gapSize(m, app.ctx).split(NBSP)[0])}</span>`)}</p>
  </div>`;
}

/** A length typed in inches or millimetres, for the handle's place. @param {string} q */
function metres(q) {
  const [n, unit] = q.split(' ');
  return Number(n) * ({ in: INCH, ft: 12 * INCH, mm: 1e-3, cm: 1e-2, m: 1 }[unit] ?? 0);
}

/** Kinds to add, by their groups. @param {App} app */
function adder(app) {
  const kinds = app.catalog?.kinds ?? [];
  if (!view.adding) {
    return html`<p class="taps part-taps">${tap('+ opening', () => {
      view.adding = true;
      app.render();
    })}</p>`;
  }
  return html`<h2 class="head part"><span>Add an opening</span><span class="taps">${tap(
    'close',
    () => {
      view.adding = false;
      app.render();
    },
    'Close what can be added',
  )}</span></h2>
    <div class="add-kinds">
      ${GROUPS.map(([group, title]) => {
        const list = kinds.filter((k) => k.group === group);
        return list.length
          ? html`<div class="add-group" role="group" aria-label=${title}><span class="soft">${title}</span>
              <div class="chips">${list.map((k) => html`<button type="button" class="chip" aria-label="Add ${kindChip(k.id)}: ${kindName(k.id)}" @click=${() => add(app, k)}>${kindChip(k.id)}</button>`)}</div></div>`
          : nothing;
      })}
    </div>`;
}

/** @param {App} app @param {Kind} k */
function add(app, k) {
  const { surface } = app;
  // A crack begins as long as the face is wide.
  const wide = k.group === 'crack' ? app.house?.faces?.find((f) => f.id === surface.id)?.width?.v : undefined;
  const width = wide === undefined ? undefined : app.units === 'us' ? `${Math.round(wide / INCH)} in` : `${Math.round(wide * 1000)} mm`;
  const made = room.addOpening(app.plan, surface.id, width ? { kind: k.id, width } : { kind: k.id }, kindName(k.id));
  const added = made.plan.surfaces.find((s) => s.id === app.surface.id)?.openings?.at(-1);
  Object.assign(view, { adding: false, opening: added?.id ?? '' });
  app.edit(made);
}
