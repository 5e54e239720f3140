//! The set of all entries, in the order in which they count.

use super::chain::Chains;
use super::entry::{Entry, What};
use super::id::EntryId;
use super::page::{self, Page, Place};
use super::twins::{self, Twins};
use crate::almanac::day::Day;
use crate::almanac::json;
use crate::almanac::order::sort_by;
use crate::almanac::table::Table;
use std::sync::Arc;

/// Every entry ever made or received. Entries are added, never taken away.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Log {
    /// By counter and phone. Pointers, so that an entry that comes in before others moves next to nothing, and a book
    /// on trial shares its entries with the real one.
    entries: Vec<Arc<Entry>>,
    /// What the keeper wrote, by the day it was written down: how much is in no backup is asked at every save.
    written: Table<Day, usize>,
    /// The lowest and the highest counter of the entries of each day. A day's work is mostly written one line after the
    /// other, so a save looks through that day and not through all seasons.
    days: Table<Day, (u32, u32)>,
    /// The highest place in the order of effect, kept so that appending stays cheap.
    last: Option<(Day, EntryId)>,
    /// Entries that some strike, correction or word that two hives are one speaks of, whether they are here yet or not.
    spoken_of: Table<EntryId, ()>,
}

/// What a union would do, before it is done.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Union {
    /// Entries that are not here yet.
    pub new: usize,
    /// Entries that are here already with all they say.
    pub same: usize,
    /// Of those, entries that are here with a note which they come without.
    pub barer: usize,
    /// Entries here that lack the note they come with: it was withheld when they were handed over.
    pub fuller: usize,
    /// Entries here under the same name with other words. The ones here stay.
    pub clashes: Vec<EntryId>,
}

impl Union {
    /// Whether a file that this came to when it was taken in holds everything that is here now, which is `own` entries.
    pub fn is_whole(&self, own: usize) -> bool {
        self.clashes.is_empty() && self.barer == 0 && self.new + self.same + self.fuller == own
    }
}

impl Log {
    /// Adds an entry. None when one of that name is here already: what is written stays, but for a note that was withheld
    /// and comes with it now (see [`super::withheld`]).
    pub fn add(&mut self, entry: Entry) -> Option<&Entry> {
        let at = match self.find(&entry.id) {
            Ok(at) => return super::withheld::fill(self.entries.get_mut(at)?, entry),
            Err(at) => at,
        };
        let place = (entry.day, entry.id.clone());
        if self.last.as_ref().is_none_or(|last| *last < place) {
            self.last = Some(place);
        }
        if let Some(replaced) = &entry.replaces {
            self.spoken_of.insert(replaced.clone(), ());
        }
        match &entry.what {
            What::Struck { entries } => {
                for target in entries {
                    self.spoken_of.insert(target.clone(), ());
                }
            }
            // With the line of either of the two other lines may be told of another hive.
            What::HiveSame { hive, is } => {
                for hive in [hive, is] {
                    self.spoken_of.insert(hive.entry().clone(), ());
                }
            }
            _ => {}
        }
        if !entry.is_demo() {
            *self.written.or_insert(entry.at.day(), 0) += 1;
        }
        let n = entry.id.n();
        let (low, high) = self.days.or_insert(entry.day, (n, n));
        (*low, *high) = (n.min(*low), n.max(*high));
        self.entries.insert(at, Arc::new(entry));
        self.entries.get(at).map(|entry| &**entry)
    }

    /// Where the entry of that name is, or belongs.
    fn find(&self, id: &EntryId) -> Result<usize, usize> {
        match self.entries.last() {
            Some(last) if last.id < *id => Err(self.entries.len()),
            _ => self.entries.binary_search_by(|known| known.id.cmp(id)),
        }
    }

    /// Whether `entry` would take effect after everything here and change nothing that came before.
    pub fn would_be_last(&self, entry: &Entry) -> bool {
        let plain =
            entry.replaces.is_none() && !matches!(entry.what, What::Struck { .. } | What::HiveSame { .. });
        // A strike may have come from another phone before the entry it strikes.
        let plain = plain && !self.spoken_of.contains_key(&entry.id);
        let newest = self.last.as_ref().is_none_or(|(day, id)| (*day, id) < (entry.day, &entry.id));
        plain && newest
    }

    /// The entry of that name.
    pub fn get(&self, id: &EntryId) -> Option<&Entry> {
        self.entries.get(self.find(id).ok()?).map(|entry| &**entry)
    }

    /// The last entry by day and name.
    pub fn newest(&self) -> Option<&Entry> {
        self.last.as_ref().and_then(|(_, id)| self.get(id))
    }

    /// How many entries the keeper wrote on each day by the phone's clock, the demonstration left out.
    pub fn written(&self) -> &Table<Day, usize> {
        &self.written
    }

    /// The page at `place` as it stands here, with `more` entries on it. Entries of other places are left out, and
    /// so are those that are here already, be it on another page and with other words: on two pages one name would be
    /// two entries at the next start.
    pub fn page<'a>(&'a self, place: &Place, more: impl IntoIterator<Item = &'a Entry>) -> Page {
        let mut all: Table<&EntryId, &Entry> = Table::new();
        // Of several of one name in `more` the first counts, as it does when they are added, wherever the others lie.
        let mut new: Table<&EntryId, &Entry> = Table::new();
        for entry in more {
            if self.get(&entry.id).is_none_or(|here| entry.is_fuller(here)) {
                let known = new.or_insert(&entry.id, entry);
                if entry.is_fuller(known) {
                    *known = entry;
                }
            }
        }
        for entry in self.around(place.1).chain(new.values().copied()) {
            if page::lies_on(entry, place) {
                let known = all.or_insert(&entry.id, entry);
                if entry.is_fuller(known) {
                    *known = entry;
                }
            }
        }
        Page { entries: all.values().copied().cloned().collect() }
    }

    /// The entries from the first of `day` to the last, those of other days in between included.
    fn around(&self, day: Day) -> impl Iterator<Item = &Entry> {
        let (low, high) = self.days.get(&day).copied().unwrap_or((1, 0));
        let from = self.entries.partition_point(|entry| entry.id.n() < low);
        let all = self.entries.iter().skip(from).map(|entry| &**entry);
        all.take_while(move |entry| entry.id.n() <= high)
    }

    /// How many entries there are.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Nothing written yet.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// All entries by counter and phone: the order in which they were written.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = &Entry> {
        self.entries.iter().map(|entry| &**entry)
    }

    /// The counter for the next entry written here.
    pub fn next_n(&self) -> u32 {
        self.entries.last().map_or(1, |entry| entry.id.n() + 1)
    }

    /// What adding `entries` would do.
    pub fn compare(&self, entries: &[Entry]) -> Union {
        let mut union = Union::default();
        let mut seen = Table::new();
        for entry in entries {
            match self.get(&entry.id) {
                Some(here) if json::to_text(here) == json::to_text(entry) => union.same += 1,
                Some(here) if entry.is_fuller(here) => union.fuller += 1,
                Some(here) if here.is_fuller(entry) => {
                    union.same += 1;
                    union.barer += 1;
                }
                Some(_) => union.clashes.push(entry.id.clone()),
                None if seen.insert(&entry.id, entry).is_none() => union.new += 1,
                None => union.same += 1,
            }
        }
        union
    }

    /// Entries that are struck out, each with the strike that did it.
    ///
    /// A strike always has a higher counter than what it strikes, so going from the newest to the oldest every strike
    /// is judged before its targets are.
    pub fn struck(&self) -> Table<&EntryId, &EntryId> {
        let mut struck = Table::new();
        for entry in self.entries().rev() {
            if let What::Struck { entries } = &entry.what
                && !struck.contains_key(&entry.id)
            {
                for target in entries {
                    struck.or_insert(target, &entry.id);
                }
            }
        }
        struck
    }

    /// How the entries hang together: what corrects, strikes and supersedes what.
    pub fn chains(&self) -> Chains<'_> {
        Chains::of(self)
    }

    /// Hives that are another one, by the lines that count.
    pub fn twins(&self) -> Twins {
        twins::twins(&self.in_effect())
    }

    /// The entries that count: not struck, not superseded; yards and kinds first, then by day and counter. Each comes
    /// with the name under which its things are known.
    pub fn in_effect(&self) -> Vec<(&EntryId, &Entry)> {
        let chains = self.chains();
        let mut newest: Table<&EntryId, &Entry> = Table::new();
        for entry in self.entries().filter(|entry| chains.is_head(entry)) {
            let root = chains.root(entry);
            let counts = newest.get(root).map_or(entry, |before| Chains::counts(before, entry));
            newest.insert(root, counts);
        }
        let mut order: Vec<_> =
            newest.into_iter().filter(|(_, e)| !matches!(e.what, What::Struck { .. })).collect();
        sort_by(&mut order, |(a_root, a), (b_root, b)| {
            (!a.is_ground(), a.day, *a_root).cmp(&(!b.is_ground(), b.day, *b_root))
        });
        order
    }
}

impl FromIterator<Entry> for Log {
    fn from_iter<I: IntoIterator<Item = Entry>>(entries: I) -> Log {
        let mut log = Log::default();
        for entry in entries {
            log.add(entry);
        }
        log
    }
}
