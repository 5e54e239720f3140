//! Typed text: no text stops the page, and every value read keeps the bounds of its field.

use beetle_almanac::almanac::quantity::{Decimal, LengthUnit, Share, VolumeUnit};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::typed::{self, TypedError};
use proptest::prelude::*;
use proptest::sample::select;

/// Text near enough to numbers to get deep into the reading.
fn numberish() -> impl Strategy<Value = String> {
    let pieces = select(
        &[
            "0",
            "1",
            "2",
            "5",
            "9",
            "00",
            "500",
            "1000000000",
            "99999999999999999999",
            ".",
            ",",
            "٫",
            "٬",
            " ",
            "\u{a0}",
            "\u{202f}",
            "-",
            "\u{2212}",
            "–",
            "—",
            "+",
            "/",
            "⁄",
            "½",
            "⅜",
            "%",
            "٪",
            "٣",
            "۷",
            "３",
            "\u{200f}",
            "ml",
            "l",
            "L",
            "oz",
            "fl oz",
            "us ",
            "imp ",
            "cup",
            "tbsp",
            "g",
            "in",
            "\"",
            "″",
            "mm",
            "cm",
            "half",
            "full",
            "A",
            "Blue",
            ";",
            "\n",
            "،",
            "e",
            "é",
            "🐝",
            "0026-",
            "2026-07-14",
        ][..],
    );
    proptest::collection::vec(pieces, 0..9).prop_map(|pieces| pieces.concat())
}

fn texts() -> impl Strategy<Value = String> {
    prop_oneof![4 => numberish(), 1 => any::<String>()]
}

/// The digits 0–9 in another script.
fn in_script(text: &str, zero: char) -> String {
    text.chars()
        .map(|c| c.to_digit(10).and_then(|n| char::from_u32(u32::from(zero) + n)).unwrap_or(c))
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1024))]

    #[test]
    fn every_text_is_read_or_refused_within_the_bounds_of_its_field(
        text in texts(),
        least in 0..10_u32,
        most in 10..6000_u32,
        volume in select(&VolumeUnit::ALL[..]),
        length in select(&LengthUnit::ALL[..]),
    ) {
        let _ = typed::decimal(&text);
        if let Ok(count) = typed::count(&text, least, most) {
            prop_assert!((least..=most).contains(&count));
        }
        if let Ok(range) = typed::count_or_range(&text, most) {
            prop_assert!(range.low() <= most && range.high().is_none_or(|high| (range.low()..=most).contains(&high)));
        }
        if let Ok(share) = typed::share(&text) {
            prop_assert!((0.0..=1.0).contains(&share.fraction()));
        }
        if let Ok(volume) = typed::volume(&text, volume) {
            prop_assert!(!volume.number().is_negative() && volume.volume().millilitres().is_finite());
        }
        if let Ok(length) = typed::length(&text, length) {
            prop_assert!(!length.number().is_negative() && length.length().millimetres().is_finite());
        }
        if let Ok(price) = typed::price(&text) {
            prop_assert!(!price.is_negative());
        }
    }

    #[test]
    fn both_readings_of_an_ambiguous_number_are_numbers(text in texts()) {
        if let Err(TypedError::Ambiguous { small, large }) = typed::decimal(&text) {
            prop_assert_eq!(large.millionths(), small.millionths() * 1000);
            prop_assert_eq!(typed::decimal(&text.replace(['.', ','], "")), Ok(large));
            prop_assert_eq!(typed::decimal(&text.replace(['.', ','], "٫")), Ok(small));
        }
    }

    #[test]
    fn point_and_comma_spaces_around_and_other_digits_change_nothing(text in texts()) {
        let swapped: String = text.chars().map(|c| match c { '.' => ',', ',' => '.', c => c }).collect();
        prop_assert_eq!(typed::decimal(&text), typed::decimal(&swapped));
        prop_assert_eq!(typed::share(&text), typed::share(&swapped));
        for zero in ['\u{660}', '\u{6f0}', '\u{ff10}'] {
            let other = in_script(&text, zero);
            prop_assert_eq!(typed::decimal(&text), typed::decimal(&other));
            prop_assert_eq!(typed::count_or_range(&text, 5000), typed::count_or_range(&other, 5000));
        }
        let padded = format!(" \u{200f}{text}\u{a0}");
        prop_assert_eq!(typed::decimal(&text), typed::decimal(&padded));
        prop_assert_eq!(typed::volume(&text, VolumeUnit::UsCup), typed::volume(&padded, VolumeUnit::UsCup));
    }

    #[test]
    fn hive_tags_are_each_once_within_the_cap_and_read_back_one_by_one(text in texts(), most in 1..500_usize) {
        if let Ok(tags) = typed::tags(&text, most) {
            prop_assert!((1..=most).contains(&tags.len()));
            let once: std::collections::BTreeSet<&String> = tags.iter().collect();
            prop_assert_eq!(once.len(), tags.len());
            prop_assert!(tags.iter().all(|tag| !tag.is_empty() && tag.trim() == tag));
            prop_assert_eq!(typed::tags(&tags.join(","), most), Ok(tags));
        }
    }
}

/// Every whole number a count field takes, in four ways of writing.
#[test]
fn every_count_comes_back() {
    for count in 0..=5000 {
        let text = count.to_string();
        assert_eq!(typed::count(&text, 0, 5000), Ok(count));
        assert_eq!(typed::count(&in_script(&text, '٠'), 0, 5000), Ok(count));
        assert_eq!(typed::count_or_range(&format!("{count}–5000"), 5000).map(CountRange::low), Ok(count));
        assert_eq!(
            typed::count_or_range(&format!("{count}+"), 5000).map(|r| (r.low(), r.high())),
            Ok((count, None))
        );
    }
}

/// Every tenth of a per cent, as a percentage; every hundredth, also as a fraction of 1 and as a quotient.
#[test]
fn every_share_comes_back() {
    for tenths in 0..=1000_u32 {
        let percent = Decimal::from_millionths(i64::from(tenths) * 100_000).unwrap();
        let read = typed::share(&format!("{percent} %")).map(Share::percent);
        assert_eq!(read, Ok(percent));
        let quotient = typed::share(&format!("{tenths}/1000")).map(Share::percent);
        assert_eq!(quotient, Ok(percent));
        if tenths < 1000 {
            let fraction = typed::share(&format!("0,{tenths:03}")).map(Share::percent);
            assert_eq!(fraction, Ok(percent));
        }
    }
    for over in 101..=2000 {
        assert_eq!(typed::share(&over.to_string()), Err(TypedError::OverFull));
    }
}

/// Every 64th of an inch up to a foot, as on a ruler.
#[test]
fn every_mark_of_a_ruler_comes_back() {
    for marks in 1..=12 * 64_u32 {
        let (inches, part) = (marks / 64, marks % 64);
        let text = match (inches, part) {
            (0, part) => format!("{part}/64"),
            (inches, 0) => inches.to_string(),
            (inches, part) => format!("{inches} {part}/64"),
        };
        let read = typed::length(&text, LengthUnit::Inch).map(|length| length.number().millionths());
        assert_eq!(read, Ok(i64::from(marks) * 15_625), "{text}");
    }
}
