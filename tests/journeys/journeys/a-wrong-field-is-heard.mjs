import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { entries, keepYard, keysReady, row } from "../house/round.mjs";

/** What has the focus, and whether its name for a screen reader goes on with what is wrong. */
const heard = (keeper) =>
  keeper.driver.run(() => {
    const field = document.activeElement;
    const told = (field.getAttribute("aria-describedby") ?? "").split(" ").map((id) => document.getElementById(id)?.innerText ?? "");
    return [field.id, field.getAttribute("aria-invalid"), told.join(" ").trim() !== ""];
  });

journey("by ear she pressed a key while a folded field was wrong: the focus is on the field, and it says why", { faults: { clock: "2026-07-15T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const before = (await entries(keeper)).length;
  await keeper.tap(`${row(1)} [data-testid=row-open]`);
  await keysReady(keeper);
  for (const [field, text, key] of [
    ["log-before", "120", "did-topped_up"],
    ["log-count", "1/2", "did-topped_up"],
    ["log-note", "x".repeat(501), "skip-temper"],
  ]) {
    await keeper.tap("more");
    if (text.length > 20) {
      // Key by key it would take the drivers half a minute.
      await keeper.one(`#${field}`);
      await keeper.driver.run((field, text) => {
        const area = document.getElementById(field);
        area.value = text;
        area.dispatchEvent(new Event("input", { bubbles: true }));
      }, field, text);
    } else await keeper.type(field, text);
    await keeper.tap("more");
    await keeper.gone(`#${field}`);
    if (key.startsWith("skip")) await keeper.tap("did-skipped");
    await keeper.tap(key);
    await keeper.until(`the focus is on ${field}`, async () => (await heard(keeper))[0] === field);
    assert.deepEqual(await heard(keeper), [field, "true", true]);
    await keeper.driver.run((field) => {
      const input = document.getElementById(field);
      input.value = "";
      input.dispatchEvent(new Event("input", { bubbles: true }));
    }, field);
    await keeper.tap("more");
  }
  assert.equal((await entries(keeper)).length, before, "nothing was written");
});
