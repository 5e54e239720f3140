//! Harvest lots: which products were in their hives before the bees were off, and how long the supers waited.

use crate::Yard;
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::app::ledger::history::Counts;
use beetle_almanac::app::ledger::papers::packet::{Part, lines};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Ending, Entry, What};
use beetle_almanac::book::id::{EntryId, ThingId};
use beetle_almanac::book::lot::{Lot, Wait, minutes};
use beetle_almanac::book::record::{Answer, Blank, ClockTime, Record, lot as number};

fn put(record: &mut Record, name: &str, answer: Answer) {
    let at = record.blank.fields().iter().position(|field| field.name == name).unwrap();
    record.answers[at] = Some(answer);
}

fn time(text: &str) -> ClockTime {
    ClockTime::parse(text).unwrap()
}

fn product(hives: Vec<ThingId>, end: Option<&str>, wait: u32) -> Record {
    let mut record = Record::empty(Blank::Product, hives);
    for (name, words) in [("product", "Strips"), ("amount", "2 each"), ("who", "the keeper")] {
        put(&mut record, name, Answer::Text(words.to_owned()));
    }
    put(&mut record, "interval_days", Answer::Number(Decimal::whole(wait), 0));
    if let Some(end) = end {
        put(&mut record, "end", Answer::Day(day(end)));
    }
    record
}

fn harvest(hives: Vec<ThingId>, off: &str) -> Record {
    let mut record = Record::empty(Blank::Harvest, hives);
    put(&mut record, "bees_off", Answer::Time(time(off)));
    record
}

/// Written by `writer` on `on`.
fn write(book: &mut Book, writer: &str, on: &str, yard: &ThingId, record: Record) -> Entry {
    let on = day(on);
    let written = book.record(&pen(writer, on), on, on, Some(yard), record).unwrap();
    let entry = written[0].clone();
    book.add(written);
    entry
}

fn three() -> Yard {
    Yard::new(&["1", "2", "3"], day("2026-05-01"))
}

fn lot(book: &Book, entry: &Entry) -> Lot {
    Lot::of(book, &book.standing().records[&entry.id]).unwrap()
}

/// Each version of a product of the lot: how it counts, and how the wait stood.
fn told(book: &Book, entry: &Entry) -> Vec<(EntryId, bool, Wait)> {
    let lot = lot(book, entry);
    let mut told = Vec::new();
    for line in lines(book, Part::Products, Day::FIRST, lot.off, false) {
        if let Some(record) = lot.product(book.standing(), line.entry) {
            let counts = line.counts == Counts::Yes;
            told.push((line.entry.id.clone(), counts, lot.wait(record).unwrap()));
        }
    }
    told
}

/// The wait after a product given on 1 July, when the bees of the same hive were off on 14 July at nine.
fn wait(end: Option<&str>, days: u32) -> Wait {
    let mut yard = three();
    let (id, hive) = (yard.id.clone(), yard.hive("1"));
    write(&mut yard.book, "aa", "2026-07-01", &id, product(vec![hive.clone()], end, days));
    let lot = write(&mut yard.book, "aa", "2026-07-14", &id, harvest(vec![hive], "2026-07-14T09:00"));
    told(&yard.book, &lot)[0].2
}

#[test]
fn the_wait_was_over_before_the_bees_were_off() {
    assert_eq!(wait(Some("2026-07-03"), 7), Wait::Over(day("2026-07-10")));
    assert_eq!(wait(Some("2026-07-01"), 0), Wait::Over(day("2026-07-01")));
}

#[test]
fn half_of_the_wait_was_over_when_the_bees_were_off() {
    assert_eq!(wait(Some("2026-07-07"), 14), Wait::Until(day("2026-07-21")));
    assert_eq!(wait(Some("2026-07-07"), 8), Wait::Until(day("2026-07-15")));
}

#[test]
fn the_wait_ended_on_the_day_the_bees_were_off_and_nobody_knows_the_hour() {
    assert_eq!(wait(Some("2026-07-07"), 7), Wait::SameDay(day("2026-07-14")));
}

#[test]
fn the_product_ended_only_after_the_bees_were_off() {
    assert_eq!(wait(Some("2026-07-20"), 0), Wait::Until(day("2026-07-20")));
    assert_eq!(wait(None, 0), Wait::StillIn);
}

#[test]
fn other_hives_and_later_products_are_not_of_the_lot() {
    let mut yard = three();
    let (id, one, two) = (yard.id.clone(), yard.hive("1"), yard.hive("2"));
    write(&mut yard.book, "aa", "2026-07-01", &id, product(vec![two.clone()], None, 5));
    let same_day = product(vec![one.clone(), two], None, 5);
    let same_day = write(&mut yard.book, "aa", "2026-07-14", &id, same_day);
    let lot = write(&mut yard.book, "aa", "2026-07-14", &id, harvest(vec![one.clone()], "2026-07-14T09:00"));
    write(&mut yard.book, "aa", "2026-07-15", &id, product(vec![one], None, 5));
    let told: Vec<EntryId> = told(&yard.book, &lot).into_iter().map(|(id, ..)| id).collect();
    assert_eq!(told, [same_day.id]);
}

#[test]
fn a_lot_that_names_no_hive_is_of_every_hive_that_stood_in_the_yard() {
    let mut yard = three();
    let (id, two) = (yard.id.clone(), yard.hive("2"));
    let given = write(&mut yard.book, "aa", "2026-06-01", &id, product(vec![two.clone()], None, 5));
    let ended = day("2026-06-10");
    let end = yard.book.end_hive(&pen("aa", ended), ended, ended, &two, Ending::Dead, None).unwrap();
    yard.book.add(end);
    let entry = write(&mut yard.book, "aa", "2026-07-14", &id, harvest(Vec::new(), "2026-07-14T09:00"));
    assert_eq!(lot(&yard.book, &entry).hives, [yard.hive("1"), yard.hive("3")]);
    // What was given in this yard counts, though the hive has died since: nobody said which hives the honey is from.
    assert_eq!(told(&yard.book, &entry), [(given.id, true, Wait::StillIn)]);
}

#[test]
fn a_struck_product_and_a_corrected_one_are_still_shown_and_do_not_count() {
    let mut yard = three();
    let (id, hive) = (yard.id.clone(), yard.hive("1"));
    let struck = write(&mut yard.book, "aa", "2026-06-01", &id, product(vec![hive.clone()], None, 5));
    let first = write(&mut yard.book, "aa", "2026-06-02", &id, product(vec![hive.clone()], None, 5));
    let on = day("2026-07-14");
    let strike = yard.book.strike(&pen("aa", on), on, std::slice::from_ref(&struck.id), &Unicode).unwrap();
    yard.book.add(strike);
    let mended = What::Record(product(vec![hive.clone()], Some("2026-06-20"), 5));
    let mended =
        yard.book.correct(&pen("aa", on), day("2026-06-02"), on, &first.id, mended, &Unicode).unwrap();
    let mended_id = mended[0].id.clone();
    yard.book.add(mended);
    let lot = write(&mut yard.book, "aa", "2026-07-14", &id, harvest(vec![hive], "2026-07-14T09:00"));
    assert_eq!(
        told(&yard.book, &lot),
        [
            (struck.id, false, Wait::StillIn),
            (first.id, false, Wait::StillIn),
            (mended_id, true, Wait::Over(day("2026-06-25"))),
        ]
    );
}

#[test]
fn two_phones_wrote_a_product_and_a_lot_each_and_both_sheets_say_the_same_afterwards() {
    let yard = three();
    let (id, hive) = (yard.id.clone(), yard.hive("1"));
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    let given = write(&mut one, "aa", "2026-07-01", &id, product(vec![hive.clone()], None, 5));
    let first = write(&mut one, "aa", "2026-07-14", &id, harvest(vec![hive.clone()], "2026-07-14T09:00"));
    let second = write(&mut other, "bb", "2026-07-14", &id, harvest(vec![hive], "2026-07-14T09:00"));
    assert!(told(&other, &second).is_empty());
    let (from_one, from_other): (Vec<Entry>, Vec<Entry>) =
        (one.log().entries().cloned().collect(), other.log().entries().cloned().collect());
    one.add(from_other);
    other.add(from_one);
    assert_ne!(number(first.day, &first.id), number(second.day, &second.id));
    for lot in [&first, &second] {
        assert_eq!(told(&one, lot), [(given.id.clone(), true, Wait::StillIn)]);
        assert_eq!(told(&one, lot), told(&other, lot));
    }
}

#[test]
fn hours_go_over_midnight_by_the_clock_of_the_yard_and_never_backwards() {
    assert_eq!(minutes(time("2026-07-14T20:30"), time("2026-07-15T06:05")), Some(9 * 60 + 35));
    assert_eq!(minutes(time("2026-07-14T09:00"), time("2026-07-14T09:00")), Some(0));
    assert_eq!(minutes(time("2026-07-14T09:00"), time("2026-07-14T08:59")), None);
    // 25 October 2026: the clock is put back in Berlin and 25 hours go by. The clock shows 24, and the sheet says that
    // it goes by the clock.
    assert_eq!(minutes(time("2026-10-24T12:00"), time("2026-10-25T12:00")), Some(24 * 60));
}
