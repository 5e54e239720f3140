import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, onTheDay, rows, unfold } from "../house/round.mjs";

const ON = { faults: { clock: "2026-07-01T09:00" } };

/** Opens the fields of the line whose words fit. */
const correct = async (keeper, words) => {
  await keeper.open("#/book/history");
  const line = await keeper.until(`a line ${words}`, async () => {
    const texts = await keeper.driver.run(() =>
      [...document.querySelectorAll("[data-testid=history-line]")].map((line) => line.innerText),
    );
    return texts.findIndex((text) => words.test(text)) + 1;
  });
  const at = `[data-testid=history-line]:nth-of-type(${line})`;
  await keeper.tap(`${at} button`);
  await keeper.tap(`${at} [data-testid=history-edit]`);
};

journey("she named the yard wrong, and a month later she corrects the line that brought it: every hive is still there", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3, "Orchad");
  await onTheDay(keeper, "2026-07-29T09:00");
  const before = await entries(keeper);
  await correct(keeper, /Orchad/);
  assert.equal(await keeper.value("edit-first"), "Orchad");
  assert.equal(await keeper.shows("edit-day"), false, "what brought a yard comes first whatever its day");
  const zone = await keeper.value("edit-second");
  await keeper.type("edit-first", " ");
  await keeper.tap("edit-save");
  await keeper.reads("#edit-first-says", /./);
  await keeper.type("edit-first", "Orchard");
  await keeper.type("edit-second", "Europa/Nowhere");
  await keeper.reads("#edit-second-says", /No such zone on this phone: .?Europa\/Nowhere/);
  await keeper.tap("edit-save");
  assert.equal((await entries(keeper)).length, before.length, "nothing is written");
  await keeper.type("edit-second", zone);
  await keeper.reads("shifts", /No due date changes/);
  await keeper.tap("edit-save");
  await keeper.until("the correction is written", async () => (await entries(keeper)).length === before.length + 1);
  const kept = new Set((await entries(keeper)).map((entry) => JSON.stringify(entry)));
  for (const entry of before) assert.ok(kept.has(JSON.stringify(entry)), "nothing is ever rubbed out");
  await keeper.reads("main", /Orchard.*was: .*Orchad/);
  await keeper.place("round");
  await keeper.reads("main", /Orchard/);
  assert.equal((await rows(keeper)).length, 3);
});

journey("she typed 14 days for a kind of trap and meant 7: she corrects it in the form of the kind and sees which dates move", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const before = (await entries(keeper)).length;
  await correct(keeper, /kind of trap|trap kind|New kind/i);
  await keeper.until("it stands there as it was written", async () => (await keeper.value("kind-days")) === "14");
  await keeper.type("kind-days", "7");
  await keeper.reads("shifts", /This changes 2 due dates/);
  await keeper.tap("kind-save");
  await keeper.until("the correction is written", async () => (await entries(keeper)).length === before + 1);
  const line = (await entries(keeper)).find(({ replaces }) => replaces);
  assert.equal(line.what.kind.max_days, 7);
  await keeper.until("the history is shown", () => keeper.driver.run(() => location.hash === "#/book/history"));
});

journey("the order of the walk, a setting and how a hive ended are corrected in fields of their own", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await unfold(keeper, "order");
  await keeper.tap("[data-testid=later]");
  await keeper.until("an order is written", async () => (await entries(keeper)).some(({ what }) => what.order));
  await correct(keeper, /order/i);
  await keeper.tap("[data-testid=edit-walk] li:last-of-type button");
  await keeper.tap("edit-save");
  await keeper.until("it is corrected", async () => (await entries(keeper)).some(({ what, replaces }) => what.order && replaces));
  const orders = (await entries(keeper)).filter(({ what }) => what.order);
  const [first, second] = orders.sort((a, b) => (a.replaces ? 1 : 0) - (b.replaces ? 1 : 0)).map(({ what }) => what.order.hives);
  assert.deepEqual(second, [first[0], first[2], first[1]]);

  await keeper.place("load");
  await keeper.driver.run(() => document.querySelectorAll("details").forEach((part) => (part.open = true)));
  await keeper.type("load-reserve", "52 %");
  await keeper.tap("load-set");
  await keeper.until("it is set", async () => (await entries(keeper)).some(({ what }) => what.keeper));
  await correct(keeper, /52/);
  await keeper.type("edit-first", "25 %");
  await keeper.tap("edit-save");
  await keeper.until("it is corrected", async () => (await entries(keeper)).some(({ what }) => what.keeper?.reserve === 25));

  await keeper.open(`#/hive/${first[0]}`);
  await unfold(keeper, "end");
  await keeper.tapWords("Sold", "[data-testid=end]");
  await keeper.tapCalmly("end-go");
  await keeper.until("it is ended", async () => (await entries(keeper)).some(({ what }) => what.hive_ended));
  await correct(keeper, /sold/i);
  await keeper.driver.run(() => {
    const chooser = document.querySelector("#edit-first");
    chooser.value = "3";
    chooser.dispatchEvent(new Event("change", { bubbles: true }));
  });
  await keeper.tap("edit-save");
  await keeper.until("it is corrected", async () => (await entries(keeper)).some(({ what }) => what.hive_ended?.how === "gone"));
});
