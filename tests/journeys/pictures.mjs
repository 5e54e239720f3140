// Pictures of every screen, to be looked at: `npm run pictures -- FOLDER [LOOK…]`; without a look all are taken.
// `npm run picture` renews the one in the README. Chromium alone draws them: what differs between engines is for the journeys.
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { Engine, LETTERS, PHONE, SMALL } from "./house/engines.mjs";
import { Host } from "./house/host.mjs";
import { Keeper } from "./house/keeper.mjs";
import { pageRoot } from "./house/settings.mjs";
import { scheme, seldom, tour } from "./house/tour.mjs";

const { values, positionals } = parseArgs({ allowPositionals: true, options: { readme: { type: "boolean", default: false } } });
const readme = fileURLToPath(new URL("pictures/bench.png", import.meta.url));
const folder = resolve(positionals[0] ?? "../../target/pictures");

// A day in the season, so that the pictures of two runs differ only where the page does.
const CLOCK = "2026-07-14T09:00";

async function visit({ size, letters = LETTERS, light = null, print = false }, show) {
  const engine = new Engine("chromium", letters);
  const host = await new Host(pageRoot).start();
  try {
    await engine.start();
    await engine.resize(size);
    await engine.driver.call("POST", "/goog/cdp/execute", { cmd: "Emulation.setScrollbarsHidden", params: { hidden: true } });
    await host.change({ faults: { clock: CLOCK } });
    const keeper = new Keeper(engine, host);
    await keeper.open();
    if (light) await scheme(keeper, light);
    const media = (name) => engine.driver.call("POST", "/goog/cdp/execute", { cmd: "Emulation.setEmulatedMedia", params: { media: name } });
    await show(keeper, async (path, whole) => {
      mkdirSync(dirname(path), { recursive: true });
      if (print) await media("print");
      const shot = await engine.driver.call("POST", "/goog/cdp/execute", {
        cmd: "Page.captureScreenshot",
        params: { format: "png", captureBeyondViewport: whole },
      });
      if (print) await media("");
      writeFileSync(path, Buffer.from(shot.data, "base64"));
    });
  } finally {
    await engine.stop();
    await host.end();
  }
}

const looks = {
  "390-sun": { size: PHONE, light: "sun" },
  "390-night": { size: PHONE, light: "night" },
  "390-usual": { size: PHONE },
  "320-sun": { size: SMALL, light: "sun" },
  "320-night": { size: SMALL, light: "night" },
  "390-twice": { size: PHONE, letters: 2 * LETTERS },
  "320-twice": { size: SMALL, letters: 2 * LETTERS },
  print: { size: PHONE, print: true },
};

if (values.readme) {
  await visit(looks["390-usual"], async (keeper, take) => {
    await keeper.type("bench-hives", "10");
    await keeper.reads("bench-traps", /\b40\b/);
    await keeper.driver.run(() => {
      document.activeElement.blur();
      scrollTo(0, 0);
    });
    await take(readme, false);
  });
  console.log(readme);
} else {
  const wanted = positionals.slice(1);
  for (const [name, look] of Object.entries(looks).filter(([name]) => !wanted.length || wanted.includes(name))) {
    let count = 0;
    // Each from an empty book.
    for (const way of [tour, seldom]) {
      await visit(look, (keeper, take) =>
        way(keeper, async (screen) => {
          count += 1;
          const file = `${String(count).padStart(2, "0")}-${screen.replace(/\W+/g, "-")}`;
          await take(join(folder, name, `${file}.png`), false);
          await take(join(folder, name, `${file}-whole.png`), true);
        }),
      );
    }
    console.log(`${name}: ${count} screens`);
  }
  console.log(folder);
}
process.exit(0);
