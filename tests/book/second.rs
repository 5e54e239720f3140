//! The second copy of the book: what was called saved is there after every death of the phone.

use crate::phone::{Faults, Memory};
use crate::second_copy::{Ended, Second};
use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::aside::Why;
use beetle_almanac::app::cabinet::{Cabinet, NotSaved, Opened};
use beetle_almanac::app::reconcile::Reconciled;
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Entry, SkipReason, What};
use beetle_almanac::book::id::EntryId;
use beetle_almanac::store::envelope;
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

type Texts = BTreeMap<String, String>;
type Ids = BTreeSet<String>;

fn ids(book: &Book) -> Ids {
    book.log().entries().map(|entry| entry.id.to_string()).collect()
}

/// A start of the page up to the moment when it has looked at both copies and written to the second.
fn start(shelf: &Rc<Memory>, second: &Second) -> (Opened, Reconciled, Ended) {
    let mut opened = Cabinet::open(shelf.clone()).unwrap();
    let found = opened.cabinet.reconcile(&mut opened.book, second.read()).unwrap();
    let ended = second.take(&mut opened.cabinet);
    (opened, found, ended)
}

fn shelf_of(texts: &Texts) -> Rc<Memory> {
    let shelf = Memory::new();
    for (key, text) in texts {
        shelf.lay(key, text);
    }
    Rc::new(shelf)
}

/// Entries that can be read in these texts.
fn readable(texts: &Texts) -> Ids {
    ids(&Cabinet::open(shelf_of(texts)).unwrap().book)
}

fn pages(mut texts: Texts) -> Texts {
    texts.retain(|key, _| key.starts_with("beetle-almanac:page:"));
    texts
}

/// A phone on which a yard and some days of work were saved, and how both copies looked after each save.
struct Season {
    shelf: Vec<Texts>,
    second: Vec<Texts>,
    known: Vec<Ids>,
}

fn season(saves: i32) -> Season {
    let shelf = Rc::new(Memory::new());
    let second = Second::default();
    let (mut now, _, _) = start(&shelf, &second);
    let mut season =
        Season { shelf: vec![shelf.texts()], second: vec![second.texts()], known: vec![Ids::new()] };
    let yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    let mut save = |now: &mut Opened, entries: Vec<Entry>| {
        now.cabinet.save(&mut now.book, entries).unwrap();
        assert_eq!(second.take(&mut now.cabinet), Ended::Done);
        season.shelf.push(shelf.texts());
        season.second.push(second.texts());
        season.known.push(ids(&now.book));
    };
    save(&mut now, yard.book.log().entries().cloned().collect());
    for n in 0..saves {
        // Two pages in turn, and now and then an undo, which writes where the entry lies.
        let on = day("2026-05-15").plus(n % 2);
        let hive = yard.hive(["1", "2", "3"][usize::try_from(n % 3).unwrap()]);
        let entries = if n % 4 == 3 {
            let last = now.book.log().entries().last().unwrap().id.clone();
            now.book.strike(&pen("aa", on), on, &[last], &Unicode).unwrap()
        } else {
            now.book.skip(&pen("aa", on), on, on, &hive, SkipReason::Temper, None).unwrap()
        };
        save(&mut now, entries);
    }
    season
}

/// Looks at both copies, and again: everything is in the book and in both copies, and the second look finds nothing to do.
fn assert_united(shelf: &Rc<Memory>, second: &Second, wanted: &Ids, how: &str) {
    let (now, found, ended) = start(shelf, second);
    assert_eq!((&ids(&now.book), ended, found.refused), (wanted, Ended::Done, false), "{how}");
    assert_eq!(&readable(&shelf.texts()), wanted, "{how}: the first copy");
    assert_eq!(&readable(&pages(second.texts())), wanted, "{how}: the second copy");
    let before = (shelf.texts(), second.texts());
    let (mut again, found, _) = start(shelf, second);
    assert_eq!((found.restored, found.refused), (0, false), "{how}: again");
    assert_eq!((shelf.texts(), second.texts()), before, "{how}: again");
    assert!(again.cabinet.take_outbox().is_empty(), "{how}: again");
    assert_eq!(again.book, now.book, "{how}: again");
}

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

/// Runs the look at both copies with faults of the first, and returns what the book shows then.
fn disturbed(here: &Texts, there: &Texts, faults: Faults) -> (Rc<Memory>, Second, Ids, u32) {
    let (shelf, second) = (shelf_of(here), Second::new(there.clone()));
    let mut now = Cabinet::open(shelf.clone()).unwrap();
    shelf.set_faults(faults);
    now.cabinet.reconcile(&mut now.book, second.read()).unwrap();
    let writes = shelf.writes();
    second.take(&mut now.cabinet);
    (Rc::new(shelf.restarted()), second, ids(&now.book), writes)
}

#[test]
fn the_phone_dies_or_refuses_at_every_write_of_the_look_and_nothing_is_lost() {
    let season = season(6);
    let last = season.known.len() - 1;
    for here in [0, 1, last - 3, last - 1] {
        let (from, to) = (&season.shelf[here], &season.second[last]);
        let (_, _, shown, writes) = disturbed(from, to, Faults::default());
        assert_eq!(shown, season.known[last]);
        assert!(writes >= 3, "the journal, a page, the journal");
        for n in 1..=writes {
            for torn in [false, true] {
                for faults in [
                    Faults { cut: Some(n), torn, ..Faults::default() },
                    Faults { refuse: Some(n), torn, ..Faults::default() },
                    Faults { swallow: Some(n), torn, ..Faults::default() },
                ] {
                    let (shelf, second, shown, _) = disturbed(from, to, faults);
                    let how = format!("first copy of save {here}, {faults:?}");
                    assert_eq!(shown, season.known[last], "{how}: what the book shows");
                    assert_united(&shelf, &second, &season.known[last], &how);
                }
            }
        }
    }
}

#[test]
fn the_first_copy_has_too_little_room_and_the_book_is_shown_whole_all_the_same() {
    let season = season(6);
    let last = season.known.len() - 1;
    let size: u64 = season.shelf[last].iter().map(|(key, text)| (key.len() + text.len()) as u64).sum();
    for quota in (0..3 * size).step_by(97) {
        let faults = Faults { quota: Some(quota), ..Faults::default() };
        let (shelf, second, shown, _) = disturbed(&season.shelf[1], &season.second[last], faults);
        assert_eq!(shown, season.known[last], "room for {quota}");
        assert_united(&shelf, &second, &season.known[last], &format!("room for {quota}"));
    }
}

#[test]
fn the_second_copy_refuses_at_every_transaction_or_is_full_and_takes_everything_later() {
    let season = season(6);
    let last = season.known.len() - 1;
    for refuse in 1..=4 {
        let (shelf, second) = (shelf_of(&season.shelf[1]), Second::new(season.second[1].clone()));
        second.refuse.set(Some(refuse));
        let (mut now, _, _) = start(&shelf, &second);
        let hive = now.book.standing().hives.keys().next().unwrap().clone();
        for n in 0..4 {
            let on = day("2026-05-15").plus(n);
            let skip = now.book.skip(&pen("aa", on), on, on, &hive, SkipReason::Temper, None).unwrap();
            now.cabinet.save(&mut now.book, skip).unwrap();
            let ended = second.take(&mut now.cabinet);
            // "Saved" is said only where the second copy has everything, the refused ones included.
            assert_eq!(
                ended == Ended::Done,
                readable(&pages(second.texts())) == ids(&now.book),
                "{refuse}, {n}"
            );
        }
        if refuse < 4 {
            assert_eq!(readable(&pages(second.texts())), ids(&now.book), "refused {refuse}");
        }
    }
    let (shelf, second) = (shelf_of(&season.shelf[last]), Second::default());
    let size: u64 = season.second[last].iter().map(|(key, text)| (key.len() + text.len()) as u64).sum();
    for quota in 0..=size {
        second.quota.set(Some(quota));
        let (_, _, ended) = start(&shelf, &second);
        assert_eq!(ended == Ended::Done, quota == size, "room for {quota}");
        assert!(ended == Ended::Done || second.texts().is_empty(), "all or nothing");
    }
}

/// Every text of one copy damaged in many ways: cut off, a letter changed, something in between.
fn damaged(text: &str) -> Vec<String> {
    let mut all = vec![String::new(), "null".to_owned(), "\u{fffd}{\"v\":1".to_owned()];
    for (at, _) in text.char_indices().step_by(23) {
        all.push(text[..at].to_owned());
        all.push([&text[..at], "\u{7}", text.get(at + 1..).unwrap_or("")].concat());
        all.push([&text[..at], "x", &text[at..]].concat());
    }
    all
}

/// Damaged bytes lie somewhere still.
fn lies(texts: &Texts, raw: &str) -> bool {
    texts.values().any(|text| text == raw)
}

#[test]
fn a_damaged_text_in_either_copy_costs_nothing_while_the_other_is_whole_and_its_bytes_are_kept() {
    let season = season(5);
    let last = season.known.len() - 1;
    let wanted = &season.known[last];
    for (key, text) in &season.second[last] {
        for raw in damaged(text) {
            let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
            shelf.lay(key, &raw);
            assert_united(&shelf, &second, wanted, "the first copy is damaged");
            assert!(lies(&shelf.texts(), &raw));

            let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
            second.lay(key, &raw);
            let (_, found, _) = start(&shelf, &second);
            assert_eq!(found.asides.iter().map(|aside| &aside.raw).collect::<Vec<_>>(), [&raw]);
            assert_united(&shelf, &second, wanted, "the second copy is damaged");
            assert!(lies(&second.texts(), &raw));

            let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
            shelf.lay(key, &raw);
            second.lay(key, &raw);
            let (now, _, _) = start(&shelf, &second);
            assert!(ids(&now.book).is_subset(wanted));
            assert!(lies(&shelf.texts(), &raw) && lies(&second.texts(), &raw), "both are damaged");
        }
    }
}

#[test]
fn a_sound_envelope_around_nonsense_is_put_aside_too() {
    let season = season(5);
    let last = season.known.len() - 1;
    for (key, text) in &season.second[last] {
        let generation = envelope::open(text).unwrap().generation;
        for generation in [1, generation, generation + 3] {
            for payload in ["{}", "{\"entries\":[{}]}", "7"] {
                let raw = envelope::wrap(1, generation, payload);
                let (shelf, second) =
                    (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
                second.lay(key, &raw);
                assert_united(&shelf, &second, &season.known[last], "nonsense in the second copy");
                assert!(lies(&second.texts(), &raw));
                let (shelf, second) =
                    (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
                shelf.lay(key, &raw);
                assert_united(&shelf, &second, &season.known[last], "nonsense in the first copy");
                assert!(lies(&shelf.texts(), &raw));
            }
        }
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
    let season = season(3);
    let last = season.known.len() - 1;
    let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
    second.lay("beetle-almanac:page:keeper:2027-01-01", &envelope::wrap(2, 1, "{\"more\":1}"));
    let before = (shelf.texts(), second.texts());
    let (mut now, found, _) = start(&shelf, &second);
    assert!(now.cabinet.read_only() && found.asides[0].why == Why::Newer);
    assert_eq!((shelf.texts(), second.texts()), before);
    assert_eq!(now.cabinet.save(&mut now.book, Vec::new()), Err(NotSaved::ReadOnly));
}

#[test]
fn the_demonstration_has_no_second_copy_so_it_cannot_come_back_from_there() {
    let season = season(3);
    let last = season.known.len() - 1;
    let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
    let (mut now, _, _) = start(&shelf, &second);
    let before = second.texts();
    let entries = demo(day("2026-07-14"), "Europe/Berlin", 120, &Unicode).unwrap();
    now.cabinet.save(&mut now.book, entries).unwrap();
    assert_eq!((second.take(&mut now.cabinet), second.texts()), (Ended::Done, before.clone()));
    let (mut again, _, _) = start(&shelf, &second);
    assert_eq!(second.texts(), before, "nor at the next start");
    again.cabinet.remove_demo(&mut again.book).unwrap();
    assert_united(&shelf, &second, &season.known[last], "after the demonstration");
}

#[test]
fn a_tab_that_slept_for_days_joins_what_the_others_wrote_in_both_copies() {
    let season = season(2);
    let last = season.known.len() - 1;
    let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
    let (mut asleep, _, _) = start(&shelf, &second);
    let (mut awake, _, _) = start(&shelf, &second);
    let hive = awake.book.standing().hives.keys().next().unwrap().clone();
    let on = day("2026-05-15");
    for _ in 0..3 {
        let skip = awake.book.skip(&pen("bb", on), on, on, &hive, SkipReason::Weather, None).unwrap();
        awake.cabinet.save(&mut awake.book, skip).unwrap();
        assert_eq!(second.take(&mut awake.cabinet), Ended::Done);
    }
    let skip = asleep.book.skip(&pen("cc", on), on, on, &hive, SkipReason::Temper, None).unwrap();
    asleep.cabinet.set_elsewhere(true);
    assert_eq!(asleep.cabinet.save(&mut asleep.book, skip.clone()), Err(NotSaved::Elsewhere));
    asleep.cabinet.set_elsewhere(false);
    asleep.cabinet.save(&mut asleep.book, skip).unwrap();
    assert_eq!(second.take(&mut asleep.cabinet), Ended::Done);
    assert_eq!(ids(&asleep.book).len(), season.known[last].len() + 4);
    assert_united(&shelf, &second, &ids(&asleep.book), "after the tab woke");
}

#[test]
fn a_late_transaction_of_another_tab_does_not_take_the_place_of_a_newer_one() {
    let season = season(2);
    let last = season.known.len() - 1;
    let (shelf, second) = (shelf_of(&season.shelf[last]), Second::new(season.second[last].clone()));
    let (mut one, _, _) = start(&shelf, &second);
    let (mut two, _, _) = start(&shelf, &second);
    let hive = one.book.standing().hives.keys().next().unwrap().clone();
    let on = day("2026-05-15");
    let skip = one.book.skip(&pen("bb", on), on, on, &hive, SkipReason::Weather, None).unwrap();
    one.cabinet.save(&mut one.book, skip).unwrap();
    let skip = two.book.skip(&pen("cc", on), on, on, &hive, SkipReason::Temper, None).unwrap();
    two.cabinet.save(&mut two.book, skip).unwrap();
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
