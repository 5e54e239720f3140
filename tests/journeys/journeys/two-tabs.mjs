import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay } from "../house/round.mjs";

journey("she has the page open twice and logs in both: each sees the other's entry and none is lost", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 4);
  await onTheDay(keeper, "2026-07-15T09:00");
  const first = await keeper.driver.window();
  const hash = await keeper.driver.run(() => location.hash);
  const second = await keeper.newTab(hash);

  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done in the second tab", async () => (await due(keeper, 1)) === "later");
  await keeper.turnTo(first);
  await keeper.until("hive 1 is done in the first tab", async () => (await due(keeper, 1)) === "later");
  await log(keeper, 2, "replaced");
  await keeper.until("hive 2 is done in the first tab", async () => (await due(keeper, 2)) === "later");
  await keeper.turnTo(second);
  await keeper.until("hive 2 is done in the second tab", async () => (await due(keeper, 2)) === "later");
  await log(keeper, 3, "as_found");
  await keeper.until("three entries", async () => (await entries(keeper)).filter(({ day }) => day === "2026-07-15").length === 3);
  await keeper.reload();
  for (const tag of [1, 2]) assert.equal(await due(keeper, tag), "later");
  assert.equal(await due(keeper, 4), "today");
});
