//! What to order for the next season.

use super::packs::lines as pack_lines;
use super::says::{self, Reads, money, money_at_most};
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::supply::{NextSeason, SeasonTraps};
use crate::almanac::typed::TypedError;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::order::{Things, lost_of, reckon};
use crate::app::bench::read::{MOST_BOXES, MOST_HIVES, MOST_PIECES, MOST_TRAPS_A_BOX};
use crate::app::edge::locale;
use crate::app::el::{El, el};
use crate::app::parts::card::more;
use crate::app::parts::field::Says;
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard::MAY_BE_EMPTY;
use crate::app::wording::en_order as w;
use crate::app::wording::en_sums::packs;
use crate::app::wording::en_typed;

const FIELDS: &[Typed] = &[
    Typed::new("order-alive", w::ALIVE, Slot::order_alive, Reads::Steps(0, MOST_HIVES)),
    Typed::new("order-winter", w::WINTER, Slot::order_winter, Reads::Shares).hint(w::WINTER_HINT),
    Typed::new("order-splits", w::SPLITS, Slot::order_splits, Reads::Steps(0, MOST_HIVES)),
    Typed::new("order-boxes", w::BOXES, Slot::order_boxes, Reads::Steps(1, MOST_BOXES)),
];

const REST: &[Typed] = &[
    Typed::new("order-a-box", w::A_BOX, Slot::order_a_box, Reads::Steps(1, MOST_TRAPS_A_BOX)),
    Typed::new("order-lost", w::LOST, Slot::order_lost, Reads::Count(0, MOST_PIECES))
        .may_be_empty()
        .hint(w::LOST_HINT),
];

const OF: Typed = Typed::new("order-of", w::OF, Slot::order_of, Reads::Count(0, MOST_PIECES)).may_be_empty();

const SPARE: &[Typed] = &[
    Typed::new("order-spares", w::SPARES, Slot::order_spares, Reads::Steps(0, MOST_PIECES)),
    Typed::new("order-stock", w::STOCK, Slot::order_stock, Reads::Steps(0, MOST_PIECES)),
];

const FEES: &[Typed] = &[
    Typed::new("order-fee", packs::FEE, Slot::order_fee, Reads::Price).may_be_empty().hint(MAY_BE_EMPTY),
    Typed::new("order-free", packs::FREE, Slot::order_free, Reads::Price).may_be_empty().hint(MAY_BE_EMPTY),
];

/// Ids of the packs of a thing, before the number of the row, and their fields.
type Rows = (&'static str, &'static str, &'static [(Slot, Slot)]);

const ROWS: [Rows; 3] = [
    (
        "order-size-1",
        "order-price-1",
        &[
            (Slot::order_size11, Slot::order_price11),
            (Slot::order_size12, Slot::order_price12),
            (Slot::order_size13, Slot::order_price13),
        ],
    ),
    (
        "order-size-2",
        "order-price-2",
        &[(Slot::order_size21, Slot::order_price21), (Slot::order_size22, Slot::order_price22)],
    ),
    (
        "order-size-3",
        "order-price-3",
        &[(Slot::order_size31, Slot::order_price31), (Slot::order_size32, Slot::order_price32)],
    ),
];

const NEEDS: [Typed; 2] = [
    Typed::new("order-need2", w::NEED, Slot::order_need2, Reads::Count(0, MOST_PIECES)).may_be_empty(),
    Typed::new("order-need3", w::NEED, Slot::order_need3, Reads::Count(0, MOST_PIECES)).may_be_empty(),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    let mut others = el("div").class("stack");
    for (nth, need) in NEEDS.iter().enumerate() {
        others = others.kid(shown::h3(w::THINGS[nth + 1])).kid(need.field(ui).view()).kid(rows(ui, nth + 1));
    }
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(more(w::REST, shown::then_fields(shown::fields(ui, REST).kid(of(ui)), ui, SPARE)))
        .kid(shown::h3(w::PACKS))
        .kid(rows(ui, 0))
        .kid(more(w::OTHERS, others))
        .kid(more(packs::REST, shown::fields(ui, FEES)))
        .kid(answer(w::TRAPS, shown, 0).view())
        .kid(answer(w::COST, shown, 1).why(w::WHY).view())
        .kid(shown::small(packs::CURRENCY))
}

/// Traps in service: no fewer than were lost.
fn of(ui: Ui) -> El {
    let (lost, of) = (ui.bench().text(Slot::order_lost), ui.bench().text(Slot::order_of));
    let says = move || {
        let error = lost.with(|lost| of.with(|of| lost_of(lost, of))).err();
        match error.filter(|error| matches!(error, TypedError::TooFew { .. })) {
            Some(error) => Says::Wrong(en_typed::count(error)),
            None => of.with(|text| says::optional(says::count(of, 0, MOST_PIECES), text)),
        }
    };
    OF.field(ui).says(says).view()
}

fn rows(ui: Ui, thing: usize) -> El {
    let mut pairs = el("div").class("pairs");
    if let Some((size, price, rows)) = ROWS.get(thing) {
        let size = Typed::new(size, packs::PIECES, Slot::order_size11, Reads::Count(1, MOST_PIECES));
        let price = Typed::new(price, packs::PRICE, Slot::order_price11, Reads::Pack);
        for (index, (of_size, of_price)) in rows.iter().enumerate() {
            let size = shown::of_row(ui, &size.may_be_empty(), (*of_size, *of_size), index + 1);
            let price = shown::of_row(ui, &price.may_be_empty(), (*of_price, *of_price), index + 1);
            pairs = pairs.kid(el("div").class("pair").kid(size).kid(price));
        }
    }
    pairs
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    shown.answer(w::traps(sum.traps.order));
    for line in traps_lines(&sum.known, &sum.traps) {
        shown.line(line);
    }
    let names: Vec<String> = w::THINGS.iter().map(|name| (*name).to_owned()).collect();
    let (big, lines) = cost(&names, &sum.things);
    shown.answer(big);
    for line in lines {
        shown.line(line);
    }
    Some(())
}

/// How many traps the next season takes.
pub(in crate::app) fn traps_lines(known: &NextSeason, traps: &SeasonTraps) -> Vec<String> {
    let percent = |share: f64| locale::percent(share, 1);
    let (least, most) = known.winter;
    let winter = w::winter(&percent(least.fraction()), &percent(most.fraction()));
    let mut lines = vec![w::hives(known.alive, &winter, known.splits, traps.hives, traps.rounded)];
    lines.push(w::hang(traps.hives.1, known.each, traps.hang));
    match (known.lost, traps.breakage) {
        (Some((lost, of)), Some(share)) => {
            lines.push(w::lost(lost, of, &percent(share), traps.limit, traps.with_lost));
        }
        _ => lines.push(w::LOST_UNKNOWN.to_owned()),
    }
    if known.spares > 0 {
        lines.push(w::spares(known.spares, traps.with_spares));
    }
    if known.there > 0 {
        let share = traps.breakage.map(percent).unwrap_or_default();
        lines.push(w::there(known.there, &share, traps.there, traps.less_there));
    }
    if known.stock > 0 {
        lines.push(w::stock(known.stock, traps.order));
    }
    lines
}

/// What the things called `names` cost together, and in which packs.
pub(in crate::app) fn cost(names: &[String], things: &Things) -> (String, Vec<String>) {
    let mut lines = Vec::new();
    let name = |at: usize| names.get(at).map_or("", String::as_str);
    let mut big = if things.nothing() { packs::NOTHING } else { w::NO_PRICE }.to_owned();
    match &things.order {
        Some(Ok(order)) => {
            for (at, basket) in things.priced.iter().zip(&order.baskets) {
                let Some((need, offers)) = things.wanted.get(*at) else { continue };
                if basket.pieces == 0 {
                    continue;
                }
                lines.push(w::thing(name(*at), *need, &money(basket.goods)));
                lines.extend(pack_lines(offers, &Ok(basket.clone())));
                if *need == 0 {
                    lines.push(w::FOR_DELIVERY.to_owned());
                }
            }
            if order.delivery.millionths() > 0 {
                lines.push(packs::delivery(&money(order.delivery)));
            }
            if let Some(most) = order.cheaper_by {
                lines.push(packs::cheaper_by(&money_at_most(most)));
            }
            big = money(order.total);
        }
        Some(Err(error)) => lines.push(packs::refused(error).to_owned()),
        None => {}
    }
    for at in &things.unpriced {
        let need = things.wanted.get(*at).map_or(0, |(need, _)| *need);
        lines.push(w::unpriced(name(*at), need));
    }
    if !things.unpriced.is_empty() && matches!(things.order, Some(Ok(_))) {
        big = w::without(&big);
    }
    (big, lines)
}
