//! A table as comma-separated values (RFC 4180), written cell by cell.

/// How a table is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Style {
    /// Begins with the byte-order mark, by which spreadsheets tell that the letters are UTF-8.
    pub mark: bool,
    /// A text that a spreadsheet would take for a formula gets a `'` in front.
    pub guard: bool,
}

/// A table in the making. Every row has as many cells as the header: the next row begins by itself.
pub struct Table {
    out: String,
    columns: usize,
    cells: usize,
    guard: bool,
}

impl Table {
    /// A table with these columns.
    pub fn new(columns: &[impl AsRef<str>], style: Style) -> Table {
        let out = if style.mark { "\u{feff}" } else { "" }.to_owned();
        let mut table = Table { out, columns: columns.len().max(1), cells: 0, guard: style.guard };
        for column in columns {
            table.put(column.as_ref());
        }
        table
    }

    /// The next cell; an empty text for a value that is not there.
    pub fn put(&mut self, text: &str) {
        if !self.cells.is_multiple_of(self.columns) {
            self.out.push(',');
        }
        let guard = self.guard && text.starts_with(['=', '+', '-', '@', '\t', '\r']);
        let quote = text.contains(['"', ',', '\r', '\n']);
        self.out.push_str(if quote { "\"" } else { "" });
        self.out.push_str(if guard { "'" } else { "" });
        for c in text.chars() {
            self.out.push_str(if c == '"' { "\"" } else { "" });
            self.out.push(c);
        }
        self.out.push_str(if quote { "\"" } else { "" });
        self.cells += 1;
        if self.cells.is_multiple_of(self.columns) {
            self.out.push_str("\r\n");
        }
    }

    /// The whole table; a row that was begun is filled with empty cells.
    pub fn text(mut self) -> String {
        while !self.cells.is_multiple_of(self.columns) {
            self.put("");
        }
        self.out
    }
}
