//! The last thing done, and how it is taken back.

use super::cabinet::Cabinet;
use super::edge::{clock, letters::BrowserLetters};
use super::records::{Records, Stop};
use crate::book::id::EntryId;

/// The last thing done, for the undo bar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Act {
    /// What was done, in a few words: "Hive 7 topped up".
    pub said: String,
    /// Its entries.
    pub entries: Vec<EntryId>,
    /// The strike that took it back, if it was taken back.
    pub undone: Option<EntryId>,
    /// It is the keeper's: the demonstration has no second copy.
    pub own: bool,
}

impl Records {
    /// Takes the last act back, or, when it was taken back, does it again.
    ///
    /// # Errors
    /// [`Stop`]; nothing was written.
    pub fn undo_or_redo(self) -> Result<(), Stop> {
        // What another tab has just written is told a moment later, and may be built upon what is taken back here.
        self.refresh(Cabinet::catch_up);
        let Some(act) = self.act.get_untracked() else { return Ok(()) };
        let written = || self.book.with_untracked(|book| book.undone_with(&act.entries));
        let targets = act.undone.as_ref().map_or_else(written, |strike| vec![strike.clone()]);
        let ids = self.strike(&targets, &act.said)?;
        let undone = if act.undone.is_some() { None } else { ids.first().cloned() };
        self.act.set(Some(Act { undone, ..act }));
        Ok(())
    }

    /// Strikes entries out, at any time. Striking out a strike brings its entries back.
    ///
    /// # Errors
    /// [`Stop`]; nothing was written.
    pub fn strike(self, entries: &[EntryId], said: &str) -> Result<Vec<EntryId>, Stop> {
        let yard = self.book.with_untracked(|book| book.log().get(entries.first()?)?.yard.clone());
        let today = yard.map_or_else(|| clock::stamp().day(), |yard| self.today(&yard));
        let written =
            self.book.with_untracked(|book| book.strike(&self.pen(), today, entries, &BrowserLetters));
        self.put(written, said)
    }
}
