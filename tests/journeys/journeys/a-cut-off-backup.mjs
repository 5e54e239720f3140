import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { Host } from "../house/host.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log, onTheDay } from "../house/round.mjs";
import { pageRoot } from "../house/settings.mjs";

journey("the mail cut her backup off: nothing is taken in, and what can still be read is offered as a copy that says what it is", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await log(keeper, 2, "topped_up");
  const held = (await entries(keeper)).length;
  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [file] = await savedFiles(keeper, 1);
  // Half of the last entry is gone, and all that came after it.
  const path = join(keeper.engine.home, "cut.json");
  writeFileSync(path, file.text.slice(0, file.text.lastIndexOf('{"id"') + 30));

  const old = keeper.host;
  keeper.host = await new Host(pageRoot).start();
  try {
    await keeper.host.change({ faults: { clock: "2026-07-16T09:00" } });
    await keeper.open("#/book");
    await keeper.pick("book-restore", path);
    await keeper.reads("main", /cut off or changed.*Nothing was changed/);
    const said = await keeper.reads("recovered", /may have been changed/);
    assert.match(said, new RegExp(`${held - 1} can be read, 1 cannot. The file says it held ${held}\\b`));
    assert.match(said, /Yards: .?Orchard/);
    assert.deepEqual(await keeper.pages(), {}, "nothing is taken in by itself");

    await watchFiles(keeper);
    await keeper.tap("recovered-file");
    const [copy] = await savedFiles(keeper, 1);
    assert.match(copy.name, /^yard-recovered-2026-07-16\.json$/);
    assert.equal(JSON.parse(copy.text).entries.length, held - 1);
    assert.deepEqual(await keeper.pages(), {});
    const whole = join(keeper.engine.home, copy.name);
    writeFileSync(whole, copy.text);
    await keeper.pick("book-restore", whole);
    await keeper.reads("restore-preview", /by .?a damaged file/);

    await keeper.pick("book-restore", path);
    await keeper.tapCalmly("recovered-take");
    await keeper.reads("restore-result", new RegExp(`Restored: ${held - 1} new`));
    assert.equal((await entries(keeper)).length, held - 1);
    // It is no backup: the page does not count it as one.
    await keeper.place("round");
    await keeper.reads("backup-notice", /./);
  } finally {
    await keeper.host.end();
    keeper.host = old;
  }
});
