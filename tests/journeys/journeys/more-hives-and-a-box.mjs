import { written } from "../house/dates.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, row, rows, unfold } from "../house/round.mjs";

journey("she added ten hives at once; a tag that is taken is refused with another to take", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await unfold(keeper, "add-hives");
  const before = (await entries(keeper)).length;
  await keeper.type("#hives-tags", "3–12");
  await keeper.reads("#hives-tags-says", /3.*taken.*3b|3.*3b/);
  await keeper.tap("add-hives-go");
  assert.equal((await entries(keeper)).length, before, "nothing is written");
  await keeper.type("#hives-tags", "4–12, 12b");
  await keeper.tap("add-hives-go");
  await keeper.until("13 hives are listed", async () => (await rows(keeper)).length === 13);
  assert.deepEqual((await rows(keeper)).slice(-2).map(({ tag }) => tag), ["12", "12b"]);
});

journey("she put a third box on: its traps run on days of their own", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-08T09:00");
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keeper.tap("[data-testid=panel] a");
  await keeper.one("hive-state");
  await keeper.gone("panel");
  await unfold(keeper, "add-box");
  await keeper.tap("add-box-go");
  // A second tap finds no key to put another one on with.
  await keeper.gone("add-box-go");
  await keeper.until("six traps are drawn", async () => (await keeper.all("li[data-testid=trap-line]")).length === 6);
  const traps = (await keeper.driver.run(() => [...document.querySelectorAll("li[data-testid=trap-line]")].map((line) => line.innerText))).map(plain);
  const dueOn = (day) => traps.filter((trap) => new RegExp(`due ${written(day).source}`).test(trap)).length;
  assert.equal(dueOn("2026-07-15"), 4, traps.join("\n"));
  assert.equal(dueOn("2026-07-22"), 2, traps.join("\n"));

  // The older traps decide. She does those four alone; what is left then is the new ones' own day.
  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.place("round");
  assert.equal(await due(keeper, 2), "today");
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keeper.tap("more");
  const names = await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=trap]")].map((key) => key.innerText));
  assert.equal(names.length, 6);
  for (const name of names.filter((name) => /Box [12]/.test(name))) await keeper.tapWords(name, "[data-testid=panel]");
  await log(keeper, 2, "topped_up");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  await keeper.reads(row(2), written("2026-07-22"));
  await onTheDay(keeper, "2026-07-22T09:00");
  assert.equal(await due(keeper, 2), "today");
});
