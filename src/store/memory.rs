//! A shelf that forgets when the page is closed. It stands in when the browser keeps nothing, and the app says so.

use super::shelf::{Shelf, ShelfError};
use crate::almanac::table::Table;
use std::cell::RefCell;

/// Texts in memory.
#[derive(Clone, Debug, Default)]
pub struct Memory(RefCell<Table<String, String>>);

impl Memory {
    /// An empty shelf.
    pub fn new() -> Memory {
        Memory::default()
    }
}

impl Shelf for Memory {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        Ok(self.0.borrow().get(key).cloned())
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        self.0.borrow_mut().insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        self.0.borrow_mut().remove(key);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        Ok(self.0.borrow().keys().cloned().collect())
    }
}
