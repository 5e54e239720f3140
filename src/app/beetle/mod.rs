//! The Beetle: what the beetles do between visits, and when they come back.

pub mod honey;
#[cfg(target_arch = "wasm32")]
pub mod page;
