//! What entries do to the days on which hives are due, before they are written.

use super::Book;
use super::entry::Entry;
use super::id::ThingId;
use super::round::{HiveDue, hive_due, yard_loss};
use super::standing::Standing;
use crate::almanac::day::Day;

/// A hive whose day would be another.
#[derive(Clone, Debug, PartialEq)]
pub struct Shift {
    /// Which.
    pub hive: ThingId,
    /// When it is due as the book stands, and why; none when it is not in care.
    pub before: Option<HiveDue>,
    /// When it would be.
    pub after: Option<HiveDue>,
}

/// The hives whose day differs between two standings, seen from `today`, in the order of their names. Another reason
/// for the same day is no shift.
pub fn shifts(before: &Standing, after: &Standing, today: Day) -> Vec<Shift> {
    let (was, will) = (Dues::of(before, today), Dues::of(after, today));
    let mut shifts: Vec<Shift> = Vec::new();
    let new = after.hives.keys().filter(|hive| !before.hives.contains_key(*hive));
    for hive in before.hives.keys().chain(new) {
        let (before, after) = (was.due(hive), will.due(hive));
        if day(before.as_ref()) != day(after.as_ref()) {
            shifts.push(Shift { hive: hive.clone(), before, after });
        }
    }
    shifts
}

/// A standing and the oil loss of its yards, in their order: every hive asks for that of its own.
struct Dues<'a> {
    standing: &'a Standing,
    losses: Vec<Option<(f64, u8)>>,
    today: Day,
}

impl<'a> Dues<'a> {
    fn of(standing: &'a Standing, today: Day) -> Dues<'a> {
        let losses = standing.yards.keys().map(|yard| yard_loss(standing, yard)).collect();
        Dues { standing, losses, today }
    }

    fn due(&self, hive: &ThingId) -> Option<HiveDue> {
        let now = self.standing.hives.get(hive).filter(|now| now.alive())?;
        let at = self.standing.yards.keys().position(|yard| *yard == now.yard);
        let loss = at.and_then(|at| self.losses.get(at).copied()).flatten();
        Some(hive_due(self.standing, now, loss, self.today))
    }
}

/// What makes one day differ from another: resting, nothing to be due, not in care, or the day.
fn day(due: Option<&HiveDue>) -> (u8, Option<Day>) {
    match due {
        None => (0, None),
        Some(HiveDue::Resting { .. }) => (1, None),
        Some(HiveDue::NoTraps { .. }) => (2, None),
        Some(HiveDue::Due { on, .. }) => (3, Some(*on)),
    }
}

impl Book {
    /// What writing `entries` would do to the days on which hives are due, seen from `today`. Folds the whole book on
    /// trial, which takes as long as opening it.
    pub fn shifts(&self, entries: &[Entry], today: Day) -> Vec<Shift> {
        shifts(self.standing(), self.with(entries).standing(), today)
    }
}
