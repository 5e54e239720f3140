import { LETTERS, SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, log, onTheDay, row, rows, unfold } from "../house/round.mjs";

const ON = { faults: { clock: "2026-07-01T09:00" } };
const written = async (keeper) => (await entries(keeper)).filter((entry) => entry.what.record).length;

/** To a place of the page without asking the server, which is gone. */
async function to(keeper, hash) {
  await keeper.driver.run((hash) => (location.hash = hash), hash);
  await keeper.until(`${hash} is shown`, () => keeper.driver.run((hash) => location.hash === hash, hash));
}

/** A look, or what a dead hive showed, with one word chosen in each field. */
async function tell(keeper, blank, hive, words) {
  const before = await written(keeper);
  await to(keeper, `#/write/${blank}/${hive}`);
  await keeper.one("write-save");
  await keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
  for (const [name, word] of Object.entries(words)) await keeper.tap(`.radio:has([name=write-${name}][value="${word}"])`);
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await written(keeper)) === before + 1);
}

const load = async (keeper) => plain(await keeper.text("main"));
const SAID = /Brood disease is suspected: open, split, join and move none of these before the inspector knows: Hive .?2.?\./;
const OTHERS = /Move, sell, join and split no other hive of that yard either until you know\./;

journey("brood disease is suspected in one hive: the page says so wherever a hive, bees or comb are about to leave", ON, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  await keepYard(keeper, 3, "Home");
  await keepYard(keeper, 2, "Far orchard");
  const all = await entries(keeper);
  const hives = all.filter((entry) => entry.what.hive).map((entry) => entry.id);
  const [yard, other] = all.filter((entry) => entry.what.yard).map((entry) => entry.id);
  await keeper.host.stop();

  // Nothing is said before.
  await to(keeper, `#/write/split/${hives[0]}`);
  await keeper.one("write-save");
  await keeper.gone("suspected");
  await tell(keeper, "look", hives[1], { larvae: "none", brood_disease: "suspected" });

  // On its own page the card stands before everything that could be done there.
  await to(keeper, `#/hive/${hives[1]}`);
  await keeper.one("same-day");
  await keeper.one("log");
  assert.ok(
    await keeper.driver.run(() => {
      const [card, state, key] = ["same-day", "hive-state", "log"].map((mark) => document.querySelector(`[data-testid=${mark}]`));
      const before = (one, other) => Boolean(one.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_FOLLOWING);
      return before(card, state) && before(card, key);
    }),
    "the card comes first",
  );

  await to(keeper, `#/round/${yard}`);
  await keeper.until("the row says so", async () => /! STOP, brood disease suspected/.test((await rows(keeper)).find((row) => row.tag === "2")?.words ?? ""));
  await keeper.reads("yard-beside", /^▲ Hive 2: STOP, brood disease suspected$/);
  // The panel that goes on to it says so before its keys; that of the hive before and the one after say nothing.
  await keeper.tap(`${row("1")} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.gone("dock-alarm");
  // What is usual today stands out, but not at a hive that is to be left shut.
  const outstanding = () => keeper.driver.run(() => document.querySelectorAll(".dock .key-usual").length);
  assert.equal(await outstanding(), 1);
  await log(keeper, "1", "topped_up");
  await keeper.reads("panel", /^Hive .?2, Home.? ! STOP, brood disease suspected, .*Topped up/);
  await keeper.reads("dock-alarm", /^! STOP, brood disease suspected/);
  const sight = await keeper.driver.run(() => {
    const [foot, line, key] = [".foot", "[data-testid=dock-alarm]", "[data-testid='did-topped_up']"].map((css) => document.querySelector(css).getBoundingClientRect());
    return { foot: foot.top, from: line.top, to: line.bottom, key: key.top, keyEnd: key.bottom, end: innerHeight };
  });
  assert.ok(sight.foot <= sight.from + 1 && sight.to <= sight.key && sight.keyEnd <= sight.end, `line and key in sight together: ${JSON.stringify(sight)}`);
  assert.equal(await outstanding(), 0);
  await log(keeper, "2", "as_found");
  await keeper.reads("panel", /^Hive .?3.?/);
  await keeper.gone("dock-alarm");
  assert.equal(await outstanding(), 1);
  // So does the list of yards, of the one and not of the other, though nothing is due in either.
  await to(keeper, "#/round");
  await keeper.one("yard");
  const yards = await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=yard]")].map((card) => card.innerText));
  assert.deepEqual(yards.map((words) => /▲ Hive 2: STOP, brood disease suspected/.test(words)), [true, false], yards.join("; "));
  await to(keeper, `#/decide/${yard}`);
  await keeper.reads("decide-today", /^Hive .?2.?: brood disease suspected, see its card$/);
  for (const question of ["close", "open", "comb", "ground", "freezer"]) {
    await to(keeper, `#/decide/${yard}/${question}`);
    await keeper.reads("suspected", SAID);
  }
  // The lot does not draw it, whatever is typed, and no split of that yard is reckoned.
  await to(keeper, `#/decide/${yard}/open`);
  await keeper.reads("main", /Left out, brood disease suspected: 1 hive/);
  await keeper.tap("decide-draw");
  await keeper.reads("open-drawn", /^Hive .?1.?: to be opened\s+Hive .?3.?: to be opened$/);
  await to(keeper, `#/decide/${yard}/comb`);
  await keeper.reads("comb-split", /Move, sell, join and split no hive of this yard until you know/);
  await keeper.gone("#split-bees");
  await keeper.reads("comb-hives", /! Its card comes first: do not split it, and move no comb of it/);
  // Nobody is sent to open it.
  const looks = await keeper.driver.run(() => [...document.querySelectorAll("[data-testid=comb-hives] a[href*='#/write/look/']")].map((way) => way.getAttribute("href")));
  assert.deepEqual(looks.sort(), [hives[0], hives[2]].map((hive) => `#/write/look/${hive}`).sort());
  await to(keeper, `#/decide/${other}/comb`);
  await keeper.one("#split-bees");
  // Every form by which bees, comb or honey leave a hive, also of another hive of that yard.
  for (const blank of ["split", "comb"]) {
    await to(keeper, `#/write/${blank}/${hives[0]}`);
    await keeper.reads("suspected", SAID);
    await keeper.reads("suspected", OTHERS);
  }
  await to(keeper, `#/write/harvest/${yard}`);
  await keeper.reads("suspected", OTHERS);
  await to(keeper, `#/hive/${hives[0]}`);
  await unfold(keeper, "move");
  await keeper.reads("suspected", SAID);

  // A hive of the other yard is held back only once it is to go there.
  await to(keeper, `#/write/split/${hives[3]}`);
  await keeper.one("write-save");
  await keeper.gone("suspected");
  await to(keeper, `#/hive/${hives[3]}`);
  await unfold(keeper, "move");
  await keeper.one("move-go");
  await keeper.gone("suspected");
  await keeper.driver.run((yard) => {
    const field = document.querySelector("#move-to");
    field.value = yard;
    field.dispatchEvent(new Event("change", { bubbles: true }));
  }, yard);
  await keeper.reads("suspected", SAID);
  await to(keeper, `#/decide/${other}`);
  await keeper.one("decide");
  await keeper.gone("decide-today");

  // Known to be none: a later look ends it.
  await tell(keeper, "look", hives[1], { larvae: "none", brood_disease: "no" });
  await to(keeper, `#/write/split/${hives[0]}`);
  await keeper.one("write-save");
  await keeper.gone("suspected");
});

journey("slime the evening before a trip: the car carries fresh traps and oil for that hive, and the sheet names it", ON, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  await keepYard(keeper, 3, "Home");
  const all = await entries(keeper);
  const hives = all.filter((entry) => entry.what.hive).map((entry) => entry.id);
  const yard = all.find((entry) => entry.what.yard).id;
  await onTheDay(keeper, "2026-07-02T19:00");
  await keeper.host.stop();
  await keeper.place("load");
  assert.match(await load(keeper), /Oil to carry 0 mL Nothing is due by that day/);
  await tell(keeper, "look", hives[1], { larvae: "many", slime: "yes" });
  await tell(keeper, "look", hives[2], { larvae: "none", brood_disease: "suspected" });
  await keeper.place("load");
  assert.match(await load(keeper), /Oil to carry 50 mL 4 traps × 10 mL = 40 mL/);
  assert.match(await load(keeper), /Hives to see, due, skipped or with slime: 1 of 3 Their traps to fill: 4/);
  assert.match(await load(keeper), /Hive .?2.?: slime or many larvae, see its card; bring bags; its traps not made fresh on that day or since are counted here, due or not/);
  assert.match(await load(keeper), /Hive .?3.?: brood disease suspected, see its card; leave it shut until the inspector has said what may be done, then go to it last, and take nothing from it to another hive/);
  // Whoever looks into the yard first reads the same.
  await to(keeper, `#/round/${yard}`);
  await keeper.reads("yard-total", /^1 hive to see, 4 traps to fill; carry 50.mL/);
  // Its panel marks what its card asks for, in words that lie between the edges of the key.
  await keeper.tap(`${row("2")} [data-testid=row-open]`);
  await keysReady(keeper);
  const marked = await keeper.driver.run(() =>
    [...document.querySelectorAll(".dock .key-usual")].map((key) => {
      const words = document.createRange();
      words.selectNodeContents(key);
      return [key.dataset.testid, words.getBoundingClientRect().width < key.clientWidth - 4];
    }),
  );
  assert.deepEqual(marked, [["did-replaced", true]]);
  await keeper.tap("shut");
  await to(keeper, `#/book/truck-sheet/${yard}`);
  await keeper.reads("truck-urgent", /Hive .?2.?: slime or many larvae, see its card.*Hive .?3.?: brood disease suspected/);
  const marks = await keeper.driver.run(() => [...document.querySelectorAll(".paper-table tbody tr")].map((row) => [row.cells[1].innerText.replace(/[^0-9]/g, ""), row.cells[0].innerText.trim()]));
  assert.deepEqual(marks.sort(), [["1", ""], ["2", "!"], ["3", "!"]]);
});

journey("with letters twice as large the panel of a hive with brood disease suspected begins with its name and the stop", { ...ON, letters: 2 * LETTERS }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Home");
  const all = await entries(keeper);
  const yard = all.find((entry) => entry.what.yard).id;
  const second = all.filter((entry) => entry.what.hive)[1].id;
  await keeper.host.stop();
  await tell(keeper, "look", second, { larvae: "none", brood_disease: "suspected" });
  await to(keeper, `#/round/${yard}`);
  await keeper.tap(`${row("2")} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.reads("dock-alarm", /^! STOP, brood disease suspected/);
  const inSight = () =>
    keeper.driver.run(() => {
      const foot = document.querySelector(".foot").getBoundingClientRect();
      return [".dock-name", "[data-testid=dock-alarm]", "[data-testid=shut]"].every((css) => {
        const { top, bottom } = document.querySelector(css).getBoundingClientRect();
        return top >= foot.top - 1 && bottom <= Math.min(foot.bottom, innerHeight) + 1;
      });
    });
  await keeper.until("name, stop and Close are in sight", inSight);
});
