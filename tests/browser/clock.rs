//! A moment becomes a civil day by the browser's own time zone data.

use beetle_almanac::almanac::day::Day;
use beetle_almanac::app::edge::{clock, locale};
use serde::Deserialize;
use wasm_bindgen_test::wasm_bindgen_test;

/// Every clock change of several zones and both sides of the date line, from Python's `zoneinfo`
/// (`tests/figures/zones.py`).
const ZONES: &str = include_str!("../figures/zones.json");

#[derive(Deserialize)]
struct Row {
    zone: String,
    utc_ms: f64,
    civil: Day,
}

#[wasm_bindgen_test]
fn a_moment_is_the_day_python_says_it_is_in_that_zone() {
    let rows: Vec<Row> = serde_json::from_str(ZONES).unwrap();
    assert!(rows.len() > 100);
    for row in rows {
        assert_eq!(clock::civil_day(row.utc_ms, &row.zone), Some(row.civil), "{} {}", row.zone, row.utc_ms);
    }
}

#[wasm_bindgen_test]
fn a_zone_the_browser_does_not_know_is_no_day() {
    assert_eq!(clock::civil_day(0.0, "Nowhere/Atlantis"), None);
    assert_eq!(clock::civil_day(0.0, "UTC"), None, "1970 is before the book's first day");
}

#[wasm_bindgen_test]
fn today_in_the_phones_own_zone_is_the_day_on_its_clock() {
    assert_eq!(clock::today(&clock::own_zone()), clock::stamp().day());
}

#[wasm_bindgen_test]
fn a_date_is_written_with_its_weekday_on_every_side_of_the_world() {
    // Whatever zone this browser is in: the day is the day.
    for (day, weekday, rest) in
        [("2026-07-14", "Tue", ["14", "July", "2026"]), ("2028-02-29", "Tue", ["29", "February", "2028"])]
    {
        let written = locale::date(Day::parse(day).unwrap()).unwrap();
        assert!(written.starts_with(weekday) && rest.iter().all(|part| written.contains(part)), "{written}");
    }
}
