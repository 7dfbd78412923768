import assert from 'node:assert/strict';
import { beforeEach, mock, test } from 'node:test';

globalThis.WORKER_URL = ''; // set by the build, else
const { startEngine } = await import('./engine.js');

/** Stands in for the browser's worker: keeps what is posted, says what the test tells it to. */
class FakeWorker {
  posted = [];
  ended = false;
  postMessage(message) {
    this.posted.push(message);
  }
  terminate() {
    this.ended = true;
  }
  say(data) {
    this.onmessage({ data });
  }
  begin(core = 1) {
    this.say({ ready: JSON.stringify({ ok: true, version: { core } }) });
  }
  /** Answers the question asked last. */
  answer(reply = { ok: true }) {
    this.say({ id: this.posted.at(-1).id, reply: JSON.stringify(reply) });
  }
}

let workers;
const start = () => {
  workers.push(new FakeWorker());
  return workers.at(-1);
};

beforeEach(() => {
  workers = [];
  mock.timers.reset();
  mock.timers.enable({ apis: ['setTimeout'] });
});

test('a question asked before the core runs is answered once it does', async () => {
  const engine = startEngine({}, start);
  const reply = engine.ask('new', { region: 'US' });
  assert.equal(workers[0].posted.length, 0);
  workers[0].begin();
  assert.deepEqual(workers[0].posted, [{ id: 1, method: 'new', args: '{"region":"US"}' }]);
  workers[0].answer({ ok: true, plan: { name: 'x' } });
  assert.deepEqual(await reply, { ok: true, plan: { name: 'x' } });
});

test('of many assesses one is under way, and only the newest waits', async () => {
  const engine = startEngine({}, start);
  workers[0].begin();
  const first = engine.ask('assess', { plan: 1 });
  const second = engine.ask('assess', { plan: 2 });
  const third = engine.ask('assess', { plan: 3 });
  const other = engine.ask('boards', { query: 'ply' });
  assert.deepEqual(await second, { ok: false, superseded: true });
  workers[0].answer({ ok: true, n: 1 });
  assert.equal((await first).n, 1);
  assert.equal(workers[0].posted.at(-1).args, '{"plan":3}');
  workers[0].answer({ ok: true, n: 3 });
  assert.equal((await third).n, 3);
  workers[0].answer({ ok: true, boards: [] });
  assert.deepEqual((await other).boards, []);
});

test('an assess with a slot of its own is not pushed out', async () => {
  const engine = startEngine({}, start);
  workers[0].begin();
  engine.ask('assess', { plan: 1 });
  const idle = engine.ask('assess', { plan: 1, want: { rows: true } }, 'idle');
  engine.ask('assess', { plan: 2 });
  workers[0].answer();
  workers[0].answer({ ok: true, rows: [] });
  assert.deepEqual((await idle).rows, []);
});

test('figures are said to be behind after 150 ms, and not before', async () => {
  const said = [];
  const engine = startEngine({ stale: (late) => said.push(late) }, start);
  workers[0].begin();
  let reply = engine.ask('assess', {});
  mock.timers.tick(149);
  workers[0].answer();
  await reply;
  assert.deepEqual(said, []);
  reply = engine.ask('assess', {});
  mock.timers.tick(150);
  assert.deepEqual(said, [true]);
  workers[0].answer();
  await reply;
  assert.deepEqual(said, [true, false]);
});

test('a core that ends is answered in words and started again; what waited is asked there', async () => {
  const said = [];
  const engine = startEngine({ restarted: (words) => said.push(words) }, start);
  workers[0].begin();
  const broken = engine.ask('assess', { plan: 1 });
  const next = engine.ask('assess', { plan: 2 });
  workers[0].say({ fatal: 'the program has ended' });
  const { ok, panic } = await broken;
  assert.equal(ok, false);
  assert.match(panic, /broke off.*as you typed it/);
  assert.deepEqual(said, [panic]);
  assert.equal(workers[0].ended, true);
  workers[0].answer({ ok: true }); // too late: nobody listens to it any more
  workers[1].begin();
  assert.equal(workers[1].posted.at(-1).args, '{"plan":2}');
  workers[1].answer({ ok: true, n: 2 });
  assert.equal((await next).n, 2);
  assert.deepEqual(await engine.ask('assess', { plan: 1 }), { ok: false, panic }, 'what ended one core is not given to the next');
});

test('a question that never ends is stopped after 20 s', async () => {
  const engine = startEngine({}, start);
  workers[0].begin();
  const hung = engine.ask('assess', {});
  mock.timers.tick(20_000);
  assert.match((await hung).panic, /20 seconds/);
  assert.equal(workers[0].ended, true);
  workers[1].begin();
  const after = engine.ask('version', {});
  workers[1].answer({ ok: true });
  assert.equal((await after).ok, true);
});

test('a core that cannot be started says why, and is tried again at the next question', async () => {
  const engine = startEngine({}, start);
  const one = engine.ask('assess', {});
  const two = engine.ask('new', {});
  workers[0].say({ fatal: 'its file is missing (404)' });
  assert.match((await one).panic, /could not be started: its file is missing/);
  assert.match((await two).panic, /could not be started/);
  assert.equal(workers.length, 1);
  const later = engine.ask('assess', {});
  assert.equal(workers.length, 2);
  workers[1].begin();
  workers[1].answer({ ok: true });
  assert.equal((await later).ok, true);
});

test('a page and a core of different versions do not work together', async () => {
  const engine = startEngine({}, start);
  const reply = engine.ask('assess', {});
  workers[0].begin(2);
  assert.match((await reply).panic, /different versions/);
});
