import { journey } from "../house/journey.mjs";
import { assert, plain } from "../house/keeper.mjs";
import { entries, keepYard } from "../house/round.mjs";
import { typeTime } from "../house/tour.mjs";

const ON = { faults: { clock: "2026-07-14T09:00" } };
const looks = async (keeper) => (await entries(keeper)).filter((entry) => entry.what.record?.blank === "look");

journey("she asks what a look every two weeks sees, and how often to look for nine broods in ten", ON, async (keeper) => {
  await keeper.open("#/beetle/rhythm");
  await keeper.reads("rhythm-seen", /^59 % \(47 % to 70 %\)$/);
  await keeper.reads("rhythm-longest", /^10 days$/);
  await keeper.type("#rhythm-every", "7");
  await keeper.reads("rhythm-seen", /^100 % \(9\d % to 100 %\)$/);
  await keeper.type("#rhythm-notice", "80 %");
  await keeper.reads("rhythm-seen", /^80 % \(7\d % to 80 %\)$/);
  await keeper.type("#rhythm-wanted", "90 %");
  await keeper.reads("rhythm-longest", /^–$/);
  await keeper.reads("main", /No rhythm reaches that/);
  await keeper.type("#rhythm-notice", "100 %");
  await keeper.reads("rhythm-longest", /^9 days$/);
  await keeper.type("#rhythm-comb", "8");
  await keeper.reads("rhythm-seen", /^–$/);
  await keeper.reads("main", /At this temperature no larvae grow up/);
  await keeper.type("#rhythm-comb", "-80");
  await keeper.reads("#rhythm-comb-says", /No soil, comb or room of bees is as cold/);
  await keeper.type("#rhythm-comb", "34");
  await keeper.type("#rhythm-notice", "500 %");
  await keeper.reads("#rhythm-notice-says", /100 % at most/);
});

journey("her looks of the summer saw two broods in three, and skipping Saturday would cost her more", ON, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2, "Orchard", "not_yet");
  const hive = (await entries(keeper)).find((entry) => entry.what.hive).id;
  await keeper.open("#/beetle/rhythm");
  await keeper.reads("main", /No hive here has two looks/);
  // The hive came into the book today: on the form it is said that it stood there already.
  const days = ["2026-05-16", "2026-05-23", "2026-06-01", "2026-06-22", "2026-07-06", "2026-07-14"];
  for (const [at, day] of days.entries()) {
    await keeper.open(`#/write/look/${hive}`);
    await typeTime(keeper, "write-day", day);
    await keeper.tapWords("none", ".write-form");
    await keeper.tap("write-save");
    if (at === 0) {
      await keeper.tap("write-earlier");
    }
    await keeper.until(`look ${at} is written`, async () => (await looks(keeper)).length === at + 1);
  }
  await keeper.open("#/beetle/rhythm");
  // Gaps of 7, 9, 21, 14 and 8 days.
  await keeper.reads("rhythm-own", /^6[5-8] % \(5\d % to 7\d %\)$/);
  await keeper.reads("rhythm-gaps", /^Hive .*: .*5 gaps, the longest 21 days/);
  await keeper.driver.run(() => document.querySelectorAll("main details").forEach((part) => (part.open = true)));
  await keeper.reads("rhythm-few", /^1 hive was not looked into twice/);
  const skip = plain(await keeper.reads("rhythm-skip", /If you skip it/));
  assert.match(skip, /Next look on .*28.*: it sees 59 % .*If you skip it: 29 % .*, after 28 days without a look\./s);
  await keeper.type("#rhythm-every", "4");
  await keeper.reads("rhythm-skip", /Next look on .*18.*If you skip it: 100 % /s);
  // Her aims say ten days: the hive's page names the look, and the typed days rule the plan alone.
  await keeper.open("#/write/aims");
  await keeper.type("#write-look_every", "10");
  await keeper.tap("write-save");
  await keeper.until("it is written", async () => (await entries(keeper)).some((entry) => entry.what.record?.blank === "aims"));
  await keeper.open("#/beetle/rhythm");
  await keeper.reads("main", /Your next look goes by 10 days, as under aims\./);
  await keeper.open(`#/hive/${hive}`);
  await keeper.reads("hive-state", /Look for larvae by .*24.*: your own rhythm/);
});
