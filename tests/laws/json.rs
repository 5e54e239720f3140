//! The page's own reader and writer of JSON beside `serde_json`: what the one takes, the other takes, as the same
//! value.

use beetle_almanac::almanac::json::{self, Value};
use proptest::prelude::*;
use serde_json::Value as Theirs;

/// The page keeps numbers as digits and objects in order; names that stand twice are seen by whoever asks for fields.
fn same(ours: &Value, theirs: &Theirs) -> bool {
    match (ours, theirs) {
        (Value::Null, Theirs::Null) => true,
        (Value::Bool(a), Theirs::Bool(b)) => a == b,
        (Value::String(a), Theirs::String(b)) => a == b,
        (Value::Number(digits), Theirs::Number(number)) => {
            let ours: f64 = digits.parse().unwrap();
            let theirs = number.as_f64().unwrap();
            (ours - theirs).abs() <= ours.abs() * 1e-15
        }
        (Value::Array(a), Theirs::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b)),
        (Value::Object(a), Theirs::Object(b)) => {
            // The last of two fields of one name wins there.
            b.iter().all(|(name, theirs)| {
                a.iter().rev().find(|(field, _)| field == name).is_some_and(|(_, ours)| same(ours, theirs))
            }) && a.iter().all(|(name, _)| b.contains_key(name))
        }
        _ => false,
    }
}

fn values() -> impl Strategy<Value = Theirs> {
    let leaf = prop_oneof![
        Just(Theirs::Null),
        any::<bool>().prop_map(Theirs::from),
        any::<i64>().prop_map(Theirs::from),
        any::<u64>().prop_map(Theirs::from),
        (-1e12..1e12_f64).prop_map(Theirs::from),
        any::<String>().prop_map(Theirs::from),
        "[\\x00-\\x1f\\\\\"/\u{7f}\u{2028}\u{1f41d}\u{e9}]{0,8}".prop_map(Theirs::from),
    ];
    leaf.prop_recursive(4, 40, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Theirs::from),
            prop::collection::vec((any::<String>(), inner), 0..6)
                .prop_map(|fields| Theirs::Object(fields.into_iter().collect())),
        ]
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(700))]

    #[test]
    fn what_serde_json_writes_is_read_as_the_same(value in values()) {
        for text in [value.to_string(), serde_json::to_string_pretty(&value).unwrap()] {
            let ours = json::parse(&text);
            prop_assert!(ours.as_ref().is_some_and(|ours| same(ours, &value)), "{text}\n{ours:?}");
        }
    }

    #[test]
    fn a_text_changed_anywhere_is_taken_by_both_or_by_neither(
        value in values(), at in any::<prop::sample::Index>(), with in "[ -~\\t\\n\u{e9}]{0,2}", cut in 0..3_usize,
    ) {
        let text: Vec<char> = value.to_string().chars().collect();
        let at = at.index(text.len().max(1)).min(text.len());
        let rest = (at + cut).min(text.len());
        let changed: String =
            text[..at].iter().copied().chain(with.chars()).chain(text[rest..].iter().copied()).collect();
        match (json::parse(&changed), serde_json::from_str::<Theirs>(&changed)) {
            (Some(ours), Ok(theirs)) => prop_assert!(same(&ours, &theirs), "{changed}"),
            (None, Err(_)) => {}
            // A number beyond what a double holds is digits to us and an error there.
            (Some(_), Err(error)) => prop_assert!(error.to_string().contains("number out of range"), "{changed} {error}"),
            (None, Ok(_)) => prop_assert!(false, "refused: {changed}"),
        }
    }

    #[test]
    fn a_text_that_is_written_is_read_back_by_both(text in any::<String>()) {
        let mut out = String::new();
        json::write_text(&text, &mut out);
        prop_assert_eq!(&serde_json::from_str::<String>(&out).unwrap(), &text);
        prop_assert_eq!(json::from_text::<String>(&out), Some(text));
    }
}

#[test]
fn deep_nesting_is_refused_and_does_not_overflow() {
    for open in ["[", "{\"a\":"] {
        assert!(json::parse(&open.repeat(200_000)).is_none());
    }
    let deep = |n: usize| format!("{}{}", "[".repeat(n), "]".repeat(n));
    assert!(json::parse(&deep(127)).is_some());
    assert!(json::parse(&deep(128)).is_none());
    assert!(json::parse(&deep(100_000)).is_none());
}
