// Runs the core. First message {load}: the core as gzip in base64, or empty to
// fetch it; then {id, method, args} → {id, reply}, both JSON text. Says
// {ready: version} once, and {fatal: words} when the Go program has ended.

import 'wasm_exec'; // of the Go that compiled the core; sets Go

/** Set by the build. @type {string} */
const coreURL = CORE_URL;

/** How often the first assess is done again while nothing else is asked: the browser compiles hot code in steps. */
const WARM_UP = 3;

/** @type {{call: (method: string, args: string) => string, version: string} | undefined} */
let core;
let warm = false;

self.onmessage = ({ data }) => {
  if ('load' in data) {
    begin(data.load).catch((reason) => self.postMessage({ fatal: String(reason?.message ?? reason) }));
    return;
  }
  try {
    self.postMessage({ id: data.id, reply: answer(data.method, data.args) });
  } catch (reason) {
    self.postMessage({ fatal: String(reason) });
    return;
  }
  if (data.method === 'assess' && !warm) {
    warm = true;
    warmUp(data.args, WARM_UP);
  }
};

/**
 * @param {string} method
 * @param {string} args
 */
function answer(method, args) {
  const reply = core?.call(method, args);
  // A Go program that ends inside the call gives nothing back.
  if (typeof reply !== 'string') throw new Error('no answer');
  return reply;
}

/**
 * @param {string} args
 * @param {number} times
 */
function warmUp(args, times) {
  if (times === 0) return;
  setTimeout(() => {
    answer('assess', args);
    warmUp(args, times - 1);
  });
}

/** @param {string} packed */
async function begin(packed) {
  const go = new Go();
  const { instance } = packed
    ? await WebAssembly.instantiate(await unpack(packed), go.importObject)
    : await fetched(new URL(coreURL, self.location.href), go.importObject);
  go.run(instance).then(() => self.postMessage({ fatal: 'the program has ended' }));
  core = self.twoleaf;
  if (!core) throw new Error('the program does not answer');
  self.postMessage({ ready: core.version });
}

/**
 * @param {URL} url
 * @param {WebAssembly.Imports} imports
 */
async function fetched(url, imports) {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`its file is missing (${response.status})`);
  // Streaming needs the right type, which not every server gives.
  const typed = response.headers.get('content-type') === 'application/wasm';
  return typed ? WebAssembly.instantiateStreaming(response, imports) : WebAssembly.instantiate(await response.arrayBuffer(), imports);
}

/** @param {string} packed gzip in base64 */
async function unpack(packed) {
  const bytes = Uint8Array.from(atob(packed), (c) => c.charCodeAt(0));
  const stream = new DecompressionStream('gzip');
  // Written and read by hand: one engine breaks on piping a blob's stream through here.
  const writer = stream.writable.getWriter();
  const written = writer.write(bytes).then(() => writer.close());
  const reader = stream.readable.getReader();
  const parts = [];
  for (let part = await reader.read(); !part.done; part = await reader.read()) parts.push(part.value);
  await written;
  return new Blob(parts).arrayBuffer();
}
