//! A text on the shelf that this version leaves alone.

use super::cabinet::PAGE;
use crate::almanac::json;
use crate::book::Book;
use crate::book::entry::Entry;
use crate::store::found;

/// Why a text is left alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// It cannot be read.
    Damaged,
    /// Sound, but written by a newer version of the app.
    Newer,
    /// Sound, but under the name of a line that was read elsewhere it has other words. The book holds one of the two.
    Clash,
}

/// A text on the shelf that this version leaves alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// Its key.
    pub key: String,
    /// The text, byte for byte.
    pub raw: String,
    /// Why.
    pub why: Why,
}

impl Aside {
    /// Lines that have other words here than in `book`: each as the book has it, and as it is here.
    pub fn clashes<'a>(&self, book: &'a Book) -> Vec<(&'a Entry, Entry)> {
        let mut clashes = Vec::new();
        if self.why == Why::Clash {
            for there in page_of(&self.raw).unwrap_or_default() {
                if let Some(here) = book.log().get(&there.id)
                    && json::to_text(here) != json::to_text(&there)
                {
                    clashes.push((here, there));
                }
            }
        }
        clashes
    }
}

/// The entries of a page that can be read.
pub(super) fn page_of(text: &str) -> Option<Vec<Entry>> {
    found::load(Some(text.to_owned()), &PAGE).into_value().map(|page| page.entries)
}
