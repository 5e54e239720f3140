//! The cheapest packs.
//!
//! Prices are summed in millionths of the keeper's currency, so the cheapest basket is exact.

use crate::almanac::quantity::Decimal;
use crate::almanac::table::Table;
use crate::almanac::trap::Pack;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// The most pieces (or millilitres) one basket is reckoned for.
const MOST: u32 = 250_000;

/// How many part-filled baskets the search past a free-delivery limit looks at before it gives up. Shops whose packs
/// cost clearly different amounts a piece stay far below.
const MOST_TRIALS: usize = 50_000;

/// What to buy, with the sum.
#[derive(Clone, Debug, PartialEq, Eq)]
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
    /// So many near-equal prices that the search for the cheapest way past the free-delivery limit was given up.
    TooAlike,
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
struct Offer {
    price: i64,
    pieces: u64,
    index: usize,
}

/// Ordered as baskets are preferred: cheaper goods, then fewer pieces (so fewer left over), then fewer packs.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Cost {
    goods: i64,
    pieces: u64,
    packs: u32,
}

impl Cost {
    const NONE: Cost = Cost { goods: 0, pieces: 0, packs: 0 };
    const BEYOND: Cost = Cost { goods: i64::MAX, pieces: u64::MAX, packs: u32::MAX };

    fn with(self, offer: Offer) -> Cost {
        let goods = self.goods.saturating_add(offer.price);
        if Decimal::from_millionths(goods).is_err() {
            return Cost::BEYOND;
        }
        Cost { goods, pieces: self.pieces + offer.pieces, packs: self.packs + 1 }
    }
}

/// The cheapest packs that hold at least `need` pieces: the least total with delivery; among equals the one with
/// fewer pieces left over, then the one with fewer packs. Exact, also where buying more makes the delivery free.
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
    if need == 0 {
        return Ok(basket(need, &[], 0, left_out));
    }
    if priced.is_empty() {
        return Err(BasketError::NothingPriced);
    }
    if need > MOST {
        return Err(BasketError::TooMany { most: MOST });
    }
    let table = table(need, &priced);
    let most = table.iter().rposition(|(cost, _)| *cost != Cost::BEYOND).unwrap_or(0);
    let most = u32::try_from(most).unwrap_or(MOST);
    if most < need {
        return Err(BasketError::TooMany { most });
    }
    let (least, bought) = plain(&table, need, &priced);
    let fee = delivery.map_or(0, |d| d.fee.millionths().max(0));
    let free_from = delivery.and_then(|d| d.free_from).map_or(i64::MAX, Decimal::millionths);
    if least.goods >= free_from {
        return Ok(basket(need, &bought, 0, left_out));
    }
    let total = least.goods.saturating_add(fee);
    if free_from <= total && fee > 0 {
        let (larger, more) = past_the_limit(need, &priced, &table, free_from, total)?;
        if (larger.goods, larger.pieces, larger.packs) < (total, least.pieces, least.packs) {
            return Ok(basket(need, &more, 0, left_out));
        }
    }
    if Decimal::from_millionths(total).is_err() {
        return Err(BasketError::TooMany { most: need.saturating_sub(1) });
    }
    Ok(basket(need, &bought, fee, left_out))
}

/// For every need up to `need`: the best cost, and the offer it adds to a smaller need.
fn table(need: u32, offers: &[Offer]) -> Vec<(Cost, Option<Offer>)> {
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

fn best_for(table: &[(Cost, Option<Offer>)], want: u64) -> Cost {
    usize::try_from(want).ok().and_then(|want| table.get(want)).map_or(Cost::BEYOND, |(cost, _)| *cost)
}

/// The best cost for `need` when delivery is left aside, and the offers bought.
fn plain(table: &[(Cost, Option<Offer>)], need: u32, offers: &[Offer]) -> (Cost, Vec<Offer>) {
    let mut want = u64::from(need);
    let mut bought = Vec::with_capacity(offers.len());
    while let Some((_, Some(offer))) = usize::try_from(want).ok().and_then(|want| table.get(want)) {
        bought.push(*offer);
        want = want.saturating_sub(offer.pieces);
    }
    (best_for(table, u64::from(need)), bought)
}

/// The best basket whose goods cost between `free_from` and `most`.
///
/// Part-filled baskets are taken up in order of their price, then of their pieces, and dropped when the cheapest way
/// to complete them costs more than `most`; the first that satisfies both limits is therefore the best.
fn past_the_limit(
    need: u32,
    offers: &[Offer],
    table: &[(Cost, Option<Offer>)],
    free_from: i64,
    most: i64,
) -> Result<(Cost, Vec<Offer>), BasketError> {
    // With the number of those met before (of equals the first is taken up) and the offer that was added.
    let mut open = BinaryHeap::from([Reverse((Cost::NONE, 0_u32, None))]);
    let mut met = 0;
    let mut done: Table<(i64, u64), Option<Offer>> = Table::new();
    while let Some(Reverse((here, _, last))) = open.pop() {
        let place = (here.goods, here.pieces);
        // Reached before, with no more packs.
        if done.contains_key(&place) {
            continue;
        }
        done.insert(place, last.and_then(|last: usize| offers.get(last)).copied());
        if here.goods >= free_from && here.pieces >= u64::from(need) {
            let mut bought = Vec::new();
            let mut at = place;
            while let Some(Some(offer)) = done.get(&at) {
                bought.push(*offer);
                at = (at.0 - offer.price, at.1 - offer.pieces);
            }
            return Ok((here, bought));
        }
        if done.len() > MOST_TRIALS {
            return Err(BasketError::TooAlike);
        }
        for (added, offer) in offers.iter().enumerate() {
            let next = here.with(*offer);
            let to_go = best_for(table, u64::from(need).saturating_sub(next.pieces));
            if next.goods.saturating_add(to_go.goods) <= most {
                met += 1;
                open.push(Reverse((next, met, Some(added))));
            }
        }
    }
    Ok((Cost::BEYOND, Vec::new()))
}

fn basket(need: u32, bought: &[Offer], fee: i64, left_out: Vec<usize>) -> Basket {
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
        delivery: money(fee),
        total: money(goods + fee),
        left_out,
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
    fn a_shelf_of_almost_equal_prices_is_refused_rather_than_guessed() {
        let alike = offers(&[
            (7, 7.000_003),
            (11, 11.000_019),
            (13, 13.000_057),
            (17, 17.000_111),
            (19, 19.000_231),
            (23, 23.000_501),
        ]);
        let far = Some(Delivery { fee: money(400.0), free_from: Some(money(1_390.0)) });
        assert_eq!(cheapest(1000, &alike, far), Err(BasketError::TooAlike));
    }
}
