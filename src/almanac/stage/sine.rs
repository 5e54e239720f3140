//! The mean over a day whose temperature runs as a sine.

use crate::almanac::warmth::Swing;

/// Points of a day. Measured against `scipy.integrate.quad`, see `tests/published/rate_sums.rs`.
pub const NODES: u8 = 48;

/// Cosines of π/(2·[`NODES`]) and π/[`NODES`]: where the points begin and how they turn.
const FIRST: f64 = 0.999_464_587_476_365_7;
const TURN: f64 = 0.997_858_923_238_603_5;

/// The means over a day of three functions of the temperature in °C.
///
/// A sine is at each of the points cos((k + ½)π/n) equally long (Gauss–Chebyshev); each follows from the two before it.
pub fn day_mean(day: Swing, rates: impl Fn(f64) -> [f64; 3]) -> [f64; 3] {
    let middle = day.mean().celsius();
    let reach = (day.high.celsius() - day.low.celsius()) / 2.0;
    if reach <= 0.0 {
        return rates(middle);
    }
    let mut sum = [0.0; 3];
    let (mut before, mut node) = (FIRST, FIRST);
    for _ in 0..NODES {
        for (sum, rate) in sum.iter_mut().zip(rates(middle + reach * node)) {
            *sum += rate;
        }
        (before, node) = (node, 2.0 * TURN * node - before);
    }
    sum.map(|sum| sum / f64::from(NODES))
}
