//! What stands around every place: the head, the bar at the thumb, the messages above it.

use super::cabinet::NotSaved;
use super::edge::{self, listen, typing};
use super::el::{Bit, El, el, live};
use super::parts::icon;
use super::parts::key::Key;
use super::place::{Place, Section};
use super::prefs::{Scheme, TextSize};
use super::records::{Home, Records};
use super::settings::settings;
use super::state::Ui;
use super::wording::en;
use super::wording::en_notices::{WRITE_AGAIN, why};
use super::{beetle, bench, ledger, load, notices, round};
use crate::app::graph::{Memo, RwSignal, after, effect, untrack};
use js_sys::{Function, Reflect};
use wasm_bindgen::prelude::*;
use web_sys::{Event, HtmlElement};

/// In milliseconds: a new version that waits for a form looks again after this time.
const AGAIN: u64 = 1_000;

/// The whole page.
pub fn frame() -> Bit {
    let records = Records::provide();
    let start = if records.book.with_untracked(|book| book.log().is_empty()) {
        Place::Bench(None)
    } else {
        Place::Round
    };
    let ui = Ui::provide(here().unwrap_or(start));
    let walk = round::Walk::provide(ui, records);
    ui.on_keep.set(Some(std::rc::Rc::new(move |plan| round::keep_yard(ui, walk, plan))));
    follow_address(ui, records);
    follow_prefs(ui);
    let alone = only_here(records);
    super::record::kept::watch(ui, records);
    typing::follow(move || matches!(ui.place.with_untracked(Place::section), Section::Bench | Section::Load));
    guard(ui, alone);
    let settings_open = RwSignal::new(false);
    let head = el("header")
        .class("head")
        .kid(
            el("div")
                .class("head-words")
                .kid(el("p").class("head-name").text(en::NAME))
                .kid(el("p").class("head-day").live_text(move || en::date(ui.today.get()))),
        )
        .kid(
            el("button")
                .attr("type", "button")
                .class("head-key")
                .text(en::page::SETTINGS)
                .press(move || settings_open.set(true)),
        );
    let foot = el("div")
        .live_class(round::foot_class(ui, walk))
        .kid(messages(ui, records, alone))
        .kid(round::in_foot(ui, walk))
        .kid(bar(ui));
    Bit::Many(vec![
        head.into(),
        settings(ui, settings_open).into(),
        el("main").class("main").kid(notices::notices(ui)).kid(place_view(ui)).into(),
        foot.into(),
    ])
}

/// Something the keeper wrote is in the memory of this page and nowhere else.
fn only_here(records: Records) -> Memo<bool> {
    Memo::new(move || {
        let forgotten = records.home.with(|home| matches!(home, Home::Forgotten(_)));
        records.unsaved.with(Option::is_some)
            || forgotten && records.book.with(|book| book.log().entries().any(|entry| !entry.is_demo()))
    })
}

/// Nothing loads the page anew over what is here `alone` or half typed, and whoever leaves the former is asked.
fn guard(ui: Ui, alone: Memo<bool>) {
    let ask = Closure::<dyn FnMut(Event)>::new(|event: Event| {
        event.prevent_default();
        // Some browsers ask for this alone. None shows it.
        let _ = Reflect::set(&event, &"returnValue".into(), &"-".into());
    });
    let ask: Function = ask.into_js_value().unchecked_into();
    effect(move || {
        let (held, taken_over) = (alone.get(), ui.worker.taken_over());
        let Some(window) = edge::window() else { return };
        // Not set for good: browsers keep no page for their back key that asks.
        window.set_onbeforeunload(held.then_some(&ask));
        if taken_over && !held {
            load_anew(ui, alone);
        }
    });
}

/// Loads the page anew once nothing is lost by it.
fn load_anew(ui: Ui, alone: Memo<bool>) {
    // What was held since then loads it anew when it is kept.
    if alone.get_untracked() {
        return;
    }
    if half_typed(ui) {
        after(AGAIN, move || load_anew(ui, alone));
    } else if let Some(window) = edge::window() {
        let _ = window.location().reload();
    }
}

/// A form is half filled in. That of a kind waits in memory even while another place is shown.
fn half_typed(ui: Ui) -> bool {
    typing::any() || ui.kind_draft.with_value(Option::is_some)
}

/// The place the address names.
fn here() -> Option<Place> {
    let hash = edge::window()?.location().hash().ok()?;
    Place::parse(&hash)
}

/// Follows the address, so that links and the back key need no code of their own.
fn follow_address(ui: Ui, records: Records) {
    let Some(window) = edge::window() else { return };
    if here().is_none() {
        name_place(ui);
    }
    listen(&window, "hashchange", move |_| {
        let Some(place) = here() else {
            name_place(ui);
            return;
        };
        let before = ui.place.get_untracked();
        if place == before {
            return;
        }
        // What was said belongs to the place where it was said.
        if before.section() != place.section() {
            ui.said.set(String::new());
            ui.worker.went_on();
            records.wanted.renew(false);
        }
        if matches!(place, Place::Write(..)) && !matches!(before, Place::Write(..)) {
            ui.write_back.set_value(Some(before.clone()));
        }
        let within_bench = matches!((&before, &place), (Place::Bench(_), Place::Bench(_)));
        // A part that goes while it has the focus makes the browser lay out the whole page first: now there is nothing to lay
        // out, a moment later there is.
        if !within_bench && let Some(part) = find("main :focus") {
            let _ = part.blur();
        }
        ui.place.set(place);
        // Within the Bench the sum that was jumped to takes the focus itself.
        if !within_bench {
            edge::after_paint(focus_heading);
        }
    });
    let section = Memo::new(move || ui.place.get().section());
    effect(move || {
        let title = en::title(en::section(section.get()));
        // The browser tells its own window of it, which takes longer than some places.
        edge::after_paint(move || {
            if let Some(document) = edge::document() {
                document.set_title(&title);
            }
        });
    });
}

/// Puts the place into an address that names none, in its stead: the back key then finds every place again.
fn name_place(ui: Ui) {
    if let Some(window) = edge::window() {
        let _ = window.location().replace(&ui.place.with_untracked(Place::hash));
    }
}

/// The first element of the page that `css` fits.
pub fn find(css: &str) -> Option<HtmlElement> {
    let found = edge::document()?.query_selector(css).ok()?;
    found?.dyn_into().ok()
}

/// Puts the focus on the first element that `css` fits; true when there is one.
pub fn focus(css: &str) -> bool {
    find(css).is_some_and(|found| found.focus().is_ok())
}

/// Puts the focus on the heading of the place, so that a screen reader says where it is.
pub fn focus_heading() {
    if focus("main h1")
        && let Some(window) = edge::window()
    {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Writes the settings where the style reads them.
fn follow_prefs(ui: Ui) {
    effect(move || {
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
fn place_view(ui: Ui) -> Bit {
    let section = Memo::new(move || ui.place.with(Place::section) as u8);
    // The form of a record belongs to no section: it is shown in that of the page it was opened from.
    let form = Memo::new(move || {
        ui.place
            .with(|place| if let Place::Write(blank, of) = place { Some((*blank, of.clone())) } else { None })
    });
    live(move || {
        // Read, not only tracked: a memo nobody reads follows nothing.
        let _ = section.get();
        if let Some((blank, of)) = form.get() {
            return untrack(|| {
                super::record::form::view(ui, super::records::Records::get(), blank, of.as_deref())
            });
        }
        let place: Bit = untrack(|| match ui.place.with_untracked(Place::section) {
            Section::Round => round::view(ui),
            Section::Load => load::page::page(ui).into(),
            Section::Beetle => beetle::page::page(ui).into(),
            Section::Bench => bench::view::page(ui).into(),
            Section::Book => ledger::page::page(ui).into(),
        });
        place
    })
}

/// The heading of a place. One a page; takes the focus when the place changes.
pub fn heading(text: &str) -> El {
    el("h1").class("place-name").attr("tabindex", "-1").text(text)
}

/// Messages above the bar: at most one thing at a time wants the thumb.
fn messages(ui: Ui, records: Records, held: Memo<bool>) -> El {
    use super::edge::worker::Offline;
    let message =
        |text: &str, key: Key| Bit::from(el("p").class("message").kid(el("span").text(text)).kid(key.view()));
    // What was just said comes before what has time.
    el("div").class("messages").attr("role", "status").kid(live(move || {
        if records.wanted.get() {
            let again = Key::new(WRITE_AGAIN, move || _ = records.set_only_shows(false));
            return message(why(&NotSaved::OnlyShows), again.mark("wanted-write-again"));
        }
        let said = ui.said.get();
        if !said.is_empty() {
            return message(&said, Key::new(en::GOT_IT, move || ui.said.set(String::new())));
        }
        match ui.worker.state() {
            Offline::Quiet => Bit::Nothing,
            Offline::Ready => message(en::READY_OFFLINE, Key::new(en::GOT_IT, move || ui.worker.hush())),
            // It can wait, and what is only here cannot.
            Offline::NewVersion if held.get() => Bit::Nothing,
            Offline::NewVersion => {
                let use_it = move || {
                    if half_typed(ui) {
                        ui.said.set(en::NEW_VERSION_WAITS.to_owned());
                    }
                    ui.worker.use_new_version();
                };
                let key = Key::new(en::USE_IT_NOW, use_it).mark("update-now");
                el("div").test_id("update-bar").kid(message(en::NEW_VERSION, key)).into()
            }
        }
    }))
}

/// The bar at the thumb: one key a section, all from one list.
fn bar(ui: Ui) -> El {
    let mut keys = el("ul");
    for section in Section::ALL {
        let name = en::section(section);
        let current = move || (ui.place.with(Place::section) == section).then(|| "page".to_owned());
        let key = el("a")
            .class("bar-key")
            .attr("href", &section.place().hash())
            .test_id(&["nav-", &name.to_ascii_lowercase()].concat())
            .live_attr("aria-current", current)
            .kid(icon::section(section))
            .kid(el("span").text(name));
        keys = keys.kid(el("li").kid(key));
    }
    // On a screen so low that the bar would take a quarter of it, a key of one line brings it up.
    let open = RwSignal::new(false);
    let more = el("button")
        .attr("type", "button")
        .class("bar-more")
        .test_id("places")
        .live_attr("aria-expanded", move || round::form::yes_no(open.get()))
        .live_text(move || en::places(ui.place.with(Place::section)))
        .press(move || open.update(|open| *open = !*open));
    el("nav")
        .live_class(move || if open.get() { "bar bar-open" } else { "bar" })
        .attr("aria-label", en::PLACES)
        .kid(more)
        .kid(keys.press(move || open.renew(false)))
}
