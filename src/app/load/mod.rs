//! What to carry and what to buy, from the records.

pub mod store;
pub mod sum;
pub mod ticks;
pub mod typed;
pub mod which;

#[cfg(target_arch = "wasm32")]
mod buy;
#[cfg(target_arch = "wasm32")]
mod keep;
#[cfg(target_arch = "wasm32")]
mod learned;
#[cfg(target_arch = "wasm32")]
mod minutes;
#[cfg(target_arch = "wasm32")]
mod next;
#[cfg(target_arch = "wasm32")]
pub mod page;
#[cfg(target_arch = "wasm32")]
mod spent;
#[cfg(target_arch = "wasm32")]
mod trip;
