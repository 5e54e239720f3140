//! What stands in a half-filled form, kept until it is saved: the page may be left, and the phone may die.

use crate::app::edge::{self, slot};
use crate::app::records::Records;
use crate::app::state::Ui;

/// What waits to be kept: the name it is kept under, and the text; none where there is nothing to keep any more.
pub type Waiting = Option<(String, Option<String>)>;

/// Keeps what waits. A phone that only shows the book keeps nothing that somebody types into it.
pub(super) fn flush(ui: Ui, records: Records) {
    let Some((name, text)) = ui.write_kept.try_update_value(Option::take).flatten() else { return };
    match text {
        Some(text) if !records.only_shows.get_untracked() => slot::write(&name, &text),
        Some(_) => {}
        None => slot::forget(&name),
    }
}

/// Keeps it at once when the page is hidden or left.
pub fn watch(ui: Ui, records: Records) {
    let Some(window) = edge::window() else { return };
    edge::listen(&window, "pagehide", move |_| flush(ui, records));
    if let Some(document) = edge::document() {
        edge::listen(&document, "visibilitychange", move |_| flush(ui, records));
    }
}
