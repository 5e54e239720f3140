import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { worker } from "../house/built.mjs";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, unfold } from "../house/round.mjs";
import { tour } from "../house/tour.mjs";
import { pageRoot } from "../house/settings.mjs";

/** A backup, a calendar and a table go out; the backup comes in, whole and cut off. */
async function filesOutAndIn(keeper) {
  await keepYard(keeper, 2, "Hill");
  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  await unfold(keeper, "papers");
  await keeper.tap("calendar-save");
  await keeper.tap("table-save");
  const [{ name, text }] = await savedFiles(keeper, 3);
  const path = join(keeper.engine.home, name);
  writeFileSync(path, text.slice(0, -60));
  await keeper.pick("book-restore", path);
  await keeper.one("recovered");
  await keeper.tap("recovered-file");
  await savedFiles(keeper, 4);
  writeFileSync(path, text);
  await keeper.pick("book-restore", path);
  await keeper.tapCalmly("restore-confirm");
}

journey("she uses every screen, takes files out and in, and the phone asks only for the page's own files", {}, async (keeper) => {
  const seen = new Set();
  const collect = async () => {
    for (const address of await keeper.driver.run(() => performance.getEntries().map(({ name }) => name))) seen.add(address);
  };
  await keeper.open();
  await keeper.offlineReady();
  await tour(keeper, collect);
  await filesOutAndIn(keeper);
  await collect();

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
