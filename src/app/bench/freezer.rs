//! Comb through the freezer.

use super::draft::BenchDraft;
use super::read;
use crate::almanac::freezer::{Batches, KILLS_CELSIUS, KILLS_HOURS, batches};
use crate::almanac::typed::{self, TypedError};

/// Most frames at a time.
pub const MOST_FRAMES: u32 = 10_000;
/// Longest span: a month.
pub const MOST_HOURS: u32 = 744;

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct FreezerSum {
    /// Frames.
    pub frames: u32,
    /// Frames at a time.
    pub fit: u32,
    /// Hours until the core is cold.
    pub chill: u32,
    /// Hours from there.
    pub hold: u32,
    /// The answer.
    pub batches: Batches,
    /// Warmer than what is known to kill.
    pub too_warm: bool,
    /// Shorter than what is known to kill.
    pub too_short: bool,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<FreezerSum> {
    read_all(draft).ok().flatten()
}

fn read_all(draft: &BenchDraft) -> Result<Option<FreezerSum>, TypedError> {
    let frames = typed::count(draft.freezer_frames(), 0, MOST_FRAMES)?;
    let fit = typed::count(draft.freezer_fit(), 1, MOST_FRAMES)?;
    let cold = read::warmth(draft.freezer_cold(), draft.freezer_cold_unit())?;
    let chill = typed::count(draft.freezer_chill(), 0, MOST_HOURS)?;
    let hold = typed::count(draft.freezer_hold(), 0, MOST_HOURS)?;
    let (too_warm, too_short) = (cold > KILLS_CELSIUS + 1e-9, hold < KILLS_HOURS);
    let sum = |batches| FreezerSum { frames, fit, chill, hold, batches, too_warm, too_short };
    Ok(batches(frames, fit, chill, hold).map(sum))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_takes_four_batches_and_twelve_days() {
        let draft = BenchDraft::default();
        let sum = reckon(&draft).unwrap();
        assert_eq!((sum.batches.batches, sum.batches.days), (4, 12));
        assert!(!sum.too_warm && !sum.too_short);
        // 10 °F is the −12 °C of the source, rounded there.
        assert!(reckon(&draft.clone().with("freezer_cold", "-11.9")).unwrap().too_warm);
        assert!(!reckon(&draft.clone().with("freezer_cold", "-12")).unwrap().too_warm);
        assert!(reckon(&draft.with("freezer_hold", "23")).unwrap().too_short);
    }
}
