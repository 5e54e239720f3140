//! What the trip takes.

use super::buy::store_name;
use super::page::{Trip, cautions, percent, tick};
use super::sum::{self, Load, YardLoad};
use super::{keep, learned, minutes, store, ticks, typed as kept, which};
use crate::almanac::day::Day;
use crate::almanac::oil::{OilForVisit, Service};
use crate::almanac::quantity::Volume;
use crate::almanac::typed;
use crate::app::bench::read::MOST_PIECES;
use crate::app::bench::view::says;
use crate::app::el::{Bit, El, below, el, live};
use crate::app::graph::Memo;
use crate::app::ledger::words::{hive_name, isolated};
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::card::more;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard::step_sum;
use crate::app::wording::en_load as w;
use crate::app::wording::en_store as ws;
use crate::app::wording::en_yard_decides::card::wants;
use crate::book::baited::past_due;
use crate::book::store_room::Held;
use crate::book::urgent::Because;

/// What the ticked yards take on the day; none while one of them is missing.
pub(super) fn load(trip: Trip) -> Memo<Option<Load>> {
    Memo::new(move || {
        let day = trip.day().ok()?;
        let (yards, reserve) = (trip.yards(), trip.reserve());
        let unit = trip.ui.prefs.get().volume;
        let bottle = trip.bottle().map(crate::almanac::quantity::TypedVolume::volume);
        trip.records.book.with(|book| {
            (!yards.is_empty()).then(|| sum::load(book.standing(), &yards, day, reserve, bottle, unit))
        })
    })
}

/// The answers, then each yard.
pub(super) fn view(trip: Trip, load: Memo<Option<Load>>) -> Bit {
    // The usual number follows day and yards until the keeper types another one.
    let usual = Memo::new(move || load.with(|load| load.as_ref().map_or(0, |load| load.spare)));
    let spare = trip.spare;
    keep::follow(trip.ui, "load-spare".to_owned(), spare, Box::new(move || usual.get()));
    let none = live(move || trip.yards().is_empty().then(|| Notice::caution(w::NO_YARD).view()));
    let yards = move || {
        load.with(|load| {
            let mut bits = Vec::new();
            let day = trip.day().ok();
            for yard in load.as_ref().map_or(&[][..], |load| &load.yards) {
                yard_view(trip, yard, day, &mut bits);
            }
            Bit::Many(bits)
        })
    };
    let oil = move || {
        load.with(|load| load.as_ref().map(|load| (trip.ui.volume_up(load.carry), oil_lines(trip, load))))
    };
    let oil = Answer::of(w::OIL, oil).why(w::OIL_WHY);
    let traps = Answer::of(w::TRAPS, move || load.with(|load| load.as_ref().map(|load| bring(trip, load))));
    let traps = traps.why(w::SPARE_WHY);
    let spares = says::stepper("load-spare-1", w::SPARE, spare, 0, MOST_PIECES);
    let trip_card = el("section")
        .class("card")
        .kid(none)
        .kid(oil.mark("load-oil").view())
        .kid(which_hives(trip, load))
        .kid(learned::view(trip))
        .kid(cautions())
        .kid(traps.mark("load-traps").view())
        .kid(spares)
        .kid(below(move || things(trip)));
    let each = move || el("section").class("card").kid(el("h2").text(w::YARD_BY_YARD)).kid(live(yards));
    Bit::Many(vec![trip_card.into(), below(move || Bit::from([each(), minutes::view(trip)]))])
}

/// The hives that oil and traps are for, by name.
fn which_hives(trip: Trip, load: Memo<Option<Load>>) -> El {
    let list = move || {
        let mut list = Vec::new();
        let Ok(day) = trip.day() else { return list };
        load.with(|load| {
            for yard in load.as_ref().map_or(&[][..], |load| &load.yards) {
                trip.records.book.with(|book| {
                    let mut tags = Vec::new();
                    for tag in which::tags(book.standing(), yard, day) {
                        tags.push(isolated(tag));
                    }
                    let said = w::hives_of(&isolated(&yard.name), &tags);
                    list.push(Bit::One(el("li").text(&said)));
                });
            }
        });
        list
    };
    let list = below(move || live(list));
    more(w::WHICH, el("ul").class("plain-list").test_id("load-which").kid(list))
}

/// Lines of a sum that are still read on a phone.
const MOST_LINES: usize = 8;

fn oil_lines(trip: Trip, load: &Load) -> Vec<String> {
    if load.due == 0 && load.place == 0 {
        return vec![w::NOTHING.to_owned()];
    }
    let ui = trip.ui;
    let mut lines: Vec<String> = Vec::new();
    // A large yard has a line for each level found: they stand under its name further down.
    if let [only] = load.yards.as_slice()
        && only.need.oil.lines.len() <= MOST_LINES
    {
        need_lines(trip, &only.need.oil, &mut lines);
    } else {
        for yard in &load.yards {
            lines.push(w::yard_oil(&isolated(&yard.name), &ui.volume(yard.need.oil.sum)));
        }
    }
    lines.push(w::reserve(&percent(trip.reserve()), &ui.volume(load.with_reserve)));
    let carry = ui.volume_up(load.carry);
    // What is a full step already is not rounded.
    if ui.volume(load.with_reserve) != carry {
        lines.push(step_sum(&ui.carry_step(), &carry));
    }
    if let (Some(count), Some(bottle)) = (load.bottles, trip.bottle()) {
        lines.push(w::bottles(count, &ui.volume(bottle.volume())));
    }
    if load.unknown > 0 {
        lines.push(w::unknown(load.unknown));
    }
    if let Some(held) = trip.oil_in_store() {
        lines.push(w::oil_store(&ui.volume(held.oil()), &short(ui, load.carry, held.oil())));
        lines.extend(oil_since(ui, &held));
        if held.past > 0.0 {
            lines.push(w::oil_past(&millilitres(ui, held.past)));
        }
    }
    lines
}

/// What trips used of the oil in store, as a sum; nothing where the records alone tell what is there.
pub(super) fn oil_since(ui: Ui, held: &Held) -> Option<String> {
    ws::oil_since(held, &|oil| millilitres(ui, oil))
}

fn millilitres(ui: Ui, oil: f64) -> String {
    ui.volume(Volume::from_millilitres(oil).unwrap_or_default())
}

/// What is wanted beyond what is there; nothing where that is enough.
pub(super) fn short(ui: Ui, need: Volume, held: Volume) -> String {
    match Volume::from_millilitres(need.millilitres() - held.millilitres()) {
        Ok(short) if short > Volume::ZERO => ui.volume_up(short),
        _ => String::new(),
    }
}

fn need_lines(trip: Trip, oil: &OilForVisit, lines: &mut Vec<String>) {
    let ui = trip.ui;
    for line in &oil.lines {
        let each = ui.volume_in_sum(line.each, f64::from(line.traps), line.sum, false);
        let sum = ui.volume(line.sum);
        lines.push(match line.service {
            Service::Fill => w::oil_line(line.traps, &each, &sum, line.reusable),
            Service::First => w::first_line(line.traps, &each, &sum),
            Service::TopUp { from } => w::top_up_line(line.traps, &percent(from), &each, &sum),
        });
    }
}

fn bring(trip: Trip, load: &Load) -> Worked {
    let mut lines = vec![w::place(load.place)];
    let mut big = en::NO_ANSWER.to_owned();
    if load.anew > 0 {
        lines.push(w::anew(load.anew));
    }
    if let Some(spare) = trip.spares() {
        big = w::traps(load.to_place() + spare);
        lines.push(w::spare(spare));
    }
    if let Some((spare, day)) = trip.spares().zip(trip.day().ok()) {
        let yards = trip.yards();
        let room = trip.room(day, &yards);
        let kinds =
            trip.records.book.with(|book| store::by_kind(book.standing(), &yards, load, spare, &room));
        for kind in kinds {
            let typed = trip.ui.load.with(|all| {
                let typed = kept::of(all, &store_name(&kind.kind));
                typed.and_then(|text| typed::count(text, 0, MOST_PIECES).ok())
            });
            let known = kind.store.traps();
            let store = typed.unwrap_or(known);
            lines.push(w::of_kind(&isolated(&kind.name), kind.place, kind.anew, kind.spare, store));
            if store == known {
                lines.extend(ws::traps_since(&kind.store));
            }
        }
    }
    if load.disposable > 0 {
        lines.push(w::disposable(load.disposable));
    }
    (big, lines)
}

fn yard_view(trip: Trip, yard: &YardLoad, day: Option<Day>, bits: &mut Vec<Bit>) {
    let mut lines = Vec::new();
    if let Some(since) = yard.resting {
        lines.push(w::resting(&en::date(since)));
    } else {
        lines.push(w::hives_due(yard.need.hives, yard.hives));
        if yard.need.looks > 0 {
            lines.push(w::looks(yard.need.looks));
        }
        lines.push(w::traps_due(yard.need.traps, yard.need.missing - yard.need.wanting));
        if yard.need.wanting > 0 {
            lines.push(w::wanting(yard.need.wanting));
        }
        need_lines(trip, &yard.need.oil, &mut lines);
        if yard.need.oil.unknown > 0 {
            lines.push(w::unknown(yard.need.oil.unknown));
        }
    }
    // A card of the same day goes by no due date.
    trip.records.book.with(|book| {
        for (hive, urgent) in &yard.urgent {
            let bring = match urgent.because {
                Because::Slime if yard.fresh(hive) => w::BRING_FRESH,
                Because::Disease => w::BRING_NOTHING,
                Because::Dead if urgent.in_care => w::BRING_DEAD,
                _ => w::BRING,
            };
            lines.push([&hive_name(book, hive), ": ", wants(urgent.because), bring].concat());
        }
    });
    // Bait breeds beetles whether or not trap work rests.
    trip.records.book.with(|book| {
        let standing = book.standing();
        let (mut bait, mut patty) = (Vec::new(), Vec::new());
        for (hive, baited) in day.map(|day| past_due(standing, &yard.yard, day)).unwrap_or_default() {
            let tag = standing.hives.get(&hive).map_or("", |hive| &hive.tag);
            let of = if baited.patty { &mut patty } else { &mut bait };
            of.push(isolated(tag));
        }
        for (what, hives) in [(w::BAIT_OUT, bait), (w::PATTY_OUT, patty)] {
            if !hives.is_empty() {
                lines.push(w::out_by_then(what, &hives.join(", ")));
            }
        }
    });
    let list = el("ul").class("tabular").kids(lines.iter().map(|line| el("li").text(line)));
    bits.push(el("h3").text(&isolated(&yard.name)).into());
    bits.push(list.into());
}

/// A list to tick off while the car is loaded. Ticks outlive the page and are of one trip: another day begins with none.
fn things(trip: Trip) -> El {
    let (day, kept) = (trip.ui.trip_day, trip.ui.trip_ticks);
    let mut ticks = Vec::new();
    for (nth, thing) in w::THINGS.into_iter().enumerate() {
        let done = move || day.with(|day| kept.with(|kept| ticks::ticked(kept, day, nth)));
        let set = move |on: bool| {
            let now = day.with_untracked(|day| kept.with_untracked(|kept| ticks::with(kept, day, nth, on)));
            kept.set(now);
        };
        ticks.push(tick(thing, done, set));
    }
    el("fieldset").class("choice").kid(el("legend").text(w::ALSO)).kids(ticks)
}
