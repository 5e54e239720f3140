import { findings } from "../house/axe.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { scheme, survey } from "../house/tour.mjs";

journey("every screen holds WCAG 2.2 AA, in full sun and at night", {}, async (keeper) => {
  await keeper.open();
  await scheme(keeper, "night");
  await scheme(keeper, "sun");
  const grounds = new Set();
  const found = await survey(keeper, async () => {
    const all = [];
    for (const light of ["night", "sun"]) {
      // As the settings have just been seen to do it.
      const ground = await keeper.driver.run((light) => {
        document.documentElement.dataset.scheme = light;
        // Halfway down a page the bar at the thumb lies over some line of it, and half a key is a small target. Rows
        // that come into sight change where the end is, so the bar is put after the page instead of scrolling there.
        document.querySelector(".foot").style.position = "static";
        return getComputedStyle(document.body).backgroundColor;
      }, light);
      grounds.add(ground);
      for (const line of await findings(keeper)) all.push(`${light}: ${line}`);
      await keeper.driver.run(() => document.querySelector(".foot").style.removeProperty("position"));
    }
    return all;
  });
  assert.equal(grounds.size, 2, "sun and night have grounds of their own");
  assert.deepEqual(found, []);
});
