//! The season report: what some days came to in a yard, for the keeper and the club. No place, no note.

use super::sheet::{demo_mark, list, table, yard_name};
use crate::almanac::day::Day;
use crate::almanac::quantity::Volume;
use crate::app::el::{Bit, el};
use crate::app::ledger::words;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_papers::record as wr;
use crate::app::wording::en_season as w;
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::season::Season;

/// The report on `yard` for the days from `from` to `to`.
pub(super) fn view(ui: Ui, book: &Book, yard: &ThingId, from: Day, to: Day) -> Bit {
    let season = Season::of(book, yard, from, to);
    let (least, most) = season.yard.oil;
    let mut oil = ui.volume(most);
    if least < most {
        oil = [&ui.volume(least), " to ", oil.as_str()].concat();
    } else if most == Volume::ZERO {
        en::NO_ANSWER.clone_into(&mut oil);
    }
    let mut rows = Vec::new();
    for (hive, figures) in &season.hives {
        let tag = book.standing().hives.get(hive).map_or("", |hive| &hive.tag);
        let cells = [
            words::isolated(tag),
            figures.visits.to_string(),
            w::rhythm(figures),
            w::on_time(figures, false),
            w::counted_on(figures),
            w::catch(figures),
        ];
        let mut row = Vec::new();
        for cell in cells {
            row.push(cell.into());
        }
        rows.push(row);
    }
    let period = [&en::date(from), wr::UNTIL, &en::date(to)].concat();
    let [hives, work, each] = w::PARTS;
    let mut bits: Vec<Bit> = vec![
        el("h2").text(&[w::TITLE, ": ", &yard_name(book, yard)].concat()).into(),
        demo_mark(yard).into(),
        el("p").kid(el("strong").text(wr::PERIOD)).text(&period).into(),
        el("h3").text(hives).into(),
        list("plain-list", &w::hives(&season)).into(),
        el("h3").text(work).into(),
    ];
    if season.yard.visits == 0 {
        bits.push(el("p").text(w::NO_VISIT).into());
    } else {
        bits.push(list("plain-list", &w::work(&season, &oil)).into());
        bits.push(el("h3").text(each).into());
        bits.push(table(&w::COLUMNS, rows).into());
    }
    bits.push(el("p").class("small").text(&w::how()).into());
    Bit::Many(bits)
}
