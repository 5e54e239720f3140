//! Temperatures and what a day makes of them.

use super::quantity::QuantityError;

/// Kelvin of a degree Fahrenheit, and where its scale begins: exact by definition.
const FAHRENHEIT: (f64, f64) = (1.8, 32.0);

/// A temperature from −60 to 100 °C, in degrees Celsius.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Warmth(f64);

impl Warmth {
    /// The coldest that is taken.
    pub const COLDEST: Warmth = Warmth(-60.0);
    /// The warmest that is taken.
    pub const WARMEST: Warmth = Warmth(100.0);

    /// `value` degrees Celsius.
    ///
    /// # Errors
    /// [`QuantityError`] when it is no number or lies outside −60 to 100 °C.
    pub fn from_celsius(value: f64) -> Result<Warmth, QuantityError> {
        if value.is_nan() {
            Err(QuantityError::NotANumber)
        } else if value < Warmth::COLDEST.0 {
            Err(QuantityError::TooSmall)
        } else if value > Warmth::WARMEST.0 {
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
        Warmth::from_celsius((value - FAHRENHEIT.1) / FAHRENHEIT.0)
    }

    /// Degrees Celsius.
    pub fn celsius(self) -> f64 {
        self.0
    }

    /// Degrees Fahrenheit.
    pub fn fahrenheit(self) -> f64 {
        self.0 * FAHRENHEIT.0 + FAHRENHEIT.1
    }

    /// `kelvin` warmer (cooler when negative), held at the ends of the range.
    #[must_use]
    pub fn warmer(self, kelvin: f64) -> Warmth {
        Warmth::held(self.0 + kelvin)
    }

    /// `celsius`, held at the ends of the range: for sums of temperatures that lie in it.
    pub(crate) const fn held(celsius: f64) -> Warmth {
        Warmth(celsius.clamp(Warmth::COLDEST.0, Warmth::WARMEST.0))
    }
}

/// The extremes of a day. Between them the temperature runs as a sine.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Swing {
    /// The day's lowest.
    pub low: Warmth,
    /// The day's highest.
    pub high: Warmth,
}

impl Swing {
    /// A day that stays at `warmth`.
    pub fn flat(warmth: Warmth) -> Swing {
        Swing { low: warmth, high: warmth }
    }

    /// The middle of both extremes: the mean of a sine between them.
    pub fn mean(self) -> Warmth {
        Warmth(f64::midpoint(self.low.0, self.high.0))
    }

    /// `kelvin` warmer from morning to night.
    #[must_use]
    pub fn warmer(self, kelvin: f64) -> Swing {
        Swing { low: self.low.warmer(kelvin), high: self.high.warmer(kelvin) }
    }

    /// `share` of the way from this day to `other`, or beyond it when above 1.
    #[must_use]
    pub fn towards(self, other: Swing, share: f64) -> Swing {
        let between = |from: Warmth, to: Warmth| Warmth::held(from.0 + (to.0 - from.0) * share);
        Swing { low: between(self.low, other.low), high: between(self.high, other.high) }
    }
}

/// What a day may have been: what is likely and both ends of what is possible.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Span {
    /// The cool end.
    pub cool: Swing,
    /// What is likely.
    pub likely: Swing,
    /// The warm end.
    pub warm: Swing,
}

impl Span {
    /// `likely`, give or take `kelvin`.
    pub fn around(likely: Swing, kelvin: f64) -> Span {
        Span { cool: likely.warmer(-kelvin), likely, warm: likely.warmer(kelvin) }
    }
}
