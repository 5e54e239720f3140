//! Faults that were found by reading, each held by the case that showed it.

use crate::support::{Unicode, day, pen};
use crate::{Yard, plan, trap};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::refill::{Timing, median_loss};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, SkipReason, TrapsWent, What};
use beetle_almanac::book::id::{EntryId, Writer};
use beetle_almanac::book::round::{self, Because, HiveDue};
use beetle_almanac::book::write::{Draft, KindChoice, Refusal};
use beetle_almanac::papers::backup;

fn work(
    hive: &beetle_almanac::book::id::ThingId,
    did: Did,
    count: Option<u32>,
    after: Option<Share>,
) -> Check {
    Check {
        hive: hive.clone(),
        traps: None,
        did,
        before: None,
        after,
        count: count.map(CountRange::exact),
        note: None,
    }
}

#[test]
fn hives_filled_before_the_yard_was_kept_are_in_the_yard() {
    let mut yard = Yard::new(&["1"], day("2026-07-14"));
    let more = plan(&["2", "3"], &[(BoxDepth::Deep, 2)], day("2026-07-07"));
    let kind = KindChoice::Known(yard.kind());
    let written = yard.book.add_hives(&pen("aa", day("2026-07-14")), &yard.id, &kind, &more, &Unicode);
    let Ok(entries) = written else { return }; // a refusal would be fine
    yard.book.add(entries);
    assert_eq!(yard.book.standing().hives_of(&yard.id, true).count(), 3);
}

#[test]
fn taking_the_demonstration_out_leaves_own_hives_due() {
    let today = day("2026-07-14");
    let mut book = Book::default();
    book.add(demo(today, "Europe/Berlin", 120, &Unicode).unwrap());
    let own = book
        .keep_yard(
            &pen("aa", today),
            "Own",
            "Europe/Berlin",
            &KindChoice::New(trap()),
            &plan(&["1"], &[(BoxDepth::Deep, 2)], today),
        )
        .unwrap();
    let yard = own[0].id.thing(0);
    book.add(own);
    // what kind_choice preselects: the first kind of the book that is not retired
    let first = book.standing().kinds.keys().next().unwrap().clone();
    let more = book.add_hives(
        &pen("aa", today),
        &yard,
        &KindChoice::Known(first),
        &plan(&["2"], &[(BoxDepth::Deep, 2)], today),
        &Unicode,
    );
    let Ok(more) = more else { return };
    book.add(more);
    let book = book.without(Entry::is_demo);
    let rows = round::rows(book.standing(), &yard, day("2026-09-01"));
    for row in &rows {
        println!("{:?}", row.due);
    }
    assert!(rows.iter().all(|row| row.due.now()));
}

#[test]
fn a_hive_moved_before_the_new_yard_was_kept_is_refused_or_moved() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-07-14");
    let second = yard
        .book
        .keep_yard(
            &pen("aa", on),
            "Kiln",
            "Europe/Berlin",
            &KindChoice::Known(yard.kind()),
            &plan(&["7"], &[], on),
        )
        .unwrap();
    let to = second[0].id.thing(0);
    yard.book.add(second);
    let hive = yard.hive("1");
    let Ok(moved) = yard.book.move_hive(&pen("aa", on), day("2026-07-10"), on, &hive, &to, None, &Unicode)
    else {
        return;
    };
    yard.book.add(moved);
    assert_eq!(yard.book.standing().hives[&hive].yard, to);
}

#[test]
fn a_box_taken_off_before_it_was_put_on_is_refused_or_gone() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-07-14");
    let hive = yard.hive("1");
    let add = yard
        .book
        .boxes_on(&pen("aa", on), on, on, &hive, 2, &[(BoxDepth::Medium, 2)], &yard.kind(), true)
        .unwrap();
    yard.book.add(add);
    let part = yard.book.standing().hives[&hive].boxes[2].id.clone();
    let Ok(off) = yard.book.box_off(&pen("aa", on), day("2026-07-10"), on, &hive, &part, TrapsWent::Stock)
    else {
        return;
    };
    yard.book.add(off);
    assert_eq!(yard.book.standing().hives[&hive].boxes.len(), 2);
}

#[test]
fn a_check_of_a_trap_before_it_was_placed_is_refused_or_counts() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-07-14");
    let hive = yard.hive("1");
    let add = yard
        .book
        .boxes_on(&pen("aa", on), on, on, &hive, 2, &[(BoxDepth::Medium, 2)], &yard.kind(), true)
        .unwrap();
    yard.book.add(add);
    let t = yard.book.standing().hives[&hive].boxes[2].traps[0].id.clone();
    let mut w = work(&hive, Did::Missing, None, None);
    w.traps = Some(vec![t.clone()]);
    let Ok(e) = yard.book.check(&pen("aa", on), day("2026-07-10"), on, w) else { return };
    yard.book.add(e);
    assert!(yard.book.standing().hives[&hive].traps().any(|trap| trap.trouble.is_some()));
}

#[test]
fn a_skipped_hive_in_a_resting_yard_needs_nothing() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let on = day("2026-10-01");
    let skip = yard.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Weather, None).unwrap();
    yard.book.add(skip);
    let on = day("2026-11-01");
    let pause = What::Season { yard: yard.id.clone(), running: false };
    let e = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, pause).unwrap();
    yard.book.add(e);
    let need = round::yard_need(yard.book.standing(), &yard.id, day("2027-01-15"), Share::QUARTER);
    assert_eq!((need.hives, need.traps, need.oil.lines.len()), (0, 0, 0));
}

#[test]
fn a_line_that_comes_after_its_strike_stays_struck() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let mut a = yard.book.clone();
    // the yard's day is already the 9th, the phone's own calendar still the 8th
    let e = a
        .check(
            &pen("aa", day("2026-05-08")),
            day("2026-05-09"),
            day("2026-05-09"),
            work(&hive, Did::Missing, None, None),
        )
        .unwrap();
    a.add(e.clone());
    let s = a.strike(&pen("aa", day("2026-05-08")), day("2026-05-08"), &[e[0].id.clone()], &Unicode).unwrap();
    a.add(s.clone());
    let mut b = yard.book.clone();
    b.add(s);
    b.add(e);
    assert_eq!(a.log(), b.log());
    assert_eq!(a, b);
}

#[test]
fn no_two_living_hives_of_a_yard_share_a_tag() {
    let on = day("2026-07-14");
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let one = yard.hive("1");
    let e = yard.book.end_hive(&pen("aa", on), on, on, &one, Ending::Dead, None).unwrap();
    let strike_me = e[0].id.clone();
    yard.book.add(e);
    let k = KindChoice::Known(yard.kind());
    let e = yard.book.add_hives(&pen("aa", on), &yard.id, &k, &plan(&["1"], &[], on), &Unicode).unwrap();
    yard.book.add(e);
    let taken = Err(Refusal::TagTaken { free: "1b".to_owned() });
    assert_eq!(yard.book.hive_back(&pen("aa", on), on, on, &one, &Unicode), taken);
    assert_eq!(yard.book.strike(&pen("aa", on), on, &[strike_me], &Unicode), taken);
    let tags: Vec<_> = yard.book.standing().hives_of(&yard.id, true).filter(|(_, h)| h.tag == "1").collect();
    assert_eq!(tags.len(), 1);
}

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
fn lines_written_since_the_file_are_counted_beside_a_damaged_page() {
    use beetle_almanac::app::ledger::safety::unsafe_lines;
    // 20 lines were in the file of 1 July, ten of them can no longer be read; ten were written since.
    let mut book = Book::default();
    for (n, on) in [(10, "2026-06-20"), (10, "2026-07-10")] {
        for _ in 0..n {
            let pen = pen("aa", day(on));
            let mut draft = Draft::new(&book, &pen);
            draft.push(day(on), None, What::Note { hive: None, text: "x".into() }).unwrap();
            let e = draft.done();
            book.add(e);
        }
    }
    let found = unsafe_lines(&book, Some((day("2026-07-01"), 20)), day("2026-07-12")).unwrap();
    assert_eq!(found.lines, 10);
}

#[test]
fn no_entry_that_is_taken_in_leaves_the_phone_without_numbers() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let file = |n: u32| {
        let mut e = yard.book.log().entries().last().unwrap().clone();
        e.id = EntryId::new(Writer::new("zz").unwrap(), n).unwrap();
        e.what = What::Note { hive: None, text: "x".into() };
        backup::write(&[e].into_iter().collect(), pen("zz", day("2026-05-01")).at, None)
    };
    let most = Entry::counter_most(1);
    assert!(backup::open(&file(most + 1)).is_err());
    let mut book = yard.book.clone();
    book.add(backup::open(&file(most)).unwrap().entries);
    for n in 1..=20 {
        let on = day("2026-05-02").plus(n);
        let look = work(&yard.hive("1"), Did::AsFound, None, None);
        let next = book.check(&pen("aa", on), on, on, look).unwrap();
        assert!(next[0].id.n() > most);
        assert_eq!(next[0].check(), Ok(()), "a page that holds it is read again");
        book.add(next);
        // The demonstration comes and goes between two lines and takes its numbers along.
        book.add(demo(on, "Europe/Berlin", 120, &Unicode).unwrap());
        let own = backup::write(book.log(), pen("aa", on).at, None);
        assert!(backup::open(&own).is_ok(), "a file of its own is read again");
        if n % 2 == 0 {
            book = book.without(Entry::is_demo);
        }
    }
}

/// The bound as the file grows: never below the counters of the lines themselves, never all the numbers there are.
#[test]
fn the_highest_counter_of_a_file_grows_with_its_lines_and_ends_at_half_of_what_there_is() {
    assert_eq!(Entry::counter_most(0), 1_000_000);
    for lines in [1, 14_000, 100_000, 400_000] {
        assert_eq!(Entry::counter_most(lines), 1_000_000 + 1000 * u32::try_from(lines).unwrap());
    }
    for lines in [499_001, 5_000_000, usize::MAX] {
        assert_eq!(Entry::counter_most(lines), Entry::COUNTER_MOST);
    }
}

#[test]
fn a_count_of_four_thousand_million_is_not_taken_in_and_sums_of_many_do_not_overflow() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    for on in ["2026-05-02", "2026-05-03"] {
        let count = Some(u32::MAX);
        let e = yard.book.check(
            &pen("aa", day(on)),
            day(on),
            day(on),
            work(&hive, Did::ToppedUp, count, Some(Share::HALF)),
        );
        let e = e.unwrap();
        assert!(e[0].check().is_err());
        yard.book.add(e);
    }
    round::rows(yard.book.standing(), &yard.id, day("2026-05-04"));
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
fn a_backup_whose_line_ends_were_changed_on_the_way_still_opens() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let text = backup::write(yard.book.log(), pen("aa", yard.start).at, None);
    assert!(backup::open(&text.replace('\n', "\r\n")).is_ok());
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
