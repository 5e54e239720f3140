//! Plain numbers and counts.

use super::TypedError;
use super::fraction::{fraction, has_fraction};
use crate::almanac::quantity::{Decimal, QuantityError};
use crate::almanac::tally::CountRange;

/// Decimals that a [`Decimal`] keeps.
const PLACES: usize = 6;
/// The largest number a [`Decimal`] holds.
const LARGEST: u32 = 1_000_000_000;

/// The text as one keyboard would have typed it: Arabic-Indic, Persian and full-width digits as 0–9, every minus as
/// `-`, every space and the Arabic thousands mark as one space, other slashes and percent signs as the plain ones;
/// without marks of writing direction, without space at the ends.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        let c = match c {
            '\u{200b}'
            | '\u{200e}'
            | '\u{200f}'
            | '\u{61c}'
            | '\u{202a}'..='\u{202e}'
            | '\u{2066}'..='\u{2069}'
            | '\u{feff}' => continue,
            '\u{660}'..='\u{669}' => digit(c, '\u{660}'),
            '\u{6f0}'..='\u{6f9}' => digit(c, '\u{6f0}'),
            '\u{ff10}'..='\u{ff19}' => digit(c, '\u{ff10}'),
            '\u{2212}' | '\u{ff0d}' => '-',
            '\u{66c}' => ' ',
            '\u{66a}' | '\u{ff05}' => '%',
            '\u{2044}' | '\u{2215}' => '/',
            c if c.is_whitespace() => ' ',
            c => c,
        };
        if c != ' ' || !plain.ends_with(' ') {
            plain.push(c);
        }
    }
    plain.trim().to_owned()
}

fn digit(c: char, zero: char) -> char {
    char::from_digit(u32::from(c).wrapping_sub(u32::from(zero)), 10).unwrap_or(c)
}

/// A number and how it was written.
pub(super) struct Number {
    pub(super) value: Decimal,
    /// The other reading, in which the separator marks thousands.
    pub(super) grouped: Option<Decimal>,
}

impl Number {
    /// The value, when there is only one reading.
    pub(super) fn sure(self) -> Result<Decimal, TypedError> {
        match self.grouped {
            None => Ok(self.value),
            Some(large) => Err(TypedError::Ambiguous { small: self.value, large }),
        }
    }
}

/// Reads digits, spaces between thousands, one decimal separator and a minus in front of a [`plain`] text.
pub(super) fn number(plain: &str) -> Result<Number, TypedError> {
    if plain.is_empty() {
        return Err(TypedError::Empty);
    }
    if has_fraction(plain) {
        return Err(TypedError::Fraction);
    }
    let (negative, digits) = match plain.strip_prefix('-') {
        Some(rest) => (true, rest.trim_start()),
        None => (false, plain),
    };
    let separator = |c| matches!(c, '.' | ',' | '\u{66b}');
    let (whole, point, decimals) = match digits.find(separator) {
        Some(at) => {
            let (whole, rest) = digits.split_at_checked(at).unwrap_or((digits, ""));
            let mut rest = rest.chars();
            let point = rest.next();
            (whole, point, rest.as_str())
        }
        None => (digits, None, ""),
    };
    if !decimals.bytes().all(|b| b.is_ascii_digit()) || whole.is_empty() && decimals.is_empty() {
        return Err(TypedError::NotANumber);
    }
    let whole_digits = ungrouped(whole)?;
    let value = millionths(&whole_digits, decimals, negative)?;
    // ٫ is nowhere a mark between thousands, and no group of thousands begins with 0.
    let two_readings = point.is_some_and(|c| c != '\u{66b}')
        && decimals.len() == 3
        && (1..=3).contains(&whole.len())
        && !whole.starts_with('0');
    let grouped =
        if two_readings { Some(millionths(&[whole, decimals].concat(), "", negative)?) } else { None };
    Ok(Number { value, grouped })
}

/// The digits of a whole number that may be written in groups of three with spaces between.
fn ungrouped(whole: &str) -> Result<String, TypedError> {
    let mut digits = String::with_capacity(whole.len());
    let grouped = whole.contains(' ');
    for (index, group) in whole.split(' ').enumerate() {
        let fits = match (grouped, index) {
            (false, _) => true,
            (true, 0) => (1..=3).contains(&group.len()) && !group.starts_with('0'),
            (true, _) => group.len() == 3,
        };
        if !fits || !group.bytes().all(|b| b.is_ascii_digit()) {
            return Err(TypedError::NotANumber);
        }
        digits.push_str(group);
    }
    Ok(digits)
}

/// `whole.decimals`, rounded to six decimals, half away from 0.
fn millionths(whole: &str, decimals: &str, negative: bool) -> Result<Decimal, TypedError> {
    let figures = decimals.bytes().chain(std::iter::repeat(b'0')).take(PLACES);
    let mut value: i64 = 0;
    for figure in whole.bytes().chain(figures) {
        value = value.saturating_mul(10).saturating_add(i64::from(figure - b'0'));
    }
    if decimals.as_bytes().get(PLACES).is_some_and(|figure| *figure >= b'5') {
        value = value.saturating_add(1);
    }
    bounded(if negative { -value } else { value })
}

/// A [`Decimal`], or the bound it breaks.
pub(super) fn bounded(millionths: i64) -> Result<Decimal, TypedError> {
    let largest = Decimal::whole(LARGEST);
    Decimal::from_millionths(millionths).map_err(|error| match error {
        QuantityError::TooSmall => {
            let least = Decimal::from_millionths(-largest.millionths()).unwrap_or_default();
            TypedError::TooFew { least }
        }
        _ => TypedError::TooMany { most: largest },
    })
}

/// The number, when it is not below 0 and has one reading.
pub(super) fn not_negative(number: Number) -> Result<Decimal, TypedError> {
    if number.value.is_negative() { Err(TypedError::Negative) } else { number.sure() }
}

/// A number with one decimal separator, point or comma: `1,5`, `1.5`, `.5`, `1 500`, `−3`, or a fraction: `½`, `1/2`,
/// `2 3/8`. More than six decimals are rounded.
///
/// # Errors
/// [`TypedError::Empty`], [`TypedError::NotANumber`] (also for two separators), [`TypedError::Negative`] for a fraction,
/// [`TypedError::Ambiguous`] for one to three digits, a separator, and exactly three digits; [`TypedError::TooMany`]
/// and [`TypedError::TooFew`] beyond ±10⁹.
pub fn decimal(text: &str) -> Result<Decimal, TypedError> {
    let plain = plain(text);
    if has_fraction(&plain) { fraction(&plain, 1) } else { number(&plain)?.sure() }
}

/// A whole number from `least` to `most`.
///
/// # Errors
/// As [`decimal`], and [`TypedError::Fraction`], [`TypedError::NotWhole`], [`TypedError::TooFew`],
/// [`TypedError::TooMany`] with the bounds of this field; [`TypedError::Negative`] where the least is 0.
pub fn count(text: &str, least: u32, most: u32) -> Result<u32, TypedError> {
    whole(&plain(text), least, most)
}

fn whole(plain: &str, least: u32, most: u32) -> Result<u32, TypedError> {
    let too_many = TypedError::TooMany { most: Decimal::whole(most) };
    let below = match least {
        0 => TypedError::Negative,
        _ => TypedError::TooFew { least: Decimal::whole(least) },
    };
    let value = match number(plain) {
        Ok(number) if number.value.is_negative() => return Err(below),
        Ok(number) => number.sure()?,
        Err(TypedError::TooMany { .. }) => return Err(too_many),
        Err(TypedError::TooFew { .. }) => return Err(below),
        Err(error) => return Err(error),
    };
    let parts = Decimal::whole(1).millionths();
    if value.millionths() % parts != 0 {
        return Err(TypedError::NotWhole);
    }
    match u32::try_from(value.millionths() / parts) {
        Ok(count) if count > most => Err(too_many),
        Ok(count) if count < least => Err(below),
        Ok(count) => Ok(count),
        Err(_) => Err(too_many),
    }
}

/// A count, exact or as a range: `12`, `5-19`, `5–19`, `50+`.
///
/// # Errors
/// As [`count`] for each end; [`TypedError::TooFew`] with the lower end when the upper one lies below it.
pub fn count_or_range(text: &str, most: u32) -> Result<CountRange, TypedError> {
    let plain = plain(text);
    let end = |part: &str, least| match whole(part.trim(), least, most) {
        Err(TypedError::Empty) => Err(TypedError::NotANumber),
        read => read,
    };
    let range = |low, high| CountRange::new(low, high).map_err(|_| TypedError::NotANumber);
    if plain.is_empty() {
        return Err(TypedError::Empty);
    }
    if let Some(low) = plain.strip_suffix('+') {
        return range(end(low, 0)?, None);
    }
    match plain.char_indices().skip(1).find(|(_, c)| is_dash(*c)) {
        Some((at, dash)) => {
            let (low, high) = plain.split_at_checked(at).unwrap_or((&plain, ""));
            let low = end(low, 0)?;
            range(low, Some(end(high.trim_start_matches(dash), low)?))
        }
        None => end(&plain, 0).map(CountRange::exact),
    }
}

/// Hyphen, its relatives, and the two dashes.
pub(super) fn is_dash(c: char) -> bool {
    matches!(c, '-' | '\u{2010}'..='\u{2014}' | '\u{2212}')
}

#[cfg(test)]
mod tests {
    use super::{TypedError, count, count_or_range, decimal};
    use crate::almanac::quantity::Decimal;
    use crate::almanac::tally::CountRange;

    fn number(value: f64) -> Decimal {
        Decimal::from_f64(value).unwrap_or_default()
    }

    #[test]
    fn keeper_types_a_decimal_comma_or_point_and_both_are_the_same_number() {
        for (text, value) in [
            ("1,5", 1.5),
            ("1.5", 1.5),
            (" .5 ", 0.5),
            (",5", 0.5),
            ("5.", 5.0),
            ("0.500", 0.5),
            ("0,125", 0.125),
            ("1500.250", 1500.25),
            ("1 500", 1500.0),
            ("1\u{a0}500,25", 1500.25),
            ("12\u{202f}345\u{202f}678", 12_345_678.0),
            ("-3", -3.0),
            ("\u{2212}3,25", -3.25),
            ("007", 7.0),
            ("0.000001", 0.000_001),
            ("0.0000005", 0.000_001),
            ("1000000000", 1e9),
        ] {
            assert_eq!(decimal(text), Ok(number(value)), "{text}");
        }
    }

    #[test]
    fn keeper_types_arabic_or_persian_digits_and_they_are_read() {
        for (text, value) in [
            ("١٢", 12.0),
            ("۱۲٫۵", 12.5),
            ("١٫٥٠٠", 1.5),
            ("١٬٥٠٠", 1500.0),
            ("\u{200f}٧\u{200e}", 7.0),
            ("１２", 12.0),
        ] {
            assert_eq!(decimal(text), Ok(number(value)), "{text}");
        }
    }

    #[test]
    fn keeper_types_a_fraction_and_it_is_a_number() {
        for (text, value) in
            [("½", 0.5), ("¼", 0.25), ("¾", 0.75), ("1/2", 0.5), ("2 ½", 2.5), ("2 3/8", 2.375)]
        {
            assert_eq!(decimal(text), Ok(number(value)), "{text}");
        }
        assert_eq!(decimal("-½"), Err(TypedError::Negative));
        assert_eq!(decimal("1/0"), Err(TypedError::NotANumber));
    }

    #[test]
    fn keeper_types_oil_as_1_500_and_is_asked_which() {
        for (text, small, large) in [
            ("1.500", 1.5, 1500.0),
            ("1,500", 1.5, 1500.0),
            ("123.456", 123.456, 123_456.0),
            ("١.٥٠٠", 1.5, 1500.0),
        ] {
            let asked = TypedError::Ambiguous { small: number(small), large: number(large) };
            assert_eq!(decimal(text), Err(asked), "{text}");
        }
    }

    #[test]
    fn keeper_types_two_separators_or_words_and_is_refused() {
        for text in [
            "1.500,25",
            "1,500.25",
            "1.500.000",
            "1..5",
            "1 5",
            "1 50",
            "0 500",
            "1234 567",
            "12a",
            "a",
            ".",
            "-",
            "--1",
            "1-",
            "+5",
            "1e5",
            "1.5 00",
            "NaN",
            "inf",
            "½a",
        ] {
            assert!(
                matches!(decimal(text), Err(TypedError::NotANumber | TypedError::Fraction)),
                "{text}: {:?}",
                decimal(text)
            );
        }
        assert_eq!(decimal(" \u{200f} "), Err(TypedError::Empty));
        assert_eq!(decimal("1000000000.1"), Err(TypedError::TooMany { most: number(1e9) }));
        assert_eq!(decimal(&"9".repeat(400)), Err(TypedError::TooMany { most: number(1e9) }));
        assert_eq!(decimal("-2000000000"), Err(TypedError::TooFew { least: number(-1e9) }));
    }

    #[test]
    fn keeper_types_a_negative_count_and_is_told_0_or_more() {
        for text in ["-1", "\u{2212}12", "-0.5", "-1.500", "-9999999999"] {
            assert_eq!(count(text, 0, 10), Err(TypedError::Negative), "{text}");
        }
        assert_eq!(count("-0", 0, 10), Ok(0));
        for text in ["-1", "-9999999999", "0"] {
            assert_eq!(count(text, 1, 10), Err(TypedError::TooFew { least: number(1.0) }), "{text}");
        }
    }

    #[test]
    fn keeper_types_half_a_trap_and_is_refused() {
        for text in ["1/2", "½", "1 ½"] {
            assert_eq!(count(text, 0, 10), Err(TypedError::Fraction), "{text}");
        }
        assert_eq!(count("1.5", 0, 10), Err(TypedError::NotWhole));
        assert_eq!(count("half", 0, 10), Err(TypedError::NotANumber));
        assert_eq!(count("50 %", 0, 100), Err(TypedError::NotANumber));
        assert_eq!(count("2.0", 0, 10), Ok(2));
        assert!(matches!(count("2.000", 0, 10_000), Err(TypedError::Ambiguous { .. })));
    }

    #[test]
    fn keeper_types_0_hives_or_1000_and_the_bounds_answer() {
        assert_eq!(count("0", 0, 500), Ok(0));
        assert_eq!(count("0", 1, 120), Err(TypedError::TooFew { least: number(1.0) }));
        assert_eq!(count("999", 1, 120), Err(TypedError::TooMany { most: number(120.0) }));
        assert_eq!(count("1 000", 0, 500), Err(TypedError::TooMany { most: number(500.0) }));
        assert_eq!(count("99999999999", 0, 500), Err(TypedError::TooMany { most: number(500.0) }));
        assert_eq!(count("4294967296", 0, u32::MAX).ok(), None);
        assert_eq!(count("", 0, 500), Err(TypedError::Empty));
    }

    #[test]
    fn keeper_counts_beetles_in_ranges() {
        let range = |low, high| CountRange::new(low, high).ok();
        for (text, low, high) in [
            ("12", 12, Some(12)),
            ("5-19", 5, Some(19)),
            ("5–19", 5, Some(19)),
            ("5 — 19", 5, Some(19)),
            ("5\u{2212}19", 5, Some(19)),
            ("7-7", 7, Some(7)),
            ("50+", 50, None),
            ("50 +", 50, None),
            ("٥–١٩", 5, Some(19)),
            ("0", 0, Some(0)),
        ] {
            assert_eq!(count_or_range(text, 5000).ok(), range(low, high), "{text}");
        }
        for (text, error) in [
            ("", TypedError::Empty),
            ("-5", TypedError::Negative),
            ("-5-3", TypedError::Negative),
            ("5-", TypedError::NotANumber),
            ("+", TypedError::NotANumber),
            ("+50", TypedError::NotANumber),
            ("–5", TypedError::NotANumber),
            ("5-19-20", TypedError::NotANumber),
            ("19-5", TypedError::TooFew { least: number(19.0) }),
            ("1/2", TypedError::Fraction),
            ("5-6000", TypedError::TooMany { most: number(5000.0) }),
            ("6000+", TypedError::TooMany { most: number(5000.0) }),
        ] {
            assert_eq!(count_or_range(text, 5000), Err(error), "{text}");
        }
    }
}
