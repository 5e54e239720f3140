//! The place itself: all yards, one yard, or one hive, as the address says.

use super::form::{add_yard, big, big_link, clear, keys};
use super::state::Walk;
use super::walk;
use crate::app::bench::Sum;
use crate::app::bench::keep::KeepPlan;
use crate::app::edge::clock;
use crate::app::el::{Bit, El, each, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, on_cleanup, untrack};
use crate::app::place::{Place, Question, Section};
use crate::app::records::Stop;
use crate::app::state::Ui;
use crate::app::wording::{en, en_round as w};
use crate::app::{decide, hive, yard};
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::round;
use crate::book::urgent;
use crate::book::write::{HivePlan, KindChoice};

/// The Round.
pub fn view(ui: Ui) -> Bit {
    let walk = Walk::get();
    on_cleanup(move || follow_zone(ui, None));
    let shown = Memo::new(move || shown(ui, walk));
    live(move || {
        let shown = shown.get();
        untrack(|| {
            settle(ui, walk, &shown);
            match shown {
                Shown::Elsewhere => Bit::Nothing,
                Shown::Start => start(walk),
                Shown::Yards => yards(walk),
                Shown::Yard(id, alone) => yard::view(walk, &id, alone),
                Shown::Hive(id) => hive::view(walk, &id),
                Shown::Decide(id, asked) => decide::view(ui, walk, &id, asked),
                Shown::Lost => lost(),
            }
        })
    })
}

/// What the address and the book come to.
#[derive(Clone, PartialEq)]
enum Shown {
    Elsewhere,
    Start,
    Yards,
    Yard(ThingId, bool),
    Hive(ThingId),
    Decide(ThingId, Option<Question>),
    Lost,
}

fn shown(ui: Ui, walk: Walk) -> Shown {
    let place = ui.place.get();
    walk.records.book.with(|book| {
        let standing = book.standing();
        match place {
            Place::Round => {
                let mut open = standing.open_yards().map(|(id, _)| id);
                match (open.next(), open.next()) {
                    (None, _) => Shown::Start,
                    (Some(only), None) => Shown::Yard(only.clone(), true),
                    _ => Shown::Yards,
                }
            }
            Place::Yard(id) => match ThingId::parse(&id) {
                Ok(id) if standing.yards.contains_key(&id) => {
                    let others = standing.open_yards().any(|(other, _)| *other != id);
                    Shown::Yard(id, !others)
                }
                _ => Shown::Lost,
            },
            Place::Decide(id, asked) => match ThingId::parse(&id) {
                Ok(id) if standing.yards.contains_key(&id) => Shown::Decide(id, asked),
                _ => Shown::Lost,
            },
            Place::Hive(id) => match ThingId::parse(&id) {
                // A hive that is another one is found under the one that is kept.
                Ok(id) if standing.hives.contains_key(standing.kept(&id)) => {
                    Shown::Hive(standing.kept(&id).clone())
                }
                _ => Shown::Lost,
            },
            _ => Shown::Elsewhere,
        }
    })
}

/// Reads the day by the clock of the yard that is shown, and shuts a panel that belongs to another yard.
fn settle(ui: Ui, walk: Walk, shown: &Shown) {
    let (zone, keep) = walk.records.book.with_untracked(|book| {
        let standing = book.standing();
        let open = walk.open.get_untracked();
        let yard_of = |hive: &ThingId| standing.hives.get(hive).map(|now| now.yard.clone());
        let (yard, keep) = match shown {
            Shown::Yard(yard, _) => {
                (Some(yard.clone()), open.as_ref().and_then(yard_of).as_ref() == Some(yard))
            }
            Shown::Hive(hive) => (yard_of(hive), open.as_ref() == Some(hive)),
            Shown::Decide(yard, _) => (Some(yard.clone()), false),
            Shown::Elsewhere => (None, true),
            _ => (None, false),
        };
        let zone = yard.and_then(|yard| standing.yards.get(&yard).map(|now| now.zone.clone()));
        (zone, keep || open.is_none())
    });
    if !keep {
        walk.shut();
    }
    follow_zone(ui, zone);
}

fn follow_zone(ui: Ui, zone: Option<String>) {
    let zone = zone.unwrap_or_else(clock::own_zone);
    if ui.zone.with_untracked(|now| *now != zone) {
        let today = clock::today(&zone);
        ui.zone.set(zone);
        if ui.today.get_untracked() != today {
            ui.today.set(today);
        }
    }
}

/// No records: how to start.
fn start(walk: Walk) -> Bit {
    let fill = move || {
        // What could not be kept is shown by the frame.
        let _ = walk.records.fill_demo();
    };
    let bench = big_link(w::TO_BENCH, &Place::Bench(Some(Sum::Yard))).class("key key-big key-primary");
    bits![
        heading(en::section(Section::Round)),
        el("div")
            .class("card")
            .kid(el("p").class("lead").text(w::EMPTY))
            .kid(el("p").text(w::EMPTY_HOW))
            .kid(keys(bench)),
        el("div").class("card").kid(el("p").text(w::DEMO_HOW)).kid(keys(big(w::DEMO, "demo", fill))),
    ]
}

/// An address that leads nowhere in this book.
fn lost() -> Bit {
    bits![
        heading(en::section(Section::Round)),
        el("div")
            .class("card")
            .kid(el("p").class("lead").text(w::NO_YARD))
            .kid(keys(big_link(w::ALL_YARDS, &Place::Round))),
    ]
}

/// Every open yard, with what it needs today.
fn yards(walk: Walk) -> Bit {
    let ids = Memo::new(move || {
        let mut ids = Vec::new();
        walk.records.book.with(|book| {
            for (id, _) in book.standing().open_yards() {
                ids.push(id.to_string());
            }
        });
        ids
    });
    let card = move |id: &str| match ThingId::parse(id) {
        Ok(id) => yard_card(walk, id),
        // Keys are ids of this book.
        Err(_) => el("li"),
    };
    bits![
        heading(en::section(Section::Round)),
        el("ul").class("yards").kid(each(move || ids.get(), card)),
        keys(add_yard()),
    ]
}

fn yard_card(walk: Walk, id: ThingId) -> El {
    let place = Place::Yard(id.to_string());
    let ui = Ui::get();
    let invented = id.is_demo().then(|| el("span").class("yard-line").text(w::INVENTED));
    let named = id.clone();
    let name = move || {
        let yards = |book: &Book| book.standing().yards.get(&named).map(|yard| yard.name.clone());
        walk.records.book.with(yards).unwrap_or_default()
    };
    let lines = Memo::new(move || {
        walk.today.track();
        let today = walk.records.today(&id);
        walk.records.book.with(|book| {
            let standing = book.standing();
            let rows = round::rows(standing, &id, today);
            let now = standing.yards.get(&id);
            let urgent = urgent::of_yard(standing, &id, today);
            let mut lines = vec![yard::alarm::of_yard(standing, &urgent)];
            lines.retain(|alarm| !alarm.is_empty());
            if let Some(since) = now.and_then(|now| now.paused) {
                lines.push(w::resting(since));
                return lines;
            }
            let need = yard::need(standing, &id, today, &urgent);
            lines.push(w::counts(walk::counts(&rows, today)));
            if need.hives > 0 || need.wanting > 0 {
                lines.push(w::total(&need, &ui.carried(need.oil.with_reserve)));
            } else {
                let next = walk::first_due(&rows)
                    .and_then(|(on, hive, many)| Some((on, standing.hives.get(hive)?.tag.as_str(), many)));
                lines.push(w::nothing_due(next, today));
            }
            lines.push(w::walked(walk::last_walked(book, &id), today));
            let visit = round::visit(&rows);
            if visit.begun() {
                lines.push(w::progress(visit));
            }
            lines
        })
    });
    let shown = live(move || {
        let mut shown = Vec::new();
        for line in lines.get() {
            shown.push(Bit::One(el("span").class("yard-line").text(&line)));
        }
        shown
    });
    let way = el("a")
        .class("yard-way")
        .attr("href", &place.hash())
        .test_id("yard-open")
        .kid(el("span").class("yard-name").kid(el("bdi").live_text(name)))
        .kid(invented)
        .kid(shown);
    el("li").class("yard-card").test_id("yard").kid(way)
}

/// Turns a plan of the Bench into records and goes to the new yard.
pub fn keep_yard(ui: Ui, walk: Walk, plan: KeepPlan) {
    let zone = clock::own_zone();
    let today = clock::today(&zone);
    let traps = plan.traps_a_box;
    let hives = HivePlan {
        tags: plan.tags,
        size: crate::almanac::stack::HiveSize::Full,
        boxes: plan.boxes.into_iter().map(|depth| (depth, traps)).collect(),
        since: plan.filled.unwrap_or(today),
        filled: plan.filled.map(|_| plan.kind.fill),
    };
    let known = walk
        .records
        .book
        .with_untracked(|book| crate::app::kinds::known(book.standing(), &plan.kind).cloned());
    // A second yard with the same traps: one kind, with one number in store and one price.
    let kind = known.map_or_else(|| KindChoice::New(plan.kind), KindChoice::Known);
    let pen = walk.records.pen();
    let written =
        walk.records.book.with_untracked(|book| book.keep_yard(&pen, &plan.yard, &zone, &kind, &hives));
    let (name, tags) = (ui.bench().keep_name(), ui.bench().keep_tags());
    // The next yard has a name and tags of its own.
    let typed = (name.get_untracked(), tags.get_untracked());
    let empty = move || {
        clear(name, &typed.0);
        clear(tags, &typed.1);
    };
    match walk.records.put(written, w::kept(hives.tags.len())) {
        Ok(ids) => {
            empty();
            if let Some(yard) = ids.first() {
                ui.go(&Place::Yard(yard.thing(0).to_string()));
            }
        }
        Err(stop) => {
            ui.said.set(super::said::stop(&stop));
            if stop == Stop::NotSaved {
                walk.records.once_kept(Box::new(empty));
            }
        }
    }
}
