//! What was done at a hive, or why nothing was.

use crate::almanac::json::{json_choice, json_object};
use crate::almanac::quantity::Share;
use crate::almanac::tally::CountRange;
use crate::book::id::ThingId;

/// Trap work on a whole hive or on some of its traps.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// Which hive.
    pub hive: ThingId,
    /// Which traps; none means every trap in the hive on that day.
    pub traps: Option<Vec<ThingId>>,
    /// What was done.
    pub did: Did,
    /// Oil level found, as a share of the trap's depth.
    pub before: Option<Share>,
    /// Oil level left.
    pub after: Option<Share>,
    /// Dead beetles in all these traps together, those since the last count: a look or a top-up may leave the bodies in
    /// the oil, and counted again they would be beetles of days they did not fall in on.
    pub count: Option<CountRange>,
    /// In the keeper's words, at most 500 characters.
    pub note: Option<String>,
}

/// What was done to traps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Did {
    /// Looked at and left.
    AsFound,
    /// Oil added.
    ToppedUp,
    /// Emptied and filled anew, or a new trap in its place.
    Replaced,
    /// Found spilled. Filled again on the spot when a level after is given.
    Spilled,
    /// Not there any more.
    Missing,
    /// Closed by the bees with propolis.
    GluedShut,
}

/// Why a hive was skipped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SkipReason {
    /// Hot bees.
    Temper,
    /// Robbing.
    Robbing,
    /// Rain, storm, cold or dark.
    Weather,
    /// No time or no material left.
    NoTime,
    /// Something else; see the note.
    Other,
}

/// How the care for a hive ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ending {
    /// The colony is dead.
    Dead,
    /// Sold or given away.
    Sold,
    /// Joined with another colony.
    Joined {
        /// The hive that took it in.
        into: Option<ThingId>,
    },
    /// The bees left.
    Gone,
}

json_object!(Check { hive, did } maybe { traps, before, after, count, note });
json_choice!(Did
    words {
        AsFound = "as_found", ToppedUp = "topped_up", Replaced = "replaced", Spilled = "spilled",
        Missing = "missing", GluedShut = "glued_shut",
    }
    one {} many {});
json_choice!(SkipReason
    words { Temper = "temper", Robbing = "robbing", Weather = "weather", NoTime = "no_time", Other = "other" }
    one {} many {});
json_choice!(Ending
    words { Dead = "dead", Sold = "sold", Gone = "gone" }
    one {}
    many { Joined = "joined" {} maybe { into } });
