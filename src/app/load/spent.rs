//! What trap work cost over some days, by the book.

use super::keep;
use super::page::Trip;
use crate::almanac::day::Day;
use crate::almanac::typed;
use crate::app::bench::view::cost::{each_hive, lines};
use crate::app::edge::locale;
use crate::app::el::{El, el};
use crate::app::graph::{Memo, RwSignal};
use crate::app::kinds::names;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::card::Card;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::wording::en_cost as w;
use crate::app::wording::en_typed;
use crate::book::record::Blank;
use crate::book::spent::Spent;

/// The card; nothing of it is worked out while it is shut.
pub(super) fn view(trip: Trip) -> El {
    let open = RwSignal::new(false);
    let today = trip.ui.today.get_untracked();
    let first = trip.records.book.with_untracked(|book| book.standing().keeper.season_start);
    let from = keep::text(trip.ui, "load-from", &season(first, today).to_string());
    let to = keep::text(trip.ui, "load-to", &today.to_string());
    let card = Card {
        id: "load-cost".to_owned(),
        title: w::TITLE,
        asks: w::ASKS,
        open: Memo::new(move || open.get()),
        toggle: Box::new(move || open.update(|open| *open = !*open)),
    };
    card.view(move || body(trip, from, to))
}

/// The first day of the season that `today` is in; of the year where the keeper said nothing.
fn season(first: Option<u16>, today: Day) -> Day {
    let first = u32::from(first.unwrap_or(101));
    // A leap day comes every fourth year, and a file of other hands may hold no day at all.
    let of = |year| {
        let day = |month, day| Day::from_ymd(year, month, day);
        day(first / 100, first % 100).or_else(|_| day(3, 1)).unwrap_or(today)
    };
    let this = of(today.year());
    if this <= today { this } else { of(today.year() - 1) }
}

fn body(trip: Trip, from: RwSignal<String>, to: RwSignal<String>) -> El {
    let day = move |text: RwSignal<String>| text.with(|text| typed::day_done(text, trip.ui.today.get()));
    let says = move |text: RwSignal<String>| match day(text) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    let backwards = move || match (day(from), day(to)) {
        (Ok(from), Ok(to)) if to < from => Says::Wrong(w::BACKWARDS.to_owned()),
        _ => says(to),
    };
    let answer = move || {
        let (from, to) = (day(from).ok()?, day(to).ok()?);
        (from <= to).then(|| worked(trip, from, to))
    };
    el("div")
        .class("stack")
        .kid(
            el("div")
                .class("fields")
                .kid(Field::new("load-from", w::FROM, from).day().says(move || says(from)).view())
                .kid(Field::new("load-to", w::TO, to).day().says(backwards).view()),
        )
        .kid(Answer::of(w::EACH_HIVE, answer).why(w::WHY).mark("load-spent").view())
        .kid(
            el("p")
                .class("keys")
                .kid(link(w::COSTS_KEY, &Place::Write(Blank::Costs, None)))
                .kid(link(w::STOCK_KEY, &Place::Write(Blank::Stock, None))),
        )
}

fn worked(trip: Trip, from: Day, to: Day) -> Worked {
    // The keeper's own hives together; the invented ones only where there are no others.
    let demo = trip.records.book.with(|book| {
        let standing = book.standing();
        let own = standing.open_yards().any(|(id, _)| !id.is_demo());
        standing.open_yards().map(|(id, _)| id).find(|_| !own).cloned()
    });
    let spent = trip.records.book.with(|book| Spent::of(book, demo.as_ref(), from, to, &names));
    let cost = spent.cost();
    let number = |value: f64| locale::number(value, 1);
    let (trips, hours) = (number(spent.trips), number(spent.hours));
    let mut said = vec![w::counted_on(&spent, &trips, &hours)];
    said.extend(lines([spent.used_up, spent.durable, spent.travel, spent.work], &cost));
    for of in spent.missing {
        said.push(w::missing(of));
    }
    (each_hive(&cost), said)
}
