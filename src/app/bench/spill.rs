//! The tilt at which an open trap spills.

use super::draft::BenchDraft;
use super::read;
use crate::almanac::quantity::{Decimal, Length, Share};
use crate::almanac::spill::{Spill, spill};
use crate::almanac::typed;

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct SpillSum {
    /// Inner length along the tilt.
    pub length: Length,
    /// Inner depth.
    pub depth: Length,
    /// How full.
    pub fill: Share,
    /// At that fill.
    pub spill: Spill,
    /// Degrees at other fills, to compare: per cent and degrees.
    pub others: Vec<(u32, f64)>,
}

/// The answer to what stands in the fields; none while one of them cannot be read, or a side is 0.
pub fn reckon(draft: &BenchDraft) -> Option<SpillSum> {
    let length = read::length(draft.spill_length(), draft.spill_length_unit()).ok()?.length();
    let depth = read::length(draft.spill_depth(), draft.spill_depth_unit()).ok()?.length();
    let fill = typed::share(draft.spill_fill()).ok()?;
    let others = [30, 50, 70, 90].into_iter().filter_map(|percent| {
        let fill = Share::from_percent(Decimal::whole(percent)).ok()?;
        Some((percent, spill(length, depth, fill)?.degrees))
    });
    Some(SpillSum { length, depth, fill, spill: spill(length, depth, fill)?, others: others.collect() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_goes_over_at_seventeen_degrees() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert!((sum.spill.degrees - 17.1).abs() < 0.05);
        assert_eq!(sum.others.len(), 4);
        let flat = BenchDraft::default().with("spill_depth", "0");
        assert_eq!(reckon(&flat), None);
    }
}
