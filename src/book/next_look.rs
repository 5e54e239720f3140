//! When a hive is to be looked into for larvae next, by the keeper's own rhythm.

use super::aims::Aims;
use super::id::ThingId;
use super::record::Blank;
use super::standing::Standing;
use crate::almanac::day::Day;

/// The day of the last look for larvae into `hive`; none before the first one.
pub fn last_look(standing: &Standing, hive: &ThingId) -> Option<Day> {
    let mut last = None;
    for (_, now) in standing.records_of(Blank::Look) {
        if now.record.looked_for_larvae() && now.record.hives.iter().any(|of| standing.kept(of) == hive) {
            last = last.max(Some(now.day));
        }
    }
    last
}

/// The day of the next look for larvae: as many days after the last one as the keeper wrote down under aims.
pub fn next_look(standing: &Standing, hive: &ThingId, aims: &Aims) -> Option<Day> {
    let every = i32::try_from(aims.look_every?).ok()?;
    Some(last_look(standing, hive)?.plus(every))
}
