//! What must hold of counts: a trend turned round is the other trend, limits hold what was seen, more effort narrows them.

use super::vec;
use beetle_almanac::almanac::chance::clumped;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trend::{Stretch, Word, compare, compare_sums};
use proptest::prelude::*;

fn counts() -> impl Strategy<Value = CountRange> {
    let most = prop_oneof![0..8_u32, 0..200_u32];
    let width = proptest::option::weighted(0.9, prop_oneof![Just(0_u32), 0..20_u32]);
    (most, width).prop_map(|(low, width)| CountRange::new(low, width.map(|width| low + width)).unwrap())
}

fn stretches() -> impl Strategy<Value = Stretch> {
    (counts(), prop_oneof![Just(90_u32), 0..400_u32])
        .prop_map(|(count, trap_days)| Stretch { count, trap_days })
}

fn turned(word: Word) -> Word {
    match word {
        Word::Up => Word::Down,
        Word::Down => Word::Up,
        other => other,
    }
}

fn inverse(one: Option<f64>, other: Option<f64>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) if one > 0.0 && other > 0.0 => (one * other - 1.0).abs() < 1e-9,
        // Nothing to divide by on one side is nothing at all on the other, or no upper end.
        (Some(zero), None) | (None, Some(zero)) => zero == 0.0,
        (None, None) => true,
        _ => false,
    }
}

proptest! {
    #[test]
    fn two_stretches_turned_round_say_the_opposite(hives in vec((stretches(), stretches()), 0..9)) {
        let back: Vec<_> = hives.iter().map(|(first, second)| (*second, *first)).collect();
        let (there, back) = (compare(&hives), compare(&back));
        prop_assert_eq!(there.word, turned(back.word));
        prop_assert_eq!((there.rose, there.fell, there.hives), (back.fell, back.rose, back.hives));
        prop_assert!((there.spread - back.spread).abs() < 1e-9 * there.spread);
        if there.limits.0.is_some_and(|low| low > 0.0) {
            prop_assert!(inverse(there.ratio.0, back.ratio.1) && inverse(there.limits.0, back.limits.1));
        }
    }

    #[test]
    fn limits_hold_what_was_counted(stretch in stretches(), hives in vec((stretches(), stretches()), 1..9)) {
        let Some(rate) = stretch.rate() else {
            prop_assert_eq!(stretch.trap_days, 0);
            return Ok(());
        };
        prop_assert!(rate.limits.0 <= rate.seen.0);
        prop_assert_eq!(rate.seen.1.is_some(), rate.limits.1.is_some());
        prop_assert!(rate.limits.1.zip(rate.seen.1).is_none_or(|(high, seen)| seen < high));
        let trend = compare(&hives);
        prop_assert!(trend.limits.0.zip(trend.ratio.0).is_none_or(|(low, ratio)| low <= ratio));
        prop_assert!(trend.limits.1.zip(trend.ratio.1).is_none_or(|(high, ratio)| ratio <= high));
        prop_assert!(trend.spread >= 1.0);
        // What is told as a change has limits on that side of 1, or is told by the exact test.
        if trend.word == Word::Up && trend.chance.is_none() {
            prop_assert!(trend.limits.0.is_none_or(|low| low > 1.0));
        }
    }

    #[test]
    fn more_trap_days_at_the_same_rate_are_narrower(count in 0..300_u32, days in 1..300_u32, times in 2..6_u32) {
        let of = |times: u32| Stretch { count: CountRange::exact(count * times), trap_days: days * times };
        let width = |stretch: Stretch| {
            let rate = stretch.rate().unwrap();
            rate.limits.1.unwrap() - rate.limits.0
        };
        prop_assert!(width(of(times)) < width(of(1)));
        let ratio = |times: u32, spread: f64| {
            let trend = compare_sums(of(times), of(times), spread);
            trend.limits.1.zip(trend.limits.0).map(|(high, low)| high / low)
        };
        if count > 0 {
            prop_assert!(ratio(times, 1.0) < ratio(1, 1.0));
            prop_assert!(ratio(1, 1.0) < ratio(1, 3.0));
        }
    }

    #[test]
    fn a_wider_range_never_says_more(first in stretches(), second in stretches(), wider in 1..30_u32, spread in 1..4_u32) {
        let count = CountRange::new(second.count.low(), second.count.high().map(|high| high + wider)).unwrap();
        let of = |second| compare_sums(first, second, f64::from(spread)).word;
        let (narrow, wide) = (of(second), of(Stretch { count, ..second }));
        prop_assert!(wide == narrow || wide == Word::CantTell, "{:?} became {:?}", narrow, wide);
    }
}

#[test]
fn zero_trap_days_are_no_data_and_not_a_rate_of_nothing() {
    let nothing = Stretch { count: CountRange::exact(4), trap_days: 0 };
    let some = Stretch { count: CountRange::exact(4), trap_days: 50 };
    assert_eq!(nothing.rate(), None);
    assert_eq!(compare(&[(nothing, some), (some, nothing)]).word, Word::NoData);
    assert_eq!(compare_sums(some, nothing, 1.0).word, Word::NoData);
    assert_eq!(compare(&[]).word, Word::NoData);
}

/// Hives that clump, drawn anew in both stretches and in none of them changed: the page's own code, not a copy of it.
#[test]
fn clumped_hives_without_any_change_are_rarely_called_one() {
    let mut state = 7_u64;
    let mut next = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(state >> 32).unwrap()) / f64::from(u32::MAX)
    };
    for (hives, mean, k) in [(3, 40.0, 1.0), (6, 20.0, 1.0), (10, 15.0, 0.5), (24, 4.0, 0.5)] {
        let chances: Vec<f64> = clumped(mean, k).unwrap().iter().map(|(_, chance)| *chance).collect();
        let mut draw = || {
            let mut left = next();
            let at = chances.iter().position(|chance| {
                left -= chance;
                left < 0.0
            });
            let count = CountRange::exact(u32::try_from(at.unwrap_or(600)).unwrap());
            Stretch { count, trap_days: 90 }
        };
        let alarms = (0..1500)
            .filter(|_| {
                let pairs: Vec<_> = (0..hives).map(|_| (draw(), draw())).collect();
                matches!(compare(&pairs).word, Word::Up | Word::Down)
            })
            .count();
        // Of 1,500 cases 5 % are 75, give or take 17.
        assert!((15..=110).contains(&alarms), "{hives} hives, {mean} beetles, k {k}: {alarms}");
    }
}
