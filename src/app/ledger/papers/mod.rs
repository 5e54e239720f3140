//! Papers to show: the calendar file, tables, and sheets for printing.

pub mod events;
pub mod packet;

#[cfg(target_arch = "wasm32")]
mod cards;
#[cfg(target_arch = "wasm32")]
pub(super) mod give;
#[cfg(target_arch = "wasm32")]
pub(super) mod page;
#[cfg(target_arch = "wasm32")]
pub(super) mod part;
#[cfg(target_arch = "wasm32")]
mod record;
#[cfg(target_arch = "wasm32")]
mod sheet;
#[cfg(target_arch = "wasm32")]
mod truck;
