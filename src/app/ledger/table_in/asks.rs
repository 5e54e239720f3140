//! What the keeper is asked about a table: what its columns say, how its days are written, what its words mean.

use super::matched::{MOST, Matched, kinds};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::Memo;
use crate::app::ledger::papers::page::chooser;
use crate::app::ledger::words::isolated;
use crate::app::load::page::tick;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::Field;
use crate::app::parts::stepper::Stepper;
use crate::app::records::Records;
use crate::app::wording::en_table_in as w;
use crate::book::entry::Did;
use crate::papers::table_in::MOST_CELLS;
use crate::papers::table_in::cells::{self, Order, Written};
use crate::papers::table_in::columns::Column;
use crate::papers::table_in::lines;
use leptos::prelude::event_target_value;
use std::rc::Rc;

/// Words that are asked about; a column with more of them is no column of work.
const WORDS: usize = 12;
const DIDS: [(Did, &str); 6] = [
    (Did::AsFound, "as_found"),
    (Did::ToppedUp, "topped_up"),
    (Did::Replaced, "replaced"),
    (Did::Spilled, "spilled"),
    (Did::Missing, "missing"),
    (Did::GluedShut, "glued_shut"),
];

/// The fields.
pub(super) fn view(records: Records, matched: &Rc<Matched>) -> Bit {
    let sheet = &matched.sheet;
    let first = sheet.rows.first().map(|row| row.cells.as_slice()).unwrap_or_default();
    let header = matched.header;
    let mut fields = el("div").class("fields");
    for (at, name) in first.iter().enumerate().take(MOST_CELLS) {
        fields = fields.kid(column(matched, at, name));
    }
    let mut all = vec![(String::new(), w::NEW_KIND.to_owned())];
    records.book.with_untracked(|book| {
        for (id, name) in kinds(book) {
            all.push((id.to_string(), name));
        }
    });
    let rest = el("div")
        .class("fields")
        .kid(Stepper::new("table-boxes", w::BOXES, matched.boxes, 0, MOST).view())
        .kid(Stepper::new("table-traps", w::A_BOX, matched.a_box, 0, MOST).view())
        .kid(chooser("table-kind", w::KIND, &all, matched.kind))
        .kid(el("p").class("small").text(w::TAKEN_SO));
    Bit::Many(vec![
        el("p").class("lead").text(&w::opened(sheet.rows.len(), first.len())).into(),
        el("h2").text(w::COLUMNS).into(),
        tick(w::HEADER, move || header.get(), move |on| header.set(on)).into(),
        fields.into(),
        Field::new("table-yard", w::YARD, matched.yard).wide().view().into(),
        days(matched),
        words(matched),
        more(w::REST, rest).into(),
    ])
}

/// A chooser that hands on what is chosen. It keeps its own place in the page while the answers change.
fn select(
    id: &str,
    label: &str,
    hint: &str,
    all: &[(&str, &str)],
    now: &str,
    chosen: Box<dyn Fn(String)>,
) -> El {
    let mut select = el("select").attr("id", id).test_id(id).attr("autocomplete", "off");
    for (code, words) in all {
        let option = el("option").attr("value", code).text(words);
        select = select.kid(if *code == now { option.attr("selected", "") } else { option });
    }
    el("div")
        .class("field field-wide")
        .kid(el("label").attr("for", id).text(label))
        .kid(select.on("change", move |event| chosen(event_target_value(&event))))
        .kid((!hint.is_empty()).then(|| el("p").class("small").text(hint)))
}

fn column(matched: &Matched, at: usize, name: &str) -> El {
    let label = if name.trim().is_empty() { w::nth(at + 1) } else { isolated(name.trim()) };
    let mut second = matched.sheet.rows.iter().skip(1).filter_map(|row| row.cells.get(at));
    let hint =
        second.find(|cell| !cell.trim().is_empty()).map_or_else(String::new, |cell| w::such_as(cell.trim()));
    let columns = matched.columns;
    let now = columns.with_untracked(|columns| columns.get(at).copied()).unwrap_or(Column::Skip);
    let chosen = move |code: String| {
        columns.update(|columns| {
            if let Some(place) = columns.get_mut(at) {
                *place = Column::of(&code);
            }
        });
    };
    let mut all = Vec::new();
    for (column, code) in Column::ALL {
        all.push((code, w::column(column)));
    }
    let id = ["table-column-", &(at + 1).to_string()].concat();
    select(&id, &label, &hint, &all, now.code(), Box::new(chosen))
}

/// Which of two numbers is the day, where a column does not tell.
fn days(matched: &Rc<Matched>) -> Bit {
    let of = Rc::clone(matched);
    let asked = Memo::new(move || {
        let matching = of.matching();
        lines::OF_DAYS.map(|column| {
            let (told, needed) = cells::order(lines::days(&of.sheet, &matching, column));
            let mut cells = lines::days(&of.sheet, &matching, column);
            let cell = cells.find(|cell| matches!(cells::written(cell), Written::Numbers(..)));
            cell.filter(|_| needed).map(|cell| (told, cell.to_owned()))
        })
    });
    let order = matched.order;
    live(move || {
        let mut bits: Vec<Bit> = Vec::new();
        let mut choice = None;
        for (told, cell) in asked.get().into_iter().flatten() {
            let of = |order| w::order(order, &cell, cells::written(&cell).day(Some(order)));
            if let Some(told) = told {
                bits.push(el("p").test_id("table-order-told").text(&of(told)).into());
            } else if choice.is_none() {
                let asks = Choice::new("table-order", w::ORDER);
                choice = Some(asks.option("day", of(Order::DayFirst)).option("month", of(Order::MonthFirst)));
            }
        }
        bits.extend(choice.map(|choice| choice.text(order).view().into()));
        Bit::Many(bits)
    })
}

/// Words for work that are not known.
fn words(matched: &Rc<Matched>) -> Bit {
    let of = Rc::clone(matched);
    let unknown = Memo::new(move || {
        let matching = of.matching();
        let known = matching.columns.contains(&Column::Did);
        if known { lines::unknown_words(&of.sheet, &matching, WORDS) } else { Vec::new() }
    });
    let answers = matched.words;
    live(move || {
        let unknown = unknown.get();
        if unknown.is_empty() {
            return Bit::Nothing;
        }
        let mut bits = vec![el("h3").text(w::WORDS).into()];
        for (at, word) in unknown.iter().enumerate() {
            let mut all = vec![("", w::LEAVE_WORD)];
            for (did, code) in DIDS {
                all.push((code, w::did(did)));
            }
            let of = word.clone();
            let chosen = move |code: String| {
                let did = DIDS.into_iter().find(|(_, known)| *known == code).map(|(did, _)| did);
                answers.update(|answers| {
                    answers.retain(|(known, _)| *known != of);
                    answers.push((of.clone(), did));
                });
            };
            let id = ["table-word-", &(at + 1).to_string()].concat();
            bits.push(select(&id, &isolated(word), "", &all, "", Box::new(chosen)).into());
        }
        Bit::Many(bits)
    })
}
