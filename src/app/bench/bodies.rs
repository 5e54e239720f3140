//! Oil or beetles: what the bodies in a trap hide.

use super::draft::BenchDraft;
use super::read::{self, MOST_BODIES};
use super::yard::plain_trap;
use crate::almanac::oil::{BodyVolume, TrueLevel, bodies_volume, level_flatters, level_without_bodies};
use crate::almanac::quantity::Share;
use crate::almanac::tally::CountRange;
use crate::almanac::typed::{self, TypedError};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct BodiesSum {
    /// Beetles in the trap.
    pub bodies: CountRange,
    /// Level as read.
    pub level: Share,
    /// Space the bodies take.
    pub volume: BodyVolume,
    /// Level without them; none when the trap holds nothing.
    pub without: Option<TrueLevel>,
    /// So many that the reading flatters.
    pub flatters: bool,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<BodiesSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<BodiesSum, TypedError> {
    let bodies = typed::count_or_range(draft.bodies_count(), MOST_BODIES)?;
    let level = typed::share(draft.bodies_level())?;
    let holds = read::volume(draft.bodies_holds(), draft.bodies_holds_unit())?;
    let without = level_without_bodies(level, bodies, &plain_trap(holds, level));
    Ok(BodiesSum { bodies, level, volume: bodies_volume(bodies), without, flatters: level_flatters(bodies) })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 100 beetles hide 1.3–2.6 mL.
    #[test]
    fn a_hundred_beetles_hide_up_to_two_and_a_half_millilitres() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert!((sum.volume.low.millilitres() - 1.3).abs() < 1e-9);
        assert!((sum.volume.high.unwrap().millilitres() - 2.6).abs() < 1e-9);
        // 20 mL trap, half full: 10 mL less 1.3 to 2.6.
        let without = sum.without.unwrap();
        assert!((without.low - 0.37).abs() < 1e-9 && (without.high - 0.435).abs() < 1e-9);
        assert!(sum.flatters);
    }
}
