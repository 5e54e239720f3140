import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, onTheDay, rows, unfold } from "../house/round.mjs";

journey("she paused the season: all winter nothing is overdue, and in spring it goes on", { faults: { clock: "2026-10-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-11-01T09:00");
  assert.deepEqual(new Set((await rows(keeper)).map(({ due }) => due)), new Set(["overdue"]));
  await unfold(keeper, "season");
  await keeper.tap("season-go");
  await keeper.until("every hive rests", async () => (await rows(keeper)).every(({ due }) => due === "resting"));

  await onTheDay(keeper, "2027-01-20T09:00");
  for (const { due, words } of await rows(keeper)) {
    assert.equal(due, "resting");
    assert.doesNotMatch(words, /overdue/i);
  }
  await keeper.reads("yard-total", /Paused since .*Nothing is due/);
  assert.doesNotMatch(await keeper.text("main"), /overdue/i, "no word of it anywhere on the walk");

  await unfold(keeper, "season");
  await keeper.tap("season-go");
  await keeper.until("the hives are due again", async () => (await rows(keeper)).every(({ due }) => due === "overdue"));
});
