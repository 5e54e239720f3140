import { findings } from "../house/axe.mjs";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { scheme, tour } from "../house/tour.mjs";

for (const light of ["sun", "night"]) {
  journey(`every screen holds WCAG 2.2 AA in the ${light} scheme`, {}, async (keeper) => {
    await keeper.open();
    await scheme(keeper, light);
    const found = [];
    await tour(keeper, async (screen) => {
      for (const line of await findings(keeper)) found.push(`${screen}: ${line}`);
    });
    assert.deepEqual(found, []);
  });
}
