//! Typed texts of the Bench as values. An empty field that may stay empty is no value and no error.

use crate::almanac::quantity::{Decimal, Length, LengthUnit, Share, TypedLength, TypedVolume};
use crate::almanac::typed::{self, TypedError};
use crate::app::prefs::{self, WarmthUnit};

/// Most hives in one yard. Every screen is tested up to here.
pub const MOST_HIVES: u32 = 500;
/// Most boxes with traps on one hive.
pub const MOST_BOXES: u32 = 10;
/// Most traps a full-size box has room for.
pub const MOST_TRAPS_A_BOX: u32 = 18;
/// Most pieces one order is reckoned for.
pub const MOST_PIECES: u32 = 20_000;
/// Most beetles anyone counts in one trap.
pub const MOST_BODIES: u32 = 100_000;

/// A volume from the text and the code of the unit beside it.
///
/// # Errors
/// As [`typed::volume`].
pub fn volume(text: &str, unit: &str) -> Result<TypedVolume, TypedError> {
    let (unit, times) = prefs::measure(unit);
    typed::volume_of(text, unit, times)
}

/// A length from the text and the code of the unit beside it.
///
/// # Errors
/// As [`typed::length`].
pub fn length(text: &str, unit: &str) -> Result<TypedLength, TypedError> {
    typed::length(text, prefs::length_unit(unit))
}

/// As [`length`], of more than 0.
///
/// # Errors
/// As [`length`], and [`TypedError::TooFew`] for nothing.
pub fn side(text: &str, unit: &str) -> Result<TypedLength, TypedError> {
    let side = length(text, unit)?;
    if side.number() == Decimal::ZERO { Err(TypedError::TooFew { least: Decimal::ZERO }) } else { Ok(side) }
}

/// As [`volume`], of more than 0.
///
/// # Errors
/// As [`volume`], and [`TypedError::TooFew`] for nothing.
pub fn holds(text: &str, unit: &str) -> Result<TypedVolume, TypedError> {
    let holds = volume(text, unit)?;
    if holds.number() == Decimal::ZERO { Err(TypedError::TooFew { least: Decimal::ZERO }) } else { Ok(holds) }
}

/// A number of 0 or more.
///
/// # Errors
/// As [`typed::decimal`], and [`TypedError::Negative`].
pub fn positive(text: &str) -> Result<Decimal, TypedError> {
    let number = typed::decimal(text)?;
    if number.is_negative() { Err(TypedError::Negative) } else { Ok(number) }
}

/// As [`positive`], of more than 0.
///
/// # Errors
/// As [`positive`], and [`TypedError::TooFew`] for nothing.
pub fn more(text: &str) -> Result<Decimal, TypedError> {
    let number = positive(text)?;
    if number == Decimal::ZERO { Err(TypedError::TooFew { least: Decimal::ZERO }) } else { Ok(number) }
}

/// A share, or a span of two: "20 %", "10–25 %", "10 % to 25 %".
///
/// # Errors
/// As [`typed::share`], of either end; [`TypedError::TooFew`] where the second lies below the first, as in a range of a count.
pub fn shares(text: &str) -> Result<(Share, Share), TypedError> {
    let ends = text.split_once(['–', '—', '-']).or_else(|| text.split_once(" to "));
    let Some((least, most)) = ends.filter(|(least, _)| !least.trim().is_empty()) else {
        return typed::share(text).map(|share| (share, share));
    };
    // The sign behind the second is meant for both.
    let least = least.trim();
    let both = most.contains('%') && !least.ends_with('%');
    let least = if both { typed::share(&[least, " %"].concat()) } else { typed::share(least) }?;
    let most = typed::share(most).map_err(|error| match error {
        TypedError::Empty => TypedError::NotANumber,
        error => error,
    })?;
    if most < least { Err(TypedError::TooFew { least: least.percent() }) } else { Ok((least, most)) }
}

/// Millimetres in the unit with this code.
pub fn way_unit(unit: &str) -> f64 {
    match unit {
        "cm" => 10.0,
        "in" => 25.4,
        "ft" => 304.8,
        _ => 1000.0,
    }
}

/// A way in a yard, or a side of a hive: by the unit beside it, or by the millimetres, centimetres or inches behind the number.
///
/// # Errors
/// As [`positive`], and as [`typed::length`] where there is more than a number.
pub fn way(text: &str, unit: &str) -> Result<Length, TypedError> {
    match positive(text) {
        Err(TypedError::NotANumber) => Ok(typed::length(text, LengthUnit::Millimetre)?.length()),
        // Kept finite: no typed number is above 10⁹.
        number => Ok(Length::from_millimetres(number?.as_f64() * way_unit(unit)).unwrap_or_default()),
    }
}

/// Frames, in parts too: 7.5 are seven combs and one side.
///
/// # Errors
/// As [`positive`], and [`TypedError::TooMany`].
pub fn frames(text: &str, most: u32) -> Result<Decimal, TypedError> {
    let (frames, most) = (positive(text)?, Decimal::whole(most));
    if frames > most { Err(TypedError::TooMany { most }) } else { Ok(frames) }
}

/// As [`way`], of more than 0.
///
/// # Errors
/// As [`way`], and [`TypedError::TooFew`] for nothing.
pub fn far(text: &str, unit: &str) -> Result<Length, TypedError> {
    let far = way(text, unit)?;
    if far.millimetres() > 0.0 { Ok(far) } else { Err(TypedError::TooFew { least: Decimal::ZERO }) }
}

/// Temperatures above this, in °C, are asked about: no soil, comb or room that beetles live in is as warm (our
/// judgement), and many a number above it is one of °F.
const WARMEST: f64 = 60.0;
/// Temperatures below this, in °C, are a slip (our judgement).
const COLDEST: i64 = -60;

/// A temperature in °C from the text and the code of the unit beside it.
///
/// # Errors
/// As [`typed::decimal`]; [`TypedError::TooWarm`] and [`TypedError::TooFew`] for what nobody measures in a yard.
pub fn warmth(text: &str, unit: &str) -> Result<f64, TypedError> {
    let plain = text.trim();
    let bare = |mark: char| {
        let plain = plain.strip_suffix([mark, mark.to_ascii_lowercase()])?;
        Some(plain.trim_end().strip_suffix('°').unwrap_or(plain).trim_end())
    };
    let (digits, fahrenheit) = match (bare('C'), bare('F')) {
        (Some(digits), _) => (digits, false),
        (_, Some(digits)) => (digits, true),
        _ => (plain.strip_suffix('°').unwrap_or(plain), unit == WarmthUnit::Fahrenheit.code()),
    };
    let number = typed::decimal(digits)?;
    let degrees = number.as_f64();
    let celsius = if fahrenheit { (degrees - 32.0) / 1.8 } else { degrees };
    if celsius > WARMEST {
        return Err(TypedError::TooWarm { typed: number, fahrenheit });
    }
    let least = if fahrenheit { COLDEST * 9 / 5 + 32 } else { COLDEST };
    if number.millionths() < least * 1_000_000 {
        let least = Decimal::from_millionths(least * 1_000_000).unwrap_or(Decimal::ZERO);
        return Err(TypedError::TooFew { least });
    }
    Ok(celsius)
}

/// Leaves out a field that may stay empty.
///
/// # Errors
/// Everything but emptiness.
pub fn maybe<T>(read: Result<T, TypedError>) -> Result<Option<T>, TypedError> {
    match read {
        Ok(value) => Ok(Some(value)),
        Err(TypedError::Empty) => Ok(None),
        Err(error) => Err(error),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_temperature_goes_by_its_own_unit_or_the_one_beside_it() {
        for (text, unit, celsius) in [
            ("26", "C", 26.0),
            ("79", "F", 26.1),
            ("-4 °C", "F", -4.0),
            ("95f", "C", 35.0),
            ("14,4°", "F", -9.8),
        ] {
            let read = warmth(text, unit).unwrap();
            assert!((read - celsius).abs() < 0.06, "{text} {unit}: {read}");
        }
    }

    #[test]
    fn a_way_goes_by_metre_and_foot_or_by_what_stands_behind_it() {
        for (text, unit, millimetres) in [
            ("0,9", "m", 900.0),
            ("3", "ft", 914.4),
            ("60 cm", "m", 600.0),
            ("24 in", "ft", 609.6),
            ("42", "cm", 420.0),
        ] {
            let read = way(text, unit).unwrap();
            assert!((read.millimetres() - millimetres).abs() < 1e-9, "{text} {unit}");
        }
        assert_eq!(way("", "m"), Err(TypedError::Empty));
        assert_eq!(way("-1", "m"), Err(TypedError::Negative));
        assert!(way("far", "m").is_err() && way("2 m", "ft").is_err());
    }

    #[test]
    fn keeper_types_95_where_degrees_celsius_are_asked() {
        let error = warmth("95", "C").unwrap_err();
        let said = crate::app::wording::en_typed::number(error);
        assert_eq!(said, "95 °C? Did you mean 95 °F (35 °C)? Choose °F beside it.");
        assert!(warmth("95", "F").is_ok());
        assert!(matches!(warmth("200", "F"), Err(TypedError::TooWarm { fahrenheit: true, .. })));
        assert!(matches!(warmth("-80", "C"), Err(TypedError::TooFew { .. })));
        assert!(warmth("warm", "C").is_err());
    }
}
