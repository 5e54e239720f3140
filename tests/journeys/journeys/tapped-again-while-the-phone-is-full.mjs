import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, log, row, rows, unfold } from "../house/round.mjs";
import { fill, free } from "../house/storage.mjs";

journey("she tapped again and again while the phone was full: each work is written once, and leaves the fields with it", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("count-5");
  await fill(keeper);
  for (const did of ["topped_up", "topped_up", "replaced"]) {
    await keeper.tap(`did-${did}`);
    await keeper.reads("unsaved-notice", did === "replaced" ? /Hive .?1.?: .*replaced/ : /Hive .?1.?: .*topped up/);
    await keeper.tap("ask-back");
  }
  await log(keeper, 2, "as_found");
  await keeper.reads("unsaved-notice", /Hive .?1.?: .*replaced, 5 beetles; Hive .?2.?: .*as found/);

  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.gone("unsaved-notice");
  const checks = (await entries(keeper)).filter(({ what }) => what.check).map(({ what }) => [what.check.did, what.check.count ?? null]);
  assert.equal(checks.length, 2, JSON.stringify(checks));
  assert.deepEqual(checks.map(([did]) => did).sort(), ["as_found", "replaced"]);
  // Hive 1 waits with nothing in its fields that would be logged a second time.
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keeper.reads("count", /not counted/i);
});

journey("there was room again and she tapped once more before Try again: the work is written once, and the notice speaks of the rest", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  await keeper.tap("count-5");
  await fill(keeper);
  await keeper.tap("did-topped_up");
  await keeper.reads("unsaved-notice", /Hive .?1.?: .*topped up/);
  await keeper.tap("ask-back");
  await log(keeper, 2, "as_found");
  await keeper.reads("unsaved-notice", /Hive .?1.?: .*topped up, 5 beetles; Hive .?2.?: .*as found/);

  await free(keeper);
  await log(keeper, 1, "topped_up");
  await keeper.until("only hive 2 is held", async () => !/Hive .?1/.test(await keeper.text("unsaved-notice")));
  await keeper.reads("unsaved-notice", /Hive .?2.?: .*as found/);
  await keeper.tap("unsaved-again");
  await keeper.gone("unsaved-notice");
  const checks = (await entries(keeper)).filter(({ what }) => what.check).map(({ what }) => what.check.did);
  assert.deepEqual(checks.sort(), ["as_found", "topped_up"]);
});

journey("the page was loaded anew over what the full phone had not kept: it is shown still, and kept once there is room", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  await fill(keeper);
  await log(keeper, 2, "topped_up");
  await keeper.reads("unsaved-notice", /Not kept: Hive .?2.?: topped up/);
  for (let time = 0; time < 2; time += 1) {
    // The browser would ask her; a phone that puts the page away does not.
    await keeper.driver.run(() => (window.onbeforeunload = null));
    await keeper.reload();
    await keeper.reads("unsaved-notice", /Not kept: Hive .?2.?: topped up/);
  }
  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.gone("unsaved-notice");
  await keeper.reload();
  assert.equal(await keeper.shows("unsaved-notice"), false);
  assert.equal((await entries(keeper)).filter(({ what }) => what.check?.did === "topped_up").length, 1);
});

journey("she counted, the full phone kept nothing, and the page was loaded anew: what is kept at last leaves the fields all the same", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 3);
  for (const tag of [1, 2]) {
    await keeper.tap(`${row(tag)} [data-testid=row-open]`);
    await keysReady(keeper);
    await keeper.tap("count-5");
    if (tag === 1) await fill(keeper);
    await keeper.tap("did-topped_up");
    await keeper.reads("unsaved-notice", new RegExp(`Hive .?${tag}.?: .*topped up`));
    await keeper.tap("ask-back");
  }
  await keeper.driver.run(() => (window.onbeforeunload = null));
  await keeper.reload();
  await keeper.reads("unsaved-notice", /Hive .?1.?: .*topped up, 5 beetles; Hive .?2.?: .*topped up/);
  await keeper.reads("panel", /Hive .?2/);
  await keeper.reads("count", /\b5\b/);
  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.gone("unsaved-notice");
  await keeper.reads("count", /not counted/i);
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keeper.reads("panel", /Hive .?1/);
  await keeper.reads("count", /not counted/i);
  const checks = (await entries(keeper)).filter(({ what }) => what.check);
  assert.equal(checks.length, 2);
});

journey("a form was refused by the full phone: Try again loses nothing that stands in it, and what was kept at last is not written twice", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  await unfold(keeper, "add-hives");
  await keeper.type("#hives-tags", "7, 8");
  await unfold(keeper, "rename-yard");
  await keeper.type("#yard-name", "Old orchard");
  await fill(keeper);
  await keeper.tap("add-hives-go");
  await keeper.reads("unsaved-notice", /Not kept: .*2 hives/);
  await keeper.tap("unsaved-again");
  assert.equal(await keeper.value("#hives-tags"), "7, 8");
  assert.equal(await keeper.value("#yard-name"), "Old orchard");

  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.gone("unsaved-notice");
  await keeper.until("the form is empty", async () => (await keeper.value("#hives-tags")) === "");
  assert.equal(await keeper.value("#yard-name"), "Old orchard", "what nobody asked to keep stays");
  assert.equal((await rows(keeper)).length, 4);
  assert.equal(/did not keep/.test(await keeper.text("main")), false, "nothing says that it was not kept");

  // What was typed while it was not kept is no part of it, and stays.
  await keeper.type("#hives-tags", "9");
  await fill(keeper);
  await keeper.tap("add-hives-go");
  await keeper.reads("unsaved-notice", /Not kept: .*1 hive/);
  await keeper.type("#hives-tags", "10");
  await free(keeper);
  await keeper.tap("unsaved-again");
  await keeper.gone("unsaved-notice");
  await keeper.until("5 hives are listed", async () => (await rows(keeper)).length === 5);
  assert.equal(await keeper.value("#hives-tags"), "10");
});
