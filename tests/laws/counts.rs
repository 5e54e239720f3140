//! What must hold of counts: a trend turned round is the other trend, limits hold what was seen, more effort narrows them.

use super::vec;
use crate::support::chance::Chance;
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

/// A yard with a change large enough to be told, each count with a range round it: some to the last beetle, most within a
/// factor of two or three, few with an open end.
fn ranged_yards() -> impl Strategy<Value = Vec<(Stretch, Stretch)>> {
    let clump = prop_oneof![Just(0.2), Just(1.0), Just(2.0)];
    (2..25_usize, 1.0..60.0_f64, 0.05..1.0_f64, any::<bool>(), clump, any::<bool>()).prop_flat_map(
        |(hives, mean, change, turned, clump, uneven)| {
            let one = (0.0..1.0_f64, 0.0..1.0_f64, 0.0..1.0_f64, 0..120_u32, 0..120_u32);
            vec(one, hives).prop_map(move |drawn| {
                let mut pairs = Vec::new();
                for (own, first, width, days, its_days) in drawn {
                    let fished = |days| if uneven { 30 + days } else { 90 };
                    let (days, its_days) = (fished(days), fished(its_days));
                    let here = mean * (clump * (own - 0.5) * 3.0).exp();
                    let count = |rate: f64, jitter: f64, trap_days: u32| {
                        let middle = rate * f64::from(trap_days) / 90.0 * (0.6 + 0.8 * jitter);
                        let ends = (middle * (1.0 - width * 0.4), middle * (1.0 + width * 0.8));
                        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // hundreds
                        let (low, high) = (ends.0.floor() as u32, ends.1.round() as u32);
                        let count = CountRange::new(low, Some(high.max(low))).unwrap();
                        Stretch { count, trap_days }
                    };
                    let (before, after) = (count(here, first, days), count(here * change, own, its_days));
                    pairs.push(if turned { (after, before) } else { (before, after) });
                }
                pairs
            })
        },
    )
}

/// One count out of each range: an end of it, or anything between.
fn mixture(
    hives: &[(Stretch, Stretch)],
    picks: &[(u8, u8, f64, f64)],
    toward: bool,
) -> Vec<(Stretch, Stretch)> {
    let one = |stretch: &Stretch, pick: u8, share: f64| {
        let (low, high) =
            (stretch.count.low(), stretch.count.high().unwrap_or(stretch.count.low() * 1000 + 60));
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within the range
        let between = low + (f64::from(high - low) * share).round() as u32;
        Stretch { count: CountRange::exact([low, high, between][usize::from(pick % 3)]), ..*stretch }
    };
    let mut all = Vec::new();
    for ((before, after), (first, second, share, other)) in hives.iter().zip(picks.iter().cycle()) {
        // Half of the mixtures set hives against each other, which differ the most.
        let (first, second) = if toward { (first % 2, 1 - first % 2) } else { (*first, *second) };
        all.push((one(before, first, *share), one(after, second, *other)));
    }
    all
}

proptest! {
    #[test]
    fn a_word_over_ranges_holds_for_every_mixture_of_them(
        hives in ranged_yards(),
        picks in vec(vec((0..3_u8, 0..3_u8, 0.0..1.0_f64, 0.0..1.0_f64), 1..30), 12),
        open in proptest::option::weighted(0.05, 0..25_usize),
    ) {
        let mut hives = hives;
        if let Some((_, after)) = open.and_then(|at| hives.get_mut(at)) {
            after.count = CountRange::new(after.count.low(), None).unwrap();
        }
        let trend = compare(&hives);
        if matches!(trend.word, Word::Up | Word::Down) {
            for (nth, picks) in picks.iter().enumerate() {
                let mixed = mixture(&hives, picks, nth % 2 == 0);
                prop_assert_eq!(compare(&mixed).word, trend.word, "{:?}", mixed);
            }
        }
        let back: Vec<_> = hives.iter().map(|(first, second)| (*second, *first)).collect();
        let back = compare(&back);
        prop_assert_eq!((turned(back.word), back.mixed), (trend.word, trend.mixed));
    }
}

proptest! {
    /// Of ranges the spread is told that the hives have at one of their ends, with its quantile: the larger of the two.
    #[test]
    fn the_spread_of_ranges_is_the_larger_of_those_at_both_ends(hives in ranged_yards()) {
        let at = |toward: bool| {
            let end = |stretch: &Stretch, high: bool| {
                let count = if high { stretch.count.high().unwrap() } else { stretch.count.low() };
                Stretch { count: CountRange::exact(count), ..*stretch }
            };
            let pairs: Vec<_> =
                hives.iter().map(|(before, after)| (end(before, !toward), end(after, toward))).collect();
            let trend = compare(&pairs);
            (trend.spread, trend.quantile)
        };
        let (least, most) = (at(false), at(true));
        let told = compare(&hives);
        prop_assert_eq!((told.spread, told.quantile), if most.0 > least.0 { most } else { least });
    }
}

/// Ranges as people write them, of a tenth of the count to half of it: of the yards that both ends of all ranges call one way,
/// nearly all keep the word, although it must hold for every mixture. Of those that lose it, five in six have a mixture that
/// says something else.
#[test]
fn ranges_of_moderate_width_still_get_their_word() {
    let mut by_chance = Chance::from_state(3);
    let mut next = || by_chance.share();
    for (width, uneven, least) in [(0.1, false, 94), (0.25, false, 88), (0.5, false, 75), (0.25, true, 84)] {
        let (mut ends, mut told) = (0, 0);
        for case in 0..240 {
            let hives = [3, 6, 12, 24][case % 4];
            let change = [0.1, 0.25, 0.4][case / 4 % 3];
            let mut pairs = Vec::new();
            for _ in 0..hives {
                let mean = 10.0 + 40.0 * next();
                let mut of = |mean: f64| {
                    let days = if uneven { 40.0 + (next() * 100.0).round() } else { 90.0 };
                    let low = (mean * (0.7 + 0.6 * next()) * days / 90.0).round();
                    let high = (low * (1.0 + width)).round();
                    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // some hundreds
                    let (low, high, trap_days) = (low as u32, high as u32, days as u32);
                    Stretch { count: CountRange::new(low, Some(high)).unwrap(), trap_days }
                };
                pairs.push((of(mean), of(mean * change)));
            }
            let trend = compare(&pairs);
            let word = matches!(trend.word, Word::Up | Word::Down);
            assert!(!(word && trend.mixed));
            told += u32::from(word);
            ends += u32::from(word || trend.mixed);
        }
        assert!(ends > 150 && told * 100 >= ends * least, "{width} {uneven}: {told} of {ends}");
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

/// The exact test counts no clumping, so where somebody typed a spread the limits decide.
#[test]
fn a_spread_that_was_typed_is_not_overruled_by_the_exact_test() {
    let of = |count| Stretch { count: CountRange::exact(count), trap_days: 100 };
    let trend = |spread| compare_sums(of(12), of(26), spread);
    assert!(trend(3.0).chance.is_some_and(|chance| chance < 0.05));
    assert!(trend(3.0).limits.0.is_some_and(|low| low < 1.0));
    assert_eq!((trend(1.0).word, trend(3.0).word), (Word::Up, Word::CantTell));
    // None at all in one of the two: counts so many times smaller are put to the test.
    let none = |spread| compare_sums(of(0), of(26), spread).word;
    assert_eq!((none(1.0), none(3.0), none(6.0)), (Word::Up, Word::Up, Word::CantTell));
}

/// Where one beetle after sixty is told as fewer, none is too, whatever the spread.
#[test]
fn none_at_all_says_no_less_than_one() {
    let of = |count| Stretch { count: CountRange::exact(count), trap_days: 500 };
    for tenths in 10..=120_u32 {
        let spread = f64::from(tenths) / 10.0;
        for first in [10, 20, 40, 60, 200] {
            let words: Vec<Word> =
                (0..first).map(|second| compare_sums(of(first), of(second), spread).word).collect();
            if words[1] == Word::Down {
                assert_eq!(words[0], Word::Down, "{spread} {first}");
            }
            let turned = compare_sums(of(0), of(first), spread).word;
            assert_eq!(words[0] == Word::Down, turned == Word::Up, "{spread} {first}");
        }
        assert_eq!(compare_sums(of(60), of(0), spread).word == Word::Down, spread <= 10.0, "{spread}");
    }
}

/// Hives that clump, drawn anew in both stretches and in none of them changed: the page's own code, not a copy of it.
#[test]
fn clumped_hives_without_any_change_are_rarely_called_one() {
    let mut chance = Chance::from_state(7);
    let mut next = || chance.share();
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
