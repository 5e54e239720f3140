// Walking a yard: what most journeys begin with.

/** The row of a hive. */
export const row = (tag) => `[data-testid=row][data-tag="${tag}"]`;

/** Turns the Bench sum into a yard of `hives` hives, tagged 1 to `hives`; `filled` says when its traps were, `form` which. */
export async function keepYard(keeper, hives, name = "Orchard", filled = "today", form = "") {
  await keeper.place("bench");
  await keeper.type("bench-hives", `${hives}`);
  await keeper.tap("bench-keep");
  if (form) await keeper.tap(`.radio:has([name=keep-form][value=${form}])`);
  await keeper.type("keep-name", name);
  if (filled !== "today") await keeper.tap(`.radio:has([name=keep-filled][value=${filled}])`);
  await keeper.tap("keep-save");
  await keeper.until(`${hives} hives are listed`, async () => (await rows(keeper)).length === hives);
}

/** The rows from top to bottom: tag, when due, and the words on them. */
export const rows = (keeper) =>
  keeper.driver.run(() => {
    const rows = [...document.querySelectorAll("[data-testid=row]")];
    // As Keeper.text does it.
    rows.forEach((row) => row.style.setProperty("content-visibility", "visible"));
    const read = rows.map((row) => ({
      tag: row.dataset.tag,
      due: row.dataset.due,
      words: row.innerText.replace(/\s+/g, " ").trim(),
    }));
    rows.forEach((row) => row.style.removeProperty("content-visibility"));
    return read;
  });

/** When the hive is due, as its row says. */
export const due = (keeper, tag) => keeper.attribute(row(tag), "data-due");

/**
 * Logs a hive: one tap on its row, one on what was done. After a hive the panel goes on to the next by itself;
 * then its row needs no tap.
 */
export async function log(keeper, tag, did) {
  const open = `${row(tag)} [data-testid=row-open]`;
  if ((await keeper.attribute(open, "aria-expanded")) !== "true") await keeper.tap(open);
  await keysReady(keeper);
  await keeper.tap(`did-${did}`);
  // Of several traps it is asked which.
  if (["spilled", "missing", "glued_shut"].includes(did)) {
    await keysReady(keeper);
    await keeper.tap("which-all");
  }
}

/** Notes that a hive was left alone, and why. */
export async function skip(keeper, tag, why) {
  await log(keeper, tag, "skipped");
  await keeper.tap(`skip-${why}`);
}

/** The panel's keys take no tap for a moment after they have come up, against a wet screen's own taps. */
export const keysReady = (keeper) =>
  keeper.until("the panel's keys take taps", async () => (await keeper.attribute("panel", "data-ready")) === "true");

/** Two taps on a key before the page has drawn anything. */
export const atOnce = (keeper, mark) =>
  keeper.driver.run((mark) => {
    const key = document.querySelector(`[data-testid=${mark}]`);
    key.click();
    key.click();
  }, mark);

/** The page as it is opened on another day. */
export async function onTheDay(keeper, clock) {
  await keeper.host.change({ faults: { ...keeper.host.settings.faults, clock } });
  await keeper.reload();
}

/** What the pages of the book hold, entry by entry, without their envelopes. */
export async function entries(keeper) {
  const pages = await keeper.pages();
  const all = Object.values(pages).flatMap((text) => {
    const payload = JSON.parse(text).d;
    return Array.isArray(payload) ? payload : payload.entries;
  });
  // Not every browser names its keys in an order.
  const nth = ({ id }) => Number(id.split("-").at(-1));
  return all.sort((one, other) => nth(one) - nth(other));
}

/** Opens a stretch of the page that is folded up. */
export async function unfold(keeper, name) {
  const fold = `[data-testid=${name}]`;
  if ((await keeper.attribute(fold, "open")) === null) await keeper.tap(`${fold} > summary`);
}
