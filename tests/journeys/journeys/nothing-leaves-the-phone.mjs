import { worker } from "../house/built.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { tour } from "../house/tour.mjs";
import { pageRoot } from "../house/settings.mjs";

journey("she uses every screen, and the phone asks only for the page's own files", {}, async (keeper) => {
  const seen = new Set();
  const collect = async () => {
    for (const address of await keeper.driver.run(() => performance.getEntries().map(({ name }) => name))) seen.add(address);
  };
  await keeper.open();
  await keeper.offlineReady();
  await tour(keeper, collect);

  const elsewhere = [...seen].filter((address) => /^[a-z]+:\/\//.test(address) && !address.startsWith(keeper.host.address));
  assert.deepEqual(elsewhere, []);

  const { base, asked, origin } = keeper.host;
  const own = new Set([...worker(pageRoot).files.map(([path]) => base + path.replace(/^\.\//, "")), `${base}sw.js`]);
  assert.deepEqual(asked.filter(({ path, method, status }) => !own.has(path) || method !== "GET" || status !== 200), []);
  assert.ok(asked.every(({ host }) => `http://${host}` === origin));
  // The log is a real one: the page and its program were asked for in it.
  for (const part of [base, `${base}sw.js`]) assert.ok(asked.some(({ path }) => path === part), `${part} was never asked for`);
  assert.ok(asked.some(({ path }) => path.endsWith(".wasm")));
});
