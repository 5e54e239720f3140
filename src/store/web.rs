//! The browser's storage: the only file of the store that knows a browser.

use super::keys::PREFIX;
use super::shelf::{Shelf, ShelfError};
use gloo_storage::{LocalStorage, Storage as _};

const PROBE: &str = "beetle-almanac:probe";

/// `localStorage` of this origin. Deployments under different paths share it.
#[derive(Clone)]
pub struct Local {
    storage: web_sys::Storage,
}

/// The storage may not be there (an error, or nothing) when cookies are blocked.
fn reachable() -> bool {
    web_sys::window().is_some_and(|window| matches!(window.local_storage(), Ok(Some(_))))
}

impl Local {
    /// The browser's storage, if it keeps anything.
    ///
    /// A shelf that already holds something of ours needs no trial: a trial write at every start would use up one of
    /// the few commits an hour that Chromium grants an origin, and the first real save would reach the disk late.
    /// When such a shelf has become full it can still be read, and saves say that it is full.
    ///
    /// # Errors
    /// [`ShelfError::Denied`] when the browser keeps nothing for this page, [`ShelfError::Full`] when others on the
    /// origin have left no room to begin with.
    pub fn open() -> Result<Local, ShelfError> {
        // `LocalStorage::raw` panics where access is denied, so the way is looked at first.
        if !reachable() {
            return Err(ShelfError::Denied);
        }
        let local = Local { storage: LocalStorage::raw() };
        let keys = local.keys()?;
        if keys.iter().any(|key| key.starts_with(PREFIX) && key != PROBE) {
            return Ok(local);
        }
        // Some private windows have a shelf on which nothing fits.
        let kept = local.put(PROBE, "1").is_ok() && matches!(local.get(PROBE), Ok(Some(text)) if text == "1");
        let gone = local.remove(PROBE).is_ok();
        match (kept && gone, keys.is_empty()) {
            (true, _) => Ok(local),
            (false, true) => Err(ShelfError::Denied),
            (false, false) => Err(ShelfError::Full),
        }
    }
}

impl Shelf for Local {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        self.storage.get_item(key).map_err(|_| ShelfError::Denied)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        // Any exception means "not saved". Its name differs from browser to browser and is not looked at.
        let full = |_| if reachable() { ShelfError::Full } else { ShelfError::Denied };
        self.storage.set_item(key, text).map_err(full)
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        self.storage.remove_item(key).map_err(|_| ShelfError::Denied)
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        let count = self.storage.length().map_err(|_| ShelfError::Denied)?;
        let mut keys = Vec::new();
        for n in 0..count {
            if let Some(key) = self.storage.key(n).map_err(|_| ShelfError::Denied)? {
                keys.push(key);
            }
        }
        Ok(keys)
    }
}
