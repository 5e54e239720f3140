//! Traps on the round: put in, topped up, logged one by one.

use crate::support::{Unicode, day, pen};
use crate::{Yard, trap};
use beetle_almanac::almanac::oil::Service;
use beetle_almanac::almanac::stack::{BoxDepth, Corner, Spot};
use beetle_almanac::book::entry::{Did, What};
use beetle_almanac::book::round::{self};
use beetle_almanac::book::write::{HivePlan, KindChoice};

#[test]
fn a_reusable_trap_is_topped_up_from_the_level_it_will_have_sunk_to() {
    let mut kind = trap();
    kind.reusable = true;
    kind.max_days = 10;
    let mut yard = Yard::with(&["1"], day("2026-05-01"), &kind);
    yard.log("1", day("2026-05-11"), Did::ToppedUp, (Some(40), Some(50)));
    // One point a day; after 10 days 40 % is left: 4 traps × 20 mL × 10 % = 8 mL.
    let quarter = beetle_almanac::almanac::quantity::Share::QUARTER;
    let need = round::yard_need(yard.book.standing(), &yard.id, day("2026-05-21"), quarter);
    assert!((need.oil.sum.millilitres() - 8.0).abs() < 1e-9, "{:?}", need.oil);
}

#[test]
fn traps_not_placed_yet_are_asked_for_and_then_placed_on_free_corners() {
    let start = day("2026-05-01");
    let mut yard = Yard::new(&["1"], start);
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let wants = What::BoxWants { hive: hive.clone(), part, traps: 4 };
    let more = yard.book.about_yard(&pen("aa", start), start, start, &yard.id, wants).unwrap();
    yard.book.add(more);
    assert_eq!(yard.book.standing().hives[&hive].wanting(), 2);
    let placed = yard.book.traps_on(&pen("aa", start), start, start, &hive, &yard.kind()).unwrap();
    yard.book.add(placed);
    let mut spots: Vec<Spot> =
        yard.book.standing().hives[&hive].boxes[0].traps.iter().map(|trap| trap.spot).collect();
    spots.sort();
    assert_eq!(spots, Corner::ALL.map(Spot::Corner));
    assert_eq!(yard.book.standing().hives[&hive].wanting(), 0);
}

#[test]
fn traps_still_to_be_put_in_are_brought_with_their_first_fill() {
    let start = day("2026-05-01");
    let mut yard = Yard::new(&["1", "2"], start);
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let wants = What::BoxWants { hive, part, traps: 4 };
    let more = yard.book.about_yard(&pen("aa", start), start, start, &yard.id, wants).unwrap();
    yard.book.add(more);
    let quarter = beetle_almanac::almanac::quantity::Share::QUARTER;
    let need = |on| round::yard_need(yard.book.standing(), &yard.id, day(on), quarter);
    // Nothing is due yet, but two places stand empty: 2 traps × 20 mL × ½ = 20 mL, + 25 % = 25 mL.
    let early = need("2026-05-14");
    assert_eq!((early.hives, early.traps, early.missing, early.wanting), (0, 0, 2, 2));
    assert_eq!(early.oil.lines.iter().map(|line| line.traps).collect::<Vec<_>>(), [2]);
    assert!((early.oil.sum.millilitres() - 20.0).abs() < 1e-9);
    assert!((early.oil.with_reserve.millilitres() - 25.0).abs() < 1e-9);
    // With the 8 traps that fall due: 80 mL + 20 mL, each with a line of its own; + 25 % = 125 mL.
    let due = need("2026-05-15");
    assert_eq!((due.hives, due.traps, due.missing, due.wanting), (2, 8, 2, 2));
    let lines: Vec<(u32, Service)> = due.oil.lines.iter().map(|line| (line.traps, line.service)).collect();
    assert_eq!(lines, [(8, Service::Fill), (2, Service::First)]);
    assert!((due.oil.sum.millilitres() - 100.0).abs() < 1e-9);
    assert!((due.oil.with_reserve.millilitres() - 125.0).abs() < 1e-9);
    // While trap work rests, nothing is put in.
    let on = day("2026-05-20");
    let pause = What::Season { yard: yard.id.clone(), running: false };
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, pause).unwrap();
    yard.book.add(entries);
    let rest = round::yard_need(yard.book.standing(), &yard.id, on, quarter);
    assert_eq!((rest.missing, rest.oil.sum.millilitres()), (0, 0.0));
}

#[test]
fn a_single_trap_can_be_logged_and_the_others_keep_their_dates() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let trap = yard.book.standing().hives[&hive].boxes[1].traps[0].id.clone();
    let on = day("2026-05-10");
    let work = beetle_almanac::book::entry::Check {
        hive: hive.clone(),
        traps: Some(vec![trap.clone()]),
        did: Did::Replaced,
        before: None,
        after: Some(beetle_almanac::almanac::quantity::Share::HALF),
        count: None,
        note: None,
    };
    let entries = yard.book.check(&pen("aa", on), on, on, work).unwrap();
    yard.book.add(entries);
    let dues = round::trap_dues(yard.book.standing(), &yard.book.standing().hives[&hive], None, on);
    for due in dues {
        let expected = if due.trap == trap { "2026-05-24" } else { "2026-05-15" };
        assert_eq!(due.on.to_string(), expected);
    }
}

#[test]
fn a_hive_wants_the_kind_its_yard_was_kept_with_until_a_trap_is_in() {
    let on = day("2026-05-01");
    let mut yard = Yard::new(&["9"], on);
    let bare = HivePlan { filled: None, ..crate::plan(&["1", "2"], &[(BoxDepth::Deep, 2)], on) };
    let mut own = trap();
    own.name = "Own".to_owned();
    let kept = yard.book.keep_yard(&pen("aa", on), "Kiln", "UTC", &KindChoice::New(own), &bare).unwrap();
    let (kiln, own) = (kept[0].id.thing(0), kept[1].id.thing(0));
    yard.book.add(kept);
    let wants = |yard: &Yard, tag: &str| {
        let standing = yard.book.standing();
        let (_, hive) = standing.hives.iter().find(|(_, hive)| hive.tag == tag).unwrap();
        round::likely_kind(standing, &hive.yard, Some(hive)).cloned()
    };
    assert_eq!(wants(&yard, "1"), Some(own.clone()));
    // A hive with other traps comes into the yard, and one that waits for its own leaves it.
    for (tag, to) in [("9", kiln.clone()), ("2", yard.id.clone())] {
        let hive = yard.book.standing().hives.iter().find(|(_, hive)| hive.tag == tag).unwrap().0.clone();
        let moved = yard.book.move_hive(&pen("aa", on), on, on, &hive, &to, None, &Unicode).unwrap();
        yard.book.add(moved);
    }
    assert_eq!([wants(&yard, "1"), wants(&yard, "2")], [Some(own.clone()), Some(own)]);
    assert_eq!(wants(&yard, "9"), Some(yard.kind()));
}
