//! What the phone did not keep stays at hand until it is kept or the keeper has it.

use super::cabinet::NotSaved;
use super::records::{Records, writer};
use super::unsaved::{Held, Unsaved};
use crate::almanac::json;
use crate::book::entry::Entry;
use crate::store::shelf::ShelfError;

impl Records {
    /// Puts what was not kept to what was not kept before.
    ///
    /// The names of these entries are taken from here on, though the book does not know them: the next entries get
    /// another writer, or they would carry the same names and one of the two would be lost.
    pub(super) fn keep_unsaved(self, why: NotSaved, entries: Vec<Entry>, said: String) {
        self.writer.set_value(writer());
        let mut unsaved =
            self.unsaved.get_untracked().unwrap_or(Unsaved { why: NotSaved::Busy, acts: Vec::new() });
        unsaved.why = why;
        unsaved.hold(Held { said, entries });
        self.unsaved.set(Some(unsaved));
    }

    /// Tries once more to keep what could not be kept; true when it is.
    pub fn try_again(self) -> bool {
        let Some(unsaved) = self.unsaved.get_untracked() else { return true };
        let kept = self.save(unsaved.entries(), unsaved.said()).is_ok();
        if kept {
            self.unsaved.set(None);
        }
        kept
    }
}

/// What an earlier start could not keep is shown like what this one cannot.
pub(super) fn left_over(entries: Vec<Entry>) -> Option<Unsaved> {
    let text = json::list_to_text(&entries);
    let why = NotSaved::Shelf { why: ShelfError::Full, text };
    (!entries.is_empty()).then(|| Unsaved { why, acts: vec![Held { said: String::new(), entries }] })
}
