//! Traps that were lost over some days, kind by kind, of those that were in service.

use super::Book;
use super::entry::{Check, Did, TrapsWent, What};
use super::fold::fold_watched;
use super::id::ThingId;
use super::standing::{HiveNow, Standing, TrapNow, Trouble};
use crate::almanac::day::Day;

/// Traps of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lost {
    /// Which.
    pub kind: ThingId,
    /// Found missing, or taken off as lost. One that was found missing and put back counts.
    pub lost: u32,
    /// All that hung on any of the days, in hives that died or left since too, each once.
    pub of: u32,
    /// Of those, taken off for stock and not hung again.
    off: u32,
    /// All that lay in store when that was last looked at.
    stock: u32,
}

impl Lost {
    /// A trap that is used again and leaves the store hangs again: as many as were taken off are counted already. What lay
    /// there before is told from them by nothing, and comes after them.
    fn hung_again(&mut self, standing: &Standing) {
        if let Some(now) = standing.kinds.get(&self.kind).filter(|now| now.kind.reusable) {
            let again = self.stock.saturating_sub(now.stock).min(self.off);
            self.of -= again;
            self.off -= again;
            self.stock = now.stock;
        }
    }
}

/// What was lost from `from` on, that day included, in the keeper's own yards, or in those of the demonstration when `demo`
/// says so; a line for each kind that hung. One pass over the log.
pub fn lost(book: &Book, from: Day, demo: bool) -> Vec<Lost> {
    let mut kinds: Vec<Lost> = Vec::new();
    // The traps of a hive that ended before hung on none of the days, whenever they come off.
    let mut missing: Vec<(Day, ThingId)> = Vec::new();
    let hung = |hive: &HiveNow| hive.ended.as_ref().is_none_or(|(_, day)| *day >= from);
    // What hung is what hangs still and what has gone since.
    let standing = fold_watched(book.log(), None, &mut |standing, _, entry| {
        for known in &mut kinds {
            known.hung_again(standing);
        }
        let hive = || standing.hives.get(standing.kept(&entry.hive()?));
        if entry.day >= from && entry.is_demo() == demo && hive().is_some_and(hung) {
            let (went, traps) = goes(standing, &entry.what);
            for trap in traps {
                // Two phones wrote down one walk: missing and put back, and missing once more.
                if went != TrapsWent::Lost || once(&mut missing, entry.day, &trap.id) {
                    add(&mut kinds, &trap.kind, Some(went));
                }
            }
        }
    });
    for known in &mut kinds {
        known.hung_again(&standing);
    }
    for (id, hive) in &standing.hives {
        if id.is_demo() == demo && hung(hive) {
            for trap in hive.traps().filter(|trap| there(trap)) {
                add(&mut kinds, &trap.kind, None);
            }
        }
    }
    kinds
}

fn add(kinds: &mut Vec<Lost>, kind: &ThingId, went: Option<TrapsWent>) {
    let at = kinds.iter().position(|known| known.kind == *kind).unwrap_or_else(|| {
        kinds.push(Lost { kind: kind.clone(), lost: 0, of: 0, off: 0, stock: 0 });
        kinds.len() - 1
    });
    let known = &mut kinds[at];
    known.of += 1;
    known.lost += u32::from(went == Some(TrapsWent::Lost));
    known.off += u32::from(went == Some(TrapsWent::Stock));
}

/// Whether `trap` is not among those `known` of `day` yet. Now it is; those of another day are forgotten.
pub(super) fn once(known: &mut Vec<(Day, ThingId)>, day: Day, trap: &ThingId) -> bool {
    known.retain(|(of, _)| *of == day);
    let new = !known.iter().any(|(_, id)| id == trap);
    if new {
        known.push((day, trap.clone()));
    }
    new
}

fn there(trap: &TrapNow) -> bool {
    trap.trouble != Some(Trouble::Missing)
}

/// The traps that go with `what`, and where to. Where nothing goes the list is empty, and the word beside it says nothing.
/// One that was missing before has gone already.
pub(super) fn goes<'a>(standing: &'a Standing, what: &'a What) -> (TrapsWent, Vec<&'a TrapNow>) {
    let all = |hive: &ThingId, of: &dyn Fn(&TrapNow) -> bool| {
        let hive = standing.hives.get(standing.kept(hive));
        let traps = hive.into_iter().flat_map(HiveNow::traps);
        traps.filter(|trap| there(trap) && of(trap)).collect()
    };
    match what {
        What::Check(Check { hive, traps, did: Did::Missing, .. }) => {
            (TrapsWent::Lost, all(hive, &|trap| traps.as_ref().is_none_or(|named| named.contains(&trap.id))))
        }
        What::TrapsOff { hive, traps, went } => (*went, all(hive, &|trap| traps.contains(&trap.id))),
        What::BoxOff { hive, part, traps } => {
            let hive = standing.hives.get(standing.kept(hive));
            let part = hive.and_then(|hive| hive.boxes.iter().find(|now| now.id == *part));
            (*traps, part.into_iter().flat_map(|part| &part.traps).filter(|trap| there(trap)).collect())
        }
        _ => (TrapsWent::Lost, Vec::new()),
    }
}
