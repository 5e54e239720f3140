import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
journey("smoke", {}, async (keeper, t) => {
  await keeper.open();
  await keeper.type("bench-hives", "10");
  await keeper.reads("out", "40 traps");
  await keeper.type("bench-hives", "");
  await keeper.reads("out", "0 traps");
  await keeper.tap("nav-round");
  assert.equal(keeper.taps, 1);
  await keeper.offlineReady();
  await keeper.host.stop();
  await keeper.reload();
  await keeper.newTab("?x=1#/round");
  t.diagnostic(await keeper.text("out"));
  await keeper.engine.resize([320,640]);
});
journey("smoke2", {faults:{clock:"2026-07-14T09:00", storage:"denied"}}, async (keeper, t) => {
  await keeper.open();
  await keeper.reads("out", "Jul 14 2026 SecurityError");
});
