//! What was done and found at one hive over some days, or at all of a yard: visits and their rhythm, what was due, oil.

use super::Filled;
use crate::almanac::day::Day;
use crate::almanac::quantity::{Share, Volume};
use crate::book::entry::{Check, Did, Entry, What};
use crate::book::id::{EntryId, ThingId};
use crate::book::standing::Standing;

/// Every piece of work, in the order in which it is told.
pub const DIDS: [Did; 6] =
    [Did::ToppedUp, Did::Replaced, Did::AsFound, Did::Spilled, Did::Missing, Did::GluedShut];

/// What was done and found, at one hive or at all.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Figures {
    /// Days with trap work, hive by hive.
    pub visits: usize,
    /// Days on which a hive was left.
    pub skips: usize,
    /// Days from visit to visit of a hive, in order of size.
    pub gaps: Vec<i32>,
    /// Days on which a hive was due and that ended here, as the Round has it: with work after which it is due no more. One
    /// that was overdue when its hive left the Round, or is on the last evening, is among them.
    pub judged: usize,
    /// Of those, how many ended on that day or before.
    pub on_time: usize,
    /// The day since which the hive is overdue on the last evening.
    pub still_due: Option<Day>,
    /// The day on which the last due day that was judged late ended: until then nobody missed a second one, wherever a look
    /// in a pause moved it.
    pub missed: Option<Day>,
    /// Visits with each of [`DIDS`].
    pub did: [usize; 6],
    /// Visits on which no beetles were counted.
    pub not_counted: usize,
    /// Visits on which no level was read.
    pub not_read: usize,
    /// Oil filled in, least and most.
    pub oil: (Volume, Volume),
    /// Fillings of which nobody can say how much they took.
    pub oil_unknown: usize,
}

/// A day at a hive.
pub(super) struct Visit<'a> {
    pub(super) day: Day,
    pub(super) hive: &'a ThingId,
    pub(super) checks: Vec<(&'a EntryId, &'a Entry, &'a Check)>,
}

impl Figures {
    /// Median and longest of the days from visit to visit; of an even number the lower of the two in the middle.
    pub fn rhythm(&self) -> Option<(i32, i32)> {
        let middle = self.gaps.get(self.gaps.len().checked_sub(1)? / 2)?;
        Some((*middle, *self.gaps.last()?))
    }

    pub(super) fn add(&mut self, other: &Figures) {
        self.visits += other.visits;
        self.skips += other.skips;
        self.gaps.extend(&other.gaps);
        self.judged += other.judged;
        self.on_time += other.on_time;
        for (own, more) in self.did.iter_mut().zip(other.did) {
            *own += more;
        }
        self.not_counted += other.not_counted;
        self.not_read += other.not_read;
        self.oil = (self.oil.0.plus(other.oil.0), self.oil.1.plus(other.oil.1));
        self.oil_unknown += other.oil_unknown;
    }

    /// Judges the due day `on`, once, by the day on which it ended.
    pub(super) fn judge(&mut self, on: Day, ended: Day) {
        if self.missed.is_some_and(|ended| on <= ended) {
            return;
        }
        self.judged += 1;
        if ended <= on {
            self.on_time += 1;
        } else {
            self.missed = Some(ended);
        }
    }

    /// Adds a day at the hive, of which `filled` holds the lines; says whether any trap was filled.
    pub(super) fn visit(&mut self, visit: &Visit<'_>, filled: &[Filled], then: &Standing) -> bool {
        self.visits += 1;
        for (own, did) in self.did.iter_mut().zip(DIDS) {
            *own += usize::from(visit.checks.iter().any(|(.., check)| check.did == did));
        }
        let any = |of: &dyn Fn(&Check) -> bool| visit.checks.iter().any(|(.., check)| of(check));
        self.not_counted += usize::from(!any(&|check| check.count.is_some()));
        self.not_read += usize::from(!any(&|check| check.before.is_some()));
        let mut fills = false;
        for (_, entry, check) in &visit.checks {
            let Some((_, kinds)) = filled.iter().find(|(id, _)| *id == entry.id) else { continue };
            fills |= !kinds.is_empty();
            let parts = |other: &Entry| entry.bulk.is_some() && other.bulk == entry.bulk;
            let others = || visit.checks.iter().filter(|(_, other, _)| other.id != entry.id && parts(other));
            // A piece of work in several lines: the first says what was found, the others what was left where.
            if check.after.is_none() && others().any(|(.., other)| other.after.is_some()) {
                continue;
            }
            let before = check.before.or_else(|| others().find_map(|(.., other)| other.before));
            self.fill(check, before, kinds, then);
        }
        fills
    }

    /// Oil of the traps that go in with a line, as the book stood before it, and how many they are. Traps that a hive comes into the book with have a level
    /// only where they were filled that day; those of a table have none.
    pub(super) fn fill_first(&mut self, root: &EntryId, what: &What, standing: &Standing) -> usize {
        let mut count = 0;
        for trap in standing.new_traps(root, what) {
            count += 1;
            let kind = standing.kinds.get(&trap.kind).map(|now| &now.kind);
            let Some((kind, level)) = kind.zip(trap.level) else { continue };
            match kind.oil(Share::NONE, level) {
                Some(all) => self.oil = (self.oil.0.plus(all), self.oil.1.plus(all)),
                None => self.oil_unknown += 1,
            }
        }
        count
    }

    /// Oil of one line of work, which filled a trap of each of `kinds`.
    fn fill(&mut self, check: &Check, before: Option<Share>, kinds: &[ThingId], then: &Standing) {
        for kind in kinds {
            let Some(kind) = then.kinds.get(kind).map(|now| &now.kind) else { continue };
            if !kind.form.takes_oil() {
                continue;
            }
            let from_nothing = check.after.and_then(|after| kind.oil(Share::NONE, after));
            let from_found = before.zip(check.after).and_then(|(before, after)| kind.oil(before, after));
            let (least, most) = match (check.did, from_nothing, from_found) {
                (_, None, _) => {
                    self.oil_unknown += 1;
                    continue;
                }
                (Did::Replaced, Some(all), _) => (all, all),
                (Did::ToppedUp, Some(_), Some(more)) => (more, more),
                // What was still in it nobody has read.
                (_, Some(all), _) => (Volume::ZERO, all),
            };
            self.oil = (self.oil.0.plus(least), self.oil.1.plus(most));
        }
    }
}
