//! One hive: its boxes and traps, what was done, and the keys that change it.

mod page;

pub use page::view;
