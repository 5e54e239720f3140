//! The keeper's records: an append-only log of entries, and what follows from it.
//!
//! Nothing that can be computed is stored as truth. Correcting supersedes, deleting strikes out, undoing is another
//! entry, and putting two logs together is a set union: two phones that exchange everything hold the same book.

pub mod aims;
pub mod baited;
pub mod caught;
pub mod chain;
pub mod chilled;
pub mod combs;
pub mod demo;
pub mod entry;
pub mod finds;
pub mod fold;
pub mod ground;
pub mod id;
pub mod keeper;
pub mod log;
pub mod lost;
pub mod lot;
pub mod newest;
pub mod next_look;
pub mod oil_used;
pub mod opened;
pub mod pace;
pub mod page;
pub mod plain;
pub mod put_in;
pub mod record;
pub mod review;
pub mod round;
pub mod season;
pub mod shell;
pub mod shift;
pub mod spent;
pub mod standing;
pub mod stands;
mod stock;
pub mod store_room;
pub mod trial;
pub mod twins;
pub mod urgent;
pub mod withheld;
pub mod write;

use entry::{Entry, What};
use log::Log;
use standing::Standing;

/// The log together with what it says about today.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Book {
    log: Log,
    standing: Standing,
    turn: Turn,
}

/// Moves on with whatever comes in but trap work, skips and notes. Two books that hold the same are equal, whatever way
/// each came to it.
#[derive(Clone, Copy, Debug, Default)]
struct Turn(u32);

impl PartialEq for Turn {
    fn eq(&self, _: &Turn) -> bool {
        true
    }
}

impl Book {
    /// The book that holds these entries.
    pub fn from_log(log: Log) -> Book {
        let standing = fold::fold(&log);
        // Far enough apart that a book that takes the place of another is told from it.
        let turn = Turn(u32::try_from(log.len()).unwrap_or_default().wrapping_mul(7919));
        Book { log, standing, turn }
    }

    /// Every entry ever made.
    pub fn log(&self) -> &Log {
        &self.log
    }

    /// What the entries say.
    pub fn standing(&self) -> &Standing {
        &self.standing
    }

    /// Moves on with whatever comes in but trap work, skips and notes: what goes by records and hives alone is worked out
    /// anew when this has changed, and not at every tap.
    pub fn turn(&self) -> u32 {
        self.turn.0
    }

    /// Adds entries; those already here change nothing. Returns how many were new.
    ///
    /// An entry that is the newest by day and by counter is folded in on top; anything else (backdated, a correction,
    /// a strike-out, another phone's work) folds the whole log again, so that the result never depends on the order
    /// in which entries arrived.
    pub fn add(&mut self, entries: impl IntoIterator<Item = Entry>) -> usize {
        let mut new = 0;
        let mut refold = false;
        for entry in entries {
            // While something here speaks of what is not here yet, a yard or a kind may be what it waits for. Nothing else
            // that comes last can be: it takes effect after what would have to find it.
            let found = self.standing.orphans == 0 || !entry.is_ground();
            let on_top = found && self.log.would_be_last(&entry);
            let Some(added) = self.log.add(entry) else { continue };
            new += 1;
            if !matches!(added.what, What::Check(_) | What::Skip { .. } | What::Note { .. })
                || added.replaces.is_some()
            {
                self.turn.0 = self.turn.0.wrapping_add(1);
            }
            if on_top && !refold {
                fold::apply(&mut self.standing, added);
            } else {
                refold = true;
            }
        }
        if refold {
            self.standing = fold::fold(&self.log);
        }
        new
    }

    /// The book without the entries that `drop` picks. Only the demonstration is ever taken out this way.
    #[must_use]
    pub fn without(&self, drop: impl Fn(&Entry) -> bool) -> Book {
        Book::from_log(self.log.entries().filter(|entry| !drop(entry)).cloned().collect())
    }
}
