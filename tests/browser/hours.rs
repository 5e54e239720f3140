//! Hours by the clock of a yard become moments, and moments hours, by the browser's own time zone data.

use beetle_almanac::almanac::moment::Moment;
use beetle_almanac::app::edge::{clock, hours};
use beetle_almanac::book::record::ClockTime;
use serde::Deserialize;
use wasm_bindgen_test::wasm_bindgen_test;

/// Hours around every change of the clocks of four zones, from Python's `zoneinfo` (`tests/figures/hours.py`).
const HOURS: &str = include_str!("../figures/hours.json");

#[derive(Deserialize)]
struct Row {
    zone: String,
    shown: String,
    utc: String,
    back: String,
}

fn time(text: &str) -> ClockTime {
    ClockTime::parse(text).unwrap()
}

#[wasm_bindgen_test]
fn an_hour_of_the_yard_is_the_moment_python_says_it_is() {
    let rows: Vec<Row> = serde_json::from_str(HOURS).unwrap();
    assert!(rows.len() > 300);
    for Row { zone, shown, utc, back } in rows {
        let moment = hours::moment(time(&shown), &zone).unwrap();
        let utc = time(&utc);
        assert_eq!(moment, Moment::new(utc.day, utc.minute), "{zone} {shown}");
        assert_eq!(hours::shown(moment, &zone), Some(time(&back)), "{zone} {shown}");
    }
}

#[wasm_bindgen_test]
fn now_is_this_minute_and_a_zone_the_browser_does_not_know_has_none() {
    let shown = hours::shown(hours::now(), &clock::own_zone()).unwrap();
    assert_eq!(shown.day, clock::stamp().day());
    let (hour, minute) = clock::stamp().hour_minute();
    let phone = hour * 60 + minute;
    // A minute may have turned between the two looks.
    assert!((phone + 1440 - u32::from(shown.minute)) % 1440 <= 1);
    assert_eq!(hours::shown(hours::now(), "Nowhere/Atlantis"), None);
    assert_eq!(hours::moment(shown, "Nowhere/Atlantis"), None);
}
