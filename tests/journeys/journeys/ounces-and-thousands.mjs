import { journey } from "../house/journey.mjs";
import { keepYard, keysReady, log, row } from "../house/round.mjs";

journey("she reads fluid ounces: what she carries is round in them, and the step is named", {}, async (keeper) => {
  await keeper.open();
  await keeper.reads("bench-oil", /\b500 mL\b/);
  await keeper.tap(".head-key");
  await keeper.tap("dialog[open] label:has(input[value=us_fl_oz])");
  await keeper.tap("dialog[open] .sheet-head button");
  await keeper.gone("dialog[open]");
  // 500 mL are 16.9 US fl oz.
  await keeper.reads("bench-oil", /\b18 US fl oz\b/);
  await keeper.reads("main", /in steps of 2 US fl oz = 18 US fl oz/);
});

journey("she counted more than a thousand beetles: the page of the hive sets the thousands apart as her phone does", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("more");
  await keeper.type("#log-count", "1234");
  await log(keeper, 1, "as_found");
  if (await keeper.shows("save-as-is")) await keeper.tap("save-as-is");
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keeper.tap("[data-testid=panel] a");
  const written = await keeper.driver.run(() => new Intl.NumberFormat().format(1234).replace(/\s/g, " "));
  await keeper.reads("main", `${written} beetles`);
});
