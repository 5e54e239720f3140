//! What the phone did not keep: held until the keeper has dealt with it.
//!
//! It outlives a reload with the tab it was typed in, not on the desk: what is not kept is not kept because the storage
//! where the desk is has no room, is denied, or is another tab's or a newer version's to write.

use super::cabinet::NotSaved;
use crate::almanac::json::{self, json_object};
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::store::shelf::ShelfError;
use std::mem::discriminant;

/// What could not be kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Unsaved {
    /// Why.
    pub why: NotSaved,
    /// What was to be written, act by act.
    pub acts: Vec<Held>,
}

/// One act: what a tap wanted written.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// What was done, in a few words.
    pub said: String,
    /// Its entries.
    pub entries: Vec<Entry>,
}

json_object!(Held { said, entries });

impl Unsaved {
    /// What a start has to show: what this tab had not kept before it was loaded anew, as [`Unsaved::to_text`] wrote it,
    /// and what was cut short. What the book holds by now is kept.
    pub fn left_over(text: &str, cut_short: Vec<Entry>, book: &Book) -> Option<Unsaved> {
        let mut acts: Vec<Held> = json::list_from_text(text).unwrap_or_default();
        acts.retain(|act| act.entries.iter().any(|entry| book.log().get(&entry.id).is_none()));
        // Of a save that was cut short it is known that there was no room.
        let why = if acts.is_empty() { ShelfError::Full } else { ShelfError::Other };
        let why = NotSaved::Shelf { why, text: String::new() };
        let mut left = Unsaved { why, acts };
        left.hold(Held { said: String::new(), entries: cut_short });
        (!left.acts.is_empty()).then_some(left)
    }

    /// Whether `text` is what [`Unsaved::to_text`] writes, or empty.
    pub fn can_read(text: &str) -> bool {
        text.is_empty() || json::list_from_text::<Held>(text).is_some()
    }

    /// Everything held, for the next load of this tab.
    pub fn to_text(&self) -> String {
        json::list_to_text(&self.acts)
    }

    /// Every entry.
    pub fn entries(&self) -> Vec<Entry> {
        let mut entries = Vec::new();
        for act in &self.acts {
            entries.extend_from_slice(&act.entries);
        }
        entries
    }

    /// What was done, act after act.
    pub fn said(&self) -> String {
        let mut said = String::new();
        for act in &self.acts {
            if !said.is_empty() && !act.said.is_empty() {
                said.push_str("; ");
            }
            said.push_str(&act.said);
        }
        said
    }

    /// Holds one more act in the place of those that it says anew.
    pub fn hold(&mut self, act: Held) {
        if self.leave_out(&act) {
            self.acts.push(act);
        }
    }

    /// Leaves out what was held before and `act` does once more: the keeper, who was told that it was not kept, has said
    /// it anew. False when `act` is what is held here, tried again: then nothing is left out.
    pub fn leave_out(&mut self, act: &Held) -> bool {
        let known =
            |entry: &Entry| self.acts.iter().any(|held| held.entries.iter().any(|e| e.id == entry.id));
        let anew = !act.entries.iter().all(known);
        if anew {
            self.acts.retain(|held| !act.again(held));
        }
        anew
    }
}

impl Held {
    /// Whether this says anew what `before` said.
    fn again(&self, before: &Held) -> bool {
        let pairs = || self.entries.iter().zip(&before.entries);
        let founds = self.entries.iter().any(|entry| matches!(entry.what, What::Yard { .. }));
        let work = |entry: &Entry| matches!(entry.what, What::Check(_) | What::Skip { .. });
        // Work on a hive may be said in other words by now; whatever else was refused stands in its form still.
        self.entries.len() == before.entries.len()
            && (self.said == before.said || self.entries.last().is_some_and(work))
            && pairs().all(|(now, old)| (founds || now.yard == old.yard) && same(now, old))
    }
}

/// The same kind of thing, on the same day, about the same hive where it is work on one, and about the same lines where it
/// corrects or strikes them.
fn same(now: &Entry, old: &Entry) -> bool {
    now.day == old.day
        && now.replaces == old.replaces
        && match (&now.what, &old.what) {
            // Work on other traps of the hive is other work.
            (What::Check(now), What::Check(old)) => {
                let apart = now.traps.as_ref().zip(old.traps.as_ref());
                let apart = apart.is_some_and(|(now, old)| !now.iter().any(|trap| old.contains(trap)));
                now.hive == old.hive && !apart
            }
            (What::Skip { hive: now, .. }, What::Skip { hive: old, .. }) => now == old,
            (What::Yard { name: now, .. }, What::Yard { name: old, .. })
            | (What::Hive { tag: now, .. }, What::Hive { tag: old, .. }) => now == old,
            (What::Struck { entries: now }, What::Struck { entries: old }) => now == old,
            (now, old) => discriminant(now) == discriminant(old),
        }
}
