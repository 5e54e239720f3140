//! Supers against the clock from typed figures: hours, and how many may be pulled.

use crate::almanac::honey::{Hatch, Pull, Race, Work, hatch};
use crate::almanac::moment::Moment;
use crate::almanac::typed;
use crate::almanac::warmth::{Swing, Warmth};
use crate::app::bench::draft::BenchDraft;
use crate::app::bench::read;
use crate::book::record::{ClockTime, NoClockTime};

/// Most hours of a goal or a limit.
pub const MOST_HOURS: u32 = 240;
/// Most hours of work.
pub const MOST_WORK: u32 = 72;
/// Most frames of a super or of a load.
pub const MOST_FRAMES: u32 = 200;
/// Most minutes for a load.
pub const MOST_MINUTES: u32 = 240;
/// Most seconds for a frame.
pub const MOST_SECONDS: u32 = 3600;

/// The hour in the field; none where it is empty, which is now.
///
/// # Errors
/// [`NoClockTime`].
pub fn off(draft: &BenchDraft) -> Result<Option<ClockTime>, NoClockTime> {
    let text = draft.honey_off().trim();
    if text.is_empty() { Ok(None) } else { ClockTime::parse(text).map(Some) }
}

/// The coolest and the warmest in the fields, whichever is the warmer.
fn ends(draft: &BenchDraft) -> Option<(Warmth, Warmth)> {
    let warmth = |text: &str, unit: &str| Warmth::from_celsius(read::warmth(text, unit).ok()?).ok();
    let high = warmth(draft.honey_room(), draft.honey_room_unit())?;
    let low = match draft.honey_low().trim() {
        "" => high,
        text => warmth(text, draft.honey_low_unit())?,
    };
    Some((low, high))
}

/// The room in the fields.
pub fn room(draft: &BenchDraft) -> Option<Swing> {
    ends(draft).filter(|(low, high)| low <= high).map(|(low, high)| Swing { low, high })
}

/// Warmer at its coolest than at its warmest.
pub fn upside_down(draft: &BenchDraft) -> bool {
    ends(draft).is_some_and(|(low, high)| low > high)
}

/// Goal and limit in the fields.
pub fn hours(draft: &BenchDraft) -> Option<(u32, u32)> {
    let hours = |text: &str| typed::count(text, 1, MOST_HOURS).ok();
    Some((hours(draft.honey_goal())?, hours(draft.honey_limit())?))
}

/// The race of supers that are off since `off`; none while a field cannot be read.
pub fn race(draft: &BenchDraft, off: Moment) -> Option<(Race, Hatch)> {
    let (goal, limit) = hours(draft).filter(|(goal, limit)| goal <= limit)?;
    let hatch = hatch(room(draft)?);
    Some((Race::new(off, goal, limit, hatch), hatch))
}

/// The working day in the fields.
pub fn work(draft: &BenchDraft) -> Option<Work> {
    let count = |text: &str, least, most| typed::count(text, least, most).ok();
    Some(Work {
        minutes: count(draft.honey_work(), 1, MOST_WORK)? * 60,
        beside: count(draft.honey_beside(), 0, MOST_WORK)? * 60,
        frames: count(draft.honey_frames(), 1, MOST_FRAMES)?,
        load: count(draft.honey_load(), 1, MOST_FRAMES)?,
        spin: count(draft.honey_spin(), 1, MOST_MINUTES)?,
        uncap: count(draft.honey_uncap(), 0, MOST_SECONDS)?,
    })
}

/// How many supers may be pulled.
pub fn pull(draft: &BenchDraft) -> Option<(Work, Pull)> {
    let work = work(draft)?;
    Some((work, work.pull()?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::day::Day;

    fn noon() -> Moment {
        Moment::new(Day::parse("2026-07-14").unwrap(), 720)
    }

    #[test]
    fn the_example_is_eight_supers_in_five_hours_and_hatches_after_a_day_and_a_third() {
        let draft = BenchDraft::default();
        let (_, pull) = pull(&draft).unwrap();
        assert_eq!((pull.supers, pull.takes, pull.by_uncapping), (8, 360, false));
        let (race, _) = race(&draft, noon()).unwrap();
        assert_eq!(race.hatch.unwrap().since(noon()) / 60, 32);
        assert_eq!(off(&draft), Ok(None));
    }

    #[test]
    fn a_room_upside_down_or_an_hour_that_is_none_counts_for_nothing() {
        let upside = BenchDraft::default().with("honey_low", "30");
        assert!(room(&upside).is_none() && race(&upside, noon()).is_none() && upside_down(&upside));
        assert!(!upside_down(&BenchDraft::default().with("honey_low", "")));
        assert!(race(&BenchDraft::default().with("honey_goal", "60"), noon()).is_none());
        let cool = BenchDraft::default().with("honey_low", "68 F");
        assert!((room(&cool).unwrap().low.celsius() - 20.0).abs() < 1e-9);
        assert!(off(&BenchDraft::default().with("honey_off", "yesterday")).is_err());
        let at = off(&BenchDraft::default().with("honey_off", "2026-07-14T16:30")).unwrap().unwrap();
        assert_eq!(at.minute, 16 * 60 + 30);
        for (field, text) in [("honey_load", "0"), ("honey_work", ""), ("honey_spin", "0")] {
            assert!(pull(&BenchDraft::default().with(field, text)).is_none(), "{field}");
        }
    }
}
