//! An ordinary day.

use super::{Entries, FORMAT, entries, joined, open, page};
use crate::phone::{Faults, Memory};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::store::shelf::Shelf;
use beetle_almanac::store::{Damage, Format, Found, PageName, Pages, SaveError, ShelfError};
use std::rc::Rc;

#[test]
fn an_entry_that_was_saved_is_there_at_the_next_start() {
    let phone = Memory::new();
    let (mut book, recovery) = open(&phone);
    assert_eq!(recovery, beetle_almanac::store::Recovery::default());
    let saved = book.write(&page("river"), &entries(&["looked"])).unwrap();
    assert_eq!((saved.part, saved.generation), (1, 1));
    assert_eq!(phone.texts().get(&saved.key), Some(&saved.text));
    assert_eq!(phone.texts().len(), 1, "no journal is left");

    let phone = phone.restarted();
    let (mut book, _) = open(&phone);
    assert_eq!(joined(&mut book).get(&page("river")), Some(&entries(&["looked"])));
    assert_eq!(book.write(&page("river"), &entries(&["looked", "oil"])).unwrap().generation, 2);
    assert_eq!(book.write(&page("river"), &entries(&["looked", "oil", "rain"])).unwrap().generation, 3);
}

#[test]
fn pages_come_sorted_and_the_keeper_s_first() {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    let early = Day::from_ymd(2025, 1, 31).unwrap();
    let late = Day::from_ymd(2025, 11, 2).unwrap();
    let names = [
        PageName::keeper(late),
        PageName::yard_on("a", late).unwrap(),
        PageName::yard_on("a-1", early).unwrap(),
        PageName::yard_on("b", early).unwrap(),
    ];
    let pages: Vec<_> = names.iter().rev().map(|name| (name.clone(), entries(&["x"]))).collect();
    assert_eq!(book.write_many(&pages).unwrap().len(), 4);
    let read: Vec<PageName> = book.read_all().unwrap().pages.into_iter().map(|page| page.name).collect();
    assert_eq!(read, names);
}

#[test]
fn one_page_is_read_alone_and_not_its_neighbours() {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    for yard in ["river", "river-2", "ri"] {
        book.write(&page(yard), &entries(&[yard])).unwrap();
    }
    let read = book.read(&page("river")).unwrap();
    assert_eq!(read.len(), 1);
    assert_eq!(read[0].found, Found::Loaded(entries(&["river"])));
    assert_eq!(book.read(&page("none")).unwrap(), []);
}

#[test]
fn what_other_apps_keep_on_the_origin_is_not_read_and_not_touched() {
    let phone = Memory::new();
    let foreign = ["beetle", "beetle-almanac", "other:page:river:2026-07-14", "beetle-almanac2:page:x"];
    for key in foreign {
        phone.lay(key, "theirs");
    }
    let (mut book, _) = open(&phone);
    book.write(&page("river"), &entries(&["ours"])).unwrap();
    assert_eq!(joined(&mut book).len(), 1);
    assert_eq!(beetle_almanac::store::keys::own(&phone).unwrap().len(), 1);
    for key in foreign {
        assert_eq!(phone.texts().get(key).map(String::as_str), Some("theirs"));
    }
}

#[test]
fn a_stranger_among_the_pages_is_shown_and_left_alone() {
    let phone = Memory::new();
    phone.lay("beetle-almanac:page:river:someday", "?");
    let (mut book, _) = open(&phone);
    let shelves = book.read_all().unwrap();
    assert_eq!(shelves.pages, []);
    assert_eq!(shelves.strangers[0].raw, "?");
    book.write(&page("river"), &entries(&["looked"])).unwrap();
    assert_eq!(phone.texts().get("beetle-almanac:page:river:someday").map(String::as_str), Some("?"));
}

#[test]
fn an_entry_that_could_not_be_read_again_is_not_written() {
    // A number that is none becomes `null` in JSON, and `null` is no number.
    let phone = Memory::new();
    let format: Format<Vec<f64>> = Format::new(&[], |_| true);
    let (mut book, _) = Pages::open(&phone, format).unwrap();
    book.write(&page("river"), &vec![1.5]).unwrap();
    let before = phone.texts();
    let error = book.write(&page("river"), &vec![1.5, f64::NAN]).unwrap_err();
    assert_eq!(error, SaveError::Unwritable { name: page("river"), why: Damage::Payload });
    assert_eq!(phone.texts(), before);
}

#[test]
fn a_page_that_says_what_cannot_be_is_not_written() {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    let error = book.write(&page("river"), &Entries::new()).unwrap_err();
    assert_eq!(error, SaveError::Unwritable { name: page("river"), why: Damage::Invalid });
    assert!(phone.texts().is_empty());
}

#[test]
fn the_same_page_twice_in_one_save_is_refused() {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    let twice = [(page("river"), entries(&["a"])), (page("river"), entries(&["b"]))];
    assert_eq!(book.write_many(&twice), Err(SaveError::NamedTwice(page("river"))));
    assert_eq!(book.write_many(&[]), Ok(Vec::new()));
    assert!(phone.texts().is_empty());
}

#[test]
fn a_phone_that_keeps_nothing_says_so() {
    let phone = Memory::new();
    phone.set_faults(Faults { denied: true, ..Faults::default() });
    assert_eq!(Pages::open(&phone, FORMAT).err(), Some(ShelfError::Denied));

    phone.set_faults(Faults::default());
    let (mut book, _) = open(&phone);
    phone.set_faults(Faults { denied: true, ..Faults::default() });
    assert_eq!(book.read_all().err(), Some(ShelfError::Denied));
    let Err(SaveError::NotSaved { why, unsaved }) = book.write(&page("river"), &entries(&["looked"])) else {
        panic!("nothing can be saved")
    };
    assert_eq!(why, ShelfError::Denied);
    assert_eq!((unsaved[0].name.clone(), unsaved[0].payload.as_str()), (page("river"), "[\"looked\"]"));
}

#[test]
fn the_app_can_choose_its_shelf_while_it_runs() {
    use beetle_almanac::store::{Desk, Shelf, Slot};
    let shelf: Rc<dyn Shelf> = Rc::new(Memory::new());
    let (mut book, _) = Pages::open(Rc::clone(&shelf), FORMAT).unwrap();
    book.write(&page("river"), &entries(&["looked"])).unwrap();
    let desk = Desk::new(Rc::clone(&shelf));
    let format: Format<u32> = Format::new(&[], |_| true);
    assert_eq!(desk.write(Slot::Meta, &format, &5), Ok(1));
    assert_eq!(desk.read(Slot::Meta, &format), Ok(Found::Loaded(5)));
    assert_eq!(book.shelf().keys().unwrap().len(), 2);
}

#[test]
fn a_page_that_vanished_or_was_damaged_counts_as_changed_until_it_is_as_it_was() {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    let saved = book.write(&page("river"), &entries(&["looked"])).unwrap();
    book.write(&page("hill"), &entries(&["oil"])).unwrap();
    assert_eq!(book.changed(), Ok(false));
    phone.remove(&saved.key).unwrap();
    assert_eq!(book.changed(), Ok(true));
    phone.put(&saved.key, "torn").unwrap();
    for _ in 0..2 {
        // Read or not, it may be mended by then.
        assert_eq!(book.changed(), Ok(true));
        book.read_all().unwrap();
    }
    phone.put(&saved.key, &saved.text).unwrap();
    book.read_all().unwrap();
    assert_eq!(book.changed(), Ok(false));
}
