import { written } from "../house/dates.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log } from "../house/round.mjs";

/** Out of sight or in sight again; the clock is set on by so many days in between. */
const outOfSight = (keeper, hidden, days = 0) =>
  keeper.driver.run(
    (hidden, ahead) => {
      // Firefox runs the driver's scripts beside the page, with a Date of their own.
      const Before = window.Date;
      const now = () => Before.now() + ahead;
      window.Date = new Proxy(Before, {
        construct: (Real, args) => new Real(...(args.length ? args : [now()])),
        get: (Real, name) => (name === "now" ? now : Real[name]),
      });
      Object.defineProperty(document, "hidden", { configurable: true, get: () => hidden });
      document.dispatchEvent(new Event("visibilitychange"));
    },
    hidden,
    days * 86_400_000,
  );

const ON = { faults: { clock: "2026-07-15T09:00" } };

journey("her phone lost the date while the page was in her pocket: she is asked before anything is written under it", ON, async (keeper) => {
  await keeper.open();
  await outOfSight(keeper, true);
  assert.equal(await keeper.shows("clock-notice"), false);
  await outOfSight(keeper, false, -30);
  await keeper.reads("clock-notice", /date went from .*15.* to .*15.*is it right/i);
  await keeper.reads(".head-day", written("2026-06-15"));
  await keeper.tap("clock-right");
  await keeper.gone("clock-notice");
  // Put right again while nobody looked, it goes by the phone; so long a page may have slept, and nothing is asked.
  await outOfSight(keeper, true);
  await outOfSight(keeper, false, 30);
  await keeper.reads(".head-day", written("2026-07-15"));
  assert.equal(await keeper.shows("clock-notice"), false);

  // Where something is written down already, it is known that the clock is behind it, for as long as it is.
  await keepYard(keeper, 2);
  await outOfSight(keeper, true);
  await outOfSight(keeper, false, -30);
  await keeper.reads("clock-notice", /the newest entry is of/);
  await outOfSight(keeper, true);
  await outOfSight(keeper, false, 30);
  await keeper.gone("clock-notice");
});

journey("the page lay out of sight for a fortnight: it shows the new day, what is due on it, and asks nothing", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  assert.equal(await due(keeper, 1), "later");
  await outOfSight(keeper, true);
  await outOfSight(keeper, false, 14);
  await keeper.reads(".head-day", written("2026-07-29"));
  await keeper.until("hive 1 is due", async () => (await due(keeper, 1)) === "today");
  assert.equal(await keeper.shows("clock-notice"), false);
  await log(keeper, 1, "topped_up");
  await keeper.until("it is written under the new day", async () =>
    (await entries(keeper)).some(({ what, day, at }) => what.check && day === "2026-07-29" && at.startsWith("2026-07-29")),
  );
});
