//! The almanac against sources outside it: one module a source, which says where its values come from.
//!
//! The figures read from `tests/figures` are made by the Python scripts beside them, which work them out in a way of
//! their own; `tests/figures/check.py` fails when a file is stale.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic)]
#![allow(missing_docs)]

mod backups;
mod bernier;
mod between_visits;
mod calendar;
mod climate_seasons;
mod common_practice;
mod counts;
mod cuts;
mod decisions;
mod degree_days;
mod grounds;
mod hatches;
mod kusuda_achenbach;
mod levels;
mod medians;
mod meikle_patt;
mod meshes;
mod nist;
mod orders;
mod packs;
#[path = "../support/papers.rs"]
mod papers;
mod rate_sums;
mod readers;
#[path = "../support/records.rs"]
mod record_of_each;
mod rfc4180;
mod rfc5545;
mod rfc9285;
mod rhythms;
mod samples;
mod seasons;
mod spills;
mod stamps;
#[path = "../support/mod.rs"]
mod support;
mod table_readers;
mod tables_in;
mod trials;
mod vectors;
mod weather_years;
mod whole_lives;
mod zones;

use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, Length, Share, Volume};
use beetle_almanac::almanac::trap::{TrapForm, TrapKind, TrapSize};
use beetle_almanac::almanac::warmth::{Span, Swing, Warmth};

/// The rows of a file of figures.
fn rows<T: serde::de::DeserializeOwned>(json: &str) -> Vec<T> {
    serde_json::from_str(json).expect("the figures have this shape")
}

fn day(text: &str) -> Day {
    Day::parse(text).unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn decimal(value: f64) -> Decimal {
    Decimal::from_f64(value).expect("a decimal")
}

fn percent(value: f64) -> Share {
    Share::from_percent(decimal(value)).expect("a share")
}

fn celsius(value: f64) -> Warmth {
    Warmth::from_celsius(value).expect("a temperature")
}

fn swing(low: f64, high: f64) -> Swing {
    Swing { low: celsius(low), high: celsius(high) }
}

/// A day that stays at one temperature that is known.
fn flat(value: f64) -> Span {
    Span::around(Swing::flat(celsius(value)), 0.0)
}

fn mm(value: f64) -> Length {
    Length::from_millimetres(value).expect("a length")
}

fn ml(value: f64) -> Volume {
    Volume::from_millilitres(value).expect("a volume")
}

/// An oil trap with upright walls, or with the walls that `profile` tells.
fn trap(profile: Vec<(Share, Share)>) -> TrapKind {
    TrapKind {
        name: "slot trap".into(),
        form: TrapForm::BetweenFrame,
        reusable: false,
        capacity: None,
        inner: TrapSize::default(),
        outer: TrapSize::default(),
        fill: Share::HALF,
        max_days: 14,
        profile,
        packs: Vec::new(),
    }
}

#[track_caller]
fn close(found: f64, published: f64, within: f64) {
    assert!((found - published).abs() <= within, "found {found}, published {published}");
}
