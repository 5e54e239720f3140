// A plain file server for the built page: `node .ci/serve.mjs [--root dist] [--port 8080] [--base /]
// [--host 127.0.0.1]`. Port 0 takes a free one; host 0.0.0.0 lets other machines of the network in. Prints "listening on
// ADDRESS" when ready, ends on SIGTERM.
//
// Files are sent compressed where that pays and the browser takes it, as nearly every static host does: what is
// measured here is what a keeper waits for.
import { readFile, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { networkInterfaces } from "node:os";
import { join, resolve } from "node:path";
import process, { exit } from "node:process";
import { parseArgs, promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import { fileIn, nameAt, typeOf } from "./files.mjs";

const { values } = parseArgs({
  options: {
    root: { type: "string", default: "dist" },
    port: { type: "string", default: "8080" },
    base: { type: "string", default: "/" },
    host: { type: "string", default: "127.0.0.1" },
  },
});
const root = resolve(values.root);
const base = `/${values.base}/`.replace(/\/+/g, "/");

/** The file an address leads to; null outside the folder. */
async function find(url) {
  const name = nameAt(base, url);
  const file = name === null ? null : fileIn(root, name);
  if (file === null) return null;
  return (await stat(file)).isDirectory() ? join(file, "index.html") : file;
}

// What hosts that compress while they send usually take: the best level would take seconds for the program.
const PACK = {
  br: (bytes) => promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } }),
  gzip: (bytes) => promisify(gzip)(bytes, { level: 6 }),
};
/** Pictures are packed already. */
const packs = (name) => !name.endsWith(".png");
/** Packed once: by file, kind of packing and time of the last change. */
const packed = new Map();

async function content(file, accepted) {
  const way = packs(file) ? Object.keys(PACK).find((way) => new RegExp(`\\b${way}\\b`).test(accepted)) : undefined;
  if (!way) return { bytes: await readFile(file) };
  const key = `${file} ${way} ${(await stat(file)).mtimeMs}`;
  if (!packed.has(key)) packed.set(key, readFile(file).then(PACK[way]));
  return { bytes: await packed.get(key), way };
}

const server = createServer(async (request, response) => {
  const refuse = (code, text, headers = {}) =>
    response.writeHead(code, { "Content-Type": "text/plain; charset=utf-8", ...headers }).end(text);
  if (request.method !== "GET" && request.method !== "HEAD") return refuse(405, "only reading\n", { Allow: "GET, HEAD" });
  // The folder without its closing stroke would break every relative address on the page.
  if (`${request.url.split("?")[0]}/` === base) return refuse(301, "", { Location: base });
  try {
    const file = await find(request.url);
    if (file === null) return refuse(404, "not here\n");
    const { bytes, way } = await content(file, request.headers["accept-encoding"] ?? "");
    // The browser asks every time: a new build shows at the next load, and the service worker does the keeping.
    response.writeHead(200, {
      "Content-Type": typeOf(file),
      "Content-Length": bytes.length,
      "Cache-Control": "no-cache",
      "X-Content-Type-Options": "nosniff",
      Vary: "Accept-Encoding",
      ...(way && { "Content-Encoding": way }),
    });
    response.end(request.method === "HEAD" ? undefined : bytes);
  } catch {
    refuse(404, "not here\n");
  }
});

server.on("error", (error) => {
  const why = error.code === "EADDRINUSE" ? `port ${values.port} is taken: choose another, e.g. make serve PORT=8081` : error.message;
  console.error(`serve: ${why}`);
  exit(1);
});
server.listen(Number(values.port), values.host, () => {
  const { port } = server.address();
  console.log(`listening on http://localhost:${port}${base}`);
  if (values.host !== "0.0.0.0") return;
  const near = Object.values(networkInterfaces()).flat().filter((face) => face.family === "IPv4" && !face.internal);
  for (const { address } of near) {
    console.log(`on a phone in the same network: http://${address}:${port}${base} (browsers keep a page offline only over https or on localhost)`);
  }
});
for (const signal of ["SIGTERM", "SIGINT"]) {
  process.on(signal, () => {
    server.closeAllConnections?.();
    server.close(() => exit(0));
  });
}
