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
  // The key is for the hive that was left, not for the one whose panel is open, and says so.
  await keeper.reads("filled-again", /Hive .?3.?: replaced and filled/);
  const before = await replaced(keeper);
  await keeper.tap("filled-again");
  await keeper.until("the traps are filled again", async () => (await replaced(keeper)) === before + 1);
  await keeper.gone("filled-again");
  await keeper.reads(row(3), /replaced today/);
  await keeper.reads(".dock-name", /4/);

  await log(keeper, 4, "spilled");
  await keeper.tap("told-away");
  await keeper.gone("filled-again");
  await keeper.reads("undo-bar", /Hive .?4.?: all 4 traps spilled/);
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

journey("on the smallest phone with letters twice as large: the name of the next hive is in sight with its first keys", { letters: 2 * LETTERS, faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  await keepYard(keeper, 3);
  await log(keeper, 1, "topped_up");
  await keeper.reads(".dock-name", /2/);
  await keysReady(keeper);
  await keeper.drawn();
  const line = await keeper.driver.run(() => {
    const line = document.querySelector(".dock-saves");
    const { left, top, bottom } = line.getBoundingClientRect();
    const met = document.elementFromPoint(left + 4, (top + bottom) / 2);
    return { words: line.innerText, seen: top >= 0 && bottom <= innerHeight && line.contains(met) };
  });
  assert.match(line.words, /Hive .?2/);
  assert.ok(line.seen, JSON.stringify(line));
  assert.deepEqual(await hidden(keeper, FIRST_KEYS), []);
});

/** Where the panel opens with these letters at hive 1, and at hive 2 after that, beside what of it is out of sight. */
async function opens(keeper, size, parts) {
  await keeper.engine.resize(size);
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  for (const hive of [1, 2]) {
    await keeper.until(`hive ${hive} is open`, async () => new RegExp(`${hive}`).test(await keeper.text(".dock-name")));
    await keysReady(keeper);
    await keeper.drawn();
    assert.deepEqual(await hidden(keeper, ["shut", ...parts]), [], `hive ${hive}`);
    assert.ok(
      await keeper.driver.run(() => {
        const name = document.querySelector(".dock-name");
        const { left, top, bottom } = name.getBoundingClientRect();
        return name.contains(document.elementFromPoint(left + 4, (top + bottom) / 2));
      }),
      `the name of hive ${hive} is out of sight`,
    );
    if (hive === 1) await keeper.tap("did-topped_up");
  }
}

journey("on the smallest phone with letters twice as large the panel begins with the name of its hive, the count and the first keys under it", { letters: 2 * LETTERS, faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await opens(keeper, SMALL, ["count-1", "count-20", ...FIRST_KEYS]);
});

journey("on the smallest phone with letters as usual the panel has all its keys in reach", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await opens(keeper, SMALL, ["count-1", "count-20", ...ALL_KEYS]);
});

journey("one trap of four spilled: Spilled asks which, and all of them is two taps", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  const checks = async () => (await entries(keeper)).filter(({ what }) => what.check?.did === "spilled").map(({ what }) => what.check.traps?.length ?? "all");
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("did-spilled");
  await keeper.reads("which", /Hive .?1.?: which traps spilled\?/);
  assert.deepEqual(await checks(), []);
  await keysReady(keeper);
  await keeper.tap("which-trap");
  await keeper.reads(row(1), /1 trap spilled – still due/);
  await keeper.reads(".dock-name", /2/);
  await keysReady(keeper);
  keeper.taps = 0;
  await keeper.tap("did-spilled");
  await keysReady(keeper);
  await keeper.tap("which-all");
  await keeper.reads(row(2), /4 traps spilled – still due/);
  assert.equal(keeper.taps, 2);
  assert.deepEqual(await checks(), [1, "all"]);
});
