import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay } from "../house/round.mjs";

journey("a day later she found the entry was wrong: struck out in the history, and brought back", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  await onTheDay(keeper, "2026-07-16T09:00");
  const before = await entries(keeper);

  await keeper.open("#/book/history");
  await keeper.tap("[data-testid=history-line] button");
  await keeper.tapCalmly("history-strike");
  await keeper.until("the strike is written", async () => (await entries(keeper)).length === before.length + 1);
  const kept = new Set((await entries(keeper)).map((entry) => JSON.stringify(entry)));
  for (const entry of before) assert.ok(kept.has(JSON.stringify(entry)), "nothing is ever rubbed out");
  await keeper.place("round");
  await keeper.until("hive 1 is overdue", async () => (await due(keeper, 1)) === "overdue");

  await keeper.open("#/book/history");
  if (!(await keeper.shows("history-back"))) await keeper.tap("[data-testid=history-line] button");
  await keeper.tapCalmly("history-back");
  await keeper.until("the strike is struck", async () => (await entries(keeper)).length === before.length + 2);
  await keeper.place("round");
  await keeper.until("hive 1 is done again", async () => (await due(keeper, 1)) === "later");
});
