//! Typed texts of the Bench as values. An empty field that may stay empty is no value and no error.

use crate::almanac::quantity::{Decimal, TypedLength, TypedVolume};
use crate::almanac::typed::{self, TypedError};
use crate::app::prefs;

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
