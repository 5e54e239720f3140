//! Numbers and units: nothing is lost on the way.

use super::{decimals, ml, mm};
use beetle_almanac::almanac::quantity::{Decimal, LengthUnit, TypedVolume, Volume, VolumeUnit};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::typed::{self, TypedError};
use proptest::prelude::*;
use proptest::sample::select;

proptest! {
    #[test]
    fn a_decimal_written_and_read_is_the_same_decimal(decimal in decimals()) {
        let text = decimal.to_string();
        match typed::decimal(&text) {
            Ok(read) => prop_assert_eq!(read, decimal),
            // three decimals behind one to three figures: the keeper is asked, and this is one of the two answers
            Err(TypedError::Ambiguous { small, large }) => {
                prop_assert_eq!(small, decimal);
                prop_assert_eq!(large.millionths(), decimal.millionths() * 1000);
            }
            Err(error) => prop_assert!(false, "{}: {:?}", text, error),
        }
        prop_assert_eq!(text.parse::<f64>().ok().map(Decimal::from_f64), Some(Ok(decimal)));
        prop_assert!(!text.contains('.') || !text.ends_with(['0', '.']));
    }

    #[test]
    fn a_decimal_survives_a_trip_through_a_double(decimal in decimals()) {
        prop_assert_eq!(Decimal::from_f64(decimal.as_f64()), Ok(decimal));
    }

    #[test]
    fn decimals_and_doubles_are_ordered_alike(a in decimals(), b in decimals()) {
        prop_assert_eq!(a.cmp(&b), a.as_f64().total_cmp(&b.as_f64()));
    }

    #[test]
    fn a_volume_comes_back_from_every_unit_within_one_step_of_a_double(
        value in 0.0..1e9_f64,
        unit in select(&VolumeUnit::ALL[..]),
    ) {
        // A product and a quotient round once each.
        let there = Volume::from_unit(value, unit).unwrap();
        prop_assert!((there.in_unit(unit) - value).abs() <= value * f64::EPSILON);
        let back = Volume::from_unit(ml(value).in_unit(unit), unit).unwrap();
        prop_assert!((back.millilitres() - value).abs() <= value * f64::EPSILON);
    }

    #[test]
    fn a_length_comes_back_from_every_unit_within_one_step_of_a_double(
        value in 0.0..1e6_f64,
        unit in select(&LengthUnit::ALL[..]),
    ) {
        let there = mm(value).in_unit(unit) * unit.millimetres();
        prop_assert!((there - value).abs() <= value * f64::EPSILON);
    }

    /// A season's totals shown in another unit are the same to 1 mL.
    #[test]
    fn a_season_shown_in_another_unit_is_the_same_to_a_millilitre(
        amounts in proptest::collection::vec((0..=200_000_000_i64, select(&VolumeUnit::ALL[..3])), 0..400),
        shown in select(&VolumeUnit::ALL[..]),
    ) {
        let typed: Vec<TypedVolume> =
            amounts.iter().map(|(n, unit)| TypedVolume::new(super::millionths(*n), *unit).unwrap()).collect();
        let sum = typed.iter().fold(Volume::ZERO, |sum, typed| sum.plus(typed.volume()));
        let shown_sum: f64 = typed.iter().map(|typed| typed.volume().in_unit(shown)).sum();
        prop_assert!((shown_sum * shown.millilitres() - sum.millilitres()).abs() < 1.0);
    }

    #[test]
    fn counts_add_in_any_order_and_keep_their_ends(
        a in ranges(), b in ranges(), c in ranges(),
    ) {
        prop_assert_eq!(a.plus(b), b.plus(a));
        prop_assert_eq!(a.plus(b).plus(c), a.plus(b.plus(c)));
        let sum = a.plus(b);
        prop_assert_eq!(sum.low(), a.low() + b.low());
        prop_assert_eq!(sum.high(), a.high().zip(b.high()).map(|(a, b)| a + b));
        prop_assert_eq!(sum.is_exact(), a.is_exact() && b.is_exact());
        prop_assert_eq!(a.plus(CountRange::exact(0)), a);
    }
}

pub(super) fn ranges() -> impl Strategy<Value = CountRange> {
    prop_oneof![
        (0..5000_u32).prop_map(CountRange::exact),
        (0..5000_u32).prop_map(|low| CountRange::new(low, None).unwrap()),
        (0..5000_u32, 0..5000_u32).prop_map(|(low, more)| CountRange::new(low, Some(low + more)).unwrap()),
    ]
}
