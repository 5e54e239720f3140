import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard } from "../house/round.mjs";

/** Goes to every place and opens every fold there. */
const visitAll = (keeper) =>
  keeper.driver.wait(async () => {
    const pause = (ms) => new Promise((done) => setTimeout(done, ms));
    for (const place of ["#/load", "#/book", "#/round", "#/bench"]) {
      location.hash = place;
      await pause(120);
      for (const fold of document.querySelectorAll("details")) fold.open = true;
      await pause(60);
    }
  });

journey("she goes through every place all day long, and what she has left is not kept in memory", { faults: { clock: "2026-07-01T09:00" } }, async (keeper, t) => {
  await keeper.open();
  await keepYard(keeper, 3);
  if (!(await keeper.engine.counts())) return t.skip("this browser's driver does not count what is in memory");
  for (let round = 0; round < 2; round += 1) await visitAll(keeper);
  const first = await keeper.engine.counts();
  for (let round = 0; round < 6; round += 1) await visitAll(keeper);
  const last = await keeper.engine.counts();
  // A handler that holds its own element costs hundreds of nodes a round.
  assert.ok(last.nodes < first.nodes + 200 && last.listeners < first.listeners + 20, JSON.stringify({ first, last }));
});
