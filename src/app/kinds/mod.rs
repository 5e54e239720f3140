//! The kinds of trap the keeper uses, in the keeper's own words and sizes.

pub mod draft;

#[cfg(target_arch = "wasm32")]
pub mod form;
#[cfg(target_arch = "wasm32")]
pub mod list;
#[cfg(target_arch = "wasm32")]
mod rows;

use crate::almanac::day::Day;
use crate::book::Book;
use crate::book::id::ThingId;

/// The day a kind came into the book. What changes it is never dated earlier: a yard far to the east may be a day
/// ahead of the phone.
pub fn first_day(book: &Book, kind: &ThingId) -> Day {
    book.log().get(kind.entry()).map_or(Day::FIRST, |entry| entry.day)
}
