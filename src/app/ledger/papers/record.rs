//! The inspector packet.

use super::days::{self, DayRow};
use super::events::yards;
use super::packet::{self, Part};
use super::sheet::{demo_mark, keeper_text, table, yard_name};
use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el};
use crate::app::ledger::history::Counts;
use crate::app::ledger::words::isolated;
use crate::app::wording::en_packet as wd;
use crate::app::wording::en_papers::{self as wp, record as w};
use crate::app::wording::{en, en_hive};
use crate::book::Book;
use crate::book::fold::fold_until;

/// The packet for the days from `from` to `to`; the keeper's notes only with `notes`, each line by itself with `every`.
pub(super) fn view(book: &Book, from: Day, to: Day, today: Day, notes: bool, every: bool) -> Bit {
    let mut bits = vec![el("h2").text(w::COVER).into()];
    cover(book, from, to, today, &mut bits);
    let (mut told, mut struck) = (0, 0);
    let mut lines = |part| {
        let lines = packet::lines(book, part, from, to, notes);
        told += lines.len();
        struck += lines.iter().filter(|line| line.counts != Counts::Yes).count();
        days(book, days::rows(book, lines, notes, every))
    };
    let parts = [
        hives(book, from, to),
        lines(Part::Work),
        lines(Part::Moves),
        lines(Part::Ends),
        lines(Part::Products),
    ];
    for (title, part) in w::PARTS.into_iter().zip(parts) {
        bits.push(el("h3").text(title).into());
        bits.push(part.into());
    }
    let all = if every { wd::all_alone(told) } else { wd::all(told, struck) };
    bits.push(el("p").class("small").text(&all).into());
    Bit::Many(bits)
}

fn none() -> El {
    el("p").text(wp::NONE)
}

fn cover(book: &Book, from: Day, to: Day, today: Day, bits: &mut Vec<Bit>) {
    let (keeper, registration) = (keeper_text(book, "name"), keeper_text(book, "registration"));
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
        (w::REGISTRATION, registration.as_deref().unwrap_or(w::BY_HAND)),
        (w::YARDS, &names),
        (w::PERIOD, &period),
        (wp::MADE, &en::date(today)),
    ] {
        bits.push(el("p").kid(el("strong").text(label)).text(value).into());
    }
}

/// Every hive that stood on a day of the period, as the book says for its last day; hives of which the same is told
/// in one row.
fn hives(book: &Book, from: Day, to: Day) -> El {
    let standing = fold_until(book.log(), Some(to));
    let own = standing.yards.keys().any(|yard| !yard.is_demo());
    let mut rows = Vec::new();
    for (yard, now) in standing.yards.iter().filter(|(id, _)| !(own && id.is_demo())) {
        let mut alike: Vec<([String; 3], Vec<String>)> = Vec::new();
        for (_, hive) in standing.hives_of(yard, false) {
            let gone = hive.ended.as_ref().is_some_and(|(_, day)| *day < from);
            if gone || hive.since > to {
                continue;
            }
            let out = hive.ended.as_ref().map(|(how, day)| en_hive::ended(how, *day));
            let told = [hive.boxes.len().to_string(), en::date(hive.since), out.unwrap_or_default()];
            let tag = isolated(&hive.tag);
            match alike.iter_mut().find(|(known, _)| *known == told) {
                Some((_, tags)) => tags.push(tag),
                None => alike.push((told, vec![tag])),
            }
        }
        for ([boxes, since, out], tags) in alike {
            let count = tags.len().to_string();
            let tags = days::joined(tags);
            rows.push(vec![
                isolated(&now.name).into(),
                tags.into(),
                count.into(),
                boxes.into(),
                since.into(),
                out.into(),
            ]);
        }
    }
    if rows.is_empty() {
        return none();
    }
    el("div").kid(table(&w::HIVES, rows)).kid(el("p").class("small").text(w::AS_OF))
}

fn days(book: &Book, days: Vec<DayRow<'_>>) -> El {
    let mut rows = Vec::new();
    for row in days {
        let mut what: Vec<Bit> = Vec::new();
        for told in row.told {
            let said = el("p");
            what.push(Bit::from(match told.counts {
                Counts::Yes => said.text(&told.said),
                Counts::Struck { .. } => said.kid(el("del").text(&told.said)).text(w::STRUCK),
                Counts::Corrected => said.kid(el("del").text(&told.said)).text(w::CORRECTED),
            }));
        }
        let yard = row.yard.map(|yard| yard_name(book, yard)).unwrap_or_default();
        let by: Vec<String> = row.by.iter().map(|by| isolated(by)).collect();
        rows.push(vec![en::date(row.day).into(), yard.into(), Bit::Many(what), by.join(", ").into()]);
    }
    if rows.is_empty() { none() } else { table(&w::LINES, rows) }
}
