//! Volumes, lengths and prices, with or without a unit behind the number.

use super::TypedError;
use super::fraction::{fraction, has_fraction};
use super::number::{bounded, not_negative, number, plain};
use crate::almanac::quantity::{Decimal, LengthUnit, TypedLength, TypedVolume, VolumeUnit};

/// A volume such as `1,5`, `150 ml`, `1.5 l`, `12 us fl oz`, `½ cup`, `1 us gal`; in `unit` when no unit is typed.
/// Centilitres and decilitres are taken over as millilitres, quarts and gallons as fluid ounces.
///
/// # Errors
/// [`TypedError::Weight`] for grams, kilograms and pounds; [`TypedError::WhichOunce`] for an ounce, quart or gallon
/// without "US" or "imp" in a field whose own unit is neither; [`TypedError::UnknownUnit`]; [`TypedError::Negative`];
/// and as [`super::decimal`], except that fractions are taken.
pub fn volume(text: &str, unit: VolumeUnit) -> Result<TypedVolume, TypedError> {
    volume_of(text, unit, 1)
}

/// As [`volume`]; a number without a unit counts `times` the unit: 128 US fluid ounces for a US gallon.
///
/// # Errors
/// As [`volume`].
pub fn volume_of(text: &str, unit: VolumeUnit, times: i64) -> Result<TypedVolume, TypedError> {
    let plain = plain(text);
    let (digits, suffix) = split(&plain);
    let (unit, factor) = match suffix.as_str() {
        "" => (unit, times),
        "ml" | "cc" | "milliliter" | "milliliters" | "millilitre" | "millilitres" => {
            (VolumeUnit::Millilitre, 1)
        }
        "cl" => (VolumeUnit::Millilitre, 10),
        "dl" => (VolumeUnit::Millilitre, 100),
        "l" | "liter" | "liters" | "litre" | "litres" => (VolumeUnit::Litre, 1),
        "tbsp" | "us tbsp" | "tablespoon" | "tablespoons" => (VolumeUnit::UsTablespoon, 1),
        "cup" | "cups" | "us cup" | "us cups" => (VolumeUnit::UsCup, 1),
        "us oz" | "us fl oz" | "us floz" => (VolumeUnit::UsFluidOunce, 1),
        "imp oz" | "imp fl oz" | "imp floz" | "imperial fl oz" | "uk fl oz" | "uk oz" => {
            (VolumeUnit::ImperialFluidOunce, 1)
        }
        "oz" | "fl oz" | "floz" | "ounce" | "ounces" | "fluid ounce" | "fluid ounces" => match unit {
            VolumeUnit::UsFluidOunce | VolumeUnit::ImperialFluidOunce => (unit, 1),
            _ => return Err(TypedError::WhichOunce),
        },
        "qt" | "quart" | "quarts" => gallons(unit, 4)?,
        "gal" | "gallon" | "gallons" => gallons(unit, 1)?,
        "us qt" | "us quart" | "us quarts" => gallons(VolumeUnit::UsFluidOunce, 4)?,
        "us gal" | "us gallon" | "us gallons" => gallons(VolumeUnit::UsFluidOunce, 1)?,
        "imp qt" | "imp quart" | "imp quarts" => gallons(VolumeUnit::ImperialFluidOunce, 4)?,
        "imp gal" | "imp gallon" | "imp gallons" => gallons(VolumeUnit::ImperialFluidOunce, 1)?,
        "g" | "gram" | "grams" | "kg" | "lb" | "lbs" | "pound" | "pounds" => return Err(TypedError::Weight),
        _ => return Err(TypedError::UnknownUnit),
    };
    TypedVolume::new(amount(digits, &suffix, factor)?, unit).map_err(|_| TypedError::Negative)
}

/// One `part` of the gallon that goes with `unit`, in its fluid ounces: 128 in a US gallon, 160 in an imperial one.
fn gallons(unit: VolumeUnit, part: i64) -> Result<(VolumeUnit, i64), TypedError> {
    match unit {
        VolumeUnit::UsFluidOunce | VolumeUnit::UsTablespoon | VolumeUnit::UsCup => {
            Ok((VolumeUnit::UsFluidOunce, 128 / part))
        }
        VolumeUnit::ImperialFluidOunce => Ok((unit, 160 / part)),
        VolumeUnit::Millilitre | VolumeUnit::Litre => Err(TypedError::WhichOunce),
    }
}

/// A length such as `20`, `2,5 cm`, `65 mm`, `3/8 in`, `2 3/8"`, `7½`; in `unit` when no unit is typed. Centimetres are
/// taken over as millimetres.
///
/// # Errors
/// [`TypedError::UnknownUnit`]; [`TypedError::Negative`]; and as [`super::decimal`].
pub fn length(text: &str, unit: LengthUnit) -> Result<TypedLength, TypedError> {
    let plain = plain(text);
    let (digits, suffix) = split(&plain);
    let (unit, factor) = match suffix.as_str() {
        "" => (unit, 1),
        "mm" => (LengthUnit::Millimetre, 1),
        "cm" => (LengthUnit::Millimetre, 10),
        "in" | "inch" | "inches" | "\"" | "\u{2033}" | "\u{201d}" => (LengthUnit::Inch, 1),
        _ => return Err(TypedError::UnknownUnit),
    };
    let number = amount(digits, &suffix, factor)?;
    TypedLength::new(number, unit).map_err(|_| TypedError::Negative)
}

/// A price in the keeper's own currency, without its sign. 0 is read; that it is no price is for the shopping list to
/// say.
///
/// # Errors
/// [`TypedError::Negative`], and as [`super::decimal`].
pub fn price(text: &str) -> Result<Decimal, TypedError> {
    let plain = plain(text);
    // One sign of money, before or after: prices are of one currency, whichever it is.
    let sign = |c: char| matches!(c, '$' | '¢' | '£' | '¤' | '¥' | '\u{20a0}'..='\u{20cf}');
    let bare = plain.strip_prefix(sign).or_else(|| plain.strip_suffix(sign)).unwrap_or(&plain).trim();
    // A sign alone is no empty field.
    amount(bare, if bare.len() < plain.len() { plain.as_str() } else { "" }, 1)
}

/// The number, and the unit behind it in lower case without dots.
fn split(plain: &str) -> (&str, String) {
    let begins = |c: char| is_letter(c) || matches!(c, '"' | '\u{2033}' | '\u{201d}');
    let (digits, suffix) =
        plain.split_at_checked(plain.find(begins).unwrap_or(plain.len())).unwrap_or((plain, ""));
    (digits.trim_end(), suffix.replace('.', "").trim_end().to_ascii_lowercase())
}

/// A letter, as far as units are told from numbers: no unit has one beyond ASCII, and the blocks of letters are enough
/// to say so.
fn is_letter(c: char) -> bool {
    c.is_ascii_alphabetic()
        || matches!(
            c,
            'ª' | 'µ' | 'º' | 'À'..='Ö' | 'Ø'..='ö' | 'ø'..='\u{2af}' | '\u{370}'..='\u{5ff}'
                | '\u{620}'..='\u{64a}' | '\u{66e}'..='\u{6d3}' | '\u{700}'..='\u{1fff}' | '\u{2100}'..='\u{214f}'
                | '\u{2160}'..='\u{2188}' | '\u{2c00}'..='\u{2dff}' | '\u{3041}'..='\u{d7ff}' | '\u{f900}'..='\u{fdff}'
        )
}

fn amount(digits: &str, suffix: &str, factor: i64) -> Result<Decimal, TypedError> {
    let read = if has_fraction(digits) {
        fraction(digits, factor)
    } else {
        number(digits).and_then(|mut number| {
            let scaled = |value: Decimal| bounded(value.millionths().saturating_mul(factor));
            number.value = scaled(number.value)?;
            number.grouped = number.grouped.map(scaled).transpose()?;
            not_negative(number)
        })
    };
    match read {
        // A unit alone is no empty field.
        Err(TypedError::Empty) if !suffix.is_empty() => Err(TypedError::NotANumber),
        read => read.map_err(below_nothing),
    }
}

fn below_nothing(error: TypedError) -> TypedError {
    if matches!(error, TypedError::TooFew { .. }) { TypedError::Negative } else { error }
}

#[cfg(test)]
mod tests {
    use super::{length, price, volume};
    use crate::almanac::quantity::{Decimal, LengthUnit, TypedVolume, VolumeUnit};
    use crate::almanac::typed::TypedError;
    use LengthUnit::{Inch, Millimetre};
    use VolumeUnit::{ImperialFluidOunce, Litre, Millilitre, UsCup, UsFluidOunce, UsTablespoon};

    fn number(value: f64) -> Decimal {
        Decimal::from_f64(value).unwrap_or_default()
    }

    #[test]
    fn keeper_types_a_volume_with_or_without_its_unit() {
        for (text, value, unit) in [
            ("1,5", 1.5, Millilitre),
            ("150ml", 150.0, Millilitre),
            ("150 mL.", 150.0, Millilitre),
            ("1.5 L", 1.5, Litre),
            ("75 cl", 750.0, Millilitre),
            ("2,5 dl", 250.0, Millilitre),
            ("12 US fl. oz", 12.0, UsFluidOunce),
            ("12 u.s. oz", 12.0, UsFluidOunce),
            ("12 imp. fl oz", 12.0, ImperialFluidOunce),
            ("3 tbsp", 3.0, UsTablespoon),
            ("½ cup", 0.5, UsCup),
            ("1 1/2 cups", 1.5, UsCup),
            ("٢٠", 20.0, Millilitre),
            ("0", 0.0, Millilitre),
        ] {
            let read = volume(text, Millilitre).map(|v| (v.number(), v.unit()));
            assert_eq!(read, Ok((number(value), unit)), "{text}");
        }
        assert_eq!(volume("12", UsCup).map(TypedVolume::unit), Ok(UsCup));
    }

    #[test]
    fn keeper_types_12_oz_and_is_asked_which_ounce_unless_the_field_is_in_ounces() {
        for text in ["12 oz", "12 fl oz", "12oz.", "12 Fl. Oz."] {
            assert_eq!(volume(text, Millilitre), Err(TypedError::WhichOunce), "{text}");
            for unit in [UsFluidOunce, ImperialFluidOunce] {
                assert_eq!(volume(text, unit).map(TypedVolume::unit), Ok(unit), "{text}");
            }
        }
    }

    #[test]
    fn keeper_types_a_jug_of_a_gallon_and_it_is_kept_in_ounces() {
        for (text, ounces, unit) in [
            ("1 US gal", 128.0, UsFluidOunce),
            ("½ us gallon", 64.0, UsFluidOunce),
            ("1.5 U.S. qt", 48.0, UsFluidOunce),
            ("1 imp. gal", 160.0, ImperialFluidOunce),
            ("2 imp quarts", 80.0, ImperialFluidOunce),
        ] {
            let read = volume(text, Millilitre).map(|v| (v.number(), v.unit()));
            assert_eq!(read, Ok((number(ounces), unit)), "{text}");
        }
        assert_eq!(volume("1 gal", Litre), Err(TypedError::WhichOunce));
        assert_eq!(volume("1 gal", UsCup).map(|v| (v.number(), v.unit())), Ok((number(128.0), UsFluidOunce)));
        let imperial = volume("1 qt", ImperialFluidOunce).map(TypedVolume::number);
        assert_eq!(imperial, Ok(number(40.0)));
        // The unit beside the field is a gallon.
        assert_eq!(super::volume_of("1½", UsFluidOunce, 128).map(TypedVolume::number), Ok(number(192.0)));
        assert_eq!(super::volume_of("750 ml", UsFluidOunce, 128).map(TypedVolume::unit), Ok(Millilitre));
    }

    #[test]
    fn keeper_types_a_weight_of_oil_and_is_refused() {
        for text in ["300 g", "1 kg", "2 lb", "2 lbs."] {
            assert_eq!(volume(text, Millilitre), Err(TypedError::Weight), "{text}");
        }
        for text in ["3 pints", "12 us", "5 mm", "1e3", "5 l l"] {
            assert_eq!(volume(text, Millilitre), Err(TypedError::UnknownUnit), "{text}");
        }
    }

    #[test]
    fn keeper_types_negative_oil_and_is_told_0_or_more() {
        for text in ["-5", "\u{2212}5 ml", "-1.500", "-½ cup", "-9999999999 l"] {
            assert_eq!(volume(text, Millilitre), Err(TypedError::Negative), "{text}");
        }
        assert_eq!(price("-2.20"), Err(TypedError::Negative));
        assert_eq!(length("-1", Inch), Err(TypedError::Negative));
    }

    #[test]
    fn keeper_types_1_500_ml_and_is_asked_which() {
        let asked = |small, large| Err(TypedError::Ambiguous { small: number(small), large: number(large) });
        assert_eq!(volume("1.500 ml", Millilitre).map(TypedVolume::number), asked(1.5, 1500.0));
        assert_eq!(volume("1,500 cl", Millilitre).map(TypedVolume::number), asked(15.0, 15_000.0));
        assert_eq!(price("1.500"), asked(1.5, 1500.0));
    }

    #[test]
    fn keeper_measures_in_inches_and_fractions() {
        for (text, value, unit) in [
            ("20", 20.0, Millimetre),
            ("2,5 cm", 25.0, Millimetre),
            ("65mm", 65.0, Millimetre),
            ("2 3/8 in", 2.375, Inch),
            ("2-3/8\"", 2.375, Inch),
            ("2⅜″", 2.375, Inch),
            ("3/64 in", 0.046_875, Inch),
            ("19 in.", 19.0, Inch),
        ] {
            let read = length(text, Millimetre).map(|v| (v.number(), v.unit()));
            assert_eq!(read, Ok((number(value), unit)), "{text}");
        }
        assert_eq!(length("9 5/8", Inch).map(|v| v.length().millimetres()), Ok(244.475));
        assert_eq!(length("7 ½", Millimetre).map(|v| v.length().millimetres()), Ok(7.5));
        for text in ["2 9/8 in", "2 3/0 in", "1/2/3 in", "2.5 3/8 in", "in", "3/ in"] {
            assert_eq!(length(text, Inch), Err(TypedError::NotANumber), "{text}");
        }
        assert_eq!(length("5'", Inch), Err(TypedError::NotANumber));
        assert_eq!(length("5 ft", Inch), Err(TypedError::UnknownUnit));
        assert_eq!(length("", Inch), Err(TypedError::Empty));
    }

    #[test]
    fn keeper_types_a_price() {
        assert_eq!(price("2,20"), Ok(number(2.2)));
        assert_eq!(price("2½"), Ok(number(2.5)));
        for text in ["$10.50", "10.50 $", "€ 10,50", "10,50€", "₹10.50", "£10½"] {
            assert_eq!(price(text), Ok(number(10.5)), "{text}");
        }
        for text in ["$", "$$5", "$5 $", "5$5"] {
            assert_eq!(price(text), Err(TypedError::NotANumber), "{text}");
        }
        assert_eq!(price("$1.500"), Err(TypedError::Ambiguous { small: number(1.5), large: number(1500.0) }));
        assert_eq!(price("0"), Ok(Decimal::ZERO));
        assert_eq!(price(""), Err(TypedError::Empty));
        assert_eq!(price("free"), Err(TypedError::NotANumber));
    }
}
