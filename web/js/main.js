// The page: one plan on screen, what was typed, the last good report, and the
// parts that show them. Edits go plan → plan; the core answers each of them,
// and the newest answer is drawn.

import { html, nothing, render as put } from 'lit-html';
import * as edit from './edit.js';
import { startEngine } from './engine.js';
import { boardName } from './format.js';
import { keepOffline } from './offline.js';
import * as state from './state.js';
import { openStore } from './store.js';
import { buy } from './ui/buy.js';
import { bestTry, closeCuts, cutsName, tryCuts } from './ui/cuts.js';
import { first } from './ui/first.js';
import { heard } from './ui/heard.js';
import { readable, showsOpenings, wantRoom } from './ui/house.js';
import { layers } from './ui/layers.js';
import { load } from './ui/load.js';
import { about, menu, plans } from './ui/menu.js';
import { broughtNote, faultNotes, keepingNote, programNote } from './ui/messages.js';
import { needTaps } from './ui/need.js';
import { openings } from './ui/openings.js';
import { find, pick } from './ui/pick.js';
import { place } from './ui/place.js';
import { printed } from './ui/print.js';
import { linkOf, prepareSend, send } from './ui/send.js';
import { sound } from './ui/sound.js';
import { foldedStrip, standsShort, strip, stripCells } from './ui/strip.js';
import { resetSwap, swap } from './ui/swap.js';
import { tap } from './ui/text.js';
import { verdict } from './ui/verdict.js';
import { worked } from './ui/worked.js';
import { broughtWords, currencyOf, REGIONS } from './words.js';

/**
 * @typedef {import('./ui/app.d.ts').App} App
 * @typedef {import('./ui/app.d.ts').Section} Section
 * @typedef {import('./ui/app.d.ts').FieldSpec} FieldSpec
 * @typedef {import('./types.d.ts').Plan} Plan
 * @typedef {import('./types.d.ts').Report} Report
 */

/** @type {{id: Section, name: string}[]} */
const SECTIONS = [
  { id: 'layers', name: 'Layers' },
  { id: 'load', name: 'Load' },
  { id: 'sound', name: 'Sound' },
  { id: 'heard', name: 'Heard' },
  { id: 'swap', name: 'Swap' },
  { id: 'buy', name: 'Buy' },
];

const DESK = 960;
/** The part of a desk's width that the layers take, as in style.css. */
const LEFT = 0.437;
const MARGIN = 16;
/** A changed cell keeps its wash for so long, ms. */
const WASH = 600;
/** After so long without an edit, what may be asked for next is made ready, ms. */
const IDLE = 1500;
/** Typing rests after so long, ms: then what takes longer is asked for. */
const REST = 350;

const root = /** @type {HTMLElement} */ (document.getElementById('app'));
const paper = /** @type {HTMLElement} */ (document.getElementById('paper'));
const desk = matchMedia(`(min-width: ${DESK}px)`);
const still = matchMedia('(prefers-reduced-motion: reduce)');
const coarse = matchMedia('(pointer: coarse)');

const engine = startEngine({
  stale: (late) => {
    app.stale = late;
    app.render();
  },
  ready: (version) => {
    app.about = `Core ${version.core}, plans of format ${version.format}, typical values of table ${version.table}.`;
  },
  restarted: (words) => {
    app.tell({ message: { head: words, pieces: [] }, grave: true, taps: [] });
    assess();
  },
});

const store = openStore({
  state: (s) => {
    app.kept = s.kept;
    app.why = s.kept ? '' : s.why;
    app.render();
  },
});

/** The plan the report on screen is of. @type {Plan | undefined} */
let assessed;
let rendered = false;
/** A plan was opened and nothing is known of it yet: what is on screen stays. */
let pending = true;
let scheduled = false;
/** @type {ReturnType<typeof setTimeout> | undefined} */ let washing;
/** @type {ReturnType<typeof setTimeout> | undefined} */ let idling;
/** @type {ReturnType<typeof setTimeout> | undefined} */ let resting;
/** Where the focus goes when a sheet is closed. @type {HTMLElement | null} */
let opener = null;

/** @type {Plan} */
const NONE = { format: 1, table: 1, name: '', region: guessRegion(), units: 'us', surfaces: [], buildUps: [] };

/** @type {App} */
const app = {
  plan: NONE,
  planId: '',
  history: state.begin(NONE),
  report: undefined,
  further: undefined,
  house: undefined,
  money: undefined,
  moneyOf: undefined,
  faults: [],
  drafts: new Map(),
  fieldUnits: new Map(),
  catalog: undefined,
  surfaceId: '',
  about: '',
  printed: undefined,
  section: 'layers',
  selected: '',
  openLeaf: -1,
  more: false,
  panel: undefined,
  first: false,
  wide: desk.matches,
  width: 358,
  folded: false,
  typing: false,
  stale: false,
  changed: new Set(),
  kept: true,
  why: '',
  brought: undefined,
  program: undefined,
  ticks: new Map(),
  plans: [],
  panelData: undefined,
  offline: false,
  theme: '',
  ctx: { units: 'us', currency: '$', names: {} },

  get surface() {
    return this.plan.surfaces.find((s) => s.id === this.surfaceId) ?? this.plan.surfaces[0];
  },
  get buildUp() {
    return edit.buildUpOf(this.plan, this.surface.buildUp);
  },
  get units() {
    return this.plan.units;
  },
  get region() {
    return this.plan.region;
  },

  render() {
    if (scheduled) return;
    scheduled = true;
    requestAnimationFrame(draw);
  },

  ask: (method, args, slot) => engine.ask(method, args, slot),

  edit(made, field) {
    if (!made) return;
    app.program = undefined;
    app.history = state.commit(app.history, made, field);
    const had = document.activeElement;
    changed(made.plan);
    // What took itself away leaves the keyboard at what is chosen now.
    if (had instanceof HTMLButtonElement && had.closest('main'))
      setTimeout(() => {
        if (!had.isConnected) /** @type {HTMLElement | null} */ (root.querySelector('main [aria-current=true]'))?.focus({ preventScroll: true });
      }, 60);
  },

  undo() {
    app.drafts.clear();
    app.program = undefined;
    app.history = state.undo(app.history);
    changed(state.now(app.history));
  },

  redo() {
    app.drafts.clear();
    app.program = undefined;
    app.history = state.redo(app.history);
    changed(state.now(app.history));
  },

  go(section) {
    app.first = false;
    app.section = section;
    closeCuts();
    app.panel = undefined;
    app.program = undefined;
    rememberPlace();
    scrollTo(0, 0);
    app.render();
    assess();
    // Load and Buy print something else than the surface's sheet.
    clearTimeout(idling);
    idling = setTimeout(preparePrint, IDLE);
  },

  goSurface(id) {
    app.surfaceId = id;
    app.selected = '';
    app.openLeaf = -1;
    app.first = false;
    assessed = undefined;
    resetSwap();
    rememberPlace();
    app.close();
    assess();
  },

  async setRegion(region) {
    // A plan that nobody has touched yet starts again with what is usual there.
    const example = app.plan.surfaces.length > 1;
    if (app.history.steps.length === 1) {
      const reply = await engine.ask('new', { region, which: example ? 'demo' : 'first' });
      if (reply.ok) {
        const { first, panel } = app;
        show(app.planId, state.begin(reply.plan, 'another region'), app.surfaceId);
        app.first = first;
        app.panel = panel;
        save();
        return;
      }
    }
    app.edit(edit.setPlan(app.plan, { region, units: region === 'US' ? 'us' : 'si' }, `region: ${REGIONS[region]}`));
  },

  select(id) {
    if (id !== app.selected) app.more = false;
    app.selected = id;
    app.history = state.leaveField(app.history);
    if (id) {
      const { leaf } = edit.placeOf(app.buildUp, id);
      if (leaf >= 0 && leaf !== app.buildUp.compare.leaf) app.openLeaf = leaf;
    }
    app.render();
  },

  open(panel) {
    if (!app.panel) opener = /** @type {HTMLElement | null} */ (document.activeElement);
    app.panel = panel;
    app.panelData = undefined;
    app.first = false;
    if (panel.kind === 'work') assess();
    if (panel.kind === 'send') prepareSend(app);
    if (panel.kind === 'pick') find(app, '');
    if (panel.kind === 'plans' || panel.kind === 'menu') listPlans();
    app.render();
    afterDraw(() => {
      const sheet = root.querySelector('.sheet');
      const target = /** @type {HTMLElement | null} */ (sheet?.querySelector('input.search') ?? sheet);
      target?.focus({ preventScroll: true });
    });
  },

  close() {
    if (!app.panel) return;
    app.panel = undefined;
    app.panelData = undefined;
    app.render();
    const back = opener;
    opener = null;
    afterDraw(() => back?.isConnected && back.focus({ preventScroll: true }));
  },

  input(spec, text) {
    const empty = text.trim() === '';
    app.drafts.set(spec.key, { text, reading: !empty });
    app.program = undefined;
    if (empty) {
      app.edit(spec.set(''), spec.key);
      return;
    }
    app.render();
    engine.ask('read', { what: spec.what, text, unit: spec.unit }, `read ${spec.key}`).then((reply) => {
      const draft = app.drafts.get(spec.key);
      if (reply.superseded || !draft || draft.text !== text) return;
      draft.reading = false;
      if (reply.ok) {
        app.edit(spec.set(reply.quantity), spec.key);
        if (draft.left) app.leave(spec);
      } else if (reply.faults?.[0]) {
        app.drafts.set(spec.key, { text, fault: reply.faults[0] });
        const before = state.dropField(app.history, spec.key);
        if (before !== app.history) {
          app.history = before;
          changed(state.now(before));
        }
        app.render();
      }
    });
  },

  leave(spec) {
    const draft = app.drafts.get(spec.key);
    // What could not be read stays in its field as it was typed, and so does what is still being read.
    if (draft?.reading) draft.left = true;
    else if (draft && !draft.fault) app.drafts.delete(spec.key);
    app.history = state.leaveField(app.history);
    app.render();
  },

  mend(spec, quantity) {
    app.drafts.delete(spec.key);
    app.edit(spec.set(quantity));
    afterDraw(() => document.getElementById(`f-${spec.key}`)?.focus());
  },

  cycleUnit(spec) {
    const units = spec.units ?? [];
    const next = units[(units.indexOf(spec.unitWords ?? spec.unit) + 1) % units.length];
    spec.setUnit?.(next);
    const draft = app.drafts.get(spec.key);
    app.render();
    // The number that stands in the field is now of the other unit.
    if (draft?.fault && next) app.input({ ...spec, unit: next }, draft.text);
  },

  setTheme(theme) {
    app.theme = theme;
    if (theme) document.documentElement.dataset.theme = theme;
    else delete document.documentElement.dataset.theme;
    remember('theme', theme);
    app.render();
  },

  async openPlan(id) {
    const doc = await store.open(id);
    if (!doc) return;
    show(id, state.resume(doc));
    app.ticks = ticksOf(doc);
    app.close();
  },

  async newPlan(which, section) {
    const reply = await engine.ask('new', { region: app.region, which });
    if (!reply.ok) return;
    const id = store.newId();
    show(id, state.begin(reply.plan, which === 'demo' ? 'example room' : 'new wall'), which === 'demo' ? worthSeeing(reply.plan) : '');
    if (section) app.section = section;
    app.close();
    save();
  },

  async makeRoom() {
    const reply = await engine.ask('new', { which: 'room', plan: app.plan });
    if (reply.ok) app.edit({ label: 'a whole room', plan: reply.plan });
    app.close();
  },

  async removePlan(id) {
    await store.remove(id);
    await listPlans();
    if (id !== app.planId) return;
    const next = app.plans[0];
    if (next) await app.openPlan(next.id);
    else await app.newPlan('first', 'layers');
    await listPlans();
  },

  async openLink(text) {
    const reply = await engine.ask('decode', { link: text });
    if (reply.ok) {
      // Two plans are the same if they make the same link.
      const [brought, open] = await Promise.all([reply.plan, app.plan].map((plan) => engine.ask('encode', { plan })));
      if (brought.ok && brought.link === open.link && app.planId) app.close();
      else bring(reply.plan, 'link');
      return true;
    }
    refuse(reply, 'link');
    return false;
  },

  async openText(text, name) {
    const reply = await engine.ask('open', { text });
    if (reply.ok) bring(reply.plan, 'file');
    else refuse(reply, 'file', name);
  },

  saveFile() {
    const blob = new Blob([`${JSON.stringify(app.plan, null, 1)}\n`], { type: 'application/json' });
    const link = document.createElement('a');
    link.href = URL.createObjectURL(blob);
    link.download = `${app.plan.name.replace(/[^\p{L}\p{N} _-]+/gu, '').trim() || 'plan'}.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  },

  async print(all = false) {
    app.close();
    await preparePrint(all);
    drawPaper();
    window.print();
    if (all) app.printed = undefined;
  },

  tick(key, amount) {
    app.tickAll([[key, amount]]);
  },

  tickAll(pairs) {
    const ticks = new Map(app.ticks);
    for (const [key, amount] of pairs) {
      if (amount === undefined) ticks.delete(key);
      else ticks.set(key, amount);
    }
    app.ticks = ticks;
    if (app.planId) store.tick(app.planId, Object.fromEntries(ticks));
    app.render();
  },

  tell(note) {
    app.program = note;
    app.render();
  },

  async copy(text) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch {
      return copyOldWay(text);
    }
  },
};

/**
 * Where the clipboard may not be written to, a field is selected and copied.
 * @param {string} text
 */
function copyOldWay(text) {
  const field = document.createElement('textarea');
  field.value = text;
  field.className = 'hid';
  document.body.append(field);
  field.select();
  const done = document.execCommand('copy');
  field.remove();
  return done;
}

/** The region by the browser's language; the user may say otherwise. @returns {import('./types.d.ts').Region} */
function guessRegion() {
  const [language, ...rest] = navigator.language.split('-');
  const country = rest.at(-1)?.toUpperCase() ?? '';
  if (country === 'US' || country === 'CA' || country === 'AU') return country;
  if (country === 'GB' || country === 'IE') return 'UK';
  if (country === 'NZ') return 'AU';
  return language === 'en' ? 'US' : 'EU';
}

/**
 * The few settings of this browser that are no part of a plan.
 * @param {string} key
 * @param {string} value
 */
function remember(key, value) {
  try {
    localStorage.setItem(`twoleaf.${key}`, value);
  } catch {
    // Private windows keep nothing: the setting holds while the page is open.
  }
}

/** Surface and section, so that a reload comes back to them. */
function rememberPlace() {
  if (app.planId && !app.first) remember('place', JSON.stringify([app.planId, app.surface.id, app.section]));
}

/** @param {string} id of a plan */
function placeIn(id) {
  try {
    const [plan, surface, section] = JSON.parse(remembered('place'));
    if (plan === id && SECTIONS.some((s) => s.id === section)) return { surface: String(surface), section };
  } catch {
    // Nothing is kept, or by another version.
  }
  return { surface: '', section: app.section };
}

/** @param {string} key */
function remembered(key) {
  try {
    return localStorage.getItem(`twoleaf.${key}`) ?? '';
  } catch {
    return '';
  }
}

/**
 * The example begins with the surface that there is most to say of: one that is not its own reference.
 * @param {Plan} plan
 */
function worthSeeing(plan) {
  const mixed = plan.surfaces.find((s) => {
    const { leaves, compare } = edit.buildUpOf(plan, s.buildUp);
    return new Set(leaves[compare.leaf]?.layers.map((y) => y.board)).size > 1;
  });
  return mixed?.id ?? '';
}

/**
 * @param {string} id
 * @param {import('./state.js').History} history
 * @param {string} [surface]
 */
function show(id, history, surface = '') {
  app.planId = id;
  app.history = history;
  app.report = undefined;
  app.further = undefined;
  app.house = undefined;
  app.money = undefined;
  app.faults = [];
  app.drafts.clear();
  app.fieldUnits.clear();
  app.surfaceId = surface;
  app.selected = '';
  app.openLeaf = -1;
  app.more = false;
  app.first = false;
  app.program = undefined;
  app.ticks = new Map();
  app.printed = undefined;
  assessed = undefined;
  pending = true;
  resetSwap();
  changed(state.now(history), false);
}

/** @param {{ticks?: Record<string, number>}} doc */
function ticksOf({ ticks }) {
  return new Map(Object.entries(ticks ?? {}));
}

/**
 * Another plan is on screen: it is kept, and the core is asked.
 * @param {Plan} plan
 * @param {boolean} [keep]
 */
function changed(plan, keep = true) {
  const regionWas = app.plan.region;
  app.plan = plan;
  app.ctx = { ...app.ctx, units: plan.units, currency: currencyOf(plan.region) };
  if (plan.region !== regionWas || !app.catalog) loadCatalog();
  if (keep) save();
  assess();
  app.render();
  clearTimeout(idling);
  idling = setTimeout(preparePrint, IDLE);
}

function save() {
  if (!app.planId) return;
  const { steps, at } = app.history;
  rememberPlace();
  store.save(app.planId, { plan: app.plan, steps, at }).then(() => listPlans());
}

async function listPlans() {
  app.plans = await store.list();
  app.render();
}

async function loadCatalog() {
  const { region } = app;
  const reply = await engine.ask('catalog', { region }, 'catalog');
  if (reply.ok && region === app.region) {
    app.catalog = reply.catalog ?? reply;
    app.render();
  }
}

/** Asks for what is on screen now; the core answers the newest question only. */
async function assess() {
  const { plan, panel } = app;
  if (plan.surfaces.length === 0) return;
  const open = app.wide && app.section === 'layers' ? 'sound' : app.section;
  const want = {
    surface: app.surface.id,
    sound: open === 'sound',
    rows: open === 'swap',
    layout: open === 'load',
    list: open === 'buy',
    try: open === 'buy' ? bestTry(app) : 0,
    ...wantRoom(app),
    work: panel?.kind === 'work' ? panel.trace : '',
  };
  const reply = await engine.ask('assess', { plan, want });
  if (reply.superseded) return;
  pending = false;
  if (reply.ok) {
    took(reply.report);
    assessed = plan;
    app.faults = [];
    askFurther();
  } else {
    app.faults = reply.faults ?? [];
    if (reply.panic) app.tell({ message: { head: reply.panic, pieces: [] }, grave: true, taps: [{ words: 'Undo', act: () => app.undo() }] });
    if (!app.report) lastGood();
  }
  app.render();
}

/** Ladder and nearest test, where Sound is on screen, once typing rests. */
function askFurther() {
  clearTimeout(resting);
  if (app.section === 'buy') {
    resting = setTimeout(() => tryCuts(app, assess), REST);
    return;
  }
  if (app.section === 'heard') {
    resting = setTimeout(askMoney, REST);
    return;
  }
  if (!(app.section === 'sound' || (app.wide && app.section === 'layers'))) return;
  resting = setTimeout(async () => {
    const { plan } = app;
    const surface = app.surface.id;
    const reply = await engine.ask('assess', { plan, want: { surface, ladder: true, nearest: true } }, 'further');
    if (!reply.ok || app.plan !== plan || app.surface.id !== surface) return;
    app.further = { surface, ladder: reply.report.ladder, nearest: reply.report.nearest };
    app.render();
  }, REST);
}

/** What the next money does, likewise. */
async function askMoney() {
  const { plan } = app;
  const reply = await engine.ask('assess', { plan, want: { surface: app.surface.id, room: true, money: true } }, 'further');
  if (!reply.ok || app.plan !== plan) return;
  app.money = reply.report.house?.money;
  app.moneyOf = plan;
  app.render();
}

/** A plan that was left with a fault in it: the figures of the last step without one. */
async function lastGood() {
  const { steps, at } = app.history;
  const id = app.planId;
  for (let i = at - 1; i >= 0; i--) {
    const reply = await engine.ask('assess', { plan: steps[i].plan, want: { surface: app.surface.id } }, 'last good');
    if (id !== app.planId || app.report) return;
    if (reply.ok) {
      took(reply.report);
      app.render();
      return;
    }
  }
}

/**
 * A new report: the cells that changed get their wash.
 * @param {Report} report
 */
function took(report) {
  const before = app.report && assessed && app.report.surface === report.surface ? stripCells(app.report, app.units) : undefined;
  app.report = report;
  // What was wrong around the walls is only known of the plan it was asked for.
  app.house = readable(report.house) ?? (app.house && { ...app.house, faults: [] });
  app.ctx = { ...app.ctx, currency: report.currency || app.ctx.currency, report };
  for (const leaf of report.leaves) for (const y of leaf.layers) app.ctx.names[y.board] = boardName(y, app.units);
  for (const y of report.refLayers ?? []) app.ctx.names[y.board] = boardName(y, app.units);
  if (!before) return;
  const now = stripCells(report, app.units);
  const keys = now.filter((c, i) => c.figure !== before[i].figure || c.second !== before[i].second || c.state !== before[i].state).map((c) => c.key);
  if (keys.length === 0) return;
  app.changed = new Set(keys);
  clearTimeout(washing);
  // Without motion the changed cells keep a mark until the next edit.
  if (!still.matches) {
    washing = setTimeout(() => {
      app.changed = new Set();
      app.render();
    }, WASH);
  }
}

/**
 * A plan from a link or file opens beside the user's own, never over it.
 * @param {Plan} plan
 * @param {'link' | 'file'} what
 */
function bring(plan, what) {
  const before = app.planId;
  const name = app.plan.name;
  show(store.newId(), state.begin(plan, `opened from a ${what}`));
  save();
  if (before && name) {
    app.brought = {
      message: { head: `Opened from a ${what}.`, pieces: [`It is kept beside your own; “${name}” is as you left it.`] },
      taps: [
        { words: `Back to ${name}`, act: () => app.openPlan(before).then(() => closeNote()) },
        { words: 'Close', act: closeNote },
      ],
    };
  }
  app.close();
  app.render();
}

function closeNote() {
  app.brought = undefined;
  app.render();
}

/**
 * @param {import('./engine.js').Reply} reply
 * @param {'link' | 'file'} what
 * @param {string} [name]
 */
function refuse(reply, what, name) {
  const fault = reply.faults?.[0] ?? { code: 'unreadable', leaf: -1, field: what, words: reply.panic ?? '' };
  const message = broughtWords(fault, what);
  if (name) message.head = message.head.replace(`That ${what}`, `“${name}”`);
  app.brought = {
    message,
    grave: true,
    taps: [
      what === 'link' ? { words: 'Paste again', act: pasteAgain } : { words: 'Another file', act: () => app.open({ kind: 'plans' }) },
      { words: 'Close', act: closeNote },
    ],
  };
  app.close();
  scrollTo(0, 0);
  app.render();
}

async function pasteAgain() {
  let text = '';
  try {
    text = await navigator.clipboard.readText();
  } catch {
    // Not allowed to read it: the field in Plans takes it.
  }
  closeNote();
  if (text.includes('#') || /^\d+z?\//.test(text)) await app.openLink(text);
  else {
    app.open({ kind: 'plans' });
    afterDraw(() => document.getElementById('paste-link')?.focus());
  }
}

/**
 * What a printed sheet needs beside the report on screen: the curve, the link and its code.
 * @param {boolean} [all] every surface of the plan, a sheet each
 */
async function preparePrint(all = false) {
  const { plan } = app;
  if (plan.surfaces.length === 0) return;
  const what = all ? '' : app.section === 'buy' ? 'list' : app.section === 'load' ? 'clips' : app.section === 'heard' ? 'room' : '';
  const ids = all || what === 'list' ? plan.surfaces.map((s) => s.id) : [app.surface.id];
  if (!all && printedOf === plan && app.printed?.what === what && app.printed.reports[0]?.surface === ids[0]) return;
  const [link, whole, ...replies] = await Promise.all([
    linkOf(app),
    what === 'room' || (all && plan.surfaces.length > 1) ? engine.ask('assess', { plan, want: { surface: ids[0], room: true } }, 'print room') : undefined,
    ...ids.map((surface) =>
      engine.ask('assess', { plan, want: { surface, sound: what !== 'list', layout: what === 'clips' || what === 'list' } }, `print ${surface}`),
    ),
  ]);
  if (app.plan !== plan) return;
  const reports = replies.filter((reply) => reply.ok).map((reply) => reply.report);
  printedOf = all ? undefined : plan;
  app.printed = {
    what,
    reports: reports.length || !app.report ? reports : [app.report],
    link: link.link,
    qr: link.qr,
    house: whole?.ok ? readable(whole.report.house) : undefined,
  };
}
/** The plan that was made ready for paper. @type {Plan | undefined} */
let printedOf;

function drawPaper() {
  put(app.plan.surfaces.length ? printed(app) : nothing, paper);
}

/** @param {() => void} act */
function afterDraw(act) {
  app.render();
  requestAnimationFrame(() => requestAnimationFrame(act));
}

/** Where a moved row was, by its id. @returns {Map<string, number>} */
function rowPlaces() {
  const places = new Map();
  for (const row of root.querySelectorAll('.row[data-id]')) {
    if (row instanceof HTMLElement) places.set(row.dataset.id, row.offsetTop);
  }
  return places;
}

/** A moved row slides to its place. @param {Map<string, number>} before */
function slide(before) {
  for (const row of root.querySelectorAll('.rows .row[data-id]')) {
    if (!(row instanceof HTMLElement)) continue;
    const was = before.get(row.dataset.id ?? '');
    const by = was === undefined ? 0 : was - row.offsetTop;
    // Only an exchange of neighbours slides; a list that grew above does not.
    if (by !== 0 && moved) row.animate([{ transform: `translateY(${by}px)` }, { transform: 'none' }], { duration: 160, easing: 'ease-out' });
  }
}
let moved = false;
let orderWas = '';

function draw() {
  scheduled = false;
  if (pending || !app.plan.surfaces.length) return;
  if (!rendered) {
    // The page came with the first wall's figures in it; now they give way.
    rendered = true;
    root.replaceChildren();
  }
  const order = app.buildUp.leaves.map((l) => l.layers.map((y) => y.id).join()).join('|');
  moved = !still.matches && orderWas !== '' && order !== orderWas && order.split(/[,|]/).sort().join() === orderWas.split(/[,|]/).sort().join();
  orderWas = order;
  const before = moved ? rowPlaces() : undefined;
  measure();
  put(page(), root);
  if (before) slide(before);
  fold();
  document.title = app.first ? 'Twoleaf' : `${app.plan.name} – Twoleaf`;
}

/** What the drawings may take of the width. */
function measure() {
  app.wide = desk.matches;
  const all = document.documentElement.clientWidth;
  app.width = app.wide ? Math.round((Math.min(all, 1440) - 64) * LEFT) - 31 : Math.max(288, Math.min(all, 640) - 2 * MARGIN);
}

function page() {
  const { section } = app;
  const right = app.wide && section === 'layers' ? 'sound' : section;
  return html`<div class="page ${app.wide ? 'desk' : 'phone'} ${app.first ? 'is-first' : ''} ${app.panel ? 'has-sheet' : ''} ${app.typing ? 'typing' : ''} ${app.stale ? 'stale' : ''} ${app.selected ? 'has-open' : ''}">
    <div class="topmost">
      ${top()} ${broughtNote(app)} ${whole() && !app.wide ? nothing : app.wide ? strip(app) : foldedStrip(app)}
    </div>
    ${app.wide || whole() || standsShort(app) ? nothing : strip(app)}
    ${app.panel ? sheet() : nothing}
    <main ?inert=${app.panel !== undefined && !app.wide}>
      ${
        app.first
          ? first(app)
          : app.wide
            ? html`<div class="columns">
              <div class="left">
                <div class="tabs"><h2 class="tab here">Layers</h2></div>
                ${faultNotes(app)} ${showsOpenings(app) ? openings(app, app.width) : layers(app)} ${keepingNote(app)}
              </div>
              <div class="right">
                <nav class="tabs" aria-label="Sections">
                  ${SECTIONS.filter((s) => s.id !== 'layers').map(
                    (s) =>
                      html`<button type="button" class="tab ${s.id === right ? 'here' : ''}" aria-current=${s.id === right ? 'page' : 'false'} @click=${() => app.go(s.id)}>${s.name}</button>`,
                  )}
                  ${right === 'sound' && app.report ? html`<span class="who">${needTaps(app)}</span>` : nothing}
                </nav>
                ${sectionOf(right)}
              </div>
            </div>`
            : html`${whole() || showsOpenings(app) ? nothing : verdict(app, section)} ${faultNotes(app)} ${sectionOf(section)} ${keepingNote(app)}`
      }
    </main>
    ${programNote(app)} ${app.wide || app.first ? nothing : bar()}
  </div>`;
}

/** @param {Section} section */
function sectionOf(section) {
  const width = app.wide ? rightWidth() : app.width;
  switch (section) {
    case 'load':
      return load(app, width);
    case 'sound':
      return sound(app, width);
    case 'heard':
      return heard(app, width);
    case 'swap':
      return swap(app);
    case 'buy':
      return buy(app, width, assess);
  }
  return showsOpenings(app) ? openings(app, width) : layers(app);
}

/** Heard is of the whole room, not of one surface, and so is what is bought for several. */
function whole() {
  return (app.section === 'heard' || (app.section === 'buy' && app.plan.surfaces.length > 1)) && !app.first;
}

function rightWidth() {
  const all = Math.min(document.documentElement.clientWidth, 1440) - 64;
  return Math.round(all * (1 - LEFT)) - 31;
}

function top() {
  const several = app.plan.surfaces.length > 1;
  const undo = state.undoLabel(app.history);
  const redo = state.redoLabel(app.history);
  const named = (app.wide && several) || app.surface.name === 'wall' ? '' : app.surface.name;
  const beside = app.first ? 'yours to change' : whole() && several && !app.wide ? cutsName() || 'whole room' : named;
  return html`<header class="top">
    <h1 class="title">
      <button type="button" @click=${() => (app.panel?.kind === 'needs' ? app.close() : app.open({ kind: 'needs' }))} aria-label="${app.plan.name} ${beside}: size and name${several ? ', other surfaces' : ''}">
        <span class="name">${app.plan.name}</span>
        ${beside ? html`<i>${beside}</i>` : nothing}
      </button>
    </h1>
    ${
      app.wide && several
        ? html`<nav class="faces" aria-label="Surfaces">
          ${app.plan.surfaces.map(
            (s) =>
              html`<button type="button" class="face ${s.id === app.surface.id ? 'here' : ''}" aria-current=${s.id === app.surface.id ? 'true' : 'false'} @click=${() => app.goSurface(s.id)}>
                ${faceName(s)}
              </button>`,
          )}
        </nav>`
        : nothing
    }
    <span class="actions">
      ${app.kept ? nothing : html`<span class="unsaved">not saved</span>`}
      ${
        app.wide && !app.first
          ? html`<button type="button" class="quiet" ?disabled=${!undo} title=${undo ? `Undo: ${undo}` : ''} @click=${() => app.undo()}>Undo</button>
            ${redo ? html`<button type="button" class="quiet" title="Redo: ${redo}" @click=${() => app.redo()}>Redo</button>` : nothing}`
          : nothing
      }
      ${app.first ? nothing : tap('Send', () => app.open({ kind: 'send' }))}
      <button
        type="button"
        class="burger"
        aria-label="Menu"
        aria-expanded=${app.panel?.kind === 'menu'}
        @click=${() => (app.panel?.kind === 'menu' ? app.close() : app.open({ kind: 'menu' }))}
      >
        <svg viewBox="0 0 20 16" width="20" height="16" aria-hidden="true"><path d="M0 1h20M0 8h20M0 15h20" /></svg>
      </button>
    </span>
  </header>`;
}

/** "B bedroom" for a wall with a letter; the name alone where it says enough. @param {import('./types.d.ts').Surface} s */
function faceName(s) {
  const [, kind, letter] = /^(wall|ceiling|floor) (\w)$/.exec(s.name) ?? [];
  return letter ? `${letter} ${(kind === 'wall' && s.beyond) || kind}` : s.name;
}

function bar() {
  return html`<nav class="bar" aria-label="Sections">
    ${SECTIONS.map(
      (s) =>
        html`<button type="button" class=${s.id === app.section ? 'here' : ''} aria-current=${s.id === app.section ? 'page' : 'false'} @click=${() => app.go(s.id)}>${s.name}</button>`,
    )}
  </nav>`;
}

function sheet() {
  switch (app.panel?.kind) {
    case 'work':
      return worked(app);
    case 'menu':
      return menu(app);
    case 'plans':
      return plans(app);
    case 'about':
      return about(app);
    case 'send':
      return send(app);
    case 'needs':
      return place(app);
    case 'pick':
      return pick(app);
  }
  return nothing;
}

/** The keyboard takes half the glass: what is not being typed gives way. */
function watchTyping() {
  const typesIn = (/** @type {EventTarget | null} */ el) => el instanceof HTMLInputElement && el.closest('.field') !== null;
  const update = () => {
    const typing = coarse.matches && !desk.matches && typesIn(document.activeElement);
    if (typing === app.typing) return;
    app.typing = typing;
    app.render();
    if (typing) afterDraw(() => !app.first && document.activeElement?.closest('.row.open') && scrollTo(0, 0));
  };
  document.addEventListener('focusin', update);
  // A tap from one field to the next leaves the focus nowhere for a moment.
  document.addEventListener('focusout', () => setTimeout(update, 60));
}

/** The strip folds to one row once its first row has gone under the title. */
function fold() {
  const full = root.querySelector('.page > .strip');
  const head = root.querySelector('.top');
  const gone = full && head ? head.getBoundingClientRect().bottom - full.getBoundingClientRect().top : 0;
  const row = (full?.firstElementChild?.getBoundingClientRect().height ?? 58) - 2;
  const folded = !app.wide && gone > row;
  if (folded === app.folded) return;
  app.folded = folded;
  app.render();
}

function watchKeys() {
  document.addEventListener('keydown', (e) => {
    if (e.key === 'Escape' && app.panel) {
      app.close();
      return;
    }
    const inText = document.activeElement instanceof HTMLInputElement || document.activeElement instanceof HTMLTextAreaElement;
    if (!(e.ctrlKey || e.metaKey) || e.altKey || inText) return;
    const key = e.key.toLowerCase();
    if (key === 'z' && !e.shiftKey) app.undo();
    else if ((key === 'z' && e.shiftKey) || key === 'y') app.redo();
    else return;
    e.preventDefault();
  });
}

/** A sheet is put away by a swipe down from its head. */
function watchSwipe() {
  /** @type {{y: number} | undefined} */ let from;
  root.addEventListener(
    'touchstart',
    (e) => {
      from = e.target instanceof Element && e.target.closest('.sheet-head') ? { y: e.touches[0].clientY } : undefined;
    },
    { passive: true },
  );
  root.addEventListener(
    'touchend',
    (e) => {
      if (from && e.changedTouches[0].clientY - from.y > 60) app.close();
      from = undefined;
    },
    { passive: true },
  );
}

/** A link in the address is a plan that was sent. It is taken out, so that a reload does not bring it again. */
async function openAddress() {
  const link = location.hash.slice(1);
  if (!link) return;
  history.replaceState(null, '', location.pathname + location.search);
  await app.openLink(link);
}

async function begin() {
  app.setTheme(remembered('theme'));
  desk.addEventListener('change', () => {
    app.wide = desk.matches;
    app.render();
    assess();
  });
  addEventListener('resize', () => app.render());
  addEventListener('hashchange', openAddress);
  addEventListener('beforeprint', drawPaper);
  watchTyping();
  addEventListener('scroll', fold, { passive: true });
  watchKeys();
  watchSwipe();

  const kept = await store.list();
  app.plans = kept;
  const doc = kept[0] && (await store.open(kept[0].id));
  if (doc) {
    const place = placeIn(doc.id);
    app.section = place.section;
    show(doc.id, state.resume(doc), place.surface);
    app.ticks = ticksOf(doc);
  } else if (location.hash.length > 1) {
    // Somebody who was sent a plan sees that plan, not a wall of ours beside it.
    await openAddress();
  }
  if (!doc && !app.planId) {
    const reply = await engine.ask('new', { region: guessRegion(), which: 'first' });
    if (!reply.ok) {
      const words = document.createElement('p');
      words.className = 'verdict';
      words.textContent = reply.panic ?? reply.faults?.[0]?.words ?? '';
      root.append(words);
    } else {
      const { brought } = app;
      show(store.newId(), state.begin(reply.plan, 'a wall'));
      app.first = true;
      app.brought = brought;
      // Lit, but the keyboard stays down until it is asked for.
      if (!coarse.matches)
        afterDraw(
          () =>
            document.querySelector('.lit-field input') instanceof HTMLElement &&
            /** @type {HTMLElement} */ (document.querySelector('.lit-field input')).focus({ preventScroll: true }),
        );
    }
  }
  if (doc) await openAddress();

  keepOffline({
    ready: () => {
      app.offline = true;
      app.render();
    },
    waiting: (take) => {
      app.offline = true;
      if (Date.now() - Number(remembered('asked') || 0) < 24 * 3600 * 1000) return;
      remember('asked', String(Date.now()));
      app.tell({ message: { head: 'A newer version is here.', pieces: [] }, taps: [{ words: 'Use it', act: take }] });
    },
  });
  if (navigator.serviceWorker?.controller) app.offline = true;
}

begin();
