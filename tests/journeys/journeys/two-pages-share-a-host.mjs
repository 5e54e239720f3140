import { nextVersion } from "../house/built.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { pageRoot } from "../house/settings.mjs";

journey("another page on the same host keeps its files and records when this one is renewed", {}, async (keeper) => {
  await keeper.open();
  await keeper.offlineReady();
  await keeper.reload();
  const [own] = await keeper.driver.wait(() => caches.keys());
  // The nearest neighbours there can be: this very page under a path that begins like ours, and one above.
  const others = [own.replace(/\/ /, "/old/ "), own.replace("yard/almanac/", "yard/"), "beetle-almanac", "another page 1"];
  await keeper.driver.wait(async (others) => {
    for (const name of others) await (await caches.open(name)).put("./kept", new Response("theirs"));
    localStorage.setItem("another-page", "theirs");
  }, others);

  await keeper.host.change({ root: nextVersion(pageRoot, "second") });
  await keeper.reload();
  await keeper.reads("update-bar", /new version/i);
  await keeper.tap("update-now");
  await keeper.until("the first version's files are gone", async () => {
    const names = await keeper.driver.wait(() => caches.keys());
    return !names.includes(own) && names.length === others.length + 1;
  });
  const left = await keeper.driver.wait(async (others) => {
    const texts = [];
    for (const name of others) texts.push(await (await (await caches.open(name)).match("./kept"))?.text());
    return [...texts, localStorage.getItem("another-page")];
  }, others);
  assert.deepEqual(left, [...others.map(() => "theirs"), "theirs"]);
});
