//! What the phone did not keep stays at hand until it is kept or the keeper has it.

use super::aside::{Aside, Why};
use super::cabinet::NotSaved;
use super::edge::slot;
use super::records::{Records, writer};
use super::unsaved::{Held, Unsaved};
use crate::app::graph::effect;
use crate::book::Book;
use crate::book::entry::Entry;

impl Records {
    /// Puts what was not kept to what was not kept before.
    ///
    /// The names of these entries are taken from here on, though the book does not know them: the next entries get
    /// another writer, or they would carry the same names and one of the two would be lost.
    pub(super) fn keep_unsaved(self, why: NotSaved, entries: Vec<Entry>, said: String) {
        self.writer.set_value(writer());
        let mut unsaved =
            self.unsaved.get_untracked().unwrap_or(Unsaved { why: NotSaved::Busy, acts: Vec::new() });
        unsaved.why = why;
        unsaved.hold(Held { said, entries });
        self.unsaved.set(Some(unsaved));
    }

    /// `act` is kept: what was held and is said anew by it would be written a second time by "Try again".
    pub(super) fn no_longer_unsaved(self, act: &Held) {
        let Some(mut unsaved) = self.unsaved.get_untracked() else { return };
        let held = unsaved.acts.len();
        unsaved.leave_out(act);
        if unsaved.acts.is_empty() {
            self.put_away();
        } else if unsaved.acts.len() < held {
            self.unsaved.set(Some(unsaved));
        }
    }

    /// Tries once more to keep what could not be kept; true when it is.
    pub fn try_again(self) -> bool {
        let Some(unsaved) = self.unsaved.get_untracked() else { return true };
        let kept = self.save(unsaved.entries(), unsaved.said()).is_ok();
        if kept {
            self.unsaved.set(None);
            for then in self.once_kept.try_update_value(std::mem::take).unwrap_or_default() {
                then();
            }
        }
        kept
    }

    /// Calls `then` when what was just refused is kept after all. Never, when the keeper puts it away.
    pub fn once_kept(self, then: Box<dyn FnOnce()>) {
        self.once_kept.try_update_value(|all| all.push(then));
    }

    /// The keeper has what was not kept.
    pub fn put_away(self) {
        self.once_kept.set_value(Vec::new());
        self.unsaved.set(None);
    }

    /// From now on a reload of this tab finds what was not kept.
    pub(super) fn hold_unsaved(self) {
        effect(move || {
            let text =
                self.unsaved.with(|unsaved| unsaved.as_ref().map_or_else(String::new, Unsaved::to_text));
            slot::write_own(slot::UNSAVED, &text);
        });
    }
}

/// What an earlier start could not keep is shown like what this one cannot. A text of it that cannot be read is offered
/// with the rest of what cannot be read, for as long as this tab is there: what could not be kept lies nowhere else.
pub(super) fn left_over(cut_short: Vec<Entry>, book: &Book, asides: &mut Vec<Aside>) -> Option<Unsaved> {
    let text = slot::read_own(slot::UNSAVED).unwrap_or_default();
    if !Unsaved::can_read(&text) {
        slot::write_own(slot::UNREAD, &text);
    }
    let unread = slot::read_own(slot::UNREAD).filter(|text| !text.is_empty());
    asides.extend(unread.map(|raw| Aside { key: slot::UNREAD.to_owned(), raw, why: Why::Damaged }));
    Unsaved::left_over(&text, cut_short, book)
}
