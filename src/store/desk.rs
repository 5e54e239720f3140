//! Small single values: preferences, the draft, what the app remembers of itself.
//!
//! Each has two slots. A save goes to the one that is free, unreadable or older, and the higher generation that can
//! be read wins: a write that is torn never costs the value before it. Nothing that must not run backwards may rely
//! on the desk alone (a counter of entries, say: the entries themselves know better).

use super::envelope;
use super::found::{self, Damage, Format, Found, examine};
use super::keys::{ASIDE, DESK};
use super::shelf::{Shelf, ShelfError, put_checked};

/// Copies of unreadable texts that are kept for each slot.
const MAX_ASIDE: u32 = 9;

/// The values on the desk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slot {
    /// What the keeper has set: language, units, scheme.
    Prefs,
    /// The entry that is being made.
    Draft,
    /// What the app remembers of itself: that it has been used here, the last backup.
    Meta,
}

impl Slot {
    fn name(self) -> &'static str {
        match self {
            Slot::Prefs => "prefs",
            Slot::Draft => "draft",
            Slot::Meta => "meta",
        }
    }

    /// The two keys.
    pub fn keys(self) -> [String; 2] {
        ["a", "b"].map(|side| [DESK, self.name(), ":", side].concat())
    }
}

/// Why a value on the desk was not saved. The value before it is still there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DeskError {
    /// The desk holds a value of this version, newer than this app, which is left alone.
    Newer(u32),
    /// The shelf did not take it.
    NotSaved(ShelfError),
    /// The value would not be readable afterwards. A fault of this app: nothing was written.
    Unwritable(Damage),
}

impl From<ShelfError> for DeskError {
    fn from(why: ShelfError) -> DeskError {
        DeskError::NotSaved(why)
    }
}

/// The desk on a shelf.
pub struct Desk<S> {
    shelf: S,
}

/// One of the two slots.
struct Side<T> {
    key: String,
    generation: u64,
    found: Found<T>,
}

impl<S: Shelf> Desk<S> {
    /// The desk on this shelf.
    pub fn new(shelf: S) -> Desk<S> {
        Desk { shelf }
    }

    /// The value in a slot: the later one that can be read, or else what is wrong.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn read<T>(&self, slot: Slot, format: &Format<T>) -> Result<Found<T>, ShelfError> {
        let [a, b] = self.sides(slot, format)?;
        Ok(if a.beats(&b) { a.found } else { b.found })
    }

    /// Saves a value; returns its generation.
    ///
    /// # Errors
    /// [`DeskError`]; the value before it is still there.
    pub fn write<T>(&self, slot: Slot, format: &Format<T>, value: &T) -> Result<u64, DeskError> {
        let payload = found::payload(value, format).map_err(DeskError::Unwritable)?;
        let [a, b] = self.sides(slot, format)?;
        for side in [&a, &b] {
            if let Found::Newer { found, .. } = side.found {
                return Err(DeskError::Newer(found));
            }
        }
        let generation = found::next(a.generation.max(b.generation));
        let target = if matches!(a.found, Found::Absent) || !a.beats(&b) { a } else { b };
        if let Some(raw) = target.found.untouchable() {
            self.set_aside(slot, raw)?;
        }
        put_checked(&self.shelf, &target.key, &envelope::wrap(format.version(), generation, &payload))?;
        // Saved is what the next start will show: the other side may have looked damaged for a moment, and then
        // its generation was not counted.
        let [a, b] = self.sides(slot, format)?;
        let shown = if a.beats(&b) { a } else { b };
        if shown.key == target.key { Ok(generation) } else { Err(ShelfError::Other.into()) }
    }

    fn sides<T>(&self, slot: Slot, format: &Format<T>) -> Result<[Side<T>; 2], ShelfError> {
        let [a, b] = slot.keys();
        Ok([self.side(a, format)?, self.side(b, format)?])
    }

    fn side<T>(&self, key: String, format: &Format<T>) -> Result<Side<T>, ShelfError> {
        let (generation, found) = examine(self.shelf.get(&key)?, format);
        Ok(Side { key, generation: generation.unwrap_or(0), found })
    }

    /// Keeps what cannot be read before its slot is used again.
    fn set_aside(&self, slot: Slot, raw: &str) -> Result<(), ShelfError> {
        for n in 1..=MAX_ASIDE {
            let key = [ASIDE, slot.name(), ":", &n.to_string()].concat();
            match self.shelf.get(&key)? {
                Some(kept) if kept == raw => return Ok(()),
                Some(_) => {}
                None => return put_checked(&self.shelf, &key, raw),
            }
        }
        Ok(())
    }
}

impl<T> Side<T> {
    /// This side is shown and the other is used for the next save: something readable (or newer) before damage,
    /// damage before nothing, a higher generation before a lower one.
    fn beats(&self, other: &Side<T>) -> bool {
        let rank = |side: &Side<T>| match side.found {
            Found::Absent => 0,
            Found::Damaged { .. } => 1,
            Found::Loaded(_) | Found::Migrated { .. } | Found::Newer { .. } => 2,
        };
        (rank(self), self.generation) >= (rank(other), other.generation)
    }
}
