//! Traps to order for the next season.

use crate::almanac::chance::binomial_limits;
use crate::almanac::quantity::Share;

/// Below so many traps in service the share that was lost is told by its exact upper limit (judgement, no source: of so
/// few, one trap that the wind took moves the share by more than most keepers lose in a year).
pub const FEW_TRAPS: u32 = 30;

/// What is known of the next season.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextSeason {
    /// Hives alive now.
    pub alive: u32,
    /// Share of them that the winter takes, least and most.
    pub winter: (Share, Share),
    /// Splits planned.
    pub splits: u32,
    /// Traps in each hive.
    pub each: u32,
    /// Traps lost last season, and traps that were in service; none where nobody knows.
    pub lost: Option<(u32, u32)>,
    /// To spare.
    pub spares: u32,
    /// Good ones in store.
    pub stock: u32,
    /// Hanging in hives now, and used again.
    pub there: u32,
}

/// What the next season takes, with the sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeasonTraps {
    /// Hives expected, fewest and most, each up to a whole one.
    pub hives: (u32, u32),
    /// A part of a hive was made a whole one.
    pub rounded: bool,
    /// Traps hanging in the most hives.
    pub hang: u32,
    /// Share lost that is reckoned with, 0–1; none where nobody knows.
    pub breakage: Option<f64>,
    /// That share is an upper limit of 95 %, because there were few traps.
    pub limit: bool,
    /// Traps to hang and to replace what is lost, up to a whole one.
    pub with_lost: u32,
    /// And to spare.
    pub with_spares: u32,
    /// Of those that hang now and are used again what is left of the share lost, down to a whole one.
    pub there: u32,
    /// Less those.
    pub less_there: u32,
    /// To order: less what is in store too.
    pub order: u32,
}

/// Traps to order for the most hives that are expected: hives × traps × (1 + share lost) + spares − those that hang now and
/// are used again × (1 − share lost) − stock. What is bought rounds up, hives first; what is there rounds down.
pub fn next_season(known: &NextSeason) -> SeasonTraps {
    let alive =
        |lost: Share| up(f64::from(known.alive) * (1.0 - lost.fraction())).saturating_add(known.splits);
    let (least, most) = known.winter;
    let hives = (alive(least.max(most)), alive(least.min(most)));
    let part = |lost: Share| {
        let left = f64::from(known.alive) * (1.0 - lost.fraction());
        f64::from(up(left)) > left + 1e-6
    };
    let hang = hives.1.saturating_mul(known.each);
    let lost = known.lost.filter(|(_, of)| *of > 0);
    let limit = lost.is_some_and(|(_, of)| of < FEW_TRAPS);
    let breakage = lost.map(|(lost, of)| {
        if limit { binomial_limits(lost, of).1 } else { (f64::from(lost) / f64::from(of)).min(1.0) }
    });
    let with_lost = hang.saturating_add(up(f64::from(hang) * breakage.unwrap_or_default()));
    let with_spares = with_lost.saturating_add(known.spares);
    let there = known.there.saturating_sub(up(f64::from(known.there) * breakage.unwrap_or_default()));
    let less_there = with_spares.saturating_sub(there);
    SeasonTraps {
        hives,
        rounded: part(least) || part(most),
        hang,
        breakage,
        limit,
        with_lost,
        with_spares,
        there,
        less_there,
        order: less_there.saturating_sub(known.stock),
    }
}

/// Up to a whole one, but for the noise of the product.
fn up(traps: f64) -> u32 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // a float cast stops at the ends of u32
    let up = (traps - 1e-6).ceil() as u32;
    up
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::quantity::Decimal;

    fn percent(value: u32) -> Share {
        Share::from_percent(Decimal::whole(value)).unwrap_or_default()
    }

    fn known() -> NextSeason {
        NextSeason {
            alive: 30,
            winter: (percent(20), percent(20)),
            splits: 4,
            each: 4,
            lost: Some((6, 120)),
            spares: 5,
            stock: 12,
            there: 0,
        }
    }

    /// Worked by hand: of 90 that hang 5 % are 4.5, so 85 stay; 123 − 85 − 12 = 26.
    #[test]
    fn those_that_hang_now_and_are_used_again_are_there_less_what_is_lost() {
        let order = next_season(&NextSeason { there: 90, ..known() });
        assert_eq!((order.there, order.less_there, order.order), (85, 38, 26));
        let unknown = next_season(&NextSeason { there: 90, lost: None, ..known() });
        assert_eq!((unknown.there, unknown.order), (90, 112 + 5 - 90 - 12));
        assert_eq!(next_season(&NextSeason { there: 900, ..known() }).order, 0);
    }

    /// Worked by hand: 30 × 0.8 + 4 = 28 hives, × 4 = 112, 6 of 120 lost: 5 % of 112 is 5.6, so 118; + 5 − 12 = 111.
    #[test]
    fn thirty_hives_after_a_winter() {
        let order = next_season(&known());
        assert_eq!((order.hives, order.hang, order.with_lost, order.with_spares), ((28, 28), 112, 118, 123));
        assert_eq!((order.order, order.limit), (111, false));
    }

    #[test]
    fn a_span_of_winters_is_bought_for_its_better_end_and_part_of_a_hive_is_a_hive() {
        let order = next_season(&NextSeason { winter: (percent(10), percent(25)), ..known() });
        assert_eq!((order.hives, order.rounded), ((27, 31), true));
        assert!(!next_season(&known()).rounded);
        let turned = next_season(&NextSeason { winter: (percent(25), percent(10)), ..known() });
        assert_eq!(turned, order);
        assert_eq!(
            next_season(&NextSeason { winter: (percent(100), percent(100)), ..known() }).hives,
            (4, 4)
        );
    }

    /// The exact upper limit of 2 in 24 is 0.2700 (Clopper & Pearson 1934): 112 × 0.27 = 30.2.
    #[test]
    fn of_few_traps_the_upper_limit_is_reckoned_with() {
        let order = next_season(&NextSeason { lost: Some((2, 24)), ..known() });
        assert!(order.limit && order.breakage.is_some_and(|share| (share - 0.2700).abs() < 5e-5));
        assert_eq!(order.with_lost, 112 + 31);
        let none = next_season(&NextSeason { lost: Some((0, 0)), ..known() });
        assert_eq!((none.breakage, none.limit, none.with_lost), (None, false, 112));
    }

    #[test]
    fn of_thirty_traps_the_share_itself_is_reckoned_with_and_of_one_fewer_its_limit() {
        let of = |traps| next_season(&NextSeason { lost: Some((3, traps)), ..known() });
        let (few, enough) = (of(29), of(30));
        assert_eq!((few.limit, enough.limit), (true, false));
        assert!(enough.breakage.is_some_and(|share| (share - 0.1).abs() < 1e-12));
        assert!(few.breakage.is_some_and(|share| share > 0.2));
    }

    #[test]
    fn more_in_store_than_is_wanted_is_nothing_to_order() {
        assert_eq!(next_season(&NextSeason { stock: 1000, ..known() }).order, 0);
        let all = next_season(&NextSeason { alive: u32::MAX, each: u32::MAX, ..known() });
        assert!(all.order > 0);
    }
}
