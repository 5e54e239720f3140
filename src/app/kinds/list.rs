//! The list of kinds.

use crate::app::edge::locale;
use crate::app::frame::heading;
use crate::app::ledger::words::isolated;
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::why;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_kinds as w;
use crate::book::entry::What;
use crate::book::id::ThingId;
use crate::book::standing::KindNow;
use leptos::prelude::*;

/// Every kind, the ones in use first.
pub fn view(ui: Ui, records: Records) -> AnyView {
    let list = move || {
        records.book.with(|book| {
            let kinds = &book.standing().kinds;
            let in_order = kinds
                .iter()
                .filter(|(_, now)| !now.retired)
                .chain(kinds.iter().filter(|(_, now)| now.retired));
            let items: Vec<AnyView> = in_order.map(|(id, now)| item(ui, records, id, now)).collect();
            if items.is_empty() {
                view! { <p>{w::NONE}</p> }.into_any()
            } else {
                view! { {items} }.into_any()
            }
        })
    };
    view! {
        <p class="back">{link(en::section(Section::Book), &Place::Book)}</p>
        {heading(w::TITLE)}
        <p class="small">{w::WHAT}</p>
        <p class="keys">
            <a class="key key-primary" data-testid="kind-new" href=Place::Kind("new".to_owned()).hash()>{w::ADD}</a>
        </p>
        {list}
    }
    .into_any()
}

fn item(ui: Ui, records: Records, id: &ThingId, now: &KindNow) -> AnyView {
    let kind = &now.kind;
    let mut said = vec![w::built(kind.form).to_owned()];
    if kind.form.takes_oil() {
        let holds =
            kind.capacity.map_or_else(|| w::NOT_MEASURED.to_owned(), |holds| ui.volume(holds.volume()));
        said.push(w::holds(&holds, &locale::percent(kind.fill.fraction(), 1)));
    }
    said.push(w::at_most(&en::days(u32::from(kind.max_days))));
    if !kind.packs.is_empty() {
        let sizes: Vec<String> = kind.packs.iter().map(|pack| pack.pieces.to_string()).collect();
        said.push(w::packs(&sizes.join(", ")));
    }
    let keys = if id.is_demo() {
        view! { <p class="small">{w::DEMO}</p> }.into_any()
    } else {
        let retired = now.retired;
        let of = id.clone();
        let retire = move || {
            let written = records.book.with_untracked(|book| {
                let today = ui.today.get_untracked().max(super::first_day(book, &of));
                book.about_keeper(&records.pen(), today, What::KindRetired { kind: of.clone() })
            });
            if records.put(written, w::RETIRED_SAID).is_ok() {
                ui.said.set(w::RETIRED_SAID.to_owned());
            }
        };
        view! {
            <p class="keys">
                {link(w::CHANGE, &Place::Kind(id.to_string()))}
                {(!retired).then(|| Key::new(w::RETIRE, retire).quiet().mark("kind-retire").view())}
            </p>
            {(!retired).then(|| why(w::RETIRE_HOW.to_owned()))}
        }
        .into_any()
    };
    view! {
        <section class="card">
            <h2>{isolated(&kind.name)}</h2>
            {now.retired.then(|| view! { <p class="mark">{w::RETIRED}</p> })}
            <p>{said.join(", ")}</p>
            {keys}
        </section>
    }
    .into_any()
}
