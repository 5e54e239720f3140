//! What other tabs of this page write comes in here too.

use super::cabinet::Cabinet;
use super::edge::{self, listen};
use super::records::{Home, Records};
use crate::app::graph::after;
use crate::book::Book;
use crate::book::id::EntryId;
use crate::store::keys;
use crate::store::shelf::ShelfError;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::JsCast;

/// In milliseconds: what another tab writes within this time is read at once. A file that is taken in there comes page by
/// page, and each look reads the whole book.
const TOGETHER: u64 = 100;

impl Records {
    /// Another tab of this page has written: its entries come in here too.
    pub(super) fn follow_other_tabs(self) {
        let Some(window) = edge::window() else { return };
        let told = Rc::new(Cell::new(false));
        listen(&window, "storage", move |event| {
            let Ok(event) = event.dyn_into::<web_sys::StorageEvent>() else { return };
            if event.key().is_none_or(|key| key == keys::ONLY_SHOWS) {
                self.look_whether_it_shows();
            }
            // Without a key the whole storage was cleared.
            let page = event.key().is_none_or(|key| key.starts_with(keys::PAGE));
            if page && !told.replace(true) {
                let told = told.clone();
                after(TOGETHER, move || {
                    told.set(false);
                    self.refresh(Cabinet::catch_up);
                });
            }
        });
        // A page that slept, or lay in the browser's memory behind another, was told nothing.
        listen(&window, "pageshow", move |event| {
            if js_sys::Reflect::get(&event, &"persisted".into()).is_ok_and(|kept| kept.is_truthy()) {
                self.refresh(Cabinet::catch_up);
            }
        });
        let Some(document) = edge::document() else { return };
        listen(&document.clone(), "visibilitychange", move |_| {
            if document.hidden() {
                // Nothing is drawn any more, and what waits for that would wait with the phone in the pocket.
                self.mirror();
            } else {
                self.refresh(Cabinet::catch_up);
            }
        });
    }

    /// Takes in what other tabs have put on the shelf.
    pub(super) fn refresh(self, look: fn(&mut Cabinet, &mut Book) -> Result<usize, ShelfError>) {
        let new = self
            .book
            .try_update_untracked(|book| self.cabinet.try_update_value(|cabinet| look(cabinet, book)));
        self.look_whether_it_shows();
        if matches!(new.flatten(), Some(Ok(new)) if new > 0) {
            let here = |id: &EntryId| self.book.with_untracked(|book| book.log().get(id).is_some());
            // What went out with the demonstration cannot be undone.
            if !self.act.with_untracked(|act| act.as_ref().is_none_or(|act| act.entries.iter().all(here))) {
                self.act.set(None);
            }
            self.book.notify();
        }
        if self.cabinet.with_value(Cabinet::read_only) {
            self.home.renew(Home::ReadOnly);
        }
    }
}
