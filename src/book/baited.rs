//! Bait and patties that are in a hive, and when they are to be out again.

use super::aims::Aims;
use super::id::ThingId;
use super::record::{Blank, Record};
use super::standing::Standing;
use crate::almanac::bait::{self, Off};
use crate::almanac::day::Day;

/// Something in a hive in which larvae may grow up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Baited {
    /// A patty for the bees, and not bait for beetles.
    pub patty: bool,
    /// The day it was put in, or last renewed.
    pub since: Day,
    /// When it is to be out.
    pub off: Off,
}

/// What is in a hive by its newest records, bait before a patty.
pub fn baited(standing: &Standing, hive: &ThingId, aims: &Aims) -> Vec<Baited> {
    within(aims, &|blank| standing.newest_record(blank, hive).map(|now| (now.day, &now.record)))
}

/// The same where `newest` finds the newest record of a kind.
pub(super) fn within<'a>(aims: &Aims, newest: &dyn Fn(Blank) -> Option<(Day, &'a Record)>) -> Vec<Baited> {
    let mut found = Vec::new();
    for (blank, patty) in [(Blank::Bait, false), (Blank::Patty, true)] {
        let Some((since, record)) = newest(blank) else { continue };
        if matches!(record.word("did"), Some("put_in" | "renewed")) {
            let (egg, larva) = bait::brood_nest();
            let off = bait::off(since, aims.bait_days, egg, larva);
            found.push(Baited { patty, since, off });
        }
    }
    found
}

/// What is past due in the hives of `yard`, in the order in which they are walked.
pub fn past_due(standing: &Standing, yard: &ThingId, today: Day) -> Vec<(ThingId, Baited)> {
    let aims = Aims::of(standing);
    let mut found = Vec::new();
    // Each hive is looked through for itself: not where there is none in the whole book.
    let is_bait = |blank| matches!(blank, Blank::Bait | Blank::Patty);
    if !standing.records.values().any(|now| is_bait(now.record.blank)) {
        return found;
    }
    for (hive, _) in standing.hives_of(yard, true) {
        for baited in baited(standing, hive, &aims) {
            if baited.off.on <= today {
                found.push((hive.clone(), baited));
            }
        }
    }
    found
}
