import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, rows, unfold } from "../house/round.mjs";

const tags = async (keeper) => (await rows(keeper)).map(({ tag }) => tag).join(" ");

/** The key that moves hive 9 up. */
const UP = '.order-list [data-testid=earlier][aria-label*="9"]';

/** Where the key stands on the screen. */
const at = (keeper) =>
  keeper.driver.run((css) => {
    const { left, top, width, height } = document.querySelector(css).getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  }, UP);

/** A tap on a place of the screen, as a finger that stays where it is. */
const tapAgain = (keeper, { x, y }) =>
  keeper.driver.run((x, y) => document.elementFromPoint(x, y).closest("button").click(), x, y);

journey("she moved a hive four places by tapping one spot: the key stayed under her finger", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 12);
  await unfold(keeper, "order");
  await keeper.tap(UP);
  await keeper.until("the first tap is kept", async () => (await tags(keeper)).startsWith("1 2 3 4 5 6 7 9 8"));
  await keeper.drawn();
  const spot = await at(keeper);
  for (const order of ["6 9 7", "5 9 6", "4 9 5"]) {
    await tapAgain(keeper, spot);
    await keeper.until(`the order is … ${order} …`, async () => (await tags(keeper)).includes(order));
    await keeper.drawn();
    const now = await at(keeper);
    assert.ok(Math.abs(now.y - spot.y) <= 2, `the key went ${now.y - spot.y} px away`);
  }
  assert.equal(await tags(keeper), "1 2 3 4 9 5 6 7 8 10 11 12");
});

/** Chooses in a native list. */
const choose = (keeper, id, words) =>
  keeper.driver.run(
    (id, words) => {
      const list = document.getElementById(id);
      list.value = [...list.options].find((option) => option.textContent.replace(/[\u2068\u2069]/g, "") === words).value;
      list.dispatchEvent(new Event("change", { bubbles: true }));
    },
    id,
    words,
  );

journey("she put a hive after another one, from the yard and from its own page", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 5);
  await unfold(keeper, "order");
  await keeper.one("#order-after");
  await choose(keeper, "order-hive", "Hive 5");
  await choose(keeper, "order-after", "Hive 2");
  await keeper.tap("order-put");
  await keeper.until("5 follows 2", async () => (await tags(keeper)) === "1 2 5 3 4");

  await keeper.tap("row-open");
  await keeper.tap("[data-testid=panel] a");
  await keeper.reads("main h1", /^Hive .?1.?$/);
  await unfold(keeper, "put-after");
  await keeper.one("#order-after");
  await choose(keeper, "order-after", "Hive 4");
  await keeper.tap("order-put");
  await keeper.one("undo");
  await keeper.place("round");
  await keeper.until("1 comes last", async () => (await tags(keeper)) === "2 5 3 4 1");
});
