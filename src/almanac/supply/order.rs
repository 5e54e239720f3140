//! The cheapest packs of several things that one shop brings in one delivery.
//!
//! Without a limit from which the delivery is free each thing is bought for itself. With one, some packs more may cost less
//! than the delivery: for each thing every price within that margin is looked at, and the prices are put together so that
//! the sum is the least past the limit.

use super::basket::{
    Basket, BasketError, Cost, Delivery, MOST, Offer, Search, basket, best_for, plain, priced, table,
};
use crate::almanac::quantity::Decimal;
use crate::almanac::table::Table;
use crate::almanac::trap::Pack;

/// A thing to buy.
#[derive(Clone, Copy, Debug)]
pub struct Item<'a> {
    /// Pieces wanted; a thing of which none is wanted may still be what makes the delivery free.
    pub need: u32,
    /// How it is sold.
    pub offers: &'a [Pack],
}

/// What to buy of each thing, with the sum.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Order {
    /// A basket for each thing, in their order; the delivery is in none of them.
    pub baskets: Vec<Basket>,
    /// Price of all packs.
    pub goods: Decimal,
    /// Price of the delivery.
    pub delivery: Decimal,
    /// Both.
    pub total: Decimal,
}

/// A thing while it is reckoned with.
struct Wanted {
    need: u32,
    offers: Vec<Offer>,
    left_out: Vec<usize>,
    table: Vec<(Cost, Option<Offer>)>,
    least: Cost,
}

/// Prices beyond the least of all things together, each with the best cost and the place of its price among those of each
/// thing.
type Sums = Table<i64, (Cost, Vec<usize>)>;

/// What everything costs, and the packs of each thing.
type Bought = (Cost, Vec<Vec<Offer>>);

/// The cheapest packs that hold at least the need of every thing: the least total with the one delivery; among equals the
/// one with fewer pieces, then the one with fewer packs. Exact, also where buying more makes the delivery free. Nothing
/// wanted is nothing bought.
///
/// # Errors
/// [`BasketError`], with the place of the thing it is about.
pub fn order(items: &[Item<'_>], delivery: Option<Delivery>) -> Result<Order, (usize, BasketError)> {
    let mut things = Vec::with_capacity(items.len());
    for (at, item) in items.iter().enumerate() {
        things.push(wanted(*item).map_err(|error| (at, error))?);
    }
    let fewer = items.first().map_or(0, |item| item.need.saturating_sub(1));
    let none = || (0, BasketError::TooMany { most: fewer });
    let mut least = Cost::NONE;
    for thing in &things {
        least = plus(least, thing.least).ok_or_else(none)?;
    }
    let fee = delivery.map_or(0, |delivery| delivery.fee.millionths().max(0));
    let free_from = delivery.and_then(|delivery| delivery.free_from).map_or(i64::MAX, Decimal::millionths);
    let wants = items.iter().any(|item| item.need > 0);
    let fee = if wants && least.goods < free_from { fee } else { 0 };
    if fee > 0 && free_from <= least.goods.saturating_add(fee) {
        let gap = free_from - least.goods;
        if let Some((more, bought)) = past_the_limit(&things, gap, fee)?
            && (more.goods, more.pieces, more.packs) < (least.goods + fee, least.pieces, least.packs)
        {
            return summed(&things, &bought, 0).ok_or_else(none);
        }
    }
    let bought: Vec<Vec<Offer>> = things.iter().map(|thing| plain(&thing.table, thing.need)).collect();
    summed(&things, &bought, fee).ok_or_else(none)
}

fn wanted(item: Item<'_>) -> Result<Wanted, BasketError> {
    let (offers, left_out) = priced(item.offers)?;
    let need = item.need;
    if need > 0 && offers.is_empty() {
        return Err(BasketError::NothingPriced);
    }
    if need > MOST {
        return Err(BasketError::TooMany { most: MOST });
    }
    let table = table(need, &offers);
    let most = table.iter().rposition(|(cost, _)| *cost != Cost::BEYOND).unwrap_or(0);
    let most = u32::try_from(most).unwrap_or(MOST);
    if most < need {
        return Err(BasketError::TooMany { most });
    }
    let least = best_for(&table, u64::from(need));
    Ok(Wanted { need, offers, left_out, table, least })
}

/// Both together; none beyond what a price can be.
fn plus(one: Cost, other: Cost) -> Option<Cost> {
    let goods = one.goods.saturating_add(other.goods);
    Decimal::from_millionths(goods).ok()?;
    let pieces = one.pieces.saturating_add(other.pieces);
    Some(Cost { goods, pieces, packs: one.packs.saturating_add(other.packs) })
}

/// The best packs whose price lies `gap` or more above the least, and no more than `fee`.
fn past_the_limit(things: &[Wanted], gap: i64, fee: i64) -> Result<Option<Bought>, (usize, BasketError)> {
    let mut searches = Vec::with_capacity(things.len());
    let mut sums = Sums::new();
    sums.insert(0, (Cost::NONE, Vec::new()));
    for (at, thing) in things.iter().enumerate() {
        let (enough, most) = (thing.least.goods.saturating_add(gap), thing.least.goods.saturating_add(fee));
        let search = Search::of(thing.need, &thing.offers, &thing.table, enough, most);
        let search = search.map_err(|error| (at, error))?;
        let mut next = Sums::new();
        for (over, (cost, chosen)) in &sums {
            for (nth, full) in search.full.iter().enumerate() {
                let over = over + (full.goods - thing.least.goods);
                let Some(cost) = plus(*cost, *full).filter(|_| over <= fee) else { break };
                let known = next.or_insert(over, (Cost::BEYOND, Vec::new()));
                if cost < known.0 {
                    let mut chosen = chosen.clone();
                    chosen.push(nth);
                    *known = (cost, chosen);
                }
            }
        }
        sums = next;
        searches.push(search);
    }
    let Some((_, (cost, chosen))) = sums.iter().find(|(over, _)| **over >= gap) else { return Ok(None) };
    let mut bought = Vec::with_capacity(searches.len());
    for (search, nth) in searches.iter().zip(chosen) {
        bought.push(search.full.get(*nth).map(|full| search.bought(*full)).unwrap_or_default());
    }
    Ok(Some((*cost, bought)))
}

fn summed(things: &[Wanted], bought: &[Vec<Offer>], fee: i64) -> Option<Order> {
    let mut order = Order::default();
    let mut goods = 0_i64;
    for (thing, bought) in things.iter().zip(bought) {
        let basket = basket(thing.need, bought, thing.left_out.clone());
        goods = goods.saturating_add(basket.goods.millionths());
        order.baskets.push(basket);
    }
    order.goods = Decimal::from_millionths(goods).ok()?;
    order.delivery = Decimal::from_millionths(fee).ok()?;
    order.total = Decimal::from_millionths(goods.saturating_add(fee)).ok()?;
    Some(order)
}
