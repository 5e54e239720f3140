import { LETTERS, SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, log, row } from "../house/round.mjs";

const FIRST_KEYS = ["did-as_found", "did-topped_up"];
const ALL_KEYS = [...FIRST_KEYS, "did-replaced", "did-skipped", "did-spilled", "did-missing"];

/** Of these parts, those whose middle a finger would not meet as the page stands, with what it would meet instead. */
const hidden = (keeper, marks) =>
  keeper.driver.run((marks) => {
    const out = [];
    for (const mark of marks) {
      const part = document.querySelector(`[data-testid=${mark}]`);
      if (!part) {
        out.push(`${mark} is not there`);
        continue;
      }
      const { left, top, right, bottom } = part.getBoundingClientRect();
      const met = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      if (top < 0 || bottom > innerHeight || !met || !part.contains(met)) {
        out.push(`${mark} at ${top.toFixed(0)}…${bottom.toFixed(0)} of ${innerHeight}, there: ${met?.innerText?.slice(0, 30)}`);
      }
    }
    return out;
  }, marks);

const replaced = async (keeper) => (await entries(keeper)).filter(({ what }) => what.check?.did === "replaced").length;

async function spilled(keeper, panel) {
  await keeper.open();
  await keepYard(keeper, 5);
  for (const did of ["spilled", "missing"]) {
    await log(keeper, did === "spilled" ? 2 : 3, did);
    await keeper.reads(".dock-name", did === "spilled" ? /3/ : /4/);
    await keysReady(keeper);
    await keeper.drawn();
    await keeper.reads("told", did === "spilled" ? /Wipe, never rinse/ : /Look on the floor/);
    assert.deepEqual(await hidden(keeper, ["filled-again", "told-away", "undo", ...panel]), [], did);
  }
  // The key is for the hive that was left, not for the one whose panel is open.
  const before = await replaced(keeper);
  await keeper.tap("filled-again");
  await keeper.until("the traps are filled again", async () => (await replaced(keeper)) === before + 1);
  await keeper.gone("filled-again");
  await keeper.reads(row(3), /replaced today/);
  await keeper.reads(".dock-name", /4/);

  await log(keeper, 4, "spilled");
  await keeper.tap("told-away");
  await keeper.gone("filled-again");
  await keeper.reads("undo-bar", /Hive .?4.? spilled/);
  await keeper.tap("undo");
  await keeper.reads(".dock-name", /4/);
}

journey("on the smallest phone oil spilled: what to do, and the key for it done, stand above the keys of the next hive", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await spilled(keeper, ALL_KEYS);
});

journey("on the smallest phone with letters twice as large: advice and the first keys of the next hive are in sight together", { letters: 2 * LETTERS, faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await spilled(keeper, FIRST_KEYS);
});
