//! Civil dates: the day on the calendar of the yard, never a moment in time.
//!
//! Days since, due dates and overdue are differences of calendar days. Hours divided by 24 are wrong on two
//! nights of the year wherever clocks change, so no timestamp takes part in this arithmetic.

use super::json::{json_text, write_whole};
use chrono::{Datelike, NaiveDate};
use std::fmt;

pub use chrono::Weekday;

/// A civil date from 2000-01-01 to 2199-12-31 (proleptic Gregorian calendar, ISO 8601).
///
/// Written and stored as `YYYY-MM-DD` (RFC 3339 `full-date`).
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(NaiveDate);

/// Why a text or a triple of numbers is not a [`Day`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayError {
    /// Not of the form `YYYY-MM-DD`, or no such day in that month.
    NotADate,
    /// A real date, but before 2000 or after 2199.
    OutOfRange,
}

impl Day {
    /// The earliest day that can be recorded.
    pub const FIRST: Day = Day(match NaiveDate::from_ymd_opt(2000, 1, 1) {
        Some(date) => date,
        None => NaiveDate::MIN,
    });
    /// The latest day that can be computed.
    pub const LAST: Day = Day(match NaiveDate::from_ymd_opt(2199, 12, 31) {
        Some(date) => date,
        None => NaiveDate::MAX,
    });

    /// The day with this year, month (1–12) and day of the month (1–31).
    ///
    /// # Errors
    /// [`DayError::NotADate`] when the calendar has no such day, [`DayError::OutOfRange`] outside 2000–2199.
    pub fn from_ymd(year: i32, month: u32, day: u32) -> Result<Day, DayError> {
        let day = Day(NaiveDate::from_ymd_opt(year, month, day).ok_or(DayError::NotADate)?);
        if day < Day::FIRST || day > Day::LAST { Err(DayError::OutOfRange) } else { Ok(day) }
    }

    /// Reads `YYYY-MM-DD` and nothing else: `03/04` means two days, depending on who wrote it.
    ///
    /// # Errors
    /// As [`Day::from_ymd`].
    pub fn parse(text: &str) -> Result<Day, DayError> {
        let bytes = text.as_bytes();
        let shape = bytes.len() == 10
            && bytes
                .iter()
                .enumerate()
                .all(|(i, b)| if i == 4 || i == 7 { *b == b'-' } else { b.is_ascii_digit() });
        if !shape {
            return Err(DayError::NotADate);
        }
        let number = |range: std::ops::Range<usize>| {
            text.get(range).and_then(|digits| digits.parse::<u32>().ok()).ok_or(DayError::NotADate)
        };
        let year = i32::try_from(number(0..4)?).map_err(|_| DayError::NotADate)?;
        Day::from_ymd(year, number(5..7)?, number(8..10)?)
    }

    /// Days after 2000-01-01, which is day 0.
    pub fn number(self) -> i32 {
        self.days_since(Day::FIRST)
    }

    /// Calendar days from `earlier` to this day; negative when `earlier` is later.
    ///
    /// ```
    /// use beetle_almanac::almanac::day::Day;
    /// # fn main() -> Result<(), beetle_almanac::almanac::day::DayError> {
    /// // The clocks went forward in New York on 8 March 2026: 47 hours, but two days.
    /// assert_eq!(Day::parse("2026-03-09")?.days_since(Day::parse("2026-03-07")?), 2);
    /// # Ok(()) }
    /// ```
    pub fn days_since(self, earlier: Day) -> i32 {
        // Two centuries are 73,049 days: the conversion cannot fail.
        i32::try_from(self.0.signed_duration_since(earlier.0).num_days()).unwrap_or(i32::MAX)
    }

    /// The day `days` later (earlier when negative), held at [`Day::FIRST`] and [`Day::LAST`].
    #[must_use]
    pub fn plus(self, days: i32) -> Day {
        let moved = self.0.checked_add_signed(chrono::TimeDelta::days(i64::from(days)));
        let bound = if days < 0 { Day::FIRST } else { Day::LAST };
        moved.map_or(bound, |date| Day(date).clamp(Day::FIRST, Day::LAST))
    }

    /// Calendar year.
    pub fn year(self) -> i32 {
        self.0.year()
    }

    /// Month, 1–12.
    pub fn month(self) -> u32 {
        self.0.month()
    }

    /// Day of the month, 1–31.
    pub fn day_of_month(self) -> u32 {
        self.0.day()
    }

    /// Writes it at the end of `text`.
    fn put(self, text: &mut String) {
        write_whole(u64::from(self.year().unsigned_abs()), text);
        for part in [self.month(), self.day_of_month()] {
            text.push('-');
            push_two(text, part);
        }
    }

    /// Day of the week.
    pub fn weekday(self) -> Weekday {
        self.0.weekday()
    }
}

/// A number below 100 in two digits.
fn push_two(text: &mut String, number: u32) {
    text.extend(char::from_digit(number / 10, 10));
    text.extend(char::from_digit(number % 10, 10));
}

impl fmt::Debug for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

json_text!(Day, Stamp);

impl fmt::Display for DayError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            DayError::NotADate => "not a date written as YYYY-MM-DD",
            DayError::OutOfRange => "not between 2000-01-01 and 2199-12-31",
        })
    }
}

impl std::error::Error for DayError {}

/// When an entry was made, as the phone's clock said: a civil day, a time of day, and the offset from UTC.
///
/// Shown to people and printed in papers; no order or arithmetic depends on it, because phone clocks are wrong
/// more often than counters. Written as an RFC 3339 `date-time`, such as `2026-07-14T08:05:31+02:00`.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Stamp {
    day: Day,
    second: u32,
    offset: i32,
}

impl Stamp {
    /// `second` counts from local midnight (0–86,399); `offset` is minutes east of UTC (−1,439 to 1,439).
    ///
    /// # Errors
    /// [`DayError::NotADate`] outside those ranges.
    pub fn new(day: Day, second: u32, offset: i32) -> Result<Stamp, DayError> {
        if second < 86_400 && offset.abs() < 1_440 {
            Ok(Stamp { day, second, offset })
        } else {
            Err(DayError::NotADate)
        }
    }

    /// Midnight UTC at the start of `day`, for a phone whose clock makes no sense.
    pub fn midnight(day: Day) -> Stamp {
        Stamp { day, second: 0, offset: 0 }
    }

    /// The civil day on the phone when the entry was made.
    pub fn day(self) -> Day {
        self.day
    }

    /// Minutes east of UTC.
    pub fn offset(self) -> i32 {
        self.offset
    }

    /// Hours and minutes on the phone's clock.
    pub fn hour_minute(self) -> (u32, u32) {
        (self.second / 3600, self.second / 60 % 60)
    }

    /// The same moment in UTC: the civil day there and the second after its midnight. Held at [`Day::FIRST`] and
    /// [`Day::LAST`].
    pub fn utc(self) -> (Day, u32) {
        let second = i64::from(self.second) - i64::from(self.offset) * 60;
        let days = if second < 0 { -1 } else { i32::from(second >= 86_400) };
        (self.day.plus(days), u32::try_from(second.rem_euclid(86_400)).unwrap_or_default())
    }

    /// Writes it at the end of `text`.
    fn put(self, text: &mut String) {
        let (hour, minute) = self.hour_minute();
        let east = self.offset.unsigned_abs();
        let parts = [
            ('T', hour),
            (':', minute),
            (':', self.second % 60),
            (if self.offset < 0 { '-' } else { '+' }, east / 60),
            (':', east % 60),
        ];
        self.day.put(text);
        for (mark, number) in parts {
            text.push(mark);
            push_two(text, number);
        }
    }

    /// Reads the form that [`Stamp`] writes.
    ///
    /// # Errors
    /// [`DayError`] when the text has another form or names no real time.
    pub fn parse(text: &str) -> Result<Stamp, DayError> {
        let (date, rest) = text.split_once('T').ok_or(DayError::NotADate)?;
        let field = |at: usize| {
            rest.get(at..at + 2)
                .filter(|digits| digits.bytes().all(|b| b.is_ascii_digit()))
                .and_then(|digits| digits.parse::<u32>().ok())
                .ok_or(DayError::NotADate)
        };
        let mark =
            |at: usize, allowed: &[u8]| rest.as_bytes().get(at).copied().filter(|b| allowed.contains(b));
        let sign = match (rest.len(), mark(2, b":"), mark(5, b":"), mark(8, b"+-"), mark(11, b":")) {
            (14, Some(_), Some(_), Some(sign), Some(_)) => {
                if sign == b'-' {
                    -1
                } else {
                    1
                }
            }
            _ => return Err(DayError::NotADate),
        };
        let (hour, minute, second) = (field(0)?, field(3)?, field(6)?);
        let (east_hour, east_minute) = (field(9)?, field(12)?);
        if hour > 23 || minute > 59 || second > 59 || east_hour > 23 || east_minute > 59 {
            return Err(DayError::NotADate);
        }
        let offset = i32::try_from(east_hour * 60 + east_minute).map_err(|_| DayError::NotADate)?;
        Stamp::new(Day::parse(date)?, hour * 3600 + minute * 60 + second, sign * offset)
    }
}
