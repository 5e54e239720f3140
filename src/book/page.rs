//! The pages the log lies on: one for each yard and day, so that a save is small and damage stays local.

use super::entry::{Entry, EntryError};
use super::id::ThingId;
use crate::almanac::day::Day;
use crate::almanac::json::json_object;

/// Which page an entry lies on: its yard (none: the keeper's own page) and its day.
pub type Place = (Option<ThingId>, Day);

/// What one page holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Page {
    /// In the order in which they were written.
    pub entries: Vec<Entry>,
}

json_object!(Page { entries });

impl Page {
    /// Checks every entry.
    ///
    /// # Errors
    /// The first [`EntryError`]; such a page counts as damaged.
    pub fn check(&self) -> Result<(), EntryError> {
        self.entries.iter().try_for_each(Entry::check)
    }
}

/// The page `entry` belongs on.
pub fn place(entry: &Entry) -> Place {
    (entry.yard.clone(), entry.day)
}

/// Whether `entry` belongs on the page at `place`.
pub fn lies_on(entry: &Entry, place: &Place) -> bool {
    entry.day == place.1 && entry.yard == place.0
}
