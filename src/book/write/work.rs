//! Trap work on hives: one, or the same on many, or none and why.

use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::book::Book;
use crate::book::entry::{Check, Did, Entry, SkipReason, What};
use crate::book::fold;
use crate::book::id::ThingId;
use crate::book::standing::HiveNow;

impl Book {
    /// Trap work on one hive.
    ///
    /// # Errors
    /// [`Refusal::Future`], [`Refusal::BeforeHive`], [`Refusal::Ended`], [`Refusal::Unknown`],
    /// [`Refusal::Nothing`] for a list of traps without a trap, [`Refusal::NoTraps`] for work on a hive without traps:
    /// only a look is possible there.
    pub fn check(&self, pen: &Pen, day: Day, today: Day, work: Check) -> Result<Vec<Entry>, Refusal> {
        let hive = self.in_care(&work.hive, day, today)?;
        if work.traps.as_ref().is_some_and(Vec::is_empty) {
            return Err(Refusal::Nothing);
        }
        if work.did != Did::AsFound && self.bare_on(&work.hive, hive, day) {
            return Err(Refusal::NoTraps { wanting: hive.wanting() });
        }
        if work.did == Did::ToppedUp && none_fishes(hive, work.traps.as_deref(), day) {
            return Err(Refusal::NoneFishes);
        }
        let mut draft = Draft::new(self, pen);
        self.take_over(&mut draft, day, &[&work], None)?;
        self.draft_check(&mut draft, day, hive, work)?;
        self.holding(draft.done())
    }

    /// The same trap work on several hives, each with an entry of its own, undone together.
    ///
    /// The level after is each trap kind's own fill, as for a single hive. Passed over are hives without traps, and
    /// by topping up those of which every trap is missing or glued shut.
    ///
    /// # Errors
    /// As [`Book::check`] for the first hive that cannot be logged; [`Refusal::Nothing`] when no hive is left.
    pub fn same_for_all(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hives: &[ThingId],
        did: Did,
    ) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        let mut all = Vec::new();
        for id in hives {
            let hive = self.in_care(id, day, today)?;
            if self.bare_on(id, hive, day) || (did == Did::ToppedUp && none_fishes(hive, None, day)) {
                continue;
            }
            let work = Check {
                hive: id.clone(),
                traps: None,
                did,
                before: None,
                after: self.usual_level(hive, did, None),
                count: None,
                note: None,
            };
            all.push((hive, work));
        }
        let works: Vec<&Check> = all.iter().map(|(_, work)| work).collect();
        self.take_over(&mut draft, day, &works, None)?;
        // What is taken over is no part of the bulk.
        draft.bulk();
        for (hive, work) in all {
            self.draft_check(&mut draft, day, hive, work)?;
        }
        let entries = draft.done();
        if entries.is_empty() { Err(Refusal::Nothing) } else { self.holding(entries) }
    }

    /// A hive left for now.
    ///
    /// # Errors
    /// As [`Book::check`].
    pub fn skip(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        why: SkipReason,
        note: Option<String>,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        self.one(pen, day, &now.yard, What::Skip { hive: hive.clone(), why, note })
    }

    /// The level that work leaves when the keeper does not say: the fill of the kind of the `named` traps, or of all,
    /// after a top-up or a replacement, unknown otherwise or when kinds with different fills are meant.
    pub fn usual_level(&self, hive: &HiveNow, did: Did, named: Option<&[ThingId]>) -> Option<Share> {
        if !matches!(did, Did::ToppedUp | Did::Replaced) {
            return None;
        }
        let mut fills = self.fills(hive, did, named);
        fills.retain(|(level, _)| level.is_some());
        if fills.len() == 1 { fills.pop()?.0 } else { None }
    }

    /// Whether no trap hung in `hive` on `day`. What was taken out since then was there to be worked on.
    pub(super) fn bare_on(&self, id: &ThingId, hive: &HiveNow, day: Day) -> bool {
        let bare = |hive: &HiveNow| hive.traps().next().is_none();
        let later = || self.log().entries().any(|entry| entry.day > day);
        bare(hive) && (!later() || fold::fold_until(self.log(), Some(day)).hives.get(id).is_none_or(bare))
    }

    /// One entry, or, where a top-up leaves kinds of trap at different levels, one for each level, undone together.
    ///
    /// What was found (level, count, note) is of all the traps that are meant: a line for all of them leads and says it
    /// once, so that one count is taken over these traps and their days.
    fn draft_check(
        &self,
        draft: &mut Draft<'_>,
        day: Day,
        hive: &HiveNow,
        work: Check,
    ) -> Result<(), Refusal> {
        let fills = self.fills(hive, work.did, work.traps.as_deref());
        let one_level = !matches!(work.did, Did::ToppedUp | Did::Replaced);
        if work.after.is_some() || one_level || fills.len() < 2 {
            draft.push(day, Some(&hive.yard), What::Check(work))?;
            return Ok(());
        }
        if draft.bulk.is_none() {
            draft.bulk();
        }
        let found = work.before.is_some() || work.count.is_some() || work.note.is_some();
        let mut part = Check { before: None, count: None, note: None, ..work.clone() };
        if found {
            draft.push(day, Some(&hive.yard), What::Check(work))?;
        }
        // Traps without oil are spoken for by the line for all.
        for (level, traps) in fills {
            if level.is_some() || !found {
                (part.after, part.traps) = (level, Some(traps));
                draft.push(day, Some(&hive.yard), What::Check(part.clone()))?;
            }
        }
        Ok(())
    }

    /// The levels that a fill leaves in the `named` traps of `hive`, or in all, each with the traps it is for; none for
    /// traps without oil.
    fn fills(
        &self,
        hive: &HiveNow,
        did: Did,
        named: Option<&[ThingId]>,
    ) -> Vec<(Option<Share>, Vec<ThingId>)> {
        let mut fills: Vec<(Option<Share>, Vec<ThingId>)> = Vec::new();
        for trap in hive.traps() {
            if named.is_some_and(|named| !named.contains(&trap.id)) || trap.passed_over(did, named.is_some())
            {
                continue;
            }
            let kind = self.standing().kinds.get(&trap.kind).map(|now| &now.kind);
            let level = kind.filter(|kind| kind.form.takes_oil()).map(|kind| kind.fill);
            match fills.iter_mut().find(|(known, _)| *known == level) {
                Some((_, traps)) => traps.push(trap.id.clone()),
                None => fills.push((level, vec![trap.id.clone()])),
            }
        }
        fills
    }
}

/// Whether each of the named traps, or of all, was found missing or glued shut by `day`, so that none can be topped up.
pub(super) fn none_fishes(hive: &HiveNow, named: Option<&[ThingId]>, day: Day) -> bool {
    let mut meant = hive.traps().filter(|trap| named.is_none_or(|named| named.contains(&trap.id))).peekable();
    meant.peek().is_some()
        && meant.all(|trap| {
            trap.passed_over(Did::ToppedUp, named.is_some())
                && trap.trouble_since.is_some_and(|since| since <= day)
        })
}
