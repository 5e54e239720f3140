import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { Host } from "../house/host.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, rows } from "../house/round.mjs";
import { pageRoot } from "../house/settings.mjs";

const byId = (list) => [...list].sort((one, other) => (one.id < other.id ? -1 : 1));

journey("she saved a file, lost the phone, and had the whole book on a new one", { faults: { clock: "2026-07-01T09:00" } }, async (keeper, t) => {
  await keeper.open();
  await keepYard(keeper, 5);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  const list = await rows(keeper);
  const book = byId(await entries(keeper));

  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [file] = await savedFiles(keeper, 1);
  assert.match(file.name, /2026-07-15.*\.json$/);
  assert.equal(JSON.parse(file.text).entries.length, book.length);
  const path = join(keeper.engine.home, file.name);
  writeFileSync(path, file.text);

  // Another origin is another phone: nothing is kept there.
  const old = keeper.host;
  keeper.host = await new Host(pageRoot).start();
  try {
    await keeper.host.change({ faults: { clock: "2026-07-16T09:00" } });
    await keeper.open("#/book");
    assert.deepEqual(await keeper.pages(), {});
    await keeper.pick("book-restore", path);
    const said = plain(await keeper.text(await keeper.waitFor("restore-preview")));
    assert.match(said, /\b1 yard\b/i);
    assert.match(said, /\b5 hives\b/i);
    assert.match(said, new RegExp(`\\b${book.length}\\b`), "how many entries are new");
    await keeper.until("what was opened is in sight", () =>
      keeper.driver.run(() => {
        const { top } = document.querySelector("[data-testid=restore-preview]").getBoundingClientRect();
        return top >= 0 && top < innerHeight / 2;
      }),
    );
    assert.deepEqual(await keeper.pages(), {}, "nothing changes before she confirms");
    await keeper.tap("restore-confirm");
    await keeper.until("the whole book is there", async () => (await entries(keeper)).length === book.length);
    assert.deepEqual(byId(await entries(keeper)), book);

    // The same file once more: nothing new.
    const pages = await keeper.pages();
    await keeper.pick("book-restore", path);
    await keeper.reads("restore-preview", /\b(0|nothing|no) new\b|nothing new/i);
    assert.deepEqual(await keeper.pages(), pages);

    await onTheDay(keeper, "2026-07-15T09:00");
    await keeper.place("round");
    assert.deepEqual(await rows(keeper), list);
  } finally {
    await keeper.host.end();
    keeper.host = old;
  }
  t.diagnostic(`a book of ${book.length} entries is a file of ${file.text.length} characters`);
});

journey("she took a yard back and saved a file: the file says what stands in it, and that lines are struck out", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 5);
  await keeper.tap("undo");
  await keeper.reads("undo-bar", /Taken back/);
  await keepYard(keeper, 3, "Hill");
  const lines = (await entries(keeper)).length;
  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [file] = await savedFiles(keeper, 1);
  const path = join(keeper.engine.home, file.name);
  writeFileSync(path, file.text);
  await keeper.pick("book-restore", path);
  const said = await keeper.reads("restore-preview", /struck out/);
  assert.match(said, new RegExp(`${lines} entries, [0-9]+ of them struck out: 1 yard, 3 hives`));
  assert.match(said, /Yards: .?Hill/);
  assert.doesNotMatch(said, /Orchard/);
});
