import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, unfold } from "../house/round.mjs";
import { clearPages, clearSecond } from "../house/storage.mjs";

const SHOWS = /only shows the book/;
const records = async (keeper) =>
  Object.fromEntries(Object.entries(await keeper.kept()).filter(([key]) => /^beetle-almanac:(page|desk):/.test(key)));

/** Something is tried that would write: the page says what is the matter, and offers the way out. */
async function refused(keeper, what, attempt) {
  await attempt();
  await keeper.reads(".messages", SHOWS);
  assert.ok(await keeper.shows("wanted-write-again"), what);
}

journey("she handed her phone over: whatever was tapped, nothing was written until she let it write again", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [file] = await savedFiles(keeper, 1);
  const path = join(keeper.engine.home, file.name);
  writeFileSync(path, file.text.replaceAll('"Orchard"', '"Orchards"'));
  await keeper.place("round");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  await keeper.reads("kept", /Saved/);
  await keeper.place("book");
  await keeper.tap("hands-show");
  await keeper.reads("only-shows", /nothing can be written.*can read it/i);
  const before = await records(keeper);

  await keeper.place("round");
  await refused(keeper, "undo", () => keeper.tap("undo"));
  await keeper.place("load");
  await keeper.place("round");
  // On a small screen an open hive has the place of the bar and of what is said above it.
  await log(keeper, 2, "topped_up");
  await keeper.reads("refusal", SHOWS);
  assert.ok(await keeper.shows("panel-write-again"));
  assert.equal(await keeper.shows("unsaved-notice"), false, "nothing is held for later either");
  await keeper.reload();
  await keeper.reads("only-shows", SHOWS);

  await unfold(keeper, "season");
  await refused(keeper, "the season", () => keeper.tap("season-go"));
  await keeper.place("load");
  await keeper.place("round");
  await refused(keeper, "the rest as usual", async () => {
    await keeper.tap("rest-as-usual");
    await keeper.tapCalmly("rest-confirm");
  });
  await keeper.tap("dialog[open] .sheet-head button");
  await keeper.place("bench");
  await refused(keeper, "another yard", async () => {
    await keeper.tap("bench-keep");
    await keeper.type("keep-name", "Hill");
    await keeper.tap("keep-save");
  });
  await keeper.place("book");
  await refused(keeper, "the label of the phone", async () => {
    await keeper.type("#phone-label", "Ann");
    await keeper.tap("label-save");
  });
  await keeper.place("round");
  await keeper.place("book");
  await refused(keeper, "the demonstration", () => keeper.tap("demo-fill"));
  await keeper.place("round");
  await keeper.open("#/book/history");
  await refused(keeper, "a strike", async () => {
    await keeper.tap("[data-testid=history-line] button");
    await keeper.tapCalmly("history-strike");
  });
  await keeper.place("round");
  await keeper.open("#/book/kinds");
  await refused(keeper, "a kind of trap", () => keeper.tap("kind-retire"));
  assert.deepEqual(await records(keeper), before);

  // A tab that is open beside it hears of it.
  const first = await keeper.driver.window();
  const second = await keeper.newTab("#/round");
  await keeper.reads("only-shows", SHOWS);
  await keeper.turnTo(first);
  await keeper.place("round");
  await keeper.tap("write-again");
  await keeper.gone("only-shows");
  await keeper.turnTo(second);
  await keeper.gone("only-shows");
  await keeper.turnTo(first);
  const lines = (await entries(keeper)).length;
  await log(keeper, 2, "topped_up");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  assert.equal((await entries(keeper)).length, lines + 1);
});

journey("a helper opened a file on a phone that only shows the book: it can be looked into and is not taken in", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [file] = await savedFiles(keeper, 1);
  const path = join(keeper.engine.home, file.name);
  writeFileSync(path, file.text);
  await clearPages(keeper);
  await clearSecond(keeper);
  await keeper.reload();
  await keeper.place("book");
  await keeper.tap("hands-show");
  await keeper.one("only-shows");
  const before = await keeper.pages();
  await keeper.pick("book-restore", path);
  await keeper.one("restore-preview");
  await keeper.tapCalmly("restore-confirm");
  await keeper.reads("restore-result", SHOWS);
  assert.deepEqual(await keeper.pages(), before);
  await keeper.tap("hands-write");
  await keeper.pick("book-restore", path);
  await keeper.tapCalmly("restore-confirm");
  await keeper.reads("restore-result", /Restored/);
});
