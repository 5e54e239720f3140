//! What the keeper wrote down as bought and used up, and what of it is in store.

use crate::support::{day, pen};
use crate::twins::met;
use crate::{Yard, trap};
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::trap::TrapKind;
use beetle_almanac::book::entry::{Check, Did, NewBox, NewTrap, PlacedTrap, TrapsWent, What};
use beetle_almanac::book::put_in::put_in;
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::store_room::{Held, StoreRoom};

/// The writer of the demonstration.
const DEMO: &str = "demo";
const TRAP: u8 = 0;
const OIL: u8 = 1;
const BAIT: u8 = 2;

/// A stock record: item, change, place of its unit, place of its sort, good until.
pub(crate) fn stock(
    yard: &mut Yard,
    on: &str,
    item: &str,
    change: (i32, u8),
    sort: Option<u8>,
    until: Option<&str>,
) {
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
    held(yard, on, name).pieces()
}

fn held(yard: &Yard, on: &str, name: &str) -> Held {
    let room = StoreRoom::of(yard.book.standing(), day(on), false, &put_in(&yard.book));
    room.traps(&yard.kind(), &|item| item == name)
}

fn oil(yard: &Yard, on: &str) -> Option<(f64, f64)> {
    room_oil(yard, on).map(|held| (held.good, held.past))
}

fn room_oil(yard: &Yard, on: &str) -> Option<Held> {
    StoreRoom::of(yard.book.standing(), day(on), false, &[]).oil()
}

/// Oil taken along and brought home, in millilitres.
fn trip(yard: &mut Yard, on: &str, taken: u32, back: Option<u32>) {
    trip_of(yard, "aa", on, taken, back);
}

fn trip_of(yard: &mut Yard, writer: &str, on: &str, taken: u32, back: Option<u32>) {
    let record = trip_record(taken, back);
    let entries = yard.book.record(&pen(writer, day(on)), day(on), day(on), None, record).unwrap();
    yard.book.add(entries);
}

fn trip_record(taken: u32, back: Option<u32>) -> Record {
    let mut record = Record::empty(Blank::Trip, Vec::new());
    let amount = |number| Some(Answer::Number(Decimal::whole(number), 0));
    for (field, answer) in Blank::Trip.fields().iter().zip(&mut record.answers) {
        *answer = match field.name {
            "oil_taken" => amount(taken),
            "oil_back" => back.and_then(amount),
            // The same traps that the log shows.
            "traps_taken" => amount(40),
            _ => None,
        };
    }
    record
}

/// Traps put into the first box of a hive.
fn into(yard: &mut Yard, tag: &str, on: &str, count: usize) {
    let (on, hive, kind) = (day(on), yard.hive(tag), yard.kind());
    let now = &yard.book.standing().hives[&hive].boxes[0];
    let (part, spot) = (now.id.clone(), now.traps[0].spot);
    let placed = PlacedTrap { part, trap: NewTrap { kind, spot, level: None } };
    let what = What::TrapsOn { hive, traps: vec![placed; count] };
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
    yard.book.add(entries);
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
    assert_eq!(oil(&yard, "2026-09-30"), Some((2500.0, 0.0)));
    assert_eq!(oil(&yard, "2026-10-01"), Some((500.0, 2000.0)));
}

#[test]
fn what_spoils_first_was_used_first_and_what_had_spoiled_last() {
    let mut yard = Yard::new(&["1"], day("2026-01-01"));
    let ml = |change| (change, 1);
    stock(&mut yard, "2026-01-02", "oil", ml(1000), Some(OIL), Some("2026-06-30"));
    stock(&mut yard, "2026-01-03", "oil", ml(1000), Some(OIL), Some("2027-06-30"));
    stock(&mut yard, "2026-02-01", "oil", ml(-400), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-01"), Some((1000.0, 600.0)));
    // The old bottle stands at the back of the shed: what is used now is of the new one.
    stock(&mut yard, "2026-07-02", "oil", ml(-300), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-02"), Some((700.0, 600.0)));
    stock(&mut yard, "2026-07-03", "oil", ml(500), Some(OIL), Some("2026-12-31"));
    stock(&mut yard, "2026-07-04", "oil", ml(-200), Some(OIL), Some("2027-06-30"));
    assert_eq!(oil(&yard, "2027-01-01"), Some((500.0, 1100.0)), "of the lot it names");
}

/// Good, by the records, put into hives since, and that beyond what was there.
fn sum(yard: &Yard, on: &str) -> (f64, f64, f64, f64) {
    let held = held(yard, on, "Slim");
    assert!((held.written - held.gone - held.good - held.past).abs() < 1e-9, "{held:?}");
    (held.good, held.written, held.gone, held.beyond)
}

#[test]
fn forty_were_counted_and_twelve_put_into_hives_since() {
    let mut yard = Yard::new(&["1", "2"], day("2026-10-01"));
    into(&mut yard, "1", "2026-11-02", 2);
    stock(&mut yard, "2026-11-03", "Slim", (40, 0), Some(TRAP), None);
    assert_eq!(sum(&yard, "2026-11-03"), (40.0, 40.0, 0.0, 0.0));
    into(&mut yard, "1", "2026-11-03", 3);
    assert_eq!(sum(&yard, "2026-11-03"), (40.0, 40.0, 0.0, 0.0), "counted after the work of its day");
    into(&mut yard, "1", "2026-11-10", 7);
    into(&mut yard, "2", "2026-11-11", 5);
    // The trip of that day carried the same traps.
    trip(&mut yard, "2026-11-11", 500, Some(100));
    assert_eq!(sum(&yard, "2026-11-12"), (28.0, 40.0, 12.0, 0.0));
    assert_eq!(sum(&yard, "2026-11-10"), (33.0, 40.0, 7.0, 0.0), "as it was between");
    assert_eq!(held(&yard, "2026-11-12", "Slim").since, Some(day("2026-11-03")));
    into(&mut yard, "2", "2026-11-13", 30);
    assert_eq!(sum(&yard, "2026-11-13"), (0.0, 40.0, 40.0, 2.0), "never below nothing");
    stock(&mut yard, "2026-11-14", "Slim", (10, 0), Some(TRAP), None);
    assert_eq!(sum(&yard, "2026-11-14"), (10.0, 50.0, 40.0, 0.0), "and what comes after counts whole");
}

#[test]
fn full_traps_that_are_thrown_away_take_new_ones_and_those_used_again_only_where_one_was_missing() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "Slim", (40, 0), Some(TRAP), None);
    yard.log("1", day("2026-07-09"), Did::ToppedUp, (None, Some(50)));
    assert_eq!(sum(&yard, "2026-07-09").2.to_string(), "0");
    yard.log("1", day("2026-07-16"), Did::Replaced, (None, Some(50)));
    assert_eq!(sum(&yard, "2026-07-16"), (36.0, 40.0, 4.0, 0.0));

    let mut yard = Yard::with(&["1"], day("2026-07-01"), &TrapKind { reusable: true, ..trap() });
    stock(&mut yard, "2026-07-02", "Slim", (40, 0), Some(TRAP), None);
    yard.log("1", day("2026-07-09"), Did::Replaced, (None, Some(50)));
    assert_eq!(sum(&yard, "2026-07-09"), (40.0, 40.0, 0.0, 0.0), "emptied and put back");
    yard.log("1", day("2026-07-16"), Did::Missing, (None, None));
    yard.log("1", day("2026-07-17"), Did::Replaced, (None, Some(50)));
    assert_eq!(sum(&yard, "2026-07-17"), (36.0, 40.0, 4.0, 0.0));
}

#[test]
fn two_phones_wrote_down_one_and_the_same_new_traps() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "Slim", (40, 0), Some(TRAP), None);
    let on = day("2026-07-16");
    let hive = yard.hive("1");
    let work =
        Check { hive, traps: None, did: Did::Replaced, before: None, after: None, count: None, note: None };
    let one = yard.book.check(&pen("aa", on), on, on, work.clone()).unwrap();
    let other = yard.book.check(&pen("bb", on), on, on, work).unwrap();
    yard.book.add(one);
    yard.book.add(other);
    assert_eq!(yard.book.standing().hives[&yard.hive("1")].doubles.len(), 1);
    assert_eq!(sum(&yard, "2026-07-16"), (36.0, 40.0, 4.0, 0.0));
}

#[test]
fn what_she_wrote_down_as_used_is_what_went_into_the_hives() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "Slim", (40, 0), Some(TRAP), None);
    into(&mut yard, "1", "2026-07-05", 12);
    stock(&mut yard, "2026-07-06", "Slim", (-3, 0), Some(TRAP), None);
    stock(&mut yard, "2026-07-06", "Slim", (-9, 0), Some(TRAP), None);
    assert_eq!(sum(&yard, "2026-07-06"), (28.0, 28.0, 0.0, 0.0), "nothing twice");
    // Four broke later, when nothing had gone in since.
    stock(&mut yard, "2026-07-09", "Slim", (-4, 0), Some(TRAP), None);
    assert_eq!(sum(&yard, "2026-07-09"), (24.0, 24.0, 0.0, 0.0));
    into(&mut yard, "1", "2026-07-10", 5);
    assert_eq!(sum(&yard, "2026-07-10"), (19.0, 24.0, 5.0, 0.0));
    stock(&mut yard, "2026-07-11", "Slim", (-2, 0), Some(TRAP), None);
    stock(&mut yard, "2026-07-20", "Slim", (-2, 0), Some(TRAP), None);
    assert_eq!(
        sum(&yard, "2026-07-20"),
        (19.0, 20.0, 1.0, 0.0),
        "four of the five that went in, on two evenings"
    );
}

#[test]
fn what_she_wrote_down_in_the_evening_is_the_work_of_that_day() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "Slim", (40, 0), Some(TRAP), None);
    stock(&mut yard, "2026-07-05", "Slim", (-12, 0), Some(TRAP), None);
    into(&mut yard, "1", "2026-07-05", 12);
    assert_eq!(sum(&yard, "2026-07-05"), (28.0, 28.0, 0.0, 0.0));
}

#[test]
fn traps_that_came_out_of_hives_go_in_first() {
    let mut yard = Yard::with(&["1", "2"], day("2026-07-01"), &TrapKind { reusable: true, ..trap() });
    stock(&mut yard, "2026-07-02", "Slim", (40, 0), Some(TRAP), None);
    let (on, hive) = (day("2026-07-05"), yard.hive("1"));
    let traps = yard.book.standing().hives[&hive].traps().take(3).map(|trap| trap.id.clone()).collect();
    let what = What::TrapsOff { hive, traps, went: TrapsWent::Stock };
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
    yard.book.add(entries);
    into(&mut yard, "2", "2026-07-06", 5);
    assert_eq!(sum(&yard, "2026-07-06"), (38.0, 40.0, 2.0, 0.0));
}

#[test]
fn oil_that_trips_used_since_it_was_bought_is_no_longer_there() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    trip(&mut yard, "2026-07-01", 500, Some(100));
    stock(&mut yard, "2026-07-02", "rape oil", (2, 2), Some(OIL), Some("2026-09-30"));
    trip(&mut yard, "2026-07-02", 500, Some(100));
    assert_eq!(oil(&yard, "2026-07-02"), Some((2000.0, 0.0)), "of the evening");
    trip(&mut yard, "2026-07-09", 500, Some(270));
    trip(&mut yard, "2026-07-16", 500, None);
    let held = room_oil(&yard, "2026-07-16").unwrap();
    assert_eq!((held.good, held.written, held.gone, held.unknown), (1770.0, 2000.0, 230.0, 1));
    assert_eq!(oil(&yard, "2026-10-01"), Some((0.0, 1770.0)));
    // She takes the same oil off herself.
    stock(&mut yard, "2026-07-17", "rape oil", (-230, 1), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-17"), Some((1770.0, 0.0)));
}

#[test]
fn oil_found_in_the_shed_past_its_day_is_written_down_and_not_counted() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-10", "rape oil", (500, 1), Some(OIL), Some("2026-03-31"));
    stock(&mut yard, "2026-07-10", "rape oil", (200, 1), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-10"), Some((200.0, 500.0)));
}

#[test]
fn oil_that_a_trip_used_on_the_day_of_a_later_purchase_came_out_of_that_purchase() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "oil", (100, 1), Some(OIL), None);
    trip(&mut yard, "2026-07-10", 500, Some(200));
    let before = room_oil(&yard, "2026-07-10").unwrap();
    assert_eq!((before.good, before.gone, before.beyond), (0.0, 100.0, 200.0), "200 mL nobody wrote down");
    stock(&mut yard, "2026-07-10", "oil", (150, 1), Some(OIL), None);
    let some = room_oil(&yard, "2026-07-10").unwrap();
    assert_eq!((some.good, some.written, some.gone, some.beyond), (0.0, 250.0, 250.0, 50.0), "50 still");
    stock(&mut yard, "2026-07-10", "oil", (850, 1), Some(OIL), None);
    let held = room_oil(&yard, "2026-07-10").unwrap();
    assert_eq!((held.good, held.written, held.gone, held.beyond), (800.0, 1100.0, 300.0, 0.0));
    // The same 300 mL, which she writes down in the evening or the day after.
    for on in ["2026-07-10", "2026-07-11"] {
        stock(&mut yard, on, "oil", (-150, 1), Some(OIL), None);
    }
    let held = room_oil(&yard, "2026-07-11").unwrap();
    assert_eq!((held.good, held.written, held.gone), (800.0, 800.0, 0.0));
}

#[test]
fn she_wrote_down_what_the_trip_used_before_she_wrote_down_the_purchase_of_the_day() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "oil", (100, 1), Some(OIL), None);
    trip(&mut yard, "2026-07-10", 500, Some(200));
    stock(&mut yard, "2026-07-10", "oil", (-300, 1), Some(OIL), None);
    stock(&mut yard, "2026-07-10", "oil", (1000, 1), Some(OIL), None);
    let held = room_oil(&yard, "2026-07-10").unwrap();
    assert_eq!(
        (held.good, held.written, held.gone, held.beyond),
        (800.0, 800.0, 0.0, 0.0),
        "once, not twice"
    );
}

#[test]
fn what_a_trip_used_on_an_earlier_day_did_not_come_out_of_a_purchase_after_it() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "oil", (100, 1), Some(OIL), None);
    trip(&mut yard, "2026-07-09", 500, Some(200));
    stock(&mut yard, "2026-07-10", "oil", (1000, 1), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-10"), Some((1000.0, 0.0)));
}

#[test]
fn a_dozen_was_bought_on_the_day_on_which_five_went_in() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "Slim", (2, 0), Some(TRAP), None);
    into(&mut yard, "1", "2026-07-10", 5);
    assert_eq!(sum(&yard, "2026-07-10"), (0.0, 2.0, 2.0, 3.0));
    stock(&mut yard, "2026-07-10", "Slim", (12, 0), Some(TRAP), None);
    assert_eq!(sum(&yard, "2026-07-10"), (9.0, 14.0, 5.0, 0.0));
}

#[test]
fn the_oil_of_one_trip_that_she_wrote_down_on_two_evenings_is_taken_off_once() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "oil", (1000, 1), Some(OIL), None);
    trip(&mut yard, "2026-07-03", 500, Some(200));
    stock(&mut yard, "2026-07-04", "oil", (-200, 1), Some(OIL), None);
    stock(&mut yard, "2026-07-05", "oil", (-100, 1), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-05"), Some((700.0, 0.0)));
    stock(&mut yard, "2026-07-06", "oil", (-50, 1), Some(OIL), None);
    assert_eq!(oil(&yard, "2026-07-06"), Some((650.0, 0.0)), "spilled besides");
}

#[test]
fn a_trip_that_is_still_to_come_and_those_of_the_invented_yard_used_none_of_her_oil() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "oil", (1000, 1), Some(OIL), None);
    trip(&mut yard, "2026-07-09", 500, Some(200));
    assert_eq!(oil(&yard, "2026-07-08"), Some((1000.0, 0.0)), "as it was the day before");
    assert_eq!(oil(&yard, "2026-07-09"), Some((700.0, 0.0)));
    trip_of(&mut yard, DEMO, "2026-07-10", 500, Some(0));
    assert_eq!(oil(&yard, "2026-07-10"), Some((700.0, 0.0)));
}

#[test]
fn a_trip_that_brought_home_more_oil_than_it_took_is_one_whose_oil_nobody_can_tell() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "oil", (1000, 1), Some(OIL), None);
    // The page refuses it; a file made elsewhere may hold it.
    let on = day("2026-07-09");
    let mut entries = yard.book.record(&pen("bb", on), on, on, None, trip_record(500, Some(100))).unwrap();
    entries[0].what = What::Record(trip_record(100, Some(500)));
    yard.book.add(entries);
    let held = room_oil(&yard, "2026-07-09").unwrap();
    assert_eq!((held.good, held.gone, held.unknown), (1000.0, 0.0, 1));
    trip(&mut yard, "2026-07-10", 500, Some(500));
    assert_eq!(room_oil(&yard, "2026-07-10").unwrap().unknown, 1, "all brought home is known");
}

#[test]
fn traps_for_a_box_that_another_phone_took_off_are_still_in_store() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    stock(&mut yard, "2026-07-02", "Slim", (40, 0), Some(TRAP), None);
    let (on, hive) = (day("2026-07-05"), yard.hive("1"));
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let mut other = yard.book.clone();
    let off = other.box_off(&pen("bb", on), on, on, &hive, &part, TrapsWent::Lost).unwrap();
    other.add(off);
    // This phone had not heard of it.
    into(&mut yard, "1", "2026-07-06", 5);
    assert_eq!(sum(&yard, "2026-07-06").2.to_string(), "5");
    yard.book.add(other.log().entries().cloned());
    assert_eq!(sum(&yard, "2026-07-06"), (40.0, 40.0, 0.0, 0.0));
}

/// Hive 12 was written down on two phones with two traps each, and they put in three and five more and a box.
#[test]
fn what_was_told_of_a_hive_that_is_another_one_took_nothing_out_of_the_store() {
    let met = met();
    let one = met.one();
    let mut yard = met.yard;
    yard.book = met.book;
    stock(&mut yard, "2026-05-01", "Slim", (40, 0), Some(TRAP), None);
    let kind = yard.kind();
    for (hive, count) in [(&met.first, 3), (&met.second, 5)] {
        let on = day("2026-05-20");
        let now = &yard.book.standing().hives[hive].boxes[0];
        let (part, spot) = (now.id.clone(), now.traps[0].spot);
        let placed = PlacedTrap { part, trap: NewTrap { kind: kind.clone(), spot, level: None } };
        let what = What::TrapsOn { hive: hive.clone(), traps: vec![placed.clone(); count] };
        let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
        yard.book.add(entries);
        let part = NewBox { depth: BoxDepth::Deep, wants: 2, traps: vec![placed.trap; 2] };
        let what = What::BoxesOn { hive: hive.clone(), above: 1, boxes: vec![part] };
        let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
        yard.book.add(entries);
    }
    assert_eq!(sum(&yard, "2026-05-31").2.to_string(), "16");
    yard.book.add(one);
    assert_eq!(sum(&yard, "2026-06-01").2.to_string(), "7", "those of one hive");
}
