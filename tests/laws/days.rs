//! Days: an unbroken row of numbers.

use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::typed::{day_done, day_planned};
use proptest::prelude::*;

fn all() -> impl Iterator<Item = Day> {
    (0..=Day::LAST.number()).map(|number| Day::FIRST.plus(number))
}

fn any_day() -> impl Strategy<Value = Day> {
    (0..=Day::LAST.number()).prop_map(|number| Day::FIRST.plus(number))
}

/// Every day there is.
#[test]
fn a_day_written_and_read_is_the_same_day() {
    let mut count = 0;
    for day in all() {
        let text = day.to_string();
        assert_eq!(Day::parse(&text), Ok(day));
        assert_eq!(Day::from_ymd(day.year(), day.month(), day.day_of_month()), Ok(day));
        assert_eq!(day_done(&text, day), Ok(day));
        assert_eq!(day_planned(&text, day), Ok(day));
        count += 1;
    }
    assert_eq!(count, 73_049);
}

/// Every day there is.
#[test]
fn each_day_has_one_next_day() {
    for day in all().filter(|day| *day < Day::LAST) {
        let next = day.plus(1);
        assert!(next > day && next.plus(-1) == day && next.days_since(day) == 1);
        assert_eq!(next.weekday(), day.weekday().succ());
        assert!(day.to_string() < next.to_string(), "text sorts as days do");
    }
    assert_eq!((Day::LAST.plus(1), Day::FIRST.plus(-1)), (Day::LAST, Day::FIRST));
    assert_eq!((Day::FIRST.plus(i32::MAX), Day::LAST.plus(i32::MIN)), (Day::LAST, Day::FIRST));
}

proptest! {
    #[test]
    fn differences_of_days_add_up_and_turn_round(a in any_day(), b in any_day(), c in any_day()) {
        prop_assert_eq!(a.days_since(b), -b.days_since(a));
        prop_assert_eq!(a.days_since(c), a.days_since(b) + b.days_since(c));
        prop_assert_eq!(b.plus(a.days_since(b)), a);
        prop_assert_eq!(a.cmp(&b), a.days_since(b).cmp(&0));
    }

    #[test]
    fn a_stamp_written_and_read_is_the_same_stamp(day in any_day(), second in 0..86_400_u32, offset in -1439..1440_i32) {
        let stamp = Stamp::new(day, second, offset).unwrap();
        prop_assert_eq!(Stamp::parse(&stamp.to_string()), Ok(stamp));
    }

    #[test]
    fn no_text_stops_the_reading_of_days(text in "\\PC*", today in any_day()) {
        let _ = (Day::parse(&text), Stamp::parse(&text), day_done(&text, today), day_planned(&text, today));
    }

    #[test]
    fn no_text_near_a_stamp_stops_its_reading(
        text in "[0-9é]{3,4}-[0-9]{1,2}-[0-9]{1,2}T[0-9é]{2}:[0-9é]{2}:[0-9]{1,2}[-+Z][0-9é]{2}:[0-9é]{1,2}",
    ) {
        if let Ok(stamp) = Stamp::parse(&text) {
            prop_assert_eq!(stamp.to_string(), text.replace("-00:00", "+00:00"));
        }
    }

    #[test]
    fn done_is_never_after_today_and_planned_never_before_it_or_beyond_two_years(today in any_day(), ahead in -900..900_i32) {
        let day = today.plus(ahead);
        let text = day.to_string();
        prop_assert_eq!(day_done(&text, today).is_ok(), day <= today);
        if let Ok(planned) = day_planned(&text, today) {
            prop_assert!((0..=731).contains(&planned.days_since(today)));
        } else {
            prop_assert!(day < today || day.days_since(today) > 729);
        }
    }
}
