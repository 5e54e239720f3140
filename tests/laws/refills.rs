//! Due dates.

use super::percent;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::refill::{
    Limit, Loss, LossInterval, RefillFacts, Timing, median_loss, refill, timing,
};
use proptest::prelude::*;

fn facts() -> impl Strategy<Value = RefillFacts> {
    let share = || proptest::option::of((0..=100_u32).prop_map(percent));
    let loss = prop_oneof![
        Just(Loss::Unknown),
        (0..5000_u32, 1..=5_u8)
            .prop_map(|(n, intervals)| Loss::Hive { per_day: f64::from(n) / 1000.0, intervals }),
        (0.0..5.0_f64, 1..=5_u8).prop_map(|(per_day, intervals)| Loss::Yard { per_day, intervals }),
    ];
    (
        0..70_000_i32,
        1..=120_u16,
        share(),
        share(),
        loss,
        proptest::option::of(0..500_u32),
        proptest::option::of(0.0..50.0_f64),
        proptest::option::of(-5..60_i32),
    )
        .prop_map(|(day, max_days, level, floor, loss, room, catch_per_day, read)| RefillFacts {
            last_service: Day::FIRST.plus(day),
            max_days,
            level,
            read_on: read.map(|read| Day::FIRST.plus(day + read)),
            floor,
            loss,
            room,
            catch_per_day,
        })
}

/// Days from the service to the reading that the level comes from.
fn ahead(facts: &RefillFacts) -> u16 {
    facts.read_on.map_or(0, |read| u16::try_from(read.days_since(facts.last_service)).unwrap_or(0))
}

fn with_loss(facts: RefillFacts, per_day: f64) -> RefillFacts {
    RefillFacts { loss: Loss::Hive { per_day, intervals: 1 }, ..facts }
}

proptest! {
    #[test]
    fn a_level_read_later_sets_the_same_limits_that_much_later(facts in facts(), later in 0..200_i32) {
        let limits = |facts: &RefillFacts| {
            let found = refill(facts);
            let mut limits = found.also;
            limits.push(found.decided_by);
            let days = |pick: fn(&Limit) -> bool| limits.iter().find(|limit| pick(limit)).map(|limit| limit.days());
            (days(|limit| matches!(limit, Limit::OilLow { .. })), days(|limit| matches!(limit, Limit::Bodies { .. })))
        };
        let read = RefillFacts { read_on: Some(facts.last_service.plus(later)), ..facts };
        let shift = |days: Option<u16>| days.map(|days| days.saturating_add(u16::try_from(later).unwrap()));
        let facts = RefillFacts { read_on: None, ..facts };
        let (oil, bodies) = limits(&facts);
        prop_assert_eq!(limits(&read), (shift(oil), shift(bodies)));
    }

    #[test]
    fn the_shortest_limit_decides_and_the_others_are_told(facts in facts()) {
        let found = refill(&facts);
        let days = found.decided_by.days();
        let yours = Limit::YourMaximum { days: facts.max_days };
        prop_assert_eq!(found.due, facts.last_service.plus(i32::from(days)));
        prop_assert!(days <= facts.max_days);
        let mut all = found.also.clone();
        all.push(found.decided_by);
        prop_assert!(all.contains(&yours));
        prop_assert!(found.also.iter().all(|limit| limit.days() >= days));
        prop_assert!(found.also.windows(2).all(|pair| pair[0].days() <= pair[1].days()));
        prop_assert!(days < facts.max_days || found.decided_by == yours);
        let kinds: std::collections::BTreeSet<u8> = all
            .iter()
            .map(|limit| match limit {
                Limit::YourMaximum { .. } => 0,
                Limit::OilLow { .. } => 1,
                Limit::Bodies { .. } => 2,
            })
            .collect();
        prop_assert_eq!(kinds.len(), all.len(), "each limit once");
    }

    #[test]
    fn a_limit_is_the_last_whole_day_before_the_oil_or_the_room_is_used_up(facts in facts()) {
        let found = refill(&facts);
        for limit in found.also.iter().chain([&found.decided_by]) {
            let (days, left, per_day) = match *limit {
                Limit::YourMaximum { .. } => continue,
                Limit::OilLow { days, from, floor, per_day } => {
                    (days, from.percent().as_f64() - floor.percent().as_f64(), per_day)
                }
                Limit::Bodies { days, room, per_day } => (days, f64::from(room), per_day),
            };
            // Counted from the service, used up from the reading.
            prop_assert!(days >= ahead(&facts));
            let days_left = days - ahead(&facts);
            if left <= 0.0 {
                prop_assert_eq!(days_left, 0);
                continue;
            }
            prop_assert!(f64::from(days_left) * per_day <= left + 2e-4 * per_day, "{:?}", limit);
            prop_assert!(days == u16::MAX || (f64::from(days_left) + 1.0) * per_day > left - 2e-4 * per_day, "{:?}", limit);
        }
    }

    #[test]
    fn the_same_level_read_later_never_makes_the_date_earlier(facts in facts(), later in 0..30_i32) {
        let again = RefillFacts { read_on: facts.read_on.map(|read| read.plus(later)), ..facts };
        prop_assert!(refill(&again).due >= refill(&facts).due);
        // A reading from before the service says nothing about it.
        let before = RefillFacts { read_on: Some(facts.last_service.plus(-1 - later)), ..facts };
        prop_assert_eq!(refill(&before), refill(&RefillFacts { read_on: None, ..facts }));
    }

    #[test]
    fn a_faster_loss_never_makes_the_date_later(facts in facts(), a in 0.0..5.0_f64, b in 0.0..5.0_f64) {
        let (slow, fast) = (a.min(b), a.max(b));
        // A loss of 0 sets no limit at all, which is later than any.
        prop_assert!(refill(&with_loss(facts, fast)).due <= refill(&with_loss(facts, slow)).due);
    }

    /// All 101 levels.
    #[test]
    fn more_oil_left_never_makes_the_date_earlier_and_a_higher_floor_never_later(facts in facts()) {
        let mut due = None;
        for level in (0..=100).map(percent) {
            let here = refill(&RefillFacts { level: Some(level), ..facts }).due;
            prop_assert!(due.is_none_or(|due| due <= here));
            due = Some(here);
        }
        let mut due = None;
        for floor in (0..=100).map(percent) {
            let here = refill(&RefillFacts { floor: Some(floor), ..facts }).due;
            prop_assert!(due.is_none_or(|due| due >= here));
            due = Some(here);
        }
    }

    #[test]
    fn a_longer_maximum_more_room_or_less_catch_never_make_the_date_earlier(facts in facts(), more in 0..100_u32) {
        let due = refill(&facts).due;
        let longer = RefillFacts { max_days: facts.max_days + 1, ..facts };
        prop_assert!(refill(&longer).due >= due);
        let roomier = RefillFacts { room: facts.room.map(|room| room + more), ..facts };
        prop_assert!(refill(&roomier).due >= due);
        let calmer = RefillFacts { catch_per_day: facts.catch_per_day.map(|n| n / 2.0), ..facts };
        prop_assert!(refill(&calmer).due >= due);
        let unknown = RefillFacts { level: None, room: None, ..facts };
        prop_assert!(refill(&unknown).due >= due);
    }

    /// Levels in whole per cent over whole days: the limit is a division of whole numbers.
    #[test]
    fn a_rate_learned_from_whole_days_gives_the_whole_days_back(
        facts in facts(), from in 1..=100_u32, drop in 1..=100_u32, days in 1..=120_u16, left in 0..=100_u32,
    ) {
        let (from, drop) = (from.max(drop), drop.min(from));
        let interval = LossInterval { days, from: percent(from), to: percent(from - drop) };
        let (per_day, intervals) = median_loss(&[interval]).unwrap();
        let facts = RefillFacts {
            level: Some(percent(left)),
            read_on: None,
            floor: Some(percent(0)),
            loss: Loss::Hive { per_day, intervals },
            max_days: u16::MAX,
            room: None,
            ..facts
        };
        prop_assert_eq!(u32::from(refill(&facts).decided_by.days()), left * u32::from(days) / drop);
    }

    #[test]
    fn timing_is_the_difference_of_days(due in 0..70_000_i32, today in 0..70_000_i32) {
        let told = timing(Day::FIRST.plus(due), Day::FIRST.plus(today));
        let days = match told {
            Timing::In { days } => i32::from(days),
            Timing::Today => 0,
            Timing::Overdue { days } => -i32::from(days),
        };
        prop_assert_eq!(days, (due - today).clamp(-65_535, 65_535));
        prop_assert!(told == Timing::Today || days != 0);
    }

    #[test]
    fn the_median_lies_within_its_intervals_and_their_order_does_not_matter(
        drops in proptest::collection::vec((1..60_u16, 0..=100_u32), 1..=5),
    ) {
        let mut intervals: Vec<LossInterval> =
            drops.iter().map(|(days, drop)| LossInterval { days: *days, from: percent(100), to: percent(100 - drop) }).collect();
        let rates: Vec<f64> = drops.iter().map(|(days, drop)| f64::from(*drop) / f64::from(*days)).collect();
        let (median, used) = median_loss(&intervals).unwrap();
        prop_assert_eq!(usize::from(used), intervals.len());
        prop_assert!(rates.iter().any(|rate| *rate <= median) && rates.iter().any(|rate| *rate >= median));
        let half = rates.len().div_ceil(2);
        prop_assert!(rates.iter().filter(|rate| **rate <= median + 1e-12).count() >= half);
        prop_assert!(rates.iter().filter(|rate| **rate >= median - 1e-12).count() >= half);
        intervals.reverse();
        prop_assert_eq!(median_loss(&intervals), Some((median, used)));
        // What is not usable changes nothing.
        intervals.reverse();
        intervals.push(LossInterval { days: 0, from: percent(50), to: percent(10) });
        intervals.push(LossInterval { days: 9, from: percent(50), to: percent(51) });
        prop_assert_eq!(median_loss(&intervals), Some((median, used)));
    }
}
