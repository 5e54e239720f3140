//! The kind that was chosen for hives whose traps were not in yet.

use crate::support::{Unicode, day, pen};
use crate::{Yard, trap};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Entry, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::round;
use beetle_almanac::book::write::{HivePlan, KindChoice};

/// A yard kept with one kind, a second kind in the book, and hives added for the second whose traps are not in yet.
fn added_for_another_kind() -> (Yard, ThingId, Vec<Entry>) {
    let on = day("2026-05-01");
    let mut yard = Yard::new(&["9"], on);
    let mut slim = trap();
    "Slim".clone_into(&mut slim.name);
    let described = yard.book.about_keeper(&pen("aa", on), on, What::Kind(slim)).unwrap();
    let slim = described[0].id.thing(0);
    yard.book.add(described);
    let bare = HivePlan { filled: None, ..crate::plan(&["1", "2"], &[(BoxDepth::Deep, 2)], on) };
    let kind = KindChoice::Known(slim.clone());
    let added = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &bare, &Unicode).unwrap();
    yard.book.add(added.clone());
    (yard, slim, added)
}

#[test]
fn hives_added_before_their_traps_are_in_want_the_kind_that_was_chosen_then() {
    let (mut yard, slim, added) = added_for_another_kind();
    let wants = |yard: &Yard, tag: &str| {
        let standing = yard.book.standing();
        let hive = &standing.hives[&yard.hive(tag)];
        round::likely_kind(standing, &hive.yard, Some(hive)).cloned()
    };
    for tag in ["1", "2"] {
        assert_eq!(wants(&yard, tag), Some(slim.clone()), "hive {tag}");
    }
    assert_eq!(Book::from_log(yard.book.log().clone()), yard.book, "read anew");
    // A start that is moved back stands before the line that names the kind.
    let back = day("2026-04-20");
    let moved = yard.book.hive_since(&pen("aa", back), back, day("2026-05-01"), &yard.hive("1")).unwrap();
    yard.book.add(moved);
    assert_eq!(wants(&yard, "1"), Some(slim));
    // The kind was not described anew by that.
    assert_eq!(yard.book.standing().kinds.len(), 2);
    // Taken back together, in one tap.
    let together = yard.book.together(&added[0].id);
    assert!(added.iter().all(|entry| together.contains(&entry.id)));
}

#[test]
fn a_kind_described_anew_on_another_phone_is_not_undone_by_hives_that_were_added_for_it() {
    let (yard, slim, added) = added_for_another_kind();
    let mut other = yard.book.without(|entry| added.iter().any(|mine| mine.id == entry.id));
    let mut now = other.standing().kinds[&slim].kind.clone();
    now.name = "Slim, the blue one".to_owned();
    let what = What::KindChanged { kind: slim.clone(), now };
    let on = day("2026-04-30");
    other.add(other.about_keeper(&pen("bb", on), on, what).unwrap());
    other.add(added);
    assert_eq!(other.standing().kinds[&slim].kind.name, "Slim, the blue one");
}

#[test]
fn hives_added_for_the_kind_of_their_yard_or_with_traps_in_need_no_line_more() {
    let (yard, slim, _) = added_for_another_kind();
    let on = day("2026-05-02");
    let full = crate::plan(&["3"], &[(BoxDepth::Deep, 2)], on);
    let bare = HivePlan { filled: None, ..full.clone() };
    for (kind, plan) in [(yard.kind(), bare), (slim, full)] {
        let kind = KindChoice::Known(kind);
        let added = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &plan, &Unicode).unwrap();
        assert_eq!(added.len(), 1);
    }
}
