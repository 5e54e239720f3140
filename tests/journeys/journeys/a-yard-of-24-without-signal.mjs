import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log, rows } from "../house/round.mjs";

const HIVES = 24;
const MOST_SECONDS = 240;
const REFUSED = /ERR_CONNECTION_REFUSED|Failed to update a ServiceWorker/;

journey("she walks a yard of 24 hives far from any signal: two taps a hive at most, and all of it stays", { complaints: [REFUSED] }, async (keeper, t) => {
  await keeper.open();
  await keeper.offlineReady();
  await keepYard(keeper, HIVES);
  assert.deepEqual((await rows(keeper)).map(({ tag }) => tag), Array.from({ length: HIVES }, (_, index) => `${index + 1}`));

  await keeper.host.stop();
  await keeper.reload();
  const before = (await entries(keeper)).length;
  const done = async () => (await rows(keeper)).filter(({ words }) => /topped up today/.test(words)).map(({ tag }) => Number(tag));

  keeper.taps = 0;
  const begun = performance.now();
  for (let tag = 1; tag <= HIVES; tag++) {
    await log(keeper, tag, "topped_up");
    await keeper.until(`hive ${tag} is done`, async () => (await done()).includes(tag));
  }
  const seconds = (performance.now() - begun) / 1000;
  t.diagnostic(`${HIVES} hives: ${keeper.taps} taps in ${seconds.toFixed(1)} s, ${(seconds / HIVES).toFixed(2)} s a hive`);
  assert.ok(keeper.taps <= 2 * HIVES, `${keeper.taps} taps are more than two a hive`);
  assert.ok(seconds < MOST_SECONDS, `took ${seconds.toFixed(0)} s`);

  assert.equal((await entries(keeper)).length, before + HIVES);
  await keeper.reads("visit-state", /24 hives logged.*complete/);
  await keeper.reload();
  assert.equal((await done()).length, HIVES);
});
