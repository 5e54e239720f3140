//! When bait and patties come out again: before larvae that hatch in them leave.

use super::day::Day;
use super::stage::Stage;

/// Days after which bait is taken out at the latest: common practice, no source.
pub const USUAL_DAYS: u32 = 7;
/// Days by which it is out before larvae could leave: judgement.
const AHEAD: f64 = 2.0;

/// Days of egg and larva in a brood nest of 34 °C, by the constants that fit warm places best. Bait in a hive is seldom
/// warmer.
pub fn brood_nest() -> (f64, f64) {
    let days = |stage: Stage| stage.first().days(34.0).unwrap_or_default();
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
