//! The catch of a yard over some days beside the same days a year earlier, and what the keeper made of it. From what
//! the page Catch is made of, over the same days: two pages never tell two numbers of one thing.

use super::caught::{Both, Caught, Days, YEAR, both};
use super::id::ThingId;
use super::record::Blank;
use super::standing::{RecordNow, Standing};
use crate::almanac::day::Day;
use crate::almanac::trend::{Rate, Stretch, Trend, compare_one};

/// Fewest counts that are made into a catch a day (judgement, no source: of fewer, one warm evening decides).
pub const LEAST_COUNTS: usize = 3;
/// Fewest trap-days that are (judgement, no source).
pub const LEAST_TRAP_DAYS: u32 = 100;

/// Some days and the same days a year earlier.
#[derive(Clone, Debug, PartialEq)]
pub struct Review {
    /// The days a year earlier; none where those asked for are longer than a year and would lie in both.
    pub earlier: Option<Days>,
    /// The days asked for.
    pub days: Days,
    /// What was counted in them. The first is a year earlier.
    pub both: Both,
}

impl Review {
    /// What `caught` tells of `yard` from `from` to `to`, both included.
    pub fn of(caught: &[Caught], yard: &ThingId, from: Day, to: Day) -> Review {
        let days = Days { from, to };
        let earlier = earlier(days);
        // No count lies in days that end before they begin.
        let none = Days { from, to: from.plus(-1) };
        Review { earlier, days, both: both(caught, yard, earlier.unwrap_or(none), days) }
    }

    /// Beetles for 100 trap-days of the whole yard, a year earlier and now; none where there is too little to say.
    pub fn rates(&self) -> (Option<Rate>, Option<Rate>) {
        let (first, second) = self.counts();
        (said(first, self.both.sums.0), said(second, self.both.sums.1))
    }

    /// Counts in the whole yard, a year earlier and now.
    pub fn counts(&self) -> (usize, usize) {
        let mut all = (0, 0);
        for of in &self.both.hives {
            all = (all.0 + of.counts.0, all.1 + of.counts.1);
        }
        all
    }

    /// The same of one hive, and what both say beside each other; nothing where one of them is not said, or where too
    /// few hives tell how far one strays ([`compare_one`]).
    pub fn of_hive(&self, hive: &ThingId) -> (Option<Rate>, Option<Rate>, Option<Trend>) {
        let Some(of) = self.both.hives.iter().find(|of| of.hive == *hive) else { return (None, None, None) };
        let (first, second) = (said(of.counts.0, of.first), said(of.counts.1, of.second));
        let trend = first.and(second).and_then(|_| compare_one(of.first, of.second, &self.both.trend));
        (first, second, trend)
    }
}

/// The year up to `to` and with it, from the day after the same day of the year before.
pub fn year_to(to: Day) -> Days {
    Days { from: year_before(to).plus(1), to }
}

/// The same days a year earlier; none of days that are longer than a year and would lie in both. Before a whole year comes
/// the year that ends on the day before it, whatever leap days do; and no day lies in both.
pub fn earlier(days: Days) -> Option<Days> {
    let Days { from, to } = days;
    if days == year_to(to) {
        return Some(year_to(from.plus(-1)));
    }
    let last = year_before(to).min(from.plus(-1));
    (to.days_since(from) <= YEAR).then(|| Days { from: year_before(from), to: last })
}

/// The same day of the year before; of a leap day the day before it.
fn year_before(day: Day) -> Day {
    let of = |number| Day::from_ymd(day.year() - 1, day.month(), number).ok();
    of(day.day_of_month()).or_else(|| of(28)).unwrap_or(day.plus(-YEAR))
}

/// Beetles for 100 trap-days where there are counts and trap-days enough.
pub fn said(counts: usize, stretch: Stretch) -> Option<Rate> {
    let enough = counts >= LEAST_COUNTS && stretch.trap_days >= LEAST_TRAP_DAYS;
    stretch.rate().filter(|_| enough)
}

/// What the keeper wrote down for next year in `yard` on these days, oldest first.
pub fn verdicts<'a>(standing: &'a Standing, yard: &ThingId, days: Days) -> Vec<&'a RecordNow> {
    let mut all = Vec::new();
    for (_, now) in standing.records_of(Blank::Verdict) {
        if now.yard.as_ref() == Some(yard) && (days.from..=days.to).contains(&now.day) {
            all.push(now);
        }
    }
    all
}
