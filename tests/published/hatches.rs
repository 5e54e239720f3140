//! Eggs in a room that is warmer by day than by night, against scipy's integral (`tests/figures/hatches.py`).

use super::{celsius, rows};
use beetle_almanac::almanac::honey::{Hatch, hatch};
use beetle_almanac::almanac::warmth::Swing;

#[test]
fn eggs_hatch_as_fast_as_the_integral_over_the_day_says() {
    let rows: Vec<(f64, f64, f64)> = rows(include_str!("../figures/hatches.json"));
    let (mut hatching, mut cold, mut hot) = (0, 0, 0);
    for (low, high, rate) in rows {
        match hatch(Swing { low: celsius(low), high: celsius(high) }) {
            Hatch::After { minutes, earliest, latest } => {
                // 48 values stand for the whole day. Where it is too hot for a part of it the rate falls from its highest to
                // nothing at once, and one value more or less is a forty-eighth of that; else they are much better.
                let within = if high > 46.5 { 1.32 / 48.0 } else { 0.002 };
                let found = 1440.0 / f64::from(minutes);
                assert!((found - rate).abs() <= within, "{low}–{high}: {found}, integral {rate}");
                assert!(earliest <= minutes && latest.is_none_or(|latest| latest >= minutes));
                hatching += 1;
            }
            Hatch::TooCold => {
                assert!(high <= 13.5 && rate <= 0.0, "{low}–{high}");
                cold += 1;
            }
            Hatch::TooHot => {
                assert!(low > 46.0 && rate < 0.02, "{low}–{high}");
                hot += 1;
            }
        }
    }
    assert!(hatching >= 800 && cold >= 40 && hot >= 1, "{hatching} {cold} {hot}");
}
