//! The minutes of the trip, and which hives are left where they do not suffice.

use super::keep;
use super::page::Trip;
use crate::almanac::route::{Stop, route};
use crate::almanac::typed;
use crate::app::edge;
use crate::app::edge::locale;
use crate::app::el::{El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::ledger::words::isolated;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::card::Card;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::wording::en_minutes as w;
use crate::app::wording::en_typed;
use crate::book::id::ThingId;
use crate::book::pace::{pace, stops, way_there, ways};
use crate::book::record::Blank;

/// Most minutes anyone is at one hive.
const MOST_EACH: u32 = 240;

/// The card; nothing of it is worked out while it is shut.
pub(super) fn view(trip: Trip) -> El {
    let open = RwSignal::new(false);
    let text = |name| keep::text(trip.ui, name, "");
    let (each, leave, done) = (text("load-each"), text("load-leave"), text("load-done"));
    let card = Card {
        id: "load-minutes".to_owned(),
        title: w::TITLE,
        asks: w::ASKS,
        open: Memo::new(move || open.get()),
        toggle: Box::new(move || open.update(|open| *open = !*open)),
    };
    card.view(move || body(trip, each, (leave, done)))
}

fn body(trip: Trip, each: RwSignal<String>, clock: (RwSignal<String>, RwSignal<String>)) -> El {
    let drawn = edge::once_drawn();
    let learned = Memo::new(move || drawn.get().then(|| trip.records.book.with(pace)).flatten());
    let says = move || {
        let empty = each.with(|text| text.trim().is_empty());
        match (learned.get(), each.with(|text| typed::count(text, 1, MOST_EACH))) {
            (Some((minutes, of)), _) if empty => Says::Echo(w::learned(&locale::number(minutes, 1), of)),
            (None, _) if empty => Says::Echo(w::NOT_LEARNED.to_owned()),
            (_, Err(error)) => Says::Wrong(en_typed::count(error)),
            _ => Says::Nothing,
        }
    };
    let minutes = move || {
        if each.with(|text| text.trim().is_empty()) {
            return learned.get().map(|(minutes, _)| minutes);
        }
        each.with(|text| typed::count(text, 1, MOST_EACH)).ok().map(f64::from)
    };
    let late = move || {
        let (Some(leave), Some(done)) = (read(clock.0), read(clock.1)) else { return Says::Nothing };
        if done <= leave { Says::Wrong(w::BACKWARDS.to_owned()) } else { Says::Nothing }
    };
    let answer = Answer::of(w::MINUTES, move || worked(trip, minutes(), clock)).why(w::WHY).mark("load-time");
    let facts = live(move || {
        let yards = trip.yards();
        untrack(|| {
            let mut keys = el("p").class("keys");
            for yard in yards.iter().filter(|yard| !yard.is_demo()) {
                let name = name(trip, yard);
                keys = keys
                    .kid(link(w::facts_of(&name), &Place::Write(Blank::YardFacts, Some(yard.to_string()))));
            }
            keys
        })
    });
    el("div")
        .class("stack")
        .kid(
            el("div")
                .class("fields")
                .kid(Field::new("load-each", w::EACH, each).whole().says(says).view())
                .kid(Field::new("load-leave", w::LEAVE, clock.0).hour().view())
                .kid(Field::new("load-done", w::DONE, clock.1).hour().says(late).view()),
        )
        .kid(answer.view())
        .kid(facts)
}

/// The minute of the day; none while the field is empty.
fn read(text: RwSignal<String>) -> Option<u32> {
    text.with(|text| {
        let (hour, minute) = text.split_once(':')?;
        let (hour, minute) = (hour.parse::<u32>().ok()?, minute.get(..2)?.parse::<u32>().ok()?);
        (hour < 24 && minute < 60).then_some(hour * 60 + minute)
    })
}

fn name(trip: Trip, yard: &ThingId) -> String {
    trip.records.book.with(|book| isolated(book.standing().yards.get(yard).map_or("", |yard| &yard.name)))
}

fn worked(trip: Trip, each: Option<f64>, clock: (RwSignal<String>, RwSignal<String>)) -> Option<Worked> {
    let (day, each) = (trip.day().ok()?, each?);
    let yards = trip.yards();
    let (leave, done) = (read(clock.0), read(clock.1));
    let have = leave.zip(done).and_then(|(leave, done)| done.checked_sub(leave)).filter(|have| *have > 0);
    let mut lines = Vec::new();
    let found = trip.records.book.with(|book| {
        let standing = book.standing();
        let found = stops(standing, &yards, day);
        let there = |nth: usize| {
            let there = found.iter().filter(|(_, stop)| stop.yard == nth).count();
            u32::try_from(there).unwrap_or(u32::MAX)
        };
        // Where nobody wrote a way down under the facts of a yard, that of the last such trip.
        let led: Vec<&ThingId> =
            yards.iter().enumerate().filter(|(nth, _)| there(*nth) > 0).map(|(_, yard)| yard).collect();
        let trip = if led.iter().all(|yard| ways(standing, yard).0.is_none()) {
            let led: Vec<ThingId> = led.into_iter().cloned().collect();
            let parts = u32::try_from(led.len()).unwrap_or(u32::MAX);
            way_there(book, &led, day).filter(|_| parts > 0).map(|(on, way)| (on, way, parts))
        } else {
            None
        };
        if let Some((on, way, parts)) = trip {
            lines.push(w::way_of_trip(&locale::number(way, 0), on, parts));
        }
        let mut minutes = Vec::new();
        for (nth, yard) in yards.iter().enumerate() {
            let (known, set_up) = ways(standing, yard);
            let there = there(nth);
            let of_trip = trip.filter(|_| there > 0).map(|(_, way, parts)| way / f64::from(parts));
            let travel = known.or(of_trip);
            if there > 0 {
                let number = |minutes: Option<f64>| minutes.map(|minutes| locale::number(minutes, 1));
                let name = isolated(standing.yards.get(yard).map_or("", |yard| &yard.name));
                lines.push(w::yard(&name, number(travel), number(set_up), there, &locale::number(each, 1)));
            }
            minutes.push(travel.unwrap_or_default() + set_up.unwrap_or_default());
        }
        // What was written down of a trip is the way there and back, what is written down of a yard that there.
        if trip.is_none() && !found.is_empty() {
            lines.push(w::NOT_HOME.to_owned());
        }
        let only: Vec<Stop> = found.iter().map(|(_, stop)| *stop).collect();
        let all = route(&only, &minutes, each, None);
        let cut = route(&only, &minutes, each, have.map(f64::from));
        let left: Vec<String> = cut
            .left
            .iter()
            .filter_map(|at| {
                let now = standing.hives.get(&found.get(*at)?.0)?;
                let tag = isolated(&now.tag);
                // Two yards may each have a hive 2.
                let yard = standing.yards.get(&now.yard).filter(|_| yards.len() > 1);
                Some(yard.map_or_else(|| tag.clone(), |yard| w::hive_of(&tag, &isolated(&yard.name))))
            })
            .collect();
        (all.minutes(), cut.minutes(), left)
    });
    let (all, cut, left) = found;
    let big = w::about(up(all));
    if let Some(leave) = leave
        && have.is_none()
    {
        lines.push(w::back(leave, up(all)));
    }
    if let Some(have) = have {
        if left.is_empty() {
            lines.push(w::fits(have));
        } else {
            lines.push(w::short(have, up(all)));
            lines.push(w::left(&left.join(", "), up(cut)));
        }
    }
    Some((big, lines))
}

/// Up to a whole minute.
fn up(minutes: f64) -> u32 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // a float cast stops at the ends of u32
    let up = (minutes - 1e-6).ceil() as u32;
    up
}
