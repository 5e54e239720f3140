//! The place itself: all yards, one yard, or one hive, as the address says.

use super::state::Walk;
use super::walk;
use crate::app::bench::Sum;
use crate::app::bench::keep::KeepPlan;
use crate::app::edge::clock;
use crate::app::frame::heading;
use crate::app::parts::key::{self, Key};
use crate::app::place::{Place, Section};
use crate::app::state::Ui;
use crate::app::wording::{en, en_round as w};
use crate::app::{hive, yard};
use crate::book::id::ThingId;
use crate::book::round;
use crate::book::write::{HivePlan, KindChoice};
use leptos::prelude::*;

/// The Round.
pub fn view(ui: Ui) -> AnyView {
    let walk = Walk::get();
    on_cleanup(move || follow_zone(ui, None));
    let shown = Memo::new(move |_| shown(ui, walk));
    (move || {
        let shown = shown.get();
        settle(ui, walk, &shown);
        match shown {
            Shown::Elsewhere => ().into_any(),
            Shown::Start => start(walk),
            Shown::Yards => yards(walk),
            Shown::Yard(id, alone) => yard::view(walk, &id, alone),
            Shown::Hive(id) => hive::view(walk, id),
            Shown::Lost => lost(),
        }
    })
    .into_any()
}

/// What the address and the book come to.
#[derive(Clone, PartialEq)]
enum Shown {
    Elsewhere,
    Start,
    Yards,
    Yard(ThingId, bool),
    Hive(ThingId),
    Lost,
}

fn shown(ui: Ui, walk: Walk) -> Shown {
    let place = ui.place.get();
    walk.records().book.with(|book| {
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
            Place::Hive(id) => match ThingId::parse(&id) {
                Ok(id) if standing.hives.contains_key(&id) => Shown::Hive(id),
                _ => Shown::Lost,
            },
            _ => Shown::Elsewhere,
        }
    })
}

/// Reads the day by the clock of the yard that is shown, and shuts a panel that belongs to another yard.
fn settle(ui: Ui, walk: Walk, shown: &Shown) {
    let (zone, keep) = walk.records().book.with_untracked(|book| {
        let standing = book.standing();
        let open = walk.open.get_untracked();
        let yard_of = |hive: &ThingId| standing.hives.get(hive).map(|now| now.yard.clone());
        let (yard, keep) = match shown {
            Shown::Yard(yard, _) => {
                (Some(yard.clone()), open.as_ref().and_then(yard_of).as_ref() == Some(yard))
            }
            Shown::Hive(hive) => (yard_of(hive), open.as_ref() == Some(hive)),
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
fn start(walk: Walk) -> AnyView {
    let fill = move || {
        // What could not be kept is shown by the frame.
        let _ = walk.records().fill_demo();
    };
    view! {
        {heading(en::section(Section::Round))}
        <div class="card">
            <p class="lead">{w::EMPTY}</p>
            <p>{w::EMPTY_HOW}</p>
            <p class="keys">{link_primary(w::TO_BENCH, &Place::Bench(Some(Sum::Yard)))}</p>
        </div>
        <div class="card">
            <p>{w::DEMO_HOW}</p>
            <p class="keys">{Key::new(w::DEMO, fill).view()}</p>
        </div>
    }
    .into_any()
}

fn link_primary(label: &'static str, place: &Place) -> AnyView {
    view! { <a class="key key-big key-primary" href=place.hash()>{label}</a> }.into_any()
}

/// An address that leads nowhere in this book.
fn lost() -> AnyView {
    view! {
        {heading(en::section(Section::Round))}
        <div class="card">
            <p class="lead">{w::NO_YARD}</p>
            <p class="keys">{key::link(w::ALL_YARDS, &Place::Round)}</p>
        </div>
    }
    .into_any()
}

/// Every open yard, with what it needs today.
fn yards(walk: Walk) -> AnyView {
    let yards = Memo::new(move |_| {
        walk.today.track();
        walk.records().book.with(|book| {
            book.standing().open_yards().map(|(id, now)| (id.clone(), now.name.clone())).collect::<Vec<_>>()
        })
    });
    let cards = move || yards.get().into_iter().map(|(id, name)| yard_card(walk, id, name)).collect_view();
    view! {
        {heading(en::section(Section::Round))}
        <ul class="yards">{cards}</ul>
        <p class="keys">{key::link(w::ADD_YARD, &Place::Bench(Some(Sum::Yard)))}</p>
        {demo_out(walk)}
    }
    .into_any()
}

/// The way out of the demonstration; nothing when it is not in.
pub fn demo_out(walk: Walk) -> AnyView {
    let demo = Memo::new(move |_| walk.records().has_demo());
    let out = move || {
        let _ = walk.records().remove_demo();
    };
    (move || {
        demo.get().then(|| {
            view! {
                <div class="card" data-testid="demo-in">
                    <p>{w::DEMO_IN}</p>
                    <p class="keys">{Key::new(w::DEMO_OUT, out).view()}</p>
                </div>
            }
        })
    })
    .into_any()
}

fn yard_card(walk: Walk, id: ThingId, name: String) -> AnyView {
    let place = Place::Yard(id.to_string());
    let lines = Memo::new(move |_| {
        walk.today.track();
        let today = walk.records().today(&id);
        walk.records().book.with(|book| {
            let standing = book.standing();
            let rows = round::rows(standing, &id, today);
            let now = standing.yards.get(&id);
            if let Some(since) = now.and_then(|now| now.paused) {
                return vec![w::resting(since)];
            }
            let need = yard::need(standing, &id, today);
            let seen = standing.hives_of(&id, false).filter_map(|(_, hive)| hive.last.as_ref());
            let mut lines = vec![w::counts(walk::counts(&rows))];
            if need.traps > 0 {
                let ui = Ui::get();
                lines.push(w::total(need.hives, need.traps, &ui.volume_up(need.oil.carry)));
            }
            lines.push(w::walked(seen.map(|seen| seen.day).max(), today));
            let visit = round::visit(&rows);
            if visit.begun() {
                lines.push(w::progress(visit));
            }
            lines
        })
    });
    let shown = move || {
        let lines = lines.get().into_iter().map(|line| view! { <span class="yard-line">{line}</span> });
        lines.collect_view()
    };
    view! {
        <li class="yard-card" data-testid="yard">
            <a class="yard-way" href=place.hash() data-testid="yard-open">
                <span class="yard-name">
                    <bdi>{name}</bdi>
                </span>
                {shown}
            </a>
        </li>
    }
    .into_any()
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
    let kind = KindChoice::New(plan.kind);
    let pen = walk.records().pen();
    let written =
        walk.records().book.with_untracked(|book| book.keep_yard(&pen, &plan.yard, &zone, &kind, &hives));
    match walk.records().put(written, w::kept(hives.tags.len())) {
        Ok(ids) => {
            if let Some(yard) = ids.first() {
                ui.go(&Place::Yard(yard.thing(0).to_string()));
            }
        }
        Err(stop) => ui.said.set(super::said::stop(&stop)),
    }
}
