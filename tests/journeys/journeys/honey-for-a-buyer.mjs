import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { entries, keepYard } from "../house/round.mjs";
import { typeTime } from "../house/tour.mjs";

const ON = { faults: { clock: "2026-07-14T09:00" } };
const records = async (keeper) => (await entries(keeper)).filter((entry) => entry.what.record);

const product = async (keeper, name, day, end) => {
  await keeper.driver.go(`${keeper.host.address}#/write/product`);
  await keeper.type("#write-product", name);
  await keeper.type("#write-amount", "2 each");
  await keeper.type("#write-interval_days", "14");
  await keeper.type("#write-who", "the keeper");
  await typeTime(keeper, "write-day", day);
  if (end) await typeTime(keeper, "write-end", end);
  await keeper.tapWords("Hive 2", ".write-form");
  const before = (await records(keeper)).length;
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === before + 1);
};

journey("a buyer asks for a lot: its hours, and which products were in its hives, struck ones too", ON, async (keeper) => {
  await keeper.open();
  await keeper.driver.go(`${keeper.host.address}#/book/lot`);
  await keeper.reads("main", /No harvest lot is written down yet/);
  await keepYard(keeper, 3);
  await product(keeper, "Strips", "2026-07-14");
  await product(keeper, "Pads", "2026-07-14", "2026-07-14");
  // What was struck out is struck through on the sheet, and not left out of it.
  await keeper.open("#/book/history");
  await keeper.tap("[data-testid=history-line] button");
  await keeper.tapCalmly("history-strike");
  await keeper.open("#/write/harvest");
  await typeTime(keeper, "write-bees_off", "2026-07-14T01:00");
  await typeTime(keeper, "write-extraction_began", "2026-07-14T08:05");
  await keeper.tapWords("Hive 2", ".write-form");
  await keeper.type("#write-supers", "4");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await records(keeper)).length === 3);

  await keeper.open("#/book/records");
  await keeper.tap("lot-sheet");
  await keeper.reads(".paper", /Lot 20260714-/);
  const said = plain(await keeper.reads(".paper", /Products applied/));
  assert.match(said, /From: Orchard, Hives 2/);
  assert.match(said, /Supers: 4/);
  assert.match(said, /Honey: not written down/);
  assert.match(said, /Into the room at[^]*not written down/);
  assert.match(said, /7 h 05 min/);
  assert.match(said, /Strips[^]*not verified[^]*still in the hives/);
  assert.match(said, /Pads \(struck out\)/);
  // Nothing is worked out from words that do not count.
  assert.doesNotMatch(said, /NOT over/);
  assert.match(await keeper.driver.run(() => document.querySelector(".paper del").innerText), /Pads/);
  assert.match(said, /As written down by the keeper; this page judges neither product nor honey\./);
  assert.doesNotMatch(said, /safe|fit for|approved/i);

  await watchFiles(keeper);
  await keeper.tap("sheet-save");
  const [file] = await savedFiles(keeper, 1);
  assert.match(file.name, /^honey-lot-2026-07-14\.html$/);
});

journey("by ear: a choice, a box to tick and a chooser that are needed have the focus, and say so", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  const hive = (await entries(keeper)).find((entry) => entry.what.hive).id;
  for (const [address, marked] of [
    [`look/${hive}`, "group"],
    [`dead_out/${hive}`, "self"],
    [`split/${hive}`, "self"],
    ["product", "self"],
  ]) {
    await keeper.driver.go(`${keeper.host.address}#/write/${address}`);
    await keeper.tap("write-save");
    await keeper.until(`${address}: the focus is on what is wrong, and it says why`, () =>
      keeper.driver.run((marked) => {
        const at = document.activeElement;
        const wrong = marked === "group" ? at.closest("[role=radiogroup]") : at;
        const told = (at.getAttribute("aria-describedby") ?? "").split(" ").map((id) => document.getElementById(id)?.innerText ?? "");
        return wrong?.getAttribute("aria-invalid") === "true" && /needed|at least one hive/.test(told.join(" "));
      }, marked),
    );
  }
});

journey("a long form shows what it needs first, and folds nothing away that has something in it or is wrong", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1);
  await keeper.open("#/write/product");
  const open = () => keeper.driver.run(() => document.querySelector("[data-testid=write-fold]").open);
  await keeper.one("write-fold");
  assert.equal(await open(), false);
  await keeper.tap("[data-testid=write-fold] > summary");
  await keeper.type("#write-batch", "B-7");
  await keeper.until("it is kept", () => keeper.driver.run(() => Object.keys(localStorage).some((key) => key.startsWith("beetle-almanac/write#"))));
  await keeper.reload();
  await keeper.until("it is open where something stands in it", open);
  await keeper.driver.run(() => (document.querySelector("[data-testid=write-fold]").open = false));
  await typeTime(keeper, "write-end", "2036-07-14");
  await keeper.tap("write-save");
  await keeper.until("it opens for what is wrong", open);
  await keeper.reads("#write-end-says", /./);
});
