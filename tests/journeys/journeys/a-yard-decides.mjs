import { LETTERS, PHONE, SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard } from "../house/round.mjs";

const ON = { faults: { clock: "2026-07-01T09:00" } };

/** Hives by tag, and the yard, as the book names them. */
async function names(keeper) {
  const all = await entries(keeper);
  const hives = all.filter((entry) => entry.what.hive).map((entry) => entry.id);
  const yard = all.find((entry) => entry.what.yard).id;
  return { hives, yard };
}
const written = async (keeper) => (await entries(keeper)).filter((entry) => entry.what.record).length;

/** To a place of the page without asking the server, which is gone. */
async function to(keeper, hash) {
  await keeper.driver.run((hash) => (location.hash = hash), hash);
  await keeper.until(`${hash} is shown`, () => keeper.driver.run((hash) => location.hash === hash, hash));
}

/** Fills in a form: words are chosen within their field, everything else is typed. */
async function tell(keeper, blank, of, answers) {
  const before = await written(keeper);
  await to(keeper, `#/write/${blank}${of ? `/${of}` : ""}`);
  await keeper.one("write-save");
  await keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
  for (const [name, value] of Object.entries(answers)) {
    if (value.word !== undefined) await keeper.tap(`.radio:has([name=write-${name}][value="${value.word}"])`);
    else if (value.day) await typeDay(keeper, `#write-${name}`, value.day);
    else await keeper.type(`#write-${name}`, `${value}`);
  }
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await written(keeper)) === before + 1);
}
const typeDay = (keeper, where, iso) =>
  keeper.driver.run((where, iso) => {
    const field = document.querySelector(where);
    field.value = iso;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }, where, iso);
const word = (word) => ({ word });
const unfolded = (keeper) => keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
const nothingWider = async (keeper) =>
  assert.ok(await keeper.driver.run(() => document.documentElement.scrollWidth <= innerWidth), "nothing sticks out of the page");

journey("a slimed hive: the card leads from the look to the freezer batches", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  const { hives, yard } = await names(keeper);
  await keeper.engine.resize(SMALL);
  await keeper.host.stop();
  await to(keeper, `#/hive/${hives[1]}`);
  await keeper.gone("same-day");
  await tell(keeper, "look", hives[1], { larvae: word("many"), slime: word("yes"), frames_of_bees: 5, frames_of_comb: 14 });
  await to(keeper, `#/hive/${hives[1]}`);
  const card = await keeper.reads("same-day", /Brood scale or ropy cells\? Stop\. Call the inspector/);
  // In the order in which the work goes.
  const order = ["Stop. Call the inspector", "Take out every comb", "Take off what the bees do not cover", "Fresh traps", "Move no comb", "ground round it", "Open the hives beside it"];
  const places = order.map((step) => card.indexOf(step));
  assert.ok(places.every((at, nth) => at >= 0 && (nth === 0 || at > places[nth - 1])), `${places}`);
  await keeper.reads("card-open-combs", /9 of 9 frames not accounted for/);
  await nothingWider(keeper);
  await keeper.tap("card-comb");
  await keeper.type("#write-frames", "4");
  await keeper.tap('.radio:has([name=write-to][value="freezer"])');
  await keeper.tap('.radio:has([name=write-why][value="slime"])');
  await keeper.tap("write-save");
  await keeper.reads("card-open-combs", /5 of 9 frames not accounted for/);
  await keeper.reads("card-fates", /So far: 4 to the freezer/);
  await keeper.tap("card-freezer");
  await keeper.reads("freezer-waiting", /^4$/);
  await keeper.reads("freezer-from", /Hive 2: 4 frames/);
  await keeper.type("#freezer-fit", "3");
  await keeper.reads("freezer-next", /^3$/);
  await keeper.tapWords("Write down a batch");
  await keeper.one("write-save");
  assert.equal(await keeper.value("#write-frames"), "3", "what fits in of the four that wait");
  await tell(keeper, "freezer", "", { frames: 3, freezer: -10, cold_since: { day: "2026-07-01" } });
  await keeper.reads("freezer-waiting", /^1$/);
  await keeper.reads("freezer-within", /3 frames of .*cold since .*out on .*in 3 days.*Warmer than −12 °C/);
  await nothingWider(keeper);
  // The other ways of the card.
  for (const [key, heading] of [["card-shrink", /Enough bees/], ["card-ground", /Which ground/], ["card-open", /How many hives/]]) {
    await to(keeper, `#/hive/${hives[1]}`);
    await keeper.tap(key);
    await keeper.reads("main h1", heading);
    await nothingWider(keeper);
  }
  await tell(keeper, "look", hives[1], { larvae: word("none") });
  await to(keeper, `#/hive/${hives[1]}`);
  await keeper.one("hive-state");
  await keeper.gone("same-day");
});

journey("the list that closes up a yard and what to buy for it", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  const { hives, yard } = await names(keeper);
  await keeper.host.stop();
  await keeper.tap("to-decide");
  await keeper.reads("decide", /What closes the hives up/);
  await tell(keeper, "shell", hives[0], { crack: 4, crack_length: 50, notch: word("open"), slick_board: word("dirty"), burr_comb: word("not_looked") });
  await tell(keeper, "shell", hives[1], { crack: 3, notch: word("open"), slick_board: word("none"), empty_space: word("yes") });
  await tell(keeper, "entrance", hives[0], { width: 100 });
  await to(keeper, `#/decide/${yard}/close`);
  const said = await keeper.reads("close-hives", /Hive 1.*! Crack of 4 mm, 500 mm in all: seal it.*! Notch open: put a screen over it.*! Slick board dirty/);
  assert.match(said, /Not looked: burr comb\./);
  assert.match(said, /Hive 2.*how long is not written down.*! No slick board: put one in.*! Room that no bees cover/);
  assert.match(said, /Hive 3 Nothing is written down about how it is closed\./);
  await keeper.reads("main", /How often slick boards are to be cleaned is not set/);
  await keeper.reads("close-buy", /1 sheet 8 × 6 = 48 screens from a sheet, laid as typed 2 ÷ 48, rounded up = 1 sheet/);
  await keeper.reads("close-buy", /0\.55 m 0\.5 m \+ 10 % = 0\.55 m Type how far one tube goes/);
  await keeper.reads("close-buy", /Type for how many boards one tin is enough/);
  await keeper.reads("close-buy", /Slick boards: 1 \(hive .?2.?\)/);
  await keeper.reads("close-buy", /Length of the cracks not written down, and not in this sum: 1 \(hive .?2.?\)/);
  await keeper.reads("close-buy", /Reducers: type the widest entrance/);
  await keeper.type("#closing-entrance", "20");
  await keeper.reads("close-hives", /! Entrance 100 mm since .*: put a reducer in/);
  await keeper.reads("close-buy", /Entrance reducers: 1 \(hive .?1.?\)/);
  await unfolded(keeper);
  await keeper.type("#closing-tube", "0.25");
  await keeper.reads("close-buy", /3 tubes .*0\.55 m ÷ 0\.25 m, rounded up = 3 tubes/);
  await keeper.type("#closing-cut", "0");
  await keeper.reads("#closing-cut-says", /More than 0/);
  await keeper.type("#closing-cut", "70");
  await keeper.type("#closing-cut-to", "60");
  await keeper.reads("close-buy", /Not one screen of this size comes out of this sheet/);
  await keeper.engine.resize(SMALL);
  await nothingWider(keeper);
  // Sealed and screened: the list gets shorter, and what was not touched stays.
  await tell(keeper, "shell", hives[0], { crack: 0, notch: word("screened") });
  await to(keeper, `#/decide/${yard}/close`);
  await keeper.reads("close-hives", /Hive 1.*! Slick board dirty.*No crack wider than 0 mm: no beetle gets through.*Notch screened.*Hive 2/);
});

journey("ground from real stands with a map", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  const { hives, yard } = await names(keeper);
  await keeper.host.stop();
  await to(keeper, `#/decide/${yard}/ground`);
  // Nothing is invented: no map, no square metres, and a row only as what it is.
  await keeper.reads("ground-no-stands", /Nobody wrote down where these hives stand/);
  await keeper.gone("#ground-hives");
  await keeper.reads("ground-packs", /^–$/);
  await keeper.tap("ground-show");
  await keeper.reads("ground-example", /An example of hives in rows, and not this yard/);
  await keeper.one("#ground-hives");
  await tell(keeper, "stand", hives[0], { across: 0, along: 0 });
  await tell(keeper, "stand", hives[1], { across: 10, along: 0 });
  await to(keeper, `#/decide/${yard}/ground`);
  // No larvae were seen: nothing is chosen for her, and nothing reckoned.
  await keeper.reads(".decide", /No larvae or slime was written down in the last 60 days\. Choose the hives\./);
  await keeper.reads("ground-area", /^–$/);
  await keeper.tap('.radio:has([name=decide-ground][value="all"])');
  await keeper.reads("ground-left-out", /nobody wrote down where they stand: 3/);
  assert.deepEqual(await keeper.driver.run(() => [...document.querySelectorAll("main details .ways a")].map((way) => way.textContent.replace(/[^a-zA-Z0-9]+/g, " ").trim())), ["Hive 3"]);
  // Two rings that do not touch: twice 4.41.
  await keeper.reads("ground-area", /^8\.8 m²$/);
  const map = () => keeper.driver.run(() => {
    const drawing = document.querySelector("[data-testid=ground-map] svg");
    return { says: drawing.getAttribute("aria-label"), hives: drawing.querySelectorAll(".d-ring").length, text: drawing.textContent };
  });
  const drawn = await map();
  assert.equal(drawn.hives, 2);
  assert.match(drawn.says, /^Map of 2.hives with the ground within reach: 1, 2\. 12\.2.m wide, 2\.3.m long\.$/);
  assert.match(drawn.text, /^12[25].m$/);
  await tell(keeper, "stand", hives[1], { across: 0, along: 0 });
  await to(keeper, `#/decide/${yard}/ground`);
  await keeper.reads("ground-area", /^4\.4 m²$/);
  await keeper.reads("ground-product", /^–$/);
  await keeper.type("#ground-rate", "5");
  await keeper.reads("ground-product", /^22$/);
  await keeper.type("#decide-pack", "8");
  await keeper.reads("ground-packs", /^3$/);
  await keeper.type("#ground-paved", "100");
  await keeper.reads("ground-area", /^0 m²$/);
  await keeper.type("#ground-paved", "");
  // Only where larvae were seen.
  await keeper.reads("ground-window", /^No find of larvae is under way here: there are no days to tell\.$/);
  await tell(keeper, "look", hives[0], { larvae: word("few") });
  await tell(keeper, "yard_facts", yard, { paved: 2 });
  await to(keeper, `#/decide/${yard}/ground`);
  await keeper.reads("ground-window", /^For dates this page needs the yard’s temperatures/);
  await keeper.tap('.radio:has([name=decide-ground][value="larvae"])');
  await keeper.until("one hive is drawn", async () => (await map()).hives === 1);
  await keeper.reads("ground-area", /^2\.4 m²$/);
  await keeper.tap('.radio:has([name=decide-ground][value="tags"])');
  await keeper.type("#decide-tags", "1-2");
  await keeper.until("two are drawn", async () => (await map()).hives === 2);
  await keeper.engine.resize(SMALL);
  await nothingWider(keeper);
});

/** The words on the map, as boxes on the screen, with how large their letters are there. */
const onTheMap = (keeper) =>
  keeper.driver.run(() => {
    const map = document.querySelector("[data-testid=ground-map] svg");
    const scale = map.getBoundingClientRect().width / map.viewBox.baseVal.width;
    return [...map.querySelectorAll("text")].map((text) => {
      const { x, y, width, height } = text.getBBox();
      return { words: text.textContent, left: x, right: x + width, top: y, bottom: y + height, px: scale * parseFloat(getComputedStyle(text).fontSize), wide: map.viewBox.baseVal.width };
    });
  });

for (const [words, size] of [["390 px", PHONE], ["320 px", SMALL]])
  journey(`at ${words} with letters twice as large no two numbers on the map of the ground lie over each other, and what has no room is listed`, { ...ON, letters: 2 * LETTERS }, async (keeper) => {
    await keeper.engine.resize(size);
    await keeper.open();
    await keepYard(keeper, 12);
    const { hives, yard } = await names(keeper);
    await keeper.host.stop();
    // Two rows, the hives of each 70 cm apart; the last stands as close as hives can.
    for (const [nth, hive] of hives.entries()) await tell(keeper, "stand", hive, { across: nth < 11 ? (nth % 6) * 0.7 + (nth > 5 ? 4.5 : 0) : 8.4, along: nth < 6 ? 0 : 1 });
    await to(keeper, `#/decide/${yard}/ground`);
    await keeper.tap('.radio:has([name=decide-ground][value="all"])');
    const list = (await keeper.reads("ground-no-room", /^Drawn, but without room for their numbers, in the order of the walk: /)).split(": ")[1].split(", ");
    const all = await onTheMap(keeper);
    const tags = all.slice(0, -1).map(({ words }) => words);
    assert.deepEqual([...tags, ...list].sort((one, two) => one - two), hives.map((_, nth) => `${nth + 1}`), "each hive is on the map or in the list");
    assert.ok(tags.length >= 4 && list.length > 0, `${tags} on the map, ${list} in the list`);
    for (const [nth, one] of all.entries()) {
      assert.ok(one.px >= 18, `${one.words} has ${one.px} px`);
      assert.ok(one.left >= 0 && one.right <= one.wide, `${one.words} is cut off`);
      for (const two of all.slice(nth + 1)) {
        // Lines of letters overlap in their boxes before they do on the paper: a tenth of the height is leading.
        const across = Math.min(one.right, two.right) - Math.max(one.left, two.left);
        const down = Math.min(one.bottom, two.bottom) - Math.max(one.top, two.top);
        assert.ok(across <= 0 || down <= 4, `${one.words} lies over ${two.words}`);
      }
    }
    // Chosen alone, each has its room.
    await keeper.tap('.radio:has([name=decide-ground][value="tags"])');
    await keeper.type("#decide-tags", list[0]);
    await keeper.gone("ground-no-room");
    assert.deepEqual((await onTheMap(keeper)).slice(0, -1).map(({ words }) => words), [list[0]]);
    if (size === SMALL) await nothingWider(keeper);
  });

journey("she draws the hives to open, and what the looks since prove is said", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 5);
  const { hives, yard } = await names(keeper);
  await keeper.host.stop();
  await tell(keeper, "look", hives[0], { larvae: word("none"), frames_of_bees: 4, frames_of_comb: 10 });
  await to(keeper, `#/decide/${yard}/open`);
  await keeper.reads("open-count", /^5$/);
  await keeper.reads("open-weak", /^Hive 1$/);
  await keeper.reads("open-proves", /^–$/);
  await keeper.tap("decide-draw");
  const list = await keeper.reads("open-drawn", /Hive 1.*Hive 2.*Hive 3.*Hive 4.*Hive 5/);
  assert.match(list, /Hive 2: to be opened/);
  await tell(keeper, "look", hives[1], { larvae: word("none") });
  await to(keeper, `#/decide/${yard}/open`);
  await keeper.reads("open-drawn", /Hive 2: looked, none seen Hive 3: to be opened/);
  await keeper.reads("open-proves", /^at most \d of 5$/);
  await tell(keeper, "look", hives[2], { larvae: word("few") });
  await to(keeper, `#/decide/${yard}/open`);
  await keeper.reads("open-drawn", /Hive 3: larvae or slime found/);
  await keeper.reads("open-proves", /^found in 1 of [23]$/);
  // No bees are left in hive 5, whatever the book says of its care.
  await to(keeper, `#/write/dead_out/${hives[4]}`);
  await keeper.one("write-save");
  await keeper.tapWords("starved", ".write-form");
  await keeper.tap("write-save");
  await keeper.gone("write-save");
  await to(keeper, `#/decide/${yard}/open`);
  await keeper.until("hive 5 is drawn no more", async () => !/Hive 5/.test(await keeper.text("open-drawn")));
  await keeper.reads("main", /Left out, dead-out written down, but the book has it in care: .?5/);

  await to(keeper, `#/decide/${yard}/comb`);
  await keeper.reads("comb-hives", /Less than seven tenths covered Hive 1 .*8 sides ÷ \(2 × 10 frames\) = 40 %/);
  await keeper.reads("main", /Never join\. Call the inspector/);
  await keeper.reads("split-examples", /^Example number until you type your own: Frames of comb for the new hive\.$/);
  await keeper.reads("comb-split", /carry over – Type the bees and the comb of a hive, or take one from the hives of a yard\..*Go or wait – Type the bees/);
  await keeper.tap("split-of");
  await keeper.reads("comb-split", /Go or wait Wait/);
  await keeper.type("#split-bees", "16");
  await keeper.type("#split-stays", "10");
  await keeper.reads("comb-split", /carry over 8 .*New hive: 8 × 70 % ÷ 5 = 112 %.*Old hive: \(16 − 8 × 70 %\) ÷ 10 = 104 %.*Go or wait Go .*Wanted: 10 × 90 % \+ 8 × 70 %, rounded up, at least 8 = 15/);
  await keeper.engine.resize(SMALL);
  await nothingWider(keeper);
});
