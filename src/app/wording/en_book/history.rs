//! Every line.

use super::{Day, Stamp, counted, date, en_round, number, short_date, weekday};
use crate::app::ledger::words::isolated;
use crate::book::round::HiveDue;
use crate::book::shift::Shift;

/// Heading.
pub const TITLE: &str = "History";
/// Chooser of the yard.
pub const YARD: &str = "Yard";
/// No yard chosen.
pub const EVERYTHING: &str = "Everything";
/// Chooser of the hive.
pub const HIVE: &str = "Hive";
/// No hive chosen.
pub const WHOLE_YARD: &str = "Whole yard";
/// Nothing written about the choice.
pub const NONE: &str = "None recorded.";
/// Mark of a struck line.
pub const STRUCK: &str = "Struck out, ";
/// Mark of a corrected line.
pub const CORRECTED: &str = "Corrected by a later entry, ";
/// Key that strikes one line out.
pub const STRIKE: &str = "Strike out this entry";
/// Key that brings one line back.
pub const BACK: &str = "Bring it back";
/// Before a line goes on which others stand.
pub const BRINGS: &str = "This entry brought something into the book. Struck out, everything logged on it goes out of sight until you bring it back.";
/// How strikes work.
pub const HOW: &str =
    "Nothing is ever rubbed out: a struck entry stays here and can be brought back at any time.";
/// Key that opens the fields of a line.
pub const EDIT: &str = "Correct this entry";
/// Key that takes the last correction back.
pub const TAKE_BACK: &str = "Take the correction back";
/// Said once.
pub const TAKEN_BACK: &str = "Correction taken back";
/// Key that saves a correction.
pub const SAVE: &str = "Save the correction";
/// Another line was tapped while something was typed here.
pub const STILL_OPEN: &str = "Save this correction or leave it first: what you typed would be lost.";
/// Key that leaves a line as it is.
pub const LEAVE: &str = "Leave it as it is";
/// Said once.
pub const EDITED: &str = "Corrected";
/// Chooser of what was done, or why nothing was.
pub const WHAT: &str = "What was done";
/// Chooser of the reason.
pub const WHY: &str = "Skipped why";
/// Field: time zone.
pub const ZONE: &str = "Time zone";
/// Under it.
pub const ZONE_HINT: &str = "Whose days count there, such as Europe/Berlin.";
/// The line says nothing of the size.
pub const SIZE_LEFT: &str = "Not said here";

/// A time zone that the browser does not know.
pub fn no_zone(typed: &str, own: &str) -> String {
    ["No such zone on this phone: ", &isolated(typed), ". The phone itself is in ", own, "."].concat()
}

/// Under the level left.
pub const AFTER_HINT: &str = "Left blank: not written down.";
/// Before an earlier version of a line.
pub const WAS: &str = "was: ";
/// Before a version that was taken back.
pub const WAS_NOT: &str = "taken back: ";
/// A strike of a line.
pub const WAS_STRUCK: &str = "struck out";
/// The strike of a strike.
pub const WAS_BACK: &str = "brought back";
/// Who wrote what was written since this page was opened.
pub const THIS_PHONE: &str = "this phone";
/// Two versions that were written on two phones.
pub const CLASH: &str = "Two phones say different things. Which is right?";
/// Key beside each.
pub const KEEP: &str = "Keep this";
/// Said once.
pub const DECIDED: &str = "Decided";
/// Struck out on one phone, corrected on the other.
pub const REVIVED: &str = "Struck out on one phone and corrected on another: the correction counts. Strike it out again if it should not.";
/// The line that a correction corrects is missing.
pub const ORPHAN: &str = "Corrects an entry that is not in this book.";
/// Key beside a possible double.
pub const BOTH: &str = "Both are right";
/// Said once.
pub const BOTH_SAID: &str = "Both entries kept";
/// No hive is due on another day.
pub const NO_SHIFT: &str = "No due date changes.";
/// Opens the list of hives whose day changes.
pub const SHOW_SHIFTS: &str = "Show which";
/// A hive that is not there before or after.
const NOT_IN_CARE: &str = "not in care";

/// What is about to be written.
pub const THIS: &str = "This changes ";
/// The strike that a key beside it would write.
pub const STRIKE_CHANGES: &str = "Striking it out changes ";

/// "This changes 3 due dates."
pub fn shifts(what: &str, count: usize) -> String {
    [what, &counted(number(count), "due date", "due dates"), "."].concat()
}

/// "Hive 7: due Tue 14 July, in 2 days → due today, oil runs low".
pub fn shift(hive: &str, shift: &Shift, today: Day) -> String {
    let due =
        |due: Option<&HiveDue>| due.map_or_else(|| NOT_IN_CARE.to_owned(), |due| en_round::due(due, today));
    let why = match &shift.after {
        Some(HiveDue::Due { because, .. }) => [", ", &en_round::because(because)].concat(),
        _ => String::new(),
    };
    [hive, ": ", &due(shift.before.as_ref()), " → ", &due(shift.after.as_ref()), &why].concat()
}

/// Two lines that may be one.
pub fn double(day: Day) -> String {
    [
        "Possible double: two phones wrote down work for ",
        &date(day),
        ". Rates use one of them until you decide: strike one out, or say that both are right.",
    ]
    .concat()
}

/// Said once.
pub const STRUCK_SAID: &str = "Struck out";
/// Said once.
pub const BACK_SAID: &str = "Brought back";
/// Key that shows more.
pub const MORE: &str = "Show 100 more";

/// Key that strikes a bulk out.
pub fn undo_all(count: usize) -> String {
    ["Undo all ", &count.to_string()].concat()
}

/// Key that brings a bulk back.
pub fn back_all(count: usize) -> String {
    ["Bring back all ", &count.to_string()].concat()
}

/// How many lines the choice has, and how many are shown.
pub fn shown(shown: usize, all: usize) -> String {
    let all_lines = counted(number(all), "entry", "entries");
    if shown < all { [&shown.to_string(), " of ", &all_lines].concat() } else { all_lines }
}

/// "09:30".
pub fn time(at: Stamp) -> String {
    let (hour, minute) = at.hour_minute();
    let two = |n: u32| if n < 10 { ["0", &n.to_string()].concat() } else { n.to_string() };
    [&two(hour), ":", &two(minute)].concat()
}

/// Who wrote it and when.
pub fn written(day: Day, at: Stamp, by: Option<&str>) -> String {
    let on = at.day();
    let mut said = "written ".to_owned();
    if on != day {
        said.push_str(&[weekday(on.weekday()), " ", &short_date(on), " "].concat());
        if on.year() != day.year() {
            said.push_str(&[&on.year().to_string(), " "].concat());
        }
    }
    said.push_str(&time(at));
    if let Some(by) = by {
        said.push_str(" by ");
        said.push_str(by);
    }
    said
}

/// Part of a bulk.
pub fn together(count: usize) -> String {
    ["one of ", &count.to_string(), " written at once"].concat()
}
