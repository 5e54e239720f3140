import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, keysReady, row, rows } from "../house/round.mjs";

journey("she writes down work from before the hive was in the book: its start moves back, the walk and the due date stay", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  const order = (await rows(keeper)).map(({ tag }) => tag);

  await keeper.tap(`${row(2)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("more");
  await keeper.one("log-day");
  // As the phone's own calendar puts it there; how a date is typed differs from browser to browser.
  await keeper.driver.run((day) => {
    const field = document.querySelector("[data-testid=log-day]");
    field.value = day;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }, "2026-07-01");
  await keeper.tap("did-topped_up");
  await keeper.reads("refusal", /in the book since .*15.*stand there earlier/);
  assert.equal((await entries(keeper)).filter(({ what }) => what.check).length, 0, "nothing is written yet");

  await keeper.tap("stood-there");
  await keeper.until("the work is written for its own day", async () =>
    (await entries(keeper)).some(({ day, what }) => day === "2026-07-01" && what.check?.did === "topped_up"),
  );
  assert.deepEqual((await rows(keeper)).map(({ tag }) => tag), order, "the walk is as it was");
  assert.equal(await due(keeper, 2), "later", "the oil is that of the day the yard was kept");
  await keeper.reload();
  assert.deepEqual((await rows(keeper)).map(({ tag }) => tag), order);
});
