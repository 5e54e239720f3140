//! Level and volume of oil against `numpy.interp` (`tests/figures/levels.py`).

use super::{close, percent, rows, trap};
use beetle_almanac::almanac::level::level_of;

#[test]
fn level_and_volume_agree_with_numpy_both_ways() {
    type Row = (Vec<(f64, f64)>, f64, f64);
    let rows: Vec<Row> = rows(include_str!("../figures/levels.json"));
    assert!(rows.len() >= 150 && rows.iter().any(|(profile, ..)| profile.len() == 4));
    for (profile, level, volume) in rows {
        let kind =
            trap(profile.into_iter().map(|(depth, volume)| (percent(depth), percent(volume))).collect());
        close(100.0 * kind.filled(percent(level)), volume, 1e-8);
        // The figure is rounded at 10⁻⁹; the steepest wall stretches that by no more than 98.
        close(100.0 * level_of(&kind, volume / 100.0), level, 1e-6);
    }
}
