//! What the native tests share: the letters of a browser, done by two general libraries.
#![allow(dead_code)] // each lane of tests takes what it needs

pub(crate) mod chance;

use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::moment::Moment;
use beetle_almanac::almanac::text::Letters;
use beetle_almanac::app::beetle::honey::YardClock;
use beetle_almanac::book::id::Writer;
use beetle_almanac::book::record::ClockTime;
use beetle_almanac::book::write::Pen;
use unicode_normalization::UnicodeNormalization as _;
use unicode_segmentation::UnicodeSegmentation as _;

/// The letters of a browser: NFC and visible characters (UAX #15, UAX #29).
pub(crate) struct Unicode;

impl Letters for Unicode {
    fn normal(&self, text: &str) -> String {
        text.nfc().collect()
    }

    fn visible(&self, text: &str) -> usize {
        text.graphemes(true).count()
    }
}

/// The day written as `YYYY-MM-DD`.
pub(crate) fn day(text: &str) -> Day {
    Day::parse(text).unwrap()
}

/// A phone writing at noon of that day.
pub(crate) fn pen(writer: &str, on: Day) -> Pen {
    Pen { writer: Writer::new(writer).unwrap(), by: None, at: Stamp::new(on, 12 * 3600, 120).unwrap() }
}

/// The clock of Berlin in summer, two hours before UTC, for every yard.
pub(crate) const SUMMER: YardClock = YardClock {
    moment: |time, _| Some(Moment::new(time.day, time.minute).plus(-120)),
    shown: |at, _| {
        let (day, minute) = at.plus(120).utc();
        Some(ClockTime { day, minute })
    },
};
