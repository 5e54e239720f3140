//! A hive as a stack of boxes, and where traps stand in it.
//!
//! Common practice, no source: two traps a box in opposite corners, the diagonal changing from each box to the
//! next one up, so that a beetle driven along a wall meets a trap on every level.

use super::json::json_choice;
use super::quantity::{Length, TypedLength};

/// How many bees the woodenware is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HiveSize {
    /// Eight to twelve frames a box.
    #[default]
    Full,
    /// A nucleus: three to six frames a box.
    Nuc,
}

impl HiveSize {
    /// Traps a box when the keeper has not said otherwise (common practice, no source).
    pub fn usual_traps(self) -> u8 {
        match self {
            HiveSize::Full => 2,
            HiveSize::Nuc => 1,
        }
    }

    /// Frames a box when the keeper has not said otherwise.
    pub fn usual_frames(self) -> u8 {
        match self {
            HiveSize::Full => 10,
            HiveSize::Nuc => 5,
        }
    }

    /// Places a trap can hang in one box: both ends of every gap between frames.
    pub fn places(self) -> u8 {
        (self.usual_frames() - 1) * 2
    }
}

/// The depth of a box.
///
/// Nominal outside depths of the ten-frame box with frames of 19 in top bars: 9 5/8, 6 5/8 and 5 11/16 in (common
/// practice, no source). A keeper with other woodenware types the depth.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum BoxDepth {
    /// A deep.
    #[default]
    Deep,
    /// A medium.
    Medium,
    /// A shallow.
    Shallow,
    /// Any other depth, as measured by the keeper.
    Own(TypedLength),
}

impl BoxDepth {
    /// Depth of the box.
    pub fn depth(self) -> Length {
        let millimetres = match self {
            BoxDepth::Deep => 244.475,
            BoxDepth::Medium => 168.275,
            BoxDepth::Shallow => 144.4625,
            BoxDepth::Own(typed) => return typed.length(),
        };
        Length::from_millimetres(millimetres).unwrap_or_default()
    }

    /// Depth of the frame sides that go with the box: 9 1/8, 6 1/4 and 5 3/8 in (common practice, no source); for
    /// an own depth, 1/2 in less than the box, which is what the standard boxes leave or more.
    pub fn frame_side(self) -> Length {
        let millimetres = match self {
            BoxDepth::Deep => 231.775,
            BoxDepth::Medium => 158.75,
            BoxDepth::Shallow => 136.525,
            BoxDepth::Own(typed) => (typed.length().millimetres() - 12.7).max(0.0),
        };
        Length::from_millimetres(millimetres).unwrap_or_default()
    }
}

/// A corner of a box, seen from behind the hive looking at the entrance side as the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Corner {
    /// Entrance side, left.
    FrontLeft,
    /// Entrance side, right.
    FrontRight,
    /// Far side, left.
    BackLeft,
    /// Far side, right.
    BackRight,
}

impl Corner {
    /// Every corner.
    pub const ALL: [Corner; 4] = [Corner::FrontLeft, Corner::FrontRight, Corner::BackLeft, Corner::BackRight];

    /// The other end of the same diagonal.
    #[must_use]
    pub fn opposite(self) -> Corner {
        match self {
            Corner::FrontLeft => Corner::BackRight,
            Corner::BackRight => Corner::FrontLeft,
            Corner::FrontRight => Corner::BackLeft,
            Corner::BackLeft => Corner::FrontRight,
        }
    }

    /// The corner beside this one on the same short side.
    #[must_use]
    pub fn beside(self) -> Corner {
        match self {
            Corner::FrontLeft => Corner::FrontRight,
            Corner::FrontRight => Corner::FrontLeft,
            Corner::BackLeft => Corner::BackRight,
            Corner::BackRight => Corner::BackLeft,
        }
    }
}

/// Where one trap stands in its box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Spot {
    /// In a corner.
    Corner(Corner),
    /// Between frames elsewhere in the box, counted from 1.
    Between(u8),
    /// On the floor under the lowest box.
    Floor,
}

json_choice!(HiveSize words { Full = "full", Nuc = "nuc" } one {} many {});
json_choice!(BoxDepth words { Deep = "deep", Medium = "medium", Shallow = "shallow" } one { Own = "own" } many {});
json_choice!(Corner
    words { FrontLeft = "fl", FrontRight = "fr", BackLeft = "bl", BackRight = "br" }
    one {} many {});
json_choice!(Spot words { Floor = "floor" } one { Corner = "corner", Between = "between" } many {});

/// Where `count` traps go in the box that is `level`-th from the floor (1 = lowest).
///
/// Odd boxes use the diagonal front-left to back-right, even boxes the other. A box with one trap takes the corner
/// opposite to the single trap of the box below. Up to four traps fill the corners, the rest hang between frames;
/// more than [`HiveSize::places`] do not fit and are left out. No place is given twice.
pub fn spots(level: usize, count: u8, size: HiveSize, below: &[Spot]) -> Vec<Spot> {
    let first = if level % 2 == 1 { Corner::FrontLeft } else { Corner::FrontRight };
    let lead = match (count, below) {
        (1, [Spot::Corner(single)]) => single.opposite(),
        _ => first,
    };
    let corners = [lead, lead.opposite(), lead.beside(), lead.beside().opposite()].map(Spot::Corner);
    let between = (1..=size.places().saturating_sub(4)).map(Spot::Between);
    corners.into_iter().chain(between).take(usize::from(count)).collect()
}

/// Traps for one stack: the spots of every box, from the floor up.
pub fn stack_spots(counts: &[u8], size: HiveSize) -> Vec<Vec<Spot>> {
    let mut stack: Vec<Vec<Spot>> = Vec::with_capacity(counts.len());
    for (index, count) in counts.iter().enumerate() {
        let below = stack.last().map_or(&[][..], Vec::as_slice);
        let here = spots(index + 1, *count, size, below);
        stack.push(here);
    }
    stack
}

/// The sum behind "traps for my yard" when all hives are alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TrapTotal {
    /// Hives.
    pub hives: u32,
    /// Boxes on each hive that get traps.
    pub boxes: u32,
    /// Traps in each such box.
    pub a_box: u32,
    /// Product of the three.
    pub traps: u32,
}

/// Traps for `hives` hives with `boxes` trapped boxes each and `a_box` traps a box.
pub fn trap_total(hives: u32, boxes: u32, a_box: u32) -> TrapTotal {
    TrapTotal { hives, boxes, a_box, traps: hives.saturating_mul(boxes).saturating_mul(a_box) }
}
