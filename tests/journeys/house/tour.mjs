// Every screen of the page, one after the other, for what must hold on all of them.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { setClock } from "./dates.mjs";
import { savedFiles, watchFiles } from "./files.mjs";
import { keepYard, keysReady, log, row } from "./round.mjs";
import { damage, fill, free } from "./storage.mjs";

/**
 * Shows each screen and calls `look` with its name. Those named "round: …" are used at an open hive.
 * @param {import("./keeper.mjs").Keeper} keeper with the page open and nothing kept
 */
export async function tour(keeper, look) {
  await bench(keeper, look);
  await nothingKept(keeper, look);
  await keeper.tap("demo-fill");
  await keeper.reads("demo-remove", /./);
  await round(keeper, look);
  await rest(keeper, look);
  await beetle(keeper, look);
  await book(keeper, look);
  await decide(keeper, look);
}

async function decide(keeper, look) {
  await keeper.place("round");
  await keeper.one("yard-open");
  // By their addresses: what was said last lies over the list on a small screen with large letters.
  const end = (css) => keeper.driver.run((css) => document.querySelector(css).getAttribute("href").split("/").pop(), css);
  const yard = await end("[data-testid=yard-open]");
  await keeper.driver.go(`${keeper.host.address}#/decide/${yard}/comb`);
  await keeper.one(".decide-hives");
  const hive = await end(".decide-hives a");
  const write = async (blank, fill) => {
    await keeper.driver.go(`${keeper.host.address}#/write/${blank}/${hive}`);
    await keeper.one("write-save");
    await openDetails(keeper);
    await fill();
    await keeper.tap("write-save");
    await keeper.gone("write-save");
  };
  const choose = (name, word) => keeper.tap(`.radio:has([name=write-${name}][value="${word}"])`);
  await write("look", async () => {
    await choose("larvae", "many");
    await keeper.type("#write-frames_of_bees", "5");
    await keeper.type("#write-frames_of_comb", "14");
  });
  await write("shell", async () => {
    await keeper.type("#write-crack", "4");
    await keeper.type("#write-crack_length", "50");
    await choose("notch", "open");
  });
  await write("stand", async () => {
    await keeper.type("#write-across", "2");
    await keeper.type("#write-along", "1.5");
  });
  await write("comb", async () => {
    await keeper.type("#write-frames", "4");
    await choose("to", "freezer");
  });
  await keeper.driver.go(`${keeper.host.address}#/hive/${hive}`);
  await keeper.one("same-day");
  await openDetails(keeper);
  await look("hive: the same day");
  await keeper.driver.go(`${keeper.host.address}#/decide/${yard}`);
  await keeper.one("decide");
  await look("decide");
  for (const question of ["close", "open", "comb", "ground", "freezer"]) {
    await keeper.driver.go(`${keeper.host.address}#/decide/${yard}/${question}`);
    await keeper.one(".decide");
    if (question === "open") await keeper.tap("decide-draw");
    await openDetails(keeper);
    await look(`decide: ${question}`);
  }
}

async function bench(keeper, look) {
  await keeper.place("bench");
  await openCards(keeper);
  await keeper.tap("bench-keep");
  await openDetails(keeper);
  await look("bench");

  await keeper.tap(".head-key");
  await keeper.one("dialog[open]");
  await look("settings");
  await shutSheet(keeper);
}

async function nothingKept(keeper, look) {
  for (const place of ["round", "load", "beetle", "book"]) {
    await keeper.place(place);
    await openDetails(keeper);
    await look(`${place}, nothing kept`);
  }
}

async function round(keeper, look) {
  await keeper.place("round");
  await look("yards");
  await keeper.tap("yard-open");
  await openDetails(keeper);
  await look("round: yard");

  await keeper.tap("row-open");
  await keysReady(keeper);
  await look("round: panel");
  await keeper.tap("did-skipped");
  await keeper.one("skip-temper");
  await look("round: skipped why");
  await keeper.tap("ask-back");
  await keeper.tap("more");
  await keeper.one("#log-day");
  await look("round: panel with more keys");
  await keeper.tap("more");
  await keysReady(keeper);
  await keeper.tap("did-spilled");
  await keysReady(keeper);
  await keeper.tap("which-all");
  await keeper.one("told");
  await look("round: after a spill");
  await keeper.tap("told-away");
  await keeper.gone("told");

  await fill(keeper);
  await keysReady(keeper);
  await keeper.tap("did-topped_up");
  await keeper.one("unsaved-notice");
  await look("round: not kept");
  await free(keeper);
  await keeper.tapCalmly("unsaved-away");
  await keeper.tap("shut");
}

async function rest(keeper, look) {
  await keeper.tap("rest-as-usual");
  await keeper.one("rest-list");
  await look("round: the rest");
  await shutSheet(keeper);
  await keeper.tap("row-open");
  await keeper.tap("[data-testid=panel] a");
  await keeper.until("the page of the hive is shown", () => keeper.driver.run(() => location.hash.startsWith("#/hive/")));
  await openDetails(keeper);
  await look("hive");
  const hive = await keeper.driver.run(() => location.hash.split("/").pop());
  for (const blank of ["look", "split", "cleaned"]) {
    await keeper.driver.go(`${keeper.host.address}#/write/${blank}/${hive}`);
    await keeper.one("write-save");
    await openDetails(keeper);
    await keeper.tap("write-save");
    await look(`record: ${blank}`);
  }
  await keeper.place("load");
  await keeper.one("#load-day");
  await openCards(keeper);
  await keeper.one("load-spent");
  await openDetails(keeper);
  await look("load");
}

async function beetle(keeper, look) {
  await keeper.place("beetle");
  await keeper.one("under-way");
  await openDetails(keeper);
  await look("beetle");
  for (const clock of ["dates", "season", "rhythm", "honey"]) {
    await keeper.driver.go(`${keeper.host.address}#/beetle/${clock}`);
    await keeper.one(".back");
    await openDetails(keeper);
    if (clock === "dates") {
      await keeper.tap("worked");
      await keeper.one("worked-table");
    }
    await look(`beetle: ${clock}`);
  }
  await keeper.driver.go(`${keeper.host.address}#/write/climate`);
  await keeper.one("write-save");
  await keeper.tap("write-save");
  await look("record: climate");
}

async function book(keeper, look) {
  await keeper.place("book");
  await openDetails(keeper);
  const file = join(keeper.engine.home, "holiday.json");
  writeFileSync(file, "{}");
  await keeper.pick("book-restore", file);
  await keeper.reads("main", /belongs to another program/);
  await look("book");
  await keeper.driver.go(`${keeper.host.address}#/book/history`);
  await keeper.one("history-line");
  await look("history");
  await keeper.tap("[data-testid=history-line] .line-key");
  await keeper.tap("history-edit");
  await keeper.one("edit-save");
  await look("an entry corrected");
  for (const sheet of ["truck-sheet", "hive-cards", "inspector"]) {
    await keeper.driver.go(`${keeper.host.address}#/book/${sheet}`);
    await keeper.one(".paper > :first-child");
    await look(sheet.replace("-", " "));
  }
  await keeper.driver.go(`${keeper.host.address}#/book/season`);
  await keeper.one(".paper > :first-child");
  await look("season report");
  for (const blank of ["climate", "product", "harvest"]) {
    await keeper.driver.go(`${keeper.host.address}#/write/${blank}`);
    await keeper.one("write-save");
    await openDetails(keeper);
    await keeper.tap("write-save");
    await look(`record: ${blank}`);
  }
  await typeTime(keeper, "write-bees_off", `${await keeper.value("#write-day")}T00:00`);
  await keeper.tap("write-save");
  await keeper.gone("write-save");
  await keeper.driver.go(`${keeper.host.address}#/book/lot`);
  await keeper.one(".paper > :first-child");
  await look("honey lot");
  await keeper.driver.go(`${keeper.host.address}#/write/keeper_facts`);
  await keeper.type("#write-registration", "7-431");
  await keeper.tap("write-save");
  await keeper.one("records");
  await look("records");
  await keeper.driver.go(`${keeper.host.address}#/book/catch`);
  await keeper.one("catch-hives");
  await keeper.tapWords("Before and after a day", "main");
  await openDetails(keeper);
  await look("catch");
  await keeper.driver.go(`${keeper.host.address}#/book/trial`);
  await keeper.tap("trial-draw");
  await keeper.one("trial-lists");
  await look("a trial");
  await keeper.driver.go(`${keeper.host.address}#/book/take-in`);
  await keeper.one("codes-text");
  await look("take in");
  await keeper.driver.go(`${keeper.host.address}#/book/table`);
  const table = join(keeper.engine.home, "old-book.csv");
  writeFileSync(table, "Yard;Hive;Date;Action;Beetles\nMill;1;03/04/2026;topped up;5-19\nMill;2;04/04/2026;painted;\n");
  await keeper.pick("table-file", table);
  await keeper.one("table-preview");
  await openDetails(keeper);
  await look("a table that comes in");
  await keeper.driver.go(`${keeper.host.address}#/book/kinds`);
  await keeper.one("kind-new");
  await look("kinds of trap");
  await keeper.tap("kind-new");
  await keeper.one("kind-save");
  await openDetails(keeper);
  await look("a kind of trap");
}

/**
 * What the tour does not pass: fields that need mending, questions of the panel, a hive without traps, one that died,
 * a line of the history, a backup that is looked into, a damaged book.
 * @param {import("./keeper.mjs").Keeper} keeper with the page open and nothing kept
 */
export async function seldom(keeper, look) {
  await keeper.type("bench-hives", "many");
  await keeper.type("holds", "20 g");
  await look("bench, to be mended");
  await keeper.type("holds", "20");

  await keepYard(keeper, 3, "Far end of the long orchard", "not_yet");
  await keeper.tap("row-open");
  await keysReady(keeper);
  await look("round: traps not yet in");
  await keeper.tap("did-placed");
  await keeper.one("undo");
  await keysReady(keeper);
  await look("round: after one hive");
  await keeper.tap("more");
  await keeper.type("#log-note", "Lid glued down, box two.");
  await keeper.tap("more");
  await keysReady(keeper);
  await keeper.tap("did-as_found");
  await keysReady(keeper);
  await keeper.tap("shut");
  await log(keeper, 1, "topped_up");
  await keeper.one("doubt");
  await look("round: in doubt");
  await keeper.tap("save-as-is");
  await keeper.tap("shut");
  await look("round: partly walked");

  await keeper.tap(`${row("1")} [data-testid=row-open]`);
  await keeper.tap("[data-testid=panel] a");
  await keeper.until("the page of the hive is shown", () => keeper.driver.run(() => location.hash.startsWith("#/hive/")));
  await openDetails(keeper);
  await keeper.tapCalmly("end-go");
  await keeper.one("revive");
  await look("a dead hive");

  const hive = await keeper.driver.run(() => location.hash.split("/").pop());
  await keeper.driver.go(`${keeper.host.address}#/write/dead_out/${hive}`);
  await keeper.one("write-save");
  await look("record: what a dead hive showed");
  await keeper.tapWords("beetles", ".write-form");
  await keeper.tap("write-save");
  await keeper.one("revive");

  await keeper.driver.go(`${keeper.host.address}#/book/history`);
  await keeper.tap(".line-key");
  await look("history, a line open");
  const older = "[data-testid=history-line] ~ [data-testid=history-line] ~ [data-testid=history-line]";
  await keeper.tap(`${older} .line-key`);
  await keeper.tap("history-edit");
  await keeper.type("edit-after", "150 %");
  await look("an entry corrected, to be mended");
  await keeper.type("edit-after", "30 %");
  await keeper.tap("edit-save");
  await keeper.one("history-trail");
  await look("history, an entry that was corrected");
  await keeper.driver.go(`${keeper.host.address}#/book/hand-over`);
  await keeper.tap("codes-show");
  await keeper.one("code");
  await openDetails(keeper);
  await look("hand over, a code shown");
  await keeper.driver.go(`${keeper.host.address}#/book/take-in`);
  await keeper.type("codes-text", "BH1");
  await keeper.tap("codes-read");
  await keeper.one("codes-said");
  await look("take in, a code that was cut off");
  await keeper.place("book");
  await watchFiles(keeper);
  await keeper.tap("book-backup");
  const [saved] = await savedFiles(keeper, 1);
  const file = join(keeper.engine.home, saved.name);
  writeFileSync(file, saved.text);
  await keeper.pick("book-restore", file);
  await keeper.one(".preview");
  await look("book, a file looked into");
  writeFileSync(file, saved.text.slice(0, -60));
  await keeper.pick("book-restore", file);
  await keeper.one("recovered");
  await look("book, a file cut off");
  await keeper.tap("hands-show");
  await keeper.one("only-shows");
  await keeper.tap("label-save");
  await keeper.one("wanted-write-again");
  await look("book, only shown");
  await keeper.tap("wanted-write-again");
  await setClock(keeper, -400);
  await keeper.one("clock-notice");
  await look("book, the phone's date went back");

  const [page] = Object.keys(await keeper.pages());
  await damage(keeper, page);
  await keeper.reload();
  await look("a damaged page");
}

/** A day with its hour: the driver's keys meet such a field in as many ways as there are engines. Folded or not. */
export async function typeTime(keeper, field, text) {
  await keeper.until(`${field} is there`, () => keeper.driver.run((field) => document.getElementById(field) !== null, field));
  await keeper.driver.run((field, text) => {
    const input = document.getElementById(field);
    input.value = text;
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }, field, text);
}

async function openCards(keeper) {
  const cards = await keeper.driver.run(() => [...document.querySelectorAll("main .card-title button")].map(({ id }) => id));
  for (const id of cards) {
    if ((await keeper.attribute(`#${id}`, "aria-expanded")) === "false") await keeper.tap(`#${id}`);
  }
}

const openDetails = (keeper) =>
  keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));

async function shutSheet(keeper) {
  await keeper.tap("dialog[open] .sheet-head button");
  await keeper.gone("dialog[open]");
}

/**
 * Takes the tour and collects what `check` finds wrong on each screen, each line headed by the screen's name.
 * What was found before a screen could not be reached is often the reason, so it is told first.
 */
export async function survey(keeper, check) {
  const found = [];
  try {
    await tour(keeper, async (screen) => {
      for (const line of await check(screen)) found.push(`${screen}: ${line}`);
    });
  } catch (error) {
    if (found.length) error.message = `${found.join("\n")}\n${error.message}`;
    throw error;
  }
  return found;
}

/** Sets the page to sun or night in its own settings. */
export async function scheme(keeper, name) {
  await keeper.tap(".head-key");
  await keeper.tap(`dialog[open] label:has(input[value=${name}])`);
  await shutSheet(keeper);
  await keeper.until(`the page is in the ${name} scheme`, async () => (await keeper.attribute("html", "data-scheme")) === name);
}
