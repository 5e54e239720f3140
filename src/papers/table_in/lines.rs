//! The rows of a table as what they say, each with the reason why where it cannot be read.

use super::cells::{self, Order, Written};
use super::columns::Column;
use super::{Row, Sheet};
use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::almanac::tally::CountRange;
use crate::almanac::text::{self, LABEL_MOST, LabelError, Letters};
use crate::almanac::typed::{self, TypedError};
use crate::book::entry::{Did, Entry};
use crate::book::write::{TableLine, TableWork};

/// Most boxes of a hive and most traps of a box that are taken from a cell.
const MOST_BOXES: u32 = 9;
const MOST_TRAPS: u32 = 18;

/// How the keeper reads a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Matching {
    /// The first row is no record.
    pub header: bool,
    /// What each column says.
    pub columns: Vec<Column>,
    /// The order of days that may be read two ways, where their column does not tell it.
    pub order: Option<Order>,
    /// Levels are per cent.
    pub per_cent: bool,
    /// The yard of rows that name none; may be empty.
    pub yard: String,
    /// What words say that are not known, and what to take each for; none leaves its rows out.
    pub words: Vec<(String, Option<Did>)>,
}

/// Why a row cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RowError {
    /// Something stands behind the last column of the first row.
    TooLong,
    /// It names no yard.
    NoYard,
    /// It names no hive.
    NoHive,
    /// A name that is too long.
    Name(String),
    /// No day.
    Day(String),
    /// A day that may be read two ways.
    WhichDay(String),
    /// Work without a day.
    NoDay,
    /// A word for work that is not known.
    Did(String),
    /// The work was done to some of the traps, and nothing says to which.
    SomeTraps(String),
    /// No level.
    Level(String),
    /// No count.
    Count(String),
    /// No size of a hive.
    Size(String),
    /// No number of boxes or traps.
    Parts(String),
    /// A note that is too long.
    Note,
}

/// Rows that are records.
pub fn records(sheet: &Sheet, header: bool) -> &[Row] {
    sheet.rows.get(usize::from(header)..).unwrap_or_default()
}

/// The columns that hold days. Each is written in an order of its own: they may come from two hands.
pub const OF_DAYS: [Column; 2] = [Column::Day, Column::Since];

/// The cells of one of them, for finding in which order they are written.
pub fn days<'a>(sheet: &'a Sheet, matching: &'a Matching, column: Column) -> impl Iterator<Item = &'a str> {
    records(sheet, matching.header).iter().filter_map(move |row| matching.cell(row, column))
}

/// Words for work that are not known, each once, at most `most`.
pub fn unknown_words(sheet: &Sheet, matching: &Matching, most: usize) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for row in records(sheet, matching.header) {
        let cell = matching.cell(row, Column::Did).unwrap_or_default();
        if words.len() < most && cells::did(cell).is_none() && !words.iter().any(|word| word == cell) {
            words.push(cell.to_owned());
        }
    }
    words
}

/// The records, and the rows that cannot be read, each with the reason.
pub fn lines(
    sheet: &Sheet,
    matching: &Matching,
    letters: &impl Letters,
) -> (Vec<TableLine>, Vec<(usize, RowError)>) {
    let label = |cell: &str| text::label(cell, LABEL_MOST, letters);
    let orders = OF_DAYS.map(|column| cells::order(days(sheet, matching, column)).0.or(matching.order));
    let (mut lines, mut wrong) = (Vec::new(), Vec::new());
    for row in records(sheet, matching.header) {
        match matching.line(row, &label, orders) {
            Ok(line) => lines.push(line),
            Err((why, cell)) => wrong.push((row.number, why(cell.to_owned()))),
        }
    }
    (lines, wrong)
}

/// What is wrong, and the cell it stands in. The error is made of both in one place.
type Wrong<'a> = (fn(String) -> RowError, &'a str);

impl Matching {
    /// What a row says in that column, trimmed; none where no column is matched. Spreadsheets leave empty cells at the end
    /// of a row out: one that is not there is an empty one.
    fn cell<'a>(&self, row: &'a Row, column: Column) -> Option<&'a str> {
        let at = self.columns.iter().position(|known| *known == column)?;
        Some(row.cells.get(at).map_or("", |cell| cells::unguarded(cell.trim())))
    }

    /// The same, where something stands there.
    fn told<'a>(&self, row: &'a Row, column: Column) -> Option<&'a str> {
        self.cell(row, column).filter(|cell| !cell.is_empty())
    }

    fn line<'a>(
        &'a self,
        row: &'a Row,
        label: &dyn Fn(&str) -> Result<String, LabelError>,
        [visited, begun]: [Option<Order>; 2],
    ) -> Result<TableLine, Wrong<'a>> {
        let name = |column, otherwise: &'a str, none: fn(String) -> RowError| {
            let cell = self.told(row, column).unwrap_or(otherwise);
            label(cell)
                .map_err(|error| (if error == LabelError::Empty { none } else { RowError::Name }, cell))
        };
        let tag = name(Column::Tag, "", |_| RowError::NoHive)?;
        let yard = name(Column::Yard, &self.yard, |_| RowError::NoYard)?;
        let beyond = row.cells.get(self.columns.len()..).unwrap_or_default();
        if beyond.iter().any(|cell| !cell.trim().is_empty()) {
            return Err((|_| RowError::TooLong, ""));
        }
        let size = match self.told(row, Column::Size) {
            Some(cell) => Some(cells::size(cell).ok_or((RowError::Size as _, cell))?),
            None => None,
        };
        let boxes = self.number(row, Column::Boxes, MOST_BOXES)?;
        let a_box = self.number(row, Column::TrapsABox, MOST_TRAPS)?;
        let traps = self.number(row, Column::Traps, MOST_BOXES * MOST_TRAPS)?;
        let since = match self.told(row, Column::Since) {
            Some(cell) => Some(day(cell, begun)?),
            None => None,
        };
        let boxes = wanted(boxes, a_box, traps, size.unwrap_or_default().usual_traps());
        Ok(TableLine { row: row.number, yard, tag, size, boxes, since, work: self.work(row, visited)? })
    }

    fn number<'a>(&self, row: &'a Row, column: Column, most: u32) -> Result<Option<u8>, Wrong<'a>> {
        let Some(cell) = self.told(row, column) else { return Ok(None) };
        let number = typed::count(cell, 0, most).map_err(|_| (RowError::Parts as _, cell))?;
        Ok(u8::try_from(number).ok())
    }

    fn level<'a>(&self, row: &'a Row, column: Column) -> Result<Option<Share>, Wrong<'a>> {
        let cell = self.cell(row, column).unwrap_or_default();
        cells::level(cell, self.per_cent).map_err(|_| (RowError::Level as _, cell))
    }

    fn work<'a>(&self, row: &'a Row, order: Option<Order>) -> Result<Option<TableWork>, Wrong<'a>> {
        let Some(day) = self.told(row, Column::Day) else {
            for column in [Column::Did, Column::Found, Column::Left, Column::Beetles] {
                if self.told(row, column).is_some() {
                    return Err((|_| RowError::NoDay, ""));
                }
            }
            return Ok(None);
        };
        let day = self::day(day, order)?;
        let word = self.told(row, Column::Did).unwrap_or_default();
        let did = cells::did(word).or_else(|| self.words.iter().find(|(known, _)| known == word)?.1);
        let did = did.ok_or((RowError::Did as _, word))?;
        if let Some(which) = self.told(row, Column::Which)
            && !which.eq_ignore_ascii_case("all")
        {
            return Err((RowError::SomeTraps, which));
        }
        let note = self.told(row, Column::Note);
        if note.is_some_and(|note| note.chars().count() > Entry::NOTE_MOST) {
            return Err((|_| RowError::Note, ""));
        }
        Ok(Some(TableWork {
            day,
            did,
            before: self.level(row, Column::Found)?,
            after: self.level(row, Column::Left)?,
            count: self.count(row)?,
            note: note.map(str::to_owned),
        }))
    }

    fn count<'a>(&self, row: &'a Row) -> Result<Option<CountRange>, Wrong<'a>> {
        let cell = self.cell(row, Column::Beetles).unwrap_or_default();
        let most = self.cell(row, Column::BeetlesMost);
        let count = match typed::count_or_range(cell, Entry::COUNT_MOST) {
            Err(TypedError::Empty) => return Ok(None),
            Err(_) => None,
            Ok(low) => match most {
                None => Some(low),
                // An open end stands there as an empty cell.
                Some("") => CountRange::new(low.low(), None).ok(),
                Some(most) => typed::count(most, 0, Entry::COUNT_MOST)
                    .ok()
                    .and_then(|most| CountRange::new(low.low(), Some(most)).ok()),
            },
        };
        count.map(Some).ok_or((RowError::Count as _, cell))
    }
}

fn day(cell: &str, order: Option<Order>) -> Result<Day, Wrong<'_>> {
    let written = cells::written(cell);
    let asked = matches!(written, Written::Numbers(..)) && order.is_none();
    let day = if let Written::Day(day) = written { Some(day) } else { written.day(order) };
    day.ok_or((if asked { RowError::WhichDay } else { RowError::Day }, cell))
}

/// Traps of each box from the floor up: as many in each as is told, or those of the hive shared out from the floor.
/// None where nothing is told of either.
fn wanted(boxes: Option<u8>, a_box: Option<u8>, traps: Option<u8>, usual: u8) -> Option<Vec<u8>> {
    if boxes.is_none() && a_box.is_none() && traps.is_none() {
        return None;
    }
    let count = boxes.unwrap_or(1);
    let Some(traps) = traps.filter(|_| a_box.is_none()) else {
        return Some(vec![a_box.unwrap_or(usual); usize::from(count)]);
    };
    // Two in the boxes near the floor rather than one in each: so the traps of a stack with supers stand.
    let even = traps.div_ceil(count.max(1)).max(usual);
    let mut left = traps;
    let mut wanted = Vec::new();
    for _ in 0..count {
        let here = left.min(even);
        left -= here;
        wanted.push(here);
    }
    Some(wanted)
}

#[cfg(test)]
mod tests {
    use super::wanted;

    #[test]
    fn the_traps_of_a_hive_are_shared_out_from_the_floor() {
        assert_eq!(wanted(Some(3), None, Some(4), 2), Some(vec![2, 2, 0]));
        assert_eq!(wanted(Some(2), None, Some(5), 2), Some(vec![3, 2]));
        assert_eq!(wanted(Some(2), Some(1), Some(9), 2), Some(vec![1, 1]));
        assert_eq!(wanted(None, None, Some(2), 2), Some(vec![2]));
        assert_eq!((wanted(Some(2), None, None, 2), wanted(None, None, None, 2)), (Some(vec![2, 2]), None));
        assert_eq!(wanted(Some(0), None, Some(2), 2), Some(vec![]));
    }
}
