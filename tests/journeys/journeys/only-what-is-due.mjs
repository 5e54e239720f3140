import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, keepYard, keysReady, log, onTheDay } from "../house/round.mjs";

journey("she works on what is due: the panel goes from due hive to due hive and shuts after the last; from one that is not due it goes on to its neighbour", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 5);
  await onTheDay(keeper, "2026-07-10T09:00");
  // Nothing is due: the next is the next.
  await log(keeper, 2, "topped_up");
  await keeper.reads(".dock-name", /3/);
  await log(keeper, 3, "topped_up");
  await keeper.reads(".dock-name", /4/);
  await keeper.tap("shut");

  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 4, "topped_up");
  await keeper.reads(".dock-name", /5/);
  await log(keeper, 5, "topped_up");
  // Behind the last the nearest that is due, over those that are not.
  await keeper.reads(".dock-name", /1/);
  await log(keeper, 1, "topped_up");
  await keeper.until("the panel is shut", async () => !(await keeper.shows("shut")));
  assert.deepEqual([await due(keeper, 2), await due(keeper, 3)], ["later", "later"]);

  // Taken back and done again it ends there too.
  await keeper.tap("undo");
  await keeper.reads(".dock-name", /1/);
  await keysReady(keeper);
  await keeper.tap("undo");
  await keeper.until("the panel is shut again", async () => !(await keeper.shows("shut")));
});
