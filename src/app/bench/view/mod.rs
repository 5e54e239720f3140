//! What is seen of the Bench: the page, and one file a sum.

mod bodies;
pub mod cost;
mod cover;
mod fits;
mod freezer;
mod ground;
mod keep;
mod mesh;
mod oil;
pub mod order;
pub mod packs;
mod page;
mod refill;
mod sample;
pub mod says;
pub mod shown;
mod spill;
mod yard;

pub use page::page;
