//! Two entries of one name with different words, as only damage can leave them.

use crate::Yard;
use crate::phone::Memory;
use crate::support::{day, pen};
use beetle_almanac::app::aside::Why;
use beetle_almanac::app::cabinet::Cabinet;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Entry, SkipReason, What};
use beetle_almanac::book::id::EntryId;
use std::rc::Rc;

fn note(yard: &Yard, on: &str, text: &str) -> Entry {
    Entry {
        id: EntryId::parse("zz-77").unwrap(),
        day: day(on),
        at: pen("aa", day(on)).at,
        by: None,
        yard: Some(yard.id.clone()),
        replaces: None,
        bulk: None,
        what: What::Note { hive: None, text: text.to_owned() },
    }
}

/// A shelf with a yard on it, and notes of one name on two days.
fn shelf(yard: &Yard, notes: [(&str, &str); 2]) -> Rc<Memory> {
    let shelf = Rc::new(Memory::new());
    let mut book = Book::default();
    let mut cabinet = Cabinet::open(shelf.clone()).unwrap().cabinet;
    cabinet.save(&mut book, yard.book.log().entries().cloned().collect()).unwrap();
    for (on, text) in notes {
        let other = Rc::new(Memory::new());
        let mut cabinet = Cabinet::open(other.clone()).unwrap().cabinet;
        cabinet.save(&mut Book::default(), vec![note(yard, on, text)]).unwrap();
        for (key, text) in other.texts() {
            shelf.lay(&key, &text);
        }
    }
    shelf
}

fn holding(shelf: &Memory, words: &str) -> usize {
    shelf.texts().values().filter(|text| text.contains(words)).count()
}

#[test]
fn the_page_whose_words_do_not_count_is_shown_and_never_written_over() {
    let yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let shelf = shelf(&yard, [("2026-05-03", "first words"), ("2026-05-04", "second words")]);
    for round in 1..=3 {
        let mut opened = Cabinet::open(shelf.clone()).unwrap();
        assert_eq!(opened.asides.len(), 1, "round {round}");
        assert!(opened.asides[0].raw.contains("second words") && !opened.cabinet.read_only());
        assert_eq!(opened.asides[0].why, Why::Clash, "it can be read");
        let clashes = opened.asides[0].clashes(&opened.book);
        let words = |entry: &Entry| match &entry.what {
            What::Note { text, .. } => text.clone(),
            other => panic!("{other:?}"),
        };
        let said: Vec<_> = clashes.iter().map(|(here, there)| (words(here), words(there))).collect();
        assert_eq!(said, [("first words".to_owned(), "second words".to_owned())], "and what the two say");
        for on in ["2026-05-03", "2026-05-04"].map(day) {
            let skip =
                opened.book.skip(&pen("aa", on), on, on, &yard.hive("1"), SkipReason::Temper, None).unwrap();
            opened.cabinet.save(&mut opened.book, skip).unwrap();
            opened.cabinet.refresh(&mut opened.book).unwrap();
        }
        let again = Cabinet::open(shelf.clone()).unwrap();
        assert_eq!(again.book, opened.book);
        assert_eq!(again.book.log().len(), yard.book.log().len() + 1 + 2 * round);
        assert_eq!((holding(&shelf, "first words"), holding(&shelf, "second words")), (1, 1));
    }
}

/// New lines of a page whose first part cannot be read lie on its second with those that were known: once the first is
/// readable again, both say the same.
#[test]
fn the_same_words_twice_are_no_clash() {
    let yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let shelf = shelf(&yard, [("2026-05-03", "words"), ("2026-05-04", "others")]);
    let page = shelf.texts().into_iter().find(|(_, text)| text.contains("words")).unwrap();
    shelf.lay(&[&page.0, ":2"].concat(), &page.1);
    let opened = Cabinet::open(shelf).unwrap();
    assert_eq!(opened.asides.len(), 1);
    assert!(opened.asides[0].raw.contains("others"));
}
