//! Names for writers, entries and the things entries bring into the world.

use crate::almanac::json::json_text;
use std::fmt;

/// Who writes: one start of the page on one phone. 2 to 16 characters `a`–`z`, `0`–`9`, drawn at random at the
/// browser's edge.
///
/// A new one at every start, not one a phone: two tabs then never give the same name to two entries, and neither does
/// a phone that lost its last minute when its battery died. People know a phone by the label beside its entries.
///
/// Kept in place and filled up with zeros: a book holds tens of thousands of names, and every one on the heap would be
/// half of the time a start takes. Zeros sort before every letter, so the order is that of the texts.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Writer([u8; WRITER_MOST]);

const WRITER_MOST: usize = 16;

/// An entry: a counter and the writer that made it, written `k7f3qa-12`.
///
/// The counter is one more than the highest in the book at the time, other writers' entries included, so an entry
/// always sorts after everything its writer had seen, whatever the clocks said. Pairs are unique because a writer
/// never uses a number twice.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId {
    n: u32,
    writer: Writer,
}

/// A yard, hive, box, trap or kind of trap: the entry that brought it and its place in that entry, written
/// `k7f3qa-12` (place 0) or `k7f3qa-12.3`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ThingId {
    entry: EntryId,
    nth: u16,
}

/// A text that is no identifier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IdError;

impl Writer {
    /// The writer whose entries are the demonstration.
    pub const DEMO: &str = "demo";

    /// Checks the form.
    ///
    /// # Errors
    /// [`IdError`] for other lengths or characters.
    pub fn new(text: &str) -> Result<Writer, IdError> {
        let fits = (2..=WRITER_MOST).contains(&text.len())
            && text.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
        let mut letters = [0; WRITER_MOST];
        match letters.get_mut(..text.len()) {
            Some(place) if fits => place.copy_from_slice(text.as_bytes()),
            _ => return Err(IdError),
        }
        Ok(Writer(letters))
    }

    /// The characters.
    pub fn as_str(&self) -> &str {
        let length = self.0.iter().position(|letter| *letter == 0).unwrap_or(WRITER_MOST);
        // Letters and digits are always text.
        self.0.get(..length).and_then(|letters| std::str::from_utf8(letters).ok()).unwrap_or_default()
    }
}

impl fmt::Debug for Writer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
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
        if (1..=EntryId::MOST).contains(&n) { Ok(EntryId { n, writer }) } else { Err(IdError) }
    }

    /// The counter.
    pub fn n(&self) -> u32 {
        self.n
    }

    /// Who wrote it.
    pub fn writer(&self) -> &Writer {
        &self.writer
    }

    /// Made by the demonstration, not by a keeper.
    pub fn is_demo(&self) -> bool {
        self.writer.as_str() == Writer::DEMO
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

impl fmt::Display for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.writer.as_str(), self.n)
    }
}

impl fmt::Display for ThingId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.nth {
            0 => self.entry.fmt(f),
            nth => write!(f, "{}.{nth}", self.entry),
        }
    }
}

impl fmt::Display for IdError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not an identifier")
    }
}

impl std::error::Error for IdError {}

json_text!(EntryId, ThingId);
