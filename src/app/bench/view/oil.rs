//! Oil to buy for a season.

use super::packs::times;
use super::says::{Reads, money};
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::quantity::{TypedVolume, Volume};
use crate::almanac::supply::Basket;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::oil::{OilSum, reckon};
use crate::app::edge::locale;
use crate::app::el::{El, el};
use crate::app::parts::card::more;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard::{FOOD_GRADE, MAY_BE_EMPTY};
use crate::app::wording::en_sums::{oil as w, packs};

const FIELDS: &[Typed] = &[
    Typed::new("oil-services", w::SERVICES, Slot::oil_services, Reads::Count(0, 366)),
    Typed::new("oil-each", w::EACH, Slot::oil_each, Reads::Volume).unit(Slot::oil_each_unit),
    Typed::new("oil-spill", w::SPILL, Slot::oil_spill, Reads::Share),
];

const SPREAD: Typed = Typed::new("oil-spread", w::SPREAD, Slot::oil_spread, Reads::Volume)
    .unit(Slot::oil_spread_unit)
    .may_be_empty()
    .hint(MAY_BE_EMPTY);

const SIZE: Typed = Typed::new("oil-size-", w::SIZE, Slot::oil_size1, Reads::Bottle).may_be_empty();

const PRICE: Typed = Typed::new("oil-price-", w::PRICE, Slot::oil_price1, Reads::Pack).may_be_empty();

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(more(w::REST, SPREAD.field(ui).view()))
        .kid(shown::h3(w::ROWS))
        .kid(rows(ui))
        .kid(answer(w::BUY, shown, 0).why(w::WHY).view())
        .kid(Notice::caution(FOOD_GRADE).view())
        .kid(Notice::caution(w::WASTE).view())
        .kid(shown::small(w::RANCID))
}

/// Containers and their prices.
fn rows(ui: Ui) -> El {
    const ROWS: [(Slot, Slot, Slot); 3] = [
        (Slot::oil_size1, Slot::oil_unit1, Slot::oil_price1),
        (Slot::oil_size2, Slot::oil_unit2, Slot::oil_price2),
        (Slot::oil_size3, Slot::oil_unit3, Slot::oil_price3),
    ];
    let mut rows = el("div").class("pairs");
    for (index, (size, unit, price)) in ROWS.iter().enumerate() {
        let size = shown::of_row(ui, &SIZE, (*size, *unit), index + 1);
        let price = shown::of_row(ui, &PRICE, (*price, *price), index + 1);
        rows = rows.kid(el("div").class("pair").kid(size).kid(price));
    }
    rows
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    let season = &sum.season;
    let high = ui.volume_up(season.high);
    let services = locale::whole(season.services);
    let spill = locale::percent(season.spill_share.fraction(), 1);
    shown.answer(high.clone());
    // Rounded as the answer above it: one figure is not written in two ways.
    let times = f64::from(season.services) * (1.0 + season.spill_share.fraction());
    let each = ui.volume_in_sum(season.each, times, season.mean, true);
    shown.line(w::mean(&services, &each, &spill, &ui.volume_up(season.mean)));
    if let Some(spread) = sum.spread {
        shown.line(w::high(&ui.volume(spread), &services, &high));
    }
    match &sum.basket {
        Ok(basket) => show_basket(ui, &sum, basket, shown),
        Err(error) => shown.line(packs::refused(error).to_owned()),
    }
    Some(())
}

fn show_basket(ui: Ui, sum: &OilSum, basket: &Basket, shown: &mut Shown) {
    for (row, count) in &basket.packs {
        let Some((size, price)) = sum.sizes.get(*row) else { continue };
        let price = price.unwrap_or_default();
        let total = money(times(price, *count));
        shown.line(w::line(&locale::whole(*count), &as_typed(*size), &money(price), &total));
    }
    if !basket.packs.is_empty() {
        let left = Volume::from_millilitres(f64::from(basket.left_over)).unwrap_or_default();
        shown.line(w::together(&money(basket.total), &ui.volume(left)));
    }
    for row in &basket.left_out {
        if let Some((size, _)) = sum.sizes.get(*row) {
            shown.line(w::left_out(&as_typed(*size)));
        }
    }
}

fn as_typed(size: TypedVolume) -> String {
    locale::volume(size.volume(), size.unit())
}
