//! English: honey supers against the clock.

use super::en::{counted, date, put};
use crate::book::record::ClockTime;

/// Before an hour: the bees were off.
pub const OFF: &str = "Bees off: ";
/// Before an hour: until when the keeper wants to spin.
pub const GOAL: &str = "Goal: ";
/// Before an hour: the last one.
pub const LIMIT: &str = "Limit: ";
/// Before an hour: when eggs may hatch.
pub const FIRST_HATCH: &str = "Eggs laid last may hatch: ";
/// Caution.
pub const NOT_SLIMED: &str = "Slimed honey is not for people or bees.";
/// Caution.
pub const SPIN: &str = "Spin within 24 h; 48 h at the most.";

/// "Bees off: Tue 14 July 2026, 16:00", on a line of its own.
pub fn put_hour(said: &mut String, what: &str, at: ClockTime) {
    put_line(said, what);
    put(said, &hour(at));
}

/// Begins another line.
pub fn put_line(said: &mut String, line: &str) {
    put(said, if said.is_empty() { "" } else { "\n" });
    put(said, line);
}

/// "Tue 14 July 2026, 16:00".
pub fn hour(at: ClockTime) -> String {
    let mut said = date(at.day);
    put(&mut said, ", ");
    at.put_clock(&mut said);
    said
}

/// "Mill: spin 6 supers". For a calendar, which does not know the space that holds a number and its noun together.
pub fn summary(yard: &str, supers: Option<u32>) -> String {
    let supers = supers.map_or_else(|| "supers".to_owned(), |supers| counted(supers, "super", "supers"));
    [yard, ": spin ", &supers.replace('\u{a0}', " ")].concat()
}
