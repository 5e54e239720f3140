// Scripts that stand before the page's own: another clock, a storage that refuses.

/**
 * @param {{clock?: string, storage?: "denied", second?: "none" | "hangs" | "full", locks?: "none",
 *   promise?: "given", camera?: "lent", frames?: "held"}} wanted `clock` is a
 *   local date and time, such as "2026-07-14T09:00"; it runs on from there. `second` is what the browser's database does,
 *   where the second copy lies; with `frames` the page is told of no frame while "held" stands on its root;
 *   with `promise` it promises to keep what is stored once it is asked, and counts on the page how often that was.
 */
export function faults({ clock, storage, second, locks, promise, camera, frames }) {
  const parts = [];
  if (clock !== undefined) parts.push(`(${setClock})(${new Date(clock).getTime() - Date.now()});`);
  if (storage === "denied") parts.push(`(${denyStorage})();`);
  if (second !== undefined) parts.push(`(${spoilDatabase})(${JSON.stringify(second)});`);
  if (locks === "none") parts.push(`(${hideLocks})();`);
  if (camera === "lent") parts.push(`(${lendCamera})();`);
  if (frames === "held") parts.push(`(${holdFrames})();`);
  if (promise === "given") parts.push(`(${promiseToKeep})();`);
  return parts.join("\n");
}

/**
 * A camera and a reader of codes: no browser of the journeys has both. What it sees, whether it may be used, whether its
 * picture ever comes and whether the page is out of sight stand on the page's root; there it says which of its streams
 * are on, and which of them is shown. In the page's own world: a driver's script may run in another.
 */
function lendCamera() {
  const root = document.documentElement;
  const streams = [];
  const say = () => {
    root.dataset.streams = JSON.stringify(streams.map((stream) => stream.getTracks().some(({ readyState }) => readyState === "live")));
    root.dataset.shown = streams.indexOf(document.querySelector("video")?.srcObject ?? null);
  };
  setInterval(say, 20);
  window.BarcodeDetector = class {
    static getSupportedFormats = async () => ["qr_code"];
    detect = async () => JSON.parse(root.dataset.seen ?? "[]").map((rawValue) => ({ rawValue }));
  };
  const getUserMedia = async () => {
    if (root.dataset.camera !== "allowed") throw new DOMException("no", "NotAllowedError");
    const canvas = document.createElement("canvas");
    canvas.getContext("2d").fillRect(0, 0, 9, 9);
    streams.push(canvas.captureStream());
    say();
    return streams.at(-1);
  };
  Object.defineProperty(Navigator.prototype, "mediaDevices", { get: () => ({ getUserMedia }) });
  const play = HTMLMediaElement.prototype.play;
  HTMLMediaElement.prototype.play = function () {
    return root.dataset.picture === "never" ? new Promise(() => {}) : play.call(this);
  };
  Object.defineProperty(document, "hidden", { get: () => root.dataset.hidden === "true" });
  root.addEventListener("out-of-sight", () => document.dispatchEvent(new Event("visibilitychange")));
}

/** A page that is no longer drawn, and is told so only once "out-of-sight" comes to its root: as a phone goes into a pocket. */
function holdFrames() {
  const root = document.documentElement;
  const frame = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (then) => (root.dataset.frames === "held" ? 0 : frame(then));
  Object.defineProperty(document, "hidden", { get: () => root.dataset.hidden === "true" });
  root.addEventListener("out-of-sight", () => document.dispatchEvent(new Event("visibilitychange")));
}

function promiseToKeep() {
  const root = document.documentElement;
  root.dataset.asked = 0;
  const persist = async () => ++root.dataset.asked > 0;
  const persisted = async () => root.dataset.asked > 0;
  Object.defineProperty(Navigator.prototype, "storage", { get: () => ({ persist, persisted }) });
}

function spoilDatabase(how) {
  if (how === "none") Object.defineProperty(window, "indexedDB", { value: undefined, configurable: false });
  // A request that is never answered, as some phones do after they were asleep.
  if (how === "hangs") IDBFactory.prototype.open = () => new EventTarget();
  // The transaction is begun and given up, as when there is no room.
  if (how === "full") {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...args) {
      const request = put.apply(this, args);
      this.transaction.abort();
      return request;
    };
  }
}

// An old browser, or a host without https.
function hideLocks() {
  Object.defineProperty(Navigator.prototype, "locks", { get: () => undefined });
}

function setClock(ahead) {
  const Real = Date;
  const now = () => Real.now() + ahead;
  function Clock(...args) {
    if (!new.target) return new Real(now()).toString();
    return Reflect.construct(Real, args.length ? args : [now()], new.target);
  }
  Clock.prototype = Real.prototype;
  Clock.prototype.constructor = Clock;
  Clock.now = now;
  Clock.parse = Real.parse;
  Clock.UTC = Real.UTC;
  window.Date = Clock;
}

// What a phone does that blocks all site data: the mere look at the storage throws.
function denyStorage() {
  const refuse = () => {
    throw new DOMException("The operation is insecure.", "SecurityError");
  };
  for (const name of ["localStorage", "sessionStorage", "indexedDB", "caches"]) {
    Object.defineProperty(window, name, { get: refuse, configurable: false });
  }
}
