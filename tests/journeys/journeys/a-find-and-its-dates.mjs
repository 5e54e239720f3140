import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { entries, keepYard, row, unfold } from "../house/round.mjs";
import { written } from "../house/dates.mjs";

const ON = { faults: { clock: "2026-07-10T09:00" } };

/** The climate that stands second in the list, for the first yard. */
async function climate(keeper) {
  const yard = (await entries(keeper)).find(({ what }) => what.yard).id;
  await keeper.open(`#/write/climate/${yard}`);
  await keeper.one("#write-known");
  await keeper.driver.run(() => {
    const chooser = document.querySelector("#write-known");
    chooser.selectedIndex = 1;
    chooser.dispatchEvent(new Event("change", { bubbles: true }));
  });
  await keeper.until("the months are filled in", async () => (await keeper.value("write-low_12")) !== "");
  await keeper.tap("write-save");
  await keeper.gone("write-save");
  return yard;
}

const today = (keeper) => keeper.driver.run(() => document.querySelector(".date-rows").innerText.replaceAll("\u00a0", " "));

journey("larvae crawled out of a hive: three days and why, in the calendar, held by dry ground, and freed by rain", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const yard = await climate(keeper);
  await keeper.host.stop();

  const hive = (await entries(keeper)).find(({ what }) => what.hive).id;
  await keeper.driver.go(`${keeper.host.address}#/write/look/${hive}`);
  await keeper.tapWords("few", ".write-form");
  await keeper.tapWords("full-grown", ".write-form");
  await keeper.tapWords("More fields", ".write-form");
  await keeper.tapWords("larvae leaving", ".write-form");
  await keeper.tap("write-save");
  await keeper.gone("write-save");

  await keeper.place("beetle");
  await keeper.reads("under-way", /Slime, or larvae leaving/);
  const dates = await today(keeper);
  const young = dates.split("\n").find((line) => line.startsWith("Young beetles"));
  assert.match(young, /from .*, likely .*, at the latest /);
  await keeper.reads("beetle-yard", /Bag combs with larvae now/);
  await keeper.reads("main", /Estimate\. Soil and weather move these dates/);

  // The hive's own page and its row say so too.
  await keeper.driver.go(`${keeper.host.address}#/hive/${hive}`);
  await keeper.reads("under-way", /Young beetles come out of the ground/);
  await keeper.driver.go(`${keeper.host.address}#/round/${yard}`);
  await keeper.reads(row(1), /young beetles from .* \(estimate\)/);

  // Into the keeper's own calendar, with all three days.
  await keeper.place("book");
  await watchFiles(keeper);
  await unfold(keeper, "papers");
  await keeper.tap("calendar-save");
  const [file] = await savedFiles(keeper, 1);
  const lines = file.text.replaceAll("\r\n ", "").split("\r\n");
  const title = lines.findIndex((line) => /^SUMMARY:.*young beetles may come at 1 hive/.test(line));
  assert.ok(title > 0, file.text);
  const start = lines.slice(0, title).findLast((line) => line.startsWith("DTSTART"));
  const [, y, m, d] = start.match(/:(\d{4})(\d\d)(\d\d)$/);
  assert.match(young, written(`${y}-${m}-${d}`), "the event is on the first of them");
  assert.ok(lines.some((line) => line.startsWith("DESCRIPTION") && /likely .*at the latest/.test(line)));

  // Dry ground holds them.
  await keeper.driver.go(`${keeper.host.address}#/write/soil/${yard}`);
  await keeper.tapWords("dry", ".write-form");
  await keeper.tap("write-save");
  await keeper.gone("write-save");
  await keeper.place("beetle");
  await keeper.reads("under-way", /held in dry ground until it rains/);
  // The rain frees them.
  await keeper.driver.go(`${keeper.host.address}#/write/rain/${yard}`);
  await keeper.tap("write-save");
  await keeper.gone("write-save");
  await keeper.place("beetle");
  await keeper.reads("under-way", /Young beetles come out of the ground: from /);
});

journey("she worked a date out again by hand from the table", ON, async (keeper) => {
  await keeper.open("#/beetle/dates");
  await keeper.host.stop();
  await keeper.reads("dates", written("2026-07-26"));
  await keeper.reads("dates", written("2026-08-01"));
  await keeper.reads("dates", written("2026-08-08"));
  await keeper.tap("worked");
  const table = async () =>
    keeper.driver.run(() => [...document.querySelectorAll("[data-testid=worked-table] > li:not(:first-child)")].map((line) => [...line.children].map((cell) => cell.innerText)));
  // The likely share at 26 °C: 365 above 10, 295.7 above 12.05 and the curve; the middle one of the three.
  const shares = [16 / 365, 13.95 / 295.7, 2.98952e-5 * 26 * (26 - 10.4291) * Math.sqrt(41.9097 - 26)].sort((a, b) => a - b);
  const ground = (await table()).filter(([, stage]) => stage === "ground");
  assert.equal(Number(ground[1][3]), Number(shares[1].toFixed(4)));
  // The shares of the days come to 1, and the day on which they do is the one that is told.
  let sum = 0;
  for (const line of ground) sum += Number(line[3]);
  assert.ok(Math.abs(sum - 1) < 0.002, `${sum}`);
  assert.match(ground.at(-1)[0], /1\s*Aug|Aug\s*1/);
  // A temperature nobody has: said beside the field, and what was typed stays.
  await keeper.type("dates-soil-high", "95");
  await keeper.reads("#dates-soil-high-says", /95 °C\? Did you mean 95 °F \(35 °C\)/);
  await keeper.reads("dates", /once every field above can be read/);
  assert.equal(await keeper.value("dates-soil-high"), "95");
  await keeper.type("dates-soil-high", "20");
  await keeper.reads("#dates-soil-high-says", /below the coolest/);
  // Soil in which nothing goes on has a reason and no day.
  await keeper.type("dates-soil-low", "4");
  await keeper.type("dates-soil-high", "8");
  await keeper.reads("dates", /never gets warm enough/);
});

journey("a cold coast, a warm one, and three degrees more", ON, async (keeper) => {
  await keeper.open("#/beetle/season");
  await keeper.host.stop();
  const choose = (words) =>
    keeper.driver.run((words) => {
      const chooser = document.querySelector("#season-climate");
      chooser.value = [...chooser.options].find((option) => option.text.includes(words)).value;
      chooser.dispatchEvent(new Event("change", { bubbles: true }));
    }, words);
  await keeper.reads("generations", /2–5, likely \d/);
  const before = await keeper.text("generations");
  await keeper.tapWords("3 °C (5.4 °F) warmer", "main");
  await keeper.until("there is room for more", async () => (await keeper.text("generations")) !== before);
  await keeper.tapWords("as it is", "main");
  await choose("Alaska");
  await keeper.reads("generations", /^0$/);
  await keeper.reads("main", /No generation is possible with these numbers/);
});
