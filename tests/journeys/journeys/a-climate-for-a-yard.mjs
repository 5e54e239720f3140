import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard } from "../house/round.mjs";

const ON = { faults: { clock: "2026-07-14T09:00" } };
const records = async (keeper) => (await entries(keeper)).flatMap(({ what }) => what.record ?? []);

journey("she begins with a known place, changes one month, and is told beside the field that a low lies above its high", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1);
  await keeper.open("#/write/climate");
  const months = () =>
    keeper.driver.run(() => [...document.querySelectorAll(".month input")].map(({ value }) => value));
  assert.deepEqual(await months(), Array(24).fill(""), "nothing is filled in for her");
  const choose = (at) =>
    keeper.driver.run((at) => {
      const chooser = document.querySelector("#write-known");
      chooser.selectedIndex = at;
      chooser.dispatchEvent(new Event("change", { bubbles: true }));
    }, at);
  await choose(1);
  await keeper.until("every month has two figures", async () => (await months()).every((figure) => figure !== ""));
  const celsius = (await months()).map(Number);
  assert.match(await keeper.value("write-named"), /station/, "whose figures they are stands with them");
  // In the other degrees they are the same warmth.
  await keeper.tapWords("°F", ".write-form");
  await keeper.until("they are in the other degrees", async () => Number((await months())[0]) !== celsius[0]);
  (await months()).map(Number).forEach((fahrenheit, at) => assert.ok(Math.abs(fahrenheit - (celsius[at] * 1.8 + 32)) <= 0.05 + 1e-9));
  await keeper.tapWords("°C", ".write-form");
  await keeper.until("and back", async () => Number((await months())[0]) === celsius[0]);

  await keeper.type("write-low_2", "45");
  await keeper.reads("#write-low_2-says", /above the high of the month/);
  await keeper.tap("write-save");
  await keeper.until("the focus is on it", () => keeper.driver.run(() => document.activeElement.id === "write-low_2"));
  assert.equal((await records(keeper)).length, 0);
  await keeper.type("write-low_2", "-3,5");
  // What is her own now, another unit leaves alone.
  await keeper.tapWords("°F", ".write-form");
  await keeper.drawn();
  assert.equal(await keeper.value("write-low_2"), "-3,5");
  await keeper.tapWords("°C", ".write-form");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 1);
  const [{ blank, answers }] = await records(keeper);
  assert.equal(blank, "climate");
  assert.deepEqual(answers.low_2, { n: -3.5, unit: "C" });
  assert.equal(Object.keys(answers).length, 25);
  await keeper.open("#/book/records");
  await keeper.reads("records", /Climate of this yard: .*mean highs, January to December: .* °C; mean lows: .*-3\.5/);
  // What is known stands there the next time.
  await keeper.open(`#/write/climate/${(await entries(keeper)).find(({ what }) => what.yard).id}`);
  await keeper.until("it stands in the form", async () => (await keeper.value("write-low_2")) === "-3.5");
});

journey("larvae in a hive: how big they are and whether they are in the soil stand directly under them", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1);
  const hive = (await entries(keeper)).find(({ what }) => what.hive).id;
  await keeper.open(`#/write/look/${hive}`);
  const first = await keeper.driver.run(() =>
    [...document.querySelectorAll(".write-form fieldset legend")].slice(0, 3).map((legend) => legend.innerText),
  );
  assert.deepEqual(first, ["Beetle larvae", "How big the larvae are", "Larvae in the soil in front"]);
  await keeper.tapWords("few", ".write-form");
  await keeper.tapWords("full-grown", ".write-form");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 1);
  assert.deepEqual((await records(keeper))[0].answers, { larvae: "few", larvae_size: "full_grown" });
});
