// The built folder: what its service worker keeps, and copies of it with something changed.
import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";

/** What the service worker of a built folder says about itself. */
export function worker(root) {
  const text = readFileSync(join(root, "sw.js"), "utf8");
  const version = /const VERSION = "([^"]+)"/.exec(text)?.[1];
  const list = /const FILES = (\[[\s\S]*?\n\]);/.exec(text)?.[1];
  if (!version || !list) throw new Error(`sw.js in ${root} does not name its version and files`);
  // The list is JavaScript: it may end with a comma, which JSON does not allow.
  const files = JSON.parse(list.replace(/,\s*\]$/, "]"));
  return { version, files };
}

const copies = new Set();
process.on("exit", () => copies.forEach((copy) => rmSync(copy, { recursive: true, force: true })));

/**
 * The next version of the page, as a build would leave it: another text in index.html, and a service
 * worker that knows its hash.
 */
export function nextVersion(root, word) {
  const copy = mkdtempSync(join(tmpdir(), "journey-dist-"));
  copies.add(copy);
  cpSync(root, copy, { recursive: true });
  const page = readFileSync(join(copy, "index.html"), "utf8").replace("<head>", `<head><meta name="journey" content="${word}">`);
  writeFileSync(join(copy, "index.html"), page);
  const { version, files } = worker(copy);
  const [, old] = files.find(([path]) => path === "./") ?? [];
  if (!old) throw new Error("sw.js does not keep the page itself");
  const now = `sha256-${createHash("sha256").update(page).digest("base64")}`;
  const text = readFileSync(join(copy, "sw.js"), "utf8").replace(old, () => now).replace(version, `${word}-${version}`);
  writeFileSync(join(copy, "sw.js"), text);
  return copy;
}
