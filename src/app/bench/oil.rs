//! Oil to buy for a season.

use super::draft::BenchDraft;
use super::read;
use crate::almanac::quantity::{Decimal, TypedVolume, Volume};
use crate::almanac::supply::{Basket, BasketError, SeasonOil, containers, oil_to_buy};
use crate::almanac::typed::{self, TypedError};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct OilSum {
    /// Volumes.
    pub season: SeasonOil,
    /// How much one visit differs from the next, when typed.
    pub spread: Option<Volume>,
    /// Containers offered: as typed, and their price.
    pub sizes: Vec<(TypedVolume, Option<Decimal>)>,
    /// The cheapest containers, or why there are none.
    pub basket: Result<Basket, BasketError>,
}

/// Rows of the price list: size, unit and price.
pub fn rows(draft: &BenchDraft) -> [(&str, &str, &str); 3] {
    [
        (draft.oil_size1(), draft.oil_unit1(), draft.oil_price1()),
        (draft.oil_size2(), draft.oil_unit2(), draft.oil_price2()),
        (draft.oil_size3(), draft.oil_unit3(), draft.oil_price3()),
    ]
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<OilSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<OilSum, TypedError> {
    let services = typed::count(draft.oil_services(), 0, 366)?;
    let each = read::volume(draft.oil_each(), draft.oil_each_unit())?.volume();
    let spill = typed::share(draft.oil_spill())?;
    let spread =
        read::maybe(read::volume(draft.oil_spread(), draft.oil_spread_unit()))?.map(TypedVolume::volume);
    let mut sizes = Vec::new();
    for (size, unit, price) in rows(draft) {
        if let Some(size) = read::maybe(read::holds(size, unit))? {
            sizes.push((size, read::maybe(typed::price(price))?));
        }
    }
    let season = oil_to_buy(services, each, spill, spread, services);
    let offered: Vec<(Volume, Option<Decimal>)> =
        sizes.iter().map(|(size, price)| (size.volume(), *price)).collect();
    let basket = containers(season.high, &offered);
    Ok(OilSum { season, spread, sizes, basket })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_services_of_the_example_take_four_litres_and_a_tenth_for_spills() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert!((sum.season.high.millilitres() - 4400.0).abs() < 1e-6);
        let basket = sum.basket.unwrap();
        // One of 3 L and two of 1 L: 17.90; two of 3 L would be 19.80.
        assert_eq!((basket.pieces, basket.packs), (5000, vec![(0, 2), (1, 1)]));
    }
}
