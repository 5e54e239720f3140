import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, rows } from "../house/round.mjs";

const HIVES = 24;

journey("she keeps a yard of 24 hives, walks it two weeks later without signal, two taps a hive", { faults: { clock: "2026-07-01T09:00" } }, async (keeper, t) => {
  await keeper.open();
  await keepYard(keeper, HIVES);
  assert.deepEqual((await rows(keeper)).map(({ tag }) => tag), Array.from({ length: HIVES }, (_, index) => `${index + 1}`));

  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.place("round");
  assert.deepEqual(new Set((await rows(keeper)).map(({ due }) => due)), new Set(["today"]));

  keeper.taps = 0;
  const begun = performance.now();
  for (let tag = 1; tag <= HIVES; tag++) {
    await log(keeper, tag, "topped_up");
    await keeper.until(`hive ${tag} is done`, async () => (await due(keeper, tag)) === "later");
  }
  const seconds = (performance.now() - begun) / 1000;
  t.diagnostic(`${HIVES} hives: ${keeper.taps} taps in ${seconds.toFixed(1)} s, ${(seconds / HIVES).toFixed(2)} s a hive`);
  assert.ok(keeper.taps <= 2 * HIVES, `${keeper.taps} taps are more than two a hive`);
  assert.ok(seconds < 240, `took ${seconds.toFixed(0)} s`);

  const checks = (await entries(keeper)).filter(({ day }) => day === "2026-07-15");
  assert.equal(checks.length, HIVES);
  await keeper.reload();
  assert.deepEqual(new Set((await rows(keeper)).map(({ due }) => due)), new Set(["later"]));
});
