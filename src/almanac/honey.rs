//! The race for supers that are off the hives: when eggs in them may hatch, and until when they must be spun.
//!
//! Nothing in here runs. Hours are differences of [`Moment`]s, worked out anew whenever somebody looks.

use super::moment::Moment;
use super::warmth::Warmth;

/// Hours from bees off to the extractor that keepers aim at: common practice, no source.
pub const GOAL_HOURS: u32 = 24;
/// Hours after which supers are no longer left standing: common practice, no source.
pub const LIMIT_HOURS: u32 = 48;
/// Hours within which wet supers and cappings are back on hives or in the freezer: common practice, no source.
pub const BACK_HOURS: u32 = 24;
/// Per cent of relative humidity below which, with air moved through the stacks, eggs did not hatch (Pettis & Feldlaufer);
/// another source says 34.
pub const DRY_PERCENT: f64 = 50.0;

/// Degree-days (°C) of an egg above its floor: 61 h at 21 °C and 22 h at 35 °C (Meikle & Patt 2011).
const EGG_DEGREE_DAYS: f64 = 19.4;
/// No egg develops at or below it, °C (Meikle & Patt 2011).
pub const EGG_FLOOR: f64 = 13.5;
/// Warmer than this nothing goes faster, °C (optimum of the egg in the thermal-limits study).
const EGG_OPTIMUM: f64 = 39.1;
/// No egg develops above it, °C (same study).
pub const EGG_CEILING: f64 = 46.5;
/// Above it few eggs live, °C (Meikle & Patt 2011).
pub const FEW_LIVE: f64 = 37.0;

/// When eggs may hatch in a room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hatch {
    /// Not at this temperature. The beetles live on.
    TooCold,
    /// Not at this temperature.
    TooHot,
    /// So many minutes after they were laid.
    After {
        /// At the mean rate of a day in the room.
        minutes: i32,
        /// Were it as warm as at its warmest all the time.
        warmest: i32,
    },
}

/// When an egg hatches in a room between `low` and `high`, laid in the moment in which the bees were off. Eggs that were
/// laid before hatch sooner: it is an outer bound.
pub fn hatch(low: Warmth, high: Warmth) -> Hatch {
    let (low, high) = (low.celsius().min(high.celsius()), low.celsius().max(high.celsius()));
    let (mean, warmest) = (day_rate(low, high), day_rate(high, high));
    // Where it is too hot for a part of the day alone, the rest of the day counts.
    let warmest = warmest.max(mean);
    if mean > 0.0 {
        Hatch::After { minutes: minutes(mean), warmest: minutes(warmest) }
    } else if high <= EGG_FLOOR {
        Hatch::TooCold
    } else {
        Hatch::TooHot
    }
}

/// Share of an egg's development in a day at a constant `celsius`.
fn rate(celsius: f64) -> f64 {
    if celsius <= EGG_FLOOR || celsius > EGG_CEILING {
        return 0.0;
    }
    (celsius.min(EGG_OPTIMUM) - EGG_FLOOR) / EGG_DEGREE_DAYS
}

/// Cosines of (2k − 1)·π/64 for k = 1 to 16. With their negatives they are the nodes of Gauss and Chebyshev, at which the
/// mean of a function over a sine is the plain mean.
const NODES: [f64; 16] = [
    0.998_795_456_205_172_4,
    0.989_176_509_964_781,
    0.970_031_253_194_544,
    0.941_544_065_183_020_8,
    0.903_989_293_123_443_3,
    0.857_728_610_000_272_1,
    0.803_207_531_480_644_9,
    0.740_951_125_354_959_1,
    0.671_558_954_847_018_3,
    0.595_699_304_492_433_4,
    0.514_102_744_193_221_7,
    0.427_555_093_430_282_1,
    0.336_889_853_392_220_05,
    0.242_980_179_903_263_87,
    0.146_730_474_455_361_75,
    0.049_067_674_327_418_015,
];

/// The mean of [`rate`] over a day whose temperature is a sine from `low` to `high`.
fn day_rate(low: f64, high: f64) -> f64 {
    let (middle, half) = (f64::midpoint(low, high), (high - low) / 2.0);
    let mut sum = 0.0;
    for node in NODES {
        sum += rate(middle + half * node) + rate(middle - half * node);
    }
    sum / 32.0
}

/// Down to the minute: a hatch is rather told too early. Held below ten years.
#[allow(clippy::cast_possible_truncation)] // held to what an i32 holds
fn minutes(rate: f64) -> i32 {
    (24.0 * 60.0 / rate).floor().min(5_000_000.0) as i32
}

/// How far a stack has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stand {
    /// The goal is still to come.
    InTime,
    /// The goal is over, the limit is not.
    PastGoal,
    /// The limit is over.
    PastLimit,
}

/// The hours of a stack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Race {
    /// When the bees were off.
    pub off: Moment,
    /// Until when the keeper wants to spin.
    pub goal: Moment,
    /// The last moment.
    pub limit: Moment,
    /// When eggs that were laid as the bees went may hatch.
    pub hatch: Option<Moment>,
}

impl Race {
    /// The race of a stack that was bee-free at `off`, with hours for goal and limit. A goal behind the limit is the limit.
    pub fn new(off: Moment, goal_hours: u32, limit_hours: u32, hatch: Hatch) -> Race {
        let limit = off.plus_hours(limit_hours);
        let hatch = match hatch {
            Hatch::After { minutes, .. } => Some(off.plus(minutes)),
            Hatch::TooCold | Hatch::TooHot => None,
        };
        Race { off, goal: off.plus_hours(goal_hours).min(limit), limit, hatch }
    }

    /// How far it has come.
    pub fn stand(&self, now: Moment) -> Stand {
        if now > self.limit {
            Stand::PastLimit
        } else if now > self.goal {
            Stand::PastGoal
        } else {
            Stand::InTime
        }
    }

    /// Until when to spin: the limit, or before it when eggs may hatch before it.
    pub fn spin_by(&self) -> Moment {
        self.hatch.map_or(self.limit, |hatch| hatch.min(self.limit))
    }
}

/// What an extracting day can take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Work {
    /// Minutes of work before the limit.
    pub minutes: u32,
    /// Of these for setting up, settling and cleaning.
    pub beside: u32,
    /// Frames in a super, 1 or more.
    pub frames: u32,
    /// Frames the extractor takes, 1 or more.
    pub load: u32,
    /// Minutes for a load.
    pub spin: u32,
    /// Seconds to uncap a frame.
    pub uncap: u32,
}

/// How many supers may be pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pull {
    /// So many.
    pub supers: u32,
    /// Minutes that they take.
    pub takes: u32,
    /// Uncapping is slower than the extractor.
    pub by_uncapping: bool,
}

impl Work {
    /// Minutes that `supers` take, uncapping and spinning side by side: the slower of the two, up to the minute.
    pub fn takes(&self, supers: u32) -> u32 {
        let frames = supers.saturating_mul(self.frames);
        let (spin, uncap) = (self.spins(frames), self.uncaps(frames));
        self.beside.saturating_add(spin.max(uncap))
    }

    fn spins(&self, frames: u32) -> u32 {
        frames.div_ceil(self.load.max(1)).saturating_mul(self.spin)
    }

    fn uncaps(&self, frames: u32) -> u32 {
        frames.saturating_mul(self.uncap).div_ceil(60)
    }

    /// The most supers whose frames are spun within the time; none where neither work takes any.
    pub fn pull(&self) -> Option<Pull> {
        let left = self.minutes.saturating_sub(self.beside);
        let spun = left.checked_div(self.spin).map(|loads| loads.saturating_mul(self.load));
        let uncapped = left.saturating_mul(60).checked_div(self.uncap);
        let frames = match (spun, uncapped) {
            (Some(spun), Some(uncapped)) => spun.min(uncapped),
            (Some(frames), None) | (None, Some(frames)) => frames,
            (None, None) => return None,
        };
        let supers = frames / self.frames.max(1);
        // With none to pull, what one would take tells what holds it up.
        let one = supers.max(1).saturating_mul(self.frames);
        let by_uncapping = self.uncaps(one) > self.spins(one);
        Some(Pull { supers, takes: self.takes(supers), by_uncapping })
    }
}
