import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { Host } from "../house/host.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, log, rows, unfold } from "../house/round.mjs";
import { pageRoot } from "../house/settings.mjs";

/** The whole book as a backup file. */
async function backup(keeper, name) {
  await keeper.open("#/book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [saved] = await savedFiles(keeper, 1);
  const path = join(keeper.engine.home, name);
  writeFileSync(path, saved.text);
  return path;
}

async function takeIn(keeper, path) {
  await keeper.open("#/book");
  await keeper.pick("book-restore", path);
  await keeper.one("restore-confirm");
}

async function addTwelve(keeper) {
  await keeper.place("round");
  await unfold(keeper, "add-hives");
  await keeper.type("#hives-tags", "12");
  await keeper.tap("add-hives-go");
  await keeper.until("12 is listed", async () => (await rows(keeper)).some(({ tag }) => tag === "12"));
}

journey("both phones created hive 12: she is told, says that it is one, and takes it back", {}, async (keeper, t) => {
  await keeper.open();
  await keepYard(keeper, 1);
  const own = keeper.host;
  const other = await new Host(pageRoot).start();
  t.after(() => other.stop());
  const shared = await backup(keeper, "shared.json");
  await addTwelve(keeper);

  keeper.host = other;
  await keeper.open();
  await takeIn(keeper, shared);
  await keeper.tap("restore-confirm");
  await keeper.reads("restore-result", /Restored/);
  await addTwelve(keeper);
  await log(keeper, 12, "topped_up");
  const theirs = await backup(keeper, "theirs.json");

  keeper.host = own;
  await keeper.open();
  await takeIn(keeper, theirs);
  await keeper.reads("restore-preview", /12/);
  await keeper.tap("restore-confirm");
  await keeper.reads("restore-result", /Restored/);
  await keeper.place("round");
  const tags = async () => (await rows(keeper)).map(({ tag }) => tag);
  await keeper.until("12 is listed twice", async () => (await tags()).filter((tag) => tag === "12").length === 2);

  const last = await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=row-open]")].at(-1).dataset.hive ?? null);
  assert.equal(last, null, "no id is shown on a row");
  await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=row-open]")].at(-1).click());
  await keeper.one("panel");
  await keeper.tap("[data-testid=panel] a");
  await keeper.reads("hive-twin", /same tag/);
  await unfold(keeper, "same");
  await keeper.tap("same-go");
  await keeper.gone("hive-twin");
  await keeper.place("round");
  await keeper.until("12 is listed once", async () => (await tags()).filter((tag) => tag === "12").length === 1);
  assert.match((await rows(keeper)).find(({ tag }) => tag === "12").words, /topped up today/);
  await keeper.tap("undo");
  await keeper.until("they are two again", async () => (await tags()).filter((tag) => tag === "12").length === 2);
});
