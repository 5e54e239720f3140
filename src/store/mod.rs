//! Where the pages of the book lie.
//!
//! A [`Shelf`] is a set of named texts that may refuse a write; the browser's storage is one leaf of it (`web`),
//! [`Memory`] the other; the second copy has a leaf of its own (`second`). Everything above the shelf is pure and tested natively:
//!
//! * [`keys`]: the names under which things lie. Nothing outside [`keys::PREFIX`] is ever written or removed.
//! * [`envelope`]: version, generation and checksum around a payload.
//! * [`found`]: what can come back from a shelf, in five outcomes.
//! * [`pages`]: the records, a key for each yard and day; no unreadable byte is ever overwritten.
//! * [`journal`]: the intent of a save, put down first, so that a save is done wholly or not at all.
//! * [`mirror`]: the second copy of the pages beside the first: what is written where, and what is taken in.
//! * [`desk`]: small single values (preferences, the draft) in two slots.
//! * [`headroom`]: how full the shelf is.
//!
//! Formats of version 1 are read for ever: `tests/store` pins them byte for byte.

pub mod desk;
pub mod envelope;
pub mod found;
pub mod headroom;
pub mod journal;
pub mod keys;
pub mod memory;
pub mod mirror;
pub mod pages;
pub mod shelf;

#[cfg(target_arch = "wasm32")]
pub mod second;
#[cfg(target_arch = "wasm32")]
pub mod web;

pub use desk::{Desk, DeskError, Slot};
pub use found::{CannotMigrate, Damage, Format, Found, load};
pub use journal::{Leftover, Recovery, Unsaved};
pub use keys::{BadYard, PageName};
pub use memory::Memory;
pub use pages::{Page, Pages, SaveError, Saved, Shelves, Stranger};
pub use shelf::{Shelf, ShelfError};
