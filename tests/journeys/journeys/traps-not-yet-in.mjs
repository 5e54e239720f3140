import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, keepYard, keysReady, log, onTheDay, row } from "../house/round.mjs";

journey("she kept a yard before its traps were in: work waits until they are placed", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Orchard", "not_yet");
  await keeper.reads("yard-total", /^8 traps to place; carry 100 mL/);
  await keeper.place("load");
  await keeper.reads("main", /For this trip only 10 traps, no price known/);
  await keeper.place("round");
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  assert.equal(await keeper.shows("did-topped_up"), false, "there is nothing to fill");
  await keeper.tap("did-as_found");
  await keysReady(keeper);
  await keeper.tap("did-placed");
  await keeper.reads("visit-state", /2 logged today, 1 of them still due/);
  await log(keeper, 1, "placed");
  await keeper.reads("visit-state", /2 hives logged.*complete/);
  await onTheDay(keeper, "2026-07-15T09:00");
  assert.equal(await due(keeper, 1), "today");
  assert.equal(await due(keeper, 2), "today");
});
