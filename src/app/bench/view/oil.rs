//! Oil to buy for a season.

use super::packs::times;
use super::says;
use super::shown::{self, Shown, answer};
use crate::almanac::quantity::{Decimal, Volume};
use crate::almanac::supply::{Basket, BasketError};
use crate::app::bench::oil::{OilSum, reckon};
use crate::app::edge::locale;
use crate::app::el::{El, el};
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::field::Field;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard::{FOOD_GRADE, MAY_BE_EMPTY};
use crate::app::wording::en_sums::{oil as w, packs};

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(move || {
        ui.draft.with(|draft| {
            reckon(draft).map(|sum| Shown {
                answers: vec![(ui.volume_up(sum.season.high), lines(ui, &sum))],
                ..Shown::default()
            })
        })
    });
    let spread =
        volume(ui, "oil-spread".to_owned(), w::SPREAD.to_owned(), t.oil_spread(), t.oil_spread_unit());
    shown::body()
        .kid(shown::fields([
            Field::new("oil-services", w::SERVICES, t.oil_services())
                .whole()
                .says(move || says::count(t.oil_services(), 0, 366))
                .view(),
            Field::new("oil-each", w::EACH, t.oil_each())
                .decimal()
                .volume(t.oil_each_unit())
                .says(move || says::volume(ui, t.oil_each(), t.oil_each_unit()))
                .view(),
            Field::new("oil-spill", w::SPILL, t.oil_spill()).says(move || says::share(t.oil_spill())).view(),
        ]))
        .kid(more(w::REST, spread.hint(MAY_BE_EMPTY).view()))
        .kid(shown::h3(w::ROWS))
        .kid(rows(ui))
        .kid(answer(w::BUY, shown, 0).why(w::WHY).view())
        .kid(Notice::caution(FOOD_GRADE).view())
        .kid(Notice::caution(w::WASTE).view())
        .kid(shown::small(w::RANCID))
}

fn volume(ui: Ui, id: String, label: String, text: RwSignal<String>, unit: RwSignal<String>) -> Field {
    Field::new(id, label, text)
        .decimal()
        .volume(unit)
        .says(move || text.with(|typed| says::optional(says::volume(ui, text, unit), typed)))
}

/// Containers and their prices.
fn rows(ui: Ui) -> El {
    let t = ui.bench();
    let rows = [
        (t.oil_size1(), t.oil_unit1(), t.oil_price1()),
        (t.oil_size2(), t.oil_unit2(), t.oil_price2()),
        (t.oil_size3(), t.oil_unit3(), t.oil_price3()),
    ];
    el("div").class("pairs").kids(rows.into_iter().enumerate().map(|(index, (size, unit, price))| {
        let number = (index + 1).to_string();
        let size = volume(ui, ["oil-size-", &number].concat(), packs::row(w::SIZE, index + 1), size, unit);
        let says = move || price.with(|typed| says::optional(says::price(price), typed));
        let price = Field::new(["oil-price-", &number].concat(), packs::row(w::PRICE, index + 1), price);
        el("div").class("pair").kid(size.view()).kid(price.decimal().says(says).view())
    }))
}

fn lines(ui: Ui, sum: &OilSum) -> Vec<String> {
    let season = &sum.season;
    let services = locale::whole(season.services);
    let spill = locale::percent(season.spill_share.fraction(), 1);
    // Rounded as the answer above it: one figure is not written in two ways.
    let mut lines = vec![w::mean(&services, &ui.volume(season.each), &spill, &ui.volume_up(season.mean))];
    if let Some(spread) = sum.spread {
        lines.push(w::high(&ui.volume(spread), &services, &ui.volume_up(season.high)));
    }
    match &sum.basket {
        Ok(basket) => lines.extend(basket_lines(ui, sum, basket)),
        Err(BasketError::NothingPriced | BasketError::PackOfNothing { .. }) => {
            lines.push(packs::NO_PRICES.to_owned());
        }
        Err(_) => lines.push(packs::TOO_MANY.to_owned()),
    }
    lines
}

fn basket_lines(ui: Ui, sum: &OilSum, basket: &Basket) -> Vec<String> {
    let money = |value: Decimal| locale::fixed(value.as_f64(), 2);
    let mut lines = Vec::new();
    for (row, count) in &basket.packs {
        let Some((size, price)) = sum.sizes.get(*row) else { continue };
        let (size, price) = (locale::volume(size.volume(), size.unit()), price.unwrap_or_default());
        lines.push(w::line(&locale::whole(*count), &size, &money(price), &money(times(price, *count))));
    }
    if !basket.packs.is_empty() {
        let left = Volume::from_millilitres(f64::from(basket.left_over)).unwrap_or_default();
        lines.push(w::together(&money(basket.total), &ui.volume(left)));
    }
    let left_out = basket.left_out.iter().filter_map(|row| sum.sizes.get(*row));
    lines.extend(left_out.map(|(size, _)| w::left_out(&locale::volume(size.volume(), size.unit()))));
    lines
}
