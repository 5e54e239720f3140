//! The race for supers that are off the hives: when eggs in them may hatch, and until when they must be spun.
//!
//! Nothing in here runs. Hours are differences of [`Moment`]s, worked out anew whenever somebody looks.

use super::moment::Moment;
use super::stage::{Stage, day_mean, rates};
use super::warmth::{Span, Swing};

/// Hours from bees off to the extractor that keepers aim at: common practice, no source.
pub const GOAL_HOURS: u32 = 24;
/// Hours after which supers are no longer left standing: common practice, no source.
pub const LIMIT_HOURS: u32 = 48;
/// Hours within which wet supers and cappings are back on hives or in the freezer: common practice, no source.
pub const BACK_HOURS: u32 = 24;
/// Per cent of relative humidity below which, with air moved through the stacks, eggs did not hatch (Pettis & Feldlaufer);
/// another source says 34.
pub const DRY_PERCENT: f64 = 50.0;

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
        /// At the mean rate of a day in the room, by the constants that fit warm rooms best.
        minutes: i32,
        /// By the quickest constants, at its warmest all day.
        earliest: i32,
        /// By the slowest, at its coolest all day; none where nothing develops there.
        latest: Option<i32>,
    },
}

/// When an egg hatches in a `room`, laid in the moment in which the bees were off. Eggs that were laid before hatch sooner:
/// it is an outer bound.
pub fn hatch(room: Swing) -> Hatch {
    let [mean, ..] = day_mean(room, |celsius| [rate(celsius), 0.0, 0.0]);
    if mean > 0.0 {
        let (cool, warm) = (Swing::flat(room.low), Swing::flat(room.high));
        let [quick, _, slow] = rates(Stage::Egg, &Span { cool, likely: room, warm });
        let latest = (slow > 0.0).then(|| minutes(slow));
        Hatch::After { minutes: minutes(mean), earliest: minutes(quick.max(mean)), latest }
    } else if room.high.celsius() <= Stage::Egg.first().floor {
        Hatch::TooCold
    } else {
        Hatch::TooHot
    }
}

/// Share of an egg's development in a day at a constant `celsius`.
fn rate(celsius: f64) -> f64 {
    let (quickest, limit) = Stage::Egg.heat();
    if celsius > limit { 0.0 } else { Stage::Egg.first().rate(celsius.min(quickest)) }
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
    /// The earliest that they may.
    pub earliest: Option<Moment>,
}

/// What decides until when to spin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decides {
    /// The keeper's goal.
    Goal,
    /// The keeper's limit, where the goal is no earlier.
    Limit,
    /// The earliest hatch.
    Hatch,
}

impl Race {
    /// The race of a stack that was bee-free at `off`, with hours for goal and limit. A goal behind the limit is the limit.
    pub fn new(off: Moment, goal_hours: u32, limit_hours: u32, hatch: Hatch) -> Race {
        let limit = off.plus_hours(limit_hours);
        let (hatch, earliest) = match hatch {
            Hatch::After { minutes, earliest, .. } => (Some(off.plus(minutes)), Some(off.plus(earliest))),
            Hatch::TooCold | Hatch::TooHot => (None, None),
        };
        Race { off, goal: off.plus_hours(goal_hours).min(limit), limit, hatch, earliest }
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

    /// Until when to spin, and what decides it: goal, limit or the earliest hatch, whichever comes first.
    pub fn spin_by(&self) -> (Moment, Decides) {
        let own = if self.goal < self.limit { Decides::Goal } else { Decides::Limit };
        match self.earliest {
            Some(hatch) if hatch < self.goal => (hatch, Decides::Hatch),
            _ => (self.goal, own),
        }
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
