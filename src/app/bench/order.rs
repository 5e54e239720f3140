//! What the next season takes of traps and other things, in the cheapest packs with one delivery.

use super::draft::BenchDraft;
use super::read::{self, MOST_BOXES, MOST_HIVES, MOST_PIECES, MOST_TRAPS_A_BOX};
use crate::almanac::quantity::Decimal;
use crate::almanac::supply::{
    BasketError, Delivery, Item, NextSeason, Order, SeasonTraps, next_season, order,
};
use crate::almanac::trap::Pack;
use crate::almanac::typed::{self, TypedError};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderSum {
    /// What was typed about hives and traps.
    pub known: NextSeason,
    /// What they take.
    pub traps: SeasonTraps,
    /// Traps and the other things.
    pub things: Things,
}

/// Things to buy from one shop.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Things {
    /// Pieces wanted of each, and how it is sold, as typed.
    pub wanted: Vec<(u32, Vec<Pack>)>,
    /// Those that have a price, each with a basket in the order.
    pub priced: Vec<usize>,
    /// Those that are wanted and have none: their price is asked for and never taken for nothing.
    pub unpriced: Vec<usize>,
    /// The order of those with a price, or why there is none.
    pub order: Option<Result<Order, BasketError>>,
}

impl Things {
    /// The cheapest order of what has a price.
    pub fn of(wanted: Vec<(u32, Vec<Pack>)>, delivery: Option<Delivery>) -> Things {
        let (mut priced, mut unpriced) = (Vec::new(), Vec::new());
        let mut items = Vec::new();
        for (at, (need, offers)) in wanted.iter().enumerate() {
            let has = offers.iter().any(|offer| offer.price.is_some_and(|price| price.millionths() > 0));
            if has {
                priced.push(at);
                items.push(Item { need: *need, offers });
            } else if *need > 0 {
                unpriced.push(at);
            }
        }
        let any = items.iter().any(|item| item.need > 0);
        let order = any.then(|| order(&items, delivery).map_err(|(_, error)| error));
        Things { wanted, priced, unpriced, order }
    }

    /// Nothing is wanted at all.
    pub fn nothing(&self) -> bool {
        self.wanted.iter().all(|(need, _)| *need == 0)
    }
}

/// Traps that were lost, of those that were in service; none where either is empty.
///
/// # Errors
/// As [`typed::count`]; [`TypedError::TooFew`] with the first where the second lies below it, and only then.
pub fn lost_of(lost: &str, of: &str) -> Result<Option<(u32, u32)>, TypedError> {
    let read = |text| read::maybe(typed::count(text, 0, MOST_PIECES));
    match read(lost)?.zip(read(of)?) {
        Some((lost, of)) if lost > of => Err(TypedError::TooFew { least: Decimal::whole(lost) }),
        both => Ok(both),
    }
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<OrderSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<OrderSum, TypedError> {
    let boxes = typed::count(draft.order_boxes(), 1, MOST_BOXES)?;
    let a_box = typed::count(draft.order_a_box(), 1, MOST_TRAPS_A_BOX)?;
    let known = NextSeason {
        alive: typed::count(draft.order_alive(), 0, MOST_HIVES)?,
        winter: read::shares(draft.order_winter())?,
        splits: typed::count(draft.order_splits(), 0, MOST_HIVES)?,
        each: boxes * a_box,
        lost: lost_of(draft.order_lost(), draft.order_of())?,
        spares: typed::count(draft.order_spares(), 0, MOST_PIECES)?,
        stock: typed::count(draft.order_stock(), 0, MOST_PIECES)?,
        there: 0,
    };
    let traps = next_season(&known);
    let mut wanted = vec![(traps.order, packs(&rows(draft)[0])?)];
    for (need, rows) in [draft.order_need2(), draft.order_need3()].into_iter().zip(&rows(draft)[1..]) {
        wanted.push((read::maybe(typed::count(need, 0, MOST_PIECES))?.unwrap_or(0), packs(rows)?));
    }
    let fee = read::maybe(typed::price(draft.order_fee()))?;
    let free_from = read::maybe(typed::price(draft.order_free()))?;
    let things = Things::of(wanted, fee.map(|fee| Delivery { fee, free_from }));
    Ok(OrderSum { known, traps, things })
}

/// Pieces and price of the packs of each thing.
fn rows(draft: &BenchDraft) -> [[(&str, &str); 3]; 3] {
    [
        [
            (draft.order_size11(), draft.order_price11()),
            (draft.order_size12(), draft.order_price12()),
            (draft.order_size13(), draft.order_price13()),
        ],
        [
            (draft.order_size21(), draft.order_price21()),
            (draft.order_size22(), draft.order_price22()),
            ("", ""),
        ],
        [
            (draft.order_size31(), draft.order_price31()),
            (draft.order_size32(), draft.order_price32()),
            ("", ""),
        ],
    ]
}

fn packs(rows: &[(&str, &str)]) -> Result<Vec<Pack>, TypedError> {
    let mut packs = Vec::new();
    for (pieces, price) in rows {
        if let Some(pieces) = read::maybe(typed::count(pieces, 1, MOST_PIECES))? {
            packs.push(Pack { pieces, price: read::maybe(typed::price(price))? });
        }
    }
    Ok(packs)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn total(sum: &OrderSum) -> Option<Decimal> {
        sum.things.order.as_ref()?.as_ref().ok().map(|order| order.total)
    }

    /// Worked by hand: 30 × 0.8 = 24 hives × 1 × 2 = 48, + 5 = 53 traps: four twelves and a five, 72.00 + 9.50.
    #[test]
    fn the_example_is_an_order_for_thirty_hives() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert_eq!((sum.traps.hives, sum.traps.order), ((24, 24), 53));
        assert_eq!(total(&sum), Decimal::from_f64(81.5).ok());
        assert!(sum.things.unpriced.is_empty() && !sum.things.nothing());
    }

    #[test]
    fn a_second_thing_without_a_price_is_asked_about_and_never_free() {
        let draft = BenchDraft::default().with("order_need2", "3");
        let sum = reckon(&draft).unwrap();
        assert_eq!((&sum.things.priced[..], &sum.things.unpriced[..]), (&[0][..], &[1][..]));
        let priced = draft.with("order_size21", "1").with("order_price21", "4").with("order_fee", "6.90");
        assert_eq!(total(&reckon(&priced).unwrap()), Decimal::from_f64(81.5 + 12.0 + 6.9).ok());
        // 93.50; five singles in place of the pack of five are 1.50 dearer and save 6.90.
        let free = priced.with("order_free", "95");
        assert_eq!(total(&reckon(&free).unwrap()), Decimal::from_f64(95.0).ok());
    }

    #[test]
    fn no_more_traps_were_lost_than_were_in_service() {
        let draft = BenchDraft::default().with("order_lost", "99");
        assert!(reckon(&draft.clone().with("order_of", "")).is_some_and(|sum| sum.known.lost.is_none()));
        assert!(reckon(&draft.clone().with("order_of", "99")).is_some_and(|sum| sum.known.lost.is_some()));
        assert_eq!(reckon(&draft.with("order_of", "56")), None);
        let error = lost_of("99", "56").unwrap_err();
        assert_eq!(crate::app::wording::en_typed::count(error), "At least 99.");
        assert!(matches!(lost_of("many", "56"), Err(TypedError::NotANumber)));
    }

    #[test]
    fn a_span_of_winters_is_read_and_half_a_span_is_not() {
        let hives =
            |text: &str| reckon(&BenchDraft::default().with("order_winter", text)).map(|sum| sum.traps.hives);
        assert_eq!(hives("10–25 %"), Some((23, 27)));
        assert_eq!((hives("25-10"), hives("25–10 %"), hives("10–10")), (None, None, Some((27, 27))));
        assert_eq!((hives("10-25"), hives("10 % to 25 %")), (Some((23, 27)), Some((23, 27))));
        assert_eq!((hives("10–"), hives("–"), hives("10–20–30"), hives("")), (None, None, None, None));
        let nothing = BenchDraft::default().with("order_stock", "500");
        assert!(reckon(&nothing).unwrap().things.nothing());
    }
}
