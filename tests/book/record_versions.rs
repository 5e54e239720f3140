//! Records in files and on pages of every version of the format.

use crate::phone::Memory;
use crate::record_of_each::filled_since;
use crate::records::{kept, put, three, write};
use crate::support::{day, pen};
use beetle_almanac::almanac::day::Stamp;
use beetle_almanac::app::cabinet::Cabinet;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Did, Entry};
use beetle_almanac::book::log::Log;
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::papers::backup::{self, BackupError};
use beetle_almanac::store::envelope;
use std::rc::Rc;

fn fixture(version: u32) -> Vec<Entry> {
    let mut yard = three();
    for blank in Blank::ALL.into_iter().filter(|blank| blank.since() <= version) {
        let record = filled_since(version, blank, &yard.hive("1"), &yard.hive("2"));
        kept(&mut yard, day("2026-07-14"), record);
    }
    let on = day("2026-07-14");
    let one = yard.book.same_hive(&pen("aa", on), on, &yard.hive("1"), &yard.hive("3")).unwrap();
    yard.book.add(one);
    yard.book.log().entries().cloned().collect()
}

/// Pinned by files that are never edited: one record of each kind, every field filled in, and two hives that are one.
#[test]
fn a_backup_of_version_2_3_or_4_is_read_and_written_byte_for_byte() {
    for (version, pinned) in [
        (2, include_str!("../fixtures/v2/yard-backup-2026-07-14.json")),
        (3, include_str!("../fixtures/v3/yard-backup-2026-07-14.json")),
        (4, include_str!("../fixtures/v4/yard-backup-2026-07-14.json")),
    ] {
        let entries = fixture(version);
        let log = entries.iter().cloned().collect();
        let made = Stamp::parse("2026-07-14T20:15:00+02:00").unwrap();
        let text = backup::write(&log, made, Some("Truck phone"));
        assert_eq!(text, pinned.trim_end(), "{version}");
        assert_eq!(backup::open(pinned).unwrap().entries, entries, "{version}");
    }
}

/// A file says the lowest version that can say what it says, and says no more than that.
#[test]
fn a_backup_without_records_still_opens_on_a_phone_with_the_first_version() {
    let yard = three();
    let made = Stamp::midnight(yard.start);
    assert!(backup::write(yard.book.log(), made, None).contains("\"version\": 1,"));
    for version in [2, 3, 4] {
        let with: Log = fixture(version).into_iter().collect();
        let text = backup::write(&with, made, None);
        let says = |version: u32| format!("\"version\": {version},");
        assert!(text.contains(&says(version)) && backup::open(&text).is_ok());
        let claims = text.replace(&says(version), &says(version - 1));
        assert_eq!(backup::open(&claims), Err(BackupError::Damaged));
    }
}

/// An old blank is of the second version until a field is answered that it did not have.
#[test]
fn a_look_without_the_size_of_larvae_still_opens_on_a_phone_with_the_second_version() {
    let yard = three();
    let on = day("2026-07-14");
    let version = |record: Record| write(&yard, on, record).unwrap()[0].version();
    let (one, two) = (yard.hive("1"), yard.hive("2"));
    for blank in Blank::ALL {
        let whole = |version| filled_since(version, blank, &one, &two).version();
        let third = if matches!(blank, Blank::Look | Blank::Harvest) { 3 } else { blank.since() };
        let grown =
            matches!(blank, Blank::Look | Blank::DeadOut | Blank::YardFacts | Blank::Stock | Blank::Aims);
        assert_eq!(whole(2), blank.since(), "{}", blank.name());
        assert_eq!(whole(3), third, "{}", blank.name());
        assert_eq!(whole(4), if grown { 4 } else { third }, "{}", blank.name());
    }
    let mut look = filled_since(2, Blank::Look, &one, &two);
    assert_eq!(version(look.clone()), 2);
    put(&mut look, "soil", Answer::Word(0));
    assert_eq!(version(look), 3);
    assert_eq!(version(Record::empty(Blank::Aims, Vec::new())), 3);
}

/// The pages of an older version lie on the phone as they were written; what is new is written beside it.
#[test]
fn a_book_of_an_older_version_opens_after_the_update_and_goes_on() {
    for old in [1, 2, 3] {
        opens_and_goes_on(old);
    }
}

fn opens_and_goes_on(old: u32) {
    let shelf = Rc::new(Memory::new());
    let mut yard = three();
    yard.log("1", day("2026-05-08"), Did::ToppedUp, (None, Some(50)));
    let mut cabinet = Cabinet::open(shelf.clone()).unwrap().cabinet;
    cabinet.save(&mut Book::default(), yard.book.log().entries().cloned().collect()).unwrap();
    for (key, text) in shelf.texts().iter().filter(|(key, _)| key.contains(":page:")) {
        let inside = envelope::open(text).unwrap();
        assert_eq!(inside.version, 4);
        shelf.lay(key, &envelope::wrap(old, inside.generation, inside.payload));
    }
    let before = shelf.texts();
    let mut opened = Cabinet::open(shelf.clone()).unwrap();
    assert_eq!(opened.book, yard.book);
    assert!(!opened.cabinet.read_only() && opened.asides.is_empty());
    assert_eq!(shelf.texts(), before);
    let on = day("2026-05-08");
    let mut look = Record::empty(Blank::Look, vec![yard.hive("1")]);
    put(&mut look, "larvae", Answer::Word(1));
    let written = opened.book.record(&pen("bb", on), on, on, Some(&yard.id), look).unwrap();
    opened.cabinet.save(&mut opened.book, written).unwrap();
    let again = Cabinet::open(shelf.clone()).unwrap();
    assert_eq!(again.book, opened.book);
    assert_eq!(again.book.log().len(), yard.book.log().len() + 1);
}
