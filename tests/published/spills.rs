//! Spill angles against an integral over the turned trap, by scipy (`tests/figures/spills.py`).

use super::{close, mm, percent, rows};
use beetle_almanac::almanac::spill::spill;

#[test]
fn spill_angles_agree_with_the_integral_below_at_and_above_half() {
    let rows: Vec<(f64, f64, f64, f64, f64)> = rows(include_str!("../figures/spills.json"));
    let count = |wanted: fn(f64) -> bool| rows.iter().filter(|row| wanted(row.2)).count();
    assert!(count(|fill| fill < 50.0) >= 60 && count(|fill| fill > 50.0) >= 60);
    assert!(rows.iter().filter(|row| row.2.to_bits() == 50.0_f64.to_bits()).count() >= 20);
    for (length, depth, fill, degrees, braking) in rows {
        let spill = spill(mm(length), mm(depth), percent(fill)).expect("a trap with sides");
        close(spill.degrees, degrees, 2e-6);
        // An almost empty trap needs hundreds of m/s²: the figure is rounded at 10⁻⁵.
        close(spill.braking, braking, 2e-5 + 1e-8 * braking);
        close(spill.oil_depth.millimetres(), depth * fill / 100.0, 1e-9);
    }
}
