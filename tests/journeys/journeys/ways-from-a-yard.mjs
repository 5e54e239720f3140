import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, unfold } from "../house/round.mjs";

journey("from her second yard she prints its truck sheet, looks at its trap and finds the way to all yards above the list", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Home");
  await keepYard(keeper, 3, "Hill");
  await keeper.tapWords("Print: truck sheet");
  await keeper.reads(".paper h2", /^Hill, /);
  assert.match(await keeper.driver.run(() => location.hash), /^#\/book\/truck-sheet\/[\w-]+$/);
  assert.equal(await keeper.driver.run(() => document.querySelectorAll(".paper tbody tr").length), 3);
  // And back to the yard it is of.
  await keeper.tap(".back a");
  await keeper.reads("main h1", /^Hill$/);

  await keeper.tap("yard-kind");
  await keeper.one("kind-save");
  await keeper.driver.run(() => history.back());
  await keeper.reads("main h1", /^Hill$/);
  const above = await keeper.driver.run(() => {
    const way = [...document.querySelectorAll("main .back a")].find((key) => key.textContent === "All yards");
    return way.getBoundingClientRect().bottom <= document.querySelector(".rows").getBoundingClientRect().top;
  });
  assert.ok(above, "the way to all yards stands above the hives");
  await keeper.tapWords("All yards");
  await keeper.until("both yards are listed", async () => (await keeper.all("yard")).length === 2);
});

journey("she renames a yard: whose clock counts is said only where it is another than the phone's", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Home");
  await unfold(keeper, "rename-yard");
  await keeper.one("#yard-name");
  const said = await keeper.text("[data-testid=rename-yard]");
  assert.doesNotMatch(said, /clock/i);
});
