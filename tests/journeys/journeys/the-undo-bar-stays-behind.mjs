import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log } from "../house/round.mjs";

journey("she went on to load the car: what she had logged is undone where it was done, not elsewhere", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  // Keeping the yard led here by itself.
  await keeper.reads("undo-bar", /Kept: 3 hives/);
  await log(keeper, 1, "as_found");
  await keeper.reads("undo-bar", /Hive .?1.? as found/);
  // The bar follows what an act itself leads to for a second.
  await new Promise((done) => setTimeout(done, 1100));
  for (const place of ["load", "book", "bench"]) {
    await keeper.place(place);
    await keeper.gone("undo");
  }
  await keeper.place("round");
  await keeper.tap("undo");
  await keeper.reads("undo-bar", /Taken back/);
});

journey("she struck a line out: one bar says so, and its key brings the line back", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await log(keeper, 1, "as_found");
  await keeper.until("the work is written", async () => (await entries(keeper)).some(({ what }) => what.check));
  await keeper.open("#/book/history");
  await keeper.tap("[data-testid=history-line] button");
  await keeper.tapCalmly("history-strike");
  await keeper.reads("undo-bar", /Struck out/);
  assert.equal(await keeper.shows(".messages .message"), false, "said twice");
  await keeper.tap("undo");
  await keeper.reads("undo-bar", /Taken back/);
  assert.equal((await entries(keeper)).filter(({ what }) => what.struck).length, 2);

  await keeper.open("#/book/kinds");
  await keeper.tap("kind-new");
  await keeper.type("#kind-name", "Slim");
  await keeper.tap("kind-save");
  await keeper.reads("undo-bar", /Kind of trap kept: .?Slim/);
  assert.equal(await keeper.shows(".messages .message"), false, "said twice");
});
