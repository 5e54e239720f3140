//! Faults of traps and their levels that were found by reading, each held by the case that showed it.

use crate::mended::work;
use crate::support::{Unicode, day, pen};
use crate::{Yard, trap};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::refill::{Timing, median_loss};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Did, TrapsWent, What};
use beetle_almanac::book::round::{self, Because, HiveDue};

#[test]
fn days_a_trap_did_not_fish_are_no_trap_days() {
    for trouble in [Did::GluedShut, Did::Spilled, Did::Missing] {
        let mut yard = Yard::new(&["1"], day("2026-05-01"));
        let hive = yard.hive("1");
        for (on, did, count, after) in [
            ("2026-05-02", trouble, None, None),
            ("2026-05-30", Did::Replaced, None, Some(Share::HALF)),
            ("2026-05-31", Did::ToppedUp, Some(40), Some(Share::HALF)),
        ] {
            let e = yard
                .book
                .check(&pen("aa", day(on)), day(on), day(on), work(&hive, did, count, after))
                .unwrap();
            yard.book.add(e);
        }
        println!("{trouble:?} {:?}", yard.book.standing().hives[&hive].catches);
        // four traps, fishing since 30 May
        assert!(yard.book.standing().hives[&hive].catches.iter().all(|c| c.trap_days <= 8), "{trouble:?}");
    }
}

#[test]
fn missing_traps_of_a_retired_kind_are_still_to_be_bought() {
    use beetle_almanac::app::load::sum::missing;
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let on = day("2026-05-02");
    let e = yard.book.check(&pen("aa", on), on, on, work(&hive, Did::Missing, None, None)).unwrap();
    yard.book.add(e);
    let e = yard.book.about_keeper(&pen("aa", on), on, What::KindRetired { kind: yard.kind() }).unwrap();
    yard.book.add(e);
    assert_eq!(missing(yard.book.standing(), &[yard.id.clone()]).iter().map(|n| n.traps).sum::<u32>(), 4);
}

#[test]
fn a_trap_missing_for_three_weeks_is_overdue() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let on = day("2026-05-02");
    let trap = yard.book.standing().hives[&hive].boxes[0].traps[0].id.clone();
    let mut w = work(&hive, Did::Missing, None, None);
    w.traps = Some(vec![trap]);
    let e = yard.book.check(&pen("aa", on), on, on, w).unwrap();
    yard.book.add(e);
    let due = |d: &str| match round::rows(yard.book.standing(), &yard.id, day(d)).remove(0).due {
        HiveDue::Due { timing, because, .. } => (timing, matches!(because, Because::Trouble(_))),
        o => panic!("{o:?}"),
    };
    println!("{:?} {:?}", due("2026-05-12"), due("2026-05-30"));
    assert!(matches!(due("2026-05-12").0, Timing::Overdue { days: 10 }));
}

#[test]
fn a_level_of_kinds_filled_differently() {
    // two kinds in one hive: which level is recorded after a two-tap top-up?
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let mut other = trap();
    other.fill = Share::QUARTER;
    let on = day("2026-05-02");
    let k = yard.book.about_keeper(&pen("aa", on), on, What::Kind(other)).unwrap();
    let kid = k[0].id.thing(0);
    yard.book.add(k);
    let e =
        yard.book.boxes_on(&pen("aa", on), on, on, &hive, 2, &[(BoxDepth::Medium, 2)], &kid, true).unwrap();
    yard.book.add(e);
    let hive_now = yard.book.standing().hives[&hive].clone();
    assert_eq!(yard.book.usual_level(&hive_now, Did::ToppedUp, None), None);
    let e = yard.book.check(&pen("aa", on), on, on, work(&hive, Did::ToppedUp, None, None)).unwrap();
    yard.book.add(e);
    let lost = yard.book.standing().hives[&hive].traps().filter(|t| t.level.is_none()).count();
    assert_eq!(lost, 0, "levels unknown, so no oil limit any more");
}

#[test]
fn a_trap_found_empty_is_due_at_once() {
    let mut kind = trap();
    kind.inner = beetle_almanac::almanac::trap::TrapSize::default(); // as `Keep this yard` makes it: nobody has measured the depth
    let mut yard = Yard::with(&["1"], day("2026-05-01"), &kind);
    yard.log("1", day("2026-05-05"), Did::AsFound, (Some(0), None));
    let row = round::rows(yard.book.standing(), &yard.id, day("2026-05-05")).remove(0);
    assert!(row.due.now());
}

#[test]
fn a_level_read_before_a_top_up_of_the_same_day_pushes_no_interval_out() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let mut on = day("2026-05-01");
    for _ in 0..6 {
        on = on.plus(10);
        yard.log("1", on, Did::AsFound, (Some(40), None));
        yard.log("1", on, Did::ToppedUp, (Some(40), Some(50)));
    }
    let losses = &yard.book.standing().hives[&yard.hive("1")].losses;
    assert_eq!(losses.iter().map(|interval| interval.days).collect::<Vec<_>>(), [10; 5]);
    assert_eq!(median_loss(losses), Some((1.0, 5)));
}

/// Counted are the beetles since the last count: ten at a look, four more at the top-up, though all lie in the oil.
#[test]
fn beetles_left_in_the_oil_at_a_look_are_counted_once() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    for (on, did, count) in [("2026-05-11", Did::AsFound, 10), ("2026-05-21", Did::ToppedUp, 4)] {
        let after = (did == Did::ToppedUp).then_some(Share::HALF);
        let work = work(&hive, did, Some(count), after);
        let written = yard.book.check(&pen("aa", day(on)), day(on), day(on), work).unwrap();
        yard.book.add(written);
    }
    let catches = &yard.book.standing().hives[&hive].catches;
    let sums: Vec<_> = catches.iter().map(|catch| (catch.count.low(), catch.trap_days)).collect();
    assert_eq!(sums, [(10, 40), (4, 40)]);
}

/// Struck out on one phone while on another its traps were put in: nobody knows how long they may wait.
#[test]
fn traps_whose_kind_was_struck_out_are_due_and_are_counted() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-05-03");
    let kind = yard.kind().entry().clone();
    let strike = yard.book.strike(&pen("aa", on), on, &[kind], &Unicode).unwrap();
    let shifts = yard.book.shifts(&strike, on);
    assert!(shifts[0].after.as_ref().is_some_and(HiveDue::now), "it is said before it is done: {shifts:?}");
    let mut book = yard.book.clone();
    book.add(strike.clone());
    let row = round::rows(book.standing(), &yard.id, on).remove(0);
    assert!(matches!(row.due, HiveDue::Due { traps: 4, traps_due: 4, .. }), "{:?}", row.due);
    let need = round::yard_need(book.standing(), &yard.id, on, Share::QUARTER);
    assert_eq!((need.hives, need.traps, need.oil.unknown, need.oil.lines.len()), (1, 4, 4, 0));
    assert_eq!(book.standing().orphans, 1, "the hive speaks of what is not here");
    assert_eq!(Book::from_log(book.log().clone()), book);
    let back = book.strike(&pen("aa", on), on, &[strike[0].id.clone()], &Unicode).unwrap();
    book.add(back);
    assert_eq!(book.standing(), yard.book.standing());
}

/// Traps put in late, for a day before their kind was written down, and the lines of another phone come in any order.
#[test]
fn a_kind_that_comes_after_its_traps_has_what_was_taken_out_of_hives_in_store() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let (before, on) = (day("2026-05-02"), day("2026-05-05"));
    let kind = yard.book.about_keeper(&pen("aa", on), on, What::Kind(trap())).unwrap();
    let id = kind[0].id.thing(0);
    yard.book.add(kind.clone());
    let hive = yard.hive("1");
    let boxes = [(BoxDepth::Medium, 2)];
    let put = yard.book.boxes_on(&pen("aa", on), before, on, &hive, 2, &boxes, &id, true).unwrap();
    yard.book.add(put.clone());
    let part = yard.book.standing().hives[&hive].boxes[2].id.clone();
    let off = yard.book.box_off(&pen("aa", on), before, on, &hive, &part, TrapsWent::Stock).unwrap();
    yard.book.add(off.clone());
    assert_eq!(yard.book.standing().kinds[&id].stock, 2);
    let mut late = yard.book.without(|entry| entry.id == kind[0].id);
    late.add(kind);
    assert_eq!(late, yard.book);
}
