//! A phone in other hands: the book can be read, and nothing can be written.
//!
//! It is no lock and does not pretend to be one: whoever holds the phone reads the book, and turns this off. It keeps a
//! helper, a visitor or a child from writing by mistake. [`Cabinet`] asks the shelf itself at every save, so that no
//! screen, no file, no other tab and no start can pass it by.

use super::cabinet::Cabinet;
use crate::store::keys::ONLY_SHOWS;
use crate::store::shelf::{Shelf, ShelfError};

impl Cabinet {
    /// Whether the keeper has this phone only show the book.
    pub fn only_shows(&self) -> bool {
        matches!(self.shelf.get(ONLY_SHOWS), Ok(Some(_)))
    }

    /// From now on, also after a restart, this phone only shows the book, or writes again.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf does not take it; it is as it was.
    pub fn set_only_shows(&self, on: bool) -> Result<(), ShelfError> {
        if on { self.shelf.put(ONLY_SHOWS, "1") } else { self.shelf.remove(ONLY_SHOWS) }
    }
}
