//! What happens to the keeper's records when the phone dies, fills up, lies, or is used by two tabs.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod any_order;
mod damage;
mod desk;
mod dying;
mod fixed;
mod full;
mod headroom;
mod newer;
mod pages;
#[path = "../support/phone.rs"]
mod phone;
mod tabs;

use beetle_almanac::almanac::day::Day;
use beetle_almanac::store::{Format, PageName, Pages, Recovery};
use phone::Memory;
use std::collections::{BTreeMap, BTreeSet};

/// A page in these tests: a set of entries, joined by set union like those of the book.
type Entries = BTreeSet<String>;
type Book<'a> = Pages<&'a Memory, Entries>;

/// Every page that is read, its parts joined.
type State = BTreeMap<PageName, Entries>;

const FORMAT: Format<Entries> = Format::new(&[], |entries| !entries.is_empty());

fn entries(of: &[&str]) -> Entries {
    of.iter().map(|entry| (*entry).to_owned()).collect()
}

fn page(yard: &str) -> PageName {
    PageName::yard_on(yard, Day::from_ymd(2026, 7, 14).unwrap()).unwrap()
}

fn open(phone: &Memory) -> (Book<'_>, Recovery) {
    Pages::open(phone, FORMAT).unwrap()
}

fn joined(book: &mut Book<'_>) -> State {
    let mut state = State::new();
    for page in book.read_all().unwrap().pages {
        if let Some(value) = page.found.into_value() {
            state.entry(page.name).or_default().extend(value);
        }
    }
    state
}

/// What the next start shows.
fn after_restart(phone: &Memory) -> State {
    let phone = phone.restarted();
    joined(&mut open(&phone).0)
}

/// The texts of all pages, byte for byte.
fn page_texts(phone: &Memory) -> BTreeMap<String, String> {
    let mut texts = phone.texts();
    texts.retain(|key, _| key.starts_with("beetle-almanac:page:"));
    texts
}
