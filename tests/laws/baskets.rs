//! Baskets: enough, cheapest, exact.

use super::{millionths, ml};
use beetle_almanac::almanac::quantity::{Decimal, Share, Volume};
use beetle_almanac::almanac::supply::{
    Basket, BasketError, Delivery, Item, Order, cheapest, containers, oil_to_buy, order,
};
use beetle_almanac::almanac::trap::Pack;
use proptest::collection::vec;
use proptest::prelude::*;

/// A price in tenths of the currency.
fn tenths(value: u32) -> Decimal {
    millionths(i64::from(value) * 100_000)
}

fn shelf(offers: &[(u32, u32)]) -> Vec<Pack> {
    offers.iter().map(|(pieces, price)| Pack { pieces: *pieces, price: Some(tenths(*price)) }).collect()
}

fn offers() -> impl Strategy<Value = Vec<(u32, u32)>> {
    vec((1..30_u32, 1..400_u32), 1..5)
}

fn deliveries() -> impl Strategy<Value = Option<Delivery>> {
    proptest::option::of(
        (0..120_u32, proptest::option::of(0..3000_u32))
            .prop_map(|(fee, free_from)| Delivery { fee: tenths(fee), free_from: free_from.map(tenths) }),
    )
}

fn count(basket: &Basket) -> u32 {
    basket.packs.iter().map(|(_, count)| count).sum()
}

/// The best (total, pieces, packs) over every way to fill a basket, told in tenths.
fn every_basket(need: u32, offers: &[(u32, u32)], fee: u32, free_from: Option<u32>) -> (u32, u32, u32) {
    // More than this of one offer could be put back: need and limit are met by fewer.
    let most = need.max(free_from.unwrap_or(0));
    let mut best = (u32::MAX, 0, 0);
    let mut counts = vec![0; offers.len()];
    loop {
        let pieces: u32 = counts.iter().zip(offers).map(|(n, (size, _))| n * size).sum();
        let goods: u32 = counts.iter().zip(offers).map(|(n, (_, price))| n * price).sum();
        if pieces >= need {
            let delivery = if free_from.is_some_and(|limit| goods >= limit) { 0 } else { fee };
            best = best.min((goods + delivery, pieces, counts.iter().sum()));
        }
        let Some(at) = counts.iter().position(|n| *n < most) else { return best };
        counts[..at].fill(0);
        counts[at] += 1;
    }
}

proptest! {
    #[test]
    fn a_small_basket_is_the_best_of_all_baskets(
        need in 1..12_u32,
        offers in vec((1..8_u32, 1..12_u32), 1..4),
        fee in 0..10_u32,
        free_from in proptest::option::of(0..24_u32),
    ) {
        let delivery = Delivery { fee: tenths(fee), free_from: free_from.map(tenths) };
        let basket = cheapest(need, &shelf(&offers), Some(delivery)).unwrap();
        let (total, pieces, packs) = every_basket(need, &offers, fee, free_from);
        prop_assert_eq!((basket.total, basket.pieces, count(&basket)), (tenths(total), pieces, packs));
    }

    /// Every piece costs the same, or nearly: ties wherever one looks.
    #[test]
    fn among_equally_cheap_baskets_the_one_with_fewest_pieces_and_then_packs_is_best(
        need in 1..12_u32,
        sizes in vec((1..8_u32, 0..4_u32), 1..4),
        fee in 0..10_u32,
        free_from in proptest::option::of(0..24_u32),
    ) {
        let offers: Vec<(u32, u32)> = sizes.iter().map(|(size, more)| (*size, size + more / 3)).collect();
        let delivery = Delivery { fee: tenths(fee), free_from: free_from.map(tenths) };
        let basket = cheapest(need, &shelf(&offers), Some(delivery)).unwrap();
        let (total, pieces, packs) = every_basket(need, &offers, fee, free_from);
        prop_assert_eq!((basket.total, basket.pieces, count(&basket)), (tenths(total), pieces, packs));
    }

    #[test]
    fn a_basket_is_enough_and_adds_up(need in 0..400_u32, offers in offers(), delivery in deliveries()) {
        let shelf = shelf(&offers);
        let basket = cheapest(need, &shelf, delivery).unwrap();
        let pieces: u32 = basket.packs.iter().map(|(index, n)| shelf[*index].pieces * n).sum();
        let goods: i64 =
            basket.packs.iter().map(|(index, n)| shelf[*index].price.unwrap().millionths() * i64::from(*n)).sum();
        prop_assert!(basket.pieces >= need && basket.pieces == pieces && basket.left_over == pieces - need);
        prop_assert_eq!(basket.goods.millionths(), goods);
        prop_assert_eq!(basket.total.millionths(), goods + basket.delivery.millionths());
        let free = delivery.and_then(|d| d.free_from).is_some_and(|limit| basket.goods >= limit);
        let fee = delivery.map_or(Decimal::ZERO, |d| d.fee);
        prop_assert_eq!(basket.delivery, if free || need == 0 { Decimal::ZERO } else { fee });
        prop_assert!(basket.packs.windows(2).all(|pair| pair[0].0 < pair[1].0));
        prop_assert!(basket.packs.iter().all(|(_, n)| *n > 0));
        prop_assert!(basket.left_out.is_empty());
    }

    #[test]
    fn an_offer_more_never_makes_it_dearer_and_a_piece_more_never_cheaper(
        need in 1..200_u32, offers in offers(), extra in (1..30_u32, 1..400_u32), delivery in deliveries(),
    ) {
        let total = |need, offers: &[(u32, u32)]| cheapest(need, &shelf(offers), delivery).unwrap().total;
        let here = total(need, &offers);
        let mut wider = offers.clone();
        wider.insert(0, extra);
        prop_assert!(total(need, &wider) <= here);
        prop_assert!(total(need + 1, &offers) >= here);
    }

    #[test]
    fn a_lower_fee_or_an_easier_limit_never_makes_it_dearer(
        need in 1..200_u32, offers in offers(), fee in 1..120_u32, limit in 1..3000_u32,
    ) {
        let total = |fee, limit: Option<u32>| {
            let delivery = Delivery { fee: tenths(fee), free_from: limit.map(tenths) };
            cheapest(need, &shelf(&offers), Some(delivery)).unwrap().total
        };
        let here = total(fee, Some(limit));
        prop_assert!(total(fee - 1, Some(limit)) <= here);
        prop_assert!(total(fee, Some(limit - 1)) <= here);
        prop_assert!(here <= total(fee, None));
        prop_assert_eq!(total(0, Some(limit)), cheapest(need, &shelf(&offers), None).unwrap().total);
        prop_assert_eq!(total(fee, None).millionths(), total(0, None).millionths() + tenths(fee).millionths());
    }

    /// An unpriced offer is not there, wherever it stands.
    #[test]
    fn an_offer_without_a_price_changes_nothing_but_is_told(
        need in 1..100_u32, offers in offers(), at in 0..5_usize, free in any::<bool>(), pieces in 1..30_u32,
    ) {
        let mut shelf = shelf(&offers);
        let plain = cheapest(need, &shelf, None).unwrap();
        let at = at.min(shelf.len());
        shelf.insert(at, Pack { pieces, price: free.then_some(Decimal::ZERO) });
        let found = cheapest(need, &shelf, None).unwrap();
        prop_assert_eq!(&found.left_out, &[at]);
        let (packs, left) = ((plain.total, plain.pieces), (found.total, found.pieces));
        prop_assert_eq!(packs, left);
        prop_assert!(found.packs.iter().all(|(index, _)| *index != at));
    }

    #[test]
    fn containers_hold_what_is_needed(need in 0.0..6_000.0_f64, sizes in vec((1.0..6000.0_f64, 1..400_u32), 1..4)) {
        let sizes: Vec<(Volume, Option<Decimal>)> =
            sizes.into_iter().map(|(size, price)| (ml(size), Some(tenths(price)))).collect();
        let basket = containers(ml(need), &sizes).unwrap();
        let held: f64 = basket.packs.iter().map(|(index, n)| sizes[*index].0.millilitres() * f64::from(*n)).sum();
        prop_assert!(held >= need - 1e-3);
    }

    #[test]
    fn a_season_never_needs_less_for_more_visits_services_or_spills(
        services in 0..10_000_u32, each in 0.0..100.0_f64, spill in 0..100_u32, spread in 0.0..500.0_f64, visits in 0..100_u32,
    ) {
        let share = super::percent(spill);
        let here = oil_to_buy(services, ml(each), share, Some(ml(spread)), visits);
        prop_assert!(here.high >= here.mean);
        prop_assert!(oil_to_buy(services + 1, ml(each), share, Some(ml(spread)), visits).mean >= here.mean);
        prop_assert!(oil_to_buy(services, ml(each), share, Some(ml(spread)), visits + 1).high >= here.high);
        prop_assert!(oil_to_buy(services, ml(each), super::percent(spill + 1), Some(ml(spread)), visits).mean >= here.mean);
        prop_assert_eq!(oil_to_buy(services, ml(each), share, None, visits).high, here.mean);
        let plain = oil_to_buy(services, ml(each), Share::NONE, None, visits).mean.millilitres();
        prop_assert!((plain - f64::from(services) * each).abs() <= 1e-9 * plain.max(1.0));
    }

    #[test]
    fn no_offer_stops_the_sum(
        need in 0..1000_u32,
        offers in vec((0..=u32::MAX, -1_000_000_000_000_000..=1_000_000_000_000_000_i64), 0..5),
        fee in -1_000_000_000_000_000..=1_000_000_000_000_000_i64,
        free_from in proptest::option::of(-1_000_000_000_000_000..=1_000_000_000_000_000_i64),
    ) {
        let shelf: Vec<Pack> =
            offers.iter().map(|(pieces, price)| Pack { pieces: *pieces, price: Some(millionths(*price)) }).collect();
        let delivery = Delivery { fee: millionths(fee), free_from: free_from.map(millionths) };
        match cheapest(need, &shelf, Some(delivery)) {
            Ok(basket) => prop_assert!(basket.pieces >= need),
            Err(BasketError::TooMany { most }) => prop_assert!(most < need),
            Err(_) => {}
        }
    }
}

type Shelves = Vec<(u32, Vec<(u32, u32)>)>;

/// Needs and packs of two or three things. Small, so that every order is looked at.
fn things() -> impl Strategy<Value = Shelves> {
    vec((0..5_u32, vec((1..5_u32, 1..12_u32), 1..3)), 2..4)
}

fn ordered(things: &Shelves, delivery: Option<Delivery>) -> Order {
    let shelves: Vec<Vec<Pack>> = things.iter().map(|(_, offers)| shelf(offers)).collect();
    let items: Vec<Item<'_>> =
        things.iter().zip(&shelves).map(|((need, _), offers)| Item { need: *need, offers }).collect();
    order(&items, delivery).unwrap()
}

/// The least (total, pieces, packs) over every order, told in tenths: all baskets of a thing by price, put together.
fn every_order(things: &Shelves, fee: u32, free_from: u32) -> (u32, u32, u32) {
    let mut sums = vec![(0, 0, 0)];
    for (need, offers) in things {
        let most = need.max(&free_from) + 1;
        let mut here = Vec::new();
        let mut counts = vec![0; offers.len()];
        'all: loop {
            let pieces: u32 = counts.iter().zip(offers).map(|(n, (size, _))| n * size).sum();
            let goods: u32 = counts.iter().zip(offers).map(|(n, (_, price))| n * price).sum();
            if pieces >= *need {
                here.push((goods, pieces, counts.iter().sum::<u32>()));
            }
            let Some(at) = counts.iter().position(|n| *n < most) else { break 'all };
            counts[..at].fill(0);
            counts[at] += 1;
        }
        here.sort_unstable();
        here.dedup_by_key(|(goods, ..)| *goods);
        here.truncate(60);
        let mut next: Vec<_> = sums
            .iter()
            .flat_map(|(g, p, n)| {
                here.iter().map(move |(goods, pieces, packs)| (g + goods, p + pieces, n + packs))
            })
            .collect();
        next.sort_unstable();
        next.dedup_by_key(|(goods, ..)| *goods);
        sums = next;
    }
    let paid = |(goods, pieces, packs): &(u32, u32, u32)| {
        (goods + if *goods >= free_from { 0 } else { fee }, *pieces, *packs)
    };
    sums.iter().map(paid).min().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    #[test]
    fn a_small_order_is_the_best_of_all_orders(things in things(), fee in 0..10_u32, free_from in 0..30_u32) {
        prop_assume!(things.iter().any(|(need, _)| *need > 0));
        let delivery = Delivery { fee: tenths(fee), free_from: Some(tenths(free_from)) };
        let found = ordered(&things, Some(delivery));
        let pieces: u32 = found.baskets.iter().map(|basket| basket.pieces).sum();
        let packs: u32 = found.baskets.iter().map(count).sum();
        let (total, all, many) = every_order(&things, fee, free_from);
        prop_assert_eq!((found.total, pieces, packs), (tenths(total), all, many));
    }

    #[test]
    fn more_in_store_or_a_cheaper_pack_never_makes_an_order_dearer(
        things in vec((0..40_u32, offers()), 1..4),
        delivery in deliveries(),
        at in 0..4_usize,
        stock in 1..20_u32,
        dearer in 1..50_u32,
    ) {
        let before = ordered(&things, delivery);
        let at = at % things.len();
        let mut stocked = things.clone();
        stocked[at].0 = stocked[at].0.saturating_sub(stock);
        prop_assert!(ordered(&stocked, delivery).total <= before.total);
        let mut raised = things.clone();
        raised[at].1[0].1 += dearer;
        // With the delivery paid whatever it is a dearer pack never makes an order cheaper.
        let flat = delivery.map(|delivery| Delivery { free_from: None, ..delivery });
        prop_assert!(ordered(&raised, flat).total >= ordered(&things, flat).total);
    }

    #[test]
    fn an_order_of_one_thing_is_its_basket_and_every_need_is_met(
        things in vec((0..40_u32, offers()), 1..4),
        delivery in deliveries(),
    ) {
        let found = ordered(&things, delivery);
        for (basket, (need, offers)) in found.baskets.iter().zip(&things) {
            prop_assert_eq!(basket.left_over, basket.pieces - need);
            prop_assert!(basket.goods >= cheapest(*need, &shelf(offers), None).unwrap().goods);
        }
        let goods: i64 = found.baskets.iter().map(|basket| basket.goods.millionths()).sum();
        prop_assert_eq!(found.goods.millionths(), goods);
        prop_assert_eq!(found.total.millionths(), goods + found.delivery.millionths());
        let one = ordered(&things[..1].to_vec(), delivery);
        let basket = cheapest(things[0].0, &shelf(&things[0].1), delivery).unwrap();
        prop_assert_eq!((one.total, &one.baskets[0].packs), (basket.total, &basket.packs));
    }
}
