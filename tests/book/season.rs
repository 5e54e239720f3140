//! A phone on which some days were saved, in both copies of the book.

use crate::Yard;
use crate::phone::Memory;
use crate::second_copy::{Ended, Second};
use crate::support::{Unicode, day, pen};
use beetle_almanac::app::cabinet::{Cabinet, Opened};
use beetle_almanac::app::reconcile::Reconciled;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Entry, SkipReason};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

pub(crate) type Texts = BTreeMap<String, String>;
pub(crate) type Ids = BTreeSet<String>;

pub(crate) fn ids(book: &Book) -> Ids {
    book.log().entries().map(|entry| entry.id.to_string()).collect()
}

/// A start of the page up to the moment when it has looked at both copies and written to the second.
pub(crate) fn start(shelf: &Rc<Memory>, second: &Second) -> (Opened, Reconciled, Ended) {
    let mut opened = Cabinet::open(shelf.clone()).unwrap();
    let found = opened.cabinet.reconcile(&mut opened.book, second.read()).unwrap();
    let ended = second.take(&mut opened.cabinet);
    (opened, found, ended)
}

pub(crate) fn shelf_of(texts: &Texts) -> Rc<Memory> {
    let shelf = Memory::new();
    for (key, text) in texts {
        shelf.lay(key, text);
    }
    Rc::new(shelf)
}

/// Entries that can be read in these texts.
pub(crate) fn readable(texts: &Texts) -> Ids {
    ids(&Cabinet::open(shelf_of(texts)).unwrap().book)
}

pub(crate) fn pages(mut texts: Texts) -> Texts {
    texts.retain(|key, _| key.starts_with("beetle-almanac:page:"));
    texts
}

/// A phone on which a yard and some days of work were saved, and how both copies looked after each save.
pub(crate) struct Season {
    pub(crate) shelf: Vec<Texts>,
    pub(crate) second: Vec<Texts>,
    pub(crate) known: Vec<Ids>,
}

/// The phone after its last save, and what it knows.
pub(crate) fn phone(saves: i32) -> (Rc<Memory>, Second, Ids) {
    let mut season = season(saves);
    let (shelf, second) = (season.shelf.pop().unwrap(), season.second.pop().unwrap());
    (shelf_of(&shelf), Second::new(second), season.known.pop().unwrap())
}

pub(crate) fn season(saves: i32) -> Season {
    let shelf = Rc::new(Memory::new());
    let second = Second::default();
    let (mut now, _, _) = start(&shelf, &second);
    let mut season =
        Season { shelf: vec![shelf.texts()], second: vec![second.texts()], known: vec![Ids::new()] };
    let yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let mut save = |now: &mut Opened, entries: Vec<Entry>| {
        now.cabinet.save(&mut now.book, entries).unwrap();
        assert_eq!(second.take(&mut now.cabinet), Ended::Done);
        season.shelf.push(shelf.texts());
        season.second.push(second.texts());
        season.known.push(ids(&now.book));
    };
    save(&mut now, yard.book.log().entries().cloned().collect());
    for n in 0..saves {
        // Two pages in turn, and now and then an undo, which writes where the entry lies.
        let on = day("2026-05-15").plus(n % 2);
        let hive = yard.hive(["1", "2", "3"][usize::try_from(n % 3).unwrap()]);
        let entries = if n % 4 == 3 {
            let last = now.book.log().entries().last().unwrap().id.clone();
            now.book.strike(&pen("aa", on), on, &[last], &Unicode).unwrap()
        } else {
            now.book.skip(&pen("aa", on), on, on, &hive, SkipReason::Temper, None).unwrap()
        };
        save(&mut now, entries);
    }
    season
}

/// Looks at both copies, and again: everything is in the book and in both copies, and the second look finds nothing to do.
pub(crate) fn assert_united(shelf: &Rc<Memory>, second: &Second, wanted: &Ids, how: &str) {
    let (now, found, ended) = start(shelf, second);
    assert_eq!((&ids(&now.book), ended, found.refused), (wanted, Ended::Done, false), "{how}");
    assert_eq!(&readable(&shelf.texts()), wanted, "{how}: the first copy");
    assert_eq!(&readable(&pages(second.texts())), wanted, "{how}: the second copy");
    let before = (shelf.texts(), second.texts());
    let (mut again, found, _) = start(shelf, second);
    assert_eq!((found.restored, found.refused), (0, false), "{how}: again");
    assert_eq!((shelf.texts(), second.texts()), before, "{how}: again");
    assert!(again.cabinet.take_outbox().is_empty(), "{how}: again");
    assert_eq!(again.book, now.book, "{how}: again");
}

/// Damaged bytes lie somewhere still.
pub(crate) fn lies(texts: &Texts, raw: &str) -> bool {
    texts.values().any(|text| text == raw)
}
