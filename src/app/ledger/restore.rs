//! A backup file comes back: looked at first, taken in on a word.

use super::words;
use crate::app::edge::files::{self, FileError};
use crate::app::parts::card::more;
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::wording::en_book::restore as w;
use crate::app::wording::en_ledger;
use crate::book::Book;
use crate::book::entry::What;
use crate::book::log::Union;
use crate::papers::backup::{self, Backup, BackupError};
use leptos::{html, prelude::*};

/// Clashes named one by one.
const NAMED: usize = 5;

/// What was opened.
type Opened = RwSignal<Option<Result<Backup, String>>>;

/// The section of the Book.
pub(super) fn view(records: Records) -> AnyView {
    let opened: Opened = RwSignal::new(None);
    let result = RwSignal::new(String::new());
    let field = NodeRef::<html::Input>::new();
    let pasted = RwSignal::new(String::new());
    let look = move |text: &str| {
        result.set(String::new());
        opened.set(Some(backup::open(text).map_err(|error| w::error(&error))));
    };
    let picked = move |_| {
        let Some(field) = field.get_untracked() else { return };
        files::picked(
            &field,
            u32::try_from(backup::MOST_BYTES).unwrap_or(u32::MAX),
            move |_, text| match text {
                Ok(text) => look(&text),
                Err(FileError::TooLarge { .. }) => opened.set(Some(Err(w::error(&BackupError::TooLarge)))),
                Err(FileError::Unreadable) => opened.set(Some(Err(w::UNREADABLE.to_owned()))),
            },
        );
    };
    let paste = view! {
        <div class="field">
            <label for="restore-text">{w::PASTE_LABEL}</label>
            <textarea
                id="restore-text"
                rows="4"
                spellcheck="false"
                prop:value=move || pasted.get()
                on:input=move |event| pasted.set(event_target_value(&event))
            ></textarea>
        </div>
        <p class="keys">{Key::new(w::PASTE_KEY, move || pasted.with_untracked(|text| look(text))).view()}</p>
    };
    view! {
        <section class="card" id="restore">
            <h2>{w::TITLE}</h2>
            <div class="field">
                <label for="restore-file">{w::FILE}</label>
                <p class="field-hint" id="restore-hint">{w::HINT}</p>
                <input
                    id="restore-file"
                    class="file"
                    type="file"
                    accept=".json,.txt,application/json,text/plain"
                    data-testid="book-restore"
                    aria-describedby="restore-hint"
                    node_ref=field
                    on:change=picked
                />
            </div>
            {more(w::PASTE, paste.into_any())}
            <div role="status">
                {move || opened.get().map(|opened_now| match opened_now {
                    Ok(backup) => preview(records, &backup, opened, result),
                    Err(said) => Notice::caution(said).view(),
                })}
                <p>{move || result.get()}</p>
            </div>
        </section>
    }
    .into_any()
}

fn preview(records: Records, backup: &Backup, opened: Opened, result: RwSignal<String>) -> AnyView {
    let (union, clashes) = records.book.with_untracked(|book| {
        let union = backup.preview(book);
        let clashes = clashing(book, &union);
        (union, clashes)
    });
    let said = w::union(union.new, union.same, union.clashes.len());
    let label = if union.new == 0 { w::NOTHING_NEW.to_owned() } else { w::confirm(union.new) };
    let take = move || {
        let Some(Ok(backup)) = opened.get_untracked() else { return };
        let (made, held) = (backup.made.day(), backup.counts.entries);
        match records.restore(backup, String::new()) {
            Ok(union) => {
                opened.set(None);
                result.set(w::done(&w::union(union.new, union.same, union.clashes.len())));
                let own = records
                    .book
                    .with_untracked(|book| book.log().entries().filter(|entry| !entry.is_demo()).count());
                // Where the file holds all there is, it is as good as one saved here.
                if own == held && union.clashes.is_empty() {
                    records.remember(|meta| {
                        if meta.backup.is_none_or(|(day, before)| (before, day) < (held, made)) {
                            meta.backup = Some((made, held));
                        }
                    });
                }
            }
            Err(_) => {
                opened.set(None);
                result.set(w::NOT_KEPT.to_owned());
            }
        }
    };
    view! {
        <div class="preview" data-testid="restore-preview">
            <h3>{w::PREVIEW}</h3>
            <ul class="plain-list">
                <li>{w::made(backup.made, backup.by.as_deref().map(words::isolated).as_deref())}</li>
                <li>{w::holds(backup.counts)}</li>
                <li>{yards(backup)}</li>
            </ul>
            <p class="lead">{said}</p>
            {(!clashes.is_empty())
                .then(|| {
                    let items = clashes.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
                    view! {
                        <p>{w::CLASH_HOW}</p>
                        <ul class="plain-list">{items}</ul>
                    }
                })}
            <p class="keys">
                {Key::new(label, take).primary().mark("restore-confirm").view()}
                {Key::new(w::LEAVE, move || opened.set(None)).view()}
            </p>
        </div>
    }
    .into_any()
}

fn clashing(book: &Book, union: &Union) -> Vec<String> {
    let here = union.clashes.iter().filter_map(|id| book.log().get(id));
    let mut said: Vec<String> = here.take(NAMED).map(|entry| words::entry(book, entry)).collect();
    if union.clashes.len() > NAMED {
        said.push(["+ ", &en_ledger::lines(union.clashes.len() - NAMED)].concat());
    }
    said
}

fn yards(backup: &Backup) -> String {
    let names: Vec<String> = backup
        .entries
        .iter()
        .filter_map(|entry| match &entry.what {
            What::Yard { name, .. } => Some(words::isolated(name)),
            _ => None,
        })
        .collect();
    if names.is_empty() { w::NO_YARD.to_owned() } else { w::yards(&names.join(", ")) }
}
