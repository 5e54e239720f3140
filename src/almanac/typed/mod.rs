//! Text that a person typed, read as a value.
//!
//! Nothing here changes or forgets what was typed: the caller keeps the text and shows it beside the answer. Where a
//! text has two honest readings both are handed back, and the keeper is asked.

mod amount;
mod fraction;
mod number;
mod share;
mod tags;
mod when;

pub use amount::{length, price, volume, volume_of};
pub use number::{count, count_or_range, decimal};
pub use share::share;
pub use tags::{TagsError, tags};
pub use when::{DayTypedError, day_done, day_planned};

use super::quantity::Decimal;

/// Why a text was not taken as a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TypedError {
    /// Nothing there.
    Empty,
    /// No number, or more than one.
    NotANumber,
    /// Below 0 where nothing can be.
    Negative,
    /// Too many.
    TooMany {
        /// The most that is taken.
        most: Decimal,
    },
    /// Too few.
    TooFew {
        /// The least that is taken.
        least: Decimal,
    },
    /// Not a whole number.
    NotWhole,
    /// Two honest readings: `1.500` is one and a half here and fifteen hundred there.
    Ambiguous {
        /// The separator read as a decimal point.
        small: Decimal,
        /// The separator read as a mark between thousands; in a share, the number read as a fraction.
        large: Decimal,
    },
    /// A weight where a volume is wanted.
    Weight,
    /// An ounce that may be a US or an imperial one.
    WhichOunce,
    /// A word behind the number that names no unit known here.
    UnknownUnit,
    /// More than all of it.
    OverFull,
    /// A temperature no yard has.
    TooWarm {
        /// As typed.
        typed: Decimal,
        /// In °F; else in °C, and °F may have been meant.
        fahrenheit: bool,
    },
    /// A fraction such as `1/2` where whole or decimal numbers are wanted.
    Fraction,
}
