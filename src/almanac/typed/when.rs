//! Days.

use super::number::plain;
use crate::almanac::day::{Day, DayError};

/// Why a text was not taken as a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayTypedError {
    /// Nothing there.
    Empty,
    /// Not of the form `YYYY-MM-DD`, or no such day.
    NotADate,
    /// A real day before 2000.
    Before2000,
    /// A plan for a day that is over.
    Past,
    /// A plan beyond the horizon.
    TooFar {
        /// The last day a plan can have.
        latest: Day,
    },
    /// Something done on a day that has not come.
    Future,
}

/// The day of something done: from 2000-01-01 to `today`, as `YYYY-MM-DD`.
///
/// # Errors
/// [`DayTypedError`]; what has not come is [`DayTypedError::Future`], however far.
pub fn day_done(text: &str, today: Day) -> Result<Day, DayTypedError> {
    match read(text) {
        Ok(Some(day)) if day <= today => Ok(day),
        Ok(_) => Err(DayTypedError::Future),
        Err(error) => Err(error),
    }
}

/// The day of something planned: from `today` to two years after `today`, as `YYYY-MM-DD`.
///
/// # Errors
/// [`DayTypedError`].
pub fn day_planned(text: &str, today: Day) -> Result<Day, DayTypedError> {
    // 29 February has no twin two years on; a plan may then lie up to 28 February.
    let twin = |day| Day::from_ymd(today.year() + 2, today.month(), day);
    let latest = twin(today.day_of_month()).or_else(|_| twin(28)).unwrap_or(Day::LAST);
    match read(text) {
        Ok(Some(day)) if day < today => Err(DayTypedError::Past),
        Ok(Some(day)) if day <= latest => Ok(day),
        Ok(_) => Err(DayTypedError::TooFar { latest }),
        Err(error) => Err(error),
    }
}

/// The day, or `None` when it lies after the last one that is kept.
fn read(text: &str) -> Result<Option<Day>, DayTypedError> {
    let plain = plain(text);
    if plain.is_empty() {
        return Err(DayTypedError::Empty);
    }
    match Day::parse(&plain) {
        Ok(day) => Ok(Some(day)),
        Err(DayError::NotADate) => Err(DayTypedError::NotADate),
        Err(DayError::OutOfRange) if plain.as_str() < "2000" => Err(DayTypedError::Before2000),
        Err(DayError::OutOfRange) => Ok(None),
    }
}

#[cfg(test)]
mod tests {
    use super::{DayTypedError, day_done, day_planned};
    use crate::almanac::day::Day;

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap_or(Day::LAST)
    }

    #[test]
    fn keeper_types_the_year_0026_or_2206_and_is_refused() {
        let today = day("2026-07-14");
        for text in ["0026-07-14", "1999-12-31", "0000-01-01"] {
            assert_eq!(day_done(text, today), Err(DayTypedError::Before2000), "{text}");
            assert_eq!(day_planned(text, today), Err(DayTypedError::Before2000), "{text}");
        }
        for text in ["2206-07-14", "9999-12-31", "2028-07-15"] {
            assert_eq!(day_done(text, today), Err(DayTypedError::Future), "{text}");
            let latest = day("2028-07-14");
            assert_eq!(day_planned(text, today), Err(DayTypedError::TooFar { latest }), "{text}");
        }
    }

    #[test]
    fn keeper_types_a_future_day_for_something_done_and_for_a_plan() {
        let today = day("2026-07-14");
        assert_eq!(day_done("2026-07-14", today), Ok(today));
        assert_eq!(day_done("2026-07-15", today), Err(DayTypedError::Future));
        assert_eq!(day_planned("2026-07-15", today), Ok(day("2026-07-15")));
        assert_eq!(day_planned("2028-07-14", today), Ok(day("2028-07-14")));
    }

    #[test]
    fn keeper_plans_a_trip_for_a_day_that_is_over_and_is_refused() {
        let today = day("2026-07-14");
        assert_eq!(day_planned("2026-07-14", today), Ok(today));
        for text in ["2026-07-13", "2000-01-01"] {
            assert_eq!(day_planned(text, today), Err(DayTypedError::Past), "{text}");
        }
    }

    #[test]
    fn keeper_types_03_04_or_a_day_that_is_not_and_is_refused() {
        let today = day("2026-07-14");
        for text in
            ["03/04", "3.4.2026", "2026-7-14", "2026-02-29", "2026-13-01", "26-07-14", "0026-02-30", "today"]
        {
            assert_eq!(day_done(text, today), Err(DayTypedError::NotADate), "{text}");
        }
        assert_eq!(day_done(" ", today), Err(DayTypedError::Empty));
        assert_eq!(day_done(" ٢٠٢٦-٠٧-٠١ ", today), Ok(day("2026-07-01")));
    }

    #[test]
    fn on_29_february_plans_reach_to_28_february_two_years_on() {
        let latest = day("2030-02-28");
        assert_eq!(day_planned("2030-03-01", day("2028-02-29")), Err(DayTypedError::TooFar { latest }));
        assert_eq!(day_planned("2199-12-31", Day::LAST), Ok(Day::LAST));
    }
}
