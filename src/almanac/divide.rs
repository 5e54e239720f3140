//! How many frames of bees a split takes, so that both hives guard their comb once the foragers have flown back.
//!
//! Of the bees that are carried over a share flies back to the old stand. The new hive is to cover all of its comb, the old
//! one nine tenths (`cover`); both are judgement, no source.

use super::cover::ENOUGH_TWENTIETHS;
use super::quantity::{Decimal, Share};

/// Most frames of comb a hive is reckoned with; more count as so many.
pub const MOST_FRAMES: u32 = 1000;

/// What is to be divided. Frames of bees are combs covered on both sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Divide {
    /// Frames of bees in the hive before; below 0 as 0.
    pub bees: Decimal,
    /// Frames of comb that stay, from 1 to [`MOST_FRAMES`].
    pub stays: u32,
    /// Frames of comb the new hive gets, from 1 to [`MOST_FRAMES`].
    pub goes: u32,
    /// Share of the bees carried over that flies back, less than all.
    pub back: Share,
}

/// The answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Divided {
    /// Frames of bees to carry over: the fewest whole ones after which the new hive covers its comb.
    pub take: u32,
    /// What the new hive covers of its comb once the foragers are gone, 1 being all: 1 or more.
    pub new: f64,
    /// What the old one covers once they are back; not below 0.
    pub old: f64,
    /// Frames of bees the hive would have to hold before for both to be enough, rounded up.
    pub wants: u32,
    /// It holds them.
    pub enough: bool,
}

/// A whole number in the smallest parts that the sums below are made of.
const ONE: i64 = 1_000_000;

/// The smallest split that guards its comb, and what it leaves. None without comb on one side, or when all bees fly back.
pub fn divide(of: &Divide) -> Option<Divided> {
    let percent = of.back.percent().millionths();
    // What stays with the new hive of each frame of bees carried over, in hundred millionths.
    let keeps = 100 * ONE - percent;
    if of.stays == 0 || of.goes == 0 || keeps <= 0 {
        return None;
    }
    let (stays, goes) = (i64::from(of.stays.min(MOST_FRAMES)), i64::from(of.goes.min(MOST_FRAMES)));
    let take = up(goes * 100 * ONE, keeps);
    // Twentieths, so that 18 of 20 is enough to the letter.
    let (twentieths, enough) = (i64::from(ENOUGH_TWENTIETHS), 20);
    let old_wants = stays * twentieths * 100 * ONE;
    let carried = take * keeps;
    let wants = up(old_wants + carried * enough, enough * 100 * ONE).max(take);
    // No number has more than 10¹⁵ millionths, so two thousand times that still fits.
    let bees = of.bees.millionths().max(0);
    #[allow(clippy::cast_precision_loss)] // shown to the whole per cent
    let share = |covered: i64, comb: i64| (covered.max(0) as f64) / ((comb * 100 * ONE) as f64);
    Some(Divided {
        take: whole(take),
        new: share(carried, goes),
        old: share(bees * 100 - carried, stays),
        wants: whole(wants),
        enough: bees >= take * ONE && (bees * 100 - carried) * enough >= old_wants,
    })
}

fn up(number: i64, by: i64) -> i64 {
    (number + by - 1) / by
}

fn whole(number: i64) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
