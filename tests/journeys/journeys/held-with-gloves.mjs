import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { tour } from "../house/tour.mjs";

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
      return { name: `${element.localName} "${name}"`, width, height, field, bar: !!element.closest(".foot") };
    });
  });

journey("gloved fingers: no key under 48 px anywhere, none under 60 px in the Round", {}, async (keeper) => {
  await keeper.open();
  const small = [];
  let met = 0;
  await tour(keeper, async (screen) => {
    for (const { name, width, height, field } of await keys(keeper)) {
      met += 1;
      const least = /^round/.test(screen) && !field ? 60 : 48;
      // A quarter pixel is what rounding to device pixels may take.
      if (height < least - 0.25 || width < 48 - 0.25) small.push(`${screen}: ${name} is ${width.toFixed(1)} × ${height.toFixed(1)}, least ${least}`);
    }
  });
  assert.ok(met > 50, `met only ${met} keys`);
  assert.deepEqual(small, []);
});
