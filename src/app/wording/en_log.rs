//! English: what the panel says after, before and instead of a save.

use super::en::{counted, date};
use super::en_records;
use super::en_round::{ROSE, did, hive, near, near_and_how_far, own, skip};
use crate::almanac::day::Day;
use crate::book::entry::{Did, Ending, SkipReason};
use crate::book::write::{Doubt, Refusal};

/// "Hive 7: topped up", with the day when it is not today; `traps` says which, by [`some`] or [`whole`].
pub fn logged(tag: &str, work: Did, traps: &str, day: Day, today: Day) -> String {
    let on = if day == today { String::new() } else { [" on ", &near(day, today)].concat() };
    let work = if work == Did::Missing && !traps.is_empty() { "missing" } else { did(work) };
    [&hive(tag), ": ", traps, work, &on].concat()
}

/// "3 traps ".
pub fn some(traps: u32) -> String {
    [&counted(traps, "trap", "traps"), " "].concat()
}

/// "all 4 traps " where that is not what is done to every hive; else nothing.
pub fn whole(traps: u32, work: Did) -> String {
    let usual = matches!(work, Did::AsFound | Did::ToppedUp | Did::Replaced);
    if usual || traps < 2 { String::new() } else { ["all ", &some(traps)].concat() }
}

/// "Hive 7: 4 traps placed".
pub fn logged_placed(tag: &str, traps: u32) -> String {
    [&hive(tag), ": ", &counted(traps, "trap", "traps"), " placed"].concat()
}

/// "Hive 7: skipped, hot bees".
pub fn logged_skip(tag: &str, why: SkipReason) -> String {
    [&hive(tag), ": skipped, ", skip(why)].concat()
}

/// "5 hives topped up".
pub fn logged_rest(hives: usize, work: Did) -> String {
    [&counted(u32::try_from(hives).unwrap_or(u32::MAX), "hive", "hives"), " ", did(work)].concat()
}

/// "Log these 5 hives".
pub fn rest_confirm(hives: usize) -> String {
    if hives == 1 {
        "Log this hive".to_owned()
    } else {
        ["Log these ", &counted(u32::try_from(hives).unwrap_or(u32::MAX), "hive", "hives")].concat()
    }
}

/// The undo bar after an undo.
pub fn undone(said: &str) -> String {
    ["Taken back: ", said].concat()
}

/// A day that is not today, above the keys.
pub fn writing_for(day: Day, today: Day) -> String {
    ["Writing for ", &near_and_how_far(day, today)].concat()
}

/// Fields that were filled on another day.
pub fn begun_on(day: Day, today: Day) -> String {
    ["Levels or counts here were typed on ", &near_and_how_far(day, today), ". Still right? "].concat()
}

/// A note that is too long.
pub fn note_over(over: usize) -> String {
    ["500 characters at most: ", &over.to_string(), " too many."].concat()
}

/// "42 of 500".
pub fn note_length(count: usize) -> String {
    [&count.to_string(), " of 500"].concat()
}

/// A clock that is not the phone's.
pub fn zone(zone: &str) -> String {
    ["Days here go by the clock of ", &zone.replace('_', " "), "."].concat()
}

/// A question before a save.
pub fn doubt(doubt: Doubt) -> &'static str {
    match doubt {
        Doubt::Swapped => "Less oil left than found. Swapped?",
        Doubt::NoOil => {
            "“Oil left at” says 0 %: no oil is in after this. Leave it blank for the usual fill. Is 0 % right?"
        }
        Doubt::Rose { .. } => ROSE,
        Doubt::Many => "That is a great many beetles. Is the number right?",
        Doubt::Twice => "This hive has an entry for this day already. One more?",
        Doubt::Backdated => "Later work on this hive is written down. Save this too?",
    }
}

/// How a hive ended, inside a sentence.
pub fn ending(how: &Ending) -> &'static str {
    match how {
        Ending::Dead => "dead",
        Ending::Sold => "sold",
        Ending::Joined { .. } => "joined",
        Ending::Gone => "gone",
    }
}

/// Why something cannot be written, and what to do.
pub fn refusal(refusal: &Refusal) -> String {
    match refusal {
        Refusal::Future { today } => {
            ["That day has not come. Here it is ", &date(*today), "; is the phone’s date right?"].concat()
        }
        Refusal::BeforeHive { since } => [
            "This hive is in the book since ",
            &date(*since),
            ". Did it stand there earlier, or is the day wrong?",
        ]
        .concat(),
        Refusal::TagTaken { free } => {
            ["That tag is on another hive of this yard. ", &own(free), " is free."].concat()
        }
        Refusal::Ended { how, on } => [
            "Written down as ",
            ending(how),
            " since ",
            &date(*on),
            ". Wrong hive? If not, take it back into care first.",
        ]
        .concat(),
        Refusal::SameYard => "It stands in that yard already. Nothing was written.".to_owned(),
        Refusal::NotThereYet => {
            "That was not there yet on this day. Choose a later day, or mend the earlier entry first."
                .to_owned()
        }
        Refusal::Demonstration => "Invented hives and your own do not mix. Choose another yard.".to_owned(),
        Refusal::TooManyHives { most } => {
            ["At most ", &most.to_string(), " hives in a yard. Put the others into a second yard."].concat()
        }
        Refusal::NoTraps { wanting: 0 } => {
            "No traps are in this hive, and none are meant for it. “As found” writes a look down.".to_owned()
        }
        Refusal::NoTraps { wanting } => [
            "No traps are in this hive yet, ",
            &wanting.to_string(),
            " wanted. Write first that they were placed.",
        ]
        .concat(),
        Refusal::NoneFishes => {
            "No trap to top up: missing or glued shut. “Replaced” writes down that new ones are in."
                .to_owned()
        }
        Refusal::SplitOfItself => en_records::SPLIT_OF_ITSELF.to_owned(),
        Refusal::Backwards { .. } => en_records::BACKWARDS.to_owned(),
        Refusal::Lacks { .. } => en_records::LACKS.to_owned(),
        Refusal::OtherYard => {
            "Two hives in two yards are not one. If one was moved, write that down first.".to_owned()
        }
        Refusal::NoYard => "Choose the yard it goes to.".to_owned(),
        Refusal::Nothing => "Nothing to write: nothing was changed.".to_owned(),
        Refusal::Unknown => "This is not in the book any more. Go back to the list.".to_owned(),
    }
}
