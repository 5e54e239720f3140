import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, log, onTheDay, row } from "../house/round.mjs";

const checks = async (keeper) => (await entries(keeper)).filter(({ what }) => what.check);

journey("she said in two taps which trap is missing; topping up fills the others, the row stays due, and the history names the place", { faults: { clock: "2026-07-06T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-20T09:00");
  await keeper.reads("yard-total", /^3 hives to see, 12 traps to fill; carry /);
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.reads(".dock-saves", /Hive .?2.?. These save at once:/);
  await keeper.tap("did-missing");
  await keeper.reads("which", /which traps are missing/);
  await keysReady(keeper);
  const place = await keeper.text("which-trap");
  assert.equal(place.split("\n").length, 4, "one key a trap");
  await keeper.tap("which-trap");
  await keeper.reads("undo-bar", /Hive .?2.?: 1 trap missing/);
  const [missing] = await checks(keeper);
  assert.equal(missing.what.check.traps.length, 1);

  await onTheDay(keeper, "2026-07-21T09:00");
  await log(keeper, 2, "topped_up");
  await keeper.reads("undo-bar", /Hive .?2.?: 3 traps topped up, 1 trap missing/);
  await keeper.reads(row(2), /1 trap missing – still due/);
  await keeper.open("#/book/history");
  await keeper.reads("main", new RegExp(`Hive 2, ${place.split("\n")[0].trim()}: .*missing`));
});

journey("a second entry on one day is asked about in words that fit, and not where it puts missing traps back", { faults: { clock: "2026-07-06T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 12);
  await log(keeper, 9, "missing");
  await keeper.until("hive 9 is written", async () => (await checks(keeper)).length === 1);
  await log(keeper, 9, "replaced");
  await keeper.until("it is written without a question", async () => (await checks(keeper)).length === 2);
  await log(keeper, 9, "topped_up");
  await keeper.reads("doubt", /One more\?/);
  await keeper.tapWords("No", "panel");
  assert.equal((await checks(keeper)).length, 2);
  await log(keeper, 9, "topped_up");
  await keeper.tapWords("Yes, one more", "panel");
  await keeper.until("it is written", async () => (await checks(keeper)).length === 3);
});

journey("she logged the last hive first: the panel is at its neighbour and the page has not gone to the gate", { faults: { clock: "2026-07-06T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 12);
  await log(keeper, 12, "as_found");
  await keeper.reads(".dock-name", /11/);
});

journey("she topped up one trap of four: the row says so, and the hive is still due", { faults: { clock: "2026-07-06T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-20T09:00");
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keeper.tap("more");
  await keeper.tap("trap");
  await keysReady(keeper);
  await keeper.tap("did-topped_up");
  await keeper.reads(row(1), /due today.*1 of 4 topped up today/s);
});
