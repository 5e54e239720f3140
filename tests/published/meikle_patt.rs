//! Meikle & Patt 2011, The effects of temperature, diet, and other factors on development, survivorship, and oviposition
//! of Aethina tumida, J. Econ. Entomol. 104 (as read in the abstract): days of each stage at 21 and 35 °C.

use super::{celsius, flat};
use beetle_almanac::almanac::stage::{Edge, Stage, days, rates};

/// Stage, °C, days. "Under 22 h" and "under 8 d" are taken as 22 h and 8 d.
const MEASURED: [(Stage, f64, f64); 6] = [
    (Stage::Egg, 21.0, 61.0 / 24.0),
    (Stage::Egg, 35.0, 22.0 / 24.0),
    (Stage::Larva, 21.0, 17.0),
    (Stage::Larva, 35.0, 8.0),
    (Stage::Soil, 21.0, 32.7),
    (Stage::Soil, 35.0, 14.8),
];

/// The sets were made from these days: within 5 % they must give them back.
#[test]
fn the_likely_days_are_those_measured_within_a_twentieth() {
    for (stage, warmth, measured) in MEASURED {
        let [earliest, likely, latest] =
            Edge::ALL.map(|edge| days(stage, celsius(warmth), edge).expect("it develops"));
        println!(
            "{stage:?} at {warmth} °C: {likely:.2} d ({earliest:.2}–{latest:.2}), measured {measured:.2}"
        );
        assert!((likely / measured - 1.0).abs() < 0.05, "{stage:?} {warmth}: {likely} and not {measured}");
        assert!(earliest < measured && measured < latest, "{stage:?} {warmth}");
    }
}

/// Floors of the same study: egg 13.5, larva and soil stage 10.0 °C.
#[test]
fn at_the_floors_of_the_study_its_set_gives_nothing() {
    for (stage, floor) in [(Stage::Egg, 13.5), (Stage::Larva, 10.0), (Stage::Soil, 10.0)] {
        assert_eq!(stage.first().days(floor), None);
        assert!(stage.first().days(floor + 0.5).is_some_and(|days| days > 30.0));
    }
    // The other laboratories' floors are lower or higher by up to two degrees; below all of them nothing goes on.
    for (stage, cold) in [(Stage::Egg, 10.0), (Stage::Larva, 8.5), (Stage::Soil, 10.0)] {
        assert!(rates(stage, &flat(cold)).iter().all(|rate| rate.abs() < 1e-12), "{stage:?}");
    }
}
