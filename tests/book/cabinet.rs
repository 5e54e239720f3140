//! The book on its shelf.

use crate::phone::{Faults, Memory};
use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::aside::Why;
use beetle_almanac::app::cabinet::{Cabinet, NotSaved, Opened};
use beetle_almanac::app::meta::Meta;
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Entry, SkipReason, What};
use beetle_almanac::book::id::EntryId;
use beetle_almanac::book::write::KindChoice;
use beetle_almanac::papers::calendar::Given;
use beetle_almanac::store::shelf::Shelf as _;
use std::collections::BTreeMap;
use std::rc::Rc;

/// A shelf with a yard of three hives and one day of work on it.
fn kept() -> (Rc<Memory>, Yard) {
    let shelf = Rc::new(Memory::new());
    let yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let mut book = Book::default();
    let mut cabinet = Cabinet::open(shelf.clone()).unwrap().cabinet;
    cabinet.save(&mut book, yard.book.log().entries().cloned().collect()).unwrap();
    (shelf, yard)
}

/// The same with the demonstration filled in on that day, in a tab that is open.
fn with_demo(on: &str) -> (Rc<Memory>, Yard, Opened) {
    let (shelf, yard) = kept();
    let mut tab = Cabinet::open(shelf.clone()).unwrap();
    let entries = demo(day(on), "Europe/Berlin", 120, &Unicode).unwrap();
    tab.cabinet.save(&mut tab.book, entries).unwrap();
    (shelf, yard, tab)
}

fn opened(shelf: &Rc<Memory>) -> Book {
    Cabinet::open(shelf.clone()).unwrap().book
}

#[test]
fn what_was_saved_is_there_at_the_next_start() {
    let (shelf, yard) = kept();
    assert_eq!(opened(&shelf), yard.book);
}

#[test]
fn two_tabs_that_log_the_same_yard_on_the_same_day_end_with_both_works() {
    let (shelf, _) = kept();
    let on = day("2026-05-15");
    let mut first = Cabinet::open(shelf.clone()).unwrap();
    let mut second = Cabinet::open(shelf.clone()).unwrap();
    let hives: Vec<_> = first.book.standing().hives.keys().cloned().collect();
    let one = first.book.skip(&pen("aa", on), on, on, &hives[0], SkipReason::Temper, None).unwrap();
    let two = second.book.skip(&pen("bb", on), on, on, &hives[1], SkipReason::Robbing, None).unwrap();
    first.cabinet.save(&mut first.book, one).unwrap();
    second.cabinet.save(&mut second.book, two).unwrap();
    assert_eq!(opened(&shelf), second.book);
    assert_eq!(first.cabinet.refresh(&mut first.book), Ok(1));
    assert_eq!(first.book, second.book);
}

#[test]
fn a_full_phone_says_so_and_gives_back_what_it_could_not_keep() {
    let (shelf, yard) = kept();
    let before = shelf.texts();
    let mut start = Cabinet::open(shelf.clone()).unwrap();
    shelf.set_faults(Faults { quota: Some(100), ..Faults::default() });
    let on = day("2026-05-15");
    let entries = start.book.skip(&pen("aa", on), on, on, &yard.hive("1"), SkipReason::Temper, None).unwrap();
    match start.cabinet.save(&mut start.book, entries.clone()) {
        Err(NotSaved::Shelf { text, .. }) => assert_eq!(text, serde_json::to_string(&entries).unwrap()),
        other => panic!("{other:?}"),
    }
    assert_eq!(start.book, yard.book, "nothing is shown as kept");
    assert_eq!(shelf.texts(), before);
    shelf.set_faults(Faults::default());
    assert_eq!(start.cabinet.save(&mut start.book, entries), Ok(1));
}

#[test]
fn a_damaged_page_costs_its_day_and_nothing_else_and_is_never_written_over() {
    let (shelf, yard) = kept();
    let on = day("2026-05-15");
    let mut start = Cabinet::open(shelf.clone()).unwrap();
    let skip = start.book.skip(&pen("aa", on), on, on, &yard.hive("1"), SkipReason::Temper, None).unwrap();
    start.cabinet.save(&mut start.book, skip).unwrap();
    let key = shelf.texts().into_keys().find(|key| key.contains("2026-05-15")).unwrap();
    let damaged = shelf.texts()[&key].replace("temper", "tempel");
    shelf.lay(&key, &damaged);

    let mut again = Cabinet::open(shelf.clone()).unwrap();
    assert_eq!(again.book, yard.book);
    assert_eq!((again.asides[0].raw.as_str(), again.asides[0].why), (damaged.as_str(), Why::Damaged));
    let skip = again.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Weather, None).unwrap();
    again.cabinet.save(&mut again.book, skip).unwrap();
    assert_eq!(shelf.texts()[&key], damaged);
    assert_eq!(opened(&shelf), again.book);
}

#[test]
fn a_book_written_by_a_newer_version_is_only_read() {
    let (shelf, yard) = kept();
    let text = beetle_almanac::store::envelope::wrap(5, 1, "{\"entries\":[],\"more\":1}");
    shelf.lay("beetle-almanac:page:keeper:2027-01-01", &text);
    let mut start = Cabinet::open(shelf.clone()).unwrap();
    assert!(start.cabinet.read_only());
    assert_eq!(start.book, yard.book);
    let on = day("2026-05-15");
    let skip = start.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Weather, None).unwrap();
    let before = shelf.texts();
    assert_eq!(start.cabinet.save(&mut start.book, skip), Err(NotSaved::ReadOnly));
    assert_eq!(shelf.texts(), before);
}

/// An update went into another tab while this one was open.
#[test]
fn a_book_that_a_newer_version_writes_to_meanwhile_is_only_read_from_then_on() {
    let (shelf, yard) = kept();
    let mut start = Cabinet::open(shelf.clone()).unwrap();
    let text = beetle_almanac::store::envelope::wrap(5, 1, "{\"entries\":[],\"more\":1}");
    shelf.lay("beetle-almanac:page:keeper:2027-01-01", &text);
    start.cabinet.refresh(&mut start.book).unwrap();
    assert!(start.cabinet.read_only());
    let on = day("2026-05-15");
    let skip = start.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Weather, None).unwrap();
    assert_eq!(start.cabinet.save(&mut start.book, skip), Err(NotSaved::ReadOnly));
}

#[test]
fn a_tab_that_only_reads_along_does_not_take_the_demonstration_out() {
    let (shelf, _, mut tab) = with_demo("2026-05-15");
    let (texts, book) = (shelf.texts(), tab.book.clone());
    tab.cabinet.set_elsewhere(true);
    assert!(tab.cabinet.remove_demo(&mut tab.book).is_err());
    assert_eq!((shelf.texts(), &tab.book), (texts, &book));
    tab.cabinet.set_elsewhere(false);
    tab.cabinet.remove_demo(&mut tab.book).unwrap();
    assert!(!tab.book.log().entries().any(Entry::is_demo));
}

#[test]
fn the_demonstration_comes_and_goes_without_touching_the_keepers_pages() {
    let (shelf, yard) = kept();
    let own: BTreeMap<String, String> = shelf.texts();
    let mut start = Cabinet::open(shelf.clone()).unwrap();
    let today = day("2026-07-14");
    for _ in 0..2 {
        let entries = demo(today, "Europe/Berlin", 120, &Unicode).unwrap();
        start.cabinet.save(&mut start.book, entries).unwrap();
        assert_eq!(start.book.standing().open_yards().count(), 3);
        assert_eq!(opened(&shelf), start.book);
        start.cabinet.remove_demo(&mut start.book).unwrap();
        assert_eq!(start.book, yard.book);
        assert_eq!(shelf.texts(), own);
    }
    // What the keeper wrote meanwhile stays.
    let entries = demo(today, "Europe/Berlin", 120, &Unicode).unwrap();
    start.cabinet.save(&mut start.book, entries).unwrap();
    let second = plan(&["9"], &[(BoxDepth::Deep, 2)], today);
    let kind = KindChoice::Known(yard.kind());
    let kept = start.book.keep_yard(&pen("aa", today), "Kiln Bank", "UTC", &kind, &second).unwrap();
    start.cabinet.save(&mut start.book, kept).unwrap();
    start.cabinet.remove_demo(&mut start.book).unwrap();
    assert_eq!(opened(&shelf).standing().open_yards().count(), 2);
    assert_eq!(opened(&shelf), start.book);
}

#[test]
fn the_app_remembers_its_name() {
    let shelf = Rc::new(Memory::new());
    let cabinet = Cabinet::open(shelf.clone()).unwrap().cabinet;
    assert_eq!(cabinet.meta(), None);
    let meta = Meta {
        label: Some("Truck phone".to_owned()),
        since: day("2026-05-01"),
        written: true,
        backup: Some((day("2026-06-01"), 40)),
        calendar: vec![Given {
            uid: "aa-1.traps.aa-3.20260601".to_owned(),
            day: day("2026-06-15"),
            sequence: 2,
            words: "0".to_owned(),
            withdrawn: true,
            hours: Some("20260614T140000Z/20260615T140000Z".to_owned()),
        }],
    };
    cabinet.keep_meta(&meta).unwrap();
    assert_eq!(Cabinet::open(shelf).unwrap().cabinet.meta(), Some(meta));
}

#[test]
fn a_phone_that_died_in_a_save_and_has_no_room_left_shows_what_it_could_not_keep() {
    let (shelf, yard) = kept();
    let on = day("2026-05-15");
    let mut start = Cabinet::open(shelf.clone()).unwrap();
    let skip = start.book.skip(&pen("aa", on), on, on, &yard.hive("1"), SkipReason::Temper, None).unwrap();
    // The journal is the first write; the phone dies before the page is written, and the phone fills up meanwhile.
    shelf.set_faults(Faults { cut: Some(2), ..Faults::default() });
    assert!(start.cabinet.save(&mut start.book, skip.clone()).is_err());
    shelf.set_faults(Faults { quota: Some(10), ..Faults::default() });
    let again = Cabinet::open(shelf.clone()).unwrap();
    assert_eq!(again.unsaved, skip);
    assert_eq!(again.book, yard.book);
}

/// A book of 400 days with long notes: several stretches of a file.
fn years() -> Vec<Entry> {
    let yard = Yard::new(&["1"], day("2026-01-01"));
    let on = day("2026-01-02");
    let note = Some("robbed from the hedge side ".repeat(18));
    let skip =
        yard.book.skip(&pen("aa", on), on, on, &yard.hive("1"), SkipReason::Robbing, note).unwrap().remove(0);
    let later = (0_u32..400).flat_map(|n| [2 * n, 2 * n + 1].map(|nth| (n.cast_signed(), skip.id.n() + nth)));
    let skips = later.map(|(n, nth)| {
        let id = EntryId::new(skip.id.writer().clone(), nth).unwrap();
        Entry { id, day: on.plus(n), ..skip.clone() }
    });
    yard.book.log().entries().cloned().chain(skips).collect()
}

fn written(shelf: &Memory) -> u64 {
    shelf.texts().iter().map(|(key, text)| (key.len() + text.len()) as u64).sum()
}

#[test]
fn keeper_opens_the_file_of_many_years_on_a_new_phone_with_little_more_room_than_the_book_takes() {
    let entries = years();
    let all = Rc::new(Memory::new());
    let mut start = Cabinet::open(all.clone()).unwrap();
    assert_eq!(start.cabinet.take_in(&mut start.book, entries.clone()), Ok(entries.len()));
    assert_eq!(start.book, Book::from_log(entries.iter().cloned().collect()));
    let size = written(&all);

    let phone = Rc::new(Memory::new());
    phone.set_faults(Faults { quota: Some(size + 300_000), ..Faults::default() });
    let mut start = Cabinet::open(phone.clone()).unwrap();
    assert!(start.cabinet.save(&mut start.book, entries.clone()).is_err(), "too much for one save");
    assert_eq!(start.cabinet.take_in(&mut start.book, entries.clone()), Ok(entries.len()));
    assert_eq!(opened(&phone), start.book);
    assert_eq!(start.cabinet.take_in(&mut start.book, entries.clone()), Ok(0), "nothing comes twice");
}

#[test]
fn keeper_opens_a_file_that_is_too_large_for_the_phone_and_again_when_there_is_room() {
    let entries = years();
    let phone = Rc::new(Memory::new());
    phone.set_faults(Faults { quota: Some(500_000), ..Faults::default() });
    let mut start = Cabinet::open(phone.clone()).unwrap();
    let Err((kept, NotSaved::Shelf { .. })) = start.cabinet.take_in(&mut start.book, entries.clone()) else {
        panic!()
    };
    assert!(kept > 0 && kept < entries.len(), "{kept} of {}", entries.len());
    assert_eq!(opened(&phone), start.book, "what is said to be in is in");
    assert_eq!(start.book.log().len(), kept);
    phone.set_faults(Faults::default());
    let rest = start.cabinet.take_in(&mut start.book, entries.clone());
    assert_eq!(rest, Ok(entries.len() - kept));
    assert_eq!(opened(&phone), Book::from_log(entries.into_iter().collect()));
}

#[test]
fn keeper_opens_the_file_of_a_helper_who_added_a_line_to_many_full_pages() {
    let entries = years();
    let phone = Rc::new(Memory::new());
    let mut start = Cabinet::open(phone.clone()).unwrap();
    start.cabinet.take_in(&mut start.book, entries.clone()).unwrap();
    // Small lines on pages that are long already: the journal holds each page whole, before and after.
    let more: Vec<Entry> = entries
        .iter()
        .filter(|entry| matches!(entry.what, What::Skip { .. }))
        .step_by(2)
        .zip(5_000..)
        .map(|(entry, n)| {
            let What::Skip { hive, why, .. } = entry.what.clone() else { panic!() };
            let id = EntryId::new(entry.id.writer().clone(), n).unwrap();
            Entry { id, what: What::Skip { hive, why, note: None }, ..entry.clone() }
        })
        .collect();
    phone.set_faults(Faults { quota: Some(written(&phone) + 150_000), ..Faults::default() });
    assert!(start.cabinet.save(&mut start.book, more.clone()).is_err(), "too much for one save");
    assert_eq!(start.cabinet.take_in(&mut start.book, more.clone()), Ok(more.len()));
    assert_eq!(opened(&phone), start.book);
}

#[test]
fn keeper_opens_a_file_half_of_which_fits_and_nothing_that_was_struck_comes_back() {
    let mut book = Book::from_log(years().into_iter().collect());
    let skips: Vec<EntryId> = book
        .log()
        .entries()
        .filter(|entry| matches!(entry.what, What::Skip { .. }))
        .map(|e| e.id.clone())
        .collect();
    let on = day("2027-03-01");
    for skip in skips.iter().step_by(20) {
        let strike = book.strike(&pen("aa", on), on, std::slice::from_ref(skip), &Unicode).unwrap();
        book.add(strike);
    }
    let struck: Vec<EntryId> = book.log().struck().keys().map(|id| (*id).clone()).collect();
    let phone = Rc::new(Memory::new());
    phone.set_faults(Faults { quota: Some(500_000), ..Faults::default() });
    let mut start = Cabinet::open(phone.clone()).unwrap();
    let all: Vec<Entry> = book.log().entries().cloned().collect();
    assert!(start.cabinet.take_in(&mut start.book, all).is_err());
    let here = start.book.log();
    let came: Vec<&EntryId> = struck.iter().filter(|id| here.get(id).is_some()).collect();
    assert!(!came.is_empty() && came.iter().all(|id| here.struck().contains_key(*id)));
}

#[test]
fn another_tab_fills_many_days_and_this_one_still_saves() {
    let (shelf, yard) = kept();
    let mut first = Cabinet::open(shelf.clone()).unwrap();
    let mut second = Cabinet::open(shelf.clone()).unwrap();
    let days: Vec<_> = (1..=12).map(|n| day("2026-05-15").plus(n)).collect();
    for on in &days {
        let skip =
            first.book.skip(&pen("aa", *on), *on, *on, &yard.hive("1"), SkipReason::Temper, None).unwrap();
        first.cabinet.save(&mut first.book, skip).unwrap();
    }
    let restored: Vec<_> = days
        .iter()
        .enumerate()
        .flat_map(|(n, on)| {
            let mut skips = second
                .book
                .skip(&pen("bb", *on), *on, *on, &yard.hive("2"), SkipReason::Weather, None)
                .unwrap();
            let n = u32::try_from(n).unwrap() + 100;
            skips[0].id = EntryId::new(skips[0].id.writer().clone(), n).unwrap();
            skips
        })
        .collect();
    assert_eq!(second.cabinet.save(&mut second.book, restored), Ok(12));
    assert_eq!(opened(&shelf), second.book);
}

#[test]
fn she_takes_the_demonstration_out_while_another_tab_logs_and_keeps_both_works() {
    let (shelf, yard, mut first) = with_demo("2026-05-15");
    let on = day("2026-05-15");
    let mut second = Cabinet::open(shelf.clone()).unwrap();
    let skip = |book: &Book, writer, tag, why| {
        book.skip(&pen(writer, on), on, on, &yard.hive(tag), why, None).unwrap()
    };
    let one = skip(&second.book, "bb", "1", SkipReason::Temper);
    second.cabinet.save(&mut second.book, one.clone()).unwrap();
    first.cabinet.remove_demo(&mut first.book).unwrap();
    let two = skip(&first.book, "aa", "2", SkipReason::Robbing);
    first.cabinet.save(&mut first.book, two.clone()).unwrap();
    let book = opened(&shelf);
    assert!(one.iter().chain(&two).all(|entry| book.log().get(&entry.id).is_some()));
    assert_eq!(book, first.book);
}

#[test]
fn a_page_that_slept_while_another_tab_wrote_catches_up_and_reads_nothing_where_nothing_changed() {
    let (shelf, yard) = kept();
    let on = day("2026-05-15");
    let mut first = Cabinet::open(shelf.clone()).unwrap();
    let mut second = Cabinet::open(shelf.clone()).unwrap();
    assert_eq!(first.cabinet.catch_up(&mut first.book), Ok(0));
    for (writer, new) in [("bb", 1), ("cc", 1)] {
        let skip = second.book.skip(&pen(writer, on), on, on, &yard.hive("1"), SkipReason::Temper, None);
        second.cabinet.save(&mut second.book, skip.unwrap()).unwrap();
        // A new page first, then a page that is known in a new state.
        assert_eq!(first.cabinet.catch_up(&mut first.book), Ok(new));
        assert_eq!(first.book, second.book);
    }
    let skip = first.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Temper, None).unwrap();
    first.cabinet.save(&mut first.book, skip).unwrap();
    shelf.set_faults(Faults::default());
    assert_eq!(first.cabinet.catch_up(&mut first.book), Ok(0), "its own saves are no news");
    let journals = 9;
    assert_eq!(shelf.reads(), u32::try_from(shelf.texts().len()).unwrap() + journals, "each text once");
}

#[test]
fn a_page_takes_in_the_save_in_which_another_tab_died() {
    let (shelf, yard) = kept();
    let on = day("2026-05-15");
    let mut first = Cabinet::open(shelf.clone()).unwrap();
    let mut second = Cabinet::open(shelf.clone()).unwrap();
    let skip = second.book.skip(&pen("bb", on), on, on, &yard.hive("1"), SkipReason::Temper, None).unwrap();
    // The journal is written, the page is not.
    shelf.set_faults(Faults { cut: Some(2), ..Faults::default() });
    assert!(second.cabinet.save(&mut second.book, skip.clone()).is_err());
    shelf.set_faults(Faults::default());
    assert_eq!(first.cabinet.catch_up(&mut first.book), Ok(1));
    assert!(first.book.log().get(&skip[0].id).is_some());
}

#[test]
fn a_page_that_vanishes_is_not_taken_for_the_demonstration_and_comes_back_with_the_next_save() {
    let (shelf, yard, mut first) = with_demo("2026-05-15");
    let on = day("2026-05-15");
    let skip = first.book.skip(&pen("aa", on), on, on, &yard.hive("1"), SkipReason::Temper, None).unwrap();
    first.cabinet.save(&mut first.book, skip).unwrap();
    let before = first.book.clone();
    let own = format!("beetle-almanac:page:{}:2026-05-15", yard.id);
    shelf.remove(&own).unwrap();
    assert_eq!(first.cabinet.refresh(&mut first.book), Ok(0));
    assert_eq!(first.book, before, "what it has in memory it keeps, the demonstration too");
    let skip = first.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Temper, None).unwrap();
    first.cabinet.save(&mut first.book, skip).unwrap();
    assert_eq!(opened(&shelf), first.book);

    let mut second = Cabinet::open(shelf.clone()).unwrap();
    second.cabinet.remove_demo(&mut second.book).unwrap();
    let demo = first.book.log().entries().filter(|entry| entry.is_demo()).count();
    assert_eq!(first.cabinet.refresh(&mut first.book), Ok(demo));
    assert_eq!(first.book, second.book);
}
