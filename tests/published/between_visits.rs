//! The worked examples of this project's own map of the job for what happens between visits (sections C15, C22–C24, C27
//! and 4.1), computed there by a script.

use super::{celsius, close, day};
use beetle_almanac::almanac::bait;
use beetle_almanac::almanac::climate::KNOWN;
use beetle_almanac::almanac::honey::{
    BACK_HOURS, Decides, GOAL_HOURS, Hatch, LIMIT_HOURS, Pull, Race, Stand, Work, hatch,
};
use beetle_almanac::almanac::moment::Moment;
use beetle_almanac::almanac::rhythm::{gaps, longest, share};
use beetle_almanac::almanac::sighting::{Seen, Sighting};
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::stage::{Stage, Strength, Walk, Weather};
use beetle_almanac::almanac::warmth::Swing;

fn flat(degrees: f64) -> Swing {
    Swing::flat(celsius(degrees))
}

#[test]
fn c15_looks_at_uneven_gaps() {
    let seen = share(&[7, 9, 21, 14, 8], 8.0).unwrap();
    assert_eq!((seen * 100.0).round().to_bits(), 66.0_f64.to_bits());
    // The same from days on which somebody looked, one of them twice.
    let looks =
        ["2026-05-01", "2026-05-08", "2026-05-08", "2026-05-17", "2026-06-07", "2026-06-21", "2026-06-29"];
    assert_eq!(gaps(&looks.map(day)), [7, 9, 21, 14, 8]);
}

/// Larvae for 8 days in the hive.
#[test]
fn c15_looks_at_a_fixed_interval() {
    for (interval, percent) in [(7, 100.0), (10, 80.0), (14, 57.0), (21, 38.0), (30, 27.0)] {
        close(share(&[interval], 8.0).unwrap() * 100.0, percent, 0.5);
    }
    assert_eq!(
        (longest(0.8, 8.0, 1.0), longest(1.0, 8.0, 1.0), longest(0.8, 8.0, 0.8)),
        (Some(10), Some(8), Some(8))
    );
    assert_eq!((longest(0.9, 8.0, 0.8), share(&[], 8.0)), (None, None));
}

#[test]
fn c22_first_hatch() {
    for (degrees, hours) in [(20.0, 72.0), (24.0, 44.0), (28.0, 32.0), (35.0, 22.0)] {
        let Hatch::After { minutes, earliest, latest } = hatch(flat(degrees)) else { panic!("{degrees}") };
        assert!(earliest < minutes && latest.is_some_and(|latest| minutes < latest));
        close(f64::from(minutes) / 60.0, hours, 0.5);
    }
    for degrees in [13.5, 4.0, -18.0] {
        assert_eq!(hatch(flat(degrees)), Hatch::TooCold, "{degrees}");
    }
    assert_eq!(hatch(flat(50.0)), Hatch::TooHot);
}

#[test]
fn c22_goal_and_limit() {
    let off = Moment::new(day("2026-07-14"), 16 * 60);
    let race = Race::new(off, GOAL_HOURS, LIMIT_HOURS, hatch(flat(28.0)));
    let at = |day_: &str, hour: u16| Moment::new(day(day_), hour * 60);
    assert_eq!((race.goal, race.limit), (at("2026-07-15", 16), at("2026-07-16", 16)));
    let hatch = race.hatch.unwrap();
    assert!(at("2026-07-16", 0) <= hatch && hatch < at("2026-07-16", 1), "{:?}", hatch.utc());
    assert_eq!(race.spin_by(), (race.goal, Decides::Goal));
    // A later goal waits for the quickest of the figures no longer.
    let late = Race::new(off, 40, LIMIT_HOURS, self::hatch(flat(28.0)));
    assert_eq!((late.spin_by().1, late.spin_by().0 < hatch), (Decides::Hatch, true));
    assert_eq!(Race::new(off, 60, 48, Hatch::TooCold).spin_by(), (off.plus_hours(48), Decides::Limit));
    for (hours, stand) in
        [(24, Stand::InTime), (25, Stand::PastGoal), (48, Stand::PastGoal), (49, Stand::PastLimit)]
    {
        assert_eq!(race.stand(off.plus_hours(hours)), stand, "{hours}");
    }
    assert_eq!(Race::new(off, 60, 48, Hatch::TooCold).goal, race.limit);
    assert_eq!(BACK_HOURS, 24);
}

/// 8 supers of 10 frames, 4 a load, 15 minutes a load.
#[test]
fn c23_supers_in_five_hours() {
    let work = Work { minutes: 300, beside: 0, frames: 10, load: 4, spin: 15, uncap: 0 };
    assert_eq!(work.takes(8), 300);
    assert_eq!(work.pull(), Some(Pull { supers: 8, takes: 300, by_uncapping: false }));
    // An hour for setting up and cleaning; then five minutes to uncap a frame, where four are spun in fifteen.
    let work = Work { minutes: 180, beside: 60, ..work };
    assert_eq!(work.pull(), Some(Pull { supers: 3, takes: 180, by_uncapping: false }));
    let work = Work { uncap: 300, ..work };
    assert_eq!(work.pull(), Some(Pull { supers: 2, takes: 160, by_uncapping: true }));
}

/// Hot: 9 days from egg to leaving, less 2. At 34 °C and by the constants that fit warm places best.
#[test]
fn c27_bait() {
    let [egg, larva] = [Stage::Egg, Stage::Larva].map(|stage| stage.first().days(34.0).expect("it develops"));
    close(egg + larva, 9.07, 0.005);
    let hot = bait::off(day("2026-07-01"), bait::USUAL_DAYS, egg, larva);
    assert_eq!((hot.on, hot.days, hot.by_larvae), (day("2026-07-08"), 7, false));
    let hotter = bait::off(day("2026-07-01"), bait::USUAL_DAYS, 0.9, 7.0);
    assert_eq!((hotter.on, hotter.by_larvae), (day("2026-07-06"), true));
    // A day is the least, for the beetles as for the keeper.
    assert_eq!(bait::off(day("2026-07-01"), 7, 0.1, 0.5).days, 1);
    assert_eq!(bait::off(day("2026-07-01"), 7, 1.0, 3.9).days, 2);
    let none = bait::off(day("2026-07-01"), 0, egg, larva);
    assert_eq!((none.on, none.days, none.by_larvae), (day("2026-07-02"), 1, false));
}

/// The page keeps two days to the earliest that its own dates have larvae out of a brood nest, and the wandering of larvae
/// may take no time: 5 days, or what the keeper wrote down if that is less.
#[test]
fn bait_is_out_two_days_before_the_page_has_larvae_leave() {
    let (egg, larva) = bait::brood_nest();
    close(egg + larva, 7.19, 0.005);
    let put_in = day("2026-07-01");
    let climate = KNOWN[0].climate();
    let weather = Weather::of(&climate, &Soil::of(&climate, SoilKind::Unknown, Shade::Part));
    let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
    let leaving = Sighting { seen: Seen::AdultsOnly, day: put_in, ended: None }.dates(&walk).leaving;
    let first = leaving.expect("leaving")[0].expect("a day");
    assert_eq!(first.day, day("2026-07-08"));
    let off = bait::off(put_in, bait::USUAL_DAYS, egg, larva);
    assert_eq!((off.on, off.days, off.by_larvae), (day("2026-07-06"), 5, true));
    assert!(f64::from(off.on.number()) + 2.0 <= first.time);
    let sooner = bait::off(put_in, 3, egg, larva);
    assert_eq!((sooner.on, sooner.by_larvae), (day("2026-07-04"), false));
}
