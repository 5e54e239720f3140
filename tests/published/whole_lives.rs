//! Whole lives that took no part in making the sets: the span of dates has to contain them, and by how much the likely
//! date misses them is printed.
//!
//! * de Guzman & Frake 2007, J. Apic. Res. 46: first-instar larva to adult 20.68 d at 34 °C, 36.31 d at 24–28 °C.
//! * A study of thermal limits in Korea (Noor-ul-Ane & Jung, Insects): egg to adult 20 d at 35 °C, 53.9 d at 18.6 °C.
//!   The second temperature is none of those the study says it held, so that point is reported and holds nothing.

use super::{celsius, swing};
use beetle_almanac::almanac::stage::{Edge, Stage, days, rates};
use beetle_almanac::almanac::warmth::Span;

const LARVA_TO_ADULT: [Stage; 3] = [Stage::Larva, Stage::Wandering, Stage::Soil];
const EGG_TO_ADULT: [Stage; 4] = [Stage::Egg, Stage::Larva, Stage::Wandering, Stage::Soil];

/// What the three edges come to in a room of `cool` to `warm` °C.
fn span(what: &str, stages: &[Stage], cool: f64, warm: f64, measured: f64) -> [f64; 3] {
    let middle = f64::midpoint(cool, warm);
    let room = Span::around(swing(middle, middle), warm - middle);
    let mut found = [0.0; 3];
    for stage in stages {
        for (sum, rate) in found.iter_mut().zip(rates(*stage, &room)) {
            *sum += 1.0 / rate;
        }
    }
    let [earliest, likely, latest] = found;
    let bare = likely - 1.0;
    let miss = |days: f64| (days / measured - 1.0) * 100.0;
    println!(
        "{what}: {likely:.1} d ({earliest:.1}–{latest:.1}), measured {measured}; misses by {:+.0} %, without the day \
         of wandering {:+.0} %",
        miss(likely),
        miss(bare)
    );
    found
}

#[test]
fn a_whole_life_measured_elsewhere_lies_between_earliest_and_latest() {
    let lives: [(&str, &[Stage], f64, f64, f64); 3] = [
        ("larva to adult at 34 °C", &LARVA_TO_ADULT, 34.0, 34.0, 20.68),
        ("larva to adult at 24–28 °C", &LARVA_TO_ADULT, 24.0, 28.0, 36.31),
        ("egg to adult at 35 °C", &EGG_TO_ADULT, 35.0, 35.0, 20.0),
    ];
    for (what, stages, cool, warm, measured) in lives {
        let [earliest, _, latest] = span(what, stages, cool, warm, measured);
        assert!(earliest < measured && measured < latest, "{what}");
    }
    // Reported, and no more.
    span("egg to adult at 18.6 °C (doubtful)", &EGG_TO_ADULT, 18.6, 18.6, 53.9);
}

/// Eggs: 2 d at 34 °C and 3 d in a room of 24–28 °C, twice as long as another laboratory found: the latest edge allows it.
#[test]
fn eggs_of_the_slower_laboratory_are_not_later_than_the_latest() {
    for (warmth, measured) in [(34.0, 2.0), (26.0, 3.0)] {
        let latest = days(Stage::Egg, celsius(warmth), Edge::Latest).expect("it develops");
        assert!(latest >= measured - 1e-9, "{warmth}: {latest}");
    }
    // Handbooks without a temperature: 2–3 days in the hive (common practice), 1–6 days (a national agency).
    let nest = Edge::ALL.map(|edge| days(Stage::Egg, celsius(34.5), edge).expect("it develops"));
    assert!(nest[0] < 1.0 && nest[2] > 1.9, "{nest:?}");
}

/// The same study's optimum and upper limits bound every stage.
#[test]
fn nothing_develops_above_the_limits_and_nothing_is_quicker_than_at_the_optimum() {
    for (stage, optimum, limit) in
        [(Stage::Egg, 39.1, 46.5), (Stage::Larva, 36.5, 44.0), (Stage::Soil, 35.5, 42.5)]
    {
        assert_eq!(days(stage, celsius(limit + 0.1), Edge::Earliest), None);
        let quickest = days(stage, celsius(optimum), Edge::Earliest).expect("it develops");
        for tenths in 0..500 {
            let there = days(stage, celsius(f64::from(tenths) / 10.0), Edge::Earliest);
            assert!(there.is_none_or(|days| days >= quickest - 1e-9), "{stage:?} {tenths}");
        }
    }
}
