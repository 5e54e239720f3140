import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { Host } from "../house/host.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { atOnce, entries, keepYard, log, onTheDay } from "../house/round.mjs";
import { pageRoot } from "../house/settings.mjs";

/** The whole book as a file on the disk. */
async function saved(keeper, name) {
  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [file] = await savedFiles(keeper, 1);
  const path = join(keeper.engine.home, name);
  writeFileSync(path, file.text);
  return path;
}

async function takeIn(keeper, path) {
  await keeper.open("#/book");
  await keeper.pick("book-restore", path);
  await keeper.tap("restore-confirm");
  await keeper.reads(".ledger", /Restored/);
}

/** Corrects the level left in the newest line of the history. */
async function correct(keeper, level) {
  const before = (await entries(keeper)).length;
  await keeper.open("#/book/history");
  await keeper.tap("[data-testid=history-line] button");
  await keeper.tap("history-edit");
  await keeper.type("edit-after", level);
  await keeper.tap("edit-save");
  await keeper.until("the correction is written", async () => (await entries(keeper)).length === before + 1);
}

journey("two phones corrected one line differently and logged one check twice: both are shown, and she decides", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-10T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is logged", async () => (await entries(keeper)).some(({ what }) => what.check));
  const common = await saved(keeper, "common.json");

  // Another origin is another phone.
  const own = keeper.host;
  const other = await new Host(pageRoot).start();
  await other.change({ faults: { clock: "2026-07-11T09:00" } });
  let theirs;
  try {
    keeper.host = other;
    await takeIn(keeper, common);
    await correct(keeper, "60 %");
    await keeper.open("#/round");
    await log(keeper, 2, "topped_up");
    await keeper.until("hive 2 is logged", async () => (await entries(keeper)).filter(({ what }) => what.check).length === 3);
    theirs = await saved(keeper, "theirs.json");
  } finally {
    keeper.host = own;
  }
  await own.change({ faults: { clock: "2026-07-11T10:00" } });
  await keeper.open();
  await correct(keeper, "40 %");
  await keeper.open("#/round");
  await log(keeper, 2, "topped_up");
  await keeper.until("hive 2 is logged", async () => (await entries(keeper)).filter(({ what }) => what.check).length === 3);
  await takeIn(keeper, theirs);

  await keeper.open("#/book/history");
  const said = plain(await keeper.text(await keeper.waitFor("history-clash")));
  assert.match(said, /say different things.*left (40|60) %.*Keep this.*left (40|60) %.*Keep this/);
  // The one that does not count now.
  await keeper.tap("[data-testid=history-clash] li + li [data-testid=clash-keep]");
  const kept = said.match(/left (\d+) %/g).at(-1);
  await keeper.gone("history-clash");
  await keeper.reads("history-line", new RegExp(`${kept}.*taken back: `));
  await keeper.reload();
  await keeper.reads("history-line", new RegExp(`${kept}.*taken back: `));
  assert.ok(!(await keeper.shows("history-clash")), "decided is decided");

  // One check of hive 2, logged by two people.
  assert.equal((await keeper.all("history-double")).length, 2);
  const line = (await entries(keeper)).find(({ what, day }) => what.check && day === "2026-07-11");
  await keeper.open(`#/hive/${line.what.check.hive}`);
  await keeper.reads("hive-double", /Possible double/);
  const before = (await entries(keeper)).length;
  await atOnce(keeper, "history-both");
  await keeper.gone("hive-double");
  assert.equal((await entries(keeper)).length, before + 2, "two taps at once decide once");
  await keeper.reload();
  assert.ok(!(await keeper.shows("hive-double")));
  await other.end();
});
