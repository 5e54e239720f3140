//! The phone in other hands: the book can be read, and nothing can be written.

use crate::Yard;
use crate::phone::{Faults, Memory};
use crate::support::{Unicode, day, pen};
use beetle_almanac::app::cabinet::{Cabinet, NotSaved, Opened};
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Entry, SkipReason, What};
use beetle_almanac::store::shelf::ShelfError;
use std::rc::Rc;

/// A yard on a phone that only shows it, as the next start finds it.
fn shown() -> (Rc<Memory>, Yard, Opened) {
    let shelf = Rc::new(Memory::new());
    let yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let mut cabinet = Cabinet::open(shelf.clone()).unwrap().cabinet;
    cabinet.save(&mut Book::default(), yard.book.log().entries().cloned().collect()).unwrap();
    cabinet.set_only_shows(true).unwrap();
    let opened = Cabinet::open(shelf.clone()).unwrap();
    (shelf, yard, opened)
}

/// One of each thing that a keeper can have written.
fn everything(yard: &Yard) -> Vec<(&'static str, Vec<Entry>)> {
    let (book, on) = (&yard.book, day("2026-05-15"));
    let pen = pen("bb", on);
    let (hive, other) = (yard.hive("1"), yard.hive("2"));
    let order = What::Order { yard: yard.id.clone(), hives: vec![other, hive.clone()] };
    let newest = book.log().entries().last().unwrap().id.clone();
    let note = What::Note { hive: None, text: "x".to_owned() };
    vec![
        ("a skip", book.skip(&pen, on, on, &hive, SkipReason::Temper, None).unwrap()),
        ("a strike", book.strike(&pen, on, &[newest], &Unicode).unwrap()),
        ("an order", book.about_yard(&pen, on, on, &yard.id, order).unwrap()),
        ("a kind put away", book.about_keeper(&pen, on, What::KindRetired { kind: yard.kind() }).unwrap()),
        ("a note", book.about_keeper(&pen, on, note).unwrap()),
        ("a second yard", Yard::new(&["7"], on).book.log().entries().cloned().collect()),
        ("the demonstration", demo(on, "Europe/Berlin", 120, &Unicode).unwrap()),
    ]
}

#[test]
fn she_handed_her_phone_over_and_nothing_was_written_whatever_was_tapped() {
    let (shelf, yard, mut opened) = shown();
    let before = shelf.texts();
    assert!(opened.cabinet.only_shows(), "a start does not end it");
    for (what, entries) in everything(&yard) {
        let written = opened.cabinet.save(&mut opened.book, entries.clone());
        assert_eq!(written, Err(NotSaved::OnlyShows), "{what}");
        let taken = opened.cabinet.take_in(&mut opened.book, entries);
        assert_eq!(taken, Err((0, NotSaved::OnlyShows)), "{what} out of a file");
        assert_eq!(opened.book, yard.book, "{what}");
    }
    assert_eq!(shelf.texts(), before);
    opened.cabinet.set_only_shows(false).unwrap();
    for (what, entries) in everything(&yard) {
        assert!(opened.cabinet.save(&mut opened.book, entries).is_ok(), "{what}");
    }
}

#[test]
fn another_tab_that_was_open_before_does_not_write_either() {
    let (shelf, yard, _) = shown();
    let mut tab = Cabinet::open(shelf.clone()).unwrap();
    tab.cabinet.set_only_shows(false).unwrap();
    let other = Cabinet::open(shelf.clone()).unwrap();
    other.cabinet.set_only_shows(true).unwrap();
    let (_, entries) = everything(&yard).swap_remove(0);
    assert_eq!(tab.cabinet.save(&mut tab.book, entries), Err(NotSaved::OnlyShows));
}

#[test]
fn the_demonstration_stays_in_while_the_phone_only_shows_the_book() {
    let (shelf, _, mut opened) = shown();
    opened.cabinet.set_only_shows(false).unwrap();
    let entries = demo(day("2026-05-15"), "Europe/Berlin", 120, &Unicode).unwrap();
    opened.cabinet.save(&mut opened.book, entries).unwrap();
    opened.cabinet.set_only_shows(true).unwrap();
    let before = shelf.texts();
    assert_eq!(opened.cabinet.remove_demo(&mut opened.book), Err(ShelfError::Other));
    assert_eq!(shelf.texts(), before);
    assert!(opened.book.log().entries().any(Entry::is_demo));
}

#[test]
fn what_one_copy_has_lost_comes_back_from_the_other_all_the_same() {
    let (shelf, yard, _) = shown();
    let second: Vec<(String, String)> =
        shelf.texts().into_iter().filter(|(key, _)| key.starts_with("beetle-almanac:page:")).collect();
    let cleared = Rc::new(Memory::new());
    let mut opened = Cabinet::open(cleared.clone()).unwrap();
    opened.cabinet.set_only_shows(true).unwrap();
    let found = opened.cabinet.reconcile(&mut opened.book, second).unwrap();
    assert_eq!((found.restored, found.refused), (yard.book.log().len(), false));
    assert_eq!(opened.book, yard.book);
    assert_eq!(Cabinet::open(cleared).unwrap().book, yard.book);
}

#[test]
fn a_phone_that_does_not_take_the_switch_goes_on_as_before() {
    let (shelf, _, opened) = shown();
    opened.cabinet.set_only_shows(false).unwrap();
    shelf.set_faults(Faults { quota: Some(10), ..Faults::default() });
    assert!(opened.cabinet.set_only_shows(true).is_err());
    assert!(!opened.cabinet.only_shows());
}
