//! One yard: the hives in walking order, and the keys that change the yard.

mod beside;
mod hives;
mod keys;
mod order;
mod page;
mod rest;
mod rows;

pub use keys::name_says;
pub use order::after;
pub use page::{need, view};
