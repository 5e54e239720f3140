//! What the phone did not keep is held, each thing once.

use crate::Yard;
use crate::support::{day, pen};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::app::cabinet::NotSaved;
use beetle_almanac::app::unsaved::{Held, Unsaved};
use beetle_almanac::book::entry::{Check, Did, Entry, SkipReason, What};
use beetle_almanac::book::id::ThingId;

const ON: &str = "2026-05-15";

struct Phone {
    yard: Yard,
    unsaved: Unsaved,
    writers: u32,
}

impl Phone {
    fn full() -> Phone {
        let yard = Yard::new(&["1", "2"], day("2026-05-01"));
        Phone { yard, unsaved: Unsaved { why: NotSaved::Busy, acts: Vec::new() }, writers: 0 }
    }

    fn writer(&mut self) -> String {
        self.writers += 1;
        format!("w{}", self.writers)
    }

    fn hold(&mut self, said: &str, entries: Vec<Entry>) {
        self.unsaved.hold(Held { said: said.to_owned(), entries });
    }

    fn logs(&mut self, tag: &str, on: &str, did: Did, count: u32, traps: Option<Vec<ThingId>>) {
        let count = CountRange::new(count, Some(count)).ok();
        let hive = self.yard.hive(tag);
        let work = Check { hive, traps, did, before: None, after: None, count, note: None };
        let pen = pen(&self.writer(), day(ON));
        let entries = self.yard.book.check(&pen, day(on), day(ON), work).unwrap();
        self.hold(&format!("Hive {tag} {did:?}"), entries);
    }

    fn checks(&self) -> Vec<(String, Did, u32)> {
        let name = |hive: &ThingId| self.yard.book.standing().hives[hive].tag.clone();
        let check = |entry: Entry| match entry.what {
            What::Check(check) => (name(&check.hive), check.did, check.count.map_or(0, CountRange::low)),
            other => panic!("{other:?}"),
        };
        self.unsaved.entries().into_iter().map(check).collect()
    }
}

#[test]
fn keeper_taps_three_times_while_the_phone_is_full_and_one_check_is_held_with_the_last_count() {
    let mut phone = Phone::full();
    phone.logs("1", ON, Did::ToppedUp, 5, None);
    phone.logs("1", ON, Did::ToppedUp, 5, None);
    phone.logs("1", ON, Did::Replaced, 7, None);
    assert_eq!(phone.checks(), [("1".to_owned(), Did::Replaced, 7)]);
    assert_eq!(phone.unsaved.said(), "Hive 1 Replaced");
}

#[test]
fn other_hives_other_days_and_other_traps_are_held_beside_it() {
    let mut phone = Phone::full();
    let hive = phone.yard.hive("1");
    let traps: Vec<ThingId> =
        phone.yard.book.standing().hives[&hive].traps().map(|trap| trap.id.clone()).collect();
    phone.logs("1", ON, Did::ToppedUp, 5, Some(traps[..1].to_vec()));
    phone.logs("1", ON, Did::Replaced, 0, Some(traps[1..].to_vec()));
    phone.logs("2", ON, Did::ToppedUp, 1, None);
    phone.logs("2", "2026-05-14", Did::ToppedUp, 2, None);
    assert_eq!(phone.unsaved.entries().len(), 4);
    assert_eq!(phone.unsaved.acts.len(), 4);
    // All traps are said anew by a check of the whole hive only where it shares one with what was held.
    phone.logs("1", ON, Did::AsFound, 9, None);
    assert_eq!(phone.checks().last(), Some(&("1".to_owned(), Did::AsFound, 9)));
    assert_eq!(phone.unsaved.entries().len(), 3);
}

#[test]
fn a_skip_is_said_anew_and_stands_beside_work() {
    let mut phone = Phone::full();
    phone.logs("1", ON, Did::ToppedUp, 5, None);
    for why in [SkipReason::Temper, SkipReason::Robbing] {
        let pen = pen(&phone.writer(), day(ON));
        let hive = phone.yard.hive("1");
        let skip = phone.yard.book.skip(&pen, day(ON), day(ON), &hive, why, None).unwrap();
        phone.hold("Hive 1 skipped", skip);
    }
    let all = phone.unsaved.entries();
    assert_eq!(all.len(), 2);
    assert!(matches!(all[1].what, What::Skip { why: SkipReason::Robbing, .. }));
}

#[test]
fn the_rest_as_usual_is_said_anew_as_a_whole_and_swallows_nothing_else() {
    let mut phone = Phone::full();
    phone.logs("1", ON, Did::ToppedUp, 5, None);
    let hives = [phone.yard.hive("1"), phone.yard.hive("2")];
    for _ in 0..2 {
        let pen = pen(&phone.writer(), day(ON));
        let rest = phone.yard.book.same_for_all(&pen, day(ON), day(ON), &hives, Did::AsFound).unwrap();
        phone.hold("2 hives as found", rest);
    }
    assert_eq!(phone.checks().len(), 3, "what was counted at hive 1 stays");
}

#[test]
fn a_yard_that_was_refused_and_kept_again_is_one_yard_and_another_name_is_another() {
    let mut phone = Phone::full();
    for name in ["Kiln Bank", "Kiln Bank", "Ferry Field"] {
        let pen = pen(&phone.writer(), day(ON));
        let plan = crate::plan(&["1", "2"], &[(beetle_almanac::almanac::stack::BoxDepth::Deep, 2)], day(ON));
        let kind = beetle_almanac::book::write::KindChoice::New(crate::trap());
        let book = beetle_almanac::book::Book::default();
        phone.hold("2 hives", book.keep_yard(&pen, name, "UTC", &kind, &plan).unwrap());
    }
    let yards = |entry: &Entry| matches!(entry.what, What::Yard { .. });
    assert_eq!(phone.unsaved.entries().iter().filter(|entry| yards(entry)).count(), 2);
    assert_eq!(phone.unsaved.acts.len(), 2);
}

#[test]
fn what_is_tried_again_and_not_kept_is_held_as_it_was() {
    let mut phone = Phone::full();
    phone.logs("1", ON, Did::ToppedUp, 5, None);
    phone.logs("2", ON, Did::ToppedUp, 1, None);
    let before = phone.unsaved.clone();
    phone.hold(&before.said(), before.entries());
    assert_eq!(phone.unsaved, before);
}

#[test]
fn the_tab_is_loaded_anew_and_what_was_not_kept_is_shown_with_its_words() {
    let mut phone = Phone::full();
    phone.logs("1", ON, Did::ToppedUp, 5, None);
    phone.logs("2", ON, Did::AsFound, 1, None);
    let text = phone.unsaved.to_text();
    let book = &phone.yard.book;
    let again = Unsaved::left_over(&text, Vec::new(), book).unwrap();
    assert_eq!((&again.acts, again.said()), (&phone.unsaved.acts, phone.unsaved.said()));
    assert_eq!(Unsaved::left_over("", Vec::new(), book), None);
    assert_eq!(Unsaved::left_over("[{\"said\":7}]", Vec::new(), book), None, "nothing that can be read");
    // What was cut short at the same time stands beside it, once.
    let both = Unsaved::left_over(&text, phone.unsaved.acts[0].entries.clone(), book).unwrap();
    assert_eq!(both.acts, phone.unsaved.acts);
    let cut = Unsaved::left_over("", phone.unsaved.acts[0].entries.clone(), book).unwrap();
    assert_eq!((cut.acts.len(), cut.said()), (1, String::new()));
}

#[test]
fn what_was_kept_in_the_meantime_is_not_shown_again() {
    let mut phone = Phone::full();
    phone.logs("1", ON, Did::ToppedUp, 5, None);
    phone.logs("2", ON, Did::AsFound, 1, None);
    let text = phone.unsaved.to_text();
    phone.yard.book.add(phone.unsaved.acts[0].entries.clone());
    let left = Unsaved::left_over(&text, Vec::new(), &phone.yard.book).unwrap();
    assert_eq!(left.acts, phone.unsaved.acts[1..]);
}
