//! The page: every sum as a card in one scroll, with an index of keys after the first.

use super::{
    bodies, closing, cost, counts, cover, divide, fits, freezer, ground, mesh, oil, order, packs, refill,
    sample, spill, trial, yard,
};
use crate::app::bench::Sum;
use crate::app::edge;
use crate::app::el::{El, el};
use crate::app::frame::heading;
use crate::app::graph::{Memo, effect};
use crate::app::parts::card::Card;
use crate::app::place::{Place, Section};
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench as w;

/// The Bench.
pub fn page(ui: Ui) -> El {
    follow_jumps(ui);
    // The first sum stands before the keys: its answer is to be seen without a scroll on a small phone.
    let mut sums = Sum::ALL.into_iter();
    let first = sums.next().map(|sum| card(ui, sum));
    let index = sums.clone().map(|sum| {
        let hash = Place::Bench(Some(sum)).hash();
        el("li").kid(el("a").class("key").attr("href", &hash).text(w::short(sum)))
    });
    el("div")
        .kid(heading(en::section(Section::Bench)))
        .kid(first)
        .kid(el("nav").attr("aria-label", w::INDEX).kid(el("ul").class("index").kids(index)))
        .kids(sums.map(|sum| card(ui, sum)))
}

/// Id of the heading key of a card.
fn card_id(sum: Sum) -> String {
    ["bench-", sum.slug()].concat()
}

fn bit(sum: Sum) -> u32 {
    1 << (sum as u8)
}

fn card(ui: Ui, sum: Sum) -> El {
    let card = Card {
        id: card_id(sum),
        title: w::title(sum),
        asks: w::asks(sum),
        open: Memo::new(move || ui.bench_open.get() & bit(sum) != 0),
        toggle: Box::new(move || ui.bench_open.update(|open| *open ^= bit(sum))),
    };
    card.view(move || match sum {
        Sum::Yard => yard::view(ui),
        Sum::Refill => refill::view(ui),
        Sum::Spill => spill::view(ui),
        Sum::Fit => fits::view(ui),
        Sum::Packs => packs::view(ui),
        Sum::Oil => oil::view(ui),
        Sum::Bodies => bodies::view(ui),
        Sum::Sample => sample::view(ui),
        Sum::Mesh => mesh::view(ui),
        Sum::Freezer => freezer::view(ui),
        Sum::Ground => ground::view(ui),
        Sum::Cover => cover::view(ui),
        Sum::Split => divide::view(ui),
        Sum::Closing => closing::view(ui),
        Sum::Counts => counts::view(ui),
        Sum::Order => order::view(ui),
        Sum::Trial => trial::view(ui),
        Sum::Cost => cost::view(ui),
    })
}

/// A jump opens its card and puts the focus on its heading, so that the back key undoes it.
fn follow_jumps(ui: Ui) {
    effect(move || {
        let Place::Bench(Some(sum)) = ui.place.get() else { return };
        ui.bench_open.update(|open| *open |= bit(sum));
        edge::after_paint(move || edge::focus(&card_id(sum)));
    });
}
