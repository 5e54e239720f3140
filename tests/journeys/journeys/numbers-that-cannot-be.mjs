import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

/** What was typed, where, and what the page has to say to it. */
const TYPED = [
  ["#hives", "-3", /0 or more/],
  ["#hives", "1/2", /whole/i],
  ["#hives", "ten", /number/i],
  ["#hives", "1000", /500/],
  ["#holds", "1.500", /1\.5\b.*1,?500/],
  ["#holds", "12 oz", /US or imperial/],
  ["#holds", "20 g", /weight|volume/i],
  ["#holds", "0", /more than 0/i],
];

journey("she typed what cannot be: it stays as typed, and the page says what to type instead", {}, async (keeper) => {
  await keeper.open();
  for (const [field, text, says] of TYPED) {
    const usual = await keeper.value(field);
    await keeper.type(field, text);
    const told = await keeper.driver.run((field) => document.querySelector(field).getAttribute("aria-describedby").split(" ").map((id) => `#${id}`).join(", "), field);
    await keeper.reads(told, says);
    assert.equal(await keeper.value(field), text, "what was typed is not touched");
    assert.equal(await keeper.attribute(field, "aria-invalid"), "true");
    await keeper.reads("bench-oil", "–");
    await keeper.type(field, usual);
    await keeper.until(`${field} is mended`, async () => (await keeper.attribute(field, "aria-invalid")) === null);
  }
  // These are read as they are meant.
  for (const [field, text, says] of [
    ["#holds", "1,5", /1\.5 mL/],
    ["#holds", "½ cup", /118/],
    ["#hives", "٢٤", /96 traps/],
  ]) {
    const usual = await keeper.value(field);
    await keeper.type(field, text);
    await keeper.until(`${field} takes ${text}`, async () => (await keeper.attribute(field, "aria-invalid")) === null);
    if (field === "#hives") await keeper.reads("bench-traps", says);
    await keeper.type(field, usual);
  }
});
