//! Where the hives of a yard stand, and what of it is paved, as written down.

use super::finds::told;
use super::id::ThingId;
use super::newest::Newest;
use super::record::{Blank, Record};
use super::standing::Standing;
use crate::almanac::day::Day;
use crate::almanac::ground::Stand;
use crate::almanac::sighting::Seen;

/// Days for which larvae in a hive call for ground work round it: the slowest soil stage that was measured at 18 °C takes
/// 54 (Bernier and others 2014).
pub const LARVAE_DAYS: i32 = 60;

/// Millimetres of a foot.
const FOOT_MM: f64 = 304.8;

/// Square metres of a square foot.
const SQUARE_FOOT: f64 = 0.092_903_04;

/// A hive of the yard.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// Which hive.
    pub hive: ThingId,
    /// Where its middle stands; none when nobody wrote it down in this yard. One that came
    /// back stands where it stood, until somebody says otherwise.
    pub stand: Option<Stand>,
    /// The last day within sixty on which larvae, slime or larvae in the ground were seen in or at it.
    pub larvae: Option<Day>,
}

/// Of the hives of `yard` in care, in the order in which they are walked.
pub fn placed(standing: &Standing, yard: &ThingId, today: Day) -> Vec<Placed> {
    let newest = Newest::of(standing, yard, &[Blank::Stand, Blank::Look, Blank::DeadOut], today);
    let mut all = Vec::new();
    for (id, hive) in standing.hives_of(yard, false) {
        let larvae = larvae(&newest, id, today);
        // A hive that is no longer in care has left its larvae in the ground all the same.
        if !hive.alive() && larvae.is_none() {
            continue;
        }
        // Where it stood in another yard says nothing about this one.
        let mut stands = newest.each(id, Blank::Stand).filter(|(_, now)| now.yard.as_ref() == Some(yard));
        let stand = stands.next().and_then(|(_, now)| stand(&now.record));
        all.push(Placed { hive: id.clone(), stand, larvae });
    }
    all
}

fn larvae(newest: &Newest, hive: &ThingId, today: Day) -> Option<Day> {
    for blank in [Blank::Look, Blank::DeadOut] {
        for (day, now) in newest.each(hive, blank) {
            if today.days_since(day) > LARVAE_DAYS {
                break;
            }
            if told(&now.record).iter().any(|seen| *seen != Seen::AdultsOnly) {
                return Some(day);
            }
        }
    }
    None
}

fn stand(record: &Record) -> Option<Stand> {
    let at = |name| record.number(name).map(|(far, unit)| far * if unit == 0 { 1000.0 } else { FOOT_MM });
    Some(Stand { across: at("across")?, along: at("along")? })
}

/// Square metres of the yard that are paved; none when nobody wrote it down.
pub fn paved(standing: &Standing, yard: &ThingId) -> Option<f64> {
    let facts = standing.facts(Blank::YardFacts, Some(yard), None);
    let (area, unit) = facts.number("paved")?;
    Some(area * if unit == 0 { 1.0 } else { SQUARE_FOOT })
}
