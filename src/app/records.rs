//! The open book, as every screen reaches it.

pub use super::act::Act;
use super::aside::Aside;
use super::cabinet::{Cabinet, NotSaved, Opened};
use super::edge::{self, clock, device};
use super::half_made::HalfMade;
use super::meta::Meta;
use super::second::State;
use super::unkept::left_over;
use super::unsaved::{Held, Unsaved};
use crate::almanac::day::Day;
use crate::app::graph::{Memo, RwSignal, StoredValue, after, expect_context, provide_context, untrack};
use crate::book::Book;
use crate::book::caught::{self, Caught};
use crate::book::entry::Entry;
use crate::book::id::{EntryId, ThingId, Writer};
use crate::book::log::Union;
use crate::book::write::{Pen, Refusal};
use crate::papers::backup::Backup;
use crate::store::shelf::{Shelf, ShelfError};
use crate::store::{Memory, web};
use std::ops::Deref;
use std::rc::Rc;

/// In milliseconds: whoever goes straight on to the next place is there by then, and no tap waits for a pass over the log.
const PREPARE_AFTER: u64 = 400;

/// Whether what is written stays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Home {
    /// In the browser's storage.
    Kept,
    /// Nowhere: the browser keeps nothing for this page, so everything is gone when it is closed.
    Forgotten(ShelfError),
    /// A newer version of this page has written here; this one only reads.
    ReadOnly,
    /// In the browser's storage, but another tab writes there; this one only reads until the keeper takes over.
    Elsewhere,
}

/// Why something was not written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stop {
    /// The book refuses it.
    Refused(Refusal),
    /// The phone did not keep it. The frame shows it with a way to copy it out; see [`Records::unsaved`].
    NotSaved,
    /// The keeper has this phone only show the book. The frame says so, with a key to write again.
    OnlyShows,
}

/// A file that was not taken in to its end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Partly {
    /// Lines that are in.
    pub kept: usize,
    /// Lines of the file that this book had not.
    pub of: usize,
    /// Why not.
    pub why: NotSaved,
}

/// The context of every view that reads or writes records: an address, as [`Ui`](super::state::Ui) is.
#[derive(Clone, Copy)]
pub struct Records(&'static Parts);

/// What [`Records`] leads to.
pub struct Parts {
    /// The book. Read it with `with`; write through the methods here only.
    pub book: RwSignal<Book>,
    /// Every count of beetles in it, worked out when a place asks for it or a moment before: a pass over the whole log.
    pub caught: Memo<Vec<Caught>>,
    /// Whether what is written stays.
    pub home: RwSignal<Home>,
    /// Texts in the phone that could not be read. They are left alone and offered as a file.
    pub asides: RwSignal<Vec<Aside>>,
    /// Something was written here once, and now there is nothing: the browser or somebody cleared it.
    pub gone: RwSignal<bool>,
    /// Lines that only the second copy had, until the keeper has read so.
    pub restored: RwSignal<usize>,
    /// Everything lies in both copies; none while something is on its way, and where nothing is kept.
    pub twice: RwSignal<Option<bool>>,
    /// Whether the browser has promised to keep what is written; none while it has not said, or knows no such promise.
    pub promised: RwSignal<Option<bool>>,
    /// What the undo bar offers.
    pub act: RwSignal<Option<Act>>,
    /// The keeper has this phone only show the book.
    pub only_shows: RwSignal<bool>,
    /// Meanwhile somebody wanted to write.
    pub wanted: RwSignal<bool>,
    /// What could not be kept.
    pub unsaved: RwSignal<Option<Unsaved>>,
    /// What the app remembers of itself.
    pub meta: RwSignal<Meta>,
    pub(super) cabinet: StoredValue<Cabinet>,
    pub(super) second: StoredValue<State>,
    pub(super) half_made: StoredValue<HalfMade>,
    pub(super) writer: StoredValue<Writer>,
    pub(super) once_kept: StoredValue<Vec<Box<dyn FnOnce()>>>,
}

impl Deref for Records {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        self.0
    }
}

impl Records {
    /// Opens the book and provides it to the views below.
    pub fn provide() -> Records {
        let (opened, mut home) = open();
        let Opened { cabinet, book, mut asides, unsaved } = opened;
        if cabinet.read_only() {
            home = Home::ReadOnly;
        }
        let today = clock::stamp().day();
        let fresh = Meta { label: None, since: today, written: false, backup: None, calendar: Vec::new() };
        let meta = cabinet.meta().unwrap_or(fresh);
        let unsaved = left_over(unsaved, &book, &mut asides);
        let book = RwSignal::new(book);
        let records = Records(Box::leak(Box::new(Parts {
            book,
            caught: Memo::new(move || book.with(caught::all)),
            home: RwSignal::new(home),
            asides: RwSignal::new(asides),
            gone: RwSignal::new(false),
            restored: RwSignal::new(0),
            twice: RwSignal::new(None),
            promised: RwSignal::new(None),
            act: RwSignal::new(None),
            only_shows: RwSignal::new(cabinet.only_shows()),
            wanted: RwSignal::new(false),
            unsaved: RwSignal::new(unsaved),
            meta: RwSignal::new(meta),
            half_made: StoredValue::new(cabinet.half_made()),
            cabinet: StoredValue::new(cabinet),
            second: StoredValue::new(State::default()),
            writer: StoredValue::new(writer()),
            once_kept: StoredValue::new(Vec::new()),
        })));
        provide_context(records);
        records.follow_other_tabs();
        records.hold_unsaved();
        records.begin();
        records
    }

    /// Works out what several answers need, once the place that leads to them is drawn: whoever goes on to one of them
    /// finds it ready.
    pub fn prepare(self) {
        edge::after_paint(move || after(PREPARE_AFTER, move || untrack(|| self.caught.with(|_| ()))));
    }

    /// The context, from inside a view under the frame.
    ///
    /// # Panics
    /// Outside the frame, where nothing is ever shown.
    pub fn get() -> Records {
        expect_context::<Records>()
    }

    /// Who writes now.
    pub fn pen(self) -> Pen {
        Pen {
            writer: self.writer.get_value(),
            // A label from before its code points were bounded would stop every save.
            by: self.meta.with_untracked(|meta| {
                meta.label.clone().filter(|label| label.chars().count() <= Entry::BY_MOST)
            }),
            at: clock::stamp(),
        }
    }

    /// Tells when something other than trap work came into the book: see [`Book::turn`].
    pub fn turn(self) -> Memo<u32> {
        Memo::new(move || self.book.with(Book::turn))
    }

    /// Today by the calendar of a yard. Not tracked: track `Ui::today` to hear of midnight.
    pub fn today(self, yard: &ThingId) -> Day {
        let zone =
            self.book.with_untracked(|book| book.standing().yards.get(yard).map(|yard| yard.zone.clone()));
        zone.map_or_else(|| clock::stamp().day(), |zone| clock::today(&zone))
    }

    /// Today by the calendar of the yard that `entry` is of.
    pub fn today_of(self, entry: &Entry) -> Day {
        entry.yard.as_ref().map_or_else(|| clock::stamp().day(), |yard| self.today(yard))
    }

    /// Writes what a method of [`Book`] made, and offers to undo it under the words `said`.
    ///
    /// # Errors
    /// [`Stop`]; nothing was written.
    pub fn put(
        self,
        written: Result<Vec<Entry>, Refusal>,
        said: impl Into<String>,
    ) -> Result<Vec<EntryId>, Stop> {
        let entries = written.map_err(Stop::Refused)?;
        self.save(entries, said.into())
    }

    /// The same in two steps: first the undo bar says that it is saved, then everything that reads the book is drawn
    /// anew and `then` goes on. To draw a yard of a hundred hives takes longer than a keeper should wait to see that a
    /// tap was heard.
    ///
    /// # Errors
    /// [`Stop`]; nothing was written, and `then` is not called.
    pub fn put_and(
        self,
        written: Result<Vec<Entry>, Refusal>,
        said: String,
        then: impl FnOnce() + 'static,
    ) -> Result<(), Stop> {
        if let Err(stop) = self.keep(written.map_err(Stop::Refused)?, said) {
            self.book.notify();
            return Err(stop);
        }
        edge::after_paint(move || {
            self.book.notify();
            then();
        });
        Ok(())
    }

    pub(super) fn save(self, entries: Vec<Entry>, said: String) -> Result<Vec<EntryId>, Stop> {
        let kept = self.keep(entries, said);
        // What another tab wrote may have come in even where this was refused.
        self.book.notify();
        kept
    }

    /// Saves, and leaves it to the caller to tell who reads the book.
    fn keep(self, entries: Vec<Entry>, said: String) -> Result<Vec<EntryId>, Stop> {
        let ids: Vec<EntryId> = entries.iter().map(|entry| entry.id.clone()).collect();
        let own = entries.iter().any(|entry| !entry.is_demo());
        let saved = self.book.try_update_untracked(|book| {
            self.cabinet.try_update_value(|cabinet| cabinet.save(book, entries.clone()))
        });
        match saved.flatten() {
            Some(Ok(_)) => {
                let act = Held { said, entries };
                self.no_longer_unsaved(&act);
                self.act.set(Some(Act { said: act.said, entries: ids.clone(), undone: None, own }));
                // A look at the demonstration is no book that could be missed.
                if own {
                    self.copy();
                }
                Ok(ids)
            }
            Some(Err(NotSaved::OnlyShows)) => {
                self.may_write();
                Err(Stop::OnlyShows)
            }
            Some(Err(why)) => {
                if why == NotSaved::ReadOnly {
                    self.home.set(Home::ReadOnly);
                }
                self.keep_unsaved(why, entries, said);
                Err(Stop::NotSaved)
            }
            None => {
                self.keep_unsaved(NotSaved::Busy, entries, said);
                Err(Stop::NotSaved)
            }
        }
    }

    /// What was saved of the keeper's goes to the second copy once the answer to the tap is drawn; the first time the
    /// browser is asked to keep it.
    fn copy(self) {
        self.twice.renew(None);
        edge::after_paint(move || self.mirror());
        if !self.meta.with_untracked(|meta| meta.written) {
            self.ask_to_keep();
            self.remember(|meta| meta.written = true);
        }
    }

    /// Saves what exists elsewhere too, in a file or in this program: where the phone does not keep it, nothing is lost
    /// that the keeper would have to copy out.
    pub(super) fn save_or_leave(self, entries: Vec<Entry>) -> Result<Vec<EntryId>, Stop> {
        let before = self.unsaved.get_untracked();
        let saved = self.save(entries, String::new());
        if saved.is_err() {
            self.unsaved.set(before);
        }
        saved
    }

    /// Takes in what a backup holds and this book does not.
    ///
    /// # Errors
    /// [`Partly`] when the phone refuses.
    pub fn restore(self, backup: Backup) -> Result<Union, Partly> {
        let union = self.book.with_untracked(|book| backup.preview(book));
        let of = union.new + union.fuller;
        if of > 0 {
            let kept = self.book.try_update_untracked(|book| {
                self.cabinet.try_update_value(|cabinet| cabinet.take_in(book, backup.entries))
            });
            let (kept, why) = match kept.flatten() {
                Some(Ok(_)) => (of, NotSaved::Busy),
                Some(Err(partly)) => partly,
                None => (0, NotSaved::Busy),
            };
            self.book.notify();
            if kept > 0 {
                self.act.set(None);
                self.gone.set(false);
                self.copy();
            }
            if kept < of {
                return Err(Partly { kept, of, why });
            }
        }
        Ok(union)
    }
}

/// The browser's storage, or a shelf that forgets when the browser lends none.
fn open() -> (Opened, Home) {
    let (shelf, home): (Rc<dyn Shelf>, Home) = match web::Local::open() {
        Ok(local) => (Rc::new(local), Home::Kept),
        Err(why) => (Rc::new(Memory::new()), Home::Forgotten(why)),
    };
    match Cabinet::open(shelf) {
        Ok(opened) => (opened, home),
        Err(why) => (empty(), Home::Forgotten(why)),
    }
}

/// A book on a shelf in memory, which cannot fail to open.
fn empty() -> Opened {
    match Cabinet::open(Rc::new(Memory::new())) {
        Ok(opened) => opened,
        Err(_) => empty(),
    }
}

/// A name for this start of the page.
pub(super) fn writer() -> Writer {
    Writer::new(&device::id(8)).unwrap_or_else(|_| writer())
}
