//! The map of the house. Arrows point one way: [`app`] → [`book`] → [`almanac`]; `app` → [`store`];
//! [`papers`] → `book`.
//!
//! * [`almanac`]: what traps, oil and calendars do. Pure functions on plain values, one noun a file.
//! * [`book`]: the keeper's records: an append-only log of entries and what follows from it.
//! * [`papers`]: text that leaves the phone.
//! * [`store`]: where the pages of the book lie; the browser's storage is one leaf of it.
//! * [`app`]: the screens. What they say and keep is plain values; the views themselves are wasm only.
//!
//! `almanac`, `book` and `papers` know no browser, no clock and no randomness: today's date and the
//! identity of this phone come in as arguments.

pub mod almanac;
pub mod app;
pub mod book;
pub mod papers;
pub mod store;
