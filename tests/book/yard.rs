//! Yards and hives as they change.

use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::book::entry::{Did, Entry, SkipReason, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::write::KindChoice;
use beetle_almanac::papers::backup;

fn tags(yard: &Yard) -> Vec<String> {
    yard.book.standing().hives_of(&yard.id, true).map(|(_, hive)| hive.tag.clone()).collect()
}

#[test]
fn a_hive_is_renamed_and_its_old_tag_is_remembered() {
    let mut yard = Yard::new(&["Blue 7"], day("2026-05-01"));
    let hive = yard.hive("Blue 7");
    let entries = yard.book.rename_hive(&pen("aa", yard.start), yard.start, &hive, "7", &Unicode).unwrap();
    yard.book.add(entries);
    assert_eq!(yard.book.standing().hives[&hive].tag, "7");
    assert_eq!(yard.book.standing().hives[&hive].was, ["Blue 7"]);
}

#[test]
fn the_walking_order_is_the_keepers_and_new_hives_follow_at_its_end() {
    let mut yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let order = What::Order { yard: yard.id.clone(), hives: vec![yard.hive("3"), yard.hive("1")] };
    let entries =
        yard.book.about_yard(&pen("aa", yard.start), yard.start, yard.start, &yard.id, order).unwrap();
    yard.book.add(entries);
    assert_eq!(tags(&yard), ["3", "1", "2"]);
    let more = plan(&["4"], &[(BoxDepth::Deep, 2)], yard.start);
    let kind = KindChoice::Known(yard.kind());
    let more = yard.book.add_hives(&pen("aa", yard.start), &yard.id, &kind, &more, &Unicode).unwrap();
    yard.book.add(more);
    assert_eq!(tags(&yard), ["3", "1", "2", "4"]);
}

#[test]
fn a_corrected_hive_keeps_its_name_and_everything_that_hangs_on_it() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let old = yard.book.log().get(hive.entry()).unwrap().clone();
    let What::Hive { yard: at, size, boxes, .. } = old.what.clone() else { panic!() };
    let corrected = Entry {
        id: beetle_almanac::book::id::EntryId::new(old.id.writer().clone(), 99).unwrap(),
        replaces: Some(old.id.clone()),
        what: What::Hive { yard: at, tag: "One".to_owned(), size, boxes },
        ..old
    };
    yard.book.add([corrected]);
    assert_eq!(yard.book.standing().hives[&hive].tag, "One");
    assert_eq!(yard.book.standing().hives[&hive].traps().count(), 4);
}

#[test]
fn a_backup_names_what_stands_in_it_and_how_much_is_struck_out() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let twice = plan(&["7"], &[(BoxDepth::Deep, 2)], yard.start);
    let kind = KindChoice::Known(yard.kind());
    let wrong = yard.book.keep_yard(&pen("aa", yard.start), "Wrong", "Europe/Berlin", &kind, &twice).unwrap();
    let ids: Vec<_> = wrong.iter().map(|entry| entry.id.clone()).collect();
    yard.book.add(wrong);
    let look = |yard: &Yard| {
        let pen = pen("aa", yard.start);
        let file = backup::open(&backup::write(yard.book.log(), pen.at, None)).unwrap();
        let (alone, struck) = file.alone();
        let names: Vec<String> = alone.standing().yards.values().map(|yard| yard.name.clone()).collect();
        (names, alone.standing().hives.len(), struck, file.counts.yards)
    };
    let both = || vec!["Ferry Field".to_owned(), "Wrong".to_owned()];
    assert_eq!(look(&yard), (both(), 3, 0, 2));
    let strike = yard.book.strike(&pen("aa", yard.start), yard.start, &ids, &Unicode).unwrap();
    let struck = vec![strike[0].id.clone()];
    yard.book.add(strike);
    // The file keeps every line; what was taken back is no yard and no hive any more.
    assert_eq!(look(&yard), (vec!["Ferry Field".to_owned()], 2, ids.len(), 2));
    let back = yard.book.strike(&pen("aa", yard.start), yard.start, &struck, &Unicode).unwrap();
    yard.book.add(back);
    assert_eq!(look(&yard), (both(), 3, 0, 2));
}

/// Two hives move from Ferry Field to Hill on 20 May; of the third the move is struck out again.
fn moved() -> (Yard, ThingId) {
    let mut yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let on = day("2026-05-02");
    let kind = KindChoice::Known(yard.kind());
    let hill = plan(&["9"], &[(BoxDepth::Deep, 2)], on);
    let kept = yard.book.keep_yard(&pen("aa", on), "Hill", "Europe/Berlin", &kind, &hill).unwrap();
    let hill = kept[0].id.thing(0);
    yard.book.add(kept);
    let on = day("2026-05-20");
    for tag in ["1", "2", "3"] {
        let hive = yard.hive(tag);
        let moved = yard.book.move_hive(&pen("aa", on), on, on, &hive, &hill, None, &Unicode).unwrap();
        let id = moved[0].id.clone();
        yard.book.add(moved);
        if tag == "3" {
            let strike = yard.book.strike(&pen("aa", on), on, &[id], &Unicode).unwrap();
            yard.book.add(strike);
        }
    }
    (yard, hill)
}

/// Pages, papers and the history's filter go by the yard a line is filed under.
#[test]
fn what_was_done_before_a_hive_moved_is_filed_under_the_yard_it_stood_in_then() {
    let (mut yard, hill) = moved();
    let today = day("2026-05-21");
    let hives: Vec<ThingId> = yard.book.standing().hives.keys().cloned().collect();
    let filed = |entries: Vec<Entry>| -> Vec<ThingId> {
        entries.into_iter().map(|entry| entry.yard.unwrap()).collect()
    };
    let bulk = |on| yard.book.same_for_all(&pen("bb", today), on, today, &hives, Did::ToppedUp).unwrap();
    let field = yard.id.clone();
    assert_eq!(filed(bulk(day("2026-05-19"))), [&field, &field, &field, &hill].map(Clone::clone));
    assert_eq!(filed(bulk(day("2026-05-20"))), [&hill, &hill, &field, &hill].map(Clone::clone));
    let on = day("2026-05-10");
    let skip = yard.book.skip(&pen("bb", today), on, today, &hives[0], SkipReason::Weather, None).unwrap();
    assert_eq!(filed(skip), std::slice::from_ref(&field));
    // A line that was put under the wrong day is filed anew with its correction.
    let skip = yard.book.skip(&pen("bb", today), today, today, &hives[0], SkipReason::Weather, None).unwrap();
    let line = skip[0].clone();
    yard.book.add(skip);
    assert_eq!(line.yard.as_ref(), Some(&hill));
    let edit = yard.book.correct(&pen("bb", today), on, today, &line.id, line.what.clone(), &Unicode);
    assert_eq!(filed(edit.unwrap()), [field]);
}
