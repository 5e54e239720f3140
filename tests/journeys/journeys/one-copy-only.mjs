import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, keepYard, log } from "../house/round.mjs";

for (const [second, title] of [
  ["none", "her browser has no database for the page"],
  ["full", "her browser's database takes nothing more"],
  ["hangs", "her browser's database never answers"],
]) {
  journey(`${title}: what she logs is kept, and the page does not call it saved twice`, { faults: { second } }, async (keeper) => {
    await keeper.open();
    await keepYard(keeper, 2);
    await log(keeper, 1, "topped_up");
    await keeper.reads("kept", /In one place only/);
    await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
    await keeper.place("book");
    await keeper.reads("keeping", /one place only/);
    await keeper.reload();
    await keeper.place("round");
    assert.equal(await due(keeper, 1), "later");
  });
}

journey("her first entry is kept, and the browser is asked once to keep it; the Book shows the answer", { faults: { promise: "given" } }, async (keeper) => {
  await keeper.open();
  const asked = async () => Number(await keeper.attribute("html", "data-asked"));
  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.tapCalmly("demo-remove");
  assert.equal(await asked(), 0, "the demonstration is nothing to keep");
  await keepYard(keeper, 2);
  await keeper.until("the browser was asked", async () => (await asked()) === 1);
  await log(keeper, 1, "topped_up");
  await keeper.reads("kept", /Saved/);
  assert.equal(await asked(), 1);
  await keeper.place("book");
  await keeper.reads("keeping", /in two places.*has promised to keep/);
});
