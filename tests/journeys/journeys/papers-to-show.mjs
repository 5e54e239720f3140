import { savedFiles, watchFiles } from "../house/files.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { keepYard, log, onTheDay, skip, unfold } from "../house/round.mjs";

const CLOCK = { faults: { clock: "2026-07-01T09:00" } };
const REFUSED = /ERR_CONNECTION_REFUSED|Failed to update a ServiceWorker/;

/** Opens the folded part of the Book. */
async function papers(keeper) {
  await keeper.place("book");
  await unfold(keeper, "papers");
}

async function sheet(keeper, name) {
  await keeper.driver.go(`${keeper.host.address}#/book/${name}`);
  return plain(await keeper.reads(".paper", /./));
}

/** The events of a calendar file: lines unfolded (RFC 5545, section 3.1), the first value of each name. */
function events(text) {
  const found = [];
  for (const line of text.replace(/\r\n[ \t]/g, "").split("\r\n")) {
    if (line === "BEGIN:VEVENT") found.push({});
    const [, name, value] = /^([A-Z-]+)(?:;[^:]*)?:(.*)$/.exec(line) ?? [];
    if (found.length && name && !(name in found.at(-1))) found.at(-1)[name] = value;
  }
  return found;
}

/** The phone's list of apps, as a browser answers that knows it: with an error's name, or well. */
const listOfApps = (keeper, error) =>
  keeper.driver.run((error) => {
    window.given = [];
    navigator.canShare = ({ files }) => files.length === 1;
    navigator.share = async ({ files: [file] }) => {
      window.given.push({ name: file.name, type: file.type, text: await file.text() });
      if (error) throw new DOMException("no", error);
    };
  }, error);

journey("she saved the calendar file and a table far from any signal", { complaints: [REFUSED] }, async (keeper) => {
  await keeper.open();
  await keeper.offlineReady();
  await keepYard(keeper, 5);
  await keeper.host.stop();
  await keeper.reload();
  await papers(keeper);
  await watchFiles(keeper);

  await keeper.tap("calendar-save");
  const [file] = await savedFiles(keeper, 1);
  assert.match(file.name, /^yard-calendar-\d{4}-\d\d-\d\d\.ics$/);
  assert.match(file.type, /^text\/calendar/);
  assert.ok(file.text.startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n") && file.text.endsWith("END:VCALENDAR\r\n"));
  const [event, ...others] = events(file.text);
  assert.deepEqual(others, [], "one event a yard and day, not one a hive");
  assert.equal(event.SEQUENCE, "0");
  assert.equal(event.STATUS, "CONFIRMED");
  assert.equal(event.SUMMARY, "Orchard: 5 hives due");
  assert.equal(event.DESCRIPTION, "Traps due: hives 1\\, 2\\, 3\\, 4\\, 5");

  await keeper.tap("table-save");
  const work = (await savedFiles(keeper, 2))[1];
  assert.match(work.name, /^trap-work-\d{4}-\d\d-\d\d\.csv$/);
  assert.match(work.text, /^entry_id,day,[a-z_,]+,note\r\n$/, "nothing was done yet: the header alone");

  await keeper.driver.run(() => {
    const which = document.querySelector("#table-of");
    which.value = "hives";
    which.dispatchEvent(new Event("change", { bubbles: true }));
  });
  await keeper.tap("table-save");
  const hives = (await savedFiles(keeper, 3))[2];
  const lines = hives.text.split("\r\n");
  assert.deepEqual([lines.length, lines.at(-1)], [1 + 5 + 1, ""]);
  const columns = (line) => line.split(",").length;
  assert.ok(lines.slice(0, -1).every((line) => columns(line) === columns(lines[0])));
  assert.ok(lines.slice(1, -1).every((line, at) => line.split(",")[lines[0].split(",").indexOf("tag")] === `${at + 1}`));
});

journey("a name in her book begins like a formula: the table guards against it without being asked", CLOCK, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1, "=1+1");
  await papers(keeper);
  await watchFiles(keeper);
  await keeper.driver.run(() => {
    const which = document.querySelector("#table-of");
    which.value = "yards";
    which.dispatchEvent(new Event("change", { bubbles: true }));
  });
  await keeper.tap("table-save");
  const [yards] = await savedFiles(keeper, 1);
  assert.match(yards.text, /,'=1\+1,/);
});

journey("a second calendar file updates the first instead of doubling it", CLOCK, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 5);
  await papers(keeper);
  await watchFiles(keeper);
  await keeper.tap("calendar-save");
  const [first] = events((await savedFiles(keeper, 1))[0].text);
  assert.deepEqual([first.DTSTART, first.DTEND], ["20260715", "20260716"]);

  // Nothing has changed: the same event under the same number.
  await onTheDay(keeper, "2026-07-08T09:00");
  await papers(keeper);
  await watchFiles(keeper);
  await keeper.tap("calendar-save");
  const [again] = events((await savedFiles(keeper, 1))[0].text);
  assert.deepEqual({ ...again, DTSTAMP: "" }, { ...first, DTSTAMP: "" });
  assert.notEqual(again.DTSTAMP, first.DTSTAMP);

  await keeper.place("round");
  await log(keeper, 1, "topped_up");
  await papers(keeper);
  await keeper.tap("calendar-save");
  const changed = events((await savedFiles(keeper, 2))[1].text);
  assert.deepEqual(
    changed.map(({ UID, SEQUENCE, DTSTART, STATUS }) => [UID === first.UID, SEQUENCE, DTSTART, STATUS]),
    [
      [true, "1", "20260715", "CONFIRMED"],
      [false, "0", "20260722", "CONFIRMED"],
    ],
  );

  // Trap work rests: nothing is due any more, and both are taken back.
  await keeper.place("round");
  await unfold(keeper, "season");
  await keeper.tap("season-go");
  await papers(keeper);
  await keeper.tap("calendar-save");
  const gone = events((await savedFiles(keeper, 3))[2].text);
  assert.deepEqual(
    gone.map(({ UID, SEQUENCE, STATUS }) => [UID === first.UID, SEQUENCE, STATUS]),
    [
      [true, "2", "CANCELLED"],
      [false, "1", "CANCELLED"],
    ],
  );
});

journey("she took the truck sheet along and showed the inspector packet", CLOCK, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await onTheDay(keeper, "2026-07-18T09:00");
  await log(keeper, 1, "topped_up");
  await skip(keeper, 2, "temper");
  await keeper.tap("shut");

  const truck = await sheet(keeper, "truck-sheet");
  for (const words of [/^Orchard, /, /Oil to carry: /, /Hives in walking order/, /Level found in %/]) assert.match(truck, words);
  const marks = await keeper.driver.run(() =>
    [...document.querySelectorAll(".paper-table tbody tr")].map((row) => [...row.cells].map((cell) => cell.textContent)),
  );
  // Two are overdue; one of them was skipped too, and a hive has one mark.
  assert.deepEqual(marks.map(([mark, tag]) => [tag, mark]).sort(), [["1", ""], ["2", "!"], ["3", "!"]]);
  assert.ok(marks.every((cells) => cells.length === 10 && cells.slice(6).every((cell) => cell === "")), "room for the pen");

  const packet = await sheet(keeper, "inspector");
  for (const words of [/Record of hives and work/, /Registration number: _+/, /1 of 5\. Hives/, /topped up/, /skipped/i]) {
    assert.match(packet, words);
  }
  assert.match(packet, /5 of 5\. Products applied\s+None recorded in this period\./);
  assert.match(packet, /3 of 5\. Moves between yards\s+None recorded in this period\./);

  const cards = await sheet(keeper, "hive-cards");
  assert.equal(await keeper.driver.run(() => document.querySelectorAll(".hive-card").length), 3);
  const first = await keeper.text(".hive-card");
  assert.match(first, /, as of Sat, /, "which yard, and of what day");
  assert.doesNotMatch(first, /\bin \d+ days|today/, "nothing that is wrong tomorrow");
  assert.match(cards, /Hive .?1[\s\S]*Last looks/);

  await keeper.driver.run(() => (window.print = () => (window.printed = (window.printed ?? 0) + 1)));
  await keeper.tap("sheet-print");
  assert.equal(await keeper.driver.run(() => window.printed), 1);
  await watchFiles(keeper);
  await keeper.tap("sheet-save");
  const [file] = await savedFiles(keeper, 1);
  assert.match(file.name, /^hive-cards-2026-07-18\.html$/);
  assert.ok(file.text.startsWith("<!doctype html>") && file.text.endsWith("</html>"));
  assert.match(file.text, /<title>Hive cards<\/title>/);
  assert.equal(file.text.match(/class="hive-card"/g).length, 3);
  await keeper.tap("sheet-show");
  assert.match(await keeper.value("#sheet-show"), /Hive .?3\b/u);
});

journey("a browser that will not share hands over a file instead, and a list shut by the keeper does nothing", CLOCK, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await listOfApps(keeper, "");
  await watchFiles(keeper);
  await papers(keeper);
  await keeper.tap("table-share");
  await keeper.reads("main", /Shared\./);
  const shared = await keeper.driver.run(() => window.given);
  assert.deepEqual(shared.map(({ name, type }) => [name, type]), [["trap-work-2026-07-01.csv", "text/csv"]]);
  assert.match(shared[0].text, /^entry_id,/);

  await listOfApps(keeper, "AbortError");
  await keeper.tap("table-share");
  await keeper.reads("main", /Not shared\./);
  assert.deepEqual(await keeper.driver.run(() => window.madeFiles), []);

  await listOfApps(keeper, "NotAllowedError");
  await keeper.tap("calendar-share");
  const [file] = await savedFiles(keeper, 1);
  assert.match(file.name, /\.ics$/);
  await keeper.reads("main", /see your downloads/);

  // No file either: the text is there to be copied.
  await keeper.driver.run(() => (URL.createObjectURL = () => { throw new Error("no"); }));
  await keeper.tap("calendar-share");
  await keeper.one("#calendar-show");
  assert.match(await keeper.value("#calendar-show"), /^BEGIN:VCALENDAR/);
});
