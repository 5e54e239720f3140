//! What the keeper is asked before trap work is saved.

use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::book::Book;
use crate::book::entry::{Check, Did};
use crate::book::id::ThingId;

/// What the keeper should be asked before a check is saved. None of it stops the save.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// "Topped up", but less oil after than before: swapped?
    Swapped,
    /// Topped up or replaced, and yet no oil is left in a trap that takes some: an empty level was meant to be none?
    NoOil,
    /// More oil found than was left: water or debris in it, or a service nobody logged.
    Rose {
        /// Level known before.
        from: Share,
    },
    /// A great many beetles.
    Many,
    /// This hive was logged on this day already, and the work is not what mends a trap that does not fish.
    Twice,
    /// Other work on this hive carries a later day.
    Backdated,
}

/// A count above which a keeper is asked once whether it is right.
const MANY: u32 = 999;

impl Book {
    /// What to ask before `work` is saved.
    pub fn doubts(&self, day: Day, work: &Check) -> Vec<Doubt> {
        let mut doubts = Vec::new();
        let Some(hive) = self.standing().hives.get(&work.hive) else { return doubts };
        let named = work.traps.as_deref();
        if matches!(work.did, Did::ToppedUp | Did::Replaced)
            && work.after == Some(Share::NONE)
            && self.usual_level(hive, work.did, named) != work.after
        {
            doubts.push(Doubt::NoOil);
        } else if work.did == Did::ToppedUp
            && let (Some(before), Some(after)) = (work.before, work.after)
            && after < before
        {
            doubts.push(Doubt::Swapped);
        }
        let named = |id: &ThingId| work.traps.as_ref().is_none_or(|traps| traps.contains(id));
        let known =
            hive.traps().filter(|trap| named(&trap.id)).filter_map(|trap| trap.level).map(|(_, level)| level);
        if let (Some(found), Some(from)) = (work.before, known.min())
            && found > from
        {
            doubts.push(Doubt::Rose { from });
        }
        if work.count.is_some_and(|count| count.low() > MANY) {
            doubts.push(Doubt::Many);
        }
        if let Some(last) = &hive.last {
            // What was spilled or missing is mended: that is no second walk.
            let mends = matches!(work.did, Did::ToppedUp | Did::Replaced) && hive.trouble().is_some();
            if last.day == day && last.did.is_some() && work.traps.is_none() && !mends {
                doubts.push(Doubt::Twice);
            }
            if last.day > day {
                doubts.push(Doubt::Backdated);
            }
        }
        doubts
    }
}
