//! Due dates as the round shows them.

use crate::support::{Unicode, day, pen};
use crate::{Yard, trap, work_on};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::refill::{Limit, Loss, Timing};
use beetle_almanac::almanac::stack::{BoxDepth, Corner, Spot};
use beetle_almanac::almanac::trap::TrapKind;
use beetle_almanac::book::entry::{Check, Did, Ending, SkipReason, TrapsWent, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::round::{self, Because, HiveDue, Row};
use beetle_almanac::book::season::Season;
use beetle_almanac::book::standing::Trouble;

fn row(yard: &Yard, tag: &str, today: &str) -> Row {
    let hive = yard.hive(tag);
    round::rows(yard.book.standing(), &yard.id, day(today)).into_iter().find(|row| row.hive == hive).unwrap()
}

pub(crate) fn due(yard: &Yard, tag: &str, today: &str) -> (String, Timing, Because) {
    match row(yard, tag, today).due {
        HiveDue::Due { on, timing, because, .. } => (on.to_string(), timing, because),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_hive_filled_on_1_may_is_due_on_15_may_by_the_keepers_maximum() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let (on, timing, because) = due(&yard, "1", "2026-05-05");
    assert_eq!((on.as_str(), timing), ("2026-05-15", Timing::In { days: 10 }));
    assert!(
        matches!(because, Because::Limit(refill) if refill.decided_by == Limit::YourMaximum { days: 14 })
    );
}

#[test]
fn oil_that_sinks_fast_brings_the_date_forward_and_says_so() {
    // Worked by hand: floor 6 mm of 20 mm is 30 %; 50 → 40 % in 5 days is 2 points a day; (50 − 30) ÷ 2 = 10 days.
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.log("1", day("2026-05-06"), Did::ToppedUp, (Some(40), Some(50)));
    let (on, _, because) = due(&yard, "1", "2026-05-06");
    assert_eq!(on, "2026-05-16");
    let Because::Limit(refill) = because else { panic!() };
    assert!(matches!(refill.decided_by, Limit::OilLow { days: 10, .. }));
    assert_eq!(refill.also, [Limit::YourMaximum { days: 14 }]);
}

#[test]
fn what_the_round_called_overdue_the_season_report_does_not_call_on_time() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    // Two points a day, as above: due on 16 May, though the trap may wait for a fortnight.
    yard.log("1", day("2026-05-06"), Did::ToppedUp, (Some(40), Some(50)));
    assert_eq!(due(&yard, "1", "2026-05-17").1, Timing::Overdue { days: 1 });
    yard.log("1", day("2026-05-17"), Did::ToppedUp, (Some(28), Some(50)));
    assert_eq!(due(&yard, "1", "2026-05-27").1, Timing::Today);
    yard.log("1", day("2026-05-27"), Did::ToppedUp, (Some(30), Some(50)));
    let all = Season::of(&yard.book, &yard.id, day("2026-05-01"), day("2026-05-31")).yard;
    assert_eq!((all.gaps, all.judged, all.on_time), (vec![10, 11], 3, 2));
}

/// A keeper's hive of four traps that may wait for 14 days: 17 days to the first refill, then a look on the day it was due, and
/// the refill 14 days after that.
#[test]
fn what_ends_a_due_day_in_the_round_ends_it_in_the_season_report_and_nothing_else() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let season = |yard: &Yard, to: &str| {
        let of = Season::of(&yard.book, &yard.id, day("2026-05-01"), day(to)).hives.remove(0).1;
        (of.gaps, (of.on_time, of.judged), of.still_due)
    };
    yard.log("1", day("2026-05-18"), Did::Replaced, (None, Some(50)));
    assert_eq!(season(&yard, "2026-05-31"), (vec![], (0, 1), None), "three days late, the first time too");
    yard.log("1", day("2026-05-25"), Did::AsFound, (None, None));
    assert_eq!(season(&yard, "2026-05-31"), (vec![7], (0, 1), None), "a look on the way");
    yard.log("1", day("2026-06-01"), Did::AsFound, (None, None));
    assert!(row(&yard, "1", "2026-06-01").still_due());
    assert_eq!(season(&yard, "2026-06-01"), (vec![7, 7], (0, 1), None), "due today");
    assert_eq!(season(&yard, "2026-06-02"), (vec![7, 7], (0, 2), Some(day("2026-06-01"))));
    yard.log("1", day("2026-06-15"), Did::Replaced, (None, Some(50)));
    assert_eq!(
        season(&yard, "2026-06-15"),
        (vec![7, 7, 14], (0, 2), None),
        "28 days after the filling before"
    );
    yard.log("1", day("2026-06-29"), Did::Replaced, (None, Some(50)));
    assert_eq!(season(&yard, "2026-06-29").1, (1, 3));
    // Of a report that ends before that refill the hive is named, and no visit was made.
    assert_eq!(season(&yard, "2026-05-16"), (vec![], (0, 1), Some(day("2026-05-15"))));
}

/// Of four traps one is filled again after a spill, or two are topped up early: the others stay due on 15 May.
#[test]
fn a_hive_that_was_filled_in_parts_has_one_due_day_all_the_same() {
    for (first, did) in [(1, Did::Spilled), (2, Did::ToppedUp)] {
        let mut yard = Yard::new(&["1"], day("2026-05-01"));
        let hive = yard.hive("1");
        let traps: Vec<_> = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
        let mut work = |on: &str, did, traps: &[ThingId]| {
            let after = Some(Share::HALF);
            let work = Check { traps: Some(traps.to_vec()), after, ..work_on(hive.clone(), did) };
            let entries = yard.book.check(&pen("aa", day(on)), day(on), day(on), work).unwrap();
            yard.book.add(entries);
            let all = Season::of(&yard.book, &yard.id, day("2026-05-01"), day(on)).yard;
            (all.on_time, all.judged)
        };
        assert_eq!(work("2026-05-05", did, &traps[..first]), (0, 0), "{did:?}");
        assert_eq!(work("2026-05-18", Did::ToppedUp, &traps[first..]), (0, 1), "{did:?}: three days late");
        assert_eq!(work("2026-05-19", Did::ToppedUp, &traps), (1, 2), "{did:?}");
    }
}

/// Due on 15 May and left alone, until it stands on the Round no longer.
#[test]
fn a_hive_that_was_overdue_when_it_left_the_round_was_late() {
    let start = || Yard::new(&["1"], day("2026-05-01"));
    let write = |yard: &mut Yard, on: &str, what: What| {
        let entries = yard.book.about_yard(&pen("aa", day(on)), day(on), day(on), &yard.id, what).unwrap();
        yard.book.add(entries);
    };
    let rests = |yard: &mut Yard, on: &str, running| {
        let of = yard.id.clone();
        write(yard, on, What::Season { yard: of, running });
    };
    let ends = |yard: &mut Yard, on: &str, how| {
        let hive = yard.hive("1");
        let entries = yard.book.end_hive(&pen("aa", day(on)), day(on), day(on), &hive, how, None).unwrap();
        yard.book.add(entries);
    };
    let season = |yard: &Yard, from: &str, to: &str| {
        let hives = Season::of(&yard.book, &yard.id, day(from), day(to)).hives;
        hives.first().map_or((0, 0, None), |(_, of)| (of.on_time, of.judged, of.still_due))
    };
    let may_and_june = |yard: &Yard| season(yard, "2026-05-01", "2026-06-30");

    let mut paused = start();
    rests(&mut paused, "2026-06-01", false);
    assert_eq!(may_and_june(&paused), (0, 1, None));
    assert_eq!(season(&paused, "2026-05-01", "2026-05-31"), (0, 1, Some(day("2026-05-15"))));
    assert_eq!(season(&paused, "2026-06-01", "2026-06-30"), (0, 1, None), "overdue on the evening before");
    assert_eq!(season(&paused, "2026-06-02", "2026-06-30"), (0, 0, None), "that was before");
    // A look in the pause moves the day, and nobody missed a second one.
    let mut looked = Yard::new(&["1"], day("2026-05-01"));
    looked.log("1", day("2026-05-06"), Did::ToppedUp, (Some(40), Some(50)));
    rests(&mut looked, "2026-05-20", false);
    let june = |yard: &Yard| season(yard, "2026-05-07", "2026-06-10");
    assert_eq!(june(&looked), (0, 1, None));
    looked.log("1", day("2026-05-25"), Did::AsFound, (Some(42), None));
    rests(&mut looked, "2026-06-01", true);
    assert_eq!(due(&looked, "1", "2026-06-01").0, "2026-05-20");
    assert_eq!(june(&looked), (0, 1, Some(day("2026-05-20"))));
    // The day stays the same when the traps fish again: it was missed once.
    rests(&mut paused, "2026-06-10", true);
    assert_eq!(may_and_june(&paused), (0, 1, Some(day("2026-05-15"))));
    rests(&mut paused, "2026-06-12", false);
    assert_eq!(may_and_june(&paused), (0, 1, None));
    rests(&mut paused, "2026-06-14", true);
    paused.log("1", day("2026-06-20"), Did::Replaced, (None, Some(50)));
    assert_eq!(may_and_june(&paused), (0, 1, None));

    let mut given_up = start();
    let yard = given_up.id.clone();
    write(&mut given_up, "2026-06-01", What::YardClosed { yard });
    assert_eq!(may_and_june(&given_up), (0, 1, None), "its yard was given up");

    let mut bare = start();
    let hive = bare.hive("1");
    let traps = bare.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
    write(&mut bare, "2026-05-20", What::TrapsOff { hive, traps, went: TrapsWent::Stock });
    assert_eq!(may_and_june(&bare), (0, 1, None));

    for how in [Ending::Dead, Ending::Sold] {
        let mut ended = start();
        ended.log("1", day("2026-05-16"), Did::AsFound, (None, None));
        ends(&mut ended, "2026-05-16", how);
        assert_eq!(may_and_june(&ended), (0, 1, None));
    }
    // Filled late and paused on the day.
    let mut filled = start();
    filled.log("1", day("2026-05-18"), Did::Replaced, (None, Some(50)));
    rests(&mut filled, "2026-05-18", false);
    assert_eq!(may_and_june(&filled), (0, 1, None));
    // What is due on the very day is late for nobody yet.
    let mut in_time = start();
    in_time.log("1", day("2026-05-15"), Did::AsFound, (None, None));
    rests(&mut in_time, "2026-05-15", false);
    assert_eq!(may_and_june(&in_time), (0, 0, None));
}

#[test]
fn a_level_read_in_between_counts_from_the_day_it_was_read() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.log("1", day("2026-05-06"), Did::AsFound, (Some(40), None));
    // 2 points a day from 40 % on 6 May: 5 more days, though the service was on 1 May.
    let (on, _, because) = due(&yard, "1", "2026-05-06");
    assert_eq!(on, "2026-05-11");
    assert!(matches!(because, Because::Limit(refill) if refill.ahead == 5));
}

#[test]
fn a_hive_without_readings_uses_the_median_of_its_yard_once_three_others_have_one() {
    let mut yard = Yard::new(&["1", "2", "3", "4"], day("2026-05-01"));
    let loss = |yard: &Yard, tag| match due(yard, tag, "2026-05-06") {
        (on, _, Because::Limit(refill)) => (on, refill.loss),
        other => panic!("{other:?}"),
    };
    for (tag, found) in [("1", 45), ("3", 40), ("4", 20)] {
        assert_eq!(loss(&yard, "2"), ("2026-05-15".to_owned(), Loss::Unknown), "one or two do not accuse it");
        yard.log(tag, day("2026-05-06"), Did::ToppedUp, (Some(found), Some(50)));
    }
    // 1, 2 and 6 points a day: the one in the middle.
    assert_eq!(loss(&yard, "2"), ("2026-05-11".to_owned(), Loss::Yard { per_day: 2.0, intervals: 3 }));
    assert_eq!(loss(&yard, "3"), ("2026-05-16".to_owned(), Loss::Hive { per_day: 2.0, intervals: 1 }));
    // Of two hives one speaks for the other alone.
    let mut two = Yard::new(&["1", "2"], day("2026-05-01"));
    two.log("1", day("2026-05-06"), Did::ToppedUp, (Some(40), Some(50)));
    assert_eq!(loss(&two, "2"), ("2026-05-11".to_owned(), Loss::Yard { per_day: 2.0, intervals: 1 }));
}

#[test]
fn a_spilled_trap_is_due_from_the_day_it_was_found_and_its_days_are_not_counted() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.log("1", day("2026-05-06"), Did::Spilled, (Some(10), None));
    let (on, timing, because) = due(&yard, "1", "2026-05-07");
    assert_eq!((on.as_str(), timing), ("2026-05-06", Timing::Overdue { days: 1 }));
    assert_eq!(because, Because::Trouble(Trouble::Spilled));
    assert!(yard.book.standing().hives[&yard.hive("1")].losses.is_empty());
    yard.log("1", day("2026-05-07"), Did::Replaced, (None, Some(50)));
    assert_eq!(due(&yard, "1", "2026-05-07").0, "2026-05-21");
}

#[test]
fn a_spill_makes_no_overdue_hive_younger() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let overdue = |yard: &Yard| {
        let (on, timing, _) = due(yard, "1", "2026-06-20");
        (on, timing)
    };
    let before = overdue(&yard);
    assert_eq!(before, ("2026-05-15".to_owned(), Timing::Overdue { days: 36 }));
    yard.log("1", day("2026-06-08"), Did::Spilled, (None, None));
    assert_eq!(overdue(&yard), before);
}

#[test]
fn nor_does_it_where_the_oil_had_made_the_hive_due() {
    for did in [Did::Spilled, Did::Missing, Did::GluedShut] {
        let mut yard = Yard::with(&["1"], day("2026-05-01"), &TrapKind { max_days: 60, ..trap() });
        yard.log("1", day("2026-05-06"), Did::ToppedUp, (Some(40), Some(50)));
        assert_eq!(due(&yard, "1", "2026-05-26").0, "2026-05-16");
        yard.log("1", day("2026-05-26"), did, (None, None));
        assert_eq!(due(&yard, "1", "2026-05-26").0, "2026-05-16", "{did:?}");
        // A hive that was not due yet is due from the day on which it was found so, and one put right by its new oil.
        yard.log("1", day("2026-05-27"), Did::Replaced, (None, Some(50)));
        assert!(due(&yard, "1", "2026-05-27").0.as_str() > "2026-06-01");
        yard.log("1", day("2026-05-29"), did, (None, None));
        assert_eq!(due(&yard, "1", "2026-05-29").0, "2026-05-29", "{did:?}");
    }
}

#[test]
fn an_overdue_hive_counts_calendar_days() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    assert_eq!(due(&yard, "1", "2026-05-18").1, Timing::Overdue { days: 3 });
    assert_eq!(row(&yard, "1", "2026-05-18").days_since, Some(17));
}

#[test]
fn a_skipped_hive_keeps_its_clock_and_leads_the_next_list() {
    let mut yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let on = day("2026-05-15");
    for tag in ["1", "3"] {
        yard.log(tag, on, Did::ToppedUp, (None, Some(50)));
    }
    let skip = yard.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Weather, None).unwrap();
    yard.book.add(skip);
    let rows = round::rows(yard.book.standing(), &yard.id, on);
    let visit = round::visit(&rows);
    assert_eq!((visit.worked, visit.skipped, visit.left, visit.due), (2, 1, 0, 0));
    let before = |on| round::visit(&round::rows(yard.book.standing(), &yard.id, day(on)));
    // The next day the skipped one alone is due.
    assert_eq!((before("2026-05-16").left, before("2026-05-16").due), (3, 1));
    assert!(!visit.complete(), "a visit with a skipped hive is partial");
    assert_eq!(rows[0].hive, yard.hive("1"), "the list does not jump on the day itself");
    let next = round::rows(yard.book.standing(), &yard.id, day("2026-05-16"));
    assert_eq!(next[0].hive, yard.hive("2"));
    assert_eq!(due(&yard, "2", "2026-05-16").1, Timing::Overdue { days: 1 });
    yard.log("2", day("2026-05-16"), Did::ToppedUp, (None, Some(50)));
    let later = round::rows(yard.book.standing(), &yard.id, day("2026-05-17"));
    assert_eq!(later[0].hive, yard.hive("1"));
}

#[test]
fn a_new_box_brings_traps_on_the_other_diagonal_with_dates_of_their_own() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-05-10");
    let kind = yard.kind();
    let add = yard
        .book
        .boxes_on(&pen("aa", on), on, on, &yard.hive("1"), 2, &[(BoxDepth::Medium, 2)], &kind, true)
        .unwrap();
    yard.book.add(add);
    let hive = &yard.book.standing().hives[&yard.hive("1")];
    assert_eq!(hive.boxes.len(), 3);
    let spots: Vec<Spot> = hive.boxes[2].traps.iter().map(|trap| trap.spot).collect();
    assert_eq!(spots, [Spot::Corner(Corner::FrontLeft), Spot::Corner(Corner::BackRight)]);
    let dues = round::trap_dues(yard.book.standing(), hive, None, on);
    let dates: Vec<String> = dues.iter().map(|due| due.on.to_string()).collect();
    assert_eq!(dates, ["2026-05-15", "2026-05-15", "2026-05-15", "2026-05-15", "2026-05-24", "2026-05-24"]);
    match row(&yard, "1", "2026-05-15").due {
        HiveDue::Due { traps_due: 4, traps: 6, timing: Timing::Today, .. } => {}
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_box_taken_off_takes_its_traps_with_it_and_leaves_history_alone() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let on = day("2026-05-10");
    let off = yard.book.box_off(&pen("aa", on), on, on, &hive, &part, TrapsWent::Stock).unwrap();
    yard.book.add(off);
    let now = &yard.book.standing().hives[&hive];
    assert_eq!(now.boxes.len(), 1);
    let spots: Vec<Spot> = now.traps().map(|trap| trap.spot).collect();
    assert_eq!(spots, [Spot::Corner(Corner::FrontRight), Spot::Corner(Corner::BackLeft)]);
}

#[test]
fn in_a_paused_season_nothing_is_overdue() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let on = day("2026-11-01");
    let pause = What::Season { yard: yard.id.clone(), running: false };
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, pause).unwrap();
    yard.book.add(entries);
    for row in round::rows(yard.book.standing(), &yard.id, day("2027-01-15")) {
        assert_eq!(row.due, HiveDue::Resting { since: on });
    }
    let need = round::yard_need(
        yard.book.standing(),
        &yard.id,
        day("2027-01-15"),
        beetle_almanac::almanac::quantity::Share::QUARTER,
    );
    assert_eq!((need.hives, need.traps), (0, 0));
}

#[test]
fn the_yard_total_counts_due_traps_and_their_oil() {
    let yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let quarter = beetle_almanac::almanac::quantity::Share::QUARTER;
    let need = round::yard_need(yard.book.standing(), &yard.id, day("2026-05-15"), quarter);
    // 3 hives × 2 boxes × 2 traps × 20 mL × ½ = 120 mL, + 25 % = 150 mL.
    assert_eq!((need.hives, need.traps), (3, 12));
    assert!((need.oil.sum.millilitres() - 120.0).abs() < 1e-9);
    assert!((need.oil.with_reserve.millilitres() - 150.0).abs() < 1e-9);
    let early = round::yard_need(yard.book.standing(), &yard.id, day("2026-05-14"), quarter);
    assert_eq!((early.hives, early.traps), (0, 0));
}

#[test]
fn a_hive_carried_to_another_yard_keeps_its_traps_and_dates() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let on = day("2026-05-08");
    let second = yard
        .book
        .keep_yard(
            &pen("aa", on),
            "Kiln Bank",
            "Europe/Berlin",
            &beetle_almanac::book::write::KindChoice::Known(yard.kind()),
            &crate::plan(&["7"], &[(BoxDepth::Deep, 2)], on),
        )
        .unwrap();
    let to = second[0].id.thing(0);
    yard.book.add(second);
    let hive = yard.hive("2");
    let moved = yard.book.move_hive(&pen("aa", on), on, on, &hive, &to, None, &Unicode).unwrap();
    yard.book.add(moved);
    let there: Vec<String> =
        yard.book.standing().hives_of(&to, true).map(|(_, hive)| hive.tag.clone()).collect();
    assert_eq!(there, ["7", "2"]);
    let rows = round::rows(yard.book.standing(), &to, on);
    assert_eq!(rows[1].days_since, Some(7));
}

#[test]
fn work_on_a_hive_before_it_was_moved_is_no_walk_of_its_new_yard() {
    use beetle_almanac::app::round::walk::last_walked;
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let on = day("2026-05-08");
    let kind = beetle_almanac::book::write::KindChoice::Known(yard.kind());
    let plan = crate::plan(&["7"], &[(BoxDepth::Deep, 2)], day("2026-05-01"));
    let second = yard.book.keep_yard(&pen("aa", on), "Kiln Bank", "Europe/Berlin", &kind, &plan).unwrap();
    let to = second[0].id.thing(0);
    yard.book.add(second);
    yard.log("2", day("2026-05-07"), Did::ToppedUp, (None, Some(50)));
    let hive = yard.hive("2");
    let moved = yard.book.move_hive(&pen("aa", on), on, on, &hive, &to, None, &Unicode).unwrap();
    yard.book.add(moved);
    assert_eq!(last_walked(&yard.book, &to), None);
    let work = beetle_almanac::book::entry::Check {
        hive,
        traps: None,
        did: Did::AsFound,
        before: None,
        after: None,
        count: None,
        note: None,
    };
    let after = day("2026-05-09");
    let entries = yard.book.check(&pen("aa", after), after, after, work).unwrap();
    yard.book.add(entries);
    assert_eq!(last_walked(&yard.book, &to), Some(after));
    yard.log("1", on, Did::ToppedUp, (None, Some(50)));
    assert_eq!(last_walked(&yard.book, &yard.id), Some(on));
}

#[test]
fn a_spilled_hive_stays_due_until_it_is_filled_and_asks_for_a_second_look() {
    let mut yard = Yard::new(&["1"], day("2026-07-01"));
    let (on, by) = (day("2026-07-05"), day("2026-07-08"));
    yard.log("1", on, Did::Spilled, (None, None));
    let spilled = row(&yard, "1", "2026-07-05");
    assert!(spilled.still_due());
    assert_eq!((spilled.trouble, spilled.recheck), (Some(Trouble::Spilled), Some(by)));
    yard.log("1", on, Did::Replaced, (None, Some(50)));
    let filled = row(&yard, "1", "2026-07-05");
    assert!(!filled.still_due());
    assert_eq!((filled.trouble, filled.recheck), (None, Some(by)));
    assert_eq!(row(&yard, "1", "2026-07-08").recheck, Some(by));
    // On the day it comes to see, though no trap is due; once there, or where work rests, no longer.
    let looks = |yard: &Yard, on: &str| {
        let need = round::yard_need(yard.book.standing(), &yard.id, day(on), Share::QUARTER);
        let due = round::rows(yard.book.standing(), &yard.id, day(on))
            .iter()
            .filter(|row| row.look_due(day(on)))
            .count();
        (need.hives, need.looks, due)
    };
    assert_eq!(looks(&yard, "2026-07-07"), (0, 0, 0));
    assert_eq!(looks(&yard, "2026-07-08"), (0, 1, 1));
    assert_eq!(looks(&yard, "2026-07-09"), (0, 1, 1));
    // Missed, it is still wanted.
    assert_eq!(row(&yard, "1", "2026-07-20").recheck, Some(by));
    // In a pause nobody is told so.
    let pause = What::Season { yard: yard.id.clone(), running: false };
    let entries = yard.book.about_yard(&pen("aa", by), by, by, &yard.id, pause).unwrap();
    let mut paused = Yard::new(&["1"], day("2026-07-01"));
    paused.book = yard.book.clone();
    paused.book.add(entries);
    assert_eq!(row(&paused, "1", "2026-07-20").recheck, None);
    // The second look ends it.
    yard.log("1", day("2026-07-07"), Did::AsFound, (Some(48), None));
    assert_eq!(row(&yard, "1", "2026-07-07").recheck, None);
}

#[test]
fn a_skipped_hive_is_seen_again_and_its_oil_is_carried() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let on = day("2026-05-10");
    let skip = yard.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Temper, None).unwrap();
    yard.book.add(skip);
    let need = round::yard_need(yard.book.standing(), &yard.id, on, Share::NONE);
    // 4 traps × 20 mL × ½.
    assert_eq!((need.hives, need.traps, need.oil.sum.millilitres()), (1, 4, 40.0));
}

#[test]
fn a_hive_that_was_looked_at_and_is_due_is_not_done() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.log("1", day("2026-05-15"), Did::AsFound, (None, None));
    assert!(row(&yard, "1", "2026-05-15").still_due());
    yard.log("1", day("2026-05-15"), Did::ToppedUp, (None, Some(50)));
    assert!(!row(&yard, "1", "2026-05-15").still_due());
}
