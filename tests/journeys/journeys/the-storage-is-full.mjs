import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, row } from "../house/round.mjs";
import { fill, free } from "../house/storage.mjs";

journey("another page filled the phone's storage: her entry is refused truthfully, shown, and kept once there is room", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  assert.ok((await fill(keeper)) > 0);
  const before = await keeper.pages();

  await log(keeper, 2, "topped_up");
  await keeper.reads("unsaved-notice", /Not kept: Hive .?2.?: topped up.*full/);
  const copy = JSON.parse(await keeper.value("[data-testid=unsaved-notice] textarea"));
  assert.equal(copy.entries.length, 1, "the entry itself stays on the screen, to be copied");
  assert.deepEqual(await keeper.pages(), before, "nothing is half written");
  assert.equal(await due(keeper, 2), "today", "the row does not pretend");

  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  await keeper.gone("unsaved-notice");
  assert.equal((await entries(keeper)).filter(({ day }) => day === "2026-07-15").length, 1);
  await keeper.reload();
  assert.equal(await due(keeper, 2), "later");
  for (const [key, text] of Object.entries(before)) assert.equal((await keeper.pages())[key], text);
  assert.ok(await keeper.shows(row(2)));
});
