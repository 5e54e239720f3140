//! The app is older or newer than what lies on the shelf.

use super::{Entries, FORMAT, entries, open, page};
use crate::phone::Memory;
use beetle_almanac::store::envelope::wrap;
use beetle_almanac::store::{CannotMigrate, Damage, Format, Found, Pages, load};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Version 2 of these tests: a list becomes a map from entry to a count.
type Counted = BTreeMap<String, u32>;

fn count(old: Value) -> Result<Value, CannotMigrate> {
    let Value::Array(list) = old else { return Err(CannotMigrate) };
    let mut map = serde_json::Map::new();
    for entry in list {
        map.insert(entry.as_str().ok_or(CannotMigrate)?.to_owned(), json!(1));
    }
    Ok(Value::Object(map))
}

fn double(old: Value) -> Result<Value, CannotMigrate> {
    let Value::Object(map) = old else { return Err(CannotMigrate) };
    let twice = |(entry, n): (String, Value)| Some((entry, json!(n.as_u64()? * 2)));
    Ok(Value::Object(map.into_iter().map(twice).collect::<Option<_>>().ok_or(CannotMigrate)?))
}

const SECOND: Format<Counted> = Format::new(&[count], |_| true);
const THIRD: Format<Counted> = Format::new(&[count, double], |map| map.values().all(|n| *n < 100));

fn counted(of: &[(&str, u32)]) -> Counted {
    of.iter().map(|(entry, n)| ((*entry).to_owned(), *n)).collect()
}

#[test]
fn an_old_app_leaves_a_newer_page_byte_for_byte_and_writes_beside_it() {
    let phone = Memory::new();
    let text = wrap(2, 9, "{\"what\":[\"the newer app knows\"]}");
    phone.lay(&page("river").key(1), &text);
    let (mut book, _) = open(&phone);
    let found = book.read_all().unwrap().pages.remove(0);
    assert_eq!(found.found, Found::Newer { found: 2, raw: text.clone() });
    assert_eq!(found.generation, Some(9));
    let saved =
        book.write_many(&[(page("river"), entries(&["x"])), (page("hill"), entries(&["y"]))]).unwrap();
    assert_eq!(saved.iter().map(|saved| saved.part).collect::<Vec<_>>(), [2, 1]);
    assert_eq!(phone.texts().get(&page("river").key(1)), Some(&text));
}

#[test]
fn a_flipped_version_is_damage_and_not_a_reason_to_ask_for_an_update() {
    let text = wrap(1, 9, "[\"x\"]").replace("\"v\":1", "\"v\":3");
    assert!(matches!(load::<Entries>(Some(text), &FORMAT), Found::Damaged { .. }));
}

#[test]
fn a_newer_app_carries_old_pages_over_and_the_shelf_keeps_the_old_text_until_a_save() {
    let phone = Memory::new();
    open(&phone).0.write(&page("river"), &entries(&["a"])).unwrap();
    let old = phone.texts();

    let (mut book, _) = Pages::open(&phone, THIRD).unwrap();
    let found = book.read_all().unwrap().pages.remove(0).found;
    assert_eq!(found, Found::Migrated { from: 1, value: counted(&[("a", 2)]) });
    assert_eq!(phone.texts(), old);
    let saved = book.write(&page("river"), &counted(&[("a", 2), ("b", 5)])).unwrap();
    assert_eq!((saved.part, saved.generation), (1, 2));
    assert_eq!(load(Some(saved.text), &THIRD), Found::Loaded(counted(&[("a", 2), ("b", 5)])));
}

#[test]
fn every_older_version_takes_the_steps_from_its_own_on() {
    assert_eq!((FORMAT.version(), SECOND.version(), THIRD.version()), (1, 2, 3));
    let first = load(Some(wrap(1, 1, "[\"a\"]")), &THIRD);
    assert_eq!(first, Found::Migrated { from: 1, value: counted(&[("a", 2)]) });
    let second = load(Some(wrap(2, 1, "{\"a\":4}")), &THIRD);
    assert_eq!(second, Found::Migrated { from: 2, value: counted(&[("a", 8)]) });
    assert_eq!(load(Some(wrap(3, 1, "{\"a\":4}")), &THIRD), Found::Loaded(counted(&[("a", 4)])));
    assert!(matches!(load(Some(wrap(4, 1, "{\"a\":4}")), &THIRD), Found::Newer { found: 4, .. }));
}

#[test]
fn a_page_that_cannot_be_carried_over_is_kept_as_damaged() {
    let why = |text: String| match load(Some(text), &THIRD) {
        Found::Damaged { why, .. } => why,
        other => panic!("{other:?}"),
    };
    assert_eq!(why(wrap(1, 1, "[7]")), Damage::Migration(1));
    assert_eq!(why(wrap(2, 1, "[]")), Damage::Migration(2));
    assert_eq!(why(wrap(2, 1, "{\"a\":50}")), Damage::Invalid);
    assert_eq!(why(wrap(3, 1, "{\"a\":\"?\"}")), Damage::Payload);
}

#[test]
fn old_and_new_app_take_turns_on_one_phone_and_nothing_is_lost() {
    let phone = Memory::new();
    open(&phone).0.write(&page("river"), &entries(&["first"])).unwrap();
    let (mut new, _) = Pages::open(&phone, SECOND).unwrap();
    new.read_all().unwrap();
    new.write(&page("river"), &counted(&[("first", 1), ("second", 1)])).unwrap();

    let (mut old, _) = open(&phone);
    old.read_all().unwrap();
    assert_eq!(old.write(&page("river"), &entries(&["third"])).unwrap().part, 2);

    let (mut new, _) = Pages::open(&phone, SECOND).unwrap();
    let mut all = Counted::new();
    for page in new.read_all().unwrap().pages {
        all.extend(page.found.into_value().unwrap());
    }
    assert_eq!(all, counted(&[("first", 1), ("second", 1), ("third", 1)]));
    assert_eq!(new.write(&page("river"), &all).unwrap().part, 1);
}
