//! What stands above every place until it is dealt with: nothing here is ever said only once.

use super::edge::{clock, files};
use super::ledger::safety::{Pressing, clock_doubt};
use super::ledger::save::{copyable, state, state_view};
use super::parts::key::{Key, link};
use super::parts::notice::Notice;
use super::place::{Place, Section};
use super::records::{Home, Records, Unsaved};
use super::state::Ui;
use super::wording::en_book::backup::ONLY_HERE;
use super::wording::en_notices as w;
use crate::almanac::day::Day;
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::log::Log;
use crate::papers::backup;
use leptos::prelude::*;

/// The notices, the most pressing first.
pub fn notices(ui: Ui) -> AnyView {
    let records = Records::get();
    view! {
        <div class="notices">
            {move || records.unsaved.get().map(|unsaved| not_kept(ui, records, unsaved))}
            {storage(ui, records)}
            {damaged(ui, records)}
            {doubt(ui, records)}
            {demonstration(ui, records)}
            {backup_age(ui, records)}
        </div>
    }
    .into_any()
}

/// What could not be kept, with three ways out.
fn not_kept(ui: Ui, records: Records, unsaved: Unsaved) -> AnyView {
    let text = entries_text(&unsaved);
    let file = text.clone();
    let try_again = move || {
        records.try_again();
        let still = records.unsaved.with_untracked(Option::is_some);
        ui.said.set(if still { w::STILL_NOT } else { w::KEPT_NOW }.to_owned());
    };
    let as_file = move || {
        files::save(&w::file_name(&clock::stamp().day().to_string()), "application/json", &file);
    };
    view! {
        <section class="notice-box" data-testid="unsaved-notice" aria-label=w::UNSAVED role="alert">
            {Notice::alarm([w::UNSAVED, ": ", &unsaved.said, ". ", w::why(&unsaved.why)].concat()).view()}
            <p>{w::UNSAVED_HOW}</p>
            {copyable("unsaved-text", w::UNSAVED_TEXT, text)}
            <p class="keys">
                {Key::new(w::TRY_AGAIN, try_again).primary().mark("unsaved-again").view()}
                {Key::new(w::AS_FILE, as_file).mark("unsaved-file").view()}
                {Key::new(w::PUT_AWAY, move || records.unsaved.set(None)).alarm().mark("unsaved-away").view()}
            </p>
        </section>
    }
    .into_any()
}

/// As a backup file, so that Restore takes it in; the bare lines where that cannot be.
fn entries_text(unsaved: &Unsaved) -> String {
    let own = unsaved.entries.iter().any(|entry| !entry.is_demo());
    let log: Log = unsaved.entries.iter().cloned().collect();
    let by = unsaved.entries.first().and_then(|entry| entry.by.as_deref());
    let file = own.then(|| backup::write(&log, clock::stamp(), by).ok()).flatten();
    file.or_else(|| serde_json::to_string(&unsaved.entries).ok()).unwrap_or_default()
}

/// Whether the phone keeps anything.
fn storage(ui: Ui, records: Records) -> AnyView {
    let view = move || {
        if records.gone.get() {
            return gone(ui, records);
        }
        let written = records.book.with(|book| book.log().entries().any(|entry| !entry.is_demo()));
        match records.home.get() {
            Home::Kept => ().into_any(),
            Home::Forgotten(_) => {
                let said = if written { w::FORGOTTEN_WRITTEN } else { w::FORGOTTEN };
                view! {
                    <div class="notice-box" data-testid="storage-notice">
                        {Notice::alarm(said).why(w::FORGOTTEN_HOW).view()}
                        {written.then(|| view! { <p class="keys">{link(w::TO_BACKUP, &Place::Book)}</p> })}
                    </div>
                }
                .into_any()
            }
            Home::ReadOnly => view! {
                <div class="notice-box" data-testid="storage-notice">{Notice::alarm(w::READ_ONLY).view()}</div>
            }
            .into_any(),
        }
    };
    view! { {view} }.into_any()
}

fn gone(ui: Ui, records: Records) -> AnyView {
    // On the Book itself the field stands further down the page.
    let there = Memo::new(move |_| ui.place.with(|place| *place == Place::Book));
    view! {
        <div class="notice-box" data-testid="storage-notice" role="alert">
            {Notice::alarm(w::GONE).view()}
            <p class="keys">
                {move || (!there.get()).then(|| link(w::GONE_KEY, &Place::Book))}
                {Key::new(w::GONE_AWAY, move || records.gone.set(false)).alarm().view()}
            </p>
        </div>
    }
    .into_any()
}

fn damaged(ui: Ui, records: Records) -> AnyView {
    let count = Memo::new(move |_| records.asides.with(Vec::len));
    let in_book = Memo::new(move |_| ui.place.with(|place| *place == Place::Book));
    let view = move || {
        let count = count.get();
        (count > 0).then(|| {
            let way =
                (!in_book.get()).then(|| view! { <p class="keys">{link(w::TO_BOOK, &Place::Book)}</p> });
            view! {
                <div class="notice-box" data-testid="damaged-notice">
                    {Notice::caution(w::damaged(count)).view()}
                    {way}
                </div>
            }
        })
    };
    view! { {view} }.into_any()
}

fn doubt(ui: Ui, records: Records) -> AnyView {
    let doubt = Memo::new(move |_| {
        let today = ui.today.get();
        records.book.with(|book| {
            clock_doubt(book, |entry| {
                entry.yard.as_ref().map_or(today, |yard| today_there(book, yard, today))
            })
        })
    });
    let view = move || {
        doubt.get().map(|newest| {
            view! {
                <div class="notice-box" data-testid="clock-notice">
                    {Notice::caution(w::clock(ui.today.get(), newest)).view()}
                </div>
            }
        })
    };
    view! { {view} }.into_any()
}

/// Today by the calendar of the yard.
fn today_there(book: &Book, yard: &ThingId, otherwise: Day) -> Day {
    book.standing().yards.get(yard).map_or(otherwise, |yard| clock::today(&yard.zone))
}

/// Invented hives are marked wherever they are shown.
fn demonstration(ui: Ui, records: Records) -> AnyView {
    let demo = |id: &str| ThingId::parse(id).is_ok_and(|id| id.is_demo());
    let said = Memo::new(move |_| {
        ui.place.with(|place| match place {
            Place::Yard(id) | Place::Hive(id) if demo(id) => Some(w::DEMO),
            Place::Round | Place::Load if records.has_demo() => Some(w::DEMO_IN),
            _ => None,
        })
    });
    let view =
        move || said.get().map(|said| view! { <p class="demo-mark" data-testid="demo-mark">{said}</p> });
    view! { {view} }.into_any()
}

/// How old the last file is: on the first page of the Round always, elsewhere only when it cannot wait. The Book
/// itself says it in its own place.
fn backup_age(ui: Ui, records: Records) -> AnyView {
    let shown = Memo::new(move |_| {
        let state = state(ui, records)?;
        let (home, walking, book) = ui.place.with(|place| {
            let walking = matches!(place, Place::Yard(_) | Place::Hive(_));
            (*place == Place::Round, walking, place.section() == Section::Book)
        });
        let wanted = home || (state.pressing == Pressing::Now && !walking && !book);
        wanted.then_some(state)
    });
    let view = move || {
        shown.get().map(|state| {
            view! {
                <div class="notice-box" data-testid="backup-notice">
                    {state.file.is_none().then(|| view! { <p>{ONLY_HERE}</p> })}
                    {state_view(state)}
                    {(state.lines > 0).then(|| view! { <p class="keys">{link(w::TO_BACKUP, &Place::Book)}</p> })}
                </div>
            }
        })
    };
    view! { {view} }.into_any()
}
