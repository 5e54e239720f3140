//! Mean rates of a day against `scipy.integrate.quad` (`tests/figures/rate_sums.py`): 1,200 days drawn at random, each set
//! of each stage.

use super::{rows, swing};
use beetle_almanac::almanac::stage::{Stage, day_mean};

#[test]
fn the_day_mean_of_every_set_is_that_of_scipy() {
    let rows: Vec<(usize, f64, f64, f64, f64, f64)> = rows(include_str!("../figures/rate_sums.json"));
    assert!(rows.len() >= 1000);
    // Of the largest rate there is, so that stages can be compared: days that stay below 41.9 °C, and hotter ones, where
    // a set ends with a drop that points of a day step over.
    let mut worst = [0.0_f64; 2];
    let mut counted = [0; 2];
    for (stage, low, high, a, b, third) in rows {
        let stage = [Stage::Egg, Stage::Larva, Stage::Soil][stage];
        let found = day_mean(swing(low, high), |celsius| stage.sets(celsius));
        let top = stage.sets(stage.heat().0 - 1.0);
        let hot = usize::from(high > 41.9);
        counted[hot] += 1;
        for ((found, published), top) in found.iter().zip([a, b, third]).zip(top) {
            if top > 0.0 {
                worst[hot] = worst[hot].max((found - published).abs() / top);
            }
        }
    }
    println!(
        "day means beside quad: within {:.1e} of the top rate on {} days, {:.1e} on {} days above 41.9 °C",
        worst[0], counted[0], worst[1], counted[1]
    );
    assert!(counted.iter().all(|days| *days > 100), "{counted:?}");
    assert!(worst[0] < 1e-4, "{worst:?}");
    assert!(worst[1] < 0.012, "{worst:?}");
}
