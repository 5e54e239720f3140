//! The keys that change a yard: hives, order, name, season, the end.

use super::hives;
use crate::almanac::text::{LABEL_MOST, label};
use crate::app::edge::letters::BrowserLetters;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::place::Place;
use crate::app::round::Walk;
use crate::app::round::form::{Form, fold, go};
use crate::app::round::walk::by_tag;
use crate::app::state::Ui;
use crate::app::wording::{en_hive as w, en_typed};
use crate::book::entry::What;
use crate::book::id::ThingId;
use crate::book::standing::YardNow;
use leptos::prelude::*;

/// What the forms of a yard share.
#[derive(Clone, Copy)]
pub(super) struct Desk {
    pub(super) form: Form,
    pub(super) yard: StoredValue<ThingId>,
}

impl Desk {
    fn now(self) -> Option<YardNow> {
        let book = self.form.walk.records().book;
        book.with(|book| self.yard.with_value(|yard| book.standing().yards.get(yard).cloned()))
    }

    /// Writes one thing about the yard, today.
    fn about(self, form: &'static str, said: &'static str, what: &What) -> bool {
        let yard = self.yard.get_value();
        self.form.put(form, said.to_owned(), &|book, pen, _, today| {
            book.about_yard(pen, today, today, &yard, what.clone())
        })
    }
}

/// The keys.
pub(super) fn view(walk: Walk, yard: &ThingId) -> AnyView {
    let desk = Desk { form: Form::new(walk), yard: StoredValue::new(yard.clone()) };
    view! {
        <h2 class="part-title">{w::YARD}</h2>
        {fold(w::ADD_HIVES, "add-hives", move || hives::view(desk))}
        {fold(w::ORDER, "order", move || order(desk))}
        {fold(w::RENAME, "rename-yard", move || rename(desk))}
        {fold(w::SEASON, "season", move || season(desk))}
        {fold(w::CLOSE, "close-yard", move || close(desk))}
    }
    .into_any()
}

fn rename(desk: Desk) -> AnyView {
    let Some(now) = untrack(|| desk.now()) else { return ().into_any() };
    let text = RwSignal::new(now.name.clone());
    let says = move || match text.with(|text| label(text, LABEL_MOST, &BrowserLetters)) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::label(error)),
    };
    let put = move || {
        let Ok(name) = text.with_untracked(|text| label(text, LABEL_MOST, &BrowserLetters)) else { return };
        let yard = desk.yard.get_value();
        desk.about("rename", w::RENAMED, &What::YardChanged { yard, name: Some(name), zone: None });
    };
    view! {
        {Field::new("yard-name", w::NAME, text).wide().says(says).view()}
        <p class="small">{w::zone(&now.zone)}</p>
        {desk.form.refused("rename")}
        {go(w::RENAME_KEY, "rename-yard-go", put)}
    }
    .into_any()
}

fn season(desk: Desk) -> AnyView {
    let resting = Memo::new(move |_| desk.now().is_some_and(|now| now.paused.is_some()));
    let set = move |running: bool| {
        let yard = desk.yard.get_value();
        let said = if running { w::RESUMED } else { w::PAUSED };
        desk.about("season", said, &What::Season { yard, running });
    };
    let keys = move || {
        if resting.get() {
            view! { <p>{w::RESUME_HOW}</p> {go(w::RESUME, "season-go", move || set(true))} }.into_any()
        } else {
            view! { <p>{w::PAUSE_HOW}</p> {go(w::PAUSE, "season-go", move || set(false))} }.into_any()
        }
    };
    view! { {keys} {desk.form.refused("season")} }.into_any()
}

fn close(desk: Desk) -> AnyView {
    let put = move || {
        let yard = desk.yard.get_value();
        if desk.about("close", w::CLOSED, &What::YardClosed { yard }) {
            Ui::get().go(&Place::Round);
        }
    };
    view! {
        <p>{w::CLOSE_HOW}</p>
        {desk.form.refused("close")}
        <p class="keys">{Key::new(w::CLOSE_KEY, put).alarm().mark("close-yard-go").view()}</p>
    }
    .into_any()
}

/// The hives of the yard with their tags, as they are walked.
fn walked(desk: Desk) -> Vec<(ThingId, String)> {
    let book = desk.form.walk.records().book;
    book.with(|book| {
        desk.yard.with_value(|yard| {
            let hives = book.standing().hives_of(yard, true);
            hives.map(|(id, hive)| (id.clone(), hive.tag.clone())).collect()
        })
    })
}

fn order(desk: Desk) -> AnyView {
    let hives = Memo::new(move |_| walked(desk));
    let write = move |hives: Vec<ThingId>| {
        let yard = desk.yard.get_value();
        desk.about("order", w::ORDERED, &What::Order { yard, hives });
    };
    let sort = move || {
        let mut sorted = hives.get_untracked();
        sorted.sort_by(|(_, a), (_, b)| by_tag(a, b));
        if sorted != hives.get_untracked() {
            write(sorted.into_iter().map(|(id, _)| id).collect());
        }
    };
    let step = move |hive: &ThingId, by: isize| {
        let mut order: Vec<ThingId> = hives.get_untracked().into_iter().map(|(id, _)| id).collect();
        let at = order.iter().position(|id| id == hive);
        let to = at.and_then(|at| at.checked_add_signed(by)).filter(|to| *to < order.len());
        if let (Some(at), Some(to)) = (at, to) {
            order.swap(at, to);
            write(order);
        }
    };
    let row = move |(hive, tag): (ThingId, String)| {
        let (up, down) = (hive.clone(), hive);
        let (earlier, later) = (w::earlier(&tag), w::later(&tag));
        view! {
            <li class="order-keys">
                <span>
                    <bdi>{tag}</bdi>
                </span>
                <button type="button" class="key key-big" aria-label=earlier on:click=move |_| step(&up, -1)>
                    "↑"
                </button>
                <button type="button" class="key key-big" aria-label=later on:click=move |_| step(&down, 1)>
                    "↓"
                </button>
            </li>
        }
    };
    view! {
        {go(w::BY_TAG, "order-by-tag", sort)}
        {desk.form.refused("order")}
        <ol class="order-list rows">
            <For each=move || hives.get() key=|(id, tag)| (id.clone(), tag.clone()) children=row />
        </ol>
    }
    .into_any()
}
