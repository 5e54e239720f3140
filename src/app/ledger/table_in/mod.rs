//! A table that was kept elsewhere: opened, matched column by column, looked at, taken in on a word.

mod asks;
mod matched;
mod preview;

use crate::app::edge::{
    self,
    files::{self, FileError},
};
use crate::app::el::{Bit, El, el, live, target};
use crate::app::frame::heading;
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_table_in as w;
use crate::book::id::EntryId;
use crate::papers::table_in::{MOST_BYTES, Sheet, SheetError};
use matched::Matched;
use std::rc::Rc;
use web_sys::HtmlInputElement;

/// Where what was opened is shown.
const SHOWN: &str = "table-shown";

/// The page.
pub(super) fn view(ui: Ui, records: Records) -> Bit {
    let opened = RwSignal::new(None::<Result<Rc<Sheet>, String>>);
    let pasted = RwSignal::new(String::new());
    // What was done, and its first entry: it is said for as long as that is not taken back.
    let result = RwSignal::new((String::new(), None::<EntryId>));
    let said = move || {
        let (said, entry) = result.get();
        let undone = |entry| records.book.with(|book| book.log().struck().contains_key(&entry));
        if entry.as_ref().is_some_and(undone) { String::new() } else { said }
    };
    let show = move |found: Result<Rc<Sheet>, String>| {
        result.set((String::new(), None));
        opened.set(Some(found));
        edge::after_paint(|| edge::focus(SHOWN));
    };
    let look = move |text: &str| show(Sheet::read(text).map(Rc::new).map_err(w::sheet_error));
    let shown = live(move || match opened.get() {
        None => Bit::Nothing,
        Some(Err(said)) => Notice::caution(said).view().into(),
        Some(Ok(sheet)) => {
            let matched = Matched::new(records, sheet);
            let close = move |said: String, entry: Option<EntryId>| {
                opened.set(None);
                result.set((said, entry));
            };
            Bit::Many(vec![asks::view(records, &matched), preview::view(ui, records, &matched, close)])
        }
    });
    Bit::Many(vec![
        el("p").class("back").kid(link(en::section(Section::Book), &Place::Book)).into(),
        heading(w::TITLE).into(),
        el("p").text(w::WHAT).into(),
        choose(pasted, show, look).into(),
        el("div")
            .class("stack")
            .attr("id", SHOWN)
            .attr("tabindex", "-1")
            .kid(shown)
            .kid(el("p").attr("role", "status").test_id("table-result").live_text(said))
            .into(),
    ])
}

/// The file, or the cells.
fn choose(
    pasted: RwSignal<String>,
    show: impl Fn(Result<Rc<Sheet>, String>) + Copy + 'static,
    look: impl Fn(&str) + Copy + 'static,
) -> El {
    let most = u32::try_from(MOST_BYTES).unwrap_or(u32::MAX);
    let file = el("input")
        .attr("id", "table-file")
        .class("file")
        .attr("type", "file")
        .attr("accept", ".csv,.tsv,.txt,text/csv,text/plain,text/tab-separated-values")
        .test_id("table-file")
        .attr("aria-describedby", "table-hint")
        .on("change", move |event| {
            let Some(input) = target::<HtmlInputElement>(&event) else { return };
            files::picked(&input, most, move |_, text| match text {
                Ok(text) => look(&text),
                Err(FileError::TooLarge { .. }) => show(Err(w::sheet_error(SheetError::TooLarge))),
                Err(FileError::Unreadable) => show(Err(w::UNREADABLE.to_owned())),
            });
        });
    let area =
        el("textarea").attr("id", "table-text").attr("rows", "4").attr("spellcheck", "false").typed(pasted);
    let key = Key::new(w::PASTE_KEY, move || pasted.with_untracked(|text| look(text))).mark("table-read");
    let paste = el("div")
        .class("field field-wide")
        .kid(el("label").attr("for", "table-text").text(w::PASTE_LABEL))
        .kid(area)
        .kid(el("p").class("keys").kid(key.view()));
    el("div")
        .kid(
            el("div")
                .class("file-pick")
                .kid(el("p").class("small").attr("id", "table-hint").text(w::HINT))
                .kid(file)
                .kid(el("label").attr("for", "table-file").class("key").text(w::FILE)),
        )
        .kid(more(w::PASTE, paste).test_id("table-paste"))
}
