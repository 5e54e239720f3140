//! Degree-days over a sine day (Baskerville & Emin 1969; Allen 1976; Zalom et al. 1983): the means over a day that rates
//! are summed by, held beside values from elsewhere.

use super::swing;
use beetle_almanac::almanac::stage::{Stage, day_mean};

/// Degree-days above `lower`, no more than up to `upper`: horizontal cut-off.
fn sine(low: f64, high: f64, lower: f64, upper: f64) -> f64 {
    let above = |celsius: f64| [celsius.min(upper) - lower, 0.0, 0.0].map(|degrees| degrees.max(0.0));
    day_mean(swing(low, high), above)[0]
}

/// Worked out with numpy to three decimals: low, high, above 10, above 13.5, above 10 up to 35.
#[test]
fn degree_days_are_those_worked_out_elsewhere() {
    let table = [
        (20.0, 20.0, 10.000, 6.500, 10.000),
        (10.0, 30.0, 10.000, 7.133, 10.000),
        (5.0, 35.0, 10.882, 8.480, 10.882),
        (25.0, 45.0, 25.000, 21.500, 21.817),
        (8.0, 16.0, 2.436, 0.614, 2.436),
    ];
    let mut worst = 0.0_f64;
    for (low, high, ten, thirteen, cut) in table {
        for (lower, upper, published) in [(10.0, 99.0, ten), (13.5, 99.0, thirteen), (10.0, 35.0, cut)] {
            let found = sine(low, high, lower, upper);
            worst = worst.max((found - published).abs());
            assert!((found - published).abs() < 0.003, "{low}–{high} above {lower}: {found}");
        }
    }
    println!("degree-days of five days: within {worst:.4} °C·d");
}

/// A university extension's degree-day service, station data of 2016, above 12 °C up to 33 °C, as kept in the test data of
/// the open package `TrenchR`; printed to two decimals.
#[test]
fn degree_days_are_those_an_extension_service_printed() {
    let single = [
        (7.8, 19.4, 2.72),
        (1.1, 16.1, 0.94),
        (15.0, 23.9, 7.45),
        (10.6, 34.4, 10.50),
        (11.7, 33.9, 10.74),
        (12.2, 33.9, 10.97),
        (10.6, 38.9, 11.71),
        (14.4, 39.4, 13.49),
        (15.0, 37.2, 13.31),
        (12.8, 35.6, 11.82),
        (13.9, 33.9, 11.82),
        (9.4, 34.4, 10.12),
        (13.9, 36.1, 12.50),
        (15.0, 34.4, 12.54),
        (8.3, 15.0, 0.90),
        (17.8, 32.2, 13.00),
        (7.0, 14.0, 0.47),
    ];
    for (low, high, printed) in single {
        let found = sine(low, high, 12.0, 33.0);
        assert!((found - printed).abs() < 0.008, "{low}–{high}: {found} and not {printed}");
    }
}

/// The same service's double sine: half a day from the low to the high, half from there to the next low. Each half is
/// half of a whole sine day between its ends.
#[test]
fn half_a_day_each_makes_the_double_sine_of_the_service() {
    let double = [
        (7.8, 19.4, 4.4, 2.53),
        (2.8, 22.8, 15.0, 5.25),
        (18.3, 28.9, 3.9, 9.01),
        (10.6, 38.9, 14.4, 12.55),
        (15.0, 37.2, 16.7, 13.72),
    ];
    for (low, high, next, printed) in double {
        let found = f64::midpoint(sine(low, high, 12.0, 33.0), sine(next, high, 12.0, 33.0));
        assert!((found - printed).abs() < 0.008, "{low}–{high}–{next}: {found} and not {printed}");
    }
}

/// Mean of Brière's curve over a sine day from 2,400 points, worked out with numpy: low, high, share of the soil stage.
#[test]
fn the_curve_over_a_day_is_that_worked_out_elsewhere() {
    let table = [
        (20.0, 20.0, 0.02679),
        (15.0, 25.0, 0.02725),
        (10.0, 30.0, 0.02849),
        (5.0, 35.0, 0.03072),
        (20.0, 35.0, 0.05033),
        (8.0, 16.0, 0.00495),
        (22.0, 33.0, 0.05177),
    ];
    for (low, high, published) in table {
        let [_, _, found] = day_mean(swing(low, high), |celsius| Stage::Soil.sets(celsius));
        assert!((found - published).abs() < 1.1e-5, "{low}–{high}: {found}");
    }
}
