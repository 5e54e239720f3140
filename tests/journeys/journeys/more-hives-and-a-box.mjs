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
  await keeper.tap("shut");
  await unfold(keeper, "add-box");
  await keeper.tap("add-box-go");
  await keeper.until("six traps are drawn", async () => (await keeper.all("li[data-testid=trap-line]")).length === 6);
  const text = plain(await keeper.text("li[data-testid=trap-line]"));
  assert.equal(text.match(/serviced (today|Wed,? (8 July|July 8)\b)/g)?.length, 2, text);
  assert.equal(text.match(/serviced Wed,? (1 July|July 1)\b/g)?.length, 4, text);

  // The older traps decide. She does those four alone; what is left then is the new ones' own day.
  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.place("round");
  assert.equal(await due(keeper, 2), "today");
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keeper.tap("more");
  const traps = await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=trap]")].map((key) => key.innerText));
  assert.equal(traps.length, 6);
  for (const name of traps.filter((name) => /Box [12]/.test(name))) await keeper.tapWords(name, "[data-testid=panel]");
  await log(keeper, 2, "topped_up");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  await keeper.reads(row(2), /Wed,? (22 July|July 22)/);
  await onTheDay(keeper, "2026-07-22T09:00");
  assert.equal(await due(keeper, 2), "today");
});
