//! What the sheets are made of.

use crate::app::el::{Bit, El, el};
use crate::app::ledger::words::isolated;
use crate::app::wording::en_papers as w;
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::record::Blank;

/// How a sheet looks that has left the page.
const STYLE: &str = "body{font:11pt/1.35 system-ui,sans-serif;max-width:60rem;margin:1rem auto;padding:0 1rem}\
h2,h3{break-after:avoid}table{width:100%;border-collapse:collapse}th,td{border:1px solid #777;padding:2px 5px;\
text-align:left;vertical-align:top}tr,li,.hive-card{break-inside:avoid}ul{list-style:none;padding:0}\
.plans{display:flex;flex-wrap:wrap;gap:1rem}.plans>div{width:7rem}svg{width:100%;color:#000}\
.d-wall,.d-thin,.d-heavy{fill:none;stroke:#777;stroke-width:3}.d-words{text-anchor:middle}@page{margin:15mm}";

/// A table. On a narrow screen each row becomes a few lines, in which the column's name stands before each cell.
pub(super) fn table(columns: &'static [&'static str], rows: Vec<Vec<Bit>>) -> El {
    let mut head = el("tr");
    for column in columns {
        head = head.kid(el("th").attr("scope", "col").text(column));
    }
    let mut body = el("tbody");
    for row in rows {
        let mut line = el("tr");
        for (column, cell) in columns.iter().zip(row) {
            line = line.kid(el("td").attr("data-label", &[column, ": "].concat()).kid(cell));
        }
        body = body.kid(line);
    }
    el("table").class("paper-table").kid(el("thead").kid(head)).kid(body)
}

/// A list.
pub(in crate::app::ledger) fn list(class: &str, lines: &[String]) -> El {
    let mut list = el("ul").class(class);
    for line in lines {
        list = list.kid(el("li").text(line));
    }
    list
}

/// A line that says that the records are invented, where they are.
pub(super) fn demo_mark(yard: &ThingId) -> Option<El> {
    yard.is_demo().then(|| el("p").class("demo-mark").text(w::DEMO))
}

/// The yard's name.
pub(super) fn yard_name(book: &Book, yard: &ThingId) -> String {
    isolated(book.standing().yards.get(yard).map_or("", |yard| &yard.name))
}

/// The sheet as a page of its own, that any browser shows and prints.
pub(super) fn document(title: &str, markup: &str) -> String {
    let head = "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><meta name=\"viewport\" \
                content=\"width=device-width\"><title>";
    [head, title, "</title><style>", STYLE, "</style>", markup, "</html>"].concat()
}

/// What the keeper has written down for papers, in the field `name`; else the name of the settings.
pub(super) fn keeper_text(book: &Book, name: &str) -> Option<String> {
    let standing = book.standing();
    let facts = standing.facts(Blank::KeeperFacts, None, None);
    let set = standing.keeper.name.as_deref().filter(|_| name == "name");
    facts.text(name).or(set).map(isolated)
}
