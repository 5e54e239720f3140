//! The Round: what each hive needs now, in walking order, and the keys that log it.
//!
//! [`walk`] and [`draft`] are plain values; the rest is the page.

pub mod draft;
pub mod walk;

/// Several bits in order, whatever each of them is.
#[cfg(target_arch = "wasm32")]
macro_rules! bits {
    ($($bit:expr),* $(,)?) => { $crate::app::el::Bit::Many(vec![$($bit.into()),*]) };
}
#[cfg(target_arch = "wasm32")]
pub(crate) use bits;

#[cfg(target_arch = "wasm32")]
mod dock;
#[cfg(target_arch = "wasm32")]
mod dock_more;
#[cfg(target_arch = "wasm32")]
mod foot;
#[cfg(target_arch = "wasm32")]
pub mod form;
#[cfg(target_arch = "wasm32")]
pub mod log;
#[cfg(target_arch = "wasm32")]
mod page;
#[cfg(target_arch = "wasm32")]
pub mod said;
#[cfg(target_arch = "wasm32")]
pub mod state;
#[cfg(target_arch = "wasm32")]
mod step;
#[cfg(target_arch = "wasm32")]
mod told;
#[cfg(target_arch = "wasm32")]
mod undo;

#[cfg(target_arch = "wasm32")]
pub use foot::{foot_class, in_foot};
#[cfg(target_arch = "wasm32")]
pub use page::{keep_yard, view};
#[cfg(target_arch = "wasm32")]
pub use state::Walk;
