//! This phone: the label beside its lines, the room left, whether the browser keeps it.

use super::safety::{NEARLY_FULL, months_left};
use crate::almanac::text::{LabelError, label};
use crate::app::edge::keeping;
use crate::app::edge::letters::BrowserLetters;
use crate::app::parts::answer::Answer;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::{Home, Records};
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_book::phone as w;
use crate::app::wording::en_typed;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

/// Most visible letters of a phone's label.
const LABEL_MOST: usize = 20;

/// The section of the Book.
pub(super) fn view(ui: Ui, records: Records) -> AnyView {
    let kept = records.meta.with_untracked(|meta| meta.label.clone()).unwrap_or_default();
    let text = RwSignal::new(kept);
    let read = move || match text.with(|text| label(text, LABEL_MOST, &BrowserLetters)) {
        Ok(label) => Ok(Some(label)),
        Err(LabelError::Empty) => Ok(None),
        Err(error) => Err(error),
    };
    let says = move || match read() {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::label(error)),
    };
    let keep = move || {
        if let Ok(label) = untrack(read) {
            records.remember(|meta| meta.label = label);
            ui.said.set(w::LABEL_KEPT.to_owned());
        }
    };
    view! {
        <section class="card">
            <h2>{w::TITLE}</h2>
            {Field::new("phone-label", w::LABEL, text).wide().hint(w::LABEL_HINT).says(says).view()}
            <p class="keys">{Key::new(w::LABEL_KEY, keep).mark("label-save").view()}</p>
            {room(ui, records)}
            {keeping(records)}
        </section>
    }
    .into_any()
}

fn room(ui: Ui, records: Records) -> AnyView {
    let used = Memo::new(move |_| {
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
    view! {
        {Answer::new(w::ROOM, big).sum(move || months().into_iter().collect()).why(w::ROOM_WHY).view()}
        {move || {
            used.get().is_some_and(|used| used >= NEARLY_FULL).then(|| Notice::alarm(w::NEARLY_FULL).view())
        }}
    }
    .into_any()
}

/// What the browser says about keeping; asked for on a key, because some browsers then ask the keeper.
fn keeping(records: Records) -> AnyView {
    let promised = RwSignal::new(None::<bool>);
    let asked = RwSignal::new(false);
    spawn_local(async move { promised.set(keeping::promised().await) });
    let ask = move || {
        spawn_local(async move {
            promised.set(keeping::ask().await);
            asked.set(true);
        });
    };
    let said = move || match (records.home.get(), promised.get()) {
        (Home::Forgotten(_), _) => Notice::alarm(w::FORGOTTEN).view(),
        (Home::ReadOnly, _) => Notice::caution(w::READ_ONLY).view(),
        (Home::Kept, Some(true)) => view! { <p>{w::KEPT}</p> }.into_any(),
        (Home::Kept, _) if asked.get() => Notice::caution(w::NOT_PROMISED).view(),
        (Home::Kept, None) => view! { <p>{w::MAY_CLEAR}</p> }.into_any(),
        (Home::Kept, Some(false)) => view! {
            <p>{w::MAY_CLEAR}</p>
            <p class="keys">{Key::new(w::ASK, ask).view()}</p>
        }
        .into_any(),
    };
    view! { <div role="status">{said}</div> }.into_any()
}
