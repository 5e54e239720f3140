//! Notes, and where a yard is or how to reach somebody, that were withheld when entries were handed to another phone.
//!
//! An entry handed over without them has the same name and fewer words. So of one entry there may be three things in a
//! book: nothing, the entry without them, the entry with them, each fuller than the one before. Putting two books
//! together keeps the fuller of the two, and that is the greater of two: it does not matter which comes first, how they
//! are grouped or how often they come. Anything else that differs under one name is a clash, as ever: what is here stays.

use super::entry::{Entry, What};
use std::sync::Arc;

impl Entry {
    /// Whether it holds something that stays at home unless it is asked for: a note on work or on a skip, or what a record
    /// keeps to itself.
    pub fn has_private(&self) -> bool {
        match &self.what {
            What::Check(work) => work.note.is_some(),
            What::Skip { note, .. } => note.is_some(),
            What::Record(record) => record.filled().any(|(field, _)| field.private),
            _ => false,
        }
    }

    /// The entry without that. A line that is nothing but words has none to take off.
    #[must_use]
    pub fn without_private(mut self) -> Entry {
        match &mut self.what {
            What::Check(work) => work.note = None,
            What::Skip { note, .. } => *note = None,
            What::Record(record) => record.leave_out_private(),
            _ => {}
        }
        self
    }

    /// Whether this is `other` with what `other` lacks of it, and differs in nothing else.
    pub fn is_fuller(&self, other: &Entry) -> bool {
        self.has_private() && !other.has_private() && self.clone().without_private() == *other
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
