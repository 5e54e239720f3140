//! What the forms of hive and yard have in common: the day, writing, and saying why not.

use super::said;
use super::state::Walk;
use crate::almanac::day::Day;
use crate::almanac::typed;
use crate::app::parts::field::{Field, Says};
use crate::app::records::Stop;
use crate::app::wording::{en, en_hive as w, en_typed};
use crate::book::Book;
use crate::book::entry::Entry;
use crate::book::write::{Pen, Refusal};
use leptos::prelude::*;

/// What a form wants written, from the book, the pen, the day of the form and today.
pub type Make<'a> = &'a dyn Fn(&Book, &Pen, Day, Day) -> Result<Vec<Entry>, Refusal>;

/// The forms of one page. All fields are handles.
#[derive(Clone, Copy)]
pub struct Form {
    /// The walk.
    pub walk: Walk,
    day: RwSignal<String>,
    stop: RwSignal<Option<(&'static str, Stop)>>,
}

impl Form {
    /// No day typed, nothing refused.
    pub fn new(walk: Walk) -> Form {
        Form { walk, day: RwSignal::new(String::new()), stop: RwSignal::new(None) }
    }

    /// The field for the day of everything on the page.
    pub fn day_field(self) -> AnyView {
        Field::new("change-day", w::DAY, self.day)
            .day()
            .hint(w::DAY_HINT)
            .says(move || self.day_says())
            .view()
    }

    fn day_says(self) -> Says {
        let today = self.walk.today.get();
        self.day.with(|text| {
            if text.trim().is_empty() {
                return Says::Nothing;
            }
            match typed::day_done(text, today) {
                Ok(day) => Says::Echo(en::echo(&w::day_and_how_far(day, today))),
                Err(error) => Says::Wrong(en_typed::day(error)),
            }
        })
    }

    /// Writes what `make` makes of the book, the pen, the day of the form and today. `form` names who asks, so that a
    /// refusal is said beside it. True when it is written.
    pub fn put(self, form: &'static str, said: String, make: Make<'_>) -> bool {
        let today = self.walk.today.get_untracked();
        let day = self.day.with_untracked(|text| {
            if text.trim().is_empty() { Ok(today) } else { typed::day_done(text, today) }
        });
        // The field says what is wrong with it.
        let Ok(day) = day else {
            self.stop.set(Some((form, Stop::Refused(Refusal::Future { today }))));
            return false;
        };
        let records = self.walk.records();
        let pen = records.pen();
        let written = records.book.with_untracked(|book| make(book, &pen, day, today));
        match records.put(written, said) {
            Ok(_) => {
                self.stop.set(None);
                true
            }
            Err(stop) => {
                self.stop.set(Some((form, stop)));
                false
            }
        }
    }

    /// Why `form` was refused, read out when it appears.
    pub fn refused(self, form: &'static str) -> AnyView {
        let stop = Memo::new(move |_| {
            self.stop
                .with(|stop| stop.as_ref().filter(|(who, _)| *who == form).map(|(_, stop)| said::stop(stop)))
        });
        let class = move || if stop.with(Option::is_some) { "field-says field-wrong" } else { "field-says" };
        view! {
            <p class=class role="alert">
                {move || stop.get().unwrap_or_default()}
            </p>
        }
        .into_any()
    }
}

/// A stretch of page that opens on tap and is built only then.
pub fn fold(title: &'static str, mark: &'static str, body: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let opened = RwSignal::new(false);
    view! {
        <details class="more" data-testid=mark on:toggle=move |_| opened.set(true)>
            <summary>{title}</summary>
            <div class="more-body">{move || opened.get().then(&body)}</div>
        </details>
    }
    .into_any()
}

/// A key at the end of a form.
pub fn go(label: &'static str, mark: &'static str, press: impl Fn() + 'static) -> AnyView {
    view! {
        <p class="keys">
            <button type="button" class="key key-big key-primary" data-testid=mark on:click=move |_| press()>
                {label}
            </button>
        </p>
    }
    .into_any()
}

/// A native chooser: values with their names, the first one chosen.
pub fn select(
    id: &'static str,
    label: &'static str,
    chosen: RwSignal<String>,
    all: Vec<(String, String)>,
) -> AnyView {
    let options = all.into_iter().map(|(value, name)| {
        let own = value.clone();
        view! {
            <option value=value selected=move || chosen.with(|chosen| *chosen == own)>
                {name}
            </option>
        }
    });
    view! {
        <div class="field field-wide">
            <label for=id>{label}</label>
            <select id=id autocomplete="off" on:change=move |event| chosen.set(event_target_value(&event))>
                {options.collect_view()}
            </select>
        </div>
    }
    .into_any()
}
