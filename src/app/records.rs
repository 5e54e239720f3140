//! The open book, as every screen reaches it.

use super::cabinet::{Aside, Cabinet, Meta, NotSaved, Opened};
use super::edge::{self, clock, device, letters::BrowserLetters, listen};
use super::second::State;
use crate::almanac::day::Day;
use crate::almanac::json;
use crate::app::graph::{RwSignal, StoredValue, expect_context, provide_context};
use crate::book::Book;
use crate::book::demo;
use crate::book::entry::Entry;
use crate::book::id::{EntryId, ThingId, Writer};
use crate::book::log::Union;
use crate::book::write::{Pen, Refusal};
use crate::papers::backup::Backup;
use crate::store::keys;
use crate::store::shelf::{Shelf, ShelfError};
use crate::store::{Memory, web};
use std::ops::Deref;
use std::rc::Rc;
use wasm_bindgen::JsCast;

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

/// The last thing done, for the undo bar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Act {
    /// What was done, in a few words: "Hive 7 topped up".
    pub said: String,
    /// Its entries.
    pub entries: Vec<EntryId>,
    /// The strike that took it back, if it was taken back.
    pub undone: Option<EntryId>,
    /// It is the keeper's: the demonstration has no second copy.
    pub own: bool,
}

/// Why something was not written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stop {
    /// The book refuses it.
    Refused(Refusal),
    /// The phone did not keep it. The frame shows it with a way to copy it out; see [`Records::unsaved`].
    NotSaved,
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

/// What could not be kept, until the keeper has dealt with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Unsaved {
    /// Why.
    pub why: NotSaved,
    /// What was to be written: tried again with [`Records::try_again`].
    pub entries: Vec<Entry>,
    /// What was done, in a few words.
    pub said: String,
}

/// The context of every view that reads or writes records: an address, as [`Ui`](super::state::Ui) is.
#[derive(Clone, Copy)]
pub struct Records(&'static Parts);

/// What [`Records`] leads to.
pub struct Parts {
    /// The book. Read it with `with`; write through the methods here only.
    pub book: RwSignal<Book>,
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
    /// What could not be kept.
    pub unsaved: RwSignal<Option<Unsaved>>,
    /// What the app remembers of itself.
    pub meta: RwSignal<Meta>,
    pub(super) cabinet: StoredValue<Cabinet>,
    pub(super) second: StoredValue<State>,
    writer: StoredValue<Writer>,
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
        let Opened { cabinet, book, asides, unsaved } = opened;
        if cabinet.read_only() {
            home = Home::ReadOnly;
        }
        let today = clock::stamp().day();
        let fresh = Meta { label: None, since: today, written: false, backup: None, calendar: Vec::new() };
        let meta = cabinet.meta().unwrap_or(fresh);
        let records = Records(Box::leak(Box::new(Parts {
            book: RwSignal::new(book),
            home: RwSignal::new(home),
            asides: RwSignal::new(asides),
            gone: RwSignal::new(false),
            restored: RwSignal::new(0),
            twice: RwSignal::new(None),
            promised: RwSignal::new(None),
            act: RwSignal::new(None),
            unsaved: RwSignal::new(left_over(unsaved)),
            meta: RwSignal::new(meta),
            cabinet: StoredValue::new(cabinet),
            second: StoredValue::new(State::default()),
            writer: StoredValue::new(writer()),
        })));
        provide_context(records);
        records.follow_other_tabs();
        records.begin();
        records
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

    /// Today by the calendar of a yard. Not tracked: track `Ui::today` to hear of midnight.
    pub fn today(self, yard: &ThingId) -> Day {
        let zone =
            self.book.with_untracked(|book| book.standing().yards.get(yard).map(|yard| yard.zone.clone()));
        zone.map_or_else(|| clock::stamp().day(), |zone| clock::today(&zone))
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

    fn save(self, entries: Vec<Entry>, said: String) -> Result<Vec<EntryId>, Stop> {
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
                self.act.set(Some(Act { said, entries: ids.clone(), undone: None, own }));
                // A look at the demonstration is no book that could be missed.
                if own {
                    self.copy();
                }
                Ok(ids)
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

    /// What was saved of the keeper's goes to the second copy; the first time the browser is asked to keep it.
    fn copy(self) {
        self.twice.renew(None);
        self.mirror();
        if !self.meta.with_untracked(|meta| meta.written) {
            self.ask_to_keep();
            self.remember(|meta| meta.written = true);
        }
    }

    /// Saves what exists elsewhere too, in a file or in this program: where the phone does not keep it, nothing is lost
    /// that the keeper would have to copy out.
    fn save_or_leave(self, entries: Vec<Entry>) -> Result<Vec<EntryId>, Stop> {
        let before = self.unsaved.get_untracked();
        let saved = self.save(entries, String::new());
        if saved.is_err() {
            self.unsaved.set(before);
        }
        saved
    }

    /// Puts what was not kept to what was not kept before.
    ///
    /// The names of these entries are taken from here on, though the book does not know them: the next entries get
    /// another writer, or they would carry the same names and one of the two would be lost.
    fn keep_unsaved(self, why: NotSaved, entries: Vec<Entry>, said: String) {
        self.writer.set_value(writer());
        self.unsaved.update(|unsaved| match unsaved {
            Some(before) => {
                before.why = why;
                if entries.iter().any(|new| before.entries.iter().all(|known| known.id != new.id)) {
                    let between = if before.said.is_empty() || said.is_empty() { "" } else { "; " };
                    before.said = [before.said.as_str(), between, &said].concat();
                    before.entries.extend(entries);
                }
            }
            None => *unsaved = Some(Unsaved { why, entries, said }),
        });
    }

    /// Tries once more to keep what could not be kept.
    pub fn try_again(self) {
        if let Some(unsaved) = self.unsaved.get_untracked()
            && self.save(unsaved.entries, unsaved.said).is_ok()
        {
            self.unsaved.set(None);
        }
    }

    /// Takes the last act back, or, when it was taken back, does it again.
    pub fn undo_or_redo(self) {
        let Some(act) = self.act.get_untracked() else { return };
        let targets = act.undone.as_ref().map_or_else(|| act.entries.clone(), |strike| vec![strike.clone()]);
        let Ok(ids) = self.strike(&targets, &act.said) else { return };
        let undone = if act.undone.is_some() { None } else { ids.first().cloned() };
        self.act.set(Some(Act { undone, ..act }));
    }

    /// Strikes entries out, at any time. Striking out a strike brings its entries back.
    ///
    /// # Errors
    /// [`Stop`]; nothing was written.
    pub fn strike(self, entries: &[EntryId], said: &str) -> Result<Vec<EntryId>, Stop> {
        let yard = self.book.with_untracked(|book| book.log().get(entries.first()?)?.yard.clone());
        let today = yard.map_or_else(|| clock::stamp().day(), |yard| self.today(&yard));
        let written =
            self.book.with_untracked(|book| book.strike(&self.pen(), today, entries, &BrowserLetters));
        self.put(written, said)
    }

    /// Fills in the demonstration.
    ///
    /// # Errors
    /// [`Stop`]; nothing was written.
    pub fn fill_demo(self) -> Result<(), Stop> {
        let zone = clock::own_zone();
        let at = clock::stamp();
        let entries =
            demo::demo(clock::today(&zone), &zone, at.offset(), &BrowserLetters).map_err(Stop::Refused)?;
        self.save_or_leave(entries)?;
        self.act.set(None);
        Ok(())
    }

    /// Takes the demonstration out. The keeper's own records are not touched.
    ///
    /// # Errors
    /// [`Stop::NotSaved`] when the phone refuses.
    pub fn remove_demo(self) -> Result<(), Stop> {
        let removed = self
            .book
            .try_update_untracked(|book| self.cabinet.try_update_value(|cabinet| cabinet.remove_demo(book)));
        self.act.set(None);
        self.book.notify();
        match removed.flatten() {
            Some(Ok(())) => Ok(()),
            _ => Err(Stop::NotSaved),
        }
    }

    /// Whether the demonstration is in.
    pub fn has_demo(self) -> bool {
        self.book.with(|book| book.standing().yards.keys().any(ThingId::is_demo))
    }

    /// Takes in what a backup holds and this book does not.
    ///
    /// # Errors
    /// [`Partly`] when the phone refuses.
    pub fn restore(self, backup: Backup) -> Result<Union, Partly> {
        let union = self.book.with_untracked(|book| backup.preview(book));
        let of = union.new;
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

    /// Changes what the app remembers of itself. A phone that does not keep it loses a reminder, not a record.
    pub fn remember(self, change: impl FnOnce(&mut Meta)) {
        let before = self.meta.get_untracked();
        let mut after = before.clone();
        change(&mut after);
        if after != before {
            self.cabinet.with_value(|cabinet| {
                let _ = cabinet.keep_meta(&after);
            });
            self.meta.set(after);
        }
    }

    /// The entry in the making, as it was kept; none when nothing was begun.
    pub fn draft(self) -> Option<String> {
        self.cabinet.with_value(Cabinet::draft)
    }

    /// Keeps the entry in the making. A phone that does not keep it still has it on the screen.
    pub fn keep_draft(self, text: &str) {
        self.cabinet.with_value(|cabinet| {
            let _ = cabinet.keep_draft(text);
        });
    }

    /// How full the phone's storage is, in per cent of what this page plans with.
    pub fn used(self) -> Option<u64> {
        self.cabinet.with_value(|cabinet| cabinet.used().ok().map(crate::store::headroom::Used::per_cent))
    }

    /// Another tab of this page has written: its entries come in here too.
    fn follow_other_tabs(self) {
        let Some(window) = edge::window() else { return };
        listen(&window, "storage", move |event| {
            let Ok(event) = event.dyn_into::<web_sys::StorageEvent>() else { return };
            let page = event.key().is_some_and(|key| key.starts_with(keys::PAGE));
            // Pages go only with the demonstration, all of them at once.
            if page && event.new_value().is_none() {
                if self.has_demo() {
                    self.book.update(|book| *book = book.without(Entry::is_demo));
                    self.act.set(None);
                }
            } else if page {
                self.refresh();
            }
        });
    }

    /// Takes in what other tabs have put on the shelf.
    pub(super) fn refresh(self) {
        let new = self
            .book
            .try_update_untracked(|book| self.cabinet.try_update_value(|cabinet| cabinet.refresh(book)));
        if matches!(new.flatten(), Some(Ok(new)) if new > 0) {
            self.book.notify();
        }
        if self.cabinet.with_value(Cabinet::read_only) {
            self.home.set(Home::ReadOnly);
        }
    }
}

/// What an earlier start could not keep is shown like what this one cannot.
fn left_over(entries: Vec<Entry>) -> Option<Unsaved> {
    let text = json::list_to_text(&entries);
    let why = NotSaved::Shelf { why: ShelfError::Full, text };
    (!entries.is_empty()).then(|| Unsaved { why, entries, said: String::new() })
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
fn writer() -> Writer {
    Writer::new(&device::id(8)).unwrap_or_else(|_| writer())
}
