//! Lines and their versions: which entries correct which, which are struck out, and what of it stands.

use super::entry::{Entry, What};
use super::id::EntryId;
use super::log::Log;
use crate::almanac::table::Table;

/// How the entries of a log hang together. An entry and all that correct it, at any remove, are the versions of one
/// line, known by the name of the first: its root.
///
/// Of a line stands what is neither struck nor corrected by something that is not struck. Two phones that corrected
/// one line without knowing of each other leave two heads: both are kept, one of them counts, and the keeper decides.
pub struct Chains<'a> {
    log: &'a Log,
    /// Each struck entry with the strike that did it.
    pub struck: Table<&'a EntryId, &'a EntryId>,
    /// Each correction with the root of its line.
    roots: Table<&'a EntryId, &'a EntryId>,
    /// Entries that something in force corrects, at any remove.
    superseded: Table<&'a EntryId, ()>,
}

impl<'a> Chains<'a> {
    /// Looks the whole log through.
    pub(super) fn of(log: &'a Log) -> Chains<'a> {
        let struck = log.struck();
        let mut roots: Table<&EntryId, &EntryId> = Table::new();
        let mut superseded = Table::new();
        // Corrections look back (checked when an entry is taken in): the root of what one corrects is known by then.
        for entry in log.entries() {
            let Some(corrected) = &entry.replaces else { continue };
            let root = roots.get(corrected).copied().unwrap_or(corrected);
            roots.insert(&entry.id, root);
            let mut at = if struck.contains_key(&entry.id) { None } else { Some(corrected) };
            // What stands behind something superseded is superseded already.
            while let Some(id) = at.filter(|id| superseded.insert(*id, ()).is_none()) {
                at = log.get(id).and_then(|earlier| earlier.replaces.as_ref());
            }
        }
        Chains { log, struck, roots, superseded }
    }

    /// The first entry of the line that `entry` belongs to; things are named after it. It need not be in this book.
    pub fn root(&self, entry: &'a Entry) -> &'a EntryId {
        self.roots.get(&entry.id).copied().unwrap_or(&entry.id)
    }

    /// Whether nothing in force corrects or strikes `entry`.
    pub fn is_head(&self, entry: &Entry) -> bool {
        !self.struck.contains_key(&entry.id) && !self.superseded.contains_key(&entry.id)
    }

    /// Every version of the line of `entry`, in the order in which they were written.
    pub fn versions(&self, entry: &'a Entry) -> Vec<&'a Entry> {
        let root = self.root(entry);
        let mut versions: Vec<&Entry> = self.log.get(root).into_iter().collect();
        for (id, known) in &self.roots {
            if *known == root {
                versions.extend(self.log.get(id));
            }
        }
        versions
    }

    /// Of the heads of a line the one that counts, now that `other` is met after `one`: the newest by counter and
    /// writer. Of two starts of a hive, moved on two phones, the earlier: work was written down after it.
    pub fn counts(one: &'a Entry, other: &'a Entry) -> &'a Entry {
        if matches!(other.what, What::Hive { .. }) && one.day < other.day { one } else { other }
    }

    /// Whether two heads of a line say different things, so that somebody has to decide.
    pub fn clash(one: &Entry, other: &Entry) -> bool {
        // Two starts of a hive need no decision: see `counts`.
        let start = matches!(one.what, What::Hive { .. });
        !start && one.id != other.id && (one.day != other.day || one.what != other.what)
    }

    /// Whether `entry` corrects `earlier`, at any remove.
    pub fn corrects(&self, entry: &Entry, earlier: &EntryId) -> bool {
        self.before(entry, &|id| id == earlier)
    }

    /// Whether `entry` counts although something it corrects was struck out: the strike and the correction were made
    /// on two phones, and the correction is kept.
    pub fn revived(&self, entry: &Entry) -> bool {
        self.before(entry, &|id| self.struck.contains_key(id))
    }

    fn before(&self, entry: &Entry, is: &dyn Fn(&EntryId) -> bool) -> bool {
        let mut at = entry.replaces.as_ref();
        while let Some(id) = at {
            if is(id) {
                return true;
            }
            at = self.log.get(id).and_then(|earlier| earlier.replaces.as_ref());
        }
        false
    }
}
