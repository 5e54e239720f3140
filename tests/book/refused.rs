//! What the book refuses or asks about, each case named after what the keeper did.

use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, EntryError, TrapsWent, What};
use beetle_almanac::book::round;
use beetle_almanac::book::write::{Doubt, HivePlan, KindChoice, MOST_HIVES, Refusal};
use beetle_almanac::papers::backup;

pub(crate) fn work(yard: &Yard, did: Did, before: Option<u32>, after: Option<u32>) -> Check {
    let level = |percent| Share::from_percent(Decimal::whole(percent)).unwrap();
    Check {
        hive: yard.hive("1"),
        traps: None,
        did,
        before: before.map(level),
        after: after.map(level),
        count: None,
        note: None,
    }
}

#[test]
fn keeper_keeps_a_yard_without_hives() {
    let yard = Yard::new(&[], day("2026-05-01"));
    assert_eq!(yard.book.standing().hives_of(&yard.id, true).count(), 0);
    assert!(beetle_almanac::book::round::rows(yard.book.standing(), &yard.id, yard.start).is_empty());
}

#[test]
fn keeper_adds_a_hive_with_the_tag_of_another() {
    let yard = Yard::new(&["12", "12b"], day("2026-05-01"));
    let plan = plan(&["12"], &[(BoxDepth::Deep, 2)], yard.start);
    let kind = KindChoice::Known(yard.kind());
    let refused = yard.book.add_hives(&pen("aa", yard.start), &yard.id, &kind, &plan, &Unicode);
    assert_eq!(refused, Err(Refusal::TagTaken { free: "12c".to_owned() }));
}

#[test]
fn keeper_types_a_tag_that_differs_only_in_how_its_accent_is_stored() {
    let yard = Yard::new(&["Ruche \u{e9}"], day("2026-05-01"));
    let plan = plan(&["ruche e\u{301}"], &[(BoxDepth::Deep, 2)], yard.start);
    let kind = KindChoice::Known(yard.kind());
    let refused = yard.book.add_hives(&pen("aa", yard.start), &yard.id, &kind, &plan, &Unicode);
    assert!(matches!(refused, Err(Refusal::TagTaken { .. })));
}

#[test]
fn keeper_gives_two_yards_a_hive_of_the_same_tag() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let kind = KindChoice::Known(yard.kind());
    let plan = plan(&["1"], &[(BoxDepth::Deep, 2)], yard.start);
    let second = yard.book.keep_yard(&pen("aa", yard.start), "Kiln Bank", "UTC", &kind, &plan).unwrap();
    assert_eq!(yard.book.add(second), 2);
}

#[test]
fn keeper_pastes_a_thousand_hives() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let tags: Vec<String> = (2..=1001).map(|n| n.to_string()).collect();
    let mut plan = plan(&[], &[(BoxDepth::Deep, 2)], yard.start);
    plan.tags = tags;
    let kind = KindChoice::Known(yard.kind());
    let refused = yard.book.add_hives(&pen("aa", yard.start), &yard.id, &kind, &plan, &Unicode);
    assert_eq!(refused, Err(Refusal::TooManyHives { most: MOST_HIVES }));
}

#[test]
fn keeper_logs_work_for_tomorrow() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let refused = yard.book.check(
        &pen("aa", yard.start),
        day("2026-05-03"),
        day("2026-05-02"),
        work(&yard, Did::ToppedUp, None, Some(50)),
    );
    assert_eq!(refused, Err(Refusal::Future { today: day("2026-05-02") }));
}

#[test]
fn keeper_remembers_work_from_before_the_last_service() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.log("1", day("2026-05-20"), Did::ToppedUp, (None, Some(50)));
    let backdated = work(&yard, Did::ToppedUp, None, Some(50));
    let on = day("2026-05-10");
    assert_eq!(yard.book.doubts(on, &backdated), [Doubt::Backdated]);
    let entries = yard.book.check(&pen("aa", day("2026-05-21")), on, day("2026-05-21"), backdated).unwrap();
    yard.book.add(entries);
    let hive = &yard.book.standing().hives[&yard.hive("1")];
    assert!(hive.traps().all(|trap| trap.service == day("2026-05-20")), "the later service still counts");
}

#[test]
fn keeper_swaps_the_levels_of_a_top_up() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let swapped = work(&yard, Did::ToppedUp, Some(50), Some(20));
    assert_eq!(yard.book.doubts(day("2026-05-10"), &swapped), [Doubt::Swapped]);
}

#[test]
fn keeper_finds_more_oil_than_was_left() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let rose = work(&yard, Did::AsFound, Some(70), None);
    assert_eq!(yard.book.doubts(day("2026-05-10"), &rose), [Doubt::Rose { from: Share::HALF }]);
    yard.log("1", day("2026-05-10"), Did::AsFound, (Some(70), None));
    let hive = &yard.book.standing().hives[&yard.hive("1")];
    assert_eq!(hive.rose, Some(day("2026-05-10")));
    assert!(hive.losses.is_empty(), "a level that rose says nothing about loss");
}

#[test]
fn keeper_takes_the_empty_level_for_a_level_left_out() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-05-10");
    for did in [Did::ToppedUp, Did::Replaced] {
        assert_eq!(yard.book.doubts(on, &work(&yard, did, Some(20), Some(0))), [Doubt::NoOil]);
        assert_eq!(yard.book.doubts(on, &work(&yard, did, Some(0), Some(1))), []);
    }
    assert_eq!(yard.book.doubts(on, &work(&yard, Did::AsFound, Some(0), Some(0))), []);
}

#[test]
fn keeper_counts_five_thousand_beetles() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let mut many = work(&yard, Did::ToppedUp, None, Some(50));
    many.count = Some(CountRange::exact(5000));
    assert_eq!(yard.book.doubts(day("2026-05-10"), &many), [Doubt::Many]);
}

#[test]
fn keeper_counts_beetles_on_the_day_the_trap_was_placed() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let mut counted = work(&yard, Did::AsFound, None, None);
    counted.count = Some(CountRange::exact(3));
    let on = yard.start;
    let entries = yard.book.check(&pen("aa", on), on, on, counted).unwrap();
    yard.book.add(entries);
    let hive = &yard.book.standing().hives[&yard.hive("1")];
    assert_eq!(hive.catches[0].trap_days, 0);
}

#[test]
fn keeper_logs_the_same_hive_twice_on_a_day() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-05-10");
    yard.log("1", on, Did::ToppedUp, (None, Some(50)));
    assert_eq!(yard.book.doubts(on, &work(&yard, Did::ToppedUp, None, Some(50))), [Doubt::Twice]);
    yard.log("1", on, Did::ToppedUp, (None, Some(50)));
    assert_eq!(yard.book.log().len(), 5, "both are kept");
}

#[test]
fn keeper_logs_work_on_a_dead_hive() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-06-01");
    let dead = yard.book.end_hive(&pen("aa", on), on, on, &yard.hive("1"), Ending::Dead, None).unwrap();
    yard.book.add(dead);
    let later = day("2026-06-10");
    let refused = yard.book.check(&pen("aa", later), later, later, work(&yard, Did::ToppedUp, None, None));
    assert_eq!(refused, Err(Refusal::Ended { how: Ending::Dead, on }));
    let back = What::HiveBack { hive: yard.hive("1") };
    let back = yard.book.about_yard(&pen("aa", later), later, later, &yard.id, back).unwrap();
    yard.book.add(back);
    assert!(yard.book.check(&pen("aa", later), later, later, work(&yard, Did::ToppedUp, None, None)).is_ok());
}

#[test]
fn keeper_gives_the_tag_of_a_dead_hive_to_a_new_one() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-06-01");
    let dead = yard.book.end_hive(&pen("aa", on), on, on, &yard.hive("1"), Ending::Dead, None).unwrap();
    yard.book.add(dead);
    assert!(yard.book.tag_free(&yard.id, None, "1", &Unicode).is_ok());
}

#[test]
fn keeper_moves_a_hive_to_the_yard_it_stands_in() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let on = yard.start;
    let refused = yard.book.move_hive(&pen("aa", on), on, on, &yard.hive("1"), &yard.id, None, &Unicode);
    assert_eq!(refused, Err(Refusal::SameYard));
}

#[test]
fn keeper_logs_forty_hives_at_once_and_takes_it_back_with_one_undo() {
    let tags: Vec<String> = (1..=40).map(|n| n.to_string()).collect();
    let mut yard = Yard::new(&tags.iter().map(String::as_str).collect::<Vec<_>>(), day("2026-05-01"));
    let on = day("2026-05-15");
    let before = yard.book.standing().clone();
    let hives: Vec<_> = tags.iter().map(|tag| yard.hive(tag)).collect();
    let bulk = yard.book.same_for_all(&pen("aa", on), on, on, &hives, Did::ToppedUp).unwrap();
    assert_eq!(bulk.len(), 40);
    let last = bulk[39].id.clone();
    yard.book.add(bulk);
    let together = yard.book.together(&last);
    assert_eq!(together.len(), 40);
    let strike = yard.book.strike(&pen("aa", on), on, &together, &Unicode).unwrap();
    let struck = strike[0].id.clone();
    yard.book.add(strike);
    assert_eq!(*yard.book.standing(), before);
    // And the undo can be undone.
    let redo = yard.book.strike(&pen("aa", on), on, &[struck], &Unicode).unwrap();
    yard.book.add(redo);
    let hive = &yard.book.standing().hives[&yard.hive("40")];
    assert!(hive.traps().all(|trap| trap.service == on));
}

#[test]
fn keeper_logs_work_on_hives_whose_traps_are_not_in_yet() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let (on, pen) = (yard.start, pen("aa", yard.start));
    let kind = KindChoice::Known(yard.kind());
    let bare = HivePlan { filled: None, ..plan(&["2", "3"], &[(BoxDepth::Deep, 2)], on) };
    let bare = yard.book.add_hives(&pen, &yard.id, &kind, &bare, &Unicode).unwrap();
    yard.book.add(bare);
    let at = |yard: &Yard, tag: &str, did| Check { hive: yard.hive(tag), ..work(yard, did, None, None) };
    for did in [Did::ToppedUp, Did::Replaced, Did::Spilled, Did::Missing, Did::GluedShut] {
        let refused = yard.book.check(&pen, on, on, at(&yard, "2", did));
        assert_eq!(refused, Err(Refusal::NoTraps { wanting: 2 }));
    }
    // A look is a look, and leaves the hive wanting.
    let look = yard.book.check(&pen, on, on, at(&yard, "2", Did::AsFound)).unwrap();
    yard.book.add(look);
    // "The rest as usual" passes them over.
    let all = ["1", "2", "3"].map(|tag| yard.hive(tag));
    let rest = yard.book.same_for_all(&pen, on, on, &all, Did::ToppedUp).unwrap();
    assert_eq!(rest.len(), 1);
    yard.book.add(rest);
    let visit = |yard: &Yard| round::visit(&round::rows(yard.book.standing(), &yard.id, on));
    assert_eq!((visit(&yard).left, visit(&yard).still_due), (1, 1));
    // The kind of the yard goes in, and the walk can be finished.
    let bare = &yard.book.standing().hives[&yard.hive("2")];
    assert_eq!(round::likely_kind(yard.book.standing(), &yard.id, Some(bare)), Some(&yard.kind()));
    for tag in ["2", "3"] {
        let work = at(&yard, tag, Did::AsFound);
        let placed = yard.book.traps_placed(&pen, on, on, &yard.kind(), work).unwrap();
        yard.book.add(placed);
        assert!(yard.book.check(&pen, on, on, at(&yard, tag, Did::ToppedUp)).is_ok());
    }
    assert!(visit(&yard).complete());
}

#[test]
fn keeper_writes_down_late_what_was_done_before_the_traps_came_out() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let (before, out) = (day("2026-05-10"), day("2026-05-20"));
    let hive = yard.hive("1");
    let traps = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
    let off = What::TrapsOff { hive, traps, went: TrapsWent::Stock };
    let off = yard.book.about_yard(&pen("aa", out), out, out, &yard.id, off).unwrap();
    yard.book.add(off);
    let check = |day| yard.book.check(&pen("aa", out), day, out, work(&yard, Did::ToppedUp, None, None));
    assert!(check(before).is_ok());
    assert!(matches!(check(out), Err(Refusal::NoTraps { .. })));
}

#[test]
fn keeper_takes_the_traps_out_of_a_dead_hive() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-06-01");
    let hive = yard.hive("1");
    let dead = yard.book.end_hive(&pen("aa", on), on, on, &hive, Ending::Dead, Some(TrapsWent::Bin)).unwrap();
    assert_eq!(dead.len(), 2);
    yard.book.add(dead.clone());
    assert_eq!(yard.book.together(&dead[0].id).len(), 2, "undone together");
    let now = &yard.book.standing().hives[&hive];
    assert!(!now.alive() && now.traps().next().is_none());
}

#[test]
fn keeper_puts_traps_back_on_the_day_they_were_found_missing_and_is_not_asked() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-05-10");
    let twice = |yard: &Yard| yard.book.doubts(on, &work(yard, Did::Replaced, None, Some(50)));
    yard.log("1", on, Did::Missing, (None, None));
    assert_eq!(twice(&yard), []);
    yard.log("1", on, Did::Replaced, (None, Some(50)));
    assert_eq!(twice(&yard), [Doubt::Twice]);
}

/// Neither "all traps" nor any: the form shows such a line as work on all of them.
#[test]
fn work_that_names_traps_and_none_of_them_comes_in_by_no_door() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let (on, pen) = (yard.start, pen("aa", yard.start));
    let none = Check { traps: Some(Vec::new()), ..work(&yard, Did::ToppedUp, None, Some(50)) };
    assert_eq!(yard.book.check(&pen, on, on, none.clone()), Err(Refusal::Nothing));
    let mut entries = yard.book.check(&pen, on, on, work(&yard, Did::ToppedUp, None, Some(50))).unwrap();
    yard.book.add(entries.clone());
    let line = entries[0].id.clone();
    let what = What::Check(none);
    assert_eq!(
        yard.book.correct(&pen, on, on, &line, what.clone(), &Unicode),
        Err(Refusal::Nothing),
        "nor by a correction"
    );
    let file = |entries: &[Entry]| {
        let log =
            yard.book.log().entries().filter(|entry| entry.id != line).chain(entries).cloned().collect();
        backup::write(&log, pen.at, None)
    };
    assert!(backup::open(&file(&entries)).is_ok());
    entries[0].what = what;
    assert_eq!(entries[0].check(), Err(EntryError::NamesNothing));
    assert!(backup::open(&file(&entries)).is_err(), "nor in a file");
}
