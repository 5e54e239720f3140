//! Fractions: on rulers, on cups, and in "half full".

use super::TypedError;
use super::number::bounded;
use crate::almanac::quantity::Decimal;

const VULGAR: [(char, i64, i64); 15] = [
    ('½', 1, 2),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
];

/// The text holds a fraction, as a slash or as one character.
pub(super) fn has_fraction(plain: &str) -> bool {
    plain.chars().any(|c| c == '/' || VULGAR.iter().any(|(vulgar, ..)| *vulgar == c))
}

/// Reads `3/8`, `⅜`, `2 3/8`, `2-3/8` or `2⅜` and multiplies it by `scale`; the answer is in millionths, rounded half
/// up.
pub(super) fn fraction(plain: &str, scale: i64) -> Result<Decimal, TypedError> {
    if plain.starts_with('-') {
        return Err(TypedError::Negative);
    }
    let (whole, (above, below)) = if let Some(parts) = vulgar(plain) {
        parts
    } else {
        let (whole, last) = plain.rsplit_once([' ', '-']).unwrap_or(("", plain));
        let (above, below) = last.split_once('/').ok_or(TypedError::NotANumber)?;
        (whole, (small(above)?, small(below)?))
    };
    let whole = match whole.trim_end_matches([' ', '-']) {
        "" => 0,
        whole if above < below => small(whole)?,
        _ => return Err(TypedError::NotANumber),
    };
    if below == 0 {
        return Err(TypedError::NotANumber);
    }
    // Six figures in each part and a scale of at most 100: none of these products passes 10¹⁵.
    let parts = 2 * above * scale * 1_000_000 + below;
    bounded(whole * scale * 1_000_000 + parts / (2 * below))
}

/// What stands before a fraction in one character, and its two parts.
fn vulgar(plain: &str) -> Option<(&str, (i64, i64))> {
    VULGAR
        .iter()
        .find_map(|(character, above, below)| Some((plain.strip_suffix(*character)?, (*above, *below))))
}

/// A whole number of one to six digits.
fn small(digits: &str) -> Result<i64, TypedError> {
    if (1..=6).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit()) {
        digits.parse().map_err(|_| TypedError::NotANumber)
    } else {
        Err(TypedError::NotANumber)
    }
}

#[cfg(test)]
mod tests {
    use super::fraction;
    use crate::almanac::quantity::Decimal;
    use crate::almanac::typed::TypedError;

    #[test]
    fn a_fraction_is_read_with_or_without_a_whole_number_before_it() {
        for (text, millionths) in [
            ("3/8", 375_000),
            ("⅜", 375_000),
            ("2 3/8", 2_375_000),
            ("2-3/8", 2_375_000),
            ("2⅜", 2_375_000),
            ("2 ⅜", 2_375_000),
            ("3/2", 1_500_000),
            ("0/5", 0),
            ("2/3", 666_667),
            ("999999/1", 999_999_000_000),
        ] {
            assert_eq!(fraction(text, 1).map(Decimal::millionths), Ok(millionths), "{text}");
        }
    }

    #[test]
    fn what_is_no_fraction_is_refused() {
        for text in
            ["1/0", "½½", "2 9/8", "1/2/3", "/", "1/", "/2", "a/2", "1 2 3/4", "1000000/1", "2--3/8x", "1/-2"]
        {
            assert_eq!(fraction(text, 1), Err(TypedError::NotANumber), "{text}");
        }
        assert_eq!(fraction("-1/2", 1), Err(TypedError::Negative));
    }
}
