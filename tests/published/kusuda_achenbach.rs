//! Kusuda & Achenbach 1965, Earth temperature and thermal diffusivity at selected stations in the United States: the
//! yearly wave, by the ground temperatures in the head of the public weather file of Tampa, Florida.
//!
//! Those are means from the surface down to 0.5, 2 and 4 m; the parameters of the wave (mean 22.26 °C, amplitude 6.462,
//! coldest on day 65.86) were fitted to them elsewhere. Days are the file's own, day 95 for April included.

use super::{celsius, day, mm};
use beetle_almanac::almanac::climate::{Climate, DAYS, KNOWN};
use beetle_almanac::almanac::soil::{
    CLOSEST, Probe, READING, Shade, Soil, SoilKind, UNPROBED, cosine, decay,
};
use std::f64::consts::TAU;

const DAYS_OF_YEAR: [f64; 12] =
    [15.0, 46.0, 74.0, 95.0, 135.0, 166.0, 196.0, 227.0, 258.0, 288.0, 319.0, 349.0];
const PRINTED: [(f64, [f64; 12]); 3] = [
    (0.5, [18.95, 16.95, 16.41, 16.88, 19.58, 22.60, 25.44, 27.50, 28.10, 27.14, 24.81, 21.87]),
    (2.0, [20.75, 18.88, 17.98, 17.95, 19.38, 21.44, 23.67, 25.57, 26.56, 26.37, 25.06, 23.04]),
    (4.0, [21.92, 20.47, 19.57, 19.30, 19.83, 21.03, 22.52, 23.99, 24.98, 25.21, 24.65, 23.47]),
];

#[test]
fn ground_temperatures_of_tampa_are_those_printed() {
    let soil = Soil::known(22.26, 6.462, 65.86, SoilKind::Unknown);
    let mut worst = 0.0_f64;
    for (depth, year) in PRINTED {
        for (time, printed) in DAYS_OF_YEAR.iter().zip(year) {
            // The mean over the depth, from 2,000 slices.
            let mean = (0..2000)
                .map(|slice| soil.at_time(*time, (f64::from(slice) + 0.5) / 2000.0 * depth))
                .sum::<f64>()
                / 2000.0;
            worst = worst.max((mean - printed).abs());
        }
    }
    println!("36 ground temperatures of Tampa: within {worst:.4} °C");
    // They are printed to 0.01.
    assert!(worst < 0.01, "{worst}");
}

/// Factor of the amplitude and days of delay at the diffusivity of weather files, worked out elsewhere.
#[test]
fn the_wave_is_damped_and_late_as_worked_out_elsewhere() {
    let soil = Soil::known(0.0, 1.0, 0.0, SoilKind::Unknown);
    for (depth, factor, delay) in
        [(0.05, 0.9805, 1.14), (0.10, 0.9615, 2.28), (0.20, 0.9244, 4.57), (0.50, 0.8216, 11.41)]
    {
        let wave = |days: f64| soil.at_time(days, depth);
        assert!((wave(delay) + factor).abs() < 1e-4, "{depth}: {}", wave(delay));
        assert!((wave(delay) - wave(delay + 365.0)).abs() < 1e-9);
        for off in [-1.0, 1.0] {
            assert!(wave(delay + off) > wave(delay), "coldest at {depth} m after {delay} d");
        }
    }
}

/// A climate that is a wave itself: the fit finds it within 0.02 °C on every day.
#[test]
fn a_fit_to_twelve_months_finds_the_wave_they_were_made_from() {
    let (mean, amplitude, coldest) = (14.0, 12.0, 25.0);
    let wave = |day: f64| mean - amplitude * (TAU * (day - coldest) / 365.0).cos();
    let lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let mut begun = 0;
    let months = lengths.map(|length| {
        let sum: f64 = (begun..begun + length).map(|day| wave(f64::from(day) + 0.5)).sum();
        begun += length;
        celsius(sum / f64::from(length))
    });
    let soil = Soil::of(&Climate::new(months, months).expect("a climate"), SoilKind::Unknown, Shade::Part);
    for place in 0..DAYS {
        let there = f64::from(u32::try_from(place).expect("a day")) + 0.5;
        assert!((soil.at_time(there, 0.0) - wave(there)).abs() < 0.02, "{place}");
    }
}

#[test]
fn its_own_cosine_and_power_are_those_of_the_standard_library() {
    let mut worst = (0.0_f64, 0.0_f64);
    for step in -40_000..40_000 {
        let turns = f64::from(step) / 9_973.0;
        worst.0 = worst.0.max((cosine(turns) - (TAU * turns).cos()).abs());
        let x = f64::from(step + 40_000) / 20_000.0;
        worst.1 = worst.1.max((decay(x) - (-x).exp()).abs());
    }
    println!("cosine within {:.1e}, power of e within {:.1e}", worst.0, worst.1);
    assert!(worst.0 < 1e-8 && worst.1 < 1e-8, "{worst:?}");
}

/// The textbook posterior of a normal mean with a normal prior: precisions add up, means are weighted by them.
#[test]
fn readings_move_the_soil_as_a_normal_prior_and_normal_noise_say() {
    let plain = Soil::of(&KNOWN[0].climate(), SoilKind::MoistLoam, Shade::Sun);
    assert!((plain.give() - UNPROBED).abs() < 1e-12 && plain.readings() == 0);
    let today = day("2026-07-20");
    let read = |date: &str, off: f64| {
        let date = day(date);
        let place = beetle_almanac::almanac::climate::place(date);
        Probe { day: date, depth: mm(75.0), warmth: plain.at(place, mm(75.0)).warmer(off) }
    };
    let old = [read("2025-06-01", 9.0), read("2026-07-21", 9.0)];
    assert!((plain.probed(&old, today).give() - UNPROBED).abs() < 1e-12, "too old, and not yet");
    let readings = [read("2026-06-01", 3.0), read("2026-06-20", 1.5), read("2025-06-16", 2.4), old[0]];
    let soil = plain.probed(&readings, today);
    let precision = 1.0 / 4.0 + 3.0 / (READING * READING);
    assert_eq!(soil.readings(), 3);
    assert!((soil.offset() - (3.0 + 1.5 + 2.4) / (READING * READING) / precision).abs() < 1e-9);
    assert!((soil.give() - 1.0 / precision.sqrt()).abs() < 1e-9);
    let shift = soil.bed(100).celsius() - plain.bed(100).celsius();
    assert!((shift - soil.offset()).abs() < 1e-9);
    let span = soil.span(100);
    assert!((span.warm.mean().celsius() - span.cool.mean().celsius() - 2.0 * soil.give()).abs() < 1e-9);
    let many = [read("2026-07-01", 1.0); 60];
    assert!((plain.probed(&many, today).give() - CLOSEST).abs() < 1e-12);
    // Corrected once more from the same readings, nothing is added twice.
    assert_eq!(soil.probed(&readings, today), soil);
}

#[test]
fn between_five_and_ten_centimetres_lies_the_middle() {
    for (kind, shade) in SoilKind::ALL.iter().zip(Shade::ALL.iter().cycle()) {
        let soil = Soil::of(&KNOWN[1].climate(), *kind, *shade);
        for place in 0..DAYS {
            let both = [50.0, 100.0].map(|depth| soil.at(place, mm(depth)).celsius());
            assert!((soil.bed(place).celsius() - f64::midpoint(both[0], both[1])).abs() < 1e-9);
        }
        let part = Soil::of(&KNOWN[1].climate(), *kind, Shade::Part);
        assert!((soil.mean().celsius() - part.mean().celsius() - shade.kelvin()).abs() < 1e-9);
        assert!(kind.diffusivity() > 0.008);
    }
}
