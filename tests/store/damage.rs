//! A page is damaged. It is never taken for a whole one and never overwritten.

use super::{Entries, FORMAT, entries, open, page};
use crate::phone::Memory;
use beetle_almanac::store::envelope;
use beetle_almanac::store::{Damage, Found, load};
use proptest::prelude::*;

const FIRST: [&str; 3] = ["2 traps topped up ½", "Łąka: brood \"fine\"", "🐝 12 \\ 3"];

fn whole() -> String {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    book.write(&page("river"), &entries(&FIRST)).unwrap().text
}

/// What the keeper sees and what lies there after an entry is made on a page that has become `text`.
fn live_on(text: &str, how: &str) {
    let phone = Memory::new();
    let key = page("river").key(1);
    phone.lay(&key, text);
    let (mut book, _) = open(&phone);
    let shelves = book.read_all().unwrap();
    assert_eq!(shelves.pages.len(), 1, "{how}");
    assert_eq!(shelves.pages[0].found.untouchable(), Some(text), "{how}: {text}");

    let saved = book.write(&page("river"), &entries(&["after"])).unwrap();
    assert_eq!(saved.part, 2, "{how}");
    let saved = book.write(&page("river"), &entries(&["after", "later"])).unwrap();
    assert_eq!((saved.part, saved.generation), (2, 2), "{how}");
    assert_eq!(phone.texts().get(&key).map(String::as_str), Some(text), "{how}");

    let phone = phone.restarted();
    let pages = open(&phone).0.read_all().unwrap().pages;
    assert_eq!(pages[0].found.untouchable(), Some(text), "{how}");
    assert_eq!(pages[1].found, Found::Loaded(entries(&["after", "later"])), "{how}");
}

#[test]
fn one_bit_of_a_page_flips_and_the_page_is_kept_as_damaged() {
    let whole = whole();
    for at in 0..whole.len() {
        for bit in 0..8 {
            let mut bytes = whole.clone().into_bytes();
            bytes[at] ^= 1 << bit;
            // A browser gives text, whatever the bytes were.
            let text = String::from_utf8_lossy(&bytes);
            live_on(&text, &format!("bit {bit} of byte {at}"));
        }
    }
}

#[test]
fn a_page_is_cut_off_anywhere_and_kept_as_damaged() {
    let whole = whole();
    for at in 0..whole.len() {
        live_on(&String::from_utf8_lossy(&whole.as_bytes()[..at]), &format!("first {at} bytes"));
        if at > 0 {
            live_on(&String::from_utf8_lossy(&whole.as_bytes()[at..]), &format!("from byte {at}"));
        }
    }
}

#[test]
fn any_byte_of_a_page_becomes_any_other_and_it_is_never_read_as_another_page() {
    let whole = whole();
    for at in 0..whole.len() {
        for byte in 0..=u8::MAX {
            let mut bytes = whole.clone().into_bytes();
            bytes[at] = byte;
            let text = String::from_utf8_lossy(&bytes).into_owned();
            let same = text == whole;
            let found = load(Some(text), &FORMAT);
            assert_eq!(found.value().is_some(), same, "byte {at} is {byte}");
        }
    }
}

#[test]
fn a_character_is_lost_doubled_or_swapped_and_the_page_is_kept_as_damaged() {
    let whole = whole();
    let characters: Vec<char> = whole.chars().collect();
    for at in 0..characters.len() {
        let mut lost = characters.clone();
        let character = lost.remove(at);
        let mut doubled = characters.clone();
        doubled.insert(at, character);
        let mut swapped = characters.clone();
        swapped.swap(at, (at + 1) % characters.len());
        for changed in [lost, doubled, swapped] {
            let text: String = changed.into_iter().collect();
            if text != whole {
                assert_eq!(load(Some(text.clone()), &FORMAT).untouchable(), Some(text.as_str()), "{at}");
            }
        }
    }
}

#[test]
fn garbage_lies_where_a_page_was_and_is_kept() {
    let deep = "[".repeat(100_000);
    for text in ["", " ", "null", "0", "\"\"", "[]", "{}", "\u{0}", "\u{fffd}\u{fffd}", "undefined", &deep] {
        live_on(text, "garbage");
    }
}

#[test]
fn a_sound_envelope_around_something_else_is_kept_as_damaged() {
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    for payload in ["null", "7", "[7]", "{\"a\":1}", "[]", "[\"\\ud800\"]", "\"text\"", &deep] {
        live_on(&envelope::wrap(1, 3, payload), "not a page");
    }
    live_on(&envelope::wrap(0, 3, "[\"x\"]"), "version 0");
    live_on(&envelope::wrap(1, 0, "[\"x\"]"), "generation 0");
    let found: Found<Entries> = load(Some(envelope::wrap(1, 3, "[7]")), &FORMAT);
    assert!(matches!(found, Found::Damaged { why: Damage::Payload, .. }));
    let found: Found<Entries> = load(Some(envelope::wrap(1, 3, "[]")), &FORMAT);
    assert!(matches!(found, Found::Damaged { why: Damage::Invalid, .. }));
}

#[test]
fn what_is_wrong_with_a_text_is_told_apart() {
    use envelope::{EnvelopeError, open, wrap};
    let sound = wrap(1, 3, "[\"x\"]");
    assert_eq!(open(&sound.replace("\"x\"", "\"y\"")), Err(EnvelopeError::Checksum));
    assert_eq!(open(&sound.replace("\"v\":1", "\"v\":2")), Err(EnvelopeError::Checksum));
    assert_eq!(open(&sound.replace("\"g\":3", "\"g\":4")), Err(EnvelopeError::Checksum));
    assert_eq!(open(&sound[1..]), Err(EnvelopeError::Shape));
    assert_eq!(open(&format!("{sound}\n")), Err(EnvelopeError::Shape));
    assert_eq!(open(&wrap(0, 3, "[]")), Err(EnvelopeError::Version));
    assert_eq!(open(&wrap(1, 0, "[]")), Err(EnvelopeError::Generation));
}

#[test]
fn a_second_part_is_damaged_too_and_a_third_takes_over() {
    let phone = Memory::new();
    phone.lay(&page("river").key(1), "torn");
    phone.lay(&page("river").key(2), "torn as well");
    let (mut book, _) = open(&phone);
    book.read_all().unwrap();
    let saved = book.write(&page("river"), &entries(&["x"])).unwrap();
    assert_eq!((saved.part, saved.key), (3, page("river").key(3)));
    assert_eq!(phone.texts().len(), 3);
}

#[test]
fn a_page_is_damaged_while_the_app_runs_and_what_it_knew_is_saved_beside() {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    book.write(&page("river"), &entries(&["before"])).unwrap();
    phone.lay(&page("river").key(1), "torn");
    let saved = book.write(&page("river"), &entries(&["before", "after"])).unwrap();
    assert_eq!(saved.part, 2);
    assert_eq!(phone.texts().get(&page("river").key(1)).map(String::as_str), Some("torn"));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn no_text_at_all_makes_the_app_fall_over(text in any::<String>()) {
        let _ = envelope::open(&text);
        let _ = load(Some(text), &FORMAT);
    }

    #[test]
    fn no_text_that_looks_like_a_page_makes_the_app_fall_over(
        text in "\\{\"v\":[0-9]{1,12},\"g\":[0-9]{1,22},\"c\":\"[0-9a-f]{8}\",\"d\":[\\[\\]{}\",:0-9a-z\\\\]{0,40}\\}"
    ) {
        let _ = envelope::open(&text);
        let _ = load(Some(text), &FORMAT);
    }

    #[test]
    fn whatever_is_put_in_comes_out(
        version in 1..=u32::MAX, generation in 1..=envelope::MAX_GENERATION, words in any::<Vec<String>>()
    ) {
        let payload = serde_json::to_string(&words).unwrap();
        let text = envelope::wrap(version, generation, &payload);
        let inside = envelope::Envelope { version, generation, payload: &payload };
        prop_assert_eq!(envelope::open(&text), Ok(inside));
    }

    #[test]
    fn a_run_of_a_page_is_overwritten_and_it_is_never_read_as_another_page(
        at in 0usize..90, with in "[ -~]{1,12}"
    ) {
        let whole = whole();
        let mut bytes = whole.clone().into_bytes();
        for (n, byte) in with.bytes().enumerate() {
            if let Some(place) = bytes.get_mut(at + n) {
                *place = byte;
            }
        }
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let same = text == whole;
        prop_assert_eq!(load(Some(text), &FORMAT).value().is_some(), same);
    }

    #[test]
    fn every_key_that_is_read_as_a_page_is_written_the_same(key in "beetle-almanac:page:[a-z0-9:-]{0,30}") {
        if let Some((name, part)) = beetle_almanac::store::PageName::from_key(&key) {
            prop_assert_eq!(name.key(part), key);
        }
    }
}
