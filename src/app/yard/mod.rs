//! One yard: the hives in walking order, and the keys that change the yard.

pub mod alarm;

#[cfg(target_arch = "wasm32")]
mod beside;
#[cfg(target_arch = "wasm32")]
mod hives;
#[cfg(target_arch = "wasm32")]
mod keys;
#[cfg(target_arch = "wasm32")]
mod order;
#[cfg(target_arch = "wasm32")]
mod page;
#[cfg(target_arch = "wasm32")]
mod rest;
#[cfg(target_arch = "wasm32")]
mod rows;

#[cfg(target_arch = "wasm32")]
pub use keys::name_says;
#[cfg(target_arch = "wasm32")]
pub use order::after;
#[cfg(target_arch = "wasm32")]
pub use page::{need, view};
