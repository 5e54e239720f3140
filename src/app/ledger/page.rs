//! The first page of the Book: the file that keeps it safe, and the ways to the rest.

use super::{lines, phone, restore, save};
use crate::app::edge::files;
use crate::app::frame::heading;
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_book::{self as w, asides as wa, demo as wd};
use leptos::prelude::*;

/// The section of the Book: whichever of its pages the address names.
pub fn page(ui: Ui) -> AnyView {
    let records = Records::get();
    view! {
        {move || match ui.place.get() {
            Place::History(of) => lines::view(ui, records, of.as_deref()),
            Place::Kinds => crate::app::kinds::list::view(ui, records),
            Place::Kind(kind) => crate::app::kinds::form::view(ui, records, &kind),
            _ => first(ui, records),
        }}
    }
    .into_any()
}

fn first(ui: Ui, records: Records) -> AnyView {
    let count = Memo::new(move |_| records.book.with(|book| super::history::lines(book, None).len()));
    let history = move || view! { <li>{link(w::history_key(count.get()), &Place::History(None))}</li> };
    view! {
        {heading(en::section(Section::Book))}
        <nav aria-label=w::INDEX>
            <ul class="index">{history} <li>{link(w::KINDS_KEY, &Place::Kinds)}</li></ul>
        </nav>
        {save::view(ui, records)}
        {restore::view(records)}
        {asides(records)}
        {phone::view(ui, records)}
        {demonstration(ui, records)}
    }
    .into_any()
}

/// What could not be read, each text as a file.
fn asides(records: Records) -> AnyView {
    let list = move || {
        let asides = records.asides.get();
        (!asides.is_empty()).then(|| {
            let count = asides.len();
            let items = asides.into_iter().zip(1..).map(|(aside, nth)| {
                let words = if aside.newer { wa::NEWER } else { wa::DAMAGED };
                let size = aside.raw.chars().count();
                view! {
                    <li>
                        <p>{wa::page(nth, size)} " – " {words}</p>
                        <p class="keys">
                            {Key::new(
                                    wa::SAVE,
                                    move || {
                                        // Nothing but letters and digits of the key goes into a file name.
                                        let plain = aside.key.replace(|c: char| !c.is_ascii_alphanumeric(), "-");
                                        let name = [plain.as_str(), ".txt"].concat();
                                        files::save(&name, "text/plain", &aside.raw);
                                    },
                                )
                                .mark("aside-save")
                                .view()}
                        </p>
                    </li>
                }
            });
            view! {
                <section class="card">
                    <h2>{wa::TITLE}</h2>
                    {Notice::alarm(wa::count(count)).view()}
                    <p>{wa::LEFT}</p>
                    <ul class="asides">{items.collect_view()}</ul>
                </section>
            }
        })
    };
    view! { {list} }.into_any()
}

fn demonstration(ui: Ui, records: Records) -> AnyView {
    let is_in = Memo::new(move |_| records.has_demo());
    let say = move |done: bool, said: &str| {
        ui.said.set(if done { said } else { wd::FAILED }.to_owned());
    };
    let key = move || {
        if is_in.get() {
            view! {
                <p>{wd::IS_IN}</p>
                <p class="keys">
                    {Key::new(wd::REMOVE, move || say(records.remove_demo().is_ok(), wd::REMOVED))
                        .alarm()
                        .mark("demo-remove")
                        .view()}
                </p>
            }
            .into_any()
        } else {
            view! {
                <p class="keys">
                    {Key::new(wd::FILL, move || say(records.fill_demo().is_ok(), wd::FILLED))
                        .mark("demo-fill")
                        .view()}
                </p>
            }
            .into_any()
        }
    };
    view! {
        <section class="card">
            <h2>{wd::TITLE}</h2>
            <p>{wd::WHAT}</p>
            {key}
        </section>
    }
    .into_any()
}
