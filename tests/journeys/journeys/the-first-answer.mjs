import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

journey("she opens the page for the first time, types 10 hives and 2 boxes, and has traps and oil", {}, async (keeper, t) => {
  const begun = performance.now();
  await keeper.open();
  await keeper.type("bench-hives", "10");
  await keeper.type("bench-boxes", "2");
  await keeper.reads("bench-traps", /\b40\b/);
  // 40 traps of 20 mL filled half: 400 mL, a quarter more in reserve, up to the next 50 mL.
  await keeper.reads("bench-oil", /\b500 mL\b/);
  const seconds = (performance.now() - begun) / 1000;
  t.diagnostic(`first answer ${seconds.toFixed(1)} s after the address was entered`);
  assert.ok(seconds < 30, `took ${seconds.toFixed(1)} s`);

  await keeper.type("bench-hives", "11");
  await keeper.reads("bench-traps", /\b44\b/);
  assert.deepEqual(await keeper.pages(), {}, "a sum is not a record");
});
