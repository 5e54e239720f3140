//! How much of their comb the bees cover.

use super::draft::BenchDraft;
use crate::almanac::cover::{Cover, cover};
use crate::almanac::typed::{self, TypedError};

/// Most frames of a hive.
pub const MOST_FRAMES: u32 = 120;

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct CoverSum {
    /// Sides covered.
    pub sides: u32,
    /// Frames of drawn comb.
    pub frames: u32,
    /// Frames of a box.
    pub a_box: u32,
    /// The answer.
    pub cover: Cover,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<CoverSum> {
    read_all(draft).ok().flatten()
}

fn read_all(draft: &BenchDraft) -> Result<Option<CoverSum>, TypedError> {
    let sides = typed::count(draft.cover_sides(), 0, 2 * MOST_FRAMES)?;
    let frames = typed::count(draft.cover_frames(), 1, MOST_FRAMES)?;
    let a_box = typed::count(draft.cover_a_box(), 1, MOST_FRAMES)?;
    Ok(cover(sides, frames, a_box).map(|cover| CoverSum { sides, frames, a_box, cover }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_gives_one_box_up() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert_eq!(sum.cover.off, Some(1));
        assert_eq!(reckon(&BenchDraft::default().with("cover_frames", "0")), None);
    }
}
