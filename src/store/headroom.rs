//! How full the shelf is.
//!
//! Browsers count differently and do not tell: two allow about 5.2 million UTF-16 code units an origin, one allows
//! 5 MiB and counts two bytes for every character of a text that leaves Latin-1. Half of that holds everywhere.

use super::keys::PREFIX;
use super::shelf::{Shelf, ShelfError};

/// UTF-16 code units, keys and values together, that every browser allows an origin.
pub const PLAN: u64 = 2_500_000;

/// UTF-16 code units on the shelf, keys and values together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Used {
    /// Of this app.
    pub own: u64,
    /// Of every page of the origin; they share the room.
    pub all: u64,
}

impl Used {
    /// Whole per cent of [`PLAN`] taken by everything on the origin, rounded up; may exceed 100.
    pub fn per_cent(self) -> u64 {
        self.all.saturating_mul(100).div_ceil(PLAN)
    }
}

/// UTF-16 code units of a text.
pub fn units(text: &str) -> u64 {
    text.chars().map(|c| c.len_utf16() as u64).sum()
}

/// Counts the shelf.
///
/// # Errors
/// [`ShelfError`] when the shelf cannot be read at all.
pub fn used(shelf: &dyn Shelf) -> Result<Used, ShelfError> {
    let mut used = Used::default();
    for key in shelf.keys()? {
        let size = units(&key) + shelf.get(&key)?.as_deref().map_or(0, units);
        used.all += size;
        if key.starts_with(PREFIX) {
            used.own += size;
        }
    }
    Ok(used)
}
