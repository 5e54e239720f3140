import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { codeOnScreen, codesOf, codesOnScreen } from "../house/codes.mjs";
import { savedFiles, watchFiles } from "../house/files.mjs";
import { Host } from "../house/host.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { due, entries, keepYard, log, onTheDay, row, rows } from "../house/round.mjs";
import { pageRoot } from "../house/settings.mjs";

const REFUSED = /ERR_CONNECTION_REFUSED|Failed to update a ServiceWorker/;
const byId = (list) => [...list].sort((one, other) => (one.id < other.id ? -1 : 1));

/** To a page of the Book by its key. */
async function page(keeper, words) {
  await keeper.place("book");
  await keeper.tapWords(words, "main");
  await keeper.reads("main h1", words);
}

async function showCodes(keeper, since) {
  await page(keeper, "Hand over");
  await keeper.tap(`.radio:has([name=pack-since][value=${since}])`);
  await keeper.tap("codes-show");
  return codesOnScreen(keeper);
}

/** Puts texts into the field as another app on the phone does. */
async function paste(keeper, texts) {
  await keeper.one("codes-text");
  await keeper.driver.run((text) => {
    const area = document.querySelector("#codes-text");
    area.value = text;
    area.dispatchEvent(new Event("input", { bubbles: true }));
  }, texts.join("\n"));
  await keeper.tap("codes-read");
}

async function confirm(keeper) {
  await keeper.tap("restore-confirm");
  await keeper.reads("restore-result", /Taken in/);
}

async function logged(keeper, tag) {
  await log(keeper, tag, "topped_up");
  await keeper.until(`hive ${tag} is done`, async () => /topped up today/.test((await rows(keeper)).find((row) => row.tag === `${tag}`).words));
}

journey("two phones without signal log half a yard each and hand over, by codes and by file: both show the same book", { complaints: [REFUSED] }, async (keeper, t) => {
  await keeper.open();
  await keeper.offlineReady();
  await keepYard(keeper, 6);
  const own = keeper.host;
  const other = await new Host(pageRoot).start();
  keeper.host = other;
  await keeper.open();
  await keeper.offlineReady();
  keeper.host = own;
  await own.stop();
  await other.stop();
  const on = async (host) => {
    keeper.host = host;
    await keeper.open("#/book");
  };

  // The new phone gets everything, by codes, the last one first and one of them twice.
  await on(own);
  const codes = await showCodes(keeper, "all");
  t.diagnostic(`a new yard of 6 hives is ${codes.length} codes of ${codes.map(({ length }) => length)} letters`);
  await on(other);
  await page(keeper, "Take in");
  await paste(keeper, [codes.at(-1), ...codes]);
  const said = plain(await keeper.text(await keeper.waitFor("restore-preview")));
  assert.match(said, /\b1 yard, 6 hives\b/);
  assert.match(said, / 0 already here/);
  assert.deepEqual(await keeper.pages(), {}, "nothing changes before she confirms");
  await confirm(keeper);

  await keeper.place("round");
  for (const tag of [1, 2, 3]) await logged(keeper, tag);
  await on(own);
  await keeper.place("round");
  for (const tag of [4, 5, 6]) await logged(keeper, tag);

  // Here to there by file, there to here by codes.
  await page(keeper, "Hand over");
  await keeper.reads("pack-holds", /entries of .?6 hives, without notes/);
  await watchFiles(keeper);
  await keeper.tap("pack-save");
  const [file] = await savedFiles(keeper, 1);
  assert.match(file.name, /^hand-over-.*\.txt$/);
  const path = join(keeper.engine.home, file.name);
  writeFileSync(path, file.text);
  await on(other);
  const back = await showCodes(keeper, "today");
  // The field for backups takes it too.
  await keeper.place("book");
  await keeper.pick("book-restore", path);
  await keeper.reads("restore-preview", / 3 new, /);
  await confirm(keeper);
  const theirs = byId(await entries(keeper));
  const shown = await rowsOf(keeper);
  await on(own);
  await page(keeper, "Take in");
  await paste(keeper, back);
  await keeper.reads("restore-preview", / 3 new, /);
  await confirm(keeper);
  assert.deepEqual(byId(await entries(keeper)), theirs);
  assert.deepEqual(await rowsOf(keeper), shown);
  assert.ok(shown.every(({ words }) => /topped up today/.test(words)));

  // Once more: nothing new.
  await page(keeper, "Take in");
  await paste(keeper, back);
  await keeper.reads("restore-preview", / 0 new, /);
  await other.end();
});

async function rowsOf(keeper) {
  await keeper.place("round");
  return rows(keeper);
}

journey("a day's work on 25 hives as codes: they turn by themselves or by a key, and another decoder reads every one", { faults: { clock: "2026-07-01T09:00" } }, async (keeper, t) => {
  await keeper.open();
  await keepYard(keeper, 25);
  await onTheDay(keeper, "2026-07-15T09:00");
  await keeper.tap("rest-as-usual");
  await keeper.one("rest-list");
  await keeper.tapCalmly("rest-confirm");
  await keeper.until("all are logged", async () => (await entries(keeper)).filter(({ what }) => what.check).length === 25);
  const many = {};
  for (const since of ["today", "all"]) {
    const codes = await showCodes(keeper, since);
    many[since] = codes.length;
    assert.equal(new Set(codes.map((code) => code.slice(6, 16))).size, 1, "one run");
    await keeper.tap("codes-away");
  }
  // Fewer hives are shorter codes, and every one is read.
  await keeper.tap("[data-testid=pack-hives] > summary");
  for (let off = 0; off < 24; off += 1) {
    await keeper.tap(`[data-testid=pack-hives] label:nth-of-type(${off + 1})`);
    if (off % 8 !== 7) continue;
    await keeper.tap("codes-show");
    const codes = await codesOnScreen(keeper);
    many[24 - off] = codes.map(({ length }) => length).join("+");
    await keeper.tap("codes-away");
  }
  t.diagnostic(`codes of 25 hives: ${JSON.stringify(many)}`);
  assert.ok(many.today <= 3, `${many.today} codes for a day's work`);

  const codes = await showCodes(keeper, "all");
  await keeper.tap("codes-turn");
  const first = await codeOnScreen(keeper);
  await keeper.until("the next one came by itself", async () => (await codeOnScreen(keeper)) !== first);
  assert.ok(codes.includes(first));
});

journey("codes that are damaged, doubled, of another hand-over or made to fill the phone: each is told, and nothing changes", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 25);
  const codes = await showCodes(keeper, "all");
  assert.ok(codes.length >= 2);
  const pages = await keeper.pages();
  await page(keeper, "Take in");
  const [first, ...rest] = codes;
  const at = 20;
  const damaged = `${first.slice(0, at)}${first[at] === "A" ? "B" : "A"}${first.slice(at + 1)}`;
  await paste(keeper, [...rest, "good morning", damaged, ...rest]);
  await keeper.reads("codes-said", new RegExp(`Line ${codes.length} is no code.*Line ${codes.length + 1} was changed or cut off`));
  await keeper.reads("codes-progress", new RegExp(`${codes.length - 1} of ${codes.length} read, 1 is missing`));
  const [foreign] = codesOf("another hand-over");
  await paste(keeper, [foreign]);
  await keeper.reads("codes-said", /another hand-over/);
  await keeper.reads("codes-progress", /1 is missing/);
  await paste(keeper, [first]);
  await keeper.reads("restore-preview", / 0 new, /);

  await keeper.tap("codes-anew");
  await keeper.gone("restore-preview");
  await paste(keeper, [foreign]);
  await keeper.reads("#restore-shown", /not a backup|another program|not a/);
  await keeper.tap("codes-anew");
  // 64 MB of noughts are 64 KB: two hundred of them would be codes enough, so fewer noughts.
  await paste(keeper, codesOf("0".repeat(5 * 1024 * 1024)));
  await keeper.reads("codes-said", /far more than any hand-over/);
  assert.ok(!(await keeper.shows("restore-preview")));
  assert.deepEqual(await keeper.pages(), pages);
});

journey("she reads the codes with the camera: it says what is missing, stops by itself, and stops when she leaves", { faults: { clock: "2026-07-01T09:00", camera: "lent" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 25);
  const codes = await showCodes(keeper, "all");
  await page(keeper, "Take in");
  await keeper.tap("camera-open");
  await keeper.reads("codes-said", /not allowed/);
  const root = (name, value) => keeper.driver.run((name, value) => (document.documentElement.dataset[name] = value), name, value);
  const streams = () => keeper.driver.run(() => JSON.parse(document.documentElement.dataset.streams));
  const live = async () => (await streams()).at(-1) ?? false;
  const hold = (texts) => root("seen", JSON.stringify(texts));
  await root("camera", "allowed");
  await keeper.tap("camera-open");
  await keeper.until("the camera is on", live);
  await hold(["https://example.org/", codes[1]]);
  await keeper.reads("codes-progress", new RegExp(`1 of ${codes.length} read`));
  await keeper.reads("codes-said", /no code of this page/);
  await hold(codes);
  await keeper.reads("restore-preview", / 0 new, /);
  await keeper.until("the camera is off when all are there", async () => !(await live()));

  await hold([]);
  // Stopped while its picture is on the way and opened again at once: the first goes off, the second is what she sees.
  const before = (await streams()).length;
  await root("picture", "never");
  await keeper.tap("camera-open");
  await keeper.until("the camera is on before there is a picture", live);
  await keeper.tap("camera-stop");
  await keeper.tap("camera-open");
  const second = async () => {
    const all = await streams();
    const shown = Number(await keeper.driver.run(() => document.documentElement.dataset.shown));
    return all.length === before + 2 && !all[before] && all[before + 1] && shown === before + 1;
  };
  await keeper.until("the second camera is on and the first is off", second);
  await new Promise((resolve) => setTimeout(resolve, 600));
  assert.ok(await second(), "the first leaves the picture of the second alone");
  const hidden = async (on) => {
    await root("hidden", `${on}`);
    await keeper.driver.run(() => document.documentElement.dispatchEvent(new Event("out-of-sight")));
  };
  await hidden(true);
  await keeper.until("it is off as soon as the page is out of sight", async () => !(await live()));
  assert.ok(await keeper.shows("camera-open"));
  await hidden(false);

  await root("picture", "comes");
  await keeper.tap("camera-open");
  await keeper.until("the camera is on again", live);
  await keeper.place("round");
  await keeper.until("it is off when she has left", async () => !(await live()));
  assert.ok(await due(keeper, 1));
  assert.ok(await keeper.shows(row(1)));
});

journey("a phone that reads no codes with its camera says so and leads on", {}, async (keeper) => {
  await keeper.open();
  await page(keeper, "Take in");
  if (await keeper.driver.run(() => "BarcodeDetector" in window)) await keeper.one("camera-open");
  else await keeper.reads("camera-not", /cannot read codes/);
});

journey("two hives 12 and a yard twice: she is told before anything changes", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Orchard");
  const codes = await showCodes(keeper, "all");
  const own = keeper.host;
  keeper.host = await new Host(pageRoot).start();
  try {
    await keeper.host.change({ faults: { clock: "2026-07-02T09:00" } });
    await keeper.open();
    await keepYard(keeper, 2, "orchard");
    await page(keeper, "Take in");
    await paste(keeper, codes);
    const said = await keeper.reads("restore-preview", /Yard .*Orchard.*another yard here has that name/);
    assert.match(said, /Hive .?.1.* in .*Orchard.*another hive here has that tag/);
    assert.match(said, /If they are one hive, say so on its page under “Written down twice/);
    assert.match(said, /move the hives into one of them first/);
    assert.match(said, /left notes and places out/);
  } finally {
    await keeper.host.end();
    keeper.host = own;
  }
});
