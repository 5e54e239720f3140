//! A number and the unit it was typed in.

use super::{Decimal, Length, LengthUnit, QuantityError, Volume, VolumeUnit};
use crate::almanac::json::{Fields, Json, Object, Value, serde_by_json};

/// A volume as typed: the number and the unit beside it, kept through every change of the displayed unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct TypedVolume {
    number: Decimal,
    unit: VolumeUnit,
}

/// A length as typed: the number and the unit beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct TypedLength {
    number: Decimal,
    unit: LengthUnit,
}

macro_rules! typed {
    ($typed:ident, $unit:ident, $plain:ident, $value:ident, $canonical:ident, $what:literal) => {
        impl $typed {
            #[doc = concat!("A typed ", $what, ".")]
            ///
            /// # Errors
            /// [`QuantityError::TooSmall`] when negative.
            pub fn new(number: Decimal, unit: $unit) -> Result<$typed, QuantityError> {
                if number.is_negative() { Err(QuantityError::TooSmall) } else { Ok($typed { number, unit }) }
            }

            /// The number as typed.
            pub fn number(self) -> Decimal {
                self.number
            }

            /// The unit it was typed in.
            pub fn unit(self) -> $unit {
                self.unit
            }

            #[doc = concat!("The ", $what, " in canonical units.")]
            pub fn $value(self) -> $plain {
                // A decimal is finite and this one is not negative, so the product is neither.
                $plain(self.number.as_f64() * self.unit.$canonical())
            }
        }

        /// `{"n": number, "unit": unit}`.
        impl Json for $typed {
            fn write(&self, out: &mut String) {
                let mut object = Object::open(out);
                object.field("n", &self.number);
                object.field("unit", &self.unit);
                object.close();
            }

            fn read(value: Value) -> Option<$typed> {
                let mut fields = Fields::of(value)?;
                let typed = $typed::new(fields.take("n")?, fields.take("unit")?).ok()?;
                fields.end()?;
                Some(typed)
            }
        }

        serde_by_json!($typed);
    };
}

typed!(TypedVolume, VolumeUnit, Volume, volume, millilitres, "volume");
typed!(TypedLength, LengthUnit, Length, length, millimetres, "length");
