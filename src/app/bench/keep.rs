//! "Keep this yard": what the first sum of the Bench hands over to the records.

use crate::almanac::day::Day;
use crate::almanac::stack::BoxDepth;
use crate::almanac::trap::TrapKind;

/// A yard as typed in the short form, checked and ready to be recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct KeepPlan {
    /// Name of the yard, 1–60 visible characters.
    pub yard: String,
    /// Tags of its hives, in walking order, each once.
    pub tags: Vec<String>,
    /// Boxes of each hive that get traps, from the floor up. All hives alike.
    pub boxes: Vec<BoxDepth>,
    /// Traps in each box.
    pub traps_a_box: u8,
    /// The kind of trap, with its capacity, fill and the longest days between services.
    pub kind: TrapKind,
    /// The day the traps were filled; none when they are not in yet.
    pub filled: Option<Day>,
}
