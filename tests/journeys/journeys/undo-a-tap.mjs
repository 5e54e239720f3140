import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, keepYard, log, onTheDay, rows } from "../house/round.mjs";

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
