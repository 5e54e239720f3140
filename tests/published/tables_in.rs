//! Tables that Python's csv module and pandas wrote, in every dialect: our reader finds in each what Python's csv module
//! finds in it (`tests/figures/tables_in.py`).

use super::rows;
use beetle_almanac::papers::table_in::Sheet;

const TABLES: &str = include_str!("../figures/tables_in.json");

#[derive(serde::Deserialize)]
struct Table {
    writer: String,
    delimiter: char,
    text: String,
    rows: Vec<Vec<String>>,
}

#[test]
fn every_dialect_is_read_as_python_reads_it() {
    let tables = rows::<Table>(TABLES);
    assert!(tables.len() >= 20);
    for table in tables {
        let sheet = Sheet::read(&table.text).unwrap_or_else(|error| panic!("{}: {error:?}", table.writer));
        assert_eq!(sheet.delimiter, table.delimiter, "{}", table.writer);
        let read: Vec<_> = sheet.rows.into_iter().map(|row| row.cells).collect();
        assert_eq!(read, table.rows, "{}", table.writer);
        assert!(read.iter().flatten().any(|cell| cell.contains('\n')) && read.len() == 6);
    }
}
