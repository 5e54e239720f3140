//! Laws of closing up and of splits.

use super::{mm, percent};
use beetle_almanac::almanac::closing::{cut, packs, sealant};
use beetle_almanac::almanac::divide::{Divide, divide};
use beetle_almanac::almanac::quantity::Decimal;
use proptest::prelude::*;

/// Every need to 600 out of every sheet of up to 60 pieces: enough, no sheet too many, and more hives never need fewer.
#[test]
fn sheets_are_enough_and_not_one_too_many() {
    for each in 1..=60 {
        let mut before = 0;
        for need in 0..=600 {
            let sheets = packs(need, each).unwrap();
            assert!(sheets * each >= need && (need == 0 || (sheets - 1) * each < need));
            assert!(sheets >= before);
            before = sheets;
        }
    }
    assert_eq!(packs(3, 0), None);
}

proptest! {
    /// Turned sheet or turned piece: as many pieces; the area of the pieces is within that of the sheet; a larger sheet never
    /// yields fewer.
    #[test]
    fn pieces_lie_within_their_sheet(
        sheet in (1..3000_u32, 1..3000_u32), piece in (1..900_u32, 1..900_u32), more in 0..500_u32,
    ) {
        let sides = |(one, other): (u32, u32)| (mm(one.into()), mm(other.into()));
        let pieces = |sheet, piece| cut(sides(sheet), sides(piece)).map_or(0, |cut| cut.pieces());
        let found = pieces(sheet, piece);
        prop_assert_eq!(found, pieces((sheet.1, sheet.0), piece));
        prop_assert_eq!(found, pieces(sheet, (piece.1, piece.0)));
        prop_assert!(u64::from(found) * u64::from(piece.0) * u64::from(piece.1) <= u64::from(sheet.0) * u64::from(sheet.1));
        prop_assert!(pieces((sheet.0 + more, sheet.1), piece) >= found);
    }

    /// Tubes reach as far as the cracks with their reserve, and one fewer does not; more cracks never take fewer.
    #[test]
    fn tubes_reach(cracks in 0..200_000_u32, reserve in 0..100_u32, tube in 1..20_000_u32, more in 0..10_000_u32) {
        let seal = |cracks: u32| sealant(cracks.into(), percent(reserve), Some(mm(tube.into())));
        let found = seal(cracks);
        let tubes = found.tubes.unwrap();
        let far = |tubes: u32| f64::from(tubes) * f64::from(tube);
        prop_assert!(far(tubes) >= found.with_reserve - 1e-3);
        prop_assert!(tubes == 0 || far(tubes - 1) < found.with_reserve + 1e-3);
        prop_assert!(seal(cracks + more).tubes >= found.tubes);
    }

    /// The new hive covers its comb and one frame fewer would not; with as many bees as are wanted both are enough, with one
    /// frame fewer they are not; more foragers that fly back never take fewer frames.
    #[test]
    fn a_split_is_as_small_as_it_may_be(stays in 1..80_u32, goes in 1..60_u32, back in 0..99_u32) {
        let of = |bees, back| divide(&Divide { bees: Decimal::whole(bees), stays, goes, back: percent(back) }).unwrap();
        let found = of(0, back);
        prop_assert!(found.new >= 1.0 - 1e-12);
        let one_fewer = f64::from(found.take - 1) * (1.0 - f64::from(back) / 100.0);
        prop_assert!(one_fewer < f64::from(goes));
        prop_assert!(of(found.wants, back).enough && !of(found.wants - 1, back).enough);
        prop_assert!(of(found.wants, back).old >= 0.9 - 1e-12);
        prop_assert!(of(0, back + 1).take >= found.take);
    }
}
