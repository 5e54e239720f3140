//! Two hives of the book that are one in the yard: each was written down on a phone of its own before the two met.
//!
//! [`What::HiveSame`] says so and takes nothing away: struck out, both stand again. While it counts, trap work, skips,
//! looks and the end of the other hive are told of the one that is kept. How the hive is built is what was written of the
//! kept one alone, its tag, boxes and traps: built twice it would have twice as many. So work that names single traps of
//! the other one stays in the history and moves no date.

use super::entry::{Ending, Entry, What};
use super::id::{EntryId, ThingId};
use crate::almanac::table::Table;
use crate::book::record::Answer;

/// Each hive that is another one, with the one that is kept.
pub type Twins = Table<ThingId, ThingId>;

/// What the lines in effect say, in their order. A line that would close a ring, or tells of a hive that is told of
/// already, says nothing: two phones may have decided in two ways, and the earlier counts. Nor does one whose
/// kept hive is not in the book: the other would be gone with nothing in its place.
pub(super) fn twins(lines: &[(&EntryId, &Entry)]) -> Twins {
    let mut twins = Twins::new();
    if !lines.iter().any(|(_, entry)| matches!(entry.what, What::HiveSame { .. })) {
        return twins;
    }
    let mut begun: Table<ThingId, ()> = Table::new();
    for (root, entry) in lines {
        if let What::Hive { .. } = &entry.what {
            begun.insert(root.thing(0), ());
        }
    }
    for (_, entry) in lines {
        if let What::HiveSame { hive, is } = &entry.what {
            let to = last(&mut twins, is);
            if to != *hive && !twins.contains_key(hive) && begun.contains_key(&to) {
                twins.insert(hive.clone(), to);
            }
        }
    }
    let all: Vec<ThingId> = twins.keys().cloned().collect();
    for hive in &all {
        last(&mut twins, hive);
    }
    twins
}

/// The end of the way that leads from `hive` from one to the next; all on the way are led there at once from now on, so
/// that a file of thousands keeps nobody waiting.
fn last(twins: &mut Twins, hive: &ThingId) -> ThingId {
    let mut end = hive;
    while let Some(next) = twins.get(end) {
        end = next;
    }
    let end = end.clone();
    let mut at = hive.clone();
    while at != end
        && let Some(next) = twins.get_mut(&at)
    {
        at = std::mem::replace(next, end.clone());
    }
    end
}

/// The hive that `hive` is: itself, nearly always.
pub fn kept<'a>(twins: &'a Twins, hive: &'a ThingId) -> &'a ThingId {
    twins.get(hive).unwrap_or(hive)
}

/// What the fold makes of a line.
pub(super) enum Told {
    /// It stands as it is.
    AsItIs,
    /// It is told of another hive.
    Of(Box<Entry>),
    /// It moves nothing.
    NotAtAll,
}

/// How `entry`, whose line is `root`, is told where hives are others.
pub(super) fn told(twins: &Twins, root: &EntryId, entry: &Entry) -> Told {
    if twins.is_empty() {
        return Told::AsItIs;
    }
    let twin = |hive: &ThingId| twins.contains_key(hive);
    let speaks = match &entry.what {
        What::Hive { .. } => return if twin(&root.thing(0)) { Told::NotAtAll } else { Told::AsItIs },
        What::Record(record) => record.hives.iter().chain(record.named_hive()).any(twin),
        What::HiveEnded { hive, how } => {
            twin(hive) || matches!(how, Ending::Joined { into: Some(into) } if twin(into))
        }
        _ => entry.hive().is_some_and(|hive| twin(&hive)),
    };
    if !speaks {
        return Told::AsItIs;
    }
    let mut entry = entry.clone();
    let other = |hive: &mut ThingId| *hive = kept(twins, hive).clone();
    match &mut entry.what {
        What::Check(work) if work.traps.is_none() => other(&mut work.hive),
        What::Skip { hive, .. }
        | What::HiveBack { hive }
        | What::HiveMoved { hive, .. }
        | What::Note { hive: Some(hive), .. } => other(hive),
        What::HiveEnded { hive, how } => {
            other(hive);
            if let Ending::Joined { into: Some(into) } = how {
                other(into);
                if into == hive {
                    return Told::NotAtAll;
                }
            }
        }
        What::Record(record) => {
            record.hives.iter_mut().for_each(other);
            let mut one_each: Vec<ThingId> = Vec::new();
            for hive in record.hives.drain(..) {
                if !one_each.contains(&hive) {
                    one_each.push(hive);
                }
            }
            record.hives = one_each;
            for answer in record.answers.iter_mut().flatten() {
                if let Answer::Hive(hive) = answer {
                    other(hive);
                }
            }
        }
        _ => return Told::NotAtAll,
    }
    Told::Of(Box::new(entry))
}
