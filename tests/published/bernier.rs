//! Bernier et al. 2014, The influence of soil temperature and moisture on the development and survival of the small hive
//! beetle (as read in the abstract): days in the soil at 16, 18 and 20 °C.

use super::celsius;
use beetle_almanac::almanac::stage::{Edge, Stage, days};

#[test]
fn cool_soil_takes_as_long_as_it_was_measured_to_take() {
    for (warmth, from, to) in [(16.0, 69.0, 78.0), (18.0, 47.0, 54.0), (20.0, 36.0, 39.0)] {
        let [earliest, likely, latest] =
            Edge::ALL.map(|edge| days(Stage::Soil, celsius(warmth), edge).expect("it develops"));
        println!("soil at {warmth} °C: {likely:.1} d ({earliest:.1}–{latest:.1}), measured {from}–{to}");
        assert!((from..=to).contains(&likely), "{warmth}: {likely}");
        assert!(earliest < from && to < latest);
    }
}

/// The table of the three sets, worked out with numpy from constants of a digit more
/// (295.74 above 12.047 for set B): within 0.07 d.
#[test]
fn the_three_sets_give_the_days_worked_out_elsewhere() {
    let table = [
        (16.0, 60.8, 74.8, 73.7),
        (18.0, 45.6, 49.7, 50.2),
        (20.0, 36.5, 37.2, 37.3),
        (21.0, 33.2, 33.0, 33.0),
        (26.0, 22.8, 21.2, 20.7),
        (28.0, 20.3, 18.5, 18.2),
        (30.0, 18.2, 16.5, 16.5),
        (35.0, 14.6, 12.9, 14.8),
    ];
    for (warmth, a, b, curve) in table {
        for (rate, published) in Stage::Soil.sets(warmth).iter().zip([a, b, curve]) {
            let found = 1.0 / rate;
            assert!((found - published).abs() <= 0.07, "{warmth} °C: {found} and not {published}");
        }
    }
}
