//! Dates as words, each with its bar.

use super::told::{Row, Told};
use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el};
use crate::app::parts::drawing::{Stretch, stage_bar};
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::round::form::keys;
use crate::app::wording::en_beetle as w;

/// The rows under each other, on one axis that begins with `since` or with what came before it.
pub fn rows(rows: &[Row], since: Day, today: Day) -> El {
    let (mut first, mut last) = (since, since);
    for (earliest, _, latest) in rows.iter().filter_map(|row| row.days) {
        first = first.min(earliest);
        last = last.max(latest);
    }
    // The axis ends with the week of the last day there is.
    let days = (last.days_since(first) / 7 + 1) * 7;
    let mut items = el("ul").class("date-rows");
    for row in rows {
        let words = el("p").kid(el("strong").text(&row.label)).text(": ").text(&row.said);
        let bar = row.days.map(|(from, likely, to)| {
            let at = |day: Day| day.days_since(first);
            let (from, likely, to) = (at(from), likely.map(at), at(to));
            stage_bar(days, today.days_since(first), Stretch { from, likely, to })
        });
        items = items.kid(el("li").kid(words).kid(bar));
    }
    items
}

/// What is under way in a hive: what was found there, and the dates. `named` says which hive.
pub fn card(told: &Told, today: Day, named: bool) -> El {
    // On paper there are no keys, and the name has to stand there all the same.
    let name = named.then(|| el("h3").text(&told.name));
    let way = named.then(|| keys(link(w::TO_HIVE, &Place::Hive(told.hive.to_string()))));
    let finds = el("ul").class("plain-list").kids(told.finds.iter().map(|find| el("li").text(find)));
    let dates = rows(&told.rows, told.since.unwrap_or(today), today);
    el("div").class("under-way").test_id("under-way").kid(name).kid(finds).kid(dates).kid(way)
}

/// Everything under way in hives where larvae were seen, then those where adults alone were, a line each.
pub fn all(told: &[Told], today: Day) -> Bit {
    let mut bits: Vec<Bit> = Vec::new();
    for way in told.iter().filter(|way| way.larvae) {
        bits.push(card(way, today, true).into());
    }
    let mut adults = el("ul").class("plain-list");
    let mut any = false;
    for way in told.iter().filter(|way| !way.larvae) {
        let Some(by) = way.look_by else { continue };
        any = true;
        adults = adults.kid(el("li").text(&[&way.name, ": ", &w::look_before(by, today)].concat()));
    }
    if any {
        bits.push(el("h3").text(w::ADULTS).into());
        bits.push(adults.into());
    }
    Bit::Many(bits)
}
