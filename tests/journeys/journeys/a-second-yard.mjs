import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, unfold } from "../house/round.mjs";

journey("she gave a second yard the name of the first: it is refused, and a free one is named", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Home");
  await keeper.place("bench");
  await keeper.tap("bench-keep");
  assert.equal(await keeper.value("keep-name"), "");
  await keeper.type("keep-name", "home ");
  await keeper.reads("#keep-name-says", /Another yard has this name.*home 2/);
  assert.equal(await keeper.attribute("keep-save", "disabled"), "");
  await keeper.type("keep-name", "Hill");
  await keeper.until("the key takes it", async () => (await keeper.attribute("keep-save", "disabled")) === null);
});

journey("her second yard has the same traps: they are one kind, with one number in store", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Home");
  await keepYard(keeper, 3, "Hill");
  const kinds = async () => (await entries(keeper)).filter(({ what }) => what.kind).length;
  assert.equal(await kinds(), 1);
  await keeper.place("load");
  await keeper.one("#load-store-1");
  assert.ok(!(await keeper.shows("#load-store-2")));
});

journey("she adds a yard: the form stands before her, nothing in it is red, and it names the field it waits for", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Home");
  await keeper.place("round");
  await keeper.tap('main a.key[href$="bench/yard"]');
  await keeper.until("the form has the focus", async () => (await keeper.driver.run(() => document.activeElement.id)) === "keep-heading");
  const seen = await keeper.driver.run(() => {
    const { top, bottom } = document.activeElement.getBoundingClientRect();
    return top >= 0 && bottom <= window.innerHeight;
  });
  assert.ok(seen, "the heading of the form is in sight");
  assert.equal(await keeper.attribute("keep-name", "aria-invalid"), null);
  await keeper.reads(".keep-form", /Mend first: Name of the yard\./);
  await keeper.type("keep-name", "Hill");
  await keeper.until("the key takes it", async () => (await keeper.attribute("keep-save", "disabled")) === null);
});

journey("she renamed a yard to the name of another: it is refused, and a free one is named", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Home");
  await keepYard(keeper, 2, "Hill");
  await unfold(keeper, "rename-yard");
  await keeper.type("#yard-name", "HOME");
  await keeper.reads("#yard-name-says", /Another yard has this name.*HOME 2/);
  await keeper.tap("rename-yard-go");
  await keeper.type("#yard-name", "Hill Top");
  await keeper.tap("rename-yard-go");
  await keeper.reads("main h1", /^Hill Top$/);
});
