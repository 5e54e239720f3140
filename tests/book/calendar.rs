//! The days of the calendar file, as the book goes on.

use super::Yard;
use super::support::{day, pen};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::book::entry::{Check, Did, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::papers::calendar::{Item, Task, YardDay, yard_days};

const START: &str = "2026-05-01";

fn days(yard: &Yard, today: Day) -> Vec<YardDay> {
    yard_days(yard.book.standing(), std::slice::from_ref(&yard.id), today)
}

fn check(yard: &mut Yard, tag: &str, on: Day, did: Did, level: Option<u32>) {
    let level = level.map(|percent| Share::from_percent(Decimal::whole(percent)).unwrap());
    let after = (did != Did::AsFound).then_some(Share::HALF);
    let before = level.filter(|_| did == Did::AsFound);
    let work = Check { hive: yard.hive(tag), traps: None, did, before, after, count: None, note: None };
    let written = yard.book.check(&pen("aa", on), on, on, work).unwrap();
    yard.book.add(written);
}

fn about(yard: &mut Yard, on: Day, what: What) {
    let written = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
    yard.book.add(written);
}

fn items(days: &[YardDay]) -> Vec<&Item> {
    days.iter().flat_map(|day| &day.items).collect()
}

#[test]
fn a_day_that_moves_keeps_its_name_and_one_that_is_done_loses_it() {
    let mut yard = Yard::new(&["1", "2", "3"], day(START));
    let [before] = days(&yard, day(START)).try_into().unwrap();
    assert_eq!((before.day, before.items.len()), (day("2026-05-15"), 3));

    // The oil of every hive sinks fast: all of them are due sooner, and it is the same event.
    for tag in ["1", "2", "3"] {
        check(&mut yard, tag, day("2026-05-05"), Did::AsFound, Some(42));
    }
    let [moved] = days(&yard, day("2026-05-05")).try_into().unwrap();
    assert!(moved.day < before.day, "{moved:?}");
    assert_eq!(moved.uid(), before.uid());

    // A walk that was broken off after the first hive: the event of the others keeps its name.
    check(&mut yard, "1", day("2026-05-06"), Did::ToppedUp, None);
    let rest = days(&yard, day("2026-05-06"));
    assert_eq!(rest.iter().filter(|day| day.uid() == before.uid()).count(), 1);
    assert_eq!(rest.len(), 2);

    // The walk is done: no event is called like the old one.
    for tag in ["2", "3"] {
        check(&mut yard, tag, day("2026-05-06"), Did::ToppedUp, None);
    }
    let [next] = days(&yard, day("2026-05-06")).try_into().unwrap();
    assert_ne!(next.uid(), before.uid());
}

#[test]
fn what_is_overdue_waits_for_today_and_keeps_its_name() {
    let yard = Yard::new(&["1", "2"], day(START));
    let due = &days(&yard, day(START))[0];
    for late in 0..40 {
        let today = due.day.plus(late);
        let [now] = days(&yard, today).try_into().unwrap();
        assert_eq!((now.day, now.uid()), (today, due.uid()));
        assert!(now.items.iter().all(|item| item.due == due.day));
    }
}

#[test]
fn a_spill_asks_for_a_second_look_until_somebody_has_looked() {
    let mut yard = Yard::new(&["1", "2"], day(START));
    check(&mut yard, "1", day("2026-05-03"), Did::Spilled, None);
    let all = days(&yard, day("2026-05-03"));
    let looks: Vec<_> = items(&all).into_iter().filter(|item| item.task == Task::Look).collect();
    assert_eq!(looks.len(), 1);
    assert_eq!((looks[0].due, looks[0].cycle), (day("2026-05-06"), day("2026-05-03")));
    check(&mut yard, "1", day("2026-05-04"), Did::AsFound, None);
    assert!(items(&days(&yard, day("2026-05-04"))).iter().all(|item| item.task == Task::Traps));
}

#[test]
fn nothing_is_due_where_trap_work_rests_and_in_hives_that_ended() {
    let mut yard = Yard::new(&["1", "2"], day(START));
    let hive = yard.hive("1");
    let ended = What::HiveEnded { hive: hive.clone(), how: beetle_almanac::book::entry::Ending::Sold };
    about(&mut yard, day(START), ended);
    let left: Vec<ThingId> = items(&days(&yard, day(START))).iter().map(|item| item.hive.clone()).collect();
    assert_eq!(left, [yard.hive("2")]);
    let rest = What::Season { yard: yard.id.clone(), running: false };
    about(&mut yard, day(START), rest);
    assert!(days(&yard, day(START)).is_empty());
}

#[test]
fn days_are_in_order_and_no_two_share_a_name() {
    let tags: Vec<String> = (1..=12).map(|n| n.to_string()).collect();
    let tags: Vec<&str> = tags.iter().map(String::as_str).collect();
    let mut yard = Yard::new(&tags, day(START));
    for (step, tag) in (0..).zip(&tags) {
        let did = if step % 4 == 3 { Did::Spilled } else { Did::ToppedUp };
        check(&mut yard, tag, day(START).plus(step / 2), did, None);
        for today in [day(START).plus(step / 2), day("2026-05-20"), day("2026-07-01")] {
            let all = days(&yard, today);
            assert!(all.is_sorted_by(|a, b| a.day < b.day) && all.iter().all(|day| day.day >= today));
            let mut names: Vec<String> = all.iter().map(YardDay::uid).collect();
            names.sort();
            names.dedup();
            assert_eq!(names.len(), all.len());
            let traps = items(&all).iter().filter(|item| item.task == Task::Traps).count();
            assert_eq!(traps, tags.len(), "every hive is in one event");
        }
    }
}
