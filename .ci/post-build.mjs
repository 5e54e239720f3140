// Runs after Trunk has written the page and before it becomes dist/: puts the loader's hash into the
// content security policy, joins the style sheets, writes the service worker, and refuses a page that
// calls elsewhere or has grown over its budget.
import { createHash } from "node:crypto";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { env, exit } from "node:process";
import { fileURLToPath } from "node:url";
import { BUDGET, filesIn, table, totals, weigh } from "./sizes.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const staging = env.TRUNK_STAGING_DIR;
if (!staging) fail("this is Trunk's post-build hook: run `make build`, not this file");

function fail(why) {
  console.error(`post-build: ${why}`);
  exit(1);
}
const read = (name) => readFileSync(join(staging, name), "utf8");
const sha256 = (data, form) => createHash("sha256").update(data).digest(form);

// --- content security policy ---
const PLACE = "{{loader-hash}}";
let page = read("index.html");
const inline = [...page.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)].map((found) => found[1]);
if (inline.length !== 1) fail(`expected one inline script (Trunk's loader) in index.html, found ${inline.length}`);
if (page.split(PLACE).length !== 2) fail(`index.html must hold ${PLACE} exactly once`);
if (page.indexOf(PLACE) > page.indexOf("<script")) fail("the policy must stand before the first script");
page = page.replace(PLACE, `sha256-${sha256(inline[0], "base64")}`);
// One style sheet: nothing is painted before all of them are here, and each is a way of its own to the host.
const LINK = /<link rel="stylesheet" href="\.\/([^"]+)"\/?>\n?/g;
const sheets = [...page.matchAll(LINK)].map((found) => found[1]);
if (sheets.length === 0) fail("index.html links no style sheet of its own folder");
const style = sheets.map(read).join("\n");
const styleName = `style-${sha256(style, "hex").slice(0, 16)}.css`;
sheets.forEach((sheet) => rmSync(join(staging, sheet)));
writeFileSync(join(staging, styleName), style);
let first = true;
page = page.replace(LINK, () => {
  const link = first ? `<link rel="stylesheet" href="./${styleName}">\n` : "";
  first = false;
  return link;
});
// Comments are for readers of the source; the phone need not load them.
page = page.replace(/<!--[\s\S]*?-->\n?/g, "");
if (/\s(style|on\w+)=["']/.test(page)) fail("index.html holds a style or on… attribute, which the policy blocks");
writeFileSync(join(staging, "index.html"), page);

// --- nothing from elsewhere ---
// Names of XML vocabularies look like addresses but are never fetched.
const VOCABULARY = /https?:\/\/www\.w3\.org\/(2000\/svg|1999\/xhtml|1999\/xlink|1998\/Math\/MathML)/g;
const COMMENT = /\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm;
for (const name of filesIn(staging).filter((name) => /\.(html|js|css|svg|webmanifest)$/.test(name))) {
  const text = read(name).replace(COMMENT, "").replace(VOCABULARY, "");
  const elsewhere = text.match(/(https?:)?\/\/[\w-]+(\.[\w-]+)+[^\s"')]*|(href|src)="\/[^"]*"|url\(\/[^)]*\)/);
  if (elsewhere) fail(`${name} refers to "${elsewhere[0]}": the page must be whole in itself, under any path`);
}

// The program names source files where it stops; the folders of the machine that built it are nobody's business.
for (const name of filesIn(staging).filter((name) => name.endsWith(".wasm"))) {
  const told = readFileSync(join(staging, name), "latin1").match(/(\/root\/|\/home\/|\.cargo|\.rustup|registry\/src)[\w./-]*/);
  if (told) fail(`${name} names "${told[0]}": build with \`make build\`, which maps such paths (.ci/env)`);
}

// --- service worker ---
const files = filesIn(staging).map((name) => {
  // The host serves the page at its folder's address; some redirect index.html there.
  const address = name === "index.html" ? "./" : `./${name}`;
  return [address, `sha256-${sha256(readFileSync(join(staging, name)), "base64")}`];
});
const worker = readFileSync(join(root, "src/offline/sw.template.js"), "utf8");
const version = sha256(JSON.stringify(files) + worker, "hex").slice(0, 12);
writeFileSync(
  join(staging, "sw.js"),
  worker
    .replace("{{version}}", version)
    .replace("{{files}}", () => `[\n${files.map((file) => JSON.stringify(file)).join(",\n")},\n]`)
    .replace(/^ *\/\/.*\n/gm, "") // the comments stay in the template,
);

// --- size ---
const rows = weigh(staging);
const { wasm, rest } = totals(rows);
console.log(`\n${table(`version ${version}`, [...rows, wasm, rest])}`);
for (const [part, weight] of [["wasm", wasm.brotli], ["rest", rest.brotli]]) {
  const { target, limit } = BUDGET[part];
  const word = weight > limit ? "OVER THE LIMIT" : weight > target ? "above the target" : "ok";
  console.log(`budget, brotli: ${part} ${weight} of ${target} (limit ${limit}): ${word}`);
  // A debug build is never what reaches a phone.
  if (weight > limit && env.TRUNK_PROFILE === "release") fail(`${part} is ${weight - limit} bytes over its limit`);
}
