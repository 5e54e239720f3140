//! The walk through one yard.

use super::{beside, keys, rest, rows};
use crate::almanac::day::Day;
use crate::almanac::oil::USUAL_RESERVE;
use crate::app::edge::{clock, locale};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, untrack};
use crate::app::load::sum::slimed;
use crate::app::place::{Paper, Place};
use crate::app::round::walk::first_due;
use crate::app::round::{Walk, bits, form};
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard as sums;
use crate::app::wording::en_hand_over::HAND_OVER;
use crate::app::wording::{en, en_catch, en_hive, en_round as w};
use crate::book::id::ThingId;
use crate::book::round::{self, Row, YardNeed};
use crate::book::standing::Standing;
use crate::book::urgent::{self, Urgent};

/// What `yard` needs on `day`, with the reserve of the keeper, where its hives want what `urgent` says: what Load
/// counts too.
pub fn need(standing: &Standing, yard: &ThingId, day: Day, urgent: &[(ThingId, Urgent)]) -> YardNeed {
    let reserve = standing.keeper.reserve.unwrap_or(USUAL_RESERVE);
    round::yard_need_with(standing, yard, day, reserve, &slimed(urgent))
}

/// The page of a yard. `alone` when there is no other.
pub fn view(walk: Walk, yard: &ThingId, alone: bool) -> Bit {
    let book = walk.records.book;
    let rows: Memo<Vec<Row>> = {
        let yard = yard.clone();
        Memo::new(move || {
            let today = walk.today.get();
            book.with(|book| round::rows(book.standing(), &yard, today))
        })
    };
    let named = {
        let yard = yard.clone();
        Memo::new(move || {
            book.with(|book| {
                let now = book.standing().yards.get(&yard);
                now.map(|now| (now.name.clone(), now.zone.clone(), now.paused)).unwrap_or_default()
            })
        })
    };
    let zone = move || {
        let zone = named.with(|(_, zone, _)| zone.clone());
        (zone != clock::own_zone()).then(|| el("p").class("small").text(&w::zone(&zone)))
    };
    let total_of = yard.clone();
    let total = live(move || match named.with(|(.., paused)| *paused) {
        Some(since) => el("p").class("lead").test_id("yard-total").text(&w::resting(since)),
        None => untrack(|| total(walk, rows, total_of.clone())),
    });
    let state = el("p")
        .class("visit-state")
        .attr("role", "status")
        .test_id("visit-state")
        .live_text(move || rows.with(|rows| w::progress(round::visit(rows))));
    let beside = beside::of_yard(walk, yard);
    let besides = live(move || {
        let said = beside.with(|beside| book.with_untracked(|book| beside::of_all(book.standing(), beside)));
        (!said.is_empty()).then(|| el("p").class("lead").test_id("yard-beside").text(&said))
    });
    let empty = Memo::new(move || rows.with(Vec::is_empty));
    let back = (!alone).then(|| el("p").class("back").kid(form::big_link(w::ALL_YARDS, &Place::Round)));
    let sheet = Place::Paper(Paper::Truck, Some(yard.to_string()));
    let give = Place::HandOver(Some(yard.to_string()));
    let catch = Place::Catch(Some(yard.to_string()));
    let name = el("bdi").live_text(move || named.with(|(name, ..)| name.clone()));
    bits![
        back,
        el("h1").class("place-name").attr("tabindex", "-1").kid(name),
        el("p").class("yard-day").live_text(move || en::date(walk.today.get())),
        live(zone),
        total,
        state,
        live(move || empty.get().then(|| el("p").text(w::NO_HIVES))),
        besides,
        rows::view(walk, rows, beside),
        rest::view(walk, yard.clone(), rows),
        keys::view(walk, yard),
        form::keys([
            Bit::from(form::big_link(en_hive::PRINT, &sheet)),
            form::big_link(HAND_OVER, &give).into(),
            form::big_link(en_catch::TITLE, &catch).test_id("yard-catch").into(),
            alone.then(form::add_yard).into()
        ]),
    ]
}

/// What to carry today, with the sum on tap.
fn total(walk: Walk, rows: Memo<Vec<Row>>, yard: ThingId) -> El {
    let ui = Ui::get();
    // Asked anew as the rows ask what stands beside the traps, and not at every tap.
    let (drawn, turn, of) = (ui.drawn, walk.records.turn(), yard.clone());
    let urgent = Memo::new(move || {
        let (today, _) = (walk.today.get(), turn.get());
        let all = || walk.records.book.with_untracked(|book| urgent::of_yard(book.standing(), &of, today));
        drawn.get().then(all).unwrap_or_default()
    });
    let said = Memo::new(move || {
        let today = walk.today.get();
        let need =
            urgent.with(|urgent| walk.records.book.with(|book| need(book.standing(), &yard, today, urgent)));
        if need.hives == 0 && need.wanting == 0 {
            let nothing = nothing(walk, rows);
            let said = if need.looks > 0 { w::looks_first(need.looks, &nothing) } else { nothing };
            return (said, Vec::new());
        }
        (w::total(&need, &ui.carried(need.oil.with_reserve)), lines(ui, &need))
    });
    let words = move || said.with(|(words, _)| words.clone());
    let sum = live(move || {
        let (_, lines) = said.get();
        (!lines.is_empty()).then(|| {
            let mut sum = el("ul").class("answer-sum");
            for line in lines {
                sum = sum.kid(el("li").text(&line));
            }
            el("details").class("why").kid(el("summary").text(w::SUM)).kid(sum)
        })
    });
    el("div").class("yard-total").test_id("yard-total").kid(el("p").class("lead").live_text(words)).kid(sum)
}

fn nothing(walk: Walk, rows: Memo<Vec<Row>>) -> String {
    let today = walk.today.get();
    rows.with(|rows| {
        walk.records.book.with(|book| {
            let next = first_due(rows)
                .and_then(|(on, hive, many)| Some((on, book.standing().hives.get(hive)?.tag.as_str(), many)));
            w::nothing_due(next, today)
        })
    })
}

/// The sum behind the oil to carry.
fn lines(ui: Ui, need: &YardNeed) -> Vec<String> {
    let percent = |share: f64| locale::percent(share, 0);
    let oil = &need.oil;
    let mut lines = Vec::new();
    for line in &oil.lines {
        let each = ui.volume_in_sum(line.each, f64::from(line.traps), line.sum, false);
        let sum = ui.volume(line.sum);
        let (from, to) = (percent(line.filled_from), percent(line.filled_to));
        lines.push(w::oil_line(line.traps, &each, &sum, &from, &to));
    }
    lines.push(sums::reserve_sum(&percent(oil.reserve.fraction()), &ui.volume(oil.with_reserve)));
    let carry = ui.carried(oil.with_reserve);
    // What is a full step already is not rounded.
    if ui.volume(oil.with_reserve) != carry {
        lines.push(sums::step_sum(&ui.carry_step(), &carry));
    }
    if oil.unknown > 0 {
        lines.push(w::unknown_capacity(oil.unknown));
    }
    let anew = u32::try_from(need.anew.len()).unwrap_or(u32::MAX);
    if need.missing > 0 || anew > 0 {
        lines.push(w::new_traps(need.missing, anew));
    }
    lines
}
