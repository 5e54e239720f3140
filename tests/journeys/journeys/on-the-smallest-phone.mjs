import { LETTERS, SMALL } from "../house/engines.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { survey } from "../house/tour.mjs";

/** What reaches past the side of the page or is cut off by its box. */
const overflow = (keeper) =>
  keeper.driver.run(() => {
    const wide = document.documentElement.clientWidth;
    const found = [];
    const over = document.scrollingElement.scrollWidth - wide;
    if (over > 0) found.push(`the page scrolls sideways by ${over} px`);
    for (const element of (document.querySelector("dialog[open]") ?? document.body).querySelectorAll("*")) {
      if (!element.checkVisibility() || element.closest("svg svg, [aria-hidden=true]")) continue;
      const { left, right, width, height } = element.getBoundingClientRect();
      if (width < 2 || height < 2) continue;
      const name = `${element.localName}.${element.className?.baseVal ?? element.className} "${(element.innerText ?? "").slice(0, 30)}"`;
      if (right > wide + 0.5 || left < -0.5) found.push(`${name} spans ${left.toFixed(0)}…${right.toFixed(0)} of ${wide}`);
      const style = getComputedStyle(element);
      const hides = /hidden|clip|auto|scroll/.test(style.overflowX) && !element.matches("input, select, textarea");
      if (hides && element.scrollWidth > element.clientWidth + 1) found.push(`${name} hides ${element.scrollWidth - element.clientWidth} px at its side`);
    }
    return found;
  });

journey("on a phone 320 px wide nothing scrolls sideways or is cut off", {}, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  assert.equal(await keeper.driver.run(() => innerWidth), 320);
  assert.deepEqual(await survey(keeper, () => overflow(keeper)), []);
});

journey("at 320 px with letters twice as large nothing scrolls sideways or is cut off", { letters: 2 * LETTERS }, async (keeper) => {
  await keeper.engine.resize(SMALL);
  await keeper.open();
  const size = await keeper.driver.run(() => parseFloat(getComputedStyle(document.querySelector("nav [aria-current]")).fontSize));
  assert.ok(size >= 2 * LETTERS, `the bar's letters have ${size} px: they do not follow the phone's setting`);
  assert.deepEqual(await survey(keeper, () => overflow(keeper)), []);
});
