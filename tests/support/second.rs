//! The second copy: a database that writes all of a transaction or nothing, fills up, or refuses.

use beetle_almanac::almanac::table::Table;
use beetle_almanac::app::cabinet::Cabinet;
use beetle_almanac::store::headroom::units;
use beetle_almanac::store::mirror;
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// How a transaction ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ended {
    Done,
    Overtaken,
    Refused,
}

#[derive(Clone, Debug, Default)]
pub(crate) struct Second {
    texts: RefCell<BTreeMap<String, String>>,
    /// This transaction, counted from 1, is refused.
    pub(crate) refuse: Cell<Option<u32>>,
    /// Room in UTF-16 code units, keys and values together.
    pub(crate) quota: Cell<Option<u64>>,
    written: Cell<u32>,
}

impl Second {
    pub(crate) fn new(texts: BTreeMap<String, String>) -> Second {
        Second { texts: RefCell::new(texts), ..Second::default() }
    }

    pub(crate) fn texts(&self) -> BTreeMap<String, String> {
        self.texts.borrow().clone()
    }

    pub(crate) fn lay(&self, key: &str, text: &str) {
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
    }

    /// As the page reads it.
    pub(crate) fn read(&self) -> Vec<(String, String)> {
        self.texts().into_iter().collect()
    }

    /// As the page writes it, by the same rule.
    pub(crate) fn write(&self, texts: &Table<String, String>) -> Ended {
        self.written.set(self.written.get() + 1);
        if self.refuse.get() == Some(self.written.get()) {
            return Ended::Refused;
        }
        let mut after = self.texts();
        let lying: Vec<_> = texts.keys().map(|key| after.get(key).cloned()).collect();
        let Some(puts) = mirror::transaction(&lying, texts) else { return Ended::Overtaken };
        after.extend(puts);
        let size: u64 = after.iter().map(|(key, text)| units(key) + units(text)).sum();
        if self.quota.get().is_some_and(|quota| size > quota) {
            return Ended::Refused;
        }
        self.texts.replace(after);
        Ended::Done
    }

    /// Writes what waits in the outbox. True when there is nothing left: only then the page says "saved".
    pub(crate) fn take(&self, cabinet: &mut Cabinet) -> Ended {
        let texts = cabinet.take_outbox();
        if texts.is_empty() {
            return Ended::Done;
        }
        let ended = self.write(&texts);
        if ended != Ended::Done {
            cabinet.put_back(texts);
        }
        ended
    }
}
