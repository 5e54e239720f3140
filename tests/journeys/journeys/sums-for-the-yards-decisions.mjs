import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";

/** A card of the Bench, opened by its address. */
const card = async (keeper, sum) => {
  await keeper.open(`#/bench/${sum}`);
  await keeper.one(`#bench-${sum}-body .answer`);
  return `#bench-${sum}-body`;
};
const choose = (keeper, id, value) =>
  keeper.driver.run(
    (id, value) => {
      const field = document.getElementById(id);
      field.value = value;
      field.dispatchEvent(new Event("change", { bubbles: true }));
    },
    id,
    value,
  );

journey("she asks how many of her forty hives to open, and what it proves that she saw none in fourteen", {}, async (keeper) => {
  const body = await card(keeper, "open");
  await keeper.reads(body, /Hives to open 25/);
  await keeper.reads(body, /10 % of 40 hives, rounded up = 4 that have it/);
  await keeper.reads(body, /24 opened: 94\.\d % sure.*25 opened: 9[5-9](\.\d)? % sure/);
  await keeper.tap("draw");
  const drawn = () => keeper.text(`${body} .tabular`);
  await keeper.reads(`${body} .tabular`, /^Counted along your walk: \d+(, \d+){24}$/);
  const first = await drawn();
  await keeper.reload();
  await keeper.one("draw");
  assert.equal(await drawn(), first, "the draw is kept");
  await keeper.type("#open-opened", "14");
  await keeper.reads(body, /still possible at most 7 of 40/);
  await keeper.reads(body, /None seen in 14 of 40 is not none present\./);
  await keeper.type("#open-notice", "100 %");
  await keeper.reads(body, /Hives to open 21/);
  await keeper.reads(body, /still possible at most 6 of 40/);

  // Five hives and one that has it: no number is enough in one round.
  await keeper.type("#open-hives", "5");
  await keeper.type("#open-notice", "85 %");
  await keeper.type("#open-opened", "");
  await keeper.reads(body, /Hives to open 5/);
  await keeper.reads(body, /again in 7 days: 97\.8 % sure, 95 % wanted/);
  await keeper.type("#open-share", "0 %");
  await keeper.reads(body, /A share of 0 % is nothing to find/);
  await keeper.type("#open-sure", "many");
  await keeper.reads("#open-sure-says", /Type a share/);
  assert.deepEqual(await keeper.pages(), {}, "a sum is not a record");
});

journey("her bees cover too few combs, and one box off puts it right", {}, async (keeper) => {
  const body = await card(keeper, "cover");
  await keeper.reads(body, /69 % .*More comb than they can guard/);
  await keeper.reads(body, /1 box of 8 off: 22 ÷ \(2 × 8\) = 138 %/);
  await keeper.type("#cover-sides", "30");
  await keeper.reads(body, /94 % .*They guard what they have\./);
  await keeper.type("#cover-sides", "5");
  await keeper.reads(body, /Whole boxes alone do not put it right/);
});

journey("a mesh lets beetles in, a finer one does not, and a crack is to be closed", {}, async (keeper) => {
  const body = await card(keeper, "mesh");
  await keeper.reads(body, /2\.75 mm .*Lets beetles in.*25\.4 mm ÷ 8 − 0\.43 mm =.*> 2 mm/);
  await keeper.type("#mesh-count", "16");
  await keeper.type("#mesh-wire", "0.28");
  await keeper.reads(body, /1\.31 mm .*Stops beetles\.?.*≤ 2 mm/);
  await keeper.type("#mesh-crack", "3");
  await keeper.reads(body, /Close it/);
  await keeper.type("#mesh-crack", "2");
  await keeper.reads(body, /Too narrow for a beetle/);
  await keeper.type("#mesh-count", "100");
  await keeper.reads(body, /Wires that thick touch/);
});

journey("her combs go through the freezer in four batches, and one that is not cold enough is doubted", {}, async (keeper) => {
  const body = await card(keeper, "freezer");
  await keeper.reads(body, /12 days .*4 batches, 16 frames in the last.*\(24 h \+ 48 h\) = 288 h = 12 days/);
  await keeper.reads(body, /count from cold, not from the lid/);
  await keeper.type("#freezer-cold", "-8");
  await keeper.reads(body, /Warmer than −12 °C/);
  await choose(keeper, "freezer-cold-unit", "F");
  await keeper.until("−8 °F is cold", async () => !/Warmer than/.test(plain(await keeper.text(body))));
  await keeper.type("#freezer-hold", "12");
  await keeper.reads(body, /Less than 24 hours cold/);
});

journey("the ground round ten hives in a row is counted once, and the label's own rate is worked out for it", {}, async (keeper) => {
  const body = await card(keeper, "ground");
  await keeper.reads(body, /Ground to treat 23 m².*One hive with 0\.9 m round it = 4\.41 m².*23 m², not 10 × one = 44\.1 m²/);
  await keeper.reads(body, /The label is the law/);
  await keeper.reads(body, /Type the label.s rate\./);
  await keeper.type("#ground-apart", "60 cm");
  await keeper.reads(body, /Ground to treat 16\.8 m²/);
  await keeper.type("#ground-apart", "0.9");
  await keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
  await keeper.type("#ground-paved", "3");
  await keeper.reads(body, /− 3 m² paved = 20 m²/);
  await keeper.type("#ground-rate", "5");
  await keeper.type("#ground-per", "10");
  await keeper.type("#ground-water", "2");
  await keeper.reads(body, /20 m² ÷ 10 m² × 5 = 10/);
  await keeper.reads(body, /20 m² ÷ 10 m² × 2.?000 mL = 4 L/);
  await keeper.type("#ground-per", "0");
  await keeper.reads("#ground-per-says", /More than 0\./);
  await choose(keeper, "ground-per-unit", "sq_ft");
  await keeper.type("#ground-per", "1000");
  await keeper.reads(body, /Ground to treat 24\d(\.\d)? sq ft/);
});
