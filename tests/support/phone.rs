//! A phone that dies, fills up or lies.
#![allow(dead_code)] // each lane of tests takes what it needs

use beetle_almanac::store::headroom::units;
use beetle_almanac::store::shelf::{Shelf, ShelfError};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// What goes wrong, and when. Writes are puts and removals, counted from 1 since the faults were set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Faults {
    /// Nothing can be read or written.
    pub(crate) denied: bool,
    /// Room in UTF-16 code units, keys and values together. A put that makes the total smaller is always taken.
    pub(crate) quota: Option<u64>,
    /// This write is refused; later ones are not.
    pub(crate) refuse: Option<u32>,
    /// This write is said to be done, and is not.
    pub(crate) swallow: Option<u32>,
    /// The phone dies at this write: it and all later ones do nothing.
    pub(crate) cut: Option<u32>,
    /// The put that is cut, refused or swallowed leaves the first half of its text.
    pub(crate) torn: bool,
    /// This reading, counted from 1, gives back something that was never written.
    pub(crate) garble: Option<u32>,
}

/// Texts in memory. A clone is a snapshot with the same faults and counters.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory {
    texts: RefCell<BTreeMap<String, String>>,
    faults: Cell<Faults>,
    writes: Cell<u32>,
    reads: Cell<u32>,
}

impl Memory {
    /// An empty shelf without faults.
    pub(crate) fn new() -> Memory {
        Memory::default()
    }

    /// Sets what goes wrong from now on, and counts from 0 again.
    pub(crate) fn set_faults(&self, faults: Faults) {
        self.faults.set(faults);
        self.writes.set(0);
        self.reads.set(0);
    }

    /// What the next start finds: the same texts, no faults.
    #[must_use]
    pub(crate) fn restarted(&self) -> Memory {
        Memory { texts: self.texts.clone(), ..Memory::default() }
    }

    /// Writes asked for since the faults were set, refused ones included.
    pub(crate) fn writes(&self) -> u32 {
        self.writes.get()
    }

    /// Readings asked for since the faults were set.
    pub(crate) fn reads(&self) -> u32 {
        self.reads.get()
    }

    /// Everything as it lies, past all faults.
    pub(crate) fn texts(&self) -> BTreeMap<String, String> {
        self.texts.borrow().clone()
    }

    /// Puts a text there past all faults: another tab, or damage.
    pub(crate) fn lay(&self, key: &str, text: &str) {
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
    }

    /// The verdict on the next write.
    fn write(&self) -> Result<(), ShelfError> {
        let faults = self.faults.get();
        let n = self.writes.get().saturating_add(1);
        self.writes.set(n);
        if faults.denied {
            Err(ShelfError::Denied)
        } else if faults.refuse == Some(n) || faults.cut.is_some_and(|cut| n >= cut) {
            Err(ShelfError::Full)
        } else {
            Ok(())
        }
    }

    /// What a faulty put leaves behind.
    fn tear(&self, key: &str, text: &str) {
        let faults = self.faults.get();
        let n = Some(self.writes.get());
        if faults.torn && [faults.refuse, faults.cut, faults.swallow].contains(&n) {
            let half = text.chars().take(text.chars().count() / 2).collect();
            self.texts.borrow_mut().insert(key.to_owned(), half);
        }
    }

    fn swallows(&self) -> bool {
        self.faults.get().swallow == Some(self.writes.get())
    }
}

impl Shelf for Memory {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        let faults = self.faults.get();
        if faults.denied {
            return Err(ShelfError::Denied);
        }
        let n = self.reads.get().saturating_add(1);
        self.reads.set(n);
        if faults.garble == Some(n) {
            return Ok(Some("\u{fffd}{\"v\":1".to_owned()));
        }
        Ok(self.texts.borrow().get(key).cloned())
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        let verdict = self.write();
        if verdict.is_err() || self.swallows() {
            self.tear(key, text);
            return verdict;
        }
        if let Some(quota) = self.faults.get().quota {
            let texts = self.texts.borrow();
            let total: u64 = texts.iter().map(|(key, text)| units(key) + units(text)).sum();
            let old = texts.get(key).map_or(0, |old| units(key) + units(old));
            let after = total - old + units(key) + units(text);
            if after > quota && after > total {
                return Err(ShelfError::Full);
            }
        }
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        self.write()?;
        if !self.swallows() {
            self.texts.borrow_mut().remove(key);
        }
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        if self.faults.get().denied {
            return Err(ShelfError::Denied);
        }
        Ok(self.texts.borrow().keys().cloned().collect())
    }
}
