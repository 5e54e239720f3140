import { setClock } from "../house/dates.mjs";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { entries, keepYard, onTheDay } from "../house/round.mjs";
import { typeTime } from "../house/tour.mjs";

const ON = { faults: { clock: "2026-07-14T16:00" } };
const records = async (keeper) => (await entries(keeper)).filter((entry) => entry.what.record);

const unfold = (keeper) => keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));

/** Six supers, off at four in the afternoon, in a room of 28 °C. */
async function pulled(keeper) {
  await keeper.open("#/write/harvest");
  await typeTime(keeper, "write-bees_off", "2026-07-14T16:00");
  await keeper.type("#write-supers", "6");
  await unfold(keeper);
  await keeper.type("#write-room", "28");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 1);
}

journey("the phone slept through the night, and the honey clock shows the hours that went by", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await pulled(keeper);
  await keeper.open("#/beetle/honey");
  await keeper.reads("stack", /Orchard, 6 supers/);
  await keeper.reads("stack-big", /^0 h 0\d min gone, 2[34] h \d\d min to the goal$/);
  // The hour to spin by is the cautious one; the typed part below is about another stack.
  await keeper.reads("stack-by", /^Spin by .*15.*, 16:00$/);
  await keeper.reads("stack", /The goal decides\./);
  await keeper.reads("honey-typed", /^For another stack, from typed figures$/);
  const said = plain(await keeper.text("stack"));
  assert.match(said, /Goal: .*15.*, 16:00, in 2[34] h/);
  assert.match(said, /Limit: .*16.*, 16:00, in 4[78] h/);
  assert.match(said, /Eggs laid last may hatch: .*16.*, 00:\d\d/);
  assert.match(said, /about 32 h in this room; 25 to 64 h/);
  // Nothing ran meanwhile: it is looked at again after nine and a half hours, and after thirty.
  await setClock(keeper, 9.5 / 24);
  await keeper.reads("stack-big", /^9 h 3\d min gone, 14 h (30|2\d) min to the goal$/);
  await setClock(keeper, (30 - 9.5) / 24);
  await keeper.reads("stack-big", /^30 h 0\d min gone, 1[78] h \d\d min to the limit$/);
  await keeper.reads("stack", /The goal is over\. Spin now\./);
  // The battery was empty: the page is opened anew on the third day.
  await onTheDay(keeper, "2026-07-16T18:30");
  await keeper.open("#/beetle/honey");
  await keeper.reads("stack-big", /^50 h 3\d min gone, 2 h 3\d min past the limit$/);
  await keeper.reads("main", /Slimed honey is not for people or bees\./);
  // Two weeks later it is old, and the key to its hours is still there.
  await onTheDay(keeper, "2026-07-29T18:30");
  await keeper.open("#/beetle/honey");
  await keeper.gone("[data-testid=stack]");
  await keeper.reads("main", /Orchard.?, 6 supers, since .*14.*: write down its hours/);
  await keeper.tap("main a[href^='#/write/harvest/']");
  await keeper.one("#write-extraction_ended");
});

journey("the hours of her supers go into her calendar, and once they are spun they are taken back", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await pulled(keeper);
  await keeper.open("#/book");
  await watchFiles(keeper);
  const lot = async (count) => {
    await unfold(keeper);
    await keeper.tap("calendar-save");
    const file = (await savedFiles(keeper, count)).at(-1);
    const events = file.text.split("BEGIN:VEVENT").slice(1).filter((event) => /^DTSTART:/m.test(event));
    assert.equal(events.length, 1);
    return events[0];
  };
  const utc = (local) => keeper.driver.run((local) => new Date(local).toISOString().replace(/\.\d+|[-:]/g, ""), local);
  const event = await lot(1);
  assert.ok(event.includes(`DTSTART:${await utc("2026-07-15T16:00")}\r\nDTEND:${await utc("2026-07-16T16:00")}\r\nSUMMARY:Orchard: spin 6 supers\r\n`), event);
  assert.match(event, /SEQUENCE:0[^]*TRIGGER:-PT6H/);

  const line = (await records(keeper))[0].id;
  await keeper.open("#/beetle/honey");
  await keeper.tapWords("Write down what was done", "[data-testid=stack]");
  await keeper.one("#write-extraction_ended");
  await typeTime(keeper, "write-extraction_ended", "2026-07-14T16:00");
  await keeper.tap("write-save");
  await keeper.until("it is corrected", async () => (await entries(keeper)).some((entry) => JSON.stringify(entry).includes(line) && entry.id !== line));
  await keeper.open("#/beetle/honey");
  await keeper.reads("stack-big", /^Back within 2[34] h \d\d min$/);
  await keeper.open("#/book");
  await watchFiles(keeper);
  assert.match(await lot(1), /SEQUENCE:1[^]*STATUS:CANCELLED/);
});

journey("with nothing written down she types a room and an extractor and knows how many supers to pull", ON, async (keeper) => {
  await keeper.open("#/beetle/honey");
  await keeper.one("no-stack");
  await keeper.reads("honey-typed", /^From typed figures$/);
  await keeper.reads("spin-by", /15.*, 16:0\d$/);
  await keeper.reads("main", /The goal decides\./);
  await keeper.reads("supers", /^8 supers$/);
  // Her goal comes later than the earliest hatch, and then behind the limit.
  await keeper.type("#honey-goal", "40");
  await keeper.reads("spin-by", /15.*, 17:\d\d$/);
  await keeper.reads("main", /The earliest hatch decides/);
  await keeper.type("#honey-goal", "60");
  await keeper.reads("#honey-goal-says", /The goal lies behind the limit/);
  await keeper.reads("spin-by", /^–$/);
  await keeper.type("#honey-goal", "24");
  await keeper.type("#honey-room", "10");
  await keeper.reads("main", /No hatch at this temperature\. The beetles are still alive\./);
  await keeper.reads("spin-by", /15.*, 16:0\d$/);
  await keeper.type("#honey-room", "-80");
  await keeper.reads("#honey-room-says", /No soil, comb or room of bees is as cold/);
  await keeper.type("#honey-room", "95");
  await keeper.reads("#honey-room-says", /Did you mean 95 °F/);
  await keeper.reads("spin-by", /^–$/);
  await keeper.type("#honey-room", "38");
  await keeper.reads("main", /few eggs live/);
  await keeper.type("#honey-low", "40");
  await keeper.reads("#honey-low-says", /Warmer than at its warmest/);
  // Uncapping becomes what holds it up: five minutes a frame.
  await keeper.type("#honey-uncap", "300");
  await keeper.reads("supers", /^6 supers$/);
  await keeper.reads("main", /Uncapping is the slower/);
  await keeper.type("#honey-work", "1");
  await keeper.reads("supers", /^None: no time left$/);
});

journey("her own goal and limit stand in the caution, and a goal behind the limit is refused", ON, async (keeper) => {
  await keeper.open("#/beetle/honey");
  await keeper.reads("main", /Spin within 24 h; 48 h at the most\./);
  await keeper.open("#/write/aims");
  await keeper.type("#write-goal_hours", "60");
  await keeper.type("#write-limit_hours", "24");
  await keeper.tap("write-save");
  await keeper.reads("#write-goal_hours-says", /The goal lies behind the limit/);
  assert.equal((await records(keeper)).length, 0);
  await keeper.type("#write-goal_hours", "12");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 1);
  await keeper.open("#/beetle/honey");
  await keeper.reads("main", /Your goal: 12 h, your limit: 24 h\./);
  await keeper.type("#honey-goal", "13");
  await keeper.reads("main", /Lots that are written down go by 12 h and 24 h\./);
});

journey("somebody has begun to spin, and the card asks for the end", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await pulled(keeper);
  await onTheDay(keeper, "2026-07-17T12:00");
  await keeper.open("#/beetle/honey");
  await keeper.reads("stack", /The limit is over\. Spin now/);
  await keeper.tapWords("Write down what was done", "[data-testid=stack]");
  await typeTime(keeper, "write-extraction_began", "2026-07-17T10:30");
  await keeper.tap("write-save");
  await keeper.until("it is corrected", async () => (await records(keeper)).length > 1);
  await keeper.open("#/beetle/honey");
  await keeper.reads("stack-big", /^Being spun since .*17.*, 10:30; write down the end$/);
  await keeper.gone("[data-testid=stack-by]");
});
