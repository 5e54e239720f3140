import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, log, row } from "../house/round.mjs";

journey("with every field open she scrolls down: the name of the hive and Close stay in sight, and she saves at the bottom", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await log(keeper, 1, "topped_up");
  await keeper.reads(".dock-name", /2/);
  await keysReady(keeper);
  await keeper.tap("more");
  await keeper.type("#log-note", "Lid glued down.");
  await keeper.driver.run(() => {
    const foot = document.querySelector(".foot");
    foot.scrollTop = foot.scrollHeight;
  });
  await keeper.drawn();
  const seen = await keeper.driver.run(() =>
    [".dock-name", "[data-testid=shut]", "[data-testid=end-topped_up]", "[data-testid=did-glued_shut]", "[data-testid=end-skipped]"].map((part) => {
      const { left, top, bottom } = document.querySelector(part).getBoundingClientRect();
      return document.querySelector(part).contains(document.elementFromPoint(left + 8, (top + bottom) / 2));
    }),
  );
  assert.deepEqual(seen, [true, true, true, true, true]);
  await keeper.tap("end-as_found");
  await keeper.reads(".dock-name", /3/);
  const noted = (await entries(keeper)).filter(({ what }) => what.check?.note === "Lid glued down.");
  assert.deepEqual(noted.map(({ what }) => what.check.did), ["as_found"]);
  // Under a question there are no keys but its own.
  await keysReady(keeper);
  await keeper.tap("end-skipped");
  await keeper.one("skip-temper");
  await keeper.gone("end-as_found");
  assert.equal(await keeper.driver.run(() => new Set([...document.querySelectorAll("[id]")].map(({ id }) => id)).size === document.querySelectorAll("[id]").length), true, "no name twice");
  await keeper.tap("skip-temper");
  await keeper.one(row(3));
});
