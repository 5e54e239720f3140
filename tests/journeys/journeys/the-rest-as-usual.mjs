import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, rows } from "../house/round.mjs";

journey("she logs two hives by hand and the rest as usual, after reading which they are", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 6);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 2, "replaced");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  await log(keeper, 5, "spilled");
  await keeper.until("hive 5 has its entry", async () => (await entries(keeper)).filter(({ day }) => day === "2026-07-15").length === 2);
  const before = (await entries(keeper)).length;

  // The list ends behind the panel: she puts the panel away first.
  if (await keeper.attribute("shut", "type")) await keeper.tap("shut");
  await keeper.tap("rest-as-usual");
  await keeper.one("rest-list");
  const listed = await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=rest-list] li")].map((line) => line.innerText.trim()));
  assert.deepEqual(listed, ["1", "3", "4", "6"], "2 and 5 are logged already");
  assert.equal((await entries(keeper)).length, before, "nothing is written before she confirms");

  await keeper.tapCalmly("rest-confirm");
  await keeper.until("four more entries", async () => (await entries(keeper)).length === before + 4);
  const left = (await rows(keeper)).filter(({ due }) => due !== "later").map(({ tag }) => tag);
  assert.deepEqual(left, ["5"], "only the spilled one still needs oil");
});
