//! The Beetle: what the beetles do between visits, and when they come back.

pub mod bait_said;
pub mod honey;
pub mod honey_sum;
pub mod honey_told;
pub mod lots_said;
pub mod reckon;
pub mod rhythm;
pub mod told;

#[cfg(target_arch = "wasm32")]
pub mod bars;
#[cfg(target_arch = "wasm32")]
mod dates;
#[cfg(target_arch = "wasm32")]
mod honey_page;
#[cfg(target_arch = "wasm32")]
pub mod page;
#[cfg(target_arch = "wasm32")]
mod rhythm_page;
#[cfg(target_arch = "wasm32")]
mod season;
#[cfg(target_arch = "wasm32")]
mod worked;
