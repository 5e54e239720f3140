//! A table comes back as it was written, and no text stops the reader.

use super::support::Unicode;
use beetle_almanac::papers::table::{Style, Table};
use beetle_almanac::papers::table_in::cells;
use beetle_almanac::papers::table_in::columns;
use beetle_almanac::papers::table_in::lines::{self, Matching};
use beetle_almanac::papers::table_in::{MOST_CELLS, Sheet};
use proptest::collection::vec;
use proptest::prelude::*;

/// Cells full of what divides cells, rows and texts.
fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z0-9 ]{0,8}",
        "[\",;\t\r\n'=x ]{0,6}",
        "\\PC{0,6}".prop_filter("no text is lost in a browser", |cell| !cell
            .contains(['\u{fffd}', '\u{feff}', '\0'])),
    ]
}

fn table() -> impl Strategy<Value = Vec<Vec<String>>> {
    (2..6_usize).prop_flat_map(|width| vec(vec(cell(), width), 1..8))
}

/// The text with `delimiter`, every cell that needs it in quotes.
fn written(rows: &[Vec<String>], delimiter: char, end: &str) -> String {
    let mut text = String::new();
    for row in rows {
        for (at, cell) in row.iter().enumerate() {
            if at > 0 {
                text.push(delimiter);
            }
            text.push('"');
            text.push_str(&cell.replace('"', "\"\""));
            text.push('"');
        }
        text.push_str(end);
    }
    text
}

fn read(text: &str) -> Vec<Vec<String>> {
    Sheet::read(text)
        .map_or_else(|_| Vec::new(), |sheet| sheet.rows.into_iter().map(|row| row.cells).collect())
}

fn full(rows: &[Vec<String>]) -> Vec<Vec<String>> {
    rows.iter().filter(|row| row.iter().any(|cell| !cell.trim().is_empty())).cloned().collect()
}

proptest! {
    #[test]
    fn cells_with_quotes_delimiters_and_line_ends_come_back(rows in table(), which in 0..3_usize, end in 0..3_usize) {
        let delimiter = [',', ';', '\t'][which];
        let text = written(&rows, delimiter, ["\r\n", "\n", "\r"][end]);
        prop_assert_eq!(read(&text), full(&rows));
    }

    #[test]
    fn what_our_own_tables_write_comes_back(rows in table(), mark: bool) {
        let names: Vec<String> = (0..rows[0].len()).map(|at| format!("name {at}")).collect();
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        let mut table = Table::new(&names, Style { mark, guard: false });
        rows.iter().flatten().for_each(|cell| table.put(cell));
        let read = read(&table.text());
        prop_assert_eq!(&read[0], &names);
        prop_assert_eq!(&read[1..], &full(&rows)[..]);
    }

    #[test]
    fn no_text_stops_the_reader_and_every_row_is_a_line_or_a_reason(
        text in prop_oneof!["\\PC{0,200}", "[a-c0-9,;\t\"\r\n/-]{0,200}"], header: bool,
    ) {
        let Ok(sheet) = Sheet::read(&text) else { return Ok(()) };
        let matching = Matching {
            header,
            columns: columns::Column::ALL.iter().map(|(column, _)| *column).cycle().skip(1).take(MOST_CELLS).collect(),
            order: Some(cells::Order::DayFirst),
            per_cent: header,
            yard: "Mill".to_owned(),
            words: Vec::new(),
        };
        let (lines, wrong) = lines::lines(&sheet, &matching, &Unicode);
        let mut numbers: Vec<usize> = lines.iter().map(|line| line.row).collect();
        prop_assert!(numbers.is_sorted() && wrong.is_sorted_by_key(|(row, _)| *row));
        numbers.extend(wrong.iter().map(|(row, _)| *row));
        numbers.sort_unstable();
        let rows = lines::records(&sheet, header);
        prop_assert_eq!(numbers, rows.iter().map(|row| row.number).collect::<Vec<_>>());
    }
}
