import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

journey("the phone loaded the page again in the middle of an entry, and what was typed is still there", {}, async (keeper) => {
  await keeper.open();
  await keeper.type("bench-hives", "37");
  await keeper.tap("bench-keep");
  await keeper.type("keep-name", "Old orchard, far en");
  await keeper.reload();
  assert.equal(await keeper.value("bench-hives"), "37");
  await keeper.reads("bench-traps", /\b148\b/);
  if (!(await keeper.shows("keep-name"))) await keeper.tap("bench-keep");
  assert.equal(await keeper.value("keep-name"), "Old orchard, far en");
});
