//! Packs or singles.

use super::says;
use super::shown::{self, Shown, answer};
use crate::almanac::quantity::Decimal;
use crate::almanac::supply::{Basket, BasketError};
use crate::app::bench::packs::{PacksSum, reckon};
use crate::app::bench::read::MOST_PIECES;
use crate::app::bench::yard;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::field::Field;
use crate::app::parts::key::Key;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard::MAY_BE_EMPTY;
use crate::app::wording::en_sums::packs as w;

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(move || {
        ui.draft.with(|draft| {
            reckon(draft).map(|sum| Shown {
                answers: vec![(total(&sum), lines(&sum))],
                cautions: Vec::new(),
                list: alone(&sum),
            })
        })
    });
    let need = t.packs_need();
    // Offered only when it would change something.
    let take = move || {
        let traps = ui.draft.with(|draft| yard::reckon(draft).map(|sum| sum.total.traps))?.to_string();
        need.with(|need| need.trim() != traps)
            .then(|| Key::new(w::take(&traps), move || need.set(traps.clone())).quiet().view())
    };
    let fees = shown::fields([
        price_field("packs-fee", w::FEE.to_owned(), t.packs_fee()).hint(MAY_BE_EMPTY).view(),
        price_field("packs-free", w::FREE.to_owned(), t.packs_free()).hint(MAY_BE_EMPTY).view(),
    ]);
    let need_field =
        Field::new("packs-need", w::NEED, need).whole().says(move || says::count(need, 0, MOST_PIECES));
    shown::body()
        .kid(need_field.view())
        .kid(live(take))
        .kid(shown::h3(w::ROWS))
        .kid(rows(ui))
        .kid(live(move || one_more(ui)))
        .kid(shown::small(w::CURRENCY))
        .kid(more(w::REST, fees))
        .kid(answer(w::BUY, shown, 0).why(w::WHY).view())
        .kid(shown::h3(w::ALONE))
        .kid(shown::list(shown))
}

fn price_field(id: impl AsRef<str>, label: String, text: RwSignal<String>) -> Field {
    Field::new(id, label, text)
        .decimal()
        .says(move || text.with(|typed| says::optional(says::price(text), typed)))
}

/// Most rows of the price list.
const MOST_ROWS: usize = 5;

/// Rows shown now.
fn shown_rows(ui: Ui) -> usize {
    ui.bench().packs_rows().with(|rows| rows.parse().unwrap_or(3)).clamp(1, MOST_ROWS)
}

/// The price list: as many rows as were asked for.
fn rows(ui: Ui) -> El {
    let t = ui.bench();
    let all: [(RwSignal<String>, RwSignal<String>); MOST_ROWS] = [
        (t.packs_size1(), t.packs_price1()),
        (t.packs_size2(), t.packs_price2()),
        (t.packs_size3(), t.packs_price3()),
        (t.packs_size4(), t.packs_price4()),
        (t.packs_size5(), t.packs_price5()),
    ];
    el("div").class("pairs").kid(live(move || {
        let rows = all.into_iter().take(shown_rows(ui)).enumerate();
        rows.map(|(index, (pieces, price))| row(index + 1, pieces, price)).collect::<Vec<El>>()
    }))
}

fn row(number: usize, pieces: RwSignal<String>, price: RwSignal<String>) -> El {
    let id = number.to_string();
    let count = move || pieces.with(|typed| says::optional(says::count(pieces, 1, MOST_PIECES), typed));
    let pieces = Field::new(["pieces-", &id].concat(), w::row(w::PIECES, number), pieces).whole().says(count);
    let price = price_field(["price-", &id].concat(), w::row(w::PRICE, number), price);
    el("div").class("pair").kid(pieces.view()).kid(price.view())
}

fn one_more(ui: Ui) -> Bit {
    let shown = shown_rows(ui);
    if shown >= MOST_ROWS {
        return Bit::Nothing;
    }
    Key::new(w::MORE, move || ui.bench().packs_rows().set((shown + 1).to_string())).view().into()
}

fn money(value: Decimal) -> String {
    locale::fixed(value.as_f64(), 2)
}

fn total(sum: &PacksSum) -> String {
    match &sum.basket {
        Ok(_) if sum.need == 0 => w::NOTHING.to_owned(),
        Ok(basket) => w::total(&money(basket.total), basket.pieces),
        Err(_) => en::NO_ANSWER.to_owned(),
    }
}

fn lines(sum: &PacksSum) -> Vec<String> {
    match &sum.basket {
        Ok(basket) => basket_lines(sum, basket),
        Err(BasketError::NothingPriced | BasketError::PackOfNothing { .. }) => vec![w::NO_PRICES.to_owned()],
        Err(_) => vec![w::TOO_MANY.to_owned()],
    }
}

fn basket_lines(sum: &PacksSum, basket: &Basket) -> Vec<String> {
    let mut lines = Vec::new();
    for (row, count) in &basket.packs {
        let Some(offer) = sum.offers.get(*row) else { continue };
        let price = offer.price.unwrap_or_default();
        lines.push(w::line(
            &locale::whole(*count),
            offer.pieces,
            &money(price),
            &money(times(price, *count)),
        ));
    }
    if basket.delivery > Decimal::ZERO {
        lines.push(w::delivery(&money(basket.delivery)));
    }
    if basket.left_over > 0 {
        lines.push(w::left_over(&locale::whole(basket.left_over)));
    }
    let left_out = basket.left_out.iter().filter_map(|row| sum.offers.get(*row));
    lines.extend(left_out.map(|offer| w::left_out(offer.pieces)));
    lines
}

/// A price several times; beyond what a price can be it is shown as nothing, and the basket was refused before.
pub(super) fn times(price: Decimal, count: u32) -> Decimal {
    let sum = price.millionths().saturating_mul(i64::from(count));
    Decimal::from_millionths(sum).unwrap_or_default()
}

fn alone(sum: &PacksSum) -> Vec<String> {
    let line = |(row, packs, total): &(usize, u32, Decimal)| {
        let offer = sum.offers.get(*row)?;
        let price = money(offer.price.unwrap_or_default());
        Some(w::line(&locale::whole(*packs), offer.pieces, &price, &money(*total)))
    };
    sum.alone.iter().filter_map(line).collect()
}
