//! Trials in pairs: their power and what they come to, against scipy (`tests/figures/trials.py`).

use super::{close, rows};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trend::Stretch;
use beetle_almanac::almanac::trial::{LEAST_PAIRS, odds, outcome};
use serde_json::Value;

fn cases<T: serde::de::DeserializeOwned>(name: &str) -> Vec<T> {
    let all: Vec<(String, Value)> = rows(include_str!("../figures/trials.json"));
    let found = all.into_iter().find(|(known, _)| known == name).unwrap().1;
    let found: Vec<T> = serde_json::from_value(found).unwrap();
    assert!(found.len() >= 150);
    found
}

#[test]
fn the_chance_to_be_told_is_that_of_all_ways_the_pairs_can_fall() {
    let (mut never, mut far) = (0, 0);
    for (pairs, mean, clumping, left, chance) in cases::<(u32, f64, f64, f64, f64)>("power") {
        close(odds(mean, clumping, left).unwrap().power(pairs), chance, 1e-7);
        far += u32::from(clumping < 0.1 && mean > 300.0 && chance > 1e-3);
        if pairs < LEAST_PAIRS {
            assert!(chance == 0.0, "{pairs} pairs");
            never += 1;
        }
    }
    assert!(never > 10 && far > 8, "{never} {far}");
}

#[test]
fn an_outcome_is_that_of_binomtest_and_of_all_permutations() {
    for (table, sign, permuted) in cases::<(Vec<(u32, u32, u32, u32)>, f64, f64)>("outcome") {
        let of = |count, trap_days| Stretch { count: CountRange::exact(count), trap_days };
        let pairs: Vec<_> =
            table.iter().map(|(with, days, without, its)| (of(*with, *days), of(*without, *its))).collect();
        let found = outcome(&pairs);
        close(found.sign, sign, 1e-9);
        close(found.permuted.unwrap(), permuted, 1e-9);
    }
}
