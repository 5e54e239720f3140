import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard } from "../house/round.mjs";

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
