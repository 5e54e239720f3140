//! Beetles counted, hive by hive and trap by trap, as the fold takes them.

use crate::support::{Unicode, day, pen};
use crate::{Yard, work_on};
use beetle_almanac::almanac::stack::{BoxDepth, Corner};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trend::{Stretch, Word};
use beetle_almanac::book::Book;
use beetle_almanac::book::caught::{Both, Days, Part, all, both, parts, shown, visits};
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Check, Did};
use beetle_almanac::book::fold::{fold_days, fold_until};
use beetle_almanac::book::id::ThingId;

impl Yard {
    /// Counts beetles on `on`, out of all traps of the hive or out of the `nth` alone.
    pub(crate) fn count(&mut self, tag: &str, on: &str, count: u32, nth: Option<usize>) {
        let hive = self.hive(tag);
        let traps: Vec<ThingId> =
            self.book.standing().hives.get(&hive).unwrap().traps().map(|trap| trap.id.clone()).collect();
        let work = Check {
            hive,
            traps: nth.map(|nth| vec![traps[nth].clone()]),
            did: Did::Replaced,
            before: None,
            after: None,
            count: Some(CountRange::exact(count)),
            note: None,
        };
        let entries = self.book.check(&pen("aa", day(on)), day(on), day(on), work).unwrap();
        self.book.add(entries);
    }
}

fn demonstration() -> Book {
    let mut book = Book::default();
    book.add(demo(day("2026-07-14"), "Europe/Berlin", 120, &Unicode).unwrap());
    book
}

fn days(from: &str, to: &str) -> Days {
    Days { from: day(from), to: day(to) }
}

fn stretch(count: u32, trap_days: u32) -> Stretch {
    Stretch { count: CountRange::exact(count), trap_days }
}

#[test]
fn every_evening_of_one_pass_is_the_book_folded_to_that_day() {
    let book = demonstration();
    let mut evenings = 0;
    fold_days(book.log(), None, &mut |_, _, _| (), &mut |on, next, then| {
        assert!(next.is_none_or(|next| next > on));
        assert_eq!(then, &fold_until(book.log(), Some(on)), "{on}");
        evenings += 1;
    });
    assert!(evenings > 10, "{evenings}");
}

#[test]
fn the_counts_of_one_pass_are_those_that_hives_remember() {
    let book = demonstration();
    let caught = all(&book);
    let mut compared = 0;
    for (id, hive) in &book.standing().hives {
        let of_hive: Vec<_> = caught.iter().filter(|one| one.hive == *id).collect();
        let known: Vec<_> = hive.catches.iter().filter(|catch| catch.trap_days > 0).collect();
        assert!(of_hive.len() >= known.len());
        for (one, catch) in of_hive.iter().rev().zip(known.iter().rev()) {
            assert_eq!((&one.entry, one.count, one.trap_days), (&catch.entry, catch.count, catch.trap_days));
            compared += 1;
        }
    }
    assert!(compared > 20, "{compared}");
}

/// Beetles counted on 15 May since 1 May were caught on the days after the first and up to the last: days that only touch them
/// hold none of them, and days that hold all of them cut through nothing.
#[test]
fn a_count_straddles_days_that_hold_a_part_of_it_and_no_others() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.count("1", "2026-05-15", 8, None);
    let one = all(&yard.book).remove(0);
    assert_eq!((one.since(), one.day), (day("2026-05-01"), day("2026-05-15")));
    for (from, to, whole, part) in [
        ("2026-05-01", "2026-05-15", true, false),
        ("2026-04-01", "2026-06-01", true, false),
        ("2026-05-02", "2026-05-15", false, true),
        ("2026-05-01", "2026-05-14", false, true),
        ("2026-05-05", "2026-05-06", false, true),
        ("2026-04-01", "2026-05-01", false, false),
        ("2026-04-01", "2026-05-02", false, true),
        ("2026-05-15", "2026-06-01", false, false),
        ("2026-05-14", "2026-06-01", false, true),
    ] {
        let days = days(from, to);
        assert_eq!((one.lies_in(days), one.straddles(days)), (whole, part), "{from} {to}");
    }
}

#[test]
fn a_count_of_a_whole_hive_is_of_no_box_and_no_corner_and_one_of_a_trap_is() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    yard.count("1", "2026-05-15", 8, None);
    yard.count("2", "2026-05-11", 3, Some(0));
    yard.count("2", "2026-05-21", 5, Some(2));
    let [boxes, corners, kinds] = parts(&all(&yard.book), &yard.id, days("2026-05-01", "2026-05-31"));
    // Two boxes with two traps each, 14 days; a trap that is counted alone counts its own days.
    assert_eq!(boxes.together, stretch(8, 56));
    assert_eq!(boxes.each, [(Part::Box(1), stretch(3, 10)), (Part::Box(2), stretch(5, 20))]);
    assert_eq!(corners.together, stretch(8, 56));
    let of =
        |corner| corners.each.iter().find(|(part, _)| *part == Part::Corner(corner)).map(|(_, sum)| *sum);
    assert_eq!(of(Corner::FrontLeft), Some(stretch(3, 10)));
    assert_eq!(of(Corner::FrontRight), Some(stretch(5, 20)));
    // One kind hangs everywhere: that is told apart.
    assert_eq!(kinds.each, [(Part::Kind(yard.kind()), stretch(16, 86))]);
    assert_eq!(kinds.together, Stretch::NONE);
}

#[test]
fn a_count_that_began_before_the_days_asked_for_is_in_neither_of_two_stretches() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    for (on, count) in [("2026-05-15", 10), ("2026-05-29", 4), ("2026-06-12", 2)] {
        yard.count("1", on, count, None);
    }
    let caught = all(&yard.book);
    // What changed on 20 May lies in the middle of the second count.
    let split = both(&caught, &yard.id, days("2026-05-01", "2026-05-20"), days("2026-05-20", "2026-06-30"));
    assert_eq!((split.sums, split.straddling), ((stretch(10, 56), stretch(2, 56)), 1));
    // On the day of a count it lies between two.
    let split = both(&caught, &yard.id, days("2026-05-01", "2026-05-15"), days("2026-05-15", "2026-06-30"));
    assert_eq!((split.sums, split.straddling), ((stretch(10, 56), stretch(6, 112)), 0));
    assert_eq!((split.trend.word, split.trend.hives, split.hives[0].changed), (Word::Down, 1, false));
}

/// All traps of hive 1 were missing, and she counts what lies on the floor.
#[test]
fn a_count_of_traps_that_did_not_fish_is_told_as_left_out_and_changes_nothing_else() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    yard.count("2", "2026-05-15", 4, None);
    let before = all(&yard.book);
    let hive = yard.hive("1");
    let count = Some(CountRange::exact(9));
    let work = Check { count, ..work_on(hive.clone(), Did::Missing) };
    let on = day("2026-05-15");
    let entries = yard.book.check(&pen("aa", on), on, on, work).unwrap();
    yard.book.add(entries);
    let caught = all(&yard.book);
    let (first, second) = (days("2026-04-01", "2026-05-01"), days("2026-05-01", "2026-05-31"));
    let split = both(&caught, &yard.id, first, second);
    assert_eq!(split, Both { idle: 1, ..both(&before, &yard.id, first, second) });
    assert_eq!(parts(&caught, &yard.id, second), parts(&before, &yard.id, second));
    assert_eq!(visits(&caught, &hive, second), []);
    // Nor is it of days that begin with its own, whose first belongs to what comes before.
    assert_eq!(
        both(&caught, &yard.id, days("2026-05-15", "2026-06-01"), days("2026-06-01", "2026-07-01")).idle,
        0
    );
    // A second count of a day has no days of its own.
    yard.count("2", "2026-05-15", 1, None);
    let again = all(&yard.book);
    assert_eq!(again.last().map(|one| one.trap_days), Some(0));
    assert_eq!(both(&again, &yard.id, first, second).idle, 2);
    // Before and after those days it is not theirs.
    assert_eq!(both(&caught, &yard.id, first, days("2026-05-16", "2026-06-30")).idle, 0);
}

/// A first season, of which the page shows two years.
#[test]
fn a_chart_begins_with_the_first_beetles_and_not_before_the_days_asked_for() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    yard.count("1", "2026-05-15", 8, None);
    yard.count("2", "2026-05-29", 2, None);
    let caught = all(&yard.book);
    let of = |asked: Days| {
        let both = ["1", "2"].map(|tag| visits(&caught, &yard.hive(tag), asked));
        shown(asked, both.iter().flatten())
    };
    assert_eq!(of(days("2024-05-30", "2026-05-29")), days("2026-05-01", "2026-05-29"));
    assert_eq!(of(days("2026-05-10", "2026-05-29")), days("2026-05-10", "2026-05-29"));
    assert_eq!(of(days("2026-06-01", "2026-06-29")), days("2026-06-01", "2026-06-29"), "nothing to draw");
}

#[test]
fn a_box_with_traps_breaks_the_line_and_counts_from_its_own_day() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.count("1", "2026-05-11", 6, None);
    let (hive, kind) = (yard.hive("1"), yard.kind());
    let on = day("2026-05-16");
    let boxes = [(BoxDepth::Medium, 2)];
    let entries = yard.book.boxes_on(&pen("aa", on), on, on, &hive, 2, &boxes, &kind, true).unwrap();
    yard.book.add(entries);
    yard.count("1", "2026-05-21", 9, None);
    yard.count("1", "2026-05-31", 9, None);
    let caught = all(&yard.book);
    let told = visits(&caught, &hive, days("2026-05-01", "2026-06-30"));
    assert_eq!(told.iter().map(|visit| visit.changed).collect::<Vec<_>>(), [false, true, false]);
    assert_eq!(told[1].stretch, stretch(9, 4 * 10 + 2 * 5));
    let split = both(&caught, &yard.id, days("2026-05-01", "2026-05-11"), days("2026-05-11", "2026-06-30"));
    assert!(split.hives[0].changed);
}

#[test]
fn a_count_belongs_to_the_yard_in_which_it_was_made() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    yard.count("1", "2026-05-11", 6, None);
    let other = {
        let start = day("2026-05-12");
        let plan = crate::plan(&["9"], &[(BoxDepth::Deep, 2)], start);
        let kind = beetle_almanac::book::write::KindChoice::Known(yard.kind());
        let entries = yard.book.keep_yard(&pen("aa", start), "Mill", "Europe/Berlin", &kind, &plan).unwrap();
        yard.book.add(entries);
        yard.book.standing().yards.keys().find(|id| **id != yard.id).unwrap().clone()
    };
    let (hive, on) = (yard.hive("1"), day("2026-05-13"));
    let entries = yard.book.move_hive(&pen("aa", on), on, on, &hive, &other, None, &Unicode).unwrap();
    yard.book.add(entries);
    let work = Check {
        hive,
        traps: None,
        did: Did::Replaced,
        before: None,
        after: None,
        count: Some(CountRange::exact(2)),
        note: None,
    };
    let on = day("2026-05-21");
    let entries = yard.book.check(&pen("aa", on), on, on, work).unwrap();
    yard.book.add(entries);
    let caught = all(&yard.book);
    let year = days("2026-01-01", "2026-12-31");
    for (id, count) in [(&yard.id, 6), (&other, 2)] {
        let all = both(&caught, id, year, year);
        assert_eq!(all.sums.0.count, CountRange::exact(count));
    }
}
