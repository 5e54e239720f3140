//! How warm it is, in degrees Celsius inside and in the keeper's degrees outside.

use super::quantity::QuantityError;

/// A temperature from −60 to 100 °C.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Warmth(f64);

impl Warmth {
    /// `value` degrees Celsius.
    ///
    /// # Errors
    /// [`QuantityError`] when not finite, below −60 or above 100.
    pub fn from_celsius(value: f64) -> Result<Warmth, QuantityError> {
        if !value.is_finite() {
            Err(QuantityError::NotANumber)
        } else if value < -60.0 {
            Err(QuantityError::TooSmall)
        } else if value > 100.0 {
            Err(QuantityError::TooLarge)
        } else {
            Ok(Warmth(value))
        }
    }

    /// `value` degrees Fahrenheit.
    ///
    /// # Errors
    /// As [`Warmth::from_celsius`].
    pub fn from_fahrenheit(value: f64) -> Result<Warmth, QuantityError> {
        Warmth::from_celsius((value - 32.0) / 1.8)
    }

    /// Degrees Celsius.
    pub fn celsius(self) -> f64 {
        self.0
    }

    /// Degrees Fahrenheit.
    pub fn fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }
}
