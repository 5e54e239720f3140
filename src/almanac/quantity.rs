//! Numbers as they were typed, and the volumes, lengths and shares they stand for.
//!
//! What the keeper typed (number and unit) is what is stored; sums run in millilitres and millimetres; a number
//! is rounded once, where it is shown.

use super::json::{Fields, Json, Object, Value, json_choice, serde_by_json};
use std::fmt;

/// A number with up to six decimals between −10⁹ and 10⁹, held exactly.
///
/// Typed amounts and prices live in this type so that equality, ordering and a trip through a file are exact.
/// Stored as a plain JSON number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Decimal(i64);

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

    /// The number times 1,000,000.
    pub fn millionths(self) -> i64 {
        self.0
    }

    /// The nearest double.
    #[allow(clippy::cast_precision_loss)] // at most 10¹⁵, below the 2⁵³ a double holds exactly
    pub fn as_f64(self) -> f64 {
        self.0 as f64 / 1e6
    }

    /// Below zero.
    pub fn is_negative(self) -> bool {
        self.0 < 0
    }
}

/// A plain JSON number; whole numbers are written without a point.
impl Json for Decimal {
    fn write(&self, out: &mut String) {
        out.push_str(&self.to_string());
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
    let wanted =
        i64::try_from(digits.len()).ok()?.checked_add(power.parse::<i64>().ok()?)?.checked_sub(after)? + 6;
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
        let parts = self.0.unsigned_abs();
        let (whole, rest) = (parts / 1_000_000, parts % 1_000_000);
        if self.0 < 0 {
            f.write_str("-")?;
        }
        write!(f, "{whole}")?;
        if rest > 0 {
            let digits = format!("{rest:06}");
            write!(f, ".{}", digits.trim_end_matches('0'))?;
        }
        Ok(())
    }
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

/// Units of volume a keeper meets on bottles, spoons and cups.
///
/// Factors are exact by definition: US measures from the inch of 25.4 mm (NIST Handbook 44, Appendix C: 1 US
/// gallon = 231 in³), the imperial fluid ounce from the gallon of 4.546 09 L (UK Units of Measurement
/// Regulations 1995).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum VolumeUnit {
    /// Millilitre.
    #[default]
    Millilitre,
    /// Litre.
    Litre,
    /// US fluid ounce, 1/128 US gallon.
    UsFluidOunce,
    /// Imperial fluid ounce, 1/160 imperial gallon.
    ImperialFluidOunce,
    /// US tablespoon, half a US fluid ounce.
    UsTablespoon,
    /// US cup, eight US fluid ounces.
    UsCup,
}

json_choice!(VolumeUnit
    words {
        Millilitre = "mL", Litre = "L", UsFluidOunce = "us_fl_oz", ImperialFluidOunce = "imp_fl_oz",
        UsTablespoon = "us_tbsp", UsCup = "us_cup",
    }
    one {} many {});

json_choice!(LengthUnit words { Millimetre = "mm", Inch = "in" } one {} many {});

impl VolumeUnit {
    /// Every unit, in the order a chooser shows them.
    pub const ALL: [VolumeUnit; 6] = [
        VolumeUnit::Millilitre,
        VolumeUnit::Litre,
        VolumeUnit::UsFluidOunce,
        VolumeUnit::ImperialFluidOunce,
        VolumeUnit::UsTablespoon,
        VolumeUnit::UsCup,
    ];

    /// Millilitres in one unit.
    pub fn millilitres(self) -> f64 {
        match self {
            VolumeUnit::Millilitre => 1.0,
            VolumeUnit::Litre => 1000.0,
            VolumeUnit::UsFluidOunce => 29.573_529_562_5,
            VolumeUnit::ImperialFluidOunce => 28.413_062_5,
            VolumeUnit::UsTablespoon => 14.786_764_781_25,
            VolumeUnit::UsCup => 236.588_236_5,
        }
    }
}

/// Units of length on a ruler.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LengthUnit {
    /// Millimetre.
    #[default]
    Millimetre,
    /// Inch, 25.4 mm exactly (NIST SP 811).
    Inch,
}

impl LengthUnit {
    /// Every unit, in the order a chooser shows them.
    pub const ALL: [LengthUnit; 2] = [LengthUnit::Millimetre, LengthUnit::Inch];

    /// Millimetres in one unit.
    pub fn millimetres(self) -> f64 {
        match self {
            LengthUnit::Millimetre => 1.0,
            LengthUnit::Inch => 25.4,
        }
    }
}

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

/// A share of a whole, 0–100 %, such as the level of oil in a trap. Stored as its percentage.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Share(Decimal);

impl Share {
    /// Nothing.
    pub const NONE: Share = Share(Decimal(0));
    /// One quarter.
    pub const QUARTER: Share = Share(Decimal(25 * Decimal::PARTS));
    /// Three tenths.
    pub const THREE_TENTHS: Share = Share(Decimal(30 * Decimal::PARTS));
    /// One half.
    pub const HALF: Share = Share(Decimal(50 * Decimal::PARTS));
    /// All of it.
    pub const FULL: Share = Share(Decimal(100 * Decimal::PARTS));

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
