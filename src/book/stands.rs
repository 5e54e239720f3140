//! Where the hives of a yard stand, and what of it is paved, as written down.

use super::entry::Ending;
use super::finds::told;
use super::id::ThingId;
use super::newest::Newest;
use super::record::{Blank, Record};
use super::standing::{RecordNow, Standing};
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
    /// On some day within sixty larvae, slime or larvae in the ground were seen in or at it that may have left it in this
    /// yard.
    pub larvae: bool,
    /// It stands in this yard now.
    pub here: bool,
    /// It stands here and is in care.
    pub in_care: bool,
}

/// Of the hives of `yard` in care and of those that died within sixty days, in the order in which they are walked; then of
/// those that stand elsewhere by now and may have left larvae here.
pub fn placed(standing: &Standing, yard: &ThingId, today: Day) -> Vec<Placed> {
    let newest = Newest::with_moved(standing, yard, &[Blank::Stand, Blank::Look, Blank::DeadOut], today);
    let mut all = Vec::new();
    let elsewhere = standing.hives.iter().filter(|(_, hive)| hive.yard != *yard);
    for (id, hive) in standing.hives_of(yard, false).chain(elsewhere) {
        let here = hive.yard == *yard;
        let in_care = here && hive.alive();
        let larvae = larvae(&newest, id, yard, today);
        let lately = |day: Day| today.days_since(day) <= LARVAE_DAYS;
        let dead = || {
            matches!(&hive.ended, Some((Ending::Dead, on)) if here && lately(*on))
                || newest.each(id, Blank::DeadOut).any(|(on, now)| there(now, yard) && lately(on))
        };
        // A hive that is no longer in care, or no longer here, has left its larvae in the ground all the same, and of one that
        // died nobody may have looked.
        if !in_care && !larvae && !dead() {
            continue;
        }
        // Where it stood in another yard says nothing about this one.
        let mut stands = newest.each(id, Blank::Stand).filter(|(_, now)| there(now, yard));
        let stand = stands.next().and_then(|(_, now)| stand(&now.record));
        all.push(Placed { hive: id.clone(), stand, larvae, here, in_care });
    }
    all
}

/// Whether it was written of a hive while that stood in `yard`.
fn there(now: &RecordNow, yard: &ThingId) -> bool {
    now.yard.as_ref() == Some(yard)
}

/// Larvae on the way out, or in the ground, are where they were seen; those in the comb go where the hive goes.
fn larvae(newest: &Newest, hive: &ThingId, yard: &ThingId, today: Day) -> bool {
    for blank in [Blank::Look, Blank::DeadOut] {
        for (day, now) in newest.each(hive, blank) {
            if today.days_since(day) > LARVAE_DAYS {
                break;
            }
            let counts = |seen: &Seen| *seen != Seen::AdultsOnly && (!seen.outside() || there(now, yard));
            if told(&now.record).iter().any(counts) {
                return true;
            }
        }
    }
    false
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
