//! Traps in store, as far as the log knows of them: taken out of a hive "to stock", and not put into one since.
//!
//! What was bought and what broke on the shelf stands in no log, so the number is a first guess for the keeper to mend.
//! Whatever goes into a hive is taken off it, so that it is never too high for that reason.

use super::entry::{Did, TrapsWent, What};
use super::id::ThingId;
use super::standing::{HiveNow, KindNow, Trouble};
use crate::almanac::table::Table;

/// Whether `what` can take traps out of a hive or put some in.
pub(super) fn moves(what: &What) -> bool {
    match what {
        What::BoxesOn { .. } | What::BoxOff { .. } | What::TrapsOn { .. } | What::TrapsOff { .. } => true,
        What::Check(work) => work.did == Did::Replaced,
        _ => false,
    }
}

/// The kind of every trap that is there.
pub(super) fn hanging(hive: &HiveNow) -> Vec<ThingId> {
    let there = hive.traps().filter(|trap| trap.trouble != Some(Trouble::Missing));
    there.map(|trap| trap.kind.clone()).collect()
}

/// Brings the store up to date with a hive that held `before` until `what` was done to it.
pub(super) fn follow(kinds: &mut Table<ThingId, KindNow>, before: &[ThingId], hive: &HiveNow, what: &What) {
    let went = match what {
        What::BoxOff { traps, .. } => Some(traps),
        What::TrapsOff { went, .. } => Some(went),
        _ => None,
    };
    let after = hanging(hive);
    for (id, now) in kinds.iter_mut() {
        let count = |kinds: &[ThingId]| kinds.iter().map(|kind| u32::from(kind == id)).sum::<u32>();
        let (was, is) = (count(before), count(&after));
        if is > was {
            now.stock = now.stock.saturating_sub(is - was);
        } else if went == Some(&TrapsWent::Stock) {
            now.stock = now.stock.saturating_add(was - is);
        }
    }
}
