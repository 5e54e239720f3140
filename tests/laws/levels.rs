//! Level, volume and spill angle.

use super::{kinds, millionths, mm, percent, profiles};
use beetle_almanac::almanac::level::level_of;
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::refill::{level_rose, working_floor};
use beetle_almanac::almanac::spill::{LEAST_DEPTH_MM, spill};
use beetle_almanac::almanac::trap::TrapKind;
use proptest::prelude::*;

/// 0–100 % in tenths.
fn tenths() -> impl Iterator<Item = Share> {
    (0..=1000).map(|tenths| Share::from_percent(millionths(tenths * 100_000)).expect("0–100"))
}

proptest! {
    #[test]
    fn the_volume_rises_with_the_level_from_nothing_to_all_and_the_level_comes_back(
        kind in kinds(),
        profile in profiles(),
    ) {
        let kind = TrapKind { profile, ..kind };
        let mut below = -1.0;
        for level in tenths() {
            let filled = kind.filled(level);
            prop_assert!(filled > below && (0.0..=1.0).contains(&filled), "{:?} {}", level, filled);
            prop_assert!((level_of(&kind, filled) - level.fraction()).abs() < 1e-12);
            below = filled;
        }
        prop_assert_eq!((kind.filled(Share::NONE), kind.filled(Share::FULL)), (0.0, 1.0));
        for (level, volume) in &kind.profile {
            prop_assert!((kind.filled(*level) - volume.fraction()).abs() < 1e-15, "a measured point is kept");
        }
    }

    #[test]
    fn the_level_rises_with_the_volume(kind in kinds(), volumes in proptest::collection::btree_set(0..=10_000_u32, 2..50)) {
        let levels: Vec<f64> = volumes.iter().map(|v| level_of(&kind, f64::from(*v) / 10_000.0)).collect();
        prop_assert!(levels.windows(2).all(|pair| pair[0] < pair[1]));
        prop_assert!(levels.iter().all(|level| (0.0..=1.0).contains(level)));
    }

    #[test]
    fn a_fuller_or_shallower_or_longer_trap_spills_sooner(length in 1..2000_u32, depth in 1..600_u32) {
        let (length, depth) = (f64::from(length) / 10.0, f64::from(depth) / 10.0);
        let mut before = f64::INFINITY;
        for fill in tenths() {
            let here = spill(mm(length), mm(depth), fill).unwrap();
            prop_assert!(here.degrees < before && (0.0..=90.0).contains(&here.degrees));
            before = here.degrees;
            if fill == Share::NONE || fill == Share::FULL {
                continue;
            }
            let pull = 9.806_65 * here.degrees.to_radians().tan();
            prop_assert!((here.braking - pull).abs() <= 1e-9 * pull.max(1.0));
            prop_assert!(spill(mm(length + 1.0), mm(depth), fill).unwrap().degrees < here.degrees);
            prop_assert!(spill(mm(length), mm(depth + 1.0), fill).unwrap().degrees > here.degrees);
            let doubled = spill(mm(length * 2.0), mm(depth * 2.0), fill).unwrap();
            prop_assert!((doubled.degrees - here.degrees).abs() < 1e-9, "only the shape counts");
        }
    }

    #[test]
    fn the_two_formulas_meet_at_half_full(length in 1.0..200.0_f64, depth in 1.0..60.0_f64) {
        let below = Share::from_percent(millionths(49_999_999)).unwrap();
        let at = |fill| spill(mm(length), mm(depth), fill).unwrap().degrees;
        prop_assert!((at(below) - at(Share::HALF)).abs() < 1e-5);
    }

    #[test]
    fn the_working_floor_is_six_millimetres_in_every_trap(depth in 0.0..200.0_f64) {
        match working_floor(mm(depth)) {
            Some(floor) => prop_assert!((floor.fraction() * depth - LEAST_DEPTH_MM).abs() < 1e-6),
            None => prop_assert!(depth < LEAST_DEPTH_MM),
        }
    }
}

/// 101 × 101.
#[test]
fn a_level_rose_when_it_is_above_and_not_when_equal() {
    for from in 0..=100 {
        for to in 0..=100 {
            assert_eq!(level_rose(percent(from), percent(to)), to > from);
        }
    }
}
