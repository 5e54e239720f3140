//! Names for writers, entries and the things entries bring into the world.

use crate::almanac::json::{json_text, write_whole};
use std::fmt;
use std::num::NonZeroU32;

/// Who writes: one start of the page on one phone. 2 to 16 characters `a`–`z`, `0`–`9`, drawn at random at the
/// browser's edge.
///
/// A new one at every start, not one a phone: two tabs then never give the same name to two entries, and neither does
/// a phone that lost its last minute when its battery died. People know a phone by the label beside its entries.
///
/// The characters lie in place, with noughts after the last: identifiers are compared, handed on and dropped all over
/// the book, and each of these costs code and time when there is a text of its own to look after.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Writer([u8; Writer::MOST]);

/// An entry: a counter and the writer that made it, written `k7f3qa-12`.
///
/// The counter is one more than the highest in the book at the time, other writers' entries included, so an entry
/// always sorts after everything its writer had seen, whatever the clocks said. Pairs are unique because a writer
/// never uses a number twice.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId {
    n: NonZeroU32,
    writer: Writer,
}

/// A yard, hive, box, trap or kind of trap: the entry that brought it and its place in that entry, written
/// `k7f3qa-12` (place 0) or `k7f3qa-12.3`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ThingId {
    entry: EntryId,
    nth: u16,
}

const DEMO: Writer = Writer(*b"demo\0\0\0\0\0\0\0\0\0\0\0\0");

/// A text that is no identifier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IdError;

impl Writer {
    /// The writer whose entries are the demonstration.
    pub const DEMO: &str = "demo";
    /// Most characters.
    const MOST: usize = 16;

    /// Checks the form.
    ///
    /// # Errors
    /// [`IdError`] for other lengths or characters.
    pub fn new(text: &str) -> Result<Writer, IdError> {
        let mut characters = [0; Writer::MOST];
        let own = characters.get_mut(..text.len()).ok_or(IdError)?;
        own.copy_from_slice(text.as_bytes());
        let fits = own.len() > 1 && own.iter().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
        if fits { Ok(Writer(characters)) } else { Err(IdError) }
    }

    /// The characters.
    pub fn as_str(&self) -> &str {
        let length = self.0.iter().position(|b| *b == 0).unwrap_or(Writer::MOST);
        // Letters and digits are always a text.
        self.0.get(..length).and_then(|own| std::str::from_utf8(own).ok()).unwrap_or_default()
    }
}

impl EntryId {
    /// The highest counter that can be used. An entry that claims a higher one is not taken in: it would leave this
    /// phone no number to write its own entries with.
    pub const MOST: u32 = 1_000_000_000;

    /// Entry `n` of `writer`, 1 to [`EntryId::MOST`].
    ///
    /// # Errors
    /// [`IdError`] for a counter outside that range.
    pub fn new(writer: Writer, n: u32) -> Result<EntryId, IdError> {
        let n = NonZeroU32::new(n).filter(|n| n.get() <= EntryId::MOST).ok_or(IdError)?;
        Ok(EntryId { n, writer })
    }

    /// The counter.
    pub fn n(&self) -> u32 {
        self.n.get()
    }

    /// Who wrote it.
    pub fn writer(&self) -> &Writer {
        &self.writer
    }

    /// Made by the demonstration, not by a keeper.
    pub fn is_demo(&self) -> bool {
        self.writer == DEMO
    }

    /// Writes it at the end of `text`.
    fn put(&self, text: &mut String) {
        text.extend(self.writer.0.iter().take_while(|byte| **byte != 0).map(|byte| char::from(*byte)));
        text.push('-');
        write_whole(u64::from(self.n()), text);
    }

    /// The `nth` thing this entry brings.
    pub fn thing(&self, nth: u16) -> ThingId {
        ThingId { entry: self.clone(), nth }
    }
}

impl ThingId {
    /// The entry that brought it.
    pub fn entry(&self) -> &EntryId {
        &self.entry
    }

    /// Its place in that entry.
    pub fn nth(&self) -> u16 {
        self.nth
    }

    /// Writes it at the end of `text`.
    fn put(&self, text: &mut String) {
        self.entry.put(text);
        if self.nth > 0 {
            text.push('.');
            write_whole(u64::from(self.nth), text);
        }
    }

    /// Belongs to the demonstration.
    pub fn is_demo(&self) -> bool {
        self.entry.is_demo()
    }

    /// Reads what [`ThingId`] writes.
    ///
    /// # Errors
    /// [`IdError`] for anything else.
    pub fn parse(text: &str) -> Result<ThingId, IdError> {
        let (entry, nth) = match text.split_once('.') {
            Some((entry, nth)) => (entry, number(nth).and_then(|n| u16::try_from(n).map_err(|_| IdError))?),
            None => (text, 0),
        };
        if nth == 0 && text.contains('.') {
            return Err(IdError);
        }
        Ok(ThingId { entry: EntryId::parse(entry)?, nth })
    }
}

impl EntryId {
    /// Reads what [`EntryId`] writes.
    ///
    /// # Errors
    /// [`IdError`] for anything else.
    pub fn parse(text: &str) -> Result<EntryId, IdError> {
        let (writer, n) = text.split_once('-').ok_or(IdError)?;
        EntryId::new(Writer::new(writer)?, number(n)?)
    }
}

/// Digits without a leading zero, so that every identifier has one spelling.
fn number(text: &str) -> Result<u32, IdError> {
    let plain = text.bytes().all(|b| b.is_ascii_digit()) && !text.starts_with('0');
    if plain { text.parse().map_err(|_| IdError) } else { Err(IdError) }
}

impl fmt::Debug for Writer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.as_str().fmt(f)
    }
}

impl fmt::Display for IdError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not an identifier")
    }
}

impl std::error::Error for IdError {}

json_text!(EntryId, ThingId);
