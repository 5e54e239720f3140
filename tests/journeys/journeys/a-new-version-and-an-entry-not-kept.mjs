import { nextVersion } from "../house/built.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log } from "../house/round.mjs";
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
