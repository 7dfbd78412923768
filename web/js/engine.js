// The page's side of the calls to the core; core/call.go is the other side and
// lists the methods. The core runs in a worker, so the page never waits for it.
//
//   const engine = startEngine({stale, ready});
//   const reply = await engine.ask('assess', {plan, want});
//
// A reply always comes, and is never thrown: {ok: true, …}, or {ok: false} with
// faults (the plan is at fault), panic (the core broke, in words) or superseded
// (a newer question took its place: nothing to do).

/**
 * @typedef {{ok: boolean, faults?: any[], panic?: string, superseded?: true, [part: string]: any}} Reply
 * @typedef {{id: number, method: string, args: string, slot: string, answer: (reply: Reply) => void}} Question
 * @typedef {object} Tell
 * @property {(late: boolean) => void} [stale] the figures on screen have been behind for 150 ms, or no longer are
 * @property {(version: {core: number, format: number, table: number}) => void} [ready] the core answers from now on
 * @property {(words: string) => void} [restarted] the core broke and was started afresh
 */

/** Set by the build. @type {string} */
const workerURL = WORKER_URL;

/** The core.Version this page was written for. */
const CORE = 1;
/** Figures that are this far behind are marked, ms. */
const LATE = 150;
/** A question that takes this long never ends, ms: an edit takes 16 on a desk, some 300 on the slowest phone. */
const HUNG = 20_000;

const SAFE = 'Your plan is as you typed it.';

/**
 * @param {Tell} [tell]
 * @param {() => Worker} [start] makes the worker; tests bring their own
 */
export function startEngine(tell = {}, start = newWorker) {
  /** @type {Worker | undefined} */ let worker;
  let running = false; // the worker has said that it is ready
  /** @type {Question | undefined} */ let current;
  /** @type {Question[]} */ let waiting = [];
  let lastId = 0;
  /** What ended the core, and what was said then; it would end it again. @type {Map<string, string>} */
  const fatal = new Map();
  /** @type {ReturnType<typeof setTimeout> | undefined} */ let hung;
  /** @type {ReturnType<typeof setTimeout> | undefined} */ let late;
  let isLate = false;

  /**
   * Asks the core. Of questions with the same slot only the newest waits; an
   * assess is its own slot unless another is named, so that typing never queues up.
   * @param {string} method
   * @param {object} args
   * @param {string} [slot]
   * @returns {Promise<Reply>}
   */
  function ask(method, args, slot = method === 'assess' ? method : '') {
    return new Promise((answer) => {
      const question = { id: ++lastId, method, args: JSON.stringify(args), slot, answer };
      const panic = fatal.get(method + question.args);
      if (panic) {
        answer({ ok: false, panic });
        return;
      }
      const older = slot ? waiting.findIndex((q) => q.slot === slot) : -1;
      if (older >= 0) waiting.splice(older, 1, question)[0].answer({ ok: false, superseded: true });
      else waiting.push(question);
      next();
      watchLate();
    });
  }

  function next() {
    worker ??= launch();
    if (!running || current) return;
    current = waiting.shift();
    if (!current) return;
    worker.postMessage({ id: current.id, method: current.method, args: current.args });
    hung = setTimeout(() => broken(`The calculation took longer than ${HUNG / 1000} seconds and was stopped.`), HUNG);
  }

  /** @param {Reply} reply */
  function settle(reply) {
    clearTimeout(hung);
    const question = current;
    current = undefined;
    if (question?.method === 'assess') {
      // For those who measure: when the last one came in, and which it was.
      performance.clearMarks('assessed');
      performance.mark('assessed', { detail: question.id });
    }
    question?.answer(reply);
    if (waiting.length > 0) next();
    watchLate();
  }

  function launch() {
    const fresh = start();
    running = false;
    fresh.onmessage = ({ data }) => {
      if (fresh !== worker) return;
      if (data.ready) began(JSON.parse(data.ready).version);
      else if (data.fatal) broken(running ? 'The calculation broke off.' : `The calculation could not be started: ${data.fatal}.`);
      else if (data.id === current?.id) settle(JSON.parse(data.reply));
    };
    fresh.onerror = (event) => {
      event.preventDefault();
      if (fresh === worker) broken(running ? 'The calculation broke off.' : 'The calculation could not be started.');
    };
    return fresh;
  }

  /** @param {{core: number, format: number, table: number}} version */
  function began(version) {
    if (version.core !== CORE) {
      broken(`This page and its core are of different versions (${CORE} and ${version.core}): reload the page.`);
      return;
    }
    running = true;
    tell.ready?.(version);
    next();
  }

  /**
   * Drops the worker. What was being asked is answered in words, and never asked
   * again, whoever asks: it would break the next one too. One that never ran is only tried
   * again at the next question.
   * @param {string} words
   */
  function broken(words) {
    const ran = running;
    worker?.terminate();
    worker = undefined;
    running = false;
    const panic = `${words} ${SAFE}`;
    if (ran) {
      if (current) fatal.set(current.method + current.args, panic);
      tell.restarted?.(panic);
      settle({ ok: false, panic });
      next();
      return;
    }
    const all = waiting;
    waiting = [];
    for (const question of all) question.answer({ ok: false, panic });
    watchLate();
  }

  function watchLate() {
    const behind = current?.method === 'assess' || waiting.some((q) => q.method === 'assess');
    if (!behind) {
      clearTimeout(late);
      late = undefined;
      if (isLate) tell.stale?.(false);
      isLate = false;
    } else if (late === undefined) {
      late = setTimeout(() => {
        isLate = true;
        tell.stale?.(true);
      }, LATE);
    }
  }

  worker = launch();
  return { ask };
}

/** The worker's script and the core are files beside the page, or stand in the page where it is a single file. */
function newWorker() {
  const source = document.getElementById('worker-source');
  if (!source) {
    const worker = new Worker(new URL(workerURL, document.baseURI));
    worker.postMessage({ load: '' });
    return worker;
  }
  const url = URL.createObjectURL(new Blob([source.textContent ?? ''], { type: 'text/javascript' }));
  const worker = new Worker(url);
  URL.revokeObjectURL(url);
  worker.postMessage({ load: document.getElementById('core-source')?.textContent?.trim() });
  return worker;
}
