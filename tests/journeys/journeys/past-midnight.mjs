import { written } from "../house/dates.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, keepYard, onTheDay } from "../house/round.mjs";

journey("she left the page open overnight: in the morning it shows the new day and what is due on it", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-14T23:59:58");
  await keeper.reads(".head-day", written("2026-07-14"));
  assert.equal(await due(keeper, 1), "later");
  await keeper.until("the page shows the new day", async () => {
    // What a phone tells a page when it is taken out of the pocket.
    await keeper.driver.run(() => document.dispatchEvent(new Event("visibilitychange")));
    return written("2026-07-15").test(await keeper.text(".head-day"));
  });
  await keeper.until("hive 1 is due", async () => (await due(keeper, 1)) === "today");
});
