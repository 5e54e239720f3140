//! A set of named texts that may refuse a write.

use std::rc::Rc;

/// Why a shelf did not do what it was asked.
///
/// The three differ in wording only: whatever the reason, a write that returns an error is *not saved*. Browsers
/// disagree about the names of their exceptions, so no name is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShelfError {
    /// The browser keeps nothing for this page: storage is switched off, or a private window allows none.
    Denied,
    /// There is no room.
    Full,
    /// The shelf said yes and then gave back something else.
    Other,
}

/// Named texts, as the browser's storage keeps them. Reading takes `&self` for writes too, because the browser
/// hands the same storage to several tabs at once.
pub trait Shelf {
    /// The text under `key`, or nothing.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError>;

    /// Puts `text` under `key`, in place of what was there.
    ///
    /// # Errors
    /// [`ShelfError`] when the text was not taken; what was there before should still be there, which the callers
    /// in this module check by reading.
    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError>;

    /// Takes away `key`; nothing happens when it is not there.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf refuses.
    fn remove(&self, key: &str) -> Result<(), ShelfError>;

    /// Every key on the shelf, those of other pages of the same origin included, in no particular order.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    fn keys(&self) -> Result<Vec<String>, ShelfError>;
}

impl<S: Shelf + ?Sized> Shelf for &S {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        (**self).get(key)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        (**self).put(key, text)
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        (**self).remove(key)
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        (**self).keys()
    }
}

/// The app chooses between the browser's storage and memory while it runs, so it holds an `Rc<dyn Shelf>`.
impl<S: Shelf + ?Sized> Shelf for Rc<S> {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        (**self).get(key)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        (**self).put(key, text)
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        (**self).remove(key)
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        (**self).keys()
    }
}

/// Puts `text` under `key` and reads it back: a save is what can be read again, not what was not refused.
pub(super) fn put_checked(shelf: &dyn Shelf, key: &str, text: &str) -> Result<(), ShelfError> {
    shelf.put(key, text)?;
    if shelf.get(key)?.as_deref() == Some(text) { Ok(()) } else { Err(ShelfError::Other) }
}

/// Takes away `key` and looks whether it is gone.
pub(super) fn remove_checked(shelf: &dyn Shelf, key: &str) -> Result<(), ShelfError> {
    shelf.remove(key)?;
    if shelf.get(key)?.is_none() { Ok(()) } else { Err(ShelfError::Other) }
}
