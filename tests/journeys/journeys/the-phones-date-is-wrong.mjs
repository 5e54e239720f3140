import { setClock, written } from "../house/dates.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay } from "../house/round.mjs";

/** As the phone's own calendar fills the field. */
async function visitOn(keeper, day) {
  await keeper.one("#visit-day");
  await keeper.driver.run((day) => {
    const field = document.querySelector("#visit-day");
    field.value = day;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }, day);
}

journey("her phone had forgotten the date: the page says so and takes the day of this visit from her", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  assert.equal(await keeper.shows("clock-notice"), false);

  await onTheDay(keeper, "2026-01-01T00:05");
  await keeper.reads("clock-notice", /the newest entry is of/);
  await visitOn(keeper, "2026-07-14");
  await keeper.tap("visit-go");
  await keeper.reads("clock-notice", /Not before/);
  await visitOn(keeper, "2026-07-29");
  await keeper.tap("visit-go");
  await keeper.reads("clock-notice", /You have said that today is/);
  await keeper.reads(".head-day", written("2026-07-29"));
  const before = (await entries(keeper)).length;
  await log(keeper, 2, "topped_up");
  await keeper.until("the work is written", async () => (await entries(keeper)).length === before + 1);
  const [work] = (await entries(keeper)).filter(({ day }) => day === "2026-07-29");
  assert.match(work.at, /^2026-07-29T00:[01]/);

  await keeper.tap("by-the-phone");
  await keeper.reads(".head-day", written("2026-01-01"));
  await keeper.reads("clock-notice", /the newest entry is of/);
});

journey("her phone's date went back while the page was open: she is asked whether it is right", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keeper.reads(".head-day", written("2026-07-15"));
  await setClock(keeper, -30);
  await keeper.reads("clock-notice", /date went from .*15.* to .*15.*is it right/i);
  await keeper.tap("clock-right");
  await keeper.gone("clock-notice");

  // What she said of a clock goes with that clock.
  await setClock(keeper, -30);
  await visitOn(keeper, "2026-07-15");
  await keeper.tap("visit-go");
  await keeper.reads(".head-day", written("2026-07-15"));
  await setClock(keeper, 60);
  await keeper.until("the page goes by the phone", async () => written("2026-07-15").test(await keeper.text(".head-day")));
  // It is not dropped without a word: the phone may have slept so long, and be as wrong as before.
  await keeper.reads("clock-notice", /date went from .*16.* to .*15.*is it right/i);
  await keeper.tap("clock-right");
  await keeper.gone("clock-notice");
});
