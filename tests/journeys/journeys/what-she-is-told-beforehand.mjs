import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, unfold } from "../house/round.mjs";
import { pageRoot } from "../house/settings.mjs";

journey("before her first entry she reads where it lives, and that a private window forgets it", {}, async (keeper) => {
  await keeper.open();
  await keeper.tap("bench-keep");
  await keeper.reads(".keep-form", /only on this phone until you save a file.*private window.*vanish/);
  assert.deepEqual(await keeper.pages(), {});
});

journey("she looks for reminders: there are none but the calendar's, and the page says so and asks for no leave to send any", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await keeper.place("book");
  await unfold(keeper, "papers");
  await keeper.reads("papers", /sends no notices: the calendar reminds you.*calendar of its own.*deleted at once/);
  await keeper.reads("papers", /No paper here says where a yard is/);
  for (const file of readdirSync(pageRoot).filter((name) => name.endsWith(".js"))) {
    assert.doesNotMatch(readFileSync(join(pageRoot, file), "utf8"), /\bNotification\b|pushManager|geolocation/, file);
  }
});

journey("far from home her phone keeps another time: days go by the clock of the yard, and the yard says so", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const home = await keeper.driver.run(() => Intl.DateTimeFormat().resolvedOptions().timeZone);
  const told = new RegExp(`Days here go by the clock of ${home.replaceAll("_", " ")}`);
  await keeper.place("load");
  await keeper.place("round");
  assert.doesNotMatch(await keeper.text("main"), /go by the clock/);
  await keeper.driver.run(() => {
    const format = window.Intl.DateTimeFormat.prototype;
    const own = format.resolvedOptions;
    format.resolvedOptions = function () {
      return { ...own.call(this), timeZone: "Pacific/Auckland" };
    };
    document.dispatchEvent(new Event("visibilitychange"));
  });
  await keeper.place("load");
  await keeper.place("round");
  await keeper.reads("main", told);
});

journey("she gave her yard a name with the signs of a program in it: everywhere it is letters and nothing else", {}, async (keeper) => {
  const name = '<img src=x onerror="document.title=1">&amp;';
  await keeper.open();
  await keepYard(keeper, 2, name);
  const harmless = async (where) => {
    await keeper.until(`${where} shows the name`, async () => (await keeper.text("body")).includes(name));
    assert.equal(await keeper.driver.run(() => document.querySelectorAll("img").length), 0, where);
  };
  await harmless("the yard");
  await keeper.driver.go(`${keeper.host.address}#/book/history`);
  await harmless("the history");
  await keeper.driver.go(`${keeper.host.address}#/book/truck-sheet`);
  await harmless("the truck sheet");
  await watchFiles(keeper);
  await keeper.tap("sheet-save");
  const [sheet] = await savedFiles(keeper, 1);
  assert.match(sheet.text, /&lt;img src=x/);
  assert.doesNotMatch(sheet.text, /<img/);
  await keeper.place("book");
  await keeper.tap("book-backup");
  const [, file] = await savedFiles(keeper, 2);
  const path = join(keeper.engine.home, file.name);
  writeFileSync(path, file.text);
  await keeper.pick("book-restore", path);
  await keeper.one("restore-preview");
  await harmless("the preview of a file");
});
