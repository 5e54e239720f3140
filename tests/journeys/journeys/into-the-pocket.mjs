import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { due, keepYard, keysReady, log } from "../house/round.mjs";
import { secondTexts } from "../house/storage.mjs";

journey("the phone went into the pocket before her tap was drawn: both copies have it, and what she opens next is whole", { faults: { frames: "held" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await log(keeper, 1, "topped_up");
  await keeper.until("the second copy has hive 1", async () => (await secondTexts(keeper)).includes("topped_up"));
  const root = (name, value) => keeper.driver.run((name, value) => void (document.documentElement.dataset[name] = value), name, value);
  const told = () => keeper.driver.run(() => void document.documentElement.dispatchEvent(new Event("out-of-sight")));
  await keeper.until("hive 2 is next", async () => /Hive .?2/.test(await keeper.text("panel")));
  await keysReady(keeper);
  await root("frames", "held");
  await keeper.driver.run(() => document.querySelector("[data-testid=did-as_found]").click());
  const first = () => keeper.driver.run(() => Object.values(localStorage).join("\n"));
  await keeper.until("the first copy has hive 2", async () => (await first()).includes("as_found"));
  assert.ok(!(await secondTexts(keeper)).includes("as_found"), "the second waits for the frame");
  await root("hidden", "true");
  await told();
  await keeper.until("the second copy has it though nothing is drawn", async () => (await secondTexts(keeper)).includes("as_found"));

  // Opened by a link while the page is out of sight: no frame comes, and all of it is there.
  await keeper.driver.run(() => void (location.hash = "#/load"));
  await keeper.until("what to buy stands below the oil", () => keeper.driver.run(() => document.querySelector("[data-testid=load-buy]") !== null));
  await root("frames", "drawn");
  await root("hidden", "false");
  await told();
  await keeper.reload();
  await keeper.place("round");
  assert.equal(await due(keeper, 1), "later");
  assert.equal(await due(keeper, 2), "later");
});
