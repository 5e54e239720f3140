//! The first page of the Book: the file that keeps it safe, and the ways to the rest.

use super::{asides, lines, papers, phone, restore, save, table_in};
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, untrack};
use crate::app::parts::key::{Key, link};
use crate::app::place::{Place, Section};
use crate::app::records::{Records, Stop};
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_book::{self as w, demo as wd};
use crate::app::wording::en_hand_over::{HAND_OVER, TAKE_IN};
use crate::app::wording::en_records as wr;

/// The section of the Book: whichever of its pages the address names.
pub fn page(ui: Ui) -> El {
    let records = Records::get();
    let place = Memo::new(move || ui.place.get());
    let shown = live(move || {
        let place = place.get();
        untrack(|| match place {
            Place::History(of) => lines::view(ui, records, of.as_deref()),
            Place::Paper(paper, of) => papers::page::view(ui, records, paper, of.as_deref()),
            Place::Records => crate::app::record::list::view(records),
            Place::HandOver(yard) => super::hand_over::give::view(ui, records, yard.as_deref()),
            Place::Catch(yard) => crate::app::catch::page::view(ui, records, yard.as_deref()),
            Place::Trial(yard) => crate::app::catch::trial::view(ui, records, yard.as_deref()),
            Place::TakeIn => super::hand_over::take::view(records),
            Place::TableIn => table_in::view(ui, records),
            Place::Kinds => crate::app::kinds::list::view(ui, records),
            Place::Kind(kind) => crate::app::kinds::form::view(ui, records, &kind),
            _ => first(ui, records),
        })
    });
    el("div").class("ledger").kid(shown)
}

fn first(ui: Ui, records: Records) -> Bit {
    records.prepare();
    let count = Memo::new(move || records.book.with(|book| super::safety::own_lines(book).count()));
    let history = live(move || link(w::history_key(count.get()), &Place::History(None)));
    let index = el("ul")
        .class("ways")
        .kid(el("li").kid(history))
        .kid(el("li").kid(link(wr::TITLE, &Place::Records)))
        .kid(el("li").kid(link(crate::app::wording::en_catch::TITLE, &Place::Catch(None))))
        .kid(el("li").kid(link(crate::app::wording::en_trial::TITLE, &Place::Trial(None))))
        .kid(el("li").kid(link(w::KINDS_KEY, &Place::Kinds)))
        .kid(el("li").kid(link(HAND_OVER, &Place::HandOver(None))))
        .kid(el("li").kid(link(TAKE_IN, &Place::TakeIn)))
        .kid(el("li").kid(link(crate::app::wording::en_table_in::TITLE, &Place::TableIn)));
    Bit::Many(vec![
        heading(en::section(Section::Book)).into(),
        el("nav").attr("aria-label", w::INDEX).kid(index).into(),
        save::view(ui, records).into(),
        restore::view(records).into(),
        papers::part::view(ui, records),
        asides::view(records),
        phone::view(ui, records).into(),
        demonstration(ui, records).into(),
    ])
}

fn demonstration(ui: Ui, records: Records) -> El {
    let is_in = Memo::new(move || records.has_demo());
    let say = move |done: Result<(), Stop>, said: &str| {
        // Of a phone that only shows the book the frame says so.
        if done != Err(Stop::OnlyShows) {
            ui.said.set(if done.is_ok() { said } else { wd::FAILED }.to_owned());
        }
    };
    let key = live(move || {
        let is_in = is_in.get();
        let key = if is_in {
            Key::new(wd::REMOVE, move || say(records.remove_demo(), wd::REMOVED)).alarm().mark("demo-remove")
        } else {
            Key::new(wd::FILL, move || say(records.fill_demo(), wd::FILLED)).mark("demo-fill")
        };
        let said = is_in.then(|| el("p").text(wd::IS_IN));
        Bit::Many(vec![said.into(), el("p").class("keys").kid(key.view()).into()])
    });
    el("section").class("card").kid(el("h2").text(wd::TITLE)).kid(el("p").text(wd::WHAT)).kid(key)
}
