//! The shelf is full. Every amount of room is tried, from none to enough.

use super::{Entries, after_restart, entries, joined, open, page, page_texts};
use crate::phone::{Faults, Memory};
use beetle_almanac::store::headroom;
use beetle_almanac::store::{PageName, SaveError, ShelfError};

fn in_use() -> Memory {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    book.write(&page("grows"), &entries(&["g1"])).unwrap();
    book.write(&page("shrinks"), &entries(&["s1", "a long note about the weather on that day 🐝"])).unwrap();
    phone
}

fn restored() -> Vec<(PageName, Entries)> {
    vec![
        (page("shrinks"), entries(&["s1"])),
        (page("grows"), entries(&["g1", "g2", "g3"])),
        (page("fresh"), entries(&["f1"])),
    ]
}

fn at_every_quota(pages: &[(PageName, Entries)]) {
    let before = in_use();
    let whole = before.restarted();
    {
        let (mut book, _) = open(&whole);
        book.read_all().unwrap();
        book.write_many(pages).unwrap();
    }
    let start = headroom::used(&before).unwrap().all;
    let (mut first_fit, mut quota) = (None, 0);
    while first_fit.is_none_or(|fit| quota < fit + 50) {
        let phone = before.restarted();
        let (mut book, _) = open(&phone);
        book.read_all().unwrap();
        phone.set_faults(Faults { quota: Some(quota), ..Faults::default() });
        match book.write_many(pages) {
            Ok(_) => {
                first_fit.get_or_insert(quota);
                assert_eq!(phone.texts(), whole.texts(), "room for {quota}");
            }
            Err(SaveError::NotSaved { why: ShelfError::Full, unsaved }) => {
                assert_eq!(first_fit, None, "room for {quota}: more room, but no longer enough");
                assert_eq!(phone.texts(), before.texts(), "room for {quota}");
                let names: Vec<&PageName> = unsaved.iter().map(|page| &page.name).collect();
                assert_eq!(names, pages.iter().map(|(name, _)| name).collect::<Vec<_>>());
            }
            Err(other) => panic!("room for {quota}: {other:?}"),
        }
        quota += 1;
    }
    assert!(first_fit.unwrap() > start);
}

#[test]
fn phone_is_full_while_one_entry_is_saved_and_the_page_stays_as_it_was() {
    at_every_quota(&[(page("grows"), entries(&["g1", "g2"]))]);
}

#[test]
fn phone_is_full_while_a_backup_is_restored_and_every_page_stays_as_it_was() {
    at_every_quota(&restored());
}

#[test]
fn phone_dies_and_another_app_takes_the_room_and_the_book_is_the_old_or_the_new_one() {
    let before = in_use();
    let old = (after_restart(&before), page_texts(&before));
    let whole = before.restarted();
    {
        let (mut book, _) = open(&whole);
        book.read_all().unwrap();
        book.write_many(&restored()).unwrap();
    }
    let new = (after_restart(&whole), page_texts(&whole));
    let (mut finished, mut undone, mut stuck) = (0, 0, 0);
    for cut in 2..=5 {
        for torn in [false, true] {
            let phone = before.restarted();
            {
                let (mut book, _) = open(&phone);
                book.read_all().unwrap();
                phone.set_faults(Faults { cut: Some(cut), torn, ..Faults::default() });
                let _ = book.write_many(&restored());
            }
            let most = headroom::used(&phone).unwrap().all + 200;
            for quota in (0..most).step_by(3) {
                let how = format!("cut at {cut}, torn {torn}, room for {quota}");
                let phone = phone.restarted();
                phone.set_faults(Faults { quota: Some(quota), ..Faults::default() });
                let (mut book, recovery) = open(&phone);
                let shown = joined(&mut book);
                if recovery.stuck.is_some() {
                    // Neither way fits: it is shown as done, nothing is written over it, and it is done with room.
                    stuck += 1;
                    assert_eq!(shown, new.0, "{how}");
                    let before = phone.texts();
                    assert!(book.write(&page("later"), &entries(&["x"])).is_err(), "{how}");
                    let again = book.recover().unwrap();
                    assert_eq!((again.stuck, phone.texts()), (recovery.stuck, before), "{how}");
                    phone.set_faults(Faults::default());
                    assert_eq!(book.recover().unwrap().finished, 3, "{how}");
                    assert_eq!(page_texts(&phone), new.1, "{how}");
                } else if recovery.finished > 0 || recovery.unsaved.is_empty() {
                    finished += 1;
                    assert_eq!((shown, page_texts(&phone)), new, "{how}");
                } else {
                    undone += 1;
                    assert_eq!((shown, page_texts(&phone)), old, "{how}");
                    let texts: Vec<_> = recovery.unsaved.into_iter().map(|page| page.payload).collect();
                    assert_eq!(texts, ["[\"s1\"]", "[\"g1\",\"g2\",\"g3\"]", "[\"f1\"]"], "{how}");
                    assert_eq!(phone.texts().len(), old.1.len(), "{how}: the journal is gone");
                }
            }
        }
    }
    assert!(finished > 0 && undone > 0 && stuck > 0, "{finished} {undone} {stuck}");
}
