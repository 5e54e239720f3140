//! Counts of beetles and what two of them say, against scipy and numpy (`tests/figures/counts.py`, `trends.py`,
//! `false_alarms.py`), and the worked values of the project's own sheet.

use super::{close, rows};
use beetle_almanac::almanac::chance::{as_unlikely, binomial_limits, clumped, poisson_limits, student};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trend::{Stretch, Trend, Word, compare, compare_one, compare_sums};

fn stretch(count: u32, trap_days: u32) -> Stretch {
    Stretch { count: CountRange::exact(count), trap_days }
}

/// The cases of one row of the figures.
fn cases(name: &str) -> Vec<Vec<f64>> {
    let all: Vec<(String, Vec<Vec<f64>>)> = rows(include_str!("../figures/counts.json"));
    let found = all.into_iter().find(|(known, _)| known == name).unwrap().1;
    assert!(found.len() > 190, "{name}");
    found
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // whole numbers, written as such
fn whole(number: f64) -> u32 {
    number as u32
}

/// Within a millionth of the value, or a thousand-millionth where it is tiny.
#[track_caller]
fn near(found: f64, value: f64) {
    close(found, value, (value.abs() * 1e-6).max(1e-9));
}

#[test]
fn limits_of_a_count_and_of_a_share_as_chi_square_and_beta_say() {
    for case in cases("limits") {
        let (low, high) = poisson_limits(whole(case[0]));
        near(low, case[1]);
        near(high, case[2]);
    }
    for case in cases("shares") {
        let (low, high) = binomial_limits(whole(case[0]), whole(case[1]));
        near(low, case[2]);
        near(high, case[3]);
    }
}

#[test]
fn two_counts_as_the_binomial_test_and_clumped_ones_as_the_negative_binomial_say() {
    for case in cases("two") {
        let (all, share) = (whole(case[0] + case[1]), case[3] / (case[2] + case[3]));
        near(as_unlikely(whole(case[1]), all, share), case[4]);
    }
    for case in cases("clumped") {
        let steps = clumped(case[1], case[2]).unwrap();
        let at = usize::try_from(whole(case[0])).unwrap();
        near(steps.get(at).map_or(0.0, |(_, chance)| *chance), case[3]);
    }
    for case in cases("student") {
        close(student(whole(case[0])), case[1], 1e-5);
    }
}

type Judged = (Vec<(u32, u32, u32, u32)>, i32, Option<f64>, Option<f64>, Option<f64>, f64, Option<f64>);

#[test]
fn a_trend_over_hives_as_arrays_of_numpy_find_it() {
    let all: Vec<Judged> = rows(include_str!("../figures/trends.json"));
    assert!(all.len() >= 1000);
    let mut told = [0; 3];
    for (hives, word, ratio, low, high, spread, chance) in all {
        let mut pairs = Vec::new();
        for (first, before, second, after) in hives {
            pairs.push((stretch(first, before), stretch(second, after)));
        }
        let found = compare(&pairs);
        let expected = [Word::Down, Word::CantTell, Word::Up][usize::try_from(word + 1).unwrap()];
        assert_eq!(found.word, expected, "{pairs:?}");
        told[usize::try_from(word + 1).unwrap()] += 1;
        for (found, expected) in
            [(found.ratio.0, ratio), (found.limits.0, low), (found.limits.1, high), (found.chance, chance)]
        {
            assert_eq!(found.is_some(), expected.is_some(), "{pairs:?}");
            if let (Some(found), Some(expected)) = (found, expected) {
                // The tail of Student's expansion at 11 and more degrees of freedom.
                close(found, expected, (expected * 2e-5).max(1e-9));
            }
        }
        close(found.spread, spread, spread * 1e-6);
    }
    assert!(told.iter().all(|word| *word > 90), "{told:?}");
}

#[test]
fn with_no_change_at_all_the_word_is_rarely_up_or_down() {
    let all: Vec<(f64, u32, u32, u32, u32, u32)> = rows(include_str!("../figures/false_alarms.json"));
    assert!(all.len() > 250);
    let worst = all.iter().map(|case| case.4).max().unwrap();
    // And the plain rule cries wolf, or the cases would prove nothing.
    let plain = all.iter().map(|case| case.5).max().unwrap();
    assert!(worst <= 65 && plain > 250, "{worst} and {plain} of 1,000");
}

/// A hive of the yard beside itself, and of how many that did not change it is said.
#[test]
fn one_hive_of_a_yard_as_numpy_and_scipy_find_it() {
    type Alarms = (String, Vec<(f64, u32, u32, u32, u32, u32)>);
    type Words = (String, Vec<(Vec<(u32, u32, u32, u32)>, Option<i32>)>);
    let ((_, alarms), (_, words)): (Alarms, Words) =
        serde_json::from_str(include_str!("../figures/hive_alarms.json")).unwrap();
    assert_eq!(alarms.len(), 100);
    // What is said on the report: at most one in twenty. With three hives it would not hold, and by its own counts not at all.
    assert!(alarms.iter().any(|(.., three, _)| *three > 50));
    for (k, hives, mean, ours, _, own) in alarms {
        assert!(ours <= 50, "k {k}, {hives} hives, {mean} beetles: {ours}");
        assert!(k > 100.0 || own > 100, "k {k}, {hives} hives, {mean} beetles: {own}");
    }
    let mut said = [0, 0, 0, 0];
    for (table, word) in words {
        let hives: Vec<_> = table
            .iter()
            .map(|(one, days, other, after)| (stretch(*one, *days), stretch(*other, *after)))
            .collect();
        let (first, second) = hives[0];
        let told = compare_one(first, second, &compare(&hives));
        let known = told.map(|told| match told.word {
            Word::Up => 1,
            Word::Down => -1,
            Word::CantTell | Word::NoData => 0,
        });
        assert_eq!(known, word, "{table:?}");
        said[usize::try_from(word.unwrap_or(2) + 1).unwrap()] += 1;
    }
    assert!(said.iter().all(|many| *many > 12), "{said:?}");
}

fn word(trend: &Trend) -> (Word, f64, f64, f64) {
    (trend.word, trend.ratio.0.unwrap(), trend.limits.0.unwrap(), trend.limits.1.unwrap())
}

#[test]
fn the_worked_examples_of_two_counts() {
    let (up, ratio, low, high) = word(&compare_sums(stretch(60, 500), stretch(96, 500), 1.0));
    assert_eq!(up, Word::Up);
    close(ratio, 1.6, 1e-9);
    close(low, 1.16, 0.005);
    close(high, 2.21, 0.005);
    let (unsure, _, low, high) = word(&compare_sums(stretch(60, 500), stretch(96, 500), 3.0));
    assert_eq!(unsure, Word::CantTell);
    close(low, 0.92, 0.005);
    close(high, 2.80, 0.005);
    for (first, second, chance, said) in [
        (12, 20, 0.215, Word::CantTell),
        (12, 26, 0.034, Word::Up),
        (5, 14, 0.064, Word::CantTell),
        (3, 9, 0.146, Word::CantTell),
    ] {
        let trend = compare_sums(stretch(first, 100), stretch(second, 100), 1.0);
        close(trend.chance.unwrap(), chance, 0.0006);
        assert_eq!(trend.word, said);
    }
}

#[test]
fn the_worked_examples_of_one_count() {
    for (count, low, high) in [(0, 0.0, 3.7), (3, 0.6, 8.8), (12, 6.2, 21.0), (47, 34.5, 62.5)] {
        let rate = stretch(count, 100).rate().unwrap();
        close(rate.seen.0, f64::from(count), 1e-9);
        close(rate.limits.0, low, 0.05);
        close(rate.limits.1.unwrap(), high, 0.05);
    }
}
