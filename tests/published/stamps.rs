//! Moments against Python's `datetime.fromisoformat` (`tests/figures/stamps.py`), and RFC 3339 section 5.8.

use super::{day, rows};
use beetle_almanac::almanac::day::Stamp;
use serde_json::Value;

#[test]
fn every_stamp_reads_as_python_reads_it_or_is_refused_as_python_refuses_it() {
    let (mut read, mut refused) = (0, 0);
    for row in rows::<Vec<Value>>(include_str!("../figures/stamps.json")) {
        let text = row[0].as_str().unwrap();
        let Some(civil) = row.get(1) else {
            assert!(Stamp::parse(text).is_err(), "{text}");
            refused += 1;
            continue;
        };
        let second = u32::try_from(row[2].as_u64().unwrap()).unwrap();
        let offset = i32::try_from(row[3].as_i64().unwrap()).unwrap();
        let stamp = Stamp::new(day(civil.as_str().unwrap()), second, offset).unwrap();
        assert_eq!(Stamp::parse(text), Ok(stamp), "{text}");
        assert_eq!(stamp.day(), day(civil.as_str().unwrap()));
        assert_eq!(stamp.hour_minute(), (second / 3600, second % 3600 / 60));
        // RFC 3339 knows two zeros, one for "offset unknown"; this almanac writes one.
        assert_eq!(stamp.to_string(), text.replace("-00:00", "+00:00"));
        read += 1;
    }
    assert!(read > 150 && refused > 100, "{read} read, {refused} refused");
}

/// Forms that RFC 3339 allows and this almanac does not write, and forms that nobody should.
#[test]
fn other_forms_are_refused() {
    for text in [
        "1985-04-12T23:20:50.52Z",
        "2026-12-31T23:59:60+00:00",
        "2026-07-14T24:00:00+00:00",
        "2026-07-14 08:05:31+02:00",
        "2026-07-14t08:05:31+02:00",
        "2026-07-14T08:05:31Z",
        "2026-07-14T08:05+02:00",
        "2026-07-14T08:05:31+0200",
        "2026-07-14T08:05:31+24:00",
        "2026-07-14T+8:05:31+02:00",
        "2026-07-14T08:05:31+02:0é",
        "1999-07-14T08:05:31+02:00",
        "",
        "T",
    ] {
        assert!(Stamp::parse(text).is_err(), "{text}");
    }
}
