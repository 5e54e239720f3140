//! The demonstration, filled in and taken out.

use super::edge::{clock, letters::BrowserLetters};
use super::records::{Records, Stop};
use crate::book::demo;
use crate::book::id::ThingId;

impl Records {
    /// Fills in the demonstration.
    ///
    /// # Errors
    /// [`Stop`]; nothing was written.
    pub fn fill_demo(self) -> Result<(), Stop> {
        let zone = clock::own_zone();
        let at = clock::stamp();
        let entries =
            demo::demo(clock::today(&zone), &zone, at.offset(), &BrowserLetters).map_err(Stop::Refused)?;
        self.save_or_leave(entries)?;
        self.act.set(None);
        Ok(())
    }

    /// Takes the demonstration out. The keeper's own records are not touched.
    ///
    /// # Errors
    /// [`Stop::NotSaved`] when the phone refuses.
    pub fn remove_demo(self) -> Result<(), Stop> {
        if !self.may_write() {
            return Err(Stop::OnlyShows);
        }
        let removed = self
            .book
            .try_update_untracked(|book| self.cabinet.try_update_value(|cabinet| cabinet.remove_demo(book)));
        self.act.set(None);
        self.book.notify();
        match removed.flatten() {
            Some(Ok(())) => Ok(()),
            _ => Err(Stop::NotSaved),
        }
    }

    /// Whether the demonstration is in.
    pub fn has_demo(self) -> bool {
        self.book.with(|book| book.standing().yards.keys().any(ThingId::is_demo))
    }
}
