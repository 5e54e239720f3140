import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, keysReady, log, onTheDay, row, unfold } from "../house/round.mjs";

const ofTheDay = async (keeper) => (await entries(keeper)).filter(({ day }) => day === "2026-07-15").length;
const isDone = (keeper, tag, where) =>
  keeper.until(`hive ${tag} is done ${where}`, async () => (await due(keeper, tag)) === "later");

/** A yard of four hives on a day when they are due, open in two tabs; the second is in front. */
async function inTwoTabs(keeper) {
  await keeper.open();
  await keepYard(keeper, 4);
  await onTheDay(keeper, "2026-07-15T09:00");
  const first = await keeper.driver.window();
  const second = await keeper.newTab(await keeper.driver.run(() => location.hash));
  return [first, second];
}

journey("her browser knows no locks and she logs in two tabs: each sees the other's entry and none is lost", { faults: { clock: "2026-07-01T09:00", locks: "none" } }, async (keeper) => {
  const [first, second] = await inTwoTabs(keeper);

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
  const [first, second] = await inTwoTabs(keeper);
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
  await keeper.reads("unsaved-notice", /Not kept: Hive .?2.?: .*replaced.*another tab/i);
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

/** Opens a hive and counts there. */
async function count(keeper, tag, keys) {
  await keeper.tap(`${row(tag)} [data-testid=row-open]`);
  await keysReady(keeper);
  for (const key of keys) await keeper.tap(key);
}

for (const locks of ["", "none"]) {
  const how = locks ? "in a browser without locks" : "while one tab writes";
  journey(`she counts at one hive in each of two tabs, ${how}: each has its own after a reload, and a third has what both left`, { faults: { clock: "2026-07-01T09:00", ...(locks && { locks }) } }, async (keeper) => {
    const [first, second] = await inTwoTabs(keeper);
    await keeper.turnTo(first);
    await count(keeper, 1, ["count-5", "count-1"]);
    await keeper.reads("count", /\b6\b/);
    await keeper.turnTo(second);
    await count(keeper, 2, ["count-20"]);
    await keeper.reads("count", /\b20\b/);
    await keeper.turnTo(first);
    await keeper.tap("count-1");
    await keeper.reload();
    await keeper.reads("panel", /Hive .?1/);
    await keeper.reads("count", /\b7\b/);
    await keeper.turnTo(second);
    await keeper.reload();
    await keeper.reads("panel", /Hive .?2/);
    await keeper.reads("count", /\b20\b/);

    // One slot for all of them, and a tab that is closed leaves its entry there.
    const drafts = await keeper.driver.run(() => Object.keys(localStorage).filter((key) => key.includes("draft")).length);
    assert.ok(drafts <= 2, `${drafts} texts`);
    const third = await keeper.newTab(await keeper.driver.run(() => location.hash));
    for (const gone of [first, second]) {
      await keeper.turnTo(gone);
      await keeper.driver.close();
    }
    await keeper.turnTo(third);
    await keeper.reload();
    for (const [tag, counted] of [[1, /\b7\b/], [2, /\b20\b/]]) {
      const open = `${row(tag)} [data-testid=row-open]`;
      if ((await keeper.attribute(open, "aria-expanded")) !== "true") await keeper.tap(open);
      await keeper.reads("panel", new RegExp(`Hive .?${tag}`));
      await keeper.reads("count", counted);
    }
  });
}

journey("she takes back what another tab has built upon since: the bar says why the book refuses, and goes on when it no longer does", { faults: { clock: "2026-07-01T09:00", locks: "none" } }, async (keeper) => {
  const [first, second] = await inTwoTabs(keeper);
  await keeper.turnTo(first);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keeper.tap("[data-testid=panel] a");
  await keeper.one("hive-state");
  await keeper.gone("panel");
  await unfold(keeper, "end");
  await keeper.tapCalmly("end-go");
  await keeper.reads("undo-bar", /Undo/);
  // Another hive gets the number meanwhile.
  await keeper.turnTo(second);
  await keeper.until("hive 1 is gone", async () => !(await keeper.shows(row(1))));
  await unfold(keeper, "add-hives");
  await keeper.type("#hives-tags", "1");
  await keeper.tap("add-hives-go");
  await keeper.until("a new hive 1 is listed", () => keeper.shows(row(1)));

  await keeper.turnTo(first);
  const before = (await entries(keeper)).length;
  await keeper.tap("undo");
  await keeper.reads(".foot .messages", /Nothing was changed.*tag is on another hive/i);
  await keeper.reads("undo-bar", /Undo/);
  assert.equal((await entries(keeper)).length, before);
  // Taken back in the other tab, the number is free again.
  await keeper.turnTo(second);
  await keeper.tap("undo");
  await keeper.until("the new hive is gone", async () => !(await keeper.shows(row(1))));
  await keeper.turnTo(first);
  await keeper.tap("undo");
  await keeper.reads("undo-bar", /Redo|Do it again/i);
  assert.equal(/Nothing was changed/.test(await keeper.text(".foot .messages")), false, "what was refused is no longer said");
});
