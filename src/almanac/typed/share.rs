//! Shares of a whole, such as the level of oil.

use super::TypedError;
use super::fraction::{fraction, has_fraction};
use super::number::{number, plain};
use crate::almanac::quantity::{Decimal, Share};

/// A share: `50 %`, `50`, `.5`, `0,5`, `1/2`, `½`, `half`, `quarter`, `full`, `empty`.
///
/// A number below 1 with a decimal separator is a fraction, any other number a percentage.
///
/// # Errors
/// [`TypedError::Ambiguous`] for a bare `1`, which is all of it or a hundredth, and for a bare `1.500`, which nobody
/// writes who means one and a half per cent; [`TypedError::OverFull`] above 100 %;
/// [`TypedError::Negative`]; [`TypedError::Empty`], [`TypedError::NotANumber`].
pub fn share(text: &str) -> Result<Share, TypedError> {
    let plain = plain(text);
    for (word, share) in
        [("half", Share::HALF), ("quarter", Share::QUARTER), ("full", Share::FULL), ("empty", Share::NONE)]
    {
        if plain.eq_ignore_ascii_case(word) {
            return Ok(share);
        }
    }
    let percent = if has_fraction(&plain) {
        fraction(&plain, 100)
    } else if let Some(percent) = plain.strip_suffix('%') {
        // "%" alone is no empty field
        number(percent.trim_end()).map(|number| number.value).map_err(|error| match error {
            TypedError::Empty => TypedError::NotANumber,
            error => error,
        })
    } else {
        bare(&plain)
    };
    match percent {
        Ok(percent) if percent.is_negative() => Err(TypedError::Negative),
        Ok(percent) => Share::from_percent(percent).map_err(|_| TypedError::OverFull),
        Err(TypedError::TooMany { .. }) => Err(TypedError::OverFull),
        Err(TypedError::TooFew { .. }) => Err(TypedError::Negative),
        Err(error) => Err(error),
    }
}

/// A number without a sign that says what it is a share of.
fn bare(plain: &str) -> Result<Decimal, TypedError> {
    let number = number(plain)?;
    let one = Decimal::whole(1);
    if number.value == one {
        return Err(TypedError::Ambiguous { small: one, large: Decimal::whole(100) });
    }
    if let Some(large) = number.grouped.filter(|_| !number.value.is_negative()) {
        return Err(TypedError::Ambiguous { small: number.value, large });
    }
    // Between 0 and 1 no number can be written without a separator.
    if number.value < one && !number.value.is_negative() {
        return Decimal::from_millionths(number.value.millionths() * 100).map_err(|_| TypedError::OverFull);
    }
    Ok(number.value)
}

#[cfg(test)]
mod tests {
    use super::share;
    use crate::almanac::quantity::{Decimal, Share};
    use crate::almanac::typed::TypedError;

    fn percent(value: f64) -> Share {
        Decimal::from_f64(value).and_then(Share::from_percent).unwrap_or_default()
    }

    #[test]
    fn keeper_types_half_in_nine_ways_and_all_are_50_percent() {
        for text in [
            "1/2", "½", "50 %", "50%", "50", ".5", "0.5", "0,50", "half", "Half", "٥٠٪", "2/4", "0.500",
            "1⁄2",
        ] {
            assert_eq!(share(text), Ok(Share::HALF), "{text}");
        }
    }

    #[test]
    fn keeper_types_other_shares() {
        for (text, value) in [
            ("¼", 25.0),
            ("¾", 75.0),
            ("quarter", 25.0),
            ("full", 100.0),
            ("EMPTY", 0.0),
            ("0", 0.0),
            ("0.0", 0.0),
            ("100", 100.0),
            ("1 %", 1.0),
            ("0.5 %", 0.5),
            ("1.5", 1.5),
            ("12.50", 12.5),
            ("12.500 %", 12.5),
            ("0.001", 0.1),
            ("1/3", 33.333_333),
            ("2/3", 66.666_667),
            ("1/1", 100.0),
        ] {
            assert_eq!(share(text), Ok(percent(value)), "{text}");
        }
    }

    #[test]
    fn keeper_types_1_and_is_asked_whether_all_or_a_hundredth() {
        let asked = TypedError::Ambiguous { small: Decimal::whole(1), large: Decimal::whole(100) };
        for text in ["1", "1.0", "1,", "١"] {
            assert_eq!(share(text), Err(asked), "{text}");
        }
        for (text, small, large) in [("1.500", 1.5, 1500.0), ("12,500", 12.5, 12_500.0)] {
            let decimal = |value| Decimal::from_f64(value).unwrap_or_default();
            let asked = TypedError::Ambiguous { small: decimal(small), large: decimal(large) };
            assert_eq!(share(text), Err(asked), "{text}");
        }
    }

    #[test]
    fn keeper_overfills_or_types_less_than_nothing_and_is_refused() {
        for text in ["101", "100.000001", "150 %", "3/2", "1 ½", "1.500.0", "99999999999", "1 000"] {
            let refused = if text == "1.500.0" { TypedError::NotANumber } else { TypedError::OverFull };
            assert_eq!(share(text), Err(refused), "{text}");
        }
        for text in ["-1", "-0.5", "-1/2", "-5 %", "\u{2212}1"] {
            assert_eq!(share(text), Err(TypedError::Negative), "{text}");
        }
        for text in ["%", "half full", "1/0", "/", "1/2/3", "50 %%"] {
            assert_eq!(share(text), Err(TypedError::NotANumber), "{text}");
        }
        assert_eq!(share("  "), Err(TypedError::Empty));
    }
}
