import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

const CLOCK = { faults: { clock: "2026-07-14T09:00" } };

journey("she shows the club what the season came to, for one yard and then for fewer days", CLOCK, async (keeper) => {
  await keeper.open();
  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.driver.go(`${keeper.host.address}#/book/season`);
  const said = await keeper.reads(".paper", /Ferry Field/);
  assert.match(said, /At the start 0 hives, at the end 24 hives/);
  assert.match(said, /Hives no longer in care: none written down\./);
  assert.match(said, /93 visits to 24 hives; left for now once/);
  assert.match(said, /median 14 days, longest 14 days; on time 69 of 69 \(100 %\)/);
  assert.match(said, /Not counted on 69 of 93 visits; level not read on 31 of 93\./);
  // 277 beetles in 2758 trap-days, as counted by hand from the demonstration.
  assert.match(said, /Beetles for 100 trap-days: 10\.0\b(?!–)/);
  assert.match(said, /not enough data/);
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
