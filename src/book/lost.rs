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
    /// Those, all that hang now, and those of hives whose care ended since: they were in service too.
    pub of: u32,
}

/// What was lost from `from` on, in the keeper's own yards, or in those of the demonstration when `demo` says so; a line for
/// each kind that hangs or was lost. One pass over the log.
pub fn lost(book: &Book, from: Day, demo: bool) -> Vec<Lost> {
    let mut kinds: Vec<Lost> = Vec::new();
    let mut add = |kind: &ThingId, lost: u32| match kinds.iter_mut().find(|known| known.kind == *kind) {
        Some(known) => {
            known.lost += lost;
            known.of += 1;
        }
        None => kinds.push(Lost { kind: kind.clone(), lost, of: 1 }),
    };
    let standing = fold_watched(book.log(), None, &mut |standing, _, entry| {
        if entry.day >= from && entry.is_demo() == demo {
            for trap in goes(standing, &entry.what) {
                add(&trap.kind, 1);
            }
        }
    });
    let in_service = |hive: &HiveNow| hive.ended.as_ref().is_none_or(|(_, on)| *on >= from);
    for (_, hive) in standing.hives.iter().filter(|(id, hive)| id.is_demo() == demo && in_service(hive)) {
        for trap in hive.traps().filter(|trap| trap.trouble != Some(Trouble::Missing)) {
            add(&trap.kind, 0);
        }
    }
    kinds
}

/// The traps that are lost with `what`. One that was missing before is lost already.
fn goes<'a>(standing: &'a Standing, what: &'a What) -> Vec<&'a TrapNow> {
    let hive = |id: &ThingId| standing.hives.get(standing.kept(id));
    let there = |trap: &&TrapNow| trap.trouble != Some(Trouble::Missing);
    let all = |hive: Option<&'a HiveNow>, of: &dyn Fn(&TrapNow) -> bool| {
        let traps = hive.into_iter().flat_map(HiveNow::traps);
        traps.filter(there).filter(|trap| of(trap)).collect()
    };
    match what {
        What::Check(Check { hive: id, traps, did: Did::Missing, .. }) => {
            all(hive(id), &|trap| traps.as_ref().is_none_or(|named| named.contains(&trap.id)))
        }
        What::TrapsOff { hive: id, traps, went: TrapsWent::Lost } => {
            all(hive(id), &|trap| traps.contains(&trap.id))
        }
        What::BoxOff { hive: id, part, traps: TrapsWent::Lost } => {
            let boxes = hive(id).into_iter().flat_map(|hive| &hive.boxes).filter(|now| now.id == *part);
            boxes.flat_map(|now| &now.traps).filter(there).collect()
        }
        _ => Vec::new(),
    }
}
