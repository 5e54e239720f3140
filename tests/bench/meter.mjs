// Times taps and starts in a running Chromium, and says where the time went.
import { writeFileSync } from "node:fs";

/** Measures on the page: put there before every load. */
const watch = (event, mark) => {
  window.bench = { times: [], started: null };
  // The frame has been drawn when a message sent from inside it arrives.
  const drawn = (done) =>
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => done(performance.now());
      port2.postMessage(null);
    });
  if (mark) {
    const look = () => {
      if (document.querySelector(mark)) drawn((at) => (window.bench.started = at));
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  }
  if (event) {
    window.bench.stop?.();
    const heard = (given) => drawn((at) => window.bench.times.push(at - given.timeStamp));
    addEventListener(event, heard, { capture: true });
    window.bench.stop = () => removeEventListener(event, heard, { capture: true });
  }
};

/** A fixed piece of work, in ms: long enough for the slowed-down processor to be slow in it. */
const labour = () => {
  const begun = performance.now();
  let sum = 0;
  for (let n = 0; n < 10_000_000; n++) sum = (sum * 31 + n) | 0;
  return sum === 1 ? 0 : performance.now() - begun;
};

export class Meter {
  constructor(driver, slower, profile) {
    this.driver = driver;
    this.slower = slower;
    this.profile = profile;
  }

  cdp(cmd, params = {}) {
    return this.driver.call("POST", "/goog/cdp/execute", { cmd, params });
  }

  slow(times) {
    return this.cdp("Emulation.setCPUThrottlingRate", { rate: times });
  }

  /** Processor time of the page's thread so far, in ms: all of it, and three parts of it. */
  async work() {
    const { metrics } = await this.cdp("Performance.getMetrics");
    return ["TaskDuration", "ScriptDuration", "RecalcStyleDuration", "LayoutDuration"].map(
      (wanted) => metrics.find(({ name }) => name === wanted).value * 1000,
    );
  }

  /** A tap by a finger. The driver's own click runs code of its own on the page's thread, which would be measured too. */
  async tap(handle) {
    const [x, y] = await this.driver.run((key) => {
      const { left, top, width, height } = key.getBoundingClientRect();
      return [left + width / 2, top + height / 2];
    }, handle);
    await this.cdp("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y }] });
    await this.cdp("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  }

  /** A key of the keyboard, into the field that has the focus. */
  async key(key, text) {
    const windowsVirtualKeyCode = key === "Backspace" ? 8 : key.codePointAt(0);
    await this.cdp("Input.dispatchKeyEvent", { type: text ? "keyDown" : "rawKeyDown", key, text, windowsVirtualKeyCode });
    await this.cdp("Input.dispatchKeyEvent", { type: "keyUp", key, windowsVirtualKeyCode });
  }

  /** From the start of the way to `address` until `mark` is drawn. */
  async starts(address, mark, count, profile) {
    const times = [];
    const works = [];
    const labours = [];
    await this.cdp("Performance.enable", { timeDomain: "threadTicks" });
    await this.cdp("Page.enable");
    await this.cdp("ServiceWorker.enable");
    const { identifier } = await this.cdp("Page.addScriptToEvaluateOnNewDocument", { source: `(${watch})(null, ${JSON.stringify(mark)})` });
    for (let nth = 0; nth < count; nth++) {
      await this.driver.go("about:blank");
      // A phone that has been in a pocket has no worker running either.
      await this.cdp("ServiceWorker.stopAllWorkers");
      const last = this.profile && profile && nth === count - 1;
      if (last) await this.begin();
      await this.slow(this.slower);
      await this.driver.go(address);
      let at = null;
      for (const end = Date.now() + 30_000; at === null && Date.now() < end; ) {
        at = await this.driver.run(() => window.bench?.started ?? null);
        if (at === null) await new Promise((done) => setTimeout(done, 20));
      }
      if (at === null) throw new Error(`${address} did not start`);
      if (last) await this.end(profile);
      works.push(await this.work());
      for (let again = 0; again < 3; again++) labours.push(await this.driver.run(labour));
      await this.slow(1);
      times.push(at);
    }
    await this.cdp("Page.removeScriptToEvaluateOnNewDocument", { identifier });
    return figures(times, works, labours);
  }

  /** `count` times what `ready` makes ready and returns, each timed from the event it brings. */
  async taps(count, event, profile, ready) {
    await this.cdp("Performance.enable", { timeDomain: "threadTicks" });
    await this.driver.run(watch, event, null);
    await this.slow(this.slower);
    const times = [];
    const works = [];
    const labours = [];
    if (this.profile && profile) await this.begin();
    for (let nth = 0; nth < count; nth++) {
      const go = await ready(nth);
      labours.push(await this.driver.run(labour));
      await this.driver.run(() => (window.bench.times = []));
      const begun = await this.work();
      await go();
      const worked = (await this.work()).map((now, part) => now - begun[part]);
      let got = [];
      for (const end = Date.now() + 10_000; got.length === 0 && Date.now() < end; ) got = await this.driver.run(() => window.bench.times);
      if (got.length !== 1) throw new Error(`one tap brought ${got.length} "${event}" events`);
      works.push(worked);
      times.push(got[0]);
    }
    if (this.profile && profile) await this.end(profile);
    await this.slow(1);
    await this.driver.run(() => window.bench.stop());
    return figures(times, works, labours);
  }

  /** `count` times from leaving a place for `hash` until `mark` is drawn there; between two times the page shows `rest`. */
  async opens(hash, mark, rest, count, profile) {
    await this.cdp("Performance.enable", { timeDomain: "threadTicks" });
    const times = [];
    const works = [];
    const labours = [];
    const there = (hash, mark) => {
      window.bench = { opened: null };
      const begun = performance.now();
      location.hash = hash;
      const look = () => {
        if (location.hash !== hash || !document.querySelector(mark)) return void requestAnimationFrame(look);
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => (window.bench.opened = performance.now() - begun);
        port2.postMessage(null);
      };
      requestAnimationFrame(look);
    };
    const opened = async () => {
      for (const end = Date.now() + 30_000; Date.now() < end; ) {
        const at = await this.driver.run(() => window.bench?.opened ?? null);
        if (at !== null) return at;
        await new Promise((done) => setTimeout(done, 20));
      }
      throw new Error(`${hash} did not show ${mark}`);
    };
    for (let nth = 0; nth < count; nth++) {
      await this.driver.run(there, rest.hash, rest.mark);
      await opened();
      labours.push(await this.driver.run(labour));
      const last = this.profile && profile && nth === count - 1;
      if (last) await this.begin();
      await this.slow(this.slower);
      const begun = await this.work();
      await this.driver.run(there, hash, mark);
      times.push(await opened());
      works.push((await this.work()).map((now, part) => now - begun[part]));
      if (last) await this.end(profile);
      await this.slow(1);
    }
    return figures(times, works, labours);
  }

  async begin() {
    await this.cdp("Profiler.enable");
    await this.cdp("Profiler.setSamplingInterval", { interval: 500 });
    await this.cdp("Profiler.start");
  }

  /** Writes the profile for the browser's own viewer, and the costliest functions. */
  async end(name) {
    const { profile } = await this.cdp("Profiler.stop");
    writeFileSync(`${this.profile}/${name}.cpuprofile`, JSON.stringify(profile));
    const own = new Map();
    const each = (profile.endTime - profile.startTime) / profile.samples.length;
    const nodes = new Map(profile.nodes.map((node) => [node.id, node]));
    for (const id of profile.samples) {
      const { functionName: name } = nodes.get(id).callFrame;
      own.set(name, (own.get(name) ?? 0) + each / 1000);
    }
    const most = [...own].filter(([name]) => !/^\((idle|program)\)$/.test(name)).sort((a, b) => b[1] - a[1]).slice(0, 25);
    console.log(`profile of "${name}", ms:`);
    for (const [name, ms] of most) console.log(`${ms.toFixed(1).padStart(9)}  ${name.slice(0, 130)}`);
  }
}

/**
 * Middle, 19 of 20, the slowest, the middle of each part of the work, and by how much
 * others on the machine slow it down. The best tenth stands for a machine of one's own: the very best run may have slipped
 * through the slowing down.
 */
function figures(times, works, labours) {
  const at = (list, share) => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * share))];
  const work = [0, 1, 2, 3].map((part) => at(works.map((parts) => parts[part]), 0.5));
  return { median: at(times, 0.5), p95: at(times, 0.95), most: Math.max(...times), work, noise: at(labours, 0.5) / at(labours, 0.1) };
}
