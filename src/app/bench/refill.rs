//! The day of the next refill, and what decides it.

use super::draft::BenchDraft;
use super::read;
use crate::almanac::day::Day;
use crate::almanac::quantity::{Decimal, Share};
use crate::almanac::refill::{
    Loss, LossInterval, Refill, RefillFacts, Timing, level_rose, median_loss, refill, timing,
};
use crate::almanac::trap::TrapKind;
use crate::almanac::typed::{self, DayTypedError};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct RefillSum {
    /// Day of the last service.
    pub last: Day,
    /// The stretch the loss was read from.
    pub stretch: Option<LossInterval>,
    /// Loss in percentage points of depth a day.
    pub per_day: Option<f64>,
    /// The level rose over that stretch: water or debris got in.
    pub rose: bool,
    /// Due day and limits.
    pub refill: Refill,
    /// From today.
    pub timing: Timing,
}

/// The day of the last service: an empty field means today.
///
/// # Errors
/// As [`typed::day_done`].
pub fn last_service(text: &str, today: Day) -> Result<Day, DayTypedError> {
    match typed::day_done(text, today) {
        Err(DayTypedError::Empty) => Ok(today),
        read => read,
    }
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft, today: Day) -> Option<RefillSum> {
    let last = last_service(draft.refill_last(), today).ok()?;
    let (shortest, longest) = (*TrapKind::MAX_DAYS.start(), *TrapKind::MAX_DAYS.end());
    let max = typed::count(draft.refill_max(), u32::from(shortest), u32::from(longest)).ok()?;
    let level = read::maybe(typed::share(draft.refill_level())).ok()?;
    let floor = read::maybe(typed::share(draft.refill_floor())).ok()?;
    let found = read::maybe(typed::share(draft.refill_found())).ok()?;
    let days = read::maybe(typed::count(draft.refill_stretch(), 1, 999)).ok()?;
    let room = read::maybe(typed::count(draft.refill_room(), 0, read::MOST_BODIES)).ok()?;
    let catch = read::maybe(read::positive(draft.refill_catch())).ok()?;
    let stretch = stretch(level, found, days);
    let per_day = stretch.and_then(|stretch| median_loss(&[stretch])).map(|(per_day, _)| per_day);
    let refill = refill(&RefillFacts {
        last_service: last,
        max_days: u16::try_from(max).ok()?,
        level,
        read_on: None,
        floor,
        loss: per_day.map_or(Loss::Unknown, |per_day| Loss::Hive { per_day, intervals: 1 }),
        room,
        catch_per_day: catch.map(Decimal::as_f64),
    });
    let timing = timing(refill.due, today);
    let rose = stretch.is_some_and(|stretch| level_rose(stretch.from, stretch.to));
    Some(RefillSum { last, stretch, per_day, rose, refill, timing })
}

fn stretch(level: Option<Share>, found: Option<Share>, days: Option<u32>) -> Option<LossInterval> {
    Some(LossInterval { days: u16::try_from(days?).ok()?, from: level?, to: found? })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::quantity::LengthUnit;
    use crate::almanac::refill::{Limit, working_floor};

    /// Half full, and 35 % three weeks later; the oil works down to 20 %.
    fn read_back() -> BenchDraft {
        let draft = BenchDraft::default().with("refill_floor", "20 %");
        draft.with("refill_found", "35 %").with("refill_stretch", "21")
    }

    #[test]
    fn no_loss_is_made_up_before_one_is_typed() {
        let sum = reckon(&BenchDraft::default(), Day::parse("2026-05-01").unwrap()).unwrap();
        assert!(sum.per_day.is_none() && sum.stretch.is_none() && sum.refill.also.is_empty());
    }

    /// Worked by hand: 1 May, 50 %, floor 20 %, 0.714 % a day: 15 May by the maximum of 14, 12 June by oil under 60.
    #[test]
    fn the_first_limit_to_run_out_decides() {
        let today = Day::parse("2026-05-01").unwrap();
        let draft = read_back().with("refill_last", "2026-05-01");
        let sum = reckon(&draft, today).unwrap();
        assert_eq!(sum.refill.due, Day::parse("2026-05-15").unwrap());
        assert!(matches!(sum.refill.decided_by, Limit::YourMaximum { days: 14 }));
        let sum = reckon(&draft.with("refill_max", "60"), today).unwrap();
        assert_eq!(sum.refill.due, Day::parse("2026-06-12").unwrap());
        assert!(matches!(sum.refill.decided_by, Limit::OilLow { days: 42, .. }));
    }

    #[test]
    fn the_lowest_level_offered_is_what_covers_a_beetle_in_the_trap_of_the_other_sums() {
        let draft = BenchDraft::default();
        let depth = typed::length(draft.spill_depth(), LengthUnit::Millimetre).unwrap().length();
        assert_eq!(typed::share(draft.refill_floor()).ok(), working_floor(depth));
    }

    #[test]
    fn a_level_that_rose_tells_nothing_about_loss() {
        let today = Day::parse("2026-05-01").unwrap();
        let draft = read_back().with("refill_found", "60");
        let sum = reckon(&draft, today).unwrap();
        assert!(sum.rose && sum.per_day.is_none() && sum.refill.also.is_empty());
        assert_eq!(reckon(&draft.with("refill_max", "0"), today), None);
    }
}
