//! How the keeper wants the page: light, hand, size of letters, units.

use crate::almanac::json::{Fields, Json, Object, Value, json_choice, serde_by_json};
use crate::almanac::quantity::{LengthUnit, VolumeUnit};

/// Ground and ink.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Scheme {
    /// As the phone is set.
    #[default]
    System,
    /// Pure black on white, heavier lines.
    Sun,
    /// Light ink on a dark ground.
    Night,
}

/// The hand that holds the phone: keys move to the side of its thumb.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Hand {
    /// Keys to the left.
    Left,
    /// Keys to the right.
    #[default]
    Right,
}

/// Size of letters, on top of what the phone is set to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TextSize {
    /// 18 px where the phone is set to 16.
    #[default]
    Usual,
    /// A fifth larger.
    Large,
    /// Half as large again.
    Largest,
}

/// Unit in which temperatures are read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum WarmthUnit {
    /// °C.
    #[default]
    Celsius,
    /// °F.
    Fahrenheit,
}

/// Everything the keeper can set about the page. Unknown or missing parts of a stored text fall back one by one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Prefs {
    /// Ground and ink.
    pub scheme: Scheme,
    /// The hand that holds the phone.
    pub hand: Hand,
    /// Size of letters.
    pub text: TextSize,
    /// Unit in which volumes are shown. What was typed keeps its own unit.
    pub volume: VolumeUnit,
    /// Unit in which lengths are shown.
    pub length: LengthUnit,
    /// Unit in which temperatures are shown.
    pub warmth: WarmthUnit,
}

macro_rules! coded {
    ($kind:ident: $($variant:ident = $code:literal),+) => {
        impl $kind {
            /// The code that stands in attributes and choices.
            pub fn code(self) -> &'static str {
                match self { $($kind::$variant => $code),+ }
            }

            /// The value with this code.
            pub fn from_code(code: &str) -> Option<$kind> {
                match code { $($code => Some($kind::$variant),)+ _ => None }
            }
        }
    };
}

coded!(Scheme: System = "system", Sun = "sun", Night = "night");
coded!(Hand: Left = "left", Right = "right");
coded!(TextSize: Usual = "usual", Large = "large", Largest = "largest");
coded!(WarmthUnit: Celsius = "C", Fahrenheit = "F");

json_choice!(Scheme words { System = "system", Sun = "sun", Night = "night" } one {} many {});
json_choice!(Hand words { Left = "left", Right = "right" } one {} many {});
json_choice!(WarmthUnit words { Celsius = "C", Fahrenheit = "F" } one {} many {});
json_choice!(TextSize words { Usual = "usual", Large = "large", Largest = "largest" } one {} many {});

impl Json for Prefs {
    fn write(&self, out: &mut String) {
        let mut object = Object::open(out);
        object.field("scheme", &self.scheme);
        object.field("hand", &self.hand);
        object.field("text", &self.text);
        object.field("volume", &self.volume);
        object.field("length", &self.length);
        object.field("warmth", &self.warmth);
        object.close();
    }

    fn read(value: Value) -> Option<Prefs> {
        let mut fields = Fields::of(value)?;
        Some(Prefs {
            scheme: fields.or_default("scheme")?,
            hand: fields.or_default("hand")?,
            text: fields.or_default("text")?,
            volume: fields.or_default("volume")?,
            length: fields.or_default("length")?,
            warmth: fields.or_default("warmth")?,
        })
    }
}

serde_by_json!(Prefs);

/// The codes of the volume units in choices and drafts, as the records store them.
const VOLUMES: [(VolumeUnit, &str); 6] = [
    (VolumeUnit::Millilitre, "mL"),
    (VolumeUnit::Litre, "L"),
    (VolumeUnit::UsFluidOunce, "us_fl_oz"),
    (VolumeUnit::ImperialFluidOunce, "imp_fl_oz"),
    (VolumeUnit::UsTablespoon, "us_tbsp"),
    (VolumeUnit::UsCup, "us_cup"),
];

/// The code of a volume unit.
pub fn volume_code(unit: VolumeUnit) -> &'static str {
    VOLUMES.iter().find(|(known, _)| *known == unit).map_or("mL", |(_, code)| code)
}

/// The volume unit with this code, or millilitres.
pub fn volume_unit(code: &str) -> VolumeUnit {
    VOLUMES.iter().find(|(_, known)| *known == code).map_or(VolumeUnit::Millilitre, |(unit, _)| *unit)
}

/// Bottles are sold by the quart and the gallon too: code, the ounce it is kept in, and how many of them. Kept as
/// ounces, because a page of an earlier version can read no other words in the records.
pub const BOTTLES: [(&str, VolumeUnit, i64); 4] = [
    ("us_qt", VolumeUnit::UsFluidOunce, 32),
    ("us_gal", VolumeUnit::UsFluidOunce, 128),
    ("imp_qt", VolumeUnit::ImperialFluidOunce, 40),
    ("imp_gal", VolumeUnit::ImperialFluidOunce, 160),
];

/// The unit with this code and how many of it, or one millilitre.
pub fn measure(code: &str) -> (VolumeUnit, i64) {
    let bottle = BOTTLES.iter().find(|(known, ..)| *known == code);
    bottle.map_or_else(|| (volume_unit(code), 1), |(_, unit, count)| (*unit, *count))
}

/// The code of a length unit.
pub fn length_code(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Millimetre => "mm",
        LengthUnit::Inch => "in",
    }
}

/// The length unit with this code, or millimetres.
pub fn length_unit(code: &str) -> LengthUnit {
    if code == "in" { LengthUnit::Inch } else { LengthUnit::Millimetre }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_what_the_records_store() {
        for unit in VolumeUnit::ALL {
            assert_eq!(serde_json::to_string(&unit).unwrap(), format!("\"{}\"", volume_code(unit)));
            assert_eq!(volume_unit(volume_code(unit)), unit);
        }
        for unit in LengthUnit::ALL {
            assert_eq!(serde_json::to_string(&unit).unwrap(), format!("\"{}\"", length_code(unit)));
            assert_eq!(length_unit(length_code(unit)), unit);
        }
    }

    #[test]
    fn a_bottle_by_the_gallon_is_one_in_ounces() {
        assert_eq!(measure("us_gal"), (VolumeUnit::UsFluidOunce, 128));
        assert_eq!(measure("imp_qt"), (VolumeUnit::ImperialFluidOunce, 40));
        assert_eq!(measure("L"), (VolumeUnit::Litre, 1));
        // No unit of the records goes by the name of a bottle.
        assert!(BOTTLES.iter().all(|(code, ..)| volume_unit(code) == VolumeUnit::Millilitre));
    }

    #[test]
    fn a_stored_text_with_parts_missing_keeps_the_others() {
        let prefs: Prefs = serde_json::from_str(r#"{"hand":"left","later":1}"#).unwrap();
        assert_eq!(prefs, Prefs { hand: Hand::Left, ..Prefs::default() });
    }
}
