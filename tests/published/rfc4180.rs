//! Tables against RFC 4180, section 2: its seven rules and their examples.

use super::papers::Tale;
use beetle_almanac::papers::records::Records;
use beetle_almanac::papers::table::{Style, Table};

const PLAIN: Style = Style { mark: false, guard: false };

fn table(columns: &[&str], cells: &[&str], style: Style) -> String {
    let mut table = Table::new(columns, style);
    for cell in cells {
        table.put(cell);
    }
    table.text()
}

/// Rules 1 to 4: a line a record, CRLF after each, a header, commas between cells and none after the last.
#[test]
fn records_are_lines_of_as_many_cells_as_the_header() {
    let published = "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n";
    let cells = ["aaa", "bbb", "ccc", "zzz", "yyy", "xxx"];
    assert_eq!(table(&["field_name"; 3], &cells, PLAIN), published);
}

/// Rule 4: spaces are part of a cell.
#[test]
fn spaces_are_kept() {
    assert_eq!(table(&["a", "b"], &[" x ", ""], PLAIN), "a,b\r\n x ,\r\n");
}

/// Rules 5 and 6: a cell with a line break, a quote or a comma stands in quotes.
#[test]
fn line_breaks_and_commas_stand_in_quotes() {
    assert_eq!(
        table(&["a", "b", "c"], &["aaa", "b\r\nbb", "ccc"], PLAIN),
        "a,b,c\r\naaa,\"b\r\nbb\",ccc\r\n"
    );
    for part in ["\r", "\n", ","] {
        assert_eq!(table(&["a"], &[part], PLAIN), format!("a\r\n\"{part}\"\r\n"));
    }
}

/// Rule 7: a quote within is doubled.
#[test]
fn quotes_are_doubled() {
    let published = "\"aaa\",\"b\"\"bb\",\"ccc\"\r\n";
    let unneeded = |text: &str| text.replace("\"aaa\"", "aaa").replace("\"ccc\"", "ccc");
    let made = table(&["a", "b", "c"], &["aaa", "b\"bb", "ccc"], PLAIN);
    assert_eq!(made, format!("a,b,c\r\n{}", unneeded(published)));
}

#[test]
fn a_row_that_was_begun_is_filled() {
    assert_eq!(table(&["a", "b", "c"], &["1"], PLAIN), "a,b,c\r\n1,,\r\n");
}

/// The guard touches what a spreadsheet reckons with and nothing else; the mark comes once, first.
#[test]
fn the_guard_and_the_mark_are_only_there_when_asked_for() {
    let guard = Style { mark: false, guard: true };
    for start in ["=", "+", "-", "@", "\t", "\r"] {
        let cell = format!("{start}2");
        assert!(table(&["a"], &[&cell], guard).contains(&format!("'{cell}")), "{start:?}");
        assert!(!table(&["a"], &[&cell], PLAIN).contains('\''), "{start:?}");
    }
    for cell in ["2026-07-14", "a=b", "", " =1", "'=1", "12.5", "a-1"] {
        assert_eq!(table(&["a"], &[cell], guard), table(&["a"], &[cell], PLAIN));
    }
    let marked = table(&["a"], &["ü"], Style { mark: true, guard: false });
    assert_eq!(marked, "\u{feff}a\r\nü\r\n");
    assert!(!table(&["a"], &["ü"], PLAIN).contains('\u{feff}'));
}

/// Every table of the book, cell for cell: the columns it names, and no row that is short.
#[test]
fn every_table_has_full_rows() {
    let tale = Tale::first();
    for records in Records::all(&tale.book) {
        let text = tale.table(records, PLAIN);
        let (mut quoted, mut cells, mut rows) = (false, 1, 0);
        for c in text.chars() {
            match c {
                '"' => quoted = !quoted,
                ',' if !quoted => cells += 1,
                '\n' if !quoted => {
                    assert_eq!(cells, records.columns().len(), "{} row {rows}", records.name());
                    (cells, rows) = (1, rows + 1);
                }
                _ => {}
            }
        }
        assert!(!quoted && rows >= 2, "{}", records.name());
    }
}
