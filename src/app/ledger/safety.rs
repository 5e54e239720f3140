//! How much would be lost with this phone, and how much room is left on it.

use crate::almanac::day::Day;
use crate::book::Book;
use crate::book::entry::{Entry, What};

/// Days without a file after which it is high time (judgement).
const AMBER_DAYS: i32 = 7;
/// Lines in no file after which it is high time (judgement).
const AMBER_LINES: usize = 50;
/// Days without a file after which it cannot wait (judgement).
const RED_DAYS: i32 = 30;
/// Shortest stretch of records, in days, that says anything about how fast the book grows.
const LEAST_STRETCH: i32 = 60;
/// Per cent of the room from which the keeper is warned.
pub const NEARLY_FULL: u64 = 70;

/// How pressing a backup is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pressing {
    /// Not.
    No,
    /// A week or fifty lines are in no file.
    Soon,
    /// A month is in no file.
    Now,
}

/// What is in no file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unsafe {
    /// Day of the last file; none when there never was one.
    pub file: Option<Day>,
    /// Days since the last file, or since the first line when there is none.
    pub days: i32,
    /// Lines written since the last file.
    pub lines: usize,
    /// How pressing it is.
    pub pressing: Pressing,
}

/// The keeper's own lines, those that strike others out among them: the count that is named everywhere.
pub fn own_lines(book: &Book) -> impl Iterator<Item = &Entry> {
    book.log().entries().filter(|entry| !entry.is_demo())
}

/// Of the keeper's own lines, how many strike others out: those have no line of their own in the history.
pub fn own_strikes(book: &Book) -> usize {
    own_lines(book).filter(|entry| matches!(entry.what, What::Struck { .. })).count()
}

/// What is in no file on `today`. `backup` is the day of the last file and how many lines it held. None while the
/// keeper has written nothing: the demonstration is in no file and needs none.
pub fn unsafe_lines(book: &Book, backup: Option<(Day, usize)>, today: Day) -> Option<Unsafe> {
    let written = book.log().written();
    let first = *written.keys().next()?;
    let all: usize = written.values().sum();
    let lines = match backup {
        None => all,
        // Some of what the file holds may be unreadable here, so what was written on later days is counted too.
        Some((day, held)) => {
            let later = written.iter().filter(|(on, _)| **on > day).map(|(_, lines)| lines).sum();
            all.saturating_sub(held).max(later)
        }
    };
    let days = today.days_since(backup.map_or(first, |(day, _)| day)).max(0);
    let pressing = match (lines, days) {
        (0, _) => Pressing::No,
        (_, RED_DAYS..) => Pressing::Now,
        (AMBER_LINES.., _) | (_, AMBER_DAYS..) => Pressing::Soon,
        _ => Pressing::No,
    };
    Some(Unsafe { file: backup.map(|(day, _)| day), days, lines, pressing })
}

/// Months until the room is used up at the rate of the records so far; none while they tell nothing yet.
pub fn months_left(book: &Book, used_per_cent: u64, today: Day) -> Option<u64> {
    let first = *book.log().written().keys().next()?;
    let days =
        u64::try_from(today.days_since(first)).ok().filter(|_| today.days_since(first) >= LEAST_STRETCH)?;
    // A month of 30 days: a little early rather than late.
    Some(100_u64.saturating_sub(used_per_cent) * days / used_per_cent.max(1) / 30)
}

/// The newest line's day where it lies after today: the phone's date is wrong, or was when the line was written.
/// `today_in` gives today by the calendar of the yard a line stands in.
pub fn clock_doubt(book: &Book, today_in: impl Fn(&crate::book::entry::Entry) -> Day) -> Option<Day> {
    let newest = book.log().newest()?;
    // A line of no yard was written by the phone's own calendar, which a journey may have turned back by a day.
    let slack = i32::from(newest.yard.is_none());
    (newest.day.days_since(today_in(newest)) > slack).then_some(newest.day)
}

#[cfg(test)]
mod tests {
    use super::{Pressing, clock_doubt, months_left, own_lines, own_strikes, unsafe_lines};
    use crate::almanac::day::{Day, Stamp};
    use crate::app::ledger::words::tests::book as demo;
    use crate::book::Book;
    use crate::book::entry::What;
    use crate::book::id::Writer;
    use crate::book::write::{Draft, Pen};

    fn book(lines: usize, since: &str) -> Book {
        let day = Day::parse(since).unwrap();
        let pen = Pen { writer: Writer::new("aa").unwrap(), by: None, at: Stamp::midnight(day) };
        let mut book = Book::default();
        for _ in 0..lines {
            let mut draft = Draft::new(&book, &pen);
            draft.push(day, None, What::Note { hive: None, text: "x".to_owned() }).unwrap();
            book.add(draft.done());
        }
        book
    }

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    #[test]
    fn a_week_or_fifty_lines_are_soon_and_a_month_is_now() {
        let at = |lines, today| unsafe_lines(&book(lines, "2026-07-01"), None, day(today)).unwrap().pressing;
        assert_eq!(at(1, "2026-07-07"), Pressing::No);
        assert_eq!(at(1, "2026-07-08"), Pressing::Soon);
        assert_eq!(at(49, "2026-07-01"), Pressing::No);
        assert_eq!(at(50, "2026-07-01"), Pressing::Soon);
        assert_eq!(at(1, "2026-07-30"), Pressing::Soon);
        assert_eq!(at(1, "2026-07-31"), Pressing::Now);
    }

    #[test]
    fn a_file_that_holds_everything_never_grows_old() {
        let book = book(60, "2026-01-01");
        let safe = unsafe_lines(&book, Some((day("2026-01-02"), 60)), day("2026-12-01")).unwrap();
        assert_eq!((safe.lines, safe.pressing), (0, Pressing::No));
        let one = unsafe_lines(&book, Some((day("2026-01-02"), 59)), day("2026-12-01")).unwrap();
        assert_eq!((one.lines, one.pressing), (1, Pressing::Now));
    }

    #[test]
    fn lines_that_cannot_be_read_any_more_do_not_hide_new_ones() {
        let book = book(20, "2026-07-10");
        let at = |file| unsafe_lines(&book, Some((day(file), 48)), day("2026-07-12")).unwrap().lines;
        assert_eq!((at("2026-07-01"), at("2026-07-11")), (20, 0));
    }

    #[test]
    fn what_the_history_shows_and_the_strikes_on_it_are_all_that_was_written() {
        let mut book = book(5, "2026-07-01");
        let pen =
            Pen { writer: Writer::new("bb").unwrap(), by: None, at: Stamp::midnight(day("2026-07-02")) };
        let first = book.log().entries().next().unwrap().id.clone();
        let strike =
            book.strike(&pen, day("2026-07-02"), &[first], &crate::app::ledger::words::tests::Plain).unwrap();
        book.add(strike);
        let shown = crate::app::ledger::history::lines(&book, None).len();
        assert_eq!((own_lines(&book).count(), own_strikes(&book), shown), (6, 1, 5));
    }

    #[test]
    fn the_demonstration_needs_no_file() {
        assert_eq!(unsafe_lines(&demo(), None, day("2026-12-01")), None);
        assert_eq!(unsafe_lines(&Book::default(), None, day("2026-12-01")), None);
    }

    #[test]
    fn room_is_told_in_months_once_there_is_something_to_go_by() {
        let book = book(1, "2026-01-01");
        assert_eq!(months_left(&book, 5, day("2026-02-01")), None);
        assert_eq!(months_left(&book, 5, day("2026-03-02")), Some(38));
        assert_eq!(months_left(&book, 120, day("2026-03-02")), Some(0));
        assert_eq!(months_left(&Book::default(), 5, day("2026-03-02")), None);
    }

    #[test]
    fn a_clock_behind_the_newest_line_is_doubted() {
        let at = |today: &'static str| clock_doubt(&demo(), move |_| day(today));
        assert_eq!(at("2026-07-14"), None);
        assert_eq!(at("2026-06-30"), Some(day("2026-07-13")));
        let own = book(1, "2026-07-14");
        assert_eq!(clock_doubt(&own, |_| day("2026-07-13")), None);
        assert_eq!(clock_doubt(&own, |_| day("2026-07-12")), Some(day("2026-07-14")));
        assert_eq!(clock_doubt(&Book::default(), |_| day("2026-07-14")), None);
    }
}
