//! Numbers with up to six decimals, held exactly.

use super::QuantityError;
use crate::almanac::json::{Json, Value, serde_by_json, write_whole};
use std::fmt;

/// A number with up to six decimals between −10⁹ and 10⁹, held exactly.
///
/// Typed amounts and prices live in this type so that equality, ordering and a trip through a file are exact.
/// Stored as a plain JSON number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Decimal(i64);

impl Decimal {
    /// Zero.
    pub const ZERO: Decimal = Decimal(0);
    const PARTS: i64 = 1_000_000;
    const MOST: i64 = 1_000_000_000 * Decimal::PARTS;

    /// `millionths` ÷ 1,000,000.
    ///
    /// # Errors
    /// [`QuantityError`] beyond ±10⁹.
    pub fn from_millionths(millionths: i64) -> Result<Decimal, QuantityError> {
        match millionths {
            m if m > Decimal::MOST => Err(QuantityError::TooLarge),
            m if m < -Decimal::MOST => Err(QuantityError::TooSmall),
            m => Ok(Decimal(m)),
        }
    }

    /// The nearest number with six decimals.
    ///
    /// # Errors
    /// [`QuantityError`] when `value` is not finite or beyond ±10⁹.
    pub fn from_f64(value: f64) -> Result<Decimal, QuantityError> {
        if !value.is_finite() {
            return Err(QuantityError::NotANumber);
        }
        if value.abs() > 1e9 {
            return Err(if value > 0.0 { QuantityError::TooLarge } else { QuantityError::TooSmall });
        }
        #[allow(clippy::cast_possible_truncation)]
        // |value| ≤ 10⁹, so the product fits an i64 with room to spare
        Ok(Decimal((value * 1e6).round() as i64))
    }

    /// A whole number.
    pub fn whole(value: u32) -> Decimal {
        Decimal(i64::from(value.min(1_000_000_000)) * Decimal::PARTS)
    }

    /// A whole number below 10⁹ that is known beforehand.
    pub(super) const fn of(value: u8) -> Decimal {
        Decimal(value as i64 * Decimal::PARTS)
    }

    /// The number times 1,000,000.
    pub fn millionths(self) -> i64 {
        self.0
    }

    /// The nearest double.
    #[allow(clippy::cast_precision_loss)] // at most 10¹⁵, below the 2⁵³ a double holds exactly
    pub fn as_f64(self) -> f64 {
        self.0 as f64 / 1e6
    }

    /// The same number on the other side of zero.
    #[must_use]
    pub fn negative(self) -> Decimal {
        Decimal(-self.0)
    }

    /// Writes it at the end of `text`.
    fn put(self, text: &mut String) {
        let parts = self.0.unsigned_abs();
        if self.0 < 0 {
            text.push('-');
        }
        write_whole(parts / 1_000_000, text);
        let mut rest = parts % 1_000_000;
        if rest > 0 {
            text.push('.');
        }
        while rest > 0 {
            write_whole(rest / 100_000, text);
            rest = rest % 100_000 * 10;
        }
    }

    /// Below zero.
    pub fn is_negative(self) -> bool {
        self.0 < 0
    }
}

/// A plain JSON number; whole numbers are written without a point.
impl Json for Decimal {
    fn write(&self, out: &mut String) {
        self.put(out);
    }

    fn read(value: Value) -> Option<Decimal> {
        from_digits(value.number()?)
    }
}

/// The nearest number with six decimals to a JSON number, without a detour through binary fractions.
fn from_digits(number: &str) -> Option<Decimal> {
    let (digits, power) = number.split_once(['e', 'E']).unwrap_or((number, "0"));
    let (unsigned, negative) = digits.strip_prefix('-').map_or((digits, false), |digits| (digits, true));
    let (whole, decimals) = unsigned.split_once('.').unwrap_or((unsigned, ""));
    let digits: Vec<u8> = whole.bytes().chain(decimals.bytes()).skip_while(|digit| *digit == b'0').collect();
    if digits.is_empty() {
        return Some(Decimal::ZERO);
    }
    // How many of the digits, noughts added where they run out, make the millionths.
    let after = i64::try_from(decimals.len()).ok()?;
    let wanted = i64::try_from(digits.len())
        .ok()?
        .checked_add(power.parse::<i64>().ok()?)?
        .checked_sub(after)?
        .checked_add(6)?;
    if wanted > 17 {
        return None;
    }
    let Ok(wanted) = usize::try_from(wanted) else { return Some(Decimal::ZERO) };
    let digit = |at: usize| i64::from(digits.get(at).map_or(0, |digit| digit - b'0'));
    let parts = (0..wanted).fold(0, |sum, at| sum * 10 + digit(at)) + i64::from(digit(wanted) >= 5);
    Decimal::from_millionths(if negative { -parts } else { parts }).ok()
}

serde_by_json!(Decimal);

/// Plain digits with a point and no trailing zeros: `1.5`, `0.0625`, `-3`.
impl fmt::Display for Decimal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut text = String::new();
        self.put(&mut text);
        f.write_str(&text)
    }
}
