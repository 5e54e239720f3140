import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

const REFUSED = /ERR_CONNECTION_REFUSED|Failed to update a ServiceWorker/;

journey("the server went away for good, and the page still opens", { complaints: [REFUSED] }, async (keeper) => {
  await keeper.open();
  await keeper.offlineReady();
  await keeper.type("bench-hives", "10");
  await keeper.host.stop();

  await keeper.reload();
  await keeper.reads("bench-traps", "40");

  await keeper.newTab();
  await keeper.type("bench-hives", "11");
  await keeper.reads("bench-traps", "44");

  await keeper.newTab("?from=home-screen#/round");
  assert.equal(await keeper.attribute("nav-round", "aria-current"), "page");
});
