import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { survey } from "../house/tour.mjs";

/** Screens used at an open hive. */
const FIELD = /^round: /;

/** Everything that takes a tap, with the size of what the finger meets. */
const keys = (keeper) =>
  keeper.driver.run(() => {
    const shown = (element) => element.checkVisibility() && element.getClientRects().length > 0;
    const takes = "a[href], button, select, summary, input:not([type=radio], [type=checkbox], [type=file], [type=hidden]), textarea, label:has(input[type=radio], input[type=checkbox], input[type=file])";
    const scope = document.querySelector("dialog[open]") ?? document;
    return [...scope.querySelectorAll(takes)].filter(shown).map((element) => {
      const { width, height } = element.getBoundingClientRect();
      const name = (element.getAttribute("aria-label") || element.innerText || element.id).trim().slice(0, 40);
      const field = element.matches("input, select, textarea");
      // The head, its messages, the notices above every place and the folded forms are not for work at a hive.
      const work = !field && !element.closest(".head, .messages, .notices, details.more");
      // What is written down beside the traps is written at the open hive, its fields with it.
      const written = element.closest(".write-form") !== null && !element.matches("textarea");
      return { name: `${element.localName} "${name}"`, width, height, work, written };
    });
  });

journey("gloved fingers: no key under 48 px anywhere, none under 60 px in the Round or in a record", {}, async (keeper) => {
  await keeper.open();
  let met = 0;
  const told = new Set();
  const small = await survey(keeper, async (screen) => {
    const all = await keys(keeper);
    met += all.length;
    const found = [];
    for (const { name, width, height, work, written } of all) {
      const least = written || (work && FIELD.test(screen)) ? 60 : 48;
      // A quarter pixel is what rounding to device pixels may take.
      if (height >= least - 0.25 && width >= 48 - 0.25) continue;
      const line = `${name} is ${width.toFixed(1)} × ${height.toFixed(1)}, least ${least}`;
      // What stands on many screens is told once, on the first.
      if (!told.has(line)) found.push(line);
      told.add(line);
    }
    return found;
  });
  assert.ok(met > 200, `met only ${met} keys`);
  assert.deepEqual(small, []);
});
