import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { atOnce, entries, keepYard, keysReady, log, onTheDay, row } from "../house/round.mjs";

/** Two taps on a key of the panel before the page has drawn anything. */
const twice = async (keeper, mark) => {
  await keeper.one(mark);
  await keysReady(keeper);
  await atOnce(keeper, mark);
};
const written = async (keeper, what) => (await entries(keeper)).filter((entry) => entry.what[what]).length;
/** The hive whose panel is open. */
const atHive = (keeper) => keeper.text(".dock-name");

journey("the phone took one tap for two: every answer to a question was written once", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 4);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "skipped");
  await twice(keeper, "skip-temper");
  await keeper.until("hive 2 is open", async () => /2/.test(await atHive(keeper)));
  assert.equal(await written(keeper, "skip"), 1);

  // A count that was never seen here is asked about.
  await keysReady(keeper);
  await keeper.tap("more");
  await keeper.type("log-count", "9000");
  await keeper.tap("did-topped_up");
  await twice(keeper, "save-as-is");
  await keeper.until("hive 3 is open", async () => /3/.test(await atHive(keeper)));
  assert.equal(await written(keeper, "check"), 1);

  // Work from before the hive was here, in one act with the day it came.
  const before = (await entries(keeper)).length;
  await keysReady(keeper);
  await keeper.one("log-day");
  // As the phone's own calendar puts it there; how a date is typed differs from browser to browser.
  await keeper.driver.run((day) => {
    const field = document.querySelector("[data-testid=log-day]");
    field.value = day;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }, "2026-06-20");
  await keeper.tap("did-as_found");
  await twice(keeper, "stood-there");
  await keeper.until("hive 4 is open", async () => /4/.test(await atHive(keeper)));
  assert.equal((await entries(keeper)).length, before + 2, "the day it came and the work");
});

journey("she took the tap back before the page had gone on: it stays at the hive, with what she had counted", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("count-5");
  await keeper.driver.wait(async () => {
    // A phone that is busy draws its next frame late.
    const draws = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (then) => setTimeout(() => draws(then), 700);
    const shown = async (mark) => {
      for (let tries = 0; tries < 100; tries += 1) {
        const key = document.querySelector(`[data-testid=${mark}]`);
        if (key) return key;
        await new Promise((done) => setTimeout(done, 2));
      }
      throw new Error(`no ${mark}`);
    };
    (await shown("did-as_found")).click();
    (await shown("undo")).click();
    await new Promise((done) => setTimeout(done, 1500));
    window.requestAnimationFrame = draws;
  });
  assert.match(await atHive(keeper), /1/);
  await keeper.reads("count", /\b5\b/);
});
