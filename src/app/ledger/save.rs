//! The backup file: how old, and a new one.

use super::safety::{Pressing, Unsafe, unsafe_lines};
use crate::app::edge::{clock, files};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en_book::backup as w;
use crate::papers::backup;

/// What is in no file now; tracks the book, the last file and the day.
pub fn state(ui: Ui, records: Records) -> Option<Unsafe> {
    let backup = records.meta.with(|meta| meta.backup);
    records.book.with(|book| unsafe_lines(book, backup, ui.today.get()))
}

/// How old the last file is and what is not in it, with a mark that grows with the need.
pub fn state_view(state: Unsafe) -> El {
    let said = w::state(&state);
    match state.pressing {
        Pressing::No => el("p").text(&said),
        Pressing::Soon => Notice::caution([w::SOON, " ", &said].concat()).view(),
        Pressing::Now => Notice::alarm([w::NOW, " ", &said].concat()).view(),
    }
}

/// The whole book as text.
fn text(records: Records) -> String {
    let label = records.meta.with_untracked(|meta| meta.label.clone());
    records.book.with_untracked(|book| backup::write(book.log(), clock::stamp(), label.as_deref()))
}

/// The section of the Book.
pub(super) fn view(ui: Ui, records: Records) -> El {
    let state = Memo::new(move || state(ui, records));
    let said = RwSignal::new(String::new());
    let shown = RwSignal::new(None::<String>);
    let save = move || {
        let text = text(records);
        let day = clock::stamp().day();
        let name = w::name(&day.to_string());
        if files::save(&name, "application/json", &text) {
            let held = records
                .book
                .with_untracked(|book| book.log().entries().filter(|entry| !entry.is_demo()).count());
            records.remember(|meta| meta.backup = Some((day, held)));
            said.set(w::saved(&name));
        } else {
            shown.set(Some(text));
        }
    };
    let body = live(move || match state.get() {
        None => el("p").text(w::EMPTY),
        Some(state) => state_view(state),
    });
    let any = Memo::new(move || state.with(Option::is_some));
    let key = live(move || {
        any.get()
            .then(|| el("p").class("keys").kid(Key::new(w::SAVE, save).primary().mark("book-backup").view()))
    });
    let after = live(move || {
        if said.with(String::is_empty) {
            return Bit::Nothing;
        }
        let show = Key::new(w::SHOW_TEXT, move || shown.set(Some(text(records)))).quiet().view();
        Bit::Many(vec![el("p").class("small").text(w::WHERE).into(), el("p").class("keys").kid(show).into()])
    });
    el("section")
        .class("card")
        .kid(el("h2").text(w::TITLE))
        .kid(el("p").class("lead").text(w::ONLY_HERE))
        .kid(body)
        .kid(key)
        .kid(el("p").attr("role", "status").live_text(move || said.get()))
        .kid(after)
        .kid(live(move || shown.get().map(|text| copyable("backup-text", w::TEXT, &text))))
}

/// A text to be copied by hand, for a phone that lets no file out.
pub fn copyable(id: &str, label: &str, text: &str) -> El {
    let area =
        el("textarea").attr("id", id).attr("rows", "6").attr("readonly", "").attr("spellcheck", "false");
    el("div").class("field field-wide").kid(el("label").attr("for", id).text(label)).kid(area.text(text))
}
