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

/** Sets the page to sun or night in its own settings. */
export async function scheme(keeper, name) {
  await keeper.tap(".head-key");
  await keeper.tap(`dialog[open] label:has(input[value=${name}])`);
  await keeper.tapWords("Close", "dialog[open]");
  await keeper.until(`the page is in the ${name} scheme`, async () => (await keeper.attribute("html", "data-scheme")) === name);
}
