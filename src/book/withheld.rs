//! Notes that were withheld when entries were handed to another phone.
//!
//! An entry handed over without its note has the same name and fewer words. So of one entry there may be three things in a
//! book: nothing, the entry without its note, the entry with it, each fuller than the one before. Putting two books
//! together keeps the fuller of the two, and that is the greater of two: it does not matter which comes first, how they
//! are grouped or how often they come. Anything else that differs under one name is a clash, as ever: what is here stays.

use super::entry::{Entry, What};
use std::sync::Arc;

impl Entry {
    /// The note on work or on a skip.
    pub fn note(&self) -> Option<&str> {
        match &self.what {
            What::Check(work) => work.note.as_deref(),
            What::Skip { note, .. } => note.as_deref(),
            _ => None,
        }
    }

    /// The entry without the note on its work. An entry that is nothing but words has none to take off.
    #[must_use]
    pub fn without_note(mut self) -> Entry {
        match &mut self.what {
            What::Check(work) => work.note = None,
            What::Skip { note, .. } => *note = None,
            _ => {}
        }
        self
    }

    /// Whether this is `other` with the note that `other` lacks, and differs in nothing else.
    pub fn is_fuller(&self, other: &Entry) -> bool {
        self.note().is_some() && other.note().is_none() && self.clone().without_note() == *other
    }
}

/// Puts `entry` in the place of what is here under its name, where it is the fuller of the two. Which day it is for, what
/// it strikes or corrects and when it was written stay as they are by that.
pub(super) fn fill(here: &mut Arc<Entry>, entry: Entry) -> Option<&Entry> {
    if !entry.is_fuller(here) {
        return None;
    }
    *here = Arc::new(entry);
    Some(here)
}
