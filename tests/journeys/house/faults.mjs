// Scripts that stand before the page's own: another clock, a storage that refuses.

/**
 * @param {{clock?: string, storage?: "denied"}} wanted `clock` is a local date and time, such as
 *   "2026-07-14T09:00"; it runs on from there.
 */
export function faults({ clock, storage }) {
  const parts = [];
  if (clock !== undefined) parts.push(`(${setClock})(${new Date(clock).getTime() - Date.now()});`);
  if (storage === "denied") parts.push(`(${denyStorage})();`);
  return parts.join("\n");
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
