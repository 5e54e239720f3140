//! Hives that were drawn by lot, and what was found in them since.

use super::finds::told;
use super::id::ThingId;
use super::record::Blank;
use super::standing::Standing;
use crate::almanac::day::Day;
use crate::almanac::sighting::Seen;

/// What is known of a hive since the draw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opened {
    /// Nobody looked for larvae.
    NotYet,
    /// Somebody looked and saw neither larvae nor slime, at every look.
    Clean,
    /// Larvae, slime, or larvae in the ground were seen, be it when the hive was found dead.
    Found,
}

/// Each of `hives` by the looks and dead-outs of the day `since` and after it. What was found in a hive stays found whatever
/// becomes of it: it may die, be sold or be moved to another yard.
pub fn opened(standing: &Standing, hives: &[ThingId], since: Day, today: Day) -> Vec<Opened> {
    let mut all = vec![Opened::NotYet; hives.len()];
    for now in standing.records.values() {
        let record = &now.record;
        if !matches!(record.blank, Blank::Look | Blank::DeadOut) || now.day < since || now.day > today {
            continue;
        }
        let found = told(record).iter().any(|seen| *seen != Seen::AdultsOnly);
        if !found && !record.looked_for_larvae() {
            continue;
        }
        for looked in &record.hives {
            for (hive, state) in hives.iter().zip(&mut all) {
                if *state != Opened::Found && standing.kept(hive) == standing.kept(looked) {
                    *state = if found { Opened::Found } else { Opened::Clean };
                }
            }
        }
    }
    all
}
