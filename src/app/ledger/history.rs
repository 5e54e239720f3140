//! Which lines the history shows, and in which order.

use crate::almanac::table::Table;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::{EntryId, ThingId};

/// Lines shown at a time.
pub const PAGE: usize = 100;

/// Whether a line counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Counts {
    /// It does.
    Yes,
    /// Struck out; striking out the strike brings back this many lines.
    Struck {
        /// The strike.
        by: EntryId,
        /// Lines it struck.
        lines: usize,
    },
    /// Another line of its chain of corrections stands in for it.
    Corrected,
}

/// One line of the history.
#[derive(Clone, Debug, PartialEq)]
pub struct Line<'a> {
    /// The entry.
    pub entry: &'a Entry,
    /// Whether it counts.
    pub counts: Counts,
    /// Lines written together with it, itself included; 1 for a line of its own.
    pub together: usize,
}

/// The lines of everything, of a yard or of a hive, newest day first and the newest of a day first.
///
/// Strikes have no line of their own: they show on the lines they strike.
pub fn lines<'a>(book: &'a Book, of: Option<&ThingId>) -> Vec<Line<'a>> {
    let struck = book.log().struck();
    let mut bulks: Table<&EntryId, usize> = Table::new();
    for bulk in book.log().entries().filter_map(|entry| entry.bulk.as_ref()) {
        *bulks.or_insert(bulk, 0) += 1;
    }
    let newest = book.log().corrected(&struck);
    let superseded =
        |entry: &Entry| newest.get(book.log().root(entry)).is_some_and(|line| line.id != entry.id);
    let counts = |entry: &Entry| match struck.get(&entry.id) {
        Some(by) => Counts::Struck { by: (*by).clone(), lines: struck_by(book, by) },
        None if superseded(entry) => Counts::Corrected,
        None => Counts::Yes,
    };
    let mut lines: Vec<Line<'a>> = Vec::new();
    for entry in book.log().entries() {
        if !matches!(entry.what, What::Struck { .. }) && of.is_none_or(|of| about(book, entry, of)) {
            let together = entry.bulk.as_ref().and_then(|bulk| bulks.get(bulk)).copied().unwrap_or(1);
            lines.push(Line { entry, counts: counts(entry), together });
        }
    }
    crate::almanac::order::sort_by(&mut lines, |a, b| {
        (b.entry.day, &b.entry.id).cmp(&(a.entry.day, &a.entry.id))
    });
    lines
}

/// Of the lines shown, those of one day, each day once.
pub fn days<'a, 'b>(lines: &'b [Line<'a>]) -> impl Iterator<Item = &'b [Line<'a>]> {
    lines.chunk_by(|a, b| a.entry.day == b.entry.day)
}

fn about(book: &Book, entry: &Entry, of: &ThingId) -> bool {
    let own = match &entry.what {
        What::HiveMoved { to, .. } if to == of => true,
        // A start that was moved bears the name of the first one.
        What::Hive { .. } => book.log().root(entry) == of.entry(),
        _ => entry.hive().as_ref() == Some(of),
    };
    own || entry.yard.as_ref() == Some(of)
}

fn struck_by(book: &Book, strike: &EntryId) -> usize {
    match book.log().get(strike).map(|entry| &entry.what) {
        Some(What::Struck { entries }) => entries.len(),
        _ => 0,
    }
}

#[cfg(test)]
#[path = "history_tests.rs"]
mod tests;
