import { written } from "../house/dates.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, rows, skip } from "../house/round.mjs";

journey("she skipped a hot hive; it stays due and leads the next day's list", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 5);
  await onTheDay(keeper, "2026-07-15T09:00");
  await skip(keeper, 4, "temper");
  await keeper.until("the skip is written", async () => (await entries(keeper)).some(({ day }) => day === "2026-07-15"));
  assert.equal(await due(keeper, 4), "today", "its clock runs on from the last real service");
  for (const tag of [1, 2, 3, 5]) {
    await log(keeper, tag, "topped_up");
    await keeper.until(`hive ${tag} is done`, async () => (await due(keeper, tag)) === "later");
  }

  await onTheDay(keeper, "2026-07-16T09:00");
  const [first, ...others] = await rows(keeper);
  assert.equal(first.tag, "4");
  assert.equal(first.due, "overdue");
  assert.match(first.words, /skipped .*: hot bees/);
  assert.match(first.words, written("2026-07-15"));
  assert.deepEqual(others.map(({ tag }) => tag), ["1", "2", "3", "5"], "the others stay in walking order");
});
