import { journey } from "../house/journey.mjs";
import { entries, keepYard, onTheDay } from "../house/round.mjs";

journey("a look was half filled in when the page was updated: every answer stands where it was given", { faults: { clock: "2026-07-14T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 1);
  await onTheDay(keeper, "2026-07-16T09:00");
  const all = await entries(keeper);
  const [yard, hive] = ["yard", "hive"].map((kind) => all.find(({ what }) => what[kind]).id);
  // As the second version of the format kept it: nine fields, each with its unit.
  const fields = ["few", "yes", "5–19", "6", "eggs", "", "", "busy slime", "wet lid"].flatMap((text) => [text, ""]);
  await keeper.driver.run(
    (name, text) => localStorage.setItem(name, text),
    `beetle-almanac/write#/write/look/${hive}`,
    JSON.stringify(["2026-07-14", yard, hive, ...fields]),
  );
  await keeper.open(`#/write/look/${hive}`);
  await keeper.until("it stands there again", async () => (await keeper.value("write-adults")) === "5–19");
  await keeper.tapWords("tiny", ".write-form");
  await keeper.tap("write-save");
  const looks = async () => (await entries(keeper)).filter(({ what }) => what.record);
  await keeper.until("it is written", async () => {
    const [look] = await looks();
    return look?.day === "2026-07-14" && JSON.stringify(look.what.record.answers) ===
      JSON.stringify({
        larvae: "few",
        larvae_size: "tiny",
        slime: "yes",
        adults: { low: 5, high: 19 },
        frames_of_bees: 6,
        queen: "eggs",
        entrance: ["busy", "slime"],
        note: "wet lid",
      });
  });
});
