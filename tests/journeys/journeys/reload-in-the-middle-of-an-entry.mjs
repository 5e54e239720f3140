import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log, onTheDay, row } from "../house/round.mjs";

journey("a call came in at an open hive: the beetles counted so far are still there", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  for (const key of ["count-5", "count-5", "count-1"]) await keeper.tap(key);
  await keeper.reads("count", /\b11\b/);
  await keeper.reload();
  await keeper.reads("panel", /Hive .?2/);
  await keeper.reads("count", /\b11\b/);
  const before = (await entries(keeper)).length;
  await log(keeper, 2, "as_found");
  await keeper.until("the entry is kept", async () => (await entries(keeper)).length === before + 1);
  assert.equal((await entries(keeper)).find(({ what }) => JSON.stringify(what).includes("as_found"))?.what.check?.count ?? null, 11);
});

journey("the phone loaded the page again in the middle of an entry, and what was typed is still there", {}, async (keeper) => {
  await keeper.open();
  await keeper.type("bench-hives", "37");
  await keeper.tap("bench-keep");
  await keeper.type("keep-name", "Old orchard, far en");
  await keeper.reload();
  assert.equal(await keeper.value("bench-hives"), "37");
  await keeper.reads("bench-traps", /\b148\b/);
  if (!(await keeper.shows("keep-name"))) await keeper.tap("bench-keep");
  assert.equal(await keeper.value("keep-name"), "Old orchard, far en");
});

journey("the phone shut the page over the load: every number she typed is still there, the bad ones too, and two days later the book's own", { faults: { clock: "2026-11-02T19:00" } }, async (keeper) => {
  const typed = {
    "load-spare-1": "9",
    "load-store-1": "twelve",
    "load-walks": "3",
    "load-spilled": "15 %",
    "load-months": "18",
    "load-each": "about 7",
    "load-leave": "07:30",
    "load-done": "11:00",
    "next-winter": "110 %",
    "next-fee": "4.x",
    "next-free": "50",
    "next-hives-1": "11",
    "next-splits-1": "4",
    "next-each-1": "",
    "next-spares-1": "-2",
    "next-stock-1": "12",
    "load-from": "2026-05-01",
    "load-to": "2026-09-30",
    "load-reserve": "40 %",
    "load-bottle": "1.5.2",
  };
  const days = ["load-leave", "load-done", "load-from", "load-to"];
  const cards = async () => {
    for (const card of ["load-minutes", "load-next", "load-cost"])
      if ((await keeper.attribute(`#${card}`, "aria-expanded")) !== "true") await keeper.tap(`#${card}`);
    await keeper.one("#next-stock-1");
    await keeper.one("#load-to");
    await keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
  };
  const standing = () => keeper.driver.run((ids) => Object.fromEntries(ids.map((id) => [id, document.getElementById(id).value])), Object.keys(typed));
  await keeper.open();
  await keepYard(keeper, 10);
  await keeper.place("load");
  await cards();
  const own = await standing();
  for (const [id, text] of Object.entries(typed)) {
    if (!days.includes(id)) await keeper.type(`#${id}`, text);
    else
      await keeper.driver.run((id, text) => {
        const field = document.getElementById(id);
        field.value = text;
        field.dispatchEvent(new Event("input", { bubbles: true }));
      }, id, text);
  }
  await keeper.reload();
  await cards();
  assert.deepEqual(await standing(), typed);
  for (const id of ["load-store-1", "load-each", "next-winter", "next-fee", "next-each-1", "next-spares-1", "load-bottle"])
    assert.equal(await keeper.attribute(`#${id}`, "aria-invalid"), "true", `${id} says what is wrong`);

  // Typed back, a field goes along with the book again.
  await keeper.type("#next-hives-1", own["next-hives-1"]);
  await onTheDay(keeper, "2026-11-03T06:00");
  await cards();
  assert.deepEqual(await standing(), { ...typed, "next-hives-1": "10" });
  await onTheDay(keeper, "2026-11-05T06:00");
  await cards();
  assert.deepEqual(await standing(), { ...own, "load-to": "2026-11-05" });
});

journey("the phone shut the page with one of two yards left at home: it stays there for that trip, and the numbers are of the other", { faults: { clock: "2026-11-02T19:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 10);
  await keepYard(keeper, 4, "Heath");
  await keeper.place("load");
  await keeper.tapWords("Heath", "main fieldset");
  await keeper.tap("#load-next");
  await keeper.until("the hives of one yard are counted", async () => (await keeper.value("#next-hives-1")) === "10");
  await keeper.type("#next-hives-1", "12");
  await keeper.reload();
  await keeper.tap("#load-next");
  await keeper.until("what she typed is there", async () => (await keeper.value("#next-hives-1")) === "12");
  // With both, twelve hives would be too few.
  await keeper.tapWords("Heath", "main fieldset");
  await keeper.until("the hives of both are counted", async () => (await keeper.value("#next-hives-1")) === "14");
  await keeper.tapWords("Heath", "main fieldset");
  await keeper.until("hers are there again", async () => (await keeper.value("#next-hives-1")) === "12");
});
