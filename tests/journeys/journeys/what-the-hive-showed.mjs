import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, onTheDay, row, unfold } from "../house/round.mjs";

const ON = { faults: { clock: "2026-07-01T09:00" } };
const record = async (keeper) => (await entries(keeper)).map((entry) => entry.what.record).filter(Boolean);

// The driver's keys meet a date field in as many ways as there are engines.
const day = async (keeper, where, iso) => {
  await keeper.one(where);
  await keeper.driver.run((where, iso) => {
    const field = document.querySelector(where);
    field.value = iso;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }, where, iso);
};

journey("she saw larvae, wrote them down from the panel without signal, and was back at the hive", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.host.stop();
  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keeper.tap("more");
  await keeper.tap("dock-look");
  // Nothing is chosen for her: a hive that nobody looked into is not one without larvae.
  await keeper.tap("write-save");
  await keeper.reads(".write-form", /This is needed/);
  assert.deepEqual(await record(keeper), []);
  await keeper.tapWords("few", ".write-form");
  await keeper.type("#write-adults", "5–19");
  await keeper.tap("write-save");
  await keeper.one("panel");
  const [look] = await record(keeper);
  assert.deepEqual(look.answers, { larvae: "few", adults: { low: 5, high: 19 } });
  await keeper.reads(row(2), /larvae few/);
  await keeper.tap("[data-testid=panel] a");
  await keeper.reads("hive-state", /Beetle larvae: few; Adult beetles seen: 5–19/);
});

journey("a call came while she wrote down a product, and what she had typed was still there", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await unfold(keeper, "write-more");
  await keeper.tap("product");
  await keeper.type("#write-product", "Strips, as labelled");
  await keeper.type("#write-amount", "2 each");
  await keeper.tap("write-all");
  await keeper.until("it is kept", () => keeper.driver.run(() => Object.keys(localStorage).some((key) => key.startsWith("beetle-almanac/write#"))));
  await keeper.reload();
  await keeper.reads("write-left", /^.?\s*Typed earlier for .*, today, and not saved\./);
  await keeper.until("the product stands there", async () => (await keeper.value("#write-product")) === "Strips, as labelled");
  // Zero has to be typed: an empty field says nothing of the label.
  await keeper.tap("write-save");
  await keeper.reads("#write-interval_days-says", /needed/);
  await keeper.type("#write-interval_days", "0");
  await keeper.type("#write-who", "the keeper");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await record(keeper)).length === 1);
  const [product] = await record(keeper);
  assert.equal(product.hives.length, 3);
  assert.equal(product.answers.interval_days, 0);
  assert.ok(await keeper.driver.run(() => !Object.keys(localStorage).some((key) => key.startsWith("beetle-almanac/write#"))), "nothing piles up");
  await keeper.open("#/book/records");
  await keeper.reads("records", /not verified, no registration number/);
  await keeper.reads("records", /Still in the hives/);
  await keeper.reads("records", /Keep this record until .*2031/);
});

journey("she corrected the last day of a product, and supers may be on from another day", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-20T09:00");
  await unfold(keeper, "write-more");
  await keeper.tap("product");
  await keeper.type("#write-product", "Strips");
  await keeper.type("#write-amount", "2");
  await keeper.type("#write-interval_days", "14");
  await keeper.type("#write-who", "the keeper");
  await keeper.tap("write-all");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await record(keeper)).length === 1);
  await keeper.open("#/book/history");
  await keeper.tap(".line-key");
  await keeper.tap("history-edit");
  await keeper.one("write-save");
  // Before it began: said beside the field, and nothing is lost.
  await day(keeper, "#write-end", "2026-07-19");
  await keeper.tap("write-save");
  await keeper.reads("#write-end-says", /before the day/);
  await day(keeper, "#write-end", "2026-07-20");
  await keeper.tap("write-save");
  await keeper.until("it is corrected", async () => (await record(keeper)).length === 2);
  await keeper.open("#/book/records");
  await keeper.reads("records", /Supers may be on from .*3 August|Supers may be on from .*August 3/);
});

journey("a dead-out that she began and left stands there on another day, says so, and is cleared in one tap", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const hives = (await entries(keeper)).filter((entry) => entry.what.hive).map((entry) => entry.id);
  const kept = () => keeper.driver.run(() => Object.keys(localStorage).filter((key) => key.startsWith("beetle-almanac/write#")).length);
  const open = async (hive) => {
    await keeper.open(`#/write/dead_out/${hive}`);
    await keeper.one("write-save");
  };
  await open(hives[0]);
  await keeper.gone("write-left");
  const note = "#write-note";
  const unfolded = () => keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
  await unfolded();
  await keeper.type(note, "robbed out");
  await keeper.until("it is kept", async () => (await kept()) === 1);
  // The page of its hive leads back to it.
  await keeper.open(`#/hive/${hives[0]}`);
  await keeper.reads("write-begun", /begun, not saved$/);
  await keeper.open(`#/hive/${hives[1]}`);
  await keeper.one("log");
  await keeper.gone("write-begun");
  // The other hive has nothing of it.
  await open(hives[1]);
  await unfolded();
  await keeper.gone("write-left");
  assert.equal(await keeper.value(note), "");
  await onTheDay(keeper, "2027-03-02T09:00");
  await open(hives[0]);
  await keeper.reads("write-left", /Typed earlier for .*2026.*ago, and not saved\./);
  assert.equal(await keeper.value(note), "robbed out");
  assert.equal(await keeper.value("#write-day"), "2026-07-01");
  await keeper.tap("write-clear");
  await keeper.gone("write-left");
  assert.equal(await keeper.value(note), "");
  assert.equal(await keeper.value("#write-day"), "2027-03-02");
  await keeper.until("it is let go", async () => (await kept()) === 0);
  await open(hives[0]);
  await keeper.gone("write-left");
  assert.deepEqual(await record(keeper), []);
});
