//! What the keeper should know or decide about a line: versions of two phones, and possible doubles.

use super::history::Line;
use super::lines::{self, Desk};
use super::words;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, el};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::wording::en;
use crate::app::wording::en_book::history as w;
use crate::book::Book;

/// The notices about a line, with the keys that decide.
pub(super) fn view(desk: Desk, book: &Book, line: &Line<'_>) -> Bit {
    let mut bits: Vec<Bit> = Vec::new();
    for (is, words) in [(line.revived, w::REVIVED), (line.orphan, w::ORPHAN)] {
        if is {
            bits.push(Notice::plain(words).view().into());
        }
    }
    if !line.clash.is_empty() {
        let mut versions = el("ul").class("lines");
        for version in std::iter::once(&line.entry).chain(&line.clash).copied() {
            let (own, root) = (version.clone(), line.root.clone());
            let keep = move || {
                let (pen, today) = (desk.records.pen(), desk.records.today_of(&own));
                let decided = desk
                    .records
                    .book
                    .with_untracked(|book| book.decide(&pen, today, &own.id, &BrowserLetters));
                lines::put(desk, &root, decided, w::DECIDED);
            };
            let mut said =
                [&words::entry(book, version), ", ", &desk.written(line.entry.day, version)].concat();
            if version.day != line.entry.day {
                said = [&en::date(version.day), ": ", &said].concat();
            }
            let key = Key::new(w::KEEP, keep).mark("clash-keep").view();
            versions = versions.kid(el("li").kid(el("p").text(&said)).kid(el("p").class("keys").kid(key)));
        }
        let clash = el("div").class("line-keys").test_id("history-clash");
        bits.push(clash.kid(Notice::caution(w::CLASH).view()).kid(versions).into());
    }
    if let Some(double) = line.double.clone() {
        let root = line.root.clone();
        let day = double.day;
        let both = move || {
            let pen = desk.records.pen();
            let both = desk.records.book.with_untracked(|book| book.both_right(&pen, &double));
            lines::put(desk, &root, both, w::BOTH_SAID);
        };
        let key = Key::new(w::BOTH, both).mark("history-both").view();
        let said = Notice::caution(w::double(day)).view();
        let double = el("div").class("line-keys").test_id("history-double");
        bits.push(double.kid(said).kid(el("p").class("keys").kid(key)).into());
    }
    Bit::Many(bits)
}
