//! The backup file: how old, and a new one.

use super::safety::{Pressing, Unsafe, unsafe_lines};
use crate::app::edge::{clock, files};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en_book::backup as w;
use crate::papers::backup;
use leptos::prelude::*;

/// What is in no file now; tracks the book, the last file and the day.
pub fn state(ui: Ui, records: Records) -> Option<Unsafe> {
    let backup = records.meta.with(|meta| meta.backup);
    records.book.with(|book| unsafe_lines(book, backup, ui.today.get()))
}

/// How old the last file is and what is not in it, with a mark that grows with the need.
pub fn state_view(state: Unsafe) -> AnyView {
    let said = w::state(&state);
    match state.pressing {
        Pressing::No => view! { <p>{said}</p> }.into_any(),
        Pressing::Soon => Notice::caution([w::SOON, " ", &said].concat()).view(),
        Pressing::Now => Notice::alarm([w::NOW, " ", &said].concat()).view(),
    }
}

/// The whole book as text; none only for a fault of this page.
fn text(records: Records) -> Option<String> {
    let label = records.meta.with_untracked(|meta| meta.label.clone());
    records.book.with_untracked(|book| backup::write(book.log(), clock::stamp(), label.as_deref()).ok())
}

/// The section of the Book.
pub(super) fn view(ui: Ui, records: Records) -> AnyView {
    let state = Memo::new(move |_| state(ui, records));
    let said = RwSignal::new(String::new());
    let shown = RwSignal::new(None::<String>);
    let save = move || {
        let Some(text) = text(records) else { return };
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
    let body = move || match state.get() {
        None => view! { <p>{w::EMPTY}</p> }.into_any(),
        Some(state) => state_view(state),
    };
    view! {
        <section class="card">
            <h2>{w::TITLE}</h2>
            <p class="lead">{w::ONLY_HERE}</p>
            {body}
            {move || {
                state
                    .get()
                    .map(|_| {
                        view! {
                            <p class="keys">
                                {Key::new(w::SAVE, save).primary().mark("book-backup").view()}
                            </p>
                        }
                    })
            }}
            <p role="status">{move || said.get()}</p>
            {move || {
                said.with(|said| !said.is_empty())
                    .then(|| {
                        view! {
                            <p class="small">{w::WHERE}</p>
                            <p class="keys">
                                {Key::new(w::SHOW_TEXT, move || shown.set(text(records))).quiet().view()}
                            </p>
                        }
                    })
            }}
            {move || shown.get().map(|text| copyable("backup-text", w::TEXT, text))}
        </section>
    }
    .into_any()
}

/// A text to be copied by hand, for a phone that lets no file out.
pub fn copyable(id: &'static str, label: &'static str, text: String) -> AnyView {
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <textarea id=id rows="6" readonly spellcheck="false" prop:value=text></textarea>
        </div>
    }
    .into_any()
}
