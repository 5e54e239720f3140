import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { survey } from "../house/tour.mjs";

const MONTHS = "January February March April May June July August September October November December".split(" ");
const WEEKDAYS = "Sun Mon Tue Wed Thu Fri Sat".split(" ");
const DATE = new RegExp(`(?:(${WEEKDAYS.join("|")})[a-z]*,?\\s+)?(\\d{1,2})\\s+(${MONTHS.join("|")})(?:\\s+(\\d{4}))?`, "g");

journey("every date on every screen names its weekday, and the right one", { faults: { clock: "2026-07-14T21:30" } }, async (keeper) => {
  await keeper.open();
  await keeper.reads(".head-day", "Tue 14 July 2026");
  let met = 0;
  const wrong = await survey(keeper, async () => {
    const dates = [...plain(await keeper.text("body")).matchAll(DATE)];
    met += dates.length;
    return dates.flatMap(([found, weekday, day, month, year]) => {
      const right = WEEKDAYS[new Date(Date.UTC(year ?? 2026, MONTHS.indexOf(month), day)).getUTCDay()];
      return weekday === right ? [] : [`"${found}" is a ${right}`];
    });
  });
  assert.ok(met >= 5, `met only ${met} dates`);
  assert.deepEqual(wrong, []);
});
