import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard, unfold } from "../house/round.mjs";

const CLOCK = { faults: { clock: "2026-07-14T09:00" } };

const TABLE = `\ufeffApiary;Colony;Checked;Action;Oil level;Beetles;Remarks
Mill;1;03/04/2026;topped up;40 %;5-19;"first; warm"
Mill;2;03/04/2026;painted;;;
Mill;3;31/02/2026;looked;;;
Mill;1;05/04/2026;replaced;;0;
`;

async function choose(keeper, where, value) {
  await keeper.one(where);
  await keeper.driver.run(
    (css, value) => {
      const select = document.querySelector(css);
      select.value = value;
      select.dispatchEvent(new Event("change", { bubbles: true }));
    },
    `[data-testid="${where}"]`,
    value,
  );
}

async function open(keeper, text) {
  const path = join(keeper.engine.home, "old-book.csv");
  writeFileSync(path, text);
  await keeper.pick("table-file", path);
  await keeper.reads("#table-shown", /What each column says/);
}

journey("she brings the table of her old book, matches a column, looks, takes it in and takes it back", CLOCK, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1);
  const before = await keeper.pages();
  await keeper.place("book");
  await keeper.tapWords("From a table");
  await open(keeper, TABLE);

  // "Checked" and the remarks are no headers the page knows in full: she says what the first of them is.
  assert.equal(await keeper.value("#table-column-2"), "tag");
  assert.equal(await keeper.value("#table-column-3"), "skip");
  await choose(keeper, "table-column-3", "day");
  await keeper.reads("table-order-told", /Day first: 03\/04\/2026 is .*(3 April|April 3)/);
  await keeper.reads("table-rows", /Row 2: Mill, hive 1; .*3 April|Row 2: Mill, hive 1; .*April 3/);
  const wrong = await keeper.reads("table-wrong", /Row 4: .?“?31\/02\/2026”? is no day/);
  assert.match(wrong, /Row 3: .*painted.* is no work that is known/);
  await choose(keeper, "table-word-1", "as_found");
  await keeper.until("row 3 is read", async () => !/Row 3/.test(await keeper.text("table-wrong")));
  await keeper.reads("table-comes-to", /New: 1 yard, 2 hives, 3 visits/);
  assert.deepEqual(await keeper.pages(), before, "nothing is written before her word");

  // One row stays out: only on her word, and she can copy it.
  assert.match(await keeper.value("#table-left"), /^Mill\t3\t31\/02\/2026\tlooked/);
  assert.equal(await keeper.driver.run(() => document.querySelector('[data-testid="table-confirm"]').getAttribute("aria-disabled") ?? String(document.querySelector('[data-testid="table-confirm"]').disabled)), "true");
  await keeper.tapWords("Leave these rows out", "table-preview");
  await keeper.tap("table-confirm");
  await keeper.reads("table-result", /Taken in from the table: 1 yard, 2 hives, 3 visits/);
  assert.ok(Object.keys(await keeper.pages()).length > Object.keys(before).length);

  // The same table again brings nothing.
  await open(keeper, TABLE.replace("Checked", "Date").replace("painted", "looked").replace("Mill;3;31/02/2026;looked;;;\n", "").replaceAll("03/04", "13/04"));
  await keeper.reads("table-comes-to", /Already here: 1 row/);
  await open(keeper, TABLE.replace("Checked", "Date").replace("painted", "looked").replace("Mill;3;31/02/2026;looked;;;\n", ""));
  await keeper.reads("table-wrong", /may be two days: say above which stands first/);
  await keeper.tap('input[name="table-order"][value="day"] + span');
  await keeper.reads("table-nothing", /all of it is already here/);

  // One undo takes the whole of it back, after a look at the walk.
  await keeper.tap("table-cancel");
  await keeper.place("round");
  await keeper.reads("main", /Mill/);
  await keeper.tap("undo");
  await keeper.until("the yard is gone", async () => !/Mill/.test(await keeper.text("main")));
});

journey("she pastes cells of a spreadsheet, and a table that is none changes nothing", CLOCK, async (keeper) => {
  await keeper.open("#/book/table");
  await unfold(keeper, "table-paste");
  await keeper.driver.run(() => {
    const area = document.querySelector("#table-text");
    area.value = "hive\tboxes\ttraps per box\n7\t2\t2\n8\t1\t1\n";
    area.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await keeper.tap("table-read");
  await keeper.reads("table-wrong", /Row 2: no yard/);
  await keeper.type("#table-yard", "Quarry");
  await keeper.reads("table-comes-to", /New: 1 yard, 2 hives, 0 visits/);
  await keeper.tap("table-confirm");
  await keeper.reads("table-result", /Taken in/);
  const path = join(keeper.engine.home, "photo.csv");
  writeFileSync(path, Buffer.from([0x50, 0x4b, 3, 4, 0, 0, 0, 8]));
  await keeper.pick("table-file", path);
  await keeper.reads("#table-shown", /no text/);
});

journey("her hive stood there before the book: the row is left out, or moves its first day, on her word", CLOCK, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1, "Orchard");
  await keeper.place("book");
  await keeper.tapWords("From a table");
  await open(keeper, "yard,hive,date,did\nOrchard,1,2026-06-01,looked\nOrchard,1,2026-07-14,looked\n");
  // It is named once, among those that stay out.
  await keeper.reads("table-wrong", /Row 2/);
  assert.doesNotMatch(await keeper.reads("table-rows", /Row 3/), /Row 2/);
  const tick = (press) =>
    keeper.driver.run((press) => {
      const ticks = [...document.querySelectorAll("#table-shown label")];
      const tick = ticks.find((label) => /stood there earlier/.test(label.textContent)).querySelector("input");
      // As with the space bar of a keyboard: some browsers give a tapped tick no focus at all.
      if (press) (tick.focus(), tick.click());
      return document.activeElement === tick;
    }, press);
  await tick(true);
  await keeper.reads("table-rows", /Row 2/);
  assert.ok(await tick(false), "the focus stays on what she has ticked");
  await keeper.tap("table-confirm");
  await keeper.reads("table-result", /Taken in from the table: /);
  await keeper.tap("undo");
  await keeper.until("it is not said any longer", async () => (await keeper.text("table-result")) === "");
});
