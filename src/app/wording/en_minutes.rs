//! English: the minutes of a trip.

use super::en::{counted, date};
use super::en_lot::hours;
use crate::almanac::day::Day;

/// Heading.
pub const TITLE: &str = "Will the time do?";
/// The question.
pub const ASKS: &str = "How long does the trip take, and which hives wait if it is too long?";
/// Field.
pub const EACH: &str = "Minutes at each hive";
/// Field.
pub const LEAVE: &str = "Leave at";
/// Field.
pub const DONE: &str = "Must be done by";
/// Answer.
pub const MINUTES: &str = "Time it takes, an estimate";
/// Nothing is learned.
pub const NOT_LEARNED: &str = "Not learned yet: log five hives one after another on a walk, or type it.";
/// The end before the start.
pub const BACKWARDS: &str = "That is not after leaving.";
/// Reason.
pub const WHY: &str = "The way to each yard and setting up there, as written down in its facts, or else the way of your last trip to the same yards, there and back; and the minutes at each hive that is due, was skipped, is to be looked at again or has larvae. Minutes at a hive are the middle one of the stretches between two hives logged on the last five days of work, none over half an hour. Where time is short, larvae go first, then what is overdue, then what is due that day, then the rest, each in the order of the walk.";

/// "Learned: 4.5 minutes, from 23 stretches between two hives".
pub fn learned(minutes: &str, of: usize) -> String {
    ["Learned: ", minutes, " minutes, from ", &of.to_string(), " stretches between two hives"].concat()
}

/// Key to the facts of a yard.
pub fn facts_of(yard: &str) -> String {
    ["Way and setting up: ", yard].concat()
}

/// "Home: way 20 + setting up 10 + 6 hives × 4 minutes".
pub fn yard(name: &str, travel: Option<String>, set_up: Option<String>, hives: u32, each: &str) -> String {
    let said = |minutes: Option<String>| minutes.unwrap_or_else(|| "not written down".to_owned());
    let (travel, set_up) = (said(travel), said(set_up));
    let hives = counted(hives, "hive", "hives");
    [name, ": way ", &travel, " + setting up ", &set_up, " + ", &hives, " × ", each, " minutes"].concat()
}

/// Behind the yards, where their ways lead there only.
pub const NOT_HOME: &str = "The way home is not in it.";

/// "Way, an estimate: 45 minutes there and back, as on your trip of Tue 3 November 2026, in equal parts for 2 yards".
pub fn way_of_trip(minutes: &str, on: Day, yards: u32) -> String {
    let mut said =
        ["Way, an estimate: ", minutes, " minutes there and back, as on your trip of ", &date(on)].concat();
    if yards > 1 {
        said.push_str(&[", in equal parts for ", &counted(yards, "yard", "yards")].concat());
    }
    said
}

/// "about 1 h 24 min".
pub fn about(minutes: u32) -> String {
    ["about ", &hours(minutes)].concat()
}

/// "Leaving at 7:00 you are done at about 8:24".
pub fn back(leave: u32, minutes: u32) -> String {
    ["Leaving at ", &clock(leave), " you are done at about ", &clock(leave.saturating_add(minutes))].concat()
}

/// "1 h 30 min are there: it fits".
pub fn fits(have: u32) -> String {
    [&hours(have), " are there: it fits"].concat()
}

/// "Does not fit: 1 h 00 min are there, about 1 h 24 min are wanted".
pub fn short(have: u32, all: u32) -> String {
    ["Does not fit: ", &hours(have), " are there, about ", &hours(all), " are wanted"].concat()
}

/// "These wait: 3, 7. The others take about 56 min. Log them as skipped, no time: then they lead next time."
pub fn left(hives: &str, minutes: u32) -> String {
    let lead = ["These wait: ", hives, ". The others take about ", &hours(minutes)].concat();
    [&lead, ". Log those that wait as skipped: then they lead next time."].concat()
}

/// "2 (Mill)".
pub fn hive_of(tag: &str, yard: &str) -> String {
    [tag, " (", yard, ")"].concat()
}

fn clock(minutes: u32) -> String {
    let (hours, rest) = (minutes / 60 % 24, minutes % 60);
    let between = if rest < 10 { ":0" } else { ":" };
    [hours.to_string().as_str(), between, rest.to_string().as_str()].concat()
}
