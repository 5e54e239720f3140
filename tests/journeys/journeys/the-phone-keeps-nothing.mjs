import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { row, rows } from "../house/round.mjs";

journey("her browser keeps nothing: the page says so before the first entry, and the Bench works", { faults: { storage: "denied" } }, async (keeper) => {
  await keeper.open();
  await keeper.reads("storage-notice", /keeps nothing: records vanish/);
  await keeper.type("bench-hives", "10");
  await keeper.reads("bench-traps", /\b40\b/);
  // She may go on all the same; what she sees then is there until she closes the page.
  await keeper.tap("bench-keep");
  await keeper.tap("keep-save");
  await keeper.until("10 hives are listed", async () => (await rows(keeper)).length === 10);
  assert.ok(await keeper.shows(row(1)));
  await keeper.reads("storage-notice", /what you have written vanishes/);
});
