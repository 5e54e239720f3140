import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard } from "../house/round.mjs";

journey("the browser cleared her book: the page does not start as if new without a word", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  const taken = await keeper.driver.run(() => {
    const pages = Object.keys(localStorage).filter((key) => key.startsWith("beetle-almanac:page:"));
    pages.forEach((key) => localStorage.removeItem(key));
    return pages.length;
  });
  assert.ok(taken > 0);
  await keeper.open();
  await keeper.reads("storage-notice", /A book was here and is gone/);
  await keeper.tap("[data-testid=storage-notice] a");
  await keeper.until("the Book is shown", async () => (await keeper.attribute("nav-book", "aria-current")) === "page");
  assert.ok((await keeper.all("book-restore")).length === 1, "the way back is on offer");
});
