//! The book on its shelf: entries go to their pages, pages come back as the book.

use crate::almanac::day::Day;
use crate::almanac::json::{self, Fields, Json, MaybeJson, Object, Value, serde_by_json};
use crate::almanac::table::Table;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::log::Log;
use crate::book::page::{self, Page, Place};
use crate::book::plain;
use crate::papers::calendar::Given;
use crate::store::desk::{Desk, DeskError, Slot};
use crate::store::found::{self, Format, Found};
use crate::store::headroom::{self, Used};
use crate::store::journal::Unsaved;
use crate::store::keys::{self, PageName};
use crate::store::mirror::{self, Verdict};
use crate::store::pages::{Pages, SaveError};
use crate::store::shelf::{Shelf, ShelfError};
use std::rc::Rc;

/// Version 1 of a page.
const PAGE: Format<Page> = Format::first(|page: &Page| page.check().is_ok()).read_quickly(plain::page);
/// Version 1 of what the app remembers of itself.
const META: Format<Meta> = Format::first(|_| true);
/// Version 1 of the entry in the making, as a text of whoever makes it.
const DRAFT: Format<String> = Format::first(|_| true);

/// Size of the text, in bytes, that a file is taken in by.
const STRETCH: usize = 200_000;

/// Times a save is tried again after another tab wrote the same page.
const TRIES: usize = 5;

/// What the app remembers of itself on this phone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meta {
    /// The phone's label, shown beside its entries.
    pub label: Option<String>,
    /// The first day the book was opened here. A book that has this and no page has lost its pages.
    pub since: Day,
    /// Whether anything was ever written down here.
    pub written: bool,
    /// The last backup file, and how many entries it held.
    pub backup: Option<(Day, usize)>,
    /// The calendar's events as they were given out last.
    pub calendar: Vec<Given>,
}

/// Fields that nobody knows are passed over: a later version may remember more.
impl Json for Meta {
    fn write(&self, out: &mut String) {
        let mut object = Object::open(out);
        self.label.write_if(&mut object, "label");
        object.field("since", &self.since);
        object.field("written", &self.written);
        self.backup.write_if(&mut object, "backup");
        self.calendar.write_if(&mut object, "calendar");
        object.close();
    }

    fn read(value: Value) -> Option<Meta> {
        let mut fields = Fields::of(value)?;
        Some(Meta {
            label: fields.maybe("label")?,
            since: fields.take("since")?,
            written: fields.or_default("written")?,
            backup: fields.maybe("backup")?,
            // What nobody here can read is given out anew, which no calendar takes amiss.
            calendar: fields.maybe("calendar").unwrap_or_default(),
        })
    }
}

serde_by_json!(Meta);

/// A text on the shelf that this version leaves alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// Its key.
    pub key: String,
    /// The text, byte for byte.
    pub raw: String,
    /// Sound, but written by a newer version of the app. Otherwise it is damaged, or has other words for a line that was
    /// read elsewhere.
    pub newer: bool,
}

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
}

/// A page in which the two copies differ.
struct Differing {
    key: String,
    /// The text of the second copy, its entries and its generation.
    raw: String,
    entries: Vec<Entry>,
    generation: u64,
    /// The text here.
    here: Option<String>,
    /// Only a save of a higher generation can take the place of the second copy.
    later: bool,
}

/// The shelf with the book on it.
pub struct Cabinet {
    pages: Pages<Rc<dyn Shelf>, Page>,
    shelf: Rc<dyn Shelf>,
    read_only: bool,
    elsewhere: bool,
    outbox: Table<String, String>,
}

/// What came of laying the second copy beside the shelf.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Reconciled {
    /// Entries that only the second copy had. They are in the book.
    pub restored: usize,
    /// What could not be read in the second copy.
    pub asides: Vec<Aside>,
    /// The shelf did not take what only the second copy has: it lies in one place still.
    pub refused: bool,
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
            .map(|stranger| Aside { key: stranger.key, raw: stranger.raw, newer: false })
            .collect();
        for part in shelves.pages {
            match part.found {
                Found::Loaded(page) | Found::Migrated { value: page, .. } => {
                    if !add_all(&mut log, page.entries) {
                        let key = part.name.key(part.part);
                        pages.leave(&key);
                        let raw = shelf.get(&key)?.unwrap_or_default();
                        asides.push(Aside { key, raw, newer: false });
                    }
                }
                Found::Newer { raw, .. } => {
                    asides.push(Aside { key: part.name.key(part.part), raw, newer: true });
                }
                Found::Damaged { raw, .. } => {
                    asides.push(Aside { key: part.name.key(part.part), raw, newer: false });
                }
                Found::Absent => {}
            }
        }
        let journals = recovery.left.iter();
        asides.extend(journals.map(|left| Aside {
            key: left.key.clone(),
            raw: left.raw.clone(),
            newer: left.newer,
        }));
        let read_only = asides.iter().any(|aside| aside.newer);
        let undone = |page: &Unsaved| json::from_text::<Page>(&page.payload);
        let unsaved = recovery.unsaved.iter().filter_map(undone).flat_map(|page| page.entries);
        let unsaved = unsaved.filter(|entry| log.get(&entry.id).is_none()).collect();
        let cabinet = Cabinet { pages, shelf, read_only, elsewhere: false, outbox: Table::new() };
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
        let mut pages: Table<Place, Vec<Entry>> = Table::new();
        for entry in entries.into_iter().filter(|entry| book.log().get(&entry.id).is_none()) {
            pages.or_insert(page::place(&entry), Vec::new()).push(entry);
        }
        // What strikes out and corrects comes first: a file that stops half way brings nothing back that was struck.
        let (mut first, rest): (Vec<_>, Vec<_>) =
            pages.into_iter().map(|(_, page)| page).partition(|page| page.iter().any(speaks_of_others));
        first.extend(rest);
        self.save_pages(book, first)
    }

    fn save_pages(&mut self, book: &mut Book, pages: Vec<Vec<Entry>>) -> Result<usize, (usize, NotSaved)> {
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
        match self.save(book, pages.concat()) {
            Ok(saved) => *new += saved,
            Err(NotSaved::Shelf { .. }) if pages.len() > 1 => {
                for page in pages {
                    *new += self.save(book, page).map_err(|why| (*new, why))?;
                }
            }
            Err(why) => return Err((*new, why)),
        }
        Ok(())
    }

    /// Lays the second copy beside the shelf, page by page: what only one of the two has comes to the other, and into
    /// `book`. What is to go to the second copy waits in the outbox.
    ///
    /// `second` are the texts of the second copy by their keys; what is no page of the keeper's is passed over.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn reconcile(
        &mut self,
        book: &mut Book,
        second: Vec<(String, String)>,
    ) -> Result<Reconciled, ShelfError> {
        let mut here = self.pages.texts()?;
        // What waits for the second copy is compared with the rest: another tab may have written there since.
        self.outbox.retain(|key, _| !here.contains_key(key));
        let mut found = Reconciled::default();
        let mut differing = Vec::new();
        for (key, raw) in second {
            if !of_keeper(&key) {
                continue;
            }
            let here = here.remove(&key);
            match mirror::compare(here.as_deref(), &raw, &PAGE) {
                Verdict::Alike => {}
                Verdict::Differs { page, generation, later } => {
                    differing.push(Differing { key, raw, here, entries: page.entries, generation, later });
                }
                Verdict::Damaged { generation } => {
                    found.asides.push(Aside { key: key.clone(), raw: raw.clone(), newer: false });
                    let Some(text) = here.filter(|text| page_of(text).is_some()) else { continue };
                    // A save of a higher generation takes its place, once it is put aside.
                    if let Some(generation) = generation {
                        self.outbox.insert(keys::aside(&key, &raw), raw.clone());
                        let (here, entries) = (Some(text), Vec::new());
                        differing.push(Differing { key, raw, here, entries, generation, later: true });
                    } else {
                        self.outbox.insert(key, text);
                    }
                }
                Verdict::Newer => {
                    self.read_only = true;
                    found.asides.push(Aside { key, raw, newer: true });
                }
            }
        }
        for (key, text) in here {
            if of_keeper(&key) && mirror::copyable(&text, &PAGE) {
                self.outbox.insert(key, text);
            }
        }
        if !differing.is_empty() {
            self.refresh(book)?;
            self.unite(book, differing, &mut found);
        }
        Ok(found)
    }

    /// Joins the pages in which the two copies differ.
    fn unite(&mut self, book: &mut Book, differing: Vec<Differing>, found: &mut Reconciled) {
        let before = book.log().len();
        let mut pages = Vec::new();
        for Differing { key, raw, here, entries, generation, later } in differing {
            self.pages.heed(&key, generation);
            let union = book.log().compare(&entries);
            // The words here stand, as everywhere where one name has two; the others are put aside.
            if !union.clashes.is_empty() {
                self.outbox.insert(keys::aside(&key, &raw), raw.clone());
                found.asides.push(Aside { key: key.clone(), raw, newer: false });
            }
            if union.new > 0 {
                pages.push(entries);
                continue;
            }
            // Otherwise what the second copy has lies here under another key: that of a further part.
            if let Some(text) = here
                && let Some(entries) = page_of(&text)
            {
                if later {
                    // What stands here is written once more, so that it is the later of the two.
                    pages.push(entries);
                } else {
                    self.outbox.insert(key, text);
                }
            }
        }
        let all = pages.concat();
        if self.save_pages(book, pages).is_err() {
            // They are in the second copy still, and go to the shelf with the next save of their page.
            book.add(all);
            found.refused = true;
        }
        found.restored = book.log().len() - before;
    }

    /// The texts that wait for the second copy, by their keys. They are handed over: what could not be written comes
    /// back through [`Cabinet::put_back`].
    pub fn take_outbox(&mut self) -> Table<String, String> {
        self.outbox.retain(|key, _| key.starts_with(keys::ASIDE) || of_keeper(key));
        std::mem::replace(&mut self.outbox, Table::new())
    }

    /// Puts back what the second copy did not take; what has been saved since is newer.
    pub fn put_back(&mut self, texts: Table<String, String>) {
        for (key, text) in texts {
            self.outbox.or_insert(key, text);
        }
    }

    /// Reads what other tabs have written meanwhile into `book`. Returns how many entries were new.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn refresh(&mut self, book: &mut Book) -> Result<usize, ShelfError> {
        let shelves = self.pages.read_all()?;
        let mut new = Vec::new();
        for part in shelves.pages {
            self.read_only |= matches!(part.found, Found::Newer { .. });
            new.extend(part.found.into_value().into_iter().flat_map(|page| page.entries));
        }
        Ok(book.add(new))
    }

    /// Takes the demonstration off the shelf and out of the book. Pages of the keeper's own yards are not touched.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf refuses; what is already off stays off, and nothing else is lost.
    pub fn remove_demo(&mut self, book: &mut Book) -> Result<(), ShelfError> {
        if self.read_only || self.elsewhere {
            return Err(ShelfError::Other);
        }
        for part in self.pages.read_all()?.pages {
            // What cannot be read is left alone here as everywhere.
            if of_demo(&part.name) && part.found.value().is_some() {
                self.shelf.remove(&part.name.key(part.part))?;
            }
        }
        // The pages are read anew, so that a demonstration filled in again starts from a clean shelf.
        self.pages.read_all()?;
        *book = book.without(Entry::is_demo);
        Ok(())
    }

    /// What the app remembers of itself.
    pub fn meta(&self) -> Option<Meta> {
        Desk::new(self.shelf.clone()).read(Slot::Meta, &META).ok().and_then(Found::into_value)
    }

    /// Keeps what the app remembers of itself.
    ///
    /// # Errors
    /// [`DeskError`]; the value before is still there.
    pub fn keep_meta(&self, meta: &Meta) -> Result<(), DeskError> {
        Desk::new(self.shelf.clone()).write(Slot::Meta, &META, meta).map(|_| ())
    }

    /// The entry in the making; none when nothing was begun.
    pub fn draft(&self) -> Option<String> {
        let found = Desk::new(self.shelf.clone()).read(Slot::Draft, &DRAFT).ok()?;
        found.into_value().filter(|text| !text.is_empty())
    }

    /// Keeps the entry in the making; an empty text when nothing is begun any more.
    ///
    /// # Errors
    /// [`DeskError`]; the text before is still there.
    pub fn keep_draft(&self, text: &str) -> Result<(), DeskError> {
        Desk::new(self.shelf.clone()).write(Slot::Draft, &DRAFT, &text.to_owned()).map(|_| ())
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
            Some(here) => whole &= json::to_text(here) == json::to_text(&entry),
            None => _ = log.add(entry),
        }
    }
    whole
}

fn of_demo(page: &PageName) -> bool {
    page.yard().is_some_and(|yard| yard.starts_with("demo-"))
}

/// Whether a page of the keeper's lies under `key`. The demonstration has no place in the second copy: nobody would miss
/// it, and what was taken out could come back from there.
fn of_keeper(key: &str) -> bool {
    PageName::from_key(key).is_some_and(|(name, _)| !of_demo(&name))
}

/// The entries of a page that can be read.
fn page_of(text: &str) -> Option<Vec<Entry>> {
    found::load(Some(text.to_owned()), &PAGE).into_value().map(|page| page.entries)
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
