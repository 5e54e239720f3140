//! Does a trap fit where it is meant to hang?

use super::quantity::Length;
use super::stack::BoxDepth;
use super::trap::TrapSize;

/// A side of a trap, in the order in which it is checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// From the rim down, against the side of a frame.
    Depth,
    /// Across the frames, against the gap between two top bars.
    Width,
    /// Along the frames, against the walls of the box.
    Length,
}

/// The room between two frames.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Depth of the side of a frame.
    pub frame_side: Length,
    /// Gap between two top bars.
    pub gap: Length,
    /// Inside length of the box, along the frames. Not that of a top bar: its lugs lie on the rebates of the end walls.
    pub inside: Length,
    /// Air that stays free under the trap, so that it does not stand on the frames below.
    pub clearance: Length,
}

impl Place {
    /// The room in a ten-frame box with frames 1 3/8 in (34.925 mm) apart, top bars 1 1/16 in (26.9875 mm) wide and
    /// so a gap of 7.9375 mm, 18 3/8 in (466.725 mm) from end wall to end wall, and 5 mm clearance (common practice, no
    /// source).
    pub fn usual(depth: BoxDepth) -> Place {
        let mm = |value| Length::from_millimetres(value).unwrap_or_default();
        Place {
            frame_side: depth.frame_side(),
            gap: mm(34.925 - 26.9875),
            inside: mm(466.725),
            clearance: mm(5.0),
        }
    }

    fn room(&self, side: Side) -> Length {
        match side {
            Side::Depth => difference(self.frame_side, self.clearance),
            Side::Width => self.gap,
            Side::Length => self.inside,
        }
    }
}

/// Whether a trap fits, and by which side that was decided.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fit {
    /// Every side fits.
    Fits {
        /// The side with the least to spare.
        tightest: Side,
        /// What is left free on that side.
        spare: Length,
    },
    /// A side does not fit.
    TooBig {
        /// The first side that fails.
        side: Side,
        /// How much too big it is.
        over: Length,
        /// Measure of the trap on that side.
        trap: Length,
        /// Room there is on that side.
        room: Length,
    },
    /// No known side fails, but one has not been measured.
    Unknown {
        /// The first side without a measure.
        missing: Side,
    },
}

/// Compares the outside of a trap with the room it is meant to hang in.
///
/// A side that fails is named first, in the order depth, width, length; a missing measure only when no known side
/// fails. A trap that just touches fits.
pub fn fit(outer: &TrapSize, place: &Place) -> Fit {
    // Sums of tenths of millimetres carry noise near 10⁻¹³; no ruler sees a thousandth of a micrometre.
    const NOISE: f64 = 1e-6;
    let sides = [(Side::Depth, outer.depth), (Side::Width, outer.width), (Side::Length, outer.length)];
    let mut missing = None;
    let mut tightest = (Side::Depth, f64::INFINITY);
    for (side, typed) in sides {
        let room = place.room(side);
        let Some(trap) = typed.map(super::quantity::TypedLength::length) else {
            missing = missing.or(Some(side));
            continue;
        };
        let spare = room.millimetres() - trap.millimetres();
        if spare < -NOISE {
            return Fit::TooBig { side, over: difference(trap, room), trap, room };
        }
        if spare < tightest.1 {
            tightest = (side, spare);
        }
    }
    match missing {
        Some(missing) => Fit::Unknown { missing },
        None => Fit::Fits {
            tightest: tightest.0,
            spare: Length::from_millimetres(tightest.1.max(0.0)).unwrap_or_default(),
        },
    }
}

fn difference(larger: Length, smaller: Length) -> Length {
    Length::from_millimetres((larger.millimetres() - smaller.millimetres()).max(0.0)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::{Fit, Place, Side, fit};
    use crate::almanac::quantity::{Decimal, Length, LengthUnit, TypedLength};
    use crate::almanac::stack::BoxDepth;
    use crate::almanac::trap::TrapSize;

    fn mm(value: f64) -> Option<TypedLength> {
        Decimal::from_f64(value).ok().and_then(|n| TypedLength::new(n, LengthUnit::Millimetre).ok())
    }

    fn trap(length: f64, width: f64, depth: f64) -> TrapSize {
        TrapSize { length: mm(length), width: mm(width), depth: mm(depth) }
    }

    #[test]
    fn a_trap_as_deep_as_the_frame_side_less_the_clearance_just_fits() {
        for depth in [BoxDepth::Deep, BoxDepth::Medium, BoxDepth::Shallow] {
            let place = Place::usual(depth);
            let most = depth.frame_side().millimetres() - 5.0;
            assert!(
                matches!(fit(&trap(100.0, 7.0, most), &place), Fit::Fits { tightest: Side::Depth, spare }
                    if spare.millimetres() < 1e-6),
                "{depth:?}"
            );
            assert!(
                matches!(fit(&trap(100.0, 7.0, most + 0.01), &place), Fit::TooBig { side: Side::Depth, over, .. }
                    if (over.millimetres() - 0.01).abs() < 1e-6),
                "{depth:?}"
            );
        }
    }

    #[test]
    fn keeper_hangs_a_deep_trap_in_a_shallow_box_and_is_told_the_depth_fails_and_by_how_much() {
        let near = |length: Length, mm: f64| (length.millimetres() - mm).abs() < 1e-9;
        assert!(matches!(
            fit(&trap(100.0, 7.0, 200.0), &Place::usual(BoxDepth::Shallow)),
            Fit::TooBig { side: Side::Depth, over, trap, room }
                if near(over, 68.475) && near(trap, 200.0) && near(room, 131.525)
        ));
    }

    #[test]
    fn keeper_hangs_a_wide_trap_and_is_told_the_gap_fails() {
        let place = Place::usual(BoxDepth::Deep);
        assert!(matches!(fit(&trap(100.0, 8.0, 50.0), &place), Fit::TooBig { side: Side::Width, .. }));
        assert!(matches!(fit(&trap(500.0, 7.9, 50.0), &place), Fit::TooBig { side: Side::Length, .. }));
        assert!(matches!(fit(&trap(100.0, 7.9, 50.0), &place), Fit::Fits { tightest: Side::Width, spare }
                if (spare.millimetres() - 0.0375).abs() < 1e-9));
    }

    #[test]
    fn keeper_has_a_trap_as_long_as_a_frame_without_its_lugs_to_spare_and_is_told_the_walls_stop_it() {
        let place = Place::usual(BoxDepth::Deep);
        assert!(matches!(fit(&trap(475.0, 7.0, 50.0), &place), Fit::TooBig { side: Side::Length, over, .. }
                if (over.millimetres() - 8.275).abs() < 1e-9));
        assert!(matches!(fit(&trap(466.7, 7.0, 50.0), &place), Fit::Fits { tightest: Side::Length, .. }));
    }

    #[test]
    fn a_missing_measure_is_named_unless_a_known_one_already_fails() {
        let place = Place::usual(BoxDepth::Deep);
        let mut size = trap(100.0, 7.0, 50.0);
        size.width = None;
        assert_eq!(fit(&size, &place), Fit::Unknown { missing: Side::Width });
        size.depth = None;
        assert_eq!(fit(&size, &place), Fit::Unknown { missing: Side::Depth });
        size.length = mm(467.0);
        assert!(matches!(fit(&size, &place), Fit::TooBig { side: Side::Length, .. }));
    }
}
