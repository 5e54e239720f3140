//! What must hold of every trial: sides are even, each hive is in it once, more pairs never tell less.

use super::vec;
use beetle_almanac::almanac::chance::clumped;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trend::Stretch;
use beetle_almanac::almanac::trial::{LEAST_PAIRS, odds, outcome, pairs};
use proptest::prelude::*;

#[test]
fn every_number_of_hives_and_every_seed_gives_even_sides() {
    for hives in 0..60_usize {
        for seed in 0..20 {
            let catches: Vec<Option<f64>> = (0..hives)
                .map(|hive| (hive % 7 != 3).then_some(f64::from(u32::try_from(hive * 31 % 17).unwrap())))
                .collect();
            let drawn = pairs(&catches, &format!("s{seed}"));
            assert_eq!((drawn.each.len(), drawn.left.is_some()), (hives / 2, hives % 2 == 1));
            let mut all: Vec<usize> = drawn.each.iter().flat_map(|(one, other)| [*one, *other]).collect();
            all.extend(drawn.left);
            all.sort_unstable();
            assert_eq!(all, (0..hives).collect::<Vec<_>>(), "each hive once");
            // Who is left over tells least.
            if let Some(catch) = drawn.left.and_then(|left| catches[left]) {
                assert!(catches.iter().all(|other| other.is_some_and(|other| other >= catch)));
            }
            // Nobody stands between the catches of two that are a pair.
            for (one, other) in &drawn.each {
                if let (Some(a), Some(b)) = (catches[*one], catches[*other]) {
                    let (low, high) = (a.min(b), a.max(b));
                    assert!(!catches.iter().flatten().any(|catch| low < *catch && *catch < high));
                }
            }
        }
    }
}

#[test]
fn the_lot_falls_on_either_hive_of_a_pair_and_again_the_same() {
    let catches = [Some(1.0), Some(2.0)];
    let firsts = (0..400).filter(|seed| pairs(&catches, &seed.to_string()).each[0].0 == 0).count();
    assert!((150..250).contains(&firsts), "{firsts} of 400");
    assert_eq!(pairs(&catches, "k7"), pairs(&catches, "k7"));
}

proptest! {
    #[test]
    fn twice_the_pairs_and_a_larger_effect_tell_more(few in 1..20_u32, mean in 8.0..60.0_f64, k in 0.6..8.0_f64, left in 0.05..0.5_f64) {
        let told = |pairs, left| odds(mean, k, left).unwrap().power(pairs);
        prop_assert!((0.0..=1.0).contains(&told(few, left)));
        if few < LEAST_PAIRS {
            prop_assert!(told(few, left) == 0.0);
        }
        // One pair more may tell less, as the sign test goes in steps.
        prop_assert!(told(2 * few, left) >= told(few, left) - 1e-9);
        prop_assert!(told(few, left) >= told(few, 1.0) - 1e-9);
    }

    /// Over all that the page takes: clumping from a millionth to 100, up to 1,000 beetles.
    #[test]
    fn chances_of_clumped_counts_add_up_and_have_their_mean(mean in -6.0..6.907_f64, k in -13.8..4.605_f64, left in 0.0..1.0_f64) {
        let (mean, k) = (mean.exp(), k.exp());
        let steps = clumped(mean, k).unwrap();
        prop_assert!(steps.len() < 40_000, "{} steps", steps.len());
        let (mut from, mut all, mut sum) = (0.0, 0.0, 0.0);
        for (wide, chance) in &steps {
            all += chance;
            sum += chance * (from + (wide - 1.0) / 2.0);
            from += wide;
        }
        prop_assert!((all - 1.0_f64).abs() < 1e-8, "{}", all);
        // The counts left out are of one case in 10¹², and those of tiny clumping are many.
        prop_assert!((sum / mean - 1.0_f64).abs() < if k < 1e-3 { 1e-3 } else { 1e-6 }, "{} for {}", sum, mean);
        // With nothing done either hive catches less as often.
        let (alike, here) = (odds(mean, k, 1.0).unwrap(), odds(mean, k, left).unwrap());
        prop_assert!((alike.less * 2.0 + alike.even - 1.0).abs() < 1e-8);
        prop_assert!(here.less >= alike.less - 1e-9 && here.less + here.even <= 1.0 + 1e-8);
    }

    #[test]
    fn sides_turned_round_turn_the_outcome(table in vec((0..60_u32, 1..200_u32, 0..60_u32, 1..200_u32), 0..13)) {
        let of = |count, trap_days| Stretch { count: CountRange::exact(count), trap_days };
        let there: Vec<_> = table.iter().map(|(a, b, c, d)| (of(*a, *b), of(*c, *d))).collect();
        let back: Vec<_> = there.iter().map(|(one, other)| (*other, *one)).collect();
        let (there, back) = (outcome(&there), outcome(&back));
        prop_assert_eq!((there.less, there.more, there.even), (back.more, back.less, back.even));
        prop_assert!((there.sign - back.sign).abs() < 1e-12);
        prop_assert_eq!(there.permuted, back.permuted);
        prop_assert!(!there.told() || there.less + there.more >= LEAST_PAIRS);
    }
}

#[test]
fn counts_that_no_number_can_hold_have_no_odds() {
    assert_eq!(odds(1e6, 1e6, 0.5), None);
    assert_eq!(odds(0.0, 0.0, 0.5), None);
    assert!(odds(1000.0, 100.0, 0.0).is_some_and(|odds| odds.less > 0.999_999 && odds.even < 1e-6));
}
