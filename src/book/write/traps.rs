//! Boxes put on and taken off, and traps put into them.

use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::almanac::stack::{self, BoxDepth, Spot};
use crate::book::Book;
use crate::book::entry::{Check, Entry, NewBox, NewTrap, PlacedTrap, TrapsWent, What};
use crate::book::id::ThingId;
use crate::book::standing::{BoxNow, HiveNow};

impl Book {
    /// Boxes put on a hive, with as many traps as each is to carry, filled today.
    ///
    /// The new boxes stand above `above` boxes; their traps take corners as that height asks for, and keep their own
    /// dates from here on.
    ///
    /// # Errors
    /// As [`Book::check`].
    #[allow(clippy::too_many_arguments)] // each is one answer of the form
    pub fn boxes_on(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        above: usize,
        boxes: &[(BoxDepth, u8)],
        kind: &ThingId,
        filled: bool,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        let level = self.fill_of(kind, &now.yard)?;
        let above = above.min(now.boxes.len());
        let mut below: Vec<Spot> = spots_in(above.checked_sub(1).and_then(|at| now.boxes.get(at)));
        let mut new = Vec::with_capacity(boxes.len());
        for (index, (depth, wants)) in boxes.iter().enumerate() {
            let spots = stack::spots(above + index + 1, *wants, now.size, &below);
            let trap = |spot: &Spot| NewTrap { spot: *spot, kind: kind.clone(), level };
            let traps = if filled { spots.iter().map(trap).collect() } else { Vec::new() };
            new.push(NewBox { depth: *depth, wants: *wants, traps });
            below = spots;
        }
        let above = u8::try_from(above).unwrap_or(u8::MAX);
        self.one(pen, day, &now.yard, What::BoxesOn { hive: hive.clone(), above, boxes: new })
    }

    /// A box taken off, with a word on where its traps went.
    ///
    /// # Errors
    /// As [`Book::check`].
    pub fn box_off(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        part: &ThingId,
        traps: TrapsWent,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        if !now.boxes.iter().any(|known| known.id == *part) {
            return Err(Refusal::Unknown);
        }
        self.one(pen, day, &now.yard, What::BoxOff { hive: hive.clone(), part: part.clone(), traps })
    }

    /// Traps put in wherever a box carries fewer than it is meant to, on the places that are free.
    ///
    /// # Errors
    /// As [`Book::check`]; [`Refusal::Nothing`] when no box wants a trap.
    pub fn traps_on(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        kind: &ThingId,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        let traps = self.missing_traps(now, kind)?;
        self.one(pen, day, &now.yard, What::TrapsOn { hive: hive.clone(), traps })
    }

    /// Traps put in as by [`Book::traps_on`] on a walk: `work` is the look that goes with it, undone together.
    ///
    /// # Errors
    /// As [`Book::traps_on`].
    pub fn traps_placed(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        kind: &ThingId,
        work: Check,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(&work.hive, day, today)?;
        let traps = self.missing_traps(now, kind)?;
        let mut draft = Draft::new(self, pen);
        self.take_over(&mut draft, day, &[&work], None)?;
        draft.bulk();
        draft.push(day, Some(&now.yard), What::TrapsOn { hive: work.hive.clone(), traps })?;
        draft.push(day, Some(&now.yard), What::Check(work))?;
        self.holding(draft.done())
    }

    /// Traps of `kind` for every place that wants one.
    fn missing_traps(&self, now: &HiveNow, kind: &ThingId) -> Result<Vec<PlacedTrap>, Refusal> {
        let level = self.fill_of(kind, &now.yard)?;
        let mut traps = Vec::new();
        let mut below: Vec<Spot> = Vec::new();
        for (index, part) in now.boxes.iter().enumerate() {
            let mut taken = spots_in(Some(part));
            let missing = usize::from(part.wants).saturating_sub(taken.len());
            // The first choice for the wanted number, then every other place of the box.
            let wanted = stack::spots(index + 1, part.wants, now.size, &below);
            let others = stack::spots(index + 1, now.size.places(), now.size, &below);
            let free: Vec<Spot> = wanted.into_iter().chain(others).collect();
            for spot in free {
                if taken.len() < usize::from(part.wants) && !taken.contains(&spot) {
                    taken.push(spot);
                }
            }
            let new = taken.iter().skip(taken.len() - missing.min(taken.len()));
            traps.extend(new.map(|spot| PlacedTrap {
                part: part.id.clone(),
                trap: NewTrap { spot: *spot, kind: kind.clone(), level },
            }));
            below = taken;
        }
        if traps.is_empty() { Err(Refusal::Nothing) } else { Ok(traps) }
    }

    /// The level `kind` is filled to in `yard`; none without oil. The demonstration's kinds stay in its own yards: they
    /// go when it goes, and traps of a kind nobody knows are due at once.
    pub(super) fn fill_of(&self, kind: &ThingId, yard: &ThingId) -> Result<Option<Share>, Refusal> {
        if kind.is_demo() != yard.is_demo() {
            return Err(Refusal::Demonstration);
        }
        let known = &self.standing().kinds.get(kind).ok_or(Refusal::Unknown)?.kind;
        Ok(known.form.takes_oil().then_some(known.fill))
    }
}

fn spots_in(part: Option<&BoxNow>) -> Vec<Spot> {
    part.map_or_else(Vec::new, |part| part.traps.iter().map(|trap| trap.spot).collect())
}
