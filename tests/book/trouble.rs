//! Traps that do not fish, and what work on their hive makes of them.

use crate::support::{day, pen};
use crate::{Yard, trap};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::round::walk::rest;
use beetle_almanac::book::entry::{Check, Did, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::round;
use beetle_almanac::book::standing::{TrapNow, Trouble};
use beetle_almanac::book::write::Refusal;

/// Writes work on `tag` on `on`, on the traps with these numbers from the floor up, or on all of them.
fn log(yard: &mut Yard, tag: &str, on: &str, did: Did, nth: Option<&[usize]>) -> Result<(), Refusal> {
    let on = day(on);
    let hive = yard.hive(tag);
    let ids: Vec<ThingId> = traps(yard, tag).into_iter().map(|trap| trap.id).collect();
    let traps = nth.map(|nth| nth.iter().map(|at| ids[*at].clone()).collect());
    let after = matches!(did, Did::ToppedUp | Did::Replaced).then_some(Share::HALF);
    let work = Check { hive, traps, did, before: None, after, count: None, note: None };
    yard.book.add(yard.book.check(&pen("aa", on), on, on, work)?);
    Ok(())
}

fn traps(yard: &Yard, tag: &str) -> Vec<TrapNow> {
    yard.book.standing().hives[&yard.hive(tag)].traps().cloned().collect()
}

fn troubles(yard: &Yard, tag: &str) -> Vec<Option<Trouble>> {
    traps(yard, tag).iter().map(|trap| trap.trouble).collect()
}

#[test]
fn a_missing_trap_stays_missing_when_its_hive_is_topped_up_and_the_others_are_filled() {
    for (found, trouble) in [(Did::Missing, Trouble::Missing), (Did::GluedShut, Trouble::GluedShut)] {
        let mut yard = Yard::new(&["10"], day("2026-07-01"));
        log(&mut yard, "10", "2026-07-06", found, Some(&[1])).unwrap();
        log(&mut yard, "10", "2026-07-15", Did::ToppedUp, None).unwrap();
        assert_eq!(troubles(&yard, "10"), [None, Some(trouble), None, None]);
        let services: Vec<String> = traps(&yard, "10").iter().map(|trap| trap.service.to_string()).collect();
        assert_eq!(services, ["2026-07-15", "2026-07-01", "2026-07-15", "2026-07-15"]);
        let row = round::rows(yard.book.standing(), &yard.id, day("2026-07-15")).remove(0);
        assert!(row.still_due() && row.trouble == Some(trouble) && !row.stuck);
        log(&mut yard, "10", "2026-07-16", Did::AsFound, None).unwrap();
        log(&mut yard, "10", "2026-07-17", Did::Spilled, None).unwrap();
        assert_eq!(troubles(&yard, "10")[1], Some(trouble));
        log(&mut yard, "10", "2026-07-18", Did::Replaced, None).unwrap();
        assert_eq!(troubles(&yard, "10"), [None; 4]);
    }
}

#[test]
fn spilled_traps_are_filled_again_by_topping_up() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    log(&mut yard, "1", "2026-07-06", Did::Spilled, None).unwrap();
    log(&mut yard, "1", "2026-07-07", Did::ToppedUp, None).unwrap();
    assert_eq!(troubles(&yard, "1"), [None; 4]);
}

#[test]
fn where_every_trap_is_missing_nothing_can_be_topped_up_and_a_glued_one_only_by_name() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    log(&mut yard, "1", "2026-07-06", Did::Missing, Some(&[0, 1, 2])).unwrap();
    log(&mut yard, "1", "2026-07-06", Did::GluedShut, Some(&[3])).unwrap();
    let refused = Err(Refusal::NoneFishes);
    assert_eq!(log(&mut yard, "1", "2026-07-15", Did::ToppedUp, None), refused);
    assert_eq!(log(&mut yard, "1", "2026-07-15", Did::ToppedUp, Some(&[0])), refused);
    log(&mut yard, "1", "2026-07-15", Did::ToppedUp, Some(&[3])).unwrap();
    assert_eq!(troubles(&yard, "1")[2..], [Some(Trouble::Missing), None]);
    // On a day before they were found so, they could be.
    log(&mut yard, "1", "2026-07-05", Did::ToppedUp, Some(&[0])).unwrap();
}

#[test]
fn the_rest_as_usual_fills_the_others_of_a_hive_and_leaves_out_one_of_which_every_trap_is_missing() {
    let mut yard = Yard::new(&["1", "2", "3"], day("2026-07-01"));
    log(&mut yard, "1", "2026-07-06", Did::Missing, None).unwrap();
    log(&mut yard, "2", "2026-07-06", Did::Missing, Some(&[0])).unwrap();
    let on = day("2026-07-15");
    let rows = round::rows(yard.book.standing(), &yard.id, on);
    let left = rest(&rows, &|_| false);
    assert_eq!(left, [yard.hive("2"), yard.hive("3")]);
    let all = [yard.hive("1"), yard.hive("2"), yard.hive("3")];
    let written = yard.book.same_for_all(&pen("aa", on), on, on, &all, Did::ToppedUp).unwrap();
    assert_eq!(written.len(), 2);
    yard.book.add(written);
    assert_eq!(troubles(&yard, "2"), [Some(Trouble::Missing), None, None, None]);
}

#[test]
fn a_missing_trap_of_another_kind_does_not_hide_the_level_that_topping_up_leaves() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    let (on, hive) = (day("2026-07-02"), yard.hive("1"));
    let mut other = trap();
    other.fill = Share::QUARTER;
    let kind = yard.book.about_keeper(&pen("aa", on), on, What::Kind(other)).unwrap();
    let id = kind[0].id.thing(0);
    yard.book.add(kind);
    let boxes = [(BoxDepth::Medium, 1)];
    let more = yard.book.boxes_on(&pen("aa", on), on, on, &hive, 2, &boxes, &id, true).unwrap();
    yard.book.add(more);
    log(&mut yard, "1", "2026-07-06", Did::Missing, Some(&[4])).unwrap();
    let level = yard.book.usual_level(&yard.book.standing().hives[&hive], Did::ToppedUp, None);
    assert_eq!(level, Some(Share::HALF));
}
