//! Which column of a table says what.

use super::{MOST_CELLS, Sheet};

/// What a column can be matched to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// Not read.
    Skip,
    /// The yard's name.
    Yard,
    /// What is written on the hive.
    Tag,
    /// Full hive or nuc.
    Size,
    /// Boxes.
    Boxes,
    /// Traps in each box.
    TrapsABox,
    /// Traps in the whole hive.
    Traps,
    /// First day in the book.
    Since,
    /// The day of a visit.
    Day,
    /// What was done.
    Did,
    /// Which traps it was done to: all, or how many.
    Which,
    /// Oil level found.
    Found,
    /// Oil level left.
    Left,
    /// Beetles counted, or the fewest it can be.
    Beetles,
    /// The most it can be.
    BeetlesMost,
    /// The keeper's words.
    Note,
}

impl Column {
    /// Every one, in the order in which they are offered, with the word it is kept under in the page.
    pub const ALL: [(Column, &'static str); 16] = [
        (Column::Skip, "skip"),
        (Column::Yard, "yard"),
        (Column::Tag, "tag"),
        (Column::Size, "size"),
        (Column::Boxes, "boxes"),
        (Column::TrapsABox, "a_box"),
        (Column::Traps, "traps"),
        (Column::Since, "since"),
        (Column::Day, "day"),
        (Column::Did, "did"),
        (Column::Which, "which"),
        (Column::Found, "found"),
        (Column::Left, "left"),
        (Column::Beetles, "beetles"),
        (Column::BeetlesMost, "most"),
        (Column::Note, "note"),
    ];

    /// The one kept under `code`.
    pub fn of(code: &str) -> Column {
        Column::ALL.into_iter().find(|(_, known)| *known == code).map_or(Column::Skip, |(column, _)| column)
    }

    /// The word it is kept under.
    pub fn code(self) -> &'static str {
        Column::ALL.into_iter().find(|(column, _)| *column == self).map_or("", |(_, code)| code)
    }
}

/// Words of headers, spaces for every mark between them. Those of this page's own tables are among them; "hive" is the tag
/// in a table of trap work, and "traps" is one thing in a table of hives and another in one of trap work.
const WORDS: [(Column, &[&str]); 13] = [
    (Column::Yard, &["yard", "apiary", "yard name", "apiary name", "site", "location"]),
    (
        Column::Tag,
        &["tag", "hive", "hive tag", "hive number", "hive no", "hive name", "hive nr", "colony", "number"],
    ),
    (Column::Size, &["size", "type", "hive type", "hive size", "kind"]),
    (Column::Boxes, &["boxes", "box count", "number of boxes", "supers"]),
    (Column::TrapsABox, &["traps per box", "traps a box", "traps each box"]),
    (Column::Traps, &["traps", "traps in hive", "traps per hive", "trap count"]),
    (Column::Since, &["since", "in since", "in the book since", "start", "started", "installed", "added"]),
    (Column::Day, &["day", "date", "visit", "visit date", "visited", "inspection date", "checked on"]),
    (Column::Did, &["did", "done", "what was done", "action", "work", "what", "task", "service"]),
    (
        Column::Found,
        &["level found", "oil found", "found", "level before", "before", "oil before", "oil level", "level"],
    ),
    (Column::Left, &["level left", "oil left", "left", "level after", "after", "oil after"]),
    (
        Column::Beetles,
        &["beetles", "beetles low", "beetles counted", "beetle count", "count", "counted", "shb"],
    ),
    (Column::BeetlesMost, &["beetles high", "beetles most"]),
];
const NOTE: &[&str] = &["note", "notes", "comment", "comments", "remark", "remarks"];

/// A header as it is compared: small letters, one space for whatever stands between words.
pub fn plain(cell: &str) -> String {
    let mut plain = String::new();
    for c in cell.chars() {
        if c.is_alphanumeric() {
            plain.push(c.to_ascii_lowercase());
        } else if !plain.is_empty() && !plain.ends_with(' ') {
            plain.push(' ');
        }
    }
    plain.trim_end().to_owned()
}

fn guessed(header: &str) -> Column {
    let header = plain(header);
    let known = WORDS.iter().find(|(_, words)| words.contains(&header.as_str()));
    known.map_or(if NOTE.contains(&header.as_str()) { Column::Note } else { Column::Skip }, |(column, _)| {
        *column
    })
}

/// Whether the first row is a header: one of its cells is a word that headers have.
pub fn has_header(sheet: &Sheet) -> bool {
    sheet.rows.first().is_some_and(|row| row.cells.iter().any(|cell| guessed(cell) != Column::Skip))
}

/// What each column most likely says, by the header; each thing at most once, and no more than [`MOST_CELLS`].
pub fn guess(sheet: &Sheet) -> Vec<Column> {
    let head = sheet.rows.first().map(|row| row.cells.as_slice()).unwrap_or_default();
    let mut columns = vec![Column::Skip; head.len().min(MOST_CELLS)];
    let has = |columns: &[Column], column| columns.contains(&column);
    // "tag" before "hive", which in a table of hives may be a name that is kept for something else.
    for (place, header) in columns.iter_mut().zip(head) {
        if plain(header) == "tag" {
            *place = Column::Tag;
        }
    }
    for (at, header) in head.iter().enumerate() {
        let column = guessed(header);
        if column != Column::Skip
            && !has(&columns, column)
            && let Some(place) = columns.get_mut(at)
            && *place == Column::Skip
        {
            *place = column;
        }
    }
    if has(&columns, Column::Did)
        && let Some(place) = columns.iter_mut().find(|column| **column == Column::Traps)
    {
        *place = Column::Which;
    }
    columns
}

/// Whether the levels of the table are per cent of the depth without saying so cell by cell, as in this page's own ones.
pub fn in_per_cent(sheet: &Sheet) -> bool {
    let head = sheet.rows.first().map(|row| row.cells.as_slice()).unwrap_or_default();
    head.iter().any(|header| plain(header) == "level unit")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::papers::records::Records;
    use crate::papers::table::{Style, Table};

    fn matched(columns: &[impl AsRef<str>]) -> Vec<(String, Column)> {
        let sheet = Sheet::read(&Table::new(columns, Style::default()).text()).unwrap();
        assert!(has_header(&sheet));
        let all = columns.iter().map(|name| name.as_ref().to_owned()).zip(guess(&sheet));
        all.filter(|(_, column)| *column != Column::Skip).collect()
    }

    #[test]
    fn the_headers_of_our_own_tables_are_known() {
        let hives = matched(&Records::Hives.columns());
        let names = |all: &[(String, Column)]| all.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>();
        assert_eq!(names(&hives), ["yard", "tag", "size", "since", "boxes", "traps"]);
        let work = matched(&Records::Checks.columns());
        assert_eq!(
            names(&work),
            [
                "day",
                "yard",
                "hive",
                "traps",
                "did",
                "level_found",
                "level_left",
                "beetles_low",
                "beetles_high",
                "note"
            ]
        );
        assert!(work.contains(&("traps".to_owned(), Column::Which)));
    }

    #[test]
    fn nothing_is_matched_twice_and_a_row_of_numbers_is_no_header() {
        let twice = matched(&["Hive", "Hive no.", "Date", "Visit date", "Notes"]);
        assert_eq!(twice.len(), 3);
        let sheet = Sheet::read("1,2026-07-14,4\n").unwrap();
        assert!(!has_header(&sheet));
        for (column, code) in Column::ALL {
            assert_eq!((Column::of(code), column.code()), (column, code));
        }
    }
}
