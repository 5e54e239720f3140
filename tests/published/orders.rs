//! Orders of several things with one delivery against integer programming, `scipy.optimize.milp`
//! (`tests/figures/orders.py`).

use super::rows;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::almanac::supply::{Delivery, Item, order};
use beetle_almanac::almanac::trap::Pack;

fn money(hundredths: u32) -> Decimal {
    Decimal::from_millionths(i64::from(hundredths) * 10_000).expect("a price")
}

#[test]
fn every_order_costs_what_integer_programming_finds() {
    type Row = (Vec<(u32, Vec<(u32, u32)>)>, u32, Option<u32>, u32);
    let rows: Vec<Row> = rows(include_str!("../figures/orders.json"));
    assert_eq!(rows.len(), 460);
    let mut unsure = 0;
    let (mut with_fee, mut bought_more, mut unwanted) = (0, 0, 0);
    for (nth, (things, fee, free_from, total)) in rows.into_iter().enumerate() {
        let shelves: Vec<Vec<Pack>> = things
            .iter()
            .map(|(_, offers)| {
                offers
                    .iter()
                    .map(|(pieces, price)| Pack { pieces: *pieces, price: Some(money(*price)) })
                    .collect()
            })
            .collect();
        let items: Vec<Item<'_>> =
            things.iter().zip(&shelves).map(|((need, _), offers)| Item { need: *need, offers }).collect();
        let delivery = Some(Delivery { fee: money(fee), free_from: free_from.map(money) });
        let found = order(&items, delivery).expect("an order");
        if let Some(most) = found.cheaper_by {
            // Only among the packs that are made alike, and true.
            assert!(nth >= 400 && found.total >= money(total), "{things:?}, {delivery:?}: {found:?}");
            assert!(found.total.millionths() - most.millionths() <= money(total).millionths(), "{found:?}");
            unsure += 1;
        } else {
            assert_eq!(found.total, money(total), "{things:?}, {delivery:?}: {found:?}");
        }
        let plain = order(&items, None).expect("an order");
        with_fee += u32::from(found.delivery > Decimal::ZERO);
        bought_more += u32::from(found.goods > plain.goods);
        let beside = |(basket, (need, _)): (_, &(u32, _))| {
            let basket: &beetle_almanac::almanac::supply::Basket = basket;
            *need == 0 && basket.pieces > 0
        };
        unwanted += u32::from(found.baskets.iter().zip(&things).any(beside));
        for (basket, (need, _)) in found.baskets.iter().zip(&things) {
            assert!(basket.pieces >= *need && basket.left_over == basket.pieces - need);
        }
    }
    assert!((10..=55).contains(&unsure), "{unsure} of 60");
    assert!(
        with_fee >= 100 && bought_more >= 60 && unwanted >= 5,
        "{with_fee} pay, {bought_more} buy more to pay nothing, {unwanted} of them what nobody wanted"
    );
}
