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

pub mod history;

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
    pub const ALL_SAFE: &str = "Every record is in it; what only stands in fields is not.";
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

pub mod restore;

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
