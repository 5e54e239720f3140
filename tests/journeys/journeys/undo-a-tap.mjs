import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, rows } from "../house/round.mjs";

journey("she tapped the wrong hive and took it back, at once", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  const before = await rows(keeper);
  await log(keeper, 2, "replaced");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  await keeper.tap("undo");
  await keeper.until("hive 2 is due again", async () => (await due(keeper, 2)) === "today");
  assert.deepEqual(await rows(keeper), before);
  await keeper.reload();
  assert.deepEqual(await rows(keeper), before, "what was taken back stays so");
});

journey("she marked all the rest as usual and took it back with one tap", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 40);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  const before = await rows(keeper);
  await keeper.tap("rest-as-usual");
  await keeper.tapCalmly("rest-confirm");
  await keeper.until("no hive is due", async () => (await rows(keeper)).every(({ due }) => due === "later"));
  await keeper.tap("undo");
  await keeper.until("39 hives are due again", async () => (await rows(keeper)).filter(({ due }) => due === "today").length === 39);
  assert.deepEqual(await rows(keeper), before, "the hive logged on its own is not touched");
});

journey("she pressed the wrong key and took it back: the panel is at that hive again, and the count with it", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.tap(`[data-testid=row][data-tag="2"] [data-testid=row-open]`);
  await keeper.tap("count-5");
  await keeper.tap("count-1");
  await log(keeper, 2, "missing");
  await keeper.reads(".dock-name", /3/);
  // What she counted is told back: a slip in the sun is seen.
  await keeper.reads("undo-bar", /Hive .?2.?: .*missing, 6.beetles/);
  await keeper.tap("undo");
  await keeper.reads(".dock-name", /2/);
  await keeper.reads("count", /6/);
  // Done again, the walk goes on, and the count is not left over for a second entry.
  await keeper.tap("undo");
  await keeper.reads(".dock-name", /3/);
  await keeper.tap("undo");
  await keeper.reads(".dock-name", /2/);
  await log(keeper, 2, "topped_up");
  await keeper.reads(".dock-name", /3/);
  const [check] = (await entries(keeper)).filter(({ what }) => what.check?.did === "topped_up");
  assert.equal(check.what.check.count, 6);
});

journey("she wrote for a day before the hive was in the book: one answer moves its start and saves the work", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await keeper.tap(`[data-testid=row][data-tag="1"] [data-testid=row-open]`);
  await keeper.tap("more");
  await keeper.waitFor("#log-day");
  // As the phone's own calendar fills the field; its keys differ from browser to browser.
  await keeper.driver.run(() => {
    const field = document.querySelector("#log-day");
    field.value = "2026-07-10";
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await log(keeper, 1, "topped_up");
  await keeper.tap("stood-there");
  await keeper.reads(".dock-name", /2/);
  const checks = (await entries(keeper)).filter(({ what }) => what.check?.did === "topped_up");
  assert.equal(checks.length, 1);
  await keeper.tap("undo");
  await keeper.reads(".dock-name", /1/);
  const struck = (await entries(keeper)).filter(({ what }) => what.struck);
  assert.deepEqual(struck.map(({ what }) => what.struck.entries.length), [2], "start and work are taken back together");
});
