//! What the book knows of traps in store.

use crate::support::{day, pen};
use crate::{Yard, trap};
use beetle_almanac::book::entry::{Check, Did, Ending, TrapsWent, What};
use beetle_almanac::book::fold::fold;
use beetle_almanac::book::id::ThingId;

fn stock(yard: &Yard) -> u32 {
    let standing = yard.book.standing();
    assert_eq!(*standing, fold(yard.book.log()));
    standing.kinds[&yard.kind()].stock
}

fn traps(yard: &Yard, tag: &str) -> Vec<ThingId> {
    yard.book.standing().hives[&yard.hive(tag)].traps().map(|trap| trap.id.clone()).collect()
}

fn off(yard: &mut Yard, tag: &str, count: usize, on: &str, went: TrapsWent) {
    let (day, hive) = (day(on), yard.hive(tag));
    let traps = traps(yard, tag)[..count].to_vec();
    let what = What::TrapsOff { hive, traps, went };
    let entries = yard.book.about_yard(&pen("aa", day), day, day, &yard.id, what).unwrap();
    yard.book.add(entries);
}

fn missing(yard: &mut Yard, tag: &str, on: &str) {
    let (day, first) = (day(on), traps(yard, tag)[0].clone());
    let hive = yard.hive(tag);
    let work = Check {
        hive,
        traps: Some(vec![first]),
        did: Did::Missing,
        before: None,
        after: None,
        count: None,
        note: None,
    };
    let entries = yard.book.check(&pen("aa", day), day, day, work).unwrap();
    yard.book.add(entries);
}

#[test]
fn traps_put_to_stock_are_in_store_and_those_thrown_away_or_lost_are_not() {
    let mut yard = Yard::new(&["1", "2"], day("2026-07-01"));
    assert_eq!(stock(&yard), 0);
    off(&mut yard, "1", 2, "2026-07-02", TrapsWent::Stock);
    off(&mut yard, "1", 1, "2026-07-03", TrapsWent::Bin);
    off(&mut yard, "2", 1, "2026-07-04", TrapsWent::Lost);
    assert_eq!(stock(&yard), 2);
}

#[test]
fn traps_put_into_a_hive_come_out_of_the_store_and_it_is_never_below_nothing() {
    let mut yard = Yard::new(&["1", "2"], day("2026-07-01"));
    off(&mut yard, "1", 1, "2026-07-02", TrapsWent::Stock);
    // One that is missing is put in again: from the store.
    missing(&mut yard, "2", "2026-07-03");
    assert_eq!(stock(&yard), 1);
    yard.log("2", day("2026-07-04"), Did::Replaced, (None, Some(50)));
    assert_eq!(stock(&yard), 0);
    missing(&mut yard, "2", "2026-07-05");
    yard.log("2", day("2026-07-06"), Did::Replaced, (None, Some(50)));
    assert_eq!(stock(&yard), 0);
}

#[test]
fn a_box_or_a_hive_that_goes_gives_its_traps_to_the_store_but_no_trap_that_is_missing() {
    let mut yard = Yard::new(&["1", "2"], day("2026-07-01"));
    missing(&mut yard, "1", "2026-07-02");
    let on = day("2026-07-03");
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let what = What::BoxOff { hive, part, traps: TrapsWent::Stock };
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
    yard.book.add(entries);
    assert_eq!(stock(&yard), 1);
    let hive = yard.hive("2");
    let ended =
        yard.book.end_hive(&pen("aa", on), on, on, &hive, Ending::Dead, Some(TrapsWent::Stock)).unwrap();
    yard.book.add(ended);
    assert_eq!(stock(&yard), 5);
}

#[test]
fn another_description_of_a_kind_leaves_its_store() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    off(&mut yard, "1", 2, "2026-07-02", TrapsWent::Stock);
    let on = day("2026-07-03");
    let mut now = trap();
    now.max_days = 10;
    let entries =
        yard.book.about_keeper(&pen("aa", on), on, What::KindChanged { kind: yard.kind(), now }).unwrap();
    yard.book.add(entries);
    assert_eq!(stock(&yard), 2);
}

/// One phone takes the upper box off, the other puts traps into both.
#[test]
fn traps_for_a_box_that_is_gone_stay_in_store_and_the_others_leave_it() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    off(&mut yard, "1", 4, "2026-07-02", TrapsWent::Stock);
    let on = day("2026-07-03");
    let hive = yard.hive("1");
    let boxes = &yard.book.standing().hives[&hive].boxes;
    for gone in [boxes[0].id.clone(), boxes[1].id.clone()] {
        let off = yard.book.box_off(&pen("aa", on), on, on, &hive, &gone, TrapsWent::Stock).unwrap();
        let put = yard.book.traps_on(&pen("bb", on), on, on, &hive, &yard.kind()).unwrap();
        let mut both = Yard { book: yard.book.clone(), id: yard.id.clone(), start: yard.start };
        both.book.add(off);
        both.book.add(put);
        assert_eq!((traps(&both, "1").len(), stock(&both)), (2, 2));
        assert_eq!(both.book.standing().orphans, 1, "it speaks of a box that is not there");
    }
}
