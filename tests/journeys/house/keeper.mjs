// What a keeper does with the page and sees on it, in the words of a journey.
import assert from "node:assert/strict";
import { Handle } from "./webdriver.mjs";
import { PHONE } from "./engines.mjs";

/** Keys by the standard's code. */
const END = "\uE010";
const BACKSPACE = "\uE003";

const WAIT_MS = 10_000;
const STEP_MS = 30;
/** Longer than the page's own guard of 300 ms. */
const GUARD_MS = 400;
const pause = (ms) => new Promise((done) => setTimeout(done, ms));

/** Parts of the page that have no mark of their own. */
const PARTS = {
  "bench-hives": "#hives",
  "bench-boxes": "#boxes",
  "bench-traps": "#bench-yard-body .answer:not(.answer ~ .answer)",
  "nav-round": '.bar a[href="#/round"]',
  "nav-load": '.bar a[href="#/load"]',
  "nav-beetle": '.bar a[href="#/beetle"]',
  "nav-bench": '.bar a[href="#/bench"]',
  "nav-book": '.bar a[href="#/book"]',
  "bench-keep": "#bench-yard-body .key-primary:not(.keep-form *)",
  "keep-name": "#keep-name",
  "keep-save": ".keep-form .key-primary",
  "update-bar": ".messages:has(.message)",
  "update-now": ".messages .key",
  "bench-oil": "#bench-yard-body .answer ~ .answer",
};
/** The part of the page with this mark. */
const mark = (name) => PARTS[name] ?? `[data-testid="${name}"]`;

export class Keeper {
  constructor(engine, host) {
    this.engine = engine;
    this.driver = engine.driver;
    this.host = host;
    this.taps = 0;
  }

  // --- going ---

  /** Opens the page and waits until it has started. `after` follows the folder's address: "?query", "#/round". */
  async open(after = "") {
    await this.driver.go(this.host.address + after);
    // A download under way makes Firefox answer before the new page is there.
    await this.until(`${this.host.address} is open`, () => this.driver.run((address) => location.href.startsWith(address), this.host.address));
    await this.started();
  }
  /** As the browser's own key does it. The driver's command reloads past the service worker in Firefox. */
  async reload() {
    await this.driver.run(() => {
      window.beforeReload = true;
      setTimeout(() => location.reload());
    });
    await this.until("the page has been loaded again", () => this.driver.run(() => !window.beforeReload));
    await this.started();
  }
  /** The app has mounted: the static frame is gone and the bar at the thumb is there. */
  async started() {
    await this.until("the page has started", () =>
      this.driver.run(() => !document.querySelector("#shell") && !!document.querySelector("nav [aria-current=page]")),
    );
    await this.engine.enlarge();
  }
  /** To another place, by its key in the bar. */
  async place(name) {
    // On small screens the panel of an open hive takes the place of the bar. After the last hive of a walk it shuts by
    // itself, perhaps just before the tap.
    if (!(await this.shows(`nav-${name}`)) && (await this.shows("shut"))) {
      await this.tap("shut").catch(async (error) => {
        if (await this.shows("shut")) throw error;
      });
    }
    // On low ones with large letters it is folded away.
    if (!(await this.shows(`nav-${name}`)) && (await this.shows("places"))) await this.tap("places");
    await this.tap(`nav-${name}`);
    await this.until(`the place "${name}" is shown`, async () => (await this.attribute(`nav-${name}`, "aria-current")) === "page");
  }
  /** A second tab on the same page; returns to the first with {@link turnTo}. */
  async newTab(after = "") {
    const handle = await this.driver.newTab();
    await this.driver.turnTo(handle);
    await this.engine.resize(PHONE);
    await this.open(after);
    return handle;
  }
  turnTo(handle) {
    return this.driver.turnTo(handle);
  }

  // --- seeing ---

  /** Asks until the answer is true; the error names what was waited for and what was there instead. */
  async until(what, ask, ms = WAIT_MS) {
    const end = Date.now() + ms;
    let last = null;
    do {
      try {
        const answer = await ask();
        if (answer) return answer;
        last = null;
      } catch (error) {
        // The page may be drawing this very part anew, or be between two loads.
        if (!/stale element|no such element|no such window|javascript error|unknown error|aborted by navigation|script timeout/.test(error.code ?? "")) throw error;
        last = error;
      }
      await pause(STEP_MS);
    } while (Date.now() < end);
    const there = await this.text("body").catch((error) => `(unreadable: ${error.message})`);
    throw new Error(`waited ${ms / 1000} s in vain: ${what}${last ? `; last error: ${last.message}` : ""}\n--- on the page ---\n${there.slice(0, 1500)}`);
  }

  /** The visible elements under a selector. A bare word is a mark. */
  async all(where) {
    const css = selector(where);
    const ids = await this.driver.findAll(css);
    return ids.map((id) => new Handle(id));
  }
  /** The first one; waits for it. */
  async one(where) {
    const handle = await this.until(`"${describe(where)}" is shown`, async () => {
      const id = await this.driver.run((css) => {
        const shown = [...document.querySelectorAll(css)].find((element) => element.checkVisibility?.() ?? element.getClientRects().length);
        return shown ?? null;
      }, selector(where));
      return id && new Handle(Object.values(id)[0]);
    });
    return handle;
  }
  /** Whether something is shown now. */
  shows(where) {
    return this.driver.run(
      (css) => [...document.querySelectorAll(css)].some((element) => element.checkVisibility?.() ?? element.getClientRects().length > 0),
      selector(where),
    );
  }
  async waitFor(where) {
    await this.one(where);
    return where;
  }
  gone(where) {
    return this.until(`"${describe(where)}" is gone`, async () => !(await this.shows(where)));
  }
  /** What is written there, as it is shown. Rows out of sight are laid out for it: a keeper would scroll. */
  text(where) {
    return this.driver.run((css) => {
      const rows = [...document.querySelectorAll(".row")];
      rows.forEach((row) => row.style.setProperty("content-visibility", "visible"));
      const text = [...document.querySelectorAll(css)].map((element) => element.innerText).join("\n");
      rows.forEach((row) => row.style.removeProperty("content-visibility"));
      return text;
    }, selector(where));
  }
  /** Waits until what is written there fits. */
  async reads(where, wanted) {
    let seen = "";
    await this.until(`"${describe(where)}" reads ${wanted}`, async () => {
      seen = plain(await this.text(where));
      return wanted instanceof RegExp ? wanted.test(seen) : seen.includes(wanted);
    }).catch((error) => {
      error.message += `\n--- in "${describe(where)}" ---\n${seen.slice(0, 800)}`;
      throw error;
    });
    return seen;
  }
  /** What stands in a field. */
  value(where) {
    return this.driver.run((css) => document.querySelector(css)?.value ?? null, selector(where));
  }
  attribute(where, name) {
    return this.driver.run((css, name) => document.querySelector(css)?.getAttribute(name) ?? null, selector(where), name);
  }

  // --- doing ---

  /**
   * A real tap by the driver: it fails when something else lies over the key. The driver looks where the key is, then
   * taps there; where the page has moved in between, the tap lands beside it and nothing says so. Here it is said when
   * it met another key, and done again when it met nothing, as a keeper would.
   */
  async tap(where) {
    let last;
    await this.until(`"${describe(where)}" can be tapped`, async () => {
      const handle = where instanceof Handle ? where : await this.one(where);
      await this.bringInSight(handle);
      try {
        await this.watchTap(handle);
        await this.driver.click(handle.id);
      } catch (error) {
        if (!["element click intercepted", "element not interactable", "stale element reference"].includes(error.code)) throw error;
        last = error;
        return false;
      }
      const met = await this.tapMet();
      if (met === null) return true;
      if (met) throw new Error(`the tap on "${describe(where)}" met ${met}: the page moved under it`);
      last = new Error("the tap met nothing");
      return false;
    }).catch((error) => {
      if (last) error.message += `\n${last.message}`;
      throw error;
    });
    this.taps += 1;
  }
  /** Keeps what the next tap meets. */
  watchTap(handle) {
    return this.driver.run((key) => {
      globalThis.tapMet = "";
      const meets = ({ target }) => {
        const other = target.closest("button, a, summary, label, input, select, textarea");
        globalThis.tapMet = key.contains(target) ? null : other ? `"${(other.innerText || other.outerHTML).slice(0, 60)}"` : "";
      };
      addEventListener("click", meets, { capture: true, once: true });
    }, handle);
  }
  /** Null when the tap met its key, or has led to another page; nothing, or the other key's words, when it did not. */
  tapMet() {
    return this.driver.run(() => (globalThis.tapMet === undefined ? null : globalThis.tapMet)).catch((error) => {
      if (error.code === "no such window") return null;
      throw error;
    });
  }
  /**
   * Scrolls as a thumb would, into the middle of what the panel and the bar at the thumb leave free, and waits until
   * the page stands still: rows that come into sight take their own height, and a panel that shuts makes room.
   */
  async bringInSight(handle) {
    const place = () =>
      this.driver.run((element) => {
        element.scrollIntoView({ block: "center", behavior: "instant" });
        const foot = document.querySelector(".foot");
        if (foot && !foot.contains(element) && !element.closest("dialog")) {
          const { top, height } = element.getBoundingClientRect();
          const free = Math.min(innerHeight, Math.max(0, foot.getBoundingClientRect().top));
          scrollBy({ top: top + height / 2 - free / 2, behavior: "instant" });
        }
        const { left, top, width, height } = element.getBoundingClientRect();
        return [left, top, width, height].map(Math.round).join(" ");
      }, handle);
    let before = await place();
    for (let tries = 0; tries < 20; tries += 1) {
      await this.drawn();
      const now = await place();
      if (now === before) return;
      before = now;
    }
  }
  /** Taps a key that does much at once: it takes no tap in the moment it comes up, against a wet screen's own taps. */
  async tapCalmly(where) {
    await this.one(where);
    await pause(GUARD_MS);
    await this.tap(where);
  }
  /** The page has drawn what it was asked for. */
  drawn() {
    return this.driver.wait(
      () =>
        new Promise((done) => {
          requestAnimationFrame(() => requestAnimationFrame(() => done()));
          // A tab behind another draws nothing in WebKit, and moves no focus.
          setTimeout(done, 200);
        }),
    );
  }
  /** The key or link with these words on it. */
  async tapWords(words, within = "body") {
    const handle = await this.until(`a key "${words}" is shown`, async () => {
      const found = await this.driver.run(
        (css, words) =>
          [...(document.querySelector(css)?.querySelectorAll("button, a, summary, label") ?? [])].find(
            (key) => key.getClientRects().length && (key.innerText.trim() === words || key.getAttribute("aria-label") === words),
          ) ?? null,
        selector(within),
        words,
      );
      return found && new Handle(Object.values(found)[0]);
    });
    await this.tap(handle);
  }
  /** Puts `text` into a field in place of what stands there, key by key. */
  async type(where, text) {
    const field = await this.one(where);
    await this.bringInSight(field);
    // Where a tap has brought up a form, the page moves the focus to its heading once it has drawn it; nobody
    // types sooner.
    await this.drawn();
    // A selection made by a script is lost to some drivers' own focusing; keys do what keys do.
    const old = await this.driver.run((field) => field.value.length, field);
    await this.driver.keys(field.id, END + BACKSPACE.repeat(old) + text);
    await this.until(`"${describe(where)}" holds "${text}"`, async () => (await this.value(where)) === text);
  }
  /** Gives a file to a file field, which may lie behind a key of the page's own. */
  async pick(where, path) {
    await this.until(`"${where}" is there`, async () => (await this.all(where)).length > 0);
    const [{ id }] = await this.all(where);
    await this.driver.keys(id, path);
  }

  // --- what the browser keeps ---

  /** Everything in the local storage. */
  kept() {
    return this.driver.run(() => Object.fromEntries(Object.keys(localStorage).map((key) => [key, localStorage.getItem(key)])));
  }
  /** The pages of the book: one key a yard and day. */
  async pages() {
    return Object.fromEntries(Object.entries(await this.kept()).filter(([key]) => key.startsWith("beetle-almanac:page:")));
  }

  /** Waits until the page can open without a signal. */
  offlineReady() {
    return this.until("the page is kept for use without signal", () =>
      this.driver.wait(async () => {
        const registration = await navigator.serviceWorker.getRegistration();
        return registration?.active?.state === "activated" && !registration.installing;
      }),
    );
  }
}

/** A bare word is a mark, but for the three parts every page has; anything else is a selector. */
function selector(where) {
  return /^[\w-]+$/.test(where) && !["html", "body", "main"].includes(where) ? mark(where) : where;
}
const describe = (where) => (where instanceof Handle ? "this key" : where);

/** As a person reads it: no-break spaces and line ends are spaces. */
export const plain = (text) => text.replace(/[\s\u00a0\u202f\u2009]+/g, " ").trim();

export { assert };
