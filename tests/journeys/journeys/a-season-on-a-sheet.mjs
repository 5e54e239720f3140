import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard } from "../house/round.mjs";

const CLOCK = { faults: { clock: "2026-07-14T09:00" } };

journey("she shows the club what the season came to, for one yard and then for fewer days", CLOCK, async (keeper) => {
  await keeper.open();
  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.driver.go(`${keeper.host.address}#/book/season`);
  const said = await keeper.reads(".paper", /Ferry Field/);
  assert.match(said, /At the start 0 hives, at the end 24 hives/);
  assert.match(said, /Hives lost or given away\s+None written down\./);
  assert.match(said, /93 visits to 24 hives; left for now once/);
  assert.match(said, /median 14 days, longest 14 days; on time 69 of 69 \(100 %\)/);
  assert.match(said, /Not counted on 69 of 93 visits; level not read on 31 of 93\./);
  // 277 beetles in 2758 trap-days, as counted by hand from the demonstration; limits 8.9 to 11.3, rounded outward.
  assert.match(said, /Beetles for 100 trap-days: 10 \(8\.8 to 12\)/);
  assert.match(said, /A year earlier: not enough data: 0.counts in 0.trap-days/);
  assert.match(said, /Nothing to compare yet\. Nothing is set beside it/);
  assert.match(said, /Traps count trapped beetles, not all beetles\./);
  assert.match(said, /walking order, not by their catch/);
  const tags = await keeper.driver.run(() =>
    [...document.querySelectorAll(".paper-table tbody td:first-child")].map((cell) => cell.textContent.replace(/[\u2066-\u2069]/g, "")));
  assert.deepEqual(tags.slice(0, 3).concat(tags.at(-1)), ["1", "2", "3", "24 nuc"]);
  // The demonstration bought nothing: what is missing is named and nothing is guessed.
  assert.match(said, /For one hive and the time above: –/);
  assert.match(said, /Left out, trips: nobody wrote down what one costs/);
  assert.match(said, /When it pays: write down what a colony is worth/);
  assert.match(said, /Nothing written down for next year in these days\./);
  assert.match(said, /Oil filled in: .* to /);
  assert.equal(await keeper.driver.run(() => document.querySelectorAll(".paper-table tbody tr").length), 24);
  assert.doesNotMatch(said, /barrow/, "no notes");
  await watchFiles(keeper);
  await keeper.tap("sheet-save");
  const [file] = await savedFiles(keeper, 1);
  assert.match(file.name, /^season-report-2026-07-14\.html$/);
  await keeper.driver.run(() => {
    const field = document.querySelector("#paper-from");
    field.value = "2026-07-01";
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await keeper.reads(".paper", /At the start 24 hives, at the end 24 hives/);
  await keeper.reads(".paper", /No trap work is written down for these days/);
});

journey("a hive died; she writes down why and what she will do next year, and her notes are on the sheet only while she ticks them", CLOCK, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const hive = (await entries(keeper)).find(({ what }) => what.hive).id;
  await keeper.host.stop();
  const note = async (text) => {
    await keeper.driver.run(() => document.querySelectorAll("details").forEach((more) => (more.open = true)));
    await keeper.type("#write-note", text);
    await keeper.tap("write-save");
    await keeper.gone("write-save");
  };
  await keeper.driver.go(`${keeper.host.address}#/write/dead_out/${hive}`);
  await keeper.tapWords("starved", ".write-form");
  await note("no candy left");
  await keeper.driver.go(`${keeper.host.address}#/book/season`);
  await keeper.reads(".paper", /Nothing written down for next year in these days\./);
  await keeper.tap("season-verdict");
  await keeper.type("#write-about", "Traps in the second box");
  await keeper.tapWords("change it", ".write-form");
  await note("four, not two");
  await keeper.driver.go(`${keeper.host.address}#/book/season`);
  const said = await keeper.reads(".paper", /Traps in the second box: change it/);
  assert.match(said, /dead-out written down, but the book has it in care; starved/);
  assert.match(said, /Causes are as they were written down: none is guessed\./);
  assert.doesNotMatch(said, /candy|four, not two/, "no notes");
  await keeper.tapWords("With my own notes", "main");
  const noted = await keeper.reads(".paper", /four, not two/);
  assert.match(noted, /no candy left/);
  await watchFiles(keeper);
  await keeper.tapWords("With my own notes", "main");
  await keeper.until("the notes are gone", async () => !/candy|four, not two/.test(await keeper.text(".paper")));
  await keeper.tap("sheet-save");
  const [file] = await savedFiles(keeper, 1);
  assert.doesNotMatch(file.text, /candy|four, not two/, "none in the file either");
  await keeper.tap("season-catch");
  await keeper.one("catch-none");
});
