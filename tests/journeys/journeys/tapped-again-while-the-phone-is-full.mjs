import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, log, row } from "../house/round.mjs";
import { fill, free } from "../house/storage.mjs";

journey("she tapped again and again while the phone was full: each work is written once, and leaves the fields with it", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("count-5");
  await fill(keeper);
  for (const did of ["topped_up", "topped_up", "replaced"]) {
    await keeper.tap(`did-${did}`);
    await keeper.reads("unsaved-notice", did === "replaced" ? /Hive .?1.? replaced/ : /Hive .?1.? topped up/);
    await keeper.tap("ask-back");
  }
  await log(keeper, 2, "as_found");
  await keeper.reads("unsaved-notice", /Hive .?1.? replaced; Hive .?2.? as found/);

  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.gone("unsaved-notice");
  const checks = (await entries(keeper)).filter(({ what }) => what.check).map(({ what }) => [what.check.did, what.check.count ?? null]);
  assert.equal(checks.length, 2, JSON.stringify(checks));
  assert.deepEqual(checks.map(([did]) => did).sort(), ["as_found", "replaced"]);
  // Hive 1 waits with nothing in its fields that would be logged a second time.
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keeper.reads("count", /not counted/i);
});
