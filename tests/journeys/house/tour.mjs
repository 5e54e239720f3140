// Every screen of the page, one after the other, for what must hold on all of them.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { keysReady } from "./round.mjs";
import { fill, free } from "./storage.mjs";

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
  await book(keeper, look);
}

async function bench(keeper, look) {
  await keeper.place("bench");
  const cards = await keeper.driver.run(() => [...document.querySelectorAll("main .card-title button")].map(({ id }) => id));
  for (const id of cards) {
    if ((await keeper.attribute(`#${id}`, "aria-expanded")) === "false") await keeper.tap(`#${id}`);
  }
  await keeper.tap("bench-keep");
  await openDetails(keeper);
  await look("bench");

  await keeper.tap(".head-key");
  await keeper.one("dialog[open]");
  await look("settings");
  await shutSheet(keeper);
}

async function nothingKept(keeper, look) {
  for (const place of ["round", "load", "book"]) {
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
  await keeper.one("told");
  await look("round: after a spill");
  await keeper.tap("[data-testid=told] .key:last-child");
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
  await keeper.place("load");
  await openDetails(keeper);
  await look("load");
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
  await keeper.driver.go(`${keeper.host.address}#/book/kinds`);
  await keeper.one("kind-new");
  await look("kinds of trap");
  await keeper.tap("kind-new");
  await keeper.one("kind-save");
  await openDetails(keeper);
  await look("a kind of trap");
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
