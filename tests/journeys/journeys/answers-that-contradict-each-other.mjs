import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, onTheDay, unfold } from "../house/round.mjs";
import { typeTime } from "../house/tour.mjs";

const ON = { faults: { clock: "2026-07-14T16:00" } };
const records = async (keeper) => (await entries(keeper)).map((entry) => entry.what.record).filter(Boolean);
const here = (keeper) => keeper.driver.run(() => location.hash);


journey("the room had 95 °C, was cooler than at its coolest, and the bees were off an hour from now: each is said beside its field", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await keeper.open("#/write/harvest");
  await typeTime(keeper, "write-bees_off", "2026-07-14T17:00");
  await keeper.reads("#write-bees_off-says", /has not come yet/);
  // The warmth of the room is asked for in sight.
  await keeper.type("#write-room", "95");
  await keeper.reads("#write-room-says", /^95 °C\? Did you mean 95 °F \(35 °C\)\?/);
  await keeper.tap("write-save");
  assert.deepEqual(await records(keeper), []);
  await typeTime(keeper, "write-bees_off", "2026-07-14T15:30");
  await keeper.type("#write-room", "28");
  await keeper.tapWords("More fields", "main");
  await keeper.type("#write-room_low", "29");
  await keeper.reads("#write-room_low-says", /above the warmth of the room/);
  await keeper.tap("write-save");
  await keeper.until("the focus is on it", () => keeper.driver.run(() => document.activeElement.id === "write-room_low"));
  assert.deepEqual(await records(keeper), []);
  await keeper.type("#write-room_low", "22");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 1);

  // What was done since is written down from the honey page, and she is back there.
  await keeper.open("#/beetle/honey");
  await keeper.tapWords("Write down what was done", "[data-testid=stack]");
  await typeTime(keeper, "write-into_room", "2026-07-14T15:45");
  await keeper.tap("write-save");
  await keeper.until("it is corrected", async () => (await records(keeper)).length === 2);
  await keeper.until("she is where she was", async () => (await here(keeper)) === "#/beetle/honey");
});

journey("larvae left by the entrance are two taps, and a size of larvae that are not there is asked about", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const hive = (await entries(keeper)).find((entry) => entry.what.hive).id;
  await keeper.open(`#/hive/${hive}`);
  await keeper.open(`#/write/look/${hive}`);
  await keeper.reads("main", /Only saw the entrance\? Choose “not looked”/);
  const under = await keeper.driver.run(() => {
    const top = (css) => document.querySelector(css).getBoundingClientRect().top;
    const entrance = document.querySelector("[data-testid=write-entrance]");
    return !entrance.closest("details") && top('[name="write-slime"]') < top("[data-testid=write-entrance]") && top("[data-testid=write-entrance]") < top("#write-adults");
  });
  assert.ok(under, "the entrance stands under the slime, and not in the fold");
  await keeper.tapWords("none", "main .write-form");
  await keeper.tapWords("tiny", "main .write-form");
  await keeper.reads("#write-larvae_size-says", /wrote that there are none/);
  await keeper.tap("write-save");
  assert.deepEqual(await records(keeper), []);
  await keeper.tapWords("not looked", "main .write-form");
  await keeper.reads("#write-larvae_size-says", /did not look/);
  await keeper.tapWords("left empty", "main .write-form");
  await keeper.tapWords("larvae leaving", "main .write-form");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 1);
  assert.deepEqual((await records(keeper))[0].answers, { larvae: "not_looked", entrance: ["larvae_leaving"] });

  // Corrected from the page of the hive, it leads back to that page.
  await keeper.open(`#/hive/${hive}`);
  const line = await keeper.driver.run(() => {
    const lines = [...document.querySelectorAll("[data-testid=history-line]")];
    return lines.findIndex((line) => /not looked/.test(line.innerText)) + 1;
  });
  await keeper.tap(`[data-testid=history-line]:nth-of-type(${line}) button`);
  await keeper.tap(`[data-testid=history-line]:nth-of-type(${line}) [data-testid=history-edit]`);
  await keeper.type("#write-adults", "7");
  await keeper.tap("write-save");
  await keeper.until("it is corrected", async () => (await records(keeper)).length === 2);
  await keeper.until("she is where she was", async () => (await here(keeper)) === `#/hive/${hive}`);
});

journey("no rain is nothing to write down, an empty field is rain by its day, and comb with larvae has a caution", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await onTheDay(keeper, "2026-07-20T09:00");
  const all = await entries(keeper);
  const yard = all.find((entry) => entry.what.yard).id;
  const hive = all.find((entry) => entry.what.hive).id;
  await keeper.open(`#/write/rain/${yard}`);
  await keeper.reads("main", /From this day on the ground counts as moist\./);
  await keeper.type("#write-rain", "0");
  await keeper.reads("#write-rain-says", /No rain: nothing to write down/);
  await keeper.tap("write-save");
  assert.deepEqual(await records(keeper), []);
  await keeper.type("#write-rain", " ");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 1);

  await keeper.open(`#/write/comb/${hive}`);
  await keeper.type("#write-frames", "2");
  await keeper.tapWords("another hive", "main .write-form");
  await keeper.gone("comb-caution");
  await keeper.tapWords("larvae", "main .write-form");
  await keeper.reads("comb-caution", /give it to no hive/);
  // A caution, and no more: what was done is written down.
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 2);
});
