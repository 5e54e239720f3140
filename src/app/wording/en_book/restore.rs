//! A file that comes back.

use super::{BackupError, Counts, Day, Looks, Stamp, counted, date, history, lines, number};

/// Heading.
pub const TITLE: &str = "Restore";
/// Label of the file field.
pub const FILE: &str = "Open a file";
/// What happens.
pub const HINT: &str = "You see what is in it before anything changes. Nothing here is overwritten.";
/// For a copied text.
pub const PASTE: &str = "No file, but a copied text?";
/// Label of the text.
pub const PASTE_LABEL: &str = "Text of the backup";
/// Key.
pub const PASTE_KEY: &str = "Look into it";
/// Heading of the preview.
pub const PREVIEW: &str = "In this file";
/// Key that leaves it.
pub const LEAVE: &str = "Leave it";
/// Key when nothing is new.
pub const NOTHING_NEW: &str = "Nothing new: close";
/// The phone refused, at once or on the way, and why.
pub fn partly(kept: usize, of: usize, why: &str) -> String {
    let kept = &kept.to_string();
    [
        kept,
        " of ",
        &lines(of),
        " taken in. ",
        why,
        " The file still holds everything: once that is mended open it again; nothing comes twice.",
    ]
    .concat()
}
/// Opened and found to be no file at all.
pub const UNREADABLE: &str = "The phone could not read this file. Copy it onto the phone and try again.";
/// Heading over what can still be read of a damaged file.
pub const RECOVERED: &str = "What can still be read in it";
/// How far that can be trusted.
pub const RECOVERED_HOW: &str = "The check of the whole file has failed: entries may be missing, and any of these may have been changed. Look for a sound copy of the file first.";
/// Key.
pub const RECOVERED_FILE: &str = "Save them as a new file";
/// Name of that file, before the day.
pub const RECOVERED_NAME: &str = "yard-recovered-";

/// "Entries by themselves: 41 can be read, 2 cannot. The file says it held 48."
pub fn recovered(read: usize, unread: usize, held: Option<usize>) -> String {
    let (read, unread) = (read.to_string(), unread.to_string());
    let mut said = ["Entries by themselves: ", &read, " can be read, ", &unread, " cannot."].concat();
    if let Some(held) = held {
        said.push_str(&[" The file says it held ", &held.to_string(), "."].concat());
    }
    said
}

/// "From Wed 1 July 2026 to Tue 14 July 2026"
pub fn days(first: Day, last: Day) -> String {
    ["From ", &date(first), " to ", &date(last)].concat()
}
/// No yard.
pub const NO_YARD: &str = "No yard in it";
/// What a clash is.
pub const CLASH_HOW: &str = "Entries that differ from yours under the same name: yours stay as they are.";

/// Key that takes it in.
pub fn confirm(new: usize) -> String {
    ["Take in ", &lines(new)].concat()
}

/// When and by which phone.
pub fn made(at: Stamp, by: Option<&str>) -> String {
    let made = ["Made ", &date(at.day()), ", ", &history::time(at)].concat();
    match by {
        Some(by) => [&made, ", by ", by].concat(),
        None => made,
    }
}

/// What it holds, and how many of its lines are struck out.
pub fn holds(counts: Counts, struck: usize) -> String {
    let out =
        if struck > 0 { [", ", &struck.to_string(), " of them struck out"].concat() } else { String::new() };
    [
        "Holds ",
        &lines(counts.entries),
        &out,
        ": ",
        &counted(number(counts.yards), "yard", "yards"),
        ", ",
        &counted(number(counts.hives), "hive", "hives"),
        ", ",
        &counted(number(counts.days), "day", "days"),
    ]
    .concat()
}

/// Yards in it.
pub fn yards(names: &str) -> String {
    ["Yards: ", names].concat()
}

/// "12 new, 229 already here, 1 different".
pub fn union(new: usize, same: usize, clashes: usize) -> String {
    let mut said = [&new.to_string(), " new, ", &same.to_string(), " already here"].concat();
    if clashes > 0 {
        said.push_str(&[", ", &clashes.to_string(), " different"].concat());
    }
    said
}

/// After it.
pub fn done(union: &str) -> String {
    ["Restored: ", union, "."].concat()
}

/// Why a file cannot be taken in.
pub fn error(error: &BackupError) -> String {
    let said = match error {
        BackupError::TooLarge => "This file is far larger than any file of this page.",
        BackupError::Newer { .. } => {
            "This file was made by a newer version of this page. Open this page where there is a signal to update it, then try again."
        }
        BackupError::Damaged => {
            "This is a file of this page, but it was cut off or changed since it was made. Try another copy of it, such as the one in the mail."
        }
        BackupError::NotABackup(looks) => match looks {
            Looks::Empty => "This file is empty.",
            Looks::Picture => "This is a picture, not a backup.",
            Looks::Document => "This is a PDF document, not a backup.",
            Looks::Table => "This is a table, not a backup. A backup ends in .json.",
            Looks::OtherJson => "This file belongs to another program.",
            Looks::Unknown => "This is not a backup of this page. A backup ends in .json.",
        },
    };
    [said, " Nothing was changed."].concat()
}
