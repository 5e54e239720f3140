//! Traps that the wind or a bear took, of those that hung.

use crate::support::{day, pen};
use crate::{Yard, trap, work_on};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::stack::Spot;
use beetle_almanac::almanac::trap::TrapKind;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Ending, NewTrap, PlacedTrap, TrapsWent, What};
use beetle_almanac::book::lost::{Lost, lost};
use beetle_almanac::book::season::Season;

fn of(yard: &Yard, from: &str) -> (u32, u32) {
    let [Lost { kind, lost, of, .. }] = &lost(&yard.book, day(from), false)[..] else {
        panic!("one kind hangs")
    };
    assert_eq!(*kind, yard.kind());
    (*lost, *of)
}

#[test]
fn a_trap_that_went_missing_and_was_put_back_is_one_that_was_lost() {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &trap());
    assert_eq!(of(&yard, "2026-05-01"), (0, 8));
    yard.log("1", day("2026-05-10"), Did::Missing, (None, None));
    assert_eq!(of(&yard, "2026-05-01"), (4, 8), "four of eight");
    // Found missing again on the next walk: it is no other trap.
    yard.log("1", day("2026-05-20"), Did::Missing, (None, None));
    assert_eq!(of(&yard, "2026-05-01"), (4, 8));
    yard.log("1", day("2026-05-21"), Did::Replaced, (None, Some(50)));
    assert_eq!(of(&yard, "2026-05-01"), (4, 12), "four hang in their stead");
    assert_eq!(of(&yard, "2026-05-11"), (0, 8), "that was before");
}

#[test]
fn a_walk_that_two_phones_wrote_down_loses_its_traps_once() {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &TrapKind { reusable: true, ..trap() });
    let on = day("2026-05-10");
    let write = |book: &mut Book, who: &str, tag: &str, did| {
        let after = (did != Did::Missing).then_some(Share::HALF);
        let work = Check { after, ..work_on(yard.hive(tag), did) };
        let entries = book.check(&pen(who, on), on, on, work).unwrap();
        book.add(entries.clone());
        entries
    };
    // The second phone began elsewhere, so that its lines come after those of the first.
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    for _ in 0..3 {
        write(&mut other, "bb", "2", Did::ToppedUp);
    }
    let mut late = Vec::new();
    for did in [Did::Missing, Did::Replaced] {
        write(&mut one, "aa", "1", did);
        late.extend(write(&mut other, "bb", "1", did));
    }
    one.add(late);
    yard.book = one;
    let season = Season::of(&yard.book, &yard.id, day("2026-05-02"), day("2026-05-31"));
    assert_eq!((season.lost, season.renewed), (4, 4));
    assert_eq!(of(&yard, "2026-05-02"), (4, 12));
}

#[test]
fn the_oil_of_a_day_went_into_the_traps_that_hung_when_it_was_poured() {
    let reusable = TrapKind { reusable: true, ..trap() };
    let each = reusable.oil(Share::NONE, Share::HALF).unwrap().millilitres();
    let (start, on) = (day("2026-05-01"), day("2026-05-10"));
    let oil = |yard: &Yard| {
        let (least, most) = Season::of(&yard.book, &yard.id, day("2026-05-02"), day("2026-05-31")).yard.oil;
        (least.millilitres() / each, most.millilitres() / each)
    };
    let work = |yard: &mut Yard, who: &str, did, traps: Option<usize>| {
        let hive = yard.hive("1");
        let hung = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone());
        let traps = traps.map(|many| hung.take(many).collect());
        let after = (did != Did::Missing).then_some(Share::HALF);
        let before = (did == Did::ToppedUp).then_some(Share::NONE);
        let work = Check { before, after, traps, ..work_on(hive, did) };
        let entries = yard.book.check(&pen(who, on), on, on, work).unwrap();
        yard.book.add(entries);
    };
    let mut yard = Yard::with(&["1"], start, &reusable);
    work(&mut yard, "aa", Did::Missing, Some(1));
    work(&mut yard, "aa", Did::ToppedUp, None);
    assert_eq!(oil(&yard), (3.0, 3.0), "the missing one takes none");
    work(&mut yard, "aa", Did::Replaced, Some(1));
    assert_eq!(oil(&yard), (4.0, 4.0), "nor did it when the others were filled");

    let mut yard = Yard::with(&["1"], start, &reusable);
    work(&mut yard, "aa", Did::ToppedUp, None);
    let hive = yard.hive("1");
    let traps = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
    let off = What::TrapsOff { hive, traps, went: TrapsWent::Stock };
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, off).unwrap();
    yard.book.add(entries);
    assert_eq!(oil(&yard), (4.0, 4.0), "taken off on the day they were filled");

    let mut yard = Yard::with(&["1"], start, &reusable);
    let alone = yard.book.clone();
    work(&mut yard, "bb", Did::ToppedUp, None);
    let other = std::mem::replace(&mut yard.book, alone);
    work(&mut yard, "aa", Did::ToppedUp, None);
    yard.book.add(other.log().entries().cloned());
    assert_eq!(oil(&yard), (4.0, 4.0), "two phones wrote down the same oil");
}

#[test]
fn the_traps_of_a_hive_that_died_since_were_in_service_too() {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &trap());
    yard.log("1", day("2026-05-10"), Did::Missing, (None, None));
    let (on, hive) = (day("2026-06-01"), yard.hive("2"));
    let ended = yard.book.end_hive(&pen("aa", on), on, on, &hive, Ending::Dead, None).unwrap();
    yard.book.add(ended);
    assert_eq!(of(&yard, "2026-05-01"), (4, 8), "four of eight");
    yard.log("1", day("2026-06-10"), Did::Replaced, (None, Some(50)));
    assert_eq!((of(&yard, "2026-06-01"), of(&yard, "2026-06-02")), ((0, 8), (0, 4)), "it died before");
}

#[test]
fn traps_taken_off_as_lost_are_lost_and_those_that_went_to_stock_are_not() {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &trap());
    let on = day("2026-05-10");
    for (tag, went) in [("1", TrapsWent::Lost), ("2", TrapsWent::Stock)] {
        let hive = yard.hive(tag);
        let traps = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).take(2).collect();
        let off = What::TrapsOff { hive, traps, went };
        let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, off).unwrap();
        yard.book.add(entries);
    }
    assert_eq!(of(&yard, "2026-05-01"), (2, 8), "those in stock hung too");
    // The end that is asked for belongs to the days.
    assert_eq!((of(&yard, "2026-05-10"), of(&yard, "2026-05-11")), ((2, 8), (0, 4)));
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[1].id.clone();
    let off = yard.book.box_off(&pen("aa", on), on, on, &hive, &part, TrapsWent::Lost).unwrap();
    yard.book.add(off);
    assert_eq!(of(&yard, "2026-05-01"), (4, 8));
    let season = Season::of(&yard.book, &yard.id, day("2026-05-01"), day("2026-05-31"));
    assert_eq!(season.lost, 4, "those of the box too");
    assert_eq!(lost(&yard.book, day("2026-05-01"), true), [], "nothing of the demonstration");
}

/// Takes all traps of a hive off, the first `lost` of them as lost.
fn taken_off(yard: &mut Yard, tag: &str, on: &str, lost: usize) {
    let hive = yard.hive(tag);
    let traps: Vec<_> = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
    let (gone, kept) = traps.split_at(lost);
    for (traps, went) in [(gone, TrapsWent::Lost), (kept, TrapsWent::Stock)] {
        if !traps.is_empty() {
            writes(yard, on, What::TrapsOff { hive: hive.clone(), traps: traps.to_vec(), went });
        }
    }
}

fn writes(yard: &mut Yard, on: &str, what: What) {
    let on = day(on);
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
    yard.book.add(entries);
}

#[test]
fn traps_taken_off_for_the_winter_were_in_service_all_the_same() {
    let tags: Vec<String> = (1..=20).map(|tag| tag.to_string()).collect();
    let tags: Vec<&str> = tags.iter().map(String::as_str).collect();
    let mut yard = Yard::with(&tags, day("2026-05-01"), &TrapKind { reusable: true, ..trap() });
    for (nth, tag) in tags.iter().enumerate() {
        taken_off(&mut yard, tag, "2026-11-10", usize::from(nth < 2));
    }
    assert_eq!(of(&yard, "2026-01-01"), (2, 80));
    // Out of the store into a hive again: one of the eighty. One more than lay there was bought.
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let kind = yard.kind();
    let traps = |many: usize| {
        let trap = NewTrap { spot: Spot::Floor, kind: kind.clone(), level: None };
        vec![PlacedTrap { part: part.clone(), trap }; many]
    };
    writes(&mut yard, "2027-04-01", What::TrapsOn { hive: hive.clone(), traps: traps(70) });
    assert_eq!(of(&yard, "2026-01-01"), (2, 80));
    writes(&mut yard, "2027-04-02", What::TrapsOn { hive, traps: traps(9) });
    assert_eq!(of(&yard, "2026-01-01"), (2, 81));
}

#[test]
fn traps_that_went_off_and_on_again_are_counted_once_beside_an_older_store() {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &TrapKind { reusable: true, ..trap() });
    taken_off(&mut yard, "2", "2026-05-10", 0);
    taken_off(&mut yard, "1", "2026-06-10", 0);
    assert_eq!(of(&yard, "2026-06-01"), (0, 4));
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let hangs = |yard: &mut Yard, on: &str, many: usize| {
        let trap = NewTrap { spot: Spot::Floor, kind: yard.kind(), level: None };
        let traps = vec![PlacedTrap { part: part.clone(), trap }; many];
        writes(yard, on, What::TrapsOn { hive: hive.clone(), traps });
    };
    hangs(&mut yard, "2026-06-20", 4);
    assert_eq!(yard.book.standing().kinds[&yard.kind()].stock, 4, "as many as lay there before");
    assert_eq!((of(&yard, "2026-06-01"), of(&yard, "2026-05-01")), ((0, 4), (0, 8)));
    // Those that lay there before.
    hangs(&mut yard, "2026-06-21", 4);
    assert_eq!((of(&yard, "2026-06-01"), of(&yard, "2026-05-01")), ((0, 8), (0, 8)));
}

#[test]
fn traps_left_in_a_hive_that_died_before_are_none_of_these_days_on_whichever_day_they_come_off() {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &trap());
    let (on, hive) = (day("2026-05-10"), yard.hive("2"));
    let ended = yard.book.end_hive(&pen("aa", on), on, on, &hive, Ending::Dead, None).unwrap();
    yard.book.add(ended);
    assert_eq!(of(&yard, "2026-06-01"), (0, 4));
    taken_off(&mut yard, "2", "2026-06-10", 0);
    assert_eq!((of(&yard, "2026-06-01"), of(&yard, "2026-05-01")), ((0, 4), (0, 8)));
}

#[test]
fn a_box_taken_off_as_lost_loses_no_trap_that_was_missing_before() {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &trap());
    yard.log("1", day("2026-05-10"), Did::Missing, (None, None));
    let (on, hive) = (day("2026-05-11"), yard.hive("1"));
    let part = yard.book.standing().hives[&hive].boxes[1].id.clone();
    let off = yard.book.box_off(&pen("aa", on), on, on, &hive, &part, TrapsWent::Lost).unwrap();
    yard.book.add(off);
    assert_eq!(of(&yard, "2026-05-01"), (4, 8));
    let lost = |from, to| Season::of(&yard.book, &yard.id, day(from), day(to)).lost;
    assert_eq!((lost("2026-05-01", "2026-05-11"), lost("2026-05-11", "2026-05-31")), (4, 0));
    assert_eq!(lost("2026-05-01", "2026-05-09"), 0, "later");
}
