//! The cheapest packs.
//!
//! Prices are summed in millionths of the keeper's currency, so the cheapest basket is exact.

use super::order::{Item, order};
use crate::almanac::quantity::Decimal;
use crate::almanac::table::Table;
use crate::almanac::trap::Pack;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// The most pieces (or millilitres) one basket is reckoned for.
pub(super) const MOST: u32 = 250_000;

/// What to buy, with the sum.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Basket {
    /// Index of an offer and how many of it, ascending; offers that are not bought are left out.
    pub packs: Vec<(usize, u32)>,
    /// Pieces in all packs.
    pub pieces: u32,
    /// Pieces beyond the need.
    pub left_over: u32,
    /// Price of the packs.
    pub goods: Decimal,
    /// Price of the delivery.
    pub delivery: Decimal,
    /// Both.
    pub total: Decimal,
    /// Indices of offers that took no part because they have no price.
    pub left_out: Vec<usize>,
    /// A cheaper one may exist, by at most this: not every one was compared. None where it is the cheapest for certain.
    pub cheaper_by: Option<Decimal>,
}

/// Why there is no cheapest basket.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BasketError {
    /// No offer has a price: missing and 0 are both "not known", never free.
    NothingPriced,
    /// The need is larger than the sum is made for, or than 10⁹ of the currency buys.
    TooMany {
        /// The largest need that can be reckoned.
        most: u32,
    },
    /// An offer holds 0 pieces.
    PackOfNothing {
        /// Its index.
        index: usize,
    },
}

/// What a shop charges for bringing the goods.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Delivery {
    /// Price of a delivery.
    pub fee: Decimal,
    /// Price of goods from which it is free.
    pub free_from: Option<Decimal>,
}

/// An offer with a price: millionths, pieces, index.
#[derive(Clone, Copy)]
pub(super) struct Offer {
    pub(super) price: i64,
    pub(super) pieces: u64,
    index: usize,
}

/// Ordered as baskets are preferred: cheaper goods, then fewer pieces (so fewer left over), then fewer packs.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Cost {
    pub(super) goods: i64,
    pub(super) pieces: u64,
    pub(super) packs: u32,
}

impl Cost {
    pub(super) const NONE: Cost = Cost { goods: 0, pieces: 0, packs: 0 };
    pub(super) const BEYOND: Cost = Cost { goods: i64::MAX, pieces: u64::MAX, packs: u32::MAX };

    fn with(self, offer: Offer) -> Cost {
        let goods = self.goods.saturating_add(offer.price);
        if Decimal::from_millionths(goods).is_err() {
            return Cost::BEYOND;
        }
        Cost { goods, pieces: self.pieces + offer.pieces, packs: self.packs + 1 }
    }
}

/// The cheapest packs that hold at least `need` pieces: the least total with delivery; among equals the one with
/// fewer pieces left over, then the one with fewer packs. Exact, also where buying more makes the delivery free, but where so
/// many packs cost nearly the same that it says by how much it may miss.
///
/// # Errors
/// [`BasketError`].
///
/// ```
/// use beetle_almanac::almanac::{quantity::Decimal, supply::cheapest, trap::Pack};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let offer = |pieces, price| Ok::<_, Box<dyn std::error::Error>>(Pack { pieces, price: Some(Decimal::from_f64(price)?) });
/// let offers = [offer(1, 2.20)?, offer(5, 9.50)?, offer(12, 18.00)?];
/// // 24 pieces in two large packs cost less than 23 made up exactly.
/// let basket = cheapest(23, &offers, None).map_err(|_| "no basket")?;
/// assert_eq!((basket.packs, basket.left_over, basket.total), (vec![(2, 2)], 1, Decimal::whole(36)));
/// # Ok(()) }
/// ```
pub fn cheapest(need: u32, offers: &[Pack], delivery: Option<Delivery>) -> Result<Basket, BasketError> {
    let ordered = order(&[Item { need, offers }], delivery).map_err(|(_, error)| error)?;
    let basket = ordered.baskets.into_iter().next().unwrap_or_default();
    Ok(Basket { delivery: ordered.delivery, total: ordered.total, cheaper_by: ordered.cheaper_by, ..basket })
}

/// The offers with a price, and those that have none.
pub(super) fn priced(offers: &[Pack]) -> Result<(Vec<Offer>, Vec<usize>), BasketError> {
    if let Some(index) = offers.iter().position(|offer| offer.pieces == 0) {
        return Err(BasketError::PackOfNothing { index });
    }
    let mut left_out = Vec::new();
    let mut priced = Vec::new();
    for (index, offer) in offers.iter().enumerate() {
        match offer.price {
            Some(price) if price > Decimal::ZERO => {
                priced.push(Offer { price: price.millionths(), pieces: u64::from(offer.pieces), index });
            }
            _ => left_out.push(index),
        }
    }
    Ok((priced, left_out))
}

/// For every need up to `need`: the best cost, and the offer it adds to a smaller need.
pub(super) fn table(need: u32, offers: &[Offer]) -> Vec<(Cost, Option<Offer>)> {
    let mut table: Vec<(Cost, Option<Offer>)> = Vec::with_capacity(need as usize + 1);
    table.push((Cost::NONE, None));
    for want in 1..=u64::from(need) {
        let best = offers
            .iter()
            .map(|offer| (best_for(&table, want.saturating_sub(offer.pieces)).with(*offer), Some(*offer)))
            .min_by_key(|(cost, _)| *cost);
        table.push(best.unwrap_or((Cost::BEYOND, None)));
    }
    table
}

pub(super) fn best_for(table: &[(Cost, Option<Offer>)], want: u64) -> Cost {
    usize::try_from(want).ok().and_then(|want| table.get(want)).map_or(Cost::BEYOND, |(cost, _)| *cost)
}

/// Baskets that hold `need` pieces: the search they came from, and the best of each price of goods, cheapest first.
pub(super) struct Search {
    /// Part-filled and full baskets by price and pieces, each with the offer that was added last.
    done: Table<(i64, u64), Option<Offer>>,
    /// The best full basket of each price.
    pub(super) full: Vec<Cost>,
}

impl Search {
    /// Every price up to `most` that a full basket can have, and no more once one costs `enough`.
    ///
    /// Part-filled baskets are taken up in order of their price, then of their pieces, and dropped when the cheapest
    /// way to complete them costs more than `most`; the first full one of a price is therefore the best of it. Each
    /// that is taken up or put aside is taken off `states`; none when those are used up.
    pub(super) fn of(
        need: u32,
        offers: &[Offer],
        table: &[(Cost, Option<Offer>)],
        (enough, most): (i64, i64),
        states: &mut usize,
    ) -> Option<Search> {
        // With the number of those met before (of equals the first is taken up) and the offer that was added.
        let mut open = BinaryHeap::from([Reverse((Cost::NONE, 0_u32, None))]);
        let mut met = 0;
        let mut search = Search { done: Table::new(), full: Vec::new() };
        while let Some(Reverse((here, _, last))) = open.pop() {
            let place = (here.goods, here.pieces);
            // Reached before, with no more packs.
            if search.done.contains_key(&place) {
                continue;
            }
            search.done.insert(place, last.and_then(|last: usize| offers.get(last)).copied());
            if here.pieces >= u64::from(need) && search.full.last().is_none_or(|full| full.goods < here.goods)
            {
                search.full.push(here);
                if here.goods >= enough {
                    break;
                }
            }
            for (added, offer) in offers.iter().enumerate() {
                let next = here.with(*offer);
                let to_go = best_for(table, u64::from(need).saturating_sub(next.pieces));
                if next.goods.saturating_add(to_go.goods) <= most {
                    met += 1;
                    *states = states.checked_sub(1)?;
                    open.push(Reverse((next, met, Some(added))));
                }
            }
        }
        Some(search)
    }

    /// The packs of a full basket.
    pub(super) fn bought(&self, full: Cost) -> Vec<Offer> {
        let mut bought = Vec::new();
        let mut at = (full.goods, full.pieces);
        while let Some(Some(offer)) = self.done.get(&at) {
            bought.push(*offer);
            at = (at.0 - offer.price, at.1 - offer.pieces);
        }
        bought
    }
}

/// The packs of the cheapest basket, delivery left aside.
pub(super) fn plain(table: &[(Cost, Option<Offer>)], need: u64) -> Vec<Offer> {
    let mut want = need;
    let mut bought = Vec::new();
    while let Some((_, Some(offer))) = usize::try_from(want).ok().and_then(|want| table.get(want)) {
        bought.push(*offer);
        want = want.saturating_sub(offer.pieces);
    }
    bought
}

/// The basket of these packs, brought for nothing.
pub(super) fn basket(need: u32, bought: &[Offer], left_out: Vec<usize>) -> Basket {
    let mut packs: Table<usize, u32> = Table::new();
    for offer in bought {
        *packs.or_insert(offer.index, 0) += 1;
    }
    let pieces: u64 = bought.iter().map(|offer| offer.pieces).sum();
    let pieces = u32::try_from(pieces).unwrap_or(u32::MAX);
    let goods: i64 = bought.iter().map(|offer| offer.price).sum();
    // Every basket was held below 10⁹ while it was put together.
    let money = |millionths| Decimal::from_millionths(millionths).unwrap_or_default();
    Basket {
        packs: packs.into_iter().collect(),
        pieces,
        left_over: pieces.saturating_sub(need),
        goods: money(goods),
        delivery: Decimal::ZERO,
        total: money(goods),
        left_out,
        cheaper_by: None,
    }
}

#[cfg(test)]
mod tests {
    use super::{BasketError, Delivery, MOST, cheapest};
    use crate::almanac::quantity::Decimal;
    use crate::almanac::trap::Pack;

    fn money(value: f64) -> Decimal {
        Decimal::from_f64(value).unwrap_or_default()
    }

    fn offers(list: &[(u32, f64)]) -> Vec<Pack> {
        list.iter().map(|(pieces, price)| Pack { pieces: *pieces, price: Some(money(*price)) }).collect()
    }

    const SHELF: [(u32, f64); 3] = [(1, 2.20), (5, 9.50), (12, 18.00)];

    #[test]
    fn the_cheapest_packs_of_the_published_shelf() {
        for (need, total, pieces) in
            [(1, 2.20, 1), (4, 8.80, 4), (7, 13.90, 7), (23, 36.00, 24), (35, 54.00, 36), (37, 56.20, 37)]
        {
            let basket = cheapest(need, &offers(&SHELF), None);
            assert_eq!(
                basket.map(|b| (b.total, b.pieces, b.left_over)),
                Ok((money(total), pieces, pieces - need))
            );
        }
    }

    #[test]
    fn keeper_leaves_a_price_empty_and_the_offer_is_left_out_not_free() {
        let mut shelf = offers(&SHELF);
        shelf[2].price = None;
        shelf[1].price = Some(Decimal::ZERO);
        let basket = cheapest(23, &shelf, None);
        assert_eq!(basket.map(|b| (b.packs, b.left_out)), Ok((vec![(0, 23)], vec![1, 2])));
        shelf[0].price = None;
        assert_eq!(cheapest(23, &shelf, None), Err(BasketError::NothingPriced));
        assert_eq!(cheapest(23, &[], None), Err(BasketError::NothingPriced));
        assert_eq!(cheapest(0, &shelf, None).map(|b| (b.packs, b.total)), Ok((vec![], Decimal::ZERO)));
    }

    #[test]
    fn keeper_asks_for_more_traps_than_there_are_or_for_packs_of_nothing() {
        assert_eq!(cheapest(MOST + 1, &offers(&SHELF), None), Err(BasketError::TooMany { most: MOST }));
        assert_eq!(cheapest(3, &offers(&[(1, 4e8)]), None), Err(BasketError::TooMany { most: 2 }));
        assert_eq!(
            cheapest(1, &offers(&[(1, 1.0), (0, 1.0)]), None),
            Err(BasketError::PackOfNothing { index: 1 })
        );
        let huge = cheapest(1, &offers(&[(u32::MAX, 1.0)]), None);
        assert_eq!(huge.map(|b| (b.pieces, b.left_over)), Ok((u32::MAX, u32::MAX - 1)));
    }

    #[test]
    fn one_pack_more_makes_the_delivery_free_and_the_whole_cheaper() {
        let delivery = |fee, from| Some(Delivery { fee: money(fee), free_from: Some(money(from)) });
        // 5.00 + 3.00 or 8.00: as much, and the single piece leaves nothing over.
        let alike = cheapest(1, &offers(&[(10, 5.00), (1, 8.00)]), delivery(3.00, 8.00));
        assert_eq!(alike.map(|b| (b.packs, b.total, b.pieces)), Ok((vec![(1, 1)], money(8.00), 1)));
        // 36.00 + 6.90 against 36.00 + 4.40
        let basket = cheapest(23, &offers(&SHELF), delivery(6.90, 40.0));
        assert_eq!(
            basket.map(|b| (b.packs, b.goods, b.delivery, b.total)),
            Ok((vec![(0, 2), (2, 2)], money(40.40), Decimal::ZERO, money(40.40)))
        );
        // 36.00 + 4.00 against 40.40
        let basket = cheapest(23, &offers(&SHELF), delivery(4.00, 40.0));
        assert_eq!(
            basket.map(|b| (b.packs, b.delivery, b.total)),
            Ok((vec![(2, 2)], money(4.0), money(40.0)))
        );
        // already above the limit
        let basket = cheapest(23, &offers(&SHELF), delivery(4.00, 36.0));
        assert_eq!(basket.map(|b| (b.delivery, b.total)), Ok((Decimal::ZERO, money(36.0))));
        // no limit
        let flat = Some(Delivery { fee: money(4.0), free_from: None });
        assert_eq!(cheapest(23, &offers(&SHELF), flat).map(|b| b.total), Ok(money(40.0)));
        // nothing bought, nothing brought
        assert_eq!(cheapest(0, &offers(&SHELF), flat).map(|b| b.total), Ok(Decimal::ZERO));
    }

    #[test]
    fn among_equals_fewer_left_over_then_fewer_packs() {
        let even = offers(&[(1, 1.0), (2, 2.0), (3, 3.0)]);
        assert_eq!(cheapest(6, &even, None).map(|b| (b.packs, b.left_over)), Ok((vec![(2, 2)], 0)));
        let round = offers(&[(4, 5.0), (5, 5.0)]);
        assert_eq!(cheapest(4, &round, None).map(|b| (b.packs, b.left_over)), Ok((vec![(0, 1)], 0)));
        let free = Some(Delivery { fee: money(5.0), free_from: Some(money(6.0)) });
        assert_eq!(cheapest(3, &even, free).map(|b| (b.packs, b.pieces)), Ok((vec![(2, 2)], 6)));
        // 4.00 with 2.00 for the delivery, or 6.00 without: the same money, one piece less left over.
        let tied = Some(Delivery { fee: money(2.0), free_from: Some(money(6.0)) });
        let basket = cheapest(4, &offers(&[(1, 1.0), (5, 6.0)]), tied);
        assert_eq!(basket.map(|b| (b.packs, b.total)), Ok((vec![(0, 4)], money(6.0))));
    }

    #[test]
    fn a_shelf_of_almost_equal_prices_has_an_order_that_says_by_how_much_it_may_miss() {
        let alike = offers(&[
            (7, 7.000_003),
            (11, 11.000_019),
            (13, 13.000_057),
            (17, 17.000_111),
            (19, 19.000_231),
            (23, 23.000_501),
        ]);
        let far = Some(Delivery { fee: money(400.0), free_from: Some(money(1_390.0)) });
        let basket = cheapest(1000, &alike, far).unwrap();
        // No order costs less than the limit or than the plain one with its delivery.
        let by = basket.cheaper_by.unwrap();
        assert!(basket.delivery == Decimal::ZERO && basket.goods >= money(1_390.0));
        assert_eq!(basket.total.millionths() - by.millionths(), money(1_390.0).millionths());
        assert!(by < money(1.0), "{by:?}");
        // Where the plain order is the best that was found it is told, with the same bound.
        let dear = offers(&[(1000, 1000.0), (1, 380.0), (3, 381.0)]);
        let basket = cheapest(1000, &dear, far).unwrap();
        assert_eq!((basket.total, basket.cheaper_by), (money(1_400.0), None));
    }
}
