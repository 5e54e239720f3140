//! Cheapest packs against integer programming, `scipy.optimize.milp` (`tests/figures/packs.py`).

use super::rows;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::almanac::supply::{Delivery, cheapest};
use beetle_almanac::almanac::trap::Pack;

fn money(hundredths: u32) -> Decimal {
    Decimal::from_millionths(i64::from(hundredths) * 10_000).expect("a price")
}

#[test]
fn every_basket_costs_what_integer_programming_finds_with_its_pieces_and_packs() {
    type Row = (u32, Vec<(u32, u32)>, Option<u32>, Option<u32>, u32, u32, u32);
    let rows: Vec<Row> = rows(include_str!("../figures/packs.json"));
    assert_eq!(rows.len(), 600);
    let (mut with_fee, mut bought_more) = (0, 0);
    for (need, offers, fee, free_from, total, pieces, packs) in rows {
        let offers: Vec<Pack> =
            offers.into_iter().map(|(pieces, price)| Pack { pieces, price: Some(money(price)) }).collect();
        let delivery = fee.map(|fee| Delivery { fee: money(fee), free_from: free_from.map(money) });
        let basket = cheapest(need, &offers, delivery).expect("a basket");
        let told = (basket.total, basket.pieces, basket.packs.iter().map(|(_, count)| count).sum::<u32>());
        assert_eq!(told, (money(total), pieces, packs), "{need} of {offers:?}, {delivery:?}: {basket:?}");
        // The basket is what it says it is.
        let sum: i64 = basket
            .packs
            .iter()
            .map(|(index, count)| offers[*index].price.unwrap().millionths() * i64::from(*count))
            .sum();
        assert_eq!(basket.goods.millionths(), sum);
        assert_eq!(basket.total.millionths(), sum + basket.delivery.millionths());
        assert_eq!(basket.left_over, pieces - need);
        with_fee += u32::from(basket.delivery > Decimal::ZERO);
        let plain = cheapest(need, &offers, None).expect("a basket");
        bought_more += u32::from(basket.goods > plain.goods);
    }
    assert!(with_fee >= 100 && bought_more >= 30, "{with_fee} pay, {bought_more} buy more to pay nothing");
}
