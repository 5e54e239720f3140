// A plain file server for the built page: `node .ci/serve.mjs [--root dist] [--port 8080] [--base /]
// [--host 0.0.0.0]`. Port 0 takes a free one. Prints "listening on ADDRESS" when ready, ends on SIGTERM.
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer } from "node:http";
import { networkInterfaces } from "node:os";
import { extname, join, normalize, resolve, sep } from "node:path";
import process, { exit } from "node:process";
import { parseArgs } from "node:util";

const { values } = parseArgs({
  options: {
    root: { type: "string", default: "dist" },
    port: { type: "string", default: "8080" },
    base: { type: "string", default: "/" },
    host: { type: "string", default: "0.0.0.0" },
  },
});
const root = resolve(values.root);
const base = `/${values.base}/`.replace(/\/+/g, "/");

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

async function find(url) {
  const path = decodeURIComponent(new URL(url, "http://localhost").pathname);
  if (!path.startsWith(base)) return null;
  const file = join(root, normalize(`/${path.slice(base.length)}`));
  if (file !== root && !file.startsWith(root + sep)) return null;
  const found = await stat(file);
  return found.isDirectory() ? join(file, "index.html") : file;
}

const server = createServer(async (request, response) => {
  const refuse = (code, text, headers = {}) =>
    response.writeHead(code, { "Content-Type": "text/plain; charset=utf-8", ...headers }).end(text);
  if (request.method !== "GET" && request.method !== "HEAD") return refuse(405, "only reading\n", { Allow: "GET, HEAD" });
  // The folder without its closing stroke would break every relative address on the page.
  if (`${request.url.split("?")[0]}/` === base) return refuse(301, "", { Location: base });
  try {
    const file = await find(request.url);
    const { size } = await stat(file ?? "");
    // The browser asks every time: a new build shows at the next load, and the service worker does the keeping.
    response.writeHead(200, {
      "Content-Type": TYPES[extname(file)] ?? "application/octet-stream",
      "Content-Length": size,
      "Cache-Control": "no-cache",
      "X-Content-Type-Options": "nosniff",
    });
    if (request.method === "HEAD") return response.end();
    createReadStream(file).on("error", () => response.destroy()).pipe(response);
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
