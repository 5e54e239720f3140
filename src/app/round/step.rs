//! From one hive to the next: which it is, and how the panel gets there.

use super::state::Walk;
use super::walk;
use crate::almanac::day::Day;
use crate::app::edge;
use crate::app::frame::focus_heading;
use crate::app::records::Act;
use crate::book::id::{EntryId, ThingId};
use crate::book::round;
use std::cell::Cell;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// The way from hive `from` to the next without an entry on `day`, as the list stands before the save: what was skipped
/// earlier leads it and moves back to its place once it is worked on.
///
/// From a hive that called for somebody it leads to the next that does, or by habit work would be written down that was
/// not done; from one that the keeper chose without need it leads to the next of all. `called` where the save is made
/// again and the book no longer says so.
pub(super) fn step(walk: Walk, yard: &ThingId, from: ThingId, day: Day, called: Option<bool>) -> Step {
    let (called, next) = walk.records.book.with_untracked(|book| {
        let standing = book.standing();
        let known = Cell::new(None);
        let loss = || {
            let loss = known.get().unwrap_or_else(|| round::yard_loss(standing, yard));
            known.set(Some(loss));
            loss
        };
        let calls = |hive: &ThingId| {
            standing.hives.get(hive).is_some_and(|now| walk::calls(standing, now, &loss, day))
        };
        let called = called.unwrap_or_else(|| calls(&from));
        let stops = walk::stops(standing, yard, day);
        (called, walk::next_hive(&stops, Some(&from), &|hive| !called || calls(hive)))
    });
    Step { from, next, called, entry: None }
}

/// From a hive that was logged to the next.
pub(super) struct Step {
    pub from: ThingId,
    pub next: Option<ThingId>,
    /// Somebody had to stand at the first.
    pub called: bool,
    /// The last entry of the act.
    pub entry: Option<EntryId>,
}

/// Shows the next hive, unless the keeper has turned to another one or has taken the act back by now.
pub(super) fn go_on(walk: Walk, Step { from, next, entry, .. }: Step) {
    let back = |act: &Act| act.undone.is_some() && act.entries.last() == entry.as_ref();
    if walk.open.with_untracked(|open| open.as_ref() != Some(&from))
        || walk.records.act.with_untracked(|act| act.as_ref().is_some_and(back))
    {
        return;
    }
    if let Some(next) = next {
        walk.open_hive(&next);
    } else {
        walk.shut();
        // The walk ends where the keeper stands: to go to the heading would lose the place.
        edge::after_paint(move || focus_row(&from));
    }
}

/// The focus goes to the row of a hive, or to the heading where there is none.
fn focus_row(hive: &ThingId) {
    let row = edge::document().and_then(|page| page.get_element_by_id(&["row-", &hive.to_string()].concat()));
    match row.and_then(|row| row.first_element_child()?.dyn_into::<HtmlElement>().ok()) {
        Some(key) => {
            let _ = key.focus();
        }
        None => focus_heading(),
    }
}
