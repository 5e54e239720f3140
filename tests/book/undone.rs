//! What was taken back, and the tags that would come back with it.

use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, What};
use beetle_almanac::book::id::{EntryId, ThingId};
use beetle_almanac::book::write::{KindChoice, Refusal};
use beetle_almanac::papers::backup;

fn rename(yard: &mut Yard, hive: &ThingId, tag: &str) -> EntryId {
    let on = day("2026-05-15");
    let renamed = yard.book.rename_hive(&pen("aa", on), on, hive, tag, &Unicode).unwrap();
    let id = renamed[0].id.clone();
    yard.book.add(renamed);
    id
}

fn strike(yard: &Yard, id: &EntryId) -> Result<Vec<Entry>, Refusal> {
    let on = day("2026-05-16");
    yard.book.strike(&pen("aa", on), on, std::slice::from_ref(id), &Unicode)
}

fn taken(free: &str) -> Result<Vec<Entry>, Refusal> {
    Err(Refusal::TagTaken { free: free.to_owned() })
}

#[test]
fn a_tag_that_another_hive_carries_in_other_letters_does_not_come_back() {
    for other in ["blue", "BLUE", " Blue"] {
        let mut yard = Yard::new(&["Blue", "2"], day("2026-05-01"));
        let (first, second) = (yard.hive("Blue"), yard.hive("2"));
        let id = rename(&mut yard, &first, "Red");
        rename(&mut yard, &second, other);
        assert_eq!(strike(&yard, &id), taken("Blue 2"), "{other}");
    }
}

#[test]
fn the_tag_that_is_offered_is_free_in_the_yard() {
    let mut yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let (first, second, third) = (yard.hive("1"), yard.hive("2"), yard.hive("3"));
    let id = rename(&mut yard, &first, "9");
    rename(&mut yard, &second, "1");
    rename(&mut yard, &third, "1B");
    assert_eq!(strike(&yard, &id), taken("1c"));
}

/// The book of another phone may have brought a double; a second one is refused all the same, and what makes no new one
/// is not.
#[test]
fn a_double_that_is_here_already_hides_no_new_one_and_stops_nothing_else() {
    let mut yard = Yard::new(&["1", "2", "3", "4", "5"], day("2026-05-01"));
    let on = day("2026-05-14");
    let twin = yard.hive("5");
    // Two phones that had not met: no rule was broken on either.
    let mut twice = yard.book.rename_hive(&pen("bb", on), on, &twin, "5b", &Unicode).unwrap();
    twice[0].what = What::HiveChanged { hive: twin, tag: Some("4".to_owned()), size: None };
    yard.book.add(twice);
    let (first, second) = (yard.hive("1"), yard.hive("2"));
    let id = rename(&mut yard, &first, "9");
    let harmless = rename(&mut yard, &second, "1");
    assert_eq!(strike(&yard, &id), taken("1b"));
    assert!(strike(&yard, &harmless).is_ok());
    // A third hive under the tag of the two.
    let third = yard.hive("3");
    let back = rename(&mut yard, &third, "7");
    yard.book.add(strike(&yard, &back).unwrap());
    assert_eq!(yard.book.standing().hives[&third].tag, "3");
}

#[test]
fn a_move_that_is_taken_back_brings_no_tag_into_a_yard_where_another_hive_carries_it() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let (on, first) = (day("2026-05-15"), yard.hive("1"));
    let kind = KindChoice::Known(yard.kind());
    let hill = plan(&["9"], &[(BoxDepth::Deep, 2)], on);
    let kept = yard.book.keep_yard(&pen("aa", on), "Hill", "Europe/Berlin", &kind, &hill).unwrap();
    let hill = kept[0].id.thing(0);
    yard.book.add(kept);
    let moved = yard.book.move_hive(&pen("aa", on), on, on, &first, &hill, None, &Unicode).unwrap();
    let id = moved[0].id.clone();
    yard.book.add(moved);
    assert!(strike(&yard, &id).is_ok());
    let more = plan(&["1"], &[(BoxDepth::Deep, 2)], on);
    let more = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &more, &Unicode).unwrap();
    yard.book.add(more);
    assert_eq!(strike(&yard, &id), taken("1b"));
}

#[test]
fn a_hive_comes_back_under_its_tag_while_nobody_else_carries_it() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let on = day("2026-05-15");
    let first = yard.hive("1");
    let ended = yard.book.end_hive(&pen("aa", on), on, on, &first, Ending::Dead, None).unwrap();
    let id = ended[0].id.clone();
    yard.book.add(ended);
    assert!(strike(&yard, &id).is_ok());
    let kind = KindChoice::Known(yard.kind());
    let more = plan(&["1"], &[(BoxDepth::Deep, 2)], on);
    let more = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &more, &Unicode).unwrap();
    yard.book.add(more);
    assert_eq!(strike(&yard, &id), taken("1b"));
}

/// The days and words of two phones may say which ending is the last one, and so may a correction.
#[test]
fn a_tag_that_another_hive_carries_does_not_come_back_by_a_correction() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let first = yard.hive("1");
    let end = |yard: &mut Yard, on: &str| {
        let ended = yard.book.end_hive(&pen("aa", day(on)), day(on), day(on), &first, Ending::Sold, None);
        let id = ended.as_ref().unwrap()[0].id.clone();
        yard.book.add(ended.unwrap());
        id
    };
    end(&mut yard, "2026-05-03");
    let on = day("2026-05-05");
    let back = yard.book.hive_back(&pen("aa", on), on, on, &first, &Unicode).unwrap();
    yard.book.add(back);
    let last = end(&mut yard, "2026-05-08");
    let on = day("2026-05-09");
    let correct = |yard: &Yard, to: &str| {
        let what = yard.book.log().get(&last).unwrap().what.clone();
        yard.book.correct(&pen("aa", on), day(to), on, &last, what, &Unicode)
    };
    // The ending before the hive was taken back: it is in care, under a tag that is still its own.
    assert!(correct(&yard, "2026-05-04").is_ok());
    let kind = KindChoice::Known(yard.kind());
    let more = plan(&["1"], &[(BoxDepth::Deep, 2)], on);
    let more = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &more, &Unicode).unwrap();
    yard.book.add(more);
    assert_eq!(correct(&yard, "2026-05-04"), taken("1b"));
    assert!(correct(&yard, "2026-05-07").is_ok(), "it stays the last one");
}

#[test]
fn a_first_of_two_new_tags_that_was_given_away_does_not_come_back_by_a_correction() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let (one, two) = (yard.hive("1"), yard.hive("2"));
    let mut renamed = Vec::new();
    for (hive, on, tag) in [(&one, "2026-05-02", "A"), (&one, "2026-05-03", "B"), (&two, "2026-05-04", "A")] {
        let entries = yard.book.rename_hive(&pen("aa", day(on)), day(on), hive, tag, &Unicode).unwrap();
        renamed.push(entries[0].clone());
        yard.book.add(entries);
    }
    let on = day("2026-05-04");
    let what = renamed[0].what.clone();
    let edit = yard.book.correct(&pen("aa", on), on, on, &renamed[0].id, what, &Unicode);
    assert_eq!(edit, taken("A 2"));
}

/// Two phones move one ending to two days; only the later one leaves the hive out of care.
#[test]
fn of_two_versions_the_one_that_would_bring_a_tag_back_cannot_be_kept() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let first = yard.hive("1");
    let ended = |yard: &Yard, on: &str| {
        yard.book.end_hive(&pen("aa", day(on)), day(on), day(on), &first, Ending::Sold, None).unwrap()
    };
    yard.book.add(ended(&yard, "2026-05-03"));
    let on = day("2026-05-05");
    let back = yard.book.hive_back(&pen("aa", on), on, on, &first, &Unicode).unwrap();
    yard.book.add(back);
    let last = ended(&yard, "2026-05-08");
    yard.book.add(last.clone());
    let on = day("2026-05-10");
    let correct = |writer: &str, to: &str| {
        let what = last[0].what.clone();
        yard.book.correct(&pen(writer, on), day(to), on, &last[0].id, what, &Unicode).unwrap()
    };
    // The name that counts is the higher one: the ending stays after the hive was taken back.
    let (early, late) = (correct("bb", "2026-05-04"), correct("cc", "2026-05-07"));
    yard.book.add(early.clone());
    yard.book.add(late.clone());
    let kind = KindChoice::Known(yard.kind());
    let more = plan(&["1"], &[(BoxDepth::Deep, 2)], on);
    let more = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &more, &Unicode).unwrap();
    yard.book.add(more);
    let decide = |kept: &Entry| yard.book.decide(&pen("aa", on), on, &kept.id, &Unicode);
    assert_eq!(decide(&early[0]), taken("1b"));
    assert!(decide(&late[0]).is_ok());
}

fn noted(yard: &Yard, note: &str) -> Check {
    let hive = yard.hive("1");
    let note = Some(note.to_owned());
    Check { hive, traps: None, did: Did::AsFound, before: None, after: None, count: None, note }
}

/// The undo bar of one tab outlives what another tab writes.
#[test]
fn what_was_corrected_in_another_tab_is_undone_whole_and_done_again_as_corrected() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-05-10");
    let logged = yard.book.check(&pen("aa", on), on, on, noted(&yard, "wax")).unwrap();
    let act = vec![logged[0].id.clone()];
    yard.book.add(logged);
    let mut line = act[0].clone();
    for note in ["wax moth", "wax moths"] {
        let what = What::Check(noted(&yard, note));
        let edit = yard.book.correct(&pen("bb", on), on, on, &line, what, &Unicode).unwrap();
        line = edit[0].id.clone();
        yard.book.add(edit);
    }
    let corrected = yard.book.standing().clone();
    let undo = yard.book.strike(&pen("aa", on), on, &yard.book.undone_with(&act), &Unicode).unwrap();
    let strike = undo[0].id.clone();
    yard.book.add(undo);
    assert!(yard.book.standing().hives[&yard.hive("1")].last.is_none());
    yard.book.add(self::strike(&yard, &strike).unwrap());
    assert_eq!(*yard.book.standing(), corrected);
}

#[test]
fn a_correction_that_is_undone_leaves_the_words_before_it_whoever_corrected_it_since() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-05-10");
    let logged = yard.book.check(&pen("aa", on), on, on, noted(&yard, "wax")).unwrap();
    let first = logged[0].id.clone();
    yard.book.add(logged);
    let before = yard.book.standing().clone();
    let mut acts = vec![first];
    for (writer, note) in [("aa", "wax moth"), ("bb", "wax moths")] {
        let what = What::Check(noted(&yard, note));
        let edit =
            yard.book.correct(&pen(writer, on), day("2026-05-09"), on, &acts[acts.len() - 1], what, &Unicode);
        acts.push(edit.as_ref().unwrap()[0].id.clone());
        yard.book.add(edit.unwrap());
    }
    let undone = yard.book.undone_with(&acts[1..2]);
    assert_eq!(undone, acts[1..]);
    let undo = yard.book.strike(&pen("aa", on), on, &undone, &Unicode).unwrap();
    yard.book.add(undo);
    assert_eq!(*yard.book.standing(), before);
}

/// One line of every kind there is.
const EVERY_KIND: &str = include_str!("../fixtures/v1/yard-backup-2026-07-14.json");

#[test]
fn yards_kinds_of_trap_settings_and_the_order_are_taken_back_months_later_and_come_back_like_any_line() {
    let entries = backup::open(EVERY_KIND).unwrap().entries;
    let mut book = Book::default();
    book.add(entries.clone());
    let (before, on) = (book.standing().clone(), day("2026-12-01"));
    let mut changed = Vec::new();
    for entry in entries.iter().filter(|entry| !matches!(entry.what, What::Struck { .. })) {
        let versions = book.versions_of(std::slice::from_ref(&entry.id));
        // It is struck out already.
        if versions.is_empty() {
            continue;
        }
        let strike = book.strike(&pen("zz", on), on, &versions, &Unicode).unwrap();
        let id = strike[0].id.clone();
        book.add(strike);
        if *book.standing() != before {
            changed.push(std::mem::discriminant(&entry.what));
        }
        let back = book.strike(&pen("zz", on), on, &[id], &Unicode).unwrap();
        book.add(back);
        assert_eq!(*book.standing(), before, "{:?}", entry.what);
    }
    // What has no fields to correct it in goes with its strike all the same.
    for entry in &entries {
        let mended_anew = matches!(
            entry.what,
            What::Yard { .. }
                | What::YardChanged { .. }
                | What::Kind(_)
                | What::KindChanged { .. }
                | What::KindRetired { .. }
                | What::Keeper(_)
        );
        let struck = entries
            .iter()
            .any(|other| matches!(&other.what, What::Struck { entries } if entries.contains(&entry.id)));
        let gone = changed.contains(&std::mem::discriminant(&entry.what));
        assert!(!mended_anew || struck || gone, "{:?}", entry.what);
    }
}

#[test]
fn the_order_of_the_walk_is_taken_back_in_winter_and_comes_back() {
    let mut yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let tags = |yard: &Yard| -> Vec<String> {
        yard.book.standing().hives_of(&yard.id, true).map(|(_, hive)| hive.tag.clone()).collect()
    };
    let hives = ["3", "1", "2"].map(|tag| yard.hive(tag)).to_vec();
    let order = What::Order { yard: yard.id.clone(), hives };
    let written =
        yard.book.about_yard(&pen("aa", yard.start), yard.start, yard.start, &yard.id, order).unwrap();
    let mut id = written[0].id.clone();
    yard.book.add(written);
    for wanted in [["1", "2", "3"], ["3", "1", "2"], ["1", "2", "3"]] {
        let entries = strike(&yard, &id).unwrap();
        id = entries[0].id.clone();
        yard.book.add(entries);
        assert_eq!(tags(&yard), wanted);
    }
}
