//! What to carry and what to buy, from the records.

pub mod sum;

#[cfg(target_arch = "wasm32")]
mod buy;
#[cfg(target_arch = "wasm32")]
pub mod page;
#[cfg(target_arch = "wasm32")]
mod trip;
