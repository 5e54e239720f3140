//! Units: NIST Handbook 44, Appendix C, and NIST SP 811, Appendix B (inch, US gallon, both exact by definition); the
//! imperial gallon of 4.546 09 L from the UK Units of Measurement Regulations 1995.
//!
//! The factors are worked out again from those definitions in whole numbers, so they must agree to the last bit.

use super::{close, decimal, ml};
use beetle_almanac::almanac::quantity::{LengthUnit, TypedLength, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::typed;
use beetle_almanac::app::prefs;

/// An inch in hundredths of a millimetre.
const INCH: u64 = 2540;
/// A US gallon of 231 cubic inches in 10⁻⁶ mL: a cubic hundredth of a millimetre is 10⁻⁹ mL.
const US_GALLON: u64 = 231 * INCH * INCH * INCH / 1000;
/// An imperial gallon in 10⁻⁶ mL.
const IMPERIAL_GALLON: u64 = 4_546_090_000;

#[test]
#[allow(clippy::cast_precision_loss, clippy::float_cmp)]
// both gallons lie far below 2⁵³, their halves of halves are exact, and one division by 10⁶ rounds once, as a literal does
fn volume_units_are_exact_parts_of_their_gallons() {
    assert_eq!(US_GALLON, 3_785_411_784, "3 785.411 784 mL in Handbook 44");
    for (unit, gallon, part) in [
        (VolumeUnit::UsFluidOunce, US_GALLON, 128),
        (VolumeUnit::UsTablespoon, US_GALLON, 256),
        (VolumeUnit::UsCup, US_GALLON, 16),
        (VolumeUnit::ImperialFluidOunce, IMPERIAL_GALLON, 160),
        (VolumeUnit::Litre, 1_000_000_000, 1),
        (VolumeUnit::Millilitre, 1_000_000, 1),
    ] {
        assert_eq!(unit.millilitres(), gallon as f64 / f64::from(part) / 1e6, "{unit:?}");
    }
    assert_eq!(VolumeUnit::ALL.len(), 6, "a new unit wants its definition here");
}

#[test]
#[allow(clippy::float_cmp)] // printed values, all digits
fn volume_units_have_the_printed_values() {
    for (unit, millilitres) in [
        (VolumeUnit::UsFluidOunce, 29.573_529_562_5),
        (VolumeUnit::UsTablespoon, 14.786_764_781_25),
        (VolumeUnit::UsCup, 236.588_236_5),
        (VolumeUnit::ImperialFluidOunce, 28.413_062_5),
    ] {
        assert_eq!(unit.millilitres(), millilitres, "{unit:?}");
        let one = TypedVolume::new(decimal(1.0), unit).unwrap();
        assert_eq!(one.volume(), ml(millilitres));
    }
}

#[test]
#[allow(clippy::float_cmp)]
fn an_inch_is_25_4_millimetres() {
    assert_eq!(LengthUnit::Inch.millimetres(), 25.4);
    assert_eq!(LengthUnit::Millimetre.millimetres(), 1.0);
    let inches = |n| TypedLength::new(decimal(n), LengthUnit::Inch).unwrap().length().millimetres();
    // A product of two doubles is rounded once: half a unit in the last place.
    close(inches(9.625), 244.475, 1e-13);
    close(inches(19.0), 482.6, 1e-13);
    assert_eq!(LengthUnit::ALL.len(), 2, "a new unit wants its definition here");
}

/// Handbook 44, Appendix C: 1 US gallon = 231 in³ = 3.785 411 784 L, 1 liquid quart = 1/4 of it = 0.946 352 946 L. The
/// imperial ones are 4.546 09 L and a quarter of that by the regulations of 1995.
#[test]
fn bottles_by_the_quart_and_gallon_hold_what_the_law_says() {
    let litres = [0.946_352_946, 3.785_411_784, 1.136_522_5, 4.546_09];
    let typed = ["1 us qt", "1 us gal", "1 imp qt", "1 imp gal"];
    for (((_, unit, count), litres), typed) in prefs::BOTTLES.into_iter().zip(litres).zip(typed) {
        let chosen = typed::volume_of("1", unit, count).unwrap();
        // A product of two doubles is rounded once.
        close(chosen.volume().millilitres(), litres * 1000.0, 1e-12 * litres * 1000.0);
        assert_eq!(typed::volume(typed, VolumeUnit::Millilitre), Ok(chosen), "{typed}");
    }
}
