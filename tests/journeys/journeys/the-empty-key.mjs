import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, row } from "../house/round.mjs";

journey("she took the empty level for a level left out: the panel asks before it writes that no oil is left", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  const checks = async () => (await entries(keeper)).filter(({ what }) => what.check);
  await keeper.open();
  await keepYard(keeper, 2);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keeper.tap("more");
  await keeper.reads(".dock-more", /Left blank: the usual fill/);
  await keeper.tap("after-empty");
  await keysReady(keeper);
  await keeper.tap("did-topped_up");
  await keeper.reads("doubt", /0 %: no oil is in after this/);
  assert.deepEqual(await checks(), [], "nothing is written before she has answered");
  await keeper.tap("ask-back");
  await keeper.tap("after-empty");
  await keysReady(keeper);
  await keeper.tap("did-topped_up");
  await keeper.until("it is written", async () => (await checks()).length === 1);
  assert.notEqual((await checks())[0].what.check.after, "0");
});
