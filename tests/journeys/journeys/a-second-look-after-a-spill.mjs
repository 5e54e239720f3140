import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, log, onTheDay, row, rows } from "../house/round.mjs";

journey("oil spilled at a hive: on the day of the second look the yard says so, though no trap is due", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 4);
  await log(keeper, 2, "spilled");
  await keeper.tap("filled-again");
  await keeper.reads(row(2), /replaced today/);
  await onTheDay(keeper, "2026-07-03T09:00");
  await keeper.reads("yard-total", /^Nothing due today/);
  await onTheDay(keeper, "2026-07-04T09:00");
  await keeper.reads("yard-total", /^Today: look again at 1 hive, oil spilled there\. Nothing due today\. Next:/);
  await keeper.reads(row(2), /look again today: oil spilled/);
  await keeper.place("load");
  await keeper.reads("main", /To look at again after a spill: 1/);
  await onTheDay(keeper, "2026-07-06T09:00");
  await keeper.place("round");
  await keeper.reads(row(2), /look again: was to be by Sat/);
  await log(keeper, 2, "as_found");
  await keeper.until("somebody has looked", async () => !(await rows(keeper)).some(({ words }) => /look again/.test(words)));
  await keeper.reads("yard-total", /^Nothing due today/);
  assert.equal(await keeper.attribute(row(2), "data-due"), "later");
});
