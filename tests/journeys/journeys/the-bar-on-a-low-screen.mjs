import { LETTERS, PHONE, SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, onTheDay } from "../house/round.mjs";

/** How much of the screen the foot takes, and whether all of it is in sight. */
const foot = (keeper) =>
  keeper.driver.run(() => {
    const { top, bottom, height } = document.querySelector(".foot").getBoundingClientRect();
    return { part: height / innerHeight, inSight: top >= 0 && bottom <= innerHeight + 0.5 };
  });

journey("with letters twice as large on a low screen the places are one key away from anywhere on a page", { letters: 2 * LETTERS }, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open("#/bench");
  await keeper.one("places");
  // What is said once the page works without signal lies over the bar until somebody goes on or has read it.
  await keeper.offlineReady();
  await keeper.until("it is said", () => keeper.shows(".messages .key"));
  await keeper.until("it leaves the page its half", async () => (await foot(keeper)).part <= 0.5);
  await keeper.tap(".messages .key");
  await keeper.until("it is gone", async () => !(await keeper.shows(".messages .key")));
  // A window may take a moment to be of its new size.
  let now;
  await keeper.until("the foot is in sight at the head of a long page, on a quarter of the screen at the most", async () => {
    now = await foot(keeper);
    return now.inSight && now.part <= 0.25;
  }).catch((error) => assert.fail(`${error.message}\n${JSON.stringify(now)}`));
  assert.ok(!(await keeper.shows("nav-load")));
  await keeper.tap("places");
  assert.equal(await keeper.attribute("places", "aria-expanded"), "true");
  await keeper.tap("nav-load");
  await keeper.reads("main h1", /^Load$/);
  await keeper.reads("places", /Load$/);
  await keeper.until("the bar is folded again", async () => !(await keeper.shows("nav-load")));
});

journey("with letters twice as large a notice is two lines above the page, and all of it after a tap", { letters: 2 * LETTERS, faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-08-14T09:00");
  await keeper.place("load");
  await keeper.reads("backup-notice", /Backup is overdue/);
  const part = () => keeper.driver.run(() => document.querySelector(".notices").getBoundingClientRect().height / innerHeight);
  assert.equal(await keeper.attribute("notices-more", "aria-expanded"), "false");
  assert.ok((await part()) <= 0.25, `the notices take ${await part()} of the screen`);
  await keeper.tap("notices-more");
  await keeper.reads("backup-notice", /Never saved to a file/);
  assert.ok(await keeper.shows("[data-testid=backup-notice] a"), "the way to the backup is there");
  await keeper.tap("notices-more");
  assert.ok(!(await keeper.shows("[data-testid=backup-notice] a")));
  // Where there is room nothing is folded.
  await keeper.engine.resize(PHONE);
  await keeper.until("all of it is there", () => keeper.shows("[data-testid=backup-notice] a"));
  assert.ok(!(await keeper.shows("notices-more")));
});
