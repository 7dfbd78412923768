// The built core under Node: for the build, which prints its first figures into
// the page, and for tests.
//
//   node core.mjs core.wasm < questions.json    [[method, args], …] → [reply, …], as text

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** The support script of the Go that compiles the core; the two belong together. */
export function runtime() {
  const goroot = execFileSync('go', ['env', 'GOROOT'], { encoding: 'utf8' }).trim();
  return join(goroot, 'lib', 'wasm', 'wasm_exec.js');
}

/**
 * @param {Buffer} core
 * @returns {Promise<(method: string, args: string) => string>}
 */
export async function startCore(core) {
  await import(pathToFileURL(runtime()).href);
  const go = new Go();
  const module = await WebAssembly.compile(new Uint8Array(core));
  go.run(await WebAssembly.instantiate(module, go.importObject));
  const { twoleaf } = globalThis;
  if (!twoleaf) throw new Error('the core does not answer');
  return twoleaf.call;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const ask = await startCore(readFileSync(process.argv[2]));
  /** @type {[string, string][]} */
  const questions = JSON.parse(readFileSync(0, 'utf8'));
  console.log(JSON.stringify(questions.map(([method, args]) => ask(method, args))));
}
