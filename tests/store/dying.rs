//! The phone dies. Every write is tried as the last one, whole or torn in half.

use super::{Book, Entries, State, after_restart, entries, joined, open, page, page_texts};
use crate::phone::{Faults, Memory};
use beetle_almanac::store::{PageName, SaveError, Saved};
use std::collections::BTreeMap;

/// A phone with a season on it: a page that will grow, one that will shrink, one that cannot be read.
fn in_use() -> Memory {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    book.write(&page("grows"), &entries(&["g1"])).unwrap();
    book.write(&page("shrinks"), &entries(&["s1", "s2", "a long note about the weather on that day"]))
        .unwrap();
    phone.lay(&page("damaged").key(1), "{\"v\":1,\"g\":4,\"c\":\"00");
    phone
}

/// A backup is restored: pages grow, shrink, are new, or must go beside damage.
fn restored() -> Vec<(PageName, Entries)> {
    vec![
        (page("grows"), entries(&["g1", "g2"])),
        (page("shrinks"), entries(&["s1"])),
        (page("damaged"), entries(&["d1"])),
        (page("fresh"), entries(&["f1", "f2"])),
    ]
}

type Outcome = Result<Vec<Saved>, SaveError<Entries>>;

fn restore(book: &mut Book<'_>) -> Outcome {
    book.write_many(&restored())
}

fn one_entry(book: &mut Book<'_>) -> Outcome {
    book.write(&page("grows"), &entries(&["g1", "g2"])).map(|saved| vec![saved])
}

/// The states and the page texts before and after an undisturbed save.
struct Ends {
    old: (State, BTreeMap<String, String>),
    new: (State, BTreeMap<String, String>),
    writes: u32,
    reads: u32,
}

fn ends(save: fn(&mut Book<'_>) -> Outcome) -> Ends {
    let phone = in_use();
    let old = (after_restart(&phone), page_texts(&phone));
    let (mut book, _) = open(&phone);
    book.read_all().unwrap();
    phone.set_faults(Faults::default());
    save(&mut book).unwrap();
    let (writes, reads) = (phone.writes(), phone.reads());
    Ends { old, new: (after_restart(&phone), page_texts(&phone)), writes, reads }
}

/// Runs `save` on a phone with `faults`.
fn run(save: fn(&mut Book<'_>) -> Outcome, faults: Faults) -> (Memory, Outcome) {
    let phone = in_use();
    let outcome = {
        let (mut book, _) = open(&phone);
        book.read_all().unwrap();
        phone.set_faults(faults);
        save(&mut book)
    };
    (phone, outcome)
}

/// What a start finds must be one end or the other, byte for byte, and must be the new one if the save said so.
fn assert_old_or_new(phone: &Memory, ends: &Ends, said_saved: bool, how: &str) {
    let state = after_restart(phone);
    let phone = phone.restarted();
    let (_, recovery) = open(&phone);
    assert_eq!(recovery.stuck, None, "{how}");
    let found = (state, page_texts(&phone));
    assert!(found == ends.new || (!said_saved && found == ends.old), "{how}: a third state {found:?}");
    // The journal that was carried out is gone; one that was torn lies there, and the next save steps over it.
    let journals = phone.texts().keys().filter(|key| key.starts_with("beetle-almanac:journal")).count();
    assert_eq!(journals, recovery.left.len(), "{how}");
    let (mut book, _) = open(&phone);
    book.read_all().unwrap();
    book.write(&page("later"), &entries(&["life goes on"])).unwrap();
    assert_eq!(recovery.left, open(&phone).1.left, "{how}");
}

fn dies_at_every_write(save: fn(&mut Book<'_>) -> Outcome) {
    let ends = ends(save);
    assert_ne!(ends.old, ends.new);
    for torn in [false, true] {
        for cut in 1..=ends.writes + 1 {
            let (phone, outcome) = run(save, Faults { cut: Some(cut), torn, ..Faults::default() });
            let how = format!("cut at write {cut}, torn {torn}");
            assert_old_or_new(&phone, &ends, outcome.is_ok(), &how);
            // And the phone dies again while it starts.
            for again in 1..=ends.writes + 1 {
                let phone = phone.restarted();
                phone.set_faults(Faults { cut: Some(again), torn, ..Faults::default() });
                let (mut book, _) = open(&phone);
                let shown = joined(&mut book);
                let how = format!("{how}, then at write {again} of the start");
                assert!(shown == ends.old.0 || shown == ends.new.0, "{how}: shows {shown:?}");
                assert_old_or_new(&phone, &ends, outcome.is_ok(), &how);
            }
        }
    }
}

#[test]
fn phone_dies_while_one_entry_is_saved_and_the_page_is_the_old_or_the_new_one() {
    dies_at_every_write(one_entry);
}

#[test]
fn phone_dies_between_two_pages_of_a_restore_and_the_book_is_the_old_or_the_new_one() {
    dies_at_every_write(restore);
}

#[test]
fn once_the_journal_lies_there_a_restore_is_finished_at_the_next_start() {
    let ends = ends(restore);
    for cut in 2..=ends.writes {
        let (phone, _) = run(restore, Faults { cut: Some(cut), torn: true, ..Faults::default() });
        assert_eq!(after_restart(&phone), ends.new.0, "cut at write {cut}");
        assert_eq!(open(&phone.restarted()).1.finished, 4);
    }
}

#[test]
fn a_single_refused_write_leaves_everything_as_it_was() {
    for save in [one_entry, restore] {
        let ends = ends(save);
        for torn in [false, true] {
            for refuse in 1..=ends.writes {
                let (phone, outcome) = run(save, Faults { refuse: Some(refuse), torn, ..Faults::default() });
                let how = format!("write {refuse} refused, torn {torn}");
                match outcome {
                    // Only taking the journal away may fail without harm: every page has been read back.
                    Ok(_) => {
                        assert_eq!(refuse, ends.writes, "{how}");
                        assert_eq!(page_texts(&phone), ends.new.1, "{how}");
                    }
                    Err(SaveError::NotSaved { unsaved, .. }) => {
                        assert_eq!(page_texts(&phone), ends.old.1, "{how}");
                        assert!(!phone.texts().contains_key("beetle-almanac:journal"), "{how}");
                        assert!(!unsaved.is_empty(), "{how}");
                    }
                    Err(other) => panic!("{how}: {other:?}"),
                }
                assert_old_or_new(&phone, &ends, false, &how);
            }
        }
    }
}

#[test]
fn a_save_after_a_refused_one_goes_through() {
    let ends = ends(restore);
    for refuse in 1..=ends.writes {
        let phone = in_use();
        let (mut book, _) = open(&phone);
        book.read_all().unwrap();
        phone.set_faults(Faults { refuse: Some(refuse), torn: true, ..Faults::default() });
        if restore(&mut book).is_err() {
            restore(&mut book).unwrap();
        }
        assert_eq!(after_restart(&phone), ends.new.0, "write {refuse} refused");
    }
}

#[test]
fn a_shelf_that_gives_back_garbage_once_loses_nothing_and_overwrites_nothing() {
    for save in [one_entry, restore] {
        let ends = ends(save);
        let damaged = page("damaged").key(1);
        for garble in 1..=ends.reads + 4 {
            let (phone, outcome) = run(save, Faults { garble: Some(garble), ..Faults::default() });
            let mut state = after_restart(&phone);
            // A page that looked damaged for a moment has been written beside: the parts join to more, never less.
            if outcome.is_ok() && page_texts(&phone) != ends.new.1 {
                for (name, new) in &ends.new.0 {
                    let found = state.get(name).unwrap();
                    assert!(found.is_superset(new), "garbled at reading {garble}: {found:?}");
                }
                state.clone_from(&ends.new.0);
            }
            assert!(
                state == ends.new.0 || (outcome.is_err() && state == ends.old.0),
                "garbled at reading {garble}: {state:?}"
            );
            assert_eq!(phone.texts().get(&damaged), in_use().texts().get(&damaged));
        }
    }
}

#[test]
fn a_write_that_is_said_to_be_done_and_is_not_does_not_count_as_saved() {
    for save in [one_entry, restore] {
        let ends = ends(save);
        for torn in [false, true] {
            for swallow in 1..=ends.writes {
                let (phone, outcome) =
                    run(save, Faults { swallow: Some(swallow), torn, ..Faults::default() });
                let how = format!("write {swallow} swallowed, torn {torn}");
                // The last one takes the journal away; should it stay, the next start finds nothing to do.
                assert_eq!(outcome.is_ok(), swallow == ends.writes, "{how}");
                let expected = if outcome.is_ok() { &ends.new.1 } else { &ends.old.1 };
                assert_eq!(&page_texts(&phone), expected, "{how}");
                assert_old_or_new(&phone, &ends, outcome.is_ok(), &how);
            }
        }
    }
}

#[test]
fn undoing_a_save_is_read_back_too() {
    let pages = [(page("fresh"), entries(&["f"])), (page("grows"), entries(&["g1", "g2"]))];
    let phone = in_use();
    let (mut book, _) = open(&phone);
    let old = joined(&mut book);
    // The journal, the fresh page, the page that is refused; then the fresh page is said to be taken away again.
    phone.set_faults(Faults { refuse: Some(3), swallow: Some(4), ..Faults::default() });
    assert!(matches!(book.write_many(&pages), Err(SaveError::NotSaved { .. })));
    let shown = joined(&mut book);
    assert_ne!(shown, old);
    for (name, entries) in &pages {
        assert_eq!(shown.get(name), Some(entries), "not undone, so done");
    }
    assert_eq!(after_restart(&phone), shown);
}

#[test]
fn a_damaged_journal_is_left_where_it_is_and_nothing_of_it_is_applied() {
    let ends = ends(restore);
    let (phone, _) = run(restore, Faults { cut: Some(2), ..Faults::default() });
    let journal = phone.texts().get("beetle-almanac:journal").cloned().unwrap();
    for (at, _) in journal.char_indices() {
        let phone = phone.restarted();
        phone.lay("beetle-almanac:journal", &journal[..at]);
        let (mut book, recovery) = open(&phone);
        assert_eq!((recovery.finished, recovery.left.len()), (0, 1), "cut off at {at}");
        assert_eq!((joined(&mut book), page_texts(&phone)), ends.old, "cut off at {at}");
        restore(&mut book).unwrap();
        assert_eq!(page_texts(&phone), ends.new.1, "cut off at {at}");
        assert_eq!(phone.texts().get("beetle-almanac:journal").map(String::as_str), Some(&journal[..at]));
    }
}

#[test]
fn a_journal_that_would_touch_anything_but_pages_is_never_applied() {
    use beetle_almanac::store::envelope::wrap;
    let text = wrap(1, 1, "[\"x\"]").replace('"', "\\\"");
    for (key, new) in [
        ("other-app", text.as_str()),
        ("beetle-almanac:desk:prefs:a", text.as_str()),
        ("beetle-almanac:page:river:2026-07-14", "torn"),
    ] {
        let phone = Memory::new();
        let steps = format!("{{\"pages\":[{{\"k\":\"{key}\",\"o\":null,\"n\":\"{new}\"}}]}}");
        phone.lay("beetle-almanac:journal", &wrap(1, 1, &steps));
        let (_, recovery) = open(&phone);
        assert_eq!((recovery.finished, recovery.left.len()), (0, 1), "{key}");
        assert_eq!(phone.texts().len(), 1, "{key}");
    }
}

#[test]
fn a_journal_of_a_newer_app_waits_for_that_app() {
    let phone = in_use();
    let text = beetle_almanac::store::envelope::wrap(2, 1, "{\"plan\":[]}");
    phone.lay("beetle-almanac:journal", &text);
    let (mut book, recovery) = open(&phone);
    assert!(recovery.left[0].newer);
    book.read_all().unwrap();
    restore(&mut book).unwrap();
    assert_eq!(phone.texts().get("beetle-almanac:journal"), Some(&text));
}

#[test]
fn nine_unreadable_journals_stop_saving_and_harm_nothing() {
    let phone = in_use();
    for n in 1..=9 {
        let key = if n == 1 { String::new() } else { format!(":{n}") };
        phone.lay(&format!("beetle-almanac:journal{key}"), "torn");
    }
    let before = phone.texts();
    let (mut book, recovery) = open(&phone);
    assert_eq!(recovery.left.len(), 9);
    book.read_all().unwrap();
    assert!(matches!(restore(&mut book), Err(SaveError::NotSaved { .. })));
    assert_eq!(phone.texts(), before);
}
