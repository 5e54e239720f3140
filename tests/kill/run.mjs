// An entry that the page has called saved is there after the power has gone: `node tests/kill/run.mjs`, after a build.
//
// The page saves an entry, says "Saved", and 50 ms later the browser with all its processes is killed. The next start, on
// the same profile, must have the entry. This is done again and again. Then the same without the second copy: there
// entries must be lost, because this browser writes its local storage out only seconds after a save; a test that cannot
// see that sees nothing.
import process from "node:process";
import { parseArgs } from "node:util";
import { Engine } from "../journeys/house/engines.mjs";
import { Host } from "../journeys/house/host.mjs";
import { Keeper } from "../journeys/house/keeper.mjs";
import { keepYard } from "../journeys/house/round.mjs";
import { pageRoot } from "../journeys/house/settings.mjs";

const { values } = parseArgs({
  options: { saves: { type: "string", default: "200" }, control: { type: "string", default: "10" } },
});
const SAVES = Number(values.saves);
const CONTROL = Number(values.control);
/** A hive that has an entry for the day is asked about before it gets another. */
const HIVES = Math.max(SAVES, CONTROL) + 1;
/** Milliseconds from the word "saved" to the kill. */
const AFTER = 50;
/** Milliseconds that a start has to bring back what it knows of. */
const PATIENCE = 4_000;

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

/**
 * Runs in the page: waits for the entries that were called saved, then logs a hive and waits for the word. Returns what
 * is missing of those entries, the name of the new one, and the milliseconds from the tap to the word.
 */
async function start(known, tag, word, patience) {
  const names = () => {
    const found = new Set();
    for (const key of Object.keys(localStorage)) {
      if (!key.startsWith("beetle-almanac:page:")) continue;
      for (const { id } of JSON.parse(localStorage.getItem(key)).d.entries) found.add(id);
    }
    return found;
  };
  const until = async (what, look, ms = 10_000) => {
    for (const end = performance.now() + ms; performance.now() < end; ) {
      const seen = look();
      if (seen) return seen;
      await new Promise((done) => setTimeout(done, 4));
    }
    if (what) throw new Error(`waited in vain: ${what}; the page says: ${document.body.innerText.slice(-900)}`);
    return null;
  };
  const shown = (css) => document.querySelector(css);
  const row = `[data-testid=row][data-tag="${tag}"] [data-testid=row-open]`;
  await until("the list", () => shown(row));
  const missing = () => known.filter((id) => !names().has(id));
  await until(null, () => missing().length === 0, patience);
  const lost = missing();
  const before = names();
  shown(row).click();
  await until("the panel is open", () => shown(row).getAttribute("aria-expanded") === "true");
  // The panel is brought up with the next frame, and takes no tap before it has been seen.
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  await until("the panel's keys take taps", () => shown("[data-testid=panel]")?.dataset.ready === "true");
  const tapped = performance.now();
  shown("[data-testid=did-topped_up]").click();
  await until(`"${word}"`, () => shown("[data-testid=kept]")?.textContent.includes(word));
  const waited = performance.now() - tapped;
  return { lost, waited, saved: [...names()].filter((id) => !before.has(id)) };
}

/** Saves and kills so often; returns how many entries were lost, and how long "saved" took. */
async function saves(count, faults, word) {
  const engine = new Engine("chromium");
  const host = await new Host(pageRoot).start();
  const times = [];
  let known = [];
  let lost = 0;
  try {
    await host.change({ faults });
    await engine.start();
    const keeper = new Keeper(engine, host);
    await keeper.open();
    await keepYard(keeper, HIVES);
    // The yard is on disk before the first kill, whatever becomes of the second copy.
    await engine.driver.end();
    await engine.die();
    for (let nth = 0; nth <= count; nth += 1) {
      await engine.start();
      await engine.driver.go(`${host.address}#/round`);
      const seen = await engine.driver.wait(start, known, `${nth + 1}`, word, PATIENCE);
      lost += seen.lost.length;
      known = known.filter((id) => !seen.lost.includes(id)).concat(seen.saved);
      // The last start only looks whether the entry before it is there.
      if (nth === count) break;
      if (seen.saved.length !== 1) throw new Error(`one tap, ${seen.saved.length} new entries`);
      times.push(seen.waited);
      await pause(AFTER);
      await engine.die();
    }
  } finally {
    await engine.stop();
    await host.end();
  }
  times.sort((one, other) => one - other);
  return { lost, times };
}

const began = Date.now();
const at = (times, share) => `${times[Math.min(times.length - 1, Math.floor(times.length * share))].toFixed(0)} ms`;
const real = await saves(SAVES, {}, "Saved");
console.log(`with the second copy: ${SAVES} saves, ${SAVES} kills ${AFTER} ms after "saved", ${real.lost} lost`);
console.log(`from the tap to "saved": ${at(real.times, 0.5)} in the middle, ${at(real.times, 0.95)} in 19 of 20`);
const control = await saves(CONTROL, { second: "none" }, "In one place only");
console.log(`without it: ${CONTROL} saves and kills, ${control.lost} lost (some must be, or this test sees nothing)`);
console.log(`kills took ${((Date.now() - began) / 1000).toFixed(0)} s`);
if (real.lost > 0 || control.lost === 0) process.exitCode = 1;
