//! Values that lie in the keeper's file come back as they went in.

use super::quantities::ranges;
use super::{decimals, kinds, lengths, shares, volumes};
use beetle_almanac::almanac::quantity::{LengthUnit, Share, VolumeUnit};
use beetle_almanac::almanac::stack::{BoxDepth, Corner, HiveSize, Spot};
use beetle_almanac::almanac::trap::TrapKind;
use proptest::prelude::*;
use serde::Serialize;
use serde::de::DeserializeOwned;

fn back<T: Serialize + DeserializeOwned>(value: &T) -> T {
    let text = serde_json::to_string(value).expect("written");
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{text}: {error}"))
}

proptest! {
    #[test]
    fn a_kind_of_trap_survives_the_file(kind in kinds()) {
        prop_assert_eq!(&back(&kind), &kind);
        prop_assert!(kind.sound());
        // A word this version does not know is not dropped in silence.
        let mut value = serde_json::to_value(&kind).unwrap();
        value["colour"] = "blue".into();
        prop_assert!(serde_json::from_value::<TrapKind>(value).is_err());
    }

    #[test]
    fn numbers_counts_and_shares_survive_the_file(
        decimal in decimals(), count in ranges(), share in shares(), volume in volumes(), length in lengths(),
    ) {
        prop_assert_eq!(back(&decimal), decimal);
        prop_assert_eq!(back(&count), count);
        prop_assert_eq!(back(&share), share);
        prop_assert_eq!(back(&volume), volume);
        prop_assert_eq!(back(&length), length);
        prop_assert_eq!(back(&BoxDepth::Own(length)), BoxDepth::Own(length));
    }
}

/// A profile that stands still, falls, or touches an end is not sound, wherever in the profile it does so.
#[test]
fn every_profile_of_two_points_is_sound_only_when_it_rises() {
    let ends = [0, 1, 50, 99, 100].map(super::percent);
    let mut kind: TrapKind = serde_json::from_str(
        r#"{"name":"slot trap","form":"between_frame","reusable":false,"inner":{},"outer":{},"fill":50,"max_days":14}"#,
    )
    .expect("the least a kind can say");
    assert!(kind.sound());
    for a in ends {
        for b in ends {
            for c in ends {
                for d in ends {
                    kind.profile = vec![(a, b), (c, d)];
                    let inside = |share| Share::NONE < share && share < Share::FULL;
                    let rises = [a, b, c, d].into_iter().all(inside) && a < c && b < d;
                    assert_eq!(kind.sound(), rises, "{:?}", kind.profile);
                }
            }
        }
    }
    kind.profile.clear();
    for days in [0, 1, 120, 121, u16::MAX] {
        kind.max_days = days;
        assert_eq!(kind.sound(), (1..=120).contains(&days), "{days}");
    }
}

/// Every word there is, and no two alike.
#[test]
fn words_survive_the_file_and_are_told_apart() {
    fn all<T: Serialize + DeserializeOwned + PartialEq + std::fmt::Debug>(values: &[T]) {
        let words: std::collections::BTreeSet<String> =
            values.iter().map(|value| serde_json::to_string(value).unwrap()).collect();
        assert_eq!(words.len(), values.len(), "{words:?}");
        assert!(values.iter().all(|value| back(value) == *value));
    }
    all(&VolumeUnit::ALL);
    all(&LengthUnit::ALL);
    all(&Corner::ALL);
    all(&[HiveSize::Full, HiveSize::Nuc]);
    all(&[BoxDepth::Deep, BoxDepth::Medium, BoxDepth::Shallow]);
    let mut spots: Vec<Spot> = Corner::ALL.map(Spot::Corner).to_vec();
    spots.extend((0..=u8::MAX).map(Spot::Between));
    spots.push(Spot::Floor);
    all(&spots);
}

#[test]
fn a_damaged_file_brings_in_no_impossible_value() {
    for text in ["-1", "100.000001", "1e300", "\"50\"", "null"] {
        assert!(serde_json::from_str::<beetle_almanac::almanac::quantity::Share>(text).is_err(), "{text}");
    }
    for text in [r#"{"n":-1,"unit":"mL"}"#, r#"{"n":1,"unit":"ml"}"#, r#"{"n":1}"#, r#"{"n":2e9,"unit":"L"}"#]
    {
        assert!(
            serde_json::from_str::<beetle_almanac::almanac::quantity::TypedVolume>(text).is_err(),
            "{text}"
        );
    }
    for text in ["\"1999-12-31\"", "\"2026-02-29\"", "\"26-02-03\"", "20260203"] {
        assert!(serde_json::from_str::<beetle_almanac::almanac::day::Day>(text).is_err(), "{text}");
    }
}
