//! The records beside other tabs: what the browser tells, and what it does not.

use beetle_almanac::almanac::day::Day;
use beetle_almanac::app::cabinet::Cabinet;
use beetle_almanac::app::graph::Owner;
use beetle_almanac::app::records::{Home, Records, Stop};
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

async fn settled(promise: &str) {
    wasm_bindgen_futures::JsFuture::from(js_sys::Promise::from(js_sys::eval(promise).unwrap()))
        .await
        .unwrap();
}

/// Waits for what comes by itself.
async fn until(what: &str, is_so: impl Fn() -> bool) {
    for _ in 0..250 {
        if is_so() {
            return;
        }
        settled("new Promise(done => setTimeout(done, 20))").await;
    }
    panic!("waited in vain until {what}");
}

/// Takes away everything of this app.
async fn clear() {
    settled(
        "new Promise((done, fail) => {
            const gone = indexedDB.deleteDatabase('beetle-almanac');
            [gone.onsuccess, gone.onerror] = [done, fail];
        })",
    )
    .await;
    let shelf = shelf();
    let keys: Vec<String> = (0..shelf.length().unwrap()).filter_map(|n| shelf.key(n).unwrap()).collect();
    for key in keys.iter().filter(|key| key.starts_with("beetle-almanac:")) {
        shelf.remove_item(key).unwrap();
    }
}

/// A tab that was opened just now: the records as a page has them. It stays open, as the events of the browser find it
/// still.
fn opened() -> Records {
    leptos::mount::mount_to_body(|| ());
    let part = Owner::new();
    let records = part.with(Records::provide);
    std::mem::forget(part);
    records
}

/// A tab that writes.
async fn tab() -> Records {
    let records = opened();
    let reads = || records.home.get_untracked() == Home::Elsewhere;
    let level = || records.twice.get_untracked().is_some();
    until("it is known who writes", || reads() || level()).await;
    if reads() {
        records.take_over();
        until("it writes", || !reads() && level()).await;
    }
    records
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

/// The browser tells of a change of the storage.
fn tell(what: &str) {
    let event = js_sys::eval(&format!("new StorageEvent('storage', {what})")).unwrap();
    web_sys::window().unwrap().dispatch_event(&event.into()).unwrap();
}

fn holds(records: Records, id: &EntryId) -> bool {
    records.book.with_untracked(|book: &Book| book.log().get(id).is_some())
}

#[wasm_bindgen_test]
async fn a_page_that_is_shown_again_has_what_another_tab_wrote_meanwhile() {
    clear().await;
    let records = tab().await;
    let document = web_sys::window().unwrap().document().unwrap();
    let id = written_elsewhere(records, "2026-05-01");
    assert!(!holds(records, &id));
    document.dispatch_event(&Event::new("visibilitychange").unwrap()).unwrap();
    assert!(holds(records, &id));

    let id = written_elsewhere(records, "2026-05-02");
    let back = js_sys::eval("new PageTransitionEvent('pageshow', { persisted: true })").unwrap();
    web_sys::window().unwrap().dispatch_event(&back.into()).unwrap();
    assert!(holds(records, &id), "by the back key too");
    clear().await;
}

#[wasm_bindgen_test]
async fn the_demonstration_stays_when_another_page_vanishes_and_goes_when_its_own_have_gone() {
    clear().await;
    let records = tab().await;
    records.put(Ok(line(records, "2026-05-01")), "kept").unwrap();
    records.fill_demo().unwrap();
    let told = |key: &str| {
        shelf().remove_item(key).unwrap();
        tell(&format!("{{ key: '{key}' }}"));
    };
    let demo = || records.book.with_untracked(|book| book.log().entries().any(Entry::is_demo));
    told("beetle-almanac:page:keeper:2026-05-01");
    settled("new Promise(done => setTimeout(done, 300))").await;
    assert!(demo());
    assert_eq!(records.book.with_untracked(|book| book.log().entries().filter(|e| !e.is_demo()).count()), 1);
    let keys: Vec<String> = (0..shelf().length().unwrap()).filter_map(|n| shelf().key(n).unwrap()).collect();
    for key in keys.iter().filter(|key| key.starts_with("beetle-almanac:page:demo-")) {
        told(key);
    }
    until("it is gone here too", || !demo()).await;

    // Somebody cleared the whole storage: no page is named.
    records.fill_demo().unwrap();
    assert!(demo());
    shelf().clear().unwrap();
    tell("{}");
    until("it is gone once more", || !demo()).await;
    clear().await;
}

#[wasm_bindgen_test]
async fn two_tabs_remember_different_things_and_both_are_remembered() {
    clear().await;
    let (first, second) = (opened(), opened());
    first.remember(|meta| meta.label = Some("Truck".to_owned()));
    let day = Day::parse("2026-05-01").unwrap();
    second.remember(|meta| meta.backup = Some((day, 4)));
    let later = opened();
    later.meta.with_untracked(|meta| {
        assert_eq!((meta.label.as_deref(), meta.backup), (Some("Truck"), Some((day, 4))));
    });
    clear().await;
}

#[wasm_bindgen_test]
async fn an_entry_of_the_first_moment_waits_until_it_is_known_which_tab_writes() {
    clear().await;
    // Another tab holds the lock; this one has not been told yet.
    settled(
        "new Promise(held => {
            const hold = () => (held(), new Promise(() => {}));
            navigator.locks.request('beetle-almanac:writer', { steal: true }, hold).catch(() => {});
        })",
    )
    .await;
    let records = opened();
    let lines = line(records, "2026-05-01");
    let id = lines[0].id.clone();
    assert_eq!(records.put(Ok(lines), "kept"), Err(Stop::NotSaved));
    assert!(!holds(records, &id));
    assert_eq!(records.home.get_untracked(), Home::Kept, "nothing is said of another tab yet");
    records.take_over();
    until("it is kept", || records.unsaved.with_untracked(Option::is_none)).await;
    assert!(holds(records, &id));
    until("it is level", || records.twice.get_untracked() == Some(true)).await;
    clear().await;
}

#[wasm_bindgen_test]
async fn a_text_of_what_was_not_kept_that_cannot_be_read_is_offered_at_every_start_of_the_tab() {
    clear().await;
    let own = web_sys::window().unwrap().session_storage().unwrap().unwrap();
    let torn = "[{\"said\":\"Hive 7 topped up\",\"entr";
    own.set_item("beetle-almanac/unsaved", torn).unwrap();
    for start in 0..3 {
        let records = opened();
        assert_eq!(records.unsaved.get_untracked(), None);
        let asides = records.asides.get_untracked();
        assert_eq!(
            asides.iter().map(|aside| aside.raw.as_str()).collect::<Vec<_>>(),
            [torn],
            "start {start}"
        );
        until("nothing is held", || own.get_item("beetle-almanac/unsaved").unwrap().as_deref() == Some(""))
            .await;
    }
    own.remove_item("beetle-almanac/unread").unwrap();
    assert!(opened().asides.get_untracked().is_empty());
}

#[wasm_bindgen_test]
async fn another_tab_writes_many_pages_at_once_and_the_shelf_is_looked_through_once() {
    clear().await;
    let records = tab().await;
    let id = written_elsewhere(records, "2026-05-01");
    js_sys::eval(
        "window.looks = 0;
        window.getItem = Storage.prototype.getItem;
        Storage.prototype.getItem = function (key) { window.looks += 1; return window.getItem.call(this, key); };",
    )
    .unwrap();
    for _ in 0..200 {
        tell("{ key: 'beetle-almanac:page:keeper:2026-05-01' }");
    }
    until("it has come in", || holds(records, &id)).await;
    settled("new Promise(done => setTimeout(done, 300))").await;
    let looks =
        js_sys::eval("Storage.prototype.getItem = window.getItem, window.looks").unwrap().as_f64().unwrap();
    // The tabs of the other cases look as well.
    assert!(looks < 200.0, "{looks} reads");
    clear().await;
}
