//! What stands around every place: the head, the bar at the thumb, the messages above it.

use super::edge::{self, listen};
use super::parts::icon;
use super::parts::key::Key;
use super::place::{Place, Section};
use super::prefs::{Scheme, TextSize};
use super::records::Records;
use super::settings::settings;
use super::state::Ui;
use super::wording::en;
use super::{bench, parts};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// The whole page.
#[component]
pub fn Frame() -> impl IntoView {
    let records = Records::provide();
    let start = if records.book.with_untracked(|book| book.log().is_empty()) {
        Place::Bench(None)
    } else {
        Place::Round
    };
    let ui = Ui::provide(here().unwrap_or(start));
    follow_address(ui);
    follow_prefs(ui);
    let settings_open = RwSignal::new(false);
    view! {
        <header class="head">
            <p class="head-name">{en::NAME}</p>
            <p class="head-day">{move || en::date(ui.today.get())}</p>
            <button
                type="button"
                class="head-key"
                aria-label=en::page::SETTINGS
                on:click=move |_| settings_open.set(true)
            >
                {en::page::SETTINGS_KEY}
            </button>
        </header>
        {settings(ui, settings_open)}
        <main class="main">{place_view(ui)}</main>
        <div class="foot">{messages(ui)} {bar(ui)}</div>
    }
}

/// The place the address names.
fn here() -> Option<Place> {
    let hash = edge::window()?.location().hash().ok()?;
    Place::parse(&hash)
}

/// Follows the address, so that links and the back key need no code of their own.
fn follow_address(ui: Ui) {
    let Some(window) = edge::window() else { return };
    listen(&window, "hashchange", move |_| {
        let Some(place) = here() else { return };
        let before = ui.place.get_untracked();
        if place == before {
            return;
        }
        let within_bench = matches!((&before, &place), (Place::Bench(_), Place::Bench(_)));
        ui.place.set(place);
        // Within the Bench the sum that was jumped to takes the focus itself.
        if !within_bench {
            edge::after_paint(focus_heading);
        }
    });
    Effect::new(move || {
        if let Some(document) = edge::document() {
            document.set_title(&en::title(en::section(ui.place.get().section())));
        }
    });
}

/// Puts the focus on the heading of the place, so that a screen reader says where it is.
pub fn focus_heading() {
    let heading = edge::document().and_then(|document| document.query_selector("main h1").ok().flatten());
    if let Some(heading) = heading.and_then(|heading| heading.dyn_into::<HtmlElement>().ok()) {
        let _ = heading.focus();
        if let Some(window) = edge::window() {
            window.scroll_to_with_x_and_y(0.0, 0.0);
        }
    }
}

/// Writes the settings where the style reads them.
fn follow_prefs(ui: Ui) {
    Effect::new(move || {
        let prefs = ui.prefs.get();
        let Some(root) = edge::document().and_then(|document| document.document_element()) else { return };
        let set = |name: &str, code: Option<&str>| {
            let _ = match code {
                Some(code) => root.set_attribute(name, code),
                None => root.remove_attribute(name),
            };
        };
        set("data-scheme", (prefs.scheme != Scheme::System).then(|| prefs.scheme.code()));
        set("data-text", (prefs.text != TextSize::Usual).then(|| prefs.text.code()));
        set("data-hand", Some(prefs.hand.code()));
    });
}

/// The place itself. Built anew when the section changes; within a section the place looks after itself.
fn place_view(ui: Ui) -> impl IntoView {
    let section = Memo::new(move |_| ui.place.with(Place::section) as u8);
    move || {
        section.track();
        match ui.place.with_untracked(Place::section) {
            Section::Round => empty(Section::Round, en::page::ROUND_EMPTY, en::page::ROUND_HOW),
            Section::Load => empty(Section::Load, en::page::LOAD_EMPTY, en::page::LOAD_HOW),
            Section::Bench => bench::view::page(ui),
            Section::Book => empty(Section::Book, en::page::BOOK_EMPTY, en::page::BOOK_HOW),
        }
    }
}

/// The heading of a place. One a page; takes the focus when the place changes.
pub fn heading(text: &'static str) -> impl IntoView {
    view! { <h1 class="place-name" tabindex="-1">{text}</h1> }
}

/// A place with nothing in it says so and shows the way.
fn empty(section: Section, says: &'static str, how: &'static str) -> AnyView {
    view! {
        {heading(en::section(section))}
        <div class="card">
            <p class="lead">{says}</p>
            <p>{how}</p>
            <p class="keys">{parts::key::link(en::page::TO_BENCH, &Place::Bench(None))}</p>
        </div>
    }
    .into_any()
}

/// Messages above the bar: at most one thing at a time wants the thumb.
fn messages(ui: Ui) -> impl IntoView {
    use super::edge::worker::Offline;
    let quiet = move || ui.worker.state() == Offline::Quiet;
    view! {
        <div class="messages" role="status">
            {move || match ui.worker.state() {
                Offline::Quiet => ().into_any(),
                Offline::Ready => {
                    view! {
                        <p class="message">
                            <span>{en::READY_OFFLINE}</span>
                            {Key::new(en::GOT_IT, move || ui.worker.hush()).view()}
                        </p>
                    }
                        .into_any()
                }
                Offline::NewVersion => {
                    view! {
                        <p class="message">
                            <span>{en::NEW_VERSION}</span>
                            {Key::new(en::USE_IT_NOW, move || ui.worker.use_new_version()).view()}
                        </p>
                    }
                        .into_any()
                }
            }}
            {move || {
                let said = ui.said.get();
                (quiet() && !said.is_empty())
                    .then(|| {
                        view! {
                            <p class="message">
                                <span>{said}</span>
                                {Key::new(en::GOT_IT, move || ui.said.set(String::new())).view()}
                            </p>
                        }
                    })
            }}
        </div>
    }
}

/// The bar at the thumb: one key a section, all from one list.
fn bar(ui: Ui) -> impl IntoView {
    let keys = Section::ALL.map(|section| {
        let current = move || (ui.place.with(Place::section) == section).then_some("page");
        view! {
            <li>
                <a class="bar-key" href=section.place().hash() aria-current=current>
                    {icon::section(section)}
                    <span>{en::section(section)}</span>
                </a>
            </li>
        }
    });
    view! { <nav class="bar" aria-label=en::PLACES><ul>{keys.into_iter().collect_view()}</ul></nav> }
}
