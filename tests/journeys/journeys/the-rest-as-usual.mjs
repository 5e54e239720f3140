import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, keysReady, log, onTheDay, row, rows, skip, unfold } from "../house/round.mjs";

journey("she logs two hives by hand and the rest as usual, after reading which they are", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 6);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 2, "replaced");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  await log(keeper, 5, "spilled");
  await keeper.until("hive 5 has its entry", async () => (await entries(keeper)).filter(({ day }) => day === "2026-07-15").length === 2);
  const before = (await entries(keeper)).length;

  // The list ends behind the panel: she puts the panel away first.
  if (await keeper.attribute("shut", "type")) await keeper.tap("shut");
  await keeper.tap("rest-as-usual");
  await keeper.one("rest-list");
  const listed = await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=rest-list] li")].map((line) => line.innerText.trim()));
  assert.deepEqual(listed, ["1", "3", "4", "6"].map((tag) => `${tag}: due today`), "2 and 5 are logged already");
  assert.equal((await entries(keeper)).length, before, "nothing is written before she confirms");

  await keeper.tapCalmly("rest-confirm");
  await keeper.until("four more entries", async () => (await entries(keeper)).length === before + 4);
  const left = (await rows(keeper)).filter(({ due }) => due !== "later").map(({ tag }) => tag);
  assert.deepEqual(left, ["5"], "only the spilled one still needs oil");
});

journey("the rest as usual says of each hive why it is there: skipped and overdue, not due yet, a trap missing; and which are left out", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 5);
  await onTheDay(keeper, "2026-07-13T09:00");
  await skip(keeper, 2, "temper");
  await keeper.until("the skip is written", async () => (await entries(keeper)).some(({ what }) => what.skip));
  await log(keeper, 3, "topped_up");
  await keeper.until("hive 3 is done", async () => (await entries(keeper)).some(({ what }) => what.check));
  await log(keeper, 5, "missing");
  await keeper.until("hive 5 has its entry", async () => (await entries(keeper)).filter(({ what }) => what.check).length === 2);
  await keeper.tap(`${row(4)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("did-missing");
  await keeper.reads("which", /Hive .?4.?: which traps are missing/);
  await keysReady(keeper);
  await keeper.tap("which-trap");
  await keeper.until("hive 4 has its entry", async () => (await entries(keeper)).filter(({ what }) => what.check).length === 3);

  await onTheDay(keeper, "2026-07-16T09:00");
  await keeper.tap("rest-as-usual");
  await keeper.one("rest-list");
  const lines = (mark) => keeper.driver.run((mark) => [...document.querySelectorAll(`[data-testid=${mark}] li`)].map((line) => line.innerText.replace(/\s+/g, " ").trim()), mark);
  const [skipped, ...listed] = await lines("rest-list");
  assert.match(skipped, /^2: 1 day overdue · skipped .*: hot bees$/);
  assert.match(listed[0], /^1: 1 day overdue$/);
  assert.match(listed[1], /^3: not due yet, due .*in 11 days$/);
  assert.match(listed[2], /^4: 3 days overdue · 1 trap missing, stays so$/);
  assert.match((await lines("rest-out")).join(), /^5: 3 days overdue · 4 traps missing, stays so$/);
  await keeper.tapCalmly("rest-confirm");
  await keeper.reads(row(4), /1 trap missing – still due/);
});

journey("the rest as usual passes over a hive whose own entry is begun, and says what stands in it", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("count-20");
  await keeper.tap("count-20");
  await keeper.tap("shut");
  await keeper.tap("rest-as-usual");
  await keeper.reads("rest-out", /^2: due today · begun, not saved: .?40.? beetles$/);
  await keeper.reads("rest-confirm", /2.hives/);
  await keeper.tapCalmly("rest-confirm");
  await keeper.until("two are done", async () => (await due(keeper, 1)) === "later" && (await due(keeper, 3)) === "later");
  assert.equal(await due(keeper, 2), "today");
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keeper.reads("count", /40/);
  await log(keeper, 2, "topped_up");
  await keeper.until("its beetles are in its entry", async () => (await entries(keeper)).some(({ what }) => what.check?.count === 40));
});

journey("the rest as usual passes over a hive whose dead-out is written down, and its row says so", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  const hive = (await entries(keeper)).filter(({ what }) => what.hive)[1].id;
  await keeper.open(`#/write/dead_out/${hive}`);
  await keeper.one("write-save");
  await keeper.tapWords("starved", ".write-form");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await entries(keeper)).some(({ what }) => what.record));
  await keeper.place("round");
  await keeper.reads(row(2), /dead-out written down, but the book has it in care/);
  await keeper.tap("rest-as-usual");
  await keeper.reads("rest-out", /^2: dead-out written down, but the book has it in care · due today$/);
  await keeper.reads("rest-confirm", /2.hives/);
  // Its care ended it has no row, and its comb is still there.
  await keeper.open(`#/hive/${hive}`);
  await unfold(keeper, "end");
  await keeper.tapCalmly("end-go");
  await keeper.until("its end is written", async () => (await entries(keeper)).some(({ what }) => what.hive_ended));
  await keeper.place("round");
  await keeper.reads("yard-beside", /^▲ Hive 2: dead-out, comb still there$/);
});
