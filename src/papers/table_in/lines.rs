//! The rows of a table as what they say, each with the reason why where it cannot be read.

use super::cells::{self, Order, Written};
use super::columns::Column;
use super::{Row, Sheet};
use crate::almanac::day::Day;
use crate::almanac::tally::CountRange;
use crate::almanac::text::{self, LABEL_MOST, Letters};
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
    /// The order of days that may be read two ways.
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

/// The cells that hold days, for asking in which order they are written.
pub fn days<'a>(sheet: &'a Sheet, matching: &'a Matching) -> impl Iterator<Item = &'a str> {
    let of_day = |column: &Column| matches!(column, Column::Day | Column::Since);
    records(sheet, matching.header).iter().flat_map(move |row| {
        let cells = row.cells.iter().zip(&matching.columns);
        cells.filter(move |(_, column)| of_day(column)).map(|(cell, _)| cell.as_str())
    })
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

/// Each record, or why it cannot be read.
pub fn lines(
    sheet: &Sheet,
    matching: &Matching,
    letters: &impl Letters,
) -> Vec<(usize, Result<TableLine, RowError>)> {
    let label = |cell: &str| text::label(cell, LABEL_MOST, letters);
    let mut lines = Vec::new();
    for row in records(sheet, matching.header) {
        let name = |column, otherwise: &str, none: RowError| {
            let cell = matching.cell(row, column).filter(|cell| !cell.is_empty()).unwrap_or(otherwise);
            match label(cell) {
                Ok(label) => Ok(label),
                Err(text::LabelError::Empty) => Err(none),
                Err(_) => Err(RowError::Name(cell.to_owned())),
            }
        };
        let both = name(Column::Tag, "", RowError::NoHive)
            .and_then(|tag| Ok((name(Column::Yard, &matching.yard, RowError::NoYard)?, tag)));
        lines.push((row.number, both.and_then(|(yard, tag)| matching.line(row, yard, tag))));
    }
    lines
}

impl Matching {
    /// What a row says in that column, trimmed; none where no column is matched or the row ends before it.
    fn cell<'a>(&self, row: &'a Row, column: Column) -> Option<&'a str> {
        let at = self.columns.iter().position(|known| *known == column)?;
        row.cells.get(at).map(|cell| cells::unguarded(cell.trim()))
    }

    fn line(&self, row: &Row, yard: String, tag: String) -> Result<TableLine, RowError> {
        let beyond = row.cells.get(self.columns.len()..).unwrap_or_default();
        if beyond.iter().any(|cell| !cell.trim().is_empty()) {
            return Err(RowError::TooLong);
        }
        let told = |column| self.cell(row, column).filter(|cell| !cell.is_empty());
        let size = match told(Column::Size) {
            Some(cell) => Some(cells::size(cell).ok_or_else(|| RowError::Size(cell.to_owned()))?),
            None => None,
        };
        let number = |column, least, most| match told(column) {
            Some(cell) => match typed::count(cell, least, most) {
                Ok(number) => Ok(u8::try_from(number).ok()),
                Err(_) => Err(RowError::Parts(cell.to_owned())),
            },
            None => Ok(None),
        };
        let boxes = number(Column::Boxes, 0, MOST_BOXES)?;
        let a_box = number(Column::TrapsABox, 0, MOST_TRAPS)?;
        let traps = number(Column::Traps, 0, MOST_BOXES * MOST_TRAPS)?;
        let since = told(Column::Since).map(|cell| self.day(cell)).transpose()?;
        let boxes = wanted(boxes, a_box, traps, size.unwrap_or_default().usual_traps());
        Ok(TableLine { row: row.number, yard, tag, size, boxes, since, work: self.work(row)? })
    }

    fn day(&self, cell: &str) -> Result<Day, RowError> {
        let written = cells::written(cell);
        match (written, written.day(self.order)) {
            (_, Some(day)) | (Written::Day(day), None) => Ok(day),
            (Written::Numbers(..), None) if self.order.is_none() => Err(RowError::WhichDay(cell.to_owned())),
            _ => Err(RowError::Day(cell.to_owned())),
        }
    }

    fn work(&self, row: &Row) -> Result<Option<TableWork>, RowError> {
        let told = |column| self.cell(row, column).filter(|cell| !cell.is_empty());
        let level = |column| {
            let cell = told(column).unwrap_or_default();
            cells::level(cell, self.per_cent).map_err(|_| RowError::Level(cell.to_owned()))
        };
        let Some(day) = told(Column::Day) else {
            let work = [Column::Did, Column::Found, Column::Left, Column::Beetles];
            return if work.into_iter().any(|column| told(column).is_some()) {
                Err(RowError::NoDay)
            } else {
                Ok(None)
            };
        };
        let day = self.day(day)?;
        let word = told(Column::Did).unwrap_or_default();
        let did = if let Some(did) = cells::did(word) {
            did
        } else {
            let answer = self.words.iter().find(|(known, _)| known == word);
            answer.and_then(|(_, did)| *did).ok_or_else(|| RowError::Did(word.to_owned()))?
        };
        if let Some(which) = told(Column::Which)
            && !which.eq_ignore_ascii_case("all")
        {
            return Err(RowError::SomeTraps(which.to_owned()));
        }
        let note = told(Column::Note);
        if note.is_some_and(|note| note.chars().count() > Entry::NOTE_MOST) {
            return Err(RowError::Note);
        }
        Ok(Some(TableWork {
            day,
            did,
            before: level(Column::Found)?,
            after: level(Column::Left)?,
            count: self.count(row)?,
            note: note.map(str::to_owned),
        }))
    }

    fn count(&self, row: &Row) -> Result<Option<CountRange>, RowError> {
        let cell = self.cell(row, Column::Beetles).unwrap_or_default();
        let no = || RowError::Count(cell.to_owned());
        let low = match typed::count_or_range(cell, Entry::COUNT_MOST) {
            Ok(count) => count,
            Err(TypedError::Empty) => return Ok(None),
            Err(_) => return Err(no()),
        };
        // An open end stands there as an empty cell.
        match self.cell(row, Column::BeetlesMost) {
            None => Ok(Some(low)),
            Some("") => CountRange::new(low.low(), None).map(Some).map_err(|_| no()),
            Some(most) => {
                let most = typed::count(most, 0, Entry::COUNT_MOST).map_err(|_| no())?;
                CountRange::new(low.low(), Some(most)).map(Some).map_err(|_| no())
            }
        }
    }
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
