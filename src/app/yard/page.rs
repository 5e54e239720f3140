//! The walk through one yard.

use super::{rest, rows};
use crate::almanac::day::Day;
use crate::almanac::oil::USUAL_RESERVE;
use crate::almanac::quantity::TypedVolume;
use crate::app::edge::{clock, locale};
use crate::app::parts::key;
use crate::app::place::Place;
use crate::app::round::Walk;
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard as sums;
use crate::app::wording::{en, en_round as w};
use crate::book::id::ThingId;
use crate::book::round::{self, HiveDue, Row, YardNeed};
use crate::book::standing::Standing;
use leptos::prelude::*;

/// What `yard` needs on `day`, with the reserve and the bottle of the keeper.
pub fn need(standing: &Standing, yard: &ThingId, day: Day) -> YardNeed {
    let keeper = &standing.keeper;
    let bottle = keeper.bottle.map(TypedVolume::volume);
    round::yard_need(standing, yard, day, keeper.reserve.unwrap_or(USUAL_RESERVE), bottle)
}

/// The page of a yard. `alone` when there is no other.
pub fn view(walk: Walk, yard: &ThingId, alone: bool) -> AnyView {
    let book = walk.records().book;
    let rows: Memo<Vec<Row>> = {
        let yard = yard.clone();
        Memo::new(move |_| {
            let today = walk.today.get();
            book.with(|book| round::rows(book.standing(), &yard, today))
        })
    };
    let named = {
        let yard = yard.clone();
        Memo::new(move |_| {
            book.with(|book| {
                let now = book.standing().yards.get(&yard);
                now.map(|now| (now.name.clone(), now.zone.clone(), now.paused)).unwrap_or_default()
            })
        })
    };
    let name = move || named.with(|(name, ..)| name.clone());
    let zone = move || {
        named.with(|(_, zone, _)| {
            (*zone != clock::own_zone()).then(|| view! { <p class="small">{w::zone(zone)}</p> })
        })
    };
    let resting = move || named.with(|(.., paused)| *paused);
    let state = move || rows.with(|rows| w::progress(round::visit(rows)));
    let empty = Memo::new(move |_| rows.with(Vec::is_empty));
    let total_of = yard.clone();
    let total = move || match resting() {
        Some(since) => view! { <p class="lead" data-testid="yard-total">{w::resting(since)}</p> }.into_any(),
        None => total(walk, rows, total_of.clone()),
    };
    view! {
        <h1 class="place-name" tabindex="-1">
            <bdi>{name}</bdi>
        </h1>
        <p class="yard-day">{move || en::date(walk.today.get())}</p>
        {zone}
        {total}
        <p class="visit-state" data-testid="visit-state" role="status">
            {state}
        </p>
        {move || empty.get().then(|| view! { <p>{w::NO_HIVES}</p> })}
        {rows::view(walk, rows)}
        {rest::view(walk, yard.clone(), rows)}
        <p class="keys">
            {(!alone).then(|| key::link(w::ALL_YARDS, &Place::Round))}
            {alone
                .then(|| key::link(w::ADD_YARD, &Place::Bench(Some(crate::app::bench::Sum::Yard))))}
        </p>
        {crate::app::round::page::demo_out(walk)}
    }
    .into_any()
}

/// What to carry today, with the sum on tap.
fn total(walk: Walk, rows: Memo<Vec<Row>>, yard: ThingId) -> AnyView {
    let need = Memo::new(move |_| {
        let today = walk.today.get();
        walk.records().book.with(|book| need(book.standing(), &yard, today))
    });
    let words = move || {
        let ui = Ui::get();
        need.with(|need| {
            if need.hives == 0 {
                nothing(walk, rows)
            } else {
                w::total(need.hives, need.traps, &ui.volume_up(need.oil.carry))
            }
        })
    };
    let lines = move || {
        let lines = need.with(lines).into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
        (need.with(|need| need.hives > 0)).then(|| {
            view! {
                <details class="why">
                    <summary>{w::SUM}</summary>
                    <ul class="answer-sum">{lines}</ul>
                </details>
            }
        })
    };
    view! {
        <div class="yard-total" data-testid="yard-total">
            <p class="lead">{words}</p>
            {lines}
        </div>
    }
    .into_any()
}

fn nothing(walk: Walk, rows: Memo<Vec<Row>>) -> String {
    let today = walk.today.get();
    let next = rows.with(|rows| {
        let dues = rows.iter().filter_map(|row| match &row.due {
            HiveDue::Due { on, .. } => Some((*on, row.hive.clone())),
            _ => None,
        });
        dues.min_by_key(|(on, _)| *on)
    });
    let tag = |hive: &ThingId| {
        walk.records().book.with(|book| book.standing().hives.get(hive).map(|now| now.tag.clone()))
    };
    let next = next.and_then(|(on, hive)| Some((on, tag(&hive)?)));
    w::nothing_due(next.as_ref().map(|(on, tag)| (*on, tag.as_str())), today)
}

/// The sum behind the oil to carry.
fn lines(need: &YardNeed) -> Vec<String> {
    let ui = Ui::get();
    let percent = |share: f64| locale::percent(share, 0);
    let oil = &need.oil;
    let mut lines: Vec<String> = oil
        .lines
        .iter()
        .map(|line| {
            let (each, sum) = (ui.volume(line.each), ui.volume(line.sum));
            w::oil_line(line.traps, &each, &sum, &percent(line.filled_from), &percent(line.filled_to))
        })
        .collect();
    lines.push(sums::reserve_sum(&percent(oil.reserve.fraction()), &ui.volume(oil.with_reserve)));
    lines.push(sums::step_sum(&ui.volume_up(oil.carry)));
    if oil.unknown > 0 {
        lines.push(w::unknown_capacity(oil.unknown));
    }
    if need.missing > 0 {
        lines.push(w::missing_traps(need.missing));
    }
    lines
}
