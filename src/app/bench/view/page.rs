//! The page: an index of keys, then every sum as a card in one scroll.

use super::{bodies, fits, oil, packs, refill, spill, yard};
use crate::app::bench::Sum;
use crate::app::edge;
use crate::app::frame::heading;
use crate::app::parts::card::Card;
use crate::app::place::Place;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench as w;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The Bench.
pub fn page(ui: Ui) -> AnyView {
    follow_jumps(ui);
    let index = Sum::ALL.map(|sum| {
        view! {
            <li>
                <a class="key" href=Place::Bench(Some(sum)).hash()>{w::short(sum)}</a>
            </li>
        }
    });
    view! {
        {heading(en::section(crate::app::place::Section::Bench))}
        <nav aria-label=w::INDEX>
            <ul class="index">{index.into_iter().collect_view()}</ul>
        </nav>
        {Sum::ALL.map(|sum| card(ui, sum)).into_iter().collect_view()}
    }
    .into_any()
}

/// Id of the heading key of a card.
fn card_id(sum: Sum) -> String {
    ["bench-", sum.slug()].concat()
}

fn bit(sum: Sum) -> u8 {
    1 << (sum as u8)
}

fn card(ui: Ui, sum: Sum) -> AnyView {
    let card = Card {
        id: card_id(sum),
        title: w::title(sum).to_owned(),
        asks: w::asks(sum).to_owned(),
        open: Signal::derive(move || ui.bench_open.get() & bit(sum) != 0),
        toggle: Callback::new(move |()| ui.bench_open.update(|open| *open ^= bit(sum))),
    };
    card.view(move || match sum {
        Sum::Yard => yard::view(ui),
        Sum::Refill => refill::view(ui),
        Sum::Spill => spill::view(ui),
        Sum::Fit => fits::view(ui),
        Sum::Packs => packs::view(ui),
        Sum::Oil => oil::view(ui),
        Sum::Bodies => bodies::view(ui),
    })
}

/// A jump opens its card and puts the focus on its heading, so that the back key undoes it.
fn follow_jumps(ui: Ui) {
    Effect::new(move || {
        let Place::Bench(Some(sum)) = ui.place.get() else { return };
        ui.bench_open.update(|open| *open |= bit(sum));
        edge::after_paint(move || {
            let key = edge::document().and_then(|document| document.get_element_by_id(&card_id(sum)));
            if let Some(key) = key.and_then(|key| key.dyn_into::<web_sys::HtmlElement>().ok()) {
                let _ = key.focus();
                key.scroll_into_view();
            }
        });
    });
}
