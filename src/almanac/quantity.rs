//! Numbers as they were typed, and the volumes, lengths and shares they stand for.
//!
//! What the keeper typed (number and unit) is what is stored; sums run in millilitres and millimetres; a number
//! is rounded once, where it is shown.

mod decimal;
mod share;
mod typed;
mod unit;

pub use decimal::Decimal;
pub use share::Share;
pub use typed::{TypedLength, TypedVolume};
pub use unit::{LengthUnit, VolumeUnit};

use std::fmt;

/// Why a number was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuantityError {
    /// Not a finite number.
    NotANumber,
    /// Below what this quantity allows.
    TooSmall,
    /// Above what this quantity allows.
    TooLarge,
}

impl fmt::Display for QuantityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            QuantityError::NotANumber => "not a number",
            QuantityError::TooSmall => "too small",
            QuantityError::TooLarge => "too large",
        })
    }
}

impl std::error::Error for QuantityError {}

/// A volume in millilitres, finite and not negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Volume(f64);

impl Volume {
    /// No volume.
    pub const ZERO: Volume = Volume(0.0);

    /// `value` millilitres.
    ///
    /// # Errors
    /// [`QuantityError`] when negative or not finite.
    pub fn from_millilitres(value: f64) -> Result<Volume, QuantityError> {
        positive(value).map(Volume)
    }

    /// `value` of `unit`.
    ///
    /// # Errors
    /// As [`Volume::from_millilitres`].
    pub fn from_unit(value: f64, unit: VolumeUnit) -> Result<Volume, QuantityError> {
        Volume::from_millilitres(value * unit.millilitres())
    }

    /// Millilitres.
    pub fn millilitres(self) -> f64 {
        self.0
    }

    /// The same volume counted in `unit`.
    pub fn in_unit(self, unit: VolumeUnit) -> f64 {
        self.0 / unit.millilitres()
    }

    /// Both together.
    #[must_use]
    pub fn plus(self, other: Volume) -> Volume {
        Volume((self.0 + other.0).min(f64::MAX))
    }

    /// `factor` times this volume; a negative or absurd factor counts as 0.
    #[must_use]
    pub fn times(self, factor: f64) -> Volume {
        Volume(positive(self.0 * factor).unwrap_or(0.0))
    }
}

/// A length in millimetres, finite and not negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Length(f64);

impl Length {
    /// `value` millimetres.
    ///
    /// # Errors
    /// [`QuantityError`] when negative or not finite.
    pub fn from_millimetres(value: f64) -> Result<Length, QuantityError> {
        positive(value).map(Length)
    }

    /// Millimetres.
    pub fn millimetres(self) -> f64 {
        self.0
    }

    /// The same length counted in `unit`.
    pub fn in_unit(self, unit: LengthUnit) -> f64 {
        self.0 / unit.millimetres()
    }
}

fn positive(value: f64) -> Result<f64, QuantityError> {
    if !value.is_finite() {
        Err(QuantityError::NotANumber)
    } else if value < 0.0 {
        Err(QuantityError::TooSmall)
    } else {
        Ok(value)
    }
}
