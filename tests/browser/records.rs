//! The records beside other tabs: what the browser tells, and what it does not.

use beetle_almanac::almanac::day::Day;
use beetle_almanac::app::cabinet::Cabinet;
use beetle_almanac::app::graph::Owner;
use beetle_almanac::app::records::Records;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Entry, KeeperChange, What};
use beetle_almanac::book::id::EntryId;
use beetle_almanac::store::web::Local;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{Event, Storage};

fn shelf() -> Storage {
    web_sys::window().unwrap().local_storage().unwrap().unwrap()
}

/// Takes away everything of this app.
fn clear() {
    let shelf = shelf();
    let keys: Vec<String> = (0..shelf.length().unwrap()).filter_map(|n| shelf.key(n).unwrap()).collect();
    for key in keys.iter().filter(|key| key.starts_with("beetle-almanac:")) {
        shelf.remove_item(key).unwrap();
    }
}

/// A tab: the records as a page has them, in a part of its own.
fn tab() -> (Owner, Records) {
    leptos::mount::mount_to_body(|| ());
    let part = Owner::new();
    let records = part.with(Records::provide);
    (part, records)
}

/// One line of the keeper's.
fn line(records: Records, on: &str) -> Vec<Entry> {
    let day = Day::parse(on).unwrap();
    let what = What::Keeper(KeeperChange::default());
    let id = EntryId::new(records.pen().writer, 900).unwrap();
    let at = records.pen().at;
    vec![Entry { id, day, at, by: None, yard: None, replaces: None, bulk: None, what }]
}

/// Another tab writes a line, and this one is told nothing.
fn written_elsewhere(records: Records, on: &str) -> EntryId {
    let mut other = Cabinet::open(Rc::new(Local::open().unwrap())).unwrap();
    let mut lines = line(records, on);
    lines[0].id = EntryId::new(records.pen().writer, 901).unwrap();
    let id = lines[0].id.clone();
    other.cabinet.save(&mut other.book, lines).unwrap();
    id
}

fn holds(records: Records, id: &EntryId) -> bool {
    records.book.with_untracked(|book: &Book| book.log().get(id).is_some())
}

#[wasm_bindgen_test]
fn a_page_that_is_shown_again_has_what_another_tab_wrote_meanwhile() {
    clear();
    let (_part, records) = tab();
    let document = web_sys::window().unwrap().document().unwrap();
    let id = written_elsewhere(records, "2026-05-01");
    assert!(!holds(records, &id));
    document.dispatch_event(&Event::new("visibilitychange").unwrap()).unwrap();
    assert!(holds(records, &id));

    let id = written_elsewhere(records, "2026-05-02");
    let back = js_sys::eval("new PageTransitionEvent('pageshow', { persisted: true })").unwrap();
    web_sys::window().unwrap().dispatch_event(&back.into()).unwrap();
    assert!(holds(records, &id), "by the back key too");
    clear();
}

#[wasm_bindgen_test]
fn the_demonstration_stays_when_another_page_vanishes_and_goes_when_its_own_have_gone() {
    clear();
    let (_part, records) = tab();
    records.put(Ok(line(records, "2026-05-01")), "kept").unwrap();
    records.fill_demo().unwrap();
    let told = |key: &str| {
        shelf().remove_item(key).unwrap();
        let event = js_sys::eval(&format!("new StorageEvent('storage', {{ key: '{key}' }})")).unwrap();
        web_sys::window().unwrap().dispatch_event(&event.into()).unwrap();
    };
    let demo = || records.book.with_untracked(|book| book.log().entries().any(Entry::is_demo));
    told("beetle-almanac:page:keeper:2026-05-01");
    assert!(demo());
    assert_eq!(records.book.with_untracked(|book| book.log().entries().filter(|e| !e.is_demo()).count()), 1);
    let keys: Vec<String> = (0..shelf().length().unwrap()).filter_map(|n| shelf().key(n).unwrap()).collect();
    for key in keys.iter().filter(|key| key.starts_with("beetle-almanac:page:demo-")) {
        told(key);
    }
    assert!(!demo());
    clear();
}

#[wasm_bindgen_test]
fn two_tabs_remember_different_things_and_both_are_remembered() {
    clear();
    let ((_one, first), (_two, second)) = (tab(), tab());
    first.remember(|meta| meta.label = Some("Truck".to_owned()));
    let day = Day::parse("2026-05-01").unwrap();
    second.remember(|meta| meta.backup = Some((day, 4)));
    let (_three, later) = tab();
    later.meta.with_untracked(|meta| {
        assert_eq!((meta.label.as_deref(), meta.backup), (Some("Truck"), Some((day, 4))));
    });
    clear();
}
