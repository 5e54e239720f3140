import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, log, onTheDay, unfold } from "../house/round.mjs";

const hiveId = async (keeper, tag) => (await entries(keeper)).find(({ what }) => what.hive?.tag === `${tag}`).id;

journey("she moved a hive last week: the day is for that move alone, and its work in the old yard is no walk of the new one", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Orchard");
  await onTheDay(keeper, "2026-07-10T09:00");
  await log(keeper, 2, "topped_up");
  await keeper.until("the work is written", async () => (await entries(keeper)).some(({ what }) => what.check));
  await keeper.tap("shut");
  await keepYard(keeper, 1, "Hill");
  const id = await hiveId(keeper, 2);
  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.open(`#/hive/${id}`);
  await keeper.one("#change-day");
  // As the phone's own calendar puts it there; how a date is typed differs from browser to browser.
  await keeper.driver.run(() => {
    const field = document.querySelector("#change-day");
    field.value = "2026-07-12";
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await unfold(keeper, "move");
  await keeper.driver.run(() => {
    const chooser = document.querySelector("#move-to");
    chooser.value = [...chooser.options].find(({ text }) => text === "Hill").value;
    chooser.dispatchEvent(new Event("change", { bubbles: true }));
  });
  await keeper.tap("move-go");
  await keeper.until("the move is written", async () => (await entries(keeper)).some(({ day, what }) => day === "2026-07-12" && what.hive_moved));
  await keeper.until("the day is empty again", async () => (await keeper.value("#change-day")) === "");

  await keeper.place("round");
  const card = (name) =>
    keeper.driver.run((name) => [...document.querySelectorAll("[data-testid=yard]")].find((yard) => yard.innerText.includes(name)).innerText, name);
  await keeper.one("yard");
  assert.match(await card("Hill"), /not walked yet/);
});
