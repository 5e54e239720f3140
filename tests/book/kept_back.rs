//! Hives handed over without the keeper's notes: what is left of records, and of their corrections.

use crate::Yard;
use crate::record_of_each::filled;
use crate::support::{Unicode, day, pen};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Entry, SkipReason, What};
use beetle_almanac::book::id::{EntryId, ThingId};
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::papers::backup;
use beetle_almanac::papers::pack::{self, Choice, pick};
use beetle_almanac::papers::recover::recover;

fn with(mut record: Record, name: &str, answer: Option<Answer>) -> Record {
    let at = record.blank.fields().iter().position(|field| field.name == name).unwrap();
    record.answers[at] = answer;
    record
}

fn text(words: &str) -> Answer {
    Answer::Text(words.to_owned())
}

struct Hand {
    yard: Yard,
}

impl Hand {
    fn new() -> Hand {
        Hand { yard: Yard::new(&["1", "2"], day("2026-05-01")) }
    }

    fn add(&mut self, on: &str, record: Record) -> EntryId {
        let (on, yard) = (day(on), self.yard.id.clone());
        let written = self.yard.book.record(&pen("aa", on), on, on, Some(&yard), record).unwrap();
        let id = written[0].id.clone();
        self.yard.book.add(written);
        id
    }

    fn correct(&mut self, on: &str, line: &EntryId, record: Record) -> EntryId {
        let (on, what) = (day(on), What::Record(record));
        let written = self.yard.book.correct(&pen("aa", on), on, on, line, what, &Unicode).unwrap();
        let id = written[0].id.clone();
        self.yard.book.add(written);
        id
    }

    /// What another phone gets that had nothing.
    fn over(&self, hives: Vec<ThingId>, yard: bool, notes: bool) -> (Vec<Entry>, Book) {
        let yard = yard.then(|| self.yard.id.clone());
        let picked = pick(self.yard.book.log(), &Choice { hives, yard, since: None, notes });
        let mut there = Book::default();
        there.add(picked.iter().cloned());
        assert!(picked.iter().all(|entry| entry.check().is_ok()));
        (picked, there)
    }

    fn bare(&self) -> Book {
        self.over(Vec::new(), true, false).1
    }
}

fn rain() -> Record {
    Record::empty(Blank::Rain, Vec::new())
}

fn facts() -> Record {
    Record::empty(Blank::YardFacts, Vec::new())
}

#[test]
fn it_rained_and_nothing_more_was_written_down() {
    let mut hand = Hand::new();
    hand.add("2026-05-10", rain());
    hand.add("2026-05-11", with(rain(), "note", Some(text("at last"))));
    let there = hand.bare();
    assert_eq!(there.standing().records_of(Blank::Rain).len(), 2);
    assert!(there.standing().records.values().all(|now| now.record == rain()));
}

#[test]
fn a_record_of_nothing_but_private_words_stays_at_home_with_its_corrections() {
    let mut hand = Hand::new();
    let line = hand.add("2026-05-10", with(facts(), "owner", Some(text("Ann"))));
    hand.correct("2026-05-10", &line, with(facts(), "phone", Some(text("0170 123"))));
    assert!(hand.bare().standing().records.is_empty());
}

#[test]
fn what_she_took_back_in_private_words_does_not_stand_up_on_the_other_phone() {
    let mut hand = Hand::new();
    let both = with(with(facts(), "soil", Some(Answer::Word(0))), "owner", Some(text("Ann")));
    let line = hand.add("2026-05-10", both.clone());
    let again = hand.correct("2026-05-10", &line, with(both, "soil", None));
    let (yard, there) = (hand.yard.id.clone(), hand.bare());
    let soil = |book: &Book| book.standing().facts(Blank::YardFacts, Some(&yard), None).get("soil").cloned();
    assert_eq!((soil(&hand.yard.book), soil(&there)), (None, None));
    // Corrected once more, and the soil is known after all; then it is taken back a second time.
    let known = with(facts(), "soil", Some(Answer::Word(1)));
    let known = hand.correct("2026-05-10", &again, known);
    assert_eq!(soil(&hand.bare()), Some(Answer::Word(1)));
    hand.correct("2026-05-10", &known, with(facts(), "where", Some(text("behind the mill"))));
    assert_eq!(soil(&hand.bare()), None);
    // Whatever comes later brings the words.
    let mut there = hand.bare();
    there.add(hand.yard.book.log().entries().cloned());
    assert_eq!(there, hand.yard.book);
}

/// It names the other hive, which no line of the pack brings: hive 2 would be due at somebody who does not look after it.
#[test]
fn a_product_on_two_hives_is_handed_over_with_one_of_them() {
    let mut hand = Hand::new();
    let (one, two) = (hand.yard.hive("1"), hand.yard.hive("2"));
    let mut product = filled(Blank::Product, &one, &two);
    product = with(product, "end", None);
    let line = hand.add("2026-06-01", product);
    let (picked, mut there) = hand.over(vec![one.clone()], false, true);
    assert_eq!(there.standing().hives.keys().collect::<Vec<_>>(), [&one]);
    assert!(picked.iter().all(|entry| entry.id == line || !entry.concerns(&two)));
    assert!(there.standing().newest_record(Blank::Product, &one).is_some());
    // One line speaks of what is not there, and nothing is refused for it.
    let on = day("2026-06-02");
    let pen = pen("bb", on);
    let yard = Some(&hand.yard.id);
    let written = [
        there.skip(&pen, on, on, &one, SkipReason::Temper, None),
        there.record(&pen, on, on, yard, rain()),
        there.record(&pen, on, on, yard, filled(Blank::Look, &one, &one)),
        there.correct(&pen, on, on, &line, What::Record(named(&there, &line, &one)), &Unicode),
    ];
    assert!(written.iter().all(Result::is_ok), "{written:?}");
    // When hive 2 is handed over in its turn the book is whole.
    there.add(hand.over(vec![two], false, true).0);
    assert_eq!(there, hand.yard.book);
}

/// The record of `line` as it would be kept for that hive alone.
fn named(book: &Book, line: &EntryId, hive: &ThingId) -> Record {
    Record { hives: vec![hive.clone()], ..book.standing().records[line].record.clone() }
}

/// The file of a phone that was handed everything but the notes holds as many lines as this book.
#[test]
fn a_file_without_her_notes_does_not_pass_for_a_backup_of_them() {
    let mut hand = Hand::new();
    hand.add("2026-05-10", with(rain(), "note", Some(text("at last"))));
    let book = &hand.yard.book;
    let opened = |book: &Book, by| {
        pack::open(&backup::write(book.log(), pen("bb", day("2026-05-12")).at, Some(by))).unwrap()
    };
    let there = hand.over(vec![hand.yard.hive("1"), hand.yard.hive("2")], true, false).1;
    let bare = opened(&there, "Ben");
    let union = bare.backup.preview(book);
    assert_eq!((union.new, union.same, union.barer), (0, book.log().len(), 1));
    assert!(bare.is_backup() && !union.is_whole(book.log().len()));
    // With them it does, and a book that took the notes in from it does too.
    let full = opened(book, "Ann");
    assert!(full.is_backup() && full.backup.preview(book).is_whole(book.log().len()));
    let union = full.backup.preview(&there);
    assert!(union.fuller == 1 && union.is_whole(book.log().len()));
    // A line that is in no file is in no backup.
    assert!(!union.is_whole(book.log().len() + 1));
}

#[test]
fn what_was_read_of_a_damaged_file_is_no_backup_when_it_was_saved_and_opened() {
    let hand = Hand::new();
    let at = pen("aa", day("2026-05-12")).at;
    let text = backup::write(hand.yard.book.log(), at, Some("Ann"));
    let copy = recover(&text[..text.len() - 4], at).unwrap();
    let opened = pack::open(&copy.text).unwrap();
    assert_eq!(opened.backup.counts.entries, hand.yard.book.log().len());
    assert!(!opened.is_backup() && pack::open(&text).unwrap().is_backup());
}
