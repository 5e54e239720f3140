// What the built page weighs on its way to the phone. As a command: `node .ci/sizes.mjs NAME=FOLDER…`
// prints the folders side by side.
import { readFileSync, readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { argv } from "node:process";
import { pathToFileURL } from "node:url";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

// In bytes. The targets are what we aim at, above the limits the build fails.
export const BUDGET = {
  wasm: { target: 150_000, limit: 545_000 },
  rest: { target: 20_000, limit: 22_000 },
};

export function filesIn(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)).split(sep).join("/"))
    .sort();
}

const brotli = (bytes) =>
  brotliCompressSync(bytes, {
    params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length },
  }).length;

export function weigh(folder) {
  return filesIn(folder).map((name) => {
    const bytes = readFileSync(join(folder, name));
    return { name, raw: bytes.length, gzip: gzipSync(bytes, { level: 9 }).length, brotli: brotli(bytes) };
  });
}

const add = (rows, name) =>
  rows.reduce(
    (sum, row) => ({ name, raw: sum.raw + row.raw, gzip: sum.gzip + row.gzip, brotli: sum.brotli + row.brotli }),
    { name, raw: 0, gzip: 0, brotli: 0 },
  );

export function totals(rows) {
  const isWasm = (row) => row.name.endsWith(".wasm");
  return {
    wasm: add(rows.filter(isWasm), "wasm"),
    rest: add(rows.filter((row) => !isWasm(row)), "everything else"),
  };
}

const number = (value) => value.toLocaleString("en").padStart(11);
const line = ({ name, raw, gzip, brotli }) => `${name.padEnd(44)}${number(raw)}${number(gzip)}${number(brotli)}`;

export function table(title, rows) {
  const head = `${title.padEnd(44)}${["raw", "gzip 9", "brotli 11"].map((word) => word.padStart(11)).join("")}`;
  return [head, "-".repeat(head.length), ...rows.map(line)].join("\n");
}

if (argv[1] && import.meta.url === pathToFileURL(argv[1]).href) {
  const sides = argv.slice(2).map((side) => side.split("="));
  const rows = sides.flatMap(([name, folder]) => {
    const { wasm, rest } = totals(weigh(folder));
    return [{ ...wasm, name: `${name}: wasm` }, { ...rest, name: `${name}: everything else` }];
  });
  console.log(table("bytes", rows));
}
