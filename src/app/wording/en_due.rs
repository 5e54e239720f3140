//! English: when a hive is due and why, and what stops its traps.

use super::en::{counted, days};
use super::en_limit::maximum;
use super::en_round::{near, near_and_how_far};
use crate::almanac::day::Day;
use crate::almanac::refill::{Limit, Loss, Refill, Timing};
use crate::book::round::{Because, HiveDue};
use crate::book::standing::Trouble;

/// When a hive is due, in words.
pub fn due(due: &HiveDue, today: Day) -> String {
    match due {
        HiveDue::Resting { since } => ["paused since ", &near(*since, today), ", nothing is due"].concat(),
        HiveDue::NoTraps { wanting: 0 } => "no traps".to_owned(),
        HiveDue::NoTraps { wanting } => ["no traps in, ", &wanting.to_string(), " wanted"].concat(),
        HiveDue::Due { on, timing, traps_due, traps, .. } => {
            let mut said = due_on(*on, *timing, today);
            if (1..*traps).contains(traps_due) {
                said =
                    [&said, ", ", &traps_due.to_string(), " of ", &counted(*traps, "trap", "traps")].concat();
            }
            said
        }
    }
}

/// "due Tue 14 July, in 3 days", "due today", "3 days overdue".
pub fn due_on(on: Day, timing: Timing, today: Day) -> String {
    match timing {
        Timing::In { .. } => ["due ", &near_and_how_far(on, today)].concat(),
        Timing::Today => "due today".to_owned(),
        Timing::Overdue { days: late } => [&days(u32::from(late)), " overdue"].concat(),
    }
}

/// What decided the day, short.
pub fn because(because: &Because) -> String {
    match because {
        Because::Trouble(trouble) => trouble_word(*trouble).to_owned(),
        Because::Limit(refill) => limit(refill),
    }
}

/// The limit that decided, short; the sum behind it is in [`super::en_limit::reasons`].
fn limit(refill: &Refill) -> String {
    let words = match refill.decided_by {
        Limit::YourMaximum { days } => return maximum(days),
        Limit::OilLow { .. } if matches!(refill.loss, Loss::Yard { .. }) => {
            "oil runs low, judged by the yard’s other hives"
        }
        Limit::OilLow { .. } => "oil runs low",
        Limit::Bodies { room: 0, .. } => "fuller than ¾",
        Limit::Bodies { .. } => "beetles fill it",
    };
    words.to_owned()
}

/// Why a trap does not fish.
pub fn trouble_word(trouble: Trouble) -> &'static str {
    match trouble {
        Trouble::Spilled => "spilled",
        Trouble::Missing => "trap missing",
        Trouble::GluedShut => "glued shut",
    }
}

/// "1 trap missing", "4 traps spilled".
pub fn idle_traps((trouble, traps): (Trouble, u32)) -> String {
    let word = match trouble {
        Trouble::Spilled => " spilled",
        Trouble::Missing => " missing",
        Trouble::GluedShut => " glued shut",
    };
    [&counted(traps, "trap", "traps"), word].concat()
}

/// Why a hive stays due after it was seen.
pub fn idle(trouble: Trouble) -> &'static str {
    match trouble {
        Trouble::Spilled => "stays due until it is filled again",
        Trouble::Missing => "stays due until a trap is in",
        Trouble::GluedShut => "stays due until it is free again",
    }
}

/// "1 trap missing – still due": somebody was here today, and it is not done.
pub fn still_due(why: &str) -> String {
    [why, " – still due"].concat()
}

/// "after the spill, look again by Fri 17 July", "nobody has looked again after the spill, it was due by Fri 17 July":
/// says why wherever it stands.
pub fn look_again(by: Day, today: Day) -> String {
    let said = if by < today {
        "nobody has looked again after the spill, it was due by "
    } else {
        "after the spill, look again by "
    };
    [said, &near(by, today)].concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::quantity::Share;
    use crate::almanac::refill::{RefillFacts, refill};

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    #[test]
    fn a_due_day_is_told_with_weekday_and_days() {
        let today = day("2026-07-11");
        let told = |on: &str, timing| due_on(day(on), timing, today);
        assert_eq!(told("2026-07-14", Timing::In { days: 3 }), "due Tue 14 July, in 3\u{a0}days");
        assert_eq!(told("2026-07-12", Timing::In { days: 1 }), "due Sun 12 July, tomorrow");
        assert_eq!(told("2026-07-11", Timing::Today), "due today");
        assert_eq!(told("2026-07-10", Timing::Overdue { days: 1 }), "1\u{a0}day overdue");
    }

    #[test]
    fn where_some_of_the_traps_are_due_it_says_how_many() {
        let on = day("2026-07-09");
        let told = |traps_due| {
            let (timing, because) = (Timing::Overdue { days: 2 }, Because::Trouble(Trouble::Missing));
            due(&HiveDue::Due { on, timing, because, traps_due, traps: 4 }, day("2026-07-11"))
        };
        assert_eq!(told(1), "2\u{a0}days overdue, 1 of 4\u{a0}traps");
        assert_eq!((told(4), told(0)), ("2\u{a0}days overdue".to_owned(), "2\u{a0}days overdue".to_owned()));
    }

    #[test]
    fn a_row_says_what_decides_and_when_the_loss_is_not_the_hives_own() {
        let said = |max_days, loss| {
            let half = Some(Share::HALF);
            let refill = refill(&RefillFacts {
                last_service: day("2026-12-02"),
                max_days,
                level: half,
                read_on: None,
                floor: Some(Share::THREE_TENTHS),
                loss,
                room: Some(60),
                catch_per_day: Some(3.0),
            });
            because(&Because::Limit(refill))
        };
        let (yard, own) =
            (Loss::Yard { per_day: 2.5, intervals: 3 }, Loss::Hive { per_day: 2.5, intervals: 1 });
        assert_eq!(said(14, yard), "oil runs low, judged by the yard’s other hives");
        assert_eq!(said(14, own), "oil runs low");
        assert_eq!(said(7, yard), "your maximum of 7\u{a0}days");
        assert_eq!(said(60, Loss::Unknown), "beetles fill it");
    }

    #[test]
    fn a_look_again_that_was_missed_says_so() {
        let by = day("2026-07-17");
        assert_eq!(look_again(by, by), "after the spill, look again by Fri 17 July");
        assert_eq!(
            look_again(by, day("2026-07-18")),
            "nobody has looked again after the spill, it was due by Fri 17 July"
        );
    }
}
