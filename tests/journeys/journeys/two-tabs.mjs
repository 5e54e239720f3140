import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay } from "../house/round.mjs";

const ofTheDay = async (keeper) => (await entries(keeper)).filter(({ day }) => day === "2026-07-15").length;
const isDone = (keeper, tag, where) =>
  keeper.until(`hive ${tag} is done ${where}`, async () => (await due(keeper, tag)) === "later");

journey("her browser knows no locks and she logs in two tabs: each sees the other's entry and none is lost", { faults: { clock: "2026-07-01T09:00", locks: "none" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 4);
  await onTheDay(keeper, "2026-07-15T09:00");
  const first = await keeper.driver.window();
  const hash = await keeper.driver.run(() => location.hash);
  const second = await keeper.newTab(hash);

  await log(keeper, 1, "topped_up");
  await isDone(keeper, 1, "in the second tab");
  await keeper.turnTo(first);
  await isDone(keeper, 1, "in the first tab");
  await log(keeper, 2, "replaced");
  await isDone(keeper, 2, "in the first tab");
  await keeper.turnTo(second);
  await isDone(keeper, 2, "in the second tab");
  await log(keeper, 3, "as_found");
  await keeper.until("three entries", async () => (await ofTheDay(keeper)) === 3);
  await keeper.reload();
  for (const tag of [1, 2]) assert.equal(await due(keeper, tag), "later");
  assert.equal(await due(keeper, 4), "today");
});

journey("she has the page open twice: one tab writes, the other reads until she takes over there", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 4);
  await onTheDay(keeper, "2026-07-15T09:00");
  const first = await keeper.driver.window();
  const hash = await keeper.driver.run(() => location.hash);
  const second = await keeper.newTab(hash);
  await keeper.reads("tab-notice", /open in another tab/);

  // What the writing tab saves is seen at once in the reading one.
  await keeper.turnTo(first);
  assert.equal(await keeper.shows("tab-notice"), false);
  await log(keeper, 1, "topped_up");
  await keeper.reads("kept", /Saved/);
  await keeper.turnTo(second);
  await isDone(keeper, 1, "in the second tab");

  // An entry made in the reading tab is not pretended to be kept, and is kept once this tab writes.
  await log(keeper, 2, "replaced");
  await keeper.reads("unsaved-notice", /Not kept: Hive .?2.? replaced.*another tab/i);
  assert.equal(await ofTheDay(keeper), 1);
  if (await keeper.shows("shut")) await keeper.tap("shut");
  await keeper.tap("take-over");
  await keeper.gone("unsaved-notice");
  await isDone(keeper, 2, "in the second tab");
  await keeper.gone("tab-notice");
  await log(keeper, 3, "as_found");
  await keeper.reads("kept", /Saved/);

  // The first tab has lost the turn, sees everything, and gets the turn back when the second is closed.
  await keeper.turnTo(first);
  await keeper.reads("tab-notice", /open in another tab/);
  await isDone(keeper, 2, "in the first tab");
  await keeper.turnTo(second);
  await keeper.driver.close();
  await keeper.turnTo(first);
  await keeper.gone("tab-notice");
  await log(keeper, 4, "topped_up");
  await keeper.reads("kept", /Saved/);
  await keeper.until("four entries", async () => (await ofTheDay(keeper)) === 4);
  await keeper.reload();
  for (const tag of [1, 2, 4]) assert.equal(await due(keeper, tag), "later");
  assert.equal(await keeper.shows("restored-notice"), false);
});
