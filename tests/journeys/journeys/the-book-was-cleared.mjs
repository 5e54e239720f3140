import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, entries, keepYard, log, rows } from "../house/round.mjs";
import { clearPages, clearSecond, fill, free } from "../house/storage.mjs";

const byId = (list) => [...list].sort((one, other) => (one.id < other.id ? -1 : 1));

journey("the browser cleared both copies of her book: the page does not start as if new without a word", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.reads("kept", /Saved/);
  assert.ok((await clearPages(keeper)) > 0);
  await clearSecond(keeper);
  await keeper.open();
  await keeper.reads("storage-notice", /A book was here and is gone/);
  await keeper.tap("[data-testid=storage-notice] a");
  await keeper.until("the Book is shown", async () => (await keeper.attribute("nav-book", "aria-current")) === "page");
  assert.ok((await keeper.all("book-restore")).length === 1, "the way back is on offer");
});

journey("the browser cleared one copy of her book: it comes back by itself, and the page says so", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await log(keeper, 1, "topped_up");
  await keeper.reads("kept", /Saved/);
  const book = byId(await entries(keeper));
  const list = await rows(keeper);

  assert.ok((await clearPages(keeper)) > 0);
  await keeper.reload();
  await keeper.reads("restored-notice", new RegExp(`${book.length} entries of your book .*came back`));
  assert.equal(await keeper.shows("storage-notice"), false);
  assert.deepEqual(byId(await entries(keeper)), book);
  await keeper.until("the list is as it was", async () => JSON.stringify(await rows(keeper)) === JSON.stringify(list));

  // The other way round nothing is missing on the screen; the second copy is written anew.
  await keeper.tap("restored-away");
  await clearSecond(keeper);
  await keeper.reload();
  await keeper.until("the list is there", async () => (await rows(keeper)).length === 3);
  await log(keeper, 2, "topped_up");
  await keeper.reads("kept", /Saved/);
  assert.ok((await clearPages(keeper)) > 0);
  await keeper.reload();
  await keeper.reads("restored-notice", new RegExp(`${book.length + 1} entries of your book .*came back`));
  await keeper.until("hive 2 is done", async () => (await due(keeper, 2)) === "later");
});

journey("one copy was cleared and the phone is full: what came back is said to lie in one place only, until there is room for it", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await log(keeper, 1, "topped_up");
  await keeper.reads("kept", /Saved/);
  const book = byId(await entries(keeper));

  assert.ok((await clearPages(keeper)) > 0);
  await fill(keeper);
  await keeper.reload();
  await keeper.reads("restored-notice", new RegExp(`${book.length} entries of your book .*came back.*one place only`));
  assert.deepEqual(await entries(keeper), [], "the phone has taken nothing");
  await keeper.place("book");
  await keeper.reads("keeping", /one place only/);

  await free(keeper);
  await keeper.place("round");
  await log(keeper, 2, "topped_up");
  await keeper.reads("kept", /Saved/);
  await keeper.place("book");
  await keeper.reads("keeping", /in two places/);
  assert.equal((await entries(keeper)).length, book.length + 1);
});
