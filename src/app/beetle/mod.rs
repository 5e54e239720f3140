//! The Beetle: what the beetles do between visits, and when they come back.

pub mod honey;
pub mod reckon;
pub mod told;

#[cfg(target_arch = "wasm32")]
pub mod bars;
#[cfg(target_arch = "wasm32")]
mod dates;
#[cfg(target_arch = "wasm32")]
pub mod page;
#[cfg(target_arch = "wasm32")]
mod season;
#[cfg(target_arch = "wasm32")]
mod worked;
