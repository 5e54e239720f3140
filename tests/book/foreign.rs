//! Texts of foreign hands: their caps, and what spoiling texts by chance (`make fuzz`) has brought to light.

use crate::Yard;
use crate::phone::Memory;
use crate::support::{day, pen};
use beetle_almanac::almanac::json;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::app::cabinet::{Cabinet, Opened};
use beetle_almanac::book::entry::{Check, Did, Entry, SkipReason, What};
use beetle_almanac::book::id::{EntryId, Writer};
use beetle_almanac::book::standing::HiveNow;
use beetle_almanac::papers::backup::{self, BackupError, Looks, MOST_BYTES};
use beetle_almanac::store::envelope;
use std::rc::Rc;
use std::time::Instant;

/// A backup with these entries, its checksum right and its counts not: everything is gone through before it is refused.
fn file(entries: &str) -> String {
    use beetle_almanac::almanac::checksum;
    let sum = checksum::of(&[entries]);
    format!(
        "{{\"format\":\"beetle-almanac backup\",\"version\":1,\"made\":\"2026-07-14T20:15:00+02:00\",\"counts\":\
         {{\"entries\":0,\"yards\":0,\"hives\":0,\"days\":0}},\"checksum\":\"{sum}\",\"about\":\"\",\"entries\":{entries}}}"
    )
}

#[test]
fn keeper_picks_a_file_larger_than_any_book() {
    let mut text = " ".repeat(MOST_BYTES);
    assert_eq!(backup::open(&text), Err(BackupError::NotABackup(Looks::Empty)));
    text.push(' ');
    assert_eq!(backup::open(&text), Err(BackupError::TooLarge));
}

#[test]
fn keeper_picks_a_backup_in_which_brackets_are_round_brackets() {
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        for deep in [100, 200_000] {
            let nested = [&open.repeat(deep), "0", &close.repeat(deep)].concat();
            assert_eq!(backup::open(&file(&nested)), Err(BackupError::Damaged));
            assert_eq!(backup::open(&file(&format!("[{nested}]"))), Err(BackupError::Damaged));
        }
    }
}

/// Each time it was said all others were moved: a megabyte took a minute.
#[test]
fn keeper_picks_a_file_that_says_one_field_a_hundred_thousand_times() {
    let time = |often: usize| {
        let entry = format!("[{{{}\"id\":\"aa-1\"}}]", "\"id\":0,".repeat(often));
        let file = file(&entry);
        let best = (0..5).map(|_| {
            let begun = Instant::now();
            assert_eq!(backup::open(&file), Err(BackupError::Damaged));
            begun.elapsed()
        });
        best.min().unwrap()
    };
    // Eight times as often takes some eight times as long, and not sixty-four.
    let (once, eight) = (time(17_500), time(140_000));
    assert!(eight < once * 32, "{eight:?} against {once:?}");
}

#[test]
fn of_a_field_that_is_said_twice_the_last_counts() {
    let text = r#"{"hive":"aa-1","did":"missing","count":3,"did":"replaced","count":4}"#;
    let check: Check = json::from_text(text).unwrap();
    assert_eq!((check.did, check.count), (Did::Replaced, Some(CountRange::exact(4))));
}

/// The sum of its digits and its power went beyond the largest number there is, and began again below nought.
#[test]
fn a_number_beyond_all_counting_is_refused_and_not_taken_for_nought() {
    for text in
        ["1e9223372036854775806", "10e9223372036854775805", "-1e9223372036854775801", "1e9223372036854775807"]
    {
        assert_eq!(json::from_text::<Decimal>(text), None, "{text}");
    }
    assert_eq!(json::from_text::<Decimal>("1e-9223372036854775807"), Some(Decimal::ZERO));
    assert_eq!(json::from_text::<Decimal>("0e9223372036854775806"), Some(Decimal::ZERO));
}

/// Both were written, each on the page of its day, and the next start found two entries of one name.
#[test]
fn keeper_picks_a_backup_that_gives_one_name_to_two_entries() {
    let yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let entries: Vec<Entry> = yard.book.log().entries().cloned().collect();
    let whole = backup::write(yard.book.log(), entries[0].at, None);
    let same = |order: &[usize]| {
        let list = order.iter().map(|at| json::to_text(&entries[*at])).collect::<Vec<_>>().join(",");
        let counts = whole.split_once("\"counts\": ").unwrap().1.split_once('}').unwrap().0;
        let counts = counts.replacen(&entries.len().to_string(), &order.len().to_string(), 1) + "}";
        let none = "{\"entries\":0,\"yards\":0,\"hives\":0,\"days\":0}";
        backup::open(&file(&format!("[{list}]")).replace(none, &counts)).map(|file| file.entries.len())
    };
    assert_eq!(entries.len(), 4);
    assert_eq!(same(&[0, 1, 2, 3]), Ok(4));
    // A kind of trap: it is in none of the counts.
    let kind = entries.iter().position(|entry| matches!(entry.what, What::Kind(_))).unwrap();
    assert_eq!(kind, 1);
    assert_eq!(same(&[0, 1, 1, 2, 3]), Err(BackupError::Damaged));
    assert_eq!(same(&[0, 2, 1, 3]), Err(BackupError::Damaged));
}

/// A phone with a yard on it, and the last entry: hive 1 was topped up on 15 May.
fn served() -> (Rc<Memory>, Yard, Entry) {
    let on = day("2026-05-15");
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    yard.log("1", on, Did::ToppedUp, (None, Some(50)));
    let shelf = Rc::new(Memory::new());
    let Opened { mut cabinet, mut book, .. } = Cabinet::open(shelf.clone()).unwrap();
    cabinet.save(&mut book, yard.book.log().entries().cloned().collect()).unwrap();
    let own = yard.book.log().newest().unwrap().clone();
    (shelf, yard, own)
}

/// It was written on the page of that day, and the next start took it for the entry of that name.
#[test]
fn an_entry_whose_second_copy_says_another_day_is_not_written_beside_itself() {
    let (shelf, yard, own) = served();
    let on = own.day;
    let Opened { mut cabinet, mut book, .. } = Cabinet::open(shelf.clone()).unwrap();
    let moved = Entry { day: day("2026-04-01"), ..own.clone() };
    let new = Entry { id: EntryId::new(Writer::new("cc").unwrap(), 90).unwrap(), ..own.clone() };
    let page = format!("{{\"entries\":{}}}", json::list_to_text(&[moved, new.clone()]));
    let key = format!("beetle-almanac:page:{}:{on}", yard.id);
    let found = cabinet.reconcile(&mut book, vec![(key, envelope::wrap(1, 9, &page))]).unwrap();
    assert_eq!((found.restored, found.asides.len(), found.refused), (1, 1, false));
    let next = Cabinet::open(Rc::new(shelf.restarted())).unwrap();
    assert_eq!((next.book.log().get(&own.id), next.book.log().get(&new.id)), (Some(&own), Some(&new)));
    assert_eq!((next.asides.len(), next.book == book), (0, true));
}

/// Each was written on the page of its own day, and the next start took the later one for the other.
#[test]
fn two_entries_of_one_name_in_a_second_copy_are_the_first_of_them_now_and_at_the_next_start() {
    let (shelf, yard, own) = served();
    let on = own.day;
    let new = Entry { id: EntryId::new(Writer::new("cc").unwrap(), 90).unwrap(), ..own.clone() };
    let twice = Entry { day: day("2026-05-20"), ..new.clone() };
    for (first, second) in [(&new, &twice), (&twice, &new)] {
        let shelf = Rc::new(shelf.restarted());
        let Opened { mut cabinet, mut book, .. } = Cabinet::open(shelf.clone()).unwrap();
        let page = format!("{{\"entries\":{}}}", json::list_to_text(&[first.clone(), second.clone()]));
        let key = format!("beetle-almanac:page:{}:{on}", yard.id);
        let found = cabinet.reconcile(&mut book, vec![(key, envelope::wrap(1, 9, &page))]).unwrap();
        assert_eq!((found.restored, found.refused), (1, false));
        assert_eq!(book.log().get(&new.id), Some(first));
        let next = Cabinet::open(Rc::new(shelf.restarted())).unwrap();
        assert_eq!((next.asides.len(), next.book == book), (0, true));
    }
}

/// A save writes what belongs on its page, so what else lay there was gone with the next one.
#[test]
fn a_page_under_the_name_of_another_day_loses_nothing_when_that_day_is_written() {
    let (on, other) = (day("2026-05-15"), day("2026-05-16"));
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    yard.log("1", on, Did::ToppedUp, (None, Some(50)));
    let shelf = Rc::new(Memory::new());
    let Opened { mut cabinet, mut book, .. } = Cabinet::open(shelf.clone()).unwrap();
    cabinet.save(&mut book, yard.book.log().entries().cloned().collect()).unwrap();
    let key = |day| format!("beetle-almanac:page:{}:{day}", yard.id);
    let text = shelf.texts()[&key(on)].clone();
    let payload = envelope::open(&text).unwrap().payload;
    let shelf = Rc::new(shelf.restarted());
    shelf.lay(&key(other), &envelope::wrap(1, 1, payload));
    beetle_almanac::store::Shelf::remove(&*shelf, &key(on)).unwrap();
    // Read at a start, and read while the page is open.
    for late in [false, true] {
        let shelf = Rc::new(shelf.restarted());
        let lain = shelf.texts()[&key(other)].clone();
        if late {
            beetle_almanac::store::Shelf::remove(&*shelf, &key(other)).unwrap();
        }
        let Opened { mut cabinet, mut book, asides, .. } = Cabinet::open(shelf.clone()).unwrap();
        if late {
            shelf.lay(&key(other), &lain);
            cabinet.refresh(&mut book).unwrap();
        }
        assert_eq!((asides.len(), book.log().len()), (0, yard.book.log().len()));
        let skip =
            book.skip(&pen("bb", other), other, other, &yard.hive("2"), SkipReason::Temper, None).unwrap();
        cabinet.save(&mut book, skip).unwrap();
        assert_eq!(shelf.texts()[&key(other)], lain);
        let next = Cabinet::open(Rc::new(shelf.restarted())).unwrap();
        assert_eq!(next.book, book);
        assert_eq!(next.book.log().len(), yard.book.log().len() + 1);
    }
}

/// Every pair of them was looked for among all pairs before it: a megabyte took hours.
#[test]
fn a_day_of_a_hundred_writers_at_one_hive_is_doubted_so_often_and_no_more() {
    let on = day("2026-05-15");
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let line = |n: u32| {
        let (traps, before, after, count, note) = (None, None, None, None, None);
        let work = Check { hive: hive.clone(), traps, did: Did::ToppedUp, before, after, count, note };
        let id = EntryId::new(Writer::new(&format!("w{n}")).unwrap(), 1000 + n).unwrap();
        let at = pen("bb", on).at;
        let yard = Some(yard.id.clone());
        Entry { id, day: on, at, by: None, yard, replaces: None, bulk: None, what: What::Check(work) }
    };
    let doubts = |writers: u32| {
        let mut book = yard.book.clone();
        book.add((10..10 + writers).map(line));
        book.standing().hives[&hive].doubles.len()
    };
    assert_eq!(doubts(10), 45);
    assert_eq!(doubts(100), HiveNow::DOUBLES);
}
