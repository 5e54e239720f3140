//! The screens: one folder a place, shared parts, one file of words a language.
//!
//! What a screen keeps and says ([`place`], [`prefs`], [`wording`], [`bench::draft`]) is plain values and compiles
//! everywhere; what touches the page is behind `wasm32`, and what touches the browser beyond the page is in `edge`.

pub mod aside;
pub mod beetle;
pub mod bench;
pub mod cabinet;
pub mod catch;
pub mod decide;
pub mod half_made;
pub mod kinds;
pub mod ledger;
pub mod load;
pub mod meta;
pub mod only_shows;
pub mod place;
pub mod prefs;
pub mod reconcile;
pub mod record;
pub mod round;
pub mod unsaved;
pub mod wording;
pub mod yard;

#[cfg(target_arch = "wasm32")]
pub mod act;
#[cfg(target_arch = "wasm32")]
mod demonstration;
#[cfg(target_arch = "wasm32")]
pub mod edge;
#[cfg(target_arch = "wasm32")]
pub mod el;
#[cfg(target_arch = "wasm32")]
pub mod frame;
#[cfg(target_arch = "wasm32")]
pub mod graph;
#[cfg(target_arch = "wasm32")]
pub mod hive;
#[cfg(target_arch = "wasm32")]
pub mod notices;
#[cfg(target_arch = "wasm32")]
pub mod parts;
#[cfg(target_arch = "wasm32")]
pub mod records;
#[cfg(target_arch = "wasm32")]
mod remembered;
#[cfg(target_arch = "wasm32")]
pub mod second;
#[cfg(target_arch = "wasm32")]
pub mod settings;
#[cfg(target_arch = "wasm32")]
pub mod start;
#[cfg(target_arch = "wasm32")]
pub mod state;
#[cfg(target_arch = "wasm32")]
mod tabs;
#[cfg(target_arch = "wasm32")]
mod unkept;

#[cfg(target_arch = "wasm32")]
pub use start::mount;
