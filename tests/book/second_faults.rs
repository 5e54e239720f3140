//! The two copies on a phone that dies, refuses or damages: what one of them has is not lost.

use crate::phone::{Faults, Memory};
use crate::season::{Ids, Texts, assert_united, ids, lies, pages, readable, season, shelf_of, start};
use crate::second_copy::{Ended, Second};
use crate::support::{day, pen};
use beetle_almanac::app::cabinet::Cabinet;
use beetle_almanac::book::entry::SkipReason;
use beetle_almanac::store::envelope;
use std::rc::Rc;

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
