//! What the keeper wrote down as bought and used up, and what of it is in store.

use crate::Yard;
use crate::support::{day, pen};
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::store_room::{Held, StoreRoom};

const TRAP: u8 = 0;
const OIL: u8 = 1;
const BAIT: u8 = 2;

/// A stock record: item, change, place of its unit, place of its sort, good until.
fn stock(yard: &mut Yard, on: &str, item: &str, change: (i32, u8), sort: Option<u8>, until: Option<&str>) {
    let mut record = Record::empty(Blank::Stock, Vec::new());
    let number = Decimal::whole(change.0.unsigned_abs());
    let number = if change.0 < 0 { number.negative() } else { number };
    for (field, answer) in Blank::Stock.fields().iter().zip(&mut record.answers) {
        *answer = match field.name {
            "item" => Some(Answer::Text(item.to_owned())),
            "change" => Some(Answer::Number(number, change.1)),
            "sort" => sort.map(Answer::Word),
            "good_until" => until.map(|until| Answer::Day(day(until))),
            _ => None,
        };
    }
    let entries = yard.book.record(&pen("aa", day(on)), day(on), day(on), None, record).unwrap();
    yard.book.add(entries);
}

fn traps(yard: &Yard, on: &str, name: &str) -> u32 {
    StoreRoom::of(yard.book.standing(), day(on), false).traps(&|item| item == name).pieces()
}

fn oil(yard: &Yard, on: &str) -> Option<Held> {
    StoreRoom::of(yard.book.standing(), day(on), false).oil()
}

#[test]
fn a_pack_was_bought_some_broke_and_the_rest_is_in_store() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    assert_eq!((traps(&yard, "2026-07-01", "slot trap"), oil(&yard, "2026-07-01")), (0, None));
    stock(&mut yard, "2026-07-02", "slot trap", (12, 0), Some(TRAP), None);
    stock(&mut yard, "2026-07-04", "slot trap", (-3, 0), Some(TRAP), None);
    stock(&mut yard, "2026-07-04", "floor trap", (5, 0), Some(TRAP), None);
    assert_eq!(traps(&yard, "2026-07-04", "slot trap"), 9);
    assert_eq!(traps(&yard, "2026-07-03", "slot trap"), 12, "as it was the day before");
    assert_eq!(traps(&yard, "2026-07-01", "slot trap"), 0);
    stock(&mut yard, "2026-07-05", "slot trap", (-30, 0), Some(TRAP), None);
    assert_eq!(traps(&yard, "2026-07-05", "slot trap"), 0, "never below nothing");
    stock(&mut yard, "2026-07-06", "slot trap", (2, 0), Some(TRAP), None);
    assert_eq!(traps(&yard, "2026-07-06", "slot trap"), 2, "and what comes after counts whole");
    stock(&mut yard, "2026-07-07", "slot trap", (-4, 0), Some(TRAP), None);
    stock(&mut yard, "2026-07-07", "slot trap", (12, 0), Some(TRAP), None);
    assert_eq!(
        traps(&yard, "2026-07-07", "slot trap"),
        10,
        "used before the purchase of the day was written down"
    );
}

#[test]
fn what_is_of_another_sort_or_of_none_or_in_grams_is_no_trap_and_no_oil() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "slot trap", (12, 0), None, None);
    stock(&mut yard, "2026-07-02", "slot trap", (12, 3), Some(TRAP), None);
    stock(&mut yard, "2026-07-02", "oil", (500, 3), Some(OIL), None);
    stock(&mut yard, "2026-07-02", "pollen", (500, 1), Some(BAIT), None);
    assert_eq!((traps(&yard, "2026-07-02", "slot trap"), oil(&yard, "2026-07-02")), (0, None));
}

#[test]
fn oil_that_is_past_its_day_is_not_counted_and_said() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "rape oil", (2, 2), Some(OIL), Some("2026-09-30"));
    stock(&mut yard, "2026-07-03", "mineral oil", (500, 1), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-09-30"), Some(Held { good: 2500.0, past: 0.0 }));
    assert_eq!(oil(&yard, "2026-10-01"), Some(Held { good: 500.0, past: 2000.0 }));
}

#[test]
fn what_spoils_first_was_used_first_and_what_had_spoiled_last() {
    let mut yard = Yard::new(&["1"], day("2026-01-01"));
    let ml = |change| (change, 1);
    stock(&mut yard, "2026-01-02", "oil", ml(1000), Some(OIL), Some("2026-06-30"));
    stock(&mut yard, "2026-01-03", "oil", ml(1000), Some(OIL), Some("2027-06-30"));
    stock(&mut yard, "2026-02-01", "oil", ml(-400), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-01"), Some(Held { good: 1000.0, past: 600.0 }));
    // The old bottle stands at the back of the shed: what is used now is of the new one.
    stock(&mut yard, "2026-07-02", "oil", ml(-300), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-02"), Some(Held { good: 700.0, past: 600.0 }));
    stock(&mut yard, "2026-07-03", "oil", ml(500), Some(OIL), Some("2026-12-31"));
    stock(&mut yard, "2026-07-04", "oil", ml(-200), Some(OIL), Some("2027-06-30"));
    assert_eq!(oil(&yard, "2027-01-01"), Some(Held { good: 500.0, past: 1100.0 }), "of the lot it names");
}
