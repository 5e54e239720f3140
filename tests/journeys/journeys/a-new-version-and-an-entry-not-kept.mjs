import { nextVersion } from "../house/built.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log, unfold } from "../house/round.mjs";
import { pageRoot } from "../house/settings.mjs";
import { fill, free } from "../house/storage.mjs";

const shown = (keeper) => keeper.driver.run(() => document.querySelector("meta[name=journey]")?.content ?? "first");

/** Whether the page asks before it is left. */
const asks = (keeper) =>
  keeper.driver.run(() => {
    const leaving = new Event("beforeunload", { cancelable: true });
    window.dispatchEvent(leaving);
    return leaving.defaultPrevented;
  });

/** What the update key of another tab does. */
const agreeElsewhere = (keeper) =>
  keeper.driver.wait(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    const over = new Promise((done) => navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }));
    registration.waiting.postMessage({ type: "SKIP_WAITING" });
    await over;
  });

/** A page on which she has something half typed when another tab agrees to a new version, and what ends it. */
const HALF_TYPED = [
  [
    "she corrected a line",
    "#edit-note",
    async (keeper) => {
      await keeper.open("#/book/history");
      await keeper.tap("[data-testid=history-line] button");
      await keeper.tap("history-edit");
    },
    async (keeper) => {
      // A tap on another line throws nothing away either.
      await keeper.tap("li[data-testid=history-line]:nth-child(2) button");
      await keeper.reads("main", /Save this correction or leave it first/);
      assert.equal(await keeper.value("#edit-note"), "7, 8");
      await keeper.tap("edit-save");
    },
    ({ what }) => what.check?.note === "7, 8",
  ],
  ["she added hives", "#hives-tags", (keeper) => unfold(keeper, "add-hives"), (keeper) => keeper.tap("add-hives-go"), ({ what }) => what.hive?.tag === "8"],
];

for (const [title, field, open, end, kept] of HALF_TYPED) {
  journey(`another tab agreed to a new version while ${title}: it waits until what she typed is kept`, {}, async (keeper) => {
    await keeper.open();
    await keeper.offlineReady();
    await keeper.reload();
    await keepYard(keeper, 2);
    for (const tag of [1, 2]) await log(keeper, tag, "topped_up");
    await keeper.host.change({ root: nextVersion(pageRoot, "second") });
    await keeper.reload();
    await keeper.waitFor("update-now");
    await open(keeper);
    await keeper.type(field, "7, 8");
    await agreeElsewhere(keeper);
    await new Promise((done) => setTimeout(done, 2500));
    assert.equal(await shown(keeper), "first");
    assert.equal(await keeper.value(field), "7, 8");
    await end(keeper);
    await keeper.until("the second version is shown", async () => (await shown(keeper)) === "second");
    await keeper.started();
    assert.ok((await entries(keeper)).some(kept));
  });
}

journey("her phone was full when a new version came: the page did not load itself anew over the entry it could not keep", {}, async (keeper) => {
  await keeper.open();
  await keeper.offlineReady();
  await keeper.reload();
  await keepYard(keeper, 2);
  assert.equal(await asks(keeper), false, "nobody is asked when all is kept");
  await keeper.host.change({ root: nextVersion(pageRoot, "second") });
  await keeper.reload();
  await keeper.waitFor("update-now");

  await fill(keeper);
  await log(keeper, 2, "topped_up");
  await keeper.reads("unsaved-notice", /Not kept/);
  await keeper.gone("update-bar");
  assert.equal(await asks(keeper), true);

  await keeper.driver.run(() => (window.sameLoad = true));
  await agreeElsewhere(keeper);
  await new Promise((done) => setTimeout(done, 1500));
  assert.equal(await keeper.driver.run(() => window.sameLoad ?? null), true, "the page is as it was");
  await keeper.reads("unsaved-notice", /Not kept/);

  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.until("the second version is shown", async () => (await shown(keeper)) === "second");
  await keeper.started();
  assert.equal((await entries(keeper)).filter(({ what }) => what.check?.did === "topped_up").length, 1);
  assert.equal(await asks(keeper), false);
});
