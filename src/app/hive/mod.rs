//! One hive: its boxes and traps, what was done, and the keys that change it.

mod boxes;
mod change;
mod page;
mod stack;

pub use boxes::{kind_choice, kinds, trap_fits};
pub use change::tag_says;
pub use page::view;
