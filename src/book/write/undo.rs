//! Taking back what was written.

use super::hive::renames;
use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::text::Letters;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::EntryId;

impl Book {
    /// Strikes entries out. Undoing is striking out; redoing is striking out the strike.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] for an entry that is not here, [`Refusal::Nothing`] for none, [`Refusal::TagTaken`] when a
    /// hive would come by a tag that another one carries.
    pub fn strike(
        &self,
        pen: &Pen,
        today: Day,
        entries: &[EntryId],
        letters: &impl Letters,
    ) -> Result<Vec<Entry>, Refusal> {
        let first = entries.first().ok_or(Refusal::Nothing)?;
        let yard = self.log().get(first).ok_or(Refusal::Unknown)?.yard.clone();
        if entries.iter().any(|id| self.log().get(id).is_none()) {
            return Err(Refusal::Unknown);
        }
        let mut draft = Draft::new(self, pen);
        draft.push(today, yard.as_ref(), What::Struck { entries: entries.to_vec() })?;
        let strike = draft.done();
        // A strike of a strike brings back whatever that one struck.
        let renames = |id: &EntryId| {
            let entry = self.log().get(id);
            entry.is_some_and(|entry| renames(&entry.what) || matches!(entry.what, What::Struck { .. }))
        };
        if entries.iter().any(renames) {
            self.no_new_double(&self.with(&strike), letters)?;
        }
        Ok(strike)
    }

    /// The entries that are undone together with `id`: its bulk, or itself.
    pub fn together(&self, id: &EntryId) -> Vec<EntryId> {
        match self.log().get(id).and_then(|entry| entry.bulk.as_ref()) {
            Some(bulk) => {
                let same = |entry: &&Entry| entry.bulk.as_ref() == Some(bulk);
                self.log().entries().filter(same).map(|entry| entry.id.clone()).collect()
            }
            None => vec![id.clone()],
        }
    }

    /// All that has to be struck out so that nothing is left of the lines of `entries`: every version that is not
    /// struck yet. Struck by itself, a correction would leave the words it corrected standing.
    pub fn versions_of(&self, entries: &[EntryId]) -> Vec<EntryId> {
        self.versions(Vec::new(), entries, false)
    }

    /// All that has to be struck out so that what `entries` wrote is undone: they and what has corrected them since,
    /// perhaps in another tab. What stood before them comes back.
    pub fn undone_with(&self, entries: &[EntryId]) -> Vec<EntryId> {
        self.versions(entries.to_vec(), entries, true)
    }

    fn versions(&self, mut all: Vec<EntryId>, entries: &[EntryId], later: bool) -> Vec<EntryId> {
        let chains = self.log().chains();
        for entry in entries.iter().filter_map(|id| self.log().get(id)) {
            for version in chains.versions(entry) {
                let meant = !later || chains.corrects(version, &entry.id);
                if meant && !chains.struck.contains_key(&version.id) && !all.contains(&version.id) {
                    all.push(version.id.clone());
                }
            }
        }
        all
    }

    /// The entries to strike so that the last correction of a line is taken back: `id` itself, and the strike of a
    /// decision that was written with it.
    pub fn decision(&self, id: &EntryId) -> Vec<EntryId> {
        let mut entries = vec![id.clone()];
        let next = EntryId::new(id.writer().clone(), id.n() + 1).ok().and_then(|next| self.log().get(&next));
        if let (Some(entry), Some(next)) = (self.log().get(id), next)
            && let What::Struck { entries: struck } = &next.what
        {
            let chains = self.log().chains();
            let same = |other: &EntryId| {
                *other != *id
                    && self.log().get(other).is_some_and(|other| chains.root(other) == chains.root(entry))
            };
            if struck.iter().all(same) {
                entries.push(next.id.clone());
            }
        }
        entries
    }
}
