//! The cheapest packs of several things that one shop brings in one delivery.
//!
//! Without a limit from which the delivery is free each thing is bought for itself. With one, some packs more may cost
//! less than the delivery: for each thing every price within that margin is looked at, and the prices are put together
//! so that the sum is the least past the limit. Where so many packs cost nearly the same that this is more than a key
//! press has time for, packs are added to the plain order until it is past the limit, and how much a cheaper one could
//! save is said: no order without a delivery to pay costs less than the limit.

use super::basket::{
    Basket, BasketError, Cost, Delivery, MOST, Offer, Search, basket, best_for, plain, priced, table,
};
use crate::almanac::order::sort_by;
use crate::almanac::quantity::Decimal;
use crate::almanac::trap::Pack;

/// Part-filled baskets and sums of prices that the search past a free-delivery limit looks at, for one order. Shops whose
/// packs cost clearly different amounts a piece stay far below.
const STATES: usize = 30_000;
/// Most packs of one offer that are tried where that is not enough.
const ADDED: i64 = 250;

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
    /// A cheaper one may exist, by at most this: not every one was compared. None where it is the cheapest for certain.
    pub cheaper_by: Option<Decimal>,
}

/// A thing while it is reckoned with.
struct Wanted {
    need: u32,
    offers: Vec<Offer>,
    left_out: Vec<usize>,
    table: Vec<(Cost, Option<Offer>)>,
    least: Cost,
}

/// A price beyond the least of the things so far: the best cost, the place of the sum of the things before and that of the
/// price of the last one.
struct Sum {
    over: i64,
    cost: Cost,
    before: usize,
    nth: usize,
}

/// What everything costs, and the packs of each thing.
type Bought = (Cost, Vec<Vec<Offer>>);

/// The cheapest packs that hold at least the need of every thing: the least total with the one delivery; among equals the
/// one with fewer pieces, then the one with fewer packs. Exact, also where buying more makes the delivery free, unless it says
/// by how much it may miss. Nothing wanted is nothing bought.
///
/// # Errors
/// [`BasketError`], with the place of the thing it is about.
pub fn order(items: &[Item<'_>], delivery: Option<Delivery>) -> Result<Order, (usize, BasketError)> {
    let mut things = Vec::with_capacity(items.len());
    for (at, item) in items.iter().enumerate() {
        things.push(wanted(*item).map_err(|error| (at, error))?);
    }
    let mut least = Cost::NONE;
    for (at, thing) in things.iter().enumerate() {
        let Some(sum) = plus(least, thing.least) else {
            // So many of it can be reckoned with beside the things before.
            let most = thing.table.iter().rposition(|(cost, _)| plus(least, *cost).is_some()).unwrap_or(0);
            return Err((at, BasketError::TooMany { most: u32::try_from(most).unwrap_or(MOST) }));
        };
        least = sum;
    }
    // From here on only the delivery takes the sum too far: with one piece less of the last thing it may not.
    let at = items.iter().rposition(|item| item.need > 0).unwrap_or(0);
    let fewer = items.get(at).map_or(0, |item| item.need.saturating_sub(1));
    let none = || (at, BasketError::TooMany { most: fewer });
    let fee = delivery.map_or(0, |delivery| delivery.fee.millionths().max(0));
    let free_from = delivery.and_then(|delivery| delivery.free_from).map_or(i64::MAX, Decimal::millionths);
    let wants = items.iter().any(|item| item.need > 0);
    let fee = if wants && least.goods < free_from { fee } else { 0 };
    if fee > 0 && free_from <= least.goods.saturating_add(fee) {
        let gap = free_from - least.goods;
        let exact = past_the_limit(&things, gap, fee);
        let unsure = exact.is_none();
        let found = exact.unwrap_or_else(|| added(&things, least, gap, fee));
        // With a delivery to pay no order is below the plain one, and without one none below the limit.
        let missed = |total: i64| {
            let by = total - free_from;
            Decimal::from_millionths(by).ok().filter(|_| unsure && by > 0)
        };
        if let Some((more, bought)) = found
            && (more.goods, more.pieces, more.packs) < (least.goods + fee, least.pieces, least.packs)
        {
            let order = summed(&things, &bought, 0).ok_or_else(none)?;
            return Ok(Order { cheaper_by: missed(more.goods), ..order });
        }
        let order = plainly(&things, fee).ok_or_else(none)?;
        return Ok(Order { cheaper_by: missed(least.goods + fee), ..order });
    }
    plainly(&things, fee).ok_or_else(none)
}

/// Each thing in its own cheapest packs.
fn plainly(things: &[Wanted], fee: i64) -> Option<Order> {
    let mut bought = Vec::new();
    for thing in things {
        bought.push(plain(&thing.table, u64::from(thing.need)));
    }
    summed(things, &bought, fee)
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

/// The best packs whose price lies `gap` or more above the least, and no more than `fee`. The outer answer is none where
/// [`STATES`] are not enough to be sure.
#[allow(clippy::option_option)] // not known, and known to be none
fn past_the_limit(things: &[Wanted], gap: i64, fee: i64) -> Option<Option<Bought>> {
    let mut states = STATES;
    let mut searches = Vec::with_capacity(things.len());
    for thing in things {
        let ends = (thing.least.goods.saturating_add(gap), thing.least.goods.saturating_add(fee));
        searches.push(Search::of(thing.need, &thing.offers, &thing.table, ends, &mut states)?);
    }
    let mut levels = vec![vec![Sum { over: 0, cost: Cost::NONE, before: 0, nth: 0 }]];
    for (at, (thing, search)) in things.iter().zip(&searches).enumerate() {
        let last = at + 1 == things.len();
        let mut next = Vec::new();
        for (before, sum) in levels.last()?.iter().enumerate() {
            for (nth, full) in search.full.iter().enumerate() {
                let over = sum.over + (full.goods - thing.least.goods);
                let Some(cost) = plus(sum.cost, *full).filter(|_| over <= fee) else { break };
                states = states.checked_sub(1)?;
                // Of the last thing the first price past the limit is the best to this sum.
                if !last || over >= gap {
                    next.push(Sum { over, cost, before, nth });
                }
                if last && over >= gap {
                    break;
                }
            }
        }
        sort_by(&mut next, |one, other| one.over.cmp(&other.over).then(one.cost.cmp(&other.cost)));
        next.dedup_by_key(|sum| sum.over);
        levels.push(next);
    }
    let Some(best) = levels.last()?.first() else { return Some(None) };
    let mut bought = Vec::with_capacity(searches.len());
    let mut sum = best;
    for (search, level) in searches.iter().zip(&levels).rev() {
        bought.push(search.full.get(sum.nth).map(|full| search.bought(*full)).unwrap_or_default());
        sum = level.get(sum.before)?;
    }
    bought.reverse();
    Some(Some((best.cost, bought)))
}

/// So many packs of one offer in the place of others or beside them, and so many of one more beside all.
#[derive(Clone, Copy)]
struct Change {
    cost: Cost,
    /// Thing, offer, packs, and the need of the thing that is left for its own cheapest packs.
    first: (usize, Offer, i64, u64),
    /// Thing, offer, packs.
    second: (usize, Offer, i64),
}

/// The plain order changed by one [`Change`] so that it is past the limit: the best of these, if one costs no more than
/// `fee`.
fn added(things: &[Wanted], least: Cost, gap: i64, fee: i64) -> Option<Bought> {
    let mut offers = Vec::new();
    for (thing, wanted) in things.iter().enumerate() {
        for offer in &wanted.offers {
            offers.push((thing, *offer));
        }
    }
    let mut best: Option<Change> = None;
    for (at, one) in &offers {
        let Some(thing) = things.get(*at) else { continue };
        let need = u64::from(thing.need);
        for many in 0..=ADDED {
            let held = many.unsigned_abs().saturating_mul(one.pieces);
            for rest in [need.saturating_sub(held), need] {
                let own = best_for(&thing.table, rest);
                let over = own.goods.saturating_add(many.saturating_mul(one.price)) - thing.least.goods;
                if over > fee {
                    continue;
                }
                for (of, other) in &offers {
                    let missing = (gap - over).max(0);
                    let more = missing / other.price + i64::from(missing % other.price > 0);
                    let goods = least.goods + over.saturating_add(more.saturating_mul(other.price));
                    if more > ADDED || goods - least.goods > fee || Decimal::from_millionths(goods).is_err() {
                        continue;
                    }
                    let pieces = least.pieces - thing.least.pieces
                        + own.pieces
                        + held
                        + more.unsigned_abs() * other.pieces;
                    let packs = least.packs - thing.least.packs + own.packs + few(many) + few(more);
                    let cost = Cost { goods, pieces, packs };
                    if best.is_none_or(|known| cost < known.cost) {
                        best = Some(Change {
                            cost,
                            first: (*at, *one, many, rest),
                            second: (*of, *other, more),
                        });
                    }
                }
            }
        }
    }
    let Change { cost, first: (at, one, many, rest), second: (of, other, more) } = best?;
    let mut bought = Vec::new();
    for (nth, thing) in things.iter().enumerate() {
        let need = if nth == at { rest } else { u64::from(thing.need) };
        let mut here = plain(&thing.table, need);
        for (place, offer, times) in [(at, one, many), (of, other, more)] {
            for _ in 0..if place == nth { times } else { 0 } {
                here.push(offer);
            }
        }
        bought.push(here);
    }
    Some((cost, bought))
}

/// Packs: [`ADDED`] at the most.
fn few(packs: i64) -> u32 {
    u32::try_from(packs).unwrap_or_default()
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::dice::dice;

    /// Needs, and pieces and hundredths of each pack.
    type Shelves = Vec<(u32, Vec<(u32, i64)>)>;

    fn things(shelves: &Shelves) -> Vec<Wanted> {
        let mut things = Vec::new();
        for (need, offers) in shelves {
            let price = |hundredths: i64| Decimal::from_millionths(hundredths * 10_000).ok();
            let offers: Vec<Pack> =
                offers.iter().map(|(pieces, each)| Pack { pieces: *pieces, price: price(*each) }).collect();
            things.push(wanted(Item { need: *need, offers: &offers }).unwrap());
        }
        things
    }

    /// Hundredths of the goods past a limit `gap` above the plain order and within `fee` of it: by the moves that are
    /// tried where the search is too long, and by the search, which integer programming agrees with
    /// (`tests/figures/orders.py`).
    fn both(shelves: &Shelves, gap: i64, fee: i64) -> (Option<i64>, Option<i64>) {
        let things = things(shelves);
        let (gap, fee) = (gap * 10_000, fee * 10_000);
        let least = things.iter().try_fold(Cost::NONE, |sum, thing| plus(sum, thing.least)).unwrap();
        let moved = added(&things, least, gap, fee);
        if let Some((cost, bought)) = &moved {
            // The packs come to what is said of them and are enough.
            let all = bought.iter().flatten();
            let goods: i64 = all.clone().map(|offer| offer.price).sum();
            let packs = u32::try_from(all.clone().count()).unwrap();
            assert_eq!(
                (goods, all.map(|offer| offer.pieces).sum(), packs),
                (cost.goods, cost.pieces, cost.packs)
            );
            assert!((gap..=fee).contains(&(goods - least.goods)), "{shelves:?} {gap} {fee}");
            for (thing, bought) in things.iter().zip(bought) {
                assert!(bought.iter().map(|offer| offer.pieces).sum::<u64>() >= u64::from(thing.need));
            }
        }
        let cents = |bought: Option<Bought>| bought.map(|(cost, _)| cost.goods / 10_000);
        (cents(moved), cents(past_the_limit(&things, gap, fee).unwrap()))
    }

    #[test]
    fn too_many_is_said_of_the_thing_at_which_the_sum_passes_what_a_price_can_be() {
        let price = |whole: u32| [Pack { pieces: 1, price: Some(Decimal::whole(whole)) }];
        let (dear, cheap) = (price(600_000_000), price(150_000_000));
        let ask = |needs: [u32; 3]| {
            let [one, two, three] = needs;
            let items = [
                Item { need: one, offers: &dear },
                Item { need: two, offers: &cheap },
                Item { need: three, offers: &cheap },
            ];
            order(&items, None).map(|order| order.goods)
        };
        assert_eq!(ask([1, 2, 0]), Ok(Decimal::whole(900_000_000)));
        assert_eq!(ask([1, 4, 1]), Err((1, BasketError::TooMany { most: 2 })));
        assert_eq!(ask([1, 1, 2]), Err((2, BasketError::TooMany { most: 1 })));
        assert_eq!(ask([2, 0, 0]), Err((0, BasketError::TooMany { most: 1 })));
        let fee = Delivery { fee: Decimal::whole(150_000_000), free_from: None };
        let items = [Item { need: 1, offers: &dear }, Item { need: 2, offers: &cheap }];
        assert_eq!(order(&items, Some(fee)).err(), Some((1, BasketError::TooMany { most: 1 })));
    }

    #[test]
    fn packs_stand_in_for_others_and_beside_them() {
        // Ten single pieces for 11.50 in the place of one pack of ten; two of them beside it come to 12.30.
        assert_eq!(both(&vec![(10, vec![(10, 1000), (1, 115)])], 150, 500), (Some(1150), Some(1150)));
        // 5.00 + 5.00 and one of each of the others beside them; with one of the others in a place the least is 26.30.
        let beside = vec![(10, vec![(5, 500), (5, 710), (5, 900)])];
        assert_eq!(both(&beside, 1610, 2000), (Some(2610), Some(2610)));
        // What closes the gap is a pack each of two other things.
        let others = vec![(1, vec![(1, 1000)]), (0, vec![(1, 299)]), (0, vec![(1, 450)])];
        assert_eq!(both(&others, 749, 800), (Some(1749), Some(1749)));
    }

    #[test]
    fn the_moves_beyond_the_search_find_no_order_below_the_cheapest_and_mostly_that() {
        let mut draw = dice(5);
        let (mut some, mut alike) = (0, 0);
        for _ in 0..400 {
            let mut shelves = Vec::new();
            for _ in 0..draw(1, 3) {
                let mut offers = Vec::new();
                for _ in 0..draw(1, 4) {
                    let pieces = draw(1, 7);
                    offers.push((pieces, i64::from(pieces * draw(90, 130))));
                }
                shelves.push((draw(1, 12), offers));
            }
            let gap = i64::from(draw(1, 700));
            let (moved, least) = both(&shelves, gap, gap + i64::from(draw(0, 400)));
            assert!(moved.is_none_or(|moved| least.is_some_and(|least| moved >= least)), "{shelves:?} {gap}");
            some += u32::from(least.is_some());
            alike += u32::from(least.is_some() && moved == least);
        }
        assert!(some >= 300 && alike * 100 >= some * 80, "{alike} of {some}");
    }
}
