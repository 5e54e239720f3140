//! Names: what is the same stays the same however often it is looked at.

use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::stack::HiveSize;
use beetle_almanac::almanac::text::{
    LABEL_MOST, LabelError, Letters, PHONE_MOST, key, label, label_if_any, look_alike, suggest,
};
use beetle_almanac::book::entry::{Entry, KeeperChange, What};
use beetle_almanac::book::id::EntryId;
use proptest::prelude::*;
use std::collections::BTreeSet;
use unicode_normalization::UnicodeNormalization;
use unicode_segmentation::UnicodeSegmentation;

/// The browser's part, played by the tables of two crates.
struct Tables;

impl Letters for Tables {
    fn normal(&self, text: &str) -> String {
        text.nfc().collect()
    }

    fn visible(&self, text: &str) -> usize {
        text.graphemes(true).count()
    }
}

/// Every character but ideographs, Hangul syllables and private ones, which fill the rest of Unicode in blocks that are
/// alike throughout.
fn characters() -> impl Iterator<Item = char> {
    let blocks =
        ['\0'..='\u{34ff}', '\u{a000}'..='\u{acff}', '\u{d7a0}'..='\u{e00f}', '\u{f8f0}'..='\u{201ff}'];
    blocks.into_iter().flatten().chain('\u{e0000}'..='\u{e0fff}')
}

/// Between two letters.
#[test]
fn a_key_is_its_own_key_for_every_character() {
    for c in characters() {
        let text: String = ['A', c, 'b'].into_iter().collect();
        let once = key(&text, &Tables);
        assert_eq!(key(&once, &Tables), once, "U+{:04X}", u32::from(c));
        assert!(!look_alike(&text, &text, &Tables));
    }
}

/// Alone and at both ends: a label is never empty, never edged with space, never has a
/// control character, and is its own label.
#[test]
fn a_label_is_its_own_label_for_every_character() {
    for c in characters() {
        for text in [String::from(c), format!("{c}a{c}")] {
            if let Ok(found) = label(&text, LABEL_MOST, &Tables) {
                assert!(!found.is_empty() && found.trim() == found && !found.contains(char::is_control));
                assert_eq!(label(&found, LABEL_MOST, &Tables), Ok(found));
            }
        }
    }
}

/// A line in which every text that a keeper types stands where the file's bounds are checked.
fn lines(tag: &str, by: Option<&str>) -> Vec<Entry> {
    let day = Day::parse("2026-05-01").unwrap();
    let id = EntryId::parse("aa-2").unwrap();
    let (yard, hive) = (id.thing(0), id.thing(0));
    let name = || tag.to_owned();
    let whats = [
        What::Yard { name: name(), zone: "Europe/Berlin".to_owned() },
        What::YardChanged { yard: yard.clone(), name: Some(name()), zone: None },
        What::Hive { yard: yard.clone(), tag: name(), size: HiveSize::Full, boxes: Vec::new() },
        What::HiveChanged { hive: hive.clone(), tag: Some(name()), size: None },
        What::HiveMoved { hive, to: yard, permit: Some(name()) },
        What::Keeper(KeeperChange { name: Some(name()), ..KeeperChange::default() }),
    ];
    let line = |what| Entry {
        id: id.clone(),
        day,
        at: Stamp::midnight(day),
        by: by.map(str::to_owned),
        yard: None,
        replaces: None,
        bulk: None,
        what,
    };
    whats.into_iter().map(line).collect()
}

/// Texts whose visible characters are made of many code points: joined pictures, marks on letters, conjuncts.
fn composed() -> impl Strategy<Value = String> {
    let signs =
        ["a", "12", " ", "👩\u{200d}👩\u{200d}👧\u{fe0f}", "\u{301}", "क्", "षि", "🏴", "é", "\u{200b}"];
    proptest::collection::vec((proptest::sample::select(signs.to_vec()), 1..20_usize), 0..20)
        .prop_map(|parts| parts.into_iter().map(|(sign, times)| sign.repeat(times)).collect())
}

proptest! {
    /// What the reader accepts can always be saved.
    #[test]
    fn a_label_that_is_read_fits_into_the_file(text in prop_oneof![composed(), any::<String>()]) {
        let by = label_if_any(&text, PHONE_MOST, &Tables).ok().flatten();
        if let Ok(tag) = label(&text, LABEL_MOST, &Tables) {
            for line in lines(&tag, by.as_deref()) {
                prop_assert_eq!(line.check(), Ok(()), "{}", tag);
            }
        }
    }

    /// The bound is the file's and no narrower: a text it has room for is refused for its looks alone.
    #[test]
    fn a_label_is_refused_for_its_signs_only_where_the_file_has_no_room(text in composed()) {
        if label(&text, LABEL_MOST, &Tables) == Err(LabelError::TooManySigns) {
            prop_assert!(text.trim().chars().count() > Entry::NAME_MOST);
        }
    }

    #[test]
    fn no_text_stops_the_comparing(a in any::<String>(), b in any::<String>()) {
        prop_assert_eq!(look_alike(&a, &b, &Tables), look_alike(&b, &a, &Tables));
        let once = key(&a, &Tables);
        prop_assert_eq!(key(&once, &Tables), once);
        if let Ok(found) = label(&a, LABEL_MOST, &Tables) {
            prop_assert!((1..=LABEL_MOST.visible).contains(&Tables.visible(&found)));
            prop_assert_eq!(label(&found, LABEL_MOST, &Tables), Ok(found));
        }
    }

    #[test]
    fn composed_and_decomposed_names_have_one_key(text in "\\PC{0,20}") {
        let apart: String = text.nfd().collect();
        prop_assert_eq!(key(&apart, &Tables), key(&text, &Tables));
    }

    #[test]
    fn twins_are_told_from_each_other(plain in "[aceopxABCEHKMOPTX]{1,8}", seed in any::<u16>()) {
        let twin = |c| match c {
            'a' => 'а', 'c' => 'с', 'e' => 'е', 'o' => 'о', 'p' => 'р', 'x' => 'х', 'A' => 'А', 'B' => 'В', 'C' => 'С',
            'E' => 'Е', 'H' => 'Н', 'K' => 'К', 'M' => 'М', 'O' => '0', 'P' => 'Р', 'T' => 'Т', 'X' => 'Х',
            other => other,
        };
        let mixed: String =
            plain.chars().enumerate().map(|(at, c)| if seed >> (at % 16) & 1 == 1 { twin(c) } else { c }).collect();
        prop_assert_eq!(look_alike(&plain, &mixed, &Tables), plain != mixed);
    }

    #[test]
    fn a_suggestion_is_free_and_begins_as_typed(
        wanted in "[A-Z ]{0,3}[0-9]{0,3}",
        taken in proptest::collection::btree_set("[A-Z]{0,2}[0-9]{0,2}[bcd]?", 0..40),
    ) {
        let mut taken: BTreeSet<String> = taken;
        taken.insert(wanted.trim().to_owned());
        for _ in 0..60 {
            let found = suggest(|label| taken.contains(label), &wanted);
            prop_assert!(found.starts_with(wanted.trim()) && found.len() > wanted.trim().len());
            prop_assert!(taken.insert(found));
        }
    }
}
