//! What was not kept and is said anew is not held any longer, whether it is kept the second time or not.

use crate::Yard;
use crate::support::{Unicode, day, pen};
use beetle_almanac::app::cabinet::NotSaved;
use beetle_almanac::app::unsaved::{Held, Unsaved};
use beetle_almanac::book::entry::{Check, Did, Entry, What};
use beetle_almanac::book::id::EntryId;

const ON: &str = "2026-05-15";

fn nothing() -> Unsaved {
    Unsaved { why: NotSaved::Busy, acts: Vec::new() }
}

fn act(said: &str, entries: Vec<Entry>) -> Held {
    Held { said: said.to_owned(), entries }
}

fn work(yard: &Yard, writer: &str, tag: &str, did: Did) -> Vec<Entry> {
    let hive = yard.hive(tag);
    let work = Check { hive, traps: None, did, before: None, after: None, count: None, note: None };
    yard.book.check(&pen(writer, day(ON)), day(ON), day(ON), work).unwrap()
}

#[test]
fn keeper_taps_again_when_there_is_room_and_try_again_has_nothing_left_of_it_to_write() {
    let yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let mut held = nothing();
    held.hold(act("Hive 1", work(&yard, "aa", "1", Did::ToppedUp)));
    held.hold(act("Hive 2", work(&yard, "bb", "2", Did::ToppedUp)));
    assert!(held.leave_out(&act("Hive 1", work(&yard, "cc", "1", Did::Replaced))));
    assert_eq!(held.said(), "Hive 2");
    let again = act(&held.said(), held.entries());
    assert!(!held.leave_out(&again), "tried again, not said anew");
    assert_eq!(held.said(), "Hive 2");
}

#[test]
fn striking_or_correcting_one_line_says_nothing_anew_of_another() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let lines: Vec<EntryId> = ["1", "2"]
        .into_iter()
        .map(|tag| {
            let entries = work(&yard, "aa", tag, Did::ToppedUp);
            let id = entries[0].id.clone();
            yard.book.add(entries);
            id
        })
        .collect();
    let strike = |writer: &str, line: &EntryId| {
        let line = std::slice::from_ref(line);
        act("Struck out", yard.book.strike(&pen(writer, day(ON)), day(ON), line, &Unicode).unwrap())
    };
    let mut held = nothing();
    held.hold(strike("bb", &lines[0]));
    held.hold(strike("cc", &lines[1]));
    assert_eq!(held.acts.len(), 2);
    held.leave_out(&strike("dd", &lines[0]));
    assert_eq!(held.acts.len(), 1);

    // Two lines of one hive and day, corrected one after the other.
    let more = work(&yard, "ee", "1", Did::AsFound);
    let second = more.last().unwrap().id.clone();
    yard.book.add(more);
    let correct = |writer: &str, line: &EntryId| {
        let What::Check(work) = yard.book.log().get(line).unwrap().what.clone() else { panic!("{line:?}") };
        let what = What::Check(Check { note: Some("wet".to_owned()), ..work });
        act(
            "Corrected",
            yard.book.correct(&pen(writer, day(ON)), day(ON), day(ON), line, what, &Unicode).unwrap(),
        )
    };
    let mut held = nothing();
    held.hold(correct("ff", &lines[0]));
    held.hold(correct("gg", &second));
    assert_eq!(held.acts.len(), 2);
}
