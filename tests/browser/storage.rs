//! The records in the browser's own storage.
//!
//! The tests share one origin, as the apps of one keeper do; each has its own yard and takes away what it put there.

use beetle_almanac::almanac::day::Day;
use beetle_almanac::store::web::Local;
use beetle_almanac::store::{
    Desk, Format, Found, PageName, Pages, SaveError, Shelf, ShelfError, Slot, headroom,
};
use wasm_bindgen_test::wasm_bindgen_test;

type Entries = Vec<String>;

const FORMAT: Format<Entries> = Format::new(&[], |entries| !entries.is_empty());

fn page(yard: &str) -> PageName {
    PageName::yard_on(yard, Day::FIRST).unwrap()
}

fn entries(of: &[&str]) -> Entries {
    of.iter().map(|entry| (*entry).to_owned()).collect()
}

fn raw() -> web_sys::Storage {
    web_sys::window().unwrap().local_storage().unwrap().unwrap()
}

/// Fills the origin to the last character with another app's text.
fn fill(key: &str) {
    raw().set_item(key, "").unwrap();
    let mut text = String::new();
    let mut step = 4_000_000;
    while step > 0 {
        let longer = format!("{text}{}", "x".repeat(step));
        if raw().set_item(key, &longer).is_ok() {
            text = longer;
        } else {
            step /= 2;
        }
    }
    assert!(text.len() > 1_000_000, "the browser gave less room than any is known to give");
}

#[wasm_bindgen_test]
fn an_entry_is_there_after_the_page_is_opened_again() {
    let local = Local::open().unwrap();
    let words = entries(&["½ full", "Łąka 🐝", "\"quoted\"\n\u{2028}\0"]);
    let (mut book, _) = Pages::open(local, FORMAT).unwrap();
    let saved = book.write(&page("round-trip"), &words).unwrap();
    assert_eq!(raw().get_item(&saved.key).unwrap(), Some(saved.text));

    let (mut book, recovery) = Pages::open(Local::open().unwrap(), FORMAT).unwrap();
    assert_eq!(recovery, beetle_almanac::store::Recovery::default());
    assert_eq!(book.read(&page("round-trip")).unwrap()[0].found, Found::Loaded(words));
    raw().remove_item(&page("round-trip").key(1)).unwrap();
}

#[wasm_bindgen_test]
fn the_browser_is_full_and_the_old_entry_stays() {
    let local = Local::open().unwrap();
    let (mut book, _) = Pages::open(local, FORMAT).unwrap();
    let old = book.write(&page("full"), &entries(&["old"])).unwrap();
    fill("another-app:filler");
    let Err(SaveError::NotSaved { why, unsaved }) = book.write(&page("full"), &entries(&["old", "new"]))
    else {
        panic!("there was no room")
    };
    assert_eq!((why, unsaved[0].payload.as_str()), (ShelfError::Full, "[\"old\",\"new\"]"));
    assert_eq!(raw().get_item(&old.key).unwrap(), Some(old.text));
    assert_eq!(raw().get_item("beetle-almanac:journal").unwrap(), None);
    assert!(Local::open().is_ok(), "a full shelf with records on it can still be read");

    raw().remove_item("another-app:filler").unwrap();
    assert_eq!(book.write(&page("full"), &entries(&["old", "new"])).unwrap().generation, 2);
    raw().remove_item(&old.key).unwrap();
}

#[wasm_bindgen_test]
fn others_have_left_no_room_and_the_first_start_says_so() {
    fill("another-app:filler");
    let outcome = Local::open().err();
    raw().remove_item("another-app:filler").unwrap();
    assert_eq!(outcome, Some(ShelfError::Full));
    assert!(Local::open().is_ok());
    assert_eq!(raw().get_item("beetle-almanac:probe").unwrap(), None);
}

#[wasm_bindgen_test]
fn what_another_app_keeps_on_the_origin_is_not_touched() {
    raw().set_item("another-app:page:x", "theirs").unwrap();
    let local = Local::open().unwrap();
    let (mut book, _) = Pages::open(local.clone(), FORMAT).unwrap();
    book.write(&page("neighbours"), &entries(&["ours"])).unwrap();
    let pages = book.read_all().unwrap();
    assert!(pages.strangers.is_empty());
    assert_eq!(raw().get_item("another-app:page:x").unwrap(), Some("theirs".to_owned()));
    let used = headroom::used(&local).unwrap();
    assert!(used.own > 0 && used.all >= used.own + 24);
    raw().remove_item("another-app:page:x").unwrap();
    raw().remove_item(&page("neighbours").key(1)).unwrap();
}

#[wasm_bindgen_test]
fn half_a_character_in_a_page_is_damage_and_stays_as_it_is() {
    // JavaScript texts can hold half of a surrogate pair; Rust's cannot, and what is read is not what lies there.
    let key = page("half").key(1);
    js_sys::eval(&format!("localStorage.setItem('{key}', '\\ud83d')")).unwrap();
    let (mut book, _) = Pages::open(Local::open().unwrap(), FORMAT).unwrap();
    assert!(matches!(book.read(&page("half")).unwrap()[0].found, Found::Damaged { .. }));
    assert_eq!(book.write(&page("half"), &entries(&["after"])).unwrap().part, 2);
    let same = js_sys::eval(&format!("localStorage.getItem('{key}') === '\\ud83d'")).unwrap();
    assert_eq!(same.as_bool(), Some(true));
    raw().remove_item(&key).unwrap();
    raw().remove_item(&page("half").key(2)).unwrap();
}

#[wasm_bindgen_test]
fn the_desk_keeps_a_draft() {
    let local = Local::open().unwrap();
    let desk = Desk::new(local.clone());
    let format: Format<String> = Format::new(&[], |_| true);
    for text in ["one", "two", "three"] {
        desk.write(Slot::Draft, &format, &text.to_owned()).unwrap();
        assert_eq!(desk.read(Slot::Draft, &format), Ok(Found::Loaded(text.to_owned())));
    }
    for key in Slot::Draft.keys() {
        local.remove(&key).unwrap();
    }
    assert_eq!(local.get(&Slot::Draft.keys()[0]), Ok(None));
}
