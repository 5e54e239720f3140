//! Traps that went into hives, day by day and kind by kind: what left the store with them.

use super::Book;
use super::entry::{Did, Entry, What};
use super::fold::fold_watched;
use super::id::{EntryId, ThingId};
use super::lost::once;
use super::record::Blank;
use super::standing::{Standing, Trouble};
use crate::almanac::day::Day;

/// Traps of one kind that went in on a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PutIn {
    /// When.
    pub day: Day,
    /// Which kind.
    pub kind: ThingId,
    /// How many, less those that had been taken out of a hive to stock before.
    pub traps: u32,
}

/// What went into hives after the first day on which traps were written down as stock, in the order of the days: new traps,
/// those that hives came into the book with, and those put in the place of missing ones or of full ones that are thrown
/// away. Work that another phone wrote down too is reckoned once.
///
/// One pass over the log, and none where no trap was ever written down as stock.
pub fn put_in(book: &Book) -> Vec<PutIn> {
    let stocked = book
        .standing()
        .records
        .values()
        .filter(|now| now.record.blank == Blank::Stock && now.record.word("sort") == Some("trap"));
    let Some(first) = stocked.map(|now| now.day).min() else { return Vec::new() };
    let (mut all, mut anew) = (Vec::new(), Vec::new());
    fold_watched(book.log(), None, &mut |standing, root, entry| {
        if entry.day > first {
            let kinds = goes_in(standing, root, entry, &mut anew);
            add(standing, entry.day, &kinds, &mut all);
        }
    });
    all
}

/// The kind of each trap that goes in with `entry`. A piece of work in several lines may name a trap in two of them: `anew`
/// holds those of the day.
fn goes_in<'a>(
    standing: &'a Standing,
    root: &EntryId,
    entry: &'a Entry,
    anew: &mut Vec<(Day, ThingId)>,
) -> Vec<&'a ThingId> {
    let mut kinds: Vec<&ThingId> = Vec::new();
    match &entry.what {
        What::Check(check) if check.did == Did::Replaced => {
            for trap in standing.fills(entry, check).map(|(_, traps)| traps).unwrap_or_default() {
                let again = standing.kinds.get(&trap.kind).is_none_or(|now| now.kind.reusable);
                if (!again || trap.trouble == Some(Trouble::Missing)) && once(anew, entry.day, &trap.id) {
                    kinds.push(&trap.kind);
                }
            }
        }
        what => kinds.extend(standing.new_traps(root, what).into_iter().map(|trap| &trap.kind)),
    }
    kinds
}

/// What is used again and was taken out of a hive to stock goes in first.
fn add(standing: &Standing, day: Day, kinds: &[&ThingId], all: &mut Vec<PutIn>) {
    for (kind, now) in &standing.kinds {
        let out = if now.kind.reusable { now.stock } else { 0 };
        let many = kinds.iter().map(|other| u32::from(**other == *kind)).sum::<u32>();
        let traps = many.saturating_sub(out);
        if traps > 0 {
            all.push(PutIn { day, kind: kind.clone(), traps });
        }
    }
}
