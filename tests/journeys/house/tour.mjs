// Every screen of the page, one after the other, for what must hold on all of them.

/**
 * Shows each screen and calls `look` with its name.
 * @param {import("./keeper.mjs").Keeper} keeper with the page open
 */
export async function tour(keeper, look) {
  await keeper.place("bench");
  const cards = await keeper.driver.run(() => [...document.querySelectorAll("main .card-title button")].map(({ id }) => id));
  for (const id of cards) {
    if ((await keeper.attribute(`#${id}`, "aria-expanded")) === "false") await keeper.tap(`#${id}`);
  }
  await keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
  await look("bench");

  await keeper.tap(".head-key");
  await look("settings");
  await keeper.tapWords("Close", "dialog[open]");

  for (const place of ["round", "load", "book"]) {
    await keeper.place(place);
    await look(`${place}, nothing kept`);
  }
}

/**
 * Takes the tour and collects what `check` finds wrong on each screen, each line headed by the screen's name.
 * What was found before a screen could not be reached is often the reason, so it is told first.
 */
export async function survey(keeper, check) {
  const found = [];
  try {
    await tour(keeper, async (screen) => {
      for (const line of await check(screen)) found.push(`${screen}: ${line}`);
    });
  } catch (error) {
    if (found.length) error.message = `${found.join("\n")}\n${error.message}`;
    throw error;
  }
  return found;
}

/** Sets the page to sun or night in its own settings. */
export async function scheme(keeper, name) {
  await keeper.tap(".head-key");
  await keeper.tap(`dialog[open] label:has(input[value=${name}])`);
  await keeper.tapWords("Close", "dialog[open]");
  await keeper.until(`the page is in the ${name} scheme`, async () => (await keeper.attribute("html", "data-scheme")) === name);
}
