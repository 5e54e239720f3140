//! What the second copy brings back and the first does not take lies in one place, and is said to, until it is taken.

use crate::phone::{Faults, Memory};
use crate::season::{ids, readable, season, shelf_of};
use crate::second_copy::{Ended, Second};
use crate::support::{day, pen};
use beetle_almanac::app::cabinet::Cabinet;
use beetle_almanac::book::entry::SkipReason;
use std::rc::Rc;

#[test]
fn the_shelf_is_full_when_lines_come_back_and_every_look_says_so_until_there_is_room() {
    let season = season(6);
    let last = season.known.len() - 1;
    // The page that lacks the last lines is older here, as old, or newer than the one that holds them there.
    for early in 0..6 {
        let shelf = shelf_of(&season.shelf[last - 3]);
        let second = Second::new(season.second[last].clone());
        let mut now = Cabinet::open(shelf.clone()).unwrap();
        let on = day("2026-05-15");
        let hive = now.book.standing().hives.keys().next().unwrap().clone();
        for _ in 0..early {
            let skip = now.book.skip(&pen("zz", on), on, on, &hive, SkipReason::Robbing, None).unwrap();
            now.cabinet.save(&mut now.book, skip).unwrap();
        }
        let mut wanted = season.known[last].clone();
        wanted.extend(ids(&now.book));
        shelf.set_faults(Faults { quota: Some(0), ..Faults::default() });
        for look in 0..3 {
            let found = now.cabinet.reconcile(&mut now.book, second.read()).unwrap();
            assert!(found.refused, "look {look} after {early} lines");
            assert_eq!(found.restored, if look == 0 { 3 } else { 0 });
            second.take(&mut now.cabinet);
            assert_eq!(ids(&now.book), wanted);
            let lying = readable(&second.texts());
            assert!(
                season.known[last].is_subset(&lying),
                "look {look} after {early} lines: nothing is lost there"
            );
        }
        shelf.set_faults(Faults::default());
        let found = now.cabinet.reconcile(&mut now.book, second.read()).unwrap();
        assert!(!found.refused);
        assert_eq!(second.take(&mut now.cabinet), Ended::Done);
        for (copy, texts) in [("first", shelf.texts()), ("second", second.texts())] {
            assert_eq!(readable(&texts), wanted, "the {copy} copy after {early} lines");
        }
    }
}

#[test]
fn what_is_owed_is_taken_page_by_page_where_there_is_no_room_for_all_of_it_at_once() {
    let season = season(9);
    let last = season.known.len() - 1;
    let second = Second::new(season.second[last].clone());
    let size: u64 = season.shelf[last].iter().map(|(key, text)| (key.len() + text.len()) as u64).sum();
    let shelf = Rc::new(Memory::new());
    let mut now = Cabinet::open(shelf.clone()).unwrap();
    shelf.set_faults(Faults { quota: Some(0), ..Faults::default() });
    assert!(now.cabinet.reconcile(&mut now.book, second.read()).unwrap().refused);
    shelf.set_faults(Faults { quota: Some(size + size / 2), ..Faults::default() });
    assert!(!now.cabinet.reconcile(&mut now.book, second.read()).unwrap().refused);
    assert_eq!(readable(&shelf.texts()), season.known[last]);
}
