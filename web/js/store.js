// The plans kept in this browser, each as typed and with its last steps. The
// one door to the browser's storage:
//
//   const store = openStore({state: (s) => …});
//   await store.list()            newest opened first: [{id, name, opened, changed}]
//   await store.open(id)          {id, plan, steps, at, ticks} or undefined
//   await store.save(id, doc)     doc = {plan, steps: [{label, plan}], at}
//   await store.tick(id, ticks)   what was got, with the plan: {item: how many}
//   await store.remove(id)
//
// Nothing is ever thrown: where the browser keeps nothing (full, private
// window, broken) the plans stay in memory, the same calls go on working, and
// the state says {kept: false, why}. Plans and steps are taken as they are and
// must not be changed afterwards: an edit makes a new plan.

/**
 * @typedef {{label: string, plan: any}} Step
 * @typedef {Record<string, number>} Ticks what was got of the list, and steps done
 * @typedef {{plan: any, steps: Step[], at: number, ticks?: Ticks}} Doc at is the index of the step on screen; ticks are only read here, see tick
 * @typedef {{id: string, name: string, opened: number, changed: number}} Entry
 * @typedef {{kept: true} | {kept: false, why: 'full' | 'unavailable'}} State
 */

/** Steps kept of a plan; undo does not reach further back after a reload. */
export const LIMIT = 100;
/** A database that has not opened by then never will, ms. */
const PATIENCE = 4000;

/**
 * @param {object} [tell]
 * @param {(state: State) => void} [tell.state] told when it changes
 * @param {string} [database] another name, for tests
 */
export function openStore(tell = {}, database = 'twoleaf') {
  /** Plans that could not be written. @type {Map<string, Doc & Entry>} */
  const memory = new Map();
  /** What the stored plan was when this page last saw it: another window may have written since. @type {Map<string, string>} */
  const stamps = new Map();
  /** Ticks that are not on the disk, or may not be. @type {Map<string, Ticks>} */
  const ticked = new Map();
  /** The number of a step in the database, by the step itself. @type {WeakMap<Step, {id: string, n: number}>} */
  const numbers = new WeakMap();
  /** Saves that wait for the one being written; the newest of a plan wins. @type {Map<string, {doc: Doc, done: ((kept: boolean) => void)[]}>} */
  const waiting = new Map();
  /** @type {Promise<void> | undefined} */ let writing;
  /** @type {State} */ let state = { kept: true };
  /** @type {Promise<IDBDatabase> | undefined} */ let opening;
  let asked = false;

  /** @param {State} now */
  function become(now) {
    const same = now.kept === state.kept && (now.kept || state.kept || now.why === state.why);
    state = now;
    if (!same) tell.state?.(now);
  }

  function db() {
    opening ??= openDatabase(database, () => {
      opening = undefined;
    }).catch((reason) => {
      opening = undefined;
      throw reason;
    });
    return opening;
  }

  /** @returns {Promise<Entry[]>} */
  async function list() {
    /** @type {Map<string, Entry>} */
    const entries = new Map();
    try {
      const tx = (await db()).transaction('plans');
      for (const { id, name, opened, changed } of await result(tx.objectStore('plans').getAll())) entries.set(id, { id, name, opened, changed });
    } catch (reason) {
      become(failed(reason));
    }
    for (const { id, name, opened, changed } of memory.values()) entries.set(id, { id, name, opened, changed });
    return [...entries.values()].sort((a, b) => b.opened - a.opened);
  }

  /**
   * @param {string} id
   * @returns {Promise<(Doc & {id: string}) | undefined>}
   */
  async function open(id) {
    await writing;
    const held = memory.get(id);
    if (held) {
      held.opened = Date.now();
      return { id, plan: held.plan, steps: held.steps, at: held.at, ticks: ticked.get(id) };
    }
    try {
      const tx = (await db()).transaction(['plans', 'steps'], 'readwrite');
      const [record, kept] = await Promise.all([result(tx.objectStore('plans').get(id)), result(tx.objectStore('steps').getAll(stepsOf(id)))]);
      if (!record) return undefined;
      tx.objectStore('plans').put({ ...record, opened: Date.now() });
      await finished(tx);
      stamps.set(id, record.stamp);
      const steps = kept.map(({ n, label, plan }) => {
        const step = { label, plan };
        numbers.set(step, { id, n });
        return step;
      });
      return { id, plan: record.plan, steps, at: record.at, ticks: ticked.get(id) ?? record.ticks };
    } catch (reason) {
      become(failed(reason));
      return undefined;
    }
  }

  /**
   * @param {string} id
   * @param {Doc} doc
   * @returns {Promise<boolean>} whether this or something newer of the plan is on the disk
   */
  function save(id, doc) {
    if (!asked) {
      asked = true;
      // Some browsers clear what has not been used for a week, unless asked.
      globalThis.navigator?.storage?.persist?.().catch(() => {});
    }
    return new Promise((done) => {
      const before = waiting.get(id)?.done ?? [];
      waiting.set(id, { doc, done: [...before, done] });
      writing ??= writeAll();
    });
  }

  async function writeAll() {
    for (let next = waiting.entries().next(); !next.done; next = waiting.entries().next()) {
      const [id, { doc, done }] = next.value;
      waiting.delete(id);
      const now = await write(id, doc);
      if (now.kept) memory.delete(id);
      else {
        const opened = Date.now();
        memory.set(id, { ...doc, id, name: doc.plan.name, opened, changed: opened });
      }
      become(now);
      for (const tell of done) tell(now.kept);
    }
    writing = undefined;
  }

  /**
   * @param {string} id
   * @param {Doc} doc
   * @returns {Promise<State>}
   */
  async function write(id, doc) {
    const cut = Math.max(0, doc.steps.length - LIMIT);
    const bounded = { plan: doc.plan, steps: doc.steps.slice(cut), at: Math.max(0, doc.at - cut) };
    try {
      await put(await db(), id, bounded);
      return { kept: true };
    } catch (reason) {
      if (failed(reason).why !== 'full') return failed(reason);
    }
    try {
      // The plan matters more than the way to it.
      await put(await db(), id, { plan: doc.plan, steps: [], at: 0 });
      return { kept: true };
    } catch (reason) {
      return failed(reason);
    }
  }

  /**
   * Writes the plan and those of its steps that are not there yet.
   * @param {IDBDatabase} db
   * @param {string} id
   * @param {Doc} doc
   */
  async function put(db, id, doc) {
    const tx = db.transaction(['plans', 'steps'], 'readwrite');
    const end = finished(tx);
    end.catch(() => {}); // told below; a request that fails first is told instead
    const plans = tx.objectStore('plans');
    const steps = tx.objectStore('steps');
    const [record, keys] = await Promise.all([result(plans.get(id)), result(steps.getAllKeys(stepsOf(id)))]);
    const stored = new Set(keys.map((key) => /** @type {[string, number]} */ (key)[1]));
    const stranger = record && record.stamp !== stamps.get(id);
    if (stranger) {
      // Another window has written this plan since: what it wrote stays, as a plan of its own.
      const copy = { ...record, id: newId(), name: `${record.name} (other window)`, at: 0 };
      plans.put({ ...copy, plan: { ...record.plan, name: copy.name } });
      steps.delete(stepsOf(id));
      stored.clear();
    }
    let last = Math.max(0, ...stored);
    /** @type {[Step, number][]} */
    const written = [];
    for (const step of doc.steps) {
      const known = numbers.get(step);
      if (known?.id === id && stored.delete(known.n)) continue;
      written.push([step, ++last]);
      steps.put({ id, n: last, label: step.label, plan: step.plan });
    }
    for (const n of stored) steps.delete([id, n]); // undone and overtaken, or too old
    const stamp = newId();
    const now = Date.now();
    const ticks = ticked.get(id) ?? record?.ticks;
    plans.put({ id, name: doc.plan.name, opened: now, changed: now, stamp, plan: doc.plan, at: doc.at, ...(ticks ? { ticks } : {}) });
    await end;
    stamps.set(id, stamp);
    for (const [step, n] of written) numbers.set(step, { id, n });
  }

  /**
   * Keeps what was got with the plan, without touching the plan. A plan that is not
   * stored yet takes its ticks along when it is.
   * @param {string} id
   * @param {Ticks} ticks
   */
  async function tick(id, ticks) {
    ticked.set(id, ticks);
    try {
      const tx = (await db()).transaction('plans', 'readwrite');
      const plans = tx.objectStore('plans');
      const record = await result(plans.get(id));
      if (!record) return;
      plans.put({ ...record, ticks: ticked.get(id) });
      await finished(tx);
    } catch (reason) {
      become(failed(reason));
    }
  }

  /** @param {string} id */
  async function remove(id) {
    waiting.delete(id);
    await writing;
    memory.delete(id);
    ticked.delete(id);
    stamps.delete(id);
    try {
      const tx = (await db()).transaction(['plans', 'steps'], 'readwrite');
      tx.objectStore('plans').delete(id);
      tx.objectStore('steps').delete(stepsOf(id));
      await finished(tx);
    } catch (reason) {
      become(failed(reason));
    }
  }

  return { list, open, save, tick, remove, newId, state: () => state };
}

/** An id for a plan that no other window has. */
function newId() {
  const words = crypto.getRandomValues(new Uint32Array(2));
  return Array.from(words, (word) => word.toString(36)).join('');
}

/** @param {string} id */
function stepsOf(id) {
  return IDBKeyRange.bound([id], [id, []]); // an array sorts after every number
}

/**
 * @param {string} name
 * @param {() => void} closed
 * @returns {Promise<IDBDatabase>}
 */
function openDatabase(name, closed) {
  return new Promise((resolve, reject) => {
    setTimeout(reject, PATIENCE, new Error('the database does not open'));
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore('plans', { keyPath: 'id' });
      request.result.createObjectStore('steps', { keyPath: ['id', 'n'] });
    };
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      request.result.onclose = closed;
      request.result.onversionchange = () => {
        request.result.close();
        closed();
      };
      resolve(request.result);
    };
  });
}

/**
 * @template T
 * @param {IDBRequest<T>} request
 * @returns {Promise<T>}
 */
function result(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/**
 * @param {IDBTransaction} tx
 * @returns {Promise<void>}
 */
function finished(tx) {
  return new Promise((resolve, reject) => {
    tx.oncomplete = () => resolve();
    tx.onabort = () => reject(tx.error);
  });
}

/**
 * @param {any} reason
 * @returns {State & {kept: false}}
 */
function failed(reason) {
  return { kept: false, why: reason?.name === 'QuotaExceededError' ? 'full' : 'unavailable' };
}
