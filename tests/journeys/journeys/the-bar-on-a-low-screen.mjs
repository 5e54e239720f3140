import { LETTERS, SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

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
