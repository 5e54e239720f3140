//! A stack of supers in words, as its hours go by.

use super::honey::{Stack, Step, YardClock};
use crate::almanac::honey::{DRY_PERCENT, Decides, FEW_LIVE, Hatch, Race, Stand};
use crate::almanac::moment::Moment;
use crate::almanac::warmth::Swing;
use crate::app::wording::en_beetle_honey as w;
use crate::book::record::ClockTime;

/// What is said of a stack at a moment.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Told {
    /// The hour to spin by and what decides it, while nobody spins.
    pub by: Option<(ClockTime, Decides)>,
    /// How many hours are gone and left.
    pub big: String,
    /// Its hours, each with how far off it is.
    pub lines: Vec<String>,
    /// Too late, or soon.
    pub alarm: Option<&'static str>,
    /// What is to be known beside it.
    pub notes: Vec<&'static str>,
}

/// What is said of a race `now`; `shown` is what the clock of the yard shows.
pub fn race(race: &Race, hatch: Option<Hatch>, now: Moment, clock: &YardClock, zone: &str) -> Told {
    let stand = race.stand(now);
    let next = if stand == Stand::InTime { race.goal } else { race.limit };
    let mut told = Told { big: w::gone(now.since(race.off), next.since(now), stand), ..Told::default() };
    let (by, decides) = race.spin_by();
    told.by = (clock.shown)(by, zone).map(|at| (at, decides));
    let mut line = |what: &str, at: Moment| {
        if let Some(shown) = (clock.shown)(at, zone) {
            told.lines.push(w::hour_off(what, shown, at.since(now)));
        }
    };
    line(w::OFF, race.off);
    line(w::GOAL, race.goal);
    line(w::LIMIT, race.limit);
    if let Some(at) = race.hatch {
        line(w::FIRST_HATCH, at);
    }
    told.alarm = match stand {
        Stand::InTime => (now > by).then_some(w::PAST_HATCH),
        Stand::PastGoal => Some(w::PAST_GOAL),
        Stand::PastLimit => Some(w::PAST_LIMIT),
    };
    match hatch {
        Some(Hatch::After { minutes, earliest, latest }) => {
            told.lines.push(w::hatch_after(minutes, earliest, latest));
            told.notes.push(w::OUTER);
        }
        Some(Hatch::TooCold) => told.notes.push(w::TOO_COLD),
        Some(Hatch::TooHot) => told.notes.push(w::TOO_HOT),
        None => told.notes.push(w::NO_ROOM),
    }
    told
}

/// What the room means beside the hours.
pub fn of_room(told: &mut Told, room: Option<Swing>, humidity: Option<f64>) {
    if room.is_some_and(|room| room.high.celsius() > FEW_LIVE) {
        told.notes.push(w::FEW_LIVE);
    }
    if humidity.is_some_and(|percent| percent < DRY_PERCENT) {
        told.notes.push(w::DRY);
    }
}

/// What is said of a stack `now`.
pub fn stack(stack: &Stack, now: Moment, clock: &YardClock) -> Told {
    match stack.step {
        Step::Spin(of, hatch) => {
            let mut told = race(&of, hatch, now, clock, &stack.zone);
            of_room(&mut told, stack.room, stack.humidity);
            if let Some(since) = stack.began.and_then(|began| (clock.shown)(began, &stack.zone)) {
                told.big = w::being_spun(since);
                told.by = None;
                told.alarm = None;
            }
            told
        }
        Step::Back { ended, by } => {
            let mut told = Told { big: w::back(by.since(now)), ..Told::default() };
            for (what, at) in [(w::ENDED, ended), (w::BACK_BY, by)] {
                if let Some(shown) = (clock.shown)(at, &stack.zone) {
                    told.lines.push(w::hour_off(what, shown, at.since(now)));
                }
            }
            told.alarm = (now > by).then_some(w::BACK_LATE);
            told
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::day::Day;
    use crate::almanac::honey::hatch;
    use crate::almanac::warmth::Warmth;

    const UTC: YardClock = YardClock {
        moment: |time, _| Some(Moment::new(time.day, time.minute)),
        shown: |at, _| {
            let (day, minute) = at.utc();
            Some(ClockTime { day, minute })
        },
    };

    fn at(celsius: f64) -> Hatch {
        hatch(Swing::flat(Warmth::from_celsius(celsius).unwrap()))
    }

    #[test]
    fn a_stack_is_told_by_what_is_gone_and_what_is_left() {
        let off = Moment::new(Day::parse("2026-07-14").unwrap(), 16 * 60);
        let of = Race::new(off, 24, 48, at(28.0));
        let told = race(&of, Some(at(28.0)), off.plus(9 * 60 + 20), &UTC, "");
        assert_eq!(told.big, "9\u{a0}h\u{a0}20\u{a0}min gone, 14\u{a0}h\u{a0}40\u{a0}min to the goal");
        assert_eq!(told.lines[1], "Goal: Wed 15 July 2026, 16:00, in 14\u{a0}h\u{a0}40\u{a0}min");
        assert_eq!(
            told.lines[4],
            "An egg takes about 32\u{a0}h in this room; 25 to 64\u{a0}h by other figures"
        );
        assert_eq!((told.alarm, told.notes.as_slice()), (None, &[w::OUTER][..]));
        let late = race(&of, Some(at(28.0)), off.plus_hours(50), &UTC, "");
        assert_eq!(late.big, "50\u{a0}h\u{a0}00\u{a0}min gone, 2\u{a0}h\u{a0}00\u{a0}min past the limit");
        assert_eq!(late.alarm, Some(w::PAST_LIMIT));
        let goal = ClockTime::parse("2026-07-15T16:00").unwrap();
        assert_eq!((told.by, late.by), (Some((goal, Decides::Goal)), Some((goal, Decides::Goal))));
        // The earliest hatch comes before a late goal: once it is over it is said, though the goal is still to come.
        let slow = |hours: u32| {
            let slow = Race::new(off, 40, 48, at(28.0));
            super::race(&slow, Some(at(28.0)), off.plus_hours(hours), &UTC, "")
        };
        assert_eq!(slow(24).by.map(|(_, decides)| decides), Some(Decides::Hatch));
        assert_eq!((slow(24).alarm, slow(27).alarm), (None, Some(w::PAST_HATCH)));
    }

    #[test]
    fn a_cold_room_a_hot_one_and_a_dry_one_are_told_in_words() {
        let off = Moment::new(Day::parse("2026-07-14").unwrap(), 0);
        let told = |hatch| race(&Race::new(off, 24, 48, hatch), Some(hatch), off, &UTC, "");
        assert_eq!((told(at(10.0)).notes, told(at(10.0)).lines.len()), (vec![w::TOO_COLD], 3));
        assert_eq!(told(at(50.0)).notes, [w::TOO_HOT]);
        let mut dry = told(at(38.0));
        of_room(&mut dry, Some(Swing::flat(Warmth::from_celsius(38.0).unwrap())), Some(45.0));
        assert_eq!(dry.notes, [w::OUTER, w::FEW_LIVE, w::DRY]);
        // Dry air stops no clock.
        assert_eq!(dry.lines.len(), 5);
    }
}
