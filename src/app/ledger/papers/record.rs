//! The inspector packet.

use super::events::yards;
use super::packet::{self, Part};
use super::sheet::{demo_mark, table, yard_name};
use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el};
use crate::app::ledger::history::Counts;
use crate::app::ledger::words::isolated;
use crate::app::wording::en_papers::{self as wp, record as w};
use crate::app::wording::{en, en_hive};
use crate::book::Book;
use crate::book::fold::fold_until;

/// The packet for the days from `from` to `to`; the keeper's notes only with `notes`.
pub(super) fn view(book: &Book, from: Day, to: Day, today: Day, notes: bool) -> Bit {
    let mut bits = vec![el("h2").text(w::COVER).into()];
    cover(book, from, to, today, &mut bits);
    let parts = [
        hives(book, from, to),
        lines(book, Part::Work, from, to, notes),
        lines(book, Part::Moves, from, to, notes),
        lines(book, Part::Ends, from, to, notes),
        lines(book, Part::Products, from, to, notes),
    ];
    for (title, part) in w::PARTS.into_iter().zip(parts) {
        bits.push(el("h3").text(title).into());
        bits.push(part.into());
    }
    Bit::Many(bits)
}

fn none() -> El {
    el("p").text(wp::NONE)
}

fn cover(book: &Book, from: Day, to: Day, today: Day, bits: &mut Vec<Bit>) {
    let keeper = book.standing().keeper.name.as_deref().map(isolated);
    let mut names = String::new();
    for yard in yards(book) {
        let between = if names.is_empty() { "" } else { ", " };
        en::put(&mut names, between);
        en::put(&mut names, &yard_name(book, &yard));
    }
    if let Some(yard) = yards(book).first() {
        bits.push(demo_mark(yard).into());
    }
    let period = [&en::date(from), w::UNTIL, &en::date(to)].concat();
    let keeper = keeper.as_deref().unwrap_or(w::BY_HAND);
    for (label, value) in [
        (w::KEEPER, keeper),
        (w::REGISTRATION, w::BY_HAND),
        (w::YARDS, &names),
        (w::PERIOD, &period),
        (wp::MADE, &en::date(today)),
    ] {
        bits.push(el("p").kid(el("strong").text(label)).text(value).into());
    }
}

/// Every hive that stood on a day of the period, as the book says for its last day.
fn hives(book: &Book, from: Day, to: Day) -> El {
    let standing = fold_until(book.log(), Some(to));
    let own = standing.yards.keys().any(|yard| !yard.is_demo());
    let mut rows = Vec::new();
    for (yard, now) in standing.yards.iter().filter(|(id, _)| !(own && id.is_demo())) {
        for (_, hive) in standing.hives_of(yard, false) {
            let gone = hive.ended.as_ref().is_some_and(|(_, day)| *day < from);
            if gone || hive.since > to {
                continue;
            }
            let out = hive.ended.as_ref().map(|(how, day)| en_hive::ended(how, *day));
            rows.push(vec![
                isolated(&now.name).into(),
                isolated(&hive.tag).into(),
                hive.boxes.len().to_string().into(),
                en::date(hive.since).into(),
                out.unwrap_or_default().into(),
            ]);
        }
    }
    if rows.is_empty() {
        return none();
    }
    el("div").kid(table(&w::HIVES, rows)).kid(el("p").class("small").text(w::AS_OF))
}

fn lines(book: &Book, part: Part, from: Day, to: Day, notes: bool) -> El {
    let mut rows = Vec::new();
    for line in packet::lines(book, part, from, to, notes) {
        let entry = line.entry;
        let said = packet::said(book, entry, notes);
        let what: Bit = match line.counts {
            Counts::Yes => said.into(),
            Counts::Struck { .. } => [Bit::from(el("del").text(&said)), w::STRUCK.into()].into(),
            Counts::Corrected => [Bit::from(el("del").text(&said)), w::CORRECTED.into()].into(),
        };
        let yard = entry.yard.as_ref().map(|yard| yard_name(book, yard)).unwrap_or_default();
        let by = entry.by.as_deref().map(isolated).unwrap_or_default();
        rows.push(vec![en::date(entry.day).into(), yard.into(), what, by.into()]);
    }
    if rows.is_empty() { none() } else { table(&w::LINES, rows) }
}
