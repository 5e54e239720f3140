import { dates, written } from "../house/dates.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { survey } from "../house/tour.mjs";

journey("every date on every screen names its weekday, and the right one", { faults: { clock: "2026-07-14T21:30" } }, async (keeper) => {
  await keeper.open();
  await keeper.reads(".head-day", written("2026-07-14"));
  let met = 0;
  const wrong = await survey(keeper, async () => {
    const all = dates(plain(await keeper.text("body")), 2026);
    met += all.length;
    return all.filter(({ weekday, right }) => weekday !== right).map(({ found, right }) => `"${found}" is a ${right}`);
  });
  assert.ok(met > 50, `met only ${met} dates`);
  assert.deepEqual(wrong, []);
});
