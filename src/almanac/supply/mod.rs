//! What to buy: the cheapest packs, oil for a season, containers for it.
//!
//! Things to buy round up.

mod basket;
mod next_season;
mod order;

pub use basket::{Basket, BasketError, Delivery, cheapest};
pub use next_season::{FEW_TRAPS, NextSeason, SeasonTraps, next_season};
pub use order::{Item, Order, order};

use super::quantity::{Decimal, Share, Volume};
use super::trap::Pack;

/// Oil for a season, with the sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeasonOil {
    /// Trap services expected.
    pub services: u32,
    /// Oil for each.
    pub each: Volume,
    /// Share spilled on top.
    pub spill_share: Share,
    /// Services × oil × (1 + share spilled).
    pub mean: Volume,
    /// The mean and two standard deviations; the mean when last season's spread is unknown.
    pub high: Volume,
}

/// Oil for `services` trap services of `each`, with `spill_share` on top. `spread` is the standard deviation of last
/// season's use a visit; over `visits` visits it grows with their square root.
pub fn oil_to_buy(
    services: u32,
    each: Volume,
    spill_share: Share,
    spread: Option<Volume>,
    visits: u32,
) -> SeasonOil {
    let mean = each.times(f64::from(services)).times(1.0 + spill_share.fraction());
    let high = mean.plus(spread.unwrap_or_default().times(2.0 * f64::from(visits).sqrt()));
    SeasonOil { services, each, spill_share, mean, high }
}

/// The cheapest containers that hold `need`, each given as its volume and price. In the answer the pieces are
/// millilitres: the need rounded up, each container down to whole ones.
///
/// # Errors
/// [`BasketError`]; a container below 1 mL is a pack of nothing.
pub fn containers(need: Volume, sizes: &[(Volume, Option<Decimal>)]) -> Result<Basket, BasketError> {
    // A litre that comes out of its unit as 999.9999999999 mL is a litre.
    const NOISE: f64 = 1e-6;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // a float cast stops at the ends of u32
    let whole = |millilitres: f64| millilitres as u32;
    let offers: Vec<Pack> = sizes
        .iter()
        .map(|(size, price)| Pack { pieces: whole((size.millilitres() + NOISE).floor()), price: *price })
        .collect();
    cheapest(whole((need.millilitres() - NOISE).ceil()), &offers, None)
}

#[cfg(test)]
mod tests {
    use super::{BasketError, containers, oil_to_buy};
    use crate::almanac::quantity::{Decimal, Share, Volume};

    fn money(value: f64) -> Decimal {
        Decimal::from_f64(value).unwrap_or_default()
    }

    #[test]
    fn containers_are_reckoned_in_whole_millilitres() {
        let ml = |value| Volume::from_millilitres(value).unwrap_or_default();
        let sizes =
            [(ml(500.0), Some(money(4.0))), (ml(946.35), Some(money(6.0))), (ml(999.999_999_999_9), None)];
        let basket = containers(ml(1_400.000_000_001), &sizes);
        assert_eq!(
            basket.map(|b| (b.packs, b.pieces, b.left_over, b.left_out)),
            Ok((vec![(0, 1), (1, 1)], 1446, 46, vec![2]))
        );
        let half = containers(ml(500.5), &sizes[..1]);
        assert_eq!(half.map(|b| (b.packs, b.left_over)), Ok((vec![(0, 2)], 499)));
        assert_eq!(containers(ml(1.0), &[(ml(0.5), None)]), Err(BasketError::PackOfNothing { index: 0 }));
    }

    #[test]
    fn the_upper_estimate_grows_with_the_square_root_of_the_visits() {
        let ml = |value| Volume::from_millilitres(value).unwrap_or_default();
        let season = oil_to_buy(1000, ml(10.0), Share::QUARTER, Some(ml(50.0)), 16);
        assert_eq!((season.mean, season.high), (ml(12_500.0), ml(12_900.0)));
        assert_eq!(oil_to_buy(1000, ml(10.0), Share::NONE, None, 16).high, ml(10_000.0));
    }
}
