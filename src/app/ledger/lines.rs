//! The history, as it is seen.

use super::history::{self, Counts, Line, PAGE};
use super::{safety, words};
use crate::almanac::day::Day;
use crate::app::edge;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::{focus, heading};
use crate::app::graph::{Memo, RwSignal};
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_book::{self, history as w};
use crate::book::Book;
use crate::book::entry::What;
use crate::book::id::{EntryId, ThingId};
use leptos::prelude::event_target_value;

/// What every line can reach.
#[derive(Clone, Copy)]
struct Desk {
    records: Records,
    /// The line whose keys are shown.
    open: RwSignal<Option<EntryId>>,
}

/// The history of everything, or of the yard or hive with the id `of`.
pub(super) fn view(ui: Ui, records: Records, of: Option<&str>) -> Bit {
    let of = of.and_then(|of| ThingId::parse(of).ok());
    let chosen = of.clone();
    Bit::Many(vec![
        el("p").class("back").kid(link(en::section(Section::Book), &Place::Book)).into(),
        heading(w::TITLE).into(),
        filter(ui, records, chosen).into(),
        el("p").class("small").text(w::HOW).into(),
        list(ui, records, of),
    ])
}

/// The lines alone, for a page that is about the yard or hive `of` anyway.
pub fn list(ui: Ui, records: Records, of: Option<ThingId>) -> Bit {
    let desk = Desk { records, open: RwSignal::new(None) };
    let shown = RwSignal::new(PAGE);
    live(move || {
        let (shown_now, today) = (shown.get(), ui.today.get());
        records.book.with(|book| {
            let all = history::lines(book, of.as_ref());
            let part = all.get(..shown_now).unwrap_or(&all);
            // The number on the key that leads here; what is struck out or left out of sight is told beside it.
            let said = if of.is_none() {
                en_book::own_entries(safety::own_lines(book).count(), safety::own_strikes(book))
            } else {
                w::shown(all.len(), all.len())
            };
            let mut small = el("p").class("small").text(&said);
            if part.len() < all.len() {
                small = small.text("; ").text(&w::shown(part.len(), all.len()));
            }
            let mut bits: Vec<Bit> = vec![small.into()];
            if all.is_empty() {
                bits.push(el("p").text(w::NONE).into());
            }
            for lines in history::days(part) {
                bits.push(day_view(desk, book, today, lines).into());
            }
            if all.len() > part.len() {
                let more =
                    Key::new(w::MORE, move || shown.update(|shown| *shown += PAGE)).mark("history-more");
                bits.push(el("p").class("keys").kid(more.view()).into());
            }
            bits
        })
    })
}

/// Which yard, and of it which hive. The choice is in the address, so that the back key undoes it.
fn filter(ui: Ui, records: Records, of: Option<ThingId>) -> El {
    let (yards, hives, yard) = records.book.with_untracked(|book| {
        let standing = book.standing();
        let yard = of.as_ref().and_then(|of| {
            let of_hive = standing.hives.get(of).map(|hive| &hive.yard);
            of_hive.or_else(|| standing.yards.get_key_value(of).map(|(id, _)| id)).cloned()
        });
        let mut yards = vec![(String::new(), w::EVERYTHING.to_owned())];
        for (id, now) in &standing.yards {
            yards.push((id.to_string(), words::isolated(&now.name)));
        }
        let mut hives = Vec::new();
        if let Some(yard) = &yard {
            hives.push((yard.to_string(), w::WHOLE_YARD.to_owned()));
            for (id, _) in standing.hives_of(yard, false) {
                hives.push((id.to_string(), words::hive_name(book, id)));
            }
        }
        (yards, hives, yard)
    });
    let of = of.map(|of| of.to_string()).unwrap_or_default();
    let yard = yard.map(|yard| yard.to_string()).unwrap_or_default();
    let hive_chooser = (!hives.is_empty()).then(|| chooser(ui, "history-hive", w::HIVE, &hives, &of));
    el("div").class("fields").kid(chooser(ui, "history-yard", w::YARD, &yards, &yard)).kid(hive_chooser)
}

fn chooser(ui: Ui, id: &str, label: &str, all: &[(String, String)], chosen: &str) -> El {
    let mut select = el("select").attr("id", id).attr("autocomplete", "off");
    for (value, name) in all {
        let mut option = el("option").attr("value", value).text(name);
        if value == chosen {
            option = option.attr("selected", "");
        }
        select = select.kid(option);
    }
    let select = select.on("change", move |event| {
        let id = event_target_value(&event);
        ui.go(&Place::History((!id.is_empty()).then_some(id)));
    });
    el("div").class("field field-wide").kid(el("label").attr("for", id).text(label)).kid(select)
}

fn day_view(desk: Desk, book: &Book, today: Day, lines: &[Line<'_>]) -> El {
    let several = book.standing().yards.len() > 1;
    let mut head = el("h2");
    let mut list = el("ul").class("lines");
    for (nth, line) in lines.iter().enumerate() {
        if nth == 0 {
            let day = line.entry.day;
            let ago = el("span").class("day-ago").text(&en::relative(day.days_since(today)));
            head = head.text(&en::date(day)).text(" ").kid(ago);
        }
        list = list.kid(line_view(desk, book, line, several));
    }
    el("section").class("day").kid(head).kid(list)
}

fn line_view(desk: Desk, book: &Book, line: &Line<'_>, several: bool) -> El {
    let entry = line.entry;
    let said = words::entry(book, entry);
    let (tag, state) = match line.counts {
        Counts::Yes => ("span", ""),
        Counts::Struck { .. } => ("del", w::STRUCK),
        Counts::Corrected => ("del", w::CORRECTED),
    };
    let mut small = el("span").class("line-small").text(state);
    if several && let Some(yard) = &entry.yard {
        small = small.text(&words::yard_name(book, yard)).text(", ");
    }
    let by = entry.by.as_deref().map(words::isolated);
    small = small.text(&w::written(entry.day, entry.at, by.as_deref()));
    if line.together > 1 {
        small = small.text(", ").text(&w::together(line.together));
    }
    let text = el(tag).text(&said);
    let item = el("li").test_id("history-line");
    if line.counts == Counts::Yes {
        return plain_line(desk, line, item, text, small);
    }
    let struck = el("p").class("line-said").attr("id", &line_id(&entry.id)).attr("tabindex", "-1");
    let item = item.kid(struck.kid(text).kid(small));
    let Counts::Struck { by, lines } = &line.counts else { return item };
    let (by, id) = (by.clone(), entry.id.clone());
    let label = if *lines > 1 { w::back_all(*lines) } else { w::BACK.to_owned() };
    let back = Key::new(label, move || strike(desk, &id, std::slice::from_ref(&by), w::BACK_SAID));
    item.kid(el("p").class("keys").kid(back.mark("history-back").view()))
}

/// A line that counts: the line itself opens its keys, so that no knuckle strikes anything out.
fn plain_line(desk: Desk, line: &Line<'_>, item: El, text: El, small: El) -> El {
    let (id, together) = (line.entry.id.clone(), line.together);
    let brings = matches!(
        line.entry.what,
        What::Yard { .. } | What::Hive { .. } | What::Kind(_) | What::BoxesOn { .. }
    );
    let own = id.clone();
    let open = Memo::new(move || desk.open.with(|open| open.as_ref() == Some(&own)));
    let pressed = id.clone();
    let key = el("button")
        .attr("type", "button")
        .class("line-key")
        .attr("id", &line_id(&id))
        .live_attr("aria-expanded", move || Some(if open.get() { "true" } else { "false" }.to_owned()))
        .press(move || desk.open.set((!open.get_untracked()).then(|| pressed.clone())))
        .kid(el("span").class("line-said").kid(text).kid(small))
        .kid(
            el("span")
                .class("line-mark")
                .attr("aria-hidden", "true")
                .live_text(move || if open.get() { "−" } else { "+" }.to_owned()),
        );
    item.kid(key).kid(live(move || open.get().then(|| line_keys(desk, &id, together, brings))))
}

fn line_keys(desk: Desk, id: &EntryId, together: usize, brings: bool) -> El {
    let (one, all) = (id.clone(), id.clone());
    let strike_one = move || strike(desk, &one, std::slice::from_ref(&one), w::STRUCK_SAID);
    let strike_all = move || {
        let together = desk.records.book.with_untracked(|book| book.together(&all));
        strike(desk, &all, &together, w::STRUCK_SAID);
    };
    let all = (together > 1)
        .then(|| Key::new(w::undo_all(together), strike_all).alarm().mark("history-undo-all").view());
    let keys = el("p")
        .class("keys")
        .kid(Key::new(w::STRIKE, strike_one).alarm().mark("history-strike").view())
        .kid(all);
    el("div").class("line-keys").kid(brings.then(|| Notice::caution(w::BRINGS).view())).kid(keys)
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
    // Names of entries are letters, digits and hyphens, which a selector takes as they are.
    let line = ["#", &line_id(line)].concat();
    edge::after_paint(move || {
        focus(&line);
    });
}
