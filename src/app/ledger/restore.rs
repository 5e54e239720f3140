//! A backup file comes back: looked at first, taken in on a word.

use super::{recovered, words};
use crate::app::edge::{
    self,
    files::{self, FileError},
};
use crate::app::el::{Bit, El, el, live, target};
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::wording::en_book::restore as w;
use crate::app::wording::en_ledger;
use crate::app::wording::en_notices::why;
use crate::book::Book;
use crate::book::log::Union;
use crate::book::standing::Standing;
use crate::papers::backup::{self, Backup, BackupError, Counts};
use web_sys::HtmlInputElement;

/// Clashes named one by one.
const NAMED: usize = 5;

/// Where what was opened is shown.
const SHOWN: &str = "restore-shown";

/// What was opened.
type Opened = RwSignal<Option<Result<Backup, String>>>;

/// The section of the Book.
pub(super) fn view(records: Records) -> El {
    let opened: Opened = RwSignal::new(None);
    let result = RwSignal::new(String::new());
    let pasted = RwSignal::new(String::new());
    let spoiled = RwSignal::new(None);
    // The answer stands below the screen of a phone: the page goes there.
    let show = move |found: Result<Backup, String>| {
        result.set(String::new());
        spoiled.set(None);
        opened.set(Some(found));
        edge::after_paint(|| edge::focus(SHOWN));
    };
    let look = move |text: &str| {
        let found = backup::open(text);
        let rest = if found.is_err() { recovered::of(text) } else { None };
        show(found.map_err(|error| w::error(&error)));
        spoiled.set(rest);
    };
    let field = el("input")
        .attr("id", "restore-file")
        .class("file")
        .attr("type", "file")
        .attr("accept", ".json,.txt,application/json,text/plain")
        .test_id("book-restore")
        .attr("aria-describedby", "restore-hint");
    let field =
        field.on("change", move |event| {
            let Some(input) = target::<HtmlInputElement>(&event) else { return };
            files::picked(&input, u32::try_from(backup::MOST_BYTES).unwrap_or(u32::MAX), move |_, text| {
                match text {
                    Ok(text) => look(&text),
                    Err(FileError::TooLarge { .. }) => show(Err(w::error(&BackupError::TooLarge))),
                    Err(FileError::Unreadable) => show(Err(w::UNREADABLE.to_owned())),
                }
            });
        });
    let area =
        el("textarea").attr("id", "restore-text").attr("rows", "4").attr("spellcheck", "false").typed(pasted);
    let paste = el("div")
        .class("field field-wide")
        .kid(el("label").attr("for", "restore-text").text(w::PASTE_LABEL))
        .kid(area)
        .kid(
            el("p")
                .class("keys")
                .kid(Key::new(w::PASTE_KEY, move || pasted.with_untracked(|text| look(text))).view()),
        );
    let shown = live(move || match opened.get() {
        None => Bit::Nothing,
        Some(Ok(backup)) => preview(records, &backup, opened, result).into(),
        Some(Err(said)) => Notice::caution(said).view().into(),
    });
    el("section")
        .class("card")
        .attr("id", "restore")
        .kid(el("h2").text(w::TITLE))
        .kid(
            el("div")
                .class("file-pick")
                .kid(el("p").class("small").attr("id", "restore-hint").text(w::HINT))
                .kid(field)
                .kid(el("label").attr("for", "restore-file").class("key").text(w::FILE)),
        )
        .kid(more(w::PASTE, paste))
        .kid(
            el("div")
                .attr("role", "status")
                .attr("id", SHOWN)
                .attr("tabindex", "-1")
                .kid(shown)
                .kid(live(move || {
                    spoiled.with(|rest| recovered::view(records, rest.as_ref()?, spoiled, result))
                }))
                .kid(el("p").test_id("restore-result").live_text(move || result.get())),
        )
}

fn preview(records: Records, backup: &Backup, opened: Opened, result: RwSignal<String>) -> El {
    let (union, clashes) = records.book.with_untracked(|book| {
        let union = backup.preview(book);
        let clashes = clashing(book, &union);
        (union, clashes)
    });
    let said = w::union(union.new, union.same, union.clashes.len());
    let label = if union.new == 0 { w::NOTHING_NEW.to_owned() } else { w::confirm(union.new) };
    let take = move || {
        let Some(Ok(backup)) = opened.get_untracked() else { return };
        opened.set(None);
        result.set(take_in(records, backup));
    };
    let by = backup.by.as_deref().map(words::isolated);
    let (alone, struck) = backup.alone();
    let standing = alone.standing();
    let holds = Counts { yards: standing.yards.len(), hives: standing.hives.len(), ..backup.counts };
    let about = [w::made(backup.made, by.as_deref()), w::holds(holds, struck), yards(standing)];
    let mut preview = el("div")
        .class("preview")
        .test_id("restore-preview")
        .kid(el("h3").text(w::PREVIEW))
        .kid(list(&about))
        .kid(el("p").class("lead").text(&said));
    if !clashes.is_empty() {
        preview = preview.kid(el("p").text(w::CLASH_HOW)).kid(list(&clashes));
    }
    let keys = el("p")
        .class("keys")
        .kid(Key::new(label, take).primary().mark("restore-confirm").view())
        .kid(Key::new(w::LEAVE, move || opened.set(None)).view());
    preview.kid(keys)
}

pub(super) fn list(lines: &[String]) -> El {
    let mut list = el("ul").class("plain-list");
    for line in lines {
        list = list.kid(el("li").text(line));
    }
    list
}

/// Takes a file in and says what came of it.
fn take_in(records: Records, backup: Backup) -> String {
    let (made, held) = (backup.made.day(), backup.counts.entries);
    let union = match records.restore(backup) {
        Ok(union) => union,
        Err(partly) => return w::partly(partly.kept, partly.of, why(&partly.why)),
    };
    let own =
        records.book.with_untracked(|book| book.log().entries().filter(|entry| !entry.is_demo()).count());
    // Where the file holds all there is, it is as good as one saved here.
    if own == held && union.clashes.is_empty() {
        records.remember(|meta| {
            if meta.backup.is_none_or(|(day, before)| (before, day) < (held, made)) {
                meta.backup = Some((made, held));
            }
        });
    }
    w::done(&w::union(union.new, union.same, union.clashes.len()))
}

fn clashing(book: &Book, union: &Union) -> Vec<String> {
    let mut said = Vec::new();
    for id in &union.clashes {
        if said.len() < NAMED
            && let Some(here) = book.log().get(id)
        {
            said.push(words::entry(book, here));
        }
    }
    if union.clashes.len() > NAMED {
        said.push(["+ ", &en_ledger::lines(union.clashes.len() - NAMED)].concat());
    }
    said
}

pub(super) fn yards(standing: &Standing) -> String {
    let mut names = Vec::new();
    for yard in standing.yards.values() {
        names.push(words::isolated(&yard.name));
    }
    if names.is_empty() { w::NO_YARD.to_owned() } else { w::yards(&names.join(", ")) }
}
