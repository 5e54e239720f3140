//! One hive that two phones wrote down before they met.

use crate::record_of_each::filled;
use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::ledger::history;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::write::{Draft, KindChoice, Refusal};

/// A yard of one hive, shared; then hive 12 is written down on both phones, on two days, and worked on.
pub(crate) struct Met {
    pub(crate) yard: Yard,
    /// Both phones put together.
    pub(crate) book: Book,
    pub(crate) first: ThingId,
    pub(crate) second: ThingId,
}

pub(crate) fn work(hive: &ThingId, before: u32) -> Check {
    let level = |percent| Share::from_percent(Decimal::whole(percent)).ok();
    let (before, after) = (level(before), level(50));
    Check { hive: hive.clone(), traps: None, did: Did::ToppedUp, before, after, count: None, note: None }
}

pub(crate) fn met() -> Met {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let mut phones = [yard.book.clone(), yard.book.clone()];
    let mut hives = Vec::new();
    for (book, (name, on)) in phones.iter_mut().zip([("bb", "2026-05-02"), ("cc", "2026-05-03")]) {
        let plan = plan(&["12"], &[(BoxDepth::Deep, 2)], day(on));
        let kind = KindChoice::Known(yard.kind());
        let written = book.add_hives(&pen(name, day(on)), &yard.id, &kind, &plan, &Unicode).unwrap();
        book.add(written);
        let hive = book.standing().hives.keys().last().unwrap().clone();
        let later = day(on).plus(7);
        let written = book.check(&pen(name, later), later, later, work(&hive, 40)).unwrap();
        book.add(written);
        hives.push(hive);
    }
    let mut book = phones[0].clone();
    book.add(phones[1].log().entries().cloned());
    let [first, second] = &hives[..] else { unreachable!() };
    Met { yard, book, first: first.clone(), second: second.clone() }
}

pub(crate) fn on() -> beetle_almanac::almanac::day::Day {
    day("2026-06-01")
}

impl Met {
    pub(crate) fn one(&self) -> Vec<Entry> {
        self.book.same_hive(&pen("bb", on()), on(), &self.second, &self.first).unwrap()
    }
}

#[test]
fn both_phones_created_hive_12_and_she_says_that_it_is_one() {
    let mut met = met();
    assert_eq!(met.book.standing().hives_of(&met.yard.id, true).count(), 3);
    let one = met.one();
    met.book.add(one.clone());
    let standing = met.book.standing();
    assert_eq!((standing.hives_of(&met.yard.id, true).count(), standing.orphans), (2, 0));
    let now = &standing.hives[&met.first];
    // The work of both counts: the later one is the last, and its two boxes are not four.
    assert_eq!(now.last.as_ref().unwrap().day, day("2026-05-10"));
    assert_eq!((now.boxes.len(), now.traps().count()), (1, 2));
    assert_eq!(now.losses.len(), 2);
    assert_eq!(standing.kept(&met.second), &met.first);
    // Both histories are one.
    let lines = history::lines(&met.book, Some(&met.first));
    let checks = lines.iter().filter(|line| matches!(line.entry.what, What::Check(_)));
    assert_eq!(checks.count(), 2);
    assert!(lines.iter().any(|line| line.entry.id == one[0].id));
    assert_eq!(Book::from_log(met.book.log().clone()), met.book);
}

#[test]
fn she_was_wrong_and_they_are_two_again() {
    let mut met = met();
    let before = met.book.standing().clone();
    let one = met.one();
    met.book.add(one.clone());
    let strike = met.book.strike(&pen("bb", on()), on(), &[one[0].id.clone()], &Unicode).unwrap();
    met.book.add(strike);
    assert_eq!(*met.book.standing(), before);
}

/// Two phones decide, each its own way round or with a third hive: both end with the same book, whichever comes first.
#[test]
fn two_phones_decide_in_a_ring_and_still_agree() {
    let met = met();
    let third = met.yard.hive("1");
    let says = |name, hive: &ThingId, is: &ThingId| {
        let mut draft = beetle_almanac::book::write::Draft::new(&met.book, &pen(name, on())).done();
        assert!(draft.is_empty());
        let pen = pen(name, on());
        let mut made = beetle_almanac::book::write::Draft::new(&met.book, &pen);
        made.push(on(), Some(&met.yard.id), What::HiveSame { hive: hive.clone(), is: is.clone() }).unwrap();
        draft.append(&mut made.done());
        draft
    };
    let (a, b) = (says("bb", &met.first, &met.second), says("cc", &met.second, &met.first));
    let (c, d) = (says("dd", &met.second, &third), says("ee", &third, &met.first));
    let together = |order: [&Vec<Entry>; 4]| {
        let mut book = met.book.clone();
        for entries in order {
            book.add(entries.iter().cloned());
            assert_eq!(Book::from_log(book.log().clone()), book);
        }
        book
    };
    let one = together([&a, &b, &c, &d]);
    assert_eq!(together([&d, &c, &b, &a]), one);
    assert_eq!(together([&b, &d, &a, &c]), one);
    // All three are one hive, and none of them is gone with nothing in its place.
    assert_eq!(one.standing().hives.len(), 1);
}

#[test]
fn what_is_known_of_the_other_one_is_told_of_the_one_that_is_kept() {
    let mut met = met();
    let add = |book: &mut Book, record: Record| {
        let written = book.record(&pen("cc", on()), on(), on(), Some(&met.yard.id), record).unwrap();
        book.add(written);
    };
    add(&mut met.book, filled(Blank::Look, &met.second, &met.second));
    // A product on both is on one hive.
    add(&mut met.book, filled(Blank::Product, &met.second, &met.first));
    let one = met.one();
    met.book.add(one);
    let standing = met.book.standing();
    assert!(standing.newest_record(Blank::Look, &met.first).is_some());
    let product = standing.newest_record(Blank::Product, &met.first).unwrap();
    assert_eq!(product.record.hives, [met.first.clone()]);
}

#[test]
fn the_death_that_was_written_under_the_other_name_is_its_death() {
    let mut met = met();
    let ended = met.book.end_hive(&pen("cc", on()), on(), on(), &met.second, Ending::Dead, None).unwrap();
    met.book.add(ended);
    let one = met.book.same_hive(&pen("bb", on()), on(), &met.first, &met.second).unwrap();
    met.book.add(one);
    assert_eq!(met.book.standing().hives[&met.first].ended, Some((Ending::Dead, on())));
}

/// Named traps of the other one hang nowhere: such work stays in the history and moves no date.
#[test]
fn work_on_single_traps_of_the_other_one_moves_nothing_and_is_not_lost() {
    let mut met = met();
    let trap = met.book.standing().hives[&met.second].traps().next().unwrap().id.clone();
    let named = Check { traps: Some(vec![trap]), ..work(&met.second, 30) };
    let written = met.book.check(&pen("cc", on()), on(), on(), named).unwrap();
    let id = written[0].id.clone();
    met.book.add(written);
    let one = met.one();
    met.book.add(one);
    let standing = met.book.standing();
    assert_eq!(standing.hives[&met.first].last.as_ref().unwrap().day, day("2026-05-10"));
    assert_eq!(standing.orphans, 0);
    assert!(history::lines(&met.book, Some(&met.first)).iter().any(|line| line.entry.id == id));
}

#[test]
fn a_hive_is_not_the_same_as_itself_or_as_one_in_another_yard() {
    let mut met = met();
    let same = |book: &Book, one: &ThingId, two: &ThingId| {
        book.same_hive(&pen("bb", on()), on(), one, two).map(|_| ()).unwrap_err()
    };
    assert_eq!(same(&met.book, &met.first, &met.first), Refusal::Nothing);
    let kind = KindChoice::Known(met.yard.kind());
    let plan = plan(&["12"], &[(BoxDepth::Deep, 2)], on());
    let written = met.book.keep_yard(&pen("bb", on()), "Mill", "Europe/Berlin", &kind, &plan).unwrap();
    met.book.add(written);
    let there = met.book.standing().hives.keys().last().unwrap().clone();
    assert_eq!(same(&met.book, &met.first, &there), Refusal::OtherYard);
}

pub(crate) fn put(record: &mut Record, name: &str, answer: Answer) {
    let at = record.blank.fields().iter().position(|field| field.name == name).unwrap();
    record.answers[at] = Some(answer);
}

#[test]
fn a_look_at_the_other_one_and_its_split_are_corrected_as_any() {
    let mut met = met();
    let third = met.yard.hive("1");
    let mut written = Vec::new();
    for record in [filled(Blank::Look, &met.second, &met.second), filled(Blank::Split, &met.second, &third)] {
        let entries = met.book.record(&pen("cc", on()), on(), on(), Some(&met.yard.id), record).unwrap();
        written.push(entries[0].clone());
        met.book.add(entries);
    }
    let one = met.one();
    met.book.add(one);
    for line in &written {
        let What::Record(record) = &line.what else { unreachable!() };
        let mut better = record.clone();
        let note = better.blank.fields().iter().position(|field| field.name == "note").unwrap();
        better.answers[note] = None;
        let what = What::Record(better.clone());
        let later = on().plus(1);
        let entries = met.book.correct(&pen("bb", later), on(), later, &line.id, what, &Unicode).unwrap();
        met.book.add(entries);
        assert_eq!(met.book.standing().records[&line.id].record.answers, better.answers);
    }
    // A split of the hive into itself is none, whatever its names are.
    for (from, into) in [(&met.first, &met.second), (&third, &met.second)] {
        let split = filled(Blank::Split, from, into);
        let refused = met.book.record(&pen("bb", on()), on(), on(), Some(&met.yard.id), split).unwrap_err();
        assert_eq!(refused, Refusal::SplitOfItself);
    }
}

/// The word of 10 May comes first, the hive it speaks of, which begins on 12 May, after it.
#[test]
fn the_hive_that_another_is_comes_in_after_the_word_that_says_so() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let twelve = plan(&["1b"], &[(BoxDepth::Deep, 2)], day("2026-05-12"));
    let kind = KindChoice::Known(yard.kind());
    let late = pen("bb", day("2026-05-12"));
    let brought = yard.book.add_hives(&late, &yard.id, &kind, &twelve, &Unicode).unwrap();
    let mut other = yard.book.clone();
    other.add(brought.clone());
    let is = other.standing().hives.keys().last().unwrap().clone();
    let early = pen("bb", day("2026-05-10"));
    let mut draft = Draft::new(&other, &early);
    let same = What::HiveSame { hive: yard.hive("1"), is };
    draft.push(day("2026-05-10"), Some(&yard.id), same).unwrap();
    let mut book = yard.book.clone();
    for entries in [draft.done(), brought] {
        book.add(entries);
        assert_eq!(Book::from_log(book.log().clone()), book);
    }
    assert_eq!(book.standing().hives.len(), 1);
}
