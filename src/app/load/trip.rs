//! What the trip takes.

use super::page::{Trip, cautions, percent};
use super::sum::{self, Load, YardLoad};
use crate::almanac::oil::{OilForVisit, Service};
use crate::app::ledger::words::isolated;
use crate::app::parts::answer::Answer;
use crate::app::parts::notice::Notice;
use crate::app::wording::en;
use crate::app::wording::en_load as w;
use leptos::prelude::*;

/// The answers, then each yard.
pub(super) fn view(trip: Trip) -> AnyView {
    let load = Memo::new(move |_| {
        let day = trip.day().ok()?;
        let (yards, reserve) = (trip.yards(), trip.reserve());
        let bottle = trip.bottle().map(crate::almanac::quantity::TypedVolume::volume);
        trip.records.book.with(|book| {
            (!yards.is_empty()).then(|| sum::load(book.standing(), &yards, day, reserve, bottle))
        })
    });
    let big = move |say: fn(Trip, &Load) -> String| {
        move || {
            load.with(|load| load.as_ref().map_or_else(|| en::NO_ANSWER.to_owned(), |load| say(trip, load)))
        }
    };
    let sum = move |say: fn(Trip, &Load) -> Vec<String>| {
        move || load.with(|load| load.as_ref().map(|load| say(trip, load)).unwrap_or_default())
    };
    let none = move || {
        (load.with(Option::is_none) && trip.yards().is_empty()).then(|| Notice::caution(w::NO_YARD).view())
    };
    let yards = move || {
        load.with(|load| {
            let yards: Vec<AnyView> =
                load.iter().flat_map(|load| &load.yards).map(|yard| yard_view(trip, yard)).collect();
            yards
        })
    };
    view! {
        <section class="card">
            {none}
            <div data-testid="load-oil">
                {Answer::new(w::OIL, big(|trip, load| trip.ui.volume_up(load.carry)))
                    .sum(sum(oil_lines))
                    .why(w::OIL_WHY)
                    .view()}
            </div>
            {cautions()}
            <div data-testid="load-traps">
                {Answer::new(w::TRAPS, big(|_, load| w::traps(load.place + load.spare)))
                    .sum(sum(|_, load| trap_lines(load)))
                    .why(w::SPARE_WHY)
                    .view()}
            </div>
            {things()}
        </section>
        <section class="card">
            <h2>{w::YARD_BY_YARD}</h2>
            {yards}
        </section>
    }
    .into_any()
}

fn oil_lines(trip: Trip, load: &Load) -> Vec<String> {
    if load.due == 0 {
        return vec![w::NOTHING.to_owned()];
    }
    let ui = trip.ui;
    let mut lines: Vec<String> = Vec::new();
    if let [only] = load.yards.as_slice() {
        lines.extend(need_lines(trip, &only.need.oil));
    } else {
        lines.extend(
            load.yards.iter().map(|yard| w::yard_oil(&isolated(&yard.name), &ui.volume(yard.need.oil.sum))),
        );
    }
    lines.push(w::reserve(&percent(trip.reserve()), &ui.volume(load.with_reserve)));
    lines.push(w::rounded(&ui.volume_up(load.carry)));
    if let (Some(count), Some(bottle)) = (load.bottles, trip.bottle()) {
        lines.push(w::bottles(count, &ui.volume(bottle.volume())));
    }
    if load.unknown > 0 {
        lines.push(w::unknown(load.unknown));
    }
    lines
}

fn need_lines(trip: Trip, oil: &OilForVisit) -> Vec<String> {
    let ui = trip.ui;
    oil.lines
        .iter()
        .map(|line| {
            let (each, sum) = (ui.volume(line.each), ui.volume(line.sum));
            match line.service {
                Service::Fill => w::oil_line(line.traps, &each, &sum),
                Service::TopUp { from } => w::top_up_line(line.traps, &percent(from), &each, &sum),
            }
        })
        .collect()
}

fn trap_lines(load: &Load) -> Vec<String> {
    let mut lines = vec![w::place(load.place), w::spare(load.spare)];
    if load.disposable > 0 {
        lines.push(w::disposable(load.disposable));
    }
    lines
}

fn yard_view(trip: Trip, yard: &YardLoad) -> AnyView {
    let mut lines = Vec::new();
    match yard.resting {
        Some(since) => lines.push(w::resting(&en::date(since))),
        None => {
            lines.push(w::hives_due(yard.need.hives, yard.hives));
            lines.push(w::traps_due(yard.need.traps, yard.need.missing));
            if yard.wanting > 0 {
                lines.push(w::wanting(yard.wanting));
            }
            lines.extend(need_lines(trip, &yard.need.oil));
            if yard.need.oil.unknown > 0 {
                lines.push(w::unknown(yard.need.oil.unknown));
            }
        }
    }
    let lines = lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
    view! {
        <h3>{isolated(&yard.name)}</h3>
        <ul class="tabular">{lines}</ul>
    }
    .into_any()
}

/// A list to tick off while the car is loaded.
fn things() -> AnyView {
    let ticks = w::THINGS.map(|thing| {
        view! {
            <label class="tick">
                <input type="checkbox" autocomplete="off" />
                <span>{thing}</span>
            </label>
        }
    });
    view! {
        <fieldset class="choice">
            <legend>{w::ALSO}</legend>
            {ticks.into_iter().collect_view()}
        </fieldset>
    }
    .into_any()
}
