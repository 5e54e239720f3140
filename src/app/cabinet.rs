//! The book on its shelf: entries go to their pages, pages come back as the book.

use super::aside::{Aside, Why};
use super::half_made::HalfMade;
use crate::almanac::json;
use crate::almanac::table::Table;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::ThingId;
use crate::book::log::Log;
use crate::book::page::{self, Page, Place};
use crate::book::plain;
use crate::store::found::{Format, Found, SAME};
use crate::store::headroom::{self, Used};
use crate::store::journal::Unsaved;
use crate::store::keys::PageName;
use crate::store::pages::{Pages, SaveError};
use crate::store::shelf::{Shelf, ShelfError};
use std::rc::Rc;

/// Version 4 of a page: version 1, with records since version 2 and more of their blanks and fields since versions 3 and 4.
pub(super) const PAGE: Format<Page> =
    Format::grown(&[SAME, SAME, SAME], |page: &Page| page.check().is_ok()).read_quickly(plain::page);

/// Size of the text, in bytes, that a file is taken in by.
const STRETCH: usize = 200_000;

/// Times a save is tried again after another tab wrote the same page.
const TRIES: usize = 5;

/// What a start found.
pub struct Opened {
    /// The open cabinet.
    pub cabinet: Cabinet,
    /// The book, as far as it could be read.
    pub book: Book,
    /// What could not be read.
    pub asides: Vec<Aside>,
    /// Entries of a save that was cut short and had to be undone for want of room. Nobody was told they were saved.
    pub unsaved: Vec<Entry>,
}

/// Why entries are not on the shelf. The book is as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotSaved {
    /// The shelf did not take them. `text` holds the entries, to be copied.
    Shelf {
        /// For the wording only.
        why: ShelfError,
        /// The entries as JSON.
        text: String,
    },
    /// A newer version of the app has written here: this one only reads.
    ReadOnly,
    /// Other tabs write faster than this one can read.
    Busy,
    /// Another tab of this page writes; this one only reads until the keeper takes over.
    Elsewhere,
    /// The keeper has this phone only show the book.
    OnlyShows,
}

/// The shelf with the book on it.
pub struct Cabinet {
    pub(super) pages: Pages<Rc<dyn Shelf>, Page>,
    pub(super) shelf: Rc<dyn Shelf>,
    pub(super) read_only: bool,
    elsewhere: bool,
    pub(super) outbox: Table<String, String>,
    /// Pages whose entries are in the book and in the second copy, but not on the shelf, which refused them.
    pub(super) owed: Vec<Vec<Entry>>,
}

impl Cabinet {
    /// Opens the book.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn open(shelf: Rc<dyn Shelf>) -> Result<Opened, ShelfError> {
        let (mut pages, recovery) = Pages::open(shelf.clone(), PAGE)?;
        let shelves = pages.read_all()?;
        let mut log = Log::default();
        let mut asides: Vec<Aside> = shelves
            .strangers
            .into_iter()
            .map(|stranger| Aside { key: stranger.key, raw: stranger.raw, why: Why::Damaged })
            .collect();
        for part in shelves.pages {
            match part.found {
                Found::Loaded(page) | Found::Migrated { value: page, .. } => {
                    let own = belongs(&part.name, &page);
                    let whole = add_all(&mut log, page.entries);
                    let key = part.name.key(part.part);
                    if !own || !whole {
                        pages.leave(&key);
                    }
                    if !whole {
                        let raw = shelf.get(&key)?.unwrap_or_default();
                        asides.push(Aside { key, raw, why: Why::Clash });
                    }
                }
                Found::Newer { raw, .. } => {
                    asides.push(Aside { key: part.name.key(part.part), raw, why: Why::Newer });
                }
                Found::Damaged { raw, .. } => {
                    asides.push(Aside { key: part.name.key(part.part), raw, why: Why::Damaged });
                }
                Found::Absent => {}
            }
        }
        let journals = recovery.left.iter();
        asides.extend(journals.map(|left| Aside {
            key: left.key.clone(),
            raw: left.raw.clone(),
            why: if left.newer { Why::Newer } else { Why::Damaged },
        }));
        let read_only = asides.iter().any(|aside| aside.why == Why::Newer);
        let undone = |page: &Unsaved| json::from_text::<Page>(&page.payload);
        let unsaved = recovery.unsaved.iter().filter_map(undone).flat_map(|page| page.entries);
        let unsaved = unsaved.filter(|entry| log.get(&entry.id).is_none()).collect();
        let outbox = Table::new();
        let cabinet = Cabinet { pages, shelf, read_only, elsewhere: false, outbox, owed: Vec::new() };
        Ok(Opened { cabinet, book: Book::from_log(log), asides, unsaved })
    }

    /// A newer version of the app has written here, so this one must not.
    pub fn read_only(&self) -> bool {
        self.read_only
    }

    /// Another tab writes, or no longer: meanwhile this one only reads.
    pub fn set_elsewhere(&mut self, elsewhere: bool) {
        self.elsewhere = elsewhere;
    }

    /// Saves `entries`, all of them or none, and adds them to `book` once they are on the shelf.
    ///
    /// Entries that another tab put on the same pages meanwhile come into `book` too. Returns how many of `entries`
    /// were new.
    ///
    /// # Errors
    /// [`NotSaved`]; none of `entries` is on the shelf or in the book then.
    pub fn save(&mut self, book: &mut Book, entries: Vec<Entry>) -> Result<usize, NotSaved> {
        if self.only_shows() {
            return Err(NotSaved::OnlyShows);
        }
        self.write(book, entries)
    }

    /// As [`Cabinet::save`], also where the phone only shows the book: what the two copies owe each other was written
    /// before.
    fn write(&mut self, book: &mut Book, entries: Vec<Entry>) -> Result<usize, NotSaved> {
        if self.read_only {
            return Err(NotSaved::ReadOnly);
        }
        if self.elsewhere {
            return Err(NotSaved::Elsewhere);
        }
        for _ in 0..TRIES {
            let places: Table<Place, ()> = entries.iter().map(|entry| (page::place(entry), ())).collect();
            let pages: Vec<(PageName, Page)> =
                places.keys().filter_map(|at| Some((name(at)?, book.log().page(at, &entries)))).collect();
            if pages.len() < places.len() {
                // Ids are made of letters and digits, so every yard has a page name.
                return Err(not_saved(ShelfError::Other, &entries));
            }
            match self.pages.write_many(&pages) {
                Ok(saved) => {
                    for page in saved {
                        self.outbox.insert(page.key, page.text);
                    }
                    return Ok(book.add(entries));
                }
                Err(SaveError::ChangedElsewhere { .. }) => {
                    // Every page is read, not only this one: several may have changed.
                    self.refresh(book).map_err(|why| not_saved(why, &entries))?;
                }
                Err(SaveError::NotSaved { why, .. }) => return Err(not_saved(why, &entries)),
                Err(SaveError::Unwritable { .. } | SaveError::NamedTwice(_)) => {
                    return Err(not_saved(ShelfError::Other, &entries));
                }
            }
        }
        Err(NotSaved::Busy)
    }

    /// Takes in what a file holds, a stretch at a time, each saved whole or not at all: the journal holds every text
    /// once more, and a book of ten seasons has no room for that beside itself. Returns how many entries were new.
    ///
    /// # Errors
    /// How many were taken in before the phone refused, and why. Nothing of the file is lost by that, and taking it in
    /// again goes on from there.
    pub fn take_in(&mut self, book: &mut Book, entries: Vec<Entry>) -> Result<usize, (usize, NotSaved)> {
        if self.only_shows() {
            return Err((0, NotSaved::OnlyShows));
        }
        let mut pages: Table<Place, Vec<Entry>> = Table::new();
        let new = |entry: &Entry| book.log().get(&entry.id).is_none_or(|here| entry.is_fuller(here));
        for entry in entries.into_iter().filter(new) {
            pages.or_insert(page::place(&entry), Vec::new()).push(entry);
        }
        // What strikes out and corrects comes first: a file that stops half way brings nothing back that was struck.
        let (mut first, rest): (Vec<_>, Vec<_>) =
            pages.into_iter().map(|(_, page)| page).partition(|page| page.iter().any(speaks_of_others));
        first.extend(rest);
        self.save_pages(book, first)
    }

    pub(super) fn save_pages(
        &mut self,
        book: &mut Book,
        pages: Vec<Vec<Entry>>,
    ) -> Result<usize, (usize, NotSaved)> {
        let (mut new, mut stretch, mut size) = (0, Vec::new(), 0);
        for page in pages {
            let more = json::list_to_text(&page).len();
            if size > 0 && size + more > STRETCH {
                self.save_stretch(book, std::mem::take(&mut stretch), &mut new)?;
                size = 0;
            }
            size += more;
            stretch.push(page);
        }
        self.save_stretch(book, stretch, &mut new)?;
        Ok(new)
    }

    /// Saves these pages at once, or, where the phone has no room for that, one by one: a page that is here already
    /// goes through the journal with all that was on it before.
    fn save_stretch(
        &mut self,
        book: &mut Book,
        pages: Vec<Vec<Entry>>,
        new: &mut usize,
    ) -> Result<(), (usize, NotSaved)> {
        match self.write(book, pages.concat()) {
            Ok(saved) => *new += saved,
            Err(NotSaved::Shelf { .. }) if pages.len() > 1 => {
                for page in pages {
                    *new += self.write(book, page).map_err(|why| (*new, why))?;
                }
            }
            Err(why) => return Err((*new, why)),
        }
        Ok(())
    }

    /// Reads what other tabs have written meanwhile into `book`. The demonstration leaves it when no page of it is left;
    /// a page of the keeper's own that is gone is still in the book. Returns how many entries came or went.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn refresh(&mut self, book: &mut Book) -> Result<usize, ShelfError> {
        self.read_into(book).map(|(new, _)| new)
    }

    /// The same, without reading every page where none has changed: for a page that is shown again, which may have
    /// slept while other tabs wrote.
    ///
    /// # Errors
    /// As [`Cabinet::refresh`].
    pub fn catch_up(&mut self, book: &mut Book) -> Result<usize, ShelfError> {
        if self.pages.changed()? { self.refresh(book) } else { Ok(0) }
    }

    /// Reads every page into `book`: how many entries came or went, and the keys of the demonstration's pages.
    ///
    /// Once the book is open nothing else reads them. A page that was read counts as known, and the next save writes
    /// over it whatever the book does not hold.
    fn read_into(&mut self, book: &mut Book) -> Result<(usize, Vec<String>), ShelfError> {
        let shelves = self.pages.read_all()?;
        let (mut new, mut demo) = (Vec::new(), Vec::new());
        for part in shelves.pages {
            self.read_only |= matches!(part.found, Found::Newer { .. });
            // What cannot be read is left alone here as everywhere.
            let Some(page) = part.found.into_value() else { continue };
            let key = part.name.key(part.part);
            if !belongs(&part.name, &page) {
                self.pages.leave(&key);
            }
            if of_demo(&part.name) {
                demo.push(key);
            }
            new.extend(page.entries);
        }
        let mut moved = book.add(new);
        if demo.is_empty() && book.log().entries().any(Entry::is_demo) {
            let rest = book.without(Entry::is_demo);
            moved += book.log().len() - rest.log().len();
            *book = rest;
        }
        Ok((moved, demo))
    }

    /// Takes the demonstration off the shelf and out of the book. Pages of the keeper's own yards are not touched, and
    /// what another tab has written on them meanwhile comes into `book`.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf refuses; what is already off stays off, and nothing else is lost.
    pub fn remove_demo(&mut self, book: &mut Book) -> Result<(), ShelfError> {
        let (_, demo) = self.read_into(book)?;
        if self.read_only || self.elsewhere || self.only_shows() {
            return Err(ShelfError::Other);
        }
        for key in demo {
            self.shelf.remove(&key)?;
        }
        // The pages are read anew, so that a demonstration filled in again starts from a clean shelf.
        self.refresh(book).map(|_| ())
    }

    /// The half-made entries that lie beside the book.
    pub fn half_made(&self) -> HalfMade {
        HalfMade::on(self.shelf.clone())
    }

    /// How full the shelf is.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn used(&self) -> Result<Used, ShelfError> {
        headroom::used(&*self.shelf)
    }
}

/// False when an entry is here already under the same name with other words. What was read first counts; a log cannot
/// hold both, so the page of the second is left as it is and shown.
fn add_all(log: &mut Log, entries: Vec<Entry>) -> bool {
    let mut whole = true;
    for entry in entries {
        match log.get(&entry.id) {
            Some(here) if here.is_fuller(&entry) => {}
            Some(here) if !entry.is_fuller(here) => whole &= json::to_text(here) == json::to_text(&entry),
            _ => _ = log.add(entry),
        }
    }
    whole
}

/// Whether everything on a page lies where it belongs. A save writes what belongs on its page and nothing else, so that
/// what got under the name of another page would be gone with the next one.
fn belongs(name: &PageName, page: &Page) -> bool {
    let yard = name.yard().and_then(|yard| ThingId::parse(yard).ok());
    let known = yard.is_some() == name.yard().is_some();
    let place = (yard, name.day());
    known && page.entries.iter().all(|entry| page::lies_on(entry, &place))
}

pub(super) fn of_demo(page: &PageName) -> bool {
    page.yard().is_some_and(|yard| yard.starts_with("demo-"))
}

fn speaks_of_others(entry: &Entry) -> bool {
    entry.replaces.is_some() || matches!(entry.what, What::Struck { .. })
}

fn name((yard, day): &Place) -> Option<PageName> {
    match yard {
        Some(yard) => PageName::yard_on(&yard.to_string(), *day).ok(),
        None => Some(PageName::keeper(*day)),
    }
}

fn not_saved(why: ShelfError, entries: &[Entry]) -> NotSaved {
    NotSaved::Shelf { why, text: json::list_to_text(entries) }
}
