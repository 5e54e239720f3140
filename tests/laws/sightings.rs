//! Sightings and what may come of them, and the seasons of a yard.

#![allow(clippy::float_cmp)] // what is compared for being equal went through the same sums

use super::stages::{celsius, climates, constant, day, strengths, swing, time, weather_of};
use beetle_almanac::almanac::climate::{Climate, KNOWN};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::generations::{Open, left, season};
use beetle_almanac::almanac::sighting::{Dates, Seen, Sighting};
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::stage::{Dry, Edge, Held, LIMIT, Outcome, Stage, Strength, Walk, Weather, Why};
use beetle_almanac::almanac::warmth::{Span, Warmth};
use proptest::prelude::*;
use proptest::sample::select;

const SEEN: [Seen; 5] = [Seen::AdultsOnly, Seen::TinyLarvae, Seen::FullGrown, Seen::Leaving, Seen::InSoil];

fn in_order(three: [Outcome; 3]) -> bool {
    let [earliest, likely, latest] = three.map(time);
    earliest <= likely && likely <= latest
}

proptest! {
    #[test]
    fn a_start_a_day_later_in_a_constant_climate_shifts_everything_by_a_day(
        seen in select(&SEEN[..]), strength in strengths(), air in 5.0..30.0_f64, soil in 14.0..34.0_f64,
        start in 0..40_000_i32,
    ) {
        let weather = constant(Span::around(swing(air, 6.0), 2.0), Span::around(swing(soil, 0.0), 2.0));
        let walk = Walk { weather: &weather, strength, dry: &[] };
        let at = |days: i32| {
            let day = Day::FIRST.plus(1000 + start + days);
            Sighting { seen, day, ended: None }.dates(&walk)
        };
        let (one, next) = (at(0), at(1));
        let three = |dates: &Dates| [dates.leaving.unwrap_or(dates.adults), dates.adults, dates.eggs];
        for (one, next) in three(&one).iter().flatten().zip(three(&next).iter().flatten()) {
            match (one, next) {
                (Ok(one), Ok(next)) => {
                    prop_assert_eq!(next.day, one.day.plus(1));
                    prop_assert_eq!(next.held, one.held);
                }
                (one, next) => prop_assert_eq!(one, next),
            }
        }
    }

    #[test]
    fn edges_of_every_sighting_are_in_order_and_so_are_its_stages(
        seen in select(&SEEN[..]), strength in strengths(), climate in climates(), start in 0..365_i32,
    ) {
        let weather = weather_of(&climate);
        let walk = Walk { weather: &weather, strength, dry: &[] };
        let dates = Sighting { seen, day: day("2026-01-01").plus(start), ended: None }.dates(&walk);
        prop_assert!(in_order(dates.adults) && in_order(dates.eggs), "{dates:?}");
        if let Some(leaving) = dates.leaving {
            prop_assert!(in_order(leaving));
            for (leaving, adults) in leaving.iter().zip(dates.adults) {
                prop_assert!(time(*leaving) <= time(adults));
            }
        }
        for (adults, eggs) in dates.adults.iter().zip(dates.eggs) {
            prop_assert!(time(*adults) <= time(eggs));
        }
        for edge in Edge::ALL {
            if let Ok(when) = edge.of(dates.adults) {
                let off = f64::from(when.day.number()) - when.time;
                let outward = if edge == Edge::Latest { -1e-8..1.0 } else { -1.0..1e-8 };
                prop_assert!(outward.contains(&off), "{edge:?} {off}");
            }
        }
    }

    /// The table of days is the sum that the date stands on.
    #[test]
    fn a_date_can_be_worked_out_again_from_its_days(
        seen in select(&SEEN[..]), strength in strengths(), climate in climates(), start in 0..365_i32,
    ) {
        let weather = weather_of(&climate);
        let walk = Walk { weather: &weather, strength, dry: &[] };
        let sighting = Sighting { seen, day: day("2026-01-01").plus(start), ended: None };
        for edge in Edge::ALL {
            let steps = sighting.steps(&walk, edge);
            let mut sum = if seen == Seen::InSoil && edge == Edge::Likely { 0.5 } else { 0.0 };
            let mut stage = None;
            for step in &steps {
                if stage.is_some_and(|stage| stage != step.stage) {
                    sum = 0.0;
                }
                stage = Some(step.stage);
                sum += step.rate * step.part;
                prop_assert!((sum - step.sum).abs() < 1e-9 && sum < 1.0 + 1e-9);
            }
            if let Ok(eggs) = edge.of(sighting.dates(&walk).eggs) {
                let last = steps.last().expect("days");
                prop_assert!((last.sum - 1.0).abs() < 1e-9);
                let end = eggs.time - f64::from(last.day.number());
                prop_assert!((0.0..=1.0 + 1e-6).contains(&end), "{end}");
            }
        }
    }

    #[test]
    fn rain_later_is_never_earlier_and_none_is_a_reason(
        climate in climates(), start in 0..365_i32, wait in 0..60_i32, more in 0..60_i32,
    ) {
        let weather = weather_of(&climate);
        let seen = day("2026-01-01").plus(start);
        let dates = |until: Option<Day>| {
            let dry = [Dry { from: seen.plus(-10), until }];
            let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &dry };
            Sighting { seen: Seen::Leaving, day: seen, ended: None }.dates(&walk).adults
        };
        let (soon, late, never) = (dates(Some(seen.plus(wait))), dates(Some(seen.plus(wait + more))), dates(None));
        for ((soon, late), never) in soon.iter().zip(late).zip(never) {
            prop_assert!(time(*soon) <= time(late) + 1e-9);
            prop_assert_eq!(never, Err(Why::DrySoil));
            if let Ok(when) = soon {
                // The last of them leave two days after they were seen.
                prop_assert!(i32::from(when.held.dry) >= wait - 2, "{} of {wait}", when.held.dry);
            }
        }
    }

    #[test]
    fn two_sightings_come_to_what_both_may_come_to(
        climate in climates(), start in 0..365_i32, apart in 0..30_i32,
        one in select(&SEEN[..]), two in select(&SEEN[..]),
    ) {
        let weather = weather_of(&climate);
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
        let first = day("2026-01-01").plus(start);
        let one = Sighting { seen: one, day: first, ended: None }.dates(&walk);
        let two = Sighting { seen: two, day: first.plus(apart), ended: None }.dates(&walk);
        let (both, turned) = (one.or(&two), two.or(&one));
        for ((a, b), (both, turned)) in
            [(one.adults, two.adults), (one.eggs, two.eggs)].iter().zip([(both.adults, turned.adults), (both.eggs, turned.eggs)])
        {
            prop_assert_eq!(both.map(time), turned.map(time));
            prop_assert_eq!(time(both[0]), time(a[0]).min(time(b[0])));
            prop_assert_eq!(time(both[2]), time(a[2]).max(time(b[2])));
            prop_assert!(in_order(both));
        }
        prop_assert_eq!(one.or(&one), one);
    }

    /// What had not left by then stays, whatever became of it: also where it never got warm enough.
    #[test]
    fn a_hive_that_ended_gives_nothing_after_its_end_and_its_soil_goes_on(
        climate in climates(), strength in strengths(), seen in select(&SEEN[..]), start in 0..365_i32,
        ended in prop_oneof![-5..40_i32, 40..800_i32],
    ) {
        let weather = weather_of(&climate);
        let walk = Walk { weather: &weather, strength, dry: &[] };
        let day = day("2026-01-01").plus(start);
        let end = day.plus(ended);
        let last = f64::from(end.number());
        let sighting = Sighting { seen, day, ended: Some(end) };
        let whole = Sighting { ended: None, ..sighting }.dates(&walk);
        let cut = sighting.dates(&walk);
        if seen == Seen::InSoil {
            prop_assert_eq!(cut, whole);
        } else {
            let (leaving, before) = (cut.leaving.expect("leaving"), whole.leaving.expect("leaving"));
            for (edge, (cut, whole)) in Edge::ALL.into_iter().zip(leaving.into_iter().zip(before)) {
                if time(before[0]) > last {
                    prop_assert_eq!(cut, Err(Why::HiveEnded));
                } else if time(whole) <= last {
                    prop_assert_eq!(cut, whole);
                } else {
                    let cut = cut.expect("the end");
                    prop_assert_eq!((cut.day, cut.time), (end, last));
                    let steps = sighting.steps(&walk, edge);
                    let hive: Vec<_> = steps.iter().take_while(|step| step.stage != Stage::Soil).collect();
                    prop_assert!(hive.iter().all(|step| step.day < end));
                    let idle = hive.iter().filter(|step| step.rate <= 0.0).count();
                    prop_assert_eq!(usize::from(cut.held.cold + cut.held.hot + cut.held.dry), idle);
                }
            }
            prop_assert!(in_order(leaving) && in_order(cut.adults));
        }
    }
}

proptest! {
    // Each case is eight seasons.
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn more_generations_at_the_quick_edge_and_more_when_it_is_warmer_in_cool_places(
        mean in 4.0..16.0_f64, wave in 4.0..14.0_f64, warmer in 0.0..4.0_f64, on in 0..365_i32,
    ) {
        let months: [Warmth; 12] = std::array::from_fn(|month| {
            let turn = (f64::from(u32::try_from(month).expect("a month")) + 0.5) / 12.0;
            celsius(mean - wave * (std::f64::consts::TAU * turn).cos())
        });
        let climate = Climate::new(months, months).expect("a climate");
        let count = |climate: &Climate| {
            let weather = weather_of(climate);
            let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
            let on = day("2026-01-01").plus(on);
            let (season, left) = (season(&walk, on), left(&walk, on));
            assert!(left.count.iter().zip(season.count).all(|(left, all)| *left <= all + 1));
            assert!(season.generations.len() == season.count[0]);
            season.count
        };
        let (cool, warm) = (count(&climate), count(&climate.warmer(warmer)));
        prop_assert!(cool[0] >= cool[1] && cool[1] >= cool[2], "{cool:?}");
        prop_assert!(cool.iter().zip(warm).all(|(cool, warm)| *cool <= warm), "{cool:?} {warm:?}");
    }

}

/// The model lets tiny larvae be four days old: none is full grown by then, however warm it is, so none leaves on the day
/// on which it was tiny.
#[test]
fn what_was_tiny_on_a_day_leaves_after_it() {
    let weather = constant(Span::around(swing(30.0, 5.0), 2.0), Span::around(swing(25.0, 0.0), 2.0));
    let seen = day("2026-07-10");
    for tenths in 100..450 {
        for give in [0.0, 2.0, 5.0] {
            let comb = Span::around(swing(f64::from(tenths) / 10.0, 0.0), give);
            let walk = Walk { weather: &weather, strength: Strength::Known(comb), dry: &[] };
            let dates = Sighting { seen: Seen::TinyLarvae, day: seen, ended: None }.dates(&walk);
            for leaving in dates.leaving.expect("leaving").into_iter().flatten() {
                assert!(leaving.day > seen, "{tenths} give or take {give}: {leaving:?}");
            }
        }
    }
}

/// A cold place, and combs without bees: the last of the larvae would go on for years.
#[test]
fn a_date_without_a_latest_has_one_when_the_hive_ends() {
    let weather = weather_of(&KNOWN[2].climate());
    let walk = Walk { weather: &weather, strength: Strength::Cover(0.0), dry: &[] };
    let seen = Sighting { seen: Seen::TinyLarvae, day: day("2026-03-05"), ended: None };
    let leaving = |ended: &str| {
        let dates = Sighting { ended: Some(day(ended)), ..seen }.dates(&walk);
        dates.leaving.expect("leaving").map(|edge| edge.map(|when| when.day))
    };
    assert_eq!(seen.dates(&walk).leaving.expect("leaving")[2], Err(Why::NotInTwoYears));
    let last = Ok(day("2026-08-02"));
    assert_eq!(leaving("2026-08-02"), [Ok(day("2026-07-31")), last, last]);
    assert_eq!(leaving("2026-07-30"), [Err(Why::HiveEnded); 3]);
}

/// Cold, heat, drought and a season that is too short: words, never a far date.
#[test]
fn where_there_is_no_date_there_is_a_reason() {
    let dates = |soil: f64, dry: &[Dry]| {
        let weather = constant(Span::around(swing(soil, 4.0), 0.0), Span::around(swing(soil, 0.0), 0.0));
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry };
        Sighting { seen: Seen::Leaving, day: day("2026-07-10"), ended: None }.dates(&walk).adults
    };
    assert_eq!(dates(9.0, &[]), [Err(Why::TooCold); 3]);
    assert_eq!(dates(44.0, &[]), [Err(Why::TooHot); 3]);
    assert_eq!(dates(25.0, &[Dry { from: day("2026-07-01"), until: None }]), [Err(Why::DrySoil); 3]);
    // Half a degree above every floor it takes years.
    assert_eq!(dates(12.1, &[])[2], Err(Why::NotInTwoYears));
    assert!(dates(25.0, &[]).iter().all(|date| date.is_ok_and(|when| when.held == Held::default())));
    // Nothing is promised beyond the two years.
    for start in 0..365 {
        let weather = weather_of(&KNOWN[2].climate());
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
        let begun = f64::from(day("2026-01-01").plus(start).number());
        for edge in Edge::ALL {
            let end = time(walk.end_of(Stage::Soil, edge, begun, Held::default(), None));
            assert!(end.is_infinite() || end - begun <= f64::from(LIMIT) + 1.0);
        }
    }
}

#[test]
fn seasons_of_a_cold_place_the_tropics_and_the_southern_half_of_the_world() {
    let of = |climate: &Climate, on: &str| {
        let weather = weather_of(climate);
        season(&Walk { weather: &weather, strength: Strength::Strong, dry: &[] }, day(on))
    };
    let cold = of(&KNOWN[2].climate(), "2026-07-01");
    assert_eq!((cold.count, cold.open[2], cold.overlap), ([0, 0, 0], Open::Never, None));
    let tropics = of(&KNOWN[1].climate(), "2026-07-01");
    assert_eq!(tropics.open, [Open::AllYear; 3]);
    assert!(tropics.count[2] >= 4, "{:?}", tropics.count);
    assert_eq!(tropics.overlap, Some(1));
    // The same climate with its months turned by half a year: the season lies around the new year and is one.
    let north = KNOWN[0].climate();
    let turn = |months: &[Warmth; 12]| std::array::from_fn(|month| months[(month + 6) % 12]);
    let south = Climate::new(turn(north.highs()), turn(north.lows())).expect("a climate");
    let (summer, north) = (of(&south, "2027-01-05"), of(&north, "2026-07-05"));
    // Half a year of months is 181 days or 184: one generation may fall on the other side of the end.
    assert!(summer.count.iter().zip(north.count).all(|(south, north)| south.abs_diff(north) <= 1));
    let Open::From(first, last) = summer.open[1] else { panic!("a season: {:?}", summer.open) };
    assert!(first < day("2026-12-01") && last > day("2027-04-01"), "{first:?} {last:?}");
    // Any day of that year of beetles tells the same season.
    assert_eq!(of(&south, "2026-09-01"), of(&south, "2027-06-01"));
}

#[test]
fn a_dry_summer_and_shade_leave_room_for_fewer() {
    let climate = KNOWN[0].climate();
    let count = |climate: &Climate, shade: Shade, dry: &[Dry]| {
        let weather = Weather::of(climate, &Soil::of(climate, SoilKind::Unknown, shade));
        season(&Walk { weather: &weather, strength: Strength::Strong, dry }, day("2026-06-01")).count
    };
    let plain = count(&climate, Shade::Part, &[]);
    let dry = [Dry { from: day("2026-05-01"), until: Some(day("2026-08-01")) }];
    for (fewer, more) in [
        (count(&climate, Shade::Part, &dry), plain),
        (count(&climate, Shade::Shade, &[]), plain),
        (plain, count(&climate.warmer(3.0), Shade::Part, &[])),
    ] {
        assert!(
            fewer.iter().zip(more).all(|(fewer, more)| *fewer <= more) && fewer != more,
            "{fewer:?} {more:?}"
        );
    }
}

/// In the same weather every day, what is in dry soil comes later by the days it lay in it, to the day of the rain.
#[test]
fn dry_days_hold_the_soil_stage_for_as_long_as_they_last() {
    let weather = constant(Span::around(swing(25.0, 5.0), 2.0), Span::around(swing(24.0, 0.0), 2.0));
    let seen = day("2026-07-10");
    let dates = |dry: &[Dry]| {
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry };
        Sighting { seen: Seen::FullGrown, day: seen, ended: None }.dates(&walk).adults
    };
    let plain = dates(&[]);
    // All of them are in the soil from the 12th on.
    for (from, length) in [(2, 1), (2, 10), (6, 31), (11, 2)] {
        let from = seen.plus(from);
        let held = dates(&[Dry { from, until: Some(from.plus(length)) }]);
        for (plain, held) in plain.iter().zip(held) {
            let (plain, held) = (plain.expect("a date"), held.expect("a date"));
            assert_eq!((held.day, i32::from(held.held.dry)), (plain.day.plus(length), length));
        }
    }
    // Two dry spells that overlap are one; one that is over before they dig in, or has not begun when they come, is none.
    let spell = |from: i32, until: i32| Dry { from: seen.plus(from), until: Some(seen.plus(until)) };
    let both = dates(&[spell(4, 9), spell(6, 12)]);
    assert!(both.iter().zip(plain).all(|(both, plain)| both.unwrap().day == plain.unwrap().day.plus(8)));
    assert_eq!(dates(&[spell(-20, 0), spell(60, 70)]), plain);
}

/// The hive of C12: warmth of the nest, sliding to the air as bees cover less comb.
#[test]
fn a_weaker_colony_is_as_late_as_its_combs_are_cool() {
    let climate = KNOWN[0].climate();
    let weather = weather_of(&climate);
    let leaving = |strength: Strength| {
        let walk = Walk { weather: &weather, strength, dry: &[] };
        let dates = Sighting { seen: Seen::TinyLarvae, day: day("2026-05-10"), ended: None }.dates(&walk);
        dates.leaving.expect("leaving")
    };
    assert_eq!(leaving(Strength::Cover(1.0)), leaving(Strength::Strong));
    assert_eq!(leaving(Strength::Cover(0.0)), leaving(Strength::Empty));
    let mut before = leaving(Strength::Strong);
    for tenths in (0..10).rev() {
        let here = leaving(Strength::Cover(f64::from(tenths) / 10.0));
        assert!(here.iter().zip(before).all(|(here, before)| time(*here) >= time(before)), "{tenths}");
        before = here;
    }
    // Unknown: likely a strong one, at the latest one whose bees cover half of the comb.
    let unknown = leaving(Strength::Unknown);
    assert_eq!(unknown[..2], leaving(Strength::Strong)[..2]);
    assert_eq!(unknown[2], leaving(Strength::Cover(0.5))[2]);
    assert_eq!(Strength::of_frames(5.0, 10.0), Strength::Cover(0.5));
    assert_eq!(Strength::of_frames(12.0, 10.0), Strength::Cover(1.0));
    assert_eq!(Strength::of_frames(5.0, 0.0), Strength::Unknown);
}
