import { SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { keepYard, log } from "../house/round.mjs";

/** The answers of the section, each with its sum, in their order. */
const bought = async (keeper) => plain(await keeper.text("section:has(#load-walks)"));

const choose = (keeper, id, value) =>
  keeper.driver.run(
    (id, value) => {
      const field = document.getElementById(id);
      field.value = value;
      field.dispatchEvent(new Event(field.localName === "select" ? "change" : "input", { bubbles: true }));
    },
    id,
    value,
  );

journey("two traps went to stock and two others are missing: there is nothing to buy but the spares", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3, "Home", "today", "one_well");
  await log(keeper, 2, "missing");
  await keeper.one("undo");
  await keeper.tap("shut");
  await keeper.place("load");
  await keeper.reads("load-buy", /6 traps, no price known/);
  assert.match(await bought(keeper), /4 missing or not put in yet \+ 2 to spare = 6/);
  assert.equal(await keeper.value("load-store-1"), "0");
  assert.match(await bought(keeper), /Emptied and used again: the rest of the season takes no more/);

  // The box at the top of hive 3 comes off, its two traps go home.
  await keeper.place("round");
  await keeper.tap('[data-testid=row][data-tag="3"] [data-testid=row-open]');
  await keeper.tap("[data-testid=panel] a");
  await keeper.reads("main h1", /^Hive .?3.?$/);
  await keeper.driver.run(() => [...document.querySelectorAll("main details")].forEach((part) => (part.open = true)));
  await keeper.tapCalmly("box-off-go");
  await keeper.one("undo");
  await keeper.place("load");
  await keeper.reads("load-buy", /4 traps, no price known/);
  assert.match(await bought(keeper), /− 2 in store = 4/);
  assert.equal(await keeper.value("load-store-1"), "2");

  // She counts the shelf: it stays while she looks something up.
  await keeper.type("load-store-1", "9");
  await keeper.reads("load-buy", /^Nothing to buy$/);
  await keeper.place("round");
  await keeper.place("load");
  await keeper.until("the number is still there", async () => (await keeper.value("load-store-1")) === "9");
  await keeper.reads("load-buy", /^Nothing to buy$/);
});

journey("she types the last day of the season: walks, traps and oil for the rest of it, each with its sum", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3, "Home");
  await keeper.place("load");
  await keeper.one("#load-end");
  await choose(keeper, "load-end", "2026-11-08");
  await keeper.reads("#load-end-says", /Estimate: .*, then every 14 days: 10 walks/);
  const sum = await bought(keeper);
  assert.match(sum, /For the rest of the season, at most 120 traps, no price known 10 walks × 12 traps = 120/);
  assert.match(sum, /Oil for the rest of the season, at most 1.?320 mL 10 walks × 120 mL \+ 10 % = 1.?320 mL/);
  // What she knows better she types.
  await keeper.type("load-walks", "4");
  await keeper.reads("section:has(#load-walks)", /4 walks × 12 traps = 48/);
});

journey("her oil comes by the gallon", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3, "Home");
  await keeper.place("load");
  await keeper.one("#load-day");
  await choose(keeper, "load-day", "2026-07-15");
  await keeper.driver.run(() => [...document.querySelectorAll("main details")].forEach((part) => (part.open = true)));
  await keeper.type("#load-bottle", "1");
  await choose(keeper, "load-bottle-unit", "us_gal");
  await keeper.reads("#load-bottle-says", /= 3[.,]79 L/);
  await keeper.reads("main", /in 1 bottle of 3[.,]79 L/);
  await keeper.tap("load-set");
  await keeper.one("undo");
  await keeper.place("bench");
  await keeper.place("load");
  // Kept exactly, in ounces, which every version of the page can read.
  await keeper.until("the bottle is kept", async () => (await keeper.value("#load-bottle")) === "128");
  assert.equal(await keeper.value("#load-bottle-unit"), "us_fl_oz");
});

journey("her packs cost nearly the same a piece: an order is found, and how much a cheaper one could save is said", {}, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  await keeper.host.stop();
  await keeper.place("bench");
  await keeper.tap("#bench-packs");
  await keeper.driver.run(() => document.querySelectorAll("main details.more").forEach((part) => (part.open = true)));
  const card = async () => plain(await keeper.text("section:has(#bench-packs)"));
  await keeper.type("packs-need", "1000");
  for (const [row, pieces, price] of [
    [1, "17", "17.0111"],
    [2, "19", "19.0231"],
    [3, "23", "23.0501"],
  ]) {
    await keeper.type(`pieces-${row}`, pieces);
    await keeper.type(`price-${row}`, price);
  }
  await keeper.type("packs-fee", "400");
  assert.doesNotMatch(await card(), /A cheaper order may exist/);
  await keeper.type("packs-free", "1390");
  await keeper.until("it says by how much it may miss", async () => /A cheaper order may exist, by at most \d?\.?\d+: so many packs cost nearly the same a piece/.test(await card()));
  assert.match(await card(), /Best found 1,?39\d\.\d\d for \d,?\d\d\d pieces/);
  // A limit out of reach: every mix was compared.
  await keeper.type("packs-free", "9000");
  await keeper.until("nothing is left open", async () => !/A cheaper order may exist/.test(await card()));
});
