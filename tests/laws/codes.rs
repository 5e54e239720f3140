//! Camera codes: what is shown is what is read, in whatever order, and what was damaged is refused.

use beetle_almanac::papers::codes::{Added, BYTES, CodeError, MOST, Packed, Run, read, symbol, write};
use proptest::prelude::*;

/// Bytes that look like what a packer makes: no two alike in a row of many.
fn bytes(length: usize) -> Vec<u8> {
    let mut state = 0x9e37_79b9_u32 ^ u32::try_from(length).unwrap();
    let mut next = || {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        state.to_be_bytes()[0]
    };
    (0..length).map(|_| next()).collect()
}

/// The text in a symbol, as a decoder that knows nothing of this page reads it from a picture of `scale` pixels a module.
fn seen(text: &str, scale: usize) -> String {
    let symbol = symbol(text).unwrap();
    let side = usize::try_from(symbol.side).unwrap();
    let mut dark = vec![false; side * side];
    for run in symbol.path.split('M').skip(1) {
        let numbers: Vec<usize> =
            run.split([' ', 'h', 'v', '-', 'z']).filter_map(|number| number.parse().ok()).collect();
        let [x, y, width, 1, back] = numbers[..] else { panic!("{run}") };
        assert_eq!(width, back);
        for at in x..x + width {
            dark[y * side + at] = true;
        }
    }
    let shade = |x: usize, y: usize| if dark[y / scale * side + x / scale] { 0 } else { 255 };
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side * scale, side * scale, shade);
    let grids = picture.detect_grids();
    assert_eq!(grids.len(), 1, "one symbol in the picture");
    let (about, content) = grids[0].decode().unwrap();
    // 0 is level M, and better ones are 3 and 2 (ISO/IEC 18004, table 12).
    assert!(matches!(about.ecc_level, 0 | 2 | 3), "{about:?}");
    content
}

#[test]
fn another_decoder_reads_every_symbol_of_runs_of_many_lengths() {
    let lengths = (1..12).chain((12..=BYTES).step_by(49)).chain([BYTES - 1, BYTES, BYTES + 1, 1777, 2400]);
    for length in lengths {
        for text in write(&bytes(length), Packed::Deflated).unwrap() {
            assert_eq!(seen(&text, 3), text);
        }
    }
}

/// The narrowest phone is 320 px wide and has two pixels to each at least: a module is two of them or more.
#[test]
fn no_symbol_has_more_modules_than_the_narrowest_phone_shows() {
    for length in 1..=BYTES {
        let texts = write(&bytes(length), Packed::No).unwrap();
        assert_eq!(texts.len(), 1);
        assert!(symbol(&texts[0]).unwrap().side <= 105);
    }
}

#[test]
fn a_run_has_a_bound() {
    assert_eq!(write(&[], Packed::No), None);
    assert_eq!(write(&bytes(BYTES * MOST), Packed::No).unwrap().len(), MOST);
    assert_eq!(write(&bytes(BYTES * MOST + 1), Packed::No), None);
    assert_eq!(symbol("small letters"), None);
    assert_eq!(symbol(&"A".repeat(5000)), None);
}

#[test]
fn every_letter_changed_or_cut_off_is_noticed() {
    for text in write(&bytes(700), Packed::Deflated).unwrap() {
        let whole = read(&text).unwrap();
        assert_eq!(read(&format!("  {text}\r\n")).as_ref(), Ok(&whole), "blanks around it are no damage");
        for at in 0..text.len() {
            assert!(read(&text[..at]).is_err(), "cut off at {at}");
            for letter in "09AZ $:%az\u{e4}".chars().filter(|letter| !text[at..].starts_with(*letter)) {
                let changed = format!("{}{letter}{}", &text[..at], &text[at + 1..]);
                assert!(read(&changed).is_err(), "{letter:?} at {at}");
            }
        }
    }
}

#[test]
fn what_is_no_code_is_named() {
    let text = write(b"x", Packed::No).unwrap().remove(0);
    assert_eq!(read(&text.replacen("BH1", "BH2", 1)), Err(CodeError::Newer));
    assert_eq!(read(&text.replacen("BH1", "BH0", 1)), Err(CodeError::NotOurs));
    assert_eq!(read(&text[..text.len() - 1]), Err(CodeError::Damaged));
    for text in ["", "B", "BH", "https://example.org", "BHÄ", "\u{1f41d}\u{1f41d}"] {
        assert_eq!(read(text), Err(CodeError::NotOurs), "{text}");
    }
    for text in ["BH1", "BH1Z0101", "BH1Ä"] {
        assert_eq!(read(text), Err(CodeError::Damaged), "{text}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn codes_read_in_any_order_and_more_than_once_are_what_was_shown(
        length in 1..6000_usize, order in Just((0..20_usize).collect::<Vec<_>>()).prop_shuffle(), again in any::<bool>(),
    ) {
        let bytes = bytes(length);
        let packed = if again { Packed::Deflated } else { Packed::No };
        let texts = write(&bytes, packed).unwrap();
        let mut run = Run::default();
        for at in order.into_iter().filter(|at| *at < texts.len()) {
            let code = read(&texts[at]).unwrap();
            prop_assert_eq!(run.whole(), None);
            prop_assert_eq!(run.add(code.clone()), Added::New);
            prop_assert_eq!(run.add(code), Added::Known);
            prop_assert_eq!(run.count().0 + run.missing().len(), texts.len());
        }
        prop_assert_eq!(run.whole(), Some((packed, bytes.clone())));
        // One code of another run is named and changes nothing.
        let before = run.clone();
        let other = read(&write(&[&bytes[..], &[0]].concat(), packed).unwrap()[0]).unwrap();
        prop_assert_eq!(run.add(other), Added::OtherRun);
        prop_assert_eq!(run, before);
    }

    #[test]
    fn any_text_given_as_a_code_is_answered(text in "(BH1)?[ZP]?[0-9]{0,4}.{0,40}") {
        prop_assert!(read(&text).is_err());
    }
}
