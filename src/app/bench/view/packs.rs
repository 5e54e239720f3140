//! Packs or singles.

use super::says::{Reads, money, money_at_most};
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::quantity::Decimal;
use crate::almanac::supply::{Basket, BasketError};
use crate::almanac::trap::Pack;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::packs::reckon;
use crate::app::bench::read::MOST_PIECES;
use crate::app::bench::yard;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::parts::card::more;
use crate::app::parts::key::Key;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard::MAY_BE_EMPTY;
use crate::app::wording::en_sums::packs as w;

const NEED: Typed = Typed::new("packs-need", w::NEED, Slot::packs_need, Reads::Count(0, MOST_PIECES));

const PIECES: Typed =
    Typed::new("pieces-", w::PIECES, Slot::packs_size1, Reads::Count(1, MOST_PIECES)).may_be_empty();

const PRICE: Typed = Typed::new("price-", w::PRICE, Slot::packs_price1, Reads::Pack).may_be_empty();

const FEES: &[Typed] = &[
    Typed::new("packs-fee", w::FEE, Slot::packs_fee, Reads::Price).may_be_empty().hint(MAY_BE_EMPTY),
    Typed::new("packs-free", w::FREE, Slot::packs_free, Reads::Price).may_be_empty().hint(MAY_BE_EMPTY),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    let need = ui.bench().packs_need();
    // Offered only when it would change something.
    let take = move || {
        let traps = ui.draft.with(|draft| yard::reckon(draft).map(|sum| sum.total.traps))?.to_string();
        need.with(|need| need.trim() != traps)
            .then(|| Key::new(w::take(&traps), move || need.set(traps.clone())).quiet().view())
    };
    shown::body()
        .kid(NEED.field(ui).view())
        .kid(live(take))
        .kid(shown::h3(w::ROWS))
        .kid(rows(ui))
        .kid(live(move || one_more(ui)))
        .kid(shown::small(w::CURRENCY))
        .kid(more(w::REST, shown::fields(ui, FEES)))
        .kid(answer(w::BUY, shown, 0).why(w::WHY).view())
        .kid(shown::h3(w::ALONE))
        .kid(shown::list(shown))
}

/// Most rows of the price list.
const MOST_ROWS: usize = 5;

/// Rows shown now.
fn shown_rows(ui: Ui) -> usize {
    ui.bench().packs_rows().with(|rows| rows.parse().unwrap_or(3)).clamp(1, MOST_ROWS)
}

/// The price list: as many rows as were asked for.
fn rows(ui: Ui) -> El {
    const ROWS: [(Slot, Slot); MOST_ROWS] = [
        (Slot::packs_size1, Slot::packs_price1),
        (Slot::packs_size2, Slot::packs_price2),
        (Slot::packs_size3, Slot::packs_price3),
        (Slot::packs_size4, Slot::packs_price4),
        (Slot::packs_size5, Slot::packs_price5),
    ];
    el("div").class("pairs").kid(live(move || {
        let mut rows = Vec::new();
        for (index, (pieces, price)) in ROWS.iter().take(shown_rows(ui)).enumerate() {
            let pieces = shown::of_row(ui, &PIECES, (*pieces, *pieces), index + 1);
            let price = shown::of_row(ui, &PRICE, (*price, *price), index + 1);
            rows.push(el("div").class("pair").kid(pieces).kid(price));
        }
        rows
    }))
}

fn one_more(ui: Ui) -> Bit {
    let shown = shown_rows(ui);
    if shown >= MOST_ROWS {
        return Bit::Nothing;
    }
    Key::new(w::MORE, move || ui.bench().packs_rows().set((shown + 1).to_string())).view().into()
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    shown.answer(match &sum.basket {
        Ok(_) if sum.need == 0 => w::NOTHING.to_owned(),
        Ok(basket) => w::total(&money(basket.total), basket.pieces),
        Err(_) => en::NO_ANSWER.to_owned(),
    });
    for line in lines(&sum.offers, &sum.basket) {
        shown.line(line);
    }
    for (row, packs, total) in &sum.alone {
        if let Some(offer) = sum.offers.get(*row) {
            shown.list.push(line(offer, *packs, *total));
        }
    }
    Some(())
}

/// The lines under a basket of packs, or why there is none.
pub fn lines(offers: &[Pack], basket: &Result<Basket, BasketError>) -> Vec<String> {
    let mut lines = Vec::new();
    let basket = match basket {
        Ok(basket) => basket,
        Err(error) => {
            lines.push(w::refused(error).to_owned());
            return lines;
        }
    };
    for (row, count) in &basket.packs {
        if let Some(offer) = offers.get(*row) {
            lines.push(line(offer, *count, times(offer.price.unwrap_or_default(), *count)));
        }
    }
    if basket.delivery > Decimal::ZERO {
        lines.push(w::delivery(&money(basket.delivery)));
    }
    if let Some(most) = basket.cheaper_by {
        lines.push(w::cheaper_by(&money_at_most(most)));
    }
    if basket.left_over > 0 {
        lines.push(w::left_over(&locale::whole(basket.left_over)));
    }
    for row in &basket.left_out {
        if let Some(offer) = offers.get(*row) {
            lines.push(w::left_out(offer.pieces));
        }
    }
    lines
}

fn line(offer: &Pack, packs: u32, total: Decimal) -> String {
    let price = money(offer.price.unwrap_or_default());
    w::line(&locale::whole(packs), offer.pieces, &price, &money(total))
}

/// A price several times; beyond what a price can be it is shown as nothing, and the basket was refused before.
pub(super) fn times(price: Decimal, count: u32) -> Decimal {
    let sum = price.millionths().saturating_mul(i64::from(count));
    Decimal::from_millionths(sum).unwrap_or_default()
}
