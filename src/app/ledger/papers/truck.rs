//! The truck sheet: what to load, and the hives with room for the pen.

use super::sheet::{demo_mark, list, table, yard_name};
use crate::almanac::day::Day;
use crate::almanac::oil::USUAL_RESERVE;
use crate::almanac::quantity::TypedVolume;
use crate::app::el::{Bit, El, el};
use crate::app::ledger::words::{hive_name, isolated};
use crate::app::load::{sum, ticks};
use crate::app::state::Ui;
use crate::app::wording::en_hive::depth_word;
use crate::app::wording::en_papers::truck as w;
use crate::app::wording::en_yard_decides::card::wants;
use crate::app::wording::{en, en_load, en_round};
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::round::{self, HiveDue, Row};
use crate::book::standing::HiveNow;
use crate::book::urgent;

/// The sheet for a walk through `yard` on `day`.
pub(super) fn view(ui: Ui, book: &Book, yard: &ThingId, day: Day) -> Bit {
    let standing = book.standing();
    let rows = round::rows(standing, yard, day);
    let urgent = urgent::of_yard(standing, yard, day);
    let wanted = |of: &ThingId| urgent.iter().any(|(hive, _)| hive == of);
    let rows =
        rows.iter().filter_map(|row| Some(hive(row, standing.hives.get(&row.hive)?, day, wanted(&row.hive))));
    let rows = rows.collect();
    // What a helper must know before the lid is off stands above the table, dead hives included.
    let mut today = Vec::new();
    for (hive, urgent) in &urgent {
        today.push([&*hive_name(book, hive), ": ", wants(urgent.because)].concat());
    }
    Bit::Many(vec![
        el("h2").text(&[&yard_name(book, yard), ", ", &en::date(day)].concat()).into(),
        demo_mark(yard).into(),
        el("h3").text(w::LOAD).into(),
        to_load(ui, book, yard, day).into(),
        el("h3").text(w::HIVES).into(),
        (!today.is_empty()).then(|| list("plain-list", &today).test_id("truck-urgent")).into(),
        table(&w::COLUMNS, rows).into(),
        el("p").class("small").text(w::MARKS).into(),
        el("p").class("small").text(w::PEN).into(),
    ])
}

/// The list to tick off; what was ticked for a trip of that day is ticked here too.
fn to_load(ui: Ui, book: &Book, yard: &ThingId, day: Day) -> El {
    let keeper = &book.standing().keeper;
    let unit = ui.prefs.get().volume;
    let reserve = keeper.reserve.unwrap_or(USUAL_RESERVE);
    let bottle = keeper.bottle.map(TypedVolume::volume);
    let load = sum::load(book.standing(), std::slice::from_ref(yard), day, reserve, bottle, unit);
    let mut oil = [en_load::OIL, ": ", &ui.volume_up(load.carry)].concat();
    if let (Some(count), Some(bottle)) = (load.bottles, bottle) {
        en::put(&mut oil, ", ");
        en::put(&mut oil, &en_load::bottles(count, &ui.volume(bottle)));
    }
    let all = en_load::traps(load.to_place() + load.spare);
    let mut traps = [en_load::TRAPS, ": ", &all, ", ", &en_load::place(load.place)].concat();
    for more in [en_load::anew(load.anew), en_load::spare(load.spare)] {
        if !more.is_empty() {
            en::put(&mut traps, ", ");
            en::put(&mut traps, &more);
        }
    }
    let mut lines = vec![oil, traps];
    if load.disposable > 0 {
        lines.push(en_load::disposable(load.disposable));
    }
    let mut list = list("paper-ticks", &lines);
    let of_day = day.to_string();
    for (nth, thing) in en_load::THINGS.into_iter().enumerate() {
        let line = el("li").text(thing);
        let ticked = ui.trip_ticks.with(|kept| ticks::ticked(kept, &of_day, nth));
        list = list.kid(if ticked { line.class("paper-ticked") } else { line });
    }
    list
}

fn hive(row: &Row, hive: &HiveNow, day: Day, urgent: bool) -> Vec<Bit> {
    let due = match row.due {
        HiveDue::Due { on, .. } => en_round::near(on, day),
        _ => en::NO_ANSWER.to_owned(),
    };
    let mut boxes = String::new();
    for part in &hive.boxes {
        boxes.extend(depth_word(part.depth).chars().next().map(|c| c.to_ascii_uppercase()));
    }
    let mut traps = hive.traps().count().to_string();
    if hive.wanting() > 0 {
        traps = [&traps, " + ", &hive.wanting().to_string()].concat();
    }
    let late = matches!(row.due, HiveDue::Due { on, .. } if on < day);
    let mark = if urgent || late || row.trouble.is_some() {
        w::MARK_NOW
    } else if row.skipped.is_some() {
        w::MARK_SKIPPED
    } else if row.recheck.is_some() {
        w::MARK_LOOK
    } else {
        ""
    };
    let last = row.days_since.map(|days| en_round::near(day.plus(-days), day)).unwrap_or_default();
    let tag = el("strong").text(&isolated(&hive.tag));
    vec![
        mark.into(),
        tag.into(),
        boxes.into(),
        traps.into(),
        last.into(),
        due.into(),
        Bit::Nothing,
        Bit::Nothing,
        Bit::Nothing,
        Bit::Nothing,
    ]
}
