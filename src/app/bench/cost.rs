//! What a season's trap work cost, from typed numbers.

use super::draft::BenchDraft;
use super::read::{self, MOST_HIVES, MOST_PIECES};
use crate::almanac::cost::{Cost, cost};
use crate::almanac::quantity::Decimal;
use crate::almanac::typed::{self, TypedError};

/// Most days of a season.
pub const MOST_DAYS: u32 = 366;

/// The answer, with its parts in the keeper's currency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CostSum {
    /// Used up.
    pub used_up: f64,
    /// What lasts, for one season.
    pub durable: f64,
    /// Trips.
    pub travel: f64,
    /// Hours of work.
    pub work: f64,
    /// All of it, spread.
    pub cost: Cost,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<CostSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<CostSum, TypedError> {
    let number = |text: &str| read::maybe(read::positive(text)).map(|number| number.map(Decimal::as_f64));
    let some = |text: &str| number(text).map(Option::unwrap_or_default);
    let seasons = f64::from(typed::count(draft.cost_seasons(), 1, 50)?);
    let days = typed::count(draft.cost_days(), 1, MOST_DAYS)?;
    let hives = typed::count(draft.cost_hives(), 0, MOST_HIVES)?;
    let traps = typed::count(draft.cost_traps(), 0, MOST_PIECES)?;
    let used_up = some(draft.cost_used())?;
    let durable = some(draft.cost_durable())? / seasons;
    let travel = some(draft.cost_trips())? * some(draft.cost_trip())?;
    let work = some(draft.cost_hours())? * some(draft.cost_hour())?;
    let total = used_up + durable + travel + work;
    let (honey, colony) = (number(draft.cost_honey())?, number(draft.cost_colony())?);
    let cost = cost(total, (hives.saturating_mul(days), days), traps.saturating_mul(days), honey, colony);
    Ok(CostSum { used_up, durable, travel, work, cost })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 60 + 120 ÷ 3 + 10 × 12 + 0 = 220; ÷ 10 hives = 22; ÷ (40 traps × 180 days) = 0.0306; ÷ 150 = 1.47.
    #[test]
    fn the_example_is_ten_hives_over_a_season() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert_eq!((sum.used_up, sum.durable, sum.travel, sum.work), (60.0, 40.0, 120.0, 0.0));
        assert_eq!((sum.cost.total, sum.cost.each_hive, sum.cost.each_kg), (220.0, Some(22.0), None));
        assert!((sum.cost.break_even.unwrap() - 220.0 / 150.0).abs() < 1e-12);
        assert!((sum.cost.each_trap_day.unwrap() - 220.0 / 7200.0).abs() < 1e-12);
    }

    #[test]
    fn a_field_that_cannot_be_read_gives_no_answer_and_an_empty_one_nothing() {
        let of = |field: &str, text: &str| reckon(&BenchDraft::default().with(field, text));
        assert_eq!((of("cost_hives", "many"), of("cost_used", "x")), (None, None));
        assert_eq!(of("cost_colony", "").unwrap().cost.break_even, None);
        assert_eq!(of("cost_honey", "110").unwrap().cost.each_kg, Some(2.0));
    }
}
