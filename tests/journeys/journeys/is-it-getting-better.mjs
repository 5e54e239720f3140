import { SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { keepYard, keysReady, log, onTheDay, row } from "../house/round.mjs";
import { typeTime } from "../house/tour.mjs";

const ON = { faults: { clock: "2026-06-01T09:00" } };
const REFUSED = /ERR_CONNECTION_REFUSED|Failed to update a ServiceWorker/;
const body = "#bench-counts-body";

/** Counts beetles at each of `hives` hives and empties its traps. */
async function countAll(keeper, hives, keys) {
  await keeper.open("#/round");
  for (let tag = 1; tag <= hives; tag++) {
    const open = `${row(tag)} [data-testid=row-open]`;
    if ((await keeper.attribute(open, "aria-expanded")) !== "true") await keeper.tap(open);
    await keysReady(keeper);
    for (const key of keys) await keeper.tap(key);
    await log(keeper, tag, "replaced");
    await keeper.until(`hive ${tag} is done`, async () => /replaced|new/i.test(plain(await keeper.text(row(tag)))) || tag === hives);
  }
}

/** All that is written there, in sight or not. */
const written = (keeper, css) => keeper.driver.run((css) => document.querySelector(css)?.textContent ?? "", css);

journey("without signal she sets two counts side by side: one that fell for certain and one that cannot be told yet", { complaints: [REFUSED] }, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  await keeper.offlineReady();
  await keeper.host.stop();
  await keeper.open("#/bench/counts");
  await keeper.reads("counts-word", /^Can’t tell yet$/);
  await keeper.reads(body, /Second ÷ first = 1\.6, 95 % limits 0\.9[12] to 2\.8/);
  await keeper.reads(body, /Hives differ 3 times as much as by chance alone/);
  await keeper.type("#counts-spread", "");
  await keeper.reads("counts-word", /^More: 1\.6 times as many$/);
  await keeper.reads(body, /No second hive tells how much beetles clump/);
  // Small counts go by the exact test.
  await keeper.type("#counts-first", "26");
  await keeper.type("#counts-second", "12");
  await keeper.reads("counts-word", /^Fewer: 0\.46 times as many$/);
  await keeper.reads(body, /apart in 3\.4 % of cases/);
  await keeper.type("#counts-first", "20");
  await keeper.reads("counts-word", /^Can’t tell yet$/);
  await keeper.reads(body, /apart in 21\.5 % of cases/);
  // A range stays one, and no trap-days are no data.
  await keeper.type("#counts-first", "20-200");
  await keeper.reads(body, /First: 20 to 200 beetles in 500 trap-days/);
  await keeper.type("#counts-first-days", "0");
  await keeper.reads("counts-word", /^Nothing to compare yet$/);
  await keeper.type("#counts-first", "many");
  await keeper.reads("#counts-first-says", /One whole number here/);
  await keeper.reads("counts-word", /^–$/);
});

journey("her counts fell after she shut the notches, hive by hive, and of one count alone nothing is said", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 6);
  await keeper.open("#/book/catch");
  await keeper.reads("catch-none", /No beetles were counted here/);
  await onTheDay(keeper, "2026-06-15T09:00");
  await countAll(keeper, 6, ["count-20", "count-20"]);
  await keeper.open("#/book/catch");
  await keeper.reads("catch-word", /^Nothing to compare yet$/);
  await onTheDay(keeper, "2026-06-29T09:00");
  await countAll(keeper, 6, ["count-5"]);

  // From the yard to its catch, and the day on which the notches were shut.
  await keeper.open("#/round");
  await keeper.tap("yard-catch");
  await keeper.tapWords("Before and after a day", "main");
  await typeTime(keeper, "catch-day", "2026-06-15");
  await keeper.reads("catch-word", /^Fewer: 0\.13 times as many$/);
  await keeper.reads("main", /Only hives that fished in both times \(6 hives\)/);
  await keeper.reads("main", /Second ÷ first = 0\.13 \(weighted hive by hive, not the two sums divided\), 95 % limits/);
  await keeper.reads("main", /First: 240 beetles in 336 trap-days = 71 for 100 \(6\d to 8\d\)/);
  await keeper.reads("main", /Second: 30 beetles in 336 trap-days = 8\.9 for 100/);
  await keeper.reads("main", /0 hives rose, 6 hives fell; with nothing changed, as uneven in 3\.1 % of cases/);
  await keeper.reads("main", /Traps count trapped beetles, not all beetles/);
  const charts = () => keeper.driver.run(() => [...document.querySelectorAll("[data-testid=catch-hives] svg")].map((svg) => svg.getAttribute("aria-label")));
  const told = await charts();
  assert.equal(told.length, 6);
  assert.match(plain(told[0]), /^Hive .*1.*: 2 counts: 8\.9 to 71 beetles for 100 trap-days$/);
  const tables = plain(await written(keeper, "main details:last-of-type ul") || (await written(keeper, "main")));
  assert.match(tables, /not told apart: 270 beetles in 672 trap-days/);

  // What changed on a day in between lies within a count: that one is left out.
  await typeTime(keeper, "catch-day", "2026-06-20");
  await keeper.reads("main", /counts reach from one time into another and are left out/);
  await keeper.reload();
  assert.equal(await keeper.value("#catch-day"), "2026-06-20", "what was typed is kept");
});
