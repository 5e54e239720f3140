//! This phone: the label beside its lines, the room left, whether the browser keeps it.

use super::safety::{NEARLY_FULL, months_left};
use crate::almanac::text::{PHONE_MOST, label_if_any};
use crate::app::edge::keeping;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::parts::answer::Answer;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::{Home, Records};
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_book::phone as w;
use crate::app::wording::en_notices::{ELSEWHERE, WRITE_AGAIN};
use crate::app::wording::en_typed;
use wasm_bindgen_futures::spawn_local;

/// The section of the Book.
pub(super) fn view(ui: Ui, records: Records) -> El {
    let kept = records.meta.with_untracked(|meta| meta.label.clone()).unwrap_or_default();
    let text = RwSignal::new(kept);
    let read = move || text.with(|text| label_if_any(text, PHONE_MOST, &BrowserLetters));
    let says = move || match read() {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::label(error)),
    };
    let keep = move || {
        if let Ok(label) = untrack(read)
            && records.may_write()
        {
            records.remember(|meta| meta.label = label);
            ui.said.set(w::LABEL_KEPT.to_owned());
        }
    };
    el("section")
        .class("card")
        .kid(el("h2").text(w::TITLE))
        .kid(Field::new("phone-label", w::LABEL, text).wide().hint(w::LABEL_HINT).says(says).view())
        .kid(el("p").class("keys").kid(Key::new(w::LABEL_KEY, keep).mark("label-save").view()))
        .kid(hands(ui, records))
        .kid(room(ui, records))
        .kid(keeping(records))
}

/// The phone goes into other hands.
fn hands(ui: Ui, records: Records) -> El {
    let turn = move |on: bool| {
        if !records.set_only_shows(on) {
            ui.said.set(w::NOT_TAKEN.to_owned());
        }
    };
    let key = live(move || {
        let on = records.only_shows.get();
        let (label, mark) = if on { (WRITE_AGAIN, "hands-write") } else { (w::ONLY_SHOW, "hands-show") };
        Key::new(label, move || turn(!on)).mark(mark).view()
    });
    el("div")
        .class("stack")
        .kid(el("h3").text(w::HANDS))
        .kid(el("p").class("small").text(w::HANDS_WHAT))
        .kid(el("p").class("keys").kid(key))
}

fn room(ui: Ui, records: Records) -> El {
    let used = Memo::new(move || {
        records.book.track();
        records.used()
    });
    let months = move || {
        let used = used.get()?;
        records.book.with(|book| months_left(book, used, ui.today.get())).map(w::months)
    };
    let big = move || {
        used.get().map_or_else(|| en::NO_ANSWER.to_owned(), |used| en::with_unit(&used.to_string(), "%"))
    };
    let full = Memo::new(move || used.get().is_some_and(|used| used >= NEARLY_FULL));
    el("div")
        .kid(Answer::new(w::ROOM, big).sum(move || months().into_iter().collect()).why(w::ROOM_WHY).view())
        .kid(live(move || full.get().then(|| Notice::alarm(w::NEARLY_FULL).view())))
}

/// What the browser says about keeping; asked for on a key, because some browsers then ask the keeper.
fn keeping(records: Records) -> El {
    let promised = records.promised;
    let asked = RwSignal::new(false);
    spawn_local(async move { promised.set(keeping::promised().await) });
    let ask = move || {
        spawn_local(async move {
            promised.set(keeping::ask().await);
            asked.set(true);
        });
    };
    let said = live(move || match (records.home.get(), promised.get()) {
        (Home::Forgotten(_), _) => Notice::alarm(w::FORGOTTEN).view(),
        (Home::Elsewhere, _) => el("p").text(ELSEWHERE),
        (Home::ReadOnly, _) => Notice::caution(w::READ_ONLY).view(),
        (Home::Kept, Some(true)) => el("p").text(w::KEPT),
        (Home::Kept, _) if asked.get() => Notice::caution(w::NOT_PROMISED).view(),
        (Home::Kept, None) => el("p").text(w::MAY_CLEAR),
        (Home::Kept, Some(false)) => el("div")
            .class("stack")
            .kid(el("p").text(w::MAY_CLEAR))
            .kid(el("p").class("keys").kid(Key::new(w::ASK, ask).view())),
    });
    let twice = live(move || {
        let twice = records.twice.get().filter(|_| records.home.get() == Home::Kept);
        twice.map(|twice| if twice { el("p").text(w::TWICE) } else { Notice::caution(w::ONCE).view() })
    });
    el("div").attr("role", "status").test_id("keeping").kid(twice).kid(said)
}
