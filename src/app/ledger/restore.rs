//! A file comes in, a backup or what another phone hands over: looked at first, taken in on a word.

use super::{recovered, words};
use crate::app::edge;
use crate::app::edge::files::{self, FileError};
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, El, el, live, target};
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::round::form::{big, primary};
use crate::app::wording::en_book::restore as w;
use crate::app::wording::en_hand_over::take as wt;
use crate::app::wording::en_ledger;
use crate::app::wording::en_notices::why;
use crate::book::Book;
use crate::book::log::Union;
use crate::book::standing::Standing;
use crate::papers::backup::{self, BackupError, Counts};
use crate::papers::pack::{self, File, Preview};
use crate::papers::recover::Recovered;
use web_sys::HtmlInputElement;

/// Clashes named one by one.
const NAMED: usize = 5;

/// Where what was opened is shown.
const SHOWN: &str = "restore-shown";

/// What was looked into, and what came of it.
#[derive(Clone, Copy)]
pub(super) struct Looked {
    opened: RwSignal<Option<Result<File, String>>>,
    /// What can be read of a damaged backup.
    spoiled: RwSignal<Option<Recovered>>,
    result: RwSignal<String>,
}

/// The section of the Book.
pub(super) fn view(records: Records) -> El {
    let looked = Looked::new();
    let pasted = RwSignal::new(String::new());
    let area =
        el("textarea").attr("id", "restore-text").attr("rows", "4").attr("spellcheck", "false").typed(pasted);
    let look = move || pasted.with_untracked(|text| looked.look(text));
    let paste = el("div")
        .class("field field-wide")
        .kid(el("label").attr("for", "restore-text").text(w::PASTE_LABEL))
        .kid(area)
        .kid(el("p").class("keys").kid(Key::new(w::PASTE_KEY, look).view()));
    el("section")
        .class("card")
        .attr("id", "restore")
        .kid(el("h2").text(w::TITLE))
        .kid(looked.field())
        .kid(more(w::PASTE, paste))
        .kid(looked.view(records))
}

impl Looked {
    pub(super) fn new() -> Looked {
        Looked {
            opened: RwSignal::new(None),
            spoiled: RwSignal::new(None),
            result: RwSignal::new(String::new()),
        }
    }

    /// Looks into the text of a file.
    pub(super) fn look(self, text: &str) {
        let found = pack::open(text);
        let rest = if found.is_err() { recovered::of(text) } else { None };
        self.show(found.map_err(|error| w::error(&error)));
        self.spoiled.set(rest);
    }

    /// The answer stands below the screen of a phone: the page goes there.
    fn show(self, found: Result<File, String>) {
        self.result.set(String::new());
        self.spoiled.set(None);
        self.opened.set(Some(found));
        edge::after_paint(|| edge::focus(SHOWN));
    }

    /// Nothing is looked into any more.
    pub(super) fn shut(self) {
        self.opened.set(None);
    }

    /// The key that opens a file.
    pub(super) fn field(self) -> El {
        let field = el("input")
            .attr("id", "restore-file")
            .class("file")
            .attr("type", "file")
            .attr("accept", ".json,.txt,application/json,text/plain")
            .test_id("book-restore")
            .attr("aria-describedby", "restore-hint");
        let field = field.on("change", move |event| {
            let Some(input) = target::<HtmlInputElement>(&event) else { return };
            files::picked(&input, u32::try_from(backup::MOST_BYTES).unwrap_or(u32::MAX), move |_, text| {
                match text {
                    Ok(text) => self.look(&text),
                    Err(FileError::TooLarge { .. }) => self.show(Err(w::error(&BackupError::TooLarge))),
                    Err(FileError::Unreadable) => self.show(Err(w::UNREADABLE.to_owned())),
                }
            });
        });
        el("div")
            .class("file-pick")
            .kid(el("p").class("small").attr("id", "restore-hint").text(w::HINT))
            .kid(field)
            .kid(el("label").attr("for", "restore-file").class("key").text(w::FILE))
    }

    /// What is in it, and the key that takes it in.
    pub(super) fn view(self, records: Records) -> El {
        let shown = live(move || match self.opened.get() {
            None => Bit::Nothing,
            Some(Ok(file)) => preview(records, &file, self).into(),
            Some(Err(said)) => Notice::caution(said).view().into(),
        });
        let (spoiled, result) = (self.spoiled, self.result);
        let rest = live(move || spoiled.get().map(|rest| recovered::view(records, &rest, spoiled, result)));
        el("div")
            .attr("role", "status")
            .attr("id", SHOWN)
            .attr("tabindex", "-1")
            .kid(shown)
            .kid(rest)
            .kid(el("p").test_id("restore-result").live_text(move || result.get()))
    }
}

fn preview(records: Records, file: &File, looked: Looked) -> El {
    let (found, clashes) = records.book.with_untracked(|book| {
        let found = file.preview(book, &BrowserLetters);
        let clashes = clashing(book, &found.union);
        (found, clashes)
    });
    let backup = &file.backup;
    let new = found.union.new + found.union.fuller;
    let label = if new == 0 { w::NOTHING_NEW.to_owned() } else { w::confirm(new) };
    let take = move || {
        let Some(Ok(file)) = looked.opened.get_untracked() else { return };
        looked.opened.set(None);
        looked.result.set(take_in(records, file));
    };
    let by = backup.by.as_deref().map(words::isolated);
    let (alone, struck) = backup.alone();
    let standing = alone.standing();
    let holds = Counts { yards: standing.yards.len(), hives: standing.hives.len(), ..backup.counts };
    let mut about = vec![w::made(backup.made, by.as_deref()), w::holds(holds, struck), yards(standing)];
    if file.pack == Some(false) {
        about.push(wt::WITHHELD.to_owned());
    }
    let mut preview = el("div")
        .class("preview")
        .test_id("restore-preview")
        .kid(el("h3").text(w::PREVIEW))
        .kid(list(&about))
        .kid(el("p").class("lead").text(&union(&found.union)));
    if !clashes.is_empty() {
        preview = preview.kid(el("p").text(w::CLASH_HOW)).kid(list(&clashes));
    }
    let doubts = doubts(&found);
    if !doubts.is_empty() {
        preview = preview.kid(list(&doubts));
    }
    let keys = el("p").class("keys").kid(primary(&label, "restore-confirm", take)).kid(big(
        w::LEAVE,
        "restore-leave",
        move || looked.shut(),
    ));
    preview.kid(keys)
}

fn union(union: &Union) -> String {
    let mut said = w::union(union.new, union.same, union.clashes.len());
    if union.fuller > 0 {
        said.push_str(&[", ", &wt::fuller(union.fuller)].concat());
    }
    said
}

/// What the keeper should know before it is taken in.
fn doubts(found: &Preview) -> Vec<String> {
    let mut said = Vec::new();
    if found.doubles > 0 {
        said.push(wt::doubles(found.doubles));
    }
    for name in found.yards.iter().take(NAMED) {
        said.push(wt::yard(name));
    }
    for (tag, yard) in found.twins.iter().take(NAMED) {
        said.push(wt::twin(tag, yard));
    }
    let more = found.yards.len().saturating_sub(NAMED) + found.twins.len().saturating_sub(NAMED);
    if more > 0 {
        said.push(["+ ", &more.to_string()].concat());
    }
    said
}

pub(super) fn list(lines: &[String]) -> El {
    let mut list = el("ul").class("plain-list");
    for line in lines {
        list = list.kid(el("li").text(line));
    }
    list
}

/// Takes a file in and says what came of it.
fn take_in(records: Records, file: File) -> String {
    let is_backup = file.is_backup();
    let File { backup, pack } = file;
    let (made, held) = (backup.made.day(), backup.counts.entries);
    let found = match records.restore(backup) {
        Ok(found) => found,
        Err(partly) => return w::partly(partly.kept, partly.of, why(&partly.why)),
    };
    let own =
        records.book.with_untracked(|book| book.log().entries().filter(|entry| !entry.is_demo()).count());
    // Where the file holds all there is, it is as good as one saved here.
    if is_backup && found.is_whole(own) {
        records.remember(|meta| {
            if meta.backup.is_none_or(|(day, before)| (before, day) < (held, made)) {
                meta.backup = Some((made, held));
            }
        });
    }
    let said = union(&found);
    if pack.is_some() { wt::done(&said) } else { w::done(&said) }
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
