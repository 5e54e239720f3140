//! Shares of a whole.

use super::{Decimal, QuantityError};
use crate::almanac::json::{Json, Value, serde_by_json};

/// A share of a whole, 0–100 %, such as the level of oil in a trap. Stored as its percentage.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Share(Decimal);

impl Share {
    /// Nothing.
    pub const NONE: Share = Share(Decimal::ZERO);
    /// One quarter.
    pub const QUARTER: Share = Share(Decimal::of(25));
    /// Three tenths.
    pub const THREE_TENTHS: Share = Share(Decimal::of(30));
    /// One half.
    pub const HALF: Share = Share(Decimal::of(50));
    /// All of it.
    pub const FULL: Share = Share(Decimal::of(100));

    /// `percent` of a hundred.
    ///
    /// # Errors
    /// [`QuantityError`] below 0 or above 100.
    pub fn from_percent(percent: Decimal) -> Result<Share, QuantityError> {
        if percent.is_negative() {
            Err(QuantityError::TooSmall)
        } else if percent > Share::FULL.0 {
            Err(QuantityError::TooLarge)
        } else {
            Ok(Share(percent))
        }
    }

    /// The percentage, 0–100.
    pub fn percent(self) -> Decimal {
        self.0
    }

    /// The fraction, 0–1.
    pub fn fraction(self) -> f64 {
        self.0.as_f64() / 100.0
    }
}

/// Its percentage.
impl Json for Share {
    fn write(&self, out: &mut String) {
        self.0.write(out);
    }

    fn read(value: Value) -> Option<Share> {
        Share::from_percent(Decimal::read(value)?).ok()
    }
}

serde_by_json!(Share);
