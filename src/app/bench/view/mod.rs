//! What is seen of the Bench: the page, and one file a sum.

mod bodies;
mod fits;
mod keep;
mod oil;
pub mod packs;
mod page;
mod refill;
pub mod says;
pub mod shown;
mod spill;
mod yard;

pub use page::page;
