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

#[wasm_bindgen_test]
fn a_clock_that_is_set_back_or_on_is_heard_and_a_page_that_slept_is_not_asked() {
    const HOUR: f64 = 3_600_000.0;
    let noon = 1_784_030_400_000.0;
    let by = |hours: f64, shown| clock::was_set(noon, hours.mul_add(HOUR, noon), 0.0, shown);
    // Between two looks of a page in sight lies half a minute.
    assert!(by(24.0, false) && by(-24.0, false) && by(-24.0, true) && by(-8760.0, true));
    assert!(!by(72.0, true), "out of the pocket after three days");
    let slept = |hours: f64| clock::was_set(noon, hours.mul_add(HOUR, noon), hours * HOUR, false);
    assert!(!slept(24.0) && !slept(240.0), "in front of her all night and the day after");
    assert!(
        clock::was_set(noon, 24.0_f64.mul_add(-HOUR, noon), 24.0 * HOUR, true),
        "slept, and was set back"
    );
    // A journey to another zone leaves this clock alone; a clock put right by an hour is no other day.
    assert!(!by(0.0, false) && !by(1.0, false) && !by(-1.0, false) && !by(-13.0, true));
}

#[wasm_bindgen_test]
fn the_day_that_she_has_said_counts_until_she_goes_by_the_phone_again() {
    let zone = clock::own_zone();
    let phone = clock::today(&zone);
    for days in [1, 13, 366, -1, -200] {
        let said = phone.plus(days);
        clock::say_today(Some(said), &zone);
        assert_eq!((clock::today(&zone), clock::stamp().day(), clock::is_said()), (said, said, true));
        clock::say_today(Some(said.plus(1)), &zone);
        assert_eq!(clock::today(&zone), said.plus(1), "said once more, of what the phone says");
        clock::say_today(None, &zone);
        assert_eq!((clock::today(&zone), clock::is_said()), (phone, false));
    }
    // Where it is another day already, that day is meant.
    for zone in ["Pacific/Kiritimati", "Pacific/Pago_Pago", "Europe/Berlin"] {
        let said = clock::today(zone).plus(40);
        clock::say_today(Some(said), zone);
        assert_eq!(clock::today(zone), said);
        clock::say_today(None, zone);
    }
}
