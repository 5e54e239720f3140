// Walks every journey in one engine: one browser for all of them, a fresh origin for each.
import assert from "node:assert/strict";
import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { after, describe, test } from "node:test";
import { fileURLToPath } from "node:url";
import { Engine, PHONE } from "./engines.mjs";
import { Host } from "./host.mjs";
import { journeys } from "./journey.mjs";
import { Keeper } from "./keeper.mjs";
import { failures, only, pageRoot } from "./settings.mjs";

const JOURNEY_MS = 90_000;
/** Said by the browser when the host withholds the service worker, as it does under faults. */
const NO_WORKER = /bad HTTP response code \(404\) was received when fetching the script/;
/** The browser asks for the icon of its tab when it likes, also when the server has just gone. */
const NO_ICON = /icons\/icon\.svg - Failed to load resource/;
const folder = fileURLToPath(new URL("../journeys/", import.meta.url));

export async function walk(name) {
  for (const file of readdirSync(folder).filter((file) => file.endsWith(".mjs") && new RegExp(only).test(file)).sort()) {
    await import(join(folder, file));
  }
  assert.ok(journeys.length > 0, `no file in journeys/ has a name like "${only}"`);

  // The size of letters is set when a browser starts: each size has its browser once.
  journeys.sort((one, other) => one.letters - other.letters);

  let engine = null;
  after(() => engine?.stop());

  describe(name, () => {
    for (const { title, steps, faults, complaints, letters } of journeys) {
      const once = async (t) => {
        engine = await ready(engine, name, letters);
        const host = await new Host(pageRoot).start();
        if (faults) await host.change({ faults });
        const keeper = new Keeper(engine, host);
        try {
          await steps(keeper, t);
          const said = await engine.complaints();
          const known = [...complaints, ...(faults ? [NO_WORKER] : []), ...(host.stopped ? [NO_ICON] : [])];
          const unexpected = said?.filter((line) => !known.some((pattern) => pattern.test(line))) ?? [];
          assert.deepEqual(unexpected, [], "the page complained on the browser's console");
        } catch (error) {
          await keepPicture(engine, `${name}-${title}`);
          throw error;
        } finally {
          await leave(engine);
          await host.end();
        }
      };
      // One journey in some hundred trips over its browser on a busy machine. It is walked once more in a new one, and
      // what stopped it is told either way: a fault of the page stops it twice.
      test(title, { timeout: 2 * JOURNEY_MS }, async (t) => {
        try {
          await once(t);
        } catch (error) {
          t.diagnostic(`FAILED ONCE, walked again: ${error.message.slice(0, 400)}`);
          await engine?.stop().catch(() => {});
          engine = null;
          await once(t);
        }
      });
    }
  });
}

/** The browser; a new one for other letters, or when an earlier journey has ended it: that one has failed by then. */
async function ready(engine, name, letters) {
  if (engine?.letters === letters && (await engine.driver.windows().then(() => true, () => false))) return engine;
  await engine?.stop().catch(() => {});
  const fresh = new Engine(name, letters);
  try {
    await fresh.start();
  } catch (error) {
    await fresh.stop();
    throw error;
  }
  return fresh;
}

/** Back to one empty tab of the usual size, with nothing left on the console. */
async function leave(engine) {
  try {
    const [first, ...others] = await engine.driver.windows();
    for (const handle of others) {
      await engine.driver.turnTo(handle);
      await engine.driver.close();
    }
    await engine.driver.turnTo(first);
    await engine.driver.go("about:blank");
    await engine.resize(PHONE);
    await engine.complaints();
  } catch {
    // The next journey finds the browser gone and starts another.
  }
}

async function keepPicture(engine, title) {
  try {
    mkdirSync(failures, { recursive: true });
    writeFileSync(join(failures, `${title.replace(/[^\w-]+/g, "-").slice(0, 100)}.png`), await engine.driver.screenshot());
  } catch {
    // The journey's own error is the one to tell.
  }
}
