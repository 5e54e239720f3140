//! What is seen of the Bench: the page, and one file a sum.

mod bodies;
pub mod closing;
pub mod cost;
mod counts;
mod cover;
pub mod divide;
mod fits;
pub mod freezer;
pub mod ground;
mod keep;
mod mesh;
mod oil;
pub mod order;
pub mod packs;
mod page;
mod refill;
pub mod sample;
pub mod says;
pub mod shown;
mod spill;
mod trial;
mod yard;

pub use page::page;
