//! A table that comes in: comma-separated values (RFC 4180), the same with semicolons or tabs, or pasted cells.
//!
//! Read as spreadsheets write: a cell that begins with `"` goes to the next single `"`, line breaks, delimiters and
//! doubled quotes included; a quote anywhere else is a letter like any other. CR, LF and CRLF end a row.

pub mod cells;
pub mod columns;
pub mod lines;

/// Largest table that is opened, in bytes: a thirtieth of what a backup may hold, and four times what
/// [`MOST_ROWS`] rows of trap work take.
pub const MOST_BYTES: usize = 2 * 1024 * 1024;
/// Most rows of a table, its header included: a season of every hive that a yard can hold.
pub const MOST_ROWS: usize = 5000;
/// Most columns: what lies beyond can be matched to nothing, and a row that says something there is too long. Each one is
/// asked about, and each row is looked through for every thing a row can say.
pub const MOST_CELLS: usize = 60;

/// The delimiters that are told apart, the standard's first.
const DELIMITERS: [char; 3] = [',', ';', '\t'];
/// Rows that are looked at to find the delimiter.
const LOOKED_AT: usize = 20;

/// A row as it stands in the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its number in a spreadsheet, from 1; empty rows are counted.
    pub number: usize,
    /// Its cells, as they stand there.
    pub cells: Vec<String>,
}

/// A table in rows. Empty ones are left out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// What stands between its cells.
    pub delimiter: char,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// Why a text is not read as a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetError {
    /// No cell with anything in it.
    Empty,
    /// Larger than [`MOST_BYTES`].
    TooLarge,
    /// More rows than [`MOST_ROWS`].
    TooManyRows,
    /// Not text: a spreadsheet's own file, a picture.
    NotText,
    /// A quote that opens in this row is never closed.
    OpenQuote {
        /// The row.
        row: usize,
    },
}

impl Sheet {
    /// Reads a table, whatever of the three delimiters it has.
    ///
    /// # Errors
    /// [`SheetError`]; whatever the text is, this returns.
    pub fn read(text: &str) -> Result<Sheet, SheetError> {
        if text.len() > MOST_BYTES {
            return Err(SheetError::TooLarge);
        }
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        if text.contains(['\0', '\u{fffd}']) {
            return Err(SheetError::NotText);
        }
        let mut best = (0, DELIMITERS[0]);
        for delimiter in DELIMITERS {
            let fits = fitting(text, delimiter);
            if fits > best.0 {
                best = (fits, delimiter);
            }
        }
        let mut rows = Vec::new();
        let mut records = Records::new(text, best.1);
        while let Some(row) = records.next()? {
            if row.cells.iter().all(|cell| cell.trim().is_empty()) {
                continue;
            }
            if rows.len() >= MOST_ROWS {
                return Err(SheetError::TooManyRows);
            }
            rows.push(row);
        }
        if rows.is_empty() { Err(SheetError::Empty) } else { Ok(Sheet { delimiter: best.1, rows }) }
    }
}

/// How many of the first rows have as many cells as the very first, and how many cells those are; 0 where the first has
/// but one. Rows count more than cells: a comma in a note divides some rows and not others. What stands right behind a
/// quoted cell is the delimiter; another one is the last choice.
fn fitting(text: &str, delimiter: char) -> usize {
    let mut records = Records::new(text, delimiter);
    let (mut first, mut alike, mut seen) = (0, 0, 0);
    while seen < LOOKED_AT
        && let Ok(Some(row)) = records.next()
    {
        if row.cells.iter().all(|cell| cell.trim().is_empty()) {
            continue;
        }
        seen += 1;
        first = if seen == 1 { row.cells.len() } else { first };
        alike += usize::from(row.cells.len() == first);
    }
    match first {
        // Nothing in any cell: what divides them all the same is the delimiter.
        0 if !records.loose => 1,
        0 | 1 => 0,
        _ if records.loose => 1,
        _ => alike * 1000 + first.min(999),
    }
}

/// The rows of a text, one after the other.
struct Records<'a> {
    rest: &'a str,
    delimiter: char,
    number: usize,
    /// Letters stood behind a quoted cell.
    loose: bool,
}

impl<'a> Records<'a> {
    fn new(text: &'a str, delimiter: char) -> Records<'a> {
        Records { rest: text, delimiter, number: 0, loose: false }
    }

    /// The next row; none at the end.
    fn next(&mut self) -> Result<Option<Row>, SheetError> {
        if self.rest.is_empty() {
            return Ok(None);
        }
        self.number += 1;
        let mut cells: Vec<String> = Vec::new();
        let mut cell = String::new();
        let mut quoted = false;
        let mut begun = false;
        let mut shut = false;
        let mut letters = self.rest.chars().peekable();
        let mut used = 0;
        while let Some(c) = letters.next() {
            used += c.len_utf8();
            if quoted {
                if c != '"' {
                    cell.push(c);
                } else if letters.next_if_eq(&'"').is_some() {
                    used += 1;
                    cell.push('"');
                } else {
                    quoted = false;
                    shut = true;
                }
            } else if c == self.delimiter {
                cells.push(std::mem::take(&mut cell));
                begun = false;
                shut = false;
            } else if c == '\r' || c == '\n' {
                if c == '\r' && letters.next_if_eq(&'\n').is_some() {
                    used += 1;
                }
                break;
            } else if c == '"' && !begun {
                quoted = true;
                begun = true;
            } else {
                cell.push(c);
                begun = true;
                self.loose |= shut;
            }
        }
        if quoted {
            return Err(SheetError::OpenQuote { row: self.number });
        }
        cells.push(cell);
        // Empty cells at the end are the paper's edge, not part of what was written.
        while cells.len() > MOST_CELLS && cells.last().is_some_and(String::is_empty) {
            cells.pop();
        }
        self.rest = self.rest.get(used..).unwrap_or_default();
        Ok(Some(Row { number: self.number, cells }))
    }
}

#[cfg(test)]
mod tests {
    use super::{MOST_ROWS, Sheet, SheetError};

    fn cells(text: &str) -> Vec<Vec<String>> {
        Sheet::read(text).unwrap().rows.into_iter().map(|row| row.cells).collect()
    }

    #[test]
    fn the_delimiter_is_the_one_that_divides_all_rows_alike() {
        for (text, delimiter) in [
            ("a,b\n1,2\n", ','),
            ("a;b\r1;2,5\r", ';'),
            ("a\tb\r\n1\t2;3,4\r\n", '\t'),
            ("hive;note\n1;\"one, two\"\n2;three, four, five\n", ';'),
            ("alone\n1\n", ','),
        ] {
            assert_eq!(Sheet::read(text).unwrap().delimiter, delimiter, "{text:?}");
        }
    }

    #[test]
    fn quotes_hold_line_ends_delimiters_and_doubled_quotes() {
        assert_eq!(
            cells("\u{feff}a,b\r\n\"x\r\ny\",\"say \"\"no\"\", please\"\r\n"),
            [["a", "b"], ["x\r\ny", "say \"no\", please"]]
        );
        assert_eq!(cells("5\" deep,b\n\"a\"b,c"), [["5\" deep", "b"], ["ab", "c"]]);
    }

    #[test]
    fn rows_keep_the_numbers_a_spreadsheet_shows() {
        let sheet = Sheet::read("a,b\n\n,\n1,2\n3\n").unwrap();
        let rows: Vec<_> = sheet.rows.iter().map(|row| (row.number, row.cells.len())).collect();
        assert_eq!(rows, [(1, 2), (4, 2), (5, 1)]);
    }

    #[test]
    fn what_is_no_table_is_named() {
        assert_eq!(Sheet::read(" \n\n"), Err(SheetError::Empty));
        assert_eq!(Sheet::read("a,b\n1,\"2\n3,4\n"), Err(SheetError::OpenQuote { row: 2 }));
        assert_eq!(Sheet::read("PK\u{3}\u{4}\0\0"), Err(SheetError::NotText));
        assert_eq!(Sheet::read(&"1,2\n".repeat(MOST_ROWS + 1)), Err(SheetError::TooManyRows));
        assert_eq!(Sheet::read(&"1".repeat(super::MOST_BYTES + 1)), Err(SheetError::TooLarge));
    }
}
