//! When bait and patties come out again: before larvae that hatch in them leave.

use super::day::Day;
use super::stage::{Edge, NEST, Stage, rates};
use super::warmth::{Span, Swing, Warmth};

/// Days after which bait is taken out at the latest: common practice, no source.
pub const USUAL_DAYS: u32 = 7;
/// Days by which it is out before larvae could leave: judgement.
const AHEAD: f64 = 2.0;

/// Days of egg and larva at the quick edge of the brood nest of a strong colony. Bait in a hive is seldom warmer.
///
/// This is earlier than the formula with the constants that fit warm places best: at 34 °C they come to 9 days, and 9 less
/// 2 is a week. But the dates of this page have larvae out of a nest sooner than that, and bait that is out "two days
/// before" has to be so by the earliest of them.
pub fn brood_nest() -> (f64, f64) {
    let (middle, give) = NEST;
    let span = Span::around(Swing::flat(Warmth::held(middle)), give);
    let days = |stage: Stage| 1.0 / Edge::Earliest.of(rates(stage, &span));
    (days(Stage::Egg), days(Stage::Larva))
}

/// When bait is due, and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Off {
    /// The day on which it is to be out.
    pub on: Day,
    /// Days after it was put in, 1 or more.
    pub days: u32,
    /// The beetles decide and not the keeper's longest time.
    pub by_larvae: bool,
}

/// When bait that was put in on `since` is to be out: after `longest` days, or two days before larvae of eggs laid on the
/// first day leave, `egg` and `larva` being the days of these stages at its temperature. Never before the day after.
pub fn off(since: Day, longest: u32, egg: f64, larva: f64) -> Off {
    let breed = (egg + larva - AHEAD).floor().clamp(1.0, 9999.0);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to 1–9999
    let breed = breed as u32;
    let longest = longest.max(1);
    let days = breed.min(longest);
    Off { on: since.plus(i32::try_from(days).unwrap_or(i32::MAX)), days, by_larvae: breed < longest }
}
