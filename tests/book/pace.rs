//! How long a hive takes, by the moments at which work was written down, and where a trip leads.

use crate::support::{Unicode, day, pen};
use crate::{Yard, work_on};
use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::route::Pressing::{self, Due, Larvae, Overdue, Rest};
use beetle_almanac::book::entry::{Check, Did, SkipReason, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::pace::{pace, stops, way_there, ways};
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::write::{KindChoice, Pen};

/// Work on a hive, written down so many minutes after nine.
fn at(yard: &mut Yard, writer: &str, tag: &str, on: Day, minutes: u32) {
    at_second(yard, writer, tag, on, minutes * 60);
}

fn at_second(yard: &mut Yard, writer: &str, tag: &str, on: Day, seconds: u32) {
    let pen = Pen { at: Stamp::new(on, 9 * 3600 + seconds, 120).unwrap(), ..pen(writer, on) };
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
fn a_walk_written_up_at_the_truck_tells_nothing_of_the_minutes_at_a_hive() {
    let on = day("2026-07-10");
    for (seconds, learned) in [(2, None), (19, None), (20, Some((1.0 / 3.0, 6)))] {
        let mut yard = Yard::new(&TAGS, day("2026-07-01"));
        for (nth, tag) in (0..).zip(TAGS) {
            at_second(&mut yard, "aa", tag, on, nth * seconds);
        }
        assert_eq!(pace(&yard.book), learned, "{seconds}");
    }
}

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
        let work = work_on(hive, Did::ToppedUp);
        let entries = late.book.check(&evening, on, on.plus(1), work).unwrap();
        late.book.add(entries);
    }
    assert_eq!(pace(&late.book), None);
}

/// Six hives, four minutes apart.
fn six(yard: &mut Yard, on: Day) {
    for (nth, tag) in (0..6).zip(TAGS) {
        at(yard, "aa", tag, on, nth * 4);
    }
    assert_eq!(pace(&yard.book), Some((4.0, 5)));
}

/// The pen of that phone so many minutes after nine.
fn then(on: Day, minutes: u32) -> Pen {
    Pen { at: Stamp::new(on, 9 * 3600 + minutes * 60, 120).unwrap(), ..pen("aa", on) }
}

#[test]
fn a_slip_that_was_taken_back_was_no_hive_walked_to() {
    let mut yard = Yard::new(&TAGS, day("2026-07-01"));
    let on = day("2026-07-10");
    six(&mut yard, on);
    at(&mut yard, "aa", "7", on, 22);
    assert_eq!(pace(&yard.book), Some((4.0, 6)));
    let seven = Some(yard.hive("7"));
    let slip = yard.book.log().entries().find(|entry| entry.day == on && entry.hive() == seven);
    let slip = slip.unwrap().id.clone();
    let strike = yard.book.strike(&then(on, 23), on, &[slip], &Unicode).unwrap();
    yard.book.add(strike);
    assert_eq!(pace(&yard.book), Some((4.0, 5)));
}

#[test]
fn the_rest_as_usual_was_one_tap_and_no_walk() {
    let mut yard = Yard::new(&TAGS, day("2026-07-01"));
    let on = day("2026-07-10");
    six(&mut yard, on);
    let rest = [yard.hive("7")];
    let bulk = yard.book.same_for_all(&then(on, 24), on, on, &rest, Did::ToppedUp).unwrap();
    yard.book.add(bulk);
    assert_eq!(pace(&yard.book), Some((4.0, 5)));
}

#[test]
fn the_drive_from_one_yard_to_the_next_is_no_walk_from_hive_to_hive() {
    let mut yard = Yard::new(&TAGS, day("2026-07-01"));
    let on = day("2026-07-10");
    six(&mut yard, on);
    let nine = another_yard(&mut yard, "aa", on).1;
    let entries = yard.book.check(&then(on, 29), on, on, topped_up(nine)).unwrap();
    yard.book.add(entries);
    assert_eq!(pace(&yard.book), Some((4.0, 5)));
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

fn topped_up(hive: ThingId) -> Check {
    work_on(hive, Did::ToppedUp)
}

/// A second yard with hive 9, written down by that phone.
fn another_yard(yard: &mut Yard, writer: &str, on: Day) -> (ThingId, ThingId) {
    let plan = crate::plan(&["9"], &[(beetle_almanac::almanac::stack::BoxDepth::Deep, 2)], on);
    // What is invented keeps to a kind of its own.
    let kind = match writer {
        "demo" => KindChoice::New(crate::trap()),
        _ => KindChoice::Known(yard.kind()),
    };
    let entries = yard.book.keep_yard(&pen(writer, on), "Mill", "Europe/Berlin", &kind, &plan).unwrap();
    yard.book.add(entries);
    let mill = yard.book.standing().yards.keys().find(|id| **id != yard.id).unwrap().clone();
    let nine = yard.book.standing().hives_of(&mill, true).next().unwrap().0.clone();
    (mill, nine)
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
    let (mill, nine) = another_yard(&mut yard, "aa", first);
    let entries = yard.book.check(&pen("aa", second), second, second, topped_up(nine)).unwrap();
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

#[test]
fn trying_out_the_invented_yard_on_the_day_of_a_trip_makes_it_no_trip_to_two_yards() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    let on = day("2026-07-10");
    let home = vec![yard.id.clone()];
    let (mill, nine) = another_yard(&mut yard, "demo", day("2026-07-02"));
    assert!(mill.is_demo());
    at(&mut yard, "aa", "1", on, 0);
    trip(&mut yard, on, 30);
    assert_eq!(way_there(&yard.book, &home, on), Some((on, 30.0)));
    // By the demonstration itself, and by the keeper in its yard.
    for writer in ["demo", "aa"] {
        let entries = yard.book.check(&pen(writer, on), on, on, topped_up(nine.clone())).unwrap();
        yard.book.add(entries);
        assert_eq!(way_there(&yard.book, &home, on), Some((on, 30.0)), "{writer}");
    }
}

#[test]
fn a_trip_of_no_minutes_tells_no_way_and_the_one_before_it_does() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    let (first, second) = (day("2026-07-10"), day("2026-07-17"));
    let home = vec![yard.id.clone()];
    trip(&mut yard, second, 0);
    assert_eq!(way_there(&yard.book, &home, second), None);
    trip(&mut yard, first, 30);
    assert_eq!(way_there(&yard.book, &home, second), Some((first, 30.0)));
}
