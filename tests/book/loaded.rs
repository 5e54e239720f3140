//! What is loaded before a walk: beetles a day, new traps for hives with slime, and what the store is thought to hold.

use crate::support::{Unicode, day, pen};
use crate::yard_decides::{Word, Words};
use crate::{Yard, plan, trap, work_on};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Share, VolumeUnit};
use beetle_almanac::almanac::refill::Limit;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::TrapKind;
use beetle_almanac::app::load::{store, sum};
use beetle_almanac::book::caught::all;
use beetle_almanac::book::entry::{Check, Did, What};
use beetle_almanac::book::record::Blank;
use beetle_almanac::book::round::{self, Because};
use beetle_almanac::book::write::KindChoice;

/// Logs work on a whole hive with its count and the level it leaves.
fn counted(yard: &mut Yard, on: &str, did: Did, count: u32, after: Option<Share>) {
    let on = day(on);
    let count = CountRange::new(count, Some(count)).ok();
    let work = Check { after, count, ..work_on(yard.hive("1"), did) };
    let entries = yard.book.check(&pen("aa", on), on, on, work).unwrap();
    yard.book.add(entries);
}

/// Beetles a day in a trap of hive 1, as its limits say.
pub(crate) fn per_day(yard: &Yard, on: &str) -> f64 {
    let standing = yard.book.standing();
    let hive = &standing.hives[&yard.hive("1")];
    let dues = round::trap_dues(standing, hive, None, day(on));
    let Because::Limit(refill) = &dues[0].because else { panic!("no limit: {dues:?}") };
    let mut limits = refill.also.iter().chain([&refill.decided_by]);
    let bodies = limits.find(|limit| matches!(limit, Limit::Bodies { .. }));
    let Some(Limit::Bodies { per_day, .. }) = bodies else { panic!("no rate: {refill:?}") };
    *per_day
}

/// Worked by hand: 93 beetles in 4 traps and 42 days, 168 trap-days. The 12 were in traps that had spilled.
#[test]
fn beetles_out_of_spilled_traps_are_in_no_rate_and_neither_are_their_days() {
    let mut yard = Yard::new(&["1"], day("2026-05-04"));
    counted(&mut yard, "2026-06-15", Did::Replaced, 93, Some(Share::HALF));
    yard.log("1", day("2026-06-29"), Did::Spilled, (None, None));
    counted(&mut yard, "2026-07-13", Did::Replaced, 12, Some(Share::HALF));
    let rate = per_day(&yard, "2026-07-13");
    assert!((rate - 93.0 / 168.0).abs() < 1e-9, "{rate}");
    let (mut count, mut days) = (0, 0);
    for one in all(&yard.book).iter().filter(|one| one.trap_days > 0) {
        count += one.count.low();
        days += one.trap_days;
    }
    assert_eq!((count, days), (93, 168), "by the rule of every other page");
    // The next count is of the days since the traps fish again.
    counted(&mut yard, "2026-07-23", Did::Replaced, 7, Some(Share::HALF));
    let rate = per_day(&yard, "2026-07-23");
    assert!((rate - 100.0 / 208.0).abs() < 1e-9, "{rate}");
}

fn load(yard: &Yard, on: &str) -> sum::Load {
    let yards = std::slice::from_ref(&yard.id);
    sum::load(yard.book.standing(), yards, day(on), Share::NONE, None, VolumeUnit::Millilitre)
}

/// What is brought in all, and of the one kind: missing, in the place of slimed ones, to spare.
fn brought(yard: &Yard, on: &str) -> (u32, Vec<(u32, u32, u32)>) {
    let (load, yards) = (load(yard, on), std::slice::from_ref(&yard.id));
    let standing = yard.book.standing();
    let room = store::room(standing, yards, day(on), &[]);
    let kinds = store::by_kind(standing, yards, &load, load.spare, &room);
    (load.to_place(), kinds.iter().map(|kind| (kind.place, kind.anew, kind.spare)).collect())
}

#[test]
fn a_hive_with_slime_gets_new_traps_where_they_are_thrown_away() {
    let mut yard = Yard::new(&["1", "2"], day("2026-07-01"));
    assert_eq!(brought(&yard, "2026-07-05"), (0, vec![]));
    yard.tells("2026-07-05", "1", Blank::Look, &[("larvae", Word("many"))]);
    // Four traps of one hive, and two to spare.
    assert_eq!(brought(&yard, "2026-07-05"), (4, vec![(0, 4, 2)]));
    let slimed = load(&yard, "2026-07-05");
    assert_eq!((slimed.due, slimed.place, slimed.anew, slimed.disposable), (4, 0, 4, 0));
    // One that is missing is brought once; those of the other hive are topped up or replaced as they are found.
    let gone = yard.book.standing().hives[&yard.hive("1")].boxes[0].traps[0].id.clone();
    let on = day("2026-07-05");
    let work = Check { traps: Some(vec![gone]), ..work_on(yard.hive("1"), Did::Missing) };
    let entries = yard.book.check(&pen("aa", on), on, on, work).unwrap();
    yard.book.add(entries);
    assert_eq!(brought(&yard, "2026-07-05"), (4, vec![(1, 3, 2)]));
    let later = load(&yard, "2026-07-15");
    assert_eq!((later.due, later.place, later.anew, later.disposable), (8, 1, 3, 4));
    // While trap work rests, nothing is made fresh.
    let (mut resting, hive) = (yard.book.clone(), yard.hive("1"));
    let pause = What::Season { yard: yard.id.clone(), running: false };
    let entries = resting.about_yard(&pen("aa", on), on, on, &yard.id, pause).unwrap();
    resting.add(entries);
    let yards = std::slice::from_ref(&yard.id);
    let none = sum::load(resting.standing(), yards, on, Share::NONE, None, VolumeUnit::Millilitre);
    assert_eq!((none.to_place(), none.yards[0].fresh(&hive)), (0, false));
    assert!(load(&yard, "2026-07-05").yards[0].fresh(&hive));
    // Who tops them up leaves in what they have caught.
    let mut topped = Yard::new(&["1"], day("2026-07-01"));
    topped.tells("2026-07-05", "1", Blank::Look, &[("larvae", Word("many"))]);
    topped.log("1", day("2026-07-06"), Did::ToppedUp, (None, Some(50)));
    assert_eq!(brought(&topped, "2026-07-06").1, [(0, 4, 2)]);
    topped.log("1", day("2026-07-06"), Did::Replaced, (None, Some(50)));
    assert_eq!(brought(&topped, "2026-07-06").0, 0);
    // Once they are made fresh, they are traps like all others.
    yard.log("1", on, Did::Replaced, (None, Some(50)));
    assert_eq!(brought(&yard, "2026-07-05").0, 0);
    // What is used again is washed and goes back in.
    let mut again = Yard::with(&["1"], day("2026-07-01"), &TrapKind { reusable: true, ..trap() });
    again.tells("2026-07-05", "1", Blank::Look, &[("larvae", Word("many"))]);
    let slimed = load(&again, "2026-07-05");
    assert_eq!((slimed.due, slimed.anew, slimed.to_place()), (4, 0, 0));
}

/// 8 hives with four traps each and 6 with two: 44 traps in 14 hives are 3 a hive, and not the 4 of the fullest.
#[test]
fn the_next_season_begins_from_what_hives_carry_on_the_whole() {
    let start: Day = day("2026-05-01");
    let mut yard = Yard::new(&["1", "2", "3", "4", "5", "6", "7", "8"], start);
    let kind = KindChoice::Known(yard.kind());
    let small = plan(&["11", "12", "13", "14", "15", "16"], &[(BoxDepth::Deep, 2)], start);
    let entries = yard.book.add_hives(&pen("aa", start), &yard.id, &kind, &small, &Unicode).unwrap();
    yard.book.add(entries);
    let next = |yard: &Yard| {
        let yards = std::slice::from_ref(&yard.id);
        let room = store::room(yard.book.standing(), yards, start, &[]);
        let found = store::next(yard.book.standing(), yards, &room, start.plus(9));
        found.iter().map(|kind| (kind.hives, kind.traps, kind.each)).collect::<Vec<_>>()
    };
    assert_eq!(next(&yard), [(14, 44, 3)]);
    // A dead hive is none that is alive, though nobody wrote its end down.
    for (on, tag) in [("2026-05-10", "1"), ("2026-05-11", "2")] {
        yard.tells(on, tag, Blank::DeadOut, &[("causes", Words(&["starved"]))]);
    }
    assert_eq!(next(&yard), [(13, 40, 3)], "of the second nobody knows yet");
}

/// Worked by hand: the last five counts with days of fishing are 20, 30, 40, 50 and 60 in 4 traps of ten days each, 200 in 200
/// trap-days. Five counts out of spilled traps come after them, and none of their beetles and days counts.
#[test]
fn counts_out_of_spilled_traps_push_out_none_that_tell_of_days() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    for (on, count) in [
        ("2026-05-11", 10),
        ("2026-05-21", 20),
        ("2026-05-31", 30),
        ("2026-06-10", 40),
        ("2026-06-20", 50),
        ("2026-06-30", 60),
    ] {
        counted(&mut yard, on, Did::Replaced, count, Some(Share::HALF));
    }
    for on in ["2026-07-01", "2026-07-02", "2026-07-03", "2026-07-04", "2026-07-05", "2026-07-06"] {
        counted(&mut yard, on, Did::Spilled, 3, None);
    }
    yard.log("1", day("2026-07-07"), Did::Replaced, (None, Some(50)));
    assert!((per_day(&yard, "2026-07-07") - 1.0).abs() < 1e-9);
    // Nor does a hive remember ever more of them.
    let hive = &yard.book.standing().hives[&yard.hive("1")];
    assert_eq!(hive.catches.iter().filter(|catch| catch.trap_days == 0).count(), 5);
    counted(&mut yard, "2026-07-17", Did::Replaced, 70, Some(Share::HALF));
    assert!((per_day(&yard, "2026-07-17") - 250.0 / 200.0).abs() < 1e-9);
}
