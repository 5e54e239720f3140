import { SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, log, onTheDay, row } from "../house/round.mjs";
import { typeTime } from "../house/tour.mjs";

const ON = { faults: { clock: "2026-06-01T09:00" } };
const trials = async (keeper) => (await entries(keeper)).filter((entry) => entry.what.record?.blank === "trial");

journey("she asks whether four pairs could ever tell, and how many would", {}, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open("#/bench/trial");
  await keeper.reads("trial-power", /^\d\d %$/);
  await keeper.type("#trial-pairs", "4");
  await keeper.reads("trial-power", /^0 %$/);
  await keeper.reads("#bench-trial-body", /With 4 pairs it can never be told: even all of them going one way comes by chance in 1 of 8 cases/);
  await keeper.reads("#bench-trial-body", /40 pairs: \d\d/);
  await keeper.reads("#bench-trial-body", /Why 8 may tell less often than 6: all of either must go the same way/);
  // A share says how it was read, and the label what a bare number is.
  await keeper.reads("label[for=trial-left]", /\(%\)/);
  await keeper.type("#trial-left", "2");
  await keeper.reads("#trial-left-says", /^= 2 %$/);
  await keeper.type("#trial-left", "0.5");
  await keeper.reads("#trial-left-says", /^= 50 %\. If you mean 0\.5 %, type the sign\.$/);
  await keeper.type("#trial-mean", "5000");
  await keeper.reads("#trial-mean-says", /At most 1000/);
  await keeper.reads("trial-power", /^–$/);
});

journey("she draws a trial by lot, writes it down, and it is not opened before its day", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 13);
  await keeper.open("#/book/catch");
  await keeper.tap("to-trials");
  await keeper.reads("trials", /No trial is written down yet/);
  await keeper.type("#trial-named", "Notch screened");
  await typeTime(keeper, "trial-until", "2026-06-01");
  await keeper.reads("#trial-until-says", /still to come/);
  await typeTime(keeper, "trial-until", "2026-07-13");
  await keeper.tap("trial-draw");
  const lists = plain(await keeper.reads("trial-lists", /With it: .*Without it: .*Hive .* is left over without a partner/s));
  const sides = [...lists.matchAll(/(?:With|Without) it: ([^A-Z]*)/g)].map(([, tags]) => tags.match(/\d+/g).map(Number));
  assert.deepEqual(sides.map((side) => side.length), [6, 6]);
  assert.equal(new Set(sides.flat()).size, 12, "each hive once");
  const pairs = lists.match(/Pairs \(with it – without it\): ([^A-Z]*)/)[1].split(";").map((pair) => pair.match(/\d+/g).map(Number));
  assert.deepEqual([0, 1].map((side) => pairs.map((pair) => pair[side]).sort((a, b) => a - b)), sides, "the pairs are those of the two lists");
  for (const side of sides) assert.deepEqual(side, [...side].sort((a, b) => a - b), "in the order of the walk");
  await keeper.reload();
  await keeper.reads("trial-lists", lists.slice(0, 40));
  // Once drawn, the lists stand, whatever is counted since: only another key, by its name, draws again.
  assert.equal(await keeper.shows("trial-draw"), false, "the key that drew is gone");
  await keeper.open("#/round");
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("count-20");
  await log(keeper, 1, "replaced");
  await keeper.open("#/book/trial");
  assert.equal(plain(await keeper.reads("trial-lists", /left over/)), lists, "as they were drawn");
  let again = lists;
  for (let draws = 0; again === lists && draws < 12; draws++) {
    await keeper.tapWords("Drop these lists and draw again", "main");
    await keeper.until("they are drawn", () => keeper.shows("trial-lists"));
    again = plain(await keeper.text("trial-lists"));
  }
  assert.notEqual(again, lists, "drawn anew when she said so");
  await keeper.tap("trial-write");
  await keeper.reads("trials", /Not opened before .*(13 July|July 13,) 2026/);
  assert.deepEqual((await trials(keeper)).map(({ what }) => what.record.hives.length), [6, 6]);
  assert.equal(await keeper.shows("trial-word"), false, "nothing is shown");
  await keeper.one("trial-draw");
  await onTheDay(keeper, "2026-07-12T09:00");
  await keeper.open("#/book/trial");
  await keeper.reads("trials", /Not opened before/);
  await onTheDay(keeper, "2026-07-13T09:00");
  await keeper.open("#/book/trial");
  await keeper.reads("trial-word", /^It does not tell$/);
  await keeper.reads("trials", /6 pairs without counts on both sides that lie whole in these days, or .*: left out/);
});

journey("she corrects one list of a trial, is told in what the two differ, and corrects the other", ON, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  await keepYard(keeper, 13);
  await keeper.open("#/book/trial");
  await keeper.type("#trial-named", "Notch screened");
  await typeTime(keeper, "trial-until", "2026-07-13");
  await keeper.tap("trial-draw");
  await keeper.tap("trial-write");
  await keeper.reads("trials", /Not opened before/);
  const drawn = (await trials(keeper)).map(({ what }) => what.record.hives);
  const [first] = await trials(keeper);
  await keeper.open(`#/write/trial/${first.id}`);
  await keeper.type("#write-named", "Notch shut");
  await keeper.tap("write-save");
  await keeper.gone("write-save");
  await keeper.open("#/book/trial");
  await keeper.reads("trial-apart", /These two lists do not match.*What is tried: Notch s[a-z]+ – Notch s[a-z]+ Correct/s);
  await keeper.reads("trial-apart", /With it: .*Without it: /s);
  // A hive taken off and set again keeps its place among the pairs.
  await keeper.tapWords("Correct the list: Without it", "main");
  const ticked = () => keeper.driver.run(() => document.querySelector(".tick-rows label:has(:checked)")?.innerText.trim());
  const hive = await keeper.until("the form is drawn", ticked);
  await keeper.tapWords(hive, ".tick-rows");
  await keeper.until("it is taken off", async () => (await ticked()) !== hive);
  await keeper.tapWords(hive, ".tick-rows");
  await keeper.type("#write-named", "Notch shut");
  await keeper.tap("write-save");
  await keeper.gone("write-save");
  // The way leads back to where she came from.
  await keeper.reads("trials", /Notch shut.*Not opened before/s);
  assert.equal(await keeper.shows("trial-apart"), false);
  const mended = (await trials(keeper)).slice(-2);
  assert.deepEqual(mended.map(({ what }) => what.record.hives), drawn, "no pair has changed");
  await keeper.tap("undo");
  await keeper.reads("trial-apart", /What is tried/);
});
