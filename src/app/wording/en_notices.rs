//! English: what is said above every place.

use super::en::{counted, date};
use crate::almanac::day::Day;
use crate::app::cabinet::NotSaved;
use crate::store::shelf::ShelfError;

/// Name of the notices for screen readers.
pub const NAME: &str = "Notices";
/// Key that unfolds notices which fill a small screen.
pub const MORE: &str = "All notices";
/// Key that folds them again.
pub const LESS: &str = "Fewer notices";
/// Storage keeps nothing, before the first line.
pub const FORGOTTEN: &str = "This window keeps nothing: records vanish when it closes.";
/// Storage keeps nothing, and something was written.
pub const FORGOTTEN_WRITTEN: &str =
    "This window keeps nothing: what you have written vanishes when it closes. Save a backup file first.";
/// How to mend it.
pub const FORGOTTEN_HOW: &str = "A private window, or the browser’s settings, keep this page from storing anything. Open it in an ordinary window to keep records.";
/// The book is gone.
pub const GONE: &str = "A book was here and is gone: the browser or somebody cleared it. Open your backup file to bring it back.";
/// Key to the restore.
pub const GONE_KEY: &str = "Open a backup file";
/// Key that puts it away.
pub const GONE_AWAY: &str = "Begin a new book";
/// A newer version has written.
pub const READ_ONLY: &str = "A newer version of this page has written here, so this one only reads. Close every tab of this page and open it again where there is a signal: that updates the page.";
/// Another tab writes.
pub const ELSEWHERE: &str = "This page is open in another tab, and that one writes. Here you can read.";
/// Key that makes this tab the one that writes.
pub const TAKE_OVER: &str = "Write here instead";
/// The keeper has the phone only show the book.
pub const ONLY_SHOWS: &str =
    "This phone only shows the book: nothing can be written. Whoever holds it can read it.";
/// Key that ends it.
pub const WRITE_AGAIN: &str = "Write again";
/// Damaged pages.
pub const TO_BOOK: &str = "See them in the Book";
/// Key to the Book.
pub const TO_BACKUP: &str = "To the backup";
/// Heading of what was not kept.
pub const UNSAVED: &str = "Not kept";
/// It is still on the screen.
pub const UNSAVED_HOW: &str = "It is only in this tab until you deal with it. Copy the text or save it as a file: Restore in the Book takes it in again.";
/// Label of the text.
pub const UNSAVED_TEXT: &str = "What was not kept";
/// Key.
pub const TRY_AGAIN: &str = "Try again";
/// Key.
pub const AS_FILE: &str = "Save as a file";
/// Key.
pub const PUT_AWAY: &str = "I have it: put this away";
/// Said once.
pub const KEPT_NOW: &str = "Kept now";
/// Said once.
pub const STILL_NOT: &str = "Still not kept";
/// Demonstration.
pub const DEMO: &str = "Demonstration: invented hives, nothing of yours.";
/// Demonstration beside one's own.
pub const DEMO_IN: &str = "The demonstration is filled in; take it out in the Book.";

/// Damaged pages.
pub fn damaged(count: usize) -> String {
    if count == 1 {
        "1 page of the book could not be read. It is left as it is; the rest is whole.".to_owned()
    } else {
        [
            &count.to_string(),
            " pages of the book could not be read. They are left as they are; the rest is whole.",
        ]
        .concat()
    }
}

/// Pages whose entries the book has in other words.
pub fn twice(count: usize) -> String {
    let pages =
        counted(u32::try_from(count).unwrap_or(u32::MAX), "page of the book lies", "pages of the book lie");
    [&pages, " here twice, with different words. One is shown, the other is left as it is."].concat()
}

/// What came back from the second copy.
pub fn restored(entries: usize) -> String {
    let entries = counted(u32::try_from(entries).unwrap_or(u32::MAX), "entry", "entries");
    [&entries, " of your book had gone from this phone’s first copy and came back from the second. Nothing is missing."].concat()
}

/// They are not on the shelf.
pub const RESTORED_ALONE: &str =
    "They still lie in one place only: this page tries again with the next save.";

/// The clock.
pub fn clock(today: Day, newest: Day) -> String {
    [
        "The phone says ",
        &date(today),
        ", but the newest entry is of ",
        &date(newest),
        ": check the phone’s date.",
    ]
    .concat()
}

/// The clock was set while the page was open.
pub fn clock_set(from: Day, today: Day) -> String {
    ["The phone’s date went from ", &date(from), " to ", &date(today), ": is it right now?"].concat()
}

/// Key that says so.
pub const CLOCK_RIGHT: &str = "It is right";
/// Field.
pub const VISIT: &str = "Day of this visit";
/// What it does.
pub const VISIT_HINT: &str = "If the phone is wrong and cannot be set now: entries are dated by this day until the page is opened again.";
/// Key.
pub const VISIT_KEY: &str = "Go by this day";
/// Key.
pub const BY_THE_PHONE: &str = "Go by the phone";

/// The keeper has said which day it is.
pub fn said_today(today: Day) -> String {
    ["You have said that today is ", &date(today), ". The phone says another day."].concat()
}

/// Nothing is done before what is done already.
pub fn not_before(least: Day) -> String {
    ["Not before ", &date(least), "."].concat()
}

/// What was not kept, and why. What an earlier start of the page left behind has no words of its own.
pub fn unsaved(said: &str, why: &str) -> String {
    if said.is_empty() { [UNSAVED, ". ", why].concat() } else { [UNSAVED, ": ", said, ". ", why].concat() }
}

/// Why something was not kept.
pub fn why(why: &NotSaved) -> &'static str {
    match why {
        NotSaved::Shelf { why: ShelfError::Full, .. } => {
            "The room this browser gives the page is full. Nothing that was there is lost."
        }
        NotSaved::Shelf { why: ShelfError::Denied, .. } => {
            "The browser does not let this page store anything."
        }
        NotSaved::Shelf { why: ShelfError::Other, .. } => "The phone did not keep it.",
        NotSaved::ReadOnly => "A newer version of this page has written here, so this one only reads.",
        NotSaved::Elsewhere => "Another tab of this page is open and writes. Write here instead, or there.",
        NotSaved::OnlyShows => "This phone only shows the book now: nothing was written.",
        NotSaved::Busy => "Another tab of this page is writing at the same time. Close it and try again.",
    }
}

/// Name of the file with what was not kept.
pub fn file_name(day: &str) -> String {
    ["yard-not-kept-", day, ".json"].concat()
}
