//! Packs or singles.

use super::draft::BenchDraft;
use super::read::{self, MOST_PIECES};
use crate::almanac::quantity::Decimal;
use crate::almanac::supply::{Basket, BasketError, Delivery, cheapest};
use crate::almanac::trap::Pack;
use crate::almanac::typed::{self, TypedError};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct PacksSum {
    /// Pieces wanted.
    pub need: u32,
    /// What was offered, in rows as typed.
    pub offers: Vec<Pack>,
    /// The cheapest basket, or why there is none.
    pub basket: Result<Basket, BasketError>,
    /// One kind of pack alone, before delivery: row, packs, price.
    pub alone: Vec<(usize, u32, Decimal)>,
}

/// Rows of the price list: pieces and price.
pub fn rows(draft: &BenchDraft) -> [(&str, &str); 5] {
    [
        (draft.packs_size1(), draft.packs_price1()),
        (draft.packs_size2(), draft.packs_price2()),
        (draft.packs_size3(), draft.packs_price3()),
        (draft.packs_size4(), draft.packs_price4()),
        (draft.packs_size5(), draft.packs_price5()),
    ]
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<PacksSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<PacksSum, TypedError> {
    let need = typed::count(draft.packs_need(), 0, MOST_PIECES)?;
    let mut offers = Vec::new();
    for (pieces, price) in rows(draft) {
        if let Some(pieces) = read::maybe(typed::count(pieces, 1, MOST_PIECES))? {
            offers.push(Pack { pieces, price: read::maybe(typed::price(price))? });
        }
    }
    let fee = read::maybe(typed::price(draft.packs_fee()))?;
    let free_from = read::maybe(typed::price(draft.packs_free()))?;
    let delivery = fee.map(|fee| Delivery { fee, free_from });
    let alone = offers.iter().enumerate().filter_map(|(row, offer)| {
        let packs = need.div_ceil(offer.pieces);
        let price = offer.price.filter(|price| *price > Decimal::ZERO)?;
        let sum = price.millionths().checked_mul(i64::from(packs))?;
        Some((row, packs, Decimal::from_millionths(sum).ok()?))
    });
    let alone = alone.collect();
    let basket = cheapest(need, &offers, delivery);
    Ok(PacksSum { need, offers, basket, alone })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: need and total at singles 2.20, five 9.50, twelve 18.00.
    #[test]
    fn the_cheapest_basket_may_hold_more_than_was_wanted() {
        for (need, pieces, total) in [
            ("1", 1, 2.2),
            ("4", 4, 8.8),
            ("7", 7, 13.9),
            ("23", 24, 36.0),
            ("35", 36, 54.0),
            ("37", 37, 56.2),
        ] {
            let draft = BenchDraft::default().with("packs_need", need);
            let basket = reckon(&draft).unwrap().basket.unwrap();
            assert_eq!((basket.pieces, basket.total), (pieces, Decimal::from_f64(total).unwrap()), "{need}");
        }
    }

    /// Packs of nearly one price a piece, and a delivery that is free far above what is needed: `journeys/what-to-buy`.
    #[test]
    fn packs_that_cost_nearly_the_same_have_a_bound() {
        let mut draft = BenchDraft::default().with("packs_need", "1000").with("packs_fee", "400");
        for (slot, text) in [
            ("packs_size1", "17"),
            ("packs_price1", "17.0111"),
            ("packs_size2", "19"),
            ("packs_price2", "19.0231"),
            ("packs_size3", "23"),
            ("packs_price3", "23.0501"),
            ("packs_free", "1390"),
        ] {
            draft = draft.with(slot, text);
        }
        let basket = reckon(&draft).unwrap().basket.unwrap();
        assert!(basket.cheaper_by.is_some(), "{basket:?}");
    }

    #[test]
    fn a_pack_without_a_price_is_left_out_and_named() {
        let draft = BenchDraft::default().with("packs_price3", "");
        let sum = reckon(&draft).unwrap();
        assert_eq!(sum.basket.unwrap().left_out, [2]);
        assert_eq!(sum.alone.len(), 2);
    }
}
