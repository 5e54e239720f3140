//! The order for the next season, from the hives of the ticked yards.

use super::keep;
use super::page::Trip;
use super::store::{self, InStore, KindNext};
use super::sum::spare;
use crate::almanac::supply::{Delivery, NextSeason, next_season};
use crate::almanac::trap::Pack;
use crate::almanac::typed;
use crate::app::bench::order::Things;
use crate::app::bench::read::{self, MOST_HIVES, MOST_PIECES};
use crate::app::bench::view::order::{cost, traps_lines};
use crate::app::bench::view::says::{self, Reads};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::ledger::words::isolated;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::card::{Card, more};
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::wording::en_load::PACKS;
use crate::app::wording::en_order as w;
use crate::app::wording::en_store::traps_since;
use crate::app::wording::en_sums::packs;
use crate::book::id::ThingId;
use crate::book::lost::{Lost, lost};
use std::rc::Rc;

/// Days that are looked through for traps that were lost, today's among them.
const LOOK_BACK: i32 = 365;

/// The example of a winter.
const WINTER: &str = "20 %";

/// What is typed of one kind.
struct Typed {
    kind: ThingId,
    name: String,
    hives: RwSignal<String>,
    splits: RwSignal<String>,
    each: RwSignal<String>,
    /// The number that was filled in there, and the traps and hives that it is of.
    usual: (u32, u32, u32),
    spares: RwSignal<String>,
    stock: RwSignal<String>,
    /// In store, as far as the book knows.
    known: InStore,
    /// In hives, of a kind that is used again.
    there: Option<RwSignal<String>>,
}

/// What is typed of all.
struct All {
    trip: Trip,
    winter: RwSignal<String>,
    fee: RwSignal<String>,
    free: RwSignal<String>,
    kinds: Vec<Typed>,
    lost: Vec<Lost>,
}

/// The card; nothing of it is worked out while it is shut.
pub(super) fn view(trip: Trip) -> El {
    let open = RwSignal::new(false);
    let card = Card {
        id: "load-next".to_owned(),
        title: w::TITLE,
        asks: w::ASKS,
        open: Memo::new(move || open.get()),
        toggle: Box::new(move || open.update(|open| *open = !*open)),
    };
    card.view(move || {
        el("div").class("stack").kid(live(move || {
            let yards = trip.yards();
            untrack(|| body(trip, &yards))
        }))
    })
}

fn body(trip: Trip, yards: &[ThingId]) -> Bit {
    let today = trip.ui.today.get_untracked();
    let demo = !yards.is_empty() && yards.iter().all(ThingId::is_demo);
    let room = trip.room(today, yards);
    let (kinds, lost) = trip.records.book.with_untracked(|book| {
        (store::next(book.standing(), yards, &room, today), lost(book, today.plus(1 - LOOK_BACK), demo))
    });
    if kinds.is_empty() {
        return el("p").text(w::KIND_NONE).into();
    }
    // Counts of these yards are not those of others: each set of yards has its own.
    let mut of = String::new();
    for yard in yards {
        of.push(' ');
        of.push_str(&yard.to_string());
    }
    let text = |name, usual| keep::text(trip.ui, name, usual);
    let all = Rc::new(All {
        trip,
        winter: text("next-winter", WINTER),
        fee: text("next-fee", ""),
        free: text("next-free", ""),
        kinds: kinds.into_iter().map(|kind| typed_of(trip, kind, &of)).collect(),
        lost,
    });
    let ui = trip.ui;
    let field = |id: &str, label: &str, at, reads, may| says::field(ui, id, label, (at, at), reads, may);
    let winter = field("next-winter", w::WINTER, all.winter, Reads::Shares, false).hint(w::WINTER_HINT);
    let mut bits: Vec<Bit> = vec![el("p").class("small").text(w::FILLED).into(), winter.view().into()];
    for nth in 0..all.kinds.len() {
        kind(&all, nth, &mut bits);
    }
    let fees = el("div")
        .class("fields")
        .kid(field("next-fee", packs::FEE, all.fee, Reads::Price, true).view())
        .kid(field("next-free", packs::FREE, all.free, Reads::Price, true).view());
    bits.push(more(packs::REST, fees).into());
    bits.push(Answer::of(w::COST, move || all.cost()).why(w::WHY).mark("next-cost").view().into());
    Bit::Many(bits)
}

fn typed_of(trip: Trip, kind: KindNext, of: &str) -> Typed {
    let id = kind.kind.to_string();
    let text =
        |name: &str, usual: u32| keep::text(trip.ui, &[name, " ", &id, of].concat(), &usual.to_string());
    Typed {
        hives: text("next-hives", kind.hives),
        splits: text("next-splits", 0),
        each: keep::text(
            trip.ui,
            &["next-each ", &id, of].concat(),
            // Nobody knows how many each wants where none hangs any more: an empty field asks.
            &if kind.each > 0 { kind.each.to_string() } else { String::new() },
        ),
        usual: (kind.each, kind.traps, kind.fitted),
        spares: text("next-spares", spare(kind.hives.saturating_mul(kind.each))),
        stock: text("next-stock", kind.store.traps()),
        known: kind.store,
        there: kind.there.map(|there| text("next-there", there)),
        kind: kind.kind,
        name: kind.name,
    }
}

fn kind(all: &Rc<All>, nth: usize, bits: &mut Vec<Bit>) {
    let Some(of) = all.kinds.get(nth) else { return };
    let number = (nth + 1).to_string();
    let step =
        |id: &str, label: &str, text, most| says::stepper(&[id, &number].concat(), label, text, 0, most);
    bits.push(el("h3").text(&isolated(&of.name)).into());
    bits.push(step("next-hives-", w::ALIVE, of.hives, MOST_HIVES).into());
    bits.push(step("next-splits-", w::SPLITS, of.splits, MOST_HIVES).into());
    bits.push(step("next-each-", w::EACH, of.each, MOST_PIECES).into());
    bits.push(step("next-spares-", w::SPARES, of.spares, MOST_PIECES).into());
    bits.push(step("next-stock-", w::STOCK, of.stock, MOST_PIECES).into());
    bits.push(of.there.map(|there| step("next-there-", w::THERE, there, MOST_PIECES)).into());
    let own = all.clone();
    bits.push(Answer::of(w::TRAPS, move || own.traps(nth)).mark("next-traps").view().into());
    if !of.kind.is_demo() {
        let way = link(PACKS, &Place::Kind(of.kind.to_string()));
        bits.push(el("p").class("keys").kid(way).into());
    }
}

impl All {
    fn known(&self, of: &Typed) -> Option<NextSeason> {
        let count = |text: RwSignal<String>, most| text.with(|text| typed::count(text, 0, most)).ok();
        let lost = self.lost.iter().find(|lost| lost.kind == of.kind);
        Some(NextSeason {
            alive: count(of.hives, MOST_HIVES)?,
            winter: self.winter.with(|text| read::shares(text)).ok()?,
            splits: count(of.splits, MOST_HIVES)?,
            each: count(of.each, MOST_PIECES)?,
            lost: lost.map(|lost| (lost.lost, lost.of)),
            spares: count(of.spares, MOST_PIECES)?,
            stock: count(of.stock, MOST_PIECES)?,
            there: of.there.map_or(Some(0), |there| count(there, MOST_PIECES))?,
        })
    }

    fn traps(&self, nth: usize) -> Option<Worked> {
        let of = self.kinds.get(nth)?;
        let known = self.known(of)?;
        let traps = next_season(&known);
        let mut lines = traps_lines(&known, &traps);
        let (each, hang, hives) = of.usual;
        if each > 0 && known.each == each {
            lines.insert(0, w::each(each, hang, hives));
        }
        if known.stock == of.known.traps() {
            lines.extend(traps_since(&of.known));
        }
        Some((w::traps(traps.order), lines))
    }

    fn cost(&self) -> Option<Worked> {
        let mut wanted: Vec<(u32, Vec<Pack>)> = Vec::new();
        let mut names = Vec::new();
        for of in &self.kinds {
            let need = next_season(&self.known(of)?).order;
            let packs = self.trip.records.book.with(|book| {
                book.standing().kinds.get(&of.kind).map(|now| now.kind.packs.clone()).unwrap_or_default()
            });
            wanted.push((need, packs));
            names.push(isolated(&of.name));
        }
        let price = |text: RwSignal<String>| text.with(|text| read::maybe(typed::price(text))).ok();
        let (fee, free_from) = (price(self.fee)?, price(self.free)?);
        Some(cost(&names, &Things::of(wanted, fee.map(|fee| Delivery { fee, free_from }))))
    }
}
