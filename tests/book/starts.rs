//! Work from before a hive was written down, and starts that are moved back for it.

use crate::Yard;
use crate::refused::work;
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did};
use beetle_almanac::book::round;
use beetle_almanac::book::write::Refusal;

#[test]
fn keeper_logs_work_before_the_hive_was_there() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-04-30");
    let refused = yard.book.check(&pen("aa", on), on, on, work(&yard, Did::ToppedUp, None, Some(50)));
    assert_eq!(refused, Err(Refusal::BeforeHive { since: yard.start }));
}

#[test]
fn keeper_says_that_the_hive_stood_there_before_and_logs_the_work() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let (on, today) = (day("2026-04-20"), day("2026-05-03"));
    yard.log("1", day("2026-05-02"), Did::AsFound, (None, None));
    let (hive, other) = (yard.hive("1"), yard.hive("2"));
    let traps: Vec<_> = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
    let moved = yard.book.hive_since(&pen("aa", today), on, today, &hive).unwrap();
    yard.book.add(moved.clone());
    let now = &yard.book.standing().hives[&hive];
    assert_eq!((now.since, now.tag.as_str()), (on, "1"));
    assert_eq!(now.traps().map(|trap| trap.id.clone()).collect::<Vec<_>>(), traps, "the same traps");
    assert!(now.traps().all(|trap| trap.placed == on));
    assert_eq!(now.last.as_ref().unwrap().day, day("2026-05-02"), "what was logged stays");
    assert_eq!(yard.book.standing().hives[&other].since, yard.start);
    let backdated = work(&yard, Did::ToppedUp, None, Some(50));
    let written = yard.book.check(&pen("aa", today), on, today, backdated).unwrap();
    yard.book.add(written);
    let now = &yard.book.standing().hives[&hive];
    assert!(
        now.traps().all(|trap| trap.service == yard.start),
        "the fill that was written first came after it"
    );
    assert_eq!(yard.book.standing().orphans, 0);
    // A second time from the corrected line, and back again by striking it out.
    let again = yard.book.hive_since(&pen("aa", today), day("2026-04-10"), today, &hive).unwrap();
    yard.book.add(again.clone());
    assert_eq!(yard.book.standing().hives[&hive].since, day("2026-04-10"));
    let back = yard.book.strike(&pen("aa", today), today, &[again[0].id.clone()], &Unicode).unwrap();
    yard.book.add(back);
    assert_eq!(yard.book.standing().hives[&hive].since, on);
}

#[test]
fn keeper_moves_the_start_of_a_hive_back_and_no_due_date_no_loss_and_no_walk_changes() {
    let (on, today) = (day("2026-04-05"), day("2026-05-06"));
    let mut yard = Yard::new(&["1", "2", "3", "4"], day("2026-05-01"));
    yard.log("3", day("2026-05-05"), Did::AsFound, (Some(45), None));
    let seen = |book: &Book| {
        let standing = book.standing();
        let order = standing.yards.values().next().unwrap().order.clone();
        let due = |hive| {
            let now = &standing.hives[&hive];
            (
                now.losses.clone(),
                now.catches.clone(),
                round::hive_due(standing, now, round::yard_loss(standing, &now.yard), today),
            )
        };
        (order, ["1", "3"].map(|tag| due(yard.hive(tag))))
    };
    let before = seen(&yard.book);
    let mut moved = yard.book.clone();
    for tag in ["3", "1"] {
        moved.add(moved.hive_since(&pen("aa", today), on, today, &yard.hive(tag)).unwrap());
    }
    assert_eq!(seen(&moved), before);
    // Work on the day the start was moved to changes none of it either.
    let early = Check { before: Some(Share::HALF), ..work(&yard, Did::ToppedUp, None, Some(50)) };
    moved.add(moved.check(&pen("aa", today), on, today, early).unwrap());
    let (order, dues) = seen(&moved);
    assert_eq!((&order, &dues[1]), (&before.0, &before.1[1]));
    assert_eq!(dues[0].2, before.1[0].2);
}

#[test]
fn two_phones_move_the_start_of_a_hive_back_and_no_work_is_lost() {
    let today = day("2026-05-03");
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let (mut a, mut b) = (yard.book.clone(), yard.book.clone());
    b.add(b.hive_since(&pen("bb", today), day("2026-03-15"), today, &hive).unwrap());
    let on = day("2026-03-20");
    b.add(b.check(&pen("bb", today), on, today, work(&yard, Did::ToppedUp, None, Some(50))).unwrap());
    // The later name of the two.
    a.add(a.hive_since(&pen("cc", today), day("2026-04-20"), today, &hive).unwrap());
    let (mut ab, mut ba) = (a.clone(), b.clone());
    ab.add(b.log().entries().cloned());
    ba.add(a.log().entries().cloned());
    assert_eq!(ab, ba);
    let now = &ab.standing().hives[&hive];
    assert_eq!((now.since, ab.standing().orphans), (day("2026-03-15"), 0));
    assert_eq!(now.last.as_ref().unwrap().day, on);
}

#[test]
fn keeper_takes_back_the_hives_whose_start_was_moved_with_all_they_were_added_with() {
    let today = day("2026-05-03");
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let line = yard.hive("1").entry().clone();
    let moved = yard.book.hive_since(&pen("aa", today), day("2026-04-20"), today, &yard.hive("1")).unwrap();
    let correction = moved[0].id.clone();
    yard.book.add(moved);
    assert!(yard.book.together(&line).contains(&correction), "undone with the line it stands in for");
}

#[test]
fn keeper_moves_the_start_of_a_hive_to_where_it_is_or_beyond_today() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let (hive, today) = (yard.hive("1"), day("2026-05-03"));
    let moved = |on: &str| yard.book.hive_since(&pen("aa", today), day(on), today, &hive);
    assert_eq!(moved("2026-05-01"), Err(Refusal::Nothing));
    assert_eq!(moved("2026-05-02"), Err(Refusal::Nothing));
    assert_eq!(moved("2026-05-04"), Err(Refusal::Future { today }));
}
