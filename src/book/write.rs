//! Writing into the book: what the keeper wants done becomes entries, or a reason why not.

mod correct;
mod doubt;
mod earlier;
mod hive;
mod record;
mod refusal;
mod table;
mod traps;
mod undo;
mod work;
mod yard;

pub use doubt::Doubt;
pub use refusal::Refusal;
pub use table::{TableLine, TableTaken, TableTerms, TableWork};
pub use yard::{HivePlan, KindChoice, MOST_HIVES};

use super::Book;
use super::entry::{Entry, What};
use super::fold;
use super::id::{EntryId, ThingId, Writer};
use super::standing::{HiveNow, Standing};
use crate::almanac::day::{Day, Stamp};

/// Who writes, and when by the clock of the phone.
#[derive(Clone, Debug, PartialEq)]
pub struct Pen {
    /// This start of the page on this phone.
    pub writer: Writer,
    /// The phone's label, shown beside the entries.
    pub by: Option<String>,
    /// Now.
    pub at: Stamp,
}

/// Entries in the making: ids are given in order.
#[derive(Debug)]
pub struct Draft<'a> {
    pen: &'a Pen,
    next: u32,
    bulk: Option<EntryId>,
    entries: Vec<Entry>,
}

impl<'a> Draft<'a> {
    /// Starts after everything in `book`.
    pub fn new(book: &Book, pen: &'a Pen) -> Draft<'a> {
        Draft { pen, next: book.log().next_n(), bulk: None, entries: Vec::new() }
    }

    /// From here on every entry belongs to one bulk, undone together.
    pub fn bulk(&mut self) {
        self.bulk = EntryId::new(self.pen.writer.clone(), self.next).ok();
    }

    /// Writes one entry and returns its name.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] when the counter has run out, which takes a thousand million entries.
    pub fn push(&mut self, day: Day, yard: Option<&ThingId>, what: What) -> Result<EntryId, Refusal> {
        let id = EntryId::new(self.pen.writer.clone(), self.next).map_err(|_| Refusal::Unknown)?;
        self.next += 1;
        self.entries.push(Entry {
            id: id.clone(),
            day,
            at: self.pen.at,
            by: self.pen.by.clone(),
            yard: yard.cloned(),
            replaces: None,
            bulk: self.bulk.clone(),
            what,
        });
        Ok(id)
    }

    /// Adds what stands in for `line`: `what` on `day`.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] when the counter has run out.
    pub fn correct(&mut self, line: &Entry, day: Day, what: What) -> Result<(), Refusal> {
        self.push(day, line.yard.as_ref(), what)?;
        if let Some(entry) = self.entries.last_mut() {
            entry.replaces = Some(line.id.clone());
            // What takes the line back takes this back.
            entry.bulk.clone_from(&line.bulk);
        }
        Ok(())
    }

    /// The entries.
    pub fn done(self) -> Vec<Entry> {
        self.entries
    }
}

impl Book {
    /// One entry about a yard.
    ///
    /// # Errors
    /// [`Refusal::Future`], [`Refusal::Unknown`].
    pub fn about_yard(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        yard: &ThingId,
        what: What,
    ) -> Result<Vec<Entry>, Refusal> {
        if day > today {
            return Err(Refusal::Future { today });
        }
        if !self.standing().yards.contains_key(yard) {
            return Err(Refusal::Unknown);
        }
        self.one(pen, day, yard, what)
    }

    /// One entry that belongs to no yard.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] when the counter has run out.
    pub fn about_keeper(&self, pen: &Pen, today: Day, what: What) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        draft.push(today, None, what)?;
        Ok(draft.done())
    }

    fn one(&self, pen: &Pen, day: Day, yard: &ThingId, what: What) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        draft.push(day, Some(yard), what)?;
        self.holding(draft.done())
    }

    /// Lets entries pass that find everything they speak of on their day.
    ///
    /// Only what is dated before something else can miss: then the whole book is folded on trial, which takes as long
    /// as opening it and is seldom asked for.
    fn holding(&self, mut entries: Vec<Entry>) -> Result<Vec<Entry>, Refusal> {
        self.file(&mut entries);
        let on_top = entries.iter().all(|entry| self.log().would_be_last(entry));
        if !on_top {
            self.trial(&entries)?;
        }
        Ok(entries)
    }

    /// Puts what is for a day before its hive was moved under the yard the hive stood in on that day.
    fn file(&self, entries: &mut [Entry]) {
        let mut known: Option<(Day, Standing)> = None;
        for entry in entries {
            let day = entry.day;
            // Nothing is for a later day: the common path.
            if self.log().newest().is_none_or(|newest| newest.day <= day) {
                continue;
            }
            let Some(hive) = entry.hive() else { continue };
            let moves = |later: &Entry| {
                later.day > day
                    && matches!(&later.what, What::HiveMoved { hive: moved, .. } if *moved == hive)
            };
            if !self.log().entries().any(moves) {
                continue;
            }
            if known.as_ref().is_none_or(|(on, _)| *on != day) {
                known = Some((day, fold::fold_until(self.log(), Some(day))));
            }
            if let Some(then) = known.as_ref().and_then(|(_, then)| then.hives.get(&hive)) {
                entry.yard = Some(then.yard.clone());
            }
        }
    }

    /// The book as it would be with `entries`.
    ///
    /// # Errors
    /// [`Refusal::NotThereYet`] when something in it would miss what it speaks of.
    fn trial(&self, entries: &[Entry]) -> Result<Book, Refusal> {
        let then = self.with(entries);
        if then.standing().orphans > self.standing().orphans { Err(Refusal::NotThereYet) } else { Ok(then) }
    }

    /// The book as it would be with `entries`.
    #[must_use]
    pub fn with(&self, entries: &[Entry]) -> Book {
        let mut log = self.log().clone();
        for entry in entries {
            log.add(entry.clone());
        }
        Book::from_log(log)
    }

    fn in_care(&self, hive: &ThingId, day: Day, today: Day) -> Result<&HiveNow, Refusal> {
        let now = self.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
        if day > today {
            return Err(Refusal::Future { today });
        }
        if day < now.since {
            return Err(Refusal::BeforeHive { since: now.since });
        }
        match &now.ended {
            Some((how, on)) if *on <= day => Err(Refusal::Ended { how: how.clone(), on: *on }),
            _ => Ok(now),
        }
    }
}
