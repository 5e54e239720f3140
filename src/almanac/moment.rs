//! Moments: what two clocks in different zones agree on. For hours that must not be an hour too few or too many when the
//! clocks are changed; days are counted in [`Day`], never in these.

use super::day::Day;

const HOUR: i32 = 60;
const DAY: i32 = 24 * HOUR;

/// A moment, to the minute: minutes since the beginning of [`Day::FIRST`] in UTC.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment(i32);

impl Moment {
    /// Minute `minute` of `day` in UTC.
    pub fn new(day: Day, minute: u16) -> Moment {
        // Two centuries are 105 million minutes.
        Moment(day.number() * DAY + i32::from(minute))
    }

    /// Its day in UTC, and the minute after its midnight.
    pub fn utc(self) -> (Day, u16) {
        let minute = u16::try_from(self.0.rem_euclid(DAY)).unwrap_or_default();
        (Day::FIRST.plus(self.0.div_euclid(DAY)), minute)
    }

    /// `minutes` later, earlier when negative.
    #[must_use]
    pub fn plus(self, minutes: i32) -> Moment {
        Moment(self.0.saturating_add(minutes))
    }

    /// `hours` later.
    #[must_use]
    pub fn plus_hours(self, hours: u32) -> Moment {
        self.plus(i32::try_from(hours).unwrap_or(i32::MAX).saturating_mul(HOUR))
    }

    /// Minutes from `earlier` to this one; negative when `earlier` is later.
    pub fn since(self, earlier: Moment) -> i32 {
        self.0.saturating_sub(earlier.0)
    }

    /// The moment at which a clock shows `shown`, which is told as if that clock ran in UTC; `clock` says what it shows at
    /// a moment, told in the same way.
    ///
    /// Where an hour comes twice, the first one is meant, and where it is left out, the one before it: hours since then
    /// are rather too many than too few.
    pub fn when(shown: Moment, clock: &dyn Fn(Moment) -> Option<Moment>) -> Option<Moment> {
        let east = |at: Moment| Some(clock(at)?.since(at));
        // No zone is more than a day from UTC, and none has changed its clocks twice in two days.
        let (before, after) = (east(shown.plus(-DAY))?, east(shown.plus(DAY))?);
        let (first, last) = (shown.plus(-before.max(after)), shown.plus(-before.min(after)));
        let is = |at: Moment| clock(at) == Some(shown);
        Some(if is(last) && !is(first) { last } else { first })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(day: &str, hour: u16, minute: u16) -> Moment {
        Moment::new(Day::parse(day).unwrap(), hour * 60 + minute)
    }

    /// New York in 2026: five hours behind until 8 March 07:00Z, four until 1 November 06:00Z.
    #[allow(clippy::unnecessary_wraps)] // as a browser's clock, which may not know its zone
    fn new_york(moment: Moment) -> Option<Moment> {
        let summer = at("2026-03-08", 7, 0) <= moment && moment < at("2026-11-01", 6, 0);
        Some(moment.plus(if summer { -240 } else { -300 }))
    }

    #[test]
    fn an_hour_is_a_moment_and_the_moment_shows_that_hour() {
        for (shown, moment) in [
            (at("2026-01-15", 16, 0), at("2026-01-15", 21, 0)),
            (at("2026-07-14", 22, 30), at("2026-07-15", 2, 30)),
            (at("2026-03-08", 1, 59), at("2026-03-08", 6, 59)),
            (at("2026-03-08", 3, 0), at("2026-03-08", 7, 0)),
            // Left out: the hour before, and twice there: the first.
            (at("2026-03-08", 2, 30), at("2026-03-08", 6, 30)),
            (at("2026-11-01", 1, 30), at("2026-11-01", 5, 30)),
            (at("2026-11-01", 2, 0), at("2026-11-01", 7, 0)),
        ] {
            assert_eq!(Moment::when(shown, &new_york), Some(moment), "{:?}", shown.utc());
        }
        assert_eq!(Moment::when(at("2026-01-15", 16, 0), &|_| None), None);
    }

    #[test]
    fn hours_across_a_change_of_the_clocks_are_the_hours_that_went_by() {
        let off = Moment::when(at("2026-10-31", 16, 0), &new_york).unwrap();
        let next = Moment::when(at("2026-11-01", 16, 0), &new_york).unwrap();
        assert_eq!(next.since(off), 25 * 60);
        assert_eq!(new_york(off.plus_hours(24)).unwrap().utc(), at("2026-11-01", 15, 0).utc());
    }
}
