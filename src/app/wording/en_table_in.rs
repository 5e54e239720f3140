//! English: a table that was kept elsewhere comes in.

use super::en::{date, put, put_counted, whole};
use super::en_ledger;
use crate::almanac::day::Day;
use crate::almanac::stack::HiveSize;
use crate::app::ledger::words::isolated;
use crate::book::entry::Did;
use crate::book::write::{Refusal, TableLine, TableTaken};
use crate::papers::table_in::cells::Order;
use crate::papers::table_in::columns::Column;
use crate::papers::table_in::lines::RowError;
use crate::papers::table_in::{MOST_ROWS, SheetError};

/// Title, and the way there.
pub const TITLE: &str = "From a table";
/// What it is for.
pub const WHAT: &str = "Hives and past visits that you kept in a spreadsheet. Save it there as CSV, or copy the cells. Nothing is written until you have seen how it is read.";
/// Key.
pub const FILE: &str = "Choose the table";
/// What it takes.
pub const HINT: &str = "Commas, semicolons or tabs between the cells; one row a hive or a visit, with the yard’s and the hive’s name.";
/// Folded.
pub const PASTE: &str = "Or paste the cells";
/// Field.
pub const PASTE_LABEL: &str = "The cells";
/// Key.
pub const PASTE_KEY: &str = "Read these";
/// Heading.
pub const COLUMNS: &str = "What each column says";
/// Box to tick.
pub const HEADER: &str = "The first row names the columns";
/// Field.
pub const YARD: &str = "Yard of rows that name none";
/// Choice.
pub const ORDER: &str = "How are the days written?";
/// Heading.
pub const WORDS: &str = "Words for work that are not known here";
/// A word that is not taken for anything.
pub const LEAVE_WORD: &str = "Leave these rows out";
/// Folded.
pub const REST: &str = "What the table does not say of a new hive";
/// Field.
pub const BOXES: &str = "Boxes";
/// Field.
pub const A_BOX: &str = "Traps in each box";
/// Field.
pub const KIND: &str = "Kind of trap";
/// A kind that is described later.
pub const NEW_KIND: &str = "One I describe later";
/// Its name until then.
pub const KIND_NAME: &str = "Trap";
/// What else is taken for so.
pub const TAKEN_SO: &str = "A new hive begins on its first day in the table. Its lowest box is taken for a deep and those above for mediums, its traps for in place since then. All of it can be changed at the hive.";
/// Box to tick.
pub const EARLIER: &str = "Hives of this book stood there earlier: move their first day";
/// Heading.
pub const AS_READ: &str = "The first rows as they would be read";
/// Heading.
pub const WRONG: &str = "Rows that cannot be taken in";
/// Label of those rows.
pub const COPY: &str = "These rows, to copy out and mend";
/// Box to tick.
pub const LEAVE: &str = "Leave these rows out";
/// Nothing new.
pub const NOTHING: &str = "Nothing new: all of it is already here.";
/// Nothing that could be read.
pub const NO_ROW: &str = "No row can be taken in as the columns are matched now.";
/// Key.
pub const CANCEL: &str = "Leave it";
/// The text could not be read.
pub const UNREADABLE: &str = "The phone could not read that file. Try once more.";

/// A column in the chooser.
pub fn column(column: Column) -> &'static str {
    match column {
        Column::Skip => "Not read",
        Column::Yard => "Yard",
        Column::Tag => "Hive",
        Column::Size => "Full hive or nuc",
        Column::Boxes => "Boxes",
        Column::TrapsABox => "Traps in each box",
        Column::Traps => "Traps in the hive",
        Column::Since => "In the book since",
        Column::Day => "Day of the visit",
        Column::Did => "What was done",
        Column::Which => "To all traps or some",
        Column::Found => "Level found",
        Column::Left => "Level left",
        Column::Beetles => "Beetles, or the fewest",
        Column::BeetlesMost => "Beetles, the most",
        Column::Note => "Note",
    }
}

/// "Column 3".
pub fn nth(number: usize) -> String {
    ["Column ", &number.to_string()].concat()
}

/// "Such as 40 %".
pub fn such_as(cell: &str) -> String {
    ["Such as ", &isolated(cell)].concat()
}

/// What was opened.
pub fn opened(rows: usize, columns: usize) -> String {
    let mut said = String::new();
    put_counted(&mut said, rows, "row", "rows");
    put(&mut said, ", ");
    put_counted(&mut said, columns, "column", "columns");
    put(&mut said, ".");
    said
}

/// Work in the chooser of a word.
pub fn did(did: Did) -> &'static str {
    en_ledger::did(did)
}

/// An order in the choice, with what it makes of a cell.
pub fn order(order: Order, cell: &str, day: Option<Day>) -> String {
    let first = match order {
        Order::DayFirst => "Day first",
        Order::MonthFirst => "Month first",
    };
    let read = day.map_or_else(|| "no day".to_owned(), date);
    [first, ": ", &isolated(cell), " is ", &read].concat()
}

/// Why it is no table.
pub fn sheet_error(error: SheetError) -> String {
    match error {
        SheetError::Empty => "Nothing is in it.".to_owned(),
        SheetError::TooLarge => "That is larger than 2 MB. Bring it in parts.".to_owned(),
        SheetError::TooManyRows => ["More than ", &whole(most()), " rows. Bring it in parts."].concat(),
        SheetError::NotText => {
            "That is no text: a spreadsheet’s own file or a picture. Save it there as CSV first.".to_owned()
        }
        SheetError::OpenQuote { row } => {
            [&self::row(row), "a quotation mark opens and is never closed."].concat()
        }
    }
}

fn most() -> u32 {
    u32::try_from(MOST_ROWS).unwrap_or(u32::MAX)
}

/// "Row 14: ".
pub fn row(number: usize) -> String {
    ["Row ", &number.to_string(), ": "].concat()
}

/// Why a row cannot be read.
pub fn row_error(error: &RowError) -> String {
    let (cell, is) = match error {
        RowError::TooLong => return "more cells than the first row.".to_owned(),
        RowError::NoYard => return "no yard.".to_owned(),
        RowError::NoHive => return "no hive.".to_owned(),
        RowError::NoDay => return "work, but no day.".to_owned(),
        RowError::Note => return "the note is longer than 500 characters.".to_owned(),
        RowError::Name(cell) => (cell, " is too long for a name."),
        RowError::Day(cell) => (cell, " is no day."),
        RowError::WhichDay(cell) => (cell, " may be two days: say above which stands first."),
        RowError::Did(cell) => (cell, " is no work that is known."),
        RowError::SomeTraps(cell) => (cell, " of its traps, and the table does not say which."),
        RowError::Level(cell) => (cell, " is no level."),
        RowError::Count(cell) => (cell, " is no count."),
        RowError::Size(cell) => (cell, " is neither a full hive nor a nuc."),
        RowError::Parts(cell) => (cell, " is no number of boxes or traps."),
    };
    [&en_ledger::quoted(&isolated(cell)), is].concat()
}

/// Why the book does not take a row.
pub fn refused(refusal: &Refusal) -> String {
    match refusal {
        Refusal::Future { .. } => "that day has not come.".to_owned(),
        Refusal::BeforeHive { since } => ["the hive is in the book only since ", &date(*since), "."].concat(),
        Refusal::Ended { how, on } => {
            ["the hive is written down as ", super::en_log::ending(how), " since ", &date(*on), "."].concat()
        }
        Refusal::NoTraps { .. } => "no traps were in the hive.".to_owned(),
        other => super::en_log::refusal(other),
    }
}

/// A row as it would be read.
pub fn line(line: &TableLine) -> String {
    let mut said = row(line.row);
    put(&mut said, &isolated(&line.yard));
    put(&mut said, ", hive ");
    put(&mut said, &isolated(&line.tag));
    if let Some(size) = line.size {
        put(&mut said, ", ");
        put(&mut said, if size == HiveSize::Nuc { "nuc" } else { "full hive" });
    }
    if let Some(boxes) = &line.boxes {
        put(&mut said, ", ");
        put_counted(&mut said, boxes.len(), "box", "boxes");
        let traps: usize = boxes.iter().map(|wants| usize::from(*wants)).sum();
        en_ledger::and_traps(&mut said, traps);
    }
    if let Some(since) = line.since {
        put(&mut said, ", since ");
        put(&mut said, &date(since));
    }
    if let Some(work) = &line.work {
        put(&mut said, "; ");
        put(&mut said, &date(work.day));
        put(&mut said, ": ");
        put(&mut said, en_ledger::did(work.did));
        if let Some(level) = work.before {
            en_ledger::found(&mut said, level);
        }
        if let Some(level) = work.after {
            en_ledger::left(&mut said, level);
        }
        if let Some(count) = work.count {
            en_ledger::beetles(&mut said, count);
        }
        en_ledger::and_note(&mut said, work.note.as_deref());
    }
    said
}

/// What taking it in comes to.
pub fn comes_to(taken: &TableTaken) -> String {
    let mut said = "New: ".to_owned();
    put_brings(&mut said, taken);
    if taken.moved > 0 {
        put(&mut said, ". First day moved: ");
        put_counted(&mut said, taken.moved, "hive", "hives");
    }
    put(&mut said, ". Already here: ");
    put_counted(&mut said, taken.same, "row", "rows");
    put(&mut said, ".");
    said
}

/// "1 yard, 24 hives, 96 visits".
fn put_brings(said: &mut String, taken: &TableTaken) {
    put_counted(said, taken.yards, "yard", "yards");
    put(said, ", ");
    put_counted(said, taken.hives, "hive", "hives");
    put(said, ", ");
    put_counted(said, taken.visits, "visit", "visits");
}

/// Key.
pub fn confirm(taken: &TableTaken) -> String {
    let mut said = "Take in ".to_owned();
    put_counted(&mut said, taken.hives, "hive", "hives");
    put(&mut said, " and ");
    put_counted(&mut said, taken.visits, "visit", "visits");
    said
}

/// Afterwards.
pub fn done(taken: &TableTaken) -> String {
    let mut said = "Taken in from the table: ".to_owned();
    put_brings(&mut said, taken);
    said
}

/// How many rows are not named one by one.
pub fn others(count: usize) -> String {
    let mut said = "and ".to_owned();
    put_counted(&mut said, count, "more row", "more rows");
    said
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wrong_row_is_named_with_what_stands_there() {
        let said = [row(14), row_error(&RowError::Day("31/02/2026".to_owned()))].concat();
        assert_eq!(said, "Row 14: “31/02/2026” is no day.");
    }

    #[test]
    fn an_order_shows_what_it_makes_of_a_cell() {
        let day = Day::parse("2026-04-03").ok();
        assert_eq!(order(Order::DayFirst, "03/04/2026", day), "Day first: 03/04/2026 is Fri 3 April 2026");
    }
}
