//! The history, as it is seen.

use super::history::{self, Counts, Line, PAGE, Step, Strike};
use super::{doubts, edit, edit_form, safety, shifts, words};
use crate::almanac::day::Day;
use crate::app::edge;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::{focus, heading};
use crate::app::graph::{Memo, RwSignal, StoredValue, untrack};
use crate::app::kinds;
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::records::{Records, Stop};
use crate::app::round::form::refused_line;
use crate::app::round::said;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_book::{self, history as w};
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::{EntryId, ThingId};
use crate::book::write::Refusal;
use leptos::prelude::event_target_value;

/// What every line can reach.
#[derive(Clone, Copy)]
pub(super) struct Desk {
    pub(super) records: Records,
    pub(super) today: RwSignal<Day>,
    /// The line whose keys or fields are shown.
    open: RwSignal<Option<EntryId>>,
    form: edit_form::Form,
    /// Why the last key did nothing.
    stop: RwSignal<String>,
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
    let desk = Desk {
        records,
        today: ui.today,
        open: RwSignal::new(None),
        form: edit_form::Form::new(records),
        stop: RwSignal::new(String::new()),
    };
    let shown = RwSignal::new(PAGE);
    let stop = Memo::new(move || desk.stop.with(|stop| (!stop.is_empty()).then(|| stop.clone())));
    let all = live(move || {
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
    });
    Bit::Many(vec![refused_line(stop).into(), all])
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
    let mut small = el("span").class("line-small");
    small = match line.counts {
        Counts::Yes => small,
        Counts::Struck { .. } => small.text(w::STRUCK),
        Counts::Corrected => small.text(w::CORRECTED),
    };
    if several && let Some(yard) = &entry.yard {
        small = small.text(&words::yard_name(book, yard)).text(", ");
    }
    small = small.text(&desk.written(entry.day, entry));
    if line.together > 1 {
        small = small.text(", ").text(&w::together(line.together));
    }
    let item = el("li").test_id("history-line");
    let said = words::entry(book, entry);
    // What stands in for it has the keys, and the name.
    if line.counts == Counts::Corrected {
        return item.kid(el("p").class("line-said").kid(el("del").text(&said)).kid(small));
    }
    let Counts::Struck { by, lines } = &line.counts else {
        let said = el("span").class("line-said").kid(el("span").text(&said)).kid(small);
        let item = item.kid(opener(desk, line.root, said)).kid(trail(desk, book, line));
        let item = item.kid(doubts::view(desk, book, line));
        return item.kid(opened(desk, line));
    };
    let struck = el("p").class("line-said").attr("id", &line_id(line.root)).attr("tabindex", "-1");
    let (by, id) = (by.clone(), line.root.clone());
    let label = if *lines > 1 { w::back_all(*lines) } else { w::BACK.to_owned() };
    let back = Key::new(label, move || strike(desk, &id, std::slice::from_ref(&by), w::BACK_SAID));
    let item = item.kid(struck.kid(el("del").text(&said)).kid(small)).kid(trail(desk, book, line));
    item.kid(el("p").class("keys").kid(back.mark("history-back").view())).kid(opened_form(desk, line.root))
}

/// What the line said before, who struck it and who brought it back, in order.
fn trail(desk: Desk, book: &Book, line: &Line<'_>) -> Option<El> {
    let mut list = el("ul").class("line-trail small").test_id("history-trail");
    for step in &line.trail {
        let entry = step.entry();
        let written = desk.written(line.entry.day, entry);
        let mut item = el("li");
        item = match step {
            Step::Strike(_, Strike::Out) => item.text(w::WAS_STRUCK),
            Step::Strike(_, Strike::Back) => item.text(w::WAS_BACK),
            Step::Version(_, struck) => {
                let mut said = words::entry(book, entry);
                if entry.day != line.entry.day {
                    said = [&said, ", ", &en::date(entry.day)].concat();
                }
                let lead = if struck.is_some() { w::WAS_NOT } else { w::WAS };
                item.text(lead).kid(el(if struck.is_some() { "del" } else { "span" }).text(&said))
            }
        };
        item = item.text(", ").text(&written);
        // Behind a correction that counts in spite of a strike there is nothing to bring back.
        if let Step::Version(_, Some(by)) = step
            && !line.revived
        {
            let (id, by) = (line.root.clone(), by.clone());
            let back = Key::new(w::BACK, move || strike(desk, &id, std::slice::from_ref(&by), w::BACK_SAID));
            item = item.kid(el("p").class("keys").kid(back.mark("version-back").view()));
        }
        list = list.kid(item);
    }
    (!line.trail.is_empty()).then_some(list)
}

/// The line itself opens its keys, so that no knuckle strikes anything out.
fn opener(desk: Desk, root: &EntryId, said: El) -> El {
    let (own, pressed) = (root.clone(), root.clone());
    let open = Memo::new(move || desk.open.with(|open| open.as_ref() == Some(&own)));
    let press = move || {
        if desk.form.waits() {
            return;
        }
        desk.form.shut();
        desk.open.set((!open.get_untracked()).then(|| pressed.clone()));
    };
    el("button")
        .attr("type", "button")
        .class("line-key")
        .attr("id", &line_id(root))
        .live_attr("aria-expanded", move || Some(if open.get() { "true" } else { "false" }.to_owned()))
        .press(press)
        .kid(said)
        .kid(
            el("span")
                .class("line-mark")
                .attr("aria-hidden", "true")
                .live_text(move || if open.get() { "−" } else { "+" }.to_owned()),
        )
}

/// The keys of a line that counts, or its fields once they are asked for.
fn opened(desk: Desk, line: &Line<'_>) -> Bit {
    let entry = line.entry;
    let brings =
        matches!(entry.what, What::Yard { .. } | What::Hive { .. } | What::Kind(_) | What::BoxesOn { .. });
    let corrected = entry.replaces.is_some() && !line.orphan && !line.revived;
    let fields = edit::fields(entry).is_some();
    let blank = if let What::Record(record) = &entry.what { Some(record.blank) } else { None };
    let kind = !entry.is_demo() && edit::kind(entry).is_some();
    let (root, id, together) = (line.root.clone(), entry.id.clone(), line.together);
    let own = root.clone();
    let state = Memo::new(move || {
        let open = desk.open.with(|open| open.as_ref() == Some(&own));
        (open, open && desk.form.is_open())
    });
    live(move || match state.get() {
        (false, _) => Bit::Nothing,
        (true, true) => untrack(|| form(desk, &root)),
        (true, false) => untrack(|| {
            let mut keys = el("p").class("keys");
            if let Some(blank) = blank {
                let place = Place::Write(blank, Some(id.to_string()));
                keys = keys.kid(link(w::EDIT, &place).test_id("history-edit"));
            }
            if kind {
                let place = Place::Kind(kinds::of_line(&id));
                keys = keys.kid(link(w::EDIT, &place).test_id("history-edit"));
            }
            if fields {
                let id = id.clone();
                keys = keys.kid(Key::new(w::EDIT, move || desk.form.open(&id)).mark("history-edit").view());
            }
            if corrected {
                let (id, root) = (id.clone(), root.clone());
                let back = move || {
                    let entries = desk.records.book.with_untracked(|book| book.decision(&id));
                    strike(desk, &root, &entries, w::TAKEN_BACK);
                };
                keys = keys.kid(Key::new(w::TAKE_BACK, back).mark("history-take-back").view());
            }
            let (one, own) = (id.clone(), root.clone());
            let strike_one =
                move || strike(desk, &own, &desk.versions(std::slice::from_ref(&one)), w::STRUCK_SAID);
            keys = keys.kid(Key::new(w::STRIKE, strike_one).alarm().mark("history-strike").view());
            if together > 1 {
                let (all, own) = (id.clone(), root.clone());
                let strike_all = move || {
                    let together = desk.records.book.with_untracked(|book| book.together(&all));
                    strike(desk, &own, &desk.versions(&together), w::STRUCK_SAID);
                };
                let key = Key::new(w::undo_all(together), strike_all).alarm();
                keys = keys.kid(key.mark("history-undo-all").view());
            }
            el("div")
                .class("line-keys")
                .kid(brings.then(|| Notice::caution(w::BRINGS).view()))
                .kid(strike_shifts(desk, &id))
                .kid(keys)
                .into()
        }),
    })
}

/// The open fields of a line that was struck out elsewhere meanwhile.
fn opened_form(desk: Desk, root: &EntryId) -> Bit {
    let root = root.clone();
    let own = root.clone();
    let open = Memo::new(move || desk.form.is_open() && desk.open.with(|open| open.as_ref() == Some(&own)));
    live(move || open.get().then(|| untrack(|| form(desk, &root))))
}

fn form(desk: Desk, root: &EntryId) -> Bit {
    let root = StoredValue::new(root.clone());
    let shut = move || {
        desk.open.set(None);
        root.with_value(to_line);
    };
    el("div").class("line-keys").kid(edit_form::view(desk.form, shut)).into()
}

/// What striking the line out would do to due dates, said beside the key that does it. The list has been drawn by then:
/// the whole book is read anew for it.
fn strike_shifts(desk: Desk, id: &EntryId) -> El {
    let shifts = RwSignal::new(None);
    let (records, id, today) = (desk.records, id.clone(), desk.today.get_untracked());
    edge::after_paint(move || {
        let entries = desk.versions(std::slice::from_ref(&id));
        let found = records.book.with_untracked(|book| {
            let strike = book.strike(&records.pen(), today, &entries, &BrowserLetters).ok()?;
            Some(book.shifts(&strike, today)).filter(|shifts| !shifts.is_empty())
        });
        shifts.set(found);
    });
    shifts::view(records.book, today, w::STRIKE_CHANGES, shifts)
}

fn line_id(root: &EntryId) -> String {
    ["line-", &root.to_string()].concat()
}

impl Desk {
    /// Who wrote `entry`, and when; `day` is the one it stands under.
    pub(super) fn written(self, day: Day, entry: &Entry) -> String {
        let own = || (*entry.id.writer() == self.records.pen().writer).then(|| w::THIS_PHONE.to_owned());
        let by = entry.by.as_deref().map(words::isolated).or_else(own);
        w::written(day, entry.at, by.as_deref())
    }

    /// Everything that has to be struck so that nothing of these lines stands.
    fn versions(self, entries: &[EntryId]) -> Vec<EntryId> {
        self.records.book.with_untracked(|book| book.versions_of(entries))
    }
}

/// Strikes lines out, or strikes them back in. A key that is tapped again before the list is drawn anew does nothing.
fn strike(desk: Desk, root: &EntryId, entries: &[EntryId], said: &str) {
    let again = desk.records.book.with_untracked(|book| {
        let struck = book.log().struck();
        entries.iter().all(|id| struck.contains_key(id))
    });
    if again {
        return;
    }
    let struck = desk.records.strike(entries, said);
    done(desk, root, &struck);
}

/// Writes what was decided about a line.
pub(super) fn put(desk: Desk, root: &EntryId, written: Result<Vec<Entry>, Refusal>, said: &str) {
    let kept = desk.records.put(written, said);
    done(desk, root, &kept);
}

/// Puts the focus back on the line it was on: the list is drawn anew. What was refused is said above the list, but for
/// what is decided already.
fn done(desk: Desk, root: &EntryId, kept: &Result<Vec<EntryId>, Stop>) {
    if matches!(kept, Err(Stop::Refused(Refusal::Nothing))) {
        return;
    }
    desk.stop.set(kept.as_ref().err().map(said::stop).unwrap_or_default());
    if kept.is_ok() {
        desk.open.set(None);
        to_line(root);
    }
}

fn to_line(root: &EntryId) {
    // Names of entries are letters, digits and hyphens, which a selector takes as they are.
    let line = ["#", &line_id(root)].concat();
    edge::after_paint(move || {
        focus(&line);
    });
}
