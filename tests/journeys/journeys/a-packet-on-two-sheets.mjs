import { inflateSync } from "node:zlib";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

const CLOCK = { faults: { clock: "2026-07-14T09:00" } };
/** Sheets in centimetres. */
const SHEETS = { A4: { width: 21, height: 29.7 }, Letter: { width: 21.59, height: 27.94 } };

/** The sheet that is shown, printed by the browser: a PDF. */
async function printed(keeper, sheet) {
  const pdf = await keeper.driver.call("POST", "/print", { page: SHEETS[sheet], shrinkToFit: false, background: false });
  return Buffer.from(pdf, "base64");
}

/** Pages of a PDF: each is an object of its own, which some writers keep in compressed streams. */
function pages(pdf) {
  const plain = pdf.toString("latin1");
  let count = plain.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
  if (count) return count;
  for (const { index } of plain.matchAll(/stream\r?\n/g)) {
    const start = index + plain.slice(index).match(/stream\r?\n/)[0].length;
    try {
      count += inflateSync(pdf.subarray(start)).toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    } catch {
      // no such stream
    }
  }
  return count;
}

async function packet(keeper) {
  await keeper.open();
  await keeper.place("book");
  await keeper.tap("demo-fill");
  await keeper.driver.go(`${keeper.host.address}#/book/inspector`);
  await keeper.reads(".paper", /Ferry Field/);
}

journey("the packet of two yards fits on two sheets, A4 or Letter, and every line is counted in it", CLOCK, async (keeper) => {
  await packet(keeper);
  const said = await keeper.reads(".paper", /All \d+ lines written for this period are told above/);
  assert.match(said, /Ferry Field (Hives: )?1–4, 6–23 /);
  assert.match(said, /23 hives: topped up \d+ \(/);
  // WebKit's driver has no command that prints.
  const prints = keeper.engine.name !== "webkit";
  for (const sheet of prints ? Object.keys(SHEETS) : []) {
    const count = pages(await printed(keeper, sheet));
    assert.ok(count >= 1 && count <= 2, `${count} pages on ${sheet}`);
  }
  // The long form is there too, and holds the same number of lines.
  const lines = Number(/All (\d+)/.exec(said)[1]);
  await keeper.tapWords("Every line by itself");
  await keeper.until("each line is a row", () =>
    keeper.driver.run((lines) => document.querySelectorAll(".paper-table tbody tr p").length === lines, lines),
  );
  if (prints) assert.ok(pages(await printed(keeper, "A4")) > 2);
});
