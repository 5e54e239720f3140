//! Hive cards: one for under the lid of each hive. No name of a keeper, no note, no place.

use super::packet;
use super::sheet::{demo_mark, list};
use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el};
use crate::app::ledger::history::{self, Counts, Line};
use crate::app::ledger::words;
use crate::app::parts::drawing::box_plan;
use crate::app::wording::en_papers::card as w;
use crate::app::wording::{en, en_hive, en_round};
use crate::book::Book;
use crate::book::entry::What;
use crate::book::id::ThingId;
use crate::book::record::Blank;
use crate::book::round::{self, HiveDue};
use crate::book::standing::HiveNow;

/// Looks on a card.
const LOOKS: usize = 5;

/// The cards of `yard`, or of one hive of it.
pub(super) fn view(book: &Book, yard: &ThingId, only: Option<&ThingId>, today: Day) -> Bit {
    let standing = book.standing();
    let lines = history::lines(book, Some(yard));
    let mut bits = vec![demo_mark(yard).into()];
    for (id, hive) in standing.hives_of(yard, true) {
        if only.is_none_or(|only| only == id) {
            bits.push(card(book, id, hive, &lines, today).into());
        }
    }
    Bit::Many(bits)
}

fn card(book: &Book, id: &ThingId, hive: &HiveNow, lines: &[Line<'_>], today: Day) -> El {
    let standing = book.standing();
    let due = round::hive_due(standing, hive, round::yard_loss(standing, &hive.yard), today);
    let said = match &due {
        HiveDue::Due { on, .. } => w::due(*on),
        other => en_round::due(other, today),
    };
    let yard = standing.yards.get(&hive.yard).map_or("", |yard| yard.name.as_str());
    let look = round::look_by(hive).filter(|_| !matches!(due, HiveDue::Resting { .. }));
    let look = look.map(|by| el("p").text(&w::look_by(by)));
    let mut plans = el("div").class("plans");
    for (at, part) in hive.boxes.iter().enumerate().rev() {
        let spots: Vec<_> = part.traps.iter().map(|trap| trap.spot).collect();
        let plan = el("div").kid(el("p").text(&en_hive::box_title(at + 1, part.depth)));
        plans = plans.kid(plan.kid(box_plan(&spots, hive.size)));
    }
    let mut looks = Vec::new();
    for line in lines {
        let entry = line.entry;
        let look = match &entry.what {
            What::Check(_) | What::Skip { .. } => true,
            What::Record(record) => record.blank == Blank::Look,
            _ => false,
        };
        if look
            && line.counts == Counts::Yes
            && entry.hive().as_ref().map(|hive| book.standing().kept(hive)) == Some(id)
            && looks.len() < LOOKS
        {
            looks.push([&en::date(entry.day), ": ", &packet::said(book, entry, false)].concat());
        }
    }
    if looks.is_empty() {
        looks.push(w::NO_LOOKS.to_owned());
    }
    el("section")
        .class("hive-card")
        .kid(el("h2").text(&en_round::hive(&hive.tag)))
        // Two yards may both have a hive 1, and paper is read on other days than it was printed.
        .kid(el("p").class("small").text(&w::of(&words::isolated(yard), today)))
        .kid(el("p").class("lead").text(&said))
        .kid(look)
        .kid(plans)
        .kid(el("h3").text(w::LOOKS))
        .kid(list("plain", &looks))
}
