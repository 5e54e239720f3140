import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, rows } from "../house/round.mjs";

journey("she looked at the demonstration and took it out again: her own records are as they were", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 4);
  const own = await keeper.pages();

  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.until("the demonstration is in", async () => Object.keys(await keeper.pages()).length > Object.keys(own).length + 5);
  const both = await keeper.pages();
  for (const [key, text] of Object.entries(own)) assert.equal(both[key], text, `${key} was touched`);
  await keeper.place("round");
  await keeper.reads("main", /Ferry Field[^]*Kiln Bank|Orchard/);

  await keeper.place("book");
  await keeper.tapCalmly("demo-remove");
  await keeper.until("the demonstration is out", async () => !(await keeper.shows("demo-remove")));
  assert.deepEqual(await keeper.pages(), own);
  await keeper.reload();
  await keeper.place("round");
  assert.equal((await rows(keeper)).length, 4);
});

journey("she only looked at the demonstration: the page does not miss a book that never was", {}, async (keeper) => {
  await keeper.open();
  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.tapCalmly("demo-remove");
  await keeper.until("the demonstration is out", () => keeper.shows("demo-fill"));
  await keeper.open();
  await keeper.place("book");
  await keeper.waitFor("demo-fill");
  assert.equal(await keeper.shows("storage-notice"), false);
});

journey("she has the demonstration open twice and takes it out in one tab: the other shows it no longer", {}, async (keeper) => {
  await keeper.open();
  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.waitFor("demo-remove");
  const first = await keeper.driver.window();
  await keeper.newTab("#/round");
  await keeper.reads("main", /Ferry Field/);
  const second = await keeper.driver.window();
  await keeper.turnTo(first);
  await keeper.tapCalmly("demo-remove");
  await keeper.waitFor("demo-fill");
  await keeper.turnTo(second);
  await keeper.until("the demonstration is gone here too", async () => !/Ferry Field/.test(await keeper.text("main")));
  // It can be filled in again, from here.
  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.waitFor("demo-remove");
  await keeper.turnTo(first);
  await keeper.waitFor("demo-remove");
});
