// Keeps the page working without signal. The post-build step fills in VERSION (a hash over every file)
// and FILES (each file with the hash of its content), and writes the result as sw.js.
//
// Register it as "./sw.js" with scope "./" and updateViaCache "none". It takes one message:
//   { type: "SKIP_WAITING" }   sent to registration.waiting when the keeper agrees to the new version.
//                              It then takes over; the page hears "controllerchange" and reloads once.
// It never takes over unasked: two tabs must not run two versions over one set of records, and an
// open page still needs the files of its own version.
"use strict";

const VERSION = "{{version}}";
const FILES = {{files}};

// The scope is part of the name: two copies of this page on one host (a user's folder, a test folder)
// share one cache storage and must not delete each other's files. An address holds no space, so no
// copy's prefix is the beginning of another's.
const PREFIX = `beetle-almanac ${self.registration.scope} `;
const CACHE = PREFIX + VERSION;
const HOME = self.registration.scope;

self.addEventListener("install", (event) => {
  // "reload" passes over the browser's own cache; the hashes refuse a host that is half way through an
  // upload. addAll keeps all or nothing: a failed install leaves the old version at work.
  const requests = FILES.map(([path, integrity]) => new Request(path, { cache: "reload", integrity }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

self.addEventListener("message", (event) => {
  if (event.data?.type === "SKIP_WAITING") self.skipWaiting();
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches.keys().then((names) =>
      Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name))),
    ),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  // The page itself, whatever follows the question mark. Another path under this one may be another
  // page with its own files: it is not answered with ours.
  const home = request.mode === "navigate" && (url.origin + url.pathname).replace(/index\.html$/, "") === HOME;
  event.respondWith(
    caches
      .open(CACHE)
      // Hosts differ in the Vary header they send; names are hashed, so it says nothing here.
      .then((cache) => cache.match(home ? HOME : request, { ignoreVary: true }))
      // A cache that cannot be opened must not stop what the network could still answer.
      .catch(() => undefined)
      .then((kept) => kept ?? fetch(request)),
  );
});
