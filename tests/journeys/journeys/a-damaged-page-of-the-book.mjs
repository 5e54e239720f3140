import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { due, keepYard, log, onTheDay } from "../house/round.mjs";
import { damage, sayOtherwise } from "../house/storage.mjs";

journey("one page of the book was damaged: the page says so, keeps the bytes and reads all others", { faults: { clock: "2026-07-01T09:00", second: "none" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  const key = Object.keys(await keeper.pages()).find((key) => key.endsWith("2026-07-15"));
  const others = await keeper.pages();
  delete others[key];
  const damaged = await damage(keeper, key);

  await onTheDay(keeper, "2026-07-15T09:30");
  await keeper.reads("damaged-notice", /1 page of the book could not be read/);
  assert.equal(await due(keeper, 1), "today", "what the damaged page said is not guessed at");
  const now = await keeper.pages();
  assert.equal(now[key], damaged, "the bytes are kept as they are");
  for (const [other, text] of Object.entries(others)) assert.equal(now[other], text);

  await watchFiles(keeper);
  const yard = await keeper.driver.run(() => location.hash);
  await keeper.tap("[data-testid=damaged-notice] a");
  await keeper.tap("aside-save");
  const [file] = await savedFiles(keeper, 1);
  assert.ok(file.text.includes(damaged), "the file holds the damaged bytes");

  await keeper.driver.back();
  await keeper.until("the yard is shown again", () => keeper.driver.run((yard) => location.hash === yard, yard));
  // Writing goes on beside the damaged page, never over it.
  await log(keeper, 2, "topped_up");
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
  await keeper.reload();
  assert.equal(await due(keeper, 2), "later");
  assert.equal((await keeper.pages())[key], damaged);
});

journey("one page was damaged and its second copy was not: nothing is missing, and the bytes are kept", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.reads("kept", /Saved/);
  const key = Object.keys(await keeper.pages()).find((key) => key.endsWith("2026-07-15"));
  const damaged = await damage(keeper, key);

  await onTheDay(keeper, "2026-07-15T09:30");
  await keeper.reads("damaged-notice", /1 page of the book could not be read/);
  await keeper.reads("restored-notice", /1 entry of your book .*came back/);
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  assert.equal((await keeper.pages())[key], damaged, "the bytes are kept as they are");
  await keeper.tap("restored-away");
  await keeper.gone("restored-notice");
  await keeper.reload();
  await keeper.until("hive 1 is done still", async () => (await due(keeper, 1)) === "later");
  assert.equal(await keeper.shows("restored-notice"), false, "it came back once");
});

journey("a page lies here twice with different words: she is told so, sees both, and saves the other as a file", { faults: { clock: "2026-07-01T09:00", second: "none" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-15T09:00");
  await log(keeper, 1, "topped_up");
  await keeper.until("hive 1 is done", async () => (await due(keeper, 1)) === "later");
  const key = Object.keys(await keeper.pages()).find((key) => key.endsWith("2026-07-15"));
  const other = await sayOtherwise(keeper, key, "topped_up", "replaced");

  await onTheDay(keeper, "2026-07-15T09:30");
  await keeper.reads("damaged-notice", /1 page of the book lies here twice, with different words/);
  assert.equal(/could not be read/.test(await keeper.text("damaged-notice")), false);
  await watchFiles(keeper);
  await keeper.tap("[data-testid=damaged-notice] a");
  await keeper.reads("main", /Twice, with different words/);
  await keeper.reads("main", /In the book: Hive .?1.?: topped up.*On this page: Hive .?1.?: .*replaced/);
  await keeper.reads("main", /To keep both, save the page as a file/);
  await keeper.tap("aside-save");
  const [file] = await savedFiles(keeper, 1);
  assert.ok(file.text.includes(other), "the file holds the other words");
});
