//! Hives that were drawn by lot, and what the looks into them found since.

use super::finds::told;
use super::id::ThingId;
use super::newest::Newest;
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
    /// Larvae, slime, or larvae in the ground were seen.
    Found,
}

/// Each of `hives`, which stand in `yard`, by the looks of the day `since` and after it.
pub fn opened(standing: &Standing, yard: &ThingId, hives: &[ThingId], since: Day, today: Day) -> Vec<Opened> {
    let newest = Newest::of(standing, yard, &[Blank::Look], today);
    let mut all = Vec::new();
    for hive in hives {
        let mut state = Opened::NotYet;
        for (_, now) in newest.each(hive, Blank::Look).take_while(|(day, _)| *day >= since) {
            if told(&now.record).iter().any(|seen| *seen != Seen::AdultsOnly) {
                state = Opened::Found;
                break;
            }
            if now.record.looked_for_larvae() {
                state = Opened::Clean;
            }
        }
        all.push(state);
    }
    all
}
