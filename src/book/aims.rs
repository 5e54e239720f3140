//! What the keeper aims at: hours for honey, how often to look and how sure a look is, days for bait.

use super::record::Blank;
use super::standing::Standing;
use crate::almanac::bait;
use crate::almanac::honey;

/// The keeper's aims, each as written down or as usual.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aims {
    /// Hours from bees off until supers are to be spun.
    pub goal_hours: u32,
    /// Hours after which they must be.
    pub limit_hours: u32,
    /// Chance, 0–1, that a look finds what is there.
    pub notice: f64,
    /// Days from look to look; none was written down.
    pub look_every: Option<u32>,
    /// Days after which bait and patties come out.
    pub bait_days: u32,
}

impl Aims {
    /// Those in force.
    pub fn of(standing: &Standing) -> Aims {
        let aims = standing.facts(Blank::Aims, None, None);
        let whole = |name| aims.number(name).and_then(|(number, _)| whole(number));
        Aims {
            goal_hours: whole("goal_hours").unwrap_or(honey::GOAL_HOURS),
            limit_hours: whole("limit_hours").unwrap_or(honey::LIMIT_HOURS),
            notice: aims.number("notice").map_or(1.0, |(percent, _)| percent / 100.0),
            look_every: whole("look_every"),
            bait_days: whole("bait_days").unwrap_or(bait::USUAL_DAYS),
        }
    }
}

/// Part of an hour or a day is none: an aim is rather too short.
pub fn whole(number: f64) -> Option<u32> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to what a u32 holds
    (number >= 1.0).then_some(number.min(1_000_000.0) as u32)
}
