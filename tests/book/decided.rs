//! What a second version, a decision and a line taken over leave behind, to the last entry.

use crate::Yard;
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::app::ledger::history;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Entry, What};
use beetle_almanac::book::id::{EntryId, ThingId};
use beetle_almanac::book::round::HiveDue;

const ON: &str = "2026-05-11";

fn work(hive: &ThingId, did: Did, after: Option<u32>) -> Check {
    let after = after.map(|percent| Share::from_percent(Decimal::whole(percent)).unwrap());
    Check { hive: hive.clone(), traps: None, did, before: None, after, count: None, note: None }
}

/// A yard of one hive, and a line of work on it.
fn logged() -> (Yard, ThingId, Entry) {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let work = work(&hive, Did::ToppedUp, Some(30));
    let entries = yard.book.check(&pen("aa", day(ON)), day(ON), day(ON), work).unwrap();
    yard.book.add(entries.clone());
    (yard, hive, entries[0].clone())
}

/// `line` corrected to `after` by `writer`, in a book that holds it.
fn corrected(book: &mut Book, writer: &str, line: &EntryId, hive: &ThingId, after: u32) -> EntryId {
    let what = What::Check(work(hive, Did::ToppedUp, Some(after)));
    let edit = book.correct(&pen(writer, day(ON)), day(ON), day(ON), line, what, &Unicode).unwrap();
    let id = edit[0].id.clone();
    book.add(edit);
    id
}

fn strike(book: &Book, id: &EntryId) -> Vec<Entry> {
    book.strike(&pen("aa", day(ON)), day(ON), std::slice::from_ref(id), &Unicode).unwrap()
}

#[test]
fn two_phones_that_correct_a_line_alike_are_asked_nothing() {
    let (yard, hive, line) = logged();
    for (other, asked) in [(50, 0), (60, 1)] {
        let (mut one, mut two) = (yard.book.clone(), yard.book.clone());
        corrected(&mut one, "bb", &line.id, &hive, 50);
        corrected(&mut two, "cc", &line.id, &hive, other);
        one.add(two.log().entries().cloned());
        let lines = history::lines(&one, None);
        let now = lines.iter().find(|known| *known.root == line.id).unwrap();
        assert_eq!(now.clash.len(), asked, "{other} %");
    }
}

#[test]
fn a_decision_strikes_the_other_version_and_nothing_that_the_kept_one_corrects() {
    let (yard, hive, line) = logged();
    let (mut one, mut two) = (yard.book.clone(), yard.book.clone());
    let first = corrected(&mut one, "bb", &line.id, &hive, 40);
    let kept = corrected(&mut one, "bb", &first, &hive, 50);
    let other = corrected(&mut two, "cc", &line.id, &hive, 60);
    one.add(two.log().entries().cloned());
    let decision = one.decide(&pen("dd", day(ON)), day(ON), &kept, &Unicode).unwrap();
    assert_eq!(decision[1].what, What::Struck { entries: vec![other] });
}

#[test]
fn a_correction_that_was_undone_at_once_is_not_taken_for_a_decision() {
    let (mut yard, hive, line) = logged();
    let edit = corrected(&mut yard.book, "aa", &line.id, &hive, 50);
    let undo = strike(&yard.book, &edit);
    assert_eq!(undo[0].id.n(), edit.n() + 1, "written right after it, as the strike of a decision is");
    yard.book.add(undo);
    assert_eq!(yard.book.decision(&edit), [edit]);
}

#[test]
fn a_hive_that_comes_back_or_goes_is_named_among_the_days_that_move() {
    let (mut yard, hive, _) = logged();
    let out = strike(&yard.book, hive.entry());
    let gone = yard.book.shifts(&out, day(ON));
    assert!(matches!(&gone[..], [shift] if shift.hive == hive && shift.after.is_none()), "{gone:?}");
    yard.book.add(out.clone());
    let back = strike(&yard.book, &out[0].id);
    let shifts = yard.book.shifts(&back, day(ON));
    let [shift] = &shifts[..] else { panic!("{shifts:?}") };
    assert_eq!((&shift.hive, &shift.before), (&hive, &None));
    assert!(matches!(shift.after, Some(HiveDue::Due { .. })));
}

/// The look that goes with putting traps in is work like any other.
#[test]
fn traps_put_in_after_a_look_of_the_same_day_raise_no_doubt() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let (on, hive, kind) = (day(ON), yard.hive("1"), yard.kind());
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let more = What::BoxWants { hive: hive.clone(), part, traps: 4 };
    let more = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, more).unwrap();
    yard.book.add(more);
    let look = || work(&hive, Did::AsFound, None);
    let first = yard.book.check(&pen("aa", on), on, on, look()).unwrap();
    yard.book.add(first.clone());
    // The page was started anew in between.
    let placed = yard.book.traps_placed(&pen("bb", on), on, on, &kind, look()).unwrap();
    let last = placed.last().unwrap().clone();
    let act: Vec<EntryId> = placed.iter().map(|entry| entry.id.clone()).collect();
    assert_eq!(placed[0].replaces.as_ref(), Some(&first[0].id));
    let before = yard.book.standing().clone();
    yard.book.add(placed);
    assert_eq!(yard.book.standing().hives[&hive].doubles, []);
    assert_eq!(yard.book.together(&last.id), act[1..], "the look before it is no part of it");
    let undo = yard.book.strike(&pen("bb", on), on, &act, &Unicode).unwrap();
    yard.book.add(undo);
    assert_eq!(*yard.book.standing(), before);
}
