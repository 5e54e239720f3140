//! Taking back what was written.

use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::text;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::EntryId;
use crate::book::standing::HiveNow;

impl Book {
    /// Strikes entries out. Undoing is striking out; redoing is striking out the strike.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] for an entry that is not here, [`Refusal::Nothing`] for none.
    pub fn strike(&self, pen: &Pen, today: Day, entries: &[EntryId]) -> Result<Vec<Entry>, Refusal> {
        let first = entries.first().ok_or(Refusal::Nothing)?;
        let yard = self.log().get(first).ok_or(Refusal::Unknown)?.yard.clone();
        if entries.iter().any(|id| self.log().get(id).is_none()) {
            return Err(Refusal::Unknown);
        }
        let mut draft = Draft::new(self, pen);
        draft.push(today, yard.as_ref(), What::Struck { entries: entries.to_vec() })?;
        let strike = draft.done();
        let renames = |id: &EntryId| {
            let what = self.log().get(id).map(|entry| &entry.what);
            matches!(
                what,
                Some(
                    What::HiveEnded { .. }
                        | What::HiveChanged { .. }
                        | What::HiveMoved { .. }
                        | What::Struck { .. }
                )
            )
        };
        // What comes back may carry a tag that was given to another hive meanwhile.
        if entries.iter().any(renames)
            && let Some(tag) = self.with(&strike).doubled_tag()
            && self.doubled_tag().is_none()
        {
            return Err(Refusal::TagTaken { free: text::suggest(|free| free == tag, &tag) });
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

    /// A tag that two living hives of one yard carry, letter for letter.
    fn doubled_tag(&self) -> Option<String> {
        let hives = || self.standing().hives.values().filter(|hive| hive.alive());
        let twice = |hive: &&HiveNow| {
            hives().filter(|other| other.yard == hive.yard && other.tag == hive.tag).count() > 1
        };
        hives().find(twice).map(|hive| hive.tag.clone())
    }
}
