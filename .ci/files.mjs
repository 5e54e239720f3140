// What a static host knows of its files: where an address leads, and what kind of file lies there.
import { extname, join, normalize, sep } from "node:path";

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

/** What to send as Content-Type for a file of this name. */
export const typeOf = (name) => TYPES[extname(name)] ?? "application/octet-stream";

/** The name below `base` that an address asks for, `index.html` for the folder itself; null outside of it. */
export function nameAt(base, url) {
  const path = decodeURIComponent(new URL(url, "http://host").pathname);
  return path.startsWith(base) ? path.slice(base.length) || "index.html" : null;
}

/** The file of that name in `root`; null when it would lie outside. */
export function fileIn(root, name) {
  const file = join(root, normalize(`/${name}`));
  return file.startsWith(root + sep) ? file : null;
}
