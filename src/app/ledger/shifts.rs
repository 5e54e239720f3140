//! Due dates that something about to be written would change.

use super::words;
use crate::almanac::day::Day;
use crate::app::el::{El, el, live};
use crate::app::graph::{Memo, RwSignal};
use crate::app::round::form::fold;
use crate::app::wording::en_book::history as w;
use crate::book::Book;
use crate::book::shift::Shift;

/// How many `what` changes, and on tap which; nothing while nobody knows.
pub fn view(
    book: RwSignal<Book>,
    today: Day,
    what: &'static str,
    shifts: RwSignal<Option<Vec<Shift>>>,
) -> El {
    let count = Memo::new(move || shifts.with(|shifts| shifts.as_ref().map(Vec::len)));
    let said = move || match count.get() {
        None => String::new(),
        Some(0) => w::NO_SHIFT.to_owned(),
        Some(count) => w::shifts(what, count),
    };
    let list = move || {
        let mut list = el("ul").class("lines").test_id("shift-list");
        for shift in shifts.get().unwrap_or_default() {
            let line = book.with(|book| w::shift(&words::hive_name(book, &shift.hive), &shift, today));
            list = list.kid(el("li").text(&line));
        }
        list
    };
    let any = Memo::new(move || count.get().is_some_and(|count| count > 0));
    let which = live(move || any.get().then(|| fold(w::SHOW_SHIFTS, "shifts-show", move || live(list))));
    el("div").test_id("shifts").kid(el("p").class("shifts").attr("role", "status").live_text(said)).kid(which)
}
