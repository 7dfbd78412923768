// Makes the compiled core smaller on the wire without changing what it does.
// A Go program carries, for the trace it prints when it dies, the file and line
// of every instruction, and a table from addresses to functions that on
// WebAssembly follows one rule. The page prints no such trace: the lines are
// blanked, and the table is written by a start function of forty bytes instead
// of travelling. Measured on the core of November 2026: 1 116 000 bytes of
// brotli become about 970 000.
//
// The layout of the tables is the Go linker's (runtime/symtab.go, internal/abi:
// magic of Go 1.20 and later). Everything is checked before it is touched; what
// does not look as expected is an error, so that a newer Go is noticed.

const MAGIC = [0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8];
const SECTION = { type: 1, import: 2, function: 3, export: 7, start: 8, code: 10, data: 11 };
/** A bucket of the table from addresses to functions: an index and sixteen bytes of steps. */
const BUCKET = 20;
/** Buckets a function: it takes 64 KiB of addresses, a bucket covers 4 KiB. */
const BUCKETS = 16;
/** How the names of our own functions begin. */
const OURS = 'twoleaf/core';
/** Zeros that are worth a new segment; the linker's 8 are not, as zeros pack better than addresses. */
const GAP = 128;

/** @param {Uint8Array} wasm @returns {Uint8Array} */
export function slim(wasm) {
  const sections = split(wasm);
  const memory = image(section(sections, SECTION.data));
  const table = lineTable(memory.bytes);
  blankLines(memory.bytes, table);
  blankNames(memory.bytes, table);
  const at = blankBuckets(memory.bytes, table);
  section(sections, SECTION.data).body = segments(memory);
  addStart(sections, fill(at, table.functions * BUCKETS));
  return join(wasm.subarray(0, 8), sections);
}

/** @typedef {{id: number, body: Uint8Array}} Section */

/** @param {Uint8Array} wasm @returns {Section[]} */
function split(wasm) {
  const out = [];
  const r = reader(wasm, 8);
  while (r.at < wasm.length) {
    const id = wasm[r.at++];
    const size = r.number();
    out.push({ id, body: wasm.subarray(r.at, r.at + size) });
    r.at += size;
  }
  return out;
}

/** @param {Section[]} sections @param {number} id */
function section(sections, id) {
  const found = sections.find((s) => s.id === id);
  if (!found) throw new Error(`slim: the core has no section ${id}`);
  return found;
}

/** @param {Uint8Array} head @param {Section[]} sections */
function join(head, sections) {
  return bytes(head, ...sections.flatMap((s) => [[s.id, ...number(s.body.length)], s.body]));
}

/** The memory that the data section lays out. @param {Section} data */
function image(data) {
  const r = reader(data.body, 0);
  /** @type {{at: number, part: Uint8Array}[]} */
  const parts = [];
  let end = 0;
  for (let n = r.number(); n > 0; n--) {
    if (data.body[r.at++] !== 0 || data.body[r.at++] !== 0x41) throw new Error('slim: a segment that is not at a constant address');
    const at = r.signed();
    if (data.body[r.at++] !== 0x0b) throw new Error('slim: an address that is not a constant');
    const size = r.number();
    parts.push({ at, part: data.body.subarray(r.at, r.at + size) });
    r.at += size;
    end = Math.max(end, at + size);
  }
  const all = new Uint8Array(end);
  for (const p of parts) all.set(p.part, p.at);
  return { bytes: all, start: parts[0].at };
}

/** @typedef {{functions: number, names: number, namesEnd: number, table: number, steps: number, stepsEnd: number, view: DataView}} Lines */

/** Where the linker put what it knows of functions. @param {Uint8Array} m @returns {Lines} */
function lineTable(m) {
  const view = new DataView(m.buffer, m.byteOffset, m.byteLength);
  for (let at = m.indexOf(MAGIC[0]); at >= 0; at = m.indexOf(MAGIC[0], at + 1)) {
    if (!MAGIC.every((b, i) => m[at + i] === b)) continue;
    const head = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => Number(view.getBigUint64(at + 8 + 8 * i, true)));
    const [functions, , , names, units, , steps, table] = head;
    if (functions > 0 && names < units && steps < table && at + table < m.length) {
      return { functions, names: at + names, namesEnd: at + units, table: at + table, steps: at + steps, stepsEnd: at + table, view };
    }
  }
  throw new Error('slim: the core has no line table of a known kind');
}

/** Blanks file and line of every function, and the steps that only they use. @param {Uint8Array} m @param {Lines} t */
function blankLines(m, t) {
  const kept = new Set([0]);
  const dropped = new Set();
  const places = [];
  for (let k = 0; k < t.functions; k++) {
    const f = t.table + t.view.getUint32(t.table + 8 * k + 4, true);
    places.push(f);
    kept.add(t.view.getUint32(f + 16, true)); // stack depth
    dropped.add(t.view.getUint32(f + 20, true)).add(t.view.getUint32(f + 24, true)); // file, line
    const more = t.view.getUint32(f + 28, true);
    if (more > 16) throw new Error('slim: a function with more tables than there are');
    for (let i = 0; i < more; i++) kept.add(t.view.getUint32(f + 44 + 4 * i, true));
  }
  const all = [...new Set([...kept, ...dropped])].sort((a, b) => a - b);
  const size = t.stepsEnd - t.steps;
  if (all[all.length - 1] >= size) throw new Error('slim: a function points past its tables');
  all.forEach((at, i) => {
    if (dropped.has(at) && !kept.has(at)) m.fill(0, t.steps + at, t.steps + (all[i + 1] ?? size));
  });
  for (const f of places) {
    m.fill(0, f + 20, f + 28); // 0 is "not known"
    m.fill(0, f + 32, f + 40); // unit of the file, first line
  }
}

/** Blanks the names of functions that are not ours; the words about a failure name only ours. @param {Uint8Array} m @param {Lines} t */
function blankNames(m, t) {
  const ours = new TextEncoder().encode(OURS);
  /** @type {[number, number][]} */
  const kept = [];
  for (let k = 0; k < t.functions; k++) {
    const f = t.table + t.view.getUint32(t.table + 8 * k + 4, true);
    const name = t.names + t.view.getUint32(f + 4, true);
    if (name >= t.namesEnd) throw new Error('slim: a function with no name');
    if (ours.every((b, i) => m[name + i] === b)) kept.push([name, m.indexOf(0, name)]);
    else t.view.setUint32(f + 4, 0, true);
  }
  const names = kept.map(([from, to]) => [from, m.slice(from, to)]);
  m.fill(0, t.names, t.namesEnd);
  for (const [from, text] of /** @type {[number, Uint8Array][]} */ (names)) m.set(text, from);
}

/** Blanks the table from addresses to functions and says where it is. @param {Uint8Array} m @param {Lines} t */
function blankBuckets(m, t) {
  const count = t.functions * BUCKETS;
  const follows = (/** @type {number} */ at, /** @type {number} */ k) => t.view.getUint32(at + BUCKET * k, true) === k >> 4;
  for (let at = t.table & ~3; at + BUCKET * (count - BUCKETS) + 4 <= m.length; at += 4) {
    if (!(follows(at, 16) && follows(at, 32) && follows(at, 15) && follows(at, 31))) continue;
    let k = 0;
    while (k < count && at + BUCKET * k + 4 <= m.length && follows(at, k)) {
      if (m.subarray(at + BUCKET * k + 4, at + BUCKET * (k + 1)).some((b) => b !== 0) && k < count - BUCKETS) break;
      k++;
    }
    // The last function may take less than its sixteen buckets.
    if (k < count - BUCKETS) continue;
    for (let i = 0; i < k; i++) m.fill(0, at + BUCKET * i, at + BUCKET * i + 4);
    t.functions = k / BUCKETS;
    return at;
  }
  throw new Error('slim: the table from addresses to functions does not follow its rule');
}

/** The memory as segments again. @param {{bytes: Uint8Array, start: number}} memory */
function segments({ bytes: m, start }) {
  /** @type {(Uint8Array | number[])[]} */
  const out = [];
  let count = 0;
  for (let at = start; at < m.length; ) {
    if (m[at] === 0) {
      at++;
      continue;
    }
    let end = at + 1;
    for (let zeros = 0, i = end; i < m.length && zeros < GAP; i++) {
      zeros = m[i] === 0 ? zeros + 1 : 0;
      if (zeros === 0) end = i + 1;
    }
    out.push([0, 0x41, ...signed(at), 0x0b, ...number(end - at)], m.subarray(at, end));
    count++;
    at = end;
  }
  return bytes(number(count), ...out);
}

/** for k = 0 … count−1: memory[at + 20 k] = k / 16. @param {number} at @param {number} count */
function fill(at, count) {
  // One local of type i32; loop; address; k >> 4; store; k + 1 < count; again.
  return [
    [1, 1, 0x7f, 0x03, 0x40],
    [0x20, 0, 0x41, ...signed(BUCKET), 0x6c, 0x41, ...signed(at), 0x6a],
    [0x20, 0, 0x41, ...signed(4), 0x76, 0x36, 2, 0],
    [0x20, 0, 0x41, ...signed(1), 0x6a, 0x22, 0, 0x41, ...signed(count), 0x49, 0x0d, 0],
    [0x0b, 0x0b],
  ].flat();
}

/** Adds a function that runs before all others. @param {Section[]} sections @param {number[]} code */
function addStart(sections, code) {
  if (sections.some((s) => s.id === SECTION.start)) throw new Error('slim: the core has a start function already');
  const type = section(sections, SECTION.type);
  const kinds = counted(type.body);
  type.body = bytes(number(kinds.count + 1), kinds.rest, [0x60, 0, 0]); // () → ()
  const functions = section(sections, SECTION.function);
  const list = counted(functions.body);
  functions.body = bytes(number(list.count + 1), list.rest, number(kinds.count));
  const bodies = section(sections, SECTION.code);
  const all = counted(bodies.body);
  bodies.body = bytes(number(all.count + 1), all.rest, number(code.length), code);
  const start = number(imported(section(sections, SECTION.import).body) + list.count);
  const after = sections.findIndex((s) => s.id === SECTION.export);
  sections.splice(after + 1, 0, { id: SECTION.start, body: bytes(start) });
}

/** How many of the imports are functions. @param {Uint8Array} body */
function imported(body) {
  const r = reader(body, 0);
  let functions = 0;
  for (let n = r.number(); n > 0; n--) {
    for (const _ of ['module', 'name']) {
      const size = r.number(); // moves on before its value is added
      r.at += size;
    }
    if (body[r.at++] !== 0) throw new Error('slim: an import that is no function');
    r.number();
    functions++;
  }
  return functions;
}

/** @param {Uint8Array} body */
function counted(body) {
  const r = reader(body, 0);
  const count = r.number();
  return { count, rest: body.subarray(r.at) };
}

/** @param {Uint8Array} from @param {number} at */
function reader(from, at) {
  return {
    at,
    /** An unsigned number of seven bits a byte. */
    number() {
      let value = 0;
      for (let shift = 0; ; shift += 7) {
        const b = from[this.at++];
        value += (b & 127) * 2 ** shift;
        if (b < 128) return value;
      }
    },
    /** A signed one, of at most 32 bits. */
    signed() {
      let value = 0;
      for (let shift = 0; ; shift += 7) {
        const b = from[this.at++];
        value |= (b & 127) << shift;
        if (b < 128) return shift < 25 && b & 64 ? value | (-1 << (shift + 7)) : value;
      }
    },
  };
}

/** @param {number} value */
function number(value) {
  const out = [];
  for (; value > 127; value = Math.floor(value / 128)) out.push((value % 128) | 128);
  return [...out, value];
}

/** @param {number} value */
function signed(value) {
  const out = [];
  for (; value < -64 || value > 63; value >>= 7) out.push((value & 127) | 128);
  return [...out, value & 127];
}

/** @param {...(Uint8Array | number[])} parts */
function bytes(...parts) {
  const out = new Uint8Array(parts.reduce((sum, p) => sum + p.length, 0));
  let at = 0;
  for (const p of parts) {
    out.set(p, at);
    at += p.length;
  }
  return out;
}
