//! How long a hive takes, by the moments at which work was written down, and where a trip leads.

use crate::Yard;
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::route::Pressing::{self, Due, Larvae, Overdue, Rest};
use beetle_almanac::book::entry::{Check, Did, SkipReason, What};
use beetle_almanac::book::pace::{pace, stops, way_there, ways};
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::write::Pen;

/// Work on a hive, written down so many minutes after nine.
fn at(yard: &mut Yard, writer: &str, tag: &str, on: Day, minutes: u32) {
    let pen = Pen { at: Stamp::new(on, 9 * 3600 + minutes * 60, 120).unwrap(), ..pen(writer, on) };
    let work = Check {
        hive: yard.hive(tag),
        traps: None,
        did: Did::ToppedUp,
        before: None,
        after: Some(Share::HALF),
        count: None,
        note: None,
    };
    let entries = yard.book.check(&pen, on, on, work).unwrap();
    yard.book.add(entries);
}

const TAGS: [&str; 7] = ["1", "2", "3", "4", "5", "6", "7"];

#[test]
fn six_hives_in_twenty_minutes_take_four_each_and_of_five_stretches_no_fewer() {
    let mut yard = Yard::new(&TAGS, day("2026-07-01"));
    let on = day("2026-07-10");
    for (tag, minutes) in ["1", "2", "3", "4", "5"].into_iter().zip([0, 3, 7, 11, 20]) {
        at(&mut yard, "aa", tag, on, minutes);
    }
    assert_eq!(pace(&yard.book), None, "four stretches are too few");
    // Twice at one hive is no stretch between two; a rest of 31 minutes is none either.
    at(&mut yard, "aa", "5", on, 22);
    at(&mut yard, "aa", "6", on, 53);
    assert_eq!(pace(&yard.book), None);
    at(&mut yard, "aa", "7", on, 57);
    // 3, 4, 4, 9, 4.
    assert_eq!(pace(&yard.book), Some((4.0, 5)));
}

/// A correction is written when the slip is noticed, not when the keeper walks on.
#[test]
fn a_line_that_mends_another_is_no_hive_walked_to() {
    let mut yard = Yard::new(&TAGS, day("2026-07-01"));
    let on = day("2026-07-10");
    for (nth, tag) in (0..6).zip(TAGS) {
        at(&mut yard, "aa", tag, on, nth * 4);
    }
    assert_eq!(pace(&yard.book), Some((4.0, 5)));
    let first = yard.hive("1");
    let line = yard.book.log().entries().find(|entry| entry.day == on && entry.hive() == Some(first.clone()));
    let line = line.unwrap().clone();
    let What::Check(mut work) = line.what else { panic!("work") };
    work.after = Some(Share::QUARTER);
    let pen = Pen { at: Stamp::new(on, 9 * 3600 + 27 * 60, 120).unwrap(), ..pen("aa", on) };
    let mended = yard.book.correct(&pen, on, on, &line.id, What::Check(work), &Unicode).unwrap();
    yard.book.add(mended);
    assert_eq!(pace(&yard.book), Some((4.0, 5)));
}

#[test]
fn another_phone_another_day_and_what_is_written_in_the_evening_tell_nothing() {
    let mut yard = Yard::new(&TAGS, day("2026-07-01"));
    let on = day("2026-07-10");
    for (nth, tag) in (0..).zip(TAGS) {
        // Two phones by turns: each walks every other hive.
        at(&mut yard, if nth % 2 == 0 { "aa" } else { "bb" }, tag, on, nth * 5);
    }
    // aa: 10, 10, 10; bb: 10, 10.
    assert_eq!(pace(&yard.book), Some((10.0, 5)));
    let mut late = Yard::new(&TAGS, day("2026-07-01"));
    for (nth, tag) in (0..).zip(TAGS) {
        let evening = Pen { at: Stamp::new(on.plus(1), 60 * nth, 120).unwrap(), ..pen("aa", on) };
        let hive = late.hive(tag);
        let work = Check {
            hive,
            traps: None,
            did: Did::ToppedUp,
            before: None,
            after: None,
            count: None,
            note: None,
        };
        let entries = late.book.check(&evening, on, on.plus(1), work).unwrap();
        late.book.add(entries);
    }
    assert_eq!(pace(&late.book), None);
}

#[test]
fn only_the_last_five_days_of_work_count() {
    let mut yard = Yard::new(&TAGS, day("2026-07-01"));
    for nth in 0..7 {
        for (at_hive, tag) in (0..).zip(TAGS) {
            at(&mut yard, "aa", tag, day("2026-07-02").plus(nth), at_hive * if nth < 2 { 20 } else { 6 });
        }
    }
    assert_eq!(pace(&yard.book), Some((6.0, 30)));
}

#[test]
fn larvae_lead_then_what_is_overdue_then_what_is_due_then_the_rest() {
    let mut yard = Yard::new(&["1", "2", "3", "4", "5"], day("2026-07-01"));
    let on = day("2026-07-15");
    // 1 is due on the day (14 days); 2 has a trap missing; 3 was filled since; 4 was filled since and has larvae; 5 was skipped.
    yard.log("2", day("2026-07-10"), Did::Missing, (None, None));
    for tag in ["3", "4", "5"] {
        yard.log(tag, day("2026-07-10"), Did::Replaced, (None, Some(50)));
    }
    let mut look = Record::empty(Blank::Look, vec![yard.hive("4")]);
    look.answers[0] = Some(Answer::Word(2));
    let then = day("2026-07-11");
    let entries = yard.book.record(&pen("aa", then), then, then, Some(&yard.id), look).unwrap();
    yard.book.add(entries);
    let hive = yard.hive("5");
    let entries = yard.book.skip(&pen("aa", then), then, then, &hive, SkipReason::NoTime, None).unwrap();
    yard.book.add(entries);
    let found = stops(yard.book.standing(), std::slice::from_ref(&yard.id), on);
    let tags: Vec<(&str, Pressing)> = found
        .iter()
        .map(|(hive, stop)| (yard.book.standing().hives[hive].tag.as_str(), stop.pressing))
        .collect();
    assert_eq!(tags, [("5", Rest), ("1", Due), ("2", Overdue), ("4", Larvae)], "in the order of the walk");
}

#[test]
fn the_way_to_a_yard_is_what_was_written_down_last() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    assert_eq!(ways(yard.book.standing(), &yard.id), (None, None));
    for (on, travel) in [("2026-07-02", 20), ("2026-07-03", 35)] {
        let mut facts = Record::empty(Blank::YardFacts, Vec::new());
        for (field, answer) in Blank::YardFacts.fields().iter().zip(&mut facts.answers) {
            if field.name == "travel" {
                *answer = Some(Answer::Number(Decimal::whole(travel), 0));
            }
        }
        let on = day(on);
        let entries = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), facts).unwrap();
        yard.book.add(entries);
    }
    assert_eq!(ways(yard.book.standing(), &yard.id), (Some(35.0), None));
}

fn trip(yard: &mut Yard, on: Day, minutes: u32) {
    let mut record = Record::empty(Blank::Trip, Vec::new());
    let at = Blank::Trip.fields().iter().position(|field| field.name == "travel").unwrap();
    record.answers[at] = Some(Answer::Number(Decimal::whole(minutes), 0));
    let entries = yard.book.record(&pen("aa", on), on, on, None, record).unwrap();
    yard.book.add(entries);
}

#[test]
fn the_way_is_that_of_the_last_trip_to_the_same_yards() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    let (first, second, third) = (day("2026-07-10"), day("2026-07-17"), day("2026-07-24"));
    let home = vec![yard.id.clone()];
    assert_eq!(way_there(&yard.book, &home, third), None);
    at(&mut yard, "aa", "1", first, 0);
    trip(&mut yard, first, 30);
    trip(&mut yard, first, 15);
    assert_eq!(way_there(&yard.book, &home, third), Some((first, 45.0)), "two drives of one day");
    assert_eq!(way_there(&yard.book, &home, first.plus(-1)), None, "not before it was driven");
    // The second trip led past another yard too.
    let plan = crate::plan(&["9"], &[(beetle_almanac::almanac::stack::BoxDepth::Deep, 2)], first);
    let kind = beetle_almanac::book::write::KindChoice::Known(yard.kind());
    let entries = yard.book.keep_yard(&pen("aa", first), "Mill", "Europe/Berlin", &kind, &plan).unwrap();
    yard.book.add(entries);
    let mill = yard.book.standing().yards.keys().find(|id| **id != yard.id).unwrap().clone();
    let nine = yard.book.standing().hives_of(&mill, true).next().unwrap().0.clone();
    let work = Check {
        hive: nine,
        traps: None,
        did: Did::ToppedUp,
        before: None,
        after: None,
        count: None,
        note: None,
    };
    let entries = yard.book.check(&pen("aa", second), second, second, work).unwrap();
    yard.book.add(entries);
    at(&mut yard, "aa", "1", second, 0);
    trip(&mut yard, second, 80);
    let both = vec![mill.clone(), yard.id.clone()];
    assert_eq!(way_there(&yard.book, &home, third), Some((first, 45.0)));
    assert_eq!(way_there(&yard.book, &both, third), Some((second, 80.0)), "in whatever order");
    assert_eq!(way_there(&yard.book, &[mill], third), None);
    // Nobody wrote down work on the third: it may have led anywhere.
    trip(&mut yard, third, 20);
    assert_eq!(way_there(&yard.book, &home, third), Some((third, 20.0)));
}
