// Takes out of the built program what nothing on this page can call, lays like functions side by side, shortens the names
// by which program and script know each other, and hands long texts over in one piece. All of it is of use to a phone
// alone: the sources stay as they are.
//
// The stream classes come with the part of the framework that talks to servers. The bindings export them whether
// they are used or not, and an exported function keeps all that it calls. Names of imports end in sixteen digits of a
// hash, which no compression shortens, once in the program and once in the script.
import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";

// The script copies a text into the program letter by letter up to the first that is not ASCII, in a loop that at a start
// nothing has made quick yet: for a book of ten seasons some 60 ms at a quarter of the processor. The browser's own encoder
// takes a text of letters of one byte whole; of a text in which others are among them the loop takes those before the first
// of them, as it did, and what the encoder did is done twice: some milliseconds for as much.
const LETTER_BY_LETTER = "    for (; offset < len; offset++) {\n";
const IN_ONE_PIECE = `    if (len > 255) {
        const { read, written } = cachedTextEncoder.encodeInto(arg, mem.subarray(ptr, ptr + len));
        if (read === len && written === len) offset = len;
    }
`;

const UNUSED_CLASS = /^(__wbg_)?intounderlying/;
const [IMPORTS, EXPORTS] = [2, 7];

/** Rewrites both files where they lie. `fail` is called with a sentence when they are not as expected. */
export function trim(program, script, fail) {
  const whole = sections(readFileSync(program));
  writeFileSync(program, joined(whole.map((part) => (part.id === EXPORTS ? used(part, fail) : part))));
  const features = execFileSync("wasm-opt", [program, "--print-features", "-o", program], { encoding: "utf8" }).trim().split(/\s+/);
  // What the first round left a second one still shortens: 0.7 KB of what goes over the line.
  for (let round = 0; round < 2; round += 1) sideBySide(program, features, fail);

  const names = new Map();
  const shortened = sections(readFileSync(program)).map((part) => (part.id === IMPORTS ? renamed(part, names, fail) : part));
  writeFileSync(program, joined(shortened));

  let text = readFileSync(script, "utf8");
  const classes = /^export class IntoUnderlying\w+ \{\n[\s\S]*?^\}\n(if \(Symbol\.dispose\) .*\n)?|^const IntoUnderlying\w+Finalization = [\s\S]*?;\n/gm;
  text = text.replace(classes, "");
  if (text.includes("IntoUnderlying")) fail("the script still speaks of a class that was taken out");
  const found = new Set();
  text = text.replace(/^ {8}(\w+): function[\s\S]*?^ {8}\}.*\n/gm, (entry, name) => {
    const short = names.get(name);
    if (short === undefined) return "";
    found.add(name);
    return entry.replace(name, short);
  });
  const missing = [...names.keys()].filter((name) => !found.has(name));
  if (missing.length > 0) fail(`the script lacks what the program imports: ${missing.join(", ")}`);
  if (text.split(LETTER_BY_LETTER).length !== 2) fail("the script no longer copies a text letter by letter");
  text = text.replace(LETTER_BY_LETTER, IN_ONE_PIECE + LETTER_BY_LETTER);
  writeFileSync(script, text);
  execFileSync(process.execPath, ["--check", script], { stdio: "inherit" });
}

/**
 * Functions of one type, with as many locals and like instructions, one after the other: what a compressor has just seen it
 * repeats in fewer bits. Every index of a function is renamed with it, so the program's own tool does it, on the text format.
 */
function sideBySide(program, features, fail) {
  const text = `${program}.wat`;
  const tool = (...words) => execFileSync("wasm-opt", words, { stdio: ["ignore", "pipe", "inherit"], encoding: "utf8" });
  // Neither the text nor what was read from it names features, and without them the tool refuses what the program uses.
  tool("-Oz", ...features, program, "-S", "-o", text);
  try {
    const [inner, end, ...more] = readFileSync(text, "utf8").split(/(?<=\n)(?=\))/);
    if (end === undefined || more.length > 0) fail("the text of the program ends elsewhere than .ci/trim.mjs takes for granted");
    const forms = inner.trimEnd().split(/\n(?= \()/);
    const isBody = (form) => form.startsWith(" (func ");
    const bodies = forms.filter(isBody).map((form) => ({ form, ...traits(form) }));
    if (bodies.length === 0) fail("no function in the text of the program: .ci/trim.mjs can do less");
    bodies.sort((a, b) => order(a.type, b.type) || a.locals - b.locals || order(a.code, b.code));
    let nth = 0;
    writeFileSync(text, forms.map((form) => (isBody(form) ? bodies[nth++].form : form)).join("\n") + `\n${end}`);
    // Another pass of the same level, because what was read from text is written less tightly without one.
    const before = exported(program);
    tool("-Oz", "--skip-pass=reorder-functions", ...features, text, "-o", program);
    if (exported(program) !== before) fail(`the sorted program exports ${exported(program)} and not ${before}`);
  } finally {
    rmSync(text);
  }
}

/** What a program exports: names and kinds. Of imports the second pass may find one that nothing calls any more. */
function exported(program) {
  const part = sections(readFileSync(program)).find(({ id }) => id === EXPORTS);
  if (part === undefined) return "nothing";
  return items(part.body, (read) => [read.text(), read.byte(), read.number()].slice(0, 2)).join(" ");
}

const order = (a, b) => (a < b ? -1 : a > b ? 1 : 0);

/** What a function is sorted by: its type, how many locals it declares and its instructions. */
function traits(form) {
  const [head, ...lines] = form.split("\n");
  const isLocal = (line) => line.startsWith("  (local ");
  return {
    type: head.replaceAll(/ \$\d+/g, ""),
    locals: lines.filter(isLocal).length,
    code: lines.filter((line) => !isLocal(line)).join("\n"),
  };
}

function used(part, fail) {
  const kept = items(part.body, (read) => [read.text(), read.byte(), read.number()]);
  const left = kept.filter(([name]) => !UNUSED_CLASS.test(name));
  if (left.length === kept.length) fail("no stream class to take out: .ci/trim.mjs can do less");
  return { ...part, body: list(left.map(([name, kind, at]) => [...textBytes(name), kind, ...numberBytes(at)])) };
}

function renamed(part, names, fail) {
  const kept = items(part.body, (read) => {
    const [module, name, from] = [read.text(), read.text(), read.at()];
    const kind = read.byte();
    // 0 is a function; the page's program imports nothing else.
    if (kind !== 0) fail(`an import that is no function: ${name}`);
    read.number();
    return [module, name, part.body.subarray(from, read.at())];
  });
  for (const [nth, [, name]] of kept.entries()) {
    // The script is searched by the name alone.
    if (names.has(name)) fail(`two imports are called ${name}`);
    names.set(name, `i${nth.toString(36)}`);
  }
  return {
    ...part,
    body: list(kept.map(([module, name, type]) => [...textBytes(module), ...textBytes(names.get(name)), ...type])),
  };
}

// --- the binary format: WebAssembly Core Specification 2.0, chapter 5 ---

function sections(bytes) {
  const read = reader(bytes, 8);
  const parts = [{ id: -1, body: bytes.subarray(0, 8) }];
  while (read.at() < bytes.length) {
    const id = read.byte();
    const size = read.number();
    parts.push({ id, body: bytes.subarray(read.at(), read.skip(size)) });
  }
  return parts;
}

function joined(parts) {
  return Buffer.concat(
    parts.flatMap(({ id, body }) => (id < 0 ? [body] : [Buffer.from([id, ...numberBytes(body.length)]), body])),
  );
}

function items(body, one) {
  const read = reader(body, 0);
  return Array.from({ length: read.number() }, () => one(read));
}

const list = (rows) => Buffer.from([...numberBytes(rows.length), ...rows.flatMap((row) => [...row])]);

function reader(bytes, start) {
  let at = start;
  const read = {
    at: () => at,
    byte: () => bytes[at++],
    skip: (size) => (at += size),
    number() {
      let [value, shift, byte] = [0, 0, 0];
      do {
        byte = bytes[at++];
        value += (byte & 127) * 2 ** shift;
        shift += 7;
      } while (byte & 128);
      return value;
    },
    text() {
      const size = read.number();
      return bytes.subarray(at, (at += size)).toString("utf8");
    },
  };
  return read;
}

function numberBytes(value) {
  const bytes = [];
  do {
    bytes.push((value & 127) | (value > 127 ? 128 : 0));
    value >>>= 7;
  } while (value > 0);
  return bytes;
}

const textBytes = (text) => [...numberBytes(Buffer.byteLength(text)), ...Buffer.from(text, "utf8")];
