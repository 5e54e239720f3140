//! Laws of the honey race, of the rhythm of looks and of bait.

use beetle_almanac::almanac::bait;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::honey::{Hatch, Race, Work, hatch};
use beetle_almanac::almanac::moment::Moment;
use beetle_almanac::almanac::rhythm::{longest, share};
use beetle_almanac::almanac::warmth::{Swing, Warmth};
use proptest::prelude::*;

fn warmth(tenths: i32) -> Warmth {
    Warmth::from_celsius(f64::from(tenths) / 10.0).expect("within −60 and 100 °C")
}

fn room(low: i32, high: i32) -> Swing {
    Swing { low: warmth(low), high: warmth(high) }
}

fn minutes(low: i32, high: i32) -> Option<(i32, i32)> {
    match hatch(room(low, high)) {
        Hatch::After { minutes, earliest, latest } => {
            assert!(latest.is_none_or(|latest| latest >= minutes));
            Some((minutes, earliest))
        }
        Hatch::TooCold | Hatch::TooHot => None,
    }
}

/// Every room from −10 to 46.5 °C in tenths: warmer is never later, and at 13.5 °C and below nothing hatches.
#[test]
fn a_warmer_room_never_hatches_later() {
    for swing in [0, 30, 100] {
        let mut before = i32::MAX;
        for low in -100..=(465 - swing) {
            let Some((mean, warmest)) = minutes(low, low + swing) else {
                assert!(low + swing <= 135 && before == i32::MAX, "{low}");
                continue;
            };
            assert!(low + swing > 135 && mean <= before && warmest <= mean, "{low} {mean} {before}");
            before = mean;
        }
    }
}

/// Every interval of 1 to 120 days and every stay of 1 to 40: a longer interval never sees more, a longer stay never less;
/// and the longest interval that reaches a share does, and one day more does not.
#[test]
fn looks_further_apart_never_see_more() {
    for stay in 1..=40 {
        let days = f64::from(stay);
        let mut before = f64::INFINITY;
        for gap in 1..=120 {
            let seen = share(&[gap], days).unwrap();
            assert!(seen <= before && seen <= share(&[gap], days + 1.0).unwrap());
            before = seen;
        }
        for percent in 5..=100 {
            for notice in [0.5, 0.8, 1.0] {
                let wanted = f64::from(percent) / 100.0;
                let Some(gap) = longest(wanted, days, notice) else {
                    assert!(wanted > notice, "{stay} {percent} {notice}");
                    continue;
                };
                let reached = |gap| share(&[gap], days).unwrap() * notice >= wanted - 1e-9;
                assert!(reached(gap) && !reached(gap + 1), "{stay} {percent} {notice}: {gap}");
            }
        }
    }
}

proptest! {
    /// A look more, somewhere within a gap, never sees less; the order of the gaps is nothing.
    #[test]
    fn one_look_more_never_sees_less(
        gaps in proptest::collection::vec(2..60_u32, 1..20),
        at in 0..20_usize,
        first in 1..60_u32,
        days in 1..400_u32,
    ) {
        let days = f64::from(days) / 10.0;
        let at = at % gaps.len();
        let first = 1 + first % (gaps[at] - 1).max(1);
        let mut more = gaps.clone();
        more[at] = first;
        more.push(gaps[at] - first);
        let (seen, seen_more) = (share(&gaps, days).unwrap(), share(&more, days).unwrap());
        prop_assert!((0.0..=1.0).contains(&seen) && seen_more >= seen - 1e-12);
    }

    /// The supers to pull fit into the time, and one more does not; more time never means fewer.
    #[test]
    fn supers_to_pull_fit_and_one_more_does_not(
        time in 0..3000_u32, beside in 0..300_u32, frames in 1..12_u32, load in 1..40_u32, spin in 0..60_u32, uncap in 0..600_u32,
    ) {
        let work = Work { minutes: time, beside, frames, load, spin, uncap };
        let Some(pull) = work.pull() else {
            prop_assert!(spin == 0 && uncap == 0);
            return Ok(());
        };
        prop_assert!(pull.supers == 0 || pull.takes <= time, "{pull:?}");
        prop_assert!(work.takes(pull.supers + 1) > time, "{pull:?}");
        let longer = Work { minutes: time + 60, ..work }.pull().unwrap();
        prop_assert!(longer.supers >= pull.supers);
    }

    /// Goal, limit and the hour to spin by are never out of their order, and the same stack an hour later has everything an
    /// hour later.
    #[test]
    fn a_race_keeps_its_order(off in 0..70_000_i32, goal in 1..240_u32, limit in 1..240_u32, room in 0..600_i32) {
        let off = Moment::new(Day::FIRST.plus(off), 600);
        let hatch = hatch(self::room(room, room));
        let race = Race::new(off, goal, limit, hatch);
        prop_assert!(race.off < race.goal && race.goal <= race.limit && race.spin_by().0 <= race.goal);
        prop_assert!(race.stand(off) <= race.stand(race.limit) && race.stand(race.limit) < race.stand(race.limit.plus(1)));
        let later = Race::new(off.plus(60), goal, limit, hatch);
        prop_assert_eq!((later.goal.since(race.goal), later.spin_by().0.since(race.spin_by().0)), (60, 60));
    }

    /// Bait is never out on the day it came, nor later than the keeper's longest time, nor than the beetles allow.
    #[test]
    fn bait_is_out_in_time(longest in 0..60_u32, egg in 0..100_u32, larva in 0..500_u32) {
        let (egg, larva) = (f64::from(egg) / 10.0, f64::from(larva) / 10.0);
        let off = bait::off(Day::FIRST, longest, egg, larva);
        // No time at all is the least there is, a day.
        let longest = longest.max(1);
        prop_assert_eq!(off, bait::off(Day::FIRST, longest, egg, larva));
        prop_assert!(off.days >= 1 && off.days <= longest);
        prop_assert!(off.days == 1 || f64::from(off.days) <= egg + larva - 2.0 + 1e-9);
        prop_assert_eq!(off.on.days_since(Day::FIRST), i32::try_from(off.days).unwrap());
        prop_assert!(off.by_larvae || off.days == longest);
    }

    /// A minute of UTC comes back from a clock with any fixed offset; of a clock that is changed, the moment shows what was
    /// asked for unless that is left out.
    #[test]
    fn an_hour_of_the_yard_is_one_moment(day in 1..73_000_i32, minute in 0..1440_u16, quarters in -48..=56_i32, change in 0..2880_i32, by in -8..=8_i32) {
        let shown = Moment::new(Day::FIRST.plus(day), minute);
        let east = quarters * 15;
        prop_assert_eq!(Moment::when(shown, &|at| Some(at.plus(east))), Some(shown.plus(-east)));
        let (day, minute_back) = shown.utc();
        prop_assert_eq!(Moment::new(day, minute_back), shown);
        // From some minute around it on the clock is set by up to two hours.
        let change = shown.plus(-east - 1440 + change);
        let clock = |at: Moment| Some(at.plus(if at < change { east } else { east + by * 15 }));
        let found = Moment::when(shown, &clock).unwrap();
        let left_out = (-300..=300).all(|at| clock(found.plus(at)) != Some(shown));
        if left_out {
            prop_assert!(by > 0 && shown.since(clock(found).unwrap()) == by * 15);
        } else {
            prop_assert_eq!(clock(found), Some(shown));
            let earlier = (-300..0).any(|at| clock(found.plus(at)) == Some(shown));
            prop_assert!(!earlier, "the first of two");
        }
    }
}
