import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, onTheDay, row } from "../house/round.mjs";

/** Two taps of the glass itself, the second in the moment the first has brought a key up under it. */
const ghostTaps = (keeper, first, second) =>
  keeper.driver.wait(
    async (first, second) => {
      document.querySelector(first).click();
      // As long as the page takes to draw what was asked for, and no longer.
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
      const key = document.querySelector(second);
      key.click();
      return key.getClientRects().length > 0;
    },
    first,
    second,
  );

journey("rain tapped on the wet screen: keys that have just come up took no notice", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  const before = (await entries(keeper)).length;
  assert.ok(await ghostTaps(keeper, `${row(1)} [data-testid=row-open]`, "[data-testid=did-topped_up]"));
  await keeper.tap("shut");
  assert.ok(await ghostTaps(keeper, "[data-testid=rest-as-usual]", "[data-testid=rest-confirm]"));
  assert.equal((await entries(keeper)).length, before, "no ghost has written anything");

  await keeper.tapCalmly("rest-confirm");
  await keeper.until("three entries", async () => (await entries(keeper)).length === before + 3);
});
