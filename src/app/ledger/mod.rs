//! The Book: what happened, and the files that keep it safe.

pub mod edit;
pub mod edit_facts;
pub mod history;
pub mod papers;
pub mod safety;
pub mod words;

#[cfg(target_arch = "wasm32")]
pub mod asides;
#[cfg(target_arch = "wasm32")]
mod doubts;
#[cfg(target_arch = "wasm32")]
mod edit_form;
#[cfg(target_arch = "wasm32")]
mod edit_parts;
#[cfg(target_arch = "wasm32")]
mod hand_over;
#[cfg(target_arch = "wasm32")]
pub mod lines;
#[cfg(target_arch = "wasm32")]
pub mod page;
#[cfg(target_arch = "wasm32")]
mod phone;
#[cfg(target_arch = "wasm32")]
mod recovered;
#[cfg(target_arch = "wasm32")]
mod restore;
#[cfg(target_arch = "wasm32")]
pub mod save;
#[cfg(target_arch = "wasm32")]
pub mod shifts;
#[cfg(target_arch = "wasm32")]
mod table_in;
