// Builds the site and the single file into .dist. Everything in it is made
// here: the core by Go, the scripts by esbuild, the first figures in the page
// by the core itself. Needs Go, Node and `npm ci`.
//
//   node build.mjs            all of it
//   node build.mjs --cells    only says the strip's cells for a report on stdin

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { brotliCompressSync, gzipSync, constants as zlib } from 'node:zlib';
import { build } from 'esbuild';
import { runtime, startCore } from './core.mjs';
import { slim } from './slim.mjs';

const web = dirname(fileURLToPath(import.meta.url));
const root = dirname(web);
const dist = join(root, '.dist');

/** Files with plain names, which addresses and home screens point at; all others carry the hash of their content. */
const PLAIN = ['manifest.webmanifest', 'icons/icon.svg', 'icons/icon-192.png', 'icons/icon-512.png', 'icons/touch-180.png'];

/** The region whose first wall is printed into the page. */
const REGION = 'US';

/** Packages whose short functions are put in the place of their calls, for speed; everywhere else the calls are kept, for size. */
const INLINED = ['internal/runtime/maps', 'math', 'twoleaf/core/band', 'twoleaf/core/rating', 'twoleaf/core/transmission'];

if (process.argv.includes('--cells')) console.log(JSON.stringify(await cellsOf(JSON.parse(readFileSync(0, 'utf8')))));
else await main();

async function main() {
  mkdirSync(dist, { recursive: true });
  const core = compileCore();
  const html = fill(read('index.html'), await cellsOf(await firstReport(core)));
  const style = await bundle('style.css');

  /** @type {Map<string, Buffer>} */
  const files = new Map();
  /** @param {string} name @param {string | Buffer} content */
  const add = (name, content) => {
    const dot = name.lastIndexOf('.');
    const full = `${name.slice(0, dot)}-${hash(content)}${name.slice(dot)}`;
    files.set(full, Buffer.from(content));
    return full;
  };

  const coreName = add('core.wasm', core);
  const workerName = add('worker.js', await bundle('js/worker.js', { CORE_URL: coreName }));
  const scriptName = add('main.js', await bundle('js/main.js', { WORKER_URL: workerName }));
  const styleName = add('style.css', style);
  for (const name of PLAIN) files.set(name, readFileSync(join(web, name)));
  const page = withParts(html, {
    policy:
      "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; connect-src 'self'; style-src 'self'; img-src 'self' data:; manifest-src 'self'",
    style: `<link rel="stylesheet" href="${styleName}">`,
    script: `<script type="module" src="${scriptName}"></script>`,
  });
  files.set('index.html', Buffer.from(page));

  const version = hash(JSON.stringify([...files].map(([name, content]) => [name, hash(content)])) + read('sw.js'));
  const cached = ['./', ...[...files.keys()].filter((name) => name !== 'index.html')];
  files.set('sw.js', Buffer.from(await bundle('sw.js', { SITE: { version, files: cached } })));

  const onTheWire = [...files].map(([name, content]) => ({ name, plain: content.length, ...write(name, content) }));
  const single = Buffer.from(await singleFile(html, style, core));
  const passedOn = { name: 'twoleaf.html', plain: single.length, ...write('twoleaf.html', single) };
  sweep([...files.keys(), 'twoleaf.html']);
  report(onTheWire, passedOn, version);
}

/** The core, small and the same on every machine. */
function compileCore() {
  const path = join(dist, 'core.tmp');
  const flags = ['-trimpath', '-buildvcs=false', '-ldflags=-s -w -buildid=', '-gcflags=all=-l', ...INLINED.map((name) => `-gcflags=${name}=`)];
  execFileSync('go', ['build', ...flags, '-o', path, './wasm'], { cwd: root, stdio: 'inherit', env: { ...process.env, GOOS: 'js', GOARCH: 'wasm' } });
  const bytes = Buffer.from(slim(readFileSync(path)));
  rmSync(path);
  return bytes;
}

/**
 * What the core itself says about the first wall.
 * @param {Buffer} core
 */
async function firstReport(core) {
  const call = await startCore(core);
  /** @param {string} method @param {object} args */
  const ask = (method, args) => {
    const reply = JSON.parse(call(method, JSON.stringify(args)));
    if (!reply.ok) throw new Error(`the core does not answer ${method}: ${JSON.stringify(reply)}`);
    return reply;
  };
  const { plan } = ask('new', { region: REGION, which: 'first' });
  return { units: plan.units, report: ask('assess', { plan, want: {} }).report };
}

/**
 * The cells of the strip as the page itself would write them.
 * @param {{report: object, units: string}} first
 * @returns {Promise<{figure: string, unit: string, second: string}[]>}
 */
async function cellsOf({ report, units }) {
  const path = join(web, 'js', 'ui', 'strip.js');
  if (!existsSync(path)) throw new Error('web/js/ui/strip.js is missing: its stripCells(report, units) writes the figures into the page');
  const { stripCells } = await import(pathToFileURL(path).href);
  return stripCells(report, units);
}

/**
 * Puts the first figures where the page has <!--cell 0 figure-->.
 * @param {string} html
 * @param {Record<string, string>[]} cells
 */
function fill(html, cells) {
  let filled = 0;
  const whole = html.replace(/<!--cell (\d) (\w+)-->/g, (_, index, part) => {
    const text = cells[index]?.[part];
    if (text === undefined) throw new Error(`index.html asks for cell ${index} ${part}, which stripCells does not give`);
    if (part === 'figure') filled++;
    return asText(text);
  });
  if (filled !== cells.length) throw new Error(`index.html has places for ${filled} figures of the strip, stripCells gives ${cells.length}`);
  return whole;
}

/**
 * Bundles and minifies one script or style sheet.
 * @param {string} entry
 * @param {Record<string, unknown>} [constants]
 */
async function bundle(entry, constants = {}) {
  const define = Object.fromEntries(Object.entries(constants).map(([name, value]) => [name, JSON.stringify(value)]));
  const { outputFiles } = await build({
    entryPoints: [join(web, entry)],
    bundle: true,
    minify: true,
    write: false,
    format: entry === 'js/main.js' ? 'esm' : 'iife',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'none',
    logLevel: 'warning',
    define,
    alias: { wasm_exec: runtime() },
  });
  return outputFiles[0].text;
}

/**
 * The page with its policy, style and script in place of what the source refers to.
 * @param {string} html
 * @param {{policy: string, style: string, script: string}} parts
 */
function withParts(html, { policy, style, script }) {
  const csp = `<meta http-equiv="Content-Security-Policy" content="${policy}; base-uri 'none'; form-action 'none'">`;
  let page = swap(html, /<meta charset="?utf-8"?\s*\/?>/i, (found) => `${found}\n${csp}`);
  page = swap(page, /<link rel="stylesheet" href="style\.css"\s*\/?>/, () => style);
  return swap(page, /<script type="module" src="js\/main\.js"><\/script>/, () => script);
}

/**
 * @param {string} text
 * @param {RegExp} pattern
 * @param {(found: string) => string} by
 */
function swap(text, pattern, by) {
  if (!pattern.test(text)) throw new Error(`index.html has nothing like ${pattern}`);
  return text.replace(pattern, by);
}

/**
 * The page with everything in it, to be passed on as one file and opened from a disk.
 * @param {string} html
 * @param {string} style
 * @param {Buffer} core
 */
async function singleFile(html, style, core) {
  const script = await bundle('js/main.js', { WORKER_URL: '' });
  const worker = await bundle('js/worker.js', { CORE_URL: '' });
  for (const text of [script, worker]) if (/<\/script|<!--/i.test(text)) throw new Error('a script cannot stand in the page: it has </script or <!-- in it');
  const icon = `data:image/svg+xml;base64,${readFileSync(join(web, 'icons/icon.svg')).toString('base64')}`;
  const page = html.replace(/\s*<link rel="(manifest|apple-touch-icon)"[^>]*>/g, '').replaceAll('href="icons/icon.svg"', `href="${icon}"`);
  return withParts(page, {
    // A blob worker takes over this policy, so the core may be compiled there.
    policy: `default-src 'none'; script-src '${digest(script)}' 'wasm-unsafe-eval' blob:; worker-src blob:; style-src '${digest(style)}'; img-src data:`,
    style: `<style>${style}</style>`,
    script: [
      // As text, which costs the browser nothing to read.
      `<script type="text/plain" id="core-source">${gzipSync(core, { level: 9 }).toString('base64')}</script>`,
      `<script type="text/plain" id="worker-source">${worker}</script>`,
      `<script type="module">${script}</script>`,
    ].join('\n'),
  });
}

/**
 * Writes a file and its compressed copies, unless the same ones are there.
 * @param {string} name
 * @param {Buffer} content
 */
function write(name, content) {
  const path = join(dist, name);
  mkdirSync(dirname(path), { recursive: true });
  const same = existsSync(path) && existsSync(`${path}.br`) && readFileSync(path).equals(content);
  if (!same) {
    writeFileSync(path, content);
    writeFileSync(`${path}.gz`, gzipSync(content, { level: 9 }));
    writeFileSync(`${path}.br`, brotliCompressSync(content, { params: { [zlib.BROTLI_PARAM_SIZE_HINT]: content.length } }));
  }
  return { gzip: readFileSync(`${path}.gz`).length, brotli: readFileSync(`${path}.br`).length };
}

/**
 * Takes away what an earlier build left; pictures of the tests stay.
 * @param {string[]} names
 */
function sweep(names) {
  const keep = new Set(names.flatMap((name) => [name, `${name}.br`, `${name}.gz`]));
  for (const entry of readdirSync(dist, { recursive: true, withFileTypes: true })) {
    const name = relative(dist, join(entry.parentPath, entry.name)).replaceAll('\\', '/');
    if (entry.isFile() && !name.startsWith('shots/') && !keep.has(name)) rmSync(join(dist, name));
  }
}

/**
 * Prints the sizes; a test holds them to their limit.
 * @param {{name: string, plain: number, gzip: number, brotli: number}[]} files
 * @param {{name: string, plain: number, gzip: number, brotli: number}} single
 * @param {string} version
 */
function report(files, single, version) {
  /** @param {'plain' | 'gzip' | 'brotli'} key */
  const sum = (key) => files.reduce((all, file) => all + file[key], 0);
  const total = { name: `whole site, version ${version}`, plain: sum('plain'), gzip: sum('gzip'), brotli: sum('brotli') };
  const rows = [...files, total, single].map(({ name, plain, gzip, brotli }) => [name, plain, gzip, brotli]);
  for (const [name, ...sizes] of [['bytes', 'plain', 'gzip', 'brotli'], ...rows]) {
    console.log(String(name).padEnd(36) + sizes.map((size) => size.toLocaleString('en').replaceAll(',', ' ').padStart(12)).join(''));
  }
}

/** @param {string} name */
function read(name) {
  return readFileSync(join(web, name), 'utf8');
}

/** @param {string | Buffer} content */
function hash(content) {
  return createHash('sha256').update(content).digest('hex').slice(0, 10);
}

/** @param {string} text */
function digest(text) {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`;
}

/** @param {string} text */
function asText(text) {
  return text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);
}
