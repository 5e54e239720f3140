//! The hours of a yard: what its clock shows at a moment, and the moment of an hour that it showed.

use super::clock;
use crate::almanac::day::Day;
use crate::almanac::moment::Moment;
use crate::app::beetle::honey::YardClock;
use crate::book::record::ClockTime;

/// Milliseconds from 1970-01-01 to 2000-01-01 in UTC.
const START_MS: f64 = 946_684_800_000.0;
const MINUTE_MS: f64 = 60_000.0;

/// What the browser knows of every yard's clock.
pub const CLOCK: YardClock = YardClock { moment, shown };

/// This minute, on the day that the keeper has said it is.
pub fn now() -> Moment {
    let minutes = ((clock::moment() - START_MS) / MINUTE_MS).floor();
    #[allow(clippy::cast_possible_truncation)] // a cast saturates, and a clock beyond 2199 is not set at all
    Moment::new(Day::FIRST, 0).plus(minutes as i32)
}

/// What the clock in `zone` shows at a moment; none where the browser does not know the zone.
pub fn shown(at: Moment, zone: &str) -> Option<ClockTime> {
    let minutes = at.since(Moment::new(Day::FIRST, 0));
    clock::shown(f64::from(minutes).mul_add(MINUTE_MS, START_MS), zone)
}

/// The moment at which the clock in `zone` showed an hour; the earlier one where there are two.
pub fn moment(shown_there: ClockTime, zone: &str) -> Option<Moment> {
    let told = |time: ClockTime| Moment::new(time.day, time.minute);
    Moment::when(told(shown_there), &|at| shown(at, zone).map(told))
}
