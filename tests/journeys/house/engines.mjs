// Starts a browser under its driver, with a fresh profile and a free port, and ends both.
import { spawn } from "node:child_process";
import { closeSync, mkdirSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import process from "node:process";
import { WebDriver } from "./webdriver.mjs";

/** Width and height of the page on a usual and on the smallest phone. */
export const PHONE = [390, 844];
export const SMALL = [320, 640];

/** The size of letters, in px, that phones are set to from the factory. */
export const LETTERS = 16;

export const ENGINES = ["chromium", "firefox", "webkit"];

const START_MS = 30_000;
const running = new Set();
const homes = new Set();

// A driver that outlives the journeys would keep its browser and the screen with it.
process.on("exit", () => {
  running.forEach(kill);
  homes.forEach(clear);
});
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => process.exit(1));

function kill(child) {
  running.delete(child);
  try {
    process.kill(-child.pid, "SIGKILL");
  } catch (error) {
    if (error.code !== "ESRCH") throw error;
  }
}

function clear(home) {
  homes.delete(home);
  // A browser that is just ending may still write.
  rmSync(home, { recursive: true, force: true, maxRetries: 5 });
}

/** In a group of its own, so that what it starts ends with it. */
function launch(program, args, { log, env = {}, ...rest }) {
  const file = openSync(log, "a");
  const child = spawn(program, args, {
    detached: true,
    stdio: ["ignore", file, file],
    env: { ...process.env, ...env },
    ...rest,
  });
  closeSync(file);
  child.ended = new Promise((done) => child.once("exit", (code, signal) => done(signal ?? code)));
  child.failed = Promise.race([
    new Promise((_, fail) => child.once("error", fail)),
    child.ended.then((how) => {
      running.delete(child);
      throw new Error(`${program} ended (${how}); its log:\n${readFileSync(log, "utf8").slice(-2000)}`);
    }),
  ]);
  // Asked for while starting only; later it would end the whole run without a word.
  child.failed.catch(() => {});
  running.add(child);
  return child;
}

async function freePort() {
  const server = createServer();
  await new Promise((done, fail) => server.once("error", fail).listen(0, "127.0.0.1", done));
  const { port } = server.address();
  await new Promise((done) => server.close(done));
  return port;
}

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

/** Asks again until it has an answer, the process has ended, or the time is over. */
async function until(what, ask, child) {
  const end = Date.now() + START_MS;
  let last;
  while (Date.now() < end) {
    try {
      const answer = await Promise.race([ask(), child.failed]);
      if (answer) return answer;
    } catch (error) {
      if (!running.has(child)) throw error;
      last = error;
    }
    await pause(50);
  }
  throw new Error(`${what} did not come up within ${START_MS / 1000} s${last ? `: ${last.message}` : ""}`);
}

/** The first of these programs on PATH. */
function program(...names) {
  for (const name of names) {
    for (const folder of (process.env.PATH ?? "").split(delimiter)) {
      try {
        const path = join(folder, name);
        closeSync(openSync(path));
        return path;
      } catch {
        // The next folder may have it.
      }
    }
  }
  throw new Error(`none of ${names.join(", ")} is installed; .ci/setup test brings it`);
}

/** A screen of its own for the engine that has no headless mode. */
async function screen(home) {
  const log = join(home, "xvfb.log");
  const display = join(home, "display");
  const file = openSync(display, "w");
  // Larger than any window here: without a window manager nothing brings an outlying part back into view.
  const args = ["-displayfd", "3", "-screen", "0", "1200x1800x24", "-nolisten", "tcp", "-noreset"];
  const out = openSync(log, "a");
  const child = launch(program("Xvfb"), args, { log, stdio: ["ignore", out, out, file] });
  closeSync(out);
  closeSync(file);
  const number = await until("Xvfb", async () => readFileSync(display, "utf8").trim(), child);
  return { child, env: { DISPLAY: `:${number}`, GDK_BACKEND: "x11" } };
}

const recipes = {
  chromium: {
    driver: "chromedriver",
    args: (port) => [`--port=${port}`],
    capabilities(home, letters) {
      const args = ["--headless=new", "--disable-gpu", "--no-first-run", "--lang=en-GB", `--user-data-dir=${home}/profile`];
      // The browser refuses its sandbox to root, as which containers run.
      if (process.getuid?.() === 0) args.push("--no-sandbox");
      // Small /dev/shm in containers ends the browser half way.
      args.push("--disable-dev-shm-usage");
      return {
        "goog:chromeOptions": {
          args,
          binary: program("chromium", "chromium-browser", "google-chrome"),
          prefs: {
            "download.default_directory": `${home}/downloads`,
            "download.prompt_for_download": false,
            "intl.accept_languages": "en-GB,en",
            "webkit.webprefs.default_font_size": letters,
          },
        },
        "goog:loggingPrefs": { browser: "ALL" },
      };
    },
    // The window of a desktop browser is never as narrow as a phone; the emulated one is.
    async resize([width, height], driver) {
      const emulate = (cmd, params) => driver.call("POST", "/goog/cdp/execute", { cmd: `Emulation.${cmd}`, params });
      await emulate("setDeviceMetricsOverride", { width, height, deviceScaleFactor: 2, mobile: true });
      await emulate("setTouchEmulationEnabled", { enabled: true });
    },
    // What is left once nothing holds it any more.
    async counts(driver) {
      const ask = (cmd) => driver.call("POST", "/goog/cdp/execute", { cmd, params: {} });
      await ask("HeapProfiler.enable");
      // What one collection frees may hold what the next one frees.
      for (let turn = 0; turn < 4; turn += 1) {
        await ask("HeapProfiler.collectGarbage");
        await new Promise((done) => setTimeout(done, 200));
      }
      const { nodes, jsEventListeners: listeners } = await ask("Memory.getDOMCounters");
      return { nodes, listeners };
    },
    // Everything the page complained about since the last call.
    complaints: async (driver) =>
      (await driver.call("POST", "/se/log", { type: "browser" }))
        .filter(({ level }) => level === "SEVERE")
        .map(({ message }) => message),
  },
  firefox: {
    driver: "geckodriver",
    args: (port, other) => ["--port", `${port}`, "--websocket-port", `${other}`, "--log", "warn"],
    capabilities(home, letters) {
      mkdirSync(join(home, "profile", "chrome"), { recursive: true });
      // The window of a desktop browser stops at 450 px; a phone is narrower.
      writeFileSync(
        join(home, "profile", "chrome", "userChrome.css"),
        ":root { min-width: 0 !important; min-height: 0 !important; }\n",
      );
      return {
        "moz:firefoxOptions": {
          args: ["-headless", "-profile", join(home, "profile")],
          binary: program("firefox-esr", "firefox"),
          prefs: {
            "toolkit.legacyUserProfileCustomizations.stylesheets": true,
            "browser.download.dir": `${home}/downloads`,
            "browser.download.folderList": 2,
            "browser.download.always_ask_before_handling_new_types": false,
            "intl.accept_languages": "en-GB, en",
            "font.size.variable.x-western": letters,
            // As on a phone: a bar at the side takes no room.
            "ui.useOverlayScrollbars": 1,
          },
        },
      };
    },
    resize: fitWindow,
  },
  webkit: {
    driver: "WebKitWebDriver",
    args: (port) => [`--port=${port}`],
    screen: true,
    // It has no setting for the size of letters: the page's root is enlarged instead, after each load, and so is
    // every question its style asks about the screen in letters.
    enlarge: (driver, letters) =>
      driver.run((letters, usual) => {
        const root = document.documentElement;
        root.style.fontSize = `${(letters / usual) * parseFloat(getComputedStyle(root).fontSize)}px`;
        for (const { media } of [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]).filter((rule) => rule.media)) {
          media.mediaText = media.mediaText.replace(/([\d.]+)r?em\b/g, (_, number) => `${number * letters}px`);
        }
      }, letters, LETTERS),
    capabilities(home) {
      // The bar above the page asks for 447 px; a phone is narrower.
      const folder = join(home, ".config", "gtk-3.0");
      mkdirSync(folder, { recursive: true });
      writeFileSync(
        join(folder, "gtk.css"),
        "entry, button, image { min-width: 0; padding: 0; margin: 0; border-width: 0; font-size: 1px; -gtk-icon-transform: scale(0.1); }\n",
      );
      return {
        browserName: "MiniBrowser",
        "webkitgtk:browserOptions": { binary: miniBrowser(), args: ["--automation"] },
      };
    },
    resize: fitWindow,
  },
};

/** Debian keeps it in the library's folder, outside PATH. */
function miniBrowser() {
  const folders = ["x86_64-linux-gnu", "aarch64-linux-gnu"].flatMap((machine) =>
    ["4.1", "6.0", "4.0"].map((version) => `/usr/lib/${machine}/webkit${version === "6.0" ? "gtk" : "2gtk"}-${version}`),
  );
  for (const folder of folders) {
    try {
      closeSync(openSync(join(folder, "MiniBrowser")));
      return join(folder, "MiniBrowser");
    } catch {
      // The next version may be there.
    }
  }
  throw new Error(`no MiniBrowser in ${folders.join(", ")}; the package webkit2gtk-driver brings it`);
}

/** The window's frame and bars take their part: it is set, measured and set again. */
async function fitWindow([width, height], driver) {
  const inner = () => driver.run(() => [innerWidth, innerHeight]);
  let [w, h] = [width, height];
  for (let round = 0; round < 4; round++) {
    await driver.rect({ x: 0, y: 0, width: w, height: h });
    // The page learns its new size a frame or two after the window has it.
    let seen;
    for (const end = Date.now() + 500; Date.now() < end; await pause(20)) {
      seen = await inner();
      if (seen[0] === width && seen[1] === height) return;
    }
    w += width - seen[0];
    h += height - seen[1];
  }
  throw new Error(`the window cannot be made ${width} × ${height}: the page sees ${(await inner()).join(" × ")}`);
}

/** A running browser. */
export class Engine {
  /** @param {number} letters the size of letters, in px, that the keeper has set on the phone */
  constructor(name, letters = LETTERS) {
    if (!recipes[name]) throw new Error(`no engine "${name}"; there are ${ENGINES.join(", ")}`);
    this.name = name;
    this.recipe = recipes[name];
    this.letters = letters;
    this.home = mkdtempSync(join(tmpdir(), `journey-${name}-`));
    homes.add(this.home);
    this.downloads = join(this.home, "downloads");
    mkdirSync(this.downloads);
    this.children = [];
  }

  async start() {
    const { recipe, home } = this;
    // One place and language for everyone who runs this; the almanac's days are civil days of that place.
    const env = { HOME: home, LANG: "en_GB.UTF-8", LANGUAGE: "en_GB", TZ: process.env.TZ, XDG_DOWNLOAD_DIR: this.downloads };
    if (recipe.screen) {
      const { child, env: display } = await screen(home);
      this.children.push(child);
      Object.assign(env, display);
    }
    const [port, other] = [await freePort(), await freePort()];
    const log = join(home, "driver.log");
    const child = launch(program(recipe.driver), recipe.args(port, other), { log, env });
    this.children.push(child);
    this.driver = new WebDriver(`http://127.0.0.1:${port}`);
    await until(recipe.driver, () => this.driver.send("GET", "/status").then(() => true), child);
    await this.driver.start(recipe.capabilities(home, this.letters));
    await this.driver.timeouts({ implicit: 0, pageLoad: 20_000, script: 20_000 });
    await this.resize(PHONE);
  }

  resize(size) {
    return this.recipe.resize(size, this.driver);
  }

  /** Brings a page that has just been loaded to this browser's size of letters, where the browser does not. */
  async enlarge() {
    if (this.letters !== LETTERS) await this.recipe.enlarge?.(this.driver, this.letters);
  }

  /** How many elements and listeners are in memory; null where the driver does not count them. */
  async counts() {
    return (await this.recipe.counts?.(this.driver)) ?? null;
  }

  /** Errors on the page's console since the last call; null where the driver does not hand them out. */
  complaints() {
    return this.recipe.complaints?.(this.driver) ?? null;
  }

  /**
   * Ends the browser and all its processes as an empty battery does: nothing is told, nothing is written any more. What
   * was on disk stays, and {@link start} goes on from there.
   */
  async die() {
    const group = this.children;
    this.children = [];
    group.forEach(kill);
    await Promise.all(group.map((child) => child.ended));
  }

  async stop() {
    try {
      await this.driver?.end();
    } finally {
      this.children.forEach(kill);
      await Promise.all(this.children.map((child) => child.ended));
      clear(this.home);
    }
  }

  get version() {
    const { browserName, browserVersion } = this.driver.capabilities;
    return `${browserName} ${browserVersion}`;
  }
}
