//! The demonstration keeps to the book's own rules.

use crate::support::{Unicode, day};
use beetle_almanac::almanac::refill::Timing;
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Did, What};
use beetle_almanac::book::round::{self, HiveDue};
use std::collections::BTreeSet;

#[test]
fn the_demonstration_shows_what_it_promises_through_four_years() {
    for shift in (0..=1461).step_by(11) {
        let today = day("2026-01-01").plus(shift);
        let entries = demo(today, "Europe/Berlin", 60, &Unicode).unwrap();
        assert!(entries.iter().all(|entry| entry.is_demo() && entry.day <= today && entry.check().is_ok()));
        let mut book = Book::default();
        book.add(entries);
        assert_eq!(book.standing().orphans, 0);
        let yards: Vec<_> = book.standing().open_yards().map(|(id, _)| id.clone()).collect();
        let [ferry, kiln] = &yards[..] else { panic!("two yards") };
        let ferry_rows = round::rows(book.standing(), ferry, today);
        let kiln_rows = round::rows(book.standing(), kiln, today);
        assert_eq!((ferry_rows.len(), kiln_rows.len()), (24, 9));
        assert!(ferry_rows[0].skipped.is_some(), "a skipped hive leads");
        assert!(
            kiln_rows
                .iter()
                .any(|row| matches!(row.due, HiveDue::Due { timing: Timing::Overdue { .. }, .. }))
        );
        assert!(ferry_rows.iter().any(|row| row.due.now()));
        let dids: BTreeSet<Did> = book
            .log()
            .entries()
            .filter_map(|entry| if let What::Check(check) = &entry.what { Some(check.did) } else { None })
            .collect();
        assert!(dids.contains(&Did::Spilled) && dids.contains(&Did::Replaced));
        assert!(book.standing().hives.values().any(|hive| hive.boxes.len() == 3 && hive.yard == *ferry));
        assert!(book.without(beetle_almanac::book::entry::Entry::is_demo).log().is_empty());
    }
}
