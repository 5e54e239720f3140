//! The second copy of the book: what was called saved is there after every death of the phone.

use crate::phone::Memory;
use crate::season::{Ids, assert_united, ids, lies, pages, phone, readable, season, shelf_of, start};
use crate::second_copy::{Ended, Second};
use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::aside::Why;
use beetle_almanac::app::cabinet::{Cabinet, NotSaved, Opened};
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Entry, SkipReason, What};
use beetle_almanac::book::id::EntryId;
use beetle_almanac::store::envelope;
use proptest::prelude::*;
use std::rc::Rc;

#[test]
fn whatever_minute_either_copy_has_lost_the_next_start_has_everything_that_one_of_them_knows() {
    let season = season(9);
    for here in 0..season.shelf.len() {
        for there in 0..season.second.len() {
            let shelf = shelf_of(&season.shelf[here]);
            let second = Second::new(season.second[there].clone());
            let wanted = &season.known[here.max(there)];
            assert_united(
                &shelf,
                &second,
                wanted,
                &format!("first copy of save {here}, second of save {there}"),
            );
        }
    }
}

#[test]
fn a_start_says_how_many_lines_came_back() {
    let season = season(6);
    let last = season.known.len() - 1;
    let (_, found, _) = start(&shelf_of(&season.shelf[last - 3]), &Second::new(season.second[last].clone()));
    assert_eq!(found.restored, 3);
    let (now, found, _) = start(&Rc::new(Memory::new()), &Second::new(season.second[last].clone()));
    assert_eq!((found.restored, ids(&now.book)), (season.known[last].len(), season.known[last].clone()));
    let (_, found, _) = start(&shelf_of(&season.shelf[last]), &Second::default());
    assert_eq!(found.restored, 0);
}

#[test]
fn a_line_written_before_the_second_copy_was_read_is_joined_with_what_that_brings() {
    let season = season(6);
    let last = season.known.len() - 1;
    let shelf = shelf_of(&season.shelf[last - 3]);
    let second = Second::new(season.second[last].clone());
    let mut now = Cabinet::open(shelf.clone()).unwrap();
    let on = day("2026-05-15");
    let hive = now.book.standing().hives.keys().next().unwrap().clone();
    let mut wanted = season.known[last].clone();
    // As often as the lost lines were, so that the generations meet, fall short, and go past.
    for _ in 0..5 {
        let skip = now.book.skip(&pen("zz", on), on, on, &hive, SkipReason::Robbing, None).unwrap();
        wanted.extend(skip.iter().map(|entry| entry.id.to_string()));
        now.cabinet.save(&mut now.book, skip).unwrap();
        let shelf = shelf_of(&shelf.texts());
        let second = Second::new(second.texts());
        assert_united(&shelf, &second, &wanted, "a line written early");
    }
}

#[test]
fn two_texts_under_one_name_keep_the_words_here_and_put_the_others_aside() {
    let season = season(5);
    let last = season.known.len() - 1;
    let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
    let (key, text) = season.second[last].iter().find(|(_, text)| text.contains("temper")).unwrap();
    let inside = envelope::open(text).unwrap();
    let other = envelope::wrap(1, inside.generation + 1, &inside.payload.replace("temper", "robbing"));
    second.lay(key, &other);
    let (now, found, ended) = start(&shelf, &second);
    assert_eq!((found.asides.len(), found.asides[0].why, ended), (1, Why::Clash, Ended::Done));
    let clashes = found.asides[0].clashes(&now.book);
    let reasons: Vec<&What> = clashes.iter().flat_map(|(here, there)| [&here.what, &there.what]).collect();
    assert!(
        matches!(
            reasons[..2],
            [What::Skip { why: SkipReason::Temper, .. }, What::Skip { why: SkipReason::Robbing, .. }]
        ),
        "{reasons:?}"
    );
    assert_eq!(now.book, Cabinet::open(shelf_of(&season.shelf[last])).unwrap().book);
    assert!(lies(&second.texts(), &other));
    assert_united(&shelf, &second, &season.known[last], "after a clash");
}

#[test]
fn a_second_copy_of_a_newer_version_makes_this_one_read_only_and_is_left_alone() {
    let (shelf, second, _) = phone(3);
    second.lay("beetle-almanac:page:keeper:2027-01-01", &envelope::wrap(5, 1, "{\"more\":1}"));
    let before = (shelf.texts(), second.texts());
    let (mut now, found, _) = start(&shelf, &second);
    assert!(now.cabinet.read_only() && found.asides[0].why == Why::Newer);
    assert_eq!((shelf.texts(), second.texts()), before);
    assert_eq!(now.cabinet.save(&mut now.book, Vec::new()), Err(NotSaved::ReadOnly));
}

#[test]
fn the_demonstration_has_no_second_copy_so_it_cannot_come_back_from_there() {
    let (shelf, second, known) = phone(3);
    let (mut now, _, _) = start(&shelf, &second);
    let before = second.texts();
    let entries = demo(day("2026-07-14"), "Europe/Berlin", 120, &Unicode).unwrap();
    now.cabinet.save(&mut now.book, entries).unwrap();
    assert_eq!((second.take(&mut now.cabinet), second.texts()), (Ended::Done, before.clone()));
    let (mut again, _, _) = start(&shelf, &second);
    assert_eq!(second.texts(), before, "nor at the next start");
    again.cabinet.remove_demo(&mut again.book).unwrap();
    assert_united(&shelf, &second, &known, "after the demonstration");
}

/// The first hive left on a day of the season.
fn skip(now: &Opened, writer: &str, why: SkipReason) -> Vec<Entry> {
    let on = day("2026-05-15");
    let hive = now.book.standing().hives.keys().next().unwrap().clone();
    now.book.skip(&pen(writer, on), on, on, &hive, why, None).unwrap()
}

fn skipped(now: &mut Opened, writer: &str, why: SkipReason) {
    let entries = skip(now, writer, why);
    now.cabinet.save(&mut now.book, entries).unwrap();
}

#[test]
fn a_tab_that_slept_for_days_joins_what_the_others_wrote_in_both_copies() {
    let (shelf, second, known) = phone(2);
    let (mut asleep, _, _) = start(&shelf, &second);
    let (mut awake, _, _) = start(&shelf, &second);
    for _ in 0..3 {
        skipped(&mut awake, "bb", SkipReason::Weather);
        assert_eq!(second.take(&mut awake.cabinet), Ended::Done);
    }
    let skip = skip(&asleep, "cc", SkipReason::Temper);
    asleep.cabinet.set_elsewhere(true);
    assert_eq!(asleep.cabinet.save(&mut asleep.book, skip.clone()), Err(NotSaved::Elsewhere));
    asleep.cabinet.set_elsewhere(false);
    asleep.cabinet.save(&mut asleep.book, skip).unwrap();
    assert_eq!(second.take(&mut asleep.cabinet), Ended::Done);
    assert_eq!(ids(&asleep.book).len(), known.len() + 4);
    assert_united(&shelf, &second, &ids(&asleep.book), "after the tab woke");
}

#[test]
fn a_late_transaction_of_another_tab_does_not_take_the_place_of_a_newer_one() {
    let (shelf, second, _) = phone(2);
    let (mut one, _, _) = start(&shelf, &second);
    let (mut two, _, _) = start(&shelf, &second);
    skipped(&mut one, "bb", SkipReason::Weather);
    skipped(&mut two, "cc", SkipReason::Temper);
    assert_eq!(second.take(&mut two.cabinet), Ended::Done);
    let before = second.texts();
    assert_eq!((second.take(&mut one.cabinet), second.texts()), (Ended::Overtaken, before));
    one.cabinet.reconcile(&mut one.book, second.read()).unwrap();
    assert_eq!(second.take(&mut one.cabinet), Ended::Done);
    assert_united(&shelf, &second, &ids(&two.book), "after the late one");
}

#[test]
fn a_yard_kept_on_a_new_phone_lies_in_both_copies_at_once() {
    let (shelf, second) = (Rc::new(Memory::new()), Second::default());
    let (mut now, _, _) = start(&shelf, &second);
    let kind = beetle_almanac::book::write::KindChoice::New(crate::trap());
    let hives = plan(&["1"], &[(BoxDepth::Deep, 2)], day("2026-05-01"));
    let kept = now.book.keep_yard(&pen("aa", day("2026-05-01")), "Orchard", "UTC", &kind, &hives).unwrap();
    now.cabinet.save(&mut now.book, kept).unwrap();
    assert_eq!(second.take(&mut now.cabinet), Ended::Done);
    assert_eq!(pages(shelf.texts()), second.texts());
}

/// One entry under a name of its own, on one of three pages.
fn line(n: u32, template: &Entry) -> Entry {
    let id = EntryId::new(template.id.writer().clone(), 100 + n).unwrap();
    Entry { id, day: template.day.plus(i32::try_from(n % 3).unwrap()), ..template.clone() }
}

proptest! {
    /// Two copies with any lines, saved any number of times: afterwards both have all of them, and a second look does
    /// nothing. Garbage under any key changes nothing about what can be read.
    #[test]
    fn two_copies_of_any_past_become_one(
        here in prop::collection::vec((0_u32..24, 1_u32..4), 0..8),
        there in prop::collection::vec((0_u32..24, 1_u32..4), 0..8),
        garbage in prop::collection::vec((0_u8..4, any::<bool>(), ".{0,40}"), 0..4),
    ) {
        let yard = Yard::new(&["1"], day("2026-05-01"));
        let on = day("2026-05-15");
        let template =
            yard.book.skip(&pen("aa", on), on, on, &yard.hive("1"), SkipReason::Temper, None).unwrap().remove(0);
        let written = |lines: &[(u32, u32)]| {
            let shelf = Rc::new(Memory::new());
            let mut now = Cabinet::open(shelf.clone()).unwrap();
            for (n, times) in lines {
                for _ in 0..*times {
                    now.cabinet.save(&mut now.book, vec![line(*n, &template)]).unwrap();
                }
            }
            pages(shelf.texts())
        };
        let (mut first, mut other) = (written(&here), written(&there));
        let keys: Vec<String> = first.keys().chain(other.keys()).cloned().collect();
        for (at, in_first, raw) in garbage {
            let other_key = ["beetle-almanac:page:", &raw].concat();
            let key = keys.get(usize::from(at)).cloned().unwrap_or(other_key);
            if in_first { first.insert(key, raw) } else { other.insert(key, raw) };
        }
        let wanted: Ids = readable(&first).union(&readable(&other)).cloned().collect();
        let (shelf, second) = (shelf_of(&first), Second::new(other.clone()));
        assert_united(&shelf, &second, &wanted, "any past");
        // What could not be read lies where it lay, or aside.
        for raw in first.values().filter(|text| envelope::open(text).is_err()) {
            prop_assert!(lies(&shelf.texts(), raw));
        }
        for raw in other.values().filter(|text| envelope::open(text).is_err()) {
            prop_assert!(lies(&second.texts(), raw));
        }
    }
}
