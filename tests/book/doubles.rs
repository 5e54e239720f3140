//! Work that looks as if it had been logged twice.

use crate::corrections::{line, log, losing, union, work};
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::app::ledger::history::{self};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::write::Refusal;

#[test]
fn two_people_log_one_check_and_the_rate_uses_one_of_them_until_the_keeper_decides() {
    let (yard, hive, _) = losing();
    let on = day("2026-05-21");
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    let by_one = log(&mut one, "bb", on, work(&hive, Did::AsFound, None, Some(12)));
    let by_other = log(&mut other, "cc", on, work(&hive, Did::ToppedUp, Some(Share::HALF), Some(12)));
    let mut both = union(&one, &other);
    let doubt = |book: &Book| book.standing().hives[&hive].doubles.clone();
    let counts = |book: &Book| book.standing().hives[&hive].catches.len();
    let [double] = &doubt(&both)[..] else { panic!("{:?}", doubt(&both)) };
    assert_eq!((double.day, &double.lines), (on, &[by_one.clone(), by_other.clone()]));
    assert_eq!(counts(&both), 1);
    let lines = history::lines(&both, None);
    let flagged: Vec<_> = lines.iter().filter(|line| line.double.is_some()).map(|line| line.root).collect();
    assert_eq!(flagged, [&by_other, &by_one]);

    // Both are right: both count, and nothing is asked again.
    let mut two = both.clone();
    let right = two.both_right(&pen("bb", on), &double.clone()).unwrap();
    two.add(right);
    assert_eq!((doubt(&two).len(), counts(&two)), (0, 2));
    // Nobody doubts them any more: a second tap writes nothing.
    assert_eq!(two.both_right(&pen("bb", on), &double.clone()), Err(Refusal::Nothing));
    // Nor after one of them is corrected by somebody who knows of both.
    let later = day("2026-05-30");
    let lines = history::lines(&two, None);
    let now = self::line(&lines, &by_one).entry.id.clone();
    let what = What::Check(work(&hive, Did::AsFound, None, Some(13)));
    let mended = two.correct(&pen("dd", later), on, later, &now, what, &Unicode).unwrap();
    two.add(mended);
    assert_eq!((doubt(&two).len(), counts(&two)), (0, 2));

    // Or it was one: the other is struck out.
    let strike = both.strike(&pen("bb", on), on, &[by_other], &Unicode).unwrap();
    both.add(strike);
    assert_eq!((doubt(&both).len(), counts(&both)), (0, 1));
    assert_eq!(both.standing(), one.standing());
}

#[test]
fn a_double_whose_first_line_has_no_count_takes_that_of_the_second() {
    let (yard, hive, _) = losing();
    let on = day("2026-05-21");
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    log(&mut one, "bb", on, work(&hive, Did::AsFound, None, None));
    log(&mut other, "cc", on, work(&hive, Did::AsFound, None, Some(12)));
    let both = union(&one, &other);
    assert_eq!(both.standing().hives[&hive].doubles.len(), 1);
    assert_eq!(both.standing().hives[&hive].catches.len(), 1);
}

#[test]
fn one_keeper_who_looks_twice_a_day_is_not_asked_whether_she_is_two() {
    let (mut yard, hive, _) = losing();
    let on = day("2026-05-21");
    // The page was started anew in between: another writer, but it knows of the first look and asked.
    log(&mut yard.book, "bb", on, work(&hive, Did::AsFound, None, Some(3)));
    log(&mut yard.book, "cc", on, work(&hive, Did::ToppedUp, Some(Share::HALF), Some(2)));
    let now = &yard.book.standing().hives[&hive];
    assert_eq!((now.doubles.len(), now.catches.len()), (0, 2));
    // What mends a spill is the next piece of work, whoever does it.
    let later = day("2026-05-25");
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    log(&mut one, "dd", later, work(&hive, Did::Spilled, None, None));
    log(&mut other, "ee", later, work(&hive, Did::Replaced, Some(Share::HALF), None));
    assert!(union(&one, &other).standing().hives[&hive].doubles.is_empty());
}

#[test]
fn work_on_different_traps_of_one_hive_is_no_double() {
    let (yard, hive, _) = losing();
    let on = day("2026-05-21");
    let traps: Vec<ThingId> = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
    let some = |trap: &ThingId| Check {
        traps: Some(vec![trap.clone()]),
        ..work(&hive, Did::Replaced, Some(Share::HALF), None)
    };
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    log(&mut one, "bb", on, some(&traps[0]));
    log(&mut other, "cc", on, some(&traps[1]));
    assert!(union(&one, &other).standing().hives[&hive].doubles.is_empty());
}
