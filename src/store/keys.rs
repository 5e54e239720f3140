//! The names under which things lie.
//!
//! | key | what |
//! |---|---|
//! | `beetle-almanac:page:<yard>:<YYYY-MM-DD>` | a page; `keeper` in place of the yard for what belongs to none |
//! | `beetle-almanac:page:<yard>:<YYYY-MM-DD>:<part>` | a further part (2, 3, …), because an earlier one cannot be read |
//! | `beetle-almanac:journal`, `beetle-almanac:journal:<n>` | the intent of a save under way |
//! | `beetle-almanac:desk:<slot>:a`, `…:b` | a small single value, twice |
//! | `beetle-almanac:only-shows` | lies there while the keeper has this phone only show the book |
//! | `beetle-almanac:aside:<slot>:<n>` | what lay on the desk and could not be read |
//! | `beetle-almanac:aside:page:…:<crc>` | in the second copy only: what lay under that page's key and could not be read |
//!
//! Several apps can share one origin, so nothing outside the prefix is ever written or removed.

use super::shelf::{Shelf, ShelfError};
use crate::almanac::checksum;
use crate::almanac::day::Day;
use crate::almanac::table::Table;

/// Every key of this app begins so.
pub const PREFIX: &str = "beetle-almanac:";
/// Every page begins so.
pub const PAGE: &str = "beetle-almanac:page:";
/// The journal; further ones, when this one cannot be read, have `:2`, `:3`, … after it.
pub const JOURNAL: &str = "beetle-almanac:journal";
/// Everything on the desk begins so.
pub const DESK: &str = "beetle-almanac:desk:";
/// A text lies here while this phone only shows the book.
pub const ONLY_SHOWS: &str = "beetle-almanac:only-shows";
/// Everything set aside begins so.
pub const ASIDE: &str = "beetle-almanac:aside:";
/// Parts a page can have. A phone that damages this many texts of one day cannot be written to.
pub const MAX_PART: u32 = 999;

const KEEPER: &str = "keeper";

/// The name of a page: a yard and a day, or the keeper and a day.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PageName {
    yard: Option<String>,
    day: Day,
}

/// A yard id that cannot stand in a key: not one to forty of `a`–`z`, `0`–`9` and `-`, or the word `keeper`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadYard;

impl PageName {
    /// The page of a yard on a day; without a yard, the keeper's.
    ///
    /// # Errors
    /// [`BadYard`] when the id cannot stand in a key.
    pub fn new(yard: Option<&str>, day: Day) -> Result<PageName, BadYard> {
        match yard {
            None => Ok(PageName::keeper(day)),
            Some(id) => PageName::yard_on(id, day),
        }
    }

    /// The page of a yard on a day.
    ///
    /// # Errors
    /// [`BadYard`] when the id cannot stand in a key.
    pub fn yard_on(id: &str, day: Day) -> Result<PageName, BadYard> {
        let fits = (1..=40).contains(&id.len())
            && id != KEEPER
            && id.bytes().all(|b| matches!(b, b'a'..=b'z' | b'0'..=b'9' | b'-'));
        if fits { Ok(PageName { yard: Some(id.to_owned()), day }) } else { Err(BadYard) }
    }

    /// The page of what belongs to no yard on a day.
    pub fn keeper(day: Day) -> PageName {
        PageName { yard: None, day }
    }

    /// The yard, or none for the keeper's page.
    pub fn yard(&self) -> Option<&str> {
        self.yard.as_deref()
    }

    /// The day.
    pub fn day(&self) -> Day {
        self.day
    }

    /// The key of a part; the first is 1.
    pub fn key(&self, part: u32) -> String {
        let page = [PAGE, self.yard().unwrap_or(KEEPER), ":", &self.day.to_string()].concat();
        if part > 1 { [&page, ":", &part.to_string()].concat() } else { page }
    }

    /// The page and part under a key; nothing for any key that [`PageName::key`] does not write.
    ///
    /// ```
    /// use beetle_almanac::store::PageName;
    /// let read = PageName::from_key("beetle-almanac:page:river-2:2026-07-14:2");
    /// assert_eq!(read.map(|(name, part)| (name.key(1), part)),
    ///     Some(("beetle-almanac:page:river-2:2026-07-14".to_owned(), 2)));
    /// ```
    pub fn from_key(key: &str) -> Option<(PageName, u32)> {
        let mut fields = key.strip_prefix(PAGE)?.split(':');
        let (yard, day) = (fields.next()?, Day::parse(fields.next()?).ok()?);
        let part = fields.next().map_or(Some(1), |text| text.parse().ok())?;
        let name = if yard == KEEPER { PageName::keeper(day) } else { PageName::yard_on(yard, day).ok()? };
        (part <= MAX_PART && name.key(part) == key).then_some((name, part))
    }
}

/// The key of the n-th journal, counted from 1.
pub(super) fn journal(n: u32) -> String {
    if n > 1 { [JOURNAL, ":", &n.to_string()].concat() } else { JOURNAL.to_owned() }
}

/// Where the second copy puts aside a text that lay under the key of a page: named after the text, so that the same one is
/// put aside once.
pub fn aside(key: &str, text: &str) -> String {
    [ASIDE, key.strip_prefix(PREFIX).unwrap_or(key), ":", &checksum::of(&[text])].concat()
}

/// Everything of this app as it lies on the shelf, sorted by key: readable or not, it can be kept as a file.
///
/// # Errors
/// [`ShelfError`] when the shelf cannot be read at all.
pub fn own(shelf: &dyn Shelf) -> Result<Vec<(String, String)>, ShelfError> {
    Ok(lying(shelf, PREFIX)?.into_iter().collect())
}

/// The texts under every key that begins with `start`.
pub(super) fn lying(shelf: &dyn Shelf, start: &str) -> Result<Table<String, String>, ShelfError> {
    let mut texts = Table::new();
    for key in shelf.keys()?.into_iter().filter(|key| key.starts_with(start)) {
        if let Some(text) = shelf.get(&key)? {
            texts.insert(key, text);
        }
    }
    Ok(texts)
}
