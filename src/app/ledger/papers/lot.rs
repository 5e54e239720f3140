//! The honey lot sheet: where a lot comes from, its hours, and the products that were in its hives before. For the buyer
//! and the food officer. No note, no place, no judgement.

use super::days::joined;
use super::packet::{self, Part};
use super::sheet::{demo_mark, keeper_text, table, yard_name};
use crate::almanac::day::Day;
use crate::app::el::{Bit, el};
use crate::app::ledger::history::{Counts, Line};
use crate::app::ledger::words::{self, isolated, put_answer};
use crate::app::wording::en_papers::{self as wp, record as wr};
use crate::app::wording::{en, en_lot as w, en_records};
use crate::book::Book;
use crate::book::id::{EntryId, ThingId};
use crate::book::lot::{Lot, STEPS, minutes};
use crate::book::record::{Blank, Record, lot as number};

/// The lots with their numbers, newest first; those of the demonstration only while there is nothing else.
pub(super) fn lots(book: &Book) -> Vec<(String, String)> {
    let standing = book.standing();
    let own = standing.yards.keys().any(|yard| !yard.is_demo());
    let mut lots = Vec::new();
    for (id, now) in standing.records_of(Blank::Harvest).into_iter().rev() {
        if !(own && now.yard.as_ref().is_some_and(ThingId::is_demo)) {
            lots.push((id.to_string(), number(now.day, id)));
        }
    }
    lots
}

/// What stands in a field of `record`, as typed, with the field's own label.
fn told(book: &Book, record: &Record, name: &str) -> (&'static str, String) {
    let words = en_records::blank(record.blank);
    for ((field, answer), (label, _, names)) in record.fields().zip(words.fields) {
        if field.name == name {
            let mut said = String::new();
            if let Some(answer) = answer {
                put_answer(&mut said, book, &field.ask, answer, names);
            } else {
                en::put(&mut said, w::NOT_WRITTEN);
            }
            return (label, said);
        }
    }
    ("", String::new())
}

/// The tags of `hives`, of those alone that the lot is from where it is from any of them.
fn tags(book: &Book, hives: &[ThingId], of: Option<&Lot>) -> String {
    let ours = |hive: &ThingId| of.is_none_or(|lot| lot.hives.contains(hive));
    let hives = book.standing().kept_of(hives);
    let any = hives.iter().any(|hive| ours(hive));
    let mut tags = Vec::new();
    for hive in hives.into_iter().filter(|hive| !any || ours(hive)) {
        tags.push(match book.standing().hives.get(hive) {
            Some(now) => isolated(&now.tag),
            None => words::hive_name(book, hive),
        });
    }
    joined(tags)
}

/// The sheet of the lot whose line is `id`.
pub(super) fn view(book: &Book, id: &EntryId, today: Day) -> Option<Bit> {
    let now = book.standing().records.get(id)?;
    let lot = Lot::of(book, now)?;
    let record = &now.record;
    let yard = now.yard.as_ref();
    let mut from = yard.map(|yard| yard_name(book, yard)).unwrap_or_default();
    en::put(&mut from, ", ");
    if record.hives.is_empty() {
        en::put(&mut from, w::NO_HIVES);
    } else {
        en::put(&mut from, en_records::HIVES);
        en::put(&mut from, &tags(book, &record.hives, None));
    }
    let keeper = keeper_text(book, "name");
    let mut bits: Vec<Bit> =
        vec![el("h2").text(&en_records::lot(&number(now.day, id))).into(), yard.and_then(demo_mark).into()];
    let mut line = |label: &str, said: &str| {
        bits.push(el("p").kid(el("strong").text(label)).text(said).into());
    };
    line(wr::KEEPER, keeper.as_deref().unwrap_or(wr::BY_HAND));
    line(w::FROM, &from);
    for name in ["supers", "honey", "room", "humidity"] {
        let (label, said) = told(book, record, name);
        line(&[label, en_records::SAYS].concat(), &said);
    }
    line(wp::MADE, &en::date(today));
    let [hours_title, products_title] = w::PARTS;
    bits.push(el("h3").text(hours_title).into());
    bits.push(table(&w::HOURS, hours(book, record)).into());
    bits.push(el("h3").text(products_title).into());
    let mut rows = Vec::new();
    for line in packet::lines(book, Part::Products, Day::FIRST, lot.off, false) {
        rows.extend(product(book, &lot, &line));
    }
    bits.push(if rows.is_empty() { el("p").text(w::NONE).into() } else { table(&w::PRODUCTS, rows).into() });
    bits.push(el("p").class("small").text(w::HOW).into());
    bits.push(el("p").class("small").text(w::FOOT).into());
    Some(Bit::Many(bits))
}

fn hours(book: &Book, record: &Record) -> Vec<Vec<Bit>> {
    let mut rows: Vec<Vec<Bit>> = Vec::new();
    let off = STEPS.first().and_then(|name| record.time(name));
    let mut before = None;
    for name in STEPS {
        let (label, said) = told(book, record, name);
        let time = record.time(name);
        let since = |from: Option<_>| from.zip(time).and_then(|(from, to)| minutes(from, to)).map(w::hours);
        let mut row: Vec<Bit> = vec![label.into(), said.into()];
        for from in [before, off.filter(|_| !rows.is_empty())] {
            row.push(since(from).unwrap_or_default().into());
        }
        rows.push(row);
        before = time;
    }
    rows
}

/// A version of a product that was in the lot's hives; one that does not count is struck through.
fn product(book: &Book, lot: &Lot, line: &Line<'_>) -> Option<Vec<Bit>> {
    let record = lot.product(book.standing(), line.entry)?;
    let text = |name, without: &str| record.text(name).map_or_else(|| without.to_owned(), isolated);
    let cells = [
        text("product", ""),
        text("registration", w::NOT_VERIFIED),
        tags(book, &record.hives, Some(lot)),
        en::date(line.entry.day),
        told(book, record, "end").1,
        told(book, record, "interval_days").1,
        // Of words that do not count nothing is worked out.
        lot.wait(record).filter(|_| line.counts == Counts::Yes).map(w::wait).unwrap_or_default(),
    ];
    let mark = match line.counts {
        Counts::Yes => return Some(cells.into_iter().map(Bit::from).collect()),
        Counts::Struck { .. } => wr::STRUCK,
        Counts::Corrected => wr::CORRECTED,
    };
    let mut row: Vec<Bit> = Vec::new();
    for (at, cell) in cells.into_iter().enumerate() {
        let cell = el("span").kid(el("del").text(&cell));
        row.push(if at == 0 { cell.text(mark) } else { cell }.into());
    }
    Some(row)
}
