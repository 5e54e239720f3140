// The host of the built page, as a process of its own so that a journey can end it for good. It logs
// every request, and can put faults in front of the page: the page's policy lets in scripts of its own
// address only, so a fault is a script of that address, before all others.
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import process from "node:process";
import { fileIn, nameAt, typeOf } from "../../../.ci/files.mjs";
import { faults } from "./faults.mjs";

const FAULTS = "journey-faults.js";

const [base] = process.argv.slice(2);
let settings = null;

async function answer(url) {
  const name = nameAt(base, url);
  if (name === null) return null;
  if (settings.faults) {
    if (name === FAULTS) return [Buffer.from(faults(settings.faults)), typeOf(FAULTS)];
    // A worker would answer the next load from its own copy, without the fault.
    if (name === "sw.js") return null;
  }
  const file = fileIn(settings.root, name);
  if (file === null) return null;
  let content = await readFile(file);
  if (settings.faults && name === "index.html") {
    const policy = /(<meta http-equiv="Content-Security-Policy"[^>]*>)/i;
    const page = content.toString();
    if (!policy.test(page)) throw new Error("index.html has no policy to put the fault behind");
    content = Buffer.from(page.replace(policy, `$1<script src="${FAULTS}"></script>`));
  }
  return [content, typeOf(file)];
}

const server = createServer(async (request, response) => {
  const { pathname } = new URL(request.url, "http://host");
  let found = null;
  try {
    found = await answer(request.url);
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
