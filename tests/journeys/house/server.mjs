// The host of the built page, as a process of its own so that a journey can end it for good. It logs
// every request, and can put faults in front of the page: the page's policy lets in scripts of its own
// address only, so a fault is a script of that address, before all others.
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize, sep } from "node:path";
import process from "node:process";
import { faults } from "./faults.mjs";

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};
const FAULTS = "journey-faults.js";

const [base] = process.argv.slice(2);
let settings = null;

async function answer(path) {
  if (!path.startsWith(base)) return null;
  const name = path.slice(base.length) || "index.html";
  if (settings.faults) {
    if (name === FAULTS) return [Buffer.from(faults(settings.faults)), TYPES[".js"]];
    // A worker would answer the next load from its own copy, without the fault.
    if (name === "sw.js") return null;
  }
  const file = join(settings.root, normalize(`/${name}`));
  if (!file.startsWith(settings.root + sep)) return null;
  let content = await readFile(file);
  if (settings.faults && name === "index.html") {
    const policy = /(<meta http-equiv="Content-Security-Policy"[^>]*>)/i;
    const page = content.toString();
    if (!policy.test(page)) throw new Error("index.html has no policy to put the fault behind");
    content = Buffer.from(page.replace(policy, `$1<script src="${FAULTS}"></script>`));
  }
  return [content, TYPES[extname(file)] ?? "application/octet-stream"];
}

const server = createServer(async (request, response) => {
  const { pathname } = new URL(request.url, "http://host");
  let found = null;
  try {
    found = await answer(decodeURIComponent(pathname));
  } catch (error) {
    if (error.code !== "ENOENT" && error.code !== "EISDIR") throw error;
  }
  process.send({ asked: { method: request.method, path: pathname, host: request.headers.host, status: found ? 200 : 404 } });
  if (!found) return response.writeHead(404, { "Content-Type": "text/plain" }).end("not here\n");
  const [content, type] = found;
  response.writeHead(200, { "Content-Type": type, "Content-Length": content.length, "Cache-Control": "no-cache" }).end(content);
});

process.on("message", (message) => {
  settings = message.settings;
  process.send({ settled: message.number });
});
process.on("disconnect", () => process.exit());
server.listen(0, "127.0.0.1", () => process.send({ port: server.address().port }));
