//! The history, as it is seen.

use super::history::{self, Counts, Line, PAGE};
use super::words;
use crate::almanac::day::Day;
use crate::app::edge;
use crate::app::frame::heading;
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_book::history as w;
use crate::book::Book;
use crate::book::entry::What;
use crate::book::id::{EntryId, ThingId};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// What every line can reach.
#[derive(Clone, Copy)]
struct Desk {
    ui: Ui,
    records: Records,
    /// The line whose keys are shown.
    open: RwSignal<Option<EntryId>>,
}

/// The history of everything, or of the yard or hive with the id `of`.
pub(super) fn view(ui: Ui, records: Records, of: Option<&str>) -> AnyView {
    let of = of.and_then(|of| ThingId::parse(of).ok());
    let desk = Desk { ui, records, open: RwSignal::new(None) };
    let shown = RwSignal::new(PAGE);
    let chosen = of.clone();
    let list = move || {
        records.book.with(|book| {
            let all = history::lines(book, of.as_ref());
            let part = all.get(..shown.get().min(all.len())).unwrap_or(&all);
            let today = ui.today.get();
            let days =
                history::days(part).into_iter().map(|(day, lines)| day_view(desk, book, day, today, lines));
            let left = all.len() > part.len();
            view! {
                <p class="small">{w::shown(part.len(), all.len())}</p>
                {all.is_empty().then(|| view! { <p>{w::NONE}</p> })}
                {days.collect_view()}
                {left
                    .then(|| {
                        let more = move || shown.update(|shown| *shown += PAGE);
                        view! { <p class="keys">{Key::new(w::MORE, more).view()}</p> }
                    })}
            }
            .into_any()
        })
    };
    view! {
        <p class="back">{link(en::section(Section::Book), &Place::Book)}</p>
        {heading(w::TITLE)}
        {filter(ui, records, chosen)}
        <p class="small">{w::HOW}</p>
        {list}
    }
    .into_any()
}

/// Which yard, and of it which hive. The choice is in the address, so that the back key undoes it.
fn filter(ui: Ui, records: Records, of: Option<ThingId>) -> AnyView {
    let (yards, hives, yard) = records.book.with_untracked(|book| {
        let standing = book.standing();
        let yard = of.as_ref().and_then(|of| {
            let of_hive = standing.hives.get(of).map(|hive| &hive.yard);
            of_hive.or_else(|| standing.yards.get_key_value(of).map(|(id, _)| id)).cloned()
        });
        let yards: Vec<(String, String)> =
            standing.yards.iter().map(|(id, now)| (id.to_string(), words::isolated(&now.name))).collect();
        let hives: Vec<(String, String)> = yard
            .iter()
            .flat_map(|yard| standing.hives_of(yard, false))
            .map(|(id, _)| (id.to_string(), words::hive_name(book, id)))
            .collect();
        (yards, hives, yard)
    });
    let of = of.map(|of| of.to_string()).unwrap_or_default();
    let yard = yard.map(|yard| yard.to_string()).unwrap_or_default();
    let choose = move |id: String| ui.go(&Place::History((!id.is_empty()).then_some(id)));
    let hive_chooser = (!yard.is_empty())
        .then(|| chooser("history-hive", w::HIVE, (yard.clone(), w::WHOLE_YARD), hives, &of, choose));
    view! {
        <div class="fields">
            {chooser("history-yard", w::YARD, (String::new(), w::EVERYTHING), yards, &yard, choose)}
            {hive_chooser}
        </div>
    }
    .into_any()
}

fn chooser(
    id: &'static str,
    label: &'static str,
    all: (String, &'static str),
    rest: Vec<(String, String)>,
    chosen: &str,
    choose: impl Fn(String) + 'static,
) -> AnyView {
    let first = (all.0, all.1.to_owned());
    let options = std::iter::once(first).chain(rest).map(|(value, name)| {
        let selected = value == chosen;
        view! { <option value=value selected=selected>{name}</option> }
    });
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <select id=id autocomplete="off" on:change=move |event| choose(event_target_value(&event))>
                {options.collect_view()}
            </select>
        </div>
    }
    .into_any()
}

fn day_view(desk: Desk, book: &Book, day: Day, today: Day, lines: &[Line<'_>]) -> AnyView {
    let several = book.standing().yards.len() > 1;
    let items: Vec<AnyView> = lines.iter().map(|line| line_view(desk, book, line, several)).collect();
    view! {
        <section class="day">
            <h2>{en::date(day)} <span class="day-ago">{en::relative(day.days_since(today))}</span></h2>
            <ul class="lines">{items}</ul>
        </section>
    }
    .into_any()
}

fn line_view(desk: Desk, book: &Book, line: &Line<'_>, several: bool) -> AnyView {
    let entry = line.entry;
    let said = words::entry(book, entry);
    let mut small = match line.counts {
        Counts::Yes => String::new(),
        Counts::Struck { .. } => w::STRUCK.to_owned(),
        Counts::Corrected => w::CORRECTED.to_owned(),
    };
    if several && let Some(yard) = &entry.yard {
        small.push_str(&words::yard_name(book, yard));
        small.push_str(", ");
    }
    small.push_str(&w::written(entry.day, entry.at, entry.by.as_deref().map(words::isolated).as_deref()));
    if line.together > 1 {
        small.push_str(", ");
        small.push_str(&w::together(line.together));
    }
    let text = match &line.counts {
        Counts::Yes => view! { <span>{said}</span> }.into_any(),
        _ => view! { <del>{said}</del> }.into_any(),
    };
    let small = view! { <span class="line-small">{small}</span> };
    let body = match &line.counts {
        Counts::Yes => plain_line(desk, line, text, small.into_any()),
        Counts::Struck { by, lines } => {
            let (by, id) = (by.clone(), entry.id.clone());
            let label = if *lines > 1 { w::back_all(*lines) } else { w::BACK.to_owned() };
            let back = move || strike(desk, &id, std::slice::from_ref(&by), w::BACK_SAID);
            view! {
                <p class="line-said" id=line_id(&entry.id) tabindex="-1">{text} {small}</p>
                <p class="keys">{Key::new(label, back).mark("history-back").view()}</p>
            }
            .into_any()
        }
        Counts::Corrected => view! { <p class="line-said">{text} {small}</p> }.into_any(),
    };
    view! { <li data-testid="history-line">{body}</li> }.into_any()
}

/// A line that counts: the line itself opens its keys, so that no knuckle strikes anything out.
fn plain_line(desk: Desk, line: &Line<'_>, text: AnyView, small: AnyView) -> AnyView {
    let (id, together) = (line.entry.id.clone(), line.together);
    let brings = matches!(
        line.entry.what,
        What::Yard { .. } | What::Hive { .. } | What::Kind(_) | What::BoxesOn { .. }
    );
    let own = id.clone();
    let open = Memo::new(move |_| desk.open.with(|open| open.as_ref() == Some(&own)));
    let toggle = {
        let id = id.clone();
        move |_| desk.open.set((!open.get_untracked()).then(|| id.clone()))
    };
    let dom_id = line_id(&id);
    let keys = move || {
        open.get().then(|| {
            let (one, all) = (id.clone(), id.clone());
            let strike_one = move || strike(desk, &one, std::slice::from_ref(&one), w::STRUCK_SAID);
            let strike_all = move || {
                let together = desk.records.book.with_untracked(|book| book.together(&all));
                strike(desk, &all, &together, w::STRUCK_SAID);
            };
            view! {
                <div class="line-keys">
                    {brings.then(|| Notice::caution(w::BRINGS).view())}
                    <p class="keys">
                        {Key::new(w::STRIKE, strike_one).alarm().mark("history-strike").view()}
                        {(together > 1)
                            .then(|| {
                                Key::new(w::undo_all(together), strike_all).alarm().mark("history-undo-all").view()
                            })}
                    </p>
                </div>
            }
        })
    };
    view! {
        <button
            type="button"
            class="line-key"
            id=dom_id
            aria-expanded=move || if open.get() { "true" } else { "false" }
            on:click=toggle
        >
            <span class="line-said">{text} {small}</span>
            <span class="line-mark" aria-hidden="true">{move || if open.get() { "−" } else { "+" }}</span>
        </button>
        {keys}
    }
    .into_any()
}

fn line_id(id: &EntryId) -> String {
    ["line-", &id.to_string()].concat()
}

/// Strikes lines out and puts the focus back on the line it was on: the list is drawn anew.
fn strike(desk: Desk, line: &EntryId, entries: &[EntryId], said: &str) {
    if desk.records.strike(entries, said).is_err() {
        return;
    }
    desk.open.set(None);
    desk.ui.said.set(said.to_owned());
    let id = line_id(line);
    edge::after_paint(move || {
        let line = edge::document().and_then(|document| document.get_element_by_id(&id));
        if let Some(line) = line.and_then(|line| line.dyn_into::<web_sys::HtmlElement>().ok()) {
            let _ = line.focus();
        }
    });
}
