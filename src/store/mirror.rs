//! The second copy of the pages, in another storage of the same browser.
//!
//! What the shelf says is saved may not be on disk yet: one browser writes it out seconds later, and a phone that dies in
//! between loses it. The second copy is on disk before anybody is told "saved". Here is what is decided about the two;
//! nothing here touches either.
//!
//! * The second copy holds each page under the key it has on the shelf, the same text letter for letter.
//! * A page is a set of entries that only grows, so two different copies are joined, whatever their generations say.
//! * A text that cannot be read is never written over before it has been put aside.

use super::envelope;
use super::found::{Format, Found, examine};
use super::keys;
use crate::almanac::table::Table;

/// What to do about a page of which the second copy holds a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Verdict<P> {
    /// Both copies are the same, letter for letter.
    Alike,
    /// The second copy could be read and differs: what it says is to be joined with what is here.
    Differs {
        /// What the second copy says.
        page: P,
        /// Its generation.
        generation: u64,
        /// The copy here can be read and has been saved as often or less: only a save of a higher generation can
        /// take the place of the second copy.
        later: bool,
    },
    /// The second copy cannot be read. With a generation when only what is in the envelope cannot.
    Damaged {
        /// Its generation, if the envelope is sound.
        generation: Option<u64>,
    },
    /// The second copy was written by a newer version of the app.
    Newer,
}

/// Compares a page on the shelf, if it lies there, with its second copy.
pub fn compare<P>(here: Option<&str>, there: &str, format: &Format<P>) -> Verdict<P> {
    if here == Some(there) {
        return Verdict::Alike;
    }
    match examine(Some(there.to_owned()), format) {
        (_, Found::Newer { .. }) => Verdict::Newer,
        (generation, found) => match (generation, found.into_value()) {
            (Some(generation), Some(page)) => {
                let later = here.and_then(envelope::peek).is_some_and(|here| here.generation <= generation);
                Verdict::Differs { page, generation, later }
            }
            (generation, _) => Verdict::Damaged { generation },
        },
    }
}

/// Whether a text on the shelf may be copied: a sound envelope of this version. What cannot be read is not multiplied.
pub fn copyable<P>(here: &str, format: &Format<P>) -> bool {
    envelope::peek(here).is_some_and(|inside| inside.version == format.version())
}

/// What a transaction on the second copy writes, if it may write at all.
///
/// `lying` is what lies under the keys of `texts` inside that transaction, in their order. A text takes the place of
/// nothing, of itself, of a text of a lower generation, or of bytes that are no envelope; these are put aside by the same
/// transaction. None when anything else lies there: somebody has written since it was last read, so the two copies are to
/// be compared anew before anything is written.
pub fn transaction(lying: &[Option<String>], texts: &Table<String, String>) -> Option<Vec<(String, String)>> {
    let mut puts = Vec::new();
    for ((key, text), lying) in texts.iter().zip(lying) {
        if let Some(lying) = lying {
            // What is put aside lies under a name made of what it says.
            if lying == text || key.starts_with(keys::ASIDE) {
                continue;
            }
            match (envelope::peek(lying), envelope::peek(text)) {
                (None, _) => puts.push((keys::aside(key, lying), lying.clone())),
                (Some(old), Some(new)) if old.version <= new.version && old.generation < new.generation => {}
                _ => return None,
            }
        }
        puts.push((key.clone(), text.clone()));
    }
    Some(puts)
}
