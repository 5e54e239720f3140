//! Hives whose traps are of two kinds, filled to different levels.

use crate::loaded::per_day;
use crate::support::{Unicode, day, pen};
use crate::{Yard, trap};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::{TrapForm, TrapKind};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Entry, What};
use beetle_almanac::book::id::{EntryId, ThingId};
use beetle_almanac::book::oil_used::trips;
use beetle_almanac::book::put_in::put_in;
use beetle_almanac::book::season::Season;
use beetle_almanac::book::standing::HiveNow;
use beetle_almanac::book::write::{Draft, KindChoice};

fn percent(value: u32) -> Share {
    Share::from_percent(Decimal::whole(value)).unwrap()
}

/// Hive 1 with four traps filled to one half and two filled to `other`, all on 1 May.
fn mixed(other: u32) -> (Yard, ThingId) {
    mixed_with(TrapKind { fill: percent(other), ..trap() })
}

/// The same with two of `kind` on top.
fn mixed_with(kind: TrapKind) -> (Yard, ThingId) {
    let on = day("2026-05-01");
    let mut yard = Yard::new(&["1"], on);
    let entries = yard.book.about_keeper(&pen("aa", on), on, What::Kind(kind)).unwrap();
    let kind = entries[0].id.thing(0);
    yard.book.add(entries);
    let hive = yard.hive("1");
    let boxes = [(BoxDepth::Medium, 2)];
    let entries = yard.book.boxes_on(&pen("aa", on), on, on, &hive, 2, &boxes, &kind, true).unwrap();
    yard.book.add(entries);
    (yard, hive)
}

fn found(hive: &ThingId, did: Did, before: Option<u32>, count: Option<u32>) -> Check {
    Check {
        hive: hive.clone(),
        traps: None,
        did,
        before: before.map(percent),
        after: None,
        count: count.map(CountRange::exact),
        note: Some("ants".to_owned()),
    }
}

fn write(book: &mut Book, on: &str, work: Check) -> Vec<Entry> {
    write_as("aa", book, on, work)
}

fn write_as(writer: &str, book: &mut Book, on: &str, work: Check) -> Vec<Entry> {
    let entries = book.check(&pen(writer, day(on)), day(on), day(on), work).unwrap();
    book.add(entries.clone());
    entries
}

/// The same as it was written at first: the count on the first line, level and note on each.
fn write_as_at_first(writer: &str, book: &mut Book, on: &str, work: &Check) {
    let pen = pen(writer, day(on));
    let now = &book.standing().hives[&work.hive];
    let kinds = &book.standing().kinds;
    let mut draft = Draft::new(book, &pen);
    draft.bulk();
    let mut count = work.count;
    for (id, kind) in kinds {
        let traps: Vec<ThingId> =
            now.traps().filter(|trap| trap.kind == *id).map(|trap| trap.id.clone()).collect();
        let part =
            Check { traps: Some(traps), after: Some(kind.kind.fill), count: count.take(), ..work.clone() };
        draft.push(day(on), Some(&now.yard), What::Check(part)).unwrap();
    }
    let entries = draft.done();
    assert_eq!(entries.len(), 2);
    book.add(entries);
}

fn catches(now: &HiveNow) -> Vec<(u32, u32)> {
    now.catches.iter().map(|catch| (catch.count.low(), catch.trap_days)).collect()
}

/// Traps in whose place new ones went in, and fillings of unknown amount, in May.
fn renewed(yard: &Yard) -> (usize, usize) {
    let season = Season::of(&yard.book, &yard.id, day("2026-05-02"), day("2026-05-31"));
    (season.renewed, season.yard.oil_unknown)
}

#[test]
fn each_trap_is_replaced_once_in_however_many_lines_it_is_written() {
    let dry = TrapKind { form: TrapForm::FloorLure, ..trap() };
    for (mixed, with) in [(mixed(25), "two levels"), (mixed_with(dry), "two without oil")] {
        let (mut yard, hive) = mixed;
        write(&mut yard.book, "2026-05-11", found(&hive, Did::Replaced, None, Some(60)));
        assert_eq!(renewed(&yard), (6, 0), "{with}");
        // Three of them: one of one kind and two of the other.
        let traps = yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).skip(3).collect();
        let some = Check { traps: Some(traps), ..found(&hive, Did::Replaced, None, Some(7)) };
        write(&mut yard.book, "2026-05-13", some);
        assert_eq!(renewed(&yard), (9, 0), "{with}");
        for writer in ["aa", "bb"] {
            write_as(writer, &mut yard.book, "2026-05-21", found(&hive, Did::Replaced, None, None));
        }
        assert_eq!(renewed(&yard), (15, 0), "{with}: on two phones");
    }
}

/// Four traps of 10 mL and two of 5 mL, as the kinds say: 50 mL; from 20 % of 20 mL on it is 4 × 6 and 2 × 1 mL.
#[test]
fn oil_of_one_piece_of_work_is_the_same_in_however_many_lines_and_whoever_mends_one() {
    let on = day("2026-05-11");
    for (did, before, oil) in [(Did::Replaced, None, 50.0), (Did::ToppedUp, Some(20), 26.0)] {
        let (mut yard, hive) = mixed(25);
        crate::oil_used::trip(&mut yard, on, Some(100), Some(40));
        let lines = write(&mut yard.book, "2026-05-11", found(&hive, did, before, Some(60)));
        assert_eq!(lines.len(), 3, "one for all, and one for each level");
        let told = |book: &Book| {
            let season = Season::of(book, &yard.id, day("2026-05-02"), day("2026-05-31")).yard.oil;
            let [trip] = trips(book)[..] else { panic!("one trip") };
            [season.0, season.1, trip.sum].map(|oil| (oil.millilitres() * 1e6).round() / 1e6)
        };
        assert_eq!((told(&yard.book), trips(&yard.book)[0].services), ([oil; 3], 6), "{did:?}");
        for line in &lines {
            let What::Check(work) = &line.what else { panic!("work") };
            let what = What::Check(Check { note: Some("wasps".to_owned()), ..work.clone() });
            let later = on.plus(1);
            let mut book = yard.book.clone();
            let edit = book.correct(&pen("bb", later), on, later, &line.id, what, &Unicode).unwrap();
            book.add(edit);
            assert_eq!((told(&book), trips(&book)[0].services), ([oil; 3], 6), "{did:?}");
        }
    }
}

/// Six traps that are thrown away when they are full.
#[test]
fn each_new_trap_leaves_the_store_once_in_however_many_lines_it_is_written() {
    let (mut yard, hive) = mixed(25);
    crate::store_room::stock(&mut yard, "2026-05-02", "Slim", (20, 0), Some(0), None);
    write(&mut yard.book, "2026-05-11", found(&hive, Did::Replaced, None, Some(60)));
    let traps: Vec<u32> = put_in(&yard.book).iter().map(|put_in| put_in.traps).collect();
    assert_eq!(traps, [4, 2]);
}

#[test]
fn one_count_is_taken_once_over_all_six_traps_and_their_days() {
    for did in [Did::ToppedUp, Did::Replaced] {
        let (mut yard, hive) = mixed(25);
        for (on, before) in [("2026-05-11", 20), ("2026-05-21", 20)] {
            let entries = write(&mut yard.book, on, found(&hive, did, Some(before), Some(60)));
            assert!(entries.iter().all(|entry| entry.bulk.as_ref() == Some(&entries[0].id)));
            let notes =
                entries.iter().filter(|entry| matches!(&entry.what, What::Check(c) if c.note.is_some()));
            assert_eq!(notes.count(), 1, "the note is written once");
        }
        let now = &yard.book.standing().hives[&hive];
        assert_eq!(catches(now), [(60, 60), (60, 60)]);
        assert!(now.traps().all(|trap| trap.counting == day("2026-05-21")));
        let mut left: Vec<Share> = now.traps().map(|trap| trap.level.unwrap().1).collect();
        left.sort_unstable();
        assert_eq!(left, [25, 25, 50, 50, 50, 50].map(percent));
        assert_eq!(now.last.as_ref().unwrap().did, Some(did));
    }
}

/// Worked by hand: five counts of six traps and ten days, then one of which four traps had spilled, so that its first line
/// tells of no day and its second of 20 trap-days. The last five are 200 beetles in 260 trap-days.
#[test]
fn a_count_whose_days_come_with_its_second_line_is_one_of_the_last_five() {
    let (mut yard, hive) = mixed(25);
    for (on, count) in
        [("2026-05-11", 10), ("2026-05-21", 20), ("2026-05-31", 30), ("2026-06-10", 40), ("2026-06-20", 50)]
    {
        write(&mut yard.book, on, found(&hive, Did::Replaced, None, Some(count)));
    }
    let traps = yard.book.standing().hives[&hive].traps().take(4).map(|trap| trap.id.clone());
    let traps = Some(traps.collect());
    let spilled = Check { traps, note: None, ..found(&hive, Did::Spilled, None, None) };
    write(&mut yard.book, "2026-06-20", spilled);
    let last = found(&hive, Did::Replaced, None, Some(60));
    write_as_at_first("aa", &mut yard.book, "2026-06-30", &last);
    let last = yard.book.standing().hives[&hive].catches.last().map(|catch| catch.trap_days);
    let rate = per_day(&yard, "2026-06-30");
    assert_eq!(last, Some(20));
    assert!((rate - 200.0 / 260.0).abs() < 1e-9, "{rate}");
}

#[test]
fn a_level_that_rose_in_one_kind_stays_told() {
    let (mut yard, hive) = mixed(70);
    write(&mut yard.book, "2026-05-11", found(&hive, Did::ToppedUp, Some(60), None));
    let now = &yard.book.standing().hives[&hive];
    assert_eq!((now.rose, now.losses.len()), (Some(day("2026-05-11")), 1));
}

#[test]
fn all_of_it_is_taken_back_with_one_undo() {
    let (mut yard, hive) = mixed(25);
    let before = yard.book.standing().clone();
    let entries = write(&mut yard.book, "2026-05-11", found(&hive, Did::ToppedUp, Some(20), Some(9)));
    let together = yard.book.together(&entries[1].id);
    assert_eq!(together.len(), entries.len());
    let on = day("2026-05-12");
    let strike = yard.book.strike(&pen("aa", on), on, &together, &Unicode).unwrap();
    yard.book.add(strike);
    assert_eq!(*yard.book.standing(), before);
}

#[test]
fn a_round_without_a_finding_writes_no_line_more_than_there_are_levels() {
    let (mut yard, hive) = mixed(25);
    let on = day("2026-05-11");
    let hives = std::slice::from_ref(&hive);
    let entries = yard.book.same_for_all(&pen("aa", on), on, on, hives, Did::ToppedUp).unwrap();
    assert_eq!(entries.len(), 2);
    yard.book.add(entries);
    assert!(yard.book.standing().hives[&hive].traps().all(|trap| trap.service == on));
}

/// Line by line as they are written, and all at once.
#[test]
fn books_in_which_one_count_lies_on_the_first_of_two_lines_come_to_the_same() {
    for (other, before) in [(25, 20), (70, 60)] {
        let (yard, hive) = mixed(other);
        let (mut then, mut now) = (yard.book.clone(), yard.book);
        for on in ["2026-05-11", "2026-05-21"] {
            let work = found(&hive, Did::ToppedUp, Some(before), Some(60));
            write_as_at_first("aa", &mut then, on, &work);
            write(&mut now, on, work);
        }
        assert_eq!(Book::from_log(then.log().clone()), then);
        let (then, now) = (&then.standing().hives[&hive], &now.standing().hives[&hive]);
        assert_eq!(catches(then), catches(now));
        assert_eq!(then.rose, now.rose);
        assert_eq!(then.boxes, now.boxes);
        assert_eq!(then.losses, now.losses);
    }
}

/// Lines of one act that are no parts of one count: a look beside traps put in, and a second count of the same day.
#[test]
fn a_second_count_of_the_day_is_a_count_of_its_own() {
    let (mut yard, hive) = mixed(25);
    write(&mut yard.book, "2026-05-11", found(&hive, Did::ToppedUp, None, Some(60)));
    write(&mut yard.book, "2026-05-11", found(&hive, Did::ToppedUp, None, Some(3)));
    write(&mut yard.book, "2026-05-11", found(&hive, Did::ToppedUp, None, None));
    assert_eq!(catches(&yard.book.standing().hives[&hive]), [(60, 60), (3, 0)]);
}

/// The same work on two phones, each in several lines: one pair, and one count over all traps and their days.
#[test]
fn work_in_several_lines_that_two_people_logged_is_asked_about_once() {
    type Log = fn(&str, &mut Book, &str, Check);
    let now: Log = |writer, book, on, work| drop(write_as(writer, book, on, work));
    let then: Log = |writer, book, on, work| write_as_at_first(writer, book, on, &work);
    for (one, other, alike) in [(now, now, true), (then, then, true), (now, then, true), (then, now, false)] {
        let (yard, hive) = mixed(25);
        let on = "2026-05-11";
        let work = || found(&hive, Did::ToppedUp, Some(20), Some(60));
        let (mut by_one, mut by_other) = (yard.book.clone(), yard.book.clone());
        one("bb", &mut by_one, on, work());
        other("cc", &mut by_other, on, work());
        let mut both = by_one.clone();
        both.add(by_other.log().entries().cloned());
        let state = |book: &Book| {
            let now = &book.standing().hives[&hive];
            (now.doubles.len(), catches(now))
        };
        assert_eq!(state(&both), (1, vec![(60, 60)]));
        let losses = |book: &Book| book.standing().hives[&hive].losses.clone();
        // A line for all traps between lines for some has filled them before the other phone says what it found in them:
        // until somebody has decided one interval is missing, and none is told twice.
        assert_eq!(losses(&both).len(), losses(&by_one).len() - usize::from(!alike));
        assert!(losses(&both).iter().all(|interval| losses(&by_one).contains(interval)));
        assert!(both.standing().hives[&hive].traps().all(|trap| trap.counting == day(on)));
        // Both are right: the answer for the first lines is one for all.
        let mut two = both.clone();
        let double = both.standing().hives[&hive].doubles[0].clone();
        let right = two.both_right(&pen("dd", day(on)), &double).unwrap();
        two.add(right);
        let (doubts, counted) = state(&two);
        assert_eq!((doubts, counted.len()), (0, 2));
        assert_eq!(counted.iter().map(|(_, days)| days).sum::<u32>(), 60);
        // Who writes one more with these in sight makes no doubt of them, whichever traps it is for.
        let trap = two.standing().hives[&hive].traps().last().unwrap().id.clone();
        let entries = write_as("ee", &mut two, on, Check { traps: Some(vec![trap]), ..work() });
        assert!(entries.len() > 1, "taken over");
        assert_eq!(state(&two).0, 0);
        assert_eq!(Book::from_log(two.log().clone()), two);
        // Or it was one piece of work: the other's lines are struck out together.
        let together = both.together(&double.lines[1]);
        let strike = both.strike(&pen("bb", day(on)), day(on), &together, &Unicode).unwrap();
        both.add(strike);
        assert_eq!(both.standing(), by_one.standing());
    }
}

/// "The rest as usual" is one bulk over all hives, undone together, and holds one piece of work for each.
#[test]
fn the_rest_as_usual_on_two_phones_is_asked_about_once_for_each_hive() {
    let on = day("2026-05-16");
    let (mut yard, _) = mixed(30);
    let more = crate::plan(&["2", "3"], &[(BoxDepth::Deep, 2)], day("2026-05-01"));
    let kind = KindChoice::Known(yard.kind());
    let more = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &more, &Unicode).unwrap();
    yard.book.add(more);
    let other = yard.book.standing().kinds.keys().nth(1).unwrap().clone();
    let boxes = [(BoxDepth::Medium, 1)];
    for tag in ["2", "3"] {
        let (start, hive) = (day("2026-05-01"), yard.hive(tag));
        let put = yard.book.boxes_on(&pen("aa", on), start, on, &hive, 1, &boxes, &other, true).unwrap();
        yard.book.add(put);
    }
    let hives = ["1", "2", "3"].map(|tag| yard.hive(tag));
    let usual = |writer: &str, did: Did| {
        let mut book = yard.book.clone();
        book.add(book.same_for_all(&pen(writer, on), on, on, &hives, did).unwrap());
        book
    };
    for (one, other) in [(Did::ToppedUp, Did::AsFound), (Did::ToppedUp, Did::Replaced)] {
        let mut both = usual("bb", one);
        both.add(usual("cc", other).log().entries().cloned());
        for hive in &hives {
            let doubles = both.standing().hives[hive].doubles.clone();
            assert_eq!(doubles.len(), 1, "{doubles:?}");
            // The answer for the first lines is one for all, whichever hive it is.
            let mut two = both.clone();
            two.add(two.both_right(&pen("dd", on), &doubles[0]).unwrap());
            assert_eq!(two.standing().hives[hive].doubles, []);
        }
        // Logged again with all of it in sight, each piece is taken over by its first line.
        let mut again = usual("bb", one);
        let entries = again.same_for_all(&pen("dd", on), on, on, &hives, other).unwrap();
        let taken: Vec<ThingId> =
            entries.iter().filter(|entry| entry.replaces.is_some()).filter_map(Entry::hive).collect();
        assert_eq!(taken, hives);
        let line = entries.last().unwrap().clone();
        let act: Vec<EntryId> =
            entries.iter().filter(|entry| entry.replaces.is_none()).map(|entry| entry.id.clone()).collect();
        assert_eq!(line.bulk.as_ref(), act.first(), "a bulk bears the name of its own first line");
        again.add(entries);
        assert!(hives.iter().all(|hive| again.standing().hives[hive].doubles.is_empty()));
        assert_eq!(again.together(&line.id), act, "what was taken over is no part of it");
    }
}

/// The first line says the count; corrected, it is still the one that the others go on with.
#[test]
fn a_count_that_is_corrected_is_over_all_traps_and_their_days_still() {
    for first in [true, false] {
        let (mut yard, hive) = mixed(25);
        let before = yard.book.log().len();
        write_as_at_first(
            "aa",
            &mut yard.book,
            "2026-05-11",
            &found(&hive, Did::ToppedUp, Some(20), Some(60)),
        );
        let line = yard.book.log().entries().nth(before + usize::from(!first)).unwrap().clone();
        let What::Check(work) = line.what.clone() else { panic!("{line:?}") };
        let what = What::Check(Check { note: None, count: work.count.map(|_| CountRange::exact(6)), ..work });
        let on = day("2026-05-12");
        let edit = yard.book.correct(&pen("bb", on), line.day, on, &line.id, what.clone(), &Unicode).unwrap();
        assert_eq!(edit.len(), 1, "lines of the same work are not taken over beside it");
        let mut mended = yard.book.clone();
        mended.add(edit);
        let now = &mended.standing().hives[&hive];
        let count = if first { 6 } else { 60 };
        assert_eq!((catches(now), now.doubles.len()), (vec![(count, 60)], 0));
        // On another day it is a count of its own, and the rest of the lines adds nothing to it.
        if first {
            let edit =
                yard.book.correct(&pen("bb", on), day("2026-05-09"), on, &line.id, what, &Unicode).unwrap();
            yard.book.add(edit);
            assert_eq!(catches(&yard.book.standing().hives[&hive]), [(6, 32)]);
        }
    }
}

/// The traps of hive 1 that are of the second kind, and one of the first.
fn apart(yard: &Yard, hive: &ThingId) -> (Vec<ThingId>, ThingId) {
    let now = &yard.book.standing().hives[hive];
    let other = now.traps().filter(|trap| trap.kind != yard.kind()).map(|trap| trap.id.clone()).collect();
    (other, now.traps().find(|trap| trap.kind == yard.kind()).unwrap().id.clone())
}

fn levels(yard: &Yard, hive: &ThingId, traps: &[ThingId]) -> Vec<Option<Share>> {
    let now = &yard.book.standing().hives[hive];
    let named = now.traps().filter(|trap| traps.contains(&trap.id));
    named.map(|trap| trap.level.map(|(_, level)| level)).collect()
}

#[test]
fn one_trap_filled_by_itself_is_left_at_the_level_of_its_own_kind() {
    for did in [Did::ToppedUp, Did::Replaced] {
        let (mut yard, hive) = mixed(25);
        let (other, first) = apart(&yard, &hive);
        for (trap, level) in [(&other[0], 25), (&first, 50)] {
            let one = std::slice::from_ref(trap);
            let now = &yard.book.standing().hives[&hive];
            assert_eq!(yard.book.usual_level(now, did, Some(one)), Some(percent(level)));
            let work = Check { traps: Some(one.to_vec()), ..found(&hive, did, Some(20), Some(7)) };
            assert_eq!(write(&mut yard.book, "2026-05-11", work).len(), 1);
        }
        let now = &yard.book.standing().hives[&hive];
        assert_eq!(yard.book.usual_level(now, did, None), None, "all of them have no one level");
    }
}

/// A trap that is glued shut is passed over by work on all, and then the others decide; named, it decides itself.
#[test]
fn a_trap_that_was_glued_shut_is_filled_to_its_own_level_and_not_to_that_of_the_others() {
    let (mut yard, hive) = mixed(25);
    let (other, _) = apart(&yard, &hive);
    let shut = Check { traps: Some(other.clone()), ..found(&hive, Did::GluedShut, None, None) };
    write(&mut yard.book, "2026-05-11", shut);
    let now = &yard.book.standing().hives[&hive];
    assert_eq!(yard.book.usual_level(now, Did::ToppedUp, None), Some(percent(50)));
    assert_eq!(yard.book.usual_level(now, Did::ToppedUp, Some(&other)), Some(percent(25)));
}

#[test]
fn traps_of_both_kinds_named_together_are_each_left_at_their_own_level_and_counted_once() {
    let (mut yard, hive) = mixed(25);
    let (other, first) = apart(&yard, &hive);
    let named = vec![other[0].clone(), first];
    let before = yard.book.standing().clone();
    let work = Check { traps: Some(named.clone()), ..found(&hive, Did::ToppedUp, Some(20), Some(9)) };
    let entries = write(&mut yard.book, "2026-05-11", work);
    assert_eq!(levels(&yard, &hive, &named), [Some(percent(50)), Some(percent(25))]);
    assert_eq!(catches(&yard.book.standing().hives[&hive]), [(9, 20)], "two traps for ten days");
    let untouched =
        yard.book.standing().hives[&hive].traps().filter(|trap| trap.service == day("2026-05-01"));
    assert_eq!(untouched.count(), 4);
    let on = day("2026-05-12");
    let together = yard.book.together(&entries[1].id);
    let strike = yard.book.strike(&pen("aa", on), on, &together, &Unicode).unwrap();
    yard.book.add(strike);
    assert_eq!(*yard.book.standing(), before);
}
