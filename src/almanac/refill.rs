//! When a trap is due again, and which of three limits decided.
//!
//! Due dates round down: a day too early costs a look, a day too late costs oil-less traps.

use super::day::Day;
use super::order::sort_by;
use super::quantity::{Decimal, Length, Share};
use super::spill::LEAST_DEPTH_MM;

/// How fast oil goes, in percentage points of the depth a day, and from whose records.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Loss {
    /// Median of this hive's own intervals.
    Hive {
        /// Percentage points of the depth a day, 0 or more.
        per_day: f64,
        /// Intervals the median was taken from, 1–5.
        intervals: u8,
    },
    /// Median over the yard, for a hive without intervals of its own.
    Yard {
        /// Percentage points of the depth a day, 0 or more.
        per_day: f64,
        /// Intervals the median was taken from.
        intervals: u8,
    },
    /// Nobody knows yet; there is no default that would be safe.
    Unknown,
}

impl Loss {
    /// Percentage points of the depth a day.
    pub fn per_day(self) -> Option<f64> {
        match self {
            Loss::Hive { per_day, .. } | Loss::Yard { per_day, .. } => Some(per_day),
            Loss::Unknown => None,
        }
    }
}

/// What is known about a trap since its last service.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RefillFacts {
    /// Day of the last service.
    pub last_service: Day,
    /// The keeper's own longest interval, in days.
    pub max_days: u16,
    /// Level left after that service, or read since.
    pub level: Option<Share>,
    /// Day of a reading since the service; the level counts from there. None: it counts from the service.
    pub read_on: Option<Day>,
    /// Level below which the oil no longer covers a beetle; see [`working_floor`].
    pub floor: Option<Share>,
    /// How fast the oil goes.
    pub loss: Loss,
    /// Bodies that still go in until the level stands at the upper mark.
    pub room: Option<u32>,
    /// Bodies a day.
    pub catch_per_day: Option<f64>,
}

/// A limit on the time to the next service, with the figures it follows from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limit {
    /// The longest interval the keeper allows.
    YourMaximum {
        /// Days after the last service.
        days: u16,
    },
    /// The oil sinks to the working floor.
    OilLow {
        /// Days after the last service, rounded down.
        days: u16,
        /// Level left after the service.
        from: Share,
        /// Working floor.
        floor: Share,
        /// Percentage points of the depth a day; 0 when unknown and the level was at the floor from the start.
        per_day: f64,
    },
    /// Bodies fill the trap.
    Bodies {
        /// Days after the last service, rounded down.
        days: u16,
        /// Bodies that still go in.
        room: u32,
        /// Bodies a day; 0 when unknown and there was no room from the start.
        per_day: f64,
    },
}

impl Limit {
    /// Days after the last service.
    pub fn days(self) -> u16 {
        match self {
            Limit::YourMaximum { days } | Limit::OilLow { days, .. } | Limit::Bodies { days, .. } => days,
        }
    }
}

/// The due date and its reasons.
#[derive(Clone, Debug, PartialEq)]
pub struct Refill {
    /// Day by which the trap wants a service. May lie in the past: see [`timing`].
    pub due: Day,
    /// The shortest limit.
    pub decided_by: Limit,
    /// The other limits that are known, shortest first.
    pub also: Vec<Limit>,
    /// The loss that the oil's limit follows from, and from whose records it is.
    pub loss: Loss,
    /// Days from the service to the reading that the oil and the room count from; the days of every limit count from
    /// the service.
    pub ahead: u16,
}

/// The day a trap is due again: the last service plus the shortest known limit.
///
/// Ties go to the keeper's maximum, then to the oil. A loss of 0, or one nobody knows, sets no limit.
pub fn refill(facts: &RefillFacts) -> Refill {
    // The oil runs down from the day its level was known; every limit counts from the service.
    let ahead = facts.read_on.map_or(0, |read| read.days_since(facts.last_service).max(0));
    let ahead = u16::try_from(ahead).unwrap_or(u16::MAX);
    let oil = facts.level.zip(facts.floor).and_then(|(from, floor)| {
        let left = from.percent().as_f64() - floor.percent().as_f64();
        lasts(left, facts.loss.per_day()).map(|(days, per_day)| Limit::OilLow {
            days: days.saturating_add(ahead),
            from,
            floor,
            per_day,
        })
    });
    let bodies = facts.room.and_then(|room| {
        lasts(f64::from(room), facts.catch_per_day).map(|(days, per_day)| Limit::Bodies {
            days: days.saturating_add(ahead),
            room,
            per_day,
        })
    });
    let mut decided_by = Limit::YourMaximum { days: facts.max_days };
    let mut also = Vec::new();
    for limit in [oil, bodies].into_iter().flatten() {
        if limit.days() < decided_by.days() {
            also.push(decided_by);
            decided_by = limit;
        } else {
            also.push(limit);
        }
    }
    sort_by(&mut also, |a, b| a.days().cmp(&b.days()));
    let due = facts.last_service.plus(i32::from(decided_by.days()));
    Refill { due, decided_by, also, loss: facts.loss, ahead }
}

/// Whole days until `left` is used up at `per_day`, with the rate; none when it is never used up.
fn lasts(left: f64, per_day: Option<f64>) -> Option<(u16, f64)> {
    // 30 ÷ 0.714286 is 42 days and a rounding of the rate short of them: a ten-thousandth of a day is no day.
    const NOISE: f64 = 1e-4;
    let rate = per_day.filter(|rate| rate.is_finite() && *rate > 0.0);
    if left <= 0.0 {
        return Some((0, rate.unwrap_or(0.0)));
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // a float cast stops at the ends of u16
    rate.map(|rate| ((left / rate + NOISE).floor() as u16, rate))
}

/// A due date seen from today.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Timing {
    /// Not yet.
    In {
        /// Days to go, 1 or more.
        days: u16,
    },
    /// Today.
    Today,
    /// Past.
    Overdue {
        /// Days past, 1 or more.
        days: u16,
    },
}

/// How `due` lies to `today`, in calendar days.
pub fn timing(due: Day, today: Day) -> Timing {
    let ahead = due.days_since(today);
    let days = u16::try_from(ahead.unsigned_abs()).unwrap_or(u16::MAX);
    match ahead {
        0 => Timing::Today,
        1.. => Timing::In { days },
        _ => Timing::Overdue { days },
    }
}

/// Oil between two services: what stood after the first and before the second.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LossInterval {
    /// Days between the two.
    pub days: u16,
    /// Level left by the first.
    pub from: Share,
    /// Level found at the second.
    pub to: Share,
}

impl LossInterval {
    /// Percentage points of the depth a day; none over 0 days or when the level rose.
    pub fn per_day(self) -> Option<f64> {
        if self.days == 0 || level_rose(self.from, self.to) {
            return None;
        }
        // Subtracted as millionths, so that equal drops give equal rates wherever in the trap they happened.
        let drop = self.from.percent().millionths() - self.to.percent().millionths();
        Some(Decimal::from_millionths(drop).unwrap_or_default().as_f64() / f64::from(self.days))
    }
}

/// The median loss over the last five usable intervals of `intervals` (oldest first), in percentage points of the
/// depth a day, and how many were used. An interval over 0 days, or in which the level rose (water, debris, a
/// service nobody wrote down), is not usable; one in which nothing was lost is. An even number of intervals gives
/// the mean of the middle two.
pub fn median_loss(intervals: &[LossInterval]) -> Option<(f64, u8)> {
    let mut rates: Vec<f64> =
        intervals.iter().rev().filter_map(|interval| interval.per_day()).take(5).collect();
    let median = median(&mut rates)?;
    u8::try_from(rates.len()).ok().map(|used| (median, used))
}

/// The middle value, or the mean of the middle two; none of nothing. Sorts `values`.
pub fn median(values: &mut [f64]) -> Option<f64> {
    // In place (Shell, 1959): this runs for every hive, on a handful of values.
    let mut gap = values.len() / 2;
    while gap > 0 {
        for mut at in gap..values.len() {
            while at >= gap && values[at - gap].total_cmp(&values[at]).is_gt() {
                values.swap(at - gap, at);
                at -= gap;
            }
        }
        gap /= 2;
    }
    let middle = values.len() / 2;
    let upper = *values.get(middle)?;
    if values.len() % 2 == 1 {
        return Some(upper);
    }
    Some(f64::midpoint(values.get(middle - 1).copied().unwrap_or(upper), upper))
}

/// The level went up without a service: water, debris, or a service nobody wrote down.
pub fn level_rose(from: Share, to: Share) -> bool {
    to > from
}

/// The level at which the oil of a trap `depth` deep still covers a beetle ([`LEAST_DEPTH_MM`]); none when the trap
/// is shallower than that.
pub fn working_floor(depth: Length) -> Option<Share> {
    if depth.millimetres() < LEAST_DEPTH_MM {
        return None;
    }
    Share::from_percent(Decimal::from_f64(100.0 * LEAST_DEPTH_MM / depth.millimetres()).ok()?).ok()
}

#[cfg(test)]
mod tests {
    use super::{Limit, Loss, LossInterval, RefillFacts, Timing, median_loss, refill, timing, working_floor};
    use crate::almanac::day::Day;
    use crate::almanac::quantity::{Decimal, Length, Share};

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap_or(Day::LAST)
    }

    fn percent(value: u32) -> Share {
        Share::from_percent(Decimal::whole(value)).unwrap_or_default()
    }

    fn facts(max_days: u16, per_day: f64) -> RefillFacts {
        RefillFacts {
            last_service: day("2026-05-01"),
            max_days,
            level: Some(percent(50)),
            floor: Some(percent(20)),
            loss: Loss::Hive { per_day, intervals: 1 },
            read_on: None,
            room: None,
            catch_per_day: None,
        }
    }

    #[test]
    fn the_keepers_maximum_decides_when_it_comes_first() {
        let refill = refill(&facts(14, 0.714));
        assert_eq!((refill.due, refill.decided_by), (day("2026-05-15"), Limit::YourMaximum { days: 14 }));
        assert!(matches!(refill.also[..], [Limit::OilLow { days: 42, .. }]));
    }

    #[test]
    fn low_oil_decides_under_a_long_maximum_and_the_rounded_rate_does_not_eat_a_day() {
        for rate in [0.714, 0.714_286, 15.0 / 21.0] {
            let refill = refill(&facts(60, rate));
            assert_eq!(refill.due, day("2026-06-12"), "{rate}");
            assert!(matches!(refill.decided_by, Limit::OilLow { days: 42, .. }));
            assert_eq!(refill.also, [Limit::YourMaximum { days: 60 }]);
        }
    }

    #[test]
    fn a_day_that_the_oil_does_not_last_is_not_promised() {
        let days = |lasts: f64| refill(&facts(60, 30.0 / lasts)).decided_by.days();
        assert_eq!((days(41.999), days(41.999_95), days(42.0), days(42.001)), (41, 42, 42, 42));
    }

    #[test]
    fn a_tie_goes_to_the_maximum_and_then_to_the_oil() {
        let mut facts = facts(42, 0.714);
        facts.room = Some(42);
        facts.catch_per_day = Some(1.0);
        let tied = refill(&facts);
        assert_eq!(tied.decided_by, Limit::YourMaximum { days: 42 });
        facts.max_days = 60;
        let tied = refill(&facts);
        assert!(matches!(tied.decided_by, Limit::OilLow { days: 42, .. }));
        assert!(matches!(tied.also[..], [Limit::Bodies { days: 42, .. }, Limit::YourMaximum { days: 60 }]));
        facts.catch_per_day = Some(1.05);
        assert!(matches!(refill(&facts).decided_by, Limit::Bodies { days: 40, room: 42, .. }));
    }

    #[test]
    fn an_unknown_or_absent_loss_sets_no_limit_but_a_trap_left_too_low_is_due_at_once() {
        for loss in [Loss::Unknown, Loss::Yard { per_day: 0.0, intervals: 2 }] {
            let mut facts = RefillFacts { loss, ..facts(60, 0.0) };
            assert!(refill(&facts).also.is_empty());
            facts.level = Some(percent(20));
            assert!(matches!(refill(&facts).decided_by, Limit::OilLow { days: 0, .. }));
            facts.level = None;
            assert_eq!(refill(&facts).decided_by, Limit::YourMaximum { days: 60 });
        }
    }

    #[test]
    fn due_dates_are_told_as_days_to_go_or_days_past() {
        let today = day("2026-05-15");
        assert_eq!(timing(day("2026-05-17"), today), Timing::In { days: 2 });
        assert_eq!(timing(today, today), Timing::Today);
        assert_eq!(timing(day("2026-05-12"), today), Timing::Overdue { days: 3 });
        assert_eq!(timing(Day::LAST, Day::FIRST), Timing::In { days: u16::MAX });
    }

    #[test]
    fn the_median_leaves_out_rises_and_same_day_looks_and_keeps_the_last_five() {
        let interval = |days, from, to| LossInterval { days, from: percent(from), to: percent(to) };
        assert_eq!(median_loss(&[]), None);
        assert_eq!(median_loss(&[interval(0, 50, 40), interval(7, 40, 50)]), None);
        assert_eq!(median_loss(&[interval(10, 50, 50)]), Some((0.0, 1)));
        assert_eq!(median_loss(&[interval(10, 50, 40), interval(10, 50, 30)]), Some((1.5, 2)));
        let six = [90, 10, 20, 30, 40, 50].map(|drop| interval(10, 100, 100 - drop));
        assert_eq!(median_loss(&six), Some((3.0, 5)));
    }

    #[test]
    fn six_millimetres_are_30_percent_of_a_20_mm_trap_and_too_much_for_a_5_mm_one() {
        let floor = |mm| Length::from_millimetres(mm).ok().and_then(working_floor);
        assert_eq!(floor(20.0), Some(percent(30)));
        assert_eq!(floor(6.0), Some(percent(100)));
        assert_eq!(floor(5.99), None);
        assert_eq!(floor(0.0), None);
    }
}
