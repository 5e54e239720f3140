import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, keepYard, log, onTheDay, row, rows, skip } from "../house/round.mjs";

journey("three days late: overdue hives show it by a mark and by words, not by colour alone", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-18T09:00");
  await log(keeper, 2, "topped_up");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  const seen = Object.fromEntries((await rows(keeper)).map((row) => [row.tag, row]));
  for (const tag of ["1", "3"]) {
    assert.equal(seen[tag].due, "overdue");
    assert.match(seen[tag].words, /overdue/i);
    assert.match(seen[tag].words, /\b3 days\b/, "how many days");
    assert.match(seen[tag].words, /\b17 days\b/, "days since the last service");
  }
  assert.doesNotMatch(seen["2"].words, /overdue/i);
  // The mark: something drawn on the overdue rows that the other row lacks.
  const marks = (tag) =>
    keeper.driver.run((row) => [...document.querySelectorAll(`${row} svg, ${row} [aria-hidden=true]`)].map((mark) => mark.textContent.trim() || mark.outerHTML).join("|"), row(tag));
  assert.notEqual(await marks(1), "");
  assert.equal(await marks(1), await marks(3));
  assert.notEqual(await marks(1), await marks(2));
});

journey("two years late: a day of another year has its year, and one of this year has none", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-18T09:00");
  await skip(keeper, 1, "weather");
  const said = async () => (await rows(keeper)).find((row) => row.tag === "1").words;
  await onTheDay(keeper, "2026-07-19T09:00");
  assert.match(await said(), /skipped [^:]*Jul[^:]*: weather/);
  assert.doesNotMatch(await said(), /2026/);
  await onTheDay(keeper, "2028-12-30T09:00");
  assert.match(await said(), /days overdue/);
  assert.match(await said(), /skipped [^:]*2026[^:]*: weather/);
});
