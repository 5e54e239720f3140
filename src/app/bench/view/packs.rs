//! Packs or singles.

use super::says;
use crate::almanac::quantity::Decimal;
use crate::almanac::supply::{Basket, BasketError};
use crate::app::bench::packs::{PacksSum, reckon};
use crate::app::bench::read::MOST_PIECES;
use crate::app::bench::yard;
use crate::app::edge::locale;
use crate::app::parts::answer::Answer;
use crate::app::parts::card::more;
use crate::app::parts::field::Field;
use crate::app::parts::key::Key;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard::MAY_BE_EMPTY;
use crate::app::wording::en_sums::packs as w;
use leptos::prelude::*;

/// The card's body.
pub(super) fn view(ui: Ui) -> AnyView {
    let t = ui.bench;
    let sum = Memo::new(move |_| ui.draft.with(reckon));
    let traps = Memo::new(move |_| ui.draft.with(|draft| yard::reckon(draft).map(|sum| sum.total.traps)));
    // Offered only when it would change something.
    let take = move || {
        let traps = traps.get()?.to_string();
        t.packs_need.with(|need| need.trim() != traps).then(|| {
            let label = w::take(&traps);
            Key::new(label, move || t.packs_need.set(traps.clone())).quiet().view()
        })
    };
    let fees = view! {
        <div class="fields">
            {price_field("packs-fee", w::FEE.to_owned(), t.packs_fee).hint(MAY_BE_EMPTY).view()}
            {price_field("packs-free", w::FREE.to_owned(), t.packs_free).hint(MAY_BE_EMPTY).view()}
        </div>
    };
    view! {
        {Field::new("packs-need", w::NEED, t.packs_need)
            .whole()
            .says(move || says::count(t.packs_need, 0, MOST_PIECES))
            .view()}
        {take}
        {rows(ui)}
        {more(w::REST, fees.into_any())}
        {Answer::new(
                w::BUY,
                move || sum.with(|sum| sum.as_ref().map_or_else(|| en::NO_ANSWER.to_owned(), answer)),
            )
            .sum(move || sum.with(|sum| sum.as_ref().map(lines).unwrap_or_default()))
            .why(w::WHY)
            .view()}
        <h3>{w::ALONE}</h3>
        <ul class="tabular">
            {move || {
                sum.with(|sum| sum.as_ref().map(alone).unwrap_or_default())
                    .into_iter()
                    .map(|line| view! { <li>{line}</li> })
                    .collect_view()
            }}
        </ul>
    }
    .into_any()
}

fn price_field(id: impl Into<String>, label: String, text: RwSignal<String>) -> Field {
    Field::new(id, label, text)
        .decimal()
        .says(move || text.with(|typed| says::optional(says::price(text), typed)))
}

/// The price list: as many rows as were asked for.
fn rows(ui: Ui) -> AnyView {
    let t = ui.bench;
    let all = [
        (t.packs_size1, t.packs_price1),
        (t.packs_size2, t.packs_price2),
        (t.packs_size3, t.packs_price3),
        (t.packs_size4, t.packs_price4),
        (t.packs_size5, t.packs_price5),
    ];
    let shown =
        Memo::new(move |_| t.packs_rows.with(|rows| rows.parse::<usize>().unwrap_or(3)).clamp(1, all.len()));
    let list = move || {
        all.into_iter()
            .take(shown.get())
            .enumerate()
            .map(|(index, (pieces, price))| {
                let number = (index + 1).to_string();
                let pieces_field =
                    Field::new(["pieces-", &number].concat(), w::row(w::PIECES, index + 1), pieces)
                        .whole()
                        .says(move || {
                            pieces.with(|typed| says::optional(says::count(pieces, 1, MOST_PIECES), typed))
                        });
                let price_field =
                    price_field(["price-", &number].concat(), w::row(w::PRICE, index + 1), price);
                view! { <div class="pair">{pieces_field.view()} {price_field.view()}</div> }
            })
            .collect_view()
    };
    view! {
        <h3>{w::ROWS}</h3>
        <div class="pairs">{list}</div>
        {move || {
            (shown.get() < all.len())
                .then(|| {
                    Key::new(w::MORE, move || t.packs_rows.set((shown.get_untracked() + 1).to_string())).view()
                })
        }}
        <p class="small">{w::CURRENCY}</p>
    }
    .into_any()
}

fn money(value: Decimal) -> String {
    locale::fixed(value.as_f64(), 2)
}

fn answer(sum: &PacksSum) -> String {
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
