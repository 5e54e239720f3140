//! "Papers to show" on the first page of the Book.

use super::events::{events, yards};
use super::give::{self, CALENDAR, Paper, TABLE};
use super::page::{chooser, title};
use crate::app::edge::{clock, hours};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal};
use crate::app::ledger::words;
use crate::app::load::page::tick;
use crate::app::parts::card::more;
use crate::app::parts::key::link;
use crate::app::place::{self, Place};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en_papers::{self as w, calendar as wc, tables as wt};
use crate::papers::calendar::give_out;
use crate::papers::records::Records as Table;
use crate::papers::table::Style;

/// The part, folded.
pub(in crate::app::ledger) fn view(ui: Ui, records: Records) -> Bit {
    let any = Memo::new(move || records.book.with(|book| !yards(book).is_empty()));
    let body = live(move || {
        if !any.get() {
            return Bit::from(el("p").text(w::NO_YARD));
        }
        let mut ways = el("ul").class("ways");
        for paper in place::Paper::ALL {
            ways = ways.kid(el("li").kid(link(title(paper).0, &Place::Paper(paper, None))));
        }
        Bit::Many(vec![
            el("h3").text(w::SHEETS).into(),
            ways.into(),
            calendar(ui, records),
            tables(ui, records),
            el("p").class("small").text(w::NO_PLACES).into(),
        ])
    });
    more(w::TITLE, body).test_id("papers").into()
}

fn calendar(ui: Ui, records: Records) -> Bit {
    let make = move || {
        let today = ui.today.get_untracked();
        let before = records.meta.with_untracked(|meta| meta.calendar.clone());
        let events = records.book.with_untracked(|book| events(book, today, &hours::CLOCK));
        let made = give_out(&events, &before, today, clock::stamp(), wc::WITHDRAWN).ok_or(wc::NOTHING)?;
        let given = made.given;
        let name = [wc::FILE, &today.to_string(), CALENDAR.ending].concat();
        let out = Box::new(move || records.remember(|meta| meta.calendar = given));
        Ok(Paper { name, text: made.text, plain: None, out })
    };
    let head: [El; 3] =
        [el("h3").text(wc::TITLE), el("p").text(wc::WHAT), el("p").class("small").text(wc::HOW)];
    [Bit::from(head), give::keys(CALENDAR, make)].into()
}

fn tables(ui: Ui, records: Records) -> Bit {
    let which = RwSignal::new(Table::Checks.name().to_owned());
    // Names and notes may come from files of other people.
    let (mark, guard) = (RwSignal::new(false), RwSignal::new(true));
    let make = move || {
        let all = records.book.with_untracked(Table::all);
        let chosen = which.with_untracked(|name| all.into_iter().find(|table| table.name() == name));
        let table = chosen.unwrap_or(Table::Checks);
        let style = Style { mark: mark.get_untracked(), guard: guard.get_untracked() };
        let text =
            records.book.with_untracked(|book| table.table(book, style, &|entry| words::entry(book, entry)));
        let today = ui.today.get_untracked().to_string();
        let name = [table.name(), "-", &today, TABLE.ending].concat();
        Ok(Paper { name, text, plain: None, out: Box::new(|| ()) })
    };
    let mut all = Vec::new();
    for table in records.book.with_untracked(Table::all) {
        all.push((table.name().to_owned(), wt::name(table).to_owned()));
    }
    let head: [El; 6] = [
        el("h3").text(wt::TITLE),
        el("p").text(wt::WHAT),
        chooser("table-of", wt::WHICH, &all, which),
        tick(wt::MARK, move || mark.get(), move |on| mark.set(on)),
        tick(wt::GUARD, move || guard.get(), move |on| guard.set(on)),
        el("p").class("small").text(wt::GUARDED),
    ];
    [Bit::from(head), give::keys(TABLE, make)].into()
}
