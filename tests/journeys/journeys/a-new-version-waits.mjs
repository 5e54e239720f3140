import { nextVersion } from "../house/built.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { pageRoot } from "../house/settings.mjs";

const shown = (keeper) => keeper.driver.run(() => document.querySelector("meta[name=journey]")?.content ?? "first");
const caches = (keeper) => keeper.driver.wait(() => window.caches.keys());

journey("a new version came out while she was typing, and waited for her word", {}, async (keeper) => {
  await keeper.open();
  await keeper.offlineReady();
  await keeper.reload();
  const before = await caches(keeper);
  assert.equal(before.length, 1);

  await keeper.host.change({ root: nextVersion(pageRoot, "second") });
  await keeper.type("bench-hives", "17");
  // The browser looks for a new worker after every load.
  await keeper.reload();
  await keeper.reads("update-bar", /new version/i);
  assert.equal(await shown(keeper), "first", "a new version must not take over by a mere reload");
  assert.equal(await keeper.value("bench-hives"), "17");

  // No reload comes by itself while she goes on typing.
  await keeper.driver.run(() => (window.sameLoad = true));
  await keeper.type("bench-hives", "18");
  await new Promise((done) => setTimeout(done, 1500));
  assert.equal(await keeper.driver.run(() => window.sameLoad ?? null), true);
  assert.equal(await shown(keeper), "first");

  await keeper.tap("update-now");
  await keeper.until("the second version is shown", async () => (await shown(keeper)) === "second");
  await keeper.started();
  assert.equal(await keeper.value("bench-hives"), "18", "what stood in the field is still there");
  await keeper.gone("update-bar");
  await keeper.until("the first version's files are gone", async () => {
    const after = await caches(keeper);
    return after.length === 1 && after[0] !== before[0];
  });
});
