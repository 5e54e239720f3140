//! Civil days against Python's `calendar` and `datetime` (`tests/figures/calendar_months.py`), and against a count of
//! days that knows nothing but the rule of leap years.

use beetle_almanac::almanac::day::{Day, DayError, Weekday};

const WEEK: [Weekday; 7] =
    [Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri, Weekday::Sat, Weekday::Sun];

/// Every day of two centuries: number, weekday, parts, text; no day before the first of a month or after its last.
#[test]
fn every_day_of_200_years_agrees_with_python() {
    let months: Vec<(i32, u32, i32, usize, u32)> =
        super::rows(include_str!("../figures/calendar_months.json"));
    assert_eq!(months.len(), 2400);
    let mut days = 0;
    for (year, month, number, weekday, length) in months {
        for (ahead, date) in (1..=length).enumerate() {
            let text = format!("{year:04}-{month:02}-{date:02}");
            let day = Day::from_ymd(year, month, date).unwrap_or_else(|error| panic!("{text}: {error}"));
            assert_eq!(day.number(), number + i32::try_from(ahead).unwrap(), "{text}");
            assert_eq!(day.weekday(), WEEK[(weekday + ahead) % 7], "{text}");
            assert_eq!((day.year(), day.month(), day.day_of_month()), (year, month, date), "{text}");
            assert_eq!((Day::parse(&text), day.to_string()), (Ok(day), text));
            days += 1;
        }
        for date in [0, length + 1, 32] {
            assert_eq!(Day::from_ymd(year, month, date), Err(DayError::NotADate), "{year} {month} {date}");
            assert_eq!(Day::parse(&format!("{year}-{month:02}-{date:02}")), Err(DayError::NotADate));
        }
    }
    assert_eq!(days, 73_049, "146 097 days make 400 years, and 2000 leads its half by a leap day");
    assert_eq!(
        (Day::FIRST.to_string().as_str(), Day::LAST.to_string().as_str()),
        ("2000-01-01", "2199-12-31")
    );
}

/// Counting: a calendar on a wall, turned over day by day.
#[test]
fn every_day_of_200_years_agrees_with_a_count_from_saturday_1_january_2000() {
    let leap = |year: i32| year % 4 == 0 && year % 100 != 0 || year % 400 == 0;
    let (mut year, mut month, mut date) = (2000, 1_u32, 1_u32);
    for number in 0..73_049 {
        let day = Day::FIRST.plus(number);
        assert_eq!((day.year(), day.month(), day.day_of_month()), (year, month, date), "day {number}");
        assert_eq!(day.number(), number);
        // Zeller's congruence (1882): 0 is Saturday.
        let (m, y) = if month < 3 { (month + 12, year - 1) } else { (month, year) };
        let zeller = (date + 13 * (m + 1) / 5 + u32::try_from(y + y / 4 - y / 100 + y / 400).unwrap()) % 7;
        assert_eq!(day.weekday(), WEEK[(zeller as usize + 5) % 7], "{day}");
        let length = match month {
            2 => 28 + u32::from(leap(year)),
            4 | 6 | 9 | 11 => 30,
            _ => 31,
        };
        (year, month, date) = match (month, date == length) {
            (_, false) => (year, month, date + 1),
            (12, true) => (year + 1, 1, 1),
            (_, true) => (year, month + 1, 1),
        };
    }
    assert_eq!((year, month, date), (2200, 1, 1));
}

#[test]
fn days_outside_the_two_centuries_are_told_apart_from_no_days() {
    for text in ["1999-12-31", "2200-01-01", "0001-01-01", "9999-12-31", "1900-02-28"] {
        assert_eq!(Day::parse(text), Err(DayError::OutOfRange), "{text}");
    }
    for text in [
        "1900-02-29",
        "2100-02-29",
        "2026-2-3",
        "2026-02-3x",
        "+026-01-01",
        "２０２６-01-01",
        "",
        "2026-02-30 ",
    ] {
        assert_eq!(Day::parse(text), Err(DayError::NotADate), "{text}");
    }
}
