//! Lines that could not be corrected, and can be.

use crate::Yard;
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::app::ledger::edit;
use beetle_almanac::book::entry::{Check, Did, Entry, What};
use beetle_almanac::book::write::Refusal;

fn logged(yard: &mut Yard, on: &str, count: Option<u32>) -> Entry {
    let work = Check {
        hive: yard.hive("1"),
        traps: None,
        did: Did::ToppedUp,
        before: None,
        after: Some(Share::HALF),
        count: count.map(CountRange::exact),
        note: None,
    };
    let entries = yard.book.check(&pen("aa", day(on)), day(on), day(on), work).unwrap();
    yard.book.add(entries.clone());
    entries[0].clone()
}

/// The yard's day is the 10th already, the phone's own calendar is still at the 9th.
#[test]
fn a_line_of_a_yard_ahead_of_the_phone_is_corrected_the_same_evening() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let line = logged(&mut yard, "2026-05-10", None);
    let (here, what) = (day("2026-05-09"), line.what.clone());
    let mut mended = edit::typed(&line);
    mended.1.note = "wax".to_owned();
    let noted = edit::what(&line, mended.0, &mended.1).unwrap();
    let correct = |on: &str, what: &What| {
        yard.book.correct(&pen("aa", here), day(on), here, &line.id, what.clone(), &Unicode)
    };
    assert_eq!(correct("2026-05-10", &noted).unwrap()[0].what, noted);
    assert!(correct("2026-05-09", &what).is_ok());
    assert_eq!(correct("2026-05-11", &noted), Err(Refusal::Future { today: here }), "it does not move ahead");
}

#[test]
fn the_note_beside_any_count_that_the_book_takes_in_is_corrected() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    for count in [100_000, 100_001, Entry::COUNT_MOST] {
        let line = logged(&mut yard, "2026-05-10", Some(count));
        assert_eq!(line.check(), Ok(()));
        let (chosen, mut typed) = edit::typed(&line);
        typed.note = "every one of them".to_owned();
        let Ok(What::Check(work)) = edit::what(&line, chosen, &typed) else { panic!("{count}") };
        assert_eq!(work.count, Some(CountRange::exact(count)));
    }
}
