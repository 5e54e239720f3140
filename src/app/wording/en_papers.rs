//! English: the calendar file, tables, and sheets for printing.

use super::en::put;

/// The folded part of the Book.
pub const TITLE: &str = "Papers to show";
/// Nothing to make them of.
pub const NO_YARD: &str = "No yard is kept yet, so there is nothing to put on paper.";
/// Places are never given out.
pub const NO_PLACES: &str = "No paper here says where a yard is.";
/// Heading over the links.
pub const SHEETS: &str = "To print";
/// Key.
pub const SAVE: &str = "Save as a file";
/// Key.
pub const SHARE: &str = "Share";
/// Key.
pub const PRINT: &str = "Print";
/// Key.
pub const SHOW: &str = "Show the text";
/// Label of the text.
pub const TEXT: &str = "The text: copy it into a mail or a note";
/// After the phone took the file.
pub const SHARED: &str = "Shared.";
/// The keeper shut the phone's own list.
pub const NOT_SHARED: &str = "Not shared.";
/// Made of invented records.
pub const DEMO: &str = "Demonstration: everything here is invented.";
/// Field.
pub const YARD: &str = "Yard";
/// Field.
pub const HIVE: &str = "Hive";
/// No hive chosen.
pub const WHOLE_YARD: &str = "Every hive of the yard";
/// Made on this day.
pub const MADE: &str = "Made on ";
/// A heading with nothing under it.
pub const NONE: &str = "None recorded in this period.";

/// The calendar file.
pub mod calendar {
    use super::put;
    use crate::app::wording::en::counted;

    /// Heading.
    pub const TITLE: &str = "Calendar file";
    /// What it is.
    pub const WHAT: &str = "One all-day event for each yard and day on which traps, bait or a patty are due, a hive wants a second look or the next one of your rhythm, or young beetles may come out of the ground, and one with its hours for each stack of supers to be spun. Open a newer file in the same calendar: it moves and takes back what has changed.";
    /// Where it goes.
    pub const HOW: &str = "This page sends no notices: the calendar reminds you. Put it into a calendar of its own, so that all of it can be deleted at once. Some calendars drop the alarm. For supers it is set 6 hours before they are to be spun, or a few minutes after the file is made where that is past.";
    /// Nothing due.
    pub const NOTHING: &str = "Nothing is due, so there is nothing to put into a calendar.";
    /// Title of an event that was taken back.
    pub const WITHDRAWN: &str = "No longer due";
    /// Name of the file.
    pub const FILE: &str = "yard-calendar-";
    /// Before the hives whose traps are due on that day.
    pub const DUE: &str = "Traps due: ";
    /// Before the hives whose traps were due earlier.
    pub const OVERDUE: &str = "Overdue: ";
    /// Before the hives to look at again.
    pub const LOOK: &str = "Look again after a spill: ";
    /// Before the hives whose bait is to be out.
    pub const BAIT: &str = "Take bait out: ";
    /// Before the hives whose patty is to be out.
    pub const PATTY: &str = "Take the patty out: ";

    /// Before the hives to look into by the keeper's own rhythm.
    pub const NEXT_LOOK: &str = "Next look for larvae by your own rhythm: ";

    /// Before the hives in which adult beetles were seen.
    pub const LARVAE: &str =
        "Adult beetles were seen, larvae could leave from tomorrow if eggs were laid (estimate): ";
    /// Before the hives where young beetles may come out.
    pub const YOUNG: &str = "Young beetles may come out of the ground (estimate): ";

    /// "Ferry Field: 5 hives due, look again at 1 hive". Of the rest: bait, patty, larvae that could leave, young beetles,
    /// the next look.
    pub fn summary(
        yard: &str,
        due: usize,
        look: usize,
        [bait, patty, larvae, young, next]: [usize; 5],
    ) -> String {
        let mut said = [yard, ": "].concat();
        let mut between = "";
        for (count, before, one, many) in [
            (due, "", "hive due", "hives due"),
            (look, "look again at ", "hive", "hives"),
            (bait, "bait out of ", "hive", "hives"),
            (patty, "patty out of ", "hive", "hives"),
            (larvae, "look for larvae in ", "hive", "hives"),
            (young, "young beetles may come at ", "hive", "hives"),
            (next, "next look into ", "hive", "hives"),
        ] {
            if count > 0 {
                put(&mut said, between);
                put(&mut said, before);
                put(&mut said, &plain(&counted(u32::try_from(count).unwrap_or(u32::MAX), one, many)));
                between = ", ";
            }
        }
        said
    }

    /// "Traps due: hives 1, 2, 3".
    pub fn put_hives(said: &mut String, what: &str, tags: &[&str]) {
        put(said, if said.is_empty() { "" } else { "\n" });
        put(said, what);
        put(said, if tags.len() == 1 { "hive " } else { "hives " });
        put(said, &tags.join(", "));
    }

    /// The dates of young beetles at a hive, on a line of their own.
    pub fn put_dates(said: &mut String, tag: &str, dates: &str) {
        for part in ["\nHive ", tag, ": ", &plain(dates)] {
            put(said, part);
        }
    }

    /// A calendar does not know the space that holds a number and its noun together.
    fn plain(said: &str) -> String {
        said.replace('\u{a0}', " ")
    }
}

/// Tables.
pub mod tables {
    use crate::papers::records::Records;

    /// Heading.
    pub const TITLE: &str = "Tables";
    /// Chooser.
    pub const WHICH: &str = "Table of";
    /// What is in it.
    pub const WHAT: &str = "Comma-separated, a header row, days as 2026-07-14, a point before decimals. Struck entries are left out.";
    /// Box to tick.
    pub const MARK: &str = "For a spreadsheet: mark the letters as UTF-8";
    /// Box to tick.
    pub const GUARD: &str = "Guard against formulas";
    /// What the guard does.
    pub const GUARDED: &str =
        "A text that begins with = + - or @ gets a ' in front, so that no spreadsheet reckons with it.";

    /// A table in the chooser.
    pub fn name(which: Records) -> &'static str {
        match which {
            Records::Yards => "Yards",
            Records::Hives => "Hives",
            Records::Boxes => "Boxes",
            Records::Traps => "Traps",
            Records::Kinds => "Kinds of trap",
            Records::Checks => "Trap work",
            Records::Events => "All else that happened",
            Records::Of(blank) => crate::app::wording::en_records::blank(blank).title,
        }
    }
}

/// The truck sheet.
pub mod truck {
    /// Heading.
    pub const TITLE: &str = "Truck sheet";
    /// Heading of the list to load.
    pub const LOAD: &str = "To load";
    /// Heading of the hives.
    pub const HIVES: &str = "Hives in walking order";
    /// Columns; the last four are for the pen.
    pub const COLUMNS: [&str; 10] =
        ["Mark", "Hive", "Boxes", "Traps", "Last served", "Due", "Done", "Level", "Count", "Larvae"];
    /// What the letters mean.
    pub const MARKS: &str = "Mark: ! named above, overdue, or a trap is missing, spilled or glued shut, S skipped, R look again after a spill. Boxes from the floor up: D deep, M medium, S shallow, O own depth.";
    /// How the pen is used.
    pub const PEN: &str = "Done: T topped up, N replaced, F as found, S skipped. Level found in % of the depth. Count of beetles: 0 when none was seen, empty when nobody looked. Larvae: none, few or many; empty when nobody looked.";
    /// One mark a hive, the most pressing.
    pub const MARK_NOW: &str = "!";
    /// Skipped.
    pub const MARK_SKIPPED: &str = "S";
    /// Look again.
    pub const MARK_LOOK: &str = "R";
    /// Name of the file.
    pub const FILE: &str = "truck-sheet-";
}

/// Hive cards.
pub mod card {
    use crate::almanac::day::Day;
    use crate::app::wording::en::date;

    /// Heading.
    pub const TITLE: &str = "Hive cards";
    /// Heading of the last lines.
    pub const LOOKS: &str = "Last looks";
    /// No lines.
    pub const NO_LOOKS: &str = "None yet.";
    /// Name of the file.
    pub const FILE: &str = "hive-cards-";

    /// Whose hive, and the day that everything on the card is as of.
    pub fn of(yard: &str, today: Day) -> String {
        [yard, ", as of ", &date(today)].concat()
    }

    /// The day alone: how far off it is changes with every day that the card hangs.
    pub fn due(on: Day) -> String {
        ["next service by ", &date(on)].concat()
    }

    /// Oil spilled.
    pub fn look_by(by: Day) -> String {
        ["Oil spilled: look again by ", &date(by)].concat()
    }
}

/// The inspector's pages.
pub mod record {
    /// Heading.
    pub const TITLE: &str = "Inspector packet";
    /// Title on paper.
    pub const COVER: &str = "Record of hives and work";
    /// Field.
    pub const FROM: &str = "From";
    /// Field.
    pub const TO: &str = "To";
    /// Box to tick.
    pub const NOTES: &str = "With my own notes";
    /// Before the keeper's name.
    pub const KEEPER: &str = "Keeper: ";
    /// Before the registration number, which is written by hand.
    pub const REGISTRATION: &str = "Registration number: ";
    /// In the place of what is written by hand.
    pub const BY_HAND: &str = "____________________";
    /// Before the yards.
    pub const YARDS: &str = "Yards: ";
    /// Before the period.
    pub const PERIOD: &str = "Period: ";
    /// Between its days.
    pub const UNTIL: &str = " to ";
    /// What the day of the end cuts off.
    pub const AS_OF: &str = "As the book says for the last day of the period.";
    /// Headings.
    pub const PARTS: [&str; 5] = [
        "1 of 5. Hives",
        "2 of 5. Visits and actions",
        "3 of 5. Moves between yards",
        "4 of 5. Deaths, sales, joins, swarms",
        "5 of 5. Products applied",
    ];
    /// Columns of the hives.
    pub const HIVES: [&str; 6] = ["Yard", "Hives", "Count", "Boxes", "In since", "Out"];
    /// Columns of lines.
    pub const LINES: [&str; 4] = ["Day", "Yard", "What", "Written by"];
    /// Mark of a struck line.
    pub const STRUCK: &str = " (struck out)";
    /// Mark of a corrected line.
    pub const CORRECTED: &str = " (corrected by a later entry)";
    /// Name of the file.
    pub const FILE: &str = "inspector-packet-";
}

#[cfg(test)]
mod tests {
    use super::calendar::{DUE, put_hives, summary};

    #[test]
    fn an_event_says_how_many_hives_and_which() {
        assert_eq!(summary("Mill", 1, 0, [0; 5]), "Mill: 1 hive due");
        assert_eq!(summary("Mill", 12, 1, [0; 5]), "Mill: 12 hives due, look again at 1 hive");
        assert_eq!(summary("Mill", 0, 2, [0; 5]), "Mill: look again at 2 hives");
        assert_eq!(summary("Mill", 0, 0, [1, 3, 0, 0, 0]), "Mill: bait out of 1 hive, patty out of 3 hives");
        let young = "Mill: look for larvae in 1 hive, young beetles may come at 2 hives";
        assert_eq!(summary("Mill", 0, 0, [0, 0, 1, 2, 0]), young);
        assert_eq!(summary("Mill", 0, 0, [0, 0, 0, 0, 1]), "Mill: next look into 1 hive");
        let mut said = "Overdue: hive 9".to_owned();
        put_hives(&mut said, DUE, &["1", "2"]);
        assert_eq!(said, "Overdue: hive 9\nTraps due: hives 1, 2");
    }
}
