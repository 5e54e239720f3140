//! A table as it would be taken in, and the word that takes it in.

use super::matched::{Matched, Read};
use crate::app::el::{Bit, el, live};
use crate::app::graph::RwSignal;
use crate::app::ledger::papers::sheet::list;
use crate::app::ledger::save::copyable;
use crate::app::load::page::tick;
use crate::app::parts::card::more;
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::{en_log, en_table_in as w};
use crate::book::id::EntryId;
use crate::book::write::Refusal;
use std::rc::Rc;

/// Rows that are shown, and wrong ones that are named.
const SHOWN: usize = 5;
const NAMED: usize = 30;

/// The first rows, what cannot be read, what it comes to. `close` is called with what was done and its first entry.
pub(super) fn view(
    ui: Ui,
    records: Records,
    matched: &Rc<Matched>,
    close: impl Fn(String, Option<EntryId>) + Copy + 'static,
) -> Bit {
    let of = Rc::clone(matched);
    let leave = RwSignal::new(false);
    let (asked, earlier) = (RwSignal::new(false), matched.earlier);
    // Beside the part that reads the answer: replaced with it, the tick would lose the focus.
    let tick_earlier = live(move || {
        let tick = || tick(w::EARLIER, move || earlier.get(), move |on| earlier.set(on));
        asked.get().then(tick)
    });
    let preview = live(move || {
        let today = ui.today.get();
        let read = records.book.with(|book| of.read(records, book, today));
        let mut bits: Vec<Bit> = Vec::new();
        let mut rows = Vec::new();
        for line in read.lines.iter().filter(|line| !read.refuses(line.row)).take(SHOWN) {
            rows.push(w::line(line));
        }
        if !rows.is_empty() {
            bits.push(el("h2").text(w::AS_READ).into());
            bits.push(list("plain-list", &rows).test_id("table-rows").into());
        }
        let wrong = wrong(&of, &read);
        if !wrong.is_empty() {
            bits.push(left_out(&of, &wrong));
        }
        let before = |(_, refusal): &(usize, Refusal)| matches!(refusal, Refusal::BeforeHive { .. });
        let asks = of.earlier.get() || read.refused().iter().any(before);
        if asks != asked.get_untracked() {
            asked.set(asks);
        }
        match &read.taken {
            Err(refusal) => bits.push(Notice::caution(en_log::refusal(refusal)).view().into()),
            Ok(_) if read.lines.is_empty() => bits.push(Notice::caution(w::NO_ROW).view().into()),
            Ok(taken) if taken.entries.is_empty() => {
                bits.push(el("p").class("lead").test_id("table-nothing").text(w::NOTHING).into());
            }
            Ok(taken) => {
                bits.push(el("p").class("lead").test_id("table-comes-to").text(&w::comes_to(taken)).into());
                let held = !wrong.is_empty();
                if held {
                    bits.push(tick(w::LEAVE, move || leave.get(), move |on| leave.set(on)).into());
                }
                let of = Rc::clone(&of);
                let take = move || take(ui, records, &of, close);
                let key = Key::new(w::confirm(taken), take).primary().mark("table-confirm");
                bits.push(el("p").class("keys").kid(key.off(move || held && !leave.get()).view()).into());
            }
        }
        let cancel = Key::new(w::CANCEL, move || close(String::new(), None)).mark("table-cancel").view();
        bits.push(el("p").class("keys").kid(cancel).into());
        el("section").class("stack").test_id("table-preview").kids(bits)
    });
    Bit::Many(vec![tick_earlier, preview])
}

/// Rows that stay out and why, in the order of the table.
fn wrong(of: &Matched, read: &Read) -> Vec<(usize, String)> {
    let mut all: Vec<(usize, String)> = Vec::new();
    // Both are in that order, and no row is in both.
    let mut errors = read.wrong.iter().peekable();
    let mut refused = read.refused().iter().peekable();
    for row in &of.sheet.rows {
        let number = row.number;
        if let Some((_, error)) = errors.next_if(|(row, _)| *row == number) {
            all.push((number, w::row_error(error)));
        } else if let Some((_, refusal)) = refused.next_if(|(row, _)| *row == number) {
            all.push((number, w::refused(refusal)));
        }
    }
    all
}

fn left_out(of: &Matched, wrong: &[(usize, String)]) -> Bit {
    let mut named = Vec::new();
    for (row, why) in wrong.iter().take(NAMED) {
        named.push([&w::row(*row), why.as_str()].concat());
    }
    if wrong.len() > NAMED {
        named.push(w::others(wrong.len() - NAMED));
    }
    // With tabs, as a spreadsheet takes pasted cells.
    let mut text = String::new();
    let mut left = wrong.iter().peekable();
    for row in &of.sheet.rows {
        if left.next_if(|(number, _)| *number == row.number).is_none() {
            continue;
        }
        for (at, cell) in row.cells.iter().enumerate() {
            let quote = if cell.contains(['"', '\t', '\r', '\n']) { "\"" } else { "" };
            for part in [if at > 0 { "\t" } else { "" }, quote, &cell.replace('"', "\"\""), quote] {
                text.push_str(part);
            }
        }
        text.push('\n');
    }
    let head = el("h2").text(w::WRONG);
    let named = list("plain-list", &named).test_id("table-wrong");
    [head, named, more(w::COPY, copyable("table-left", w::COPY, &text))].into()
}

fn take(ui: Ui, records: Records, of: &Matched, close: impl Fn(String, Option<EntryId>)) {
    of.rest();
    let today = ui.today.get_untracked();
    let read =
        crate::app::graph::untrack(|| records.book.with_untracked(|book| of.read(records, book, today)));
    let Ok(taken) = read.taken else { return };
    let said = w::done(&taken);
    if let Ok(written) = records.put(Ok(taken.entries), said.clone()) {
        close(said, written.into_iter().next());
    }
}
