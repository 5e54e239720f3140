//! Where traps hang, how many there are, and whether they fit.

use super::{mm, sizes};
use beetle_almanac::almanac::fit::{Fit, Place, Side, fit};
use beetle_almanac::almanac::quantity::{Decimal, LengthUnit, TypedLength};
use beetle_almanac::almanac::stack::{BoxDepth, Corner, HiveSize, Spot, spots, stack_spots, trap_total};
use beetle_almanac::almanac::trap::TrapSize;
use proptest::prelude::*;
use std::collections::BTreeSet;

const SIZES: [HiveSize; 2] = [HiveSize::Full, HiveSize::Nuc];

fn corner(spot: Spot) -> Corner {
    match spot {
        Spot::Corner(corner) => corner,
        other => panic!("{other:?} is no corner"),
    }
}

/// 101 hives × 11 boxes × 10 traps.
#[test]
fn more_hives_boxes_or_traps_a_box_never_need_fewer_traps() {
    for hives in 0..=100 {
        for boxes in 0..=10 {
            for a_box in 0..=9 {
                let traps = trap_total(hives, boxes, a_box).traps;
                assert_eq!(traps, hives * boxes * a_box);
                assert!(trap_total(hives + 1, boxes, a_box).traps >= traps);
                assert!(trap_total(hives, boxes + 1, a_box).traps >= traps);
                assert!(trap_total(hives, boxes, a_box + 1).traps >= traps);
            }
        }
    }
    assert_eq!(trap_total(u32::MAX, 2, 2).traps, u32::MAX);
}

/// Every number of traps, every level up to ten, over every single corner, over nothing and over a pair.
#[test]
fn no_place_is_given_twice_and_none_is_left_out_while_there_is_room() {
    let mut belows: Vec<Vec<Spot>> = Corner::ALL.iter().map(|corner| vec![Spot::Corner(*corner)]).collect();
    belows.push(Vec::new());
    belows.push(vec![Spot::Floor]);
    belows.push(vec![Spot::Corner(Corner::FrontLeft), Spot::Corner(Corner::BackRight)]);
    for size in SIZES {
        for level in 1..=10 {
            for below in &belows {
                for count in 0..=u8::MAX {
                    let here = spots(level, count, size, below);
                    assert_eq!(here.len(), usize::from(count.min(size.places())), "{count} in box {level}");
                    assert_eq!(here.iter().collect::<BTreeSet<_>>().len(), here.len(), "{here:?}");
                    let corners = here.iter().filter(|spot| matches!(spot, Spot::Corner(_))).count();
                    assert_eq!(corners, here.len().min(4), "corners first");
                }
            }
        }
    }
}

/// Every stack of up to six boxes with none to four traps each: 19 531 stacks of two sizes.
#[test]
fn neighbours_alternate_their_diagonals() {
    for size in SIZES {
        for boxes in 1..=6_u32 {
            for code in 0..5_u32.pow(boxes) {
                let counts: Vec<u8> =
                    (0..boxes).map(|at| u8::try_from(code / 5_u32.pow(at) % 5).unwrap()).collect();
                let stack = stack_spots(&counts, size);
                assert_eq!(stack.len(), counts.len());
                assert_eq!(
                    stack.iter().map(Vec::len).sum::<usize>(),
                    counts.iter().map(|count| usize::from(*count)).sum::<usize>()
                );
                for (level, pair) in stack.windows(2).enumerate() {
                    check_neighbours(&pair[0], &pair[1], level + 2);
                }
            }
        }
    }
}

fn check_neighbours(below: &[Spot], here: &[Spot], level: usize) {
    if let [first, second, ..] = here {
        assert_eq!(corner(*second), corner(*first).opposite(), "a pair stands on one diagonal");
        // Boxes with pairs keep to the rule of odd and even, so the diagonal of a pair never meets its own above.
        let odd = matches!(corner(*first), Corner::FrontLeft | Corner::BackRight);
        assert_eq!(odd, level % 2 == 1);
        if let [lower, _, ..] = below {
            assert_ne!(corner(*lower), corner(*first));
            assert_ne!(corner(*lower), corner(*first).opposite());
        }
    }
    if let ([lower], [single]) = (below, here) {
        assert_eq!(
            corner(*single),
            corner(*lower).opposite(),
            "a single trap stands across from the one below"
        );
    }
}

/// Adding a box on top never moves a trap below it.
#[test]
fn a_box_added_on_top_leaves_the_traps_below_where_they_are() {
    for counts in [[2, 2, 2, 2], [1, 1, 1, 1], [0, 1, 2, 3], [9, 0, 18, 1]] {
        let whole = stack_spots(&counts, HiveSize::Full);
        for boxes in 0..counts.len() {
            assert_eq!(stack_spots(&counts[..boxes], HiveSize::Full), whole[..boxes]);
        }
    }
}

#[test]
fn corners_pair_off() {
    for corner in Corner::ALL {
        assert_eq!(corner.opposite().opposite(), corner);
        assert_eq!(corner.beside().beside(), corner);
        let four = [corner, corner.opposite(), corner.beside(), corner.beside().opposite()];
        assert_eq!(BTreeSet::from(four), BTreeSet::from(Corner::ALL));
    }
}

fn places() -> impl Strategy<Value = Place> {
    let side = || (0..6000_u32).prop_map(|tenths| mm(f64::from(tenths) / 10.0));
    (side(), side(), side(), 0..100_u32).prop_map(|(frame_side, gap, inside, clearance)| Place {
        frame_side,
        gap,
        inside,
        clearance: mm(f64::from(clearance) / 10.0),
    })
}

proptest! {
    #[test]
    fn a_trap_made_smaller_still_fits(outer in sizes(), place in places(), cut in 0..100_u32) {
        let smaller = |side: Option<TypedLength>| {
            side.and_then(|side| {
                let number = side.number().millionths() * i64::from(100 - cut) / 100;
                TypedLength::new(super::millionths(number), side.unit()).ok()
            })
        };
        let small =
            TrapSize { length: smaller(outer.length), width: smaller(outer.width), depth: smaller(outer.depth) };
        let fits = |found| matches!(found, Fit::Fits { .. });
        match (fit(&outer, &place), fit(&small, &place)) {
            (Fit::Fits { .. }, other) => prop_assert!(fits(other)),
            (Fit::Unknown { missing }, other) => prop_assert_eq!(other, Fit::Unknown { missing }),
            (Fit::TooBig { .. }, _) => {}
        }
    }

    /// Told again with whole tenths of a millimetre, where no rounding can hide.
    #[test]
    fn fitting_is_what_whole_tenths_say(
        trap in proptest::array::uniform3(0..3000_i64),
        room in proptest::array::uniform3(0..3000_i64),
    ) {
        let typed = |tenths: i64| TypedLength::new(super::millionths(tenths * 100_000), LengthUnit::Millimetre).ok();
        let length = |tenths: i64| mm(Decimal::from_millionths(tenths * 100_000).unwrap().as_f64());
        let outer = TrapSize { depth: typed(trap[0]), width: typed(trap[1]), length: typed(trap[2]) };
        let place =
            Place { frame_side: length(room[0] + 50), gap: length(room[1]), inside: length(room[2]), clearance: mm(5.0) };
        let sides = [Side::Depth, Side::Width, Side::Length];
        let spare: Vec<i64> = (0..3).map(|side| room[side] - trap[side]).collect();
        let near = |found: f64, tenths: i64| (found * 10.0 - Decimal::whole(u32::try_from(tenths).unwrap()).as_f64()).abs() < 1e-6;
        match fit(&outer, &place) {
            Fit::Fits { tightest, spare: found } => {
                let least = *spare.iter().min().unwrap();
                prop_assert!(least >= 0 && near(found.millimetres(), least));
                prop_assert_eq!(spare[sides.iter().position(|side| *side == tightest).unwrap()], least);
            }
            Fit::TooBig { side, over, .. } => {
                let first = spare.iter().position(|spare| *spare < 0).unwrap();
                prop_assert_eq!(side, sides[first]);
                prop_assert!(near(over.millimetres(), -spare[first]));
            }
            Fit::Unknown { .. } => prop_assert!(false, "every side is known"),
        }
    }
}

/// Every depth of box a keeper can mean.
#[test]
fn a_trap_that_fits_a_shallow_box_fits_a_deep_one() {
    let trap = |depth: u32| TrapSize {
        depth: TypedLength::new(Decimal::whole(depth), LengthUnit::Millimetre).ok(),
        width: TypedLength::new(Decimal::whole(7), LengthUnit::Millimetre).ok(),
        length: TypedLength::new(Decimal::whole(100), LengthUnit::Millimetre).ok(),
    };
    for depth in 0..=300 {
        let fits = |boxed| matches!(fit(&trap(depth), &Place::usual(boxed)), Fit::Fits { .. });
        assert!(!fits(BoxDepth::Shallow) || fits(BoxDepth::Medium));
        assert!(!fits(BoxDepth::Medium) || fits(BoxDepth::Deep));
    }
}
