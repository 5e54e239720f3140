//! The records: a page for each yard and day.
//!
//! * A page whose key holds bytes that cannot be read, or that are newer than this app, is never overwritten or
//!   removed: what is new goes to the next part. The parts of a page are read together.
//! * A page that another tab has written since it was last read is not overwritten either: the caller gets the
//!   other text, joins both and tries again.
//! * A save is done when every page has been read back, or else everything is as it was.

use super::envelope;
use super::found::{self, Damage, Format, Found, examine};
use super::journal::{self, Intent, NoRoom, Recovery, Step, Unsaved};
use super::keys::{self, MAX_PART, PageName};
use super::shelf::{Shelf, ShelfError};
use crate::almanac::order::sort_by;
use crate::almanac::table::Table;

/// The pages on a shelf. `P` is what a page says.
pub struct Pages<S, P> {
    shelf: S,
    format: Format<P>,
    seen: Table<String, Seen>,
}

/// What this tab knows of a key.
#[derive(Clone, Copy, Default)]
struct Seen {
    /// Generation that was last read or written; none when nothing was there.
    last: Option<u64>,
    /// The highest generation ever seen, so that a page that vanished does not start again from 1 and lose against
    /// an older copy of itself.
    highest: u64,
    /// What was last read or written there could be read as a page.
    readable: bool,
    /// Whoever reads the pages wants it left as it is.
    left: bool,
}

/// One part of a page, as it was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page<P> {
    /// Yard and day.
    pub name: PageName,
    /// 1, or more when an earlier part could not be read.
    pub part: u32,
    /// How often it has been saved, if the envelope is sound.
    pub generation: Option<u64>,
    /// What lay there. Never [`Found::Absent`].
    pub found: Found<P>,
}

/// Something that lies where pages lie and has a name that no page has. It is left alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stranger {
    /// Its key.
    pub key: String,
    /// Its text.
    pub raw: String,
}

/// Everything that lies where pages lie.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shelves<P> {
    /// Pages, sorted by yard, day and part; the keeper's first.
    pub pages: Vec<Page<P>>,
    /// What is no page.
    pub strangers: Vec<Stranger>,
}

/// A page that is on the shelf and has been read back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saved {
    /// Its key.
    pub key: String,
    /// The part it went to.
    pub part: u32,
    /// Its generation.
    pub generation: u64,
    /// The whole text under the key, for a second copy elsewhere.
    pub text: String,
}

/// Why nothing was saved. Whatever the reason, every page is as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveError<P> {
    /// Another tab has written the page since it was last read here. Join `current` with what was to be saved and
    /// save that: the next attempt will overwrite `current`.
    ChangedElsewhere {
        /// The page.
        name: PageName,
        /// The part.
        part: u32,
        /// What lies there now.
        current: Found<P>,
    },
    /// The shelf did not take it. The texts are for the keeper to copy. Should the shelf refuse even to be put back
    /// as it was, the journal stays, and the save is shown as done and finished once there is room.
    NotSaved {
        /// Wording only.
        why: ShelfError,
        /// What is not on the shelf.
        unsaved: Vec<Unsaved>,
    },
    /// The page would not be readable afterwards. A fault of this app: nothing was written.
    Unwritable {
        /// The page.
        name: PageName,
        /// What a start would have found.
        why: Damage,
    },
    /// The same page twice in one save. A fault of this app: nothing was written.
    NamedTwice(PageName),
}

/// Where a page is to go.
struct Aim {
    key: String,
    part: u32,
    old: Option<String>,
    generation: u64,
}

impl<S: Shelf, P> Pages<S, P> {
    /// Opens the pages; settles first whatever was cut short.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn open(shelf: S, format: Format<P>) -> Result<(Pages<S, P>, Recovery), ShelfError> {
        let mut pages = Pages { shelf, format, seen: Table::new() };
        let recovery = pages.recover()?;
        Ok((pages, recovery))
    }

    /// Finishes or undoes every save that was cut short; to be called again when there is more room.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn recover(&mut self) -> Result<Recovery, ShelfError> {
        journal::settle(&self.shelf, NoRoom::Undo)
    }

    /// Everything that lies where pages lie.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn read_all(&mut self) -> Result<Shelves<P>, ShelfError> {
        self.read_where(keys::PAGE)
    }

    /// Whether a page lies there otherwise than it was last read or written here, or will once a save that was cut short is
    /// finished. No page is taken apart for it: a damaged one counts as changed.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn changed(&self) -> Result<bool, ShelfError> {
        let texts = self.texts()?;
        let gone = self.seen.iter().any(|(key, seen)| seen.last.is_some() && !texts.contains_key(key));
        let other = |(key, text): (&String, &String)| {
            self.seen
                .get(key)
                .is_none_or(|seen| seen.last.is_none() || seen.last != envelope::generation(text))
        };
        Ok(gone || texts.iter().any(other))
    }

    /// Every part of one page; after another tab has written it.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn read(&mut self, name: &PageName) -> Result<Vec<Page<P>>, ShelfError> {
        Ok(self.read_where(&name.key(1))?.pages)
    }

    /// Saves a page.
    ///
    /// # Errors
    /// [`SaveError`]; every page is as it was.
    pub fn write(&mut self, name: &PageName, payload: &P) -> Result<Saved, SaveError<P>> {
        let mut saved = self.save(&[(name, payload)])?;
        saved.pop().ok_or(SaveError::NotSaved { why: ShelfError::Other, unsaved: Vec::new() })
    }

    /// Saves several pages: all of them or none.
    ///
    /// # Errors
    /// [`SaveError`]; every page is as it was.
    pub fn write_many(&mut self, pages: &[(PageName, P)]) -> Result<Vec<Saved>, SaveError<P>> {
        let pages: Vec<(&PageName, &P)> = pages.iter().map(|(name, payload)| (name, payload)).collect();
        self.save(&pages)
    }

    /// Leaves a part as it is from here on, as if it could not be read: what is new goes to the next part.
    pub fn leave(&mut self, key: &str) {
        self.seen.or_insert(key.to_owned(), Seen::default()).left = true;
    }

    /// The text under the key of every page, as it will be once what was cut short is finished.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn texts(&self) -> Result<Table<String, String>, ShelfError> {
        let mut texts = keys::lying(&self.shelf, keys::PAGE)?;
        journal::foresee(&self.shelf, &mut texts)?;
        Ok(texts)
    }

    /// Learns that a copy of this generation lies elsewhere: the next save under `key` gets a higher one.
    pub fn heed(&mut self, key: &str, generation: u64) {
        let seen = self.seen.or_insert(key.to_owned(), Seen::default());
        seen.highest = seen.highest.max(generation);
    }

    /// The shelf under the pages.
    pub fn shelf(&self) -> &S {
        &self.shelf
    }

    fn read_where(&mut self, start: &str) -> Result<Shelves<P>, ShelfError> {
        let mut texts = keys::lying(&self.shelf, start)?;
        journal::foresee(&self.shelf, &mut texts)?;
        for (_, seen) in self.seen.iter_mut().filter(|(key, _)| key.starts_with(start)) {
            seen.last = None;
        }
        let mut shelves = Shelves { pages: Vec::new(), strangers: Vec::new() };
        for (key, raw) in texts.into_iter().filter(|(key, _)| key.starts_with(start)) {
            let Some((name, part)) = PageName::from_key(&key) else {
                shelves.strangers.push(Stranger { key, raw });
                continue;
            };
            let (generation, found) = examine(Some(raw), &self.format);
            self.note(&key, generation, found.value().is_some());
            shelves.pages.push(Page { name, part, generation, found });
        }
        sort_by(&mut shelves.pages, |a, b| (&a.name, a.part).cmp(&(&b.name, b.part)));
        Ok(shelves)
    }

    fn note(&mut self, key: &str, generation: Option<u64>, readable: bool) {
        let seen = self.seen.or_insert(key.to_owned(), Seen::default());
        seen.last = generation;
        seen.readable = readable;
        seen.highest = seen.highest.max(generation.unwrap_or(0));
    }

    fn save(&mut self, pages: &[(&PageName, &P)]) -> Result<Vec<Saved>, SaveError<P>> {
        let unsaved = self.payloads(pages)?;
        let refused = |why| SaveError::NotSaved { why, unsaved: unsaved.clone() };
        // Another tab may have died. Its save comes first; if there is no room for it, it is not for this tab to
        // undo it, and there is no room for this one either.
        let before = journal::settle(&self.shelf, NoRoom::Wait).map_err(refused)?;
        if let Some(why) = before.stuck {
            return Err(refused(why));
        }
        let mut steps = Vec::with_capacity(unsaved.len());
        let mut saved = Vec::with_capacity(unsaved.len());
        for page in &unsaved {
            let aim = self.aim(&page.name).map_err(|missed| match missed {
                Missed::Refused(why) => refused(why),
                Missed::Changed(error) => error,
            })?;
            let text = envelope::wrap(self.format.version(), aim.generation, &page.payload);
            steps.push(Step { key: aim.key.clone(), old: aim.old, new: text.clone() });
            saved.push(Saved { key: aim.key, part: aim.part, generation: aim.generation, text });
        }
        if !steps.is_empty() {
            journal::save(&self.shelf, &Intent { steps }).map_err(refused)?;
        }
        for page in &saved {
            self.note(&page.key, Some(page.generation), true);
        }
        Ok(saved)
    }

    fn payloads(&self, pages: &[(&PageName, &P)]) -> Result<Vec<Unsaved>, SaveError<P>> {
        let mut names = Table::new();
        let mut payloads = Vec::with_capacity(pages.len());
        for (name, payload) in pages {
            if names.insert(*name, ()).is_some() {
                return Err(SaveError::NamedTwice((*name).clone()));
            }
            let payload = found::payload(*payload, &self.format)
                .map_err(|why| SaveError::Unwritable { name: (*name).clone(), why })?;
            payloads.push(Unsaved { name: (*name).clone(), payload });
        }
        Ok(payloads)
    }

    /// The first part that is free or can be read, if it is as it was when this tab last saw it.
    fn aim(&mut self, name: &PageName) -> Result<Aim, Missed<P>> {
        for part in 1..=MAX_PART {
            let key = name.key(part);
            let seen = self.seen.get(&key).copied().unwrap_or_default();
            if seen.left {
                continue;
            }
            let old = self.shelf.get(&key).map_err(Missed::Refused)?;
            // A sound envelope of the generation this tab read or wrote holds what it read or wrote: a page of a
            // hundred hives need not be taken apart again at every tap.
            let sound = old.as_deref().and_then(envelope::peek);
            if let Some(known) = sound.filter(|known| seen.readable && Some(known.generation) == seen.last)
                && known.version == self.format.version()
            {
                let generation = found::next(known.generation.max(seen.highest));
                return Ok(Aim { key, part, old, generation });
            }
            let (generation, current) = examine(old.clone(), &self.format);
            if current.untouchable().is_some() {
                continue;
            }
            if generation != seen.last {
                self.note(&key, generation, current.value().is_some());
                return Err(Missed::Changed(SaveError::ChangedElsewhere {
                    name: name.clone(),
                    part,
                    current,
                }));
            }
            let generation = found::next(generation.unwrap_or(0).max(seen.highest));
            return Ok(Aim { key, part, old, generation });
        }
        Err(Missed::Refused(ShelfError::Other))
    }
}

enum Missed<P> {
    Refused(ShelfError),
    Changed(SaveError<P>),
}
