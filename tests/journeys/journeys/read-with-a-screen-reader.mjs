import { findings } from "../house/axe.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { scheme, survey } from "../house/tour.mjs";

for (const light of ["sun", "night"]) {
  journey(`every screen holds WCAG 2.2 AA in the ${light} scheme`, {}, async (keeper) => {
    await keeper.open();
    await scheme(keeper, light);
    const found = await survey(keeper, async () => {
      // Halfway down a page the bar at the thumb lies over some line of it; at its end it lies over none.
      await keeper.driver.run(() => scrollTo({ top: document.body.scrollHeight, behavior: "instant" }));
      return findings(keeper);
    });
    assert.deepEqual(found, []);
  });
}
