//! Papers to show: the calendar file, tables, and sheets for printing.

pub mod days;
pub mod events;
pub mod packet;

#[cfg(target_arch = "wasm32")]
mod cards;
#[cfg(target_arch = "wasm32")]
pub(super) mod give;
#[cfg(target_arch = "wasm32")]
mod lot;
#[cfg(target_arch = "wasm32")]
pub(in crate::app) mod page;
#[cfg(target_arch = "wasm32")]
pub(super) mod part;
#[cfg(target_arch = "wasm32")]
mod record;
#[cfg(target_arch = "wasm32")]
mod season;
#[cfg(target_arch = "wasm32")]
pub(in crate::app::ledger) mod sheet;
#[cfg(target_arch = "wasm32")]
mod truck;
