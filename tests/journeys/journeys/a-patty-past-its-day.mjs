import { written } from "../house/dates.mjs";
import { journey } from "../house/journey.mjs";
import { entries, keepYard, onTheDay } from "../house/round.mjs";

journey("a patty was forgotten in a hive, and the Beetle names it until it is out", { faults: { clock: "2026-07-01T09:00" } }, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const hive = (await entries(keeper)).find((entry) => entry.what.hive).id;
  const patty = async (did, count) => {
    await keeper.open(`#/write/patty/${hive}`);
    await keeper.tapWords(did, ".write-form");
    await keeper.tap("write-save");
    await keeper.until("it is written", async () => (await entries(keeper)).filter((entry) => entry.what.record).length === count);
  };
  await patty("put in", 1);
  await keeper.place("beetle");
  await keeper.one("beetle-yard");
  await keeper.gone("[data-testid=beetle-bait] .notice");
  await onTheDay(keeper, "2026-07-08T09:00");
  await keeper.place("beetle");
  await keeper.reads("beetle-bait", /take the patty out/);
  await keeper.reads("beetle-bait", written("2026-07-06"));
  await keeper.open(`#/hive/${hive}`);
  await keeper.reads("hive-state", /Patty in since .*1.*: out by .*6.*, 2.days late/);
  await patty("taken out", 2);
  await keeper.place("beetle");
  await keeper.one("beetle-yard");
  await keeper.gone("[data-testid=beetle-bait] .notice");
});
