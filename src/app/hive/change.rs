//! Tag, note, move, walking order and the end of a hive.

use super::page::Page;
use crate::almanac::text::{LABEL_MOST, label, look_alike};
use crate::app::edge::letters::BrowserLetters;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::round::form::{fold, go, select};
use crate::app::wording::{en_hive as w, en_round, en_typed};
use crate::book::Book;
use crate::book::entry::{Ending, Entry, What};
use crate::book::id::ThingId;
use crate::book::write::Refusal;
use leptos::prelude::*;

/// What is said about a tag typed for a hive of `yard`, and a free one when it is taken.
pub fn tag_says(book: &Book, yard: &ThingId, except: Option<&ThingId>, text: &str) -> (Says, Option<String>) {
    let tag = match label(text, LABEL_MOST, &BrowserLetters) {
        Ok(tag) => tag,
        Err(error) => return (Says::Wrong(en_typed::label(error)), None),
    };
    if let Err(refusal) = book.tag_free(yard, except, &tag, &BrowserLetters) {
        let free = if let Refusal::TagTaken { free } = &refusal { Some(free.clone()) } else { None };
        return (Says::Wrong(en_round::refusal(&refusal)), free);
    }
    let twin = book
        .standing()
        .hives_of(yard, true)
        .find(|(id, hive)| Some(*id) != except && look_alike(&hive.tag, &tag, &BrowserLetters));
    (twin.map_or(Says::Nothing, |(_, hive)| Says::Echo(w::look_alike(&hive.tag))), None)
}

/// The forms.
pub(super) fn forms(page: Page) -> AnyView {
    view! {
        {fold(w::NOTE, "note", move || note(page))}
        {fold(w::TAG, "tag", move || tag(page))}
        {order(page)}
        {fold(w::MOVE, "move", move || carry(page))}
        {fold(w::END, "end", move || end(page))}
    }
    .into_any()
}

fn tag(page: Page) -> AnyView {
    let Some(now) = page.hive() else { return ().into_any() };
    let text = RwSignal::new(now.tag.clone());
    let book = page.form.walk.records().book;
    let said = Memo::new(move |_| {
        let now = page.now.get();
        let Some(now) = now else { return Default::default() };
        let id = page.id.get_value();
        text.with(|text| {
            if *text == now.tag {
                return (Says::Nothing, None);
            }
            book.with(|book| tag_says(book, &now.yard, Some(&id), text))
        })
    });
    let put = move || {
        let Ok(tag) = text.with_untracked(|text| label(text, LABEL_MOST, &BrowserLetters)) else { return };
        let hive = page.id.get_value();
        page.form.put("tag", page.said(w::SAID_TAG), &|book, pen, _, today| {
            book.rename_hive(pen, today, &hive, &tag, &BrowserLetters)
        });
    };
    let free = move || {
        said.with(|(_, free)| free.clone()).map(|free| {
            let put = free.clone();
            Key::new(w::use_tag(&free), move || text.set(put.clone())).mark("tag-free").view()
        })
    };
    view! {
        {Field::new("tag-text", w::TAG_IS, text).wide().says(move || said.with(|(says, _)| says.clone())).view()}
        <p class="keys">{free}</p>
        {page.form.refused("tag")}
        {go(w::TAG_KEY, "tag-go", put)}
    }
    .into_any()
}

fn note(page: Page) -> AnyView {
    let text = RwSignal::new(String::new());
    let over = move || text.with(|text| text.trim().chars().count()).saturating_sub(Entry::NOTE_MOST);
    let put = move || {
        let words = text.with_untracked(|text| text.trim().to_owned());
        let Some(now) = page.hive() else { return };
        let hive = page.id.get_value();
        let what = What::Note { hive: Some(hive), text: words.clone() };
        let wrote = untrack(over) == 0
            && page.form.put("note", w::NOTED.to_owned(), &|book, pen, day, today| {
                if words.is_empty() {
                    return Err(Refusal::Nothing);
                }
                book.about_yard(pen, day, today, &now.yard, what.clone())
            });
        if wrote {
            text.set(String::new());
        }
    };
    view! {
        <div class="field field-wide">
            <label for="note-text">{en_round::NOTE}</label>
            <textarea
                id="note-text"
                rows="3"
                dir="auto"
                aria-describedby="note-says"
                prop:value=move || text.get()
                on:input=move |event| text.set(event_target_value(&event))
            ></textarea>
            <p id="note-says" class="field-says">
                {move || (over() > 0).then(|| en_round::note_over(over()))}
            </p>
        </div>
        {page.form.refused("note")}
        {go(w::NOTE_KEY, "note-go", put)}
    }
    .into_any()
}

/// Two keys that walk to this hive earlier or later.
fn order(page: Page) -> AnyView {
    let step = move |by: i32| {
        let Some(now) = page.hive() else { return };
        let hive = page.id.get_value();
        page.form.put("order", w::ORDERED.to_owned(), &|book, pen, _, today| {
            let order: Vec<ThingId> =
                book.standing().hives_of(&now.yard, true).map(|(id, _)| id.clone()).collect();
            let hives = moved(order, &hive, by).ok_or(Refusal::Nothing)?;
            book.about_yard(pen, today, today, &now.yard, What::Order { yard: now.yard.clone(), hives })
        });
    };
    let key = move |label: &'static str, mark: &'static str, by: i32| {
        view! {
            <button type="button" class="key key-big" data-testid=mark on:click=move |_| step(by)>
                {label}
            </button>
        }
    };
    view! {
        <div class="order-keys" role="group" aria-label=w::ORDER>
            <span>{w::ORDER}</span>
            {key(w::EARLIER, "earlier", -1)}
            {key(w::LATER, "later", 1)}
        </div>
        {page.form.refused("order")}
    }
    .into_any()
}

/// `order` with `hive` one place further on or back; none at the ends.
fn moved(mut order: Vec<ThingId>, hive: &ThingId, by: i32) -> Option<Vec<ThingId>> {
    let at = order.iter().position(|id| id == hive)?;
    let to = at.checked_add_signed(isize::try_from(by).ok()?).filter(|to| *to < order.len())?;
    order.swap(at, to);
    Some(order)
}

fn carry(page: Page) -> AnyView {
    let Some(now) = page.hive() else { return ().into_any() };
    let others: Vec<(String, String)> = page.form.walk.records().book.with_untracked(|book| {
        let open = book.standing().open_yards().filter(|(id, _)| **id != now.yard);
        open.map(|(id, yard)| (id.to_string(), yard.name.clone())).collect()
    });
    if others.is_empty() {
        return view! { <p>{w::NO_OTHER_YARD}</p> }.into_any();
    }
    let to = RwSignal::new(String::new());
    let permit = RwSignal::new(String::new());
    let put = move || {
        let hive = page.id.get_value();
        let to = to.with_untracked(|to| ThingId::parse(to).ok());
        let permit = permit.with_untracked(|text| label(text, LABEL_MOST, &BrowserLetters)).ok();
        page.form.put("move", page.said(w::SAID_MOVED), &|book, pen, day, today| {
            let to = to.as_ref().ok_or(Refusal::Nothing)?;
            book.move_hive(pen, day, today, &hive, to, permit.clone(), &BrowserLetters)
        });
    };
    let mut all = vec![(String::new(), w::CHOOSE.to_owned())];
    all.extend(others);
    view! {
        {Notice::caution(w::MOVE_CAUTION).view()}
        {select("move-to", w::MOVE_TO, to, all)}
        {Field::new("move-permit", w::PERMIT, permit).wide().hint(w::MAY_BE_EMPTY).view()}
        {page.form.refused("move")}
        {go(w::MOVE_KEY, "move-go", put)}
    }
    .into_any()
}

fn end(page: Page) -> AnyView {
    let how = RwSignal::new("dead".to_owned());
    let into = RwSignal::new(String::new());
    let joined = Ending::Joined { into: None };
    let others = move || {
        let mut all = vec![(String::new(), w::JOINED_NOWHERE.to_owned())];
        let Some(now) = page.hive() else { return all };
        let own = page.id.get_value();
        page.form.walk.records().book.with_untracked(|book| {
            let hives = book.standing().hives_of(&now.yard, true).filter(|(id, _)| **id != own);
            all.extend(hives.map(|(id, hive)| (id.to_string(), en_round::hive(&hive.tag))));
        });
        all
    };
    let put = move || {
        let ending = match how.get_untracked().as_str() {
            "sold" => Ending::Sold,
            "joined" => Ending::Joined { into: into.with_untracked(|into| ThingId::parse(into).ok()) },
            "gone" => Ending::Gone,
            _ => Ending::Dead,
        };
        let hive = page.id.get_value();
        page.form.put("end", page.said(en_round::ending(&ending)), &|book, pen, day, today| {
            book.end_hive(pen, day, today, &hive, ending.clone())
        });
    };
    view! {
        {Choice::new("end-how", w::END_HOW)
            .option("dead", w::end_key(&Ending::Dead))
            .option("sold", w::end_key(&Ending::Sold))
            .option("joined", w::end_key(&joined))
            .option("gone", w::end_key(&Ending::Gone))
            .text(how)
            .view()}
        {move || how.with(|how| how == "dead").then(|| Notice::caution(w::DEAD_CAUTION).view())}
        {move || {
            how.with(|how| how == "joined").then(|| select("end-into", w::JOINED_INTO, into, others()))
        }}
        {page.form.refused("end")}
        <p class="keys">{Key::new(w::END_KEY, put).alarm().mark("end-go").view()}</p>
    }
    .into_any()
}
