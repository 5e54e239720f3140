import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { atOnce, due, entries, keepYard, keysReady, log, onTheDay, row } from "../house/round.mjs";
import { clearSecond, sayOtherwise } from "../house/storage.mjs";

const day = (keeper, field, iso) =>
  keeper.driver.run(
    (field, iso) => {
      // As the phone's own calendar puts it there; how a date is typed differs from browser to browser.
      const input = document.querySelector(`[data-testid=${field}]`);
      input.value = iso;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    },
    field,
    iso,
  );

journey("she typed 30 % for 50 %, corrects it three weeks later and sees which due date moves", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  // Two readings, so that the oil that is lost is known: a tenth of the trap in five days.
  await onTheDay(keeper, "2026-07-06T09:00");
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("more");
  await keeper.type("log-before", "45 %");
  await keeper.type("log-after", "30 %");
  await keeper.tap("did-replaced");
  await keeper.until("hive 1 is logged", async () => (await entries(keeper)).some(({ what }) => what.check?.after === 30));

  await onTheDay(keeper, "2026-07-10T09:00");
  assert.equal(await due(keeper, 1), "overdue", "30 % is the floor already");

  await onTheDay(keeper, "2026-07-27T09:00");
  const before = await entries(keeper);
  await keeper.open("#/book/history");
  await keeper.tap("[data-testid=history-line] button");
  await keeper.tap("history-edit");
  assert.equal(await keeper.value("edit-after"), "30 %");
  assert.equal(await keeper.value("edit-before"), "45 %");

  // What cannot be read is said beside its field, and what was typed stays.
  await keeper.type("edit-after", "150 %");
  await keeper.tap("edit-save");
  await keeper.reads("#edit-after-says", /100/);
  assert.equal(await keeper.value("edit-after"), "150 %");
  await keeper.type("edit-after", "50 %");
  await day(keeper, "edit-day", "2026-06-30");
  await keeper.reads("#edit-day-says", /in the book since/);
  await keeper.tap("edit-save");
  assert.equal(await keeper.value("edit-after"), "50 %", "nothing typed is lost");
  assert.equal((await entries(keeper)).length, before.length, "and nothing is written");
  await day(keeper, "edit-day", "2026-07-06");

  await keeper.reads("shifts", /This changes 1 due date\./);
  await keeper.tap("[data-testid=shifts-show] > summary");
  await keeper.reads("shift-list", /Hive \u2068?1\u2069?: 21 days overdue → 7 days overdue, your maximum of 14 days/);
  await atOnce(keeper, "edit-save");
  await keeper.until("the correction is written", async () => (await entries(keeper)).length === before.length + 1);
  const kept = new Set((await entries(keeper)).map((entry) => JSON.stringify(entry)));
  for (const entry of before) assert.ok(kept.has(JSON.stringify(entry)), "nothing is ever rubbed out");

  await keeper.reload();
  await keeper.reads("history-line", /left 50 %.*was: .*left 30 %/);

  // She was right the first time after all.
  await keeper.tap("[data-testid=history-line] button");
  await keeper.reads("shifts", /Striking it out changes 1 due date\./);
  await keeper.tap("history-take-back");
  await keeper.reads("history-line", /left 30 %.*taken back: .*left 50 %/);
  await keeper.reload();
  await keeper.tapCalmly("version-back");
  await keeper.reads("history-line", /left 50 %.*was: .*left 30 %/);
});

journey("she writes down last week's work late and sees what it does to the due date before it is saved", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-08T09:00");
  await log(keeper, 1, "as_found");
  await onTheDay(keeper, "2026-07-09T09:00");
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("more");
  await day(keeper, "log-day", "2026-07-05");
  await keeper.tap("did-topped_up");
  await keeper.reads("doubt", /Later work on this hive is written down/);
  await keeper.reads("shifts", /This changes 1 due date\./);
  await keeper.tap("[data-testid=shifts-show] > summary");
  await keeper.reads("shift-list", /Hive \u2068?1\u2069?: due .* → due /);
  await keeper.tap("save-as-is");
  await keeper.until("it is written", async () => (await entries(keeper)).some(({ day }) => day === "2026-07-05"));
});

journey("in her yard it is tomorrow already: what she logged there today can be corrected this evening", { faults: { clock: "2026-07-01T20:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await keeper.reads("kept", /Saved/);
  const [key] = Object.entries(await keeper.pages()).find(([, text]) => text.includes('"zone":'));
  await sayOtherwise(keeper, key, /"zone":"[^"]+"/, '"zone":"Pacific/Kiritimati"', key);
  await clearSecond(keeper);
  await keeper.reload();
  await log(keeper, 1, "topped_up");
  await keeper.until("it is logged there", async () => (await entries(keeper)).some(({ what, day }) => what.check && day === "2026-07-02"));

  await keeper.open("#/book/history");
  await keeper.tap("[data-testid=history-line] button");
  await keeper.tap("history-edit");
  await keeper.type("#edit-note", "wet");
  await keeper.tap("edit-save");
  await keeper.until("the correction is written", async () => (await entries(keeper)).some(({ what }) => what.check?.note === "wet"));
});
