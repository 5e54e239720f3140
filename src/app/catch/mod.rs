//! Catch: is it getting better? From the counts in the book, and in words that both it and the Bench say.

#[cfg(target_arch = "wasm32")]
mod charts;
#[cfg(target_arch = "wasm32")]
pub mod page;
pub mod told;
#[cfg(target_arch = "wasm32")]
pub mod trial;
