//! The decisions of a yard from its records, a page for each question.

pub mod chosen;
pub mod draws;

#[cfg(target_arch = "wasm32")]
pub mod card;
#[cfg(target_arch = "wasm32")]
mod close;
#[cfg(target_arch = "wasm32")]
mod comb;
#[cfg(target_arch = "wasm32")]
mod freezer;
#[cfg(target_arch = "wasm32")]
mod ground;
#[cfg(target_arch = "wasm32")]
mod open;
#[cfg(target_arch = "wasm32")]
mod page;

#[cfg(target_arch = "wasm32")]
pub use page::view;
