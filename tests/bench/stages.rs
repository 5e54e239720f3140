//! How long the beetle's clock takes: a season of 100 yards, and 10,000 sightings to their dates.
//!
//! The same in numpy, in the same run, where `BEETLE_PYTHON` names a Python that has it (`tests/bench/march.py`, all
//! sightings of a yard at once): the ratio can be compared between machines. The last line is what a phone does when a
//! yard of 100 hives whose strength nobody noted is opened.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

use beetle_almanac::almanac::climate::{Climate, KNOWN};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::generations::season;
use beetle_almanac::almanac::sighting::{Seen, Sighting};
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::stage::{Strength, Walk, Weather};
use std::hint::black_box;
use std::process::Command;
use std::time::Instant;

const YARDS: i32 = 100;
const SIGHTINGS: i32 = 10_000;
const SEEN: [Seen; 5] = [Seen::AdultsOnly, Seen::TinyLarvae, Seen::FullGrown, Seen::Leaving, Seen::InSoil];

fn main() {
    let climates: Vec<Climate> = (0..YARDS)
        .map(|yard| KNOWN[usize::from(yard % 2 == 1)].climate().warmer(f64::from(yard) / 100.0))
        .collect();
    let first = Day::from_ymd(2026, 1, 1).unwrap();
    let seasons = median(|| {
        for climate in &climates {
            let weather = weather(climate);
            black_box(season(&walk(&weather, Strength::Strong), first.plus(150)));
        }
    });
    let yard = weather(&climates[0]);
    let dates = median(|| sightings(&yard, Strength::Strong, SIGHTINGS));
    let phone = median(|| {
        let yard = weather(black_box(&climates[0]));
        sightings(&yard, Strength::Unknown, 100);
    });
    println!("a season of {YARDS} yards        {:>8.2} ms", seasons * 1000.0);
    println!("{SIGHTINGS} sightings to dates {:>8.2} ms", dates * 1000.0);
    println!("a yard of 100 hives         {:>8.2} ms", phone * 1000.0);
    match numpy() {
        Some([numpy_seasons, numpy_dates]) => println!(
            "the same in numpy           {:>8.2} ms and {:.2} ms: {:.1} × and {:.1} ×",
            numpy_seasons * 1000.0,
            numpy_dates * 1000.0,
            numpy_seasons / seasons,
            numpy_dates / dates
        ),
        None => println!("numpy: not here; `make bench-speed` brings it where `make test` has run"),
    }
}

fn weather(climate: &Climate) -> Weather {
    Weather::of(climate, &Soil::of(climate, SoilKind::Unknown, Shade::Part))
}

fn walk(weather: &Weather, strength: Strength) -> Walk<'_> {
    Walk { weather, strength, dry: &[] }
}

fn sightings(weather: &Weather, strength: Strength, count: i32) {
    let walk = walk(weather, strength);
    let first = Day::from_ymd(2026, 4, 1).unwrap();
    for (number, seen) in (0..count).zip(SEEN.iter().cycle()) {
        let sighting = Sighting { seen: *seen, day: first.plus(number % 180), ended: None };
        black_box(sighting.dates(&walk));
    }
}

/// Seconds: of 21 runs the middle one.
fn median(mut work: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..21)
        .map(|_| {
            let begun = Instant::now();
            work();
            begun.elapsed().as_secs_f64()
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}

/// Seconds that numpy takes for both.
fn numpy() -> Option<[f64; 2]> {
    let python = std::env::var("BEETLE_PYTHON").ok()?;
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/bench/march.py");
    let said = Command::new(python).arg(script).output().ok().filter(|said| said.status.success())?;
    serde_json::from_slice(&said.stdout).ok()
}
