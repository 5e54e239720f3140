//! Units of volume and of length.

use crate::almanac::json::json_choice;

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
