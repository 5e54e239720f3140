import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, row } from "../house/round.mjs";

const checks = async (keeper) => (await entries(keeper)).filter((entry) => entry.what.check).map((entry) => entry.what.check);

journey("no beetles is one tap, and not the same as not counted", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await keeper.host.stop();
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  assert.equal(await keeper.text("count-less"), "0");
  assert.equal(await keeper.attribute("count-less", "aria-label"), "New beetles 0");
  await keeper.tap("count-less");
  await keeper.reads("count", /^New beetles: .?0.?$/);
  assert.equal(await keeper.text("count-less"), "−1");
  await keeper.tap("did-topped_up");
  await keeper.until("it is written", async () => (await checks(keeper)).length === 1);
  // The next hive begins uncounted.
  await keysReady(keeper);
  await keeper.reads("count", /not counted/);
  assert.equal(await keeper.text("count-less"), "0");
  await keeper.tap("did-topped_up");
  await keeper.until("both are written", async () => (await checks(keeper)).length === 2);
  const [first, second] = await checks(keeper);
  assert.ok(first.count !== undefined && second.count === undefined, JSON.stringify([first, second]));
  assert.match(JSON.stringify(first.count), /\b0\b/);
});
