import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log, row } from "../house/round.mjs";

journey("a call came in at an open hive: the beetles counted so far are still there", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  for (const key of ["count-5", "count-5", "count-1"]) await keeper.tap(key);
  await keeper.reads("count", /\b11\b/);
  await keeper.reload();
  await keeper.reads("panel", /Hive .?2/);
  await keeper.reads("count", /\b11\b/);
  const before = (await entries(keeper)).length;
  await log(keeper, 2, "as_found");
  await keeper.until("the entry is kept", async () => (await entries(keeper)).length === before + 1);
  assert.equal((await entries(keeper)).find(({ what }) => JSON.stringify(what).includes("as_found"))?.what.check?.count ?? null, 11);
});

journey("the phone loaded the page again in the middle of an entry, and what was typed is still there", {}, async (keeper) => {
  await keeper.open();
  await keeper.type("bench-hives", "37");
  await keeper.tap("bench-keep");
  await keeper.type("keep-name", "Old orchard, far en");
  await keeper.reload();
  assert.equal(await keeper.value("bench-hives"), "37");
  await keeper.reads("bench-traps", /\b148\b/);
  if (!(await keeper.shows("keep-name"))) await keeper.tap("bench-keep");
  assert.equal(await keeper.value("keep-name"), "Old orchard, far en");
});
