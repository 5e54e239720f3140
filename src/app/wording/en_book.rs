//! English: history, backup, restore, this phone, the demonstration.

use super::en::{counted, date, relative, short_date, weekday};
use super::en_ledger::{lines, quoted};
use super::en_round;
use crate::almanac::day::{Day, Stamp};
use crate::app::ledger::safety::Unsafe;
use crate::papers::backup::{BackupError, Counts, Looks};

/// Key to the history, with the keeper's own lines in it.
pub fn history_key(count: usize) -> String {
    ["History: ", &own_entries(count, 0)].concat()
}

/// "83 entries of your own, 3 of them strikes: these stand on what they strike out".
pub fn own_entries(count: usize, strikes: usize) -> String {
    let mut said = [&lines(count), " of your own"].concat();
    if strikes > 0 {
        let strikes = counted(number(strikes), "of them a strike", "of them strikes");
        said.push_str(&[", ", &strikes, ": shown on what is struck out"].concat());
    }
    said
}

/// Key to the kinds of trap.
pub const KINDS_KEY: &str = "Kinds of trap";
/// Name of the keys at the head of the Book.
pub const INDEX: &str = "Pages of the Book";

fn number(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// Every line.
pub mod history {
    use super::{Day, Stamp, counted, en_round, number, short_date, weekday};
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
        let due = |due: Option<&HiveDue>| {
            due.map_or_else(|| NOT_IN_CARE.to_owned(), |due| en_round::due(due, today))
        };
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
            &en_round::near(day),
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
}

/// The file that keeps the book safe.
pub mod backup {
    use super::{Unsafe, date, lines, quoted, relative};

    /// Heading.
    pub const TITLE: &str = "Backup";
    /// Key.
    pub const SAVE: &str = "Save a backup file";
    /// The rule.
    pub const ONLY_HERE: &str = "Records live only on this phone until you save a file.";
    /// Nothing to save.
    pub const EMPTY: &str = "Nothing is written down yet, so there is nothing to save.";
    /// Everything is in the file.
    pub const ALL_SAFE: &str = "Everything is in it.";
    /// Where to put it.
    pub const WHERE: &str = "Send the file to yourself by mail or put it on another device. A file on this phone is lost with the phone.";
    /// Opens the text.
    pub const SHOW_TEXT: &str = "No file came? Show the text";
    /// Label of the text.
    pub const TEXT: &str = "The whole backup as text: copy it into a mail or a note";
    /// High time.
    pub const SOON: &str = "Backup is due.";
    /// Cannot wait.
    pub const NOW: &str = "Backup is overdue.";

    /// The last file and what is not in it.
    pub fn state(state: &Unsafe) -> String {
        let file = match state.file {
            Some(day) => ["Last file: ", &date(day), ", ", &relative(-state.days), ". "].concat(),
            None => "Never saved to a file. ".to_owned(),
        };
        let rest = match (state.lines, state.file) {
            (0, _) => ALL_SAFE.to_owned(),
            (count, Some(_)) => [&lines(count), " written since."].concat(),
            (count, None) => [&lines(count), ", the first ", &relative(-state.days), "."].concat(),
        };
        [file, rest].concat()
    }

    /// After the file was handed over.
    pub fn saved(name: &str) -> String {
        [quoted(name).as_str(), " was saved as a file: see your downloads."].concat()
    }

    /// Name of the file.
    pub fn name(day: &str) -> String {
        ["yard-backup-", day, ".json"].concat()
    }
}

/// A file that comes back.
pub mod restore {
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
        let out = if struck > 0 {
            [", ", &struck.to_string(), " of them struck out"].concat()
        } else {
            String::new()
        };
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
}

/// What could not be read.
pub mod asides {
    use super::{counted, number};

    /// Heading.
    pub const TITLE: &str = "Could not be read";
    /// What is done with it.
    pub const LEFT: &str = "It is left as it is, never overwritten. The rest of the book is whole. If an earlier backup file holds these days, Restore brings their entries back: keep your earlier files. A new backup file does not hold what could not be read, so save that as a file too.";
    /// Heading of what the book has in other words.
    pub const TWICE: &str = "Twice, with different words";
    /// How both are kept.
    pub const TWICE_HOW: &str = "Nothing is overwritten. To keep both, save the page as a file before you close this tab, and write down anew what only the page says. Restore leaves it out: the book has an entry of that name already.";
    /// Has other words for lines of the book.
    pub const CLASH: &str = "It can be read. Lines of it are in the book too, with other words:";
    /// Before the words of the book.
    pub const IN_BOOK: &str = "In the book: ";
    /// Before those of the page.
    pub const ON_PAGE: &str = "On this page: ";
    /// Written by a newer version.
    pub const NEWER: &str = "Written by a newer version of this page. Update the page where there is a signal; until then it only reads.";
    /// Damaged.
    pub const DAMAGED: &str = "Damaged on this phone.";
    /// Key.
    pub const SAVE: &str = "Save it as a file";

    /// How many pages.
    pub fn count(count: usize) -> String {
        [&counted(number(count), "page", "pages"), " of the book could not be read."].concat()
    }

    /// How many pages say something else.
    pub fn twice(count: usize) -> String {
        let pages = counted(number(count), "page says", "pages say");
        [&pages, " something else of an entry than the book shows."].concat()
    }

    /// A page by its number in the list and its size.
    pub fn page(nth: usize, letters: usize) -> String {
        ["Page ", &nth.to_string(), ", ", &counted(number(letters), "letter", "letters")].concat()
    }
}

/// This phone: its label, its room.
pub mod phone {
    /// Heading.
    pub const TITLE: &str = "This phone";
    /// Field.
    pub const LABEL: &str = "Label of this phone";
    /// Under the field.
    pub const LABEL_HINT: &str = "Stands beside the entries written here, such as “Ann”. At most 20 letters.";
    /// Key.
    pub const LABEL_KEY: &str = "Keep the label";
    /// Said once.
    pub const LABEL_KEPT: &str = "Label kept";
    /// Heading over the switch.
    pub const HANDS: &str = "In other hands";
    /// What the switch does, and what it does not.
    pub const HANDS_WHAT: &str = "Before you hand the phone to somebody: until you turn it back, nothing can be written, struck out or taken in. It is no lock: whoever holds the phone can read the book, and can turn this back.";
    /// Key.
    pub const ONLY_SHOW: &str = "Only show the book";
    /// The phone did not take it.
    pub const NOT_TAKEN: &str = "The phone did not keep this";
    /// Room.
    pub const ROOM: &str = "Room taken";
    /// Both copies hold everything.
    pub const TWICE: &str = "Every entry lies in two places in this browser.";
    /// The second copy could not be written.
    pub const ONCE: &str = "This browser does not take the second copy, so every entry lies in one place only. A phone that dies within a minute of a save may lose it: save a file after each day’s work.";
    /// The browser keeps the records.
    pub const KEPT: &str = "The browser has promised to keep what is written here.";
    /// The browser may not.
    pub const MAY_CLEAR: &str = "The browser keeps what is written here, but may clear it when room is short or the page is not opened for a week.";
    /// Key.
    pub const ASK: &str = "Ask it to keep it";
    /// The browser did not promise.
    pub const NOT_PROMISED: &str = "The browser did not promise. Put the page on the home screen (key “Look and units” above) and ask again; save a file in any case.";
    /// Nothing is kept.
    pub const FORGOTTEN: &str = "This window keeps nothing: records vanish when it closes.";
    /// Newer.
    pub const READ_ONLY: &str = "A newer version of this page has written here, so this one only reads.";
    /// Nearly full.
    pub const NEARLY_FULL: &str = "Room is getting short. Save a backup file now.";
    /// How the room is reckoned.
    pub const ROOM_WHY: &str = "Counted against the least that every browser allows a page, so there may be more. Months are worked out from how fast the book has grown so far.";

    /// "about 38 months left at this rate".
    pub fn months(months: u64) -> String {
        match months {
            0 => "less than a month left at this rate".to_owned(),
            1 => "about 1 month left at this rate".to_owned(),
            2..=120 => ["about ", &months.to_string(), " months left at this rate"].concat(),
            _ => "more than 10 years left at this rate".to_owned(),
        }
    }
}

/// The demonstration.
pub mod demo {
    /// Heading.
    pub const TITLE: &str = "Demonstration";
    /// What it is.
    pub const WHAT: &str = "Two invented yards with 24 and 9 hives in mid-season. They lie on pages of their own: filling them in or taking them out touches nothing of yours, and no backup file holds them.";
    /// Key.
    pub const FILL: &str = "Fill in the demonstration";
    /// Key.
    pub const REMOVE: &str = "Take the demonstration out";
    /// Said once.
    pub const FILLED: &str = "Demonstration filled in: see Round";
    /// Said once.
    pub const REMOVED: &str = "Demonstration taken out";
    /// It is in.
    pub const IS_IN: &str = "It is filled in.";
    /// It could not be done.
    pub const FAILED: &str = "The phone did not do it. Try again.";
}

#[cfg(test)]
mod tests {
    use super::{history, restore};
    use crate::almanac::day::{Day, Stamp};
    use crate::papers::backup::{BackupError, Counts, Looks};

    #[test]
    fn the_hour_alone_tells_a_line_written_the_same_day() {
        let day = Day::parse("2026-07-14").unwrap();
        let at = Stamp::new(day, 9 * 3600 + 5 * 60, 0).unwrap();
        assert_eq!(history::written(day, at, None), "written 09:05");
        let before = Day::parse("2025-12-31").unwrap();
        assert_eq!(history::written(before, at, Some("Ann")), "written Tue 14 July 2026 09:05 by Ann");
    }

    #[test]
    fn the_history_and_the_key_to_it_name_one_number() {
        assert_eq!(super::history_key(83), "History: 83\u{a0}entries of your own");
        let said = "83\u{a0}entries of your own, 3\u{a0}of them strikes: shown on what is struck out";
        assert_eq!(super::own_entries(83, 3), said);
        assert!(super::own_entries(83, 0).starts_with("83\u{a0}entries of your own"));
    }

    #[test]
    fn a_file_that_was_not_taken_in_says_what_stopped_it() {
        use crate::app::cabinet::NotSaved;
        use crate::app::wording::en_notices::why;
        let full = NotSaved::Shelf { why: crate::store::shelf::ShelfError::Full, text: String::new() };
        let mut said: Vec<String> = [full, NotSaved::ReadOnly, NotSaved::Busy]
            .iter()
            .map(|because| restore::partly(3, 12, why(because)))
            .collect();
        assert!(said.iter().all(|said| said.starts_with("3 of 12\u{a0}entries taken in. ")));
        assert!(said.iter().filter(|said| said.contains("room")).count() == 1, "{said:?}");
        said.dedup();
        assert_eq!(said.len(), 3);
    }

    #[test]
    fn a_file_says_how_much_of_it_is_struck_out() {
        let counts = Counts { entries: 12, yards: 1, hives: 5, days: 4 };
        let whole = "Holds 12\u{a0}entries: 1\u{a0}yard, 5\u{a0}hives, 4\u{a0}days";
        assert_eq!(restore::holds(counts, 0), whole);
        assert_eq!(restore::holds(counts, 3), whole.replace(':', ", 3 of them struck out:"));
    }

    #[test]
    fn every_refused_file_says_what_it_is_and_that_nothing_changed() {
        let looks =
            [Looks::Empty, Looks::Picture, Looks::Document, Looks::Table, Looks::OtherJson, Looks::Unknown];
        let mut said: Vec<String> =
            looks.iter().map(|looks| restore::error(&BackupError::NotABackup(*looks))).collect();
        said.extend(
            [BackupError::TooLarge, BackupError::Newer { found: 2 }, BackupError::Damaged]
                .map(|error| restore::error(&error)),
        );
        assert!(said.iter().all(|said| said.ends_with("Nothing was changed.")));
        said.sort();
        said.dedup();
        assert_eq!(said.len(), 9);
    }
}
