import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, log, onTheDay, rows } from "../house/round.mjs";

const chosen = (keeper) => keeper.driver.run(() => document.querySelector("[name=keep-again]:checked")?.value);

journey("she kept a yard of lidded traps: whether they are used again is asked, and Load says what it took", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keeper.type("bench-hives", "2");
  await keeper.tap("bench-keep");
  await keeper.one("keep-name");
  assert.equal(await chosen(keeper), "no", "open traps are thrown away");
  await keeper.tap(".radio:has([name=keep-form][value=one_well])");
  await keeper.until("lidded traps are used again", async () => (await chosen(keeper)) === "yes");
  await keeper.tap(".radio:has([name=keep-again][value=no])");
  await keeper.tap(".radio:has([name=keep-form][value=two_wells])");
  await keeper.drawn();
  assert.equal(await chosen(keeper), "no", "what she says stands");
  await keeper.tap(".radio:has([name=keep-again][value=yes])");
  await keeper.tap("keep-save");
  await keeper.until("two hives are listed", async () => (await rows(keeper)).length === 2);
  const [kind] = (await entries(keeper)).filter(({ what }) => what.kind);
  assert.equal(kind.what.kind.reusable, true);

  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.place("load");
  await keeper.reads("main", /8 traps × 10 mL = 80 mL, whole fills: level or loss not known/);
  // A reading tells the loss: 50 to 36 % in 14 days.
  await keeper.place("round");
  await keeper.tap("row-open");
  await keeper.tap("more");
  await keeper.type("#log-before", "36");
  await log(keeper, 1, "topped_up");
  await keeper.until("the work is written", async () => (await entries(keeper)).some(({ what }) => what.check));
  await keeper.place("load");
  await keeper.reads("main", /4 traps used again, from 36 % up, × 2.8 mL/);
});
