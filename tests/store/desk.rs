//! Preferences and the draft.

use crate::phone::{Faults, Memory};
use beetle_almanac::store::envelope::wrap;
use beetle_almanac::store::{Damage, Desk, DeskError, Format, Found, ShelfError, Slot};

const TEXT: Format<String> = Format::new(&[], |text| text.len() < 1000);

fn read(phone: &Memory) -> Found<String> {
    Desk::new(phone).read(Slot::Draft, &TEXT).unwrap()
}

fn write(phone: &Memory, text: &str) -> Result<u64, DeskError> {
    Desk::new(phone).write(Slot::Draft, &TEXT, &text.to_owned())
}

#[test]
fn the_draft_is_there_after_a_restart_and_slots_do_not_mix() {
    let phone = Memory::new();
    assert_eq!(read(&phone), Found::Absent);
    for (n, text) in (1..).zip(["one", "two", "three", "four"]) {
        assert_eq!(write(&phone, text), Ok(n));
        assert_eq!(read(&phone.restarted()), Found::Loaded(text.to_owned()));
    }
    assert_eq!(phone.texts().len(), 2);
    for slot in [Slot::Prefs, Slot::Meta] {
        assert_eq!(Desk::new(&phone).read(slot, &TEXT), Ok(Found::Absent));
    }
}

#[test]
fn phone_dies_while_the_draft_is_saved_and_the_draft_is_the_old_or_the_new_one() {
    for saves in 0..5 {
        for torn in [false, true] {
            for cut in 1..=3 {
                let phone = Memory::new();
                let old = (0..saves).map(|n| format!("draft {n}")).fold(None, |_, text| {
                    write(&phone, &text).unwrap();
                    Some(text)
                });
                phone.set_faults(Faults { cut: Some(cut), torn, ..Faults::default() });
                let outcome = write(&phone, "the newest draft");
                let phone = phone.restarted();
                let found = read(&phone).into_value();
                let expected = if outcome.is_ok() { Some("the newest draft".to_owned()) } else { old };
                assert_eq!(found, expected, "after {saves} saves, cut at {cut}, torn {torn}");
                write(&phone, "and on").unwrap();
                assert_eq!(read(&phone), Found::Loaded("and on".to_owned()));
            }
        }
    }
}

#[test]
fn a_draft_that_is_said_to_be_saved_and_is_not_does_not_count() {
    for torn in [false, true] {
        let phone = Memory::new();
        write(&phone, "before").unwrap();
        phone.set_faults(Faults { swallow: Some(1), torn, ..Faults::default() });
        assert_eq!(write(&phone, "newest"), Err(DeskError::NotSaved(ShelfError::Other)));
        assert_eq!(read(&phone), Found::Loaded("before".to_owned()));
    }
}

#[test]
fn the_phone_is_full_and_the_draft_before_is_still_there() {
    let before = Memory::new();
    write(&before, "first").unwrap();
    write(&before, "second").unwrap();
    for quota in 0..300 {
        let phone = before.restarted();
        phone.set_faults(Faults { quota: Some(quota), ..Faults::default() });
        match write(&phone, "a longer third draft") {
            Ok(3) => assert_eq!(read(&phone), Found::Loaded("a longer third draft".to_owned())),
            Err(DeskError::NotSaved(ShelfError::Full)) => assert_eq!(phone.texts(), before.texts()),
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn either_side_is_damaged_anywhere_and_the_other_one_counts() {
    let whole = Memory::new();
    write(&whole, "older").unwrap();
    write(&whole, "newer").unwrap();
    let [a, b] = Slot::Draft.keys();
    for (key, rest) in [(&a, "newer"), (&b, "older")] {
        let text = whole.texts().get(key).cloned().unwrap();
        for at in 0..text.len() {
            let phone = whole.restarted();
            phone.lay(key, &text[..at]);
            assert_eq!(read(&phone), Found::Loaded(rest.to_owned()));
            let mut flipped = text.clone().into_bytes();
            flipped[at] ^= 1;
            let flipped = String::from_utf8(flipped).unwrap();
            phone.lay(key, &flipped);
            assert_eq!(read(&phone), Found::Loaded(rest.to_owned()));
            // The side that cannot be read is used next; its text is kept.
            write(&phone, "next").unwrap();
            assert_eq!(read(&phone), Found::Loaded("next".to_owned()));
            assert_eq!(phone.texts().get("beetle-almanac:aside:draft:1"), Some(&flipped));
            write(&phone, "and next").unwrap();
            assert_eq!(phone.texts().len(), 3);
        }
    }
}

#[test]
fn both_sides_are_damaged_and_both_are_kept_before_the_desk_is_used_again() {
    let phone = Memory::new();
    let [a, b] = Slot::Draft.keys();
    phone.lay(&a, "torn");
    phone.lay(&b, "torn too");
    assert!(matches!(read(&phone), Found::Damaged { why: Damage::Envelope(_), .. }));
    write(&phone, "one").unwrap();
    assert_eq!(read(&phone), Found::Loaded("one".to_owned()));
    write(&phone, "two").unwrap();
    let mut kept: Vec<String> =
        phone.texts().into_iter().filter(|(key, _)| key.contains(":aside:")).map(|(_, text)| text).collect();
    kept.sort_unstable();
    assert_eq!(kept, ["torn", "torn too"]);
}

#[test]
fn a_draft_of_a_newer_app_is_left_byte_for_byte() {
    let phone = Memory::new();
    write(&phone, "old").unwrap();
    let newer = wrap(2, 5, "{}");
    phone.lay(&Slot::Draft.keys()[1], &newer);
    assert_eq!(read(&phone), Found::Newer { found: 2, raw: newer.clone() });
    let before = phone.texts();
    assert_eq!(write(&phone, "older app"), Err(DeskError::Newer(2)));
    assert_eq!(phone.texts(), before);
}

#[test]
fn a_value_that_could_not_be_read_again_is_refused_and_denied_is_said() {
    let phone = Memory::new();
    assert_eq!(write(&phone, &"x".repeat(1000)), Err(DeskError::Unwritable(Damage::Invalid)));
    assert!(phone.texts().is_empty());
    phone.set_faults(Faults { denied: true, ..Faults::default() });
    assert_eq!(write(&phone, "x"), Err(DeskError::NotSaved(ShelfError::Denied)));
    assert_eq!(Desk::new(&phone).read(Slot::Draft, &TEXT), Err(ShelfError::Denied));
}

#[test]
fn a_shelf_that_lies_once_never_costs_the_draft_before() {
    for saves in 1..4 {
        for garble in 1..8 {
            let phone = Memory::new();
            for n in 0..saves {
                write(&phone, &format!("draft {n}")).unwrap();
            }
            phone.set_faults(Faults { garble: Some(garble), ..Faults::default() });
            let outcome = write(&phone, "newest");
            phone.set_faults(Faults::default());
            let found = read(&phone).into_value().unwrap();
            let old = format!("draft {}", saves - 1);
            assert!(found == "newest" || (outcome.is_err() && found == old), "{saves} {garble}: {found}");
        }
    }
}
