//! Days across clock changes and the date line, from Python's `zoneinfo` over the IANA time zone database
//! (`tests/figures/zones.py`). The browser test reads the same file for the step from instant to civil day.

use super::{day, rows};
use beetle_almanac::almanac::day::Day;
use serde::Deserialize;
use std::collections::BTreeMap;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    zone: String,
    utc_ms: i64,
    civil: String,
    before: Option<String>,
    after: Option<String>,
    days: Option<i32>,
    hours: Option<i64>,
}

fn all() -> Vec<Row> {
    rows(include_str!("../figures/zones.json"))
}

/// 21 years of two changes each in two zones. Hours divided by 24 miss two of them every year; civil days none.
#[test]
fn two_days_are_two_days_however_many_hours_the_clocks_make_of_them() {
    let mut short = 0;
    let mut long = 0;
    for row in all() {
        let (Some(before), Some(after), Some(days), Some(hours)) =
            (&row.before, &row.after, row.days, row.hours)
        else {
            continue;
        };
        let (before, change, after) = (day(before), day(&row.civil), day(after));
        assert_eq!(after.days_since(before), days, "{} {change}", row.zone);
        assert_eq!((change.days_since(before), after.days_since(change)), (1, 1), "{} {change}", row.zone);
        assert_eq!(before.plus(days), after);
        match hours {
            47 => short += 1,
            49 => long += 1,
            _ => panic!("{hours} hours around {change}"),
        }
    }
    assert_eq!((short, long), (42, 42));
}

/// The civil day is the UTC day moved by no more than the widest offsets in use, −11 and +14 hours here; and in a zone
/// whose clocks stand still it is the day number of the instant moved by that offset.
#[test]
fn a_civil_day_is_the_instant_moved_by_an_offset_of_its_zone() {
    const DAY_MS: i64 = 86_400_000;
    // 2000-01-01 is day 10 957 of the count that starts at 1970-01-01.
    let number = |utc_ms: i64, minutes: i64| (utc_ms + minutes * 60_000).div_euclid(DAY_MS) - 10_957;
    let offsets: BTreeMap<&str, &[i64]> = BTreeMap::from([
        ("America/New_York", &[-300, -240][..]),
        ("Australia/Sydney", &[600, 660][..]),
        ("Pacific/Kiritimati", &[840][..]),
        ("Pacific/Pago_Pago", &[-660][..]),
        ("Asia/Kathmandu", &[345][..]),
    ]);
    let mut seen = BTreeMap::new();
    for row in all() {
        let civil = i64::from(day(&row.civil).number());
        let possible = offsets[row.zone.as_str()];
        assert!(possible.iter().any(|m| number(row.utc_ms, *m) == civil), "{} {}", row.zone, row.utc_ms);
        *seen.entry(row.zone).or_insert(0) += 1;
    }
    assert_eq!(seen.values().sum::<i32>(), 42 * 2 * 5 + 6 * 3 * 5);
    assert_eq!(seen.len(), offsets.len());
}

/// Rows of one zone come in order; within it a later instant never has an earlier day.
#[test]
fn days_follow_instants_and_differ_across_the_date_line() {
    let all = all();
    for pair in all.windows(2).filter(|pair| pair[0].zone == pair[1].zone && pair[0].utc_ms <= pair[1].utc_ms)
    {
        let turned = day(&pair[1].civil).days_since(day(&pair[0].civil));
        assert!(turned >= 0, "{} {}", pair[1].zone, pair[1].utc_ms);
        if pair[1].utc_ms - pair[0].utc_ms == 1 {
            assert_eq!(turned, 1, "one millisecond across midnight is one day, {}", pair[1].civil);
        }
    }
    // The middle of a day on Kiritimati is the day before on Pago Pago, 25 hours behind.
    let at = |zone: &str, civil: &str| {
        let found: Vec<&Row> = all.iter().filter(|row| row.zone == zone && row.civil == civil).collect();
        found[1].utc_ms
    };
    for civil in ["2012-02-29", "2024-02-28", "2027-12-31"] {
        let apart = at("Pacific/Pago_Pago", civil) - at("Pacific/Kiritimati", civil);
        assert_eq!(apart, 25 * 3_600_000, "{civil}");
    }
    assert_eq!(Day::LAST.plus(1), Day::LAST);
}
