//! Oil that was taken along and came home, beside what was filled in on that day.

use crate::support::{day, pen};
use crate::{Yard, trap, work_on};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, Share, Volume};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::trap::TrapKind;
use beetle_almanac::book::entry::{Did, SkipReason};
use beetle_almanac::book::oil_used::{Learned, TRIPS_MOST, TripUse, learned, to_tell, trips};
use beetle_almanac::book::record::{Answer, Blank, Record};

/// Who writes down the invented yard.
const DEMO: &str = "demo";

fn ml(value: f64) -> Volume {
    Volume::from_millilitres(value).unwrap()
}

/// Writes down a trip: oil taken and oil brought home, in mL.
pub(crate) fn trip(yard: &mut Yard, on: Day, taken: Option<u32>, back: Option<u32>) {
    trip_of(yard, "aa", on, taken, back);
}

fn trip_of(yard: &mut Yard, writer: &str, on: Day, taken: Option<u32>, back: Option<u32>) {
    let mut record = Record::empty(Blank::Trip, Vec::new());
    for (field, answer) in Blank::Trip.fields().iter().zip(&mut record.answers) {
        let number = match field.name {
            "oil_taken" => taken,
            "oil_back" => back,
            "traps_taken" => Some(4),
            _ => None,
        };
        *answer = number.map(|number| Answer::Number(Decimal::whole(number), 0));
    }
    let entries = yard.book.record(&pen(writer, on), on, on, None, record).unwrap();
    yard.book.add(entries);
}

/// A lidded trap of 20 mL that is topped up.
fn reusable() -> TrapKind {
    TrapKind { reusable: true, ..trap() }
}

#[test]
fn what_came_home_is_asked_for_on_the_days_after_a_trip_until_it_is_written_down() {
    let mut yard = Yard::with(&["1", "2"], day("2026-07-01"), &reusable());
    let on = day("2026-07-10");
    let asked = |yard: &Yard, after| to_tell(yard.book.standing(), on.plus(after));
    trip(&mut yard, on.plus(-1), Some(150), Some(60));
    assert!(!asked(&yard, 0), "nobody has worked on a trap");
    yard.log("1", on, Did::ToppedUp, (Some(35), Some(50)));
    assert_eq!([-1, 0, 1, 9].map(|after| asked(&yard, after)), [false, true, true, true]);
    trip_of(&mut yard, DEMO, on, Some(150), Some(60));
    assert!(asked(&yard, 1), "an invented trip tells of no own one");
    trip(&mut yard, on, Some(150), None);
    assert!(asked(&yard, 1), "what was taken along does not say what came home");
    trip(&mut yard, on, Some(150), Some(60));
    assert!(!asked(&yard, 1));
    yard.log("2", on.plus(14), Did::ToppedUp, (Some(35), Some(50)));
    assert!(asked(&yard, 15));
}

#[test]
fn four_traps_were_filled_and_what_came_home_says_what_it_took() {
    let mut yard = Yard::with(&["1", "2"], day("2026-07-01"), &reusable());
    let on = day("2026-07-10");
    assert_eq!(trips(&yard.book), []);
    trip(&mut yard, on, Some(150), Some(60));
    assert_eq!(trips(&yard.book), [], "nothing was filled on that day");
    // 4 traps from 35 % to 50 % of 20 mL: 12 mL; and 4 anew: 40 mL.
    yard.log("1", on, Did::ToppedUp, (Some(35), Some(50)));
    yard.log("2", on, Did::Replaced, (None, Some(50)));
    yard.log("2", on.plus(1), Did::Replaced, (None, Some(50)));
    let [found] = trips(&yard.book)[..] else { panic!("one trip") };
    assert_eq!((found.day, found.used, found.services), (on, ml(90.0), 8));
    assert!((found.sum.millilitres() - 52.0).abs() < 1e-9);
    // A second bottle of the same day.
    trip(&mut yard, on, Some(20), Some(0));
    assert_eq!(trips(&yard.book)[0].used, ml(110.0));
}

#[test]
fn a_level_nobody_read_is_the_one_the_trap_has_sunk_to_and_else_a_whole_fill() {
    let mut yard = Yard::with(&["1"], day("2026-07-01"), &reusable());
    let on = day("2026-07-05");
    trip(&mut yard, on, Some(100), Some(50));
    yard.log("1", on, Did::ToppedUp, (None, Some(50)));
    assert!((trips(&yard.book)[0].sum.millilitres() - 40.0).abs() < 1e-9, "4 × 10 mL, nothing known");
    // Ten per cent of the depth in five days, read on the 10th; five days later it stands at 40 % again.
    yard.log("1", day("2026-07-10"), Did::ToppedUp, (Some(40), Some(50)));
    let later = day("2026-07-15");
    trip(&mut yard, later, Some(100), Some(90));
    yard.log("1", later, Did::ToppedUp, (None, Some(50)));
    assert!((trips(&yard.book)[1].sum.millilitres() - 8.0).abs() < 1e-9);
}

/// 12 mL into the traps that hang, and a first filling of four of 10 mL in two boxes more.
#[test]
fn new_traps_of_a_trip_were_filled_from_its_bottles_too() {
    let mut yard = Yard::with(&["1"], day("2026-07-01"), &reusable());
    let on = day("2026-07-10");
    trip(&mut yard, on, Some(100), Some(48));
    yard.log("1", on, Did::ToppedUp, (Some(35), Some(50)));
    let (hive, kind) = (yard.hive("1"), yard.kind());
    let boxes = [(BoxDepth::Medium, 2), (BoxDepth::Medium, 2)];
    let entries = yard.book.boxes_on(&pen("aa", on), on, on, &hive, 2, &boxes, &kind, true).unwrap();
    yard.book.add(entries);
    let [found] = trips(&yard.book)[..] else { panic!("one trip") };
    assert_eq!((found.used, found.services), (ml(52.0), 8));
    assert!((found.sum.millilitres() - 52.0).abs() < 1e-9);
}

#[test]
fn a_hive_that_was_skipped_since_was_worked_on_all_the_same() {
    let mut yard = Yard::with(&["1"], day("2026-07-01"), &reusable());
    let (on, next) = (day("2026-07-10"), day("2026-07-11"));
    yard.log("1", on, Did::ToppedUp, (Some(35), Some(50)));
    let hive = yard.hive("1");
    let skip = yard.book.skip(&pen("aa", next), next, next, &hive, SkipReason::Robbing, None).unwrap();
    yard.book.add(skip);
    assert!(to_tell(yard.book.standing(), next));
}

#[test]
fn what_cannot_be_known_leaves_its_day_out() {
    let mut yard = Yard::with(&["1"], day("2026-07-01"), &TrapKind { capacity: None, ..trap() });
    let on = day("2026-07-10");
    trip(&mut yard, on, Some(100), Some(50));
    yard.log("1", on, Did::Replaced, (None, Some(50)));
    assert_eq!(trips(&yard.book), [], "nobody has measured the trap");
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    yard.log("1", on, Did::Replaced, (None, Some(50)));
    trip(&mut yard, on, None, None);
    assert_eq!(trips(&yard.book), [], "of traps alone");
    trip(&mut yard, on, Some(100), None);
    assert_eq!(trips(&yard.book), [], "nobody wrote down what came home");
}

#[test]
fn two_phones_wrote_the_same_work_down_and_it_took_its_oil_once() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    let on = day("2026-07-10");
    trip(&mut yard, on, Some(100), Some(50));
    let mut other = Yard { book: yard.book.clone(), id: yard.id.clone(), start: yard.start };
    yard.log("1", on, Did::Replaced, (None, Some(50)));
    let hive = other.hive("1");
    let work = beetle_almanac::book::entry::Check {
        hive,
        traps: None,
        did: Did::Replaced,
        before: None,
        after: Some(Share::HALF),
        count: None,
        note: None,
    };
    let entries = other.book.check(&pen("bb", on), on, on, work).unwrap();
    other.book.add(entries.clone());
    yard.book.add(entries);
    assert_eq!(trips(&yard.book), trips(&other.book));
    assert_eq!((trips(&yard.book)[0].sum, trips(&yard.book)[0].services), (ml(40.0), 4));
}

#[test]
fn nothing_is_learned_from_the_invented_yard() {
    let mut yard = Yard::with(&["1", "2"], day("2026-07-01"), &reusable());
    let (on, then) = (day("2026-07-10"), day("2026-07-11"));
    yard.log("1", on, Did::Replaced, (None, Some(50)));
    trip_of(&mut yard, DEMO, on, Some(150), Some(60));
    assert_eq!(trips(&yard.book), []);
    // Nor is what was filled there in the sum of a trip of the same day.
    trip(&mut yard, then, Some(150), Some(60));
    let invented = work_on(yard.hive("2"), Did::Replaced);
    let entries = yard.book.check(&pen(DEMO, then), then, then, invented).unwrap();
    yard.book.add(entries);
    assert_eq!(trips(&yard.book), []);
    yard.log("1", then, Did::Replaced, (None, Some(50)));
    let [found] = trips(&yard.book)[..] else { panic!("one trip") };
    assert_eq!((found.day, found.services), (then, 4));
}

#[test]
fn only_the_newest_trips_count() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    for nth in 0..15 {
        let on = day("2026-07-02").plus(nth);
        yard.log("1", on, Did::Replaced, (None, Some(50)));
        trip(&mut yard, on, Some(100), Some(50));
    }
    let found = trips(&yard.book);
    assert_eq!((found.len(), found[0].day), (TRIPS_MOST, day("2026-07-05")));
}

/// Worked by hand: ratios 1.00, 1.10 and 1.20 have the mean 1.10 and the sample standard deviation 0.10; 10 % + 2 × 10 % = 30 %.
#[test]
fn the_learned_reserve_is_mean_and_two_standard_deviations_up_to_the_next_five() {
    let trip = |used: f64| TripUse { day: day("2026-07-01"), used: ml(used), sum: ml(100.0), services: 10 };
    let of = |used: &[f64]| learned(&used.iter().map(|used| trip(*used)).collect::<Vec<_>>());
    let near = |one: f64, other: f64| (one - other).abs() < 1e-9;
    let Some(Learned { trips, mean, spread, ends, each, reserve, beyond, .. }) = of(&[100.0, 110.0, 120.0])
    else {
        panic!("three trips are enough")
    };
    assert!(near(mean, 1.1) && near(spread, 0.1) && near(ends.0, 1.0) && near(ends.1, 1.2));
    assert!(near(each.millilitres(), 11.0));
    assert_eq!((trips, reserve, beyond), (3, Share::from_percent(Decimal::whole(30)).unwrap(), false));
    let reserve = |used: &[f64]| of(used).map(|learned| learned.reserve.percent().as_f64());
    assert_eq!(of(&[100.0, 110.0]), None, "two are too few");
    // A trip on which nothing was to be filled has no ratio, and is none of the three.
    let idle = TripUse { sum: ml(0.0), services: 0, ..trip(40.0) };
    assert_eq!(learned(&[trip(100.0), idle, trip(110.0)]), None);
    let known = learned(&[trip(100.0), idle, trip(110.0), trip(120.0)]).unwrap();
    assert!(near(known.each.millilitres(), 11.0) && known.trips == 3);
    assert_eq!(reserve(&[105.0, 105.0, 105.0]), Some(5.0), "no more than the step it is");
    assert_eq!(reserve(&[105.1, 105.1, 105.1]), Some(10.0));
    assert_eq!(reserve(&[60.0, 61.0, 62.0]), Some(0.0), "never below nothing");
    assert_eq!(
        of(&[100.0, 300.0, 500.0]).map(|learned| (learned.reserve, learned.beyond)),
        Some((Share::FULL, true))
    );
}
